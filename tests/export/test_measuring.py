import pytest

from configurator.units import Display
from tests.export.measuring import half_of_printed, length_said


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("1-3/16 in pin off door", 1.1875),
        ("3/4 in pin/frame", 0.75),
        ("2 in pin axis off door face", 2.0),
        ("undercut 3/4 in", 0.75),
        ("25.4 mm pin", 1.0),
        ("7'-0\"", 84.0),
        ("6'-11 1/4\" to the head", 83.25),
        ("leaf 0.134 in thick", 0.134),
        ("4 ft", 48.0),
        ("1 m", 1000 / 25.4),
    ],
)
def test_a_length_is_read_out_of_words(text, inches):
    assert length_said(text) == pytest.approx(inches)


@pytest.mark.parametrize("text", ["open 90°", "into the wall", "4-1/2 hinge"])
def test_words_without_a_length_have_none(text):
    assert length_said(text) is None


def test_half_of_what_is_printed():
    assert half_of_printed(Display()) == 1 / 64
    assert half_of_printed(Display(metric=True)) == pytest.approx(0.05 / 25.4)
