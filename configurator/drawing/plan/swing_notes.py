"""The notes at the open leaf: the contact, or the clearance that is left."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.dimension_strokes import OUTSIDE
from configurator.drawing.base.lettering import ASCENT, DESCENT, Room, text_width
from configurator.drawing.base.primitives import Dimension, Point, Polyline, Primitive, Symbol, Text, turned
from configurator.drawing.base.view import Box, View, box_around
from configurator.drawing.plan.dimensions import is_clear, moving_on_sheet
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, Standing, degrees
from configurator.drawing.plan.jamb import stud_boxes
from configurator.drawing.plan.leaf import leaf_outline, touching_marks
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.geometry.shapes import Shape
from configurator.rules.wording import obstruction
from configurator.units import TOLERANCE, Display

CLEARANCE = "clearance to the "
_WORTH_SAYING = 3.0
"""Room left wider than this is no argument and is not dimensioned, inches."""
_LAST_OF_THE_SWING = math.radians(30)
"""Room left is told only so near the end of the swing: before that it is on the way to nothing."""
_DOWN = (0.0, -1.0)
_UNDER_A_LAYER = 12.0
"""How far below a layer of the wall the line of words in its hollow stands, points."""
_THICKEST_LINE = 3.0
"""Of what is taken, what is thinner is a line, which another may cross; points."""
_SHORT_LEG = 14.0
"""How long a leader is that no leaf stands in the way of, points."""


@dataclass(frozen=True, slots=True)
class Nearest:
    """The nearest point of the leaf and of what stands, with its name; inches."""

    on_leaf: Point
    on_thing: Point
    distance: float
    name: str


def nearest_thing(hung: DrawnLeaf, angle: float) -> Nearest | None:
    """Return where the open leaf comes nearest to what stands along the wall, at one angle.

    Of points equally near the one nearest to the pin counts. None where nothing stands that the leaf meets.
    """
    leaf = turned(leaf_corners(hung.h), hung.pin.at, angle)
    pairs = [
        pair
        for thing in hung.standing
        if thing.met
        for shape in thing.shapes
        for pair in _pairs(leaf, shape, thing)
    ]
    if not pairs:
        return None
    least = min(pair.distance for pair in pairs)
    close = [pair for pair in pairs if pair.distance <= least + TOLERANCE]
    return min(close, key=lambda pair: math.dist(pair.on_thing, hung.pin.at))


def _pairs(leaf: tuple[Point, ...], shape: Shape, thing: Standing) -> Iterator[Nearest]:
    for corner in leaf:
        yield _pair(corner, nearest_on_outline(corner, shape.points), shape, thing)
    for corner in shape.points:
        yield _pair(nearest_on_outline(corner, leaf), corner, shape, thing)


def _pair(on_leaf: Point, on_core: Point, shape: Shape, thing: Standing) -> Nearest:
    distance = math.dist(on_leaf, on_core)
    share = shape.radius / distance if distance else 0.0
    on_thing = (
        on_core[0] + share * (on_leaf[0] - on_core[0]),
        on_core[1] + share * (on_leaf[1] - on_core[1]),
    )
    return Nearest(on_leaf, on_thing, max(0.0, distance - shape.radius), obstruction(thing.kind))


def swing_notes(
    hung: DrawnLeaf,
    angle: float,
    view: View,
    display: Display,
    room: Room,
    size: float,
    swept: bool = False,
    bare: bool = False,
) -> list[Primitive]:
    """Return the notes for the leaf at an angle: the contact with its ring and words, or the clearance left.

    With `swept` it is the least clearance over the whole swing, where that has a place; `bare` letters its
    number alone.
    """
    if hung.contact is not None and angle >= hung.reach - TOLERANCE:
        met = contact_note(hung, view, display, room, size)
        if met:
            return met
    least = least_gap_note(hung, angle, view, display, room, size, bare) if swept else []
    return least or _room_left(hung, angle, view, display, room, size, bare)


def _room_left(
    hung: DrawnLeaf, angle: float, view: View, display: Display, room: Room, size: float, bare: bool
) -> list[Primitive]:
    """Return the room left near the end of the swing, and wherever the leaf passes nearest of all."""
    least = _least(hung)
    if hung.least is not None and least is not None and abs(angle - hung.least.angle) <= TOLERANCE:
        words = _clearance_words(hung, angle, least, display)
        return _clearance(hung, angle, least, words, view, display, room, size, _leg(hung, view), bare)
    nearest = nearest_thing(hung, angle) if angle >= hung.reach - _LAST_OF_THE_SWING else None
    if nearest is None or not TOLERANCE < nearest.distance < _WORTH_SAYING:
        return []
    words = _clearance_words(hung, angle, nearest, display)
    return _clearance(hung, angle, nearest, words, view, display, room, size, _leg(hung, view), bare)


def least_gap_note(
    hung: DrawnLeaf,
    angle: float,
    view: View,
    display: Display,
    room: Room,
    size: float,
    bare: bool = False,
) -> list[Primitive]:
    """Return the dimension of the least gap over the whole swing, at the place where it occurs.

    It lies between what stands and the outline of what the leaf sweeps, wherever the leaf is now. Empty where
    nothing comes near.
    """
    least = _least(hung)
    if least is None or hung.least is None or least.distance >= _WORTH_SAYING:
        return []
    if abs(angle - hung.least.angle) <= TOLERANCE:
        return []  # the leaf stands there, and its own dimension says so
    number = display.length(least.distance, "down")
    at = f"{number} to the {least.name} at {display.angle(degrees(hung.least.angle))}"
    words = (f"{at}, the least", at, number)
    return _clearance(hung, angle, least, words, view, display, room, size, _SHORT_LEG, bare)


def leaf_alone(hung: DrawnLeaf, angle: float) -> list[Primitive]:
    """Return the leaf where it would be stopped without its hardware, at exactly that angle."""
    farther = hung.contact_bare is not None and hung.reach_bare > hung.reach + TOLERANCE
    if not farther or hung.contact_bare is None or abs(angle - hung.reach_bare) > TOLERANCE:
        return []
    outline = turned(leaf_outline(hung), hung.pin.at, hung.reach_bare)
    words = "contact of the leaf alone"
    return [
        Polyline("A-DOOR-CLSD", outline, closed=True),
        Symbol("A-ANNO-REDL", hung.contact_bare, "graze", words),
    ]


def _least(hung: DrawnLeaf) -> Nearest | None:
    """Return the least gap over the swing, None where there is none or the leaf touches."""
    gap = hung.least
    if gap is None or gap.distance <= TOLERANCE:
        return None
    return Nearest(gap.point_moving, gap.point_standing, gap.distance, obstruction(gap.kind))


def contact_note(hung: DrawnLeaf, view: View, display: Display, room: Room, size: float) -> list[Primitive]:
    """Return the ring about a contact, and its words on a leader.

    It leaves the leaf square to its face, or goes into the wall where hardware leaves no room for that.
    """
    assert hung.contact is not None
    at = view.to_sheet(hung.contact)
    if not view.window.has(at):
        return []
    words = f"{hung.stopped_by} at {display.angle(degrees(hung.reach))}"
    marks: list[Primitive] = [*touching_marks(hung), Symbol("A-ANNO-REDL", hung.contact, "contact", words)]
    square = (view.hand * math.sin(hung.reach), -math.cos(hung.reach))
    moving = moving_on_sheet(hung, view, hung.reach)
    for away, leg, free in ((square, _leg(hung, view), room), (_DOWN, *_into_the_wall(hung, view, room))):
        placed = _at_end_of_leader(at, away, leg, words, size, free, moving)
        if placed is not None:
            return [*marks, *_contact_words(at, away, placed, words, view, size)]
    return marks


def _into_the_wall(hung: DrawnLeaf, view: View, room: Room) -> tuple[float, Room]:
    """Return how long a leader is that comes out of the wall's first layer, and what is free in there."""
    first = hung.layers[0][1] if len(hung.layers) > 1 else hung.wall_depth
    studs = [box_around([view.to_sheet(point) for point in box]) for box in stud_boxes(hung)]
    return first * view.scale + _UNDER_A_LAYER, Room(room.window, [*room.taken, *studs])


def _contact_words(
    at: Point, away: Point, placed: tuple[Point, Point, Point], words: str, view: View, size: float
) -> list[Primitive]:
    elbow, end, middle = placed
    start = (at[0] + 6.0 * away[0], at[1] + 6.0 * away[1])
    leader = tuple(view.to_plan(point) for point in (start, elbow, end))
    return [
        Polyline("A-ANNO-REDL", leader),
        Text("A-ANNO-REDL", view.to_plan(middle), words, size, "middle"),
    ]


def _leg(hung: DrawnLeaf, view: View) -> float:
    """Return how long a leader is that crosses the leaf and comes out of it, points."""
    return hung.h.T * view.scale + 7.0


def _clearance(
    hung: DrawnLeaf,
    angle: float,
    nearest: Nearest,
    words: Iterable[str],
    view: View,
    display: Display,
    room: Room,
    size: float,
    leg: float,
    bare: bool,
) -> list[Primitive]:
    """Return a dimension between two points in the first of the wordings that finds room, if any does.

    `leg` is how long its leader is at least, points; `bare` is for the number alone.
    """
    a, b = view.to_sheet(nearest.on_thing), view.to_sheet(nearest.on_leaf)
    if not (view.window.has(a) and view.window.has(b)) or _crosses_barrel(hung, nearest):
        return []
    length = math.dist(a, b)
    away = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    tail = (a[0] - OUTSIDE * away[0], a[1] - OUTSIDE * away[1])
    words_there = (other for other in room.taken if min(other.width, other.height) > _THICKEST_LINE)
    if any(clip_segment(tail, b, other) for other in words_there):
        return []
    moving = moving_on_sheet(hung, view, angle)
    number = display.length(nearest.distance, "down")
    for text in (number,) if bare else words:
        placed = _at_end_of_leader(b, away, leg, text, size, room, moving)
        if placed is not None:
            return [_clearance_dimension(nearest, text, number, placed, view, size)]
    return []


def _crosses_barrel(hung: DrawnLeaf, nearest: Nearest) -> bool:
    """Whether the line from the thing to the leaf runs through the barrel."""
    (x, y), radius = hung.pin.at, hung.h.d_b / 2
    knuckle = Box(x - radius, y - radius, x + radius, y + radius)
    return clip_segment(nearest.on_thing, nearest.on_leaf, knuckle) is not None


def _clearance_words(hung: DrawnLeaf, angle: float, nearest: Nearest, display: Display) -> Iterator[str]:
    """Yield how much room is left, first with what the leaf alone would leave to the same thing."""
    number = display.length(nearest.distance, "down")
    text = f"{number} to the {nearest.name}"
    if hung.reach_bare > hung.reach and angle >= hung.reach - TOLERANCE:
        end = nearest_thing(hung, hung.reach_bare)
        if end is not None and end.name == nearest.name and TOLERANCE < end.distance < _WORTH_SAYING:
            at = display.angle(degrees(hung.reach_bare))
            yield f"{text}, {display.length(end.distance, 'down')} at {at}"
    yield text
    yield number


def _clearance_dimension(
    nearest: Nearest, text: str, number: str, placed: tuple[Point, Point, Point], view: View, size: float
) -> Dimension:
    elbow, end, middle = (view.to_plan(point) for point in placed)
    a, b = nearest.on_thing, nearest.on_leaf
    name = f"{CLEARANCE}{nearest.name}"
    told = f"room between the open leaf and the {nearest.name}, where they come nearest: {number}"
    return Dimension(
        "A-ANNO-DIMS", a, b, a, b, text, middle, name, nearest.distance, 0.0, size, (elbow, end), told
    )


def _at_end_of_leader(
    start: Point,
    away: Point,
    leg: float,
    text: str,
    size: float,
    room: Room,
    moving: list[tuple[Point, ...]],
) -> tuple[Point, Point, Point] | None:
    """Return a leader's elbow, its shoulder's end and the text's middle, all on the sheet.

    Tries longer and longer legs, the shoulder to either side. None where there is no room.
    """
    width = text_width(text, size)
    for longer in (0.0, 7.0, 14.0, 26.0, 42.0, 60.0):
        elbow = (start[0] + (leg + longer) * away[0], start[1] + (leg + longer) * away[1])
        for side in (-1.0, 1.0):
            left = elbow[0] + (2.0 if side > 0 else -2.0 - width)
            base = elbow[1] + 2.0
            box = Box(left, base - DESCENT * size, left + width, base + ASCENT * size)
            crossed = any(clip_segment(start, elbow, other) for other in room.taken)
            if not crossed and is_clear(box, moving, 1.0) and room.first_free([box]):
                return elbow, (elbow[0] + side * (width + 4.0), elbow[1]), (left + width / 2, base)
    return None
