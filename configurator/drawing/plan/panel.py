"""The plan of one leaf on one hinge width: framed about the hinge, where the argument is.

Three parts. What stands still; what turns with the leaf; and the notes, which lie over both. A panel also
has an inset with the whole opening. Everything is in the axes of the geometry, pull side up; a leaf that
turns clockwise is mirrored by its view alone.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from configurator.drawing.base.clip import clip_polygon
from configurator.drawing.base.dimension_strokes import line_boxes
from configurator.drawing.base.lettering import Room
from configurator.drawing.base.primitives import Point, Primitive, turned
from configurator.drawing.base.view import AS_FRAMED, Box, Framing, View, box_around
from configurator.drawing.plan.dimensions import Dimensions, lettered, opens_flat, text_boxes
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.inset import (
    Told,
    inset_moving,
    inset_still,
    inset_view,
    latch_side,
    told_in_inset,
)
from configurator.drawing.plan.jamb import hinge_jamb, material_of, stud_boxes, wall_beside
from configurator.drawing.plan.labels import NO_KEYS, thing_labels
from configurator.drawing.plan.leaf import (
    barrel,
    closed_outline,
    door_leaf,
    frame_leaf,
    hardware_parts,
    open_leaf,
)
from configurator.drawing.plan.part_dimensions import part_dimensions
from configurator.drawing.plan.standing_things import background, door_stop_parts, set_out, standing_things
from configurator.drawing.plan.swept import swept_regions
from configurator.drawing.plan.swing_notes import leaf_alone, swing_notes
from configurator.geometry.leaf_corners import leaf_corners
from configurator.units import Display

THINNEST = 1.0
"""No sheet of metal is drawn thinner than this, points."""
TEXT_SIZE = 8.0
_LEAST_PANEL_FOR_INSET = 190.0
_INSET_SHARE = (0.44, 0.36)
_LEAST_INSET = (50.0, 44.0)
_EDGE = 5.0
_PIN_AT, _PIN_AT_STANDING = 0.43, 0.6
"""Where the pin lies across the window, of its width, from the side of the wall.

The first for a leaf that opens flat, the second for one that stands out: its dimensions go over the wall."""
_LEFT_LEAST, _LEFT_MOST = 4.5, 13.0
_RIGHT_LEAST = 4.5
_CLOSE = 1.5
"""Inches kept beyond the frame and past the pin in the closest view there may be."""
_DIMENSION_ROOM = 66.0
"""Points kept above the barrel for the rows of dimensions."""
_LEAF_ROOM = 10.0
"""Points kept above the leaf open flat, for the words of a contact or of the room that is left."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """Primitives with the view that lays them on the sheet."""

    view: View
    still: tuple[Primitive, ...]
    notes: tuple[Primitive, ...] = ()


@dataclass(frozen=True, slots=True)
class SmallPlace:
    """Where on the sheet a panel's small picture goes, and the scales it may have, points an inch.

    `whole` are those of the whole opening, `close` those of its latch side alone.
    """

    box: Box
    whole: tuple[float, ...]
    close: tuple[float, ...]
    floor: bool = True
    """Whether the whole opening shows the manoeuvring space."""


@dataclass(frozen=True, slots=True)
class Panel:
    """One candidate's pictures, all but what turns with its leaf, and the room left for what moves."""

    hung: DrawnLeaf
    main: Drawing
    dimensions: Dimensions
    inset: Drawing | None
    told: Told
    room: Room
    title: str
    size: float
    small_scales: tuple[float, ...] = ()
    """Scales its latch side may have where it is enlarged, points an inch; empty where any will do."""
    swept: bool = False
    """Whether it shows what leaf and hardware sweep, and with it the least gap over the whole swing."""


def closest_scale(hung: DrawnLeaf, width: float, height: float) -> float:
    """Return the greatest scale, points an inch, at which such a window still holds hinge and frame.

    What the leaf meets farther along the wall may then lie outside, as may the names of what stands there.
    """
    h, pin = hung.h, hung.pin
    share = _pin_at(hung)
    across = min(width * share / (h.F + _CLOSE), width * (1 - share) / _CLOSE)
    leaf = 2 * pin.o - h.i + h.T
    barrel = pin.y_p + h.d_b / 2
    down = max(h.D, h.R) + 0.5
    upward = min((height - _LEAF_ROOM) / (down + leaf), (height - _DIMENSION_ROOM) / (down + barrel))
    return min(across, upward)


def view_scale(hung: DrawnLeaf, width: float, height: float) -> float:
    """Return the greatest scale, points an inch, at which a window of that size holds the argument."""
    h, pin = hung.h, hung.pin
    left = _LEFT_LEAST
    if hung.contact is not None and -hung.contact[0] + 1.5 <= _LEFT_MOST:
        left = max(left, -hung.contact[0] + 1.5)
    for thing in hung.standing:
        near = min((-max(x for x, _ in shape.points) for shape in thing.shapes), default=0.0)
        if thing.met and 0.0 < near + 2.0 <= _LEFT_MOST:
            left = max(left, near + 2.0)
    share = _pin_at(hung)
    across = min(width * share / left, width * (1 - share) / _RIGHT_LEAST)
    down = max(h.D, h.R) + 0.5
    leaf_up = 2 * pin.o - h.i + h.T + 0.5
    barrel_up = pin.y_p + h.d_b / 2
    upward = min((height - _LEAF_ROOM) / (down + leaf_up), (height - _DIMENSION_ROOM) / (down + barrel_up))
    return max(min(across, upward), 1.0)


def _pin_at(hung: DrawnLeaf) -> float:
    return _PIN_AT if opens_flat(hung) else _PIN_AT_STANDING


def spare_height(hung: DrawnLeaf, window: Box, scale: float) -> float:
    """Return the points of a window's height that the picture leaves at that scale, below 0 if it is cut."""
    h = hung.h
    barrel = _DIMENSION_ROOM + scale * (hung.pin.y_p + h.d_b / 2)
    leaf = _LEAF_ROOM + scale * (2 * hung.pin.o - h.i + h.T + 0.5)
    return window.height - scale * (max(h.D, h.R) + 0.5) - max(barrel, leaf)


def main_view(hung: DrawnLeaf, window: Box, scale: float, spare: float) -> View:
    """Return the view about the hinge; scale and spare height are shared, so that frame faces line up."""
    h = hung.h
    away = _pin_at(hung) * window.width
    across = window.right - away if hung.mirrored else window.left + away
    up = window.bottom + scale * (max(h.D, h.R) + 0.5) + max(0.0, spare) * 0.45
    return View(scale, (across, up), hung.mirrored, window)


def panel(
    hung: DrawnLeaf,
    window: Box,
    scale: float,
    spare: float,
    display: Display,
    title: str,
    hand: str,
    clear_at_90: float | None,
    plain: bool,
    swept: bool = False,
    small: SmallPlace | None = None,
    size: float = TEXT_SIZE,
    keys: Mapping[str, str] = NO_KEYS,
    framing: Framing = AS_FRAMED,
    turn: float | None = None,
    kinds: Collection[str] = (),
) -> Panel:
    """Return one candidate's panel: its still parts and notes placed, and room kept for what moves.

    With `swept` it shows what leaf and hardware sweep, under everything else. Without a place of its own the
    small picture lies in a corner of the window, where there is room for it: never where somebody framed the
    large one otherwise. Names keep off the dimensions as they stand with the leaf at `turn`, radians; None:
    at the end of its swing. `kinds` are the kinds of parts that have their dimensions too.
    """
    view = framing.of(main_view(hung, window, scale, spare))
    room = Room(window.shrunk(2.0))
    inset = None
    place = _inset_place(hung, view) if small is None else small.box
    told = told_in_inset(hung, place, view, clear_at_90)
    if small is not None and not small.floor:
        told = replace(told, floor=False)
    if small is not None or (framing == AS_FRAMED and _holds_inset(window, place)):
        room.take(place)
        seen = inset_view(hung, place, told, _scales(small, told))
        inset = Drawing(seen, tuple(inset_still(hung, seen, display, clear_at_90, hand, told, swept)))
    dimensions = Dimensions(hung, view, lettered(hung, display, size, plain), room)
    usual = dimensions.usual() if turn is None else dimensions.at(hung.shown_at(turn))
    words, lines = text_boxes(usual, view), line_boxes(usual, view)
    drawn = _drawn_boxes(hung, view)
    parts = part_dimensions(hung, view, display, kinds, size - 0.5, room, words, lines, drawn)
    words = [*words, *text_boxes(parts, view)]
    labels = thing_labels(hung, view, room, words, [*lines, *drawn], size - 0.5, keys)
    labels += [*parts, *set_out(hung, view, display, size, room)]
    main = Drawing(view, tuple(_still(hung, view, swept)), tuple(labels))
    return Panel(hung, main, dimensions, inset, told, room, title, size, small.close if small else (), swept)


def _scales(small: SmallPlace | None, told: Told) -> tuple[float, ...]:
    if small is None:
        return ()
    return small.close if told.latch_side else small.whole


def _drawn_boxes(hung: DrawnLeaf, view: View) -> list[Box]:
    """Return where lettering would lie over frame, stud, barrel, or the leaf at the end of its swing."""
    h, (x, y), radius = hung.h, hung.pin.at, hung.h.d_b / 2
    knuckle = ((x - radius, y - radius), (x + radius, y + radius))
    frame = ((-h.F, -h.D), (max(h.s, 0.0), hung.pin.y_p))
    leaf = turned(leaf_corners(h), hung.pin.at, hung.reach)
    shown = clip_polygon(leaf, view.plan_window())
    corners = [frame, knuckle, *stud_boxes(hung), *_boards(hung, view), *([shown] if shown else [])]
    return [box_around([view.to_sheet(point) for point in points]) for points in corners]


def _boards(hung: DrawnLeaf, view: View) -> Iterator[tuple[Point, Point]]:
    """Yield opposite corners of the wall's layers that are hatched: words over a hatch are hard to read."""
    left, top = view.plan_window().left, hung.wall_face
    for name, thickness in hung.layers:
        if material_of(name) != "cavity":
            yield (left, top - thickness), (-hung.h.F, top)
        top -= thickness


def _holds_inset(window: Box, place: Box) -> bool:
    """Whether an inset would still be read: neither the panel nor the inset's own place is too small."""
    least_panel = min(window.width, window.height) >= _LEAST_PANEL_FOR_INSET
    return least_panel and place.width >= _LEAST_INSET[0] and place.height >= _LEAST_INSET[1]


def _inset_place(hung: DrawnLeaf, view: View) -> Box:
    """Return the corner below the closed leaf, where the open one never comes, beside the frame."""
    h, window = hung.h, view.window
    stop, below = view.to_sheet((h.s, -h.i - h.T))
    beside = stop - window.left if view.mirrored else window.right - stop
    width = min(_INSET_SHARE[0] * window.width, 240.0, beside - 3 * _EDGE)
    height = min(_INSET_SHARE[1] * window.height, 0.72 * width + 12.0, below - window.bottom - 3 * _EDGE)
    left = window.left + _EDGE if view.mirrored else window.right - _EDGE - width
    return Box(left, window.bottom + _EDGE, left + width, window.bottom + _EDGE + height)


def _still(hung: DrawnLeaf, view: View, swept: bool) -> Iterable[Primitive]:
    thinnest = THINNEST / view.scale
    shown = view.plan_window()
    yield from background(hung)
    if swept:
        yield from swept_regions(hung)
    yield from wall_beside(hung, shown.left - 1.0)
    yield from standing_things(hung)
    yield from door_stop_parts(hung)
    yield from hinge_jamb(hung, thinnest)
    yield from frame_leaf(hung)
    yield closed_outline(hung)


def moving_parts(one: Panel, angle: float) -> tuple[Primitive, ...]:
    """Return what turns with the leaf, at the angle asked for or where it is stopped; radians."""
    hung = one.hung
    shown = hung.shown_at(angle)
    thinnest = THINNEST / one.main.view.scale
    leaf = open_leaf(hung, shown, thinnest)
    return (*hardware_parts(hung, shown), *leaf, *door_leaf(hung, shown), *barrel(hung))


def moving_notes(
    one: Panel, angle: float, display: Display, shorter: int = 0, bare: bool = False
) -> tuple[Primitive, ...]:
    """Return the notes that go with the leaf's place.

    `shorter` passes over so many wordings of dimensions; `bare` letters a clearance with its number alone.
    """
    shown, view = one.hung.shown_at(angle), one.main.view
    dimensions = one.dimensions.at(angle, shorter)
    taken = [*one.room.taken, *text_boxes(dimensions, view), *line_boxes(dimensions, view)]
    room = Room(one.room.window, taken)
    told = swing_notes(one.hung, shown, view, display, room, one.size, one.swept, bare)
    return (*leaf_alone(one.hung, angle), *dimensions, *told)


def moving_inset(one: Panel, angle: float) -> tuple[Primitive, ...]:
    """Return the open leaf in the inset."""
    if one.inset is None:
        return ()
    return tuple(inset_moving(one.hung, one.hung.shown_at(angle), one.inset.view, one.told))


def small_picture(one: Panel, angle: float, display: Display) -> tuple[View, tuple[Primitive, ...]] | None:
    """Return what moves in the inset with its view: the open leaf, or the latch side where it passes closest.

    None for a panel without an inset.
    """
    if one.inset is None:
        return None
    shown, view = one.hung.shown_at(angle), one.inset.view
    closest = latch_side(one.hung, shown, view.window, display, one.small_scales)
    return (view, moving_inset(one, angle)) if closest is None else closest
