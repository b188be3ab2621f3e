"""The window as the command line starts it: a process of its own, from the file to a close in order."""

import faulthandler
import json
import logging
import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QIcon

from configurator.project_file import save
from configurator.project_file.held import open_held
from configurator.project_file.lock import holder_of
from configurator.project_file.recovery import left_behind
from configurator.ui import app
from configurator.ui.app import LARGEST_LOG, Log
from configurator.ui.state.edits import new_job

ROOT = Path(__file__).resolve().parents[2]

RUN = """
import gc, json, sys
from pathlib import Path
from PySide6.QtCore import QTimer
from configurator.ui import app

opened = app.open_window

def watched(*given):
    window = opened(*given)
    window.picture_shown.connect(lambda: QTimer.singleShot(400, lambda: tell(window)))
    return window

def tell(window):
    asked = window.line.questions if window.line else {}
    told = {
        "title": window.windowTitle(),
        "asked": sorted(asked),
        "said": window.line.text() if window.line else "",
        "page": window.pages.on_show if window.pages else "",
        "collects": gc.isenabled(),
        "frozen": gc.get_freeze_count() > 0,
        "locks": [path.name for path in Path(sys.argv[1]).parent.glob(".*.lock")],
    }
    print(json.dumps(told), flush=True)
    window.close()

app.open_window = watched
app.run_window(Path(sys.argv[1]))
"""


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "plan.json"
    save(new_job(), path)
    return path


def run_window(path: Path, program: str, **variables: str) -> subprocess.CompletedProcess[str]:
    own = {"QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(path.parent / "config")}
    return subprocess.run(
        [sys.executable, "-c", program, str(path)],
        cwd=ROOT,
        env=os.environ | own | variables,
        capture_output=True,
        text=True,
        timeout=60,
    )


def told_by_window(path: Path) -> dict:
    done = run_window(path, RUN)
    done.check_returncode()
    return json.loads(done.stdout)


def test_a_window_has_its_file_until_it_closes(path):
    told = told_by_window(path)
    assert told["locks"] == [".plan.json.lock"]
    assert "read-only" not in told["title"]
    assert told["asked"] == []
    assert told["collects"]
    assert told["frozen"]
    assert holder_of(path) is None


def test_a_second_window_is_read_only_from_its_start(path):
    mine, _ = open_held(path)
    told = told_by_window(path)
    assert "plan.json[*] (read-only)" in told["title"]
    assert told["asked"] == ["lock"]
    assert mine.news() == ""
    mine.release()


DYING = {
    "program": "faulthandler._sigsegv()",
    "thread": "thread = threading.Thread(target=lambda: 1 / 0); thread.start(); thread.join()",
    "slot": "raise KeyError('pin')",
}


@pytest.mark.parametrize(
    ("what", "written"),
    [
        ("program", "Fatal Python error: Segmentation fault"),
        ("thread", "ZeroDivisionError: division by zero"),
        ("slot", "KeyError: 'pin'"),
    ],
)
def test_what_goes_wrong_is_written_to_the_log(path, what, written):
    state = path.parent / "state"
    run = RUN.replace("import gc,", "import faulthandler, threading, gc,").replace(
        "    window.close()\n", f"    window.close()\n    {DYING[what]}\n"
    )
    done = run_window(path, run, XDG_STATE_HOME=str(state))
    assert (done.returncode == 0) == (what != "program")
    log = state / "opening-configurator" / "log.txt"
    assert written in log.read_text()
    assert 'File "<string>", line' in log.read_text()
    assert log.stat().st_mode & 0o777 == 0o600


def test_a_log_that_grew_long_is_put_aside(path):
    log = path.parent / "state" / "opening-configurator" / "log.txt"
    log.parent.mkdir(parents=True)
    log.write_bytes(b"x" * (LARGEST_LOG + 1))
    run_window(path, RUN, XDG_STATE_HOME=str(path.parent / "state")).check_returncode()
    assert log.read_bytes() == b""
    assert log.with_name("log.before.txt").stat().st_size == LARGEST_LOG + 1


def test_a_log_is_put_aside_while_the_program_runs_too(tmp_path, monkeypatch):
    log = Log(tmp_path / "log.txt")
    monkeypatch.setattr(app, "LARGEST_LOG", 100)
    try:
        for number in range(3):
            log.emit(logging.LogRecord("n", 40, "", 0, f"{number}" * 80, (), None))
        assert (tmp_path / "log.txt").read_text() == "2" * 80 + "\n"
        assert len((tmp_path / "log.before.txt").read_text().split()) == 2
        assert (tmp_path / "log.txt").stat().st_mode & 0o777 == 0o600
    finally:
        faulthandler.enable()
        log.stream.close()


def test_a_window_opens_where_no_log_can_be_written(path):
    (path.parent / "state").write_bytes(b"in the way")
    run_window(path, RUN, XDG_STATE_HOME=str(path.parent / "state")).check_returncode()


def test_a_refused_file_leaves_the_start_page_with_the_words_of_open(path):
    path.write_text('{"format": "opening-project", "version": 99}')
    told = told_by_window(path)
    assert told["said"].startswith("plan.json was not opened: ")
    assert "newer program" in told["said"]
    assert told["page"] == "start"
    assert told["title"].startswith("New job – not saved yet")
    assert holder_of(path) is None


ENDED = RUN.replace(
    "    print(json.dumps(told), flush=True)\n    window.close()\n",
    "    window.session.edit('location', 'Galley')\n"
    "    __import__('os').kill(__import__('os').getpid(), getattr(__import__('signal'), sys.argv[2]))\n",
)


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP"])
def test_a_program_that_is_told_to_end_keeps_unsaved_work_and_frees_the_file(path, name, monkeypatch):
    state = path.parent / "state"
    done = run_window(path, ENDED.replace("sys.argv[2]", repr(name)), XDG_STATE_HOME=str(state))
    assert done.returncode == 0, done.stderr
    assert holder_of(path) is None
    monkeypatch.setenv("XDG_STATE_HOME", str(state))
    (left,) = left_behind()
    assert left.path == path.resolve()
    assert left.job().openings[0].location == "Galley"


def test_the_icon_is_shown_once_the_picture_stands(qapp):
    qapp.setWindowIcon(QIcon())
    app._finish_looks()
    assert not qapp.windowIcon().isNull()
    assert qapp.windowIcon().pixmap(32, 32).toImage().pixelColor(8, 23).alpha() == 255
