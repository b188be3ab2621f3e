import pytest
from fontTools.ttLib import TTFont

from configurator.drawing.base.lettering import (
    AIR,
    ASCENT,
    DESCENT,
    UNKNOWN,
    Room,
    letter_advances,
    text_box,
    text_width,
)
from configurator.drawing.base.view import Box
from configurator.export.painting import BOLD, FONT, font_file


def test_a_width_is_the_sum_of_its_letters():
    advances = letter_advances(False)
    assert text_width("4-1/2 in", 10) == pytest.approx(10 * sum(advances[letter] for letter in "4-1/2 in"))


def test_bold_is_wider_and_size_scales():
    assert text_width("hinge", 8, bold=True) > text_width("hinge", 8)
    assert text_width("hinge", 16) == pytest.approx(2 * text_width("hinge", 8))


def test_an_unknown_letter_still_takes_room():
    assert text_width("\u4e00", 10) == pytest.approx(10 * UNKNOWN)
    assert text_width("", 10) == 0


@pytest.mark.parametrize(("bold", "face"), [(False, FONT), (True, BOLD)])
def test_every_advance_is_that_of_the_font(bold, face):
    """Czech, Polish, Greek and Russian names take the room they take, to a thousandth of the type size."""
    with TTFont(font_file(face)) as font:
        glyphs, widths, units = font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm
        advances = letter_advances(bold)
        assert {"ř", "Ł", "Ω", "Щ", "№"} <= set(advances)
        for letter, advance in advances.items():
            assert advance == pytest.approx(widths[glyphs[ord(letter)]][0] / units, abs=0.00051), letter
        assert pytest.approx(widths[".notdef"][0] / units, abs=0.001) == UNKNOWN


def test_a_text_covers_its_width_about_its_anchor():
    width = text_width("abc", 10)
    assert text_box((0, 0), "abc", 10) == Box(0, -DESCENT * 10, width, ASCENT * 10)
    assert text_box((0, 0), "abc", 10, "end").right == 0
    assert text_box((0, 0), "abc", 10, "middle").left == -width / 2


def test_the_first_free_place_is_taken_once():
    room = Room(Box(0, 0, 100, 100))
    one = Box(10, 10, 30, 20)
    assert room.first_free([one]) == one
    assert room.first_free([one]) is None
    beside = Box(30 + AIR, 10, 50, 20)
    assert room.first_free([one, Box(29, 10, 49, 20), beside]) == beside


def test_nothing_is_free_outside_the_window():
    assert not Room(Box(0, 0, 100, 100)).is_free(Box(-1, 0, 5, 5))
    assert Room(Box(0, 0, 100, 100)).is_free(Box(0, 0, 100, 100))


def test_a_copy_fills_up_on_its_own():
    room = Room(Box(0, 0, 100, 100))
    room.copy().take(Box(0, 0, 100, 100))
    assert room.is_free(Box(0, 0, 10, 10))
