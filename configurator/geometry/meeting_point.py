"""Where two parts touch, once it is known at which angle they do."""

import math
from typing import Final

from configurator.geometry.pin import Point
from configurator.geometry.polar import PolarShape, corners_within, separation, turned

#: Corners this near to the other outline belong to the contact, in: rounding is far below, a gap far above.
_TOUCHING: Final = 1e-8


def nearest_on_outline(point: Point, outline: tuple[Point, ...]) -> Point:
    """The point of an outline nearest to another point, in."""
    p_x, p_y = point
    best, least = outline[0], math.inf
    x_0, y_0 = outline[-1]
    for x_1, y_1 in outline:
        d_x, d_y = x_1 - x_0, y_1 - y_0
        square = d_x * d_x + d_y * d_y or 1.0
        share = min(1.0, max(0.0, ((p_x - x_0) * d_x + (p_y - y_0) * d_y) / square))
        x, y = x_0 + share * d_x, y_0 + share * d_y
        away = (x - p_x) * (x - p_x) + (y - p_y) * (y - p_y)
        if away < least:
            best, least = (x, y), away
        x_0, y_0 = x_1, y_1
    return best


def nearest_points(one: tuple[Point, ...], other: tuple[Point, ...]) -> tuple[Point, Point]:
    """A nearest pair of points of two outlines that do not overlap, in."""
    pairs = [(corner, nearest_on_outline(corner, other)) for corner in one]
    pairs += [(nearest_on_outline(corner, one), corner) for corner in other]
    return min(pairs, key=lambda pair: math.dist(*pair))


def _clipped(outline: tuple[Point, ...], window: tuple[Point, ...]) -> list[Point]:
    """What of a convex outline lies inside another."""
    kept = list(outline)
    for j in range(len(window)):
        (x_0, y_0), (x_1, y_1) = window[j - 1], window[j]
        inside = [(x_1 - x_0) * (y - y_0) - (y_1 - y_0) * (x - x_0) for x, y in kept]
        kept = _clipped_by_line(kept, inside)
    return kept


def _clipped_by_line(outline: list[Point], inside: list[float]) -> list[Point]:
    """The corners on the inner side of a line, with the crossings put in."""
    kept: list[Point] = []
    for j, (point, value) in enumerate(zip(outline, inside, strict=True)):
        before, was = outline[j - 1], inside[j - 1]
        if (was < 0.0) != (value < 0.0):
            share = was / (was - value)
            kept.append(
                (before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1]))
            )
        if value >= 0.0:
            kept.append(point)
    return kept


def _middle_of(points: list[Point]) -> Point:
    """The middle of the two points farthest apart."""
    if len(points) == 1:
        return (float(points[0][0]), float(points[0][1]))
    one, other = max(((a, b) for a in points for b in points), key=lambda pair: math.dist(*pair))
    return ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)


def meeting_point(pin: Point, moving: PolarShape, standing: PolarShape, theta: float) -> Point:
    """Where two parts meet with the door at theta, in.

    The middle of a flat contact; where they already overlap, the middle of what they share.
    """
    one, other = turned(pin, moving, theta), standing.shape.points
    r_one, r_other = moving.shape.radius, standing.shape.radius
    if r_one + r_other > 0.0:
        p, q = nearest_points(one, other)
        share = r_one / (r_one + r_other)
        return (p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1]))
    if separation(moving, standing, theta) < -_TOUCHING:
        shared = _clipped(one, other)
    else:
        shared = [one[j] for j in corners_within(moving.corners, standing.edges, theta, _TOUCHING)]
        shared += [other[j] for j in corners_within(standing.corners, moving.edges, -theta, _TOUCHING)]
    return _middle_of(shared) if shared else nearest_points(one, other)[0]
