"""The leaf and its hinge where they are cut, closed and open, and the marks along what the leaf touches.

Doors are drawn as commonly made: skins and core of hollow metal, stile and core of wood, glass in aluminum;
thickness, bevel and edges are measured. Everything is first the closed leaf and is turned about the pin
afterwards.
"""

import math
from itertools import pairwise

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
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.geometry.shapes import BUILDING, Shape
from configurator.tables import ConstructionRow, row_of
from configurator.units import CLOSED_IN, TOLERANCE

_STILE = 1.25
"""Solid edge of a wood door, inches; common practice, no source."""
_ALUMINUM_STILE = 3.5
_GLASS = 0.25

Parts = list[Polygon | Polyline | Arc]
_PIN_OF_BARREL = 0.46
"""Pin diameter of the barrel's; from memory. Drawn, not measured."""
_BEYOND_BARREL = 0.2
"""How far the cross of the pin axis runs past the barrel, inches."""
_PIVOT = 0.5
"""Spindle of a pivot, inches; from memory. Drawn, not measured."""
_USUAL_WIDTH = 4.0
_ARC_STEPS = 16
HINGE = "A-DETL-HNGE"
TOUCHING, TOUCHING_SMALL = "A-ANNO-REDL-PART", "A-ANNO-REDL-SMLL"


def leaf_outline(hung: DrawnLeaf) -> tuple[Point, ...]:
    """Return the closed leaf's outline; a rounded heel as an arc of short lines."""
    corners, r, (x, y) = leaf_corners(hung.h), hung.h.heel_radius, hung.pin.at
    if r is None:
        return corners
    around = [*corners[3:], corners[0]]
    points: list[Point] = []
    for (x_0, y_0), (x_1, y_1) in pairwise(around):
        points.append((x_0, y_0))
        if all(abs(math.dist((x, y), end) - r) <= CLOSED_IN for end in ((x_0, y_0), (x_1, y_1))):
            start, end = (math.atan2(b - y, a - x) % (2 * math.pi) for a, b in ((x_0, y_0), (x_1, y_1)))
            turns = (start + (end - start) * step / _ARC_STEPS for step in range(1, _ARC_STEPS))
            points += [(x + r * math.cos(turn), y + r * math.sin(turn)) for turn in turns]
    return (*corners[:3], *points)


def closed_outline(hung: DrawnLeaf) -> Polyline:
    """Return the closed leaf, dashed."""
    return Polyline("A-DOOR-CLSD", leaf_outline(hung), closed=True)


def open_leaf(hung: DrawnLeaf, angle: float, thinnest: float = 0.0) -> Parts:
    """Return the leaf turned to `angle` radians with its construction; no sheet under `thinnest` inches."""
    corners = leaf_outline(hung)
    pin = hung.pin.at
    parts: Parts = [
        _turned_polygon(points, fill, name, pin, angle, outlined=outlined)
        for points, fill, name, outlined in _construction(hung, corners, thinnest)
    ]
    # The outline last and heaviest: it is what the argument is about.
    parts.append(Polyline("A-DOOR", turned(corners, pin, angle), closed=True))
    return parts


def _turned_polygon(
    points: tuple[Point, ...], fill: str, name: str, pin: Point, angle: float, *, outlined: bool
) -> Polygon:
    layer = "A-DOOR-SKIN"
    return Polygon(
        layer, turned(points, pin, angle), fill, name, outlined, "A-DOOR-PATT", turned=angle, about=pin
    )


_Piece = tuple[tuple[Point, ...], str, str, bool]


def _construction(hung: DrawnLeaf, corners: tuple[Point, ...], thinnest: float) -> list[_Piece]:
    """Return the pieces of the closed leaf: outline, fill, name, and whether an edge line is drawn."""
    if not hung.construction:  # nobody said what the door is made of: show only that it is cut
        return [(corners, "core", "leaf, construction not given", False)]
    if len(corners) == 4:
        return _made_of(hung, corners, thinnest)
    # Behind a rounded heel all begins where both faces do.
    heel = max(x for x, _ in (corners[0], *corners[3:]))
    square = ((heel, corners[0][1]), corners[1], corners[2], (heel, corners[2][1]))
    (_, fill, name, outlined), *inside = _made_of(hung, square, thinnest)
    return [(corners, fill, name, outlined), *inside]


def _made_of(hung: DrawnLeaf, corners: tuple[Point, ...], thinnest: float) -> list[_Piece]:
    """Return the pieces of a leaf of four corners by what it is made of."""
    row = row_of(ConstructionRow, hung.construction)
    match row.section:
        case "steel skins":
            return _hollow_metal(corners, max(row.skin or 0.0, thinnest))
        case "aluminum and glass":
            return _aluminum(corners)
        case "wood and lead":
            return [*_wood(corners, "woodcore"), _lead(hung)]
        case "hollow wood":
            return _wood(corners, "core")
        case "wood":
            return _wood(corners, "woodcore")


def _hollow_metal(corners: tuple[Point, ...], skin: float) -> list[_Piece]:
    (x_0, y_0), (x_1, _), (x_2, y_1), _ = corners
    low, high = y_0 + skin, y_1 - skin
    core = ((x_0 + skin, low), (x_1 - skin, low), (x_2 - skin, high), (x_0 + skin, high))
    channel = rectangle(x_0 + skin, x_0 + skin + _STILE / 2, low, high)
    return [
        (corners, "steel", "leaf, hollow metal", False),
        (core, "core", "leaf, hollow metal", False),
        (channel, "core", "edge channel of the leaf", True),
    ]


def _wood(corners: tuple[Point, ...], inside: str) -> list[_Piece]:
    (x_0, y_0), (x_1, _), (x_2, y_1), _ = corners
    if x_2 - x_0 <= 2 * _STILE:
        return [(corners, "woodcore", "leaf, wood", False)]
    core = rectangle(x_0 + _STILE, x_1 - _STILE, y_0, y_1)
    stile = rectangle(x_0, x_0 + _STILE, y_0, y_1)
    return [
        (corners, "endgrain", "leaf, wood", False),
        (core, inside, "core of the leaf", True),
        (stile, "endgrain", "stile of the leaf", True),
    ]


def _aluminum(corners: tuple[Point, ...]) -> list[_Piece]:
    (x_0, y_0), (x_1, _), (x_2, y_1), _ = corners
    pieces: list[_Piece] = [(corners, "paper", "leaf, aluminum and glass", False)]
    stile = min(_ALUMINUM_STILE, (x_1 - x_0) / 3)
    middle = (y_0 + y_1) / 2
    glass = rectangle(x_0 + stile, x_1 - stile, middle - _GLASS / 2, middle + _GLASS / 2)
    left = rectangle(x_0, x_0 + stile, y_0, y_1)
    right = ((x_1 - stile, y_0), (x_1, y_0), (x_2, y_1), (x_1 - stile, y_1))
    for outline in (left, right):
        pieces.append((outline, "aluminum", "stile of the leaf", True))
    inner = rectangle(x_0 + 0.125, x_0 + stile - 0.125, y_0 + 0.125, y_1 - 0.125)
    return [*pieces, (inner, "paper", "stile of the leaf", True), (glass, "glass", "glass", True)]


def _lead(hung: DrawnLeaf) -> _Piece:
    h = hung.h
    middle = -h.i - h.T / 2
    strip = rectangle(h.g_h + _STILE, h.O - h.g_l - _STILE, middle - 0.06, middle + 0.06)
    return (strip, "lead", "sheet lead", True)


def hardware_parts(hung: DrawnLeaf, angle: float) -> Parts:
    """Return what projects from the leaf's faces, turned with it."""
    return [_hardware(shape, hung.pin.at, angle) for shape in hung.hardware]


def _hardware(shape: Shape, pin: Point, angle: float) -> Polygon | Arc:
    points = turned(shape.points, pin, angle)
    if shape.radius:
        return Arc("A-DOOR-HDWR", points[0], shape.radius, 0.0, 2 * math.pi, "hardware", shape.kind)
    return Polygon("A-DOOR-HDWR", points, "hardware", shape.kind)


def frame_leaf(hung: DrawnLeaf) -> list[Polygon]:
    """Return the leaf on the frame: in its mortise, or on its face for a half mortise or full surface.

    None of pivots, which have no leaves.
    """
    if not hung.candidate.has_barrel:
        return []
    return [Polygon(HINGE, frame_leaf_outline(hung), "plate", "frame leaf of the hinge")]


def door_leaf(hung: DrawnLeaf, angle: float) -> list[Polygon]:
    """Return the leaf on the door, turned with it; none of pivots."""
    if not hung.candidate.has_barrel:
        return []
    outline = turned(door_leaf_outline(hung), hung.pin.at, angle)
    return [Polygon(HINGE, outline, "plate", "door leaf of the hinge")]


def _leaf_width(hung: DrawnLeaf) -> float:
    """How wide the open hinge is drawn: as it is, or as the usual one where it is not sold by its width."""
    return hung.h.W or _USUAL_WIDTH


def frame_leaf_outline(hung: DrawnLeaf) -> tuple[Point, ...]:
    """Return the frame leaf from its back edge to the pin axis, half the open width long.

    A swing clear leaf is bent round the corner of the frame; its legs are drawn, not measured.
    """
    h, pin, wide = hung.h, hung.pin, _leaf_width(hung)
    if h.mounting == "swing clear":
        low = pin.y_p - wide / 2
        return ((-h.t, low), (0.0, low), (0.0, h.t), (pin.x_p, h.t), (pin.x_p, 0.0), (-h.t, 0.0))
    if h.mounting in ("half mortise", "full surface"):
        low = max(0.0, -pin.packing)
        return rectangle(pin.x_p - wide / 2, pin.x_p, low, low + h.t)
    right = h.proud_f
    return rectangle(right - h.t, right, pin.y_p - wide / 2, pin.y_p)


def door_leaf_outline(hung: DrawnLeaf) -> tuple[Point, ...]:
    """Return the door leaf of the closed leaf, half the open width long from the pin axis."""
    h, pin, wide = hung.h, hung.pin, _leaf_width(hung)
    if h.mounting == "swing clear":
        low, top, edge = pin.y_p - wide / 2, 2 * pin.y_p, h.g_h
        inner = ((edge, top - h.t), (pin.x_p, top - h.t), (pin.x_p, top))
        return ((edge, low), (edge + h.t, low), (edge + h.t, top), *reversed(inner))
    if h.mounting in ("half surface", "full surface"):
        low = -h.i + max(0.0, pin.packing)
        return rectangle(pin.x_p, pin.x_p + wide / 2, low, low + h.t)
    left = h.g_h - h.proud_d
    return rectangle(left, left + h.t, pin.y_p - wide / 2, pin.y_p)


def packing(hung: DrawnLeaf) -> list[Polygon]:
    """Return what lies under the farther-back leaf of a full surface hinge, the door closed; mostly none."""
    h, pin = hung.h, hung.pin
    if pin.packing > TOLERANCE:
        return [Polygon(HINGE, rectangle(h.g_h, pin.x_p + h.W / 2, -h.i, 0.0), "core", "packing")]
    if pin.packing < -TOLERANCE:
        return [Polygon(HINGE, rectangle(pin.x_p - h.W / 2, 0.0, 0.0, -pin.packing), "core", "packing")]
    return []


def barrel(hung: DrawnLeaf) -> list[Primitive]:
    """Return the knuckle, the pin in it, and the cross that marks the pin axis."""
    at, radius = hung.pin.at, hung.h.d_b / 2
    if not hung.candidate.has_barrel:
        return [
            Arc(HINGE, at, _PIVOT / 2, 0.0, 2 * math.pi, "paper", "spindle of the pivot"),
            *_cross(at, _PIVOT / 2 + _BEYOND_BARREL),
            Symbol("A-ANNO-AXIS", at, "pin axis", "pin axis"),
        ]
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


def touching_marks(hung: DrawnLeaf, layer: str = TOUCHING) -> list[Polyline | Arc]:
    """Return the marks along both parts with the leaf where it is stopped; none where nothing is met."""
    if hung.touching is None or hung.contact is None:
        return []
    moving, standing = hung.touching
    # Of the building only the edges at the contact are marked: the rest runs on without end, or is hidden.
    at = hung.contact if standing.kind in BUILDING else None
    there = turned(moving.points, hung.pin.at, hung.reach)
    return [
        *_part_mark(there, moving.radius, None, layer),
        *_part_mark(standing.points, standing.radius, at, layer),
    ]


def _part_mark(
    points: tuple[Point, ...], radius: float, at: Point | None, layer: str
) -> list[Polyline | Arc]:
    """Return a part's whole outline, or only its edges at a point, if there are any."""
    if radius:
        return [Arc(layer, points[0], radius, 0.0, 2 * math.pi)]
    edges = [] if at is None else _edges_at(points, at)
    return [Polyline(layer, edge) for edge in edges] or [Polyline(layer, points, closed=True)]


def _edges_at(points: tuple[Point, ...], at: Point) -> list[tuple[Point, Point]]:
    edges = zip(points, (*points[1:], points[0]), strict=True)
    return [(a, b) for a, b in edges if math.dist(at, nearest_on_outline(at, (a, b))) <= CLOSED_IN]
