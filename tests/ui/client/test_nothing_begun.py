"""A salesperson opens the client's view with no door begun: any question may be answered first."""

import pytest

from configurator.model import Job
from configurator.ui.client.page import NOTHING_YET, ClientPage
from configurator.ui.state.session import Session


@pytest.fixture
def nothing(qtbot, qapp):
    """The client's view of a job without openings."""
    session = Session(Job())
    page = ClientPage(session)
    qtbot.addWidget(page)
    session.changed.connect(page.show_state)
    page.resize(1200, 760)
    page.show_state("open")
    page.show()
    return page


def test_it_says_what_to_do_and_plays_nothing(nothing):
    assert nothing.words.text() == NOTHING_YET
    assert not nothing.controls.buttons["play"].isEnabled()
    assert nothing.first_stop is nothing.questions.starts.buttons["Office door"]


def test_the_wall_may_be_said_first(nothing):
    nothing.questions.walls.buttons["Block or brick"].click()
    session = nothing.session
    assert len(session.job.openings) == 1
    assert nothing.questions.walls.buttons["Block or brick"].isChecked()
    assert nothing.canvas.isVisible()
    assert nothing.controls.buttons["play"].isEnabled()
    assert nothing.first_stop is nothing.controls.buttons["play"]


def test_what_is_on_the_wall_may_be_said_first(nothing):
    nothing.questions.things.buttons["Chair rail"].click()
    assert [one.kind for one in nothing.session.opening.obstructions] == ["chair rail"]


@pytest.mark.parametrize(("typed", "width"), [("42", 42.0), ("3-0", 36.0)])
def test_the_size_may_be_typed_first(nothing, typed, width):
    line = nothing.questions.sizes[0].line
    line.setText(typed)
    line.textEdited.emit(typed)
    line.editingFinished.emit()
    assert nothing.session.opening.size.width == width


def test_the_first_step_shows_the_usual_size_and_the_next_goes_from_there(nothing):
    stepper = nothing.questions.sizes[0]
    stepper.more.click()
    usual = nothing.session.opening.size.width
    stepper.more.click()
    assert nothing.session.opening.size.width == usual + 2.0


def test_what_cannot_be_read_begins_no_door(nothing):
    stepper = nothing.questions.sizes[0]
    stepper.line.setText("wide")
    stepper.line.textEdited.emit("wide")
    stepper.line.editingFinished.emit()
    assert nothing.session.job.openings == ()
    assert stepper.note.isVisible()
