"""The section through the hinge jamb: frame, wall, door and hinge where a level plane cuts them."""

from dataclasses import replace

from configurator.drawing.base.primitives import Primitive
from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.plan.jamb import bands, hinge_jamb, stop_width, wall_beside
from configurator.drawing.plan.leaf import (
    barrel,
    door_leaf,
    door_leaf_outline,
    frame_leaf,
    frame_leaf_outline,
    open_leaf,
    packing,
)
from configurator.drawing.preparation.preparation_parts import cut_out, door_strings, upright
from configurator.drawing.preparation.preparation_ways import axis_across, axis_back, axis_on_door
from configurator.drawing.sections.section import (
    DOOR_SHOWN,
    WALL_SHOWN,
    Subject,
    broken_off,
    casing_ends,
    casing_parts,
    level,
    with_breaks,
)
from configurator.tables import FrameKindRow, row_of
from configurator.units import TOLERANCE

_ABOUT = 0.1
_PAST_AXIS = 0.75
"""How much of a door is shown past an axis that stands in it, inches."""
LAYER, WALL_TOO = "wall layer", ", wall"
"""How a layer's dimension is called, and what says beside the throat that the wall fills it."""


def jamb_section(subject: Subject, name: str) -> Block:
    """Return the section through the hinge jamb with its dimensions."""
    box = _box(subject)
    whole = with_breaks(box, across=True)
    rows = _rows(subject, box.top - _ABOUT)
    return Block(
        name=name,
        extent=whole,
        parts=tuple(_parts(subject, box)),
        low=Side(_wall_strings(subject, whole.left)),
        high=Side(_opening_strings(subject, whole.right)),
        rows=rows,
        mirrored=subject.hung.mirrored,
        led=len(rows),
    )


def _box(subject: Subject) -> Box:
    hung, h = subject.hung, subject.hung.h
    ends = casing_ends(subject)
    outer = min((-h.F, *(ends or ())))
    across = list(bands(hung))
    tops = [0.0, -h.i, across[0].top]
    tops += [y for part in casing_parts(subject) for _, y in part.points]
    if subject.hinge is not None:
        leaves = (*frame_leaf_outline(hung), *door_leaf_outline(hung))
        tops += [y for _, y in leaves] + [hung.pin.y_p + h.d_b / 2]
    right = max(h.s, h.g_h) + DOOR_SHOWN
    lows = []
    if subject.way is not None:
        tops.append(hung.pin.y_p + h.d_b / 2)
        right = max(right, hung.pin.x_p + _PAST_AXIS)
        lows = [] if subject.way.back is None else [subject.way.back[1] - h.d_b / 2]
    bottom = min(*lows, -h.D, -h.R - stop_width(hung), -h.i - h.T, across[-1].bottom)
    return Box(outer - WALL_SHOWN, bottom - _ABOUT, right, max(tops) + _ABOUT)


def _parts(subject: Subject, box: Box) -> list[Primitive]:
    hung, h = subject.hung, subject.hung.h
    around = Box(box.left, box.bottom - 1.0, box.right, box.top + 1.0)
    still = (*wall_beside(hung, box.left), *casing_parts(subject), *hinge_jamb(hung))
    parts: list[Primitive] = [*cut_out(still, around), *cut_out(open_leaf(hung, 0.0), around)]
    if subject.hinge is not None:
        parts += [*packing(hung), *frame_leaf(hung), *door_leaf(hung, 0.0), *barrel(hung)]
    if subject.way is not None:
        parts += [*frame_leaf(hung), *door_leaf(hung, 0.0), *barrel(hung), *axis_back(subject.way)]
    wall = list(bands(hung))
    return [
        *parts,
        broken_off((box.left, wall[-1].bottom), (box.left, wall[0].top)),
        broken_off((box.right, -h.i - h.T), (box.right, -h.i)),
    ]


def _wall_strings(subject: Subject, across: float) -> tuple[String, ...]:
    """From the wall outward: its layers; the wall in the frame; returns and throat; the jamb's depth."""
    h, marks, display = subject.hung.h, subject.marks, subject.display
    wall = list(bands(subject.hung))
    given = marks.of("wall.layers", "wall.thickness")
    layers = tuple(
        Span((across, band.bottom), (across, band.top), f"{LAYER}, {band.name}", given, band.name)
        for band in reversed(wall)
        if band.top - band.bottom > TOLERANCE and len(wall) > 1
    )
    top, bottom = wall[0].top, wall[-1].bottom
    proud, thick = marks.of("wall.frame_proud"), marks.of("wall.thickness")
    names = (
        ("frame proud of wall, push side", proud, "proud"),
        ("wall thickness", thick, "wall"),
        ("frame proud of wall", proud, "proud"),
    )
    if top > 0.0:  # the frame stands behind the wall's face
        names = (
            names[0],
            ("wall from frame face to push side", thick, ""),
            ("reveal in the wall", proud, "reveal"),
        )
        levels = (min(-h.D, bottom), bottom, 0.0, top)
    else:
        levels = (min(-h.D, bottom), bottom, top, 0.0)
    if bottom < -h.D:  # nor does it reach the other face
        names = (("wall behind the frame", thick, "behind"), (names[1][0], thick, ""), names[2])
        levels = (bottom, -h.D, *levels[2:])
    chain = upright(across, levels, names, display)
    throat = _throat(subject, across)
    if throat and [(span.a, span.b) for span in throat] == [(span.a, span.b) for span in chain]:
        middle = replace(throat[1], name="throat and wall thickness", words=f"throat{WALL_TOO}")
        chain, throat = (), (throat[0], middle, throat[2])
    deep = marks.of("frame.jamb_depth")
    depth = upright(across, (-h.D, 0.0), (("jamb depth", deep, "jamb"),), display)
    if [(span.a, span.b) for span in depth] == [(span.a, span.b) for span in chain]:
        chain = ()
        depth = (replace(depth[0], name="jamb depth and wall thickness", words=f"jamb{WALL_TOO}"),)
    return tuple(String(one) for one in (layers, chain, throat, depth) if one)


def _throat(subject: Subject, across: float) -> tuple[Span, ...]:
    """Return the returns and the throat between them; none of a frame that does not turn back."""
    back, depth = subject.filled.return_depth, subject.hung.h.D
    if back <= TOLERANCE or depth <= 2 * back:
        return ()
    turns = ("return", subject.marks.of("frame.return_depth"), "return")
    throat = ("throat", subject.marks.of("frame.jamb_depth", "frame.return_depth"), "throat")
    return upright(across, (-depth, back - depth, -back, 0.0), (turns, throat, turns), subject.display)


def _opening_strings(subject: Subject, across: float) -> tuple[String, ...]:
    """From the door outward: hinge or axis, gap and pin; the door in the rabbet; then the frame's profile."""
    h, marks = subject.hung.h, subject.marks
    profile = profile_chain(subject, across) if h.s > TOLERANCE else ()  # without a stop there is no rabbet
    own = (String(profile),) if profile else ()
    if subject.hinge is not None:
        return (*door_strings(subject.hinge, marks, subject.display, across), *own)
    if subject.way is not None:
        return (*axis_on_door(subject.way, marks, subject.display, across), *own)
    inset = marks.of("frame.rabbet", "frame.stop_gap", "door.thickness")
    names = (
        ("gap at the frame stop", marks.of("frame.stop_gap"), "at stop"),
        ("door thickness", marks.of("door.thickness"), "door"),
        ("inset", inset, "inset"),
    )
    levels = (-h.R, -h.i - h.T, -h.i, max(0.0, -h.i))
    return (String(upright(across, levels, names, subject.display)), *own)


def profile_chain(subject: Subject, across: float) -> tuple[Span, ...]:
    """Return the frame's profile through the wall: what is behind the stop, its soffit, the rabbet."""
    h, marks = subject.hung.h, subject.marks
    soffit = marks.of("frame.stop_width", "frame.jamb_depth")
    steel = row_of(FrameKindRow, subject.hung.frame_kind).material == "steel"
    names = (
        ("second rabbet" if steel else "jamb behind the stop", soffit or marks.of("frame.rabbet"), "back"),
        ("soffit" if steel else "frame stop width", soffit, "soffit" if steel else "stop"),
        ("rabbet depth", marks.of("frame.rabbet"), "rabbet"),
    )
    behind = -h.R - stop_width(subject.hung)
    return upright(across, (min(-h.D, behind), behind, -h.R, 0.0), names, subject.display)


def _rows(subject: Subject, top: float) -> tuple[tuple[Span, ...], ...]:
    """From the section upward: face and hinge-side gap; stop; the pin across; casing and reveal."""
    h, marks, display = subject.hung.h, subject.marks, subject.display
    face = ("frame face", marks.of("frame.face"), "face")
    gap = ("hinge-side gap", marks.of("door.hinge_gap"), "gap")
    stop = (("frame stop height", marks.of("frame.stop_height"), "stop"),)
    rows = [level(top, (-h.F, 0.0, h.g_h), (face, gap), display)]
    if subject.way is not None:  # the gap stands with the axis there
        rows = [level(top, (-h.F, 0.0), (face,), display), *axis_across(subject.way, marks, display, top)]
    rows.append(level(top, (0.0, h.s), stop, display))
    pin = subject.hung.pin.x_p
    if subject.hinge is not None:
        across = (("rabbet face to pin", "", "rabbet to pin"),)
        rows.append(level(top, (min(pin, 0.0), max(pin, 0.0)), across, display))
    if (ends := casing_ends(subject)) is not None:
        near, far = ends
        names = (("casing", "", "casing"), ("reveal, rabbet face to casing", "", "reveal"))
        rows.append(level(top, (far, min(near, 0.0), 0.0), names, display))
    return tuple(row for row in rows if row)
