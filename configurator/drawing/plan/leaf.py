"""The leaf where it is cut: skins and core of hollow metal, stile and core of wood, glass in aluminum.

Drawn as such doors are commonly made; thickness, bevel and edges are measured. Everything is first the closed
leaf and is turned about the pin afterwards.
"""

import math

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, rectangle, turned
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.geometry.shapes import Shape, leaf_corners
from configurator.tables import ConstructionRow, row_of

_STILE = 1.25
"""Solid edge of a wood door, inches; common practice, no source."""
_ALUMINUM_STILE = 3.5
_GLASS = 0.25

Parts = list[Polygon | Polyline | Arc]


def closed_outline(hung: DrawnLeaf) -> Polyline:
    """Return the closed leaf, dashed."""
    return Polyline("A-DOOR-CLSD", leaf_corners(hung.h), closed=True)


def open_leaf(hung: DrawnLeaf, angle: float, thinnest: float = 0.0) -> Parts:
    """Return the leaf turned to `angle` radians with its construction; no sheet under `thinnest` inches."""
    corners = leaf_corners(hung.h)
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
