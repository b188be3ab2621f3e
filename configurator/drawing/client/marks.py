"""What is lettered and marked on the client's picture: titles, verdicts, advice, measures, names, rings."""

import math
from collections.abc import Iterator, Sequence

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.primitives import (
    Arc,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Text,
    rectangle,
    turned,
)
from configurator.drawing.base.view import Box, box_around
from configurator.drawing.client.layout import (
    HEADLINE,
    LEADING,
    LESSER,
    PILL,
    TITLE,
    TOUCHES,
    VERDICT,
    Panel,
    Plan,
    Told,
    icon_room,
)
from configurator.drawing.client.room import Room, placed, shown_angle, touched
from configurator.drawing.pages.notes import broken
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.inset import clear_width_points
from configurator.drawing.plan.leaf import leaf_outline
from configurator.units import Display
from configurator.wording.client_words import thing_named
from configurator.wording.verdict import LEAF_NAMES

CHOICE, LESSER_EVIL = "our choice", "the better of the two"
_NAME_WIDE = 6.6
"""Width of the name of a leaf, of its type size, with a little air."""
_RING, _WIDE_RING = 0.55, 0.95
"""Radii of the rings about a place that touches, of the type size."""


def lettering(panels: Sequence[Panel], told: Told, plan: Plan) -> Iterator[Primitive]:
    """Yield titles, verdicts, names of things, and the advice with its further lines."""
    size = plan.letters
    for one in panels:
        yield from _title(one, size)
        yield from _banner(one, size)
        yield from _names(one, size)
        yield Polyline("A-ANNO-LENS" if one.chosen else "A-ANNO-BRDR-PICT", _corners(one.window), closed=True)
    base = plan.foot.top
    for words, layer, share, bold in (
        (told.advice.headline, "A-ANNO-TTLB", HEADLINE, True),
        *((line, "A-ANNO-NOTE", LESSER, False) for line in told.lines),
    ):
        for line in broken(words, size * share, plan.foot.width, bold=bold):
            base -= LEADING * size * share
            yield Text(layer, (plan.foot.left, base + 0.3 * size * share), line, size * share, bold=bold)


def _title(one: Panel, size: float) -> Iterator[Primitive]:
    across = one.banner.right - one.title_at[0]
    forms: tuple[str, ...] = (one.title,)
    if one.chosen:
        forms = (
            (f"{one.title}, {CHOICE}", f"{one.title} ✓", one.title)
            if one.verdict.good
            else (f"{one.title}, {LESSER_EVIL}", one.title)
        )
    size *= TITLE
    words = next((form for form in forms if text_width(form, size, True) <= across), forms[-1])
    yield Text("A-ANNO-TTLB", one.title_at, words, size, bold=True)


def _banner(one: Panel, size: float) -> Iterator[Primitive]:
    """The verdict on its ground, with a tick or a cross: told by colour, shape and word."""
    box = one.banner
    yield Polygon("A-ANNO-BRDR-PICT", _corners(box), "yes" if one.verdict.good else "no", outlined=False)
    middle = (box.left + icon_room(size) / 2 + 0.1 * size, (box.bottom + box.top) / 2)
    yield from _sign(middle, 0.95 * size, one.verdict.good)
    left, room = box.left + icon_room(size), box.width - icon_room(size) - 0.8 * size
    titles = broken(one.verdict.title, size * VERDICT, room, bold=True)
    lines = broken(one.verdict.because, size, room)
    high = LEADING * size * (len(titles) * VERDICT + len(lines))
    base = (box.bottom + box.top) / 2 + high / 2
    for line in titles:
        base -= LEADING * size * VERDICT
        yield Text("A-ANNO-VERD", (left, base + 0.3 * size * VERDICT), line, size * VERDICT, bold=True)
    for line in lines:
        base -= LEADING * size
        yield Text("A-ANNO-VERD", (left, base + 0.3 * size), line, size)


def _sign(at: Point, r: float, good: bool) -> Iterator[Polygon]:
    """A tick or a cross as heavy outlines."""
    x, y = at
    strokes = (
        (((-0.8, 0.0), (-0.25, -0.6)), ((-0.25, -0.6), (0.85, 0.65)))
        if good
        else (((-0.7, -0.7), (0.7, 0.7)), ((-0.7, 0.7), (0.7, -0.7)))
    )
    for (a, b), (c, d) in strokes:
        long = ((c - a) ** 2 + (d - b) ** 2) ** 0.5
        nx, ny = -(d - b) / long * 0.17, (c - a) / long * 0.17
        ends = ((a + nx, b + ny), (a - nx, b - ny), (c - nx, d - ny), (c + nx, d + ny))
        yield Polygon("A-ANNO-VERD", tuple((x + r * p, y + r * q) for p, q in ends), "sign", outlined=True)


def way_through(one: Panel, size: float, display: Display) -> Iterator[Primitive]:
    """An arrow across the way through with its width, on the floor beyond the wall."""
    first, view = one.room.first, one.room.view
    wide = first.candidate.clear_width_at_90
    if wide is None:
        return
    (a, _), (b, _) = clear_width_points(first)
    back = min(first.wall_face - first.wall_depth, -first.h.D)
    left, right = sorted((view.to_sheet((a, back))[0], view.to_sheet((b, back))[0]))
    y = view.to_sheet((0.0, back))[1] - 0.55 * size
    arrow = 0.35 * size
    yield Polyline("A-ANNO-DIMS", ((left, y), (right, y)))
    for x, way in ((left, 1.0), (right, -1.0)):
        yield Polyline(
            "A-ANNO-DIMS", ((x + way * arrow, y + arrow / 2), (x, y), (x + way * arrow, y - arrow / 2))
        )
    number = display.length(wide, "down")
    words = next(
        (w for w in (f"{number} to walk through", number) if text_width(w, size) <= one.window.width - 8.0),
        number,
    )
    half = text_width(words, size) / 2
    middle = min(max((left + right) / 2, one.window.left + half + 3), one.window.right - half - 3)
    yield Text("A-ANNO-TEXT", (middle, y - 1.15 * size), words, size, "middle")


def leader(one: Panel) -> Iterator[Primitive]:
    """Yield a ring about the place in the room that is magnified, and the line to the magnifier."""
    spot = one.room.view.to_sheet(one.lens.centre)
    yield Arc("A-ANNO-LENS", spot, one.lens.radius * one.room.view.scale, 0.0, math.tau)
    if one.leader is not None:
        yield Polyline("A-ANNO-LENS", one.leader)


def over(one: Panel, angle: float, letters: float, end: float) -> Iterator[Primitive]:
    """The rim of the magnifier with its measure, what is named in it, and rings where something touches."""
    size = letters
    middle, r = one.lens.on_sheet
    yield Arc("A-ANNO-LENS", middle, r, 0.0, math.tau)
    yield from _measure(one, size)
    if one.verdict.state != "flat":
        for at in touched(one.room, angle, end):
            yield from _rings(one.room.view.to_sheet(at), size, one.verdict.good)
            near = one.lens.view.to_sheet(at)
            if math.dist(near, middle) < 0.94 * r:
                yield from _rings(near, min(1.5 * size, 0.4 * r), one.verdict.good)
    if one.names_leaves:
        yield from _leaf_names(one, angle, letters, end)


def _rings(at: Point, size: float, good: bool) -> Iterator[Primitive]:
    """Light a place up; where the door does what it must all the same, only ring it."""
    if good:
        yield Arc("A-ANNO-LEAD", at, _RING * size, 0.0, math.tau)
        return
    yield Arc("A-ANNO-TUCH", at, _RING * size, 0.0, math.tau)
    yield Arc("A-ANNO-TUCH-WIDE", at, _WIDE_RING * size, 0.0, math.tau)


def _measure(one: Panel, size: float) -> Iterator[Primitive]:
    """How far the hinge stands out: drawn beside the barrel, and told on a strip under the magnifier."""
    if not one.spot.words:
        return
    first, view = one.room.first, one.lens.view
    if one.spot.words != TOUCHES:
        side = first.pin.x_p + first.h.d_b / 2 + 0.45
        low, high = view.to_sheet((side, 0.0)), view.to_sheet((side, first.pin.y_p + first.h.d_b / 2))
        tick = 0.3 * size
        yield Polyline("A-ANNO-DIMS-AXIS", (low, high))
        yield from (
            Polyline("A-ANNO-DIMS-AXIS", ((px - tick, py), (px + tick, py))) for px, py in (low, high)
        )
    yield Polygon("A-ANNO-LENS", _corners(one.spot.strip), "paper")
    yield Text("A-ANNO-TEXT", one.spot.at, one.spot.words, PILL * size, bold=True)


def _names(one: Panel, size: float) -> Iterator[Primitive]:
    """Name what stands along the wall where the magnifier, or else the room, shows enough of it."""
    size *= 0.85
    named, taken = set(), list[Box]()
    for thing in one.room.first.standing:
        words = thing_named(thing.kind)
        for shape in thing.shapes if thing.met and words not in named else ():
            at = _name_place(one, shape.points, shape.radius, words, size)
            box = None if at is None else text_box(at, words, size, "middle")
            if at is not None and box is not None and not any(box.overlaps(other, 1.0) for other in taken):
                named.add(words)
                taken.append(box)
                yield Text("A-ANNO-VERD", at, words, size, "middle")
                break


def _name_place(one: Panel, points: Sequence[Point], radius: float, words: str, size: float) -> Point | None:
    """Return where words lie whole on a thing, in the magnifier or in the room; None where they do not."""
    middle, r = one.lens.on_sheet
    half, high = text_width(words, size) / 2 + 2.0, size
    for view, seen in ((one.lens.view, True), (one.room.view, False)):
        around = [view.to_sheet(point) for point in points]
        box = box_around(around)
        grown = radius * view.scale * 0.7
        box = Box(box.left - grown, box.bottom - grown, box.right + grown, box.top + grown)
        room = Box(middle[0] - r, middle[1] - r, middle[0] + r, middle[1] + r) if seen else one.window
        left, right = max(box.left, room.left) + half, min(box.right, room.right) - half
        low, top = max(box.bottom, room.bottom) + 0.3 * high, min(box.top, room.top) - high
        if left > right or low > top:
            continue
        for down, across in _GRID:
            x, y = left + across * (right - left), top - down * (top - low)
            corners = [(x + dx, y + dy) for dx in (-half, half) for dy in (-0.3 * high, high)]
            strip = Box(x - half, y - 0.3 * high, x + half, y + high)
            in_lens = max(math.dist(corner, middle) for corner in corners) < r - 2.0
            if seen and in_lens and not strip.overlaps(one.spot.strip, 1.0):
                return x, y
            if not seen and not _under_lens(one, strip):
                return x, y
    return None


_GRID = [(down / 4, across / 4) for down in (2, 1, 3, 0, 4) for across in range(5)]


def _under_lens(one: Panel, box: Box) -> bool:
    """Whether a box lies under the magnifier or the strip of its measure."""
    (x, y), r = one.lens.on_sheet
    near = (min(max(x, box.left), box.right), min(max(y, box.bottom), box.top))
    return math.dist(near, (x, y)) < r + 3.0 or box.overlaps(one.spot.strip, 2.0)


def _leaf_names(one: Panel, angle: float, letters: float, end: float) -> Iterator[Primitive]:
    """Name each of two leaves beside it; once where both halves stand alike."""
    size, room = 0.9 * letters, one.room
    stand = [shown_angle(leaf, angle, end) for leaf in room.leaves]
    dutch = room.first.candidate.leaf in ("upper", "lower")
    together = dutch and max(stand) - min(stand) < 0.02
    taken: list[Box] = []
    for n, (leaf, turn) in enumerate(zip(room.leaves, stand, strict=True)):
        if together and n:
            return
        words = "both halves" if together else LEAF_NAMES[leaf.candidate.leaf].lower()
        for at in _beside_leaf(room, leaf, turn, size):
            box = text_box(at, words, size, "middle", True)
            on_floor = box.bottom > room.view.to_sheet((0.0, room.first.wall_face))[1]
            free = (
                on_floor
                and one.window.shrunk(4.0).holds(box)
                and not any(box.overlaps(other, 3.0) for other in taken)
            )
            crossed = one.leader is not None and clip_segment(*one.leader, box.shrunk(-3.0)) is not None
            if free and not crossed and not _under_lens(one, box):
                taken.append(box)
                strip = Box(box.left - 2.0, box.bottom, box.right + 2.0, box.top)
                yield Polygon("A-ANNO-BRDR-PICT", _corners(strip), "paper")
                yield Text("A-ANNO-TEXT", at, words, size, "middle", bold=True)
                break


def _beside_leaf(room: Room, leaf: DrawnLeaf, turn: float, size: float) -> Iterator[Point]:
    """Yield places on both sides of a leaf and beyond its free edge, on the sheet."""
    edge = max(x for x, _ in leaf_outline(leaf))
    middle = -leaf.h.i - leaf.h.T / 2
    lift = leaf.h.T / 2 + 1.6 * size / room.view.scale
    beyond = edge + 1.5 + 0.5 * _NAME_WIDE * size / room.view.scale
    x, y = room.view.to_sheet(placed(room, leaf, turned([(beyond, middle)], leaf.pin.at, turn))[0])
    yield x, y - 0.35 * size
    for along in (edge - 9.0, edge - 18.0, edge - 26.0):
        for side in (-lift, lift, -1.6 * lift, 1.6 * lift, -2.4 * lift, 2.4 * lift):
            point = turned([(along, middle + side)], leaf.pin.at, turn)[0]
            x, y = room.view.to_sheet(placed(room, leaf, (point,))[0])
            yield x, y - 0.35 * size


def _corners(window: Box) -> tuple[Point, ...]:
    return rectangle(window.left, window.right, window.bottom, window.top)
