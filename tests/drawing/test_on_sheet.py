import math

import pytest

from configurator.drawing.on_sheet import SYMBOLS, SheetArc, arc_on_sheet, region_outline
from configurator.drawing.primitives import Arc, Polyline, Region
from configurator.drawing.view import Box, View, paper

SHEET = paper(100.0, 100.0)
MIRRORED = View(2.0, (50.0, 10.0), True, Box(0.0, 0.0, 100.0, 100.0))


def test_an_arc_is_placed_and_scaled():
    arc = arc_on_sheet(Arc("A-DOOR", (3.0, 4.0), 5.0, 0.0, 1.0), View(2.0, (10.0, 20.0), False, SHEET.window))
    assert arc == SheetArc((16.0, 28.0), 10.0, 0.0, 1.0)


def test_a_mirrored_arc_runs_from_where_it_ended():
    arc = arc_on_sheet(Arc("A-DOOR", (3.0, 4.0), 5.0, 0.0, math.pi / 3), MIRRORED)
    assert (arc.centre, arc.radius) == ((44.0, 18.0), 10.0)
    assert (arc.start, arc.end) == pytest.approx((2 * math.pi / 3, math.pi))
    assert arc.at(arc.end) == pytest.approx(MIRRORED.to_sheet((8.0, 4.0)))


def test_chords_begin_and_end_with_the_arc_and_lie_on_it():
    arc = SheetArc((1.0, 2.0), 50.0, 0.5, 2.0)
    chords = arc.chords()
    assert (chords[0], chords[-1]) == (arc.at(0.5), arc.at(2.0))
    assert all(math.dist(point, arc.centre) == pytest.approx(50.0) for point in chords)


@pytest.mark.parametrize(("end", "whole"), [(2 * math.pi, True), (2 * math.pi - 0.001, False)])
def test_a_full_circle_is_told_from_a_long_arc(end, whole):
    assert SheetArc((0.0, 0.0), 1.0, 0.0, end).is_whole is whole


def test_a_region_is_run_around_though_a_bound_runs_backward():
    bounds = (
        Polyline("A-DOOR", ((0.0, 0.0), (10.0, 0.0))),
        Polyline("A-DOOR", ((10.0, 10.0), (10.0, 0.0))),
        Polyline("A-DOOR", ((10.0, 10.0), (0.0, 0.0))),
    )
    corners = [(0.0, 0.0), (10.0, 0.0), (10.0, 0.0), (10.0, 10.0), (10.0, 10.0), (0.0, 0.0)]
    assert region_outline(Region("A-DOOR", bounds), SHEET) == corners


def test_a_contact_is_a_heavy_ring_with_a_cross_and_the_pin_a_dot():
    assert len(SYMBOLS["contact"].strokes) == 2
    assert SYMBOLS["contact"].heavier == 2.0
    assert SYMBOLS["pin axis"].filled
