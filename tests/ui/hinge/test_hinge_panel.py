"""The hinge panel through real widgets: why, by hand, rechecked, reset, refused, copied."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QLabel

from configurator.order.take_off import take_off
from configurator.order.tally import tally
from configurator.ui.hinge.hinge_panel import REFUSED
from configurator.ui.window.work import HINGE
from configurator.units import Display
from tests.ui.form.test_form import choose, type_into


@pytest.fixture
def window(fresh_window):
    return fresh_window


@pytest.fixture
def panel(under):
    """The hinge's tab on show for 112A, its size selected."""
    under.setCurrentWidget(under.later[HINGE])
    return under.later[HINGE].page


@pytest.fixture
def in_window(window):
    """The same tab in its window."""
    window.work.under.setCurrentWidget(window.work.under.later[HINGE])
    return window.work.under.later[HINGE].page


def texts(panel, column):
    return [panel.list.text(row, column) for row in range(panel.list.rowCount())]


def row_of(panel, name):
    return texts(panel, 0).index(name)


def value(panel, name):
    return panel.list.text(row_of(panel, name), 1)


def mark(panel, name):
    return panel.list.text(row_of(panel, name), 2)


def field(panel, key):
    panel.select(key)
    return panel.detail().fields[key]


def labels(detail):
    return [label.text() for label in detail.findChildren(QLabel) if not label.isHidden()]


def codes(session):
    return {finding.code for finding in session.study.specification.findings}


def click(qtbot, button):
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def test_every_part_has_a_row_and_the_reason_when_asked(qtbot, panel):
    assert value(panel, "Hinge size, height x open width") == "4-1/2 x 4-1/2"
    assert value(panel, "Number of hinges") == "3 hinges = 1-1/2 pair"
    assert set(texts(panel, 2)) == {""}
    panel.select("count")
    said = labels(panel.detail())
    assert any(text.startswith("Because: A leaf 83-1/8 in high takes 3 hinges") for text in said)
    assert any(text.startswith("Source: UFC 3-190-02FA") and "(read in the source)" in text for text in said)


def test_a_part_is_chosen_by_hand_rechecked_and_reset(qtbot, session, panel):
    bearing = field(panel, "bearing")
    assert bearing.editor.currentText() == "antifriction bearing (ball), by the rules"
    choose(bearing, "plain")
    assert session.opening.hinge.bearing == "plain"
    assert (value(panel, "Hinge bearing"), mark(panel, "Hinge bearing")) == ("plain bearing", "by hand")
    assert "plain bearing with closer" in codes(session)
    assert panel.order.cautions.text().startswith("▲ 1 error holds this order")
    session.edit("use.closer", False)
    assert not any("Plain bearing with a closer" in text for text in said_of(session))
    assert session.opening.hinge.bearing == "plain"
    click(qtbot, panel.detail().reset)
    assert session.opening.hinge is None
    assert mark(panel, "Hinge bearing") == ""
    assert not panel.detail().reset.isEnabled()


def said_of(session):
    return [finding.message for finding in session.study.all_findings()]


def test_the_first_line_of_a_choice_leaves_it_to_the_rules(panel, session):
    pin = field(panel, "pin")
    choose(pin, "non-removable")
    assert pin.editor.itemText(0) == "leave it to the rules"
    choose(pin, None)
    assert session.opening.hinge is None
    assert pin.editor.currentText() == "removable pin, by the rules"


def test_a_width_is_typed_and_the_order_line_and_findings_follow(qtbot, session, panel):
    width = field(panel, "width")
    assert width.editor.placeholderText() == "4-1/2 in"
    type_into(qtbot, width, "4")
    assert session.opening.hinge.width == 4
    assert value(panel, "Hinge size, height x open width") == "4-1/2 x 4"
    assert ", 4-1/2 x 4, " in panel.order.lines.text()
    assert any("171.7°" in text and "chosen by hand" in text for text in said_of(session))
    session.edit("obstructions", [])
    assert not any("chosen by hand" in text for text in said_of(session))
    assert mark(panel, "Hinge size, height x open width") == "by hand"


def test_an_alternative_says_what_it_breaks_and_is_taken_by_one_click(qtbot, session, panel):
    panel.select("width")
    detail = panel.detail()
    button = next(button for button in detail.takes if button.text() == "Take 7 in wide")
    assert any("short of 32 in by 7/16 in" in text for text in labels(detail))
    click(qtbot, button)
    assert session.opening.hinge.width == 7
    assert "Take 4-1/2 in wide" in [button.text() for button in panel.detail().takes]


def test_a_refusal_stands_beside_its_field_and_in_the_list_and_leaves_no_trace(qtbot, session, panel):
    before = session.job
    knuckles = field(panel, "knuckles")
    type_into(qtbot, knuckles, "12")
    assert session.job is before
    assert knuckles.note.text().startswith("⚠ ")
    assert "9" in knuckles.note.text()
    assert not knuckles.note.isHidden()
    assert mark(panel, "Knuckles") == REFUSED
    assert knuckles.editor.text() == "12"
    qtbot.keyClick(knuckles.editor, Qt.Key.Key_Escape)
    assert knuckles.note.isHidden()
    assert mark(panel, "Knuckles") == ""


@pytest.mark.parametrize(
    ("typed", "screws"),
    [
        ("24 machine", {"machine": 24, "wood": 0}),
        ("12 machine and 12 wood screws", {"machine": 12, "wood": 12}),
    ],
)
def test_screws_are_typed_in_words(qtbot, session, panel, typed, screws):
    type_into(qtbot, field(panel, "screws"), typed)
    assert session.opening.hinge.screws == screws


@pytest.mark.parametrize("typed", ["24", "some wood", "24 brass", "-3 wood", ","])
def test_screws_that_cannot_be_read_are_refused(qtbot, session, panel, typed):
    screws = field(panel, "screws")
    type_into(qtbot, screws, typed)
    assert "24 machine" in screws.note.text()
    assert session.opening.hinge is None


def test_reset_all_takes_every_part_back_as_one_step_and_keeps_what_was_measured(qtbot, session, panel):
    session.edit("hinge.barrel", 0.6)
    choose(field(panel, "tip"), "hospital")
    type_into(qtbot, field(panel, "finish_us"), "US10B")
    assert texts(panel, 2).count("by hand") == 2
    click(qtbot, panel.reset_all)
    assert set(texts(panel, 2)) == {""}
    assert session.opening.hinge.barrel == 0.6
    assert not panel.reset_all.isEnabled()
    session.undo()
    assert texts(panel, 2).count("by hand") == 2


def test_undo_and_another_opening_show_in_the_panel(panel, session):
    choose(field(panel, "corner"), "1/4 radius")
    assert value(panel, "Hinge corner") == "1/4 in radius corners"
    session.undo()
    assert value(panel, "Hinge corner") == "square corners"
    session.select("130A")
    assert value(panel, "Hinge size, height x open width") == "5 x 4-1/2"
    assert panel.detail().title.text() == "Hinge corner"  # the part stays selected


def test_the_order_line_is_copied_and_can_be_selected(qtbot, panel):
    click(qtbot, panel.order.copy)
    copied = QGuiApplication.clipboard().text()
    assert copied == panel.order.lines.text()
    assert copied.startswith("112A: 3 each (1-1/2 pair) hinges, 4-1/2 x 4-1/2, ANSI/BHMA A156.1 A8112")
    flags = panel.order.lines.textInteractionFlags()
    assert flags & Qt.TextInteractionFlag.TextSelectableByKeyboard
    assert flags & Qt.TextInteractionFlag.TextSelectableByMouse


def test_two_leaves_have_headings_and_lines_of_their_own(panel, session):
    session.edit("leaves", "dutch")
    assert [text for text in texts(panel, 0) if text.endswith("leaf")] == ["Upper leaf", "Lower leaf"]
    assert len(panel.order.lines.text().splitlines()) == 2
    assert panel.detail().title.text().startswith("Upper leaf")
    panel.list.setCurrentCell(panel.list.rowCount() - 1, 0)
    assert panel.detail().title.text().startswith("Lower leaf")
    session.edit("leaves", "single")
    assert panel.detail().title.text() == "Electric transfer"


def test_screws_and_wires_of_a_pair_are_ordered_as_the_order_counts_them(qtbot, panel, session):
    session.edit_many({"leaves": "pair", "size.width": 72})
    type_into(qtbot, field(panel, "screws"), "10 machine")
    type_into(qtbot, field(panel, "electric"), "2")
    plain, wired, inactive = panel.order.lines.text().splitlines()
    assert ", active leaf: 2 each " in plain
    assert ", active leaf: 1 each " in wired
    assert ", inactive leaf: 3 each " in inactive
    # 10 over six hinges: 5/3 each, 3-1/3 for two, 5 for three, and each line in whole screws.
    assert [line.split(", ")[-1].split()[0] for line in (inactive, plain, wired)] == ["5", "4", "2"]
    assert "on which leaf it hangs" in panel.order.cautions.text()
    order = take_off([tally(session.study)])
    assert [(line.quantity, line.screws["machine"]) for line in order.lines] == [(3, 5), (2, 4), (1, 2)]


def test_the_job_s_standard_is_marked(panel, session):
    session.edit("job.standard_hinge", {"width": 5})
    assert mark(panel, "Hinge size, height x open width") == "the job's standard"


def test_where_no_hinge_is_chosen_it_says_why(panel, session):
    session.edit("hung_on", "pivots")
    assert panel.body.isHidden()
    assert "hung on pivots" in panel.empty.text()
    session.edit("hung_on", "butt hinges")
    assert not panel.body.isHidden()
    while session.opening is not None:
        session.remove_opening()
    assert panel.empty.text() == "The hinge stands here once there is an opening."


def test_nothing_can_be_copied_where_nothing_can_be_ordered(qtbot, panel):
    type_into(qtbot, field(panel, "height"), "11")
    assert not panel.order.copy.isEnabled()
    assert "nothing can be ordered" in panel.order.lines.text()


def test_everything_is_reached_by_the_keyboard_and_named(qtbot, in_window):
    panel = in_window
    panel.list.setFocus()
    qtbot.keyClick(panel.list, Qt.Key.Key_Down)
    assert panel.detail().title.text() == "Number of hinges"
    qtbot.keyClick(panel.list, Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is panel.detail().fields["count"].editor
    reached = set()
    for _ in range(12):
        widget = QApplication.focusWidget()
        reached.add(widget.accessibleName())
        qtbot.keyClick(widget, Qt.Key.Key_Tab)
    assert {"number of hinges", "copy the order line"} <= reached
    assert any(name.startswith("take 4 hinges") for name in reached)
    assert all(reached)


def test_words_and_units_follow_the_window(panel, session):
    session.use_plain_words(True)
    assert value(panel, "How many hinges") == "3 hinges = 1-1/2 pair"
    session.use_plain_words(False)
    session.show_in(Display(metric=True))
    assert value(panel, "Hinge leaf thickness") == "3.4 mm"
    assert "leaf 0.134 thick" in panel.order.lines.text()  # goods are named in inches


def test_dark_turns_quiet_words_too(panel, session):
    panel.select("finish_bhma")
    before = panel.detail().remark.palette().windowText().color()
    session.use_dark(True)
    assert panel.detail().remark.palette().windowText().color() != before
    session.use_dark(False)


def test_a_hidden_tab_waits_and_then_catches_up(under, session, panel):
    under.setCurrentIndex(0)
    session.edit("hinge.tip", "ball")
    under.setCurrentWidget(under.later[HINGE])
    assert (value(panel, "Hinge tip"), mark(panel, "Hinge tip")) == ("ball tips", "by hand")


def test_another_tab_never_moves_the_picture(window):
    window.resize(1280, 800)
    window.grab()
    under, picture = window.work.under, window.work.picture
    before = under.height(), picture.height()
    for tab in range(under.count()):
        under.setCurrentIndex(tab)
        window.grab()
        assert (under.height(), picture.height()) == before, under.tabText(tab)


def test_what_is_being_typed_survives_a_change_elsewhere(qtbot, session, panel):
    knuckles = field(panel, "knuckles")
    knuckles.editor.setFocus()
    qtbot.keyClicks(knuckles.editor, "3")
    session.edit("door.undercut", 0.5)
    assert knuckles.editor.text() == "3"
    qtbot.keyClick(knuckles.editor, Qt.Key.Key_Return)
    assert session.opening.hinge.knuckles == 3


def test_the_selected_part_stays_in_view_when_the_order_line_grows(window, in_window):
    panel = in_window
    panel.select("electric")
    window.session.edit("leaves", "dutch")
    window.grab()
    shown = panel.list.visualRect(panel.list.currentIndex())
    assert panel.list.viewport().rect().contains(shown)
