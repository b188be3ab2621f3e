"""The room from above as a client sees it: floor, wall, frame, the door in colour and all that stands about.

In the axes of the plan, pull side up, of the leaf that the hinge changes most; a second leaf hangs in the
same picture. What stands still comes apart from what turns with the door.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, rectangle, turned
from configurator.drawing.base.view import Box, View
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.leaf import leaf_outline
from configurator.drawing.plan.standing_things import door_stop_parts, fill_of, merged
from configurator.tables import FrameKindRow, row_of
from configurator.units import TOLERANCE

LINE, THIN, DASHED = "A-DOOR-HDWR", "A-DOOR-SWNG", "A-DOOR-CLSD"
_SHOULDERS, _DEPTH, _HEAD = 20.0, 10.0, 4.0
"""A person from above: shoulders across and deep, and the radius of the head, inches; from memory."""
_SQUARE = 90.0
_BESIDE, _OVER, _BEYOND = 9.0, 5.0, 9.0
"""Inches of room kept beside the open door, over it, and beyond the wall."""
_STEPS = 24
_BESIDE_NAMED = 18.0
"""The same where two halves are named beyond their free edges."""
_SOFT = 9.0
"""Degrees before its end from which a door that stops is slowed down as it is played."""


@dataclass(frozen=True, slots=True)
class Room:
    """One hinge's picture: its leaves, the first the one that the hinge changes most, and the view of it."""

    leaves: tuple[DrawnLeaf, ...]
    view: View

    @property
    def first(self) -> DrawnLeaf:
        """The leaf whose axes the room is drawn in."""
        return self.leaves[0]


def room_extent(leaves: Sequence[DrawnLeaf]) -> Box:
    """Return how much of the plan a room shows, inches: enough for its doors at any angle."""
    first = leaves[0]
    h = first.h
    wide = h.w + 1.0
    second = first.opening - h.O if _is_pair(leaves) else 0.0
    beside = _BESIDE_NAMED if first.candidate.leaf in ("upper", "lower") else _BESIDE
    left = -h.F - wide - beside
    right = first.opening + h.F + (second + _BESIDE if second else _BESIDE)
    low = min(-h.D, first.wall_face - first.wall_depth) - _BEYOND
    return Box(left, low, right, first.pin.y_p + max(wide, second) + _OVER)


def _is_pair(leaves: Sequence[DrawnLeaf]) -> bool:
    return any(one.candidate.leaf in ("active", "inactive") for one in leaves)


# --- What stands still ---


def room_still(room: Room) -> Iterator[Primitive]:
    """Yield floor, swept floor, walls, frame and what stands along the wall, in painting order."""
    first, seen = room.first, room.view.plan_window()
    back = first.wall_face - first.wall_depth
    yield Polygon(THIN, rectangle(seen.left, seen.right, first.wall_face, seen.top), "floor", outlined=False)
    yield Polygon(THIN, rectangle(seen.left, seen.right, seen.bottom, back), "floorback", outlined=False)
    for leaf in room.leaves:
        yield from _swept(room, leaf)
    yield Polygon(THIN, rectangle(0.0, first.opening, -first.h.D, 0.0), "floorswept", outlined=False)
    for x_0, x_1 in ((seen.left - 1.0, -first.h.F), (first.opening + first.h.F, seen.right + 1.0)):
        yield Polygon(LINE, rectangle(x_0, x_1, back, first.wall_face), "roomwall", "wall")
    yield from jambs(first)
    yield from things(first)
    yield from door_stop_parts(first)
    for leaf in room.leaves:
        yield Polyline(DASHED, placed(room, leaf, leaf_outline(leaf)), closed=True)


def _swept(room: Room, leaf: DrawnLeaf) -> Iterator[Primitive]:
    """Yield the floor a leaf sweeps, and the arc of its free edge from closed to where it rests."""
    corners = leaf_outline(leaf)
    x, y = max(corners, key=lambda point: math.dist(point, leaf.pin.at))
    edge = [turned([(x, y)], leaf.pin.at, leaf.reach * step / _STEPS)[0] for step in range(_STEPS + 1)]
    outline = placed(room, leaf, (leaf.pin.at, *edge))
    yield Polygon(THIN, outline, "floorswept", outlined=False)
    yield Polyline(DASHED, outline[1:])


def jambs(hung: DrawnLeaf) -> Iterator[Polygon]:
    """Yield the frame on both sides as solid outlines."""
    h, far = hung.h, hung.opening
    outline = ((-h.F, -h.D), (h.s, -h.D), (h.s, -h.R), (0.0, -h.R), (0.0, 0.0), (-h.F, 0.0))
    fill = "roomwood" if row_of(FrameKindRow, hung.frame_kind).material == "wood" else "roomframe"
    yield Polygon(LINE, outline, fill, "frame")
    yield Polygon(LINE, tuple((far - x, y) for x, y in reversed(outline)), fill, "frame")


def things(hung: DrawnLeaf) -> Iterator[Polygon | Arc]:
    """Yield what stands along the wall, in wood or as a wall; thin what the door passes over or under."""
    for thing in hung.standing:
        fill = "roomwood" if fill_of(thing) == "wood" else "roomwall"
        for shape in merged(thing.shapes):
            layer, ground = (LINE, fill) if thing.met else (THIN, "floorswept")
            if shape.radius:
                yield Arc(layer, shape.points[0], shape.radius, 0.0, 2 * math.pi, ground, thing.label)
            else:
                yield Polygon(layer, shape.points, ground, thing.label)


# --- What turns ---


def shown_angle(leaf: DrawnLeaf, angle: float, end: float) -> float:
    """Return the angle a leaf is drawn at, radians, of a swing played to `end`; degrees.

    A door that stops before the other is slowed down to its stop, and has come to it at the end.
    """
    rests = leaf.candidate.rests_at
    soft = min(_SOFT, end - rests)
    if soft <= TOLERANCE or angle <= rests - soft:
        found = min(angle, rests)
    elif angle >= rests + soft:
        found = rests
    else:
        found = rests - (rests + soft - angle) ** 2 / (4 * soft)
    return leaf.reach if found >= rests else math.radians(found)


def room_moving(room: Room, angle: float, end: float) -> Iterator[Primitive]:
    """Yield the doors with what they carry, a person where there is a way through, and lit places."""
    if angle >= _SQUARE and min(one.candidate.rests_at for one in room.leaves) >= _SQUARE:
        yield from _person(room)
    for leaf in reversed(room.leaves):
        turn = shown_angle(leaf, angle, end)
        for shape in leaf.hardware:
            points = placed(room, leaf, turned(shape.points, leaf.pin.at, turn))
            if shape.radius:
                yield Arc(LINE, points[0], shape.radius, 0.0, 2 * math.pi, "hardware", shape.kind)
            else:
                yield Polygon(LINE, points, "hardware", shape.kind)
        yield Polygon(
            LINE, placed(room, leaf, turned(leaf_outline(leaf), leaf.pin.at, turn)), "roomdoor", "door"
        )
        at = placed(room, leaf, (leaf.pin.at,))[0]
        yield Arc(LINE, at, leaf.h.d_b / 2, 0.0, 2 * math.pi, "barrel", "hinge")


def touched(room: Room, angle: float, end: float) -> list[Point]:
    """Return the places where a leaf has come to what ends its swing."""
    return [
        placed(room, leaf, (leaf.contact,))[0]
        for leaf in room.leaves
        if leaf.contact is not None
        and not leaf.held
        and shown_angle(leaf, angle, end) >= leaf.reach - TOLERANCE
    ]


def _person(room: Room) -> Iterator[Primitive]:
    first = room.first
    clear = first.opening if _is_pair(room.leaves) and len(room.leaves) == 1 else first.h.O
    x, y = clear / 2 + first.h.T / 2, first.pin.y_p + 7.0
    wide = min(_SHOULDERS, clear - 4.0)
    around = [2 * math.pi * step / _STEPS for step in range(_STEPS)]
    body = tuple((x + wide / 2 * math.cos(t), y + _DEPTH / 2 * math.sin(t)) for t in around)
    yield Polygon(LINE, body, "clothes", "a person")
    yield Arc(LINE, (x, y), _HEAD, 0.0, 2 * math.pi, "skin", "a person")


def placed(room: Room, leaf: DrawnLeaf, points: Sequence[Point]) -> tuple[Point, ...]:
    """Return points of a leaf in the axes of the room: a pair's other leaf is its mirror image."""
    if leaf.mirrored == room.first.mirrored:
        return tuple(points)
    return tuple((room.first.opening - x, y) for x, y in points)
