"""Sections through a closed door: at a hinge, and at the latch edge; dimensioned. Plan axes, inches."""

from itertools import pairwise

from configurator.drawing.base.primitives import Polygon, Primitive, rectangle
from configurator.drawing.base.view import Box, box_around
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.cut_out import cut_out, mirrored
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.elevation_strings import ASSUMED, Marks
from configurator.drawing.pages.preparation_facts import Preparation
from configurator.drawing.plan.frame import hinge_jamb
from configurator.drawing.plan.leaf import (
    barrel,
    door_leaf,
    door_leaf_outline,
    frame_leaf,
    frame_leaf_outline,
    open_leaf,
)
from configurator.units import TOLERANCE, Display

_SHOWN_OF_FRAME, _SHOWN_OF_DOOR, _BEHIND_STOP = 0.75, 1.15, 0.35
"""How much of frame, door and frame stop a section shows, inches."""
_ABOUT = 0.1
_MORTISED_DOOR = ("full mortise", "half mortise")
_MORTISED_FRAME = ("full mortise", "half surface")


def section_at_hinge(prep: Preparation, marks: Marks, display: Display) -> Block:
    """Return the section at a hinge: mortises, backsets, gaps and the pin."""
    hung, h, pin = prep.hung, prep.hung.h, prep.hung.pin
    half = h.d_b / 2
    hinge = (*frame_leaf_outline(hung), *door_leaf_outline(hung))
    knuckle = ((pin.x_p - half, pin.y_p - half), (pin.x_p + half, pin.y_p + half))
    around = box_around(
        [*hinge, *knuckle, (-_SHOWN_OF_FRAME, -h.R - _BEHIND_STOP), (h.g_h + _SHOWN_OF_DOOR, 0.0)]
    )
    box = Box(around.left, around.bottom, around.right, around.top + _ABOUT)
    parts: tuple[Primitive, ...] = (*hinge_jamb(hung), *open_leaf(hung, 0.0))
    return Block(
        name="Section at a hinge, closed",
        extent=box,
        parts=(*cut_out(parts, box), frame_leaf(hung), door_leaf(hung, 0.0), *barrel(hung)),
        low=Side(_frame_strings(prep, marks, display, box.left)),
        high=Side(_door_strings(prep, marks, display, box.right)),
        rows=_rows(prep, marks, display, around.top),
        mirrored=hung.mirrored,
    )


_Named = tuple[str, str, str]
"""What a length is called, its mark, and the short words that stand beside its number."""


def _upright(
    across: float, levels: tuple[float, ...], names: tuple[_Named, ...], display: Display
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
    rabbet = _upright(across, (-h.R, 0.0), (("rabbet depth", marks.of("frame.rabbet"), "rabbet"),), display)
    if pin.b_f is None:
        chain = _upright(across, (0.0, pin.y_p), (("frame face to pin", "", "to pin"),), display)
        return String(chain), String(rabbet)
    resting = () if h.b_f is not None else ("door.hinge_backset", "frame.stop_gap")
    names = (
        ("frame hinge backset", marks.of(*resting), "backset"),
        ("hinge leaf on the frame", "", "leaf"),
        ("frame face to pin", "", "to pin"),
    )
    levels = (-h.R, pin.b_f - h.R, 0.0, pin.y_p)
    return String(_upright(across, levels, names, display)), String(rabbet)


def _door_strings(prep: Preparation, marks: Marks, display: Display, across: float) -> tuple[String, ...]:
    """From the stop out: gap, backset, hinge leaf, pin; then door thickness and inset."""
    h, pin = prep.hung.h, prep.hung.pin
    back, face = -h.i - h.T, -h.i
    gap = ("gap at the frame stop", marks.of("frame.stop_gap"), "at stop")
    if pin.b is None:
        levels: tuple[float, ...] = (-h.R, back)
        names: tuple[_Named, ...] = (gap,)
    else:
        levels = (-h.R, back, back + pin.b, face, pin.y_p)
        backset = ("door hinge backset", marks.of("door.hinge_backset"), "backset")
        leaf = ("hinge leaf on the door", "", "leaf")
        names = (gap, backset, leaf, ("door face to pin", "", "to pin"))
    chain = _upright(across, levels, names, display)
    inset = marks.of("frame.rabbet", "frame.stop_gap", "door.thickness")
    door = ("door thickness", marks.of("door.thickness"), "door")
    whole = _upright(across, (back, face, max(face, 0.0)), (door, ("inset", inset, "inset")), display)
    return tuple(String(one) for one in (chain, whole) if one)


def _rows(prep: Preparation, marks: Marks, display: Display, top: float) -> tuple[tuple[Span, ...], ...]:
    """Mortise depths and the hinge-side gap between them, then the gap between the hinge leaves.

    Their extension lines begin over the knuckle, at `top` inches, so as not to run through it.
    """
    h = prep.hung.h
    door, frame = prep.parts["mounting"] in _MORTISED_DOOR, prep.parts["mounting"] in _MORTISED_FRAME

    def level(left: float, right: float, name: str, mark: str = "", words: str = "") -> Span:
        return Span((left, top), (right, top), name, mark, words, display.exact(right - left))

    spans = [level(0.0, h.g_h, "hinge-side gap", marks.of("door.hinge_gap"), "gap")]
    if frame:
        spans.insert(0, level(-prep.frame_depth, 0.0, "frame mortise depth", _flush(h.m_f), "deep"))
    if door:
        spans.append(level(h.g_h, h.g_h + prep.door_depth, "door mortise depth", _flush(h.m_d), "deep"))
    rows = [tuple(span for span in spans if span.b[0] - span.a[0] > TOLERANCE)]
    left, right = h.proud_f, h.g_h - h.proud_d
    if door and frame and right - left > TOLERANCE:
        rows.append((level(left, right, "gap between the hinge leaves", "", "between leaves"),))
    return tuple(row for row in rows if row)


def _flush(depth: float | None) -> str:
    """Return the mark of a mortise depth: assumed flush where none was given."""
    return ASSUMED if depth is None else ""


def section_at_latch(prep: Preparation, marks: Marks, display: Display) -> Block:
    """Return the section of the latch edge against its jamb or the other leaf: bevel and gap."""
    hung, h = prep.hung, prep.hung.h
    box = Box(
        h.O - h.g_l - _SHOWN_OF_DOOR, -h.R - _BEHIND_STOP, h.O + _SHOWN_OF_FRAME, max(0.0, -h.i) + _ABOUT
    )
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


def _against(prep: Preparation) -> tuple[Primitive, ...]:
    """Return what the latch edge closes beside: the strike jamb, or the edge of the other leaf."""
    hung, h = prep.hung, prep.hung.h
    if not prep.other_leaf:
        return mirrored(hinge_jamb(hung), h.O / 2)
    beyond = rectangle(h.O, h.O + 2 * _SHOWN_OF_FRAME, -h.i - h.T, -h.i)
    return (Polygon("A-DOOR", beyond, "core", "the other leaf"),)
