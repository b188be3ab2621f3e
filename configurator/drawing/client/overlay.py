"""One leaf on two hinge widths, laid over one another: what both have once, what only one has hatched.

Inches, in the axes of the plan; the narrower hinge is dashed, the wider one drawn out.
"""

import math
from collections.abc import Sequence
from typing import Literal

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, Symbol, turned
from configurator.drawing.base.view import View
from configurator.drawing.client.outline_difference import left_over, round_left_over
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.frame import hinge_jamb, wall_beside
from configurator.drawing.plan.leaf import frame_leaf
from configurator.drawing.plan.standing_things import door_stop_parts, standing_things
from configurator.geometry.shapes import leaf_corners
from configurator.units import TOLERANCE

NARROWER, WIDER = "narrower", "wider"
"""The fills of what only one of the two takes up."""
_THINNEST = 1.0
_LINES = {NARROWER: "A-DOOR-NARW", WIDER: "A-DOOR"}
_HARDWARE = {NARROWER: "A-DOOR-NARW", WIDER: "A-DOOR-HDWR"}
_HATCHES = {NARROWER: "A-DOOR-PATT-NARW", WIDER: "A-DOOR-PATT-WIDE"}
_ONLY = {
    NARROWER: "where the door is on the narrower hinge only",
    WIDER: "where the door is on the wider hinge only",
}


def standing_parts(hung: DrawnLeaf, view: View) -> tuple[Primitive, ...]:
    """Return wall, what stands along it, and the frame: the same for both widths."""
    left = view.plan_window().left - 1.0
    return (
        *wall_beside(hung, left),
        *standing_things(hung),
        *door_stop_parts(hung),
        *hinge_jamb(hung, _THINNEST / view.scale),
    )


def overlaid(narrower: DrawnLeaf, wider: DrawnLeaf | None, turn: float) -> tuple[Primitive, ...]:
    """Return both leaves, each as far open as it goes up to `turn` radians, with barrels and contacts.

    The one leaf alone, without a hatch, where there is no wider one.
    """
    if wider is None:
        return (frame_leaf(narrower), *_outlines(narrower, turn, WIDER))
    return (
        frame_leaf(wider),
        *_hatched(narrower, wider, turn, NARROWER),
        *_hatched(wider, narrower, turn, WIDER),
        *_outlines(narrower, turn, NARROWER),
        *_outlines(wider, turn, WIDER),
    )


def leaves_overlaid(narrower: DrawnLeaf, wider: DrawnLeaf | None, turn: float) -> tuple[Primitive, ...]:
    """Return the two leaves with their hardware, as a picture of the whole opening shows them."""
    if wider is None:
        return _small(narrower, turn, WIDER)
    return (
        *_leaf_left_over(narrower, wider, turn, NARROWER),
        *_leaf_left_over(wider, narrower, turn, WIDER),
        *_small(narrower, turn, NARROWER),
        *_small(wider, turn, WIDER),
    )


def _small(hung: DrawnLeaf, turn: float, which: str) -> tuple[Primitive, ...]:
    return (
        *_hardware(hung, turn, which),
        _leaf(hung, turn, which),
        *_contact(hung, turn, which, "graze"),
    )


def _hatched(one: DrawnLeaf, other: DrawnLeaf, turn: float, which: str) -> list[Polygon]:
    """Return what of one leaf and its barrel the other one's do not cover."""
    found = _leaf_left_over(one, other, turn, which)
    barrel = round_left_over(one.pin.at, one.h.d_b / 2, other.pin.at, other.h.d_b / 2)
    return [*found, _piece(barrel, which)] if barrel else found


def _leaf_left_over(one: DrawnLeaf, other: DrawnLeaf, turn: float, which: str) -> list[Polygon]:
    pieces = left_over(leaf_at(one, turn), leaf_at(other, turn))
    return [_piece(piece, which) for piece in pieces]


def _piece(outline: Sequence[Point], which: str) -> Polygon:
    return Polygon(_LINES[which], tuple(outline), which, _ONLY[which], False, _HATCHES[which])


def leaf_at(hung: DrawnLeaf, turn: float) -> tuple[Point, ...]:
    """Return the outline of a leaf as far open as it goes up to `turn` radians."""
    return turned(leaf_corners(hung.h), hung.pin.at, hung.shown_at(turn))


def _leaf(hung: DrawnLeaf, turn: float, which: str) -> Polyline:
    return Polyline(_LINES[which], leaf_at(hung, turn), closed=True)


def _outlines(hung: DrawnLeaf, turn: float, which: str) -> list[Primitive]:
    """Return leaf, hardware, barrel and pin axis, and a ring where the leaf is stopped."""
    at = hung.pin.at
    found: list[Primitive] = [
        *_hardware(hung, turn, which),
        _leaf(hung, turn, which),
        Arc(_LINES[which], at, hung.h.d_b / 2, 0.0, 2 * math.pi, name=f"barrel of the {which} hinge"),
        Symbol("A-ANNO-AXIS", at, "pin axis", f"pin axis of the {which} hinge"),
    ]
    return [*found, *_contact(hung, turn, which, "contact")]


def _hardware(hung: DrawnLeaf, turn: float, which: str) -> list[Primitive]:
    """Return what projects from the leaf, as lines: what is hatched is the leaf alone."""
    layer = _HARDWARE[which]
    found: list[Primitive] = []
    for shape in hung.hardware:
        points = turned(shape.points, hung.pin.at, hung.shown_at(turn))
        name = f"{shape.kind} on the {which} hinge"
        if shape.radius:
            found.append(Arc(layer, points[0], shape.radius, 0.0, 2 * math.pi, name=name))
        else:
            found.append(Polyline(layer, points, closed=True))
    return found


def _contact(hung: DrawnLeaf, turn: float, which: str, mark: Literal["contact", "graze"]) -> list[Primitive]:
    if hung.contact is None or turn < hung.reach - TOLERANCE:
        return []
    return [Symbol("A-ANNO-REDL", hung.contact, mark, f"contact on the {which} hinge")]
