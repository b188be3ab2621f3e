import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.drawing.base.view import Box, View, box_around, paper

WINDOW = Box(100, 50, 300, 250)
PLAIN = View(20.0, (200.0, 100.0), False, WINDOW)
MIRRORED = View(20.0, (200.0, 100.0), True, WINDOW)
number = st.floats(-50, 50)


def test_the_plan_lies_as_solved_or_mirrored_left_to_right():
    assert PLAIN.to_sheet((1, 2)) == (220, 140)
    assert MIRRORED.to_sheet((1, 2)) == (180, 140)
    assert paper(10, 10).to_sheet((3, 4)) == (3, 4)


@given(number, number, st.booleans())
def test_back_and_forth_is_the_same_point(x, y, mirrored):
    view = MIRRORED if mirrored else PLAIN
    assert view.to_plan(view.to_sheet((x, y))) == pytest.approx((x, y), abs=1e-9)


def test_the_window_in_plan():
    assert PLAIN.plan_window() == Box(-5, -2.5, 5, 7.5)
    assert MIRRORED.plan_window() == Box(-5, -2.5, 5, 7.5)


def test_boxes_overlap_touch_and_hold():
    one = Box(0, 0, 10, 10)
    assert one.overlaps(Box(9, 9, 20, 20))
    assert not one.overlaps(Box(10, 0, 20, 10))
    assert one.overlaps(Box(10, 0, 20, 10), air=1)
    assert one.holds(Box(0, 0, 10, 10))
    assert not one.holds(Box(0, 0, 10.1, 10))
    assert one.shrunk(1) == Box(1, 1, 9, 9)
    assert box_around([(3, 1), (-1, 4)]) == Box(-1, 1, 3, 4)
    assert (one.width, one.height) == (10, 10)
