import math

import pytest

from configurator.geometry.meeting_point import meeting_point, nearest_on_outline, nearest_points
from configurator.geometry.polar import seen_from
from configurator.geometry.shapes import Shape, rectangle

PIN = (0.0, 0.0)


def met(moving, standing, theta):
    return meeting_point(PIN, seen_from(PIN, moving), seen_from(PIN, standing), theta)


BAR = Shape(rectangle(0, 10, -1, 0))


def test_nearest_on_an_outline_and_past_its_corners():
    for point, nearest in (
        ((3, 5), (3, 0)),
        ((-2, 5), (0, 0)),
        ((14, -3), (10, -1)),
        ((13, -0.5), (10, -0.5)),
    ):
        assert nearest_on_outline(point, BAR.points) == nearest
    assert nearest_on_outline((3, 4), ((1, 1),)) == (1, 1)


def test_nearest_points_of_two_outlines():
    p, q = nearest_points(BAR.points, rectangle(12, 13, 3, 4))
    assert (p, q) == ((10, 0), (12, 3))


def test_a_flat_contact_is_named_by_its_middle():
    assert met(BAR, Shape(rectangle(-3, 0, 4, 20)), math.pi / 2) == pytest.approx((0, 7), abs=1e-9)


def test_a_corner_on_a_face():
    reach = math.acos(-9.9 / 10)
    assert met(BAR, Shape(rectangle(-20, -9.9, -1, 20)), reach) == pytest.approx(
        (-9.9, math.sqrt(100 - 9.9**2)), abs=1e-9
    )


def test_a_round_on_a_face_touches_at_its_foot():
    knob = Shape(((5.0, 2.0),), 1.0)
    assert met(knob, Shape(rectangle(0, 10, 3, 4)), 0.0) == pytest.approx((5, 3), abs=1e-12)


def test_two_rounds_touch_between_their_centres():
    one, other = Shape(((5.0, 0.0),), 1.0), Shape(((5.0, 4.0),), 3.0)
    assert met(one, other, 0.0) == pytest.approx((5, 1), abs=1e-12)


def test_an_overlap_is_named_within_what_is_shared():
    x, y = met(BAR, Shape(rectangle(4, 6, -0.5, 3)), 0.0)
    assert 4 <= x <= 6
    assert -0.5 <= y <= 0
