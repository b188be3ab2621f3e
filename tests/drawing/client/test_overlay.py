import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from configurator.drawing.base.primitives import rectangle, turned
from configurator.drawing.client.overlay import outline_difference, round_difference
from tests.sweeps import examples

SQUARE = rectangle(0.0, 2.0, 0.0, 2.0)


def area(pieces) -> float:
    return sum(shapely.Polygon(piece).area for piece in pieces)


def test_a_strip_is_left_where_one_square_has_moved_on():
    pieces = outline_difference(SQUARE, rectangle(0.5, 2.5, 0.0, 2.0))
    assert area(pieces) == pytest.approx(1.0)
    assert max(x for piece in pieces for x, _ in piece) == pytest.approx(0.5)


def test_a_square_moved_both_ways_leaves_an_angle_of_two_pieces():
    pieces = outline_difference(SQUARE, rectangle(1.0, 3.0, 1.0, 3.0))
    assert area(pieces) == pytest.approx(3.0)
    assert area(pieces) == pytest.approx(shapely.union_all([shapely.Polygon(p) for p in pieces]).area)


def test_nothing_is_left_of_what_the_other_covers():
    assert outline_difference(SQUARE, SQUARE) == ()
    assert outline_difference(SQUARE, rectangle(-1.0, 3.0, -1.0, 3.0)) == ()


def test_all_is_left_where_they_do_not_meet():
    assert area(outline_difference(SQUARE, rectangle(5.0, 6.0, 0.0, 1.0))) == pytest.approx(4.0)


@examples(30)
@given(
    st.floats(-3, 3), st.floats(-3, 3), st.floats(0, math.pi), st.floats(0.2, 36), st.floats(0.2, 3)
)  # fmt: skip
def test_pieces_make_up_the_difference_and_do_not_overlap(x, y, turn, wide, thick):
    one, other = rectangle(0.0, 36.0, 0.0, 1.75), turned(rectangle(0.0, wide, 0.0, thick), (x, y), turn)
    pieces = outline_difference(one, other)
    wanted = shapely.Polygon(one).difference(shapely.Polygon(other))
    assert area(pieces) == pytest.approx(wanted.area, abs=1e-6)
    joined = shapely.union_all([shapely.Polygon(piece) for piece in pieces])
    assert joined.area == pytest.approx(area(pieces), abs=1e-6)


def test_a_circle_moved_on_leaves_a_crescent():
    """Two of radius 1 whose centres are 1 apart share 2 pi / 3 - sqrt(3) / 2."""
    crescent = round_difference((0.0, 0.0), 1.0, (1.0, 0.0), 1.0)
    shared = 2 * math.pi / 3 - math.sqrt(3) / 2
    assert shapely.Polygon(crescent).area == pytest.approx(math.pi - shared, rel=2e-3)
    assert min(x for x, _ in crescent) == pytest.approx(-1.0)
    assert max(x for x, _ in crescent) == pytest.approx(0.5)


@pytest.mark.parametrize(("apart", "whole"), [(1.99, False), (2.0, True), (2.5, True)])
def test_a_circle_that_stands_apart_is_left_whole(apart, whole):
    left = shapely.Polygon(round_difference((0.0, 0.0), 1.0, (0.0, apart), 1.0))
    assert (max(y for _, y in left.exterior.coords) == pytest.approx(1.0)) == whole


def test_nothing_is_left_of_a_circle_within_the_other():
    assert round_difference((0.0, 0.0), 0.4, (0.05, 0.0), 0.5) == ()
    assert round_difference((0.0, 0.0), 0.5, (0.0, 0.0), 0.5) == ()
