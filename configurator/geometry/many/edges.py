"""How near the long edges of many leaves pass, and how far the leaves stand out, all at once.

The same closed forms as in `edges` and `encroachment`, a column of openings at a time. Inches
and radians.
"""

import math
from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.edges import hinge_edge_shape, latch_edge_shape, strike_side
from configurator.geometry.many.contact import earliest_contacts
from configurator.geometry.many.parts import Floats, Part, least_of, most_of, part
from configurator.geometry.many.passages import nearest_passages
from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.polar import TAU
from configurator.geometry.shapes import OtherLeaf, Shape, may_meet


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
    least = nearest_passages(edge, face, np.full(count, math.pi))
    return np.where(np.isfinite(binding.angle), 0.0, least), binding.doubtful


def hinge_edges(h: Hanging, pin: Pin, leaf: Part, standing: Iterable[Part], limit: Floats) -> Floats:
    """Least distance of each leaf's hinge edge to the rabbet face, its arris and the casings, in.

    As `edges.hinge_edge_least`, up to the limit of each.
    """
    count = len(limit)
    edge = part(hinge_edge_shape(h), pin, count)
    face = part(Shape(((0.0, -h.R), (0.0, 0.0)), kind="frame"), pin, count)
    casings = [one for one in standing if one.shape.on_frame and may_meet(leaf.shape, one.shape)]
    return least_of([nearest_passages(edge, one, limit) for one in (face, *casings)])


def out_at(parts: Iterable[Part], h: Hanging, pin: Pin, theta: Floats) -> Floats:
    """How far the parts of each opening stand out from its wall face at its angle, in."""
    cosine, sine = np.cos(theta), np.sin(theta)
    out = [x * sine + y * cosine + one.radius for one in parts for x, y in one.corners]
    return np.asarray(pin.y_p + most_of(out) + h.p)


def out_most(parts: Iterable[Part], h: Hanging, pin: Pin, reach: Floats) -> Floats:
    """The most that the parts of each opening stand out anywhere from closed to its reach, in."""
    out = [_most(one, j, reach) + one.radius for one in parts for j in range(len(one.corners))]
    return np.asarray(pin.y_p + most_of(out) + h.p)


def _most(one: Part, j: int, reach: Floats) -> Floats:
    """The farthest out that one corner comes."""
    x, y = one.corners[j]
    straight = (math.pi / 2 - np.arctan2(y, x)) % TAU <= reach
    at_end = x * np.sin(reach) + y * np.cos(reach)
    return np.where(straight, one.rhos[j], np.maximum(y, at_end))
