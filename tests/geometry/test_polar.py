import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.polar import (
    core_distance,
    cosine_and_sine,
    crossings,
    seen_from,
    separation,
    turned,
)
from configurator.geometry.shapes import Shape, rectangle

PIN = (1.0, 2.0)
BAR = Shape(rectangle(1, 11, 1, 2))  # from the pin along +x, 1 thick below it


def test_a_rectangle_seen_from_its_own_corner():
    part = seen_from(PIN, BAR)
    assert sorted(rho for rho, _ in part.corners) == pytest.approx([0, 1, 10, math.hypot(10, 1)])
    assert (part.near, part.far) == pytest.approx((0, math.hypot(10, 1)))
    outward = {round(math.degrees(alpha)) % 360: c for alpha, c, *_ in part.edges}
    assert outward == pytest.approx({0: 10, 90: 0, 180: 0, 270: 1})


def test_a_round_part_counts_its_radius():
    part = seen_from(PIN, Shape(((4.0, 6.0),), 2.0))
    assert (part.near, part.far, part.edges) == (3.0, 7.0, ())


def test_the_pin_inside_a_part_is_at_no_distance():
    assert seen_from(PIN, Shape(rectangle(0, 2, 0, 4))).near == 0


def test_crossings_in_and_out_by_hand():
    # A post 1 wide at 5 to 6 up from the pin: the bar's upper face comes to it at 90 degrees less the angle
    # that its near side subtends, and leaves it when its lower face has passed.
    post = seen_from(PIN, Shape(rectangle(0.5, 1.5, 7, 8)))
    entering, leaving = crossings(seen_from(PIN, BAR), post)
    assert min(entering) == pytest.approx(math.atan2(5, 0.5), abs=1e-12)
    # Out again when the post's left lower corner (-1/2, 5) lies on the lower face, 1 below the pin's line.
    assert max(leaving) == pytest.approx(math.atan2(5, -0.5) + math.asin(1 / math.hypot(5, 0.5)), abs=1e-12)


def test_separation_apart_touching_and_overlapping():
    bar = seen_from(PIN, BAR)
    for up, expected in ((0.25, 0.25), (0.0, 0.0), (-0.25, -0.25)):
        still = seen_from(PIN, Shape(rectangle(3, 5, 2 + up, 6)))
        assert separation(bar, still, 0.0) == pytest.approx(expected, abs=1e-12)


def test_separation_of_a_round_from_a_corner_is_along_the_line_between():
    knob = seen_from(PIN, Shape(((14.0, 6.0),), 2.0))
    assert separation(seen_from(PIN, BAR), knob, 0.0) == pytest.approx(math.hypot(3, 4) - 2, abs=1e-12)
    assert core_distance(seen_from(PIN, BAR), knob, 0.0) == pytest.approx(5, abs=1e-12)


@pytest.mark.parametrize(("theta", "exact"), [(0.0, (1, 0)), (math.pi / 2, (0, 1)), (math.pi, (-1, 0))])
def test_square_angles_are_exact(theta, exact):
    assert cosine_and_sine(theta) == exact


@given(st.floats(0, math.pi))
def test_turning_keeps_distances_from_the_pin(theta):
    for (x, y), (a, b) in zip(turned(PIN, seen_from(PIN, BAR), theta), BAR.points, strict=True):
        assert math.dist((x, y), PIN) == pytest.approx(math.dist((a, b), PIN), abs=1e-12)
        turn = cosine_and_sine(theta)
        assert x - PIN[0] == pytest.approx((a - PIN[0]) * turn[0] - (b - PIN[1]) * turn[1], abs=1e-12)
