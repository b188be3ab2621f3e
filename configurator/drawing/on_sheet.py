"""Curves and marks as they lie on the sheet, points: what every way of writing a picture has in common."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from configurator.drawing.primitives import Arc, Point, Polyline, Region
from configurator.drawing.view import View


@dataclass(frozen=True, slots=True)
class SheetArc:
    """An arc as it is seen: points on the sheet, counter-clockwise from `start` to `end`, radians."""

    centre: Point
    radius: float
    start: float
    end: float

    def at(self, angle: float) -> Point:
        """Return the point at an angle."""
        x, y = self.centre
        return (x + self.radius * math.cos(angle), y + self.radius * math.sin(angle))

    def chords(self) -> list[Point]:
        """Return the arc as chords that no eye tells from it."""
        span = self.end - self.start
        steps = max(8, int(abs(span) * math.sqrt(self.radius) * 4))
        return [self.at(self.start + span * step / steps) for step in range(steps + 1)]


@dataclass(frozen=True, slots=True)
class SymbolShape:
    """A mark drawn at a fixed size: a ring or a filled dot, with strokes through it; points about its place.

    `heavier` is how many times the layer's width the ring's line is wide.
    """

    radius: float
    filled: bool = False
    heavier: float = 1.0
    strokes: tuple[tuple[Point, Point], ...] = ()


_CROSS = (((-2.4, -2.4), (2.4, 2.4)), ((-2.4, 2.4), (2.4, -2.4)))
SYMBOLS: Mapping[str, SymbolShape] = MappingProxyType(
    {
        "contact": SymbolShape(5.5, heavier=2.0, strokes=_CROSS),
        "graze": SymbolShape(2.6),
        "dot": SymbolShape(1.3, filled=True),
        "pin axis": SymbolShape(1.3, filled=True),
    }
)


def arc_on_sheet(item: Arc, view: View) -> SheetArc:
    """Return an arc as it is seen: mirrored where its view mirrors."""
    first, last = item.start, item.end
    if view.mirrored:
        first, last = math.pi - item.end, math.pi - item.start
    return SheetArc(view.to_sheet(item.centre), item.radius * view.scale, first, last)


def region_outline(item: Region, view: View) -> list[Point]:
    """Return a region's outline on the sheet, every bound run through from where the one before it ends."""
    pieces = [
        [view.to_sheet(point) for point in bound.points]
        if isinstance(bound, Polyline)
        else arc_on_sheet(bound, view).chords()
        for bound in item.bounds
    ]
    outline = pieces[0]
    if len(pieces) > 1 and _nearer(outline[0], outline[-1], pieces[1]):
        outline.reverse()
    for piece in pieces[1:]:
        backward = math.dist(outline[-1], piece[-1]) < math.dist(outline[-1], piece[0])
        outline += piece[::-1] if backward else piece
    return outline


def _nearer(one: Point, other: Point, piece: Sequence[Point]) -> bool:
    """Whether the first of two points is the nearer to an end of a piece."""
    ends = (piece[0], piece[-1])
    return min(math.dist(one, end) for end in ends) < min(math.dist(other, end) for end in ends)
