"""Cutting outlines off at the edge of a picture, so that no backend has to."""

from collections.abc import Sequence
from itertools import pairwise

from configurator.drawing.base.primitives import Point
from configurator.drawing.base.view import Box, box_around


def clip_polygon(points: Sequence[Point], box: Box) -> tuple[Point, ...]:
    """Return the part of a filled outline inside the box; empty where there is none."""
    kept = tuple(points)
    if not kept or box.holds(box_around(kept)):
        return kept
    for axis, limit, sign in ((0, box.left, 1), (0, box.right, -1), (1, box.bottom, 1), (1, box.top, -1)):
        kept = _cut(kept, axis, limit, sign)
        if not kept:
            return ()
    return kept


def _cut(points: Sequence[Point], axis: int, limit: float, sign: int) -> tuple[Point, ...]:
    """Keep the side of one upright or level line on which sign x (coordinate - limit) is not below 0."""
    kept: list[Point] = []
    before = points[-1]
    was_in = sign * (before[axis] - limit) >= 0
    for point in points:
        is_in = sign * (point[axis] - limit) >= 0
        if is_in != was_in:
            kept.append(_crossing(before, point, axis, limit))
        if is_in:
            kept.append(point)
        before, was_in = point, is_in
    return tuple(kept)


def _crossing(a: Point, b: Point, axis: int, limit: float) -> Point:
    share = (limit - a[axis]) / (b[axis] - a[axis])
    other = a[1 - axis] + share * (b[1 - axis] - a[1 - axis])
    return (limit, other) if axis == 0 else (other, limit)


def clip_segment(a: Point, b: Point, box: Box) -> tuple[Point, Point] | None:
    """Return the part of a segment inside the box, None where there is none."""
    (x_0, y_0), (x_1, y_1) = a, b
    if max(x_0, x_1) < box.left or min(x_0, x_1) > box.right:
        return None
    if max(y_0, y_1) < box.bottom or min(y_0, y_1) > box.top:
        return None
    low, high = 0.0, 1.0
    for start, step, least, most in (
        (a[0], b[0] - a[0], box.left, box.right),
        (a[1], b[1] - a[1], box.bottom, box.top),
    ):
        if step == 0.0:
            if not least <= start <= most:
                return None
            continue
        one, two = (least - start) / step, (most - start) / step
        low, high = max(low, min(one, two)), min(high, max(one, two))
        if low > high:
            return None
    return _along(a, b, low), _along(a, b, high)


def _along(a: Point, b: Point, share: float) -> Point:
    if share == 0.0:
        return a
    if share == 1.0:
        return b
    return (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))


def clip_polyline(points: Sequence[Point], box: Box) -> list[tuple[Point, ...]]:
    """Return the pieces of a chain of segments that lie in the box, each as long as it runs inside."""
    if box.holds(box_around(points)):
        return [tuple(points)]
    pieces: list[list[Point]] = []
    for a, b in pairwise(points):
        inside = clip_segment(a, b, box)
        if inside is None:
            continue
        if pieces and pieces[-1][-1] == inside[0]:
            pieces[-1].append(inside[1])
        else:
            pieces.append(list(inside))
    return [tuple(piece) for piece in pieces]
