"""The start page: what there is to do where nothing is begun, and the first answer from nothing."""

import json
import shutil

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMessageBox, QWidget

from configurator.model import Job
from configurator.resource_files import resource_path
from configurator.ui.state.session import Session
from configurator.ui.window import start
from tests.ui.conftest import DEMO, whole_window


@pytest.fixture
def window(fresh_window):
    return fresh_window


@pytest.fixture
def session(qapp):
    return Session(Job())


@pytest.fixture
def page(window):
    """The page as the program shows it without a file."""
    assert window.pages.on_show == "start"
    return window.pages.made["start"]


class Hand:
    """Clicks and presses keys as a user does, on what is seen there, and counts them."""

    def __init__(self, window):
        self.window, self.clicks, self.keys = window, 0, 0

    def click(self, widget: QWidget):
        at = widget.mapTo(self.window, widget.rect().center())
        assert self.window.childAt(at) is widget, "something else lies there"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton, pos=QPoint(widget.rect().center()))
        self.clicks += 1

    def press(self, *keys):
        for key in keys:
            QTest.keyClick(QApplication.focusWidget(), key)
            self.keys += 1


def stopped_at(window):
    """What the comparison says of the leaf on each width."""
    table = window.work.comparison
    row = next(r for r in range(table.rowCount()) if table.text(r, 0) == "Greatest angle, bare")
    return [table.text(row, column) for column in (1, 2)]


RAIL = ["171.7°, leaf on the chair rail", "180°"]


def test_the_first_answer_from_nothing_takes_two_clicks(window, page):
    hand = Hand(window)
    hand.click(page.things.buttons["Chair rail"])
    assert (page.projection.text(), page.start.text()) == ("1-3/4 in", "1/2 in")
    hand.click(page.begin)
    assert stopped_at(window) == RAIL
    assert window.work.isVisible()
    assert window.work.picture.canvas.isVisible()
    assert hand.clicks <= 4


def test_the_first_answer_from_nothing_takes_few_keys(qtbot, window, page):
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    page.setFocus()
    hand = Hand(window)
    hand.press(Qt.Key.Key_Tab, Qt.Key.Key_Tab, Qt.Key.Key_Right, Qt.Key.Key_Return)
    assert stopped_at(window) == RAIL
    assert hand.keys <= 12


def test_without_a_file_there_is_no_door_until_somebody_asks_for_one(window, page):
    assert window.session.job.openings == ()
    assert not window.session.history.unsaved
    assert window.tabs.tabText(window.tabs.currentIndex()) == "Start"
    assert QApplication.focusWidget() is page.door_size or not window.isActiveWindow()


@pytest.mark.parametrize(
    ("typed", "width", "height"),
    [("3070", 36, 84), ("42", 42, 84), ("4-0 x 8-0", 48, 96), ("32 x 80", 32, 80)],
)
def test_a_size_is_read_as_the_trade_writes_it_and_a_width_alone_is_told(page, typed, width, height):
    page.door_size.setText(typed)
    opening = page.opening()
    assert (opening.size.width, opening.size.height) == (width, height)
    if typed == "42":
        assert page.door_size.text() == "3'-6\" x 7'-0\""


@pytest.mark.parametrize("typed", ["", "wide", "3070x", "-4"])
def test_a_size_that_cannot_be_is_refused_beside_its_field(page, window, typed):
    page.door_size.setText(typed)
    page.begin.click()
    assert page.note.text().startswith("⚠ ")
    assert window.session.job.openings == ()
    page.things.buttons["Nothing"].click()
    assert page.note.text() == ""


def test_every_answer_counts(window, page):
    page.walls.buttons["Block or brick"].click()
    page.things.buttons["Column"].click()
    assert not page.projection.isEnabled()
    page.start.setText("9")
    page.begin.click()
    opening = window.session.opening
    assert opening.frame.kind == "welded steel, butted"
    assert opening.wall.frame_proud == 0.0
    assert [(one.kind, one.start) for one in opening.obstructions] == [("column", 9.0)]


def test_a_wall_that_is_not_known_is_left_to_the_program(window, page):
    page.begin.click()
    assert "frame" not in window.session.opening.model_fields_set
    assert window.session.opening.obstructions == ()


def test_a_new_job_asks_about_the_one_at_hand(window, page, monkeypatch):
    page.begin.click()
    asked = []
    cancel = QMessageBox.StandardButton.Cancel
    monkeypatch.setattr(QMessageBox, "question", lambda *_: asked.append(1) or cancel)
    window.commands.actions_by_name["start"].trigger()
    page.begin.click()
    assert asked
    assert window.pages.on_show == "start"
    assert len(window.session.job.openings) == 1
    monkeypatch.setattr(QMessageBox, "question", lambda *_: QMessageBox.StandardButton.Discard)
    window.commands.actions_by_name["new"].trigger()
    assert window.session.job.openings == ()
    assert window.pages.on_show == "start"


def test_jobs_worked_on_lately_are_told_with_their_state_and_opened(
    qtbot, window, page, preferences, tmp_path
):
    kept, gone, broken = tmp_path / "kept.json", tmp_path / "gone.json", tmp_path / "broken.json"
    shutil.copy(DEMO, kept)
    shutil.copy(DEMO, gone)
    broken.write_text("{")
    for path in (gone, broken, kept):
        preferences.note_recent(path)
    gone.unlink()
    page.show_state("open")
    rows = {page.jobs.text(row, 0): page.jobs.text(row, 1) for row in range(page.jobs.rowCount())}
    assert rows["kept.json"].startswith("14 openings, changed ")
    assert rows["gone.json"] == "not there any more"
    assert rows["broken.json"].startswith("cannot be read, changed ")
    page.jobs.choose(kept)
    qtbot.keyClick(page.jobs, Qt.Key.Key_Return)
    assert window.session.path == kept
    assert window.pages.on_show == ""


def test_a_job_open_elsewhere_is_told(window, page, tmp_path):
    from configurator.project_file.held import open_held

    path = tmp_path / "theirs.json"
    shutil.copy(DEMO, path)
    theirs, _ = open_held(path)
    assert start.state_of(path).startswith("open in another window, 14 openings")
    theirs.release()


@pytest.mark.parametrize(
    ("words", "shown"), [("Look at the demo job", ""), ("Take in an architect's schedule…", "import")]
)
def test_what_else_there_is_to_do(window, page, words, shown):
    from PySide6.QtWidgets import QPushButton

    next(button for button in page.findChildren(QPushButton) if button.text() == words).click()
    assert window.pages.on_show == shown
    if not shown:
        assert window.session.path == resource_path("demo_openings", "kestrel_point.json")


def test_a_file_comes_back_to_the_opening_and_page_it_was_left_on(qtbot, preferences, tmp_path):
    path = tmp_path / "plan.json"
    shutil.copy(DEMO, path)
    session = Session(Job())
    session.open(path)
    with whole_window(qtbot, session, preferences) as window:
        session.select("205A")
        window.turn_to("schedule")
        window.work.rows.setSizes([300, 500])
    again = Session(Job())
    again.open(path)
    with whole_window(qtbot, again, preferences) as window:
        assert again.mark == "205A"
        assert window.pages.on_show == "schedule"
    data = json.loads(path.read_text())
    data["openings"] = [one for one in data["openings"] if one["mark"] != "205A"]
    path.write_text(json.dumps(data))
    third = Session(Job())
    third.open(path)
    with whole_window(qtbot, third, preferences) as window:
        assert third.mark == "101A"
