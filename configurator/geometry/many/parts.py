"""The parts of many openings at once: one array element an opening, from the same builders as for one.

Everything that stands about a leaf is an upright rectangle or round, except a beveled other leaf. A number
that is the same in every opening may stay a plain number. Inches and radians.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.pin import TOLERANCE, Hanging, Pin
from configurator.geometry.shapes import (
    FAR,
    Hardware,
    Leaf,
    Obstruction,
    OtherLeaf,
    Shape,
    closed_beside,
    hardware_shape,
    leaf_shape,
)

Floats = NDArray[np.float64]


class Line(NamedTuple):
    """An edge of many openings from the pin, as `polar.PolarEdge`."""

    alpha: Floats
    c: Floats
    start: Floats
    end: Floats
    near: Floats
    far: Floats
    #: The least of near and the greatest of far over all the openings.
    nearest: float
    farthest: float


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """One part in many openings, relative to the pin.

    corners are x and y; box is x least, x greatest, y least, y greatest with the radius counted; there says
    in which openings the part is there at all.
    """

    shape: Shape
    corners: list[tuple[Floats, Floats]]
    rhos: list[Floats]
    lines: list[Line]
    radius: Floats
    near: Floats
    far: Floats
    box: tuple[Floats, Floats, Floats, Floats]
    #: The least and the greatest rho of each corner over all the openings.
    spans: list[tuple[float, float]]
    there: NDArray[np.bool_]


#: x least, x greatest, y least, y greatest of an upright rectangle, each one number or one an opening.
Bounds = tuple[Any, Any, Any, Any]


def _full(value: Any, count: int) -> Floats:
    """One number an opening, whether or not it was given so."""
    return np.broadcast_to(np.asarray(value, dtype=np.float64), (count,))


def _lines(corners: list[tuple[Floats, Floats]], rhos: list[Floats]) -> list[Line]:
    """The edges between corners, each from the corner before; as `polar` has them for one opening."""
    found = []
    for j, (x_1, y_1) in enumerate(corners):
        x_0, y_0 = corners[j - 1]
        d_x, d_y = x_1 - x_0, y_1 - y_0
        length = np.hypot(d_x, d_y)
        length = np.where(length > 0.0, length, 1.0)
        n_x, n_y = d_y / length, -d_x / length
        c = n_x * x_0 + n_y * y_0
        start, end = n_x * y_0 - n_y * x_0, n_x * y_1 - n_y * x_1
        crosses = (start <= 0.0) & (end >= 0.0)
        near = np.where(crosses, np.abs(c), np.minimum(rhos[j - 1], rhos[j]))
        far = np.maximum(rhos[j - 1], rhos[j])
        alpha = np.arctan2(n_y, n_x)
        found.append(Line(alpha, c, start, end, near, far, float(near.min()), float(far.max())))
    return found


#: Normals of an upright rectangle's edges in the order of its corners, each edge from the corner before.
_UPRIGHT: Final = (math.pi, -math.pi / 2, 0.0, math.pi / 2)


def _upright_lines(corners: list[tuple[Floats, Floats]], rhos: list[Floats]) -> list[Line]:
    """`_lines` for an upright rectangle, whose edges' directions need no working out."""
    (left, low), _, (right, high), _ = corners
    runs = ((-left, -high, -low), (-low, left, right), (right, low, high), (high, -right, -left))
    found = []
    for j, (c, start, end) in enumerate(runs):
        crosses = (start <= 0.0) & (end >= 0.0)
        near = np.where(crosses, np.abs(c), np.minimum(rhos[j - 1], rhos[j]))
        far = np.maximum(rhos[j - 1], rhos[j])
        alpha = _full(_UPRIGHT[j], len(near))
        found.append(Line(alpha, c, start, end, near, far, float(near.min()), float(far.max())))
    return found


def part(shape: Shape, pin: Pin, count: int, there: Any = True, *, upright: bool = False) -> Part:
    """A shape whose numbers may be columns, seen from the pins of so many openings."""
    points = [(_full(x - pin.x_p, count), _full(y - pin.y_p, count)) for x, y in shape.points]
    rhos = [np.hypot(x, y) for x, y in points]
    lines = (_upright_lines if upright else _lines)(points, rhos) if len(points) > 1 else []
    r = _full(shape.radius, count)
    xs, ys = [x for x, _ in points], [y for _, y in points]
    box = (np.min(xs, axis=0) - r, np.max(xs, axis=0) + r, np.min(ys, axis=0) - r, np.max(ys, axis=0) + r)
    nearest = np.min([line.near for line in lines] or rhos, axis=0)
    if lines:
        nearest = np.where(np.all([line.c >= 0.0 for line in lines], axis=0), 0.0, nearest)
    spans = [(float(rho.min()), float(rho.max())) for rho in rhos]
    shown = np.broadcast_to(np.asarray(there, dtype=np.bool_), (count,))
    return Part(shape, points, rhos, lines, r, nearest - r, np.max(rhos, axis=0) + r, box, spans, shown)


def turning_parts(
    h: Hanging, pin: Pin, leaf: Leaf, hardware: Sequence[Hardware], count: int
) -> tuple[Part, list[Part]]:
    """The leaf, and apart from it its hardware."""
    fitted = [part(hardware_shape(h, item, index), pin, count) for index, item in enumerate(hardware)]
    return part(leaf_shape(h, leaf), pin, count), fitted


def _rectangle_part(
    bounds: Bounds, like: Shape, pin: Pin, count: int, across: Any, *, mirrored: bool = False
) -> Part:
    """An upright rectangle, mirrored to the latch side if asked; absent where it has no width or height."""
    x_0, x_1, y_0, y_1 = bounds
    there = (np.asarray(x_1 - x_0) > TOLERANCE) & (np.asarray(y_1 - y_0) > TOLERANCE)
    if mirrored:
        x_0, x_1 = across - x_1, across - x_0
    corners = ((x_0, y_0), (x_1, y_0), (x_1, y_1), (x_0, y_1))
    shape = Shape(corners, 0.0, like.bottom, like.top, like.kind, like.index, like.on_frame)
    return part(shape, pin, count, there, upright=True)


def _bounds(h: Hanging, thing: Obstruction) -> list[Bounds]:
    """A straight-sided obstruction on the hinge side, as `shapes` lays it out."""
    if thing.fills:
        outer = FAR if thing.projection is None else -h.p + thing.projection
        return [(-FAR, -h.F - thing.start, np.minimum(-h.p, 0.0) - h.D, outer)]
    base = 0.0 if thing.from_frame else -h.p
    near = base + thing.offset
    if thing.from_frame and not np.any(thing.offset):
        near = np.minimum(0.0, -h.p)
    outer = base + thing.offset + (0.0 if thing.projection is None else thing.projection)
    right = -h.F - thing.start
    left = -FAR if thing.length is None else right - thing.length
    beyond = (left, np.minimum(right, -h.F), near, outer)
    over_face: Bounds = (np.maximum(left, -h.F), right, np.maximum(near, 0.0), outer)
    before = (np.asarray(right) > 0.0) & (np.asarray(near) < 0.0) & (not thing.from_frame)
    if not before.any():
        return [beyond, over_face]
    over_face = (over_face[0], np.where(before, 0.0, right), *over_face[2:])
    return [beyond, over_face, (np.where(before, np.maximum(left, 0.0), right), right, near, outer)]


def _obstruction_parts(
    h: Hanging, pin: Pin, thing: Obstruction, index: int, count: int, across: Any
) -> list[Part]:
    """What one obstruction fills."""
    if thing.behind is not None:
        raise ValueError("Of many openings nothing stands behind the wall.")
    low = -math.inf if thing.bottom is None else thing.bottom
    high = math.inf if thing.top is None else thing.top
    mirrored = thing.side != "hinge"
    if thing.diameter is None:
        like = Shape((), 0.0, low, high, thing.kind, index, thing.from_frame)
        bounds = _bounds(h, thing)
        return [_rectangle_part(one, like, pin, count, across, mirrored=mirrored) for one in bounds]
    half = thing.diameter / 2
    projection = thing.diameter if thing.projection is None else thing.projection
    base = 0.0 if thing.from_frame else -h.p
    x, y = -h.F - thing.start - half, base + thing.offset + projection - half
    centre = (across - x if mirrored else x, y)
    return [part(Shape((centre,), half, low, high, thing.kind, index, thing.from_frame), pin, count)]


def _wall(h: Hanging) -> Bounds:
    """The wall beyond the frame on the hinge side."""
    return (-FAR, -h.F, -FAR if h.wall is None else -h.p - h.wall, -h.p)


def wall_parts(h: Hanging, pin: Pin, other: OtherLeaf | None, count: int) -> list[Part]:
    """The walls on both sides, as `shapes.walls`."""
    across = h.O if other is None else other.opening
    wall, like = _wall(h), Shape((), kind="wall")
    return [_rectangle_part(wall, like, pin, count, across, mirrored=side) for side in (False, True)]


def standing_parts(
    h: Hanging,
    pin: Pin,
    leaf: Leaf,
    obstructions: Sequence[Obstruction],
    other: OtherLeaf | None,
    count: int,
) -> list[Part]:
    """Everything that stands, in the order of `shapes.standing_shapes`."""
    across = h.O if other is None else other.opening
    found = []
    for index, thing in enumerate(obstructions):
        found += _obstruction_parts(h, pin, thing, index, count, across)
    deep = -np.maximum(h.D, h.R)
    jamb: Bounds = (-h.F, 0.0, deep, 0.0)
    wall = _wall(h)
    heel_stop: Bounds = (0.0, h.heel_s, -h.D, -h.R)
    stop: Bounds = (0.0, h.s, -h.D, -h.R)
    plan: list[tuple[str, Bounds, bool]] = [("frame", jamb, False), ("wall", wall, False)]
    plan += [("wall", wall, True), ("latch jamb", jamb, True)]
    plan += [("stop", heel_stop, False), ("stop", stop, True)]
    for kind, bounds, mirrored in plan:
        like = Shape((), kind=kind)
        found.append(_rectangle_part(bounds, like, pin, count, across, mirrored=mirrored))
    return found + [part(shape, pin, count) for shape in closed_beside(h, leaf, other)]
