import math
import random
from dataclasses import replace

import pytest

from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import Hardware, Obstruction, OtherLeaf
from configurator.geometry.solve import solve
from tests.geometry import judge
from tests.geometry.openings import BOX, LEAF, RAIL, case_a
from tests.geometry.random_openings import random_problem

SQUARE = math.pi / 2


@pytest.mark.parametrize(("W", "by_hand"), [(4, 1.375), (4.5, 1.875)])
def test_open_flat_before_a_bare_wall(W, by_hand):
    # The face stands 2o - i + p off the wall, nearer than the frame's width keeps the closed leaf from it.
    gap = least_gaps(solve(case_a(W), LEAF)).bare
    assert gap.distance == pytest.approx(by_hand, abs=1e-12)
    assert (gap.angle, gap.kind, gap.index, gap.part) == (math.pi, "wall", None, "leaf")


def test_what_stands_nearer_than_the_wall():
    solved = solve(case_a(4.5), LEAF, obstructions=(RAIL,))
    gap = least_gaps(solved).bare
    assert gap == solved.gap
    assert gap.distance == pytest.approx(0.125, abs=1e-12)


def test_hardware_that_stops_the_door_leaves_nothing_and_the_bare_leaf_what_it_had():
    gaps = least_gaps(solve(case_a(4), LEAF, (BOX,)))
    assert gaps.bare.distance == pytest.approx(1.375, abs=1e-12)
    assert (gaps.with_hardware.distance, gaps.with_hardware.part) == (0.0, "lever")
    assert math.degrees(gaps.with_hardware.angle) == pytest.approx(177.9269, abs=5e-5)


def test_hardware_held_off_the_wall_by_a_stop_by_hand():
    # Held at 170 the box's outer corner nearer the hinge, 31.0625 across from the pin and 2 before it closed,
    # is 31.0625 sin 170 + 2 cos 170 from the pin's level, which is 7/8 off the wall.
    held = math.radians(170)
    gap = least_gaps(solve(case_a(4), LEAF, (BOX,), stop_angle=held)).with_hardware
    corners = [(x, 2.0) for x in (31.0625, 35.0625)]
    by_hand = 0.875 + min(x * math.sin(held) + y * math.cos(held) for x, y in corners)
    # That is 4.3 in, so the leaf's hinge end is nearer, 2-1/2 off the frame's outer corner all the way.
    assert by_hand > gap.distance
    near = replace(BOX, projection=8)
    gap = least_gaps(solve(case_a(4), LEAF, (near,), stop_angle=math.radians(165))).with_hardware
    y = 0.875 + 31.0625 * math.sin(math.radians(165)) + 7.5 * math.cos(math.radians(165))
    assert gap.distance == pytest.approx(y, abs=1e-12)
    assert (gap.part, gap.kind) == ("lever", "wall")


def test_a_knob_past_a_column_by_hand():
    # The pull-side knob's centre turns at hypot(33.4375, 1) past a column whose centre is 38 straight out.
    knob = Hardware(
        kind="knob", projection=2.5, from_latch_edge=2.375, width=2, height=38, vertical=2, round=True
    )
    high = Obstruction(
        kind="column", diameter=4, start=-4.0625, projection=0.375 + 38 + 2.5, bottom=84, top=90
    )
    low = replace(high, bottom=37, top=39)
    solved = solve(case_a(4), replace(LEAF, bottom=50), (knob,), (low,), stop_angle=2.0)
    gap = least_gaps(solved).with_hardware
    assert gap.part == "knob"
    assert gap.distance == pytest.approx(38 - 2 - 1 - math.hypot(33.4375, 1), abs=1e-12)
    assert math.degrees(gap.angle) == pytest.approx(90 - math.degrees(math.atan2(1, 33.4375)), abs=1e-9)
    assert least_gaps(solve(case_a(4), LEAF, (knob,), (high,))).bare.kind == "wall"


def test_the_far_wall_of_a_deep_reveal_by_hand():
    # Wall faces 10 in ahead of the frame, the far one at x = 37: the stop-side corner's circle comes nearest.
    gap = least_gaps(solve(case_a(4, F=1, p=-10), LEAF)).bare
    assert gap.distance == 0.0
    # Nearer still the barrel stays 1-1/16 less its radius from the near one; without barrels the far one.
    held = least_gaps(solve(case_a(4, F=1, p=-10), LEAF, stop_angle=1.0)).bare
    assert (held.distance, held.part) == (pytest.approx(1.0625 - 0.29, abs=1e-12), "barrel")
    held = least_gaps(solve(case_a(4, F=1, p=-10), replace(LEAF, barrels=()), stop_angle=1.0)).bare
    assert held.distance == pytest.approx(37 - 0.0625 - math.hypot(35.8125, 2.25), abs=1e-12)
    assert (held.kind, held.part) == ("wall", "leaf")


def test_what_the_other_leaf_carries_is_passed():
    strip = Hardware(kind="astragal", projection=0.25, from_latch_edge=1.0, width=2, height=42, vertical=80)
    gap = least_gaps(solve(case_a(), LEAF, other=OtherLeaf(opening=72, w=35.75, hardware=(strip,)))).bare
    # From x = 36 it stands in the plane of the leaf's face: nearest to the stop-side corner's circle.
    assert (gap.kind, gap.index) == ("other leaf", 0)
    assert gap.distance == pytest.approx(math.hypot(35.9375, 0.25) - math.hypot(35.8125, 2.25), abs=1e-12)


def test_a_strip_the_closed_leaf_lies_before_is_no_passage():
    strip = Hardware(
        kind="astragal", face="push", projection=0.25, from_latch_edge=0, width=2, height=42, vertical=80
    )
    solved = solve(case_a(), LEAF, other=OtherLeaf(opening=72, w=35.75, hardware=(strip,)))
    assert solved.bare is None
    assert solved.gap is None
    assert least_gaps(solved).bare.kind == "wall"
    held = solve(
        case_a(), LEAF, other=OtherLeaf(opening=72, w=35.75, hardware=(replace(strip, face="pull"),))
    )
    assert (held.greatest_angle, least_gaps(held).bare.distance) == (0.0, 0.0)


def test_the_other_leaf_itself_is_the_latch_edges_matter():
    gap = least_gaps(solve(case_a(), LEAF, other=OtherLeaf(opening=72, w=35.75))).bare
    assert gap.kind == "wall"


def test_binding_at_the_jamb_is_no_gap_of_nothing():
    solved = solve(case_a(7), LEAF)
    assert solved.bare.kind == "latch jamb"
    assert least_gaps(solved).bare.distance > 1


@pytest.mark.parametrize("seed", range(2))
def test_against_sampled_swings(seed):
    """Never above a sampled distance, and come upon by fine sampling, walls and hardware counted."""
    chance = random.Random(f"least gaps {seed}")
    seen = 0
    while seen < 6:
        problem = random_problem(chance)
        solved = solve(
            problem.hanging,
            problem.leaf,
            problem.hardware,
            problem.obstructions,
            problem.other,
            stop_angle=1.5,
        )
        gap = least_gaps(solved).with_hardware
        if gap is None or solved.rest_angle < 0.1 or gap.distance == 0.0:
            continue
        seen += 1
        sampled = _sampled(problem, solved.rest_angle)
        assert gap.distance <= sampled + 1e-9, problem
        assert sampled <= gap.distance + 50 * solved.rest_angle / 600, problem


def _sampled(problem, reach):
    bare, fitted = judge.moving_parts(problem)
    pin = locate_pin(problem.hanging).at
    return min(
        judge.apart(part, still.core, still, pin, reach * step / 600)
        for part in (*bare, *fitted)
        for still in judge.standing_parts(problem)
        if still.name[1] is not None or still.name[0] == "wall"
        if min(part.top, still.top) > max(part.bottom, still.bottom)
        if still.name[0] != "other leaf" or judge.apart(part, still.core, still, pin, 0.0) > 1e-9
        for step in (range(601) if part.name != ("barrel",) else (0,))
    )
