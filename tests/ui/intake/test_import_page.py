import csv
from pathlib import Path

import pytest
from openpyxl import Workbook
from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QFocusEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QInputDialog, QLineEdit

from configurator.intake.sheet import IntakeError
from configurator.ui.intake import work
from configurator.ui.intake.page import ImportPage
from configurator.ui.intake.preview import OUTCOME
from configurator.ui.kit import runner

DOORS = Path(__file__).resolve().parents[3] / "demo_openings" / "door_schedule.csv"
GOOD = [["Mark", "Size", "Hand"], ["101A", "3670", "LH"], ["900", "3070", "RH"]]


@pytest.fixture
def page(qtbot, session):
    page = ImportPage(session)
    qtbot.addWidget(page)
    page.resize(1200, 700)
    page.show()
    return page


@pytest.fixture
def file(tmp_path):
    def write(*rows):
        path = tmp_path / "doors.csv"
        with path.open("w", newline="", encoding="utf-8") as opened:
            csv.writer(opened).writerows(rows)
        return path

    return write


def read(qtbot, page, path):
    page.read(path)
    qtbot.waitUntil(lambda: not page.work.pieces.running)


def text(page, row, column):
    return page.preview.index(row, column).data()


def outcomes(page):
    return [text(page, row, OUTCOME) for row in range(page.preview.rowCount())]


def marks(session):
    return [opening.mark for opening in session.job.openings]


def choose(combo, data):
    combo.setCurrentIndex(combo.findData(data))
    combo.activated.emit(combo.currentIndex())


def tab_counts(page):
    return [page.lists.tabText(place) for place in range(page.lists.count())]


def test_an_empty_page_says_what_to_do(page):
    assert "Take an architect's door schedule" in page.invitation.text()
    assert page.choose.text() == "Choose a schedule…"
    assert page.split.isHidden()
    assert page.take.every.isHidden()
    assert page.take.good.isHidden()


def test_the_demo_schedule_shows_every_row_with_what_becomes_of_it(qtbot, page):
    read(qtbot, page, DOORS)
    assert page.words.text().startswith("door_schedule.csv: 14 rows under the header on line 3; 9 good")
    assert outcomes(page)[0] == "as it is in the job"
    assert outcomes(page)[1].endswith("opening width 36 in → 42 in")
    assert outcomes(page)[5] == "new, 3'-0\" x 7'-0\""
    assert outcomes(page)[7].startswith("▲ Size: 7'-0\" wide and 3'-0\" high?")
    assert text(page, 7, 4) == "▲ 7'-0\" x 3'-0\""
    assert "height first" in page.preview.index(7, 4).data(Qt.ItemDataRole.ToolTipRole)
    assert "height first" in page.preview.index(7, 4).data(Qt.ItemDataRole.AccessibleDescriptionRole)
    assert page.preview.headerData(7, Qt.Orientation.Vertical) == 12
    assert tab_counts(page) == [
        "Faults 5",
        "Changes 8",
        "Assumed 20",
        "Not read",
        "Not in the schedule 9",
        "Rows and notes 3",
    ]


def test_only_the_good_ones_can_be_taken_while_one_is_bad(qtbot, page, session):
    read(qtbot, page, DOORS)
    assert (page.take.good.text(), page.take.every.text()) == ("Take 9 good openings", "Take all 14")
    assert page.take.good.isEnabled()
    assert not page.take.every.isEnabled()
    before = session.job
    waiting = []
    page.waiting.connect(waiting.append)
    with qtbot.waitSignal(page.left), qtbot.waitSignal(page.said) as said:
        page.take.good.click()
    assert waiting == ["5 rows of door_schedule.csv stayed behind: not in the job yet."]
    assert said.args[0] == "Taken from door_schedule.csv: 4 new, 3 changed. Undo takes it back."
    assert marks(session)[-4:] == ["301A", "301B", "303A", "304A"]
    assert session.history.undo_name == "import door_schedule.csv"
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    assert outcomes(page).count("as it is in the job") == 9, "what stayed behind is still here"
    session.undo()
    assert session.job == before


def test_all_are_taken_in_one_step_where_all_are_good(qtbot, page, session, file):
    read(qtbot, page, file(*GOOD))
    assert page.take.good.isHidden()
    assert page.take.every.text() == "Take all 2"
    page.take.every.click()
    by_mark = {opening.mark: opening for opening in session.job.openings}
    assert by_mark["101A"].size.width == 42
    assert by_mark["101A"].hardware  # what the schedule does not say stays
    assert by_mark["112A"]
    assert session.mark == "900"
    session.undo()
    assert "900" not in marks(session)


def test_what_was_taken_is_said_though_the_job_is_compared_anew_by_then(qtbot, page, session, file):
    session.changed.connect(page.show_state)  # as in the window
    said = []
    page.said.connect(said.append)
    read(qtbot, page, file(*GOOD))
    page.take.every.click()
    assert said == ["Taken from doors.csv: 1 new, 1 changed. Undo takes it back."]


def correct(qtbot, page, row, column, typed):
    """Type something else into a cell, as a user does, and wait until it is read."""
    page.view.setCurrentIndex(page.preview.index(row, column))
    page.view.edit(page.view.currentIndex())
    editor = page.view.findChild(QLineEdit)
    editor.setText(typed)
    before = page.work.table
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: page.work.table is not before and not page.work.pieces.running)


def test_a_cell_is_put_right_and_said_to_be(qtbot, page, session):
    read(qtbot, page, DOORS)
    assert "Double-click a cell" in page.words.text()
    line_15 = page.preview.row_of(15)
    correct(qtbot, page, line_15, 3, "2")
    assert outcomes(page)[line_15] == "new, 3'-0\" x 7'-0\""
    assert (page.view.currentIndex().row(), page.view.currentIndex().column()) == (line_15, 3)
    assert "line 15, Qty: corrected here from “one” to “2”" in page.work.told()
    for line, column, typed in ((12, 4, "3070"), (16, 1, "306B"), (18, 7, "HM"), (7, 8, "KD")):
        correct(qtbot, page, page.preview.row_of(line), column, typed)
    assert page.lists.tabText(0) == "Faults"
    assert "Double-click" not in page.words.text()
    page.take.every.click()
    taken = {opening.mark: opening for opening in session.job.openings}
    assert (taken["305A"].quantity, taken["302A"].size.width, taken["306B"].hand) == (2, 36, "LH")
    assert b"305A,Archive,one" in DOORS.read_bytes()


def test_what_becomes_of_a_row_and_a_cell_left_as_it_was_are_no_corrections(qtbot, page, file):
    read(qtbot, page, file(*GOOD))
    before = page.work.table
    outcome, size = page.preview.index(0, OUTCOME), page.preview.index(0, 2)
    assert not outcome.flags() & Qt.ItemFlag.ItemIsEditable
    assert not page.preview.setData(outcome, "x")
    assert page.preview.setData(size, "3670")
    QApplication.processEvents()
    assert page.work.table is before


def test_openings_that_the_schedule_lacks_go_only_when_asked(qtbot, page, session, file):
    read(qtbot, page, file(*GOOD))
    assert page.take.remove.text() == "Also remove 13 openings that the schedule does not have"
    assert not page.take.remove.isChecked()
    page.take.remove.click()
    page.take.every.click()
    assert marks(session) == ["101A", "900"]


def test_a_new_job_has_the_openings_of_its_schedule_alone(qtbot, page, session, file):
    session.start_new()
    read(qtbot, page, file(*GOOD))
    assert page.take.remove.isHidden()
    page.take.every.click()
    assert marks(session) == ["101A", "900"]
    read(qtbot, page, file(*GOOD[:2]))
    assert not page.take.remove.isHidden()
    assert not page.take.remove.isChecked()


def test_with_nothing_new_there_is_nothing_to_take(qtbot, page, session, file):
    read(qtbot, page, file(["Mark", "Size"], ["101A", "3070"]))
    assert not page.take.every.isEnabled()
    assert page.words.text().endswith("Nothing to take: the job already says what the schedule says.")
    page.take.remove.click()
    assert page.take.every.isEnabled()  # then the others go


def test_cancel_leaves_the_job_as_it_is(qtbot, page, session):
    before = session.job
    read(qtbot, page, DOORS)
    with qtbot.waitSignal(page.left):
        page.take.cancel.click()
    assert session.job is before
    assert not session.history.unsaved
    assert page.split.isHidden()


def test_a_column_is_corrected_over_it(qtbot, page, file):
    read(qtbot, page, file(["Mark", "Br", "Height"], ["900", "915", "2134"]))
    assert "needs its width and its height" in outcomes(page)[0]
    combo = page.view.header.fields[1]
    assert combo.currentText() == "(not read)"
    assert page.view.header.units[1].isHidden()
    assert page.view.header.units[2].currentData() == "mm"
    choose(combo, "width")
    assert not page.view.header.units[1].isHidden()
    assert outcomes(page)[0].startswith("new, 915 x 2134 mm")
    choose(page.view.header.units[1], "in")
    assert outcomes(page)[0].startswith("▲ Br: 76'-3\" wide and 7'-0 1/64\" high?")
    choose(page.view.header.units[1], "mm")
    assert page.take.every.isEnabled()


def test_the_mark_has_to_be_chosen_where_no_heading_says_it(qtbot, page, file):
    read(qtbot, page, file(["Ref", "Width", "Height"], ["900", "36", "84"]))
    assert page.words.text() == "No column is said to hold the marks: choose it over its column."
    assert page.take.every.isHidden()
    choose(page.view.header.fields[0], "mark")
    assert page.take.every.isEnabled()


def test_height_first_is_asked_about_and_answered_once(qtbot, page, session, file):
    read(qtbot, page, file(["Mark", "Size"], ["900", "84 x 36"], ["901", "80 x 32"]))
    assert not page.asked["size order"].isHidden()
    assert (
        page.asked["size order"].words.text()
        == "2 openings would be wider than high. The first figure of every size is"
    )
    choose(page.asked["size order"].answers, "height")
    assert not page.asked["size order"].isHidden()  # the answer can be taken back
    assert outcomes(page) == ["new, 3'-0\" x 7'-0\"", "new, 2'-8\" x 6'-8\""]
    choose(page.asked["size order"].answers, "ask")
    assert not page.take.every.isEnabled()


def test_whose_width_a_pair_s_is_is_asked_about(qtbot, page, file):
    read(qtbot, page, file(["Mark", "Size"], ["900", "PR 3070"]))
    assert not page.asked["pair width"].isHidden()
    choose(page.asked["pair width"].answers, "leaf")
    assert outcomes(page) == ["new, 6'-0\" x 7'-0\""]


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "doors.csv is empty."),
        (b"\x00\x01", "doors.csv is not text"),
        (b"Mark,Size\n", "no door under it"),
    ],
)
def test_a_file_that_is_no_schedule_is_refused_on_the_page(qtbot, page, tmp_path, content, said):
    path = tmp_path / "doors.csv"
    path.write_bytes(content)
    read(qtbot, page, path)
    assert said in page.refusal.text()
    assert page.split.isHidden()
    assert not page.invitation.isHidden()
    read(qtbot, page, DOORS)
    assert page.refusal.isHidden()


def test_a_fault_that_is_chosen_is_shown_in_the_rows(qtbot, page):
    read(qtbot, page, DOORS)
    page.lists.faults.setCurrentCell(1, 0)
    assert page.view.currentIndex().row() == page.preview.row_of(15)
    assert page.view.currentIndex().column() == 3


def test_the_keyboard_brings_a_chooser_into_view(qtbot, page):
    read(qtbot, page, DOORS)
    page.resize(500, 600)
    QApplication.processEvents()
    before = page.view.horizontalScrollBar().value()
    last = page.view.header.fields[-1]
    QApplication.sendEvent(last, QFocusEvent(QEvent.Type.FocusIn, Qt.FocusReason.TabFocusReason))
    assert page.view.horizontalScrollBar().value() > before
    assert last.geometry().right() <= page.view.header.viewport().width() + 4


def test_every_chooser_has_a_name_and_follows_its_column(qtbot, page):
    read(qtbot, page, DOORS)
    assert page.view.header.fields[3].accessibleName() == "what is taken from Size"
    assert page.view.header.units[3].accessibleName() == "unit of bare numbers in Size"
    page.view.setColumnWidth(1, 300)
    assert page.view.header.fields[0].width() == 296
    assert page.view.header.fields[1].x() == page.view.header.sectionViewportPosition(2) + 2


def test_it_follows_the_job(qtbot, page, session, file):
    read(qtbot, page, file(*GOOD))
    assert outcomes(page)[0] == "opening width 36 in → 42 in"
    session.select("101A")
    session.edit("size.width", 42)
    page.show_state("edit")
    assert outcomes(page)[0] == "as it is in the job"
    session.undo()
    page.show_state("undo")
    assert outcomes(page)[0] == "opening width 36 in → 42 in"


def test_what_was_settled_is_said_by_the_window(qtbot, page, session, file):
    session.select("101A")
    session.edit("order_state", "ordered")
    said = []
    session.noted.connect(said.append)
    read(qtbot, page, file(*GOOD))
    assert "it is marked ordered" in outcomes(page)[0]
    page.take.every.click()
    assert len(said) == 1
    assert "101A is marked ordered" in said[0]


def test_a_long_file_is_read_in_pieces_and_can_be_stopped(qtbot, page, file, monkeypatch):
    monkeypatch.setattr(runner, "FIRST", 0.0)
    rows = [["Mark", "Size", "Hand"], *([f"N{n}", "3070", "LH"] for n in range(3000))]
    page.read(file(*rows))
    assert page.work.pieces.running
    assert not page.progress.isHidden()
    assert not page.choose.isEnabled()
    page.progress.cancel.click()
    assert not page.work.pieces.running
    assert page.progress.isHidden()
    assert page.work.table is None
    read(qtbot, page, file(*rows))
    assert page.take.every.text() == "Take all 3,000"


def test_a_file_that_is_refused_late_says_so(qtbot, page, file, monkeypatch):
    def refused_late(*_):
        yield 1
        raise IntakeError("line 3000 cannot be read")

    monkeypatch.setattr(runner, "FIRST", 0.0)
    monkeypatch.setattr(work, "rows_steps", refused_late)
    page.read(file(*GOOD))
    assert not page.progress.isHidden()
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    assert page.refusal.text() == "Line 3000 cannot be read."
    assert not page.refusal.isHidden()
    assert page.progress.isHidden()
    assert page.choose.isEnabled()


def test_a_job_that_changes_meanwhile_is_compared_again(qtbot, page, session, file, monkeypatch):
    session.changed.connect(page.show_state)
    monkeypatch.setattr(runner, "FIRST", 0.0)
    compared = work.compared_steps

    def compared_while_it_changes(rows, reading, job):
        steps = compared(rows, reading, job)
        yield next(steps)
        if job.openings[0].size.width != 42:
            session.select("101A")
            session.edit("size.width", 42)
        return (yield from steps)

    monkeypatch.setattr(work, "compared_steps", compared_while_it_changes)
    page.read(file(*GOOD))
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    (same,) = [row for row in page.work.compared.good if row.opening.mark == "101A"]
    assert same.before is session.job.openings[0]


def test_a_list_of_thousands_says_how_many_more(qtbot, page, file):
    read(qtbot, page, file(["Mark", "Size"], *([f"N{n}", f"big {n}"] for n in range(500))))
    assert page.lists.tabText(0) == "Faults 500"
    assert page.lists.faults.rowCount() == 401
    assert page.lists.faults.text(400, 2) == "and 100 more"


def test_the_sheet_of_a_workbook_is_chosen(qtbot, page, tmp_path):
    book = Workbook()
    book.active.append(["Mark", "Size"])
    book.active.append(["900", "3070"])
    other = book.create_sheet("Second floor")
    for row in (["Mark", "Size"], ["901", "3070"], ["902", "3070"]):
        other.append(row)
    path = tmp_path / "doors.xlsx"
    book.save(path)
    read(qtbot, page, path)
    assert not page.sheets.isHidden()
    assert page.take.every.text() == "Take all 1"
    assert page.words.text().startswith("doors.xlsx, Sheet: 1 row under")
    page.sheets.setCurrentText("Second floor")
    page.sheets.activated.emit(1)
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    assert page.take.every.text() == "Take all 2"


def test_the_button_asks_for_the_file(qtbot, page, monkeypatch):
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(DOORS), ""))
    page.choose.click()
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    assert page.work.path == DOORS
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: ("", ""))
    page.choose.click()
    assert page.work.path == DOORS


def test_a_file_may_be_dropped_on_it(qtbot, page):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(DOORS))])
    where = (
        QPointF(5, 5),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    enters = QDragEnterEvent(QPoint(5, 5), *where[1:])
    enters.ignore()
    page.dragEnterEvent(enters)
    assert enters.isAccepted()
    page.dropEvent(QDropEvent(*where))
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    assert page.work.path == DOORS


def test_a_job_that_has_no_room_is_refused_on_the_page(qtbot, page, session, file, monkeypatch):
    monkeypatch.setattr("configurator.model.job.MOST_OPENINGS", 14)
    monkeypatch.setattr("configurator.ui.state.edits.MOST_OPENINGS", 14)
    before = session.job
    read(qtbot, page, file(*GOOD))
    page.take.every.click()
    assert "a job may have up to" in page.refusal.text().lower()
    assert session.job is before
    assert page.work.table is not None


def test_the_wheel_does_not_change_what_a_column_gives(qtbot, page):
    read(qtbot, page, DOORS)
    combo = page.view.header.fields[0]
    turned = QWheelEvent(
        QPointF(5, 5), QPointF(5, 5), QPoint(0, -120), QPoint(0, -120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(combo, turned)
    assert combo.currentData() == "mark"


def test_the_window_turns_to_it_and_back(qtbot, window):
    window.commands.actions_by_name["import"].trigger()
    page = window.pages.made["import"]
    qtbot.waitUntil(page.isVisible)
    assert window.columns.isHidden()
    read(qtbot, page, DOORS)
    page.take.good.click()
    assert not window.columns.isHidden()
    assert not window.commands.actions_by_name["import"].isChecked()
    assert window.line.text().startswith("Taken from door_schedule.csv")
    assert window.session.mark == "301A"
    window.session.undo()


# --- What is asked, kept and reported ---


def test_a_question_about_rows_is_answered_once(qtbot, page, session, file):
    read(qtbot, page, file(["Mark", "Size", "Remarks"], ["900", "3070", "Pocket door"], ["901", "3070", "x"]))
    asked = page.asked["no hinged door"]
    assert not asked.isHidden()
    assert asked.words.text().startswith("1 row has no door on butt hinges. Openings without butt hinges are")
    choose(asked.answers, "leave out")
    assert outcomes(page)[1] == "new, 3'-0\" x 7'-0\""
    assert outcomes(page)[0] == "left out: it is a pocket door"
    page.take.every.click()
    assert "901" in marks(session)
    assert "900" not in marks(session)


def test_columns_that_are_not_read_are_named_and_can_be_kept(qtbot, page, session, file):
    read(qtbot, page, file(["Mark", "Size", "Keynote"], ["900", "3070", "8.14"]))
    assert "Not read 1" in tab_counts(page)
    assert page.keep.isVisible()
    page.keep.click()
    assert page.keep.isHidden()
    page.take.every.click()
    assert session.opening.other_columns == {"Keynote": "8.14"}


def test_cells_that_read_alike_are_put_right_together(qtbot, page, file, monkeypatch):
    read(
        qtbot, page, file(["Mark", "Size", "Door Matl"], *([f"N{n}", "3070", "POTMETAL"] for n in range(30)))
    )
    assert page.lists.faults.rowCount() == 1
    assert page.lists.faults.text(0, 0) == "2 and 29 more"
    monkeypatch.setattr(QInputDialog, "getText", lambda *_, **__: ("HM", True))
    page.lists.faults.opened.emit(None)  # nothing is chosen
    assert page.lists.faults.rowCount() == 1
    page.lists.faults.setCurrentCell(0, 0)
    page.lists.faults.opened.emit(None)
    assert page.take.every.text() == "Take all 30"
    assert page.take.every.isEnabled()


def test_the_name_above_the_table_is_offered(qtbot, page, session, file):
    session.edit("job.name", None)
    read(qtbot, page, file(["Kestrel Point Annex"], ["Mark", "Size"], ["900", "3070"]))
    assert page.take.name.isVisible()
    assert page.take.name.isChecked()
    page.take.every.click()
    assert session.job.job.name == "Kestrel Point Annex"
    session.undo()
    assert session.job.job.name is None


def test_the_report_is_saved(qtbot, page, file, tmp_path, monkeypatch):
    read(qtbot, page, file(*GOOD))
    kept = tmp_path / "as-read.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(kept), ""))
    said = []
    page.said.connect(said.append)
    page.save.click()
    assert said == ["The report is in as-read.csv."]
    assert "opening width 36 in" in kept.read_text()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "no" / "x.csv"), ""))
    page.save.click()
    assert said[-1].startswith("The report was not written")


def test_several_sheets_of_doors_are_offered(qtbot, page, tmp_path):
    book = Workbook()
    for name in ("Level 1", "Level 2"):
        sheet = book.create_sheet(name)
        for row in (["Mark", "Size", "Hand"], [f"90{name[-1]}", "3070", "LH"]):
            sheet.append(row)
    path = tmp_path / "doors.xlsx"
    book.save(path)
    read(qtbot, page, path)
    assert "2 sheets with the headings of a door schedule" in page.refusal.text()
    assert not page.sheets.isHidden()
    page.sheets.setCurrentText("Level 2")
    page.sheets.activated.emit(page.sheets.currentIndex())
    qtbot.waitUntil(lambda: not page.work.pieces.running)
    assert text(page, 0, 1) == "902"
    assert page.refusal.isHidden()
