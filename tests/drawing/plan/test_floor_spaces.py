"""The manoeuvring space of an accessible door: dashed on the whole opening, where the rule says it is."""

import pytest

from configurator.drawing.base.primitives import Polyline, Text
from configurator.drawing.base.view import Box
from configurator.drawing.plan.drawn_leaf import drawn_leaves
from configurator.drawing.plan.inset import Told, inset_still, inset_view
from configurator.drawing.plan.standing_things import floor_boxes
from configurator.study import study
from configurator.units import Display
from tests.openings import plain_opening

ROUTE = {"accessible": True, "closer": True, "locked": True}
WINDOW = Box(0, 0, 400, 400)
DASHED = "A-DOOR-CLRN"


def drawn(**changes):
    return drawn_leaves(study(plain_opening(**changes)), Display())[0]


def picture(hung, floor=True):
    told = Told(floor=floor)
    return inset_still(hung, inset_view(hung, WINDOW, told), Display(), 33.0625, "LH", told)


def test_a_pull_from_the_front_is_60_by_the_door_and_18_more():
    given = {"approach": "front", "depth": 60, "latch_side": 20}
    pull, push = (box for _, box in floor_boxes(drawn(use=ROUTE, pull_side=given)))
    # The wall face lies 1/2 in behind the frame's, and the far one the wall's thickness behind that.
    assert (pull.left, pull.right, pull.bottom, pull.top) == (0, 36 + 18, -0.5, 59.5)
    assert (push.left, push.right) == (0, 36 + 12)
    assert push.top - push.bottom == 48


def test_a_push_from_the_hinge_side_reaches_past_the_hinges():
    given = {"approach": "hinge", "depth": 60, "hinge_side": 30}
    _, push = (box for _, box in floor_boxes(drawn(use=ROUTE, push_side=given)))
    assert (push.left, push.right) == (-22, 36)


@pytest.mark.parametrize(("accessible", "boxes"), [(True, 2), (False, 0), (None, 0)])
def test_only_an_accessible_door_has_them_and_all_of_them_is_in_the_picture(accessible, boxes):
    hung = drawn(use={"accessible": accessible})
    dashed = [one for one in picture(hung) if isinstance(one, Polyline) and one.layer == DASHED]
    assert len(dashed) == boxes
    view = inset_view(hung, WINDOW, Told())
    assert all(view.window.has(view.to_sheet(point)) for one in dashed for point in one.points)


def test_they_are_lettered_where_there_is_room_and_left_out_where_they_are_not_wanted():
    hung = drawn(use=ROUTE, pull_side={"approach": "front", "depth": 60, "latch_side": 20})
    words = [one.text for one in picture(hung) if isinstance(one, Text)]
    assert "60 in deep, 18 in past the lock" in words
    assert not [one for one in picture(hung, floor=False) if one.layer == DASHED]
