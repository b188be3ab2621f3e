import math
import random

import pytest

from configurator.geometry.gaps import least_distance, least_gap, nearest_passage
from configurator.geometry.pin import locate_pin
from configurator.geometry.polar import seen_from
from configurator.geometry.shapes import Hardware, Shape, rectangle
from configurator.geometry.solve import solve
from tests.geometry import judge
from tests.geometry.openings import LEAF, RAIL, case_a
from tests.geometry.random_openings import random_problem

PIN = (0.0, 0.0)
BAR = Shape(rectangle(0, 10, -1, 0), kind="leaf")


def test_wider_hinge_passes_the_rail_with_an_eighth_to_spare():
    gap = solve(case_a(4.5), LEAF, obstructions=(RAIL,)).gap
    # Open flat the leaf's face stands 2o - i = 1-3/8 off the frame face, the rail 1-1/4.
    assert gap.distance == pytest.approx(0.125, abs=1e-12)
    assert gap.angle == math.pi
    assert (gap.kind, gap.index, gap.part) == ("chair rail", 0, "leaf")
    assert gap.point_moving[1] - gap.point_standing[1] == pytest.approx(0.125, abs=1e-12)


def test_nothing_about_the_door_has_no_gap():
    assert solve(case_a(4.5), LEAF).gap is None


def test_a_stopped_leaf_has_none_left():
    gap = solve(case_a(4), LEAF, obstructions=(RAIL,)).gap
    assert gap.distance == pytest.approx(0, abs=1e-12)


def test_a_corner_passing_a_face_by_hand():
    # The far corner turns at hypot(10, 1) past a face 10.5 up, nearest when it points straight up.
    face = Shape(rectangle(-5, 5, 10.5, 12), kind="wall")
    gap = least_gap([BAR], [face], PIN)
    assert gap.distance == pytest.approx(10.5 - math.hypot(10, 1), abs=1e-12)
    assert gap.point_standing[1] == pytest.approx(10.5, abs=1e-12)
    assert gap.part == "leaf"


def test_two_corners_in_line_with_the_pin_by_hand():
    # A post's corner at (9, 9), 12.73 from the pin; the bar's corner (10, -1) comes in line with it.
    post = Shape(rectangle(9, 12, 9, 12), kind="other")
    gap = least_gap([BAR], [post], PIN)
    assert gap.distance == pytest.approx(math.hypot(9, 9) - math.hypot(10, 1), abs=1e-12)
    assert gap.angle == pytest.approx(math.pi / 4 + math.atan2(1, 10), abs=1e-12)
    assert gap.point_standing == pytest.approx((9, 9), abs=1e-12)


def test_round_past_round_by_hand():
    knob = Shape(((5.0, 2.0),), 1.0, kind="knob")
    column = Shape(((0.0, 9.0),), 2.0, kind="column", index=3)
    gap = least_gap([knob], [column], PIN)
    assert gap.distance == pytest.approx(9 - math.hypot(5, 2) - 3, abs=1e-12)
    assert gap.angle == pytest.approx(math.pi / 2 - math.atan2(2, 5), abs=1e-12)
    assert math.dist(gap.point_moving, gap.point_standing) == pytest.approx(gap.distance, abs=1e-12)
    assert gap.point_standing == pytest.approx((0, 7), abs=1e-12)


def test_the_limit_counts():
    face = Shape(rectangle(-5, 5, 10.5, 12), kind="wall")
    still = least_gap([BAR], [face], PIN, limit=0.0)
    # Closed: from (5, 0) on the bar straight up.
    assert still.distance == pytest.approx(10.5, abs=1e-12)


def test_other_heights_have_no_gap():
    high = Shape(rectangle(-5, 5, 10.5, 12), bottom=90, top=95, kind="wall")
    low = Shape(BAR.points, bottom=0, top=80, kind="leaf")
    assert least_gap([low], [high], PIN) is None


def test_least_distance_is_nothing_where_they_meet():
    face = Shape(rectangle(-5, 5, 9.5, 12), kind="wall")
    assert least_distance(seen_from(PIN, BAR), seen_from(PIN, face), math.pi) == 0


@pytest.mark.parametrize("seed", range(3))
def test_against_sampled_swings(seed):
    """The exact least gap is never above a sampled one, and is come upon by fine sampling."""
    chance = random.Random(f"gaps {seed}")
    seen = 0
    while seen < 6:
        problem = random_problem(chance)
        solved = solve(problem.hanging, problem.leaf, (), problem.obstructions, problem.other)
        if solved.gap is None or solved.rest_angle_bare == 0:
            continue
        seen += 1
        sampled = _sampled(problem, solved.rest_angle_bare)
        assert solved.gap.distance <= sampled + 1e-9, problem
        assert sampled <= solved.gap.distance + 50 * solved.rest_angle_bare / 1500, problem


def _sampled(problem, reach):
    bare, _ = judge.moving_parts(problem)
    standing = judge.standing_parts(problem)
    about = [part for part in standing if part.name[1] is not None and part.name[0] != "other leaf"]
    pin = locate_pin(problem.hanging).at
    return min(
        judge.apart(part, still.core, still, pin, reach * step / 1500)
        for part in bare
        for still in about
        if min(part.top, still.top) > max(part.bottom, still.bottom)
        for step in (range(1501) if part.name == ("leaf",) else (0,))
    )


def test_hardware_does_not_count_in_the_bare_gap():
    lever = Hardware(kind="lever", projection=2.5, from_latch_edge=2.75, width=4, height=38, vertical=3.5)
    bare = solve(case_a(4.5), LEAF, (), (RAIL,)).gap
    assert solve(case_a(4.5), LEAF, (lever,), (RAIL,)).gap == bare


@pytest.mark.parametrize("lift", [-1e-15, 0.0, 1e-15])
def test_lines_in_one_line_lie_apart_along_it(lift):
    # Turned a half about the pin the line from 1 to 3 lies from -3 to -1, in line with one from -5 to -3.75.
    line = Shape(((1.0, lift), (3.0, lift)), kind="leaf")
    along = Shape(((-5.0, 0.0), (-3.75, 0.0)), kind="frame")
    distance, angle = nearest_passage(seen_from(PIN, line), seen_from(PIN, along), math.pi)
    assert distance == pytest.approx(0.75, abs=1e-12)
    assert angle == pytest.approx(math.pi, abs=1e-12)
