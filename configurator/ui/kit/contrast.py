"""How far text stands out from its ground, and a platform's palette mended where that is too little.

WCAG 2.2, success criterion 1.4.3 Contrast (Minimum), level AA: 4.5 to 1, by its definitions of contrast
ratio and relative luminance; from memory.
"""

from PySide6.QtGui import QColor, QPalette

LEAST = 4.5
_PLACEHOLDER = 0.66
"""How opaque what stands in an empty field is; Qt's own half is 4 to 1 on white."""
_DARKER = 106


def luminance(colour: str) -> float:
    """Return the relative luminance of `#rrggbb`, 0 black to 1 white."""
    red, green, blue = (_linear(int(colour[n : n + 2], 16) / 255) for n in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(share: float) -> float:
    return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def readable(palette: QPalette) -> QPalette:
    """Return a palette in which what is chosen and what stands in empty fields can be read."""
    mended = QPalette(palette)
    for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
        typed = QColor(mended.color(group, QPalette.ColorRole.Text))
        typed.setAlphaF(_PLACEHOLDER)
        mended.setColor(group, QPalette.ColorRole.PlaceholderText, typed)
        text = mended.color(group, QPalette.ColorRole.HighlightedText)
        ground = mended.color(group, QPalette.ColorRole.Highlight)
        if luminance(text.name()) > luminance(ground.name()):
            mended.setColor(group, QPalette.ColorRole.Highlight, _darkened(ground, text))
    return mended


def _darkened(ground: QColor, text: QColor) -> QColor:
    """Return the ground, as much darker as light text on it needs; black would be enough for any."""
    while contrast(ground.name(), text.name()) < LEAST and ground.lightness() > 0:
        ground = ground.darker(_DARKER)
    return ground
