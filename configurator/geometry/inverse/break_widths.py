"""The hinge widths at which what stops a leaf can change: every one in closed form.

A wider full mortise hinge only raises the pin, by half of what it adds. A leaf turned by theta then moves
along a straight line, by (sin theta, 1 - cos theta) for every inch the pin rises. So a width at which a leaf
begins or ceases to come to a wanted angle is one where, at that very angle, a corner lies on an edge (linear)
or a corner at a round's radius (quadratic); or one where the swing just grazes: a corner's circle touches an
edge's line, or two corners lie equally far from the pin. A barrel meets what it is raised into. Derived.
Inches and radians.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from configurator.geometry.pin import Hanging, Pin, Point, locate_pin
from configurator.geometry.polar import cosine_and_sine
from configurator.geometry.shapes import (
    Leaf,
    Obstruction,
    OtherLeaf,
    Shape,
    barrel_shapes,
    leaf_shape,
    may_meet,
    obstruction_shapes,
    standing_shapes,
)


@dataclass(frozen=True, slots=True)
class _Edge:
    """An edge's outward normal and how far its line lies along that from the origin, in."""

    n_x: float
    n_y: float
    q: float


def break_widths(
    hanging: Hanging,
    leaf: Leaf,
    wanted: float,
    obstructions: Iterable[Obstruction] = (),
    other: OtherLeaf | None = None,
) -> list[float]:
    """Every hinge width at which a bare leaf can begin or cease to come to a wanted angle, sorted.

    Inches and radians. Between two neighbors either every width does it or none; most of these change
    nothing. For a mounting whose pin the width moves.
    """
    pin = locate_pin(hanging)
    standing = standing_shapes(hanging, leaf, obstructions, other)
    moving = leaf_shape(hanging, leaf)
    heights: list[float] = []
    for still in (_from_pin(shape, pin) for shape in standing):
        if may_meet(moving, still):
            heights += _leaf_breaks(_from_pin(moving, pin), still, wanted)
        for barrel in barrel_shapes(hanging, pin, leaf):
            if may_meet(barrel, still):
                heights += _raised_into(barrel.radius, still)
    return sorted(hanging.W + 2 * (height - pin.y_p) for height in heights)


def _from_pin(shape: Shape, pin: Pin) -> Shape:
    """The shape counted across from the pin."""
    points = tuple((x - pin.x_p, y) for x, y in shape.points)
    return replace(shape, points=points)


def _edges(points: tuple[Point, ...]) -> list[_Edge]:
    """The edges of a polygon listed counter-clockwise; none of a single point."""
    found = []
    for j, (x_1, y_1) in enumerate(points):
        x_0, y_0 = points[j - 1]
        length = math.hypot(x_1 - x_0, y_1 - y_0)
        if length > 0.0:
            n_x, n_y = (y_1 - y_0) / length, (x_0 - x_1) / length
            found.append(_Edge(n_x, n_y, n_x * x_0 + n_y * y_0))
    return found


def _leaf_breaks(leaf: Shape, still: Shape, wanted: float) -> Iterator[float]:
    """The heights of the pin at which leaf and standing part touch: at the wanted angle or in passing."""
    r = still.radius
    leaf_edges, still_edges = _edges(leaf.points), _edges(still.points)
    yield from _touching_at(leaf, leaf_edges, still, still_edges, wanted)
    for corner in leaf.points:
        for edge in still_edges:
            yield from _circle_on_line(corner, edge, r)
        for other in still.points:
            yield from _circle_on_circle(corner, other, r)
    for corner in still.points:
        for edge in leaf_edges:
            yield from _circle_on_line(corner, edge, r)


def _touching_at(
    leaf: Shape, leaf_edges: list[_Edge], still: Shape, still_edges: list[_Edge], theta: float
) -> Iterator[float]:
    """The heights of the pin at which the parts touch with the leaf turned by theta."""
    cosine, sine = cosine_and_sine(theta)
    way = (sine, 1.0 - cosine)
    turned = [(x * cosine - y * sine, x * sine + y * cosine) for x, y in leaf.points]
    for corner in turned:
        for edge in still_edges:
            yield from _on_line(corner, way, edge, still.radius)
        if still.radius > 0.0:
            yield from _so_far_from(corner, way, still.points[0], still.radius)
    for edge in leaf_edges:
        n_x, n_y = edge.n_x * cosine - edge.n_y * sine, edge.n_x * sine + edge.n_y * cosine
        for corner in still.points:
            yield from _on_line(corner, (-way[0], -way[1]), _Edge(n_x, n_y, edge.q), still.radius)


def _on_line(corner: Point, way: Point, edge: _Edge, r: float) -> Iterator[float]:
    """Where along its way a corner lies r before an edge's line."""
    slope = edge.n_x * way[0] + edge.n_y * way[1]
    if slope != 0.0:
        yield (edge.q + r - edge.n_x * corner[0] - edge.n_y * corner[1]) / slope


def _so_far_from(corner: Point, way: Point, centre: Point, r: float) -> list[float]:
    """Where along its way a corner lies r from a centre."""
    x, y = corner[0] - centre[0], corner[1] - centre[1]
    return _roots(way[0] * way[0] + way[1] * way[1], 2 * (x * way[0] + y * way[1]), x * x + y * y - r * r)


def _circle_on_line(corner: Point, edge: _Edge, r: float) -> list[float]:
    """Heights of the pin at which a corner is as far from it as the line r before an edge."""
    (x, y), q = corner, edge.q + r
    return _roots(edge.n_x * edge.n_x, 2 * (q * edge.n_y - y), (x - q) * (x + q) + y * y)


def _circle_on_circle(one: Point, other: Point, r: float) -> list[float]:
    """Heights of the pin at which the distances of two corners from it differ by just r."""
    (x, y), (x_o, y_o) = one, other
    level = (x - x_o) * (x + x_o) + (y - y_o) * (y + y_o) - r * r
    slope = 2 * (y_o - y)
    if r == 0.0:
        return [] if slope == 0.0 else [-level / slope]
    square = 4 * r * r
    return _roots(
        slope * slope - square,
        2 * (level * slope + square * y_o),
        level * level - square * (x_o * x_o + y_o * y_o),
    )


def break_projections(
    hanging: Hanging, leaf: Leaf, wanted: float, thing: Obstruction, other: OtherLeaf | None = None
) -> list[float]:
    """Every projection of a round thing at which it can begin or cease to stop a bare leaf, sorted.

    Inches and radians. As it stands out more it moves straight out, so that it does not stop the leaf ever
    sooner: beyond the leaf's reach it stops nothing. Raises ValueError for a thing that is not round.
    """
    if thing.diameter is None:
        raise ValueError(f"A {thing.kind} that is not round only grows with its projection.")
    pin, r = locate_pin(hanging), thing.diameter / 2
    (shape,) = obstruction_shapes(hanging, thing, None, None if other is None else other.opening)
    across = shape.points[0][0] - pin.x_p
    heights = _moved_out_into(hanging, pin, leaf, wanted, across, r)
    base = 0.0 if thing.from_frame else -hanging.p
    return sorted(pin.y_p + height - base - thing.offset + r for height in heights)


def _moved_out_into(
    hanging: Hanging, pin: Pin, leaf: Leaf, wanted: float, across: float, r: float
) -> Iterator[float]:
    """Heights past the pin at which a round so far across touches the leaf closed, open or in passing."""
    points = tuple((x - pin.x_p, y - pin.y_p) for x, y in leaf_shape(hanging, leaf).points)
    reaches = [math.hypot(*corner) + d for corner in points for d in (-r, r)]
    reaches += [edge.q + r for edge in _edges(points)] + [hanging.d_b / 2 + r]
    for reach in reaches:
        yield from _roots(1.0, 0.0, across * across - reach * reach)
    for theta in (0.0, wanted):
        cosine, sine = cosine_and_sine(theta)
        turned = tuple((x * cosine - y * sine, x * sine + y * cosine) for x, y in points)
        for edge in _edges(turned):
            yield from _on_line((across, 0.0), (0.0, 1.0), edge, r)
        for corner in turned:
            yield from _so_far_from((across, 0.0), (0.0, 1.0), corner, r)


def _raised_into(radius: float, still: Shape) -> Iterator[float]:
    """Heights of the pin at which a barrel just touches a standing part."""
    r = radius + still.radius
    for edge in _edges(still.points):
        yield from _on_line((0.0, 0.0), (0.0, 1.0), edge, r)
    for corner in still.points:
        yield from _so_far_from((0.0, 0.0), (0.0, 1.0), corner, r)


def _roots(a: float, b: float, c: float) -> list[float]:
    """The real roots of a y^2 + b y + c, without cancellation."""
    if a == 0.0:
        return [] if b == 0.0 else [-c / b]
    inside = b * b - 4 * a * c
    if inside < 0.0:
        return []
    if b == 0.0:
        return [-math.sqrt(inside) / (2 * a), math.sqrt(inside) / (2 * a)]
    far = -(b + math.copysign(math.sqrt(inside), b)) / 2
    return [0.0] if far == 0.0 else [far / a, c / far]
