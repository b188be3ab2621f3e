"""The parts of a plan as convex shapes: what turns with the leaf and what stands about it.

A shape is a convex core and a radius around it: a polygon has radius 0, a round part is one point and its
radius, so that every contact is core to core at the sum of two radii. Outlines that are not convex become
several shapes of one kind. Inches; axes as in `pin`.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.outline import convex_pieces
from configurator.geometry.pin import TOLERANCE, Hanging, Pin, Point
from configurator.units import format_size

#: Farther than anything reaches, in; walls and endless trim end here. Exact in binary.
FAR: Final = 65536.0

#: What stands by itself, as against the things in the list of obstructions: kinds of a Shape.
BUILDING: Final = frozenset({"wall", "frame", "latch jamb", "stop"})


@dataclass(frozen=True, slots=True)
class Shape:
    """A convex part in plan with the heights it fills, in inches.

    points are the core's corners counter-clockwise (one point for a round part); bottom and top are heights
    above the floor. index is the part's place in the list it came from, None for frame and wall. on_frame
    says that it lies on the frame's face, where the hinge edge passes it.
    """

    points: tuple[Point, ...]
    radius: float = 0.0
    bottom: float = -math.inf
    top: float = math.inf
    kind: str = "wall"
    index: int | None = None
    on_frame: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Obstruction:
    """Something that stands about the door, in inches.

    start and length run along the wall away from the opening, from the frame's outer edge (length None:
    without end; a negative start reaches over the frame's face). projection counts from the wall face on the
    pull side, or from the frame face where from_frame says so. fills: it takes up all beyond its start, as a
    wall that returns; its projection None runs out without end. offset lifts the whole thing off the wall by
    that much. diameter makes it round: it then lies within start and start +
    diameter, its outermost point at offset + projection (projection None: the diameter). bottom and top None:
    full height. behind: it stands so, but on the other side of a wall so thick (None: on this side).
    """

    kind: str
    side: str = "hinge"
    projection: float | None = None
    start: float = 0.0
    length: float | None = None
    offset: float = 0.0
    bottom: float | None = None
    top: float | None = None
    diameter: float | None = None
    from_frame: bool = False
    fills: bool = False
    behind: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardware:
    """Something that projects from a face of the leaf, in inches.

    A box whose centre is from_latch_edge from the leaf's latch edge, measured on the pull face, and height
    above the floor; width across, vertical high, standing projection out of its face (pull or push). What is
    round from above has its width as diameter and its outermost point at projection. A turned knob is a box:
    from above it is as wide as its diameter and as deep as its projection.
    """

    kind: str
    projection: float
    from_latch_edge: float
    width: float
    height: float
    vertical: float
    face: str = "pull"
    round: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherHalf:
    """The closed other half of a Dutch door: its heights, in inches above the floor, and what it carries."""

    bottom: float
    top: float
    hardware: tuple[Hardware, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """The heights a leaf fills and those of each of its hinge barrels, in inches above the floor.

    half is the closed other half of a Dutch door, above or below this leaf and in line with it.
    """

    bottom: float = 0.75
    top: float = 83.875
    barrels: tuple[tuple[float, float], ...] = ()
    half: OtherHalf | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherLeaf:
    """The closed other leaf of a pair, in inches.

    opening is the whole opening between the two rabbet faces, w the other leaf's net width on its pull face,
    beta its bevel at the meeting edge. It stands from x = O of the leaf being solved. hardware is what it
    carries, from_latch_edge counted from its own meeting edge. closed False: it already stands open, with all
    that is on it out of the way.
    """

    opening: float
    w: float
    beta: float = 0.0
    closed: bool = True
    hardware: tuple[Hardware, ...] = ()


def rectangle(x_0: float, x_1: float, y_0: float, y_1: float) -> tuple[Point, ...]:
    """The four corners of an upright rectangle, counter-clockwise, in."""
    return ((x_0, y_0), (x_1, y_0), (x_1, y_1), (x_0, y_1))


def may_meet(moving: Shape, standing: Shape) -> bool:
    """Whether two parts can touch at all: they share more height than the tolerance.

    A barrel never meets its own frame in the swing: where it stands too near the face it is let into it,
    which is told by `barrel_freedom`, and the leaf still turns.
    """
    if moving.kind == "barrel" and standing.kind == "frame":
        return False
    return min(moving.top, standing.top) - max(moving.bottom, standing.bottom) > TOLERANCE


def refuse_no_door(h: Hanging, leaf: Leaf) -> None:
    """Refuse numbers that leave no leaf at all.

    Raises ValueError with a sentence where the gaps and the bevel take the whole width, or the undercut and
    the gap above the whole height.
    """
    if min(h.w, h.w - h.beta * h.T) <= 0.0:
        raise ValueError(
            f"Gaps of {format_size(h.g_h)} and {format_size(h.g_l)} in, with the latch bevel, leave no door "
            f"in {format_size(h.O)} in."
        )
    if leaf.top <= leaf.bottom:
        raise ValueError(
            f"A leaf from {format_size(leaf.bottom)} to {format_size(leaf.top)} in above the floor has no "
            "height."
        )


def leaf_shape(h: Hanging, leaf: Leaf) -> Shape:
    """The leaf with its bevel, closed."""
    return Shape(leaf_corners(h), 0.0, leaf.bottom, leaf.top, "leaf")


def barrel_shapes(h: Hanging, pin: Pin, leaf: Leaf) -> tuple[Shape, ...]:
    """The barrel of each hinge, at its heights."""
    return tuple(Shape((pin.at,), h.d_b / 2, low, high, "barrel") for low, high in leaf.barrels)


def hardware_shape(h: Hanging, item: Hardware, index: int | None = None) -> Shape:
    """A box or a round on a face of the closed leaf."""
    return _fitted(h, item, h.O - h.g_l - item.from_latch_edge, item.kind, index)


def _fitted(h: Hanging, item: Hardware, centre: float, kind: str, index: int | None) -> Shape:
    """Hardware with its middle at a place across, on a face in the plane of the closed leaf's."""
    face, out = (-h.i, 1.0) if item.face == "pull" else (-h.i - h.T, -1.0)
    low, high = item.height - item.vertical / 2, item.height + item.vertical / 2
    half = item.width / 2
    if item.round:
        point = (centre, face + out * (item.projection - half))
        return Shape((point,), half, low, high, kind, index)
    outer = face + out * item.projection
    near, far = (face, outer) if item.face == "pull" else (outer, face)
    corners = rectangle(centre - half, centre + half, near, far)
    return Shape(corners, 0.0, low, high, kind, index)


def _mirrored(shape: Shape, opening: float) -> Shape:
    """The same part on the latch side of an opening so wide."""
    points = tuple((opening - x, y) for x, y in reversed(shape.points))
    return Shape(points, shape.radius, shape.bottom, shape.top, shape.kind, shape.index, shape.on_frame)


def _box_pieces(h: Hanging, thing: Obstruction) -> list[tuple[Point, ...]]:
    """A straight-sided thing on the hinge side: beyond the frame, over its face, and before the opening.

    What lies over the frame begins no farther back than its face; before the opening nothing cuts it off.
    """
    base = 0.0 if thing.from_frame else -h.p
    near = (min(0.0, -h.p) if thing.from_frame and not thing.offset else base) + thing.offset
    outer = base + thing.offset + (thing.projection or 0.0)
    right = -h.F - thing.start
    left = -FAR if thing.length is None else right - thing.length
    pieces = [(left, min(right, -h.F), near), (max(left, -h.F), right, max(near, 0.0))]
    if right > 0.0 > near and not thing.from_frame:
        pieces[1:] = [(max(left, -h.F), 0.0, 0.0), (max(left, 0.0), right, near)]
    return [
        rectangle(x_0, x_1, y_0, outer) for x_0, x_1, y_0 in pieces if min(x_1 - x_0, outer - y_0) > TOLERANCE
    ]


def _return_wall(h: Hanging, thing: Obstruction) -> list[tuple[Point, ...]]:
    """A wall running out from beside the frame, filling everything beyond its face."""
    if thing.start < 0:
        raise ValueError(
            f"A return wall starts beside the frame or farther off, not at {format_size(thing.start)} in."
        )
    outer = FAR if thing.projection is None else -h.p + thing.projection
    return [rectangle(-FAR, -h.F - thing.start, min(-h.p, 0.0) - h.D, outer)]


def _round_shape(h: Hanging, thing: Obstruction, diameter: float, index: int | None) -> Shape:
    """A round thing on the hinge side."""
    projection = diameter if thing.projection is None else thing.projection
    half = diameter / 2
    base = 0.0 if thing.from_frame else -h.p
    centre = (-h.F - thing.start - half, base + thing.offset + projection - half)
    return Shape((centre,), half, kind=thing.kind, index=index)


def obstruction_shapes(
    h: Hanging, thing: Obstruction, index: int | None = None, opening: float | None = None
) -> tuple[Shape, ...]:
    """What one obstruction fills, as convex pieces of its kind.

    Inches; opening is the whole width between rabbet faces where that is more than O (a pair). Raises
    ValueError for a return wall that would start in front of the frame.
    """
    if thing.behind is not None:
        return _behind(h, thing, thing.behind, index, opening)
    low = -math.inf if thing.bottom is None else thing.bottom
    high = math.inf if thing.top is None else thing.top
    if thing.diameter is not None:
        shapes = [_round_shape(h, thing, thing.diameter, index)]
    else:
        corners = _return_wall(h, thing) if thing.fills else _box_pieces(h, thing)
        shapes = [Shape(points, kind=thing.kind, index=index) for points in corners]
    across = h.O if opening is None else opening
    placed = shapes if thing.side == "hinge" else [_mirrored(shape, across) for shape in shapes]
    return tuple(
        Shape(one.points, one.radius, low, high, one.kind, index, thing.from_frame) for one in placed
    )


def _behind(
    h: Hanging, thing: Obstruction, wall: float, index: int | None, opening: float | None
) -> tuple[Shape, ...]:
    """What an obstruction on the other side of the wall fills."""
    deep = jamb_depth(h)
    far_side = replace(h, p=deep - wall - h.p)
    shapes = obstruction_shapes(far_side, replace(thing, behind=None), index, opening)
    return tuple(
        replace(one, points=tuple((x, -deep - y) for x, y in reversed(one.points))) for one in shapes
    )


def jamb_depth(h: Hanging) -> float:
    """The jamb's depth, never less than its rabbet, in."""
    return max(h.D, h.R)


def hinge_jamb(h: Hanging) -> tuple[Shape, ...]:
    """The hinge jamb from its face back, outer edge to rabbet face; kind frame. Of an outline its pieces."""
    if h.outline is not None:
        return tuple(Shape(one, kind="frame") for one in convex_pieces(h.outline)[0])
    return (Shape(rectangle(-h.F, 0.0, -jamb_depth(h), 0.0), kind="frame"),)


def latch_jamb(h: Hanging, opening: float) -> tuple[Shape, ...]:
    """The jamb across the opening; kind latch jamb."""
    return tuple(replace(_mirrored(one, opening), kind="latch jamb") for one in hinge_jamb(h))


def walls(h: Hanging, opening: float) -> tuple[Shape, Shape]:
    """The wall beyond the frame on the hinge side and on the latch side, as long as there is no end to it."""
    back = -FAR if h.wall is None else -h.p - h.wall
    hinge = Shape(rectangle(-FAR, -h.F, back, -h.p), kind="wall")
    return (hinge, _mirrored(hinge, opening))


def stops(h: Hanging, opening: float) -> tuple[Shape, ...]:
    """The frame stops on the hinge side and on the latch side; none where the stop has no height or depth."""
    if h.outline is None and (h.s <= TOLERANCE or h.D - h.R <= TOLERANCE):
        return ()
    box = (rectangle(0.0, h.s, -h.D, -h.R),)
    pieces = box if h.outline is None else convex_pieces(h.outline)[1]
    hinge = tuple(Shape(one, kind="stop") for one in pieces)
    latch = tuple(_mirrored(one, opening) for one in hinge)
    return (*hinge, *latch) if h.heel_stop else latch


def other_leaf_shapes(h: Hanging, other: OtherLeaf | None, leaf: Leaf) -> tuple[Shape, ...]:
    """The closed other leaf of a pair at the leaf's own heights; none for a single leaf."""
    if other is None or not other.closed:
        return ()
    pull, stop, near, far = -h.i, -h.i - h.T, h.O, h.O + other.w
    corners = ((near + other.beta * h.T, stop), (far, stop), (far, pull), (near, pull))
    return (Shape(corners, 0.0, leaf.bottom, leaf.top, "other leaf"),)


def other_half_shapes(h: Hanging, half: OtherHalf | None) -> tuple[Shape, ...]:
    """The closed other half of a Dutch door at its own heights; none for any other leaf."""
    if half is None:
        return ()
    return (Shape(leaf_corners(h), 0.0, half.bottom, half.top, "other leaf"),)


def other_leaf_hardware(h: Hanging, other: OtherLeaf | None, half: OtherHalf | None) -> tuple[Shape, ...]:
    """What the closed other leaf of a pair, or other half of a Dutch door, carries.

    Kind other leaf, index the place in that leaf's own list, so that it is told from the leaf itself.
    """
    shapes = []
    if other is not None and other.closed:
        placed = [(item, h.O + item.from_latch_edge) for item in other.hardware]
        shapes += [_fitted(h, item, at, "other leaf", index) for index, (item, at) in enumerate(placed)]
    if half is not None:
        placed = [(item, h.O - h.g_l - item.from_latch_edge) for item in half.hardware]
        shapes += [_fitted(h, item, at, "other leaf", index) for index, (item, at) in enumerate(placed)]
    return tuple(shapes)


def closed_beside(h: Hanging, leaf: Leaf, other: OtherLeaf | None) -> tuple[Shape, ...]:
    """The other leaf of a pair and the other half of a Dutch door, closed, with what they carry."""
    return (
        *other_leaf_shapes(h, other, leaf),
        *other_half_shapes(h, leaf.half),
        *other_leaf_hardware(h, other, leaf.half),
    )


def standing_shapes(
    h: Hanging, leaf: Leaf, obstructions: Iterable[Obstruction] = (), other: OtherLeaf | None = None
) -> tuple[Shape, ...]:
    """Everything that stands: obstructions in their order, frame, wall, latch jamb, stop, then other leaf.

    What the other leaf carries comes last.
    That order settles which of two things met at once is named. Raises ValueError as `obstruction_shapes`
    does.
    """
    opening = h.O if other is None else other.opening
    about = [
        shape
        for index, thing in enumerate(obstructions)
        for shape in obstruction_shapes(h, thing, index, opening)
    ]
    frame = (*hinge_jamb(h), *walls(h, opening), *latch_jamb(h, opening), *stops(h, opening))
    return (*about, *frame, *closed_beside(h, leaf, other))
