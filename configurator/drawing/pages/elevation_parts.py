"""An elevation's lines: frame, floor, leaves, hinges and hardware from the pull side; and hinge edges.

Inches, across from the rabbet face of the hinge jamb and up from the finished floor.
"""

import math

from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.pages.elevation_facts import HingesSet, LeafShown
from configurator.drawing.plan.leaf import HINGE
from configurator.model import Hardware
from configurator.rules.filling.usual import FilledOpening
from configurator.tables import HardwareKindRow, row_of

FLOOR_BEYOND = 6.0
"""How far the floor line runs past the frame, inches."""
_NAME_PLACES = (0.68, 0.74, 0.3, 0.24)
"""Where the latch edge may be named, of the leaf's height from its bottom."""
_NAME_HALF = 11.0
"""Half of what that name takes along the edge at the smallest scale that is legible, inches."""
_NAME_OFF_EDGE = 3.0
_ON_DOOR_FACE = ("half surface", "full surface")
_ON_FRAME_FACE = ("half mortise", "full surface")


def elevation_parts(filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> tuple[Primitive, ...]:
    """Return the opening as it is seen from the pull side, doors closed."""
    parts = list(_frame(filled))
    for shown in leaves:
        parts += _leaf(shown)
    return tuple(parts)


def _frame(filled: FilledOpening) -> list[Primitive]:
    """The frame's face: the head is drawn as wide as the jambs. Then the floor."""
    wide, high, face = filled.opening_width, filled.opening_height, filled.frame_face
    outer = ((-face, 0.0), (-face, high + face), (wide + face, high + face), (wide + face, 0.0))
    inner = ((0.0, 0.0), (0.0, high), (wide, high), (wide, 0.0))
    floor = ((-face - FLOOR_BEYOND, 0.0), (wide + face + FLOOR_BEYOND, 0.0))
    return [Polyline("A-DOOR-FRAM", outer), Polyline("A-DOOR-FRAM", inner), Polyline("A-WALL", floor)]


def _leaf(shown: LeafShown) -> list[Primitive]:
    leaf = shown.leaf
    outline = rectangle(shown.hinge_edge, shown.latch_edge, leaf.bottom, leaf.top)
    middle = (leaf.bottom + leaf.top) / 2
    ends = (shown.latch_edge, leaf.top), (shown.hinge_edge, middle), (shown.latch_edge, leaf.bottom)
    parts: list[Primitive] = [Polyline("A-DOOR-SIGN", ends), Polyline("A-DOOR", outline, closed=True)]
    parts += [_carried(thing, shown) for thing in shown.carried]
    if shown.hinges is not None:
        parts += _hinges(shown, shown.hinges)
    return [*parts, *_latch_edge(shown)]


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
