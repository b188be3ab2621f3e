"""The page that asks what would be, through real widgets: nothing is changed until a value is taken."""

import pytest
from PySide6.QtCore import QPoint, Qt

from configurator.model import Job
from configurator.study.what_if.curve import opening_with
from configurator.study.what_if.parameters import parameters_of, with_changes
from configurator.ui.analysis.what_if import EMPTY, NOTHING, WhatIfPage
from configurator.ui.state.edits import edited
from configurator.ui.state.session import Session
from configurator.units import Display
from tests.ui.conftest import move_pointer


@pytest.fixture
def window(edited_window):
    return edited_window


def shown(qtbot, session):
    page = WhatIfPage(session)
    qtbot.addWidget(page)
    page.resize(860, 280)
    page.show()
    page.show_state()
    session.changed.connect(lambda by: by in ("trial", "swing") or page.show_state())
    return page


@pytest.fixture
def page(qtbot, session):
    """The page for 112A, its chair rail varied."""
    page = shown(qtbot, session)
    choose(page.choices.parameter, "Chair rail projection")
    return page


def choose(combo, text):
    place = combo.findText(text)
    assert place >= 0, [combo.itemText(n) for n in range(combo.count())]
    combo.setCurrentIndex(place)
    combo.activated.emit(place)


def point(page, value):
    sheet = page.chart.sheet
    x, _ = sheet.place(value, sheet.chart.left.low)
    move_pointer(page.chart, QPoint(round(x * 96 / 72), page.chart.height() // 2))
    page._soon.timeout.emit()


def offered(page):
    return [page.choices.parameter.itemText(n) for n in range(page.choices.parameter.count())]


def test_it_offers_what_can_be_varied_of_the_width_taken_for_the_opening(page):
    assert offered(page) == [
        "Hinge open width",
        "Wall thickness",
        "Frame proud of wall",
        "Chair rail projection",
        "Chair rail start",
        "Inset",
        "Door thickness",
        "Hinge backset",
    ]
    assert page.choices.leaf.currentText() == "4-1/2 in hinge"
    assert page.sentence.text().endswith("The leaf opens to 180° up to 1-7/8 in (1/8 in to spare).")
    assert page.thresholds.text(0, 0) == "Opens to 180° up to 1-7/8 in"
    assert page.reading.text() == NOTHING


def test_the_picture_shows_a_trial_and_nothing_is_changed(page, session):
    before, study = session.job, session.study
    page.slider.setFocus()
    page.slider.setValue(72)  # 2-1/4 in
    assert session.job is before
    assert session.study is study
    assert session.pictured is not study
    assert session.pictured.opening.obstructions[0].projection == 2.25
    assert session.trial.words == "chair rail projection 2-1/4 in"
    assert page.reading.text().startswith("Chair rail projection 2-1/4 in: opens to 171.8° bare")
    assert page.reading.text().endswith("hinge taken then: 4-1/2 x 5")
    assert not session.history.unsaved


def test_taking_it_is_one_step_that_can_be_undone(qtbot, page, session):
    page.try_value(2.25)
    assert page.take.text() == "Take 2-1/4 in"
    qtbot.mouseClick(page.take, Qt.MouseButton.LeftButton)
    assert session.value("obstructions.0.projection") == 2.25
    assert session.trial.study is None
    assert page.sentence.text().startswith("Chair rail projection: 2-1/4 in now.")
    session.undo()
    assert session.value("obstructions.0.projection") == 1.75
    assert not session.history.unsaved


def test_back_ends_the_trial(qtbot, page, session):
    page.try_value(2.25)
    qtbot.mouseClick(page.back, Qt.MouseButton.LeftButton)
    assert session.pictured is session.study
    assert (page.tried, page.typed.text(), page.reading.text()) == (None, "1-3/4 in", NOTHING)
    assert not page.take.isEnabled()


def test_escape_ends_the_trial_too(qtbot, page, session):
    page.try_value(2.25)
    qtbot.keyClick(page.slider, Qt.Key.Key_Escape)
    assert page.tried is None
    assert session.pictured is session.study


def test_what_cannot_be_is_said_and_not_shown(session):
    assert session.trial.show({"door.thickness": 1.5}, "a thinner door") == ""
    assert session.trial.words == "a thinner door"
    refused = session.trial.show({"door.thickness": -1}, "no door")
    assert "more than 0" in refused
    assert session.trial.study is None
    assert session.pictured is session.study


def test_a_trial_tells_only_the_picture(session):
    told = []
    session.changed.connect(told.append)
    session.trial.show({"door.thickness": 1.5}, "a thinner door")
    session.trial.end()
    session.trial.end()
    assert told == ["trial", "trial"]


def test_the_picture_follows_the_pointer_and_forgets_when_it_leaves(page, session):
    point(page, 2.5)
    assert session.pictured.opening.obstructions[0].projection == pytest.approx(2.5, abs=1 / 32)
    assert page.tried is None
    page.chart.pointed.emit(None)
    page._soon.timeout.emit()
    assert session.pictured is session.study


def test_a_click_in_the_chart_keeps_the_value_on_trial(qtbot, page, session):
    sheet = page.chart.sheet
    x, _ = sheet.place(2.5, sheet.chart.left.low)
    at = QPoint(round(x * 96 / 72), page.chart.height() // 2)
    qtbot.mouseClick(page.chart, Qt.MouseButton.LeftButton, pos=at)
    page.chart.pointed.emit(None)
    page._soon.timeout.emit()
    assert page.tried == pytest.approx(2.5, abs=1 / 32)
    assert session.pictured.opening.obstructions[0].projection == page.tried


def test_enter_tries_the_value_where_something_turns(qtbot, page, session):
    page.thresholds.setCurrentCell(0, 0)
    qtbot.keyClick(page.thresholds, Qt.Key.Key_Return)
    assert page.tried == 1.875
    assert session.pictured.candidates[1].greatest_angle_bare == 180.0


def test_a_value_is_typed_as_the_trade_writes_it_and_a_slip_is_said(qtbot, page, session):
    page.typed.setFocus()
    page.typed.selectAll()
    qtbot.keyClicks(page.typed, "2 1/8")
    qtbot.keyClick(page.typed, Qt.Key.Key_Return)
    assert page.tried == 2.125
    page.typed.selectAll()
    qtbot.keyClicks(page.typed, "wide")
    qtbot.keyClick(page.typed, Qt.Key.Key_Return)
    assert "is not a length" in page.reading.text()
    assert page.tried == 2.125


def test_a_hinge_width_on_trial_stands_beside_the_others(page, session):
    choose(page.choices.parameter, "Hinge open width")
    page.try_value(5.0)
    assert [one.hinge_width for one in session.pictured.candidates] == [4.0, 5.0]
    page.take_tried()
    assert session.value("compare") == (4.0, 5.0)


def test_what_is_held_is_taken_along(page, session):
    choose(page.choices.parameter, "Wall thickness")
    assert page.choices.hold.isEnabled()
    choose(page.choices.hold, "The frame; a finish on the pull side moves")
    page.try_value(5.375)
    assert page.reading.text().startswith("Wall thickness 5-3/8 in: opens to 171.8° bare")
    page.take_tried()
    assert session.study.filled.jamb_depth == 5.875
    assert session.study.filled.frame_proud == 0.0
    assert session.study.candidates[1].greatest_angle_bare == pytest.approx(171.842, abs=5e-4)
    session.undo()
    assert session.value("wall.thickness") == 4.875


def test_another_edit_or_opening_ends_what_is_on_trial(page, session):
    page.try_value(2.25)
    session.edit("door.latch_bevel", 0)
    assert session.trial.study is None
    page.try_value(2.25)
    session.select("101A")
    assert session.pictured is session.study
    assert "Chair rail projection" not in offered(page)
    assert page.tried is None


def test_a_page_out_of_sight_has_nothing_on_trial(page, session):
    page.try_value(2.25)
    page.hide()
    assert session.trial.study is None


def test_other_units_words_and_ground_are_shown_at_once(page, session):
    session.show_in(Display(metric=True))
    assert page.typed.text() == "44.5 mm"
    page.slider.setValue(50)
    assert page.tried == pytest.approx(50 / 25.4)
    session.use_plain_words(True)
    assert page.choices.parameter.currentText() == "Chair rail stands off by"
    session.use_dark(True)
    assert session.trial.words == "chair rail stands off by 50.0 mm"


def test_an_empty_job_says_what_to_do(qtbot):
    page = shown(qtbot, Session(Job()))
    assert page.sentence.text() == EMPTY
    assert not page.chart.isVisible()
    page.try_value(3.0)
    assert page.tried is None


def test_a_pair_offers_each_leaf(qtbot, session):
    session.edit_many({"leaves": "pair", "size": {"width": 72, "height": 84}})
    page = shown(qtbot, session)
    names = [page.choices.leaf.itemText(n) for n in range(page.choices.leaf.count())]
    assert "inactive leaf, 4-1/2 in hinge" in names
    choose(page.choices.leaf, "inactive leaf, 4-1/2 in hinge")
    assert page.found.leaf == "inactive"


def test_what_is_shown_on_trial_is_what_an_edit_gives(session):
    """The quick way to another record, for hundreds of values, against the validated one of an edit."""
    for candidate in session.study.candidates:
        for parameter in parameters_of(session.study, candidate):
            for hold in parameter.holds:
                value = (parameter.present + parameter.high) / 2
                quick = opening_with(session.opening, hold, value)
                assert quick == edited(session.opening, hold.changes(value)), (parameter.name, hold.name)


def test_values_in_lists_are_changed_by_their_place(session):
    changed = with_changes(session.opening, {"obstructions.0.start": 2.0, "wall.thickness": 5.0})
    assert (changed.obstructions[0].start, changed.wall.thickness) == (2.0, 5.0)
    assert session.opening.obstructions[0].start == 0.5


def test_a_picture_on_trial_says_so_and_is_never_written_to_a_file(qtbot, window, session, tmp_path):
    under = window.work.under
    under.setCurrentIndex([under.tabText(n) for n in range(under.count())].index("What if"))
    page = under.later["What if"].page
    choose(page.choices.parameter, "Chair rail projection")
    page.try_value(2.25)
    picture = window.work.picture
    assert picture.trial.text() == "On trial: chair rail projection 2-1/4 in. Nothing is changed."
    assert picture.trial.isVisible()
    picture.save(tmp_path / "picture.svg")
    assert not picture.trial.isVisible()
    assert (tmp_path / "picture.svg").stat().st_size > 0
    assert session.trial.study is None
    page.try_value(2.25)
    under.setCurrentIndex(0)
    assert session.trial.study is None
    assert not picture.trial.isVisible()
