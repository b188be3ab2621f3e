"""Upright sections: through the head, and through the door's bottom, the threshold and the floor.

Inches: across from the frame's pull-side face through the wall, the pull side to the left; up from the head
rabbet in the one, from the finished floor in the other.
"""

from collections.abc import Iterator
from dataclasses import replace

from configurator.drawing.base.primitives import Polygon, Polyline, Primitive, rectangle
from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.plan.jamb import bands, hinge_jamb, stop_width, wall_beside
from configurator.drawing.plan.leaf import open_leaf
from configurator.drawing.preparation.preparation_parts import cut_out, upright
from configurator.drawing.sections.section import (
    DOOR_SHOWN,
    WALL_SHOWN,
    ZAG,
    Subject,
    broken_off,
    casing_ends,
    casing_parts,
    level,
    turned_up,
    with_breaks,
)
from configurator.units import TOLERANCE

_ABOUT = 0.1
_FLOOR_BEYOND = 0.75
"""How far the floor runs past the wall, inches."""
_FLOOR_DEEP = 0.75
"""How much of what lies under the floor is drawn, inches."""
_ABOVE_SILL = 1.5
_SIDES = "pull side to the left"
BEYOND = "A-DOOR-SKIN"
"""The pen for what a section sees beyond the plane it cuts at."""


def _ends(subject: Subject) -> tuple[float, float]:
    """Return where frame, wall and casing begin and end across, pull side first."""
    hung = subject.hung
    wall = list(bands(hung))
    tops = [0.0, wall[0].top, -hung.h.i, *(y for one in casing_parts(subject) for _, y in one.points)]
    bottoms = [-hung.h.D, wall[-1].bottom, -hung.h.R - stop_width(hung), -hung.h.i - hung.h.T]
    return -max(tops), -min(bottoms)


def head_section(subject: Subject, name: str) -> Block:
    """Return the section through the head with its dimensions."""
    hung, h = subject.hung, subject.hung.h
    left, right = _ends(subject)
    gap = subject.filled.head_gap
    reach = max((-x for x in casing_ends(subject) or ()), default=h.F)
    up, down = max(h.F, reach) + WALL_SHOWN, max(h.s, gap) + DOOR_SHOWN
    box = Box(left - _ABOUT, -down, right + _ABOUT, up)
    still = (*wall_beside(hung, -up), *casing_parts(subject), *hinge_jamb(hung))
    door = turned_up(open_leaf(subject.square, 0.0), gap - h.g_h)
    wall = list(bands(hung))
    parts = (
        *cut_out(turned_up(still), box),
        *cut_out(door, box),
        broken_off((-wall[0].top, up), (-wall[-1].bottom, up)),
        broken_off((h.i, -down), (h.i + h.T, -down)),
    )
    marks, display = subject.marks, subject.display
    face = (("head gap", marks.of("door.head_gap"), "gap"), ("head face", marks.of("frame.face"), "face"))
    stop = (("frame stop height at the head", marks.of("frame.stop_height"), "stop"),)
    return Block(
        name=name,
        extent=with_breaks(box, across=False),
        parts=parts,
        low=Side((String(upright(box.left, (-gap, 0.0, h.F), face, display)),)),
        high=Side((String(upright(box.right, (-h.s, 0.0), stop, display)),)),
        rows=_depths(subject, up + ZAG),
        led=2,
        datum=_SIDES,
    )


def _depths(subject: Subject, top: float) -> tuple[tuple[Span, ...], ...]:
    """Return the wall where it stands in the frame, and the jamb's depth, as the head has them."""
    h, marks, display = subject.hung.h, subject.marks, subject.display
    wall = list(bands(subject.hung))
    thick = (("wall thickness at the head", marks.of("wall.thickness"), "wall"),)
    depth = (("jamb depth at the head", marks.of("frame.jamb_depth"), "jamb"),)
    rows = (
        level(top, (-wall[0].top, -wall[-1].bottom), thick, display),
        level(top, (0.0, h.D), depth, display),
    )
    # The longer farther out: its extension lines then pass the other's text by.
    return tuple(sorted((row for row in rows if row), key=lambda row: row[0].b[0] - row[0].a[0]))


def sill_section(subject: Subject, name: str) -> Block:
    """Return the section through the door's bottom and the floor with its dimensions."""
    h = subject.hung.h
    left, right = _ends(subject)
    sill, undercut = subject.filled.opening.sill, subject.filled.undercut
    finish = sill.floor_finish or 0.0
    top = undercut + _ABOVE_SILL
    box = Box(left - _FLOOR_BEYOND, -finish - _FLOOR_DEEP, right + _FLOOR_BEYOND, top)
    marks, display = subject.marks, subject.display
    inset = marks.of("frame.rabbet", "frame.stop_gap", "door.thickness")
    names = (("inset at the sill", inset, "inset"), ("door thickness", marks.of("door.thickness"), "door"))
    places = (min(0.0, h.i), max(0.0, h.i), h.i + h.T) if h.i > 0 else (h.i, h.i, h.i + h.T)
    return Block(
        name=name,
        extent=with_breaks(box, across=False),
        parts=tuple(_at_floor(subject, box)),
        low=Side(_heights(subject, box.left)),
        high=Side(labels=tuple(_labels(subject))),
        rows=(level(top + ZAG, places, names, display),),
        datum=_SIDES,
    )


def _heights(subject: Subject, across: float) -> tuple[String, ...]:
    """Return undercut, threshold and what is left over it, and the finish over the slab."""
    marks, display, sill = subject.marks, subject.display, subject.filled.opening.sill
    undercut, high = subject.filled.undercut, min(sill.threshold_height or 0.0, subject.filled.undercut)
    under = ("undercut", marks.of("door.undercut"), "undercut")
    finish = ("floor finish over the slab", "", "finish")
    strings = [upright(across, (-(sill.floor_finish or 0.0), 0.0, undercut), (finish, under), display)]
    if high > TOLERANCE:
        names = (("threshold height", "", "threshold"), ("door over threshold", "", "clear"))
        strings.insert(0, upright(across, (0.0, high, undercut), names, display))
    return tuple(String(one) for one in strings if one)


def _labels(subject: Subject) -> Iterator[tuple[float, str]]:
    sill = subject.filled.opening.sill
    yield -0.1, "finished floor"
    if sill.floor_finish:
        yield -sill.floor_finish - _FLOOR_DEEP / 2, "slab"
    if sill.threshold_height and sill.threshold_width:
        yield sill.threshold_height, f"threshold {subject.display.exact(sill.threshold_width)} wide"
    elif sill.threshold_height:
        yield sill.threshold_height, "threshold"


def _at_floor(subject: Subject, box: Box) -> Iterator[Primitive]:
    """Yield the jamb beyond, the floor, the threshold, then the door over them."""
    hung, h = subject.hung, subject.hung.h
    sill, undercut = subject.filled.opening.sill, subject.filled.undercut
    behind = h.R + stop_width(hung)
    beyond = sorted({0.0, h.R, behind, max(h.D, behind)})
    yield from (Polyline(BEYOND, ((x, 0.0), (x, box.top))) for x in beyond)
    finish = sill.floor_finish or 0.0
    if finish:
        slab = rectangle(box.left, box.right, box.bottom, -finish)
        yield Polygon("A-WALL", slab, "concrete", "slab", False, "A-WALL-PATT")
        yield Polygon("A-WALL-LAYR", rectangle(box.left, box.right, -finish, 0.0), "tile", "floor finish")
    else:
        ground = rectangle(box.left, box.right, box.bottom, 0.0)
        yield Polygon("A-WALL", ground, "solid", "floor", False, "A-WALL-PATT")
    yield Polyline("A-WALL", ((box.left, 0.0), (box.right, 0.0)))
    if sill.threshold_height:
        yield _threshold(h.i + h.T / 2, sill.threshold_width or _THRESHOLD_DRAWN, sill.threshold_height)
    raised = undercut - h.g_h
    door = turned_up(open_leaf(subject.square, 0.0))
    bottom = (replace(one, points=tuple((x, raised - y) for x, y in one.points)) for one in door)
    yield from cut_out(bottom, box)
    yield broken_off((h.i, box.top), (h.i + h.T, box.top))


_THRESHOLD_DRAWN = 5.0
"""A threshold whose width nobody gave is drawn so wide, and not dimensioned; inches."""


def _threshold(middle: float, wide: float, high: float) -> Polygon:
    """Return a saddle under the door, its edges sloped one in two."""
    slope = min(2 * high, wide / 3)
    points = (
        (middle - wide / 2, 0.0), (middle + wide / 2, 0.0),
        (middle + wide / 2 - slope, high), (middle - wide / 2 + slope, high),
    )  # fmt: skip
    return Polygon("A-DETL-MCUT", points, "aluminum", "threshold")
