"""Strings of dimensions on a page: chains and running dimensions, their texts placed so that none overlaps.

Texts stand level, outside their line. A text that its own span has no room for is moved to the nearest place
that is free of the texts before it and of the extension lines that run past to strings farther out, and is
joined to its span by a leader. Placing is done in points on the page; what is measured stays in inches.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from configurator.drawing.base.lettering import ASCENT, DESCENT, text_box, text_width
from configurator.drawing.base.primitives import Dimension, Point, Polyline, Primitive, Text
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.page import Detail, Scale
from configurator.units import TOLERANCE, Display

SIZE = 7.0
"""Type size of dimensions on a page, points."""
LAYER = "A-ANNO-DIMS"
AIR = 1.5
"""Least room between two texts, and between a text and a line, points."""
OFF_LINE = 4.0
"""From a dimension line to its text beside it, points."""
LEAD = 13.0
"""From a dimension line to its texts where one of them needs a leader, points."""
NEAR_ROW, FAR_ROW = 2.0, 2.0 + 1.5 * SIZE
"""From a level line to the base of the texts on it, and of those on leaders, points."""
_RISE = (ASCENT - DESCENT) / 2
"""From the base of a text to its middle, of the type size."""
_HALF_LINE = (ASCENT + DESCENT) / 2
_LAP = 0.25
"""Points that the nominal box of a text may reach into another's: its letters do not fill it."""


@dataclass(frozen=True, slots=True)
class Span:
    """One length to be dimensioned: two points in inches of the detail, and what it is called.

    `mark` follows the number, as " *" for what was assumed; `words` follow that. `text` stands instead of the
    number where a fraction would not say it, as the decimal of a gage.
    """

    a: Point
    b: Point
    name: str
    mark: str = ""
    words: str = ""
    text: str = ""

    def lettered(self, value: float, display: Display) -> str:
        """Return the text that stands at the dimension."""
        said = (self.text or display.length(value)) + self.mark
        return f"{said} {self.words}" if self.words else said


@dataclass(frozen=True, slots=True)
class Placed:
    """A string as it is drawn, and what its texts cover on the page; points."""

    primitives: tuple[Primitive, ...]
    boxes: tuple[Box, ...]


def settle(
    wanted: Sequence[float], halves: Sequence[float], lines: Sequence[float] = (), low: float = -math.inf
) -> tuple[float, ...]:
    """Return where along a line texts stand: each as near as can be to where it is wanted, none overlapping.

    `halves` is half of what each text takes along the line; `lines` are places nothing may lie over, nor
    below `low`. The wanted places ascend; so do the answers. Texts that crowd make way to both sides where
    nothing forbids it.
    """
    upward = _settled(wanted, halves, lines, low)
    backward = _settled([-want for want in reversed(wanted)], halves[::-1], [-line for line in lines])
    between = tuple((a - b) / 2 for a, b in zip(upward, reversed(backward), strict=True))
    clear = (_is_free(at, half, low, lines) for at, half in zip(between, halves, strict=True))
    return between if all(clear) else upward


def _settled(
    wanted: Sequence[float], halves: Sequence[float], lines: Sequence[float], free_from: float = -math.inf
) -> tuple[float, ...]:
    """Settle texts one after the other, each past the one before it and the first past `free_from`."""
    found: list[float] = []
    for want, half in zip(wanted, halves, strict=True):
        beside = [line + way * (half + AIR) for line in lines for way in (-1, 1)]
        choices = [want, *beside, *([free_from + half] if free_from > -math.inf else [])]
        free = (one for one in choices if _is_free(one, half, free_from, lines))
        at = min(free, key=lambda place: abs(place - want))
        found.append(at)
        free_from = at + half + AIR
    return tuple(found)


def _is_free(at: float, half: float, free_from: float, lines: Sequence[float]) -> bool:
    reach = half + AIR - TOLERANCE
    return at - half >= free_from - TOLERANCE and not any(abs(at - line) < reach for line in lines)


def upright_string(
    spans: Sequence[Span],
    x: float,
    out: float,
    view: View,
    display: Display,
    lines: Sequence[float] = (),
    running: bool = False,
    leaders: bool = True,
    low: float = -math.inf,
) -> Placed:
    """Return dimensions along an upright line at `x` points, their texts to the right (`out` 1) or left (-1).

    `lines` are the heights on the page, points, of lines that run on past this string. Where `running`, all
    count from one origin, their first point, along one and the same line, and each text stands at its end.
    Without `leaders` a text that had to move stays at its line, for strings whose ends never lie close. No
    text stands below `low`, points.
    """
    ordered = sorted(spans, key=lambda span: _wanted(span, view, running))
    wanted = [_wanted(span, view, running) for span in ordered]
    places = settle(wanted, [_HALF_LINE * SIZE] * len(ordered), lines, low)
    stands = tuple(zip(ordered, wanted, places, strict=True))
    led = leaders and any(_needs_leader(*one, view, running) for one in stands)
    start = x + out * (LEAD if led else OFF_LINE)
    found: list[Primitive] = []
    boxes: list[Box] = []
    for span, want, place in stands:
        dimension, box = _beside(span, place, x, start, out, view, display)
        found.append(dimension)
        boxes.append(box)
        if led and _needs_leader(span, want, place, view, running):
            found.append(_leader(((x, want), (start - out * AIR, place)), view))
    return Placed(tuple(found), tuple(boxes))


def _beside(
    span: Span, place: float, x: float, start: float, out: float, view: View, display: Display
) -> tuple[Dimension, Box]:
    """Return a dimension along an upright line, its text at a height on the page, and what that covers."""
    value = abs(span.b[1] - span.a[1])
    text = span.lettered(value, display)
    at = (start + out * text_width(text, SIZE) / 2, place - _RISE * SIZE)
    across = view.to_plan((x, 0.0))[0]
    line = (across, span.a[1]), (across, span.b[1])
    return _dimension(span, line, text, view.to_plan(at), value), _text_box(at, text)


def _wanted(span: Span, view: View, running: bool) -> float:
    a, b = (view.to_sheet(point)[1] for point in (span.a, span.b))
    return b if running else (a + b) / 2


def _needs_leader(span: Span, want: float, place: float, view: View, running: bool) -> bool:
    if running:
        return abs(place - want) > _HALF_LINE * SIZE / 2
    reach = abs(view.to_sheet(span.a)[1] - view.to_sheet(span.b)[1]) / 2
    return abs(place - want) > reach or reach < _HALF_LINE * SIZE / 2


def width_of(spans: Sequence[Span], display: Display, leaders: bool = True) -> float:
    """Return how far the texts of an upright string may reach out from its line, points."""
    texts = [span.lettered(abs(span.b[1] - span.a[1]), display) for span in spans]
    return (LEAD if leaders else OFF_LINE) + max((text_width(text, SIZE) for text in texts), default=0.0)


def texts_width(spans: Sequence[Span], display: Display) -> float:
    """Return how long the texts of a level string are one after the other, points."""
    texts = [span.lettered(abs(span.b[0] - span.a[0]), display) for span in spans]
    return sum(text_width(text, SIZE) + 3 * AIR for text in texts)


def heights_of(spans: Sequence[Span], view: View) -> tuple[float, ...]:
    """Return the heights on the page, points, at which an upright string's extension lines run out to it."""
    return tuple(sorted({view.to_sheet(point)[1] for span in spans for point in (span.a, span.b)}))


def level_string(
    spans: Sequence[Span], y: float, view: View, display: Display, lines: Sequence[float] = ()
) -> Placed:
    """Return dimensions along a level line at `y` points, their texts over it; strings stack upward.

    A text its span has no room for stands one row farther out, on a leader. `lines` are the places across the
    page, points, of lines that run on past this string.
    """
    ordered = sorted(spans, key=lambda span: _middle(span, view))
    texts = [span.lettered(abs(span.b[0] - span.a[0]), display) for span in ordered]
    inside = [text_width(t, SIZE) + 4 * AIR <= _long(s, view) for s, t in zip(ordered, texts, strict=True)]
    near = _row(ordered, texts, [n for n, fits in enumerate(inside) if fits], lines, view)
    far = _row(ordered, texts, [n for n, fits in enumerate(inside) if not fits], lines, view)
    found: list[Primitive] = []
    boxes: list[Box] = []
    for number, span in enumerate(ordered):
        place = {**near, **far}[number]
        base = y + (NEAR_ROW if inside[number] else FAR_ROW)
        value = abs(span.b[0] - span.a[0])
        height = view.to_plan((0.0, y))[1]
        line = (span.a[0], height), (span.b[0], height)
        found.append(_dimension(span, line, texts[number], view.to_plan((place, base)), value))
        boxes.append(_text_box((place, base), texts[number]))
        if not inside[number]:
            near_end = _nearest_on(boxes[-1], _middle(span, view))
            found.append(_leader(((_middle(span, view), y), (near_end, boxes[-1].bottom)), view))
    return Placed(tuple(found), tuple(boxes))


def _row(
    spans: Sequence[Span], texts: Sequence[str], chosen: Sequence[int], lines: Sequence[float], view: View
) -> dict[int, float]:
    wanted = [_middle(spans[number], view) for number in chosen]
    halves = [text_width(texts[number], SIZE) / 2 + AIR for number in chosen]
    return dict(zip(chosen, settle(wanted, halves, lines), strict=True))


def _middle(span: Span, view: View) -> float:
    return (view.to_sheet(span.a)[0] + view.to_sheet(span.b)[0]) / 2


def _long(span: Span, view: View) -> float:
    return abs(view.to_sheet(span.a)[0] - view.to_sheet(span.b)[0])


def _nearest_on(box: Box, x: float) -> float:
    return min(max(x, box.left), box.right)


def _dimension(span: Span, line: tuple[Point, Point], text: str, text_at: Point, value: float) -> Dimension:
    return Dimension(LAYER, span.a, span.b, *line, text, text_at, span.name, value, 0.0, SIZE)


def _text_box(middle: Point, text: str) -> Box:
    half = text_width(text, SIZE) / 2
    x, base = middle
    return Box(x - half, base - DESCENT * SIZE, x + half, base + ASCENT * SIZE)


def _leader(line: tuple[Point, Point], view: View) -> Polyline:
    return Polyline("A-ANNO-LEAD", tuple(view.to_plan(point) for point in line))


def refuse_crowded(details: Sequence[Detail], asked: Scale | None) -> None:
    """Raise ValueError, in words, where a scale asked for leaves texts over one another or cut off."""
    if asked is not None and any(_crowded(detail) for detail in details):
        raise ValueError(
            f"{asked.name} is too small for the dimensions of this sheet; take a larger one, or none"
        )


def _crowded(detail: Detail) -> bool:
    boxes = list(_boxes(detail))
    return not all(detail.view.window.holds(box) for box in boxes) or any(
        a.overlaps(b) for a, b in combinations(boxes, 2)
    )


def _boxes(detail: Detail) -> Iterator[Box]:
    """Yield what each text of a detail covers, points of the paper."""
    for item in detail.primitives:
        if isinstance(item, Text):
            at = detail.view.to_sheet(item.at)
            yield text_box(at, item.text, item.size, item.anchor, item.bold).shrunk(_LAP)
        elif isinstance(item, Dimension):
            yield text_box(detail.view.to_sheet(item.text_at), item.text, item.size, "middle").shrunk(_LAP)
