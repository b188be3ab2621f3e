"""What a distance in the plan is measured from, by hand."""

import math

import pytest

from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Region, Text
from configurator.drawing.plan.measuring import Snap, distance_words, snapped
from configurator.units import Display

SQUARE = Polygon("A", ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)))
BARREL = Arc("A", (5.0, 0.0), 0.5, 0.0, 2 * math.pi)


@pytest.mark.parametrize(
    ("at", "found"),
    [
        ((0.05, -0.05), Snap((0.0, 0.0), "corner")),
        ((1.0, 0.05), Snap((1.0, 0.0), "edge")),
        ((0.05, 1.0), Snap((0.0, 1.0), "edge")),  # the side that closes the outline
        ((1.95, 0.06), Snap((2.0, 0.0), "corner")),  # a corner goes before the edges that meet there
        ((5.02, 0.01), Snap((5.0, 0.0), "centre")),
        ((5.55, 0.0), Snap((5.5, 0.0), "edge")),
        ((1.0, 1.0), Snap((1.0, 1.0))),
    ],
)
def test_corners_and_centres_go_before_edges(at, found):
    assert snapped((SQUARE, BARREL), at, 0.1) == found


def test_an_open_line_has_no_side_from_its_end_to_its_start():
    line = Polyline("A", ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0)))
    assert snapped((line,), (1.0, 1.0), 0.2) == Snap((1.0, 1.0))
    assert snapped((line,), (2.05, 1.0), 0.2) == Snap((2.0, 1.0), "edge")


def test_bounds_of_a_region_hold_and_words_do_not():
    region = Region("A", (Polyline("A", ((0.0, 0.0), (1.0, 0.0))), BARREL))
    assert snapped((region,), (1.01, 0.0), 0.1) == Snap((1.0, 0.0), "corner")
    assert snapped((region,), (5.0, 0.0), 0.1) == Snap((5.0, 0.0), "centre")
    assert snapped((Text("A", (0.0, 0.0), "word", 8.0),), (0.0, 0.0), 0.1) == Snap((0.0, 0.0))
    assert snapped((), (3.0, 4.0), 0.1) == Snap((3.0, 4.0))


def test_a_distance_is_told_with_its_two_parts_where_it_is_askew():
    assert distance_words((0, 0), (3, 4), Display()) == "5 in (3 in along the wall, 4 in off it)"
    assert distance_words((1, 1), (1, 2.5), Display()) == "1-1/2 in"
    assert distance_words((0, 0), (1, 0), Display(metric=True)) == "25.4 mm"
