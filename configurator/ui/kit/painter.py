"""Qt's painter: pages on the screen and on paper, and small pictures, by the same strokes as every file."""

import math
from collections.abc import Iterable, Sequence
from functools import cache

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontDatabase,
    QImage,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from configurator.drawing.base.on_sheet import ArcOnSheet
from configurator.drawing.base.primitives import Point
from configurator.drawing.base.style import Shade, layers
from configurator.drawing.base.view import Group
from configurator.export.painting import (
    BOLD,
    FONT,
    Chain,
    Logo,
    StrokePainter,
    font_file,
    logo_place,
    paint,
)

_PIXELS = 100
"""Letters are taken at this size and shrunk, so that they run exactly as wide as the sheet counts on."""


def paint_groups(
    groups: Iterable[Group], height: float, painter: QPainter, points: float, dark: bool = False
) -> None:
    """Paint a picture of a height in points from the painter's upper left corner, `points` units a point."""
    painter.save()
    painter.scale(points, points)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
    paint(groups, _OnQt(painter, height, dark))
    painter.restore()


def paint_logo(logo: Logo | None, height: float, painter: QPainter, points: float) -> None:
    """Paint a page's logo, if it has one that can be read, as `paint_groups` paints what is drawn."""
    place = logo_place(logo)
    if place is None or logo is None:
        return
    left, top = place.left * points, (height - place.top) * points
    painter.drawImage(QRectF(left, top, place.width * points, place.height * points), QImage(str(logo[0])))


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


class _OnQt(StrokePainter):
    """Paints one picture of a height in points; Qt counts downward."""

    def __init__(self, painter: QPainter, height: float, dark: bool) -> None:
        self._painter = painter
        self._height = height
        self._dark = dark
        self._pens: dict[tuple[str, float], QPen] = {}

    def fill(self, outline: Chain, shade: Shade) -> None:
        self._fill_with(shade)
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

    def disc(self, circle: ArcOnSheet, shade: Shade) -> None:
        self._fill_with(shade)
        self._painter.drawEllipse(self._box(circle))

    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        painter = self._painter
        painter.save()
        painter.translate(self._at(at))
        painter.rotate(-math.degrees(angle))
        painter.scale(size / _PIXELS, size / _PIXELS)
        painter.setFont(letters(bold))
        painter.setPen(QColor(layers()[layer].ink.on(self._dark)))
        painter.drawText(QPointF(0.0, 0.0), text)
        painter.restore()

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

    def _fill_with(self, shade: Shade) -> None:
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(QColor(shade.on(self._dark)))

    def _draw_with(self, layer: str, heavier: float = 1.0) -> None:
        key = (layer, heavier)
        if key not in self._pens:
            self._pens[key] = _pen(layer, heavier, self._dark)
        self._painter.setPen(self._pens[key])
        self._painter.setBrush(QBrush(Qt.BrushStyle.NoBrush))


def _pen(layer: str, heavier: float, dark: bool) -> QPen:
    style = layers()[layer]
    width = style.width * heavier
    pen = QPen(QColor(style.ink.on(dark)), width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if style.dash:
        pen.setDashPattern([part / width for part in style.dash])
    return pen
