"""The program in the menu of a desktop: put there whole, taken away without a trace."""

import configparser
import os
import shlex
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from configurator.cli import desktop, main
from configurator.cli.desktop import ENTRY, ICON, KIND, TYPES

DEMO = Path(__file__).resolve().parents[2] / "demo_openings"
MIME = "{http://www.freedesktop.org/standards/shared-mime-info}"


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Where the desktop looks, with nothing that rebuilds its lists."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "share"))
    monkeypatch.setenv("PATH", "")
    return tmp_path / "share"


def files(folder):
    return sorted(str(each.relative_to(folder)) for each in folder.rglob("*") if each.is_file())


def test_what_is_put_there_is_taken_away_again(folder, capsys):
    assert main(["desktop"]) == 0
    assert files(folder) == sorted((ENTRY, ICON, KIND))
    assert capsys.readouterr().out.count("written: ") == 3
    assert main(["desktop"]) == 0
    assert main(["desktop", "--remove"]) == 0
    assert files(folder) == []
    assert main(["desktop", "--remove"]) == 0
    assert "nothing of the program" in capsys.readouterr().out


def test_the_entry_starts_the_installed_program_with_a_file(folder, capsys, tmp_path, monkeypatch):
    odd = tmp_path / 'a "b" $c %d'
    odd.mkdir()
    (odd / "python").symlink_to(sys.executable)
    program = odd / "opening-configurator"
    program.write_text("#!/bin/sh\n")
    program.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(odd / "python"))
    assert main(["desktop"]) == 0
    entry = configparser.RawConfigParser()
    entry.optionxform = str
    entry.read(folder / ENTRY)
    found = entry["Desktop Entry"]
    assert found["MimeType"] == TYPES
    first, last = shlex.split(found["Exec"])
    assert (first.replace("%%", "%").replace("\\$", "$"), last) == (str(program), "%f")
    program.unlink()
    assert main(["desktop"]) == 0
    assert 'python" -m configurator %f' in (folder / ENTRY).read_text()
    capsys.readouterr()


def test_a_project_file_is_known_by_how_it_begins(folder, capsys):
    assert main(["desktop"]) == 0
    (match,) = ET.parse(folder / KIND).getroot().iter(f"{MIME}match")
    first, last = map(int, match.get("offset").split(":"))
    for demo in DEMO.glob("*.json"):
        at = demo.read_bytes().find(match.get("value").encode())
        assert first <= at <= last
    capsys.readouterr()


def test_the_icon_is_a_picture_that_qt_can_draw(qapp):
    from PySide6.QtGui import QIcon

    icon = QIcon(str(DEMO.parent / "resources" / "desktop" / "opening-configurator.svg"))
    image = icon.pixmap(64, 64).toImage()
    assert image.pixelColor(18, 46).blue() > 120
    assert image.pixelColor(18, 46).red() < 80


@pytest.mark.skipif(shutil.which("desktop-file-validate") is None, reason="no desktop-file-validate here")
def test_the_entry_passes_the_desktops_own_check(tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert main(["desktop"]) == 0
    done = subprocess.run(
        ["desktop-file-validate", str(tmp_path / ENTRY)], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout + done.stderr) == (0, "")
    capsys.readouterr()


def test_it_is_for_linux(folder, capsys, monkeypatch):
    monkeypatch.setattr(desktop.sys, "platform", "win32")
    assert main(["desktop"]) == 2
    assert "desktops of Linux" in capsys.readouterr().err
    assert not folder.exists()


def test_a_folder_that_cannot_be_written_is_said(tmp_path, capsys, monkeypatch):
    blocked = tmp_path / "share"
    blocked.write_bytes(b"a file")
    monkeypatch.setenv("XDG_DATA_HOME", str(blocked))
    assert main(["desktop"]) == 3
    assert "could not be written" in capsys.readouterr().err
    monkeypatch.setenv("XDG_DATA_HOME", "not/whole")
    monkeypatch.setenv("HOME", str(tmp_path))
    assert desktop.data_folder() == Path(os.environ["HOME"]) / ".local" / "share"
