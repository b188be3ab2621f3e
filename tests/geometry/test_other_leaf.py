"""What stands in a leaf's way on the closed other leaf of a pair, or other half of a Dutch door."""

import math
from dataclasses import replace

import pytest

from configurator.geometry.shapes import (
    Hardware,
    Leaf,
    OtherHalf,
    OtherLeaf,
    other_leaf_hardware,
    standing_shapes,
)
from configurator.geometry.solve import solve
from tests.geometry.openings import LEAF, case_a

#: A strip lapping an inch over the meeting edge, its middle on that edge.
STRIP = Hardware(kind="astragal", projection=0.25, from_latch_edge=0, width=2, height=42, vertical=80)
LOWER = Leaf(bottom=0.75, top=41.9375, barrels=((7.0, 11.5), (34.0, 38.5)))
UPPER = Leaf(bottom=42.0625, top=83.875, barrels=((46.0, 50.5), (74.0, 78.5)))
#: A strip along the split, an inch up and an inch down, on the pull face unless replaced.
ACROSS = Hardware(kind="astragal", projection=0.25, from_latch_edge=18, width=34, height=42, vertical=2)
SHELF = Hardware(kind="shelf", projection=8, from_latch_edge=18, width=30, height=41.4375, vertical=1)


def pair(*carried, w=35.75, closed=True):
    return OtherLeaf(opening=72, w=w, hardware=carried, closed=closed)


def over(leaf, beside, *carried):
    """A half of a Dutch door with the other half closed."""
    return replace(leaf, half=OtherHalf(bottom=beside.bottom, top=beside.top, hardware=carried))


def named(contact):
    return (contact.angle, contact.kind, contact.index, contact.part, contact.at_rest)


# --- pairs


def test_a_strip_counts_from_its_own_leafs_meeting_edge():
    # The other leaf begins at x = 36: 3 in along it, an inch either way, on the face 1/8 behind the frame's.
    (shape,) = other_leaf_hardware(case_a(), pair(replace(STRIP, from_latch_edge=3)), None)
    assert shape.points == ((38, -0.125), (40, -0.125), (40, 0.125), (38, 0.125))
    assert (shape.bottom, shape.top, shape.kind, shape.index) == (2, 82, "other leaf", 0)


def test_a_round_on_the_other_leaf():
    knob = Hardware(
        kind="knob", projection=2.5, from_latch_edge=2.5, width=2, height=38, vertical=2, round=True
    )
    (shape,) = other_leaf_hardware(case_a(), pair(replace(knob, face="push")), None)
    assert (shape.points, shape.radius) == (((38.5, -1.875 - 1.5),), 1)


def test_a_strip_lapping_the_active_leaf_keeps_it_closed():
    assert named(solve(case_a(), LEAF, other=pair(STRIP)).bare) == (0.0, "other leaf", 0, "leaf", False)


@pytest.mark.parametrize(
    ("from_edge", "stopped"), [(0.874, True), (0.876, True), (0.94, True), (0.95, False)]
)
def test_a_strip_that_laps_nothing_is_no_stop(from_edge, stopped):
    # At 7/8 its end stands at the leaf's edge, 35-7/8. The stop-side corner swings out past that: at the
    # strip's height off the pin, 1/4 to 1/2 back, to sqrt(35.8125^2 + 2-1/4^2 - 1/4^2) + 1/16 = 35.9447.
    solved = solve(case_a(), LEAF, other=pair(replace(STRIP, from_latch_edge=from_edge)))
    assert (solved.bare is not None) is stopped
    assert (solved.greatest_angle_bare == 0.0) is (from_edge < 0.875)


def test_a_strip_on_the_push_face_lets_the_active_leaf_go():
    assert solve(case_a(), LEAF, other=pair(replace(STRIP, face="push"))).bare is None


def test_the_active_leafs_own_strip_behind_the_other_keeps_it_closed():
    own = replace(STRIP, face="push")
    assert solve(case_a(), LEAF, (own,), other=pair()).bare is None
    assert named(solve(case_a(), LEAF, (own,), other=pair()).with_hardware) == (
        0.0,
        "other leaf",
        None,
        "astragal",
        False,
    )
    assert solve(case_a(), LEAF, (STRIP,), other=pair()).greatest_angle > math.pi / 2


def test_hardware_on_both_leaves_by_hand():
    # A box 3 in deep behind the active leaf, its end at x = 34-7/8, swings out against one behind the other,
    # which begins at x = 35. From the pin the corner stands 34-13/16 across and 5-1/4 back.
    own = Hardware(
        kind="panic device", face="push", projection=3, from_latch_edge=2, width=2, height=38, vertical=3
    )
    beside = replace(own, from_latch_edge=-0.5, width=1)
    contact = solve(case_a(), LEAF, (own,), other=pair(beside)).with_hardware
    rho, phi = math.hypot(34.8125, 5.25), math.atan2(-5.25, 34.8125)
    assert contact.angle == pytest.approx(-phi - math.acos(34.9375 / rho), abs=1e-12)
    assert (contact.kind, contact.index, contact.part) == ("other leaf", 0, "panic device")
    above = replace(beside, height=60)
    assert solve(case_a(), LEAF, (own,), other=pair(above)).greatest_angle == math.pi


def test_an_open_other_leaf_takes_its_strip_with_it():
    assert solve(case_a(), LEAF, other=pair(STRIP, closed=False)).bare is None


# --- Dutch doors


def test_a_strip_on_the_upper_half_keeps_the_lower_closed():
    contact = solve(case_a(), over(LOWER, UPPER, ACROSS)).bare
    assert named(contact) == (0.0, "other leaf", 0, "leaf", False)


def test_the_upper_half_with_its_strip_opens_over_the_closed_lower():
    solved = solve(case_a(), over(UPPER, LOWER), (ACROSS,))
    assert solved.bare is None
    assert solved.greatest_angle == math.pi


def test_a_strip_behind_the_upper_half_keeps_the_upper_closed_and_frees_the_lower():
    behind = replace(ACROSS, face="push")
    assert named(solve(case_a(), over(UPPER, LOWER), (behind,)).with_hardware)[:4] == (
        0.0,
        "other leaf",
        None,
        "astragal",
    )
    assert solve(case_a(), over(LOWER, UPPER, behind)).bare is None


@pytest.mark.parametrize(("top", "stopped"), [(42.0, False), (42.0625, False), (42.0626, True), (43, True)])
def test_a_shelf_stops_the_upper_half_only_where_it_stands_before_it(top, stopped):
    shelf = replace(SHELF, height=top - 0.5)
    assert (solve(case_a(), over(UPPER, LOWER, shelf)).bare is not None) is stopped


def test_a_shelf_goes_with_its_own_half():
    # Above the split by an inch and touching the upper half's face, it moves away from it.
    high = replace(SHELF, height=42.5)
    solved = solve(case_a(), over(LOWER, UPPER), (high,))
    assert solved.greatest_angle > math.pi / 2
    assert solved.with_hardware.kind == "wall"


def test_the_halves_do_not_touch_each_other():
    for leaf, beside in ((LOWER, UPPER), (UPPER, LOWER)):
        assert solve(case_a(), over(leaf, beside)).bare is None


def test_what_stands_last():
    kinds = [(one.kind, one.index) for one in standing_shapes(case_a(), over(LOWER, UPPER, ACROSS, SHELF))]
    assert kinds[-3:] == [("other leaf", None), ("other leaf", 0), ("other leaf", 1)]
