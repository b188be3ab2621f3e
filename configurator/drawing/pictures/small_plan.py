"""A plan of a whole opening in few lines: walls, jambs, the leaf closed and open, and the arc between."""

import math
from dataclasses import replace

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, rectangle, turned
from configurator.drawing.base.view import Box
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.geometry.leaf_corners import leaf_corners

BESIDE = 9.0
"""Inches of wall shown beyond the frame."""
Simple = Polygon | Polyline | Arc


def small_plan(hung: DrawnLeaf, angle: float) -> tuple[Simple, ...]:
    """Return the plan with the leaf open to `angle` radians, in the axes of the geometry."""
    corners, pin = leaf_corners(hung.h), hung.pin.at
    return (
        *_walls(hung),
        *_jambs(hung),
        Polyline("A-DOOR-CLSD", corners, closed=True),
        swing_arc(hung, angle),
        *(Polygon("A-DOOR-HDWR", turned(one.points, pin, angle), "hardware") for one in hung.hardware),
        Polygon("A-DOOR", turned(corners, pin, angle), "door", "leaf"),
        Arc("A-DETL-HNGE", pin, max(hung.h.d_b, 1.2) / 2, 0.0, 2 * math.pi, "barrel", "barrel"),
    )


def swing_arc(hung: DrawnLeaf, angle: float, layer: str = "A-DOOR-SWNG") -> Arc:
    """Return the arc of the lock edge from closed to `angle` radians."""
    (x, y), (x_p, y_p) = leaf_corners(hung.h)[2], hung.pin.at
    start = math.atan2(y - y_p, x - x_p)
    return Arc(layer, hung.pin.at, math.hypot(x - x_p, y - y_p), start, start + angle)


def _walls(hung: DrawnLeaf) -> list[Polygon]:
    top, low, face, wide = hung.wall_face, hung.wall_face - hung.wall_depth, hung.h.F, hung.opening
    spans = ((-face - BESIDE, -face), (wide + face, wide + face + BESIDE))
    return [Polygon("A-WALL-LAYR", rectangle(*span, low, top), "poche", "wall") for span in spans]


def _jambs(hung: DrawnLeaf) -> list[Polygon]:
    h = hung.h
    points = ((-h.F, -h.D), (h.s, -h.D), (h.s, -h.R), (0.0, -h.R), (0.0, 0.0), (-h.F, 0.0))
    near = Polygon("A-DOOR-FRAM", points, "plate", "frame")
    far = tuple((hung.opening - x, y) for x, y in points)
    return [near, replace(near, points=far)]


def small_extent(hung: DrawnLeaf, angle: float) -> Box:
    """Return what such a plan covers, inches, with the leaf anywhere from closed to `angle` radians."""
    h, radius = hung.h, swing_arc(hung, angle).radius
    left = min(-h.F - BESIDE, hung.pin.x_p + radius * math.cos(max(angle, math.pi / 2)) - 3.0)
    top = hung.pin.y_p + radius * math.sin(min(angle, math.pi / 2)) + 2.0
    return Box(left, min(-h.D, hung.wall_face - hung.wall_depth) - 2.0, hung.opening + h.F + BESIDE, top)


def mapped(item: Simple, across: float, up: float, about: Point = (0.0, 0.0)) -> Simple:
    """Return a part mirrored across (-1) or not (1), and up or not, about a point."""
    x_0, y_0 = about

    def moved(point: Point) -> Point:
        return x_0 + across * (point[0] - x_0), y_0 + up * (point[1] - y_0)

    if not isinstance(item, Arc):
        return replace(item, points=tuple(map(moved, item.points)))
    start, end = item.start, item.end
    if across < 0:
        start, end = math.pi - end, math.pi - start
    if up < 0:
        start, end = -end, -start
    return replace(item, centre=moved(item.centre), start=start, end=end)
