"""matplotlib's painter: a picture as one batch of paths in the order they are painted.

matplotlib draws one collection of many paths far faster than many artists, so fills, hatches, lines and
lettering of a whole picture become a single collection. Letters are outlines: each is traced once, and a
line of text is put together from those, so that it is exactly as wide as the room the drawing gave it.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import pairwise
from typing import Any

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.ft2font import FT2Font, LoadFlags
from matplotlib.path import Path
from numpy.typing import NDArray

from configurator.drawing.base.lettering import UNKNOWN, letter_advances
from configurator.drawing.base.on_sheet import ArcOnSheet
from configurator.drawing.base.primitives import Point
from configurator.drawing.base.style import Shade, layers
from configurator.drawing.base.view import Group
from configurator.export.painting import BOLD, FONT, Chain, StrokePainter, font_file, paint

Colour = tuple[float, float, float, float]
CLEAR: Colour = (0.0, 0.0, 0.0, 0.0)
NOT_IN_FONT = "\u25a1"
"""What stands for a letter that the font lacks."""
Outline = tuple[NDArray[Any], NDArray[Any]]
"""Vertices and path codes of an outline; the type size is 1 and the base line 0."""
_TRACED_AT = 100


@dataclass(frozen=True, slots=True)
class Pen:
    """How a path is drawn: fill, line, width in points and dash in points."""

    face: Colour
    edge: Colour
    width: float
    dash: tuple[float, ...] = ()


class Batch(StrokePainter):
    """Paths in painting order with a pen for each. Lines of one pen in a row are joined into one path."""

    def __init__(self, dark: bool) -> None:
        self.dark = dark
        self.paths: list[Path] = []
        self.pens: list[Pen] = []
        self._pen: Pen | None = None
        self._level: list[Chain] = []
        self._slanted: list[Chain] = []

    def chains(self, chains: Sequence[Chain], layer: str) -> None:
        """Add chains of segments; level and upright ones stay apart, so that they fall on whole pixels."""
        pen = line_pen(layer, self.dark)
        if pen != self._pen:
            self.flush()
            self._pen = pen
        for chain in chains:
            level = all(a[0] == b[0] or a[1] == b[1] for a, b in pairwise(chain))
            (self._level if level else self._slanted).append(chain)

    def segments(self, segments: NDArray[Any], layer: str) -> None:
        """Add a whole hatch as one path."""
        codes = np.tile(np.array([Path.MOVETO, Path.LINETO], np.uint8), len(segments))
        self._add(Path(segments.reshape(-1, 2), codes), line_pen(layer, self.dark))

    def arc(self, arc: ArcOnSheet, layer: str, heavier: float = 1.0) -> None:
        """Add an arc as a curve."""
        self._add(_arc_path(*arc), line_pen(layer, self.dark, heavier))

    def fill(self, outline: Chain, shade: Shade) -> None:
        """Add a filled outline."""
        codes = np.full(len(outline) + 1, Path.LINETO, np.uint8)
        codes[0], codes[-1] = Path.MOVETO, Path.CLOSEPOLY
        self._add(Path(np.array([*outline, outline[0]], float), codes), _fill_pen(shade, self.dark))

    def disc(self, circle: ArcOnSheet, shade: Shade) -> None:
        """Add a filled circle."""
        self._add(_arc_path(*circle), _fill_pen(shade, self.dark))

    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        """Add a line of text as one compound path."""
        vertices, codes = text_outline(text, bold)
        if not len(vertices):
            return
        placed = vertices * size
        if angle:
            c, s = math.cos(angle), math.sin(angle)
            placed = placed @ np.array([[c, s], [-s, c]])
        self._add(Path(placed + at, codes), _fill_pen(layers()[layer].ink, self.dark))

    def flush(self) -> None:
        """Join the lines waiting into paths."""
        for chains in (self._slanted, self._level):
            if chains and self._pen is not None:
                self.paths.append(_joined(chains))
                self.pens.append(self._pen)
                chains.clear()
        self._pen = None

    def _add(self, path: Path, pen: Pen) -> None:
        self.flush()
        self.paths.append(path)
        self.pens.append(pen)


def batch_of(groups: Iterable[Group], dark: bool) -> Batch:
    """Return everything in the groups as one batch."""
    batch = Batch(dark)
    paint(groups, batch)
    batch.flush()
    return batch


@cache
def line_pen(layer: str, dark: bool, heavier: float = 1.0) -> Pen:
    """Return the pen of a layer's lines, its width times `heavier`."""
    style = layers()[layer]
    return Pen(CLEAR, to_rgba(style.ink.on(dark)), style.width * heavier, style.dash)


@cache
def _fill_pen(shade: Shade, dark: bool) -> Pen:
    return Pen(to_rgba(shade.on(dark)), CLEAR, 0.0)


def _joined(chains: Sequence[Chain]) -> Path:
    vertices = np.array([point for chain in chains for point in chain], float)
    codes = np.full(len(vertices), Path.LINETO, np.uint8)
    starts = np.cumsum([0, *(len(chain) for chain in chains[:-1])])
    codes[starts] = Path.MOVETO
    return Path(vertices, codes)


def _arc_path(centre: Point, radius: float, first: float, last: float) -> Path:
    unit = _unit_arc(first, last)
    return Path(np.asarray(unit.vertices, float) * radius + centre, unit.codes)


@lru_cache(maxsize=64)
def _unit_arc(first: float, last: float) -> Path:
    return Path.arc(math.degrees(first), math.degrees(last))


@lru_cache(maxsize=1024)
def text_outline(text: str, bold: bool = False) -> Outline:
    """Return a line of text as one compound outline, starting at 0."""
    advances = letter_advances(bold)
    across = 0.0
    vertices, codes = [np.empty((0, 2))], [np.empty(0, np.uint8)]
    for letter in text:
        points, steps = _letter_outline(letter, bold)
        vertices.append(points + np.array((across, 0.0)))
        codes.append(steps)
        across += advances.get(letter, UNKNOWN)
    return np.concatenate(vertices), np.concatenate(codes)


@cache
def _letter_outline(letter: str, bold: bool) -> Outline:
    font = _font(bold)
    if not letter.isprintable():
        letter = " "
    elif not font.get_char_index(ord(letter)):
        letter = NOT_IN_FONT
    font.load_char(ord(letter), flags=LoadFlags.NO_HINTING)
    vertices, codes = font.get_path()
    return np.asarray(vertices, float) / _TRACED_AT, np.asarray(codes, np.uint8)


@cache
def _font(bold: bool) -> FT2Font:
    font = FT2Font(str(font_file(BOLD if bold else FONT)))
    font.set_size(_TRACED_AT, 72)
    return font
