"""Which corner of one part comes to which line or corner of another, at an angle that is known already.

The geometry says when two parts first meet; here the one closed form that gave that angle is found again.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from configurator.geometry.pin import Point
from configurator.geometry.polar import TAU, PolarShape
from configurator.geometry.shapes import Shape

_SAME = 1e-7
"""Radians. What rounding leaves between an angle and the closed form that it came from lies far below."""


@dataclass(frozen=True, slots=True)
class Line:
    """An edge of a part, closed: its two ends and its outward normal's direction, radians.

    `q` is how far out it lies along the normal, from the origin of the plan, in.
    """

    start: Point
    end: Point
    alpha: float
    q: float


@dataclass(frozen=True, slots=True)
class Meeting:
    """What decides a contact: a corner, and the line or the other corner that it comes to.

    `corner` is in plan with the door closed, of whichever part; `moving_corner` says whether that is the one
    that moves. `line` is None where two corners come within `r`, in; then `other` is the standing one.
    `sense` is 1 where the part turns in, -1 where it turns out.
    """

    moving: Shape
    standing: Shape
    corner: Point
    moving_corner: bool
    line: Line | None
    other: Point | None
    r: float
    sense: int
    angle: float


def edges_of(shape: Shape) -> tuple[Line, ...]:
    """Return a shape's edges, each from the corner before; none between equal corners."""
    lines = []
    for place, (x_1, y_1) in enumerate(shape.points):
        x_0, y_0 = shape.points[place - 1]
        length = math.hypot(x_1 - x_0, y_1 - y_0)
        if length:
            n_x, n_y = (y_1 - y_0) / length, -(x_1 - x_0) / length
            alpha = math.atan2(n_y, n_x)
            lines.append(Line((x_0, y_0), (x_1, y_1), alpha, n_x * x_1 + n_y * y_1))
    return tuple(lines)


def meeting_at(
    pin: Point, moving: Iterable[PolarShape], standing: Sequence[PolarShape], angle: float
) -> Meeting | None:
    """Return what comes together at an angle, radians, of the parts given; None where nothing does."""
    found = [
        one
        for part in moving
        for still in standing
        for one in _meetings(pin, part.shape, still.shape)
        if _apart(one.angle, angle) <= _SAME
    ]
    return min(found, key=lambda one: (_rough(_apart(one.angle, angle)), one.sense < 0), default=None)


def _rough(away: float) -> int:
    """What lies nearer than rounding is the same: the first of it is taken."""
    return round(away / 1e-9)


def _apart(one: float, other: float) -> float:
    away = (one - other) % TAU
    return min(away, TAU - away)


def _meetings(pin: Point, moving: Shape, standing: Shape) -> Iterator[Meeting]:
    r = moving.radius + standing.radius
    for moving_corner, corners, edges in (
        (True, moving.points, edges_of(standing)),
        (False, standing.points, edges_of(moving)),
    ):
        for corner in corners:
            for line in edges:
                yield from _over_line(pin, moving, standing, corner, moving_corner, line, r)
    if r:
        for corner in moving.points:
            for other in standing.points:
                yield from _round_corners(pin, moving, standing, corner, other, r)


def _over_line(
    pin: Point,
    moving: Shape,
    standing: Shape,
    corner: Point,
    moving_corner: bool,
    line: Line,
    r: float,
) -> Iterator[Meeting]:
    rho, phi = polar(pin, corner)
    out = line.q + r - (math.cos(line.alpha) * pin[0] + math.sin(line.alpha) * pin[1])
    if rho == 0.0 or abs(out) > rho:
        return
    turn = 1.0 if moving_corner else -1.0
    for sense in (1, -1):
        if _is_on(pin, line, rho, out, turn * sense):
            angle = (turn * (line.alpha - phi) + sense * math.acos(out / rho)) % TAU
            yield Meeting(moving, standing, corner, moving_corner, line, None, r, sense, angle)


def _is_on(pin: Point, line: Line, rho: float, out: float, side: float) -> bool:
    """Whether a corner that comes to an edge's line does so between the edge's ends."""
    along = side * math.sqrt(rho * rho - out * out)
    ends = [
        math.cos(line.alpha) * (y - pin[1]) - math.sin(line.alpha) * (x - pin[0])
        for x, y in (line.start, line.end)
    ]
    return min(ends) - _SAME <= along <= max(ends) + _SAME


def _round_corners(
    pin: Point, moving: Shape, standing: Shape, corner: Point, other: Point, r: float
) -> Iterator[Meeting]:
    rho_m, phi_m = polar(pin, corner)
    rho_s, phi_s = polar(pin, other)
    twice = 2 * rho_m * rho_s
    cosine = (rho_m * rho_m + rho_s * rho_s - r * r) / twice if twice else 2.0
    if abs(cosine) <= 1.0:
        for sense in (1, -1):
            angle = (phi_s - phi_m - sense * math.acos(cosine)) % TAU
            yield Meeting(moving, standing, corner, True, None, other, r, sense, angle)


def polar(pin: Point, point: Point) -> tuple[float, float]:
    """Return a point's distance from the pin, in, and its direction, radians."""
    x, y = point[0] - pin[0], point[1] - pin[1]
    return math.hypot(x, y), math.atan2(y, x)
