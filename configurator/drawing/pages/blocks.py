"""Details with strings of dimensions about them, set side by side on a page at one scale.

A block is one detail: what it shows, and the strings on its sides and over it. Its texts take the same room
at any scale, so that the room they leave says which scale fits.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from configurator.drawing.base.lettering import ASCENT, DESCENT, text_width
from configurator.drawing.base.primitives import Anchor, Point, Primitive, Text
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.dimension_string import (
    FAR_ROW,
    SIZE,
    Span,
    heights_of,
    level_string,
    settle,
    texts_width,
    upright_string,
    width_of,
)
from configurator.drawing.pages.page import Detail, Scale
from configurator.units import Display

FIRST = 9.0
"""From what is measured to the first string, points."""
_BETWEEN = 6.0
_ROW = 13.0
_APART = 16.0
"""Between two blocks, points."""
_LABEL, _HEADING, _CAPTION = 6.5, 5.5, 8.0
_BELOW = 3.0
"""How far texts of strings may hang below their block, points."""
_UNDER, _UNDER_DATUM = 19.0, 26.0
"""Room under a block for its name, and for its name under a line of other words, points."""


@dataclass(frozen=True, slots=True)
class String:
    """One upright string; `running` counts all from its first point along one line.

    `heading` stands under it and says what it goes to. Only with `leaders` may texts stand off their places.
    """

    spans: tuple[Span, ...]
    running: bool = False
    heading: str = ""
    leaders: bool = True

    def width(self, display: Display) -> float:
        """Return the room from its line to the next string's, points."""
        return width_of(self.spans, display, self.leaders) + _BETWEEN


@dataclass(frozen=True, slots=True)
class Side:
    """What stands on one side of a block, outward: labels at heights in inches, then strings."""

    strings: tuple[String, ...] = ()
    labels: tuple[tuple[float, str], ...] = ()

    def width(self, display: Display) -> float:
        """Return the room it takes, points."""
        return FIRST + self.label_width + sum(one.width(display) for one in self.strings)

    @property
    def label_width(self) -> float:
        """Return the room of the labels, points."""
        if not self.labels:
            return 0.0
        return max(text_width(words, _LABEL) for _, words in self.labels) + 4.0


@dataclass(frozen=True, slots=True)
class Block:
    """One detail, inches: its extent, its parts, the strings at its low and high side, and rows over it.

    `mirrored` shows the low side to the right. `datum` is what its bottom is called. `led` is how many rows
    have room for texts on leaders, from the first.
    """

    name: str
    extent: Box
    parts: tuple[Primitive, ...]
    low: Side = field(default_factory=Side)
    high: Side = field(default_factory=Side)
    rows: tuple[tuple[Span, ...], ...] = ()
    mirrored: bool = False
    datum: str = ""
    led: int = 1

    def without_words(self, kept: int = 0) -> "Block":
        """Return the block with numbers alone at its upright strings, but for the nearest of each side."""
        return replace(self, low=_without_words(self.low, kept), high=_without_words(self.high, kept))

    def across(self, display: Display) -> float:
        """Return the room of its strings to both sides, points."""
        return sum(self.sides(display))

    def sides(self, display: Display) -> tuple[float, float]:
        """Return the room at the low and at the high side: for strings, texts of rows, and its name."""
        crowded = max((texts_width(row, display) for row in self.rows), default=0.0) / 2
        # A text that makes way for an extension line of a row farther out may stand wholly past the edge.
        passed = (texts_width((span,), display) for row in self.rows[:-1] for span in row)
        crowded = max(crowded, max(passed, default=0.0))
        low, high = max(self.low.width(display), crowded), max(self.high.width(display), crowded)
        return low, max(high, text_width(self.name, _CAPTION, bold=True) - low)

    @property
    def over(self) -> float:
        """Return the room of the rows over it, points; any of them may have texts on leaders."""
        if not self.rows:
            return 0.0
        return row_height(len(self.rows) - 1, self.led) + FAR_ROW + ASCENT * SIZE

    @property
    def under(self) -> float:
        """Return the room of what stands under it."""
        strings = (*self.low.strings, *self.high.strings)
        return _UNDER_DATUM if self.datum or any(one.heading for one in strings) else _UNDER


def row_height(number: int, led: int = 1) -> float:
    """Return how high a row of widths stands over its block, counted from 0, points; see `Block.led`."""
    return FIRST + number * _ROW + min(number, led) * FAR_ROW


def _without_words(side: Side, kept: int) -> Side:
    bare = (
        replace(one, spans=tuple(replace(span, words="") for span in one.spans))
        for one in side.strings[kept:]
    )
    return replace(side, strings=(*side.strings[:kept], *bare))


@dataclass(frozen=True, slots=True)
class Room:
    """What blocks side by side take: points whatever the scale, and inches of the real thing, each way."""

    across: float
    upward: float
    wide: float
    high: float

    def points_in(self, width: float, height: float) -> float:
        """Return the largest scale, points an inch, for that room; 0 where the strings do not fit."""
        return max(min((width - self.across) / self.wide, (height - self.upward) / self.high), 0.0)

    def height_at(self, scale: Scale) -> float:
        """Return how high the blocks stand, points."""
        return self.upward + self.high * scale.points

    def width_at(self, scale: Scale) -> float:
        """Return how far the blocks reach across, points."""
        return self.across + self.wide * scale.points


def room_of(blocks: Sequence[Block], display: Display) -> Room:
    """Return what blocks side by side take."""
    across = sum(one.across(display) for one in blocks) + _APART * (len(blocks) - 1)
    upward = max(one.over for one in blocks) + max(one.under for one in blocks)
    wide = sum(one.extent.width for one in blocks)
    high = max(one.extent.top for one in blocks) - min(one.extent.bottom for one in blocks)
    return Room(across, upward, wide, high)


def set_side_by_side(blocks: Sequence[Block], box: Box, scale: Scale, display: Display) -> tuple[Detail, ...]:
    """Return the blocks as details in a box, spread over its width, their inches level with one another."""
    room = room_of(blocks, display)
    air = (box.width - room.width_at(scale) + _APART * (len(blocks) - 1)) / (len(blocks) + 1)
    low, under = min(one.extent.bottom for one in blocks), max(one.under for one in blocks)
    base = box.bottom + under + (box.height - room.height_at(scale)) / 2 - low * scale.points
    left = box.left
    found: list[Detail] = []
    for one in blocks:
        left += air
        found.append(detail_at(one, left, base, box, scale, display))
        left += one.across(display) + one.extent.width * scale.points
    return tuple(found)


def detail_at(block: Block, left: float, base: float, box: Box, scale: Scale, display: Display) -> Detail:
    """Return a block as a detail from `left` on, its 0 at the height `base`, seen in a box; points."""
    points, extent = scale.points, block.extent
    low, high = block.sides(display)
    first, start = (high, extent.right) if block.mirrored else (low, -extent.left)
    origin = (left + first + start * points, base)
    long = block.across(display) + extent.width * points
    view = View(points, origin, block.mirrored, Box(left, box.bottom, left + long, box.top))
    parts = [*block.parts, *_rows(block, view, display), *_names(block, view)]
    for side, edge, way in ((block.low, extent.left, -1.0), (block.high, extent.right, 1.0)):
        parts += _side(side, (edge, extent.bottom), way * view.hand, view, display)
    return Detail(block.name, scale, view, tuple(parts))


def _side(side: Side, foot: Point, out: float, view: View, display: Display) -> list[Primitive]:
    """Return labels and strings outward from the foot of the block's edge, inches."""
    levels = [heights_of(one.spans, view) for one in side.strings]
    beyond = [tuple(level for later in levels[n:] for level in later) for n in range(len(levels) + 1)]
    edge, floor = view.to_sheet(foot)
    x = edge + out * FIRST
    found: list[Primitive] = _labels(side, x - out * 3.0, out, view, beyond[0])
    x += out * side.label_width
    for number, one in enumerate(side.strings):
        placed = upright_string(
            one.spans, x, out, view, display, beyond[number + 1], one.running, one.leaders, floor - _BELOW
        )
        found += placed.primitives
        if one.heading:
            found.append(_under((x, floor - 9.0), one.heading, _HEADING, view))
        x += out * one.width(display)
    return found


def _labels(side: Side, x: float, out: float, view: View, lines: Sequence[float]) -> list[Primitive]:
    half = (ASCENT + DESCENT) / 2 * _LABEL
    labels = sorted(side.labels)
    wanted = [view.to_sheet((0.0, height))[1] for height, _ in labels]
    anchor: Anchor = "start" if out > 0 else "end"
    return [
        Text(
            "A-ANNO-TEXT",
            view.to_plan((x, y - (ASCENT - DESCENT) / 2 * _LABEL)),
            words,
            _LABEL,
            anchor,
        )
        for (_, words), y in zip(labels, settle(wanted, [half] * len(labels), lines), strict=True)
    ]


def _rows(block: Block, view: View, display: Display) -> list[Primitive]:
    """Return the rows of widths over the block, the first with room for texts on leaders."""
    top = view.to_sheet((0.0, block.extent.top))[1]
    xs = [_across_of(row, view) for row in block.rows]
    found: list[Primitive] = []
    for number, row in enumerate(block.rows):
        y = top + row_height(number, block.led)
        beyond = [x for later in xs[number + 1 :] for x in later]
        found += level_string(row, y, view, display, beyond).primitives
    return found


def _across_of(row: Sequence[Span], view: View) -> list[float]:
    return [view.to_sheet(point)[0] for span in row for point in (span.a, span.b)]


def _names(block: Block, view: View) -> list[Primitive]:
    """Return what stands under the block: what its bottom is, and its own name."""
    middle = (block.extent.left + block.extent.right) / 2
    x, y = view.to_sheet((middle, block.extent.bottom))
    half = text_width(block.name, _CAPTION, bold=True) / 2
    under = min(max(x, view.window.left + half), view.window.right - half)
    found: list[Primitive] = [_under((under, y - block.under + 4.0), block.name, _CAPTION, view, bold=True)]
    if block.datum:
        found.append(_under((x, y - 9.0), block.datum, _LABEL, view))
    return found


def _under(at: Point, words: str, size: float, view: View, bold: bool = False) -> Text:
    layer = "A-ANNO-TTLB" if bold else "A-ANNO-TEXT"
    return Text(layer, view.to_plan(at), words, size, "middle", bold=bold)
