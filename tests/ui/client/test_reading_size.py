import pytest
from PySide6.QtCore import QRect, QSizeF
from PySide6.QtGui import QFont, QFontMetricsF

from configurator.ui.client.put_away import FULL_SCREEN_CAPITALS, pixels_a_millimetre, type_of


class Screen:
    """A screen so many pixels and millimetres wide."""

    def __init__(self, pixels, millimetres):
        self.pixels, self.millimetres = pixels, millimetres

    def geometry(self):
        return QRect(0, 0, self.pixels, 100)

    def physicalSize(self):
        return QSizeF(self.millimetres, 100)


def test_pixels_of_a_screen_that_knows_its_size():
    assert pixels_a_millimetre(Screen(1920, 508)) == pytest.approx(96 / 25.4)
    assert pixels_a_millimetre(Screen(2560, 340)) == pytest.approx(7.529, abs=1e-3)


@pytest.mark.parametrize(("pixels", "millimetres"), [(1920, 0), (1920, 16), (1920, 3000)])
def test_a_screen_that_says_nonsense_is_taken_for_a_usual_one(pixels, millimetres):
    assert pixels_a_millimetre(Screen(pixels, millimetres)) == pytest.approx(96 / 25.4)


@pytest.mark.parametrize("screen", [Screen(1920, 508), Screen(1366, 294), Screen(2560, 340)])
def test_capitals_at_full_screen_are_at_least_seven_millimetres_high(qapp, screen):
    font = type_of(QFont("DejaVu Sans"), FULL_SCREEN_CAPITALS, screen)
    high = QFontMetricsF(font).capHeight() / pixels_a_millimetre(screen)
    assert 7.0 <= high < 7.7
