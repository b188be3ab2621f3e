"""Turning parts about the pin, and round parts as arcs."""

import math
from collections.abc import Sequence

from configurator.drawing.base.primitives import Point


def turned(points: Sequence[Point], about: Point, angle: float) -> tuple[Point, ...]:
    """Return the points turned counter-clockwise about one of them, radians; 90 and 180 degrees are exact."""
    c, s = _exact(math.cos(angle)), _exact(math.sin(angle))
    x_0, y_0 = about
    return tuple(
        (x_0 + c * (x - x_0) - s * (y - y_0), y_0 + s * (x - x_0) + c * (y - y_0)) for x, y in points
    )


def _exact(value: float) -> float:
    """Take off the rounding that a quarter or half turn leaves."""
    nearest = round(value)
    return float(nearest) if abs(value - nearest) < 1e-15 else value


def rectangle(x_0: float, x_1: float, y_0: float, y_1: float) -> tuple[Point, ...]:
    """Return the corners of an upright rectangle, counter-clockwise."""
    return ((x_0, y_0), (x_1, y_0), (x_1, y_1), (x_0, y_1))
