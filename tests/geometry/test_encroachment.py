import math

import pytest

from configurator.geometry.encroachment import (
    encroachment,
    encroachment_curve,
    greatest_encroachment,
)
from configurator.geometry.solve import scene, solve
from tests.geometry.openings import BOX, LEAF, RAIL, case_a


def parts_of(h, hardware=()):
    plan = scene(h, LEAF, hardware)
    return (plan.leaf, *plan.hardware), plan.pin


@pytest.mark.parametrize("W", [4, 4.5, 6])
def test_open_flat_by_hand(W):
    # Item: 2o - i + p + T off the wall, o = W/2 - 1-1/2, i = 1/8, p = 1/2.
    solved = solve(case_a(W), LEAF)
    assert solved.encroachment_at_rest == pytest.approx(2 * (W / 2 - 1.5) - 0.125 + 0.5 + 1.75, abs=1e-12)


def test_greatest_is_the_far_corner_straight_out():
    # The stop-side latch corner of a square leaf, 35.8125 out and 2-1/4 below the pin, 7/8 off the wall.
    solved = solve(case_a(4), LEAF)
    assert solved.encroachment_greatest == pytest.approx(math.hypot(35.8125, 2.25) + 0.875, abs=1e-12)


def test_greatest_ends_where_the_door_does():
    # Held at 45 degrees the pull-side corner is the farthest out.
    solved = solve(case_a(4), LEAF, stop_angle=math.pi / 4)
    out = (35.8125 - 0.5) * math.sin(math.pi / 4) + 0.875
    assert solved.encroachment_greatest == pytest.approx(out, abs=1e-12)
    assert solved.encroachment_at_rest == pytest.approx(out, abs=1e-12)


def test_hardware_stands_out_farther_open_flat_on_the_push_face_only():
    bar = BOX.__class__(
        kind="panic device", projection=3, from_latch_edge=18, width=30, height=40, vertical=3, face="push"
    )
    solved = solve(case_a(4.5), LEAF, (bar,))
    assert solved.encroachment_with_hardware_at_rest == pytest.approx(
        solved.encroachment_at_rest + 3, abs=1e-12
    )


def test_at_rest_with_hardware_is_where_the_hardware_stops_it():
    solved = solve(case_a(4), LEAF, (BOX,))
    parts, pin = parts_of(case_a(4), (BOX,))
    angle = solved.with_hardware.angle
    assert solved.encroachment_with_hardware_at_rest == pytest.approx(
        encroachment(parts, case_a(4), pin, angle), abs=1e-12
    )
    assert angle < math.pi


def test_a_rail_ends_the_bare_leaf():
    solved = solve(case_a(4), LEAF, obstructions=(RAIL,))
    parts, pin = parts_of(case_a(4))
    assert solved.encroachment_at_rest == pytest.approx(
        encroachment(parts, case_a(4), pin, solved.bare.angle), abs=1e-12
    )


@pytest.mark.parametrize("reach", [0.3, 1.0, math.pi / 2, 2.5, math.pi])
def test_greatest_against_sampling(reach):
    h = case_a(4.5)
    parts, pin = parts_of(h, (BOX,))
    exact = greatest_encroachment(parts, h, pin, reach)
    sampled = max(out for _, out in encroachment_curve(parts, h, pin, reach, 4001))
    assert sampled <= exact + 1e-12
    assert exact <= sampled + 40 * (reach / 4000) ** 2


def test_the_curve_begins_closed_and_ends_at_the_reach():
    h = case_a(4.5)
    parts, pin = parts_of(h)
    curve = encroachment_curve(parts, h, pin, math.pi, 5)
    assert [angle for angle, _ in curve] == [math.pi * step / 4 for step in range(5)]
    assert curve[0][1] == pytest.approx(0.5 - 0.125, abs=1e-12)  # p - i: the closed pull face
    with pytest.raises(ValueError, match="two samples"):
        encroachment_curve(parts, h, pin, math.pi, 1)
