"""Another way to hang the door beside the hinge widths: added from the menu or typed, shown, taken out."""

import pytest

from configurator.model import Job, Way
from configurator.ui.picture.widths import WidthsBar
from configurator.ui.state.session import Session
from tests.openings import plain_opening


@pytest.fixture
def bar(qtbot):
    session = Session(Job(openings=(plain_opening(compare=[4, 4.5]),)))
    bar = WidthsBar(session)
    qtbot.addWidget(bar)
    session.changed.connect(lambda _: bar.show_state())
    bar.show_state()
    return bar


def texts(bar):
    return [chip.text() for chip in bar.chips]


def test_a_way_comes_from_the_menu_and_goes_with_its_chip(bar):
    actions = {action.text(): action for action in bar.ways.menu().actions()}
    actions["Offset pivot"].trigger()
    assert texts(bar) == ["4 ×", "4-1/2 ×", "offset pivot ×"]
    assert [one.hung_on for one in bar.session.study.candidates] == [
        "butt hinge",
        "butt hinge",
        "offset pivot",
    ]
    bar.chips[-1].click()
    assert bar.session.opening.compare == (4, 4.5)


def test_a_way_is_typed_with_its_axis(bar):
    bar.entry.setText("centre-hung pivot -7/8, 2-3/4")
    bar.entry.returnPressed.emit()
    typed = Way(hung_on="centre-hung pivot", axis_off_face=-0.875, axis_from_heel=2.75)
    assert bar.session.opening.compare == (4, 4.5, typed)
    assert bar.entry.text() == ""


@pytest.mark.parametrize(
    ("typed", "said"),
    [("offset pivot 3/4, 3/4, 3/4", "Write its axis"), ("offset pivot x", "is not a length")],
)
def test_what_cannot_be_read_says_why(bar, typed, said):
    bar.entry.setText(typed)
    bar.entry.returnPressed.emit()
    assert said in bar.session.refusals["compare"].sentence
    assert bar.session.opening.compare == (4, 4.5)
