"""A picture painted primitive by primitive: one walk for every format, one small painter a format.

What the walk hands to a painter lies on the sheet, in points from its lower left corner, and is cut off at
its view's window. A format that knows hatches and dimensions implements `Painter` itself; the others are a
`StrokePainter` and draw lines, arcs and letters only.
"""

import math
from abc import ABC, abstractmethod
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from numpy.typing import NDArray

from configurator.drawing.base.clip import clip_polygon, clip_polyline
from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.hatch import hatch
from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.on_sheet import (
    CROSS,
    DOT,
    RING,
    SMALL_RING,
    WHOLE_TURN,
    ArcOnSheet,
    arc_on_sheet,
    around,
    chords,
    clip_arc,
    is_round,
)
from configurator.drawing.base.primitives import (
    Anchor,
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
from configurator.drawing.base.style import Shade, layers, materials
from configurator.drawing.base.view import Box, Group, View

Chain = Sequence[Sequence[float]]
Logo = tuple[Path, Box]
"""A picture's file, and the room for it, points of the sheet."""
FONT, BOLD = "DejaVuSans", "DejaVuSans-Bold"
"""The faces of every format: DejaVu Sans, which comes with matplotlib."""
WHITE = Shade("#ffffff", "#ffffff")
_SHARE_LEFT: dict[Anchor, float] = {"start": 0.0, "middle": 0.5, "end": 1.0}
"""How much of a text lies left of its anchor."""


@dataclass(frozen=True, slots=True)
class Picture:
    """What is written as one page: width and height in points, and the colour of the ground."""

    title: str
    width: float
    height: float
    groups: tuple[Group, ...]
    ground: Shade = WHITE
    dark: bool = False
    logo: Logo | None = None


def logo_place(logo: Logo | None) -> Box | None:
    """Return where a logo lies in its room, at the right of it, as large as it fits; points.

    None where there is none, or where its file cannot be read any more.
    """
    if logo is None:
        return None
    from PIL import Image  # loaded for pages that have one

    file, room = logo
    try:
        with Image.open(file) as picture:
            wide, high = picture.size
    except OSError:
        return None
    scale = min(room.width / wide, room.height / high)
    middle, half = (room.bottom + room.top) / 2, high * scale / 2
    return Box(room.right - wide * scale, middle - half, room.right, middle + half)


class Painter(Protocol):
    """What a format does with each primitive; `item` is the primitive that the geometry comes from."""

    def line(self, pieces: Sequence[Sequence[Point]], item: Polyline | Polygon) -> None:
        """Draw a line in pieces; one that ends where it starts is closed there."""

    def curve(self, arc: ArcOnSheet, item: Arc) -> None:
        """Draw an arc, or one piece of it."""

    def ground(self, outline: Sequence[Point], material: str) -> None:
        """Fill an outline with a material's ground, without a line."""

    def round_ground(self, circle: ArcOnSheet, material: str) -> None:
        """Fill a whole circle with a material's ground, without a line."""

    def pattern(self, outline: Sequence[Point], item: Polygon, view: View) -> None:
        """Hatch an outline as the material of the polygon is hatched."""

    def dimension(self, item: Dimension, view: View) -> None:
        """Draw a dimension: its lines, arrowheads and text."""

    def lettering(self, at: Point, item: Text) -> None:
        """Letter a text at its anchor's place."""

    def mark(self, at: Point, item: Symbol) -> None:
        """Draw a symbol at its own fixed size."""


def paint(groups: Iterable[Group], painter: Painter) -> None:
    """Paint everything in the groups, in order."""
    for group in groups:
        for item in group.primitives:
            _PAINTED[type(item)](painter, item, group.view)


class StrokePainter(ABC):
    """Paints with lines, arcs, discs, fills and letters alone; each format says how it draws those.

    Lines are drawn in their layer's pen, letters in its ink.
    """

    @abstractmethod
    def chains(self, chains: Sequence[Chain], layer: str) -> None:
        """Draw chains of straight segments."""

    @abstractmethod
    def arc(self, arc: ArcOnSheet, layer: str, heavier: float = 1.0) -> None:
        """Draw an arc, `heavier` times as wide as the layer's line."""

    @abstractmethod
    def fill(self, outline: Chain, shade: Shade) -> None:
        """Fill a closed outline, without a line."""

    @abstractmethod
    def disc(self, circle: ArcOnSheet, shade: Shade) -> None:
        """Fill a whole circle, without a line."""

    @abstractmethod
    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        """Letter one line from the start of its base line; the angle in radians."""

    def segments(self, segments: NDArray[Any], layer: str) -> None:
        """Draw n separate segments, an array of n x 2 x 2."""
        self.chains(segments.tolist(), layer)

    def line(self, pieces: Sequence[Sequence[Point]], item: Polyline | Polygon) -> None:
        """Draw a line in its layer's pen."""
        self.chains(pieces, item.layer)

    def curve(self, arc: ArcOnSheet, item: Arc) -> None:
        """Draw an arc in its layer's pen."""
        self.arc(arc, item.layer)

    def ground(self, outline: Sequence[Point], material: str) -> None:
        """Fill with the material's colour."""
        self.fill(outline, materials()[material].ground)

    def round_ground(self, circle: ArcOnSheet, material: str) -> None:
        """Fill with the material's colour."""
        self.disc(circle, materials()[material].ground)

    def pattern(self, outline: Sequence[Point], item: Polygon, view: View) -> None:
        """Draw the hatch as segments that end at the outline."""
        assert item.fill is not None
        lines = hatch(outline, materials()[item.fill], view.hand * item.turned, view.to_sheet(item.about))
        if len(lines):
            self.segments(lines, item.pattern_layer)

    def dimension(self, item: Dimension, view: View) -> None:
        """Draw lines, arrowheads and the text, which stands on the middle of its place."""
        strokes = strokes_of(item, view)
        self.chains(strokes.lines, item.layer)
        for arrow in strokes.arrows:
            self.fill(arrow, layers()[item.layer].ink)
        at = view.to_sheet(item.text_at)
        self.lettering(at, Text(item.layer, at, item.text, item.size, "middle", item.text_angle))

    def lettering(self, at: Point, item: Text) -> None:
        """Letter a text from where its anchor puts its start; nothing for blanks."""
        if not item.text.strip():
            return
        left = _SHARE_LEFT[item.anchor] * text_width(item.text, item.size, item.bold)
        start = (at[0] - left * math.cos(item.angle), at[1] - left * math.sin(item.angle))
        self.letter(start, item.text, item.size, item.layer, item.bold, item.angle)

    def mark(self, at: Point, item: Symbol) -> None:
        """Draw a contact as a cross in a ring, a graze as a small ring, anything else as a dot."""
        if item.kind == "contact":
            self.arc((at, RING, 0.0, WHOLE_TURN), item.layer, 2.0)
            self.chains([((at[0] - x, at[1] - y), (at[0] + x, at[1] + y)) for x, y in CROSS], item.layer)
        elif item.kind == "graze":
            self.arc((at, SMALL_RING, 0.0, WHOLE_TURN), item.layer)
        else:
            self.disc((at, DOT, 0.0, WHOLE_TURN), layers()[item.layer].ink)


def font_file(name: str) -> Path:
    """Return the TrueType file of a face, `FONT` or `BOLD`."""
    import matplotlib as mpl

    return Path(mpl.get_data_path()) / "fonts" / "ttf" / f"{name}.ttf"


def _polyline(painter: Painter, item: Polyline, view: View) -> None:
    points = [view.to_sheet(point) for point in item.points]
    _line(painter, [*points, points[0]] if item.closed else points, item, view)


def _line(painter: Painter, points: Sequence[Point], item: Polyline | Polygon, view: View) -> None:
    pieces = clip_polyline(points, view.window)
    if pieces:
        painter.line(pieces, item)


def _polygon(painter: Painter, item: Polygon, view: View) -> None:
    points = [view.to_sheet(point) for point in item.points]
    if item.fill is not None:
        shown = clip_polygon(points, view.window)
        if shown:
            painter.ground(shown, item.fill)
            painter.pattern(shown, item, view)
    if item.outlined:
        _line(painter, [*points, points[0]], item, view)


def _arc(painter: Painter, item: Arc, view: View) -> None:
    arc = arc_on_sheet(item, view)
    centre, radius, first, last = arc
    inside = view.window.shrunk(radius).has(centre)
    if item.fill is not None:
        if inside and is_round(arc):
            painter.round_ground(arc, item.fill)
        else:
            _ground(painter, chords(*arc), item.fill, view)
    for start, end in [(first, last)] if inside else clip_arc(arc, view.window):
        painter.curve((centre, radius, start, end), item)


def _ground(painter: Painter, outline: Sequence[Point], material: str, view: View) -> None:
    shown = clip_polygon(outline, view.window)
    if shown:
        painter.ground(shown, material)


def _region(painter: Painter, item: Region, view: View) -> None:
    """Fill the region, then draw each of its bounds as what it is."""
    if item.fill is not None:
        _ground(painter, around(item, view), item.fill, view)
    for bound in item.bounds:
        _PAINTED[type(bound)](painter, bound, view)


def _dimension(painter: Painter, item: Dimension, view: View) -> None:
    painter.dimension(item, view)


def _text(painter: Painter, item: Text, view: View) -> None:
    painter.lettering(view.to_sheet(item.at), item)


def _symbol(painter: Painter, item: Symbol, view: View) -> None:
    at = view.to_sheet(item.at)
    if view.window.has(at):
        painter.mark(at, item)


_PAINTED: dict[type[Primitive], Callable[[Painter, Any, View], None]] = {
    Polyline: _polyline,
    Polygon: _polygon,
    Arc: _arc,
    Region: _region,
    Dimension: _dimension,
    Text: _text,
    Symbol: _symbol,
}
