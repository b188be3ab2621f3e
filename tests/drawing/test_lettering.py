import pytest

from configurator.drawing.lettering import UNKNOWN, letter_advances, text_width


def test_a_width_is_the_sum_of_its_letters():
    advances = letter_advances(False)
    assert text_width("4-1/2 in", 10) == pytest.approx(10 * sum(advances[letter] for letter in "4-1/2 in"))


def test_bold_is_wider_and_size_scales():
    assert text_width("hinge", 8, bold=True) > text_width("hinge", 8)
    assert text_width("hinge", 16) == pytest.approx(2 * text_width("hinge", 8))


def test_an_unknown_letter_still_takes_room():
    assert text_width("\u4e00", 10) == pytest.approx(10 * UNKNOWN)
    assert text_width("", 10) == 0
