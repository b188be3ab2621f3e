"""What is marked in a scene for a word: a measured span, the outline of a part, or a ring about a spot.

Each mark is drawn heavy, and a span with arrowheads, so that it is told apart without its colour too.
"""

import math

from configurator.drawing.primitives import Arc, Dimension, Point, Polyline, Primitive

WORD, MEASURED = "A-ANNO-WORD", "A-ANNO-DIMS-AXIS"
Mark = tuple[Primitive, ...]


def span(a: Point, b: Point, off: Point = (0.0, 0.0)) -> Dimension:
    """Return a measured distance without a number, its line set off from the two points."""
    line_a, line_b = ((x + off[0], y + off[1]) for x, y in (a, b))
    middle = ((line_a[0] + line_b[0]) / 2, (line_a[1] + line_b[1]) / 2)
    return Dimension(MEASURED, a, b, line_a, line_b, "", middle, "", math.dist(a, b))


def outline(points: tuple[Point, ...]) -> Polyline:
    """Return the outline of a part."""
    return Polyline(WORD, points, closed=True)


def ring(at: Point, radius: float) -> Arc:
    """Return a ring about a spot."""
    return Arc(WORD, at, radius, 0.0, 2 * math.pi)


def arrow(tail: Point, tip: Point) -> tuple[Polyline, Polyline]:
    """Return an arrow from one point to another."""
    dx, dy = (tip[0] - tail[0]) / 4, (tip[1] - tail[1]) / 4
    barbs = tuple((tip[0] - dx + side * dy / 2, tip[1] - dy - side * dx / 2) for side in (1.0, -1.0))
    return Polyline(WORD, (tail, tip)), Polyline(WORD, (barbs[0], tip, barbs[1]))
