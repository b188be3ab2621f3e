"""How near the two long edges of a leaf pass their jambs over the whole swing. Inches and radians."""

import math
from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from configurator.geometry.gaps import nearest_passage
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.pin import TOLERANCE, Hanging, Pin
from configurator.geometry.polar import PolarShape, seen_from
from configurator.geometry.shapes import OtherLeaf, Shape
from configurator.geometry.swing import meeting_angle

#: No door edge is relieved more than this, inches per inch of thickness.
STEEPEST: Final = 0.5


def latch_edge_shape(h: Hanging) -> Shape:
    """The leaf's latch edge as a line, closed."""
    stop, pull = leaf_corners(h)[1:3]
    return Shape((stop, pull), kind="leaf")


def hinge_edge_shape(h: Hanging) -> Shape:
    """The leaf's hinge edge, closed: a line, or the corners of a rounded heel."""
    corners = leaf_corners(h)
    return Shape((*corners[3:], corners[0]), kind="leaf")


def strike_side(h: Hanging, other: OtherLeaf | None = None) -> Shape:
    """What the latch edge passes: the latch jamb as deep as its rabbet, or the other leaf where it is closed.

    Its first two corners are the face, from the pull side back.
    """
    if other is None:
        return Shape(((h.O, 0.0), (h.O, -h.R), (h.O + h.F, -h.R), (h.O + h.F, 0.0)), kind="latch jamb")
    pull, stop = -h.i, -h.i - h.T
    corners = ((h.O, pull), (h.O + other.beta * h.T, stop), (h.O + other.w, stop), (h.O + other.w, pull))
    return Shape(corners, kind="other leaf")


def latch_edge_least(h: Hanging, pin: Pin, other: OtherLeaf | None = None, free_to: float = 0.0) -> float:
    """The distance of `latch_edge_passage`."""
    return latch_edge_passage(h, pin, other, free_to)[0]


def latch_edge_passage(
    h: Hanging, pin: Pin, other: OtherLeaf | None = None, free_to: float = 0.0
) -> tuple[float, float]:
    """Least distance from the leaf's latch edge to the strike rabbet face and its arris, and its angle.

    Inches and radians; where the edge binds 0, and the angle of the first touch. Stops are left out. From
    closed to 180 degrees whatever else may stop the leaf sooner; free_to, radians, is how far the whole leaf
    is known to turn without meeting anything. While the arris governs this is hypot(O - x_p, y_p) less the
    greater rho of the two latch corners; derived. A leaf of a pair is measured to the other leaf's edge where
    that stands closed.
    """
    edge = seen_from(pin.at, latch_edge_shape(h))
    side = strike_side(h, other)
    stands = other is None or other.closed
    known_free = stands and free_to >= math.pi
    touch = None if known_free else meeting_angle(edge, seen_from(pin.at, side), math.pi)
    if touch is not None:
        return 0.0, touch
    # The face alone is measured: whatever else the jamb has lies behind it.
    face = Shape((side.points[0], side.points[1]), kind=side.kind)
    return nearest_passage(edge, seen_from(pin.at, face), math.pi)


def hinge_edge_passage(
    h: Hanging, pin: Pin, casings: Iterable[PolarShape] = (), limit: float = math.pi
) -> tuple[float, float]:
    """Least distance from the leaf's hinge edge to the jamb's rabbet face and the casings, and its angle.

    Inches, 0 where it touches; over the swing up to limit, radians, before which the leaf meets nothing.
    """
    edge = seen_from(pin.at, hinge_edge_shape(h))
    face = seen_from(pin.at, Shape(((0.0, -h.R), (0.0, 0.0)), kind="frame"))
    nearest = min(nearest_passage(edge, part, limit) for part in (face, *casings))
    return nearest if h.heel_radius is None else min(nearest, (_round_heel_gap(h, pin), 0.0))


def _round_heel_gap(h: Hanging, pin: Pin) -> float:
    """How near a heel all round about an axis in the door's thickness passes the jamb all along its swing."""
    if h.heel_radius is None or not -h.T < pin.o < 0.0 or h.heel_radius > pin.x_p - h.g_h:
        return math.inf
    return pin.x_p - h.heel_radius


def bevel_for_latch_gap(h: Hanging, pin: Pin, gap: float, other: OtherLeaf | None = None) -> float | None:
    """The least bevel, inches per inch of thickness, that leaves a wanted least gap at the latch edge.

    0 where a square edge leaves it already; None where no bevel up to STEEPEST does, because the pull-side
    corner or the closed gap governs. By halving on the exact least distance, which more bevel never lessens.
    """

    def leaves_it(beta: float) -> bool:
        return latch_edge_least(replace(h, beta=beta), pin, other) >= gap - TOLERANCE / 2

    if leaves_it(0.0):
        return 0.0
    if not leaves_it(STEEPEST):
        return None
    too_little, enough = 0.0, STEEPEST
    while enough - too_little > TOLERANCE / 4:
        middle = (too_little + enough) / 2
        too_little, enough = (too_little, middle) if leaves_it(middle) else (middle, enough)
    return enough
