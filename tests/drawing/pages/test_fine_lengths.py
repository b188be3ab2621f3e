import pytest

from configurator.drawing.pages.fine_lengths import fine
from configurator.units import Display


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (0.134, "0.134 in"),
        (0.25, "1/4 in"),
        (7 / 64, "7/64 in"),
        (1.5, "1-1/2 in"),
        (0.0916, "0.092 in"),
        (0.203, "0.203 in"),
    ],
)
def test_a_small_length_is_a_fraction_only_where_it_is_one(inches, text):
    assert fine(inches, Display()) == text


def test_millimetres_are_as_the_display_has_them():
    assert fine(0.134, Display(metric=True)) == "3.4 mm"
