import pytest

from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.primitives import Polyline, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.tables import SIZES, SmallTable, measured_table, standing_table
from configurator.units import Display
from tests.drawing.cases import case_a, demo

TABLE = SmallTable(
    (("", 1), ("Frame", 2)),
    ("Hinge", "to top", "to centre"),
    (("1", "5 in", "7-1/4 in"), ("2", "37-1/4 in", "39-1/2 in")),
)
BOX = Box(36.0, 90.0, 560.0, 220.0)


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


def rows_of(study, display=None):
    table = measured_table(study, display or Display())
    return table.headings, {row[0]: row[1:] for row in table.rows}


def test_the_plain_case_by_hand():
    headings, rows = rows_of(case_a())
    assert headings == ("", "4 in wide hinge", "4-1/2 in wide hinge")
    assert rows["pin axis off door face"] == ("1/2 in", "3/4 in")
    assert rows["pin axis off frame face"] == ("3/8 in", "5/8 in")
    assert rows["greatest angle"] == ("180°", "180°")


def test_what_stops_a_leaf_is_said_for_two_widths_and_left_to_the_headings_of_more():
    assert rows_of(demo("112A"))[1]["greatest angle"][0] == "171.7°, leaf on the chair rail"
    assert rows_of(demo("171A"))[1]["greatest angle"][0] == "96.6°"


def test_every_leaf_has_its_columns_and_a_dot_where_it_has_no_such_fact():
    study = case_a(leaves="pair", size={"width": 72, "height": 84}, compare=[4.5])
    headings, rows = rows_of(study)
    assert headings == ("", "active, 4-1/2 in", "inactive, 4-1/2 in")
    assert rows["latch edge least"][1] == "·"


def test_millimetres_where_they_are_shown():
    assert rows_of(case_a(), Display(metric=True))[1]["pin axis off door face"] == ("12.7 mm", "19.1 mm")


def test_it_fits_a_width_that_holds_all_its_columns_at_the_least_size():
    table = measured_table(case_a(leaves="pair", size={"width": 72, "height": 84}), Display())
    widths = [width for width in range(100, 600) if table.fits(width)]
    assert widths == list(range(widths[0], 600))
    assert 150 < widths[0] < 400


def test_the_table_keeps_to_its_rectangle_and_no_texts_meet():
    for study in (demo("112A"), demo("171A"), case_a(compare=[4, 4.5, 5, 6, 7, 8])):
        table = measured_table(study, Display())
        texts = [part for part in table.drawn(BOX) if isinstance(part, Text)]
        boxes = [text_box(one.at, one.text, one.size, bold=one.bold) for one in texts]
        assert not any(a.overlaps(b) for n, a in enumerate(boxes) for b in boxes[n + 1 :])
        assert max(one.right for one in boxes) <= BOX.right
        assert BOX.top - min(one.bottom for one in boxes) <= table.height() + 1.0


def test_what_nobody_gave_of_what_stands_there_has_an_asterisk():
    given = {"kind": "chair rail", "projection": 1.5}
    rows = standing_table(case_a(obstructions=[given, {"kind": "column"}]), Display()).rows
    assert rows[0][2:4] == ("1/2 in *", "1-1/2 in")
    assert rows[1][4] == "12 in round *"
