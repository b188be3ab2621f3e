"""Spare hinges: rounded up to whole ones, and read as a person writes them."""

from fractions import Fraction

import pytest

from configurator.order.lines import NO_SPARE, Spare, parse_spare


@pytest.mark.parametrize(("hinges", "spare"), [(0, 0), (1, 1), (19, 1), (20, 1), (21, 2), (40, 2), (41, 3)])
def test_five_per_cent_goes_up_to_whole_hinges(hinges, spare):
    assert Spare(percent=Fraction(5)).of(hinges) == spare


def test_a_number_is_added_to_every_line_that_has_hinges():
    assert Spare(each=2).of(3) == 2
    assert Spare(each=2).of(0) == 0
    assert NO_SPARE.of(100) == 0


@pytest.mark.parametrize(
    ("text", "spare", "words"),
    [
        ("5%", Spare(percent=Fraction(5)), "5% of each line, rounded up"),
        (" 2.5 % ", Spare(percent=Fraction(5, 2)), "2.5% of each line, rounded up"),
        ("12.345678%", Spare(percent=Fraction("12.345678")), "12.345678% of each line, rounded up"),
        ("2", Spare(each=2), "2 hinges a line"),
        ("1", Spare(each=1), "1 hinge a line"),
        ("100%", Spare(percent=Fraction(100)), "100% of each line, rounded up"),
        ("0", NO_SPARE, ""),
    ],
)
def test_it_is_read_as_written(text, spare, words):
    assert parse_spare(text) == spare
    assert spare.words() == words
    assert parse_spare(spare.written() or "0") == spare


@pytest.mark.parametrize("text", ["", "five", "-1", "-5%", "2.5", "100.1%", "10001", "5%%", "1e3", "nan%"])
def test_anything_else_is_refused(text):
    with pytest.raises(ValueError, match="spare allowance"):
        parse_spare(text)
