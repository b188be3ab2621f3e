"""The parts of an elevation and their dimensions: the opening from the pull side, and hinge edges.

Inches, across from the rabbet face of the hinge jamb and up from the finished floor.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.elevation_facts import HingesSet, LeafShown, lite_shown, lock_shown
from configurator.drawing.pages.notes import ASSUMED, Marks
from configurator.drawing.plan.leaf import HINGE
from configurator.model import Hardware
from configurator.rules.filling.usual import FilledOpening
from configurator.tables import HardwareKindRow, row_of
from configurator.units import TOLERANCE

FLOOR_BEYOND = 6.0
"""How far the floor line runs past the frame, inches."""
_NAME_PLACES = (0.68, 0.74, 0.3, 0.24)
"""Where the latch edge may be named, of the leaf's height from its bottom."""
_HINGE_NAME_PLACE = 0.3
_NAME_HALF = 11.0
"""Half of what that name takes along the edge at the smallest scale that is legible, inches."""
_NAME_OFF_EDGE = 3.0
_ON_DOOR_FACE = ("half surface", "full surface")
_ON_FRAME_FACE = ("half mortise", "full surface")
_LOCK_MARK = 1.5
"""Half of the cross at the lock's middle, inches."""
_STRIKE = (1.25, 4.875)
"""Across and up, inches; from memory. Drawn, not measured."""
_PLATE_BESIDE, _PLATE_OVER = 1.0, 0.0
"""How much narrower than the door a kick plate is on each side, and how far over its bottom, inches."""
Column = tuple[Span, ...]


def elevation_parts(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> tuple[Primitive, ...]:
    """Return the opening as it is seen from the pull side, doors closed."""
    parts = [*_frame(filled), *_threshold(filled)]
    for shown in leaves:
        parts += _leaf(shown, filled)
    return (*parts, *_lock(filled, leaves))


def _threshold(filled: FilledOpening) -> list[Primitive]:
    high = filled.opening.sill.threshold_height
    if high is None:
        return []
    return [Polygon("A-DOOR-HDWR", rectangle(0.0, filled.opening_width, 0.0, high), "aluminum", "threshold")]


def _lock(filled: FilledOpening, leaves: Sequence[LeafShown]) -> list[Primitive]:
    """Mark the middle of the lock, and draw its strike on the other jamb's face side."""
    lock = lock_shown(filled, leaves)
    if lock is None:
        return []
    parts: list[Primitive] = []
    if lock.across is not None:
        x, y, half = lock.across, lock.height, _LOCK_MARK
        cross = ((x - half, y), (x + half, y)), ((x, y - half), (x, y + half))
        parts += [Polyline("A-DOOR-HDWR", line) for line in cross]
    if filled.opening.leaves != "pair":  # a pair's strike is in the other leaf's edge
        wide, high = _STRIKE
        box = rectangle(
            filled.opening_width, filled.opening_width + wide, lock.height - high / 2, lock.height + high / 2
        )
        parts.append(Polyline("A-DOOR-CLSD", box, closed=True))
    return parts


def _lite_and_plate(filled: FilledOpening, shown: LeafShown) -> list[Primitive]:
    """The glass of a leaf where its place is known, and the kick plate behind it, dashed."""
    parts: list[Primitive] = []
    if (lite := lite_shown(filled, shown)) is not None:
        parts.append(Polygon("A-DOOR-HDWR", rectangle(*lite), "glass", "lite"))
    high = filled.opening.door.kick_plate
    if high is not None and shown.leaf.name != "upper":
        ends = sorted((shown.hinge_edge, shown.latch_edge))
        bottom, inner = shown.leaf.bottom, _PLATE_BESIDE
        plate = rectangle(ends[0] + inner, ends[1] - inner, bottom + _PLATE_OVER, bottom + _PLATE_OVER + high)
        parts.append(Polyline("A-DOOR-CLSD", plate, closed=True))
    return parts


def _frame(filled: FilledOpening) -> list[Primitive]:
    """The frame's face: the head is drawn as wide as the jambs. Then the floor."""
    width, height, face = filled.opening_width, filled.opening_height, filled.frame_face
    outer = ((-face, 0.0), (-face, height + face), (width + face, height + face), (width + face, 0.0))
    inner = ((0.0, 0.0), (0.0, height), (width, height), (width, 0.0))
    floor = ((-face - FLOOR_BEYOND, 0.0), (width + face + FLOOR_BEYOND, 0.0))
    return [Polyline("A-DOOR-FRAM", outer), Polyline("A-DOOR-FRAM", inner), Polyline("A-WALL", floor)]


def _leaf(shown: LeafShown, filled: FilledOpening) -> list[Primitive]:
    leaf = shown.leaf
    outline = rectangle(shown.hinge_edge, shown.latch_edge, leaf.bottom, leaf.top)
    middle = (leaf.bottom + leaf.top) / 2
    ends = (shown.latch_edge, leaf.top), (shown.hinge_edge, middle), (shown.latch_edge, leaf.bottom)
    parts: list[Primitive] = [Polyline("A-DOOR-SIGN", ends), Polyline("A-DOOR", outline, closed=True)]
    parts += _lite_and_plate(filled, shown)
    parts += [_carried(thing, shown) for thing in shown.carried]
    if shown.hinges is not None:
        parts += _hinges(shown, shown.hinges)
    for low, high, half in shown.turns_on:
        plate = rectangle(shown.axis - half, shown.axis + half, low, high)
        parts.append(Polygon(HINGE, plate, "barrel", "what the door turns on"))
    return [*parts, *_latch_edge(shown), *_hinge_side(shown)]


def _hinge_side(shown: LeafShown) -> list[Primitive]:
    """Name the side that is hung, under the place where the dashed lines meet."""
    leaf, across = shown.leaf, shown.hinge_edge + shown.way * _NAME_OFF_EDGE
    middle = leaf.bottom + _HINGE_NAME_PLACE * leaf.height
    if middle - _NAME_HALF <= leaf.bottom:
        return []
    return [Text("A-ANNO-NOTE", (across, middle), "hinge side", 6.0, "middle", math.pi / 2)]


def _latch_edge(shown: LeafShown) -> list[Primitive]:
    """Name the latch edge along it, clear of what the leaf carries there."""
    leaf, across = shown.leaf, shown.latch_edge - shown.way * _NAME_OFF_EDGE
    taken = [(one.height - one.vertical / 2, one.height + one.vertical / 2) for one in shown.carried]
    if shown.way < 0:  # a pair's latch edges lie side by side: the active leaf's is named
        return []
    for share in _NAME_PLACES:
        middle = leaf.bottom + share * leaf.height
        low, high = middle - _NAME_HALF, middle + _NAME_HALF
        if low > leaf.bottom and high < leaf.top and not any(a < high and low < b for a, b in taken):
            return [Text("A-ANNO-NOTE", (across, middle), "latch edge", 6.0, "middle", math.pi / 2)]
    return []


def _carried(thing: Hardware, shown: LeafShown) -> Primitive:
    """Draw a piece of hardware: on the push face, where it is not seen, dashed."""
    across = shown.latch_edge - shown.way * thing.from_latch_edge
    if row_of(HardwareKindRow, thing.kind).front == "round" or thing.outline == "round":
        layer = "A-DOOR-HDWR" if thing.face == "pull" else "A-DOOR-CLSD"
        fill = "hardware" if thing.face == "pull" else None
        return Arc(layer, (across, thing.height), thing.width / 2, 0.0, 2 * math.pi, fill, thing.kind)
    half, up = thing.width / 2, thing.vertical / 2
    box = rectangle(across - half, across + half, thing.height - up, thing.height + up)
    if thing.face == "push":
        return Polyline("A-DOOR-CLSD", box, closed=True)
    return Polygon("A-DOOR-HDWR", box, "hardware", thing.kind)


def _hinges(shown: LeafShown, hinges: HingesSet) -> list[Primitive]:
    """Barrels, and the leaves of such hinges as lie on the faces. Let in, a leaf is not seen from here."""
    pin = shown.jamb + shown.way * hinges.pin
    parts: list[Primitive] = []
    for bottom, top in hinges.places:
        for way in _faces(hinges):
            plate = rectangle(pin, pin + shown.way * way * (hinges.width or 0.0) / 2, bottom, top)
            parts.append(Polygon(HINGE, plate, "plate", "hinge leaf"))
        half = hinges.barrel / 2
        parts.append(Polygon(HINGE, rectangle(pin - half, pin + half, bottom, top), "barrel", "barrel"))
    return parts


def _faces(hinges: HingesSet) -> tuple[float, ...]:
    """Return which way hinge leaves lie on a face: 1 on the door's, -1 on the frame's."""
    on_door = (1.0,) if hinges.mounting in _ON_DOOR_FACE else ()
    on_frame = (-1.0,) if hinges.mounting in _ON_FRAME_FACE else ()
    return on_door + on_frame


def edge_parts(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> tuple[Primitive, ...]:
    """Return the hinge edge of doors, pull face at 0, with the hinge leaves in it or on its face."""
    parts: list[Primitive] = []
    for shown in leaves:
        if (hinges := shown.hinges) is not None:
            reach = (0.0, hinges.let_in) if hinges.let_in else (-hinges.leaf_thickness, 0.0)
            plates = (rectangle(*reach, bottom, top) for bottom, top in hinges.places)
            parts += [Polygon(HINGE, plate, "plate", "hinge leaf") for plate in plates]
        leaf = shown.leaf
        box = rectangle(0.0, filled.thickness, leaf.bottom, leaf.top)
        parts.append(Polyline("A-DOOR", box, closed=True))
    return tuple(parts)


def frame_chain(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return the heights of the hinges on the frame, one after the other from the floor to the head."""
    levels = [(0.0, "floor")]
    for shown in sorted(leaves, key=lambda one: one.leaf.bottom):
        levels += _levels(shown)
    levels.append((filled.opening_height, "head rabbet"))
    return tuple(_chained(levels, -filled.frame_face, Marks(filled).by_rule))


def frame_running(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return the height of every hinge's centre above the floor, all from one origin."""
    across = -filled.frame_face
    return tuple(
        Span((across, 0.0), (across, centre), f"floor to centre of {name}")
        for shown in leaves
        for centre, name in _centres(shown)
    )


def frame_from_head(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return how far every hinge's top lies below the head rabbet, all from one origin."""
    across, head = -filled.frame_face, filled.opening_height
    return tuple(
        Span((across, head), (across, top), f"head rabbet to top of {name}")
        for shown in leaves
        for name, (_, top) in _numbered(shown.hinges)
    )


def edge_from_top(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return how far every hinge's top lies below the top of its own door."""
    across = filled.thickness
    return tuple(
        Span((across, shown.leaf.top), (across, top), f"top of door to top of {name}")
        for shown in leaves
        for name, (_, top) in _numbered(shown.hinges)
    )


def edge_chain(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return the heights of the hinges on the door's own edge, from its bottom to its top."""
    spans: list[Span] = []
    for shown in leaves:
        leaf = shown.leaf
        levels = [(leaf.bottom, "bottom of door"), *_levels(shown), (leaf.top, "top of door")]
        spans += _chained(levels, filled.thickness, "")
    return tuple(spans)


def edge_running(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return the height of every hinge's centre above the bottom of its own door."""
    across = filled.thickness
    return tuple(
        Span((across, shown.leaf.bottom), (across, centre), f"bottom of door to centre of {name}")
        for shown in leaves
        for centre, name in _centres(shown)
    )


def _levels(shown: LeafShown) -> list[tuple[float, str]]:
    """Return bottoms and tops of a leaf's hinges upward, with what each is called."""
    found: list[tuple[float, str]] = []
    for number, (bottom, top) in _numbered(shown.hinges):
        found += [(bottom, f"bottom of {number}"), (top, f"top of {number}")]
    return found


def _centres(shown: LeafShown) -> Iterator[tuple[float, str]]:
    for name, (bottom, top) in _numbered(shown.hinges):
        yield (bottom + top) / 2, name


def _numbered(hinges: HingesSet | None) -> Iterator[tuple[str, tuple[float, float]]]:
    if hinges is not None:
        for index, ends in enumerate(hinges.places):
            yield f"hinge {hinges.number(index)}", ends


def _chained(levels: Sequence[tuple[float, str]], across: float, mark: str) -> Iterator[Span]:
    """Yield a span between each two levels that lie apart; the outer ones, which a rule sets, are marked."""
    apart = list(pairwise(levels))
    for index, ((low, below), (high, above)) in enumerate(apart):
        if high - low > TOLERANCE:
            outer = mark if index in (0, len(apart) - 1) else ""
            yield Span((across, low), (across, high), f"{below} to {above}", outer)


def heights(filled: FilledOpening, leaves: Sequence[LeafShown]) -> tuple[tuple[Column, bool], ...]:
    """Return the columns on the latch side, from the frame outward, and whether each is running.

    What the doors carry, then undercut, doors and gaps, then the opening.
    """
    carried = (*_hardware(filled, leaves), *_set_heights(filled, leaves))
    rest = ((_doors(filled, leaves), False), (_opening(filled), False))
    return ((carried, True), *rest) if carried else rest


def _far_side(filled: FilledOpening) -> float:
    return filled.opening_width + filled.frame_face


def _hardware(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return the height of each kind of hardware above the floor; alike at one height is said once."""
    found: dict[tuple[str, float], Span] = {}
    for shown in leaves:
        for thing in shown.carried:
            across = shown.latch_edge - shown.way * thing.from_latch_edge
            span = Span(
                (_far_side(filled), 0.0), (across, thing.height), f"{thing.kind} above floor", "", thing.kind
            )
            if thing.height > TOLERANCE:
                found.setdefault((thing.kind, thing.height), span)
    return tuple(found.values())


def _set_heights(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Iterator[Span]:
    """Yield the heights of the lock's middle, of the lite's edges and of the kick plate's top."""
    side, door = _far_side(filled), filled.opening.door
    if (lock := lock_shown(filled, leaves)) is not None and (door.lock_height or door.lock_backset):
        across = filled.opening_width if lock.across is None else lock.across
        mark = ASSUMED if lock.assumed else ""
        yield Span((side, 0.0), (across, lock.height), "lock centre above floor", mark, "lock")
    if (lite := lite_shown(filled, leaves[0])) is not None:
        for level, name in ((lite[2], "bottom"), (lite[3], "top")):
            yield Span((side, 0.0), (lite[1], level), f"{name} of lite above floor", "", f"lite {name}")
    if door.kick_plate is not None:
        top = leaves[0].leaf.bottom + _PLATE_OVER + door.kick_plate
        yield Span(
            (side, 0.0), (leaves[0].latch_edge, top), "top of kick plate above floor", "", "kick plate"
        )


def _doors(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Column:
    """Return the undercut, the doors' heights and the gaps over them, one after the other."""
    across = max(max(shown.latch_edge, shown.hinge_edge) for shown in leaves)
    marks = Marks(filled)
    stacked = sorted({(shown.leaf.bottom, shown.leaf.top) for shown in leaves})
    levels = [0.0, *(level for ends in stacked for level in ends), filled.opening_height]
    names = ["undercut", "door height", "head gap"]
    paths = ["door.undercut", "", "door.head_gap"]
    if len(stacked) > 1:
        names[2:2] = ["split gap", "upper door height"]
        paths[2:2] = ["door.split_gap", ""]
    return tuple(
        Span((across, low), (across, high), name, marks.of(path))
        for (low, high), name, path in zip(pairwise(levels), names, paths, strict=True)
        if high - low > TOLERANCE
    )


def _opening(filled: FilledOpening) -> Column:
    side = _far_side(filled)
    return (Span((side, 0.0), (side, filled.opening_height), "opening height, floor to head rabbet"),)


def widths(filled: FilledOpening, leaves: Sequence[LeafShown]) -> tuple[Column, ...]:
    """Return the rows over the head, from the frame outward: doors and gaps, the opening, the frame."""
    width, height, face = filled.opening_width, filled.opening_height, filled.frame_face
    opening = Span((0.0, height), (width, height), "opening width, rabbet to rabbet")
    over_all = Span(
        (-face, height + face), (width + face, height + face), "frame overall", Marks(filled).of("frame.face")
    )
    return tuple(_across(filled, leaves)), (opening,), (over_all,)


def _across(filled: FilledOpening, leaves: Sequence[LeafShown]) -> Iterator[Span]:
    """Yield gaps and net door widths from the hinge jamb to the other one."""
    marks = Marks(filled)
    edges = sorted({edge for shown in leaves for edge in (shown.hinge_edge, shown.latch_edge)})
    points = [0.0, *edges, filled.opening_width]
    names = ["hinge-side gap", "net door width", "latch-side gap"]
    if len(edges) > 2:
        names[2:] = ["meeting gap", "net door width", "hinge-side gap"]
    top = filled.leaf_top
    for (left, right), name in zip(pairwise(points), names, strict=True):
        path = f"door.{name.replace('-side ', '_').replace(' ', '_')}"
        if right - left > TOLERANCE:
            yield Span((left, top), (right, top), name, marks.of(path))
