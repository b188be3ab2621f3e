"""The schedule in its window: real keys, real clicks, the clipboard of the machine."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit

from configurator.ui.kit import runner
from configurator.ui.schedule.columns import PLACES, UNKNOWN
from configurator.ui.schedule.page import SchedulePage
from configurator.units import Display
from tests.ui.conftest import preferences_in


def row_of(page, mark):
    model = page.schedule
    return next(row for row in range(model.rowCount()) if mark in model.index(row, 0).data().split(", "))


def choose(page, *marks):
    rows = sorted(row_of(page, mark) for mark in marks)
    page.table.choose(rows, rows[0])


def marks(page):
    return [page.schedule.index(row, 0).data() for row in range(page.schedule.rowCount())]


def find(qtbot, page, text):
    page.finder.words.clear()
    qtbot.keyClicks(page.finder.words, text)


def finish(page):
    """Let what was begun come to its end, however busy the machine is."""
    while page.working.running or page.trying.running:
        QApplication.processEvents()


def set_on_chosen(page, path, value, wait=True):
    page.change.choose(path)
    if page.change.values.currentWidget() is page.change.word:
        page.change.word.setCurrentText(value)
    else:
        page.change.text.setText(value)
    page.change.button.click()
    if wait:
        finish(page)


def copied():
    return QGuiApplication.clipboard().text()


def paste(page, text):
    QGuiApplication.clipboard().setText(text)
    page.buttons["paste"].click()
    finish(page)


# --- Coming and going ---


def test_it_stands_in_place_of_the_work_and_gives_it_back(qtbot, window, in_window):
    page = in_window
    assert page.isVisible()
    assert not window.work.isVisible()
    assert page.first_stop is page.table
    choose(page, "130A")
    qtbot.keyClick(page.table, Qt.Key.Key_Return)
    assert not page.isVisible()
    assert window.work.isVisible()
    assert window.openings.isVisible()
    assert window.work.form.field("mark").editor.text() == "130A"
    assert not window.commands.actions_by_name["schedule"].isChecked()


def test_a_double_click_goes_to_the_work_too(qtbot, window, in_window):
    page = in_window
    place = page.table.visualRect(page.schedule.index(row_of(page, "140A"), 1)).center()
    qtbot.mouseClick(page.table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    qtbot.mouseDClick(page.table.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert window.session.mark == "140A"
    assert window.work.isVisible()


def test_the_row_of_the_opening_on_show_is_the_current_one_both_ways(qtbot, session, page):
    assert page.table.currentIndex().row() == row_of(page, "112A")
    session.select("171A")
    assert page.table.currentIndex().row() == row_of(page, "171A")
    qtbot.keyClick(page.table, Qt.Key.Key_Down)
    assert session.mark == marks(page)[row_of(page, "171A") + 1]


def test_no_row_is_the_current_one_where_the_opening_on_show_is_not_found(qtbot, session, page):
    find(qtbot, page, "linen")
    session.select("171A")
    assert not page.table.currentIndex().isValid()
    assert page.chosen_places() == []
    find(qtbot, page, "toilet")
    assert page.table.currentIndex().row() == row_of(page, "171A")


def test_the_picture_can_stand_below_and_follows_the_row(qtbot, window, in_window):
    page = in_window
    page.buttons["work"].click()
    assert window.work.isVisible()
    assert page.isVisible()
    choose(page, "205A")
    assert window.work.form.field("mark").editor.text() == "205A"
    page.buttons["work"].click()
    assert not window.work.isVisible()


def test_nothing_out_of_sight_is_drawn_and_an_export_is_of_the_opening_on_show(
    window, in_window, monkeypatch
):
    page = in_window
    choose(page, "171A")
    assert window.work.form.field("mark").editor.text() == "112A"
    exported = []
    monkeypatch.setattr(window.files, "export", exported.append)
    window.commands.actions_by_name["export"].trigger()
    assert len(exported) == 1
    assert window.work.form.field("mark").editor.text() == "171A"


def test_what_is_in_view_is_worked_out_behind_and_shown(qtbot, page):
    hinge = page.schedule.index(0, PLACES["hinge"])
    page.answers.__init__()
    page.show_state("open")
    assert hinge.data() == UNKNOWN
    qtbot.waitUntil(lambda: not page.unknown())
    assert hinge.data() == "3 x 4-1/2 x 4"


# --- Finding and sorting ---


def test_words_find_openings_and_escape_shows_all_again(qtbot, page):
    find(qtbot, page, "corridor")
    assert marks(page) == ["112A", "140A", "160A"]
    assert page.finder.count.text() == "3 of 14 openings"
    assert page.searched.isVisible() == bool(page.unknown())
    qtbot.keyClick(page.finder.words, Qt.Key.Key_Escape)
    assert len(marks(page)) == 14
    find(qtbot, page, "no such thing")
    assert marks(page) == []
    assert page.words.isVisible()
    assert "No opening is like that" in page.words.text()


def test_searching_works_out_what_it_looks_through(qtbot, page, monkeypatch):
    page.behind.cancel()
    page.answers.__init__()
    monkeypatch.setattr(runner, "FIRST", 0.0)
    page.finder.words.setText("178.8")
    page.arrange()
    page.behind.cancel()
    assert marks(page) == []
    assert "of 14 openings are not worked out yet" in page.searched.text()
    assert page.work_out.isHidden()
    qtbot.waitUntil(lambda: not page.working.running)
    assert marks(page) == ["112A", "112B"]
    assert page.searched.isHidden()


def test_where_that_is_stopped_it_is_said_and_can_be_asked_for(qtbot, page, monkeypatch):
    page.behind.cancel()
    page.answers.__init__()
    monkeypatch.setattr(runner, "FIRST", 0.0)
    page.finder.words.setText("178.8")
    page.arrange()
    page.behind.cancel()
    page.working_line.cancel.click()
    assert page.work_out.isVisible()
    page.arrange()
    assert not page.working.running, "it was stopped, and is not begun again unasked"
    page.behind.cancel()
    page.work_out.click()
    qtbot.waitUntil(lambda: not page.working.running)
    assert marks(page) == ["112A", "112B"]
    assert page.searched.isHidden()


def test_all_of_a_usual_job_is_worked_out_unasked(qtbot, page):
    qtbot.waitUntil(lambda: not page.unknown())
    page.table.horizontalHeader().setSortIndicator(PLACES["findings"], Qt.SortOrder.DescendingOrder)
    assert not page.working.running


def test_columns_are_chosen_and_remembered(qtbot, session, tmp_path):
    preferences = preferences_in(tmp_path)

    def opened():
        made = SchedulePage(session)
        qtbot.addWidget(made)
        made.remember_in(preferences)
        return made

    page = opened()
    assert page.table.isColumnHidden(PLACES["set"])
    assert not page.table.isColumnHidden(PLACES["frame"])
    by_title = {action.text(): action for action in page.finder.columns.menu().actions()}
    assert "Mark" not in by_title
    by_title["Set"].trigger()
    by_title["Frame"].trigger()
    for one in (page, opened()):
        assert not one.table.isColumnHidden(PLACES["set"])
        assert one.table.isColumnHidden(PLACES["frame"])


def test_openings_are_grouped_by_what_the_schedule_says_of_them(qtbot, session, page):
    session.edit("hardware_set", "07")
    page.finder.grouped.setCurrentIndex(page.finder.grouped.findData("set"))
    page.finder.grouped.activated.emit(0)
    assert page.schedule.rowCount() == 2
    row = row_of(page, "112B")
    assert page.schedule.index(row, PLACES["size"]).data().endswith("different")
    qtbot.waitUntil(lambda: not page.unknown())
    assert page.schedule.index(row, PLACES["hinge"]).data().endswith("different")


def test_status_and_findings_are_chosen(qtbot, session, page):
    session.edit("order_state", "ordered")
    page.finder.status.setCurrentIndex(page.finder.status.findData("ordered"))
    page.finder.status.activated.emit(0)
    assert marks(page) == ["112A"]
    page.finder.status.setCurrentIndex(0)
    page.finder.findings.setCurrentIndex(page.finder.findings.findData("error"))
    page.finder.findings.activated.emit(0)
    qtbot.waitUntil(lambda: not page.working.running)
    assert marks(page) == ["126C", "160A"]


def test_heads_sort_up_down_and_back_to_the_order_of_the_job(qtbot, page):
    head, was = page.table.horizontalHeader(), marks(page)
    place = head.sectionViewportPosition(PLACES["mark"]) + 20
    for order in (sorted(was), sorted(was, reverse=True), was):
        qtbot.mouseClick(
            head.viewport(), Qt.MouseButton.LeftButton, pos=head.rect().center().__class__(place, 8)
        )
        assert marks(page) == order
        assert page.table.currentIndex().row() == row_of(page, "112A")


def test_sorting_by_what_is_worked_out_works_everything_out_first(qtbot, page):
    page.table.horizontalHeader().setSortIndicator(PLACES["angle"], Qt.SortOrder.AscendingOrder)
    qtbot.waitUntil(lambda: not page.working.running)
    assert page.unknown() == []
    assert marks(page)[:3] == ["126C", "171A", "151A"]
    assert page.working_line.isHidden()


def test_it_can_be_stopped_and_the_table_stays_as_it_was(qtbot, page, monkeypatch):
    page.behind.cancel()
    page.answers.__init__()
    monkeypatch.setattr(runner, "FIRST", 0.0)
    was = marks(page)
    page.table.horizontalHeader().setSortIndicator(PLACES["findings"], Qt.SortOrder.DescendingOrder)
    assert page.working_line.isVisible()
    assert page.working_line.words.text() == "Working out openings: 0 of 14"
    page.working_line.cancel.click()
    assert page.working_line.isHidden()
    assert marks(page) == was
    assert page.table.horizontalHeader().sortIndicatorSection() not in range(len(PLACES))


def test_like_openings_stand_together_with_their_marks_and_total(qtbot, session, page):
    session.add_opening(session.opening)
    session.edit("quantity", 4)
    page.finder.grouped.setCurrentIndex(page.finder.grouped.findData("like"))
    page.finder.grouped.activated.emit(1)
    row = row_of(page, "112C")
    assert page.schedule.index(row, 0).data() == "112A, 112C"
    assert page.schedule.index(row, PLACES["quantity"]).data() == "5"
    assert page.finder.count.text() == "15 openings in 14 rows, 2 chosen"
    assert not page.buttons["paste"].isEnabled()
    set_on_chosen(page, "status", "approved")
    assert [each.status for each in session.job.openings if each.status != "assumed"] == ["approved"] * 2


def test_rows_are_always_those_of_the_job_while_something_is_worked_out(qtbot, session, page, monkeypatch):
    """Were the old rows still on show, what is removed next would be another opening."""
    finish(page)
    page.table.horizontalHeader().setSortIndicator(PLACES["angle"], Qt.SortOrder.AscendingOrder)
    finish(page)
    monkeypatch.setattr(runner, "FIRST", 0.0)
    choose(page, "101A")
    page.buttons["duplicate"].click()
    assert page.working.running
    assert page.schedule.openings is session.job.openings
    assert [marks(page)[row] for row in page.table.chosen_rows()] == ["101B"]
    qtbot.keyClick(page.table, Qt.Key.Key_Delete)
    assert "101B" not in [each.mark for each in session.job.openings]
    finish(page)
    assert marks(page)[:3] == ["126C", "171A", "151A"]


def test_another_wish_takes_the_place_of_the_one_being_worked_out(qtbot, page, monkeypatch):
    page.behind.cancel()
    page.answers.__init__()
    monkeypatch.setattr(runner, "FIRST", 0.0)
    page.table.horizontalHeader().setSortIndicator(PLACES["angle"], Qt.SortOrder.AscendingOrder)
    find(qtbot, page, "corridor")
    finish(page)
    assert marks(page) == ["140A", "160A", "112A"]
    page.table.horizontalHeader().setSortIndicator(PLACES["mark"], Qt.SortOrder.DescendingOrder)
    assert marks(page) == ["160A", "140A", "112A"]


# --- Changing ---


def test_a_trial_that_is_stopped_changes_nothing(bare_window, page, monkeypatch):
    monkeypatch.setattr(runner, "FIRST", 0.0)
    choose(page, "101A", "112A")
    set_on_chosen(page, "quantity", "5", wait=False)
    page.trying_line.cancel.click()
    finish(page)
    assert page.panel.heading.text() == "Stopped. Nothing was changed."
    assert not bare_window.isWindowModified()


def test_several_are_changed_as_one_named_step(bare_window, session, page):
    choose(page, "101A", "112A", "205A")
    assert page.change.button.text() == "Set on 3 openings"
    set_on_chosen(page, "use.wanted_angle", "90")
    assert [each.use.wanted_angle for each in session.job.openings[:4]] == [90, 90, 180, 90]
    assert session.history.undo_name == "change wanted angle of 3 openings"
    assert page.panel.heading.text() == "3 changed: undo takes all of it back."
    session.undo()
    assert not bare_window.isWindowModified()
    assert len(page.table.chosen_rows()) == 3


@pytest.mark.parametrize(
    ("path", "value", "found"),
    [
        ("status", "approved", "approved"),
        ("hand", "LHR", "LHR"),
        ("frame.kind", "wood with casing", "wood with casing"),
        ("quantity", "7", 7),
        ("hinge.width", "5", 5.0),
        ("use.fire_rated", "yes", True),
        ("hand", "not given", None),
    ],
)
def test_each_kind_of_field_can_be_set(session, page, path, value, found):
    choose(page, "112A")
    set_on_chosen(page, path, value)
    assert session.value(path) == found


def test_all_or_nothing_with_each_refusal_named_by_its_mark(session, page):
    choose(page, "101A", "112A", "118A")
    job = session.job
    set_on_chosen(page, "frame.kind", "welded steel, butted")
    assert session.job is job
    assert page.panel.heading.text() == "Nothing was changed, for 2 reasons:"
    lines = page.panel.text.toPlainText().splitlines()
    assert [line.split(":")[0] for line in lines] == ["101A", "112A"]
    assert all("frame proud of wall must be given" in line for line in lines)
    page.panel.cross.click()
    assert page.panel.isHidden()


def test_what_cannot_be_read_is_refused_before_anything_is_tried(bare_window, page):
    choose(page, "101A")
    set_on_chosen(page, "quantity", "two")
    assert page.panel.text.toPlainText() == "quantity: “two” is not a whole number."
    assert not bare_window.isWindowModified()


def test_a_change_meanwhile_is_not_run_over(qtbot, session, page, monkeypatch):
    monkeypatch.setattr(runner, "FIRST", 0.0)
    choose(page, "101A", "112A")
    set_on_chosen(page, "quantity", "5", wait=False)
    assert page.trying_line.isVisible()
    set_on_chosen(page, "quantity", "6", wait=False)
    assert "still being tried" in page.panel.text.toPlainText()
    session.edit("quantity", 3)
    finish(page)
    assert "changed while this was tried" in page.panel.text.toPlainText()
    assert sorted(each.quantity for each in session.job.openings)[-2:] == [2, 3]


def test_a_cell_is_typed_over_and_refused_with_its_reason(qtbot, session, page):
    choose(page, "112A")
    page.table.setCurrentIndex(page.schedule.index(1, PLACES["quantity"]))
    qtbot.keyClick(page.table, Qt.Key.Key_F2)
    editor = page.table.viewport().findChild(QLineEdit)
    assert editor.accessibleName() == "Quantity"
    editor.selectAll()
    qtbot.keyClicks(editor, "4")
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: session.value("quantity") == 4)
    assert page.isVisible()
    assert session.history.undo_name == "change quantity of 112A"
    page.schedule.setData(page.schedule.index(1, PLACES["quantity"]), "0")
    assert "0 was given" in page.panel.text.toPlainText()


def test_a_cell_of_words_is_chosen(qtbot, session, page):
    page.table.setCurrentIndex(page.schedule.index(1, PLACES["hand"]))
    qtbot.keyClick(page.table, Qt.Key.Key_F2)
    editor = page.table.viewport().findChild(QComboBox)
    assert (editor.accessibleName(), editor.currentText()) == ("Hand", "RH")
    editor.setCurrentText("LHR")
    editor.activated.emit(editor.currentIndex())
    assert session.value("hand") == "LHR"


def test_a_word_is_said_when_what_was_ordered_is_changed(bare_window, page):
    choose(page, "112A")
    set_on_chosen(page, "order_state", "ordered")
    assert bare_window.line is None or bare_window.line.isHidden()
    set_on_chosen(page, "quantity", "5")
    assert bare_window.line.text().startswith("112A is marked ordered")


# --- Rows ---


def test_rows_are_duplicated_under_the_next_marks_and_removed(qtbot, bare_window, session, page):
    choose(page, "112A", "205A")
    page.buttons["duplicate"].click()
    assert marks(page)[1:6] == ["112A", "112C", "112B", "205A", "205B"]
    assert session.history.undo_name == "duplicate 2 openings"
    assert [marks(page)[row] for row in page.table.chosen_rows()] == ["112C", "205B"]
    qtbot.keyClick(page.table, Qt.Key.Key_Delete)
    assert len(marks(page)) == 14
    assert session.history.undo_name == "remove 2 openings"
    assert page.panel.heading.text() == "2 openings removed: undo brings back what was there."
    session.undo()
    session.undo()
    assert not bare_window.isWindowModified()


def test_rows_go_to_a_spreadsheet_and_come_back(qtbot, session, page):
    session.edit("location", "=1+1")
    session.edit("questions", "Which lock?\nWho?")
    choose(page, "112A", "205A")
    qtbot.keyClick(page.table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    lines = copied().split("\n")
    assert lines[0].split("\t")[:4] == ["Mark", "Location", "Quantity", "Hand"]
    assert lines[1].startswith("112A\t'=1+1\t1\tRH\t")
    job = session.job
    qtbot.keyClick(page.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    finish(page)
    assert session.job is job
    assert page.panel.heading.text().startswith("Nothing is different.")
    paste(page, copied().replace("112A", "900").replace("205A", "901"))
    added = session.job.openings[-2:]
    assert [each.mark for each in added] == ["900", "901"]
    assert (added[0].location, added[0].questions) == ("=1+1", "Which lock?\nWho?")
    assert (added[1].size.width, added[1].hand, added[1].frame.kind) == (32, "RH", "wood with casing")
    assert session.history.undo_name == "paste 2 rows"
    assert page.panel.heading.text().startswith("2 added: undo takes all of it back. Not read")


def test_a_paste_is_taken_whole_or_not_at_all(session, page):
    job = session.job
    paste(page, "mark\tquantity\thand\n101A\t2\tLH\n112A\t0\tup\n777\t1\tRH")
    assert session.job is job
    assert page.panel.text.toPlainText().splitlines() == [
        "row 3: quantity must be at least 1 and at most 100000; 0 was given",
        "row 3: hand is one of 'LH', 'RH', 'LHR' or 'RHR'; up was given",
        "row 4, opening size: this key is missing and must be given",
    ]


def test_cells_are_pasted_from_the_current_one_on(session, page):
    page.table.setCurrentIndex(page.schedule.index(2, PLACES["quantity"]))
    paste(page, "5\tLH\n6\tRH")
    assert [(each.quantity, each.hand) for each in session.job.openings[2:4]] == [(5, "LH"), (6, "RH")]


def test_questions_are_listed_and_copied(session, page):
    page.buttons["questions"].click()
    assert page.panel.heading.text().startswith("No opening of this job has a question")
    session.edit("questions", "Which lock?")
    page.buttons["questions"].click()
    assert page.panel.heading.text() == "1 opening has a question to the architect."
    page.panel.copy.click()
    assert copied().endswith("112A, Crew mess to corridor\n  Which lock?")


def test_an_empty_job_says_what_to_do_and_takes_a_paste(qtbot, session, page):
    page.table.selectAll()
    page.buttons["remove"].click()
    assert marks(page) == []
    assert "no openings yet" in page.words.text()
    assert page.words.isVisible()
    assert not page.buttons["duplicate"].isEnabled()
    assert not page.change.button.isEnabled()
    page.actions_of.duplicate()
    page.actions_of.remove()
    page.actions_of.copy()
    paste(page, "301\tGalley\t2\tLH\t3070")
    assert marks(page) == ["301"]
    assert page.words.isHidden()
    page.buttons["add"].click()
    assert marks(page) == ["301", "101"]


def test_every_control_is_reached_by_keys_and_has_a_name(page):
    seen, widget = [], page.finder.words
    for _ in range(300):
        if page.isAncestorOf(widget) and widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
            seen.append(widget)
        widget = widget.nextInFocusChain()
    finder, change = page.finder, page.change
    wanted = [finder.words, finder.status, finder.findings, finder.grouped, page.table, change.field]
    wanted += [change.button, *page.buttons.values()]
    start = seen.index(finder.words)
    assert [widget for widget in seen[start:] if widget in wanted][: len(wanted)] == wanted
    for widget in (
        page.table,
        page.finder.words,
        page.finder.status,
        page.finder.findings,
        page.change.field,
    ):
        assert widget.accessibleName()
    assert page.change.text.accessibleName() == page.change.word.accessibleName() == "value to set"


def test_find_is_a_key_and_goes_on_to_the_table(qtbot, page):
    qtbot.keyClick(page.table, Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(page.finder.words.hasFocus)
    qtbot.keyClick(page.finder.words, Qt.Key.Key_Down)
    assert page.table.hasFocus()


def test_colours_follow_the_theme_and_lengths_the_units(bare_window, session, page):
    page.say("Done.")
    before = page.panel.heading.palette().windowText().color()
    bare_window.commands.actions_by_name["dark"].trigger()
    assert page.panel.heading.palette().windowText().color().lightness() > before.lightness() + 40
    session.show_in(Display(metric=True))
    assert page.schedule.index(0, PLACES["size"]).data() == "914.4 x 2133.6 mm"
    page.finder.words.setText("914.4")
    page.arrange()
    assert "101A" in marks(page)
    bare_window.commands.actions_by_name["dark"].trigger()


def test_another_file_is_another_schedule(session, page):
    session.start_new()
    assert marks(page) == []
    session.add_opening()
    assert marks(page) == ["101"]
    assert session.mark == "101"


def test_what_is_said_under_the_table_goes_with_the_next_change(session, page):
    page.say("102A removed: undo brings back what was there.")
    assert page.panel.isVisible()
    session.edit("quantity", 7)
    assert page.panel.isHidden()
