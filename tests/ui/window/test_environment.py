import socket
import subprocess
import sys
from pathlib import Path

import pytest

from configurator.ui.window import environment

NOWHERE = {"DISPLAY": ":987"}


def test_it_is_read_without_loading_qt():
    code = "import sys, configurator.ui.window.environment; sys.exit('PySide6' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], timeout=60).returncode == 0


def test_a_binding_loaded_quickly_reads_no_source_and_works_as_ever():
    code = (
        "from configurator.ui.window.environment import load_qt_quickly; load_qt_quickly()\n"
        "import linecache, json.tool\n"
        "from PySide6.QtCore import QObject\n"
        "thing = QObject(objectName='jamb')\n"
        "print(thing.objectName(), json.tool.__file__ in linecache.cache)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60)
    assert done.stdout.split() == ["jamb", "False"], done.stderr


def test_a_missing_library_is_named_with_its_package():
    error = ImportError("libEGL.so.1: cannot open shared object file: No such file or directory")
    sentence = environment.missing_library_sentence(error)
    assert sentence is not None
    assert "libEGL.so.1" in sentence
    assert "apt-get install libegl1" in sentence


def test_an_unknown_library_is_still_named():
    error = ImportError("libodd-2.0.so.7: cannot open shared object file: No such file or directory")
    sentence = environment.missing_library_sentence(error)
    assert sentence is not None
    assert "libodd-2.0.so.7" in sentence
    assert "apt-get" not in sentence


def test_another_import_error_is_none_of_this():
    assert environment.missing_library_sentence(ImportError("No module named 'odd'")) is None


@pytest.mark.parametrize("platform", ["offscreen", "minimal", "offscreen:size=800x600"])
def test_nobody_sees_a_window_drawn_into_memory(platform):
    assert not environment.has_display({"QT_QPA_PLATFORM": platform, "DISPLAY": ":0"})


def test_without_display_variables_there_is_no_display():
    assert not environment.has_display({})


def test_a_wayland_socket_that_answers_is_a_display(tmp_path: Path):
    with socket.socket(socket.AF_UNIX) as server:
        server.bind(str(tmp_path / "wayland-0"))
        server.listen()
        seen = {"WAYLAND_DISPLAY": "wayland-0", "XDG_RUNTIME_DIR": str(tmp_path)}
        assert environment.has_display(seen)
        assert not environment.has_display({**seen, "WAYLAND_DISPLAY": "wayland-1"})


def test_a_display_that_nobody_answers_is_none(monkeypatch):
    monkeypatch.setenv("DISPLAY", ":987")
    assert not environment.has_display(NOWHERE)


def test_why_no_window_says_that_there_is_no_display(monkeypatch):
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(environment, "_loads", lambda library: True)
    assert "no display" in (environment.why_no_window() or "")


def test_why_no_window_names_every_missing_package(monkeypatch):
    monkeypatch.setattr(environment, "_loads", lambda library: library not in ("libEGL.so.1", "libGL.so.1"))
    assert "libegl1 libgl1" in (environment.why_no_window() or "")
