"""A dimension as a drafter draws it: extension lines, the line itself, and arrowheads that touch both ends.

Everything in points on the sheet, so that arrows keep their size at any scale; every backend draws the same.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from configurator.drawing.base.primitives import Dimension, Point
from configurator.drawing.base.view import Box, View, box_around

ARROW = 5.0
"""Length of an arrowhead, points."""
_HALF_WIDTH = 0.2 * ARROW
GAP = 1.5
"""Extension lines start this far off what is measured, points."""
BEYOND = 2.0
"""They run on this far past the dimension line, points."""
_TAIL = 6.0
OUTSIDE = ARROW + _TAIL
"""How far arrows that stand outside a dimension reach beyond its ends, points."""


@dataclass(frozen=True, slots=True)
class Strokes:
    """Lines to draw with the layer's pen, and arrowheads to fill with its ink."""

    lines: tuple[tuple[Point, ...], ...]
    arrows: tuple[tuple[Point, Point, Point], ...]


def strokes_of(dimension: Dimension, view: View) -> Strokes:
    """Return a dimension's lines and arrowheads; arrows stand outside where there is no room between."""
    a, b, line_a, line_b = map(view.to_sheet, (dimension.a, dimension.b, dimension.line_a, dimension.line_b))
    shoulder = tuple(view.to_sheet(point) for point in dimension.shoulder)
    extensions = [line for line in (_extension(a, line_a), _extension(b, line_b)) if line]
    along = _unit(line_a, line_b)
    length = math.dist(line_a, line_b)
    outside = length < 2.6 * ARROW
    way = -1.0 if outside else 1.0
    arrows = (_arrow(line_a, along, way), _arrow(line_b, along, -way))
    lines = [*extensions, *_line(line_a, line_b, along, outside, shoulder)]
    return Strokes(tuple(lines), arrows)


def line_boxes(dimensions: Iterable[Dimension], view: View, extensions: bool = True) -> list[Box]:
    """Return the boxes of the lines of placed dimensions on the sheet, one for each stroke.

    Without `extensions` only the dimension lines with their shoulders count.
    """
    lines = [line for one in dimensions for line in strokes_of(one, view).lines[0 if extensions else -1 :]]
    return [box_around(stroke) for line in lines for stroke in pairwise(line)]


def _extension(point: Point, end: Point) -> tuple[Point, Point] | None:
    length = math.dist(point, end)
    if length <= GAP:
        return None
    x, y = _unit(point, end)
    return (
        (point[0] + GAP * x, point[1] + GAP * y),
        (end[0] + BEYOND * x, end[1] + BEYOND * y),
    )


def _line(
    a: Point, b: Point, along: Point, outside: bool, shoulder: tuple[Point, ...]
) -> list[tuple[Point, ...]]:
    """Return the dimension line, with tails where the arrows stand outside, carried on to its shoulder."""
    reach = OUTSIDE if outside else 0.0
    start = (a[0] - reach * along[0], a[1] - reach * along[1])
    end = (b[0] + reach * along[0], b[1] + reach * along[1])
    if not shoulder:
        return [(start, end)]
    if math.dist(shoulder[0], a) < math.dist(shoulder[0], b):
        return [(end, a, *shoulder)]
    return [(start, b, *shoulder)]


def _arrow(tip: Point, along: Point, way: float) -> tuple[Point, Point, Point]:
    """Return the arrowhead at `tip`, its body lying `way` along the line."""
    x, y = along
    back = (tip[0] + way * ARROW * x, tip[1] + way * ARROW * y)
    return (
        tip,
        (back[0] - _HALF_WIDTH * y, back[1] + _HALF_WIDTH * x),
        (back[0] + _HALF_WIDTH * y, back[1] - _HALF_WIDTH * x),
    )


def _unit(a: Point, b: Point) -> Point:
    length = math.dist(a, b)
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length) if length > 1e-12 else (0.0, 1.0)
