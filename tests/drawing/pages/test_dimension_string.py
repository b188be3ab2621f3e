"""Strings of dimensions: texts placed off one another and off the lines that run past, by hand first."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Dimension, Polyline, Text
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.dimension_string import (
    AIR,
    LEAD,
    OFF_LINE,
    SIZE,
    Span,
    level_string,
    refuse_crowded,
    settle,
    upright_string,
    width_of,
)
from configurator.drawing.pages.page import Detail, Scale, paper_named, scale_named
from configurator.drawing.sheets import sheet_maker
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import demo
from tests.sweeps import examples

VIEW = View(4.0, (100.0, 50.0), False, Box(0.0, 0.0, 500.0, 500.0))
MIRRORED = View(4.0, (100.0, 50.0), True, Box(0.0, 0.0, 500.0, 500.0))
INCHES = Display()
SMALL = Scale("small", 0.5)
WINDOW = Box(0.0, 0.0, 200.0, 100.0)


@pytest.mark.parametrize(
    ("wanted", "halves", "lines", "expected"),
    [
        ([10.0, 40.0], [4.0, 4.0], [], [10.0, 40.0]),
        ([10.0, 12.0], [4.0, 4.0], [], [6.25, 15.75]),  # 4 + 1.5 of air + 4 apart, about 11
        ([10.0, 12.0], [4.0, 4.0], [-20.0], [6.25, 15.75]),
        ([10.0, 12.0], [4.0, 4.0], [1.0], [10.0, 19.5]),  # a line is in the way of that
        ([10.0, 19.5], [4.0, 4.0], [], [10.0, 19.5]),  # just touching the air
        ([10.0], [4.0], [15.5], [10.0]),  # 5.5 off the line: half of it and the air
        ([10.0], [4.0], [15.0], [9.5]),
        ([10.0], [4.0], [5.0], [10.5]),
        ([10.0], [4.0], [10.0], [4.5]),
        ([10.0], [4.0], [9.0, 20.0], [14.5]),  # between two lines 11 apart: just room
        ([10.0], [4.0], [9.0, 19.9], [3.5]),
        ([], [], [3.0], []),
    ],
)
def test_texts_settle_as_near_as_can_be(wanted, halves, lines, expected):
    assert settle(wanted, halves, lines) == pytest.approx(tuple(expected))


def test_no_text_stands_too_low():
    assert settle([10.0, 12.0], [4.0, 4.0], low=2.25) == (6.25, 15.75)
    assert settle([10.0, 12.0], [4.0, 4.0], low=2.5) == (10.0, 19.5)
    assert settle([1.0], [4.0], low=2.0) == (6.0,)


@examples(30)
@given(
    st.lists(st.tuples(st.floats(0, 300), st.floats(1, 30)), max_size=9),
    st.lists(st.floats(0, 300), max_size=6),
)
def test_no_text_lies_over_another_or_over_a_line(items, lines):
    items.sort()
    halves = [half for _, half in items]
    places = settle([want for want, _ in items], halves, lines)
    for (a, a_half), (b, b_half) in pairwise(zip(places, halves, strict=True)):
        assert b - a >= a_half + b_half + AIR - 1e-5
    for place, half in zip(places, halves, strict=True):
        assert all(abs(place - line) >= half + AIR - 1e-5 for line in lines)


def chain(*levels):
    return [Span((0.0, low), (0.0, high), f"{low} to {high}") for low, high in pairwise(levels)]


def dims(placed):
    return [one for one in placed.primitives if isinstance(one, Dimension)]


def test_a_chain_has_its_texts_in_the_middle_of_its_spans():
    placed = upright_string(chain(0, 10, 30), 80.0, -1.0, VIEW, INCHES)
    low, high = dims(placed)
    assert (low.value, low.text) == (10.0, "10 in")
    assert (high.value, high.text) == (20.0, "20 in")
    assert VIEW.to_sheet(low.line_a) == (80.0, 50.0)
    assert VIEW.to_sheet(high.line_b) == (80.0, 170.0)
    assert [(box.bottom + box.top) / 2 for box in placed.boxes] == [70.0, 130.0]
    assert [box.right for box in placed.boxes] == pytest.approx([80.0 - OFF_LINE] * 2)
    assert len(placed.primitives) == 2  # no leader is needed


def test_a_span_without_room_has_its_text_on_a_leader():
    """An eighth at 4 points an inch: half a point."""
    placed = upright_string(chain(0, 20, 20.125, 40), 200.0, 1.0, VIEW, INCHES)
    (leader,) = [one for one in placed.primitives if isinstance(one, Polyline)]
    start, end = map(VIEW.to_sheet, leader.points)
    assert start == (200.0, 50.0 + 4 * 20.0625)
    assert end[0] == 200.0 + LEAD - AIR
    assert all(box.left == pytest.approx(200.0 + LEAD) for box in placed.boxes)


def test_running_dimensions_count_from_one_origin():
    spans = [Span((0.0, 0.0), (0.0, up), f"to {up}") for up in (12.25, 44.5, 76.75)]
    placed = upright_string(spans, 80.0, -1.0, VIEW, INCHES, running=True, leaders=False)
    assert [one.value for one in dims(placed)] == [12.25, 44.5, 76.75]
    assert {one.a for one in dims(placed)} == {(0.0, 0.0)}
    assert {one.line_a for one in dims(placed)} == {VIEW.to_plan((80.0, 50.0))}
    assert [(box.bottom + box.top) / 2 for box in placed.boxes] == [
        50 + 4 * up for up in (12.25, 44.5, 76.75)
    ]


def test_texts_keep_off_lines_that_run_past():
    placed = upright_string(chain(0, 10), 80.0, -1.0, VIEW, INCHES, lines=[70.0])
    (box,) = placed.boxes
    assert box.top <= 70.0 - AIR + 1e-9 or box.bottom >= 70.0 + AIR - 1e-9


def test_a_level_string_puts_a_narrow_text_one_row_out_on_a_leader():
    spans = [Span((0.0, 9.0), (0.125, 9.0), "gap"), Span((0.125, 9.0), (35.875, 9.0), "net")]
    placed = level_string(spans, 300.0, VIEW, INCHES, lines=[100.0])
    narrow, wide = placed.boxes
    assert wide.bottom > 300.0
    assert narrow.bottom > wide.top
    assert narrow.left >= 100.0 + AIR - 1e-9 or narrow.right <= 100.0 - AIR + 1e-9
    assert [one.value for one in dims(placed)] == [0.125, 35.75]
    assert len([one for one in placed.primitives if isinstance(one, Polyline)]) == 1


def test_mirrored_what_is_measured_stays_and_the_texts_follow():
    placed = level_string([Span((0.0, 9.0), (20.0, 9.0), "net")], 300.0, MIRRORED, INCHES)
    (one,) = dims(placed)
    assert one.value == 20.0
    assert (placed.boxes[0].left + placed.boxes[0].right) / 2 == pytest.approx(100.0 - 40.0)


def test_marks_words_and_texts_of_a_span():
    assumed = Span((0, 0), (0, 0.75), "undercut", " *")
    assert assumed.lettered(0.75, INCHES) == "3/4 in *"
    assert Span((0, 0), (0, 38), "lever above floor", "", "lever").lettered(38, INCHES) == "38 in lever"
    assert Span((0, 0), (0, 0.134), "mortise depth", text="0.134 in").lettered(0.134, INCHES) == "0.134 in"
    assert assumed.lettered(0.75, Display(metric=True)) == "19.1 mm *"


def test_the_room_a_string_takes():
    spans = chain(0, 10, 110)
    assert width_of(spans, INCHES) == LEAD + text_width("100 in", SIZE)
    assert width_of(spans, INCHES, leaders=False) == OFF_LINE + text_width("100 in", SIZE)
    assert not math.isnan(width_of([], INCHES))


def detail(*at):
    texts = tuple(Text("A-ANNO-TEXT", point, "5 in", 7.0) for point in at)
    return Detail("Door", SMALL, View(1.0, (0.0, 0.0), False, WINDOW), texts)


def test_texts_apart_are_taken_at_any_scale():
    refuse_crowded([detail((10.0, 50.0), (10.0, 58.0)), detail((10.0, 50.0))], SMALL)


@pytest.mark.parametrize("second", [(12.0, 50.0), (10.0, 53.0)])
def test_a_scale_that_sets_one_over_another_is_refused_by_name(second):
    with pytest.raises(ValueError, match="small is too small for the dimensions"):
        refuse_crowded([detail((10.0, 50.0), second)], SMALL)
    refuse_crowded([detail((10.0, 50.0), second)], None)  # nobody asked for it: the best there is


def test_a_text_cut_off_by_the_window_is_refused_too():
    with pytest.raises(ValueError, match="too small"):
        refuse_crowded([detail((195.0, 50.0))], SMALL)


@pytest.mark.parametrize(("kind", "fits", "crowded"), [("prep", "1-1/2", "3/4"), ("elevation", "1/4", "1/8")])
def test_sheets_say_which_scale_their_dimensions_have_no_room_at(kind, fits, crowded):
    def made(scale):
        return sheet_maker(kind)(
            demo("101A"), JobFacts(), paper_named("Tabloid"), scale_named(scale), Display()
        )

    assert made(fits).details
    with pytest.raises(ValueError, match="too small"):
        made(crowded)
