"""The window as the command line starts it: a process of its own, from the file to a close in order."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from configurator.project_file import save
from configurator.project_file.held import open_held
from configurator.project_file.lock import holder_of
from configurator.ui.session import new_job

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


def told_by_window(path: Path) -> dict:
    own = {"QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(path.parent / "config")}
    done = subprocess.run(
        [sys.executable, "-c", RUN, str(path)],
        cwd=ROOT,
        env=os.environ | own,
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
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


def test_a_refused_file_opens_no_window(path):
    path.write_text("{}")
    with pytest.raises(subprocess.CalledProcessError) as caught:
        told_by_window(path)
    assert "ProjectFileError" in caught.value.stderr
    assert holder_of(path) is None
