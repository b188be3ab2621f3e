from pathlib import Path

import pytest
from PySide6.QtCore import QSettings

from configurator.project_file import load
from configurator.ui.app import open_window
from configurator.ui.kit import runner
from configurator.ui.preferences import Preferences
from configurator.ui.session import Session

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"


@pytest.fixture(autouse=True)
def _nothing_left_behind(own_state_folder):
    """Every window begins without unsaved work of another."""


@pytest.fixture(autouse=True)
def _short_work_is_done_at_once(monkeypatch):
    """However busy the machine is; what is about work in pieces sets this to nothing."""
    monkeypatch.setattr(runner, "FIRST", 60.0)


@pytest.fixture
def preferences(tmp_path):
    """Settings of the test's own: a test must not touch the user's."""
    return Preferences(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))


@pytest.fixture
def session(qapp):
    """The demo job, with 112A on show: the chair rail that stops a 4 in hinge and passes a 4-1/2 in one."""
    session = Session(load(DEMO), DEMO)
    session.select("112A")
    return session


@pytest.fixture
def window(qtbot, session, preferences):
    """The whole window, painted, with its picture loaded."""
    window = open_window(session, preferences)
    with qtbot.waitSignal(window.picture_shown, timeout=10_000):
        window.show()
    yield window
    session.history.mark_saved()  # so that closing asks nobody
    window.close()
    window.deleteLater()
