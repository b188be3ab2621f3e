import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.drawing.base.clip import clip_polygon, clip_polyline, clip_segment
from configurator.drawing.base.view import Box
from tests.sweeps import examples

BOX = Box(0, 0, 10, 10)


def test_a_polygon_inside_is_untouched_and_one_outside_is_gone():
    inside = ((1, 1), (2, 1), (2, 2))
    assert clip_polygon(inside, BOX) == inside
    assert clip_polygon(((11, 1), (12, 1), (12, 2)), BOX) == ()
    assert clip_polygon((), BOX) == ()


def test_a_square_over_a_corner_keeps_its_quarter():
    kept = clip_polygon(((-2, -2), (2, -2), (2, 2), (-2, 2)), BOX)
    assert sorted(kept) == [(0, 0), (0, 2), (2, 0), (2, 2)]


def test_a_segment_is_cut_at_both_ends():
    assert clip_segment((-5, 5), (15, 5), BOX) == ((0, 5), (10, 5))
    assert clip_segment((-5, 11), (15, 11), BOX) is None
    assert clip_segment((-1, 10), (1, 12), BOX) is None
    assert clip_segment((0, 10), (5, 10), BOX) == ((0, 10), (5, 10))


def test_a_chain_that_leaves_and_comes_back_is_two_pieces():
    pieces = clip_polyline(((5, 5), (5, 15), (6, 15), (6, 5)), BOX)
    assert pieces == [((5, 5), (5, 10)), ((6, 10), (6, 5))]


def test_a_chain_that_stays_is_one_piece():
    chain = ((1, 1), (5, 5), (9, 1))
    assert clip_polyline(chain, BOX) == [chain]


coordinate = st.floats(-30, 30).map(lambda value: round(value, 3))
point = st.tuples(coordinate, coordinate)


@examples(75)
@given(st.lists(point, min_size=3, max_size=6))
def test_nothing_kept_lies_outside(points):
    slack = BOX.shrunk(-1e-9)
    assert all(slack.has(corner) for corner in clip_polygon(points, BOX))
    assert all(slack.has(corner) for piece in clip_polyline(points, BOX) for corner in piece)


@examples(50)
@given(point, point)
def test_a_cut_segment_lies_on_the_whole_one(a, b):
    kept = clip_segment(a, b, BOX)
    for x, y in kept or ():
        assert (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) == pytest.approx(0, abs=1e-6)
