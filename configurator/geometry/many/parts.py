"""The parts of many openings at once: one array element an opening, from the same builders as for one.

Everything that stands about a leaf is an upright rectangle or round, except a beveled other leaf. A number
that is the same in every opening may stay a plain number. Inches and radians.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, reduce
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.pin import TOLERANCE, Hanging, Pin
from configurator.geometry.polar import PolarShape
from configurator.geometry.shapes import (
    FAR,
    Hardware,
    Leaf,
    Obstruction,
    OtherLeaf,
    Shape,
    closed_beside,
    hardware_shape,
    hinge_jamb,
    latch_jamb,
    leaf_shape,
    stops,
)

Floats = NDArray[np.float64]


class Line(NamedTuple):
    """An edge of many openings from the pin, as `polar.PolarEdge`; alpha may be one number for them all."""

    alpha: Any
    c: Floats
    start: Floats
    end: Floats
    near: Floats
    far: Floats
    #: The least of near and the greatest of far over all the openings.
    nearest: float
    farthest: float


@dataclass(frozen=True, eq=False)
class Part:
    """One part in many openings, relative to the pin; all but its corners when it is first asked for.

    corners are x and y; there says in which openings the part is there at all; upright that it is an upright
    rectangle from its lower left corner.
    """

    shape: Shape
    corners: list[tuple[Floats, Floats]]
    radius: Floats
    there: NDArray[np.bool_]
    upright: bool = False

    @cached_property
    def rhos(self) -> list[Floats]:
        """How far each corner is from the pin."""
        return [np.hypot(x, y) for x, y in self.corners]

    @cached_property
    def phis(self) -> list[Floats]:
        """In which direction from the pin each corner is."""
        return [np.arctan2(y, x) for x, y in self.corners]

    @cached_property
    def spans(self) -> list[tuple[float, float]]:
        """The least and the greatest rho of each corner over all the openings."""
        return [(float(rho.min()), float(rho.max())) for rho in self.rhos]

    @cached_property
    def lines(self) -> list[Line]:
        """The edges; none of a round."""
        if len(self.corners) == 1:
            return []
        return (_upright_lines if self.upright else _lines)(self.corners, self.rhos)

    @cached_property
    def box(self) -> tuple[Floats, Floats, Floats, Floats]:
        """The least and the greatest x, then y, the radius counted."""
        r = self.radius
        if self.upright:
            (left, low), _, (right, high), _ = self.corners
        else:
            xs, ys = [x for x, _ in self.corners], [y for _, y in self.corners]
            left, right, low, high = least_of(xs), most_of(xs), least_of(ys), most_of(ys)
        return left - r, right + r, low - r, high + r

    @cached_property
    def near(self) -> Floats:
        """How near the part comes to the pin, less than 0 with the pin inside a round one."""
        if self.upright:
            (left, low), _, (right, high), _ = self.corners
            return np.hypot(_off(left, right), _off(low, high)) - self.radius
        nearest = least_of([line.near for line in self.lines] or self.rhos)
        if self.lines:
            nearest = np.where(least_of([line.c for line in self.lines]) >= 0.0, 0.0, nearest)
        return nearest - self.radius

    @cached_property
    def far(self) -> Floats:
        """How far the part reaches from the pin."""
        if self.upright:
            (left, low), _, (right, high), _ = self.corners
            return np.hypot(np.maximum(right, -left), np.maximum(high, -low)) + self.radius
        return most_of(self.rhos) + self.radius

    def one(self, row: int) -> PolarShape:
        """The part in one of the openings, as the single path has it, the pin at the origin."""
        points = tuple((float(x[row]), float(y[row])) for x, y in self.corners)
        shape = self.shape
        return PolarShape(
            (0.0, 0.0),
            Shape(points, float(self.radius[row]), shape.bottom, shape.top, shape.kind, shape.index),
        )


def least_of(columns: Sequence[Floats]) -> Floats:
    """The least of several columns, opening by opening."""
    return reduce(np.minimum, columns)


def most_of(columns: Sequence[Floats]) -> Floats:
    """The greatest of several columns, opening by opening."""
    return reduce(np.maximum, columns)


def _off(low: Floats, high: Floats) -> Floats:
    """How far 0 lies off the span of two columns, 0 within it."""
    return np.maximum(np.maximum(low, -high), 0.0)


#: x least, x greatest, y least, y greatest of an upright rectangle, each one number or one an opening.
Bounds = tuple[Any, Any, Any, Any]


def _full(value: Any, count: int) -> Floats:
    """One number an opening, whether or not it was given so."""
    if isinstance(value, np.ndarray) and value.shape == (count,):
        return value
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
        found.append(Line(_UPRIGHT[j], c, start, end, near, far, float(near.min()), float(far.max())))
    return found


def part(shape: Shape, pin: Pin, count: int) -> Part:
    """A shape whose numbers may be columns, seen from the pins of so many openings."""
    points = [(_full(x - pin.x_p, count), _full(y - pin.y_p, count)) for x, y in shape.points]
    return Part(shape, points, _full(shape.radius, count), _everywhere(count))


def _everywhere(count: int) -> NDArray[np.bool_]:
    return np.broadcast_to(np.True_, (count,))


def turning_parts(
    h: Hanging, pin: Pin, leaf: Leaf, hardware: Sequence[Hardware], count: int
) -> tuple[Part, list[Part]]:
    """The leaf, and apart from it its hardware."""
    fitted = [part(hardware_shape(h, item, index), pin, count) for index, item in enumerate(hardware)]
    return part(leaf_shape(h, leaf), pin, count), fitted


def _rectangle_part(
    bounds: Bounds, like: Shape, pin: Pin, count: int, across: Any, *, mirrored: bool
) -> Part:
    """An upright rectangle, mirrored to the latch side if asked; absent where it has no width or height."""
    x_0, x_1, y_0, y_1 = bounds
    there = (np.asarray(x_1 - x_0) > TOLERANCE) & (np.asarray(y_1 - y_0) > TOLERANCE)
    if mirrored:
        x_0, x_1 = across - x_1, across - x_0
    left, right = _full(x_0 - pin.x_p, count), _full(x_1 - pin.x_p, count)
    low, high = _full(y_0 - pin.y_p, count), _full(y_1 - pin.y_p, count)
    corners = [(left, low), (right, low), (right, high), (left, high)]
    return Part(like, corners, _full(0.0, count), np.broadcast_to(there, (count,)), upright=True)


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
    beside = [part(shape, pin, count) for shape in closed_beside(h, leaf, other)]
    if h.outline is not None:
        return [*found, *_outlined(h, pin, other, count, across), *beside]
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
    return found + beside


def _outlined(h: Hanging, pin: Pin, other: OtherLeaf | None, count: int, across: Any) -> list[Part]:
    """Frame, walls and stops of a jamb with an outline of its own."""
    hinge = [part(shape, pin, count) for shape in hinge_jamb(h)]
    latch = [part(shape, pin, count) for shape in latch_jamb(h, across)]
    stop = [part(shape, pin, count) for shape in stops(h, across)]
    return [*hinge, *wall_parts(h, pin, other, count), *latch, *stop]
