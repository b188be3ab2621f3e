"""A page painted primitive by primitive, for formats that have lines, arcs and lettering of their own.

Each format is a painter with five strokes; what is cut off, hatched or dimensioned is worked out here, so
that no two formats can disagree. Places are points on the paper from its lower left corner.
"""

import math
from collections.abc import Callable, Sequence
from typing import Any, Protocol

from configurator.drawing.clip import clip_polygon, clip_polyline
from configurator.drawing.dimension_strokes import strokes_of
from configurator.drawing.hatch import hatch
from configurator.drawing.lettering import text_width
from configurator.drawing.on_sheet import (
    CROSS,
    DOT,
    RING,
    SMALL_RING,
    ArcOnSheet,
    arc_on_sheet,
    around,
    chords,
    clip_arc,
)
from configurator.drawing.pages.page import Page
from configurator.drawing.primitives import (
    Arc,
    Dimension,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Region,
    Symbol,
    Text,
)
from configurator.drawing.sheet import Group
from configurator.drawing.style import layers, materials
from configurator.drawing.view import View

Chain = Sequence[Sequence[float]]
_WHOLE = 2 * math.pi


class Painter(Protocol):
    """What a format draws: every stroke on a named layer, in that layer's pen; colours as `#rrggbb`."""

    def fill(self, outline: Chain, colour: str) -> None:
        """Fill a closed outline, without a line."""

    def chains(self, chains: Sequence[Chain], layer: str) -> None:
        """Draw chains of straight segments."""

    def arc(self, arc: ArcOnSheet, layer: str, heavier: float = 1.0) -> None:
        """Draw an arc, `heavier` times as wide as the layer's line."""

    def disc(self, arc: ArcOnSheet, colour: str) -> None:
        """Fill a whole circle, without a line."""

    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        """Letter one line from the start of its base line, in the layer's ink; the angle in radians."""

    def begin(self, group: Group | Dimension) -> None:
        """Hear that what follows belongs to a group of the page, or to a dimension."""

    def end(self) -> None:
        """Hear that it is over."""


def paint(page: Page, painter: Painter) -> None:
    """Paint everything on a page in painting order, as on the light sheet."""
    for group in page.groups:
        painter.begin(group)
        for item in group.primitives:
            _PAINTED[type(item)](painter, item, group.view)
        painter.end()


def ink(layer: str) -> str:
    """Return the colour of a layer's lines and lettering."""
    return layers()[layer].ink.light


def ground(material: str) -> str:
    """Return the colour that a material is filled with."""
    return materials()[material].ground.light


def _polyline(painter: Painter, item: Polyline, view: View) -> None:
    points = [view.to_sheet(point) for point in item.points]
    _lines(painter, [*points, points[0]] if item.closed else points, item.layer, view)


def _lines(painter: Painter, points: Sequence[Point], layer: str, view: View) -> None:
    pieces = clip_polyline(points, view.window)
    if pieces:
        painter.chains(pieces, layer)


def _polygon(painter: Painter, item: Polygon, view: View) -> None:
    points = [view.to_sheet(point) for point in item.points]
    if item.fill is not None:
        _fill(painter, points, item, view)
    if item.outlined:
        _lines(painter, [*points, points[0]], item.layer, view)


def _fill(painter: Painter, points: Sequence[Point], item: Polygon, view: View) -> None:
    assert item.fill is not None
    shown = clip_polygon(points, view.window)
    if not shown:
        return
    painter.fill(shown, ground(item.fill))
    lines = hatch(shown, materials()[item.fill], view.hand * item.turned, view.to_sheet(item.about))
    if len(lines):
        painter.chains(lines.tolist(), item.pattern_layer)


def _arc(painter: Painter, item: Arc, view: View) -> None:
    arc = arc_on_sheet(item, view)
    inside = view.window.shrunk(arc[1]).has(arc[0])
    if item.fill is not None:
        if inside and arc[3] - arc[2] >= _WHOLE - 1e-9:
            painter.disc(arc, ground(item.fill))
        else:
            _ground(painter, chords(*arc), item.fill, view)
    for start, end in [arc[2:]] if inside else clip_arc(arc, view.window):
        painter.arc((arc[0], arc[1], start, end), item.layer)


def _ground(painter: Painter, outline: Sequence[Point], material: str, view: View) -> None:
    shown = clip_polygon(outline, view.window)
    if shown:
        painter.fill(shown, ground(material))


def _region(painter: Painter, item: Region, view: View) -> None:
    if item.fill is not None:
        _ground(painter, around(item, view), item.fill, view)
    for bound in item.bounds:
        _PAINTED[type(bound)](painter, bound, view)


def _dimension(painter: Painter, item: Dimension, view: View) -> None:
    painter.begin(item)
    strokes = strokes_of(item, view)
    painter.chains(strokes.lines, item.layer)
    for arrow in strokes.arrows:
        painter.fill(arrow, ink(item.layer))
    _letter(
        painter, view.to_sheet(item.text_at), item.text, item.size, 0.5, item.layer, False, item.text_angle
    )
    painter.end()


def _text(painter: Painter, item: Text, view: View) -> None:
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    _letter(painter, view.to_sheet(item.at), item.text, item.size, share, item.layer, item.bold, item.angle)


def _letter(
    painter: Painter, at: Point, text: str, size: float, share: float, layer: str, bold: bool, angle: float
) -> None:
    if not text.strip():
        return
    back = share * text_width(text, size, bold)
    start = (at[0] - back * math.cos(angle), at[1] - back * math.sin(angle))
    painter.letter(start, text, size, layer, bold, angle)


def _symbol(painter: Painter, item: Symbol, view: View) -> None:
    at = view.to_sheet(item.at)
    if not view.window.has(at):
        return
    if item.kind == "contact":
        painter.arc((at, RING, 0.0, _WHOLE), item.layer, 2.0)
        painter.chains([((at[0] - x, at[1] - y), (at[0] + x, at[1] + y)) for x, y in CROSS], item.layer)
    elif item.kind == "graze":
        painter.arc((at, SMALL_RING, 0.0, _WHOLE), item.layer)
    else:
        painter.disc((at, DOT, 0.0, _WHOLE), ink(item.layer))


_PAINTED: dict[type[Primitive], Callable[[Painter, Any, View], None]] = {
    Polyline: _polyline,
    Polygon: _polygon,
    Arc: _arc,
    Region: _region,
    Dimension: _dimension,
    Text: _text,
    Symbol: _symbol,
}
