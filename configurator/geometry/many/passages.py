"""How near the parts of many openings pass each other over their swings, all at once.

The same closed forms as `gaps.nearest_passage` and `polar.separation`, a column of openings at a time. Inches
and radians.
"""

from collections.abc import Iterable, Iterator, Sequence
from functools import reduce
from typing import Any

import numpy as np

from configurator.geometry.many.parts import Floats, Line, Part, most_of
from configurator.geometry.pin import TOLERANCE
from configurator.geometry.polar import TAU
from configurator.geometry.shapes import may_meet

#: Corners of many openings as rho and direction, some turned.
Corners = list[tuple[Floats, Floats]]


def nearest_passages(moving: Part, standing: Part, limit: Floats) -> Floats:
    """The least distance of two parts in each opening from closed to its limit, in, never below 0.

    Infinite where the standing part is not there. The parts must not overlap before the limit.
    """
    best = np.full(len(limit), np.inf)
    for distance, angle in _moments(moving, standing):
        best = np.where(angle < limit, np.minimum(best, distance), best)
    r = moving.radius + standing.radius
    for theta in (limit, 0.0):
        best = np.minimum(best, _cores_apart(moving, standing, theta, r))
    return np.where(standing.there, np.maximum(best - r, 0.0), np.inf)


def least_passages(turning: Iterable[Part], standing: Iterable[Part], limit: Floats) -> Floats:
    """The least of all passages of what turns and what stands at its heights; infinite where none does."""
    least = np.full(len(limit), np.inf)
    for still in standing:
        for one in turning:
            # No passage can be nearer than the rings that the two parts lie in.
            ring = np.maximum(still.near - one.far, one.near - still.far)
            if may_meet(one.shape, still.shape) and (np.maximum(ring, 0.0) < least).any():
                distance = nearest_passages(one, still, limit)
                least = np.minimum(least, np.where(_rests(one, still), np.inf, distance))
    return least


def _rests(moving: Part, standing: Part) -> Any:
    """Where a closed part lies against the other leaf: a rest and no passage, as in `gaps`."""
    if standing.shape.kind != "other leaf":
        return False
    return nearest_passages(moving, standing, np.zeros(len(moving.far))) <= TOLERANCE


def _directions(part: Part) -> Corners:
    """The corners as seen from the pin."""
    return list(zip(part.rhos, part.phis, strict=True))


def _moments(moving: Part, standing: Part) -> Iterator[tuple[Floats, Floats]]:
    """Distances and angles where a corner passes closest before an edge, or in line with another corner."""
    turning, still = _directions(moving), _directions(standing)
    yield from _before_edges(turning, standing.lines, 1.0)
    yield from _before_edges(still, moving.lines, -1.0)
    for rho_m, phi_m in turning:
        for rho_s, phi_s in still:
            yield np.abs(rho_m - rho_s), (phi_s - phi_m) % TAU


def _before_edges(corners: Corners, lines: list[Line], turn: float) -> Iterator[tuple[Floats, Floats]]:
    """Where corners pass closest in front of edges; turn -1 for corners that stand."""
    for rho, phi in corners:
        for line in lines:
            passes = (line.c <= -rho) & (line.start <= 0.0) & (line.end >= 0.0)
            if passes.any():
                angle = (turn * (line.alpha - phi) + np.pi) % TAU
                yield np.where(passes, -line.c - rho, np.inf), angle


def _cores_apart(moving: Part, standing: Part, theta: Any, r: Floats) -> Floats:
    """Distance of two cores at an angle; where the parts overlap, the distance at which they would touch."""
    c, s = np.cos(theta), np.sin(theta)
    turned = [(x * c - y * s, x * s + y * c) for x, y in moving.corners]
    back = [(x * c + y * s, y * c - x * s) for x, y in standing.corners]
    (beyond, before), (beyond_back, before_back) = _at_lines(turned, standing), _at_lines(back, moving)
    apart = np.maximum(beyond, beyond_back)
    pairs = ((one, other) for one in turned for other in standing.corners)
    squares = ((x - u) ** 2 + (y - v) ** 2 for (x, y), (u, v) in pairs)
    distance = np.minimum(np.minimum(before, before_back), np.sqrt(reduce(np.minimum, squares)))
    # Points alone have no edges to be beyond: then the distance says it. Lines as in `gaps`.
    separation = np.where((apart == -np.inf) | (apart > 0.0), distance, apart) - r
    overlap = separation <= (-TOLERANCE if len(turned) == len(back) == 2 else 0.0)
    return np.where(overlap, r, distance)


def _at_lines(corners: Sequence[tuple[Floats, Floats]], part: Part) -> tuple[Any, Any]:
    """How far corners are from the edges of a part, in.

    First how far the nearest corner stands beyond an edge's line, of the edge where that is most; then the
    least distance of corners from the edges that they stand in front of.
    """
    most_beyond: Any = -np.inf
    least_before: Any = np.inf
    for line in part.lines:
        n_x, n_y = np.cos(line.alpha), np.sin(line.alpha)
        beyond: Any = np.inf
        for x, y in corners:
            out, along = x * n_x + y * n_y - line.c, y * n_x - x * n_y
            beyond = np.minimum(beyond, out)
            before = (out >= -TOLERANCE) & (along >= line.start) & (along <= line.end)
            least_before = np.where(before, np.minimum(least_before, np.maximum(out, 0.0)), least_before)
        most_beyond = np.maximum(most_beyond, beyond)
    return most_beyond, least_before


def barrel_distances(barrel: Part, standing: Part) -> Floats:
    """How far each barrel stands clear of a part, in; negative by how deep it stands in it."""
    r = barrel.radius + standing.radius
    if not standing.lines:
        return standing.rhos[0] - r
    beyond = most_of([-line.c for line in standing.lines])
    outside = standing.near + standing.radius
    return np.where(standing.there, np.where(beyond > 0.0, outside, beyond) - r, np.inf)
