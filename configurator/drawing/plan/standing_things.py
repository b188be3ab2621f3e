"""What stands along the wall, where it is cut, or broken and thin where the leaf passes over or under it.

A door stop is drawn with how far along the wall it is set out from the frame's outer edge.
"""

import math
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from configurator.drawing.base.lettering import Room, fitted, text_box, text_width
from configurator.drawing.base.primitives import (
    Arc,
    Dimension,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Text,
    rectangle,
)
from configurator.drawing.base.view import Box, View
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, Standing
from configurator.geometry.shapes import Shape
from configurator.rules.checks.manoeuvring import Manoeuvring, Space, manoeuvring
from configurator.tables import DoorStopKindRow, ObstructionKindRow, row_of
from configurator.units import Display

_STOP_LAYER, _STOP_FILL = "A-DOOR-HDWR", "hardware"
_PLATE = (2.5, 0.1875)
"""The plate of a wall bumper, across and thick, inches; from memory."""
_STEM = 0.75
_TIP = 0.625
"""Radius of the rubber of a wall bumper, and of a floor stop seen from above, inches; from memory."""
_ROWS = (10.0, 20.0, 30.0)
"""How far below the wall's far face the dimension may stand, points."""


def standing_things(hung: DrawnLeaf) -> list[Polygon | Arc]:
    """Return every thing in the order it was given; pieces of one thing carry its name."""
    return [_piece(thing, shape) for thing in hung.standing for shape in merged(thing.shapes)]


def background(hung: DrawnLeaf) -> Iterator[Polyline]:
    """Yield the lines of another's drawing that lie under the plan.

    They are kept as the opening is seen from the pull side; a plan seen from the push side has none.
    """
    given = hung.filled.opening.background
    if given is None or hung.candidate.to_push:
        return
    hand, first = (-1.0 if hung.mirrored else 1.0), hung.candidate.leaf != "inactive"
    for line in _read_lines(given.lines):
        shown = ((hand * x if first else hung.opening + hand * x, y) for x, y in line)
        yield Polyline("A-ANNO-REFR", tuple(shown))


@lru_cache(maxsize=8)
def _read_lines(lines: tuple[str, ...]) -> tuple[tuple[Point, ...], ...]:
    pairs = (tuple(point.partition(",") for point in line.split()) for line in lines)
    return tuple(tuple((float(x), float(y)) for x, _, y in line) for line in pairs)


def merged(shapes: tuple[Shape, ...]) -> tuple[Shape, ...]:
    """Return the pieces of one thing with no line between them where one meets the next at the frame's edge.

    A thing that reaches over the frame's face is solved as two upright rectangles and drawn as one outline.
    """
    if len(shapes) != 2 or any(len(shape.points) != 4 for shape in shapes):
        return shapes
    left, right = sorted(shapes, key=lambda shape: min(x for x, _ in shape.points))
    (x_0, y_0), _, (seam, outer), _ = left.points
    (start, y_1), _, (x_1, top), _ = right.points
    if start != seam or outer != top:
        return shapes
    outline = ((x_0, y_0), (seam, y_0), (seam, y_1), (x_1, y_1), (x_1, outer), (x_0, outer))
    return (replace(left, points=outline),)


def fill_of(thing: Standing) -> str:
    """Return the style's material that a thing is filled with where it is cut."""
    return row_of(ObstructionKindRow, thing.kind).material


def _piece(thing: Standing, shape: Shape) -> Polygon | Arc:
    layer = "A-DETL-MCUT" if thing.met else "A-DETL-MBND"
    fill = fill_of(thing) if thing.met else None
    if shape.radius:
        return Arc(layer, shape.points[0], shape.radius, 0.0, 2 * math.pi, fill, thing.label)
    return Polygon(layer, shape.points, fill, thing.label)


def door_stop_parts(hung: DrawnLeaf) -> list[Primitive]:
    """Return the stop that was given: a bumper on its plate, or a floor stop seen from above."""
    stop = hung.door_stop
    tip = hung.candidate.stop_tip
    if stop is None or tip is None:
        return []
    if row_of(DoorStopKindRow, stop.kind).stands == "wall":
        return _bumper(stop.kind, tip, hung.wall_face)
    return _on_the_floor(stop.kind, tip, hung.reach if stop.holds else math.pi)


def _bumper(kind: str, tip: Point, wall: float) -> list[Primitive]:
    x, y = tip
    across, thick = _PLATE
    thick, radius = min(thick, (y - wall) / 2), min(_TIP, (y - wall) / 2)
    plate = rectangle(x - across / 2, x + across / 2, wall, wall + thick)
    stem = rectangle(x - _STEM / 2, x + _STEM / 2, wall + thick, max(y - radius, wall + thick))
    return [
        Polygon(_STOP_LAYER, plate, _STOP_FILL, kind),
        Polygon(_STOP_LAYER, stem, _STOP_FILL, kind),
        Arc(_STOP_LAYER, (x, y - radius), radius, 0.0, 2 * math.pi, "solid", kind),
    ]


def _on_the_floor(kind: str, tip: Point, angle: float) -> list[Primitive]:
    """A round post that the face of the leaf, standing at an angle, touches at the tip."""
    x, y = tip
    centre = (x - _TIP * math.sin(angle), y + _TIP * math.cos(angle))
    return [
        Arc(_STOP_LAYER, centre, _TIP, 0.0, 2 * math.pi, _STOP_FILL, kind),
        Arc(_STOP_LAYER, centre, _TIP / 2, 0.0, 2 * math.pi, "solid", kind),
    ]


def set_out(hung: DrawnLeaf, view: View, display: Display, size: float, room: Room) -> list[Dimension]:
    """Return the dimension from the frame's outer edge to the stop, where the window shows both.

    It stands below the wall, in the first row with room for its words; none where there is no room.
    """
    tip = hung.candidate.stop_tip
    if tip is None or not view.plan_window().has((tip[0], hung.wall_face)):
        return []
    far = min(hung.wall_face - hung.wall_depth, -hung.h.D)
    below = view.to_sheet((0.0, far))[1]
    for row in _ROWS:
        found = dimension_at(hung, view, display, size, (below - row, below - row + 2.0))
        box = text_box(view.to_sheet(found.text_at), found.text, size, "middle")
        if room.first_free([box]):
            return [found]
    return []


def dimension_at(
    hung: DrawnLeaf, view: View, display: Display, size: float, rows: tuple[float, float]
) -> Dimension:
    """Return the dimension with its line and the base of its words at heights of the sheet, points."""
    stop, tip, h = hung.door_stop, hung.candidate.stop_tip, hung.h
    assert stop is not None
    assert tip is not None
    a, b = (-h.F, hung.wall_face), tip
    number = display.length(stop.from_frame)
    row, base = rows
    low = view.to_plan((0.0, row))[1]
    middle = view.to_sheet(((a[0] + b[0]) / 2, low))[0]
    half = text_width(number, size) / 2
    x = min(max(middle, view.window.left + 3 + half), view.window.right - 3 - half)
    return Dimension(
        "A-ANNO-DIMS", a, b, (a[0], low), (b[0], low), number, view.to_plan((x, base)),
        f"{stop.kind} from the frame", stop.from_frame, 0.0, size,
        explained=f"along the wall, from the frame's outer edge to the middle of the {stop.kind}: {number}",
    )  # fmt: skip


# --- The manoeuvring space ---


def floor_boxes(hung: DrawnLeaf) -> tuple[tuple[Manoeuvring, Box], ...]:
    """Return the manoeuvring space on each side of an accessible door, in the axes of the plan.

    The approach given; where none was, that from the front. A pair's active leaf alone has them.
    """
    if hung.candidate.leaf == "inactive":
        return ()
    sides = manoeuvring(hung.filled)
    return tuple((side, _floor_box(hung, side)) for side in sides)


def _floor_box(hung: DrawnLeaf, side: Manoeuvring) -> Box:
    h, space = hung.h, side.shown
    left, right = -space.hinge, h.O + space.latch
    if side.side == "pull":
        face = -h.i if side.recessed else hung.wall_face
        return Box(left, face, right, face + space.depth)
    face = -h.i - h.T if side.recessed else hung.wall_face - hung.wall_depth
    return Box(left, face - space.depth, right, face)


def floor_parts(hung: DrawnLeaf, view: View, display: Display, size: float) -> list[Primitive]:
    """Return the manoeuvring spaces dashed, each lettered at its far end where there is room."""
    parts: list[Primitive] = []
    for side, box in floor_boxes(hung):
        outline = rectangle(box.left, box.right, box.bottom, box.top)
        parts.append(Polyline("A-DOOR-CLRN", outline, closed=True))
        # The lines of the clear width run down through the push side: its words stand between them.
        pull, (left, right) = side.side == "pull", (box.left, box.right)
        left, right = (left, right) if pull else (hung.h.s, hung.h.O - hung.h.s)
        words = fitted(_floor_words(side, display), size, view.scale * (right - left) - 2 * size)
        line = size / view.scale
        at = ((left + right) / 2, box.top - 1.4 * line if pull else box.bottom + 0.6 * line)
        parts += [Text("A-ANNO-NOTE", at, words, size, "middle")] if words else []
    return parts


def _floor_words(side: Manoeuvring, display: Display) -> tuple[str, ...]:
    space = side.shown
    verdict = {True: "", False: ", too little", None: ", to be measured"}[side.kept]
    wide = [f"{display.exact(one)} past the {what}" for one, what in _beyond(space) if one > 0.0]
    deep = f"{display.exact(space.depth)} deep"
    whole = ", ".join((deep, *wide))
    return f"{side.side}, from the {space.approach}: {whole}{verdict}", f"{whole}{verdict}", whole, deep, ""


def _beyond(space: Space) -> tuple[tuple[float, str], ...]:
    return (space.latch, "lock"), (space.hinge, "hinges")
