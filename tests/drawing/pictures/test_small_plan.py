"""A plan in few lines, and the same plan mirrored or turned round."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.drawing.base.primitives import Arc, Polygon, Polyline
from configurator.drawing.pictures.scenes import scene
from configurator.drawing.pictures.small_plan import mapped, small_extent, small_plan, swing_arc
from tests.sweeps import examples

TURNS = st.floats(-6.0, 6.0)


def _points(arc):
    turns = (arc.start, (arc.start + arc.end) / 2, arc.end)
    x, y = arc.centre
    return [(x + arc.radius * math.cos(turn), y + arc.radius * math.sin(turn)) for turn in turns]


@examples(30)
@given(TURNS, st.floats(0.1, 6.2), st.sampled_from([1.0, -1.0]), st.sampled_from([1.0, -1.0]))
def test_a_mirrored_arc_runs_through_its_mirrored_points(start, turn, across, up):
    about = (3.0, -1.0)
    arc = Arc("A-DOOR", (1.0, 2.0), 5.0, start, start + turn)
    found = mapped(arc, across, up, about)
    assert found.end - found.start == pytest.approx(turn)
    wanted = [(3.0 + across * (x - 3.0), -1.0 + up * (y + 1.0)) for x, y in _points(arc)]
    if across * up < 0:
        wanted.reverse()
    for one, other in zip(_points(found), wanted, strict=True):
        assert one == pytest.approx(other, abs=1e-9)


def test_straight_parts_are_mirrored_point_by_point():
    line = mapped(Polyline("A-DOOR", ((1.0, 2.0), (3.0, 4.0))), -1.0, 1.0)
    assert line.points == ((-1.0, 2.0), (-3.0, 4.0))


@pytest.mark.parametrize("degrees", [1.0, 89.0, 90.0, 91.0, 180.0])
def test_the_extent_holds_leaf_and_frame(degrees):
    hung, angle = scene("square").hung, math.radians(degrees)
    extent = small_extent(hung, angle)
    leaf = next(p for p in small_plan(hung, angle) if isinstance(p, Polygon) and p.name == "leaf")
    assert all(extent.has(point) for point in leaf.points)
    assert extent.has((-hung.h.F, -hung.h.D))


def test_the_swing_begins_at_the_closed_lock_edge():
    hung = scene("square").hung
    arc = swing_arc(hung, math.pi / 2)
    x, y = _points(arc)[0]
    assert (x, y) == pytest.approx((hung.h.O - hung.h.g_l, -hung.h.i))
