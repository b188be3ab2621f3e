import pytest
from fontTools.ttLib import TTFont

from configurator.drawing.base.lettering import UNKNOWN, letter_advances, text_width
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
