"""The worked demonstration openings and what a whole solution holds together."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.pin import MOUNTINGS
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherLeaf
from configurator.geometry.solve import Solution, scene, solve
from tests.geometry.openings import BEVEL, BOX, CASING, LEAF, PLINTH, RAIL, case_a, linen_closet
from tests.sweeps import examples

SQUARE = math.pi / 2
LOW_RAIL = replace(RAIL, top=36)
KNOB = Hardware(kind="knob", projection=2.5, from_latch_edge=2.375, width=2, height=38, vertical=2)


def degrees(angle):
    return pytest.approx(math.degrees(angle), abs=5e-4)


def test_the_plain_case():
    solved = solve(case_a(4, beta=BEVEL), LEAF, (BOX,))
    assert solved.greatest_angle_bare == math.pi
    assert degrees(solved.greatest_angle) == 177.927
    assert (solved.with_hardware.kind, solved.with_hardware.part) == ("wall", "lever")
    assert solved.clear_width_at_90 == 33.0625


def test_the_rail_case():
    narrow, wide = (solve(case_a(W, beta=BEVEL), LEAF, (BOX,), (LOW_RAIL,)) for W in (4, 4.5))
    assert degrees(narrow.greatest_angle_bare) == 171.788
    assert wide.greatest_angle_bare == math.pi
    assert degrees(wide.greatest_angle) == 178.848


def test_half_an_inch_of_tile_more():
    solved = solve(case_a(4.5, beta=BEVEL, p=0), LEAF, obstructions=(LOW_RAIL,))
    assert degrees(solved.greatest_angle_bare) == 171.842


def test_the_linen_closet():
    about = (CASING, PLINTH)
    narrow, wide = (solve(linen_closet(W), LEAF, (KNOB,), about) for W in (3, 3.5))
    assert degrees(narrow.greatest_angle_bare) == 143.406
    assert (narrow.bare.kind, narrow.bare.index) == ("casing", 1)
    assert wide.greatest_angle_bare == math.pi
    assert (
        degrees(wide.greatest_angle) == 177.551
    )  # a turned knob: as wide as its diameter, to its projection
    assert wide.clear_width_at_90 == pytest.approx(29 + 33 / 64, abs=1e-12)


def test_a_round_knob_reaches_the_wall_later_than_its_box():
    # Centre 29-31/64 across and 7/8 up from the pin, radius 1; the wall 21/32 below the pin: by hand.
    ball = replace(KNOB, round=True)
    solved = solve(linen_closet(3.5), LEAF, (ball,))
    x, y = 32 - 0.09375 - 2.375 - 0.046875, 1.5 - 0.625
    by_hand = math.pi - math.atan2(y, x) - math.asin((1 - 0.65625) / math.hypot(x, y))
    assert solved.greatest_angle == pytest.approx(by_hand, abs=1e-12)


def test_the_wide_baggage_door():
    solved = solve(case_a(4.5, O=42, beta=BEVEL), LEAF, (BOX,))
    assert degrees(solved.greatest_angle) == 179.034
    assert solved.clear_width_at_90 == 38.8125


@pytest.mark.parametrize(("W", "angle"), [(4, 100.545), (4.5, 100.944), (6, 102.136)])
def test_the_return_wall(W, angle):
    wall = Obstruction(kind="return wall", fills=True, start=4)
    solved = solve(case_a(W, beta=BEVEL), LEAF, (BOX,), (wall,))
    assert degrees(solved.greatest_angle_bare) == angle
    if W == 4:
        assert degrees(solved.greatest_angle) == 96.676


def test_flush_in_block():
    solved = solve(case_a(4, D=5.75, p=0, beta=BEVEL), LEAF)
    assert solved.greatest_angle_bare == math.pi
    assert solved.barrel_past_wall == pytest.approx(0.665, abs=1e-12)


def test_corridor_figures():
    # A 60 in corridor: held at 90 the leaf leaves 23-1/16 beyond its far edge; open flat 56-3/8.
    held = solve(case_a(4.5, beta=BEVEL), LEAF, stop_angle=SQUARE)
    assert 60 - held.encroachment_at_rest == pytest.approx(23.0625, abs=1e-9)
    assert 60 - solve(case_a(4.5), LEAF).encroachment_at_rest == pytest.approx(56.375, abs=1e-9)


# --- stop angle and what is reached


@pytest.mark.parametrize(
    ("stop", "reached"), [(SQUARE - 1e-6, False), (SQUARE, True), (SQUARE + 1e-6, True), (None, True)]
)
def test_no_clear_width_at_90_where_90_is_not_reached(stop, reached):
    solved = solve(case_a(4.5), LEAF, stop_angle=stop)
    assert (solved.clear_width_at_90 is not None) is reached


def test_a_stop_limits_what_rests_not_what_is_possible():
    solved = solve(case_a(4), LEAF, (BOX,), stop_angle=2.0)
    assert degrees(solved.greatest_angle) == 177.927
    assert (solved.rest_angle, solved.rest_angle_bare) == (2.0, 2.0)
    late = solve(case_a(4), LEAF, (BOX,), stop_angle=math.pi)
    assert late.rest_angle == late.greatest_angle


def test_hardware_that_stops_before_90_leaves_no_clear_width_there():
    wall = Obstruction(kind="return wall", fills=True, start=1.0)
    solved = solve(case_a(4), LEAF, (replace(BOX, projection=8),), (wall,))
    assert solved.greatest_angle < SQUARE
    assert solved.clear_width_at_90 is None


def test_exact_angles():
    assert solve(case_a(4.5), LEAF).greatest_angle == math.pi
    # Open 90 the pull face lies at x_p + o = 1-9/16: a post's face there meets it flat.
    post = Obstruction(kind="other", start=-3.5625, length=1, offset=20, projection=5)
    flat = solve(case_a(6), LEAF, obstructions=(post,))
    assert flat.greatest_angle == SQUARE


# --- arrangements


def test_a_dutch_leaf_ignores_what_is_at_other_heights():
    base = Obstruction(kind="base", projection=2.5, start=0.25, top=6)
    upper = Leaf(bottom=42.0625, top=83.875, barrels=((46.0, 50.5), (74.0, 78.5)))
    lower = Leaf(bottom=0.75, top=41.9375, barrels=((7.0, 11.5), (34.0, 38.5)))
    assert solve(case_a(4), upper, obstructions=(base,)).bare is None
    assert solve(case_a(4), lower, obstructions=(base,)).bare.kind == "base"


def test_an_obstruction_on_the_latch_side_of_a_pair_is_at_the_far_jamb():
    post = Obstruction(kind="other", side="latch", projection=30, start=0, length=2)
    plan = scene(case_a(4), LEAF, (), (post,), OtherLeaf(opening=72, w=35.75))
    assert min(x for x, _ in plan.standing[0].shape.points) == 74


def test_a_scene_solved_twice_is_the_same():
    plan = scene(case_a(4.5), LEAF, (BOX,), (RAIL,))
    one, other = Solution(plan), solve(case_a(4.5), LEAF, (BOX,), (RAIL,))
    assert one == Solution(plan) == other
    assert (one.bare, one.with_hardware, one.gap) == (other.bare, other.with_hardware, other.gap)


@given(
    st.fixed_dictionaries(
        {
            "O": st.floats(2, 300),
            "T": st.floats(0.01, 6),
            "R": st.floats(0.01, 12),
            "F": st.floats(0.01, 24),
            "D": st.floats(0.01, 60),
            "p": st.floats(-60, 60),
            "s": st.floats(0, 6),
            "k": st.floats(0, 2),
            "W": st.floats(1, 24),
            "mounting": st.sampled_from(MOUNTINGS),
        }
    ),
    st.lists(st.sampled_from([BOX, KNOB, replace(KNOB, round=True, width=30)]), max_size=2),
    st.lists(st.sampled_from([RAIL, CASING, PLINTH, Obstruction(kind="column", diameter=9)]), max_size=2),
)
@examples(60)
def test_any_opening_within_the_limits_has_an_answer(numbers, hardware, about):
    """However odd the numbers: no failure, and every figure a number within its bounds."""
    solved = solve(case_a(**numbers), LEAF, hardware, about)
    assert 0 <= solved.greatest_angle <= solved.greatest_angle_bare + 1e-8 <= math.pi + 1e-8
    for name in ("clear_width_at_greatest", "latch_edge_least", "hinge_edge_least"):
        assert 0 <= getattr(solved, name) < math.inf, name
    for name in ("encroachment_greatest", "encroachment_with_hardware_greatest", "barrel_free_by"):
        assert math.isfinite(getattr(solved, name)), name
    assert solved.encroachment_at_rest <= solved.encroachment_greatest + 1e-9


def test_bad_openings_are_refused_in_words():
    with pytest.raises(ValueError, match="mounting"):
        solve(case_a(4, mounting="glued"), LEAF)
    with pytest.raises(ValueError, match=r"no door in 1/2 in"):
        solve(case_a(4, O=0.5, g_l=0.375), LEAF)
    with pytest.raises(ValueError, match=r"no height"):
        solve(case_a(4), Leaf(bottom=40, top=40))
    with pytest.raises(ValueError, match=r"return wall"):
        solve(case_a(4), LEAF, obstructions=(Obstruction(kind="return wall", fills=True, start=-1),))
