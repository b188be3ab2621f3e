from contextlib import contextmanager
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPointF, QSettings, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from configurator.project_file import load
from configurator.ui.analysis.comparison import ComparisonTable
from configurator.ui.app import open_window
from configurator.ui.kit import runner
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import FULLY_OPEN, LOOKED, Session
from configurator.ui.window.window import Window
from configurator.ui.window.work import UnderPicture
from configurator.units import Display

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"


PATIENCE = 60_000
"""Milliseconds until a test gives up waiting for a state: so many that only what never comes fails."""


class PatientBot(QtBot):
    """Waits for states as long as a busy machine may take to reach them."""

    def waitUntil(self, callback, *, timeout=PATIENCE):
        super().waitUntil(callback, timeout=timeout)

    def waitSignal(self, signal, *, timeout=PATIENCE, raising=None, check_params_cb=None):
        return super().waitSignal(signal, timeout=timeout, raising=raising, check_params_cb=check_params_cb)


@pytest.fixture
def qtbot(qapp, request):
    return PatientBot(request)


@pytest.fixture(autouse=True)
def _nothing_left_behind(own_state_folder):
    """Every window begins without unsaved work of another."""


@pytest.fixture(autouse=True)
def _short_work_is_done_at_once(monkeypatch):
    """However busy the machine is; what is about work in pieces sets this to nothing."""
    monkeypatch.setattr(runner, "FIRST", 60.0)


def move_pointer(widget, at, buttons=Qt.MouseButton.NoButton):
    """Move the pointer to a place of a widget.

    `QTest.mouseMove` moves the screen's own cursor instead: nothing comes of it while the window is not
    exposed yet, and another window or a tooltip that lies there may get it.
    """
    place, none = QPointF(at), Qt.KeyboardModifier.NoModifier
    no_button = Qt.MouseButton.NoButton
    moved = QMouseEvent(QEvent.Type.MouseMove, place, widget.mapToGlobal(place), no_button, buttons, none)
    QApplication.sendEvent(widget, moved)


def preferences_in(folder):
    """Settings of the test's own: a test must not touch the user's."""
    return Preferences(QSettings(str(folder / "settings.ini"), QSettings.Format.IniFormat))


def demo_session():
    """The demo job, with 112A on show: the chair rail that stops a 4 in hinge and passes a 4-1/2 in one."""
    session = Session(load(DEMO), DEMO)
    session.select("112A")
    return session


def close(window):
    for work in window.findChildren(runner.Work):
        work.give_up()
    window.session.history.mark_saved()  # so that closing asks nobody
    window.close()
    window.deleteLater()


@contextmanager
def whole_window(bot, session, preferences):
    """The whole window, painted, with its picture loaded."""
    window = open_window(session, preferences)
    with bot.waitSignal(window.picture_shown):
        window.show()
    yield window
    close(window)


@pytest.fixture
def preferences(request, tmp_path):
    if "edited_window" in request.fixturenames:
        return request.getfixturevalue("edited_window").preferences
    return preferences_in(tmp_path)


@pytest.fixture
def session(request, qapp):
    if "edited_window" in request.fixturenames:
        return request.getfixturevalue("edited_window").session
    return demo_session()


@pytest.fixture
def fresh_window(qtbot, session, preferences):
    """The whole window, made for one test: for what closes it, sizes it, or looks at how it begins."""
    with whole_window(qtbot, session, preferences) as window:
        yield window


@pytest.fixture
def window(edited_window):
    """The whole window, with the demo job opened anew in it."""
    return edited_window


@pytest.fixture
def bare_window(qapp, session, preferences):
    """The window with its commands, its openings and its pages, but no work area: made ten times as fast."""
    window = Window(session, preferences)
    window.show()
    yield window
    close(window)


@pytest.fixture
def under(qtbot, session):
    """What stands under the picture, by itself, following its session."""
    under = UnderPicture(session, ComparisonTable(session))
    qtbot.addWidget(under)
    session.changed.connect(lambda by: by in LOOKED or under.show_state())
    under.resize(940, 300)
    under.show()
    return under


@pytest.fixture(scope="module")
def _window_of_the_file(qapp, request, tmp_path_factory):
    preferences = preferences_in(tmp_path_factory.mktemp("settings"))
    with whole_window(PatientBot(request), demo_session(), preferences) as window:
        yield window


@pytest.fixture
def edited_window(_window_of_the_file):
    """One whole window for the tests of a file; each finds it as at its start, the demo job opened anew."""
    window = _window_of_the_file
    assert window.isVisible(), "a test before this one closed the window: give it one of its own"
    session, commands = window.session, window.commands.actions_by_name
    for work in window.findChildren(runner.Work):
        work.give_up()
    session.history.mark_saved()
    window.preferences._settings.clear()
    window.turn_to("")
    session.trial.end()
    session.open(DEMO, "112A")
    session.swing(FULLY_OPEN)
    session.show_in(Display())
    session.use_plain_words(False)
    session.use_dark(False)
    session.show_swept(False)
    session.show_leaf("")
    for name, pressed in {
        "list": True,
        "measure": False,
        "plain": False,
        "dark": False,
        "sweep": False,
    }.items():
        commands[name].setChecked(pressed)
    session.parts_shown = frozenset()
    window.say("")
    for other in QApplication.topLevelWidgets():
        if other is not window and other.isVisible():
            other.hide()
    window.activateWindow()
    QTest.qWaitForWindowActive(window)  # else its keys would go to the window of a test before
    QApplication.processEvents()
    return window


@pytest.fixture
def read_window(edited_window):
    """One whole window for all tests of a file that only read it; whoever changes something fails."""
    window = edited_window
    session = window.session
    before = (session.job, session.mark, session.angle, session.display, session.dark, session.plain_words)
    yield window
    after = (session.job, session.mark, session.angle, session.display, session.dark, session.plain_words)
    assert after == before, "this test changes the window that others read: give it one of its own"
