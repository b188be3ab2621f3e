"""Where everything of the client's picture goes: type size, rooms, verdicts, magnifiers; points of the sheet.

Type gives way until the rooms have their share; rooms stand side by side or one over the other, whichever
shows them larger.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.lettering import ASCENT, text_box, text_width
from configurator.drawing.base.primitives import Point, turned
from configurator.drawing.base.view import Box, View
from configurator.drawing.client.lens import Lens
from configurator.drawing.client.room import Room, placed, room_extent
from configurator.drawing.pages.notes import broken
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.leaf import leaf_outline
from configurator.wording.verdict import Advice, Verdict

EDGE = 8.0
LEADING = 1.32
TITLE, VERDICT, HEADLINE, LESSER = 1.15, 1.6, 1.4, 0.92
"""Type sizes of what is lettered, of the sentences'."""
_LEAST = 6.0
"""Points: type that gives way to the picture goes no lower."""
_SHARE = 0.5
"""Least share of the height that rooms side by side keep; one over the other they keep all of their row."""
_BESIDE = 0.34
"""Share of the width that verdicts have beside their rooms, where these stand one over the other."""
_STRIP = 2.2
"""Height of the strip for the way through under the wall, in heights of type."""
TOUCHES = "touches here"
_FORMS = ("hinge stands out ", "stands out ", "")
"""What stands before the number of the measure at a magnifier, shortened where room is scarce."""
PILL = 1.1
"""Type size of the measure at a magnifier, of the sentences'."""


@dataclass(frozen=True, slots=True)
class LensSpot:
    """A magnifier's square on the sheet, and its measure: words, where they start, the strip behind them."""

    box: Box
    words: str
    at: Point
    strip: Box


@dataclass(frozen=True, slots=True)
class Panel:
    """One hinge on the sheet: its room and magnifier, its verdict, and the boxes they have."""

    room: Room
    lens: Lens
    verdict: Verdict
    title: str
    window: Box
    banner: Box
    title_at: Point
    chosen: bool
    spot: LensSpot
    leader: tuple[Point, Point] | None
    names_leaves: bool
    """Whether its verdict tells two leaves apart, so that the picture must."""


@dataclass(frozen=True, slots=True)
class Told:
    """All that is lettered, and the leaves that are drawn, before anything has its place."""

    leaves: tuple[tuple[DrawnLeaf, ...], ...]
    verdicts: tuple[Verdict, ...]
    advice: Advice
    titles: tuple[str, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """Type size and boxes, points."""

    letters: float
    windows: tuple[Box, ...]
    banners: tuple[Box, ...]
    titles: tuple[Point, ...]
    foot: Box
    scale: float


def planned(told: Told, width: float, height: float, letters: float) -> Plan:
    """Return the plan with the largest type that leaves the rooms their share, these as large as can be."""
    size = letters
    while True:
        plans = [
            one for one in (_columns(told, width, height, size), _rows(told, width, height, size)) if one
        ]
        if plans:
            return max(plans, key=lambda one: one.scale)
        if size <= _LEAST:
            return _columns(told, width, height, size, 0.0) or _squeezed(told, width, height, size)
        size = max(size * 0.95, _LEAST)


def _foot_height(told: Told, width: float, size: float) -> float:
    head = len(broken(told.advice.headline, size * HEADLINE, width, bold=True))
    lines = sum(len(broken(one, size * LESSER, width)) for one in told.lines)
    return LEADING * size * (head * HEADLINE + lines * LESSER) + 0.5 * size


def _banner_height(told: Told, width: float, size: float) -> float:
    room = width - icon_room(size) - 0.8 * size
    return max(
        LEADING * size * (VERDICT * len(broken(one.title, size * VERDICT, room, bold=True))
                          + len(broken(one.because, size, room)))
        + 0.7 * size
        for one in told.verdicts
    )  # fmt: skip


def icon_room(size: float) -> float:
    """Return the width that a verdict keeps for its tick or cross, points."""
    return 3.0 * size


def _fits(told: Told, banner: float, foot: float, size: float) -> bool:
    """Whether every word is short enough for its line: no line is broken within a word."""
    room = banner - icon_room(size) - 0.8 * size
    longest = max(
        [text_width(word, size * VERDICT, True) for one in told.verdicts for word in one.title.split()]
        + [text_width(word, size) for one in told.verdicts for word in one.because.split()],
        default=0.0,
    )
    titles = max(text_width(f"{title} ✓", size * TITLE, True) for title in told.titles)
    if titles > banner:
        return False
    return longest <= room and text_width("mmmmmmmmmmmm", size * HEADLINE, True) <= foot


def _columns(told: Told, width: float, height: float, size: float, share: float = _SHARE) -> Plan | None:
    """Rooms side by side, each with its verdict under it; None where such type leaves them too little."""
    count = len(told.leaves)
    across = (width - (count + 1) * EDGE) / count
    title, banner = LEADING * size * TITLE, _banner_height(told, across, size)
    foot = _foot_height(told, width - 2 * EDGE, size)
    low = EDGE + foot + 0.5 * size + banner + EDGE * 0.5
    top = height - EDGE * 0.5 - title
    if top - low < share * height or not _fits(told, across, width - 2 * EDGE, size):
        return None
    lefts = [EDGE + n * (across + EDGE) for n in range(count)]
    windows = tuple(Box(left, low, left + across, top) for left in lefts)
    banners = tuple(Box(left, low - EDGE * 0.5 - banner, left + across, low - EDGE * 0.5) for left in lefts)
    titles = tuple((left, top + 0.3 * size * TITLE) for left in lefts)
    return Plan(size, windows, banners, titles, Box(EDGE, EDGE, width - EDGE, EDGE + foot),
                 _scale(told, windows[0], size))  # fmt: skip


def _rows(told: Told, width: float, height: float, size: float) -> Plan | None:
    """Rooms one over the other, each with its verdict beside it."""
    count = len(told.leaves)
    foot = _foot_height(told, width - 2 * EDGE, size)
    bottom = EDGE + foot + 0.5 * size
    high = (height - bottom - count * EDGE) / count
    beside = _BESIDE * width
    banner = _banner_height(told, beside, size)
    title = LEADING * size * TITLE
    if high < max(banner + 2 * title, 0.2 * height) or not _fits(told, beside, width - 2 * EDGE, size):
        return None
    tops = [height - EDGE * 0.5 - n * (high + EDGE) for n in range(count)]
    right = width - EDGE - beside - EDGE
    windows = tuple(Box(EDGE, top - high, right, top) for top in tops)
    titles = tuple((right + EDGE, top - ASCENT * size * TITLE - 2.0) for top in tops)
    banners = tuple(
        Box(right + EDGE, at[1] - 0.6 * size - banner, width - EDGE, at[1] - 0.6 * size) for at in titles
    )
    return Plan(size, windows, banners, titles, Box(EDGE, EDGE, width - EDGE, EDGE + foot),
                 _scale(told, windows[0], size))  # fmt: skip


def _squeezed(told: Told, width: float, height: float, size: float) -> Plan:
    """Too small a sheet for everything: the rooms keep a third, and what is lettered runs off below."""
    count = len(told.leaves)
    across = (width - (count + 1) * EDGE) / count
    lefts = [EDGE + n * (across + EDGE) for n in range(count)]
    low, top = height * 0.55, height - 1.5 * size
    windows = tuple(Box(left, low, left + across, top) for left in lefts)
    banners = tuple(Box(left, low * 0.5, left + across, low - 2.0) for left in lefts)
    titles = tuple((left, top + 2.0) for left in lefts)
    return Plan(size, windows, banners, titles, Box(EDGE, 0.0, width - EDGE, low * 0.5),
                 _scale(told, windows[0], size))  # fmt: skip


def _scale(told: Told, window: Box, size: float) -> float:
    """Return the scale at which every room fits a window, points an inch."""
    extents = [room_extent(leaves) for leaves in told.leaves]
    high = max(window.height - _STRIP * size, 1.0)
    return min(min(window.width / one.width, high / one.height) for one in extents)


def rooms_of(told: Told, plan: Plan) -> list[Room]:
    """Return every hinge's room in its window, all at the plan's scale."""
    return [
        _room(leaves, window, plan.scale, plan.letters)
        for leaves, window in zip(told.leaves, plan.windows, strict=True)
    ]


def room_in(leaves: tuple[DrawnLeaf, ...], window: Box) -> Room:
    """Return a room as large as a window shows it, with nothing lettered about it."""
    extent = room_extent(leaves)
    scale = min(window.width / extent.width, window.height / extent.height)
    return _room(leaves, window, scale, 0.0)


def _room(leaves: tuple[DrawnLeaf, ...], window: Box, scale: float, letters: float) -> Room:
    extent, mirrored = room_extent(leaves), leaves[0].mirrored
    hand = -1.0 if mirrored else 1.0
    middle = (window.left + window.right) / 2 - hand * scale * (extent.left + extent.right) / 2
    spare = max(window.height - _STRIP * letters - scale * extent.height, 0.0)
    base = window.bottom + _STRIP * letters + 0.1 * spare - scale * extent.bottom
    return Room(leaves, View(scale, (middle, base), mirrored, window))


def lens_spots(
    rooms: Sequence[Room], plan: Plan, pills: Sequence[str], circle: tuple[Point, float]
) -> list[LensSpot]:
    """Return where the magnifiers go, all in one place of their windows, with their measures beside or under.

    In the corner over the open door, or over the way through where the doors stand there.
    """
    corners = ((False, (1.0, 0.86, 0.74)), (True, (1.0, 0.86, 0.72, 0.6)))
    tries = [
        (share, at_way, beside, form)
        for at_way, shares in corners
        for form in _FORMS
        for share in shares
        for beside in (True, False)
    ]
    spots: list[LensSpot] = []
    for share, at_way, beside, form in tries:
        side = min(_side(room, plan.letters, at_way, beside) for room in rooms) * share
        said = [words.replace(_FORMS[0], form) for words in pills]
        pairs = zip(rooms, said, strict=True)
        spots = [_spot(room, words, plan.letters, max(side, 1.0), at_way, beside) for room, words in pairs]
        if all(_is_free(room, spot, circle) for room, spot in zip(rooms, spots, strict=True)):
            return spots
    return [replace(spot, words="") for spot in spots]


def _is_left(room: Room, over_way: bool) -> bool:
    """Whether a corner is the left one; a mirrored room has its hinge at the right."""
    return over_way == room.view.mirrored


def _side(room: Room, size: float, over_way: bool, beside: bool) -> float:
    """Return how large a magnifier's square may be in a corner, its measure beside it or under it; points."""
    first, view, window = room.first, room.view, room.view.window
    flat = max(2 * first.pin.o - first.h.i + first.h.T + first.pin.y_p, 4.0)
    inner = (first.pin.x_p + 7.0, first.pin.y_p + 13.0) if over_way else (first.pin.x_p - 2.5, flat)
    x, low = view.to_sheet(inner)
    wide = (x - window.left if _is_left(room, over_way) else window.right - x) - 5.0
    low += 0.0 if beside else 2.0 * PILL * size
    return min(wide, window.top - low - 9.0)


def _spot(room: Room, words: str, size: float, side: float, over_way: bool, beside: bool) -> LensSpot:
    """Return a magnifier's square in a corner, and its measure beside it at the top, or under it."""
    window, left = room.view.window, _is_left(room, over_way)
    x = window.left + 5.0 if left else window.right - 5.0 - side
    box = Box(x, window.top - 5.0 - side, x + side, window.top - 5.0)
    size *= PILL
    air, wide = 0.4 * size, text_width(words, size, True)
    if beside:
        at = (box.right + 2 * air if left else box.left - 2 * air - wide, box.top - 1.2 * size)
    else:
        most = window.right - 2 * air - wide
        at = (
            min(max((box.left + box.right - wide) / 2, window.left + 2 * air), most),
            box.bottom - 1.3 * size,
        )
    strip = text_box(at, words, size, "start", True)
    return LensSpot(box, words, at, Box(strip.left - air, strip.bottom - 1, strip.right + air, strip.top + 2))


def _is_free(room: Room, spot: LensSpot, circle: tuple[Point, float]) -> bool:
    line = leader_line(room, spot.box, circle)
    crossed = line is not None and clip_segment(*line, spot.strip.shrunk(-1.0)) is not None
    inside = room.view.window.holds(spot.strip)
    return inside and not crossed and not any(_meets_a_leaf(room, box) for box in (spot.box, spot.strip))


def leader_line(room: Room, box: Box, circle: tuple[Point, float]) -> tuple[Point, Point] | None:
    """Return the line from a magnifier in a square to the place that it shows; None where they touch."""
    middle, r = ((box.left + box.right) / 2, (box.bottom + box.top) / 2), box.width / 2
    spot, small = room.view.to_sheet(circle[0]), circle[1] * room.view.scale
    away = math.dist(middle, spot)
    if away <= r + small:
        return None
    ux, uy = (spot[0] - middle[0]) / away, (spot[1] - middle[1]) / away
    return (middle[0] + ux * r, middle[1] + uy * r), (spot[0] - ux * small, spot[1] - uy * small)


def _meets_a_leaf(room: Room, box: Box) -> bool:
    for leaf in room.leaves:
        open_leaf = turned(leaf_outline(leaf), leaf.pin.at, leaf.reach)
        points = [room.view.to_sheet(point) for point in placed(room, leaf, open_leaf)]
        long = [
            (a[0] + (b[0] - a[0]) * n / 12, a[1] + (b[1] - a[1]) * n / 12)
            for a, b in ((points[0], points[1]), (points[3 % len(points)], points[2]))
            for n in range(13)
        ]
        if any(box.has(point) for point in long):
            return True
    return False
