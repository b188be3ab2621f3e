import pytest

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Polyline, Text
from configurator.drawing.pages.tables import SIZES, SmallTable

TABLE = SmallTable(
    (("", 1), ("Frame", 2)),
    ("Hinge", "to top", "to centre"),
    (("1", "5 in", "7-1/4 in"), ("2", "37-1/4 in", "39-1/2 in")),
)


def lettered(width):
    return {one.text: one for one in TABLE.drawn((100.0, 300.0), width) if isinstance(one, Text)}


def test_columns_stand_under_their_headings_from_the_corner_down():
    texts = lettered(400.0)
    assert texts["Hinge"].at[0] == texts["1"].at[0] == texts["2"].at[0] == 100.0
    assert texts["Frame"].at[0] == texts["to top"].at[0] == texts["5 in"].at[0] > 100.0
    assert texts["Frame"].at[1] > texts["to top"].at[1] > texts["5 in"].at[1] > texts["37-1/4 in"].at[1]
    assert texts["37-1/4 in"].at[1] >= 300.0 - TABLE.height()


def test_it_is_lettered_as_large_as_its_width_allows():
    widest = ("Hinge", "37-1/4 in", max("to centre", "39-1/2 in", key=lambda one: text_width(one, 7.0)))
    whole = sum(text_width(words, SIZES[0]) for words in widest) + 20.0
    assert lettered(whole + 0.01)["Hinge"].size == SIZES[0]
    assert lettered(whole - 0.01)["Hinge"].size == SIZES[1]
    assert lettered(10.0)["Hinge"].size == SIZES[-1]


def test_a_wide_heading_widens_what_it_stands_over():
    wide = SmallTable((("Counted below the frame's head rabbet", 2),), ("a", "b"), (("1", "2"),))
    line = next(one for one in wide.drawn((0.0, 0.0), 500.0) if isinstance(one, Polyline))
    assert line.points[1][0] == pytest.approx(text_width("Counted below the frame's head rabbet", SIZES[0]))


def test_where_even_the_least_size_is_too_wide_its_columns_draw_together():
    least = SIZES[-1]
    widest = ("Hinge", "37-1/4 in", max("to centre", "39-1/2 in", key=lambda one: text_width(one, least)))
    bare = sum(text_width(words, least) for words in widest)
    line = next(one for one in TABLE.drawn((0.0, 0.0), bare + 10.0) if isinstance(one, Polyline))
    assert line.points[1][0] == pytest.approx(bare + 10.0)
