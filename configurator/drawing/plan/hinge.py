"""The hinge where it is cut: the two leaves, the knuckle about the pin, and the mark of the pin axis."""

import math

from configurator.drawing.base.primitives import (
    Arc,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Symbol,
    rectangle,
    turned,
)
from configurator.drawing.plan.drawn_leaf import DrawnLeaf

_PIN_OF_BARREL = 0.46
"""Pin diameter of the barrel's; from memory. Drawn, not measured."""
_BEYOND_BARREL = 0.2
"""How far the cross of the pin axis runs past the barrel, inches."""
HINGE = "A-DETL-HNGE"


def frame_leaf(hung: DrawnLeaf) -> Polygon:
    """Return the leaf on the frame: in its mortise, or on its face for a half mortise or full surface."""
    return Polygon(HINGE, frame_leaf_outline(hung), "plate", "frame leaf of the hinge")


def door_leaf(hung: DrawnLeaf, angle: float) -> Polygon:
    """Return the leaf on the door, turned with it."""
    return Polygon(
        HINGE, turned(door_leaf_outline(hung), hung.pin.at, angle), "plate", "door leaf of the hinge"
    )


def frame_leaf_outline(hung: DrawnLeaf) -> tuple[Point, ...]:
    """Return the frame leaf from its back edge to the pin axis, half the open width long.

    A swing clear leaf is bent round the corner of the frame; its legs are drawn, not measured.
    """
    h, pin = hung.h, hung.pin
    if h.mounting == "swing clear":
        low = pin.y_p - h.W / 2
        return ((-h.t, low), (0.0, low), (0.0, h.t), (pin.x_p, h.t), (pin.x_p, 0.0), (-h.t, 0.0))
    if h.mounting in ("half mortise", "full surface"):
        low = 0.0 if pin.y_p - h.t >= 0 else pin.y_p - h.t
        return rectangle(pin.x_p - h.W / 2, pin.x_p, low, low + h.t)
    right = h.proud_f
    return rectangle(right - h.t, right, pin.y_p - h.W / 2, pin.y_p)


def door_leaf_outline(hung: DrawnLeaf) -> tuple[Point, ...]:
    """Return the door leaf of the closed leaf, half the open width long from the pin axis."""
    h, pin = hung.h, hung.pin
    if h.mounting == "swing clear":
        low, top, edge = pin.y_p - h.W / 2, 2 * pin.y_p, h.g_h
        inner = ((edge, top - h.t), (pin.x_p, top - h.t), (pin.x_p, top))
        return ((edge, low), (edge + h.t, low), (edge + h.t, top), *reversed(inner))
    if h.mounting in ("half surface", "full surface"):
        return rectangle(pin.x_p, pin.x_p + h.W / 2, -h.i, -h.i + h.t)
    left = h.g_h - h.proud_d
    return rectangle(left, left + h.t, pin.y_p - h.W / 2, pin.y_p)


def barrel(hung: DrawnLeaf) -> list[Primitive]:
    """Return the knuckle, the pin in it, and the cross that marks the pin axis."""
    at, radius = hung.pin.at, hung.h.d_b / 2
    return [
        Arc(HINGE, at, radius, 0.0, 2 * math.pi, "barrel", "barrel of the hinge"),
        Arc(HINGE, at, radius * _PIN_OF_BARREL, 0.0, 2 * math.pi, "paper", "hinge pin"),
        *_cross(at, radius + _BEYOND_BARREL),
        Symbol("A-ANNO-AXIS", at, "pin axis", "pin axis"),
    ]


def _cross(at: Point, arm: float) -> list[Polyline]:
    """Return the two chain lines through the pin axis."""
    x, y = at
    ends = (((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm)))
    return [Polyline("A-ANNO-AXIS", line) for line in ends]
