"""An outline of any form as convex pieces: ears cut off one by one, then cut along the rabbet face.

Pieces are corners counter-clockwise, in inches. What lies over the rabbet face, across 0, counts as stop.
"""

from collections.abc import Sequence
from functools import lru_cache

from configurator.geometry.pin import TOLERANCE, Point

Outline = tuple[Point, ...]


@lru_cache(maxsize=64)
def convex_pieces(outline: Outline) -> tuple[tuple[Outline, ...], tuple[Outline, ...]]:
    """The pieces of an outline beside the opening, and those that stand into it: its stop."""
    pieces = _triangles(outline if _area(outline) > 0 else outline[::-1])
    beside = [_kept(piece, -1.0) for piece in pieces]
    into = [_kept(piece, 1.0) for piece in pieces]
    return _real(beside), _real(into)


def _triangles(points: Outline) -> list[Outline]:
    """Cut off the ears of an outline that runs counter-clockwise."""
    left: list[Point] = list(points)
    found: list[Outline] = []
    while len(left) > 3:
        at = next((n for n in range(len(left)) if _is_ear(left, n)), None)
        if at is None:  # only points in line are left
            break
        found.append((left[at - 1], left[at], left[(at + 1) % len(left)]))
        del left[at]
    return [*found, (left[0], left[1], left[2])] if len(left) == 3 else found


def _is_ear(points: list[Point], at: int) -> bool:
    a, b, c = points[at - 1], points[at], points[(at + 1) % len(points)]
    if _turn(a, b, c) < 0:
        return False
    others = (one for one in points if one not in (a, b, c))
    return not any(min(_turn(a, b, p), _turn(b, c, p), _turn(c, a, p)) >= 0 for p in others)


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _kept(points: Outline, sign: float) -> Outline:
    """What of a convex piece lies on one side of the rabbet face."""
    kept: list[Point] = []
    for a, b in zip(points, (*points[1:], points[0]), strict=True):
        if sign * a[0] >= 0:
            kept.append(a)
        if a[0] * b[0] < 0:
            kept.append((0.0, a[1] + (b[1] - a[1]) * a[0] / (a[0] - b[0])))
    return tuple(kept)


def _area(points: Sequence[Point]) -> float:
    """The area inside a closed outline, square inches; negative where it runs clockwise."""
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2


def _real(pieces: Sequence[Outline]) -> tuple[Outline, ...]:
    return tuple(one for one in pieces if len(one) > 2 and _area(one) > TOLERANCE)
