"""What things along the wall are called: lettered inside them where there is room, else on a leader."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.drawing.clip import clip_polygon, clip_segment
from configurator.drawing.hung import Hung, Standing
from configurator.drawing.lettering import ASCENT, DESCENT, text_width
from configurator.drawing.placing import Room
from configurator.drawing.primitives import Point, Polyline, Primitive, Symbol, Text
from configurator.drawing.standing_things import fill_of
from configurator.drawing.style import materials
from configurator.drawing.view import Box, View, box_around
from configurator.drawing.wall_layers import material_of

_EDGE = 5.0
"""Lettering keeps so far from an edge, points."""


@dataclass(frozen=True, slots=True)
class Named:
    """One thing's name, and what of it the window shows; points on the sheet."""

    thing: Standing
    shown: Box


def thing_labels(hung: Hung, view: View, room: Room, keep_off: list[Box], size: float) -> list[Primitive]:
    """Return the names of what stands along the wall, each once; what has no room is left to hovering.

    Names also keep off the rectangles in `keep_off`, which stay free for other notes.
    """
    seen = [Named(thing, shown) for thing in hung.standing if (shown := _shown(thing, view)) is not None]
    outside = Room(room.window, [*room.taken, *keep_off, *(named.shown for named in seen)])
    lettered: list[Box] = []
    found: list[Primitive] = []
    for label, named in {named.thing.label: named for named in reversed(seen)}.items():
        found += _inside(label, named, view, room, size) or _beside(
            label, named, hung, view, outside, lettered, size
        )
    room.taken += lettered
    return found


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


def _inside(label: str, named: Named, view: View, room: Room, size: float) -> list[Primitive]:
    """Letter the thing itself, where it is wide enough and no hatch lies under the words."""
    if not named.thing.met or materials()[fill_of(named.thing)].pattern != "none":
        return []
    width, shown = text_width(label, size), named.shown.shrunk(_EDGE)
    for share in (0.5, 0.7, 0.3):
        base = shown.bottom + share * shown.height
        left = (shown.left + shown.right - width) / 2
        box = Box(left, base - DESCENT * size, left + width, base + ASCENT * size)
        if shown.holds(box) and room.first_free([box]):
            return [Text("A-ANNO-TEXT", view.to_plan((left, base)), label, size)]
    return []


def _beside(
    label: str, named: Named, hung: Hung, view: View, room: Room, lettered: list[Box], size: float
) -> list[Primitive]:
    """Letter beside the thing, with a leader from a dot on it; names below one another share a leader."""
    width = text_width(label, size)
    for dot, (left, base) in _places(named, hung, view, size, width):
        box = Box(left, base - DESCENT * size, left + width, base + ASCENT * size)
        if room.first_free([box]) is None:
            continue
        end = _end_of_leader(dot, box)
        above = [other.top + 0.5 for other in lettered if clip_segment(dot, end, other) is not None]
        end = (end[0], max([end[1], *above])) if dot[1] > box.top else end
        lettered.append(box)
        return [
            Symbol("A-ANNO-LEAD", view.to_plan(dot), "dot", label),
            Polyline("A-ANNO-LEAD", (view.to_plan(dot), view.to_plan(end))),
            Text("A-ANNO-TEXT", view.to_plan((left, base)), label, size),
        ]
    return []


def _end_of_leader(dot: Point, box: Box) -> Point:
    """Return where the leader meets the words: straight under the dot, or level with it at their near end."""
    if dot[1] > box.top:
        return (min(max(dot[0], box.left + 3.0), box.right - 3.0), box.top + 0.5)
    near = box.left - 2.0 if dot[0] < box.left else box.right + 2.0
    return (near, (box.bottom + box.top) / 2)


def _places(named: Named, hung: Hung, view: View, size: float, width: float) -> Iterator[tuple[Point, Point]]:
    """Yield a dot on the thing and where its words may start: under it first, then beside it."""
    shown = named.shown
    middle = (shown.bottom + shown.top) / 2
    in_from_edge = min(0.5 * shown.width, 24.0)
    dot_x = shown.left + in_from_edge if view.mirrored else shown.right - in_from_edge
    least, most = view.window.left + _EDGE, view.window.right - _EDGE - width
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


def _base_lines(hung: Hung, view: View, size: float) -> Iterator[float]:
    """Yield the lines a label may stand on: in the hollow of the wall, else on the far side of the wall."""
    top = hung.wall_face
    for name, thickness in hung.layers:
        low, high = (view.to_sheet((0.0, y))[1] for y in (top - thickness, top))
        rows = int((high - low - 6.0) // (1.5 * size)) if material_of(name) == "cavity" else 0
        yield from (high - 4.0 - ASCENT * size - row * 1.5 * size for row in range(rows))
        top -= thickness
    below = view.to_sheet((0.0, min(top, -hung.h.D)))[1]
    yield from (below - 6.0 - ASCENT * size - row * 1.5 * size for row in range(4))
