"""How near a turning part passes a standing one, exactly, over a whole swing.

The least distance of two parts that stay apart lies at an end of the swing, where a corner passes closest to
an edge's line, or where two corners stand in line with the pin; those moments are closed form. Radians and
inches.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from configurator.geometry.meeting_point import nearest_points
from configurator.geometry.pin import TOLERANCE, Point
from configurator.geometry.polar import (
    TAU,
    PolarCorner,
    PolarEdge,
    PolarShape,
    core_distance,
    seen_from,
    separation,
    turned,
)
from configurator.geometry.shapes import Shape, may_meet
from configurator.geometry.swing import meeting_angle


@dataclass(frozen=True, slots=True)
class LeastGap:
    """The nearest passage: distance in inches at angle in radians, between two points in plan.

    part, of the moving side, holds point_moving; kind and index name what stands at point_standing.
    """

    distance: float
    angle: float
    point_moving: Point
    point_standing: Point
    part: str
    kind: str
    index: int | None


def _passings(
    corners: tuple[PolarCorner, ...], edges: tuple[PolarEdge, ...], turn: float
) -> list[tuple[float, float]]:
    """Distance and angle wherever a corner passes closest before an edge; turn -1 for standing corners."""
    found = []
    for rho, phi in corners:
        for alpha, c, start, end, _, _ in edges:
            if c <= -rho and start <= 0.0 <= end:
                found.append((-c - rho, (turn * (alpha - phi) + math.pi) % TAU))
    return found


def _lined_up(
    moving: tuple[PolarCorner, ...], standing: tuple[PolarCorner, ...]
) -> list[tuple[float, float]]:
    """Distance and angle wherever two corners stand in line with the pin."""
    return [(abs(rho - far), (at - phi) % TAU) for rho, phi in moving for far, at in standing]


def nearest_passage(moving: PolarShape, standing: PolarShape, limit: float) -> tuple[float, float]:
    """Least distance of two parts over the swing from closed to limit, and the angle it first occurs at.

    Inches and radians. The parts must not overlap before limit; never below 0.
    """
    r = moving.shape.radius + standing.shape.radius
    moments = _passings(moving.corners, standing.edges, 1.0)
    moments += _passings(standing.corners, moving.edges, -1.0)
    moments += _lined_up(moving.corners, standing.corners)
    best = min([moment for moment in moments if moment[1] < limit], default=(math.inf, limit))
    for theta in (limit, 0.0):
        if separation(moving, standing, theta) <= best[0] - r:
            best = min(best, (_cores_apart(moving, standing, theta), theta))
    return max(0.0, best[0] - r), best[1]


def _cores_apart(moving: PolarShape, standing: PolarShape, theta: float) -> float:
    """Distance of two cores at an angle; where the parts overlap, the distance at which they would touch.

    Two lines in one line have no normal to tell that they lie apart along it, so of lines only a crossing is
    an overlap.
    """
    lines = len(moving.corners) == len(standing.corners) == 2
    if separation(moving, standing, theta) <= (-TOLERANCE if lines else 0.0):
        return moving.shape.radius + standing.shape.radius
    return core_distance(moving, standing, theta)


def least_distance(moving: PolarShape, standing: PolarShape, limit: float) -> float:
    """Least distance of two parts over a swing in which they may meet, then 0; in."""
    if meeting_angle(moving, standing, limit) is not None:
        return 0.0
    return nearest_passage(moving, standing, limit)[0]


def polar_least_gap(
    moving: Sequence[PolarShape], standing: Sequence[PolarShape], pin: Point, limit: float
) -> LeastGap | None:
    """`least_gap` for parts already seen from the pin; what rests on the other leaf closed is left out."""
    pairs = [(_ring_gap(part, still), part, still) for still in standing for part in moving]
    near = [pair for pair in pairs if may_meet(pair[1].shape, pair[2].shape) and not _rests(*pair[1:])]
    best: tuple[float, float, PolarShape, PolarShape] | None = None
    for ring, part, still in sorted(near, key=lambda pair: pair[0]):
        if best is not None and ring >= best[0]:
            break
        distance, angle = nearest_passage(part, still, limit)
        if best is None or distance < best[0] - TOLERANCE:
            best = (distance, angle, part, still)
    return None if best is None else _described(best, pin)


def _rests(moving: PolarShape, standing: PolarShape) -> bool:
    """Whether a closed part lies against the other leaf, as under an astragal: a rest and no passage."""
    return standing.shape.kind == "other leaf" and separation(moving, standing, 0.0) <= TOLERANCE


def _ring_gap(moving: PolarShape, standing: PolarShape) -> float:
    """No passage can be nearer than the rings that the two parts lie in."""
    return max(0.0, standing.near - moving.far, moving.near - standing.far)


def _described(best: tuple[float, float, PolarShape, PolarShape], pin: Point) -> LeastGap:
    """The nearest passage with its two points moved out to the surfaces."""
    distance, angle, part, still = best
    p, q = nearest_points(turned(pin, part, angle), still.shape.points)
    cores = math.dist(p, q) or 1.0
    r_p, r_q = part.shape.radius / cores, still.shape.radius / cores
    d_x, d_y = q[0] - p[0], q[1] - p[1]
    here = (p[0] + r_p * d_x, p[1] + r_p * d_y)
    there = (q[0] - r_q * d_x, q[1] - r_q * d_y)
    return LeastGap(distance, angle, here, there, part.shape.kind, still.shape.kind, still.shape.index)


def least_gap(
    moving: Iterable[Shape], standing: Iterable[Shape], pin: Point, limit: float = math.pi
) -> LeastGap | None:
    """The least distance between a turning and a standing side from closed to limit, with where it occurs.

    Inches and radians. limit must not lie past the first contact; None where no two parts share a height.
    """
    turning = [seen_from(pin, shape) for shape in moving]
    return polar_least_gap(turning, [seen_from(pin, shape) for shape in standing], pin, limit)
