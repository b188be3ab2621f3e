"""How large type and buttons are, in millimetres of the screen that they stand on."""

from PySide6.QtGui import QFont, QFontMetricsF, QScreen

FULL_SCREEN_CAPITALS = 7.0
"""Height of capitals and figures at full screen, mm: to be read from across a counter."""
CAPITALS = 2.8
"""The same in a window, mm."""
TOUCH = 9.0
"""Least height and width of what a finger presses, mm."""
_MILLIMETRES_AN_INCH = 25.4
_USUAL = 96 / _MILLIMETRES_AN_INCH
_BELIEVED = (2.0, 12.0)
"""Pixels a millimetre a screen may have; a projector or a screen that does not know its size says others."""


def pixels_a_millimetre(screen: QScreen) -> float:
    """Return how many of the window's pixels one millimetre of a screen has.

    A screen that does not know its own size is taken for 96 pixels an inch.
    """
    wide = screen.physicalSize().width()
    found = screen.geometry().width() / wide if wide > 0 else 0.0
    return found if _BELIEVED[0] <= found <= _BELIEVED[1] else _USUAL


def type_of(font: QFont, capitals: float, screen: QScreen) -> QFont:
    """Return the font at the least size that makes its capitals so many millimetres high on a screen."""
    wanted = capitals * pixels_a_millimetre(screen)
    tried = QFont(font)
    tried.setPixelSize(max(int(wanted), 1))
    while QFontMetricsF(tried).capHeight() < wanted:  # letters are fitted to pixels, so no share will do
        tried.setPixelSize(tried.pixelSize() + 1)
    return tried
