"""The labels of a chart: each at what it names, and on nothing else."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np

from configurator.drawing.base.lettering import ASCENT, DESCENT, Room, text_box, text_width
from configurator.drawing.base.primitives import Point, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.charts.chart import SIZE, TEXT, Chart, Curve, Rule

_STEPS = 24
"""A label is tried at so many places along a curve."""
_FAR, _SAME, _WORTH = 12.0, 0.5, 3.0
"""A label that many points nearer to its own curve is not taken for another's; what each point is worth."""
_WRONG_SIDE = 12.0
_APART = 8.0
"""Two labels in a row keep so far apart, points: nearer they read as one."""
_REACHES = ((5.0, 12.0), (22.0, 34.0), (50.0, 70.0))
"""Points that a mark's label may lie off it: a shorter wording near by is better than a full one far off."""


@dataclass(frozen=True, slots=True)
class LineOnSheet:
    """A curve on the sheet, from left to right: how low and high it runs in every point across the sheet."""

    curve: Curve
    points: tuple[Point, ...]
    lows: list[float] = field(repr=False)
    highs: list[float] = field(repr=False)

    @classmethod
    def of(cls, chart: Chart, plot: Box, curve: Curve) -> "LineOnSheet":
        """Return a curve of the chart where it lies in the plot."""
        points = tuple(chart.place(plot, x, y, curve.right) for x, y in curve.points)
        return cls(curve, points, *_lows_and_highs(points, math.ceil(plot.right) + 1))

    def span(self, left: float, right: float) -> tuple[float, float] | None:
        """Return the lowest and highest of the curve between two places across, None where it is not."""
        first, last = max(0, math.floor(left)), max(0, math.floor(right)) + 1
        low = min(self.lows[first:last], default=math.inf)
        return None if low == math.inf else (low, max(self.highs[first:last]))


def _lows_and_highs(points: Sequence[Point], width: int) -> tuple[list[float], list[float]]:
    """Return a curve's lowest and highest in each point across; inf and -inf where it is not."""
    xs, ys = np.array(points, float).T
    edges = np.arange(width + 1, dtype=float)
    at_edges = np.interp(np.clip(edges, xs[0], xs[-1]), xs, ys)
    lows, highs = np.minimum(at_edges[:-1], at_edges[1:]), np.maximum(at_edges[:-1], at_edges[1:])
    columns = np.clip(np.floor(xs).astype(int), 0, width - 1)
    np.minimum.at(lows, columns, ys)
    np.maximum.at(highs, columns, ys)
    off = (edges[1:] < xs[0]) | (edges[:-1] > xs[-1])
    lows[off], highs[off] = math.inf, -math.inf
    return lows.tolist(), highs.tolist()


def labels(chart: Chart, plot: Box, room: Room, lines: Sequence[LineOnSheet]) -> list[Primitive]:
    """Return the labels of marks, curves and rules; each is left out where nothing is free for it."""
    inner = Room(plot.shrunk(1.0), room.taken)
    levels = [chart.place(plot, 0.0, rule.at)[1] for rule in chart.rules if not rule.upright]
    named = [rule for rule in chart.rules if rule.upright and rule.label]
    uprights = [chart.place(plot, rule.at, chart.left.low)[0] for rule in named]
    found: list[Primitive] = []

    def letter(places: Iterable[Point], text: str) -> bool:
        for at in places:
            box = text_box(at, text, SIZE)
            if inner.is_free(box) and not _crossed(box, lines, levels, uprights):
                inner.take(Box(box.left - _APART, box.bottom, box.right + _APART, box.top))
                found.append(Text(TEXT, at, text, SIZE))
                return True
        return False

    for mark in chart.marks:
        at = chart.place(plot, *mark.at, mark.right)
        tries = ((text, reach) for reach in _REACHES for text in mark.wordings)
        any(letter(_about(at, text, reach), text) for text, reach in tries)
    for line in reversed(lines):
        if line.curve.label:
            letter(_along(line, lines, plot), line.curve.label)
    for rule in chart.rules:
        if rule.label:
            letter(_beside(rule, chart, plot), rule.label)
    return found


def _crossed(
    box: Box, lines: Sequence[LineOnSheet], levels: Sequence[float], uprights: Sequence[float]
) -> bool:
    if any(box.bottom - 1.0 < level < box.top + 1.0 for level in levels):
        return True
    if any(box.left - 1.0 < upright < box.right + 1.0 for upright in uprights):
        return True
    spans = [line.span(box.left, box.right) for line in lines]
    return any(span is not None and span[0] < box.top + 1 and span[1] > box.bottom - 1 for span in spans)


def _about(at: Point, text: str, reach: Sequence[float]) -> Iterator[Point]:
    """Yield places about a point, near ones first: right and left of it, below and above."""
    width, x, y = text_width(text, SIZE), at[0], at[1]
    for far in reach:
        for base in (y - far - ASCENT * SIZE, y + far):
            yield from ((left, base) for left in (x + 4.0, x - width / 2, x - width - 4.0))


def _along(line: LineOnSheet, lines: Sequence[LineOnSheet], plot: Box) -> list[Point]:
    """Return places along a curve, best first: nearer to it than to any other, and on its own side."""
    width = text_width(line.curve.label, SIZE)
    found: list[tuple[float, Point]] = []
    for step in range(_STEPS + 1):
        for cost, at in _places_at(line, plot.left + step / _STEPS * plot.width, width):
            nearer = _nearer(text_box(at, line.curve.label, SIZE), line, lines)
            if nearer > -_SAME:
                found.append((cost - _WORTH * nearer, at))
    return [at for _, at in sorted(found, key=lambda one: one[0])]


def _places_at(line: LineOnSheet, middle: float, width: float) -> Iterator[tuple[float, Point]]:
    """Yield places and what they cost: over and under the curve, and level with it where it climbs."""
    here, around = line.span(middle, middle), line.span(middle - width / 2, middle + width / 2)
    if here is None or around is None:
        return
    steep, wrong = around[1] - around[0], (0.0, _WRONG_SIDE)
    over, under = wrong if line.curve.above else wrong[::-1]
    yield steep + over, (middle - width / 2, around[1] + 2.5 + DESCENT * SIZE)
    yield steep + under, (middle - width / 2, around[0] - 2.5 - ASCENT * SIZE)
    before = line.span(middle - 2.0, middle - 2.0)
    climbs = before is None or before[0] <= here[0]
    left, right = (over, under) if climbs else (under, over)
    level = here[0] - 0.5 * (ASCENT - DESCENT) * SIZE
    for off in (5.0, 10.0):
        yield off + left, (middle - off - width, level)
        yield off + right, (middle + off, level)


def _nearer(box: Box, line: LineOnSheet, lines: Sequence[LineOnSheet]) -> float:
    """Return how much nearer a text lies to its own curve than to any other; enough is enough."""
    own = _distance(box, line)
    return min([_FAR, *(_distance(box, other) - own for other in lines if other is not line)])


def _distance(box: Box, line: LineOnSheet) -> float:
    span = line.span(box.left - _FAR / 2, box.right + _FAR / 2)
    return 1e6 if span is None else max(0.0, span[0] - box.top, box.bottom - span[1])


def _beside(rule: Rule, chart: Chart, plot: Box) -> Iterator[Point]:
    width = text_width(rule.label, SIZE)
    if rule.upright:
        x = chart.place(plot, rule.at, 0.0)[0]
        for share in (0.9, 0.75, 0.6, 0.45, 0.3, 0.15, 0.02):
            y = plot.bottom + share * plot.height
            yield from ((left, y) for left in (x + 3.0, x - 3.0 - width))
        return
    y = chart.place(plot, 0.0, rule.at)[1]
    for base in (y + 2.0 + DESCENT * SIZE, y - 2.5 - ASCENT * SIZE):
        yield from (
            (plot.left + share * (plot.width - width), base) for share in (0.02, 0.98, 0.5, 0.25, 0.75)
        )
