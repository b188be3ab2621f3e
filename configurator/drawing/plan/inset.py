"""The small picture of the whole opening: swing, hand, and the clear width at 90 degrees.

While the latch edge passes closest, the latch side stands in its place, enlarged.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.lettering import fitted, text_box, text_width
from configurator.drawing.base.primitives import (
    Arc,
    Dimension,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Symbol,
    Text,
    rectangle,
    turned,
)
from configurator.drawing.base.view import Box, View
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.leaf import TOUCHING_SMALL, closed_outline, leaf_outline, touching_marks
from configurator.drawing.plan.standing_things import (
    background,
    dimension_at,
    door_stop_parts,
    floor_boxes,
    floor_parts,
)
from configurator.drawing.plan.swept import swept_regions
from configurator.geometry.gaps import LeastGap
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.shapes import Shape
from configurator.units import TOLERANCE, Display

SIZE = 6.5
_ROW = 1.5 * SIZE
AIR = 4.0
"""Words and walls keep so far off the border, points."""
_POCHE = "poche"
_RING, _HIGH = 7.0, 0.75
"""Points the ring about a contact reaches up; of the height of the swing, from where that needs room."""
CLEAR_WIDTH = "clear width at 90"
CLEAR = (" clear at 90°", " clear", "")
"""What stands after the number of a clear width, as there is room."""
_MEASURED_BETWEEN = "clear width with the door open 90°, measured from the face of the open leaf to the {}"
_TOLD = "least gap between the lock edge of the leaf and the {}, over the whole swing: {}"


@dataclass(frozen=True, slots=True)
class Told:
    """What a small picture shows because the large one does not.

    `contact`: the words of a contact that lies outside the large picture, else empty. `latch_side`: whether
    the small picture shows nothing but the latch side, enlarged, since it is there that the leaf is stopped.
    """

    contact: str = ""
    latch_side: bool = False
    about: Point | None = None
    """What the latch side is framed about where it is not the contact."""
    floor: bool = True
    """Whether the manoeuvring space of an accessible door is drawn."""


def told_in_inset(hung: DrawnLeaf, window: Box, main: View, clear_at_90: float | None) -> Told:
    """Return what the small picture in `window` has to tell beside the large one."""
    if hung.contact is None or main.window.has(main.to_sheet(hung.contact)):
        return Told()
    latch_side = clear_at_90 is None and hung.contact[0] > hung.h.O / 2
    words = hung.stopped_by.replace("leaf on", "lock edge on") if latch_side else hung.stopped_by
    choices = (words, words.replace("on the latch", "on"), "")
    return Told(fitted(choices, SIZE, window.width - 2 * AIR), latch_side)


def inset_view(hung: DrawnLeaf, window: Box, told: Told, scales: Sequence[float] = ()) -> View:
    """Return the view that shows the whole opening in a window of the sheet, or its latch side alone.

    Given scales, points an inch, it has the largest of them that fits, else the smallest.
    """
    left, bottom, right, top = _latch_side(hung, told) if told.latch_side else _extent(hung, told)
    head = window.top - _head(told) - _ring_room(hung, told)
    room = Box(window.left + AIR, window.bottom + 3.0 * SIZE, window.right - AIR, head)
    scale = min(room.width / (right - left), room.height / (top - bottom))
    if scales:
        scale = max((one for one in scales if one <= scale + TOLERANCE), default=min(scales))
    middle = ((left + right) / 2, (bottom + top) / 2)
    hand = -1.0 if hung.mirrored else 1.0
    centre = ((room.left + room.right) / 2, (room.bottom + room.top) / 2)
    origin = (centre[0] - hand * scale * middle[0], centre[1] - scale * middle[1])
    return View(scale, origin, hung.mirrored, window)


def small_height(hung: DrawnLeaf, told: Told, scale: float) -> float:
    """Return how high a window is that just holds the small picture at a scale, points."""
    _, bottom, _, top = _latch_side(hung, told) if told.latch_side else _extent(hung, told)
    return scale * (top - bottom) + _head(told) + _ring_room(hung, told) + 3.0 * SIZE


def _head(told: Told) -> float:
    """Return the height kept for the lines of words at the top, points."""
    return _ROW * (2 if told.contact else 1)


def _ring_room(hung: DrawnLeaf, told: Told) -> float:
    """Return what more is kept where the ring about a contact stands as high as the swing, points."""
    if told.latch_side or not told.contact or hung.contact is None:
        return 0.0
    return _RING if hung.contact[1] > _HIGH * _extent(hung, told)[3] else 0.0


def _latch_side(hung: DrawnLeaf, told: Told) -> tuple[float, float, float, float]:
    at = told.about or hung.contact
    assert at is not None
    x, y = at
    return x - 2.5, y - 1.5, x + 2.5, y + 0.5 + hung.h.T


def _extent(hung: DrawnLeaf, told: Told) -> tuple[float, float, float, float]:
    h = hung.h
    radius = max(math.dist(hung.pin.at, corner) for corner in leaf_corners(h))
    left = min(-h.F - 8.0, hung.pin.x_p - radius * (1.0 if hung.reach > math.pi / 2 else 0.0) - 1.0)
    top = hung.pin.y_p + max(radius, (hung.open_other or 0.0) + h.g_h - hung.pin.x_p)
    bottom, right = min(-h.D, hung.wall_face - hung.wall_depth), hung.opening + h.F + 8.0
    for _, box in floor_boxes(hung) if told.floor else ():
        left, bottom = min(left, box.left), min(bottom, box.bottom)
        right, top = max(right, box.right), max(top, box.top)
    return left, bottom, right, top


def inset_still(
    hung: DrawnLeaf,
    view: View,
    display: Display,
    clear_at_90: float | None,
    hand: str,
    told: Told,
    swept: bool = False,
) -> list[Primitive]:
    """Return what of the small picture does not move; with `swept` all that leaf and hardware sweep."""
    parts: list[Primitive] = [_ground(view), *background(hung), *(swept_regions(hung) if swept else ())]
    parts += floor_parts(hung, view, display, SIZE) if told.floor and not told.latch_side else []
    parts += [*_walls(hung, view), *_jambs(hung)]
    parts += [Polygon("A-DOOR-SWNG", shape.points, "door") for shape in hung.other_leaf]
    parts += [_thing(shape) for thing in hung.standing if thing.met for shape in thing.shapes]
    parts += door_stop_parts(hung)
    parts.append(closed_outline(hung))
    parts += [] if swept else _swept(hung)
    width = _clear_width(hung, view, display, clear_at_90)
    parts += [*width, *_stop_set_out(hung, view, display, told, width)]
    parts += _heading(view, hand, told)
    return parts


def inset_moving(hung: DrawnLeaf, angle: float, view: View, told: Told) -> list[Primitive]:
    """Return the open leaf in the small picture, with its hardware, and a ring where it is stopped.

    A contact that only the small picture shows has a ring and words, as in the large one.
    """
    pin = hung.pin.at
    parts: list[Primitive] = [Polygon("A-DETL-HNGE", turned(leaf_outline(hung), pin, angle), "door")]
    for shape in hung.hardware:
        points = turned(shape.points, pin, angle)
        if shape.radius:
            parts.append(Arc("A-DOOR-HDWR", points[0], shape.radius, 0.0, 2 * math.pi, "poche"))
        else:
            parts.append(Polygon("A-DOOR-SWNG", points, "poche"))
    if hung.contact is not None and angle >= hung.reach - TOLERANCE:
        parts += touching_marks(hung, TOUCHING_SMALL)
        only_here = told.latch_side or bool(told.contact)
        parts.append(Symbol("A-ANNO-REDL", hung.contact, "contact" if only_here else "graze", "contact"))
        if told.contact:
            parts += _contact_words(view, told.contact)
    return parts


def _contact_words(view: View, words: str) -> list[Primitive]:
    """The words on paper of their own, for the outline of a return wall may run up through them."""
    left, base = view.to_sheet(row(view, 2))
    box = text_box((left, base), words, SIZE)
    corners = rectangle(box.left - 1.0, box.right + 1.0, box.bottom, box.top)
    strip = Polygon("A-ANNO-BRDR-PICT", tuple(map(view.to_plan, corners)), "paper", outlined=False)
    return [strip, Text("A-ANNO-REDL", row(view, 2), words, SIZE)]


def _ground(view: View) -> Polygon:
    window = view.window
    corners = ((window.left, window.bottom), (window.right, window.top))
    (x_0, y_0), (x_1, y_1) = (view.to_plan(corner) for corner in corners)
    outline = rectangle(min(x_0, x_1), max(x_0, x_1), y_0, y_1)
    return Polygon("A-ANNO-BRDR-PICT", outline, "paper", outlined=False)


def _walls(hung: DrawnLeaf, view: View) -> list[Polygon]:
    h, shown = hung.h, view.plan_window()
    bottom = hung.wall_face - hung.wall_depth
    right = hung.opening + h.F
    spans = ((shown.left + 2 / view.scale, -h.F), (right, shown.right - 2 / view.scale))
    return [Polygon("A-DOOR-SWNG", rectangle(x_0, x_1, bottom, hung.wall_face), _POCHE) for x_0, x_1 in spans]


def _jambs(hung: DrawnLeaf) -> list[Polygon]:
    h, O = hung.h, hung.opening  # noqa: E741 - the letter of the opening width
    points = ((-h.F, -h.D), (h.s, -h.D), (h.s, -h.R), (0.0, -h.R), (0.0, 0.0), (-h.F, 0.0))
    mirrored = tuple((O - x, y) for x, y in points)
    return [Polygon("A-DOOR-SWNG", outline, "plate", "frame") for outline in (points, mirrored)]


def _thing(shape: Shape) -> Polygon | Arc:
    if shape.radius:
        return Arc("A-DOOR-SWNG", shape.points[0], shape.radius, 0.0, 2 * math.pi, _POCHE)
    return Polygon("A-DOOR-SWNG", shape.points, _POCHE)


def _swept(hung: DrawnLeaf) -> list[Primitive]:
    """The arc of the latch edge from closed to as far as the leaf goes."""
    x, y = leaf_corners(hung.h)[2]
    x_p, y_p = hung.pin.at
    start = math.atan2(y - y_p, x - x_p)
    return [Arc("A-DOOR-SWNG", hung.pin.at, math.hypot(x - x_p, y - y_p), start, start + hung.reach)]


def clear_width_points(hung: DrawnLeaf) -> tuple[Point, Point]:
    """Return the two points the clear width at 90 degrees is measured between, level with the frame stop.

    From the open leaf's stop-side face, or the hinge-side stop where that stands farther in, to the stop on
    the latch side, the closed other leaf, or the face of the other leaf where both stand open square.
    """
    h = hung.h
    leaf = max(x for x, _ in turned(leaf_corners(h), hung.pin.at, math.pi / 2))
    limit = h.O if hung.other_leaf else hung.opening - h.s
    if hung.open_other is not None:
        return ((max(h.heel_s, leaf), 0.0), (hung.opening - max(h.heel_s, leaf), 0.0))
    return ((max(h.heel_s, leaf), 0.0), (limit, -h.R))


def _square_open_other(hung: DrawnLeaf) -> list[Primitive]:
    """A pair's other leaf, open square before this one, as a thin line."""
    if hung.open_other is None:
        return []
    h, pin = hung.h, hung.pin
    face, low = hung.opening - pin.x_p - pin.o, pin.y_p + h.g_h - pin.x_p
    outline = rectangle(face - h.T, face, low, low + hung.open_other)
    return [Polyline("A-DOOR-CLSD", outline, closed=True)]


def _far_end(hung: DrawnLeaf) -> str:
    """Say what the clear width at 90 degrees is measured to."""
    if hung.open_other is not None:
        return "face of the other leaf, open square too"
    return "closed other leaf" if hung.other_leaf else "stop"


def _clear_width(hung: DrawnLeaf, view: View, display: Display, value: float | None) -> list[Primitive]:
    """The leaf at 90 as a thin line, and the clear width under the wall."""
    if value is None:
        return []
    h = hung.h
    ghost = Polyline("A-DOOR-CLSD", turned(leaf_corners(h), hung.pin.at, math.pi / 2), closed=True)
    a, b = clear_width_points(hung)
    low = view.to_plan((0.0, view.window.bottom + 2.1 * SIZE))[1]
    number = display.length(value, "down")
    room = view.window.width - 2 * AIR
    text = fitted([number + words for words in CLEAR], SIZE + 0.5, room)
    middle = view.to_sheet(((a[0] + b[0]) / 2, low))
    width = text_width(text, SIZE + 0.5)
    x = min(max(middle[0], view.window.left + 3 + width / 2), view.window.right - 3 - width / 2)
    at = view.to_plan((x, view.window.bottom + 0.6 * SIZE))
    line_a, line_b = (a[0], low), (b[0], low)
    dimension = Dimension(
        "A-ANNO-DIMS",
        a,
        b,
        line_a,
        line_b,
        text,
        at,
        CLEAR_WIDTH,
        value,
        0.0,
        SIZE + 0.5,
        explained=f"{_MEASURED_BETWEEN.format(_far_end(hung))}: {number}",
    )
    return [ghost, *_square_open_other(hung), dimension]


def _stop_set_out(
    hung: DrawnLeaf, view: View, display: Display, told: Told, beside: list[Primitive]
) -> list[Primitive]:
    """How far along a door stop stands, in the row of the clear width where its words leave the room."""
    if hung.door_stop is None or told.latch_side:
        return []
    low, size = view.window.bottom, SIZE + 0.5
    found = dimension_at(hung, view, display, size, (low + 2.1 * SIZE, low + 0.6 * SIZE))
    box = text_box(view.to_sheet(found.text_at), found.text, size, "middle")
    taken = [
        text_box(view.to_sheet(one.text_at), one.text, size, "middle")
        for one in beside
        if isinstance(one, Dimension)
    ]
    return [] if any(box.overlaps(other, 2.0) for other in taken) else [found]


def _heading(view: View, hand: str, told: Told) -> list[Primitive]:
    """The hand, and which side is outside, on a strip of paper that keeps walls from under the words."""
    window = view.window
    low, high = window.top - _head(told) + 2.0, window.top  # the swing's arc touches the head
    corners = rectangle(window.left, window.right, low, high)
    strip = Polygon("A-ANNO-BRDR-PICT", tuple(map(view.to_plan, corners)), "paper", outlined=False)
    what = "latch side, enlarged" if told.latch_side else ""
    choices = (" · ".join(filter(None, (what, hand))), what or hand, hand.partition(",")[0])
    words = fitted(choices, SIZE, window.width - 2 * AIR)
    return [strip, Text("A-ANNO-NOTE", row(view, 1), words, SIZE)] if words else []


def row(view: View, number: int) -> Point:
    """Return where a line of words at the top starts, the first being 1."""
    window = view.window
    return view.to_plan((window.left + AIR, window.top - number * _ROW + 3.0))


def latch_side(
    hung: DrawnLeaf, angle: float, window: Box, display: Display, scales: Sequence[float] = ()
) -> tuple[View, tuple[Primitive, ...]] | None:
    """Return the latch side with its least gap dimensioned, and the view it is drawn through.

    None at any other angle than that of the closest passage, radians. Scales as for `inset_view`.
    """
    passage = hung.latch
    if passage is None or abs(angle - passage.angle) > TOLERANCE or passage.angle > hung.reach:
        return None
    number = display.length(passage.distance, "down")
    choices = (f"{number}, the least at the latch edge", f"{number} at the latch edge", number)
    words = fitted(choices, SIZE, window.width - 2 * AIR)
    told = Told(words, latch_side=True, about=passage.point_standing)
    view = inset_view(hung, window, told, scales)
    bare = replace(hung, hardware=())  # a lever beside the edge would only hide it
    still = inset_still(bare, view, display, None, "", told)
    moving = inset_moving(bare, passage.angle, view, told)
    return view, (*still, *moving, _latch_dimension(passage, words, number, view))


def _latch_dimension(passage: LeastGap, words: str, number: str, view: View) -> Dimension:
    """The gap between its two points, its line carried up to the words above."""
    a, b = passage.point_standing, passage.point_moving
    left, base = view.to_sheet(row(view, 2))
    width = text_width(words, SIZE)
    above = (view.to_sheet(b)[0], base - 2.0)
    far = max((left, left + width), key=lambda x: abs(x - above[0]))
    shoulder = (view.to_plan(above), view.to_plan((far, base - 2.0)))
    told = _TOLD.format(passage.kind, number)
    return Dimension(
        "A-ANNO-DIMS", a, b, a, b, words, view.to_plan((left + width / 2, base)), "latch edge least",
        passage.distance, 0.0, SIZE, shoulder, told,
    )  # fmt: skip
