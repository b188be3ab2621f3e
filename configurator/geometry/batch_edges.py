"""How near the latch edges of many leaves pass, and how far the leaves stand out, all at once.

The same closed forms as `gaps.nearest_passage` and `encroachment`, a column of openings at a time. Inches
and radians.
"""

import math
from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.batch_contact import earliest_contacts
from configurator.geometry.batch_parts import Floats, Line, Part, part
from configurator.geometry.edges import latch_edge_shape, strike_side
from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.polar import TAU
from configurator.geometry.shapes import OtherLeaf, Shape

Columns = tuple[Floats, Floats]


def latch_edges(
    h: Hanging, pin: Pin, other: OtherLeaf | None, count: int
) -> tuple[Floats, NDArray[np.bool_]]:
    """Least distance of each leaf's latch edge over a whole swing, in, 0 where it binds.

    As `edges.latch_edge_least`; the second says where a graze leaves the binding in doubt.
    """
    side = strike_side(h, other)
    edge = part(latch_edge_shape(h), pin, count)
    face = part(Shape((side.points[0], side.points[1])), pin, count)
    binding = earliest_contacts([edge], [part(side, pin, count)], count, math.pi)
    least = np.minimum(_apart(edge, face, 0.0), _apart(edge, face, math.pi))
    for j, (x_m, y_m) in enumerate(edge.corners):
        for k, (x_s, y_s) in enumerate(face.corners):
            lined = (np.arctan2(y_s, x_s) - np.arctan2(y_m, x_m)) % TAU
            least = _where_reached(least, np.abs(edge.rhos[j] - face.rhos[k]), lined)
    least = _past_lines(least, edge, face.lines, 1.0)
    least = _past_lines(least, face, edge.lines, -1.0)
    return np.where(np.isfinite(binding.angle), 0.0, least), binding.doubtful


def _where_reached(least: Floats, distance: Floats, angle: Floats) -> Floats:
    """The lesser distance where its angle lies within the swing."""
    return np.where(angle < math.pi, np.minimum(least, distance), least)


def _past_lines(least: Floats, owner: Part, lines: list[Line], turn: float) -> Floats:
    """Count in where a corner passes closest in front of an edge."""
    for j, (x, y) in enumerate(owner.corners):
        rho, phi = owner.rhos[j], np.arctan2(y, x)
        for line in lines:
            passes = (line.c <= -rho) & (line.start <= 0.0) & (line.end >= 0.0)
            distance = np.where(passes, -line.c - rho, np.inf)
            least = _where_reached(least, distance, (turn * (line.alpha - phi) + math.pi) % TAU)
    return least


def _apart(one: Part, other: Part, theta: float) -> Floats:
    """Least distance of two lines that do not cross, the first turned by theta."""
    cosine, sine = math.cos(theta), math.sin(theta)
    turned = [(x * cosine - y * sine, x * sine + y * cosine) for x, y in one.corners]
    ends = [(turned, other.corners), (other.corners, turned)]
    found = [_to_line(point, line) for points, line in ends for point in points]
    return np.asarray(np.min(found, axis=0))


def _to_line(point: Columns, line: list[Columns]) -> Floats:
    """Distance of a point from a line between two ends."""
    (x_0, y_0), (x_1, y_1) = line
    d_x, d_y = x_1 - x_0, y_1 - y_0
    share = ((point[0] - x_0) * d_x + (point[1] - y_0) * d_y) / (d_x * d_x + d_y * d_y)
    share = np.clip(share, 0.0, 1.0)
    return np.hypot(x_0 + share * d_x - point[0], y_0 + share * d_y - point[1])


def out_at(parts: Iterable[Part], h: Hanging, pin: Pin, theta: Floats) -> Floats:
    """How far the parts of each opening stand out from its wall face at its angle, in."""
    cosine, sine = np.cos(theta), np.sin(theta)
    out = [x * sine + y * cosine + one.radius for one in parts for x, y in one.corners]
    return np.asarray(pin.y_p + np.max(out, axis=0) + h.p)


def out_most(parts: Iterable[Part], h: Hanging, pin: Pin, reach: Floats) -> Floats:
    """The most that the parts of each opening stand out anywhere from closed to its reach, in."""
    out = [_most(one, j, reach) + one.radius for one in parts for j in range(len(one.corners))]
    return np.asarray(pin.y_p + np.max(out, axis=0) + h.p)


def _most(one: Part, j: int, reach: Floats) -> Floats:
    """The farthest out that one corner comes."""
    x, y = one.corners[j]
    straight = (math.pi / 2 - np.arctan2(y, x)) % TAU <= reach
    at_end = x * np.sin(reach) + y * np.cos(reach)
    return np.where(straight, one.rhos[j], np.maximum(y, at_end))
