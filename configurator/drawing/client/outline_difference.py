"""What of one outline another leaves over: the difference that is hatched where two widths are overlaid."""

import math
from collections.abc import Sequence

from configurator.drawing.base.primitives import Point
from configurator.units import TOLERANCE

Outline = tuple[Point, ...]
_STEPS = 48
"""Chords of a round outline: the hatch in it shows none of them."""


def left_over(one: Sequence[Point], other: Sequence[Point]) -> tuple[Outline, ...]:
    """Return what of a convex outline lies outside another, in convex pieces that do not overlap.

    Both run counter-clockwise.
    """
    rest: Outline = tuple(one)
    pieces: list[Outline] = []
    for a, b in zip(other, (*other[1:], other[0]), strict=True):
        pieces.append(_cut(rest, b, a))
        rest = _cut(rest, a, b)
    return tuple(piece for piece in pieces if _area(piece) > TOLERANCE)


def round_left_over(at: Point, radius: float, other_at: Point, other_radius: float) -> Outline:
    """Return what of a circle lies outside another as chords; empty where it is none, or a ring."""
    apart = math.dist(at, other_at)
    if apart <= abs(other_radius - radius):
        return ()
    if apart >= radius + other_radius:
        return _chords(at, radius, 0.0, 2 * math.pi)
    toward = math.atan2(other_at[1] - at[1], other_at[0] - at[0])
    mine = _half_angle(radius, other_radius, apart)
    its = _half_angle(other_radius, radius, apart)
    outer = _chords(at, radius, toward + mine, toward + 2 * math.pi - mine)
    inner = _chords(other_at, other_radius, toward + math.pi + its, toward + math.pi - its)
    return (*outer, *inner)


def _half_angle(radius: float, other: float, apart: float) -> float:
    """Return half of the angle under which a circle's centre sees where another one crosses it."""
    cosine = (apart * apart + radius * radius - other * other) / (2 * apart * radius)
    return math.acos(min(max(cosine, -1.0), 1.0))


def _chords(centre: Point, radius: float, first: float, last: float) -> Outline:
    turns = (first + (last - first) * step / _STEPS for step in range(_STEPS + 1))
    return tuple((centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turns)


def _cut(points: Outline, a: Point, b: Point) -> Outline:
    """Keep what of a convex outline lies to the left of the way from a to b."""
    kept: list[Point] = []
    for point, after in zip(points, (*points[1:], *points[:1]), strict=True):
        here, there = _leftward(a, b, point), _leftward(a, b, after)
        if here >= 0.0:
            kept.append(point)
        if (here > 0.0 > there) or (here < 0.0 < there):
            share = here / (here - there)
            kept.append((point[0] + share * (after[0] - point[0]), point[1] + share * (after[1] - point[1])))
    return tuple(kept)


def _leftward(a: Point, b: Point, point: Point) -> float:
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])


def _area(points: Outline) -> float:
    pairs = zip(points, (*points[1:], *points[:1]), strict=True)
    return abs(math.fsum(x_0 * y_1 - x_1 * y_0 for (x_0, y_0), (x_1, y_1) in pairs)) / 2
