"""The window's measures and colours: a 4 px grid, three sizes of type, and the platform's own widgets."""

from PySide6.QtGui import QColor, QFont, QGuiApplication, QIcon, QPalette, QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from configurator.resource_files import resource_path

GRID = 4
LABEL_WIDTH = 27 * GRID
FORM_WIDTH = 79 * GRID
LIST_WIDTH = 29 * GRID

_LIGHT = {"error": "#a3231b", "warning": "#7a5200", "note": "#3d5a73", "quiet": "#6a6a66", "line": "#d3d0c8"}
_DARK = {"error": "#ff9d91", "warning": "#f0c36a", "note": "#a9c6de", "quiet": "#a3a8ad", "line": "#454c54"}
_DARK_ROLES = {
    "Window": "#262b30",
    "WindowText": "#e4e6e8",
    "Base": "#1d2125",
    "AlternateBase": "#23282c",
    "Text": "#e4e6e8",
    "Button": "#30363c",
    "ButtonText": "#e4e6e8",
    "BrightText": "#ffffff",
    "ToolTipBase": "#30363c",
    "ToolTipText": "#e4e6e8",
    "PlaceholderText": "#a3a8ad",
    "Highlight": "#3f6f9b",
    "HighlightedText": "#ffffff",
    "Link": "#8fb8dc",
}


def colour(name: str, dark: bool) -> str:
    """Return a colour of the window by its use: error, warning, note, quiet or line."""
    return (_DARK if dark else _LIGHT)[name]


def sized(widget: QWidget, step: int, bold: bool = False) -> None:
    """Set the widget's type one step smaller (-1), usual (0) or larger (1)."""
    font = QFont(QApplication.font())
    font.setPointSizeF(font.pointSizeF() + (0, 3, -1)[step])
    font.setBold(bold)
    widget.setFont(font)


def tinted(widget: QWidget, colour_name: str, dark: bool) -> None:
    """Set the colour of a widget's text by its use."""
    palette = QPalette(QGuiApplication.palette())
    palette.setColor(QPalette.ColorRole.WindowText, QColor(colour(colour_name, dark)))
    palette.setColor(QPalette.ColorRole.ButtonText, QColor(colour(colour_name, dark)))
    widget.setPalette(palette)


ICON = 5 * GRID
"""Pixels an icon is wide and high."""
_RATIOS = (1, 2, 3)
"""Pixels of a screen to one of the window's, for which an icon is drawn."""


def icon(name: str, ink: str) -> QIcon:
    """Return one of our line icons (`resources/icons`) drawn in a colour, for every kind of screen."""
    drawing = resource_path("icons", f"{name}.svg").read_text(encoding="utf-8").replace("currentColor", ink)
    drawn = QIcon()
    for ratio in _RATIOS:
        picture = QPixmap()
        size = f'width="{ICON * ratio}" height="{ICON * ratio}"'
        picture.loadFromData(drawing.replace('width="20" height="20"', size, 1).encode(), "SVG")
        picture.setDevicePixelRatio(ratio)
        drawn.addPixmap(picture)
    return drawn


def ink() -> str:
    """Return the colour of text; widgets take a new one only once they are drawn."""
    return QGuiApplication.palette().color(QPalette.ColorRole.WindowText).name()


def no_icon() -> QPixmap:
    """Return the room of an icon, with nothing in it."""
    nothing = QPixmap(ICON, ICON)
    nothing.fill(QColor(0, 0, 0, 0))
    return nothing


def tabular(font: QFont) -> QFont:
    """Return the font with figures of one width, so that columns of numbers line up."""
    figures = QFont(font)
    figures.setFeature(QFont.Tag("tnum"), 1)
    return figures


def use_theme(application: QApplication, dark: bool) -> None:
    """Put every widget in light ink on slate, or back in the platform's own palette."""
    # Qt's own name space takes 40 ms to load: not before the window is painted, unless it is asked for.
    from PySide6.QtCore import Qt

    hints = application.styleHints()
    scheme = Qt.ColorScheme.Dark if dark else Qt.ColorScheme.Light
    hints.setColorScheme(scheme)
    application.setPalette(_dark_palette() if dark else QPalette())
    mend(application)


def mend(application: QApplication) -> None:
    """Mend the palette that holds where text would not stand out enough from its ground."""
    application.setPalette(readable(application.palette()))


def _dark_palette() -> QPalette:
    palette = QPalette()
    for named, shade in _DARK_ROLES.items():
        palette.setColor(QPalette.ColorRole[named], QColor(shade))
    for role in (QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText, QPalette.ColorRole.WindowText):
        palette.setColor(QPalette.ColorGroup.Disabled, role, QColor("#7b8288"))
    return palette


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
