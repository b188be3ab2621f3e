"""The door's hinge edge and the frame's rabbet as whoever cuts them sees them, each with its mortise."""

import math

from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Primitive, Region, rectangle
from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.elevation_strings import Marks
from configurator.drawing.pages.preparation_facts import Preparation
from configurator.drawing.plan.leaf import HINGE
from configurator.units import TOLERANCE, Display

_BEYOND = 0.6
"""How much of edge and rabbet shows past the mortise, up and down, inches."""
_OF_STOP = 0.35


def door_edge(prep: Preparation, marks: Marks, display: Display) -> Block | None:
    """Return the door's hinge edge, its pull face at 0; None where nothing is let into it."""
    deep, whole = prep.on_door, prep.hung.h.T
    if deep is None or deep <= TOLERANCE:
        return None
    box = Box(0.0, -_BEYOND, whole, prep.height + _BEYOND)
    faces = [Polyline("A-DOOR", ((x, box.bottom), (x, box.top))) for x in (0.0, whole)]
    named = (
        ("door mortise width", ""),
        ("door hinge backset", marks.of("door.hinge_backset")),
        ("door thickness", marks.of("door.thickness")),
    )
    # Seen from its hinge jamb, the pull face of a door that turns counter-clockwise is to the left.
    return _block(prep, "Door, hinge edge", box, (deep, whole), faces, named, display, prep.hung.mirrored)


def frame_rabbet(prep: Preparation, marks: Marks, display: Display) -> Block | None:
    """Return the frame's hinge rabbet, its pull-side face at 0; None where nothing is let into it."""
    deep, whole = prep.on_frame, prep.hung.h.R
    if deep is None or deep <= TOLERANCE:
        return None
    box = Box(0.0, -_BEYOND, whole + _OF_STOP, prep.height + _BEYOND)
    lines = [Polyline("A-DOOR-FRAM", ((x, box.bottom), (x, box.top))) for x in (0.0, whole)]
    resting = () if prep.hung.h.b_f is not None else ("door.hinge_backset", "frame.stop_gap")
    named = (
        ("frame mortise width", ""),
        ("frame hinge backset", marks.of(*resting)),
        ("rabbet depth", marks.of("frame.rabbet")),
    )
    return _block(
        prep, "Frame, hinge rabbet", box, (deep, whole), lines, named, display, not prep.hung.mirrored
    )


def _block(
    prep: Preparation,
    name: str,
    box: Box,
    ends: tuple[float, float],
    lines: list[Polyline],
    named: tuple[tuple[str, str], ...],
    display: Display,
    turned_round: bool,
) -> Block:
    """Return an edge with its mortise, dimensioned up its far side and across in two rows."""
    deep, whole = ends
    high = prep.height
    across = ((0.0, deep), (deep, whole), (0.0, whole))
    spans = [
        Span((left, high), (right, high), words, mark, text=display.exact(right - left))
        for (left, right), (words, mark) in zip(across, named, strict=True)
        if right - left > TOLERANCE
    ]
    upright = Span((deep, 0.0), (deep, high), "mortise height", text=display.exact(high))
    label = ((high, f"R {display.exact(prep.radius)}"),) if prep.radius else ()
    return Block(
        name=name,
        extent=box,
        parts=(mortise(deep, high, prep.radius), *lines),
        high=Side((String((upright,)),), label),
        rows=(tuple(spans[:-1]), (spans[-1],)),
        mirrored=turned_round,
        datum=f"pull side to the {'right' if turned_round else 'left'}",
    )


def mortise(deep: float, high: float, radius: float) -> Primitive:
    """Return a mortise open at 0 across, its far corners of a radius that its size has room for; inches."""
    r = min(radius, deep, high / 2)
    if r <= 0.0:
        return Polygon(HINGE, rectangle(0.0, deep, 0.0, high), "plate", "mortise")
    lower = Arc(HINGE, (deep - r, r), r, -math.pi / 2, 0.0)
    upper = Arc(HINGE, (deep - r, high - r), r, 0.0, math.pi / 2)
    straight = Polyline(HINGE, ((deep, r), (deep, high - r)))
    open_side = Polyline(HINGE, ((deep - r, high), (0.0, high), (0.0, 0.0), (deep - r, 0.0)))
    return Region(HINGE, (lower, straight, upper, open_side), "plate", "mortise")
