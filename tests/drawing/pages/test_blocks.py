"""Blocks side by side: the room they take, and where their details stand."""

import pytest

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Dimension, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import FIRST, Block, Side, String, room_of, set_side_by_side
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.page import Scale
from configurator.units import Display

INCHES = Display()
HALF = Scale("half inch to the inch", 0.5)
UP = Side((String((Span((0.0, 0.0), (0.0, 10.0), "height"),)),))
PLAIN = Block("Door", Box(0.0, 0.0, 4.0, 10.0), (), low=UP)
ROOM = Box(50.0, 50.0, 650.0, 550.0)


def test_the_room_is_inches_and_points_apart():
    one, two = room_of([PLAIN], INCHES), room_of([PLAIN, PLAIN], INCHES)
    assert (one.wide, one.high) == (4.0, 10.0)
    assert two.wide == 8.0
    assert two.across > 2 * one.across  # with air between them
    assert one.width_at(HALF) == one.across + 4 * 36
    assert one.points_in(one.width_at(HALF), 1e6) == pytest.approx(36.0)
    assert one.points_in(1e6, one.height_at(HALF)) == pytest.approx(36.0)
    assert one.points_in(10.0, 10.0) == 0.0


def test_details_stand_level_inside_the_box_at_the_scale():
    low = Block("Edge", Box(0.0, -1.0, 2.0, 6.0), ())
    details = set_side_by_side([PLAIN, low], ROOM, HALF, INCHES)
    assert [detail.name for detail in details] == ["Door", "Edge"]
    assert {detail.view.scale for detail in details} == {36.0}
    assert len({detail.view.origin[1] for detail in details}) == 1
    first, second = details
    assert ROOM.left < first.view.origin[0] < first.view.origin[0] + 4 * 36 < second.view.origin[0]
    assert second.view.origin[0] + 2 * 36 < ROOM.right


def test_mirrored_the_low_side_and_its_strings_stand_to_the_right():
    for mirrored in (False, True):
        block = Block("Door", PLAIN.extent, (), low=UP, mirrored=mirrored)
        (detail,) = set_side_by_side([block], ROOM, HALF, INCHES)
        edge = detail.view.to_sheet((0.0, 0.0))[0]
        (line,) = [one for one in detail.primitives if isinstance(one, Dimension)]
        out = detail.view.to_sheet(line.line_a)[0] - edge
        assert out == pytest.approx(FIRST if mirrored else -FIRST)


def test_a_name_and_crowded_rows_have_their_room():
    named = Block("A very long name for so small a thing", Box(0.0, 0.0, 0.1, 1.0), ())
    assert named.across(INCHES) >= text_width(named.name, 8.0, bold=True)
    row = tuple(Span((x, 1.0), (x + 0.1, 1.0), "gap") for x in (0.0, 0.1, 0.2))
    crowded = Block("D", Box(0.0, 0.0, 0.3, 1.0), (), rows=(row,))
    assert crowded.across(INCHES) >= 3 * text_width("3/32 in", 7.0)


def test_without_words_only_numbers_stand_at_the_strings():
    said = Side((String((Span((0, 0), (0, 38.0), "lever above floor", "", "lever"),)),))
    block = Block("Door", Box(0.0, 0.0, 4.0, 40.0), (), high=said)
    (detail,) = set_side_by_side([block.without_words()], Box(0, 0, 900, 2000), HALF, INCHES)
    assert [one.text for one in detail.primitives if isinstance(one, Dimension)] == ["38 in"]
    assert block.without_words().across(INCHES) < block.across(INCHES)


def test_labels_keep_off_the_lines_of_the_strings_beyond_them():
    side = Side((String((Span((0.0, 0.0), (0.0, 5.0), "to centre"),), running=True),), ((5.0, "1"),))
    block = Block("Door", Box(0.0, 0.0, 4.0, 10.0), (), low=side)
    (detail,) = set_side_by_side([block], ROOM, HALF, INCHES)
    label = next(one for one in detail.primitives if isinstance(one, Text) and one.text == "1")
    line = detail.view.to_sheet((0.0, 5.0))[1]
    base = detail.view.to_sheet(label.at)[1]
    assert base + 0.76 * label.size < line or base - 0.24 * label.size > line


def test_a_text_that_makes_way_for_the_row_farther_out_stays_in_the_window():
    """An edge of 2 in whose lower row has no room beside the extension lines of the row over it."""
    for whole in (1.4, 1.75, 2.0):
        lower = (Span((0.0, 1.0), (1.4, 1.0), "mortise"), Span((1.4, 1.0), (whole, 1.0), "backset"))
        row = tuple(span for span in lower if span.b[0] > span.a[0])
        over = (Span((0.0, 1.0), (whole, 1.0), "thickness"),)
        block = Block("D", Box(0.0, 0.0, whole, 1.0), (), rows=(row, over))
        (detail,) = set_side_by_side([block], Box(0.0, 0.0, 150.0, 300.0), Scale("small", 0.25), INCHES)
        for one in detail.primitives:
            if isinstance(one, Dimension):
                middle, half = detail.view.to_sheet(one.text_at)[0], text_width(one.text, one.size) / 2
                assert detail.view.window.left <= middle - half
                assert middle + half <= detail.view.window.right
