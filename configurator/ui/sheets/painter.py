"""A page painted by Qt, on the screen and on a printer alike: from the same strokes as every file."""

import math
from collections.abc import Sequence
from functools import cache

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontDatabase, QPainter, QPainterPath, QPen, QPolygonF

from configurator.drawing.on_sheet import ArcOnSheet
from configurator.drawing.pages.page import Page
from configurator.drawing.primitives import Dimension, Point
from configurator.drawing.sheet import Group
from configurator.drawing.style import layers
from configurator.export.font_files import BOLD, FONT, font_file
from configurator.export.painting import Chain, ink, paint

_PIXELS = 100
"""Letters are taken at this size and shrunk, so that they run exactly as wide as the sheet counts on."""


def paint_page(page: Page, painter: QPainter, points: float) -> None:
    """Paint a page from the painter's upper left corner, so many of its units for a point."""
    painter.save()
    painter.scale(points, points)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
    paint(page, _OnQt(painter, page.paper.points[1]))
    painter.restore()


@cache
def letters(bold: bool) -> QFont:
    """Return the sheet's own type, without kerning, ligatures and hinting, which would change its width."""
    number = QFontDatabase.addApplicationFont(str(font_file(BOLD if bold else FONT)))
    families = QFontDatabase.applicationFontFamilies(number)
    font = QFont(families[0] if families else "DejaVu Sans")
    font.setBold(bold)
    font.setKerning(False)
    font.setFeature(QFont.Tag("liga"), 0)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setPixelSize(_PIXELS)
    return font


class _OnQt:
    """Paints one page of a height in points; Qt counts downward."""

    def __init__(self, painter: QPainter, height: float) -> None:
        self._painter = painter
        self._height = height
        self._pens: dict[tuple[str, float], QPen] = {}

    def fill(self, outline: Chain, colour: str) -> None:
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(QColor(colour))
        self._painter.drawPolygon(self._polygon(outline))

    def chains(self, chains: Sequence[Chain], layer: str) -> None:
        self._draw_with(layer)
        if all(len(chain) == 2 for chain in chains):
            self._painter.drawLines([QLineF(*map(self._at, chain)) for chain in chains])
            return
        for chain in chains:
            self._painter.drawPath(self._path(chain))

    def arc(self, arc: ArcOnSheet, layer: str, heavier: float = 1.0) -> None:
        self._draw_with(layer, heavier)
        _, _, first, last = arc
        path, box = QPainterPath(), self._box(arc)
        path.arcMoveTo(box, math.degrees(first))
        path.arcTo(box, math.degrees(first), math.degrees(last - first))
        self._painter.drawPath(path)

    def disc(self, arc: ArcOnSheet, colour: str) -> None:
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(QColor(colour))
        self._painter.drawEllipse(self._box(arc))

    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        painter = self._painter
        painter.save()
        painter.translate(self._at(at))
        painter.rotate(-math.degrees(angle))
        painter.scale(size / _PIXELS, size / _PIXELS)
        painter.setFont(letters(bold))
        painter.setPen(QColor(ink(layer)))
        painter.drawText(QPointF(0.0, 0.0), text)
        painter.restore()

    def begin(self, group: Group | Dimension) -> None:
        """A picture has no groups."""

    def end(self) -> None:
        """Nor their ends."""

    def _at(self, point: Sequence[float]) -> QPointF:
        return QPointF(point[0], self._height - point[1])

    def _polygon(self, outline: Chain) -> QPolygonF:
        return QPolygonF([self._at(point) for point in outline])

    def _path(self, chain: Chain) -> QPainterPath:
        """A chain that comes back to where it began is closed there, so that its corner is mitred too."""
        path = QPainterPath()
        path.addPolygon(self._polygon(chain))
        if len(chain) > 2 and tuple(chain[0]) == tuple(chain[-1]):
            path.closeSubpath()
        return path

    def _box(self, arc: ArcOnSheet) -> QRectF:
        centre, radius, *_ = arc
        middle = self._at(centre)
        return QRectF(middle.x() - radius, middle.y() - radius, 2 * radius, 2 * radius)

    def _draw_with(self, layer: str, heavier: float = 1.0) -> None:
        key = (layer, heavier)
        if key not in self._pens:
            self._pens[key] = _pen(layer, heavier)
        self._painter.setPen(self._pens[key])
        self._painter.setBrush(QBrush(Qt.BrushStyle.NoBrush))


def _pen(layer: str, heavier: float) -> QPen:
    style = layers()[layer]
    width = style.width * heavier
    pen = QPen(QColor(style.ink.light), width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if style.dash:
        pen.setDashPattern([part / width for part in style.dash])
    return pen
