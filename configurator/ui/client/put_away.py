"""Everything technical put away while the client's view is on show, and the whole screen if wanted."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QFont, QFontMetricsF, QScreen
from PySide6.QtWidgets import (
    QMainWindow,
    QProxyStyle,
    QStyle,
    QStyleHintReturn,
    QStyleOption,
    QToolBar,
    QWidget,
)


class PutAway:
    """Folds the window's commands away from around a page; their keys go on working through the page."""

    def __init__(self, page: QWidget) -> None:
        self.page = page
        self._bars: list[QToolBar] = []
        self._actions: list[QAction] = []
        self._was_maximized = False

    @property
    def whole_screen(self) -> bool:
        """Whether the page has the whole screen."""
        return self.page.window().isFullScreen()

    def put_away(self) -> None:
        """Fold away the rows of commands."""
        window = self.page.window()
        if self._bars or not isinstance(window, QMainWindow):
            return
        self._bars = [bar for bar in window.findChildren(QToolBar) if not bar.isHidden()]
        self._actions = [one for bar in self._bars for one in bar.actions() if not one.shortcut().isEmpty()]
        for bar in self._bars:
            bar.hide()
        self.page.addActions(self._actions)

    def bring_back(self) -> None:
        """Bring everything back as it was."""
        self.use_whole_screen(False)
        for action in self._actions:
            self.page.removeAction(action)
        for bar in self._bars:
            bar.show()
        self._bars, self._actions = [], []

    def use_whole_screen(self, wanted: bool) -> None:
        """Take the whole screen, or give it back."""
        window = self.page.window()
        if wanted == window.isFullScreen():
            return
        if wanted:
            self._was_maximized = window.isMaximized()
            window.showFullScreen()
        elif self._was_maximized:
            window.showMaximized()
        else:
            window.showNormal()


FULL_SCREEN_CAPITALS = 7.0
"""Height of capitals and figures at full screen, mm: to be read from across a counter."""
CAPITALS = 2.8
"""The same in a window, mm."""
ASKED_CAPITALS = 3.6
"""The same of the questions beside the picture at full screen, mm: whoever sells reads them."""
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


_HANDLE = (
    QStyle.PixelMetric.PM_SliderLength,
    QStyle.PixelMetric.PM_SliderThickness,
    QStyle.PixelMetric.PM_SliderControlThickness,
)


class FingerStyle(QProxyStyle):
    """Draws as the platform does; `size` is how wide and high a slider's handle is, pixels."""

    def __init__(self) -> None:
        super().__init__()
        self.size = 0

    def pixelMetric(
        self,
        metric: QStyle.PixelMetric,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
    ) -> int:
        """Give the handle its size."""
        usual = int(super().pixelMetric(metric, option, widget))
        return max(usual, self.size) if metric in _HANDLE else usual

    def styleHint(
        self,
        hint: QStyle.StyleHint,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
        returned: QStyleHintReturn | None = None,
    ) -> int:
        """Let the handle come to where the slider is pressed."""
        if hint == QStyle.StyleHint.SH_Slider_AbsoluteSetButtons:
            return int(Qt.MouseButton.LeftButton.value)
        return int(super().styleHint(hint, option, widget, returned))
