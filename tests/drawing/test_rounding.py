"""Lengths rounded to the safe side, at, below and above a step."""

import pytest

from configurator.drawing.rounding import at_least, at_most, width_from, width_to
from configurator.units import Display

INCHES, METRIC = Display(32), Display(metric=True)


@pytest.mark.parametrize(
    ("inches", "least", "most"),
    [
        (4.375, "4-3/8 in", "4-3/8 in"),
        (4.375 + 1e-9, "4-3/8 in", "4-3/8 in"),
        (4.375 - 1e-9, "4-3/8 in", "4-3/8 in"),
        (4.376, "4-13/32 in", "4-3/8 in"),
        (4.374, "4-3/8 in", "4-11/32 in"),
        (0.0, "0 in", "0 in"),
    ],
)
def test_a_least_goes_up_and_a_most_goes_down(inches, least, most):
    assert (at_least(inches, INCHES), at_most(inches, INCHES)) == (least, most)


def test_millimetres_too():
    assert (at_least(4.376, METRIC), at_most(4.376, METRIC)) == ("111.2 mm", "111.1 mm")


@pytest.mark.parametrize(
    ("inches", "start", "end"),
    [
        (4.375, "4-3/8", "4-3/8"),
        (4.374999999, "4-3/8", "4-3/8"),
        (3.83, "3.83", "3.83"),
        (6.15833, "6.159", "6.158"),
        (4.0001, "4.001", "4"),
    ],
)
def test_a_width_is_a_fraction_or_three_places(inches, start, end):
    assert (width_from(inches), width_to(inches)) == (start, end)
