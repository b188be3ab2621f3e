"""Small pictures from the drawing's primitives, as sharp as the screen is."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QSizePolicy, QWidget

from configurator.drawing.base.style import inks
from configurator.drawing.base.view import Group
from configurator.ui.kit.painter import paint_groups

POINTS_PER_PIXEL = 0.75
"""At 96 dots to the inch, of which each stands for as many pixels as the screen has for it."""
Drawer = Callable[[float, float], Sequence[Group]]


def pixmap_of(draw: Drawer, size: QSize, ratio: float, dark: bool) -> QPixmap:
    """Return a picture so large; `draw` is asked for its primitives at a width and height in points."""
    width, height = size.width() * POINTS_PER_PIXEL, size.height() * POINTS_PER_PIXEL
    picture = QPixmap(size * ratio)
    picture.fill(QColor(inks()["paper"].on(dark)))
    painter = QPainter(picture)
    paint_groups(draw(width, height), height, painter, ratio / POINTS_PER_PIXEL, dark)
    painter.end()
    picture.setDevicePixelRatio(ratio)
    return picture


class WordPicture(QWidget):
    """A picture that is drawn anew for the room there is."""

    def __init__(self) -> None:
        super().__init__()
        self._draw: Drawer | None = None
        self._dark = False
        self._pixmap: QPixmap | None = None
        self.setMinimumSize(280, 190)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_picture(self, draw: Drawer, dark: bool, said: str) -> None:
        """Show another picture; `said` is what a screen reader says of it."""
        self._draw, self._dark, self._pixmap = draw, dark, None
        self.setAccessibleName(said)
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        """Paint the picture, drawn first where its size or the screen is new."""
        if self._draw is None or self.width() < 1 or self.height() < 1:
            return
        ratio = self.devicePixelRatioF()
        if self._pixmap is None or self._pixmap.deviceIndependentSize().toSize() != self.size():
            self._pixmap = pixmap_of(self._draw, self.size(), ratio, self._dark)
        QPainter(self).drawPixmap(QRect(0, 0, self.width(), self.height()), self._pixmap)
