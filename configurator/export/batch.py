"""Primitives turned into one batch of paths in the order they are painted, in points on the sheet.

matplotlib draws one collection of many paths far faster than many artists, so fills, hatches, lines and
lettering of a whole picture become a single collection.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cache
from itertools import pairwise
from typing import Any

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.path import Path
from numpy.typing import NDArray

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
)
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
from configurator.export.glyphs import text_outline

Colour = tuple[float, float, float, float]
CLEAR: Colour = (0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Pen:
    """How a path is drawn: fill, line, width in points and dash in points."""

    face: Colour
    edge: Colour
    width: float
    dash: tuple[float, ...] = ()


@dataclass(slots=True)
class Batch:
    """Paths in painting order with a pen for each. Lines of one pen in a row are joined into one path."""

    dark: bool
    paths: list[Path] = field(default_factory=list)
    pens: list[Pen] = field(default_factory=list)
    _pen: Pen | None = None
    _level: list[Sequence[Point]] = field(default_factory=list)
    _slanted: list[Sequence[Point]] = field(default_factory=list)

    def add(self, path: Path, pen: Pen) -> None:
        """Add one path over everything so far."""
        self.flush()
        self.paths.append(path)
        self.pens.append(pen)

    def line(self, points: Sequence[Point], pen: Pen) -> None:
        """Add a chain of segments; level and upright ones stay apart, so that they fall on whole pixels."""
        if pen != self._pen:
            self.flush()
            self._pen = pen
        level = all(a[0] == b[0] or a[1] == b[1] for a, b in pairwise(points))
        (self._level if level else self._slanted).append(points)

    def flush(self) -> None:
        """Join the lines waiting into paths."""
        for chains in (self._slanted, self._level):
            if chains and self._pen is not None:
                self.paths.append(_joined(chains))
                self.pens.append(self._pen)
                chains.clear()
        self._pen = None


def batch_of(groups: Iterable[Group], dark: bool) -> Batch:
    """Return everything in the groups as one batch."""
    batch = Batch(dark)
    for group in groups:
        for primitive in group.primitives:
            _DRAWN[type(primitive)](batch, primitive, group.view)
    batch.flush()
    return batch


def _joined(chains: Sequence[Sequence[Point]]) -> Path:
    vertices = np.array([point for chain in chains for point in chain], float)
    codes = np.full(len(vertices), Path.LINETO, np.uint8)
    starts = np.cumsum([0, *(len(chain) for chain in chains[:-1])])
    codes[starts] = Path.MOVETO
    return Path(vertices, codes)


@cache
def line_pen(layer: str, dark: bool) -> Pen:
    """Return the pen of a layer's lines."""
    style = layers()[layer]
    return Pen(CLEAR, to_rgba(style.ink.on(dark)), style.width, style.dash)


@cache
def ink_pen(layer: str, dark: bool) -> Pen:
    """Return the pen that fills with a layer's ink: lettering and arrowheads."""
    return Pen(to_rgba(layers()[layer].ink.on(dark)), CLEAR, 0.0)


@cache
def ground_pen(material: str, dark: bool) -> Pen:
    """Return the pen that fills with a material's ground."""
    return Pen(to_rgba(materials()[material].ground.on(dark)), CLEAR, 0.0)


def _polyline(batch: Batch, item: Polyline, view: View) -> None:
    points = [view.to_sheet(point) for point in item.points]
    if item.closed:
        points.append(points[0])
    _clipped_line(batch, points, item.layer, view)


def _clipped_line(batch: Batch, points: Sequence[Point], layer: str, view: View) -> None:
    for piece in clip_polyline(points, view.window):
        batch.line(piece, line_pen(layer, batch.dark))


def _polygon(batch: Batch, item: Polygon, view: View) -> None:
    points = [view.to_sheet(point) for point in item.points]
    if item.fill is not None:
        shown = clip_polygon(points, view.window)
        if shown:
            _fill(batch, shown, item, view)
    if item.outlined:
        _clipped_line(batch, [*points, points[0]], item.layer, view)


def _fill(batch: Batch, shown: Sequence[Point], item: Polygon, view: View) -> None:
    assert item.fill is not None
    batch.add(_closed(shown), ground_pen(item.fill, batch.dark))
    lines = hatch(shown, materials()[item.fill], view.hand * item.turned, view.to_sheet(item.about))
    if len(lines):
        batch.add(_segments_path(lines), line_pen(item.pattern_layer, batch.dark))


def _closed(points: Sequence[Point]) -> Path:
    codes = np.full(len(points) + 1, Path.LINETO, np.uint8)
    codes[0], codes[-1] = Path.MOVETO, Path.CLOSEPOLY
    return Path(np.array([*points, points[0]], float), codes)


def _segments_path(segments: NDArray[Any]) -> Path:
    codes = np.tile(np.array([Path.MOVETO, Path.LINETO], np.uint8), len(segments))
    return Path(segments.reshape(-1, 2), codes)


def _arc(batch: Batch, item: Arc, view: View) -> None:
    arc = arc_on_sheet(item, view)
    centre, radius, *_ = arc
    if not view.window.shrunk(radius).has(centre):
        _cut_arc(batch, item, view, arc)
        return
    path = _arc_path(*arc)
    if item.fill is not None:
        batch.add(path, ground_pen(item.fill, batch.dark))
    batch.add(path, line_pen(item.layer, batch.dark))


def _arc_path(centre: Point, radius: float, first: float, last: float) -> Path:
    unit = Path.arc(math.degrees(first), math.degrees(last))
    return Path(np.asarray(unit.vertices, float) * radius + centre, unit.codes)


def _cut_arc(batch: Batch, item: Arc, view: View, arc: ArcOnSheet) -> None:
    """Draw an arc that runs out of the window as short chords: there is no cutting a curve by path alone."""
    chain = chords(*arc)
    if item.fill is not None:
        shown = clip_polygon(chain, view.window)
        if shown:
            batch.add(_closed(shown), ground_pen(item.fill, batch.dark))
    _clipped_line(batch, chain, item.layer, view)


def _region(batch: Batch, item: Region, view: View) -> None:
    """Fill the region, then draw its bounds each as what it is."""
    if item.fill is not None:
        shown = clip_polygon(around(item, view), view.window)
        if shown:
            batch.add(_closed(shown), ground_pen(item.fill, batch.dark))
    for bound in item.bounds:
        _DRAWN[type(bound)](batch, bound, view)


def _dimension(batch: Batch, item: Dimension, view: View) -> None:
    strokes = strokes_of(item, view)
    for line in strokes.lines:
        batch.line(line, line_pen(item.layer, batch.dark))
    for arrow in strokes.arrows:
        batch.add(_closed(arrow), ink_pen(item.layer, batch.dark))
    _lettering(
        batch, view.to_sheet(item.text_at), item.text, item.size, 0.5, item.layer, False, item.text_angle
    )


def _text(batch: Batch, item: Text, view: View) -> None:
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    at = view.to_sheet(item.at)
    _lettering(batch, at, item.text, item.size, share, item.layer, item.bold, item.angle)


def _lettering(
    batch: Batch, at: Point, text: str, size: float, share: float, layer: str, bold: bool, angle: float
) -> None:
    vertices, codes = text_outline(text, bold)
    if not len(vertices):
        return
    placed = vertices * size - (share * text_width(text, size, bold), 0.0)
    if angle:
        c, s = math.cos(angle), math.sin(angle)
        placed = placed @ np.array([[c, s], [-s, c]])
    batch.add(Path(placed + at, codes), ink_pen(layer, batch.dark))


def _symbol(batch: Batch, item: Symbol, view: View) -> None:
    at = view.to_sheet(item.at)
    if not view.window.has(at):
        return
    pen = line_pen(item.layer, batch.dark)
    if item.kind == "contact":
        batch.add(_arc_path(at, RING, 0.0, 2 * math.pi), Pen(CLEAR, pen.edge, 2 * pen.width))
        for x, y in CROSS:
            batch.line(((at[0] - x, at[1] - y), (at[0] + x, at[1] + y)), pen)
    elif item.kind == "graze":
        batch.add(_arc_path(at, SMALL_RING, 0.0, 2 * math.pi), Pen(CLEAR, pen.edge, pen.width))
    else:
        batch.add(_arc_path(at, DOT, 0.0, 2 * math.pi), ink_pen(item.layer, batch.dark))


_DRAWN: dict[type[Primitive], Any] = {
    Polyline: _polyline,
    Polygon: _polygon,
    Arc: _arc,
    Region: _region,
    Dimension: _dimension,
    Text: _text,
    Symbol: _symbol,
}
