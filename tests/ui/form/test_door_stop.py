"""The door stop in the form: put up, moved, taken away."""

import pytest

from tests.ui.form.test_form import choose
from tests.ui.form.test_form_use import type_into


@pytest.fixture
def window(edited_window):
    return edited_window


def take_away(field):
    field.editor.setCurrentIndex(0)
    field.editor.activated.emit(0)


def test_a_stop_is_put_up_in_a_usual_size_and_the_place_worked_out(window):
    form, session = window.work.form, window.session
    session.select("101A")
    kind = form.field("door_stop.kind")
    assert kind.editor.currentText() == "none"
    assert form.field("door_stop.projection").isHidden()
    choose(kind, "wall bumper")
    assert session.opening.door_stop.projection == 1
    assert session.opening.door_stop.from_frame is None
    where = form.field("door_stop.from_frame")
    assert not where.isHidden()
    place = session.study.candidates[0].door_stop
    assert where.editor.placeholderText() == "32 in"
    assert place.from_frame == 32
    assert form.field("door_stop.height").editor.placeholderText() == "38 in"


def test_it_is_moved_changed_and_taken_away_again(qtbot, window):
    form, session = window.work.form, window.session
    choose(form.field("door_stop.kind"), "floor stop")
    type_into(qtbot, form.field("door_stop.from_frame"), "28-1/2")
    assert session.opening.door_stop.from_frame == 28.5
    choose(form.field("door_stop.kind"), "wall bumper")
    assert (session.opening.door_stop.kind, session.opening.door_stop.from_frame) == ("wall bumper", 28.5)
    assert form.field("door_stop.kind").editor.currentText() == "wall bumper"
    take_away(form.field("door_stop.kind"))
    assert session.opening.door_stop is None
    assert form.field("door_stop.height").isHidden()
    session.undo()
    assert session.opening.door_stop.from_frame == 28.5


def test_a_stop_that_is_not_measured_has_the_usual_projection_and_is_asked_about(qtbot, window):
    form, session = window.work.form, window.session
    choose(form.field("door_stop.kind"), "floor stop")
    assert session.opening.door_stop.projection == 3
    assert "door_stop.projection" in session.study.filled.assumed
    type_into(qtbot, form.field("door_stop.projection"), "2")
    assert session.opening.door_stop.projection == 2
    assert "door_stop.projection" not in session.study.filled.assumed
    type_into(qtbot, form.field("door_stop.projection"), " ")
    assert session.opening.door_stop.projection == 3
    assert "door_stop.projection" in session.study.filled.assumed


def test_a_click_on_where_a_stop_goes_puts_it_there(window):
    session = window.session
    session.select("101A")
    (found,) = [one for one in session.study.candidates[0].findings if one.code == "hardware meets first"]
    session.edit_many({fix.path: fix.value for fix in found.fix})
    assert session.study.candidates[0].rests_at == found.numbers["rests_at"]


def test_a_door_on_pivots_has_a_stop_too(window):
    """No hinge is recommended where there is none; the stop's place is that of the widths compared."""
    form, session = window.work.form, window.session
    session.select("101A")
    choose(form.field("door_stop.kind"), "wall bumper")
    session.edit("hung_on", "pivots")
    assert "width" not in session.study.recommended
    assert form.field("door_stop.from_frame").editor.placeholderText() == "32 in"
