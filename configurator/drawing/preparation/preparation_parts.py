"""What a preparation sheet draws: sections through a closed door at a hinge and at the latch edge, and edges.

The edges are the door's hinge edge and the frame's rabbet as whoever cuts them sees them, each with its
mortise. Plan axes, inches.
"""

import math
from collections.abc import Iterable
from itertools import pairwise
from typing import Protocol

from configurator.drawing.base.clip import clip_polygon, clip_polyline
from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, Region, rectangle
from configurator.drawing.base.view import Box, box_around
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.notes import ASSUMED, Marks
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.jamb import hinge_jamb
from configurator.drawing.plan.leaf import (
    HINGE,
    barrel,
    door_leaf,
    door_leaf_outline,
    frame_leaf,
    frame_leaf_outline,
    open_leaf,
    packing,
)
from configurator.drawing.preparation.preparation_facts import Preparation
from configurator.units import TOLERANCE, Display

SHOWN_OF_FRAME, SHOWN_OF_DOOR, BEHIND_STOP = 0.75, 1.15, 0.35
"""How much of frame, door and frame stop a section shows, inches."""
ABOUT = 0.1
_MORTISED_DOOR = ("full mortise", "half mortise")
_MORTISED_FRAME = ("full mortise", "half surface")
CLOSED = ", closed"
_BEYOND = 0.6
"""How much of edge and rabbet shows past the mortise, up and down, inches."""
_OF_STOP = 0.35


def section_at_hinge(prep: Preparation, marks: Marks, display: Display) -> Block:
    """Return the section at a hinge: mortises, backsets, gaps and the pin."""
    hung, h, pin = prep.hung, prep.hung.h, prep.hung.pin
    half = h.d_b / 2
    hinge = (*frame_leaf_outline(hung), *door_leaf_outline(hung))
    knuckle = ((pin.x_p - half, pin.y_p - half), (pin.x_p + half, pin.y_p + half))
    around = box_around(
        [*hinge, *knuckle, (-SHOWN_OF_FRAME, -h.R - BEHIND_STOP), (h.g_h + SHOWN_OF_DOOR, 0.0)]
    )
    box = Box(around.left, around.bottom, around.right, around.top + ABOUT)
    parts: tuple[Primitive, ...] = (*hinge_jamb(hung), *open_leaf(hung, 0.0))
    return Block(
        name=f"Section at a hinge{CLOSED}",
        extent=box,
        parts=(
            *cut_out(parts, box),
            *packing(hung),
            *frame_leaf(hung),
            *door_leaf(hung, 0.0),
            *barrel(hung),
        ),
        low=Side(_frame_strings(prep, marks, display, box.left)),
        high=Side(door_strings(prep, marks, display, box.right)),
        rows=_rows(prep, marks, display, around.top),
        mirrored=hung.mirrored,
    )


Named = tuple[str, str, str]
"""What a length is called, its mark, and the short words that stand beside its number."""


def upright(
    across: float, levels: tuple[float, ...], names: tuple[Named, ...], display: Display
) -> tuple[Span, ...]:
    """Return a chain through levels; what has no length is left out."""
    return tuple(
        Span((across, low), (across, high), name, mark, words, display.exact(high - low))
        for (low, high), (name, mark, words) in zip(pairwise(levels), names, strict=True)
        if high - low > TOLERANCE
    )


def _frame_strings(prep: Preparation, marks: Marks, display: Display, across: float) -> tuple[String, ...]:
    """From the stop out: backset, hinge leaf, pin; then the whole rabbet."""
    h, pin = prep.hung.h, prep.hung.pin
    rabbet = upright(across, (-h.R, 0.0), (("rabbet depth", marks.of("frame.rabbet"), "rabbet"),), display)
    if pin.b_f is None:
        chain = upright(across, (0.0, pin.y_p), (("frame face to pin", "", "off frame to pin"),), display)
        return String(chain), String(rabbet)
    resting = () if h.b_f is not None else ("door.hinge_backset", "frame.stop_gap")
    names = (
        ("frame hinge backset", marks.of(*resting), "backset"),
        ("hinge leaf on the frame", "", "leaf"),
        ("frame face to pin", "", "to pin"),
    )
    levels = (-h.R, pin.b_f - h.R, 0.0, pin.y_p)
    return String(upright(across, levels, names, display)), String(rabbet)


def door_strings(prep: Preparation, marks: Marks, display: Display, across: float) -> tuple[String, ...]:
    """From the stop out: gap, backset, hinge leaf, pin; then door thickness and inset."""
    h, pin = prep.hung.h, prep.hung.pin
    back, face = -h.i - h.T, -h.i
    gap = ("gap at the frame stop", marks.of("frame.stop_gap"), "at stop")
    off_face = (("door face to pin", "", "off door to pin"),)
    if pin.b is None:
        under = _packing_strings(across, prep.packing, face, display)
        chain = (
            *upright(across, (-h.R, back), (gap,), display),
            *(under or upright(across, (face, pin.y_p), off_face, display)),
        )
    else:
        levels = (-h.R, back, back + pin.b, face, pin.y_p)
        backset = ("door hinge backset", marks.of("door.hinge_backset"), "backset")
        leaf = ("hinge leaf on the door", "", "leaf")
        chain = upright(across, levels, (gap, backset, leaf, ("door face to pin", "", "to pin")), display)
    inset = marks.of("frame.rabbet", "frame.stop_gap", "door.thickness")
    door = ("door thickness", marks.of("door.thickness"), "door")
    whole = upright(across, (back, face, max(face, 0.0)), (door, ("inset", inset, "inset")), display)
    pinned = (
        () if pin.b is not None or not prep.packing else upright(across, (face, pin.y_p), off_face, display)
    )
    return tuple(String(one) for one in (chain, pinned, whole) if one)


def _packing_strings(across: float, packing: float, face: float, display: Display) -> tuple[Span, ...]:
    """Return what goes under the door leaf of a full surface hinge, from the door's face up; inches."""
    if packing <= TOLERANCE:
        return ()
    name = (("packing under the door leaf", "", "packing"),)
    return upright(across, (face, face + packing), name, display)


def _rows(prep: Preparation, marks: Marks, display: Display, top: float) -> tuple[tuple[Span, ...], ...]:
    """Mortise depths and the hinge-side gap between them, then the gap between the leaves and the pin across.

    Their extension lines begin over the knuckle, at `top` inches, so as not to run through it.
    """
    h, x_p = prep.hung.h, prep.hung.pin.x_p
    door, frame = prep.parts["mounting"] in _MORTISED_DOOR, prep.parts["mounting"] in _MORTISED_FRAME

    def level(left: float, right: float, name: str, mark: str = "", words: str = "") -> Span:
        return Span((left, top), (right, top), name, mark, words, display.exact(right - left))

    across = level(min(x_p, 0.0), max(x_p, 0.0), "rabbet face to pin", "", "rabbet to pin")
    spans = [level(0.0, h.g_h, "hinge-side gap", marks.of("door.hinge_gap"), "gap")]
    if frame:
        spans.insert(0, level(-prep.frame_depth, 0.0, "frame mortise depth", _flush(h.m_f), "deep"))
    if door:
        spans.append(level(h.g_h, h.g_h + prep.door_depth, "door mortise depth", _flush(h.m_d), "deep"))
    rows = [tuple(span for span in spans if span.b[0] - span.a[0] > TOLERANCE)]
    left, right = h.proud_f, h.g_h - h.proud_d
    if door and frame and right - left > TOLERANCE:
        words = "between leaves, pin midway" if abs(left + right - 2 * x_p) < TOLERANCE else "between leaves"
        rows.append((level(left, right, "gap between the hinge leaves", "", words),))
    elif x_p < 0.0 and not frame:
        rows[0] = (across, *rows[0])
    elif abs(x_p) > TOLERANCE:
        rows.append((across,))
    return tuple(row for row in rows if row)


def _flush(depth: float | None) -> str:
    """Return the mark of a mortise depth: assumed flush where none was given."""
    return ASSUMED if depth is None else ""


class LatchShown(Protocol):
    """What the section of a latch edge reads: the leaf, closed, and whether it meets another leaf."""

    @property
    def hung(self) -> DrawnLeaf: ...  # noqa: D102
    @property
    def other_leaf(self) -> bool: ...  # noqa: D102


def section_at_latch(prep: LatchShown, marks: Marks, display: Display) -> Block:
    """Return the section of the latch edge against its jamb or the other leaf: bevel and gap."""
    hung, h = prep.hung, prep.hung.h
    # A frame without a stop runs on behind the door.
    back = -h.R if h.s else -h.i - h.T
    box = Box(h.O - h.g_l - SHOWN_OF_DOOR, back - BEHIND_STOP, h.O + SHOWN_OF_FRAME, max(0.0, -h.i) + ABOUT)
    edge, relief = h.O - h.g_l, h.beta * h.T
    gap = "door.meeting_gap" if prep.other_leaf else "door.latch_gap"
    name = "meeting gap" if prep.other_leaf else "latch-side gap"
    spans = (
        Span(
            (edge - relief, -h.i - h.T), (edge, -h.i), "bevel", marks.of("door.latch_bevel"), "bevel",
            display.exact(relief),
        ),
        Span((edge, -h.i), (h.O, -h.i), name, marks.of(gap), "gap", display.exact(h.g_l)),
    )  # fmt: skip
    row = tuple(span for span in spans if span.b[0] - span.a[0] > TOLERANCE)
    return Block(
        name="Meeting edges" if prep.other_leaf else "Latch edge",
        extent=box,
        parts=cut_out((*_against(prep), *open_leaf(hung, 0.0)), box),
        rows=(row,) if row else (),
        mirrored=hung.mirrored,
    )


def _against(prep: LatchShown) -> tuple[Primitive, ...]:
    """Return what the latch edge closes beside: the strike jamb, or the edge of the other leaf."""
    hung, h = prep.hung, prep.hung.h
    if not prep.other_leaf:
        return mirrored(hinge_jamb(hung), h.O / 2)
    beyond = rectangle(h.O, h.O + 2 * SHOWN_OF_FRAME, -h.i - h.T, -h.i)
    return (Polygon("A-DOOR", beyond, "core", "the other leaf"),)


def door_edge(prep: Preparation, marks: Marks, display: Display) -> Block | None:
    """Return the door's hinge edge, its pull face at 0; None where nothing is let into it."""
    depth, whole = prep.on_door, prep.hung.h.T
    if depth is None or depth <= TOLERANCE:
        return None
    box = Box(0.0, -_BEYOND, whole, prep.height + _BEYOND)
    faces = [Polyline("A-DOOR", ((x, box.bottom), (x, box.top))) for x in (0.0, whole)]
    named = (
        ("door mortise width", ""),
        ("door hinge backset", marks.of("door.hinge_backset")),
        ("door thickness", marks.of("door.thickness")),
    )
    # Seen from its hinge jamb, the pull face of a door that turns counter-clockwise is to the left.
    return _block(prep, "Door, hinge edge", box, (depth, whole), faces, named, display, prep.hung.mirrored)


def frame_rabbet(prep: Preparation, marks: Marks, display: Display) -> Block | None:
    """Return the frame's hinge rabbet, its pull-side face at 0; None where nothing is let into it."""
    depth, whole = prep.on_frame, prep.hung.h.R
    if depth is None or depth <= TOLERANCE:
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
        prep, "Frame, hinge rabbet", box, (depth, whole), lines, named, display, not prep.hung.mirrored
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
    depth, whole = ends
    height = prep.height
    across = ((0.0, depth), (depth, whole), (0.0, whole))
    spans = [
        Span((left, height), (right, height), words, mark, text=display.exact(right - left))
        for (left, right), (words, mark) in zip(across, named, strict=True)
        if right - left > TOLERANCE
    ]
    upright = Span((depth, 0.0), (depth, height), "mortise height", text=display.exact(height))
    label = ((height, f"R {display.exact(prep.radius)}"),) if prep.radius else ()
    return Block(
        name=name,
        extent=box,
        parts=(mortise(depth, height, prep.radius), *lines),
        high=Side((String((upright,)),), label),
        rows=(tuple(spans[:-1]), (spans[-1],)),
        mirrored=turned_round,
        datum=f"pull side to the {'right' if turned_round else 'left'}",
    )


def mortise(depth: float, height: float, radius: float) -> Primitive:
    """Return a mortise open at 0 across, its far corners of a radius that its size has room for; inches."""
    r = min(radius, depth, height / 2)
    if r <= 0.0:
        return Polygon(HINGE, rectangle(0.0, depth, 0.0, height), "plate", "mortise")
    lower = Arc(HINGE, (depth - r, r), r, -math.pi / 2, 0.0)
    upper = Arc(HINGE, (depth - r, height - r), r, 0.0, math.pi / 2)
    straight = Polyline(HINGE, ((depth, r), (depth, height - r)))
    open_side = Polyline(HINGE, ((depth - r, height), (0.0, height), (0.0, 0.0), (depth - r, 0.0)))
    return Region(HINGE, (lower, straight, upper, open_side), "plate", "mortise")


def cut_out(parts: Iterable[Primitive], box: Box) -> tuple[Primitive, ...]:
    """Return what of the parts lies in a box of the drawing's own inches; arcs and marks are kept whole."""
    found: list[Primitive] = []
    for part in parts:
        if isinstance(part, Polygon):
            found += _polygon(part, box)
        elif isinstance(part, Polyline):
            found += _lines(part.layer, _closed(part.points) if part.closed else part.points, box)
        else:
            found.append(part)
    return tuple(found)


def mirrored(parts: Iterable[Primitive], across: float) -> tuple[Primitive, ...]:
    """Return polygons and lines mirrored left to right about an upright line, inches."""
    found: list[Primitive] = []
    for part in parts:
        assert isinstance(part, Polygon | Polyline)
        points = tuple((2 * across - x, y) for x, y in part.points)
        if isinstance(part, Polygon):
            found.append(Polygon(part.layer, points, part.fill, part.name, part.outlined, part.pattern_layer))
        else:
            found.append(Polyline(part.layer, points, part.closed))
    return tuple(found)


def _polygon(part: Polygon, box: Box) -> list[Primitive]:
    kept = clip_polygon(part.points, box)
    if not kept:
        return []
    inside: list[Primitive] = []
    if part.fill is not None:
        inside.append(
            Polygon(
                part.layer, kept, part.fill, part.name, False, part.pattern_layer, part.turned, part.about
            )
        )
    return inside + (_lines(part.layer, _closed(part.points), box) if part.outlined else [])


def _closed(points: tuple[Point, ...]) -> tuple[Point, ...]:
    return (*points, points[0])


def _lines(layer: str, points: tuple[Point, ...], box: Box) -> list[Primitive]:
    return [
        Polyline(layer, piece)
        for piece in clip_polyline(points, box)
        if any(a != b for a, b in pairwise(piece))
    ]
