import math

import pytest

from configurator.drawing.base.on_sheet import arc_on_sheet, around, chords, clip_arc
from configurator.drawing.base.primitives import Arc, Polyline, Region
from configurator.drawing.base.view import Box, View, paper

SHEET = paper(100.0, 100.0)
MIRRORED = View(2.0, (50.0, 10.0), True, Box(0.0, 0.0, 100.0, 100.0))


def on_circle(arc, turn):
    (x, y), radius, *_ = arc
    return (x + radius * math.cos(turn), y + radius * math.sin(turn))


def test_an_arc_is_placed_and_scaled():
    arc = arc_on_sheet(Arc("A-DOOR", (3.0, 4.0), 5.0, 0.0, 1.0), View(2.0, (10.0, 20.0), False, SHEET.window))
    assert arc == ((16.0, 28.0), 10.0, 0.0, 1.0)


def test_a_mirrored_arc_runs_from_where_it_ended():
    arc = arc_on_sheet(Arc("A-DOOR", (3.0, 4.0), 5.0, 0.0, math.pi / 3), MIRRORED)
    assert arc == ((44.0, 18.0), 10.0, pytest.approx(2 * math.pi / 3), pytest.approx(math.pi))
    assert on_circle(arc, arc[3]) == pytest.approx(MIRRORED.to_sheet((8.0, 4.0)))


def test_chords_begin_and_end_with_the_arc_and_lie_on_it():
    arc = ((1.0, 2.0), 50.0, 0.5, 2.0)
    points = chords(*arc)
    assert (points[0], points[-1]) == (on_circle(arc, 0.5), on_circle(arc, 2.0))
    assert all(math.dist(point, arc[0]) == pytest.approx(50.0) for point in points)


def test_an_arc_is_cut_where_it_leaves_the_box():
    # Radius 5 about a corner of the box: only the quarter inside it is left.
    pieces = clip_arc(((0.0, 0.0), 5.0, -math.pi, math.pi), SHEET.window)
    assert pieces == [pytest.approx((0.0, math.pi / 2))]


def test_an_arc_that_leaves_and_comes_back_is_two_pieces():
    # Radius 5 about a point 3 under the top edge: it is over the edge from asin 0.6 to pi - asin 0.6.
    over = math.asin(0.6)
    pieces = clip_arc(((50.0, 97.0), 5.0, 0.0, math.pi), SHEET.window)
    assert pieces == [pytest.approx((0.0, over)), pytest.approx((math.pi - over, math.pi))]


@pytest.mark.parametrize(("centre", "left"), [((50.0, 50.0), [(0.0, 6.0)]), ((200.0, 50.0), [])])
def test_an_arc_wholly_in_or_out_is_left_so(centre, left):
    assert clip_arc((centre, 5.0, 0.0, 6.0), SHEET.window) == left


def test_a_region_is_run_around_though_a_bound_runs_backward():
    bounds = (
        Polyline("A-DOOR", ((0.0, 0.0), (10.0, 0.0))),
        Polyline("A-DOOR", ((10.0, 10.0), (10.0, 0.0))),
        Polyline("A-DOOR", ((10.0, 10.0), (0.0, 0.0))),
    )
    corners = [(0.0, 0.0), (10.0, 0.0), (10.0, 0.0), (10.0, 10.0), (10.0, 10.0), (0.0, 0.0)]
    assert around(Region("A-DOOR", bounds), SHEET) == corners
