"""The window as a whole: one state, every view of it."""

import json
import shutil
from pathlib import Path
from threading import Event

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel, QMessageBox

from configurator.project_file import load
from configurator.project_file.recovery import recovery_folder
from configurator.ui.app import open_window, report
from configurator.ui.kit.runner import Work
from configurator.ui.state.session import Session
from configurator.ui.window import failure
from configurator.units import Display
from tests.ui.form.test_form import type_into


def cells(window, name):
    table = window.work.comparison
    row = next(r for r in range(table.rowCount()) if table.text(r, 0) == name)
    return [table.text(row, column) for column in range(1, table.columnCount())]


def heads(window):
    table = window.work.comparison
    return [head.title for head in table.shown.heads]


def test_two_widths_stand_side_by_side_with_the_difference_in_words(read_window):
    window = read_window
    assert heads(window) == ["Measured", "4 in hinge", "4-1/2 in hinge", "4 to 4-1/2 in"]
    assert cells(window, "Pin axis off door face") == ["1/2 in", "3/4 in", "1/4 in farther off the door"]
    assert cells(window, "Greatest angle, bare") == [
        "171.7°, leaf on the chair rail",
        "180°",
        "8.2° farther",
    ]


def test_plain_words_come_first_when_asked(window):
    window.commands.actions_by_name["plain"].trigger()
    assert cells(window, "Walk-through width, door square open")[0] == "33-1/16 in"
    assert window.preferences.plain_words


def test_an_edit_changes_table_and_title_and_is_undone(qtbot, window):
    assert not window.isWindowModified()
    type_into(qtbot, window.work.form.field("door.hinge_backset"), "3/8")
    assert cells(window, "Pin axis off door face")[0] == "5/8 in"
    assert window.isWindowModified()
    undo = window.commands.actions_by_name["undo"]
    assert undo.toolTip() == "Undo: change door hinge backset of 112A"
    undo.trigger()
    assert cells(window, "Pin axis off door face")[0] == "1/2 in"
    assert not window.isWindowModified()
    window.commands.actions_by_name["redo"].trigger()
    assert cells(window, "Pin axis off door face")[0] == "5/8 in"


def test_the_last_good_picture_stays_when_a_value_is_refused(qtbot, window):
    before = window.work.picture.canvas.grab().toImage()
    type_into(qtbot, window.work.form.field("door.thickness"), "0")
    assert window.work.picture.canvas.isVisible()
    assert window.work.picture.canvas.grab().toImage() == before


def test_slider_and_field_swing_the_same_door(qtbot, window):
    before = window.work.picture.canvas.grab().toImage()
    window.work.swing.slider.setValue(455)
    assert window.session.angle == 45.5
    assert window.work.swing.angle.value() == 45.5
    assert window.work.picture.canvas.grab().toImage() != before
    window.work.swing.angle.setValue(90)
    assert window.work.swing.slider.value() == 900
    qtbot.keyClick(window.work.swing.slider, Qt.Key.Key_Right)
    assert window.session.angle == 91
    qtbot.keyClick(window.work.swing.slider, Qt.Key.Key_PageUp)
    assert window.session.angle == 106


@pytest.mark.parametrize(
    ("start", "key", "end"),
    [
        (0, Qt.Key.Key_Left, 0),
        (1, Qt.Key.Key_Left, 0),
        (90, Qt.Key.Key_Right, 91),
        (180, Qt.Key.Key_Right, 180),
        (90, Qt.Key.Key_PageUp, 105),
        (10, Qt.Key.Key_PageDown, 0),
    ],
)
def test_keys_swing_the_door_from_anywhere_between_closed_and_fully_open(qtbot, window, start, key, end):
    window.session.swing(start)
    qtbot.keyClick(window.work.form.field("mark").editor, key, Qt.KeyboardModifier.AltModifier)
    assert window.session.angle == end


def test_the_window_is_painted_before_the_work_area_and_that_before_the_picture(qtbot, session, preferences):
    window = open_window(session, preferences)
    qtbot.addWidget(window)
    assert window.work is None
    window.fill()
    assert window.work.form.field("door.thickness").editor.text() == "1-3/4 in"
    assert window.work.picture.canvas is None
    window.begin()
    assert window.work.picture.canvas is not None


def test_widths_are_added_and_taken_away(qtbot, window):
    widths = window.work.widths
    widths.entry.setText("5")
    qtbot.keyClick(widths.entry, Qt.Key.Key_Return)
    assert heads(window)[1:4] == ["4 in hinge", "4-1/2 in hinge", "5 in hinge"]
    assert widths.entry.text() == ""
    qtbot.mouseClick(widths.chips[0], Qt.MouseButton.LeftButton)
    assert window.session.opening.compare == (4.5, 5)
    assert [chip.text() for chip in widths.chips] == ["4-1/2 ×", "5 ×"]


@pytest.mark.parametrize(
    ("typed", "said"), [("4", "stands twice"), ("0", "from 1 to 24"), ("wide", "not a length")]
)
def test_a_width_that_cannot_be_is_refused_beside_its_field(qtbot, window, typed, said):
    window.work.widths.entry.setText(typed)
    qtbot.keyClick(window.work.widths.entry, Qt.Key.Key_Return)
    assert said in window.work.widths.note.text()
    assert window.work.widths.entry.text() == typed
    assert window.session.opening.compare == (4, 4.5)
    type_into(qtbot, window.work.form.field("door.undercut"), "1/2")
    assert window.session.opening.compare == (4, 4.5)
    assert window.session.opening.door.undercut == 0.5


def test_twelve_widths_do_not_widen_the_window(window):
    window.session.edit("compare", [3, 3.5, 4, 4.25, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8])
    assert len(window.work.widths.chips) == 12
    assert window.minimumSizeHint().width() <= 1280


def test_a_hinge_typed_width_first_is_asked_about(qtbot, window):
    window.session.edit("compare", [4.5, 5])
    window.work.widths.entry.setText("4 x 4-1/2")
    qtbot.keyClick(window.work.widths.entry, Qt.Key.Key_Return)
    assert window.work.widths.note.text() == "4 high? This door takes 4-1/2 high. Did you mean 4-1/2 x 4?"
    assert window.session.opening.compare == (4.5, 5)
    assert window.minimumSizeHint().width() <= 1280
    qtbot.mouseClick(window.work.widths.swap, Qt.MouseButton.LeftButton)
    assert window.session.opening.compare == (4.5, 5, 4)
    assert window.work.widths.note.isHidden()


def test_metric_is_one_switch(window):
    window.units.setCurrentIndex(3)
    window.units.activated.emit(3)
    assert cells(window, "Pin axis off door face")[:2] == ["12.7 mm", "19.1 mm"]
    assert window.preferences.display == Display(metric=True)


def test_a_clear_width_never_rounds_across_its_limit(window):
    # Case A gives 33-1/16 at 36 wide; 1-3/32 narrower leaves 31-31/32, which to 1/16 would round to 32.
    window.session.edit_many({"size": {"width": 34.90625, "height": 84}, "compare": [4]})
    study = window.session.study
    assert study.candidates[0].clear_width_at_90 == pytest.approx(31 + 31 / 32, abs=1e-9)
    assert cells(window, "Clear width at 90")[0] == "31-31/32 in"
    window.session.show_in(Display(16))
    assert cells(window, "Clear width at 90")[0] == "31-15/16 in"


def test_findings_say_severity_sentence_source_and_mark(read_window):
    row = read_window.work.findings.rows[0]
    texts = [label.text() for label in row.findChildren(QLabel)]
    assert texts[0] == "▲ Warning"
    assert "chair rail" in texts[1]
    assert texts[2].endswith("(derived here)")


@pytest.mark.parametrize("mark", ["112A", "126C", "151A", "205A"])
def test_no_finding_and_no_reason_names_its_source_twice(window, mark):
    window.session.select(mark)
    for section in window.work.form.sections.values():
        section.open()
    said = [label.text() for row in window.work.findings.rows for label in row.findChildren(QLabel)]
    said += [field.toolTip() for field in window.work.form.fields().values()]
    assert any("common practice, no source" in text for text in said)
    assert all(text.count("common practice") <= 1 for text in said)


def test_opening_another_and_adding_copying_removing(qtbot, window):
    window.openings.list.setCurrentRow(0)
    assert window.session.mark == "101A"
    assert window.work.form.field("mark").editor.text() == "101A"
    count = window.openings.list.count()
    qtbot.mouseClick(window.openings.copy, Qt.MouseButton.LeftButton)
    assert window.session.mark == "101B"
    qtbot.mouseClick(window.openings.remove, Qt.MouseButton.LeftButton)
    assert window.openings.list.count() == count
    qtbot.mouseClick(window.openings.add, Qt.MouseButton.LeftButton)
    assert window.session.mark == "101"
    assert window.session.study is not None


def test_a_job_without_openings_says_what_to_do(window):
    while window.session.opening is not None:
        window.session.remove_opening()
    assert "Add one" in window.work.picture.words.text()
    assert window.work.picture.words.isVisible()
    assert window.work.form.sections["Opening"].isHidden()
    assert window.work.comparison.rowCount() == 0
    assert window.work.comparison.columnCount() == 0
    assert window.work.swing.isHidden()
    window.session.undo()
    assert window.work.picture.canvas.isVisible()
    assert window.work.swing.isVisible()
    assert heads(window)[-1] == "4 to 4-1/2 in"


def test_save_and_open(qtbot, window, tmp_path, monkeypatch):
    path = tmp_path / "job.json"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    type_into(qtbot, window.work.form.field("location"), "Galley")
    window.commands.actions_by_name["save_as"].trigger()
    assert json.loads(path.read_text())["openings"][1]["location"] == "Galley"
    assert not window.isWindowModified()
    assert "job.json" in window.windowTitle()
    assert window.preferences.recent[0] == path
    window.session.start_new()
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    window.commands.actions_by_name["open"].trigger()
    assert window.session.job.openings[1].location == "Galley"


def test_a_refused_file_leaves_everything_as_it_was(window, tmp_path):
    job = window.session.job
    bad = tmp_path / "bad.json"
    bad.write_text('{"format": "opening-project", "version": 99}')
    window.files.read(bad)
    assert window.session.job is job
    assert "newer program" in window.line.text()
    assert not window.line.isHidden()


def test_a_save_that_fails_says_so_and_keeps_the_work(qtbot, window, tmp_path):
    type_into(qtbot, window.work.form.field("location"), "Galley")
    assert not window.files.write(tmp_path / "no such folder" / "job.json")
    assert "could not be saved" in window.line.text()
    assert window.isWindowModified()


def test_the_picture_is_exported(window, tmp_path, monkeypatch):
    path = tmp_path / "plan.png"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), "PNG picture (*.png)"))
    window.commands.actions_by_name["export"].trigger()
    assert path.read_bytes().startswith(b"\x89PNG")


def test_the_picture_is_exported_from_inside_a_field(qtbot, window, monkeypatch):
    asked = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: asked.append(1) or ("", ""))
    field = window.work.form.field("location").editor
    field.setFocus()
    keys = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    qtbot.keyClick(field, Qt.Key.Key_E, keys)
    assert asked


@pytest.mark.parametrize(
    ("answer", "closes"),
    [(QMessageBox.StandardButton.Cancel, False), (QMessageBox.StandardButton.Discard, True)],
)
def test_closing_with_unsaved_work_asks(qtbot, fresh_window, monkeypatch, answer, closes):
    window = fresh_window
    asked = []
    monkeypatch.setattr(QMessageBox, "question", lambda *_: asked.append(1) or answer)
    type_into(qtbot, window.work.form.field("location"), "Galley")
    assert window.close() is closes
    assert asked


def test_a_refusal_in_a_closed_section_opens_it(window):
    window.work.form.sections["Use"].close_up()
    assert not window.session.edit("use.wanted_angle", 200)
    assert window.work.form.sections["Use"].is_open
    assert "at most 180" in window.work.form.field("use.wanted_angle").note.text()


def test_closing_saved_work_asks_nobody(fresh_window, monkeypatch):
    window = fresh_window
    monkeypatch.setattr(QMessageBox, "question", lambda *_: pytest.fail("asked"))
    assert window.close()


@pytest.mark.parametrize(
    ("answer", "closes"), [(QMessageBox.StandardButton.No, False), (QMessageBox.StandardButton.Yes, True)]
)
def test_closing_while_a_file_is_written_asks(qtbot, fresh_window, monkeypatch, tmp_path, answer, closes):
    window = fresh_window
    window.turn_to("order")
    page = window.pages.made["order"]
    asked, go_on = [], Event()
    monkeypatch.setattr(QMessageBox, "question", lambda *given: asked.append(given[2]) or answer)
    page.beside.start("Writing order.pdf", "order.pdf was not written", lambda _: go_on.wait(60), print)
    assert window.close() is closes
    assert asked == ["Writing order.pdf is under way. Stop and close?"]
    go_on.set()
    qtbot.waitUntil(lambda: not page.beside.running)
    assert window.close()
    assert len(asked) == 1


def test_dark_and_back(qtbot, window):
    light = window.work.picture.canvas.grab().toImage()
    window.commands.actions_by_name["dark"].trigger()
    assert window.preferences.dark
    qtbot.waitUntil(lambda: window.palette().window().color().lightness() < 80)
    assert window.work.picture.canvas.grab().toImage() != light
    window.commands.actions_by_name["dark"].trigger()
    qtbot.waitUntil(lambda: window.palette().window().color().lightness() > 180)
    assert window.work.picture.canvas.grab().toImage() == light


def test_at_1280_by_800_the_picture_is_the_largest_and_eight_rows_are_compared(fresh_window):
    window = fresh_window
    window.resize(1280, 800)
    window.grab()
    assert (window.width(), window.height()) == (1280, 800)
    assert window.work.picture.width() * window.work.picture.height() >= 1280 * 800 * 3 / 8
    table = window.work.comparison
    seen = table.viewport().rect()
    rows = [table.visualRect(table.model().index(row, 0)) for row in range(table.rowCount())]
    assert len([row for row in rows if seen.contains(row.center()) and row.bottom() <= seen.bottom()]) >= 8
    for widget in (
        window.work.form,
        window.work.findings,
        window.work.swing,
        window.work.widths,
        window.work.comparison,
    ):
        corner = widget.mapTo(window, widget.rect().bottomRight())
        assert corner.x() <= 1280
        assert corner.y() <= 800


def test_the_window_fits_half_of_a_wide_screen(window):
    assert window.minimumSizeHint().width() <= 960
    assert window.minimumSizeHint().height() <= 740
    window.resize(960, 800)
    window.grab()
    assert (window.width(), window.height()) == (960, 800)
    corners = [
        each.mapTo(window, each.rect().bottomRight())
        for each in (window.openings.remove, window.work.swing.angle, window.units)
    ]
    assert all(corner.x() <= 960 and corner.y() <= 800 for corner in corners)


def test_the_openings_fold_away(qtbot, fresh_window):
    window = fresh_window
    wide = window.work.picture.width()
    window.commands.actions_by_name["list"].trigger()
    assert window.openings.isHidden()
    qtbot.waitUntil(lambda: window.work.picture.width() > wide)


def fail(window, words):
    """Let something go wrong as it does in a slot."""
    try:
        raise RuntimeError(words)
    except RuntimeError as error:
        report(window, RuntimeError, error, error.__traceback__)


def test_an_unforeseen_error_is_told_in_one_dialog_once_the_work_is_kept(
    qtbot, fresh_window, caplog, tmp_path, monkeypatch
):
    window = fresh_window
    window.files.begin()
    fail(window, "the hinge fell off")
    dialog = window.beside.failure
    assert dialog.isVisible()
    assert dialog.kept.text() == failure.NOTHING_TO_KEEP
    assert "RuntimeError: the hinge fell off" in caplog.text
    window.session.edit("location", "Galley")
    fail(window, "the pin fell out")
    assert window.beside.failure is dialog
    assert dialog.kept.text() == failure.KEPT
    assert len(list(recovery_folder().glob("*.recovery"))) == 1
    dialog.copy.click()
    report = QApplication.clipboard().text()
    assert report.index("the hinge fell off") < report.index("the pin fell out")
    assert "PySide6" in report
    assert str(Path.home()) not in report.replace("~", "")
    copy = tmp_path / "copy"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(copy), ""))
    dialog.save.click()
    assert load(copy.with_suffix(".json")) == window.session.job
    assert window.session.history.unsaved
    dialog.go_on.click()
    assert not dialog.isVisible()
    monkeypatch.setattr(window.files, "keep_if_unsaved", lambda: False)
    fail(window, "again")
    assert dialog.kept.text() == failure.NOT_KEPT
    assert "the pin fell out" not in dialog.report.toPlainText()
    dialog.go_on.click()


def dropped(path):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    return data


def drop(window, path):
    """Let a file fall on the window; say whether it was taken."""
    data, place = dropped(path), QPoint(300, 300)
    button, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(place, Qt.DropAction.CopyAction, data, button, none)
    enter.setAccepted(False)
    QApplication.sendEvent(window, enter)
    if enter.isAccepted():
        QApplication.sendEvent(
            window, QDropEvent(QPointF(place), Qt.DropAction.CopyAction, data, button, none)
        )
    return enter.isAccepted()


def test_a_job_that_is_dropped_opens_and_a_schedule_is_imported(qtbot, window, tmp_path):
    path = tmp_path / "dropped.json"
    shutil.copy(window.session.path, path)
    assert drop(window, path)
    assert window.session.path == path
    schedule = tmp_path / "doors.csv"
    schedule.write_text("Mark,Width,Height\n301,3-0,7-0\n")
    assert drop(window, schedule)
    assert window.pages.on_show == "import"
    page = window.pages.made["import"]
    qtbot.waitUntil(lambda: not any(work.running for work in page.findChildren(Work)))
    assert page.work.table is not None
    assert page.work.refusal == ""
    assert not drop(window, tmp_path / "nowhere.json")


def test_what_was_preferred_is_there_at_the_next_start(qtbot, preferences):
    preferences.dark = False
    preferences.display = Display(64)
    preferences.plain_words = True
    window = open_window(Session(), preferences)
    qtbot.addWidget(window)
    assert window.session.display == Display(64)
    assert window.session.plain_words
    assert window.units.currentText() == "inches to 1/64"


def test_help_stands_beside_the_work(window):
    window.beside.show_help()
    assert window.beside.help.isVisible()
    assert not window.beside.help.isModal()
    window.beside.help.close()


def test_the_demo_file_is_never_touched_by_looking_at_it(window, tmp_path, session):
    copy = tmp_path / "copy.json"
    shutil.copy(session.path, copy)
    before = copy.read_bytes()
    window.files.read(copy)
    window.session.swing(30)
    window.session.select("205A")
    assert copy.read_bytes() == before


def test_what_is_being_typed_is_saved_too(fresh_window, session, tmp_path):
    window = fresh_window
    field = window.work.form.field("door.thickness")
    window.activateWindow()
    field.editor.setFocus()
    field.editor.setText("2 1/2")
    field.editor.textEdited.emit("2 1/2")
    path = tmp_path / "typed.json"
    session.path = path
    assert window.files.save()
    assert next(one for one in load(path).openings if one.mark == "112A").door.thickness == 2.5


def test_a_save_that_fails_keeps_the_window_and_the_work(fresh_window, session, tmp_path, monkeypatch):
    window = fresh_window
    session.edit("location", "Somewhere else")
    session.path = tmp_path / ("x" * 300)
    monkeypatch.setattr(QMessageBox, "question", lambda *_: QMessageBox.StandardButton.Save)
    assert not window.close()
    assert session.history.unsaved


def test_what_is_said_of_the_job_goes_when_the_job_is_another_one(window):
    window.session.edit("quantity", 2)
    window.session.edit("order_state", "ordered")
    window.session.edit("quantity", 3)
    assert "is marked ordered" in window.line.text()
    window.session.undo()
    assert window.line.text() == ""
    window.say("Taken from doors.csv: 1 new. Undo takes it back.")
    window.session.select("101A")
    assert window.line.text()
    window.session.edit("quantity", 4)
    assert window.line.text() == ""
    window.say("job.json could not be written.")
    window.session.edit("quantity", 5)
    assert window.line.text() == "job.json could not be written.", "that is not over"


def test_rows_that_stayed_behind_are_led_to(window):
    window.turn_to("import")
    page = window.pages.made["import"]
    page.waiting.emit("5 rows of doors.csv stayed behind: not in the job yet.")
    window.turn_to("")
    asked = window.line.questions["waits on import"]
    asked.buttons["Show them"].click()
    assert window.pages.on_show == "import"
    page.waiting.emit("5 rows of doors.csv stayed behind: not in the job yet.")
    page.waiting.emit("")
    assert not window.line.questions
