"""What things along the wall are called: lettered inside them where there is room, else on a leader."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from configurator.drawing.base.clip import clip_polygon, clip_segment
from configurator.drawing.base.lettering import ASCENT, DESCENT, Room, text_box, text_width
from configurator.drawing.base.primitives import Point, Polyline, Primitive, Symbol, Text
from configurator.drawing.base.style import materials
from configurator.drawing.base.view import Box, View, box_around
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, Standing
from configurator.drawing.plan.jamb import material_of
from configurator.drawing.plan.standing_things import fill_of
from configurator.rules.wording import obstruction

NO_KEYS: Mapping[str, str] = MappingProxyType({})
_EDGE = 5.0
"""Lettering keeps so far from an edge, points."""
_LINE = 0.5


@dataclass(frozen=True, slots=True)
class Named:
    """One thing's name, and what of it the window shows; points on the sheet."""

    thing: Standing
    shown: Box


def thing_labels(
    hung: DrawnLeaf,
    view: View,
    room: Room,
    words: list[Box],
    keep_off: list[Box],
    size: float,
    keys: Mapping[str, str] = NO_KEYS,
) -> list[Primitive]:
    """Return the names of what stands along the wall, each once.

    What has no room for its name with its heights has the bare name, or its key of a table where there are
    `keys`; without room even for that, it is left to hovering.

    Names also keep off the rectangles in `words` and `keep_off`, which stay free for other notes; their
    leaders keep off those in `words` and off one another: each has its own.
    """
    seen = [Named(thing, shown) for thing in hung.standing if (shown := _shown(thing, view)) is not None]
    taken = [*room.taken, *words, *keep_off, *(named.shown for named in seen)]
    every = {named.thing.label: named for named in reversed(seen)}.values()
    best: tuple[list[Primitive], list[Box], int] = ([], [], -1)
    for first in (0, 1) if not keys else (0,):  # where full names take the room of others, none has one
        lettered: list[Box] = []
        outside = Room(room.window, list(taken))
        around = _Around(hung, view, room, outside, list(words), keep_off, lettered, size, bool(keys))
        found = [_letter(named, _names_of(named, keys)[first:], around) for named in every]
        count = sum(map(bool, found))
        if count > best[2]:
            best = [one for placed in found for one in placed], lettered, count
        if count == len(every):
            break
    room.taken += best[1]
    return best[0]


def _names_of(named: Named, keys: Mapping[str, str]) -> tuple[str, ...]:
    """Return what a thing may be called, the fullest first."""
    thing = named.thing
    other = keys.get(thing.label, "") if keys else obstruction(thing.kind)
    return (thing.label, other) if other else (thing.label,)


@dataclass(frozen=True, slots=True)
class _Around:
    """What one name has about it: where it is free, what was lettered before it, how it is lettered."""

    hung: DrawnLeaf
    view: View
    room: Room
    outside: Room
    words: list[Box]
    keep_off: list[Box]
    lettered: list[Box]
    size: float
    clean: bool


def _letter(named: Named, names: Sequence[str], around: _Around) -> list[Primitive]:
    """Letter a thing with the first of its names that has room, inside it or beside it."""
    for said in names:
        busy = [*around.words, *around.keep_off, *around.lettered]
        placed = _inside(said, named, around.view, around.room, busy, around.size, around.clean)
        if placed:  # leaders of the next ones keep off it
            around.words.extend(_box_of(one, around.view) for one in placed if isinstance(one, Text))
            return placed
        if placed := _beside(said, named, around):
            return placed
    return []


def _shown(thing: Standing, view: View) -> Box | None:
    """Return what the window shows of a thing, None where that is nothing."""
    window = view.window
    boxes = []
    for shape in thing.shapes:
        box = box_around([view.to_sheet(point) for point in shape.points]).shrunk(-shape.radius * view.scale)
        corners = ((box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top))
        kept = clip_polygon(corners, window)
        if kept and box_around(kept).width > 2.0:
            boxes.append(box_around(kept))
    if not boxes:
        return None
    return box_around([corner for box in boxes for corner in ((box.left, box.bottom), (box.right, box.top))])


def _inside(
    label: str,
    named: Named,
    view: View,
    room: Room,
    keep_off: list[Box],
    size: float,
    clean: bool = False,
) -> list[Primitive]:
    """Letter the thing itself, where it is wide enough and no hatch lies under the words.

    `clean`: also only where no dimension or leader runs; what is round keeps off those in any case.
    """
    rounds = [
        (view.to_sheet(one.points[0]), one.radius * view.scale) for one in named.thing.shapes if one.radius
    ]
    # What is round is filled without a hatch, but may reach over the dimensions.
    hatched = not rounds and materials()[fill_of(named.thing)].pattern != "none"
    if not named.thing.met or hatched:
        return []
    width, shown = text_width(label, size), named.shown.shrunk(_EDGE)
    for share in (0.5, 0.7, 0.3):
        base = shown.bottom + share * shown.height
        left = (shown.left + shown.right - width) / 2
        box = Box(left, base - DESCENT * size, left + width, base + ASCENT * size)
        within = all(_in_round(box, *one) for one in rounds)
        busy = (rounds or clean) and any(box.overlaps(other) for other in keep_off)
        if shown.holds(box) and within and not busy and room.first_free([box]):
            return [Text("A-ANNO-TEXT", view.to_plan((left, base)), label, size)]
    return []


def _in_round(box: Box, centre: Point, radius: float) -> bool:
    """Whether a round thing holds the words, with air about them; points on the sheet."""
    corners = [(x, y) for x in (box.left, box.right) for y in (box.bottom, box.top)]
    return all(math.dist(corner, centre) <= radius - _EDGE / 2 for corner in corners)


def _beside(said: str, named: Named, around: _Around) -> list[Primitive]:
    """Letter beside the thing, with a leader of its own from a dot on it.

    Rather not at all than with a leader through other words or along another one.
    """
    view, size, lettered = around.view, around.size, around.lettered
    width = text_width(said, size)
    for dot, (left, base) in _places(named, around.hung, view, size, width):
        box = Box(left, base - DESCENT * size, left + width, base + ASCENT * size)
        end = _end_of_leader(dot, box)
        if around.outside.is_free(box) and not _is_crossed(dot, end, box, around.words, lettered):
            break
    else:
        return []
    around.outside.take(box)
    lettered += [box, _along(dot, end)]
    return [
        Symbol("A-ANNO-LEAD", view.to_plan(dot), "dot", named.thing.label),
        Polyline("A-ANNO-LEAD", (view.to_plan(dot), view.to_plan(end))),
        Text("A-ANNO-TEXT", view.to_plan((box.left, box.bottom + DESCENT * size)), said, size),
    ]


def _is_crossed(dot: Point, end: Point, box: Box, words: list[Box], lettered: list[Box]) -> bool:
    """Whether a leader runs through other words or leaders, or its own words lie over another leader."""
    through = any(clip_segment(dot, end, other) for other in (*words, *lettered))
    return through or any(box.overlaps(other) for other in lettered)


def _box_of(text: Text, view: View) -> Box:
    return text_box(view.to_sheet(text.at), text.text, text.size, text.anchor, text.bold)


def _along(dot: Point, end: Point) -> Box:
    """Return what a leader takes, so that no other words are lettered over it."""
    (x_0, x_1), (y_0, y_1) = sorted((dot[0], end[0])), sorted((dot[1], end[1]))
    return Box(x_0 - _LINE, y_0 - _LINE, x_1 + _LINE, y_1 + _LINE)


def _end_of_leader(dot: Point, box: Box) -> Point:
    """Return where the leader meets the words: straight under the dot, or level with it at their near end."""
    if dot[1] > box.top:
        return (min(max(dot[0], box.left + 3.0), box.right - 3.0), box.top + 0.5)
    near = box.left - 2.0 if dot[0] < box.left else box.right + 2.0
    return (near, (box.bottom + box.top) / 2)


def _places(
    named: Named, hung: DrawnLeaf, view: View, size: float, width: float
) -> Iterator[tuple[Point, Point]]:
    """Yield a dot on the thing and where its words may start: under it first, then beside it."""
    shown = named.shown
    middle = (shown.bottom + shown.top) / 2
    least, most = view.window.left + _EDGE, view.window.right - _EDGE - width
    shares = (0.5, 0.8, 0.3, 0.15, 0.65, 0.92)
    for in_from_edge in (min(0.5 * shown.width, 24.0), *(share * shown.width for share in shares)):
        dot_x = shown.left + in_from_edge if view.mirrored else shown.right - in_from_edge
        wanted = (dot_x - width + 8.0, dot_x - width / 2, dot_x - 8.0)
        lefts = [min(max(left, least), most) for left in wanted]
        for base in _base_lines(hung, view, size):
            yield from (((dot_x, middle), (left, base)) for left in lefts if left <= dot_x <= left + width)
    yield from _places_level_with(named, view, size, width)


def _places_level_with(named: Named, view: View, size: float, width: float) -> Iterator[tuple[Point, Point]]:
    shown = named.shown
    left = shown.right + 10.0 if view.mirrored is False else shown.left - 10.0 - width
    dot_x = shown.right - 6.0 if view.mirrored is False else shown.left + 6.0
    for share in (0.5, 0.8, 0.93):
        y = shown.bottom + share * shown.height
        yield (dot_x, y), (left, y - 0.5 * (ASCENT - DESCENT) * size)


def _base_lines(hung: DrawnLeaf, view: View, size: float) -> Iterator[float]:
    """Yield the lines a label may stand on: in the hollow of the wall, else on the far side of the wall."""
    top = hung.wall_face
    for name, thickness in hung.layers:
        low, high = (view.to_sheet((0.0, y))[1] for y in (top - thickness, top))
        rows = int((high - low - 6.0) // (1.5 * size)) if material_of(name) == "cavity" else 0
        yield from (high - 4.0 - ASCENT * size - row * 1.5 * size for row in range(rows))
        top -= thickness
    below = view.to_sheet((0.0, min(top, -hung.h.D)))[1]
    yield from (below - 6.0 - ASCENT * size - row * 1.5 * size for row in range(4))
