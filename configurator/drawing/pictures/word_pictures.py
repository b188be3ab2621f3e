"""A word's small picture: a scene of a typical opening with what the word names marked and named in it."""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from configurator.drawing.base.clip import clip_segment
from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.lettering import DESCENT, text_box, text_width
from configurator.drawing.base.on_sheet import arc_on_sheet, chords
from configurator.drawing.base.primitives import (
    Anchor,
    Arc,
    Dimension,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Text,
    rectangle,
)
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.drawing.pictures.marks_front import IN_FRONT, ON_SAMPLE
from configurator.drawing.pictures.marks_plan import IN_PLAN
from configurator.drawing.pictures.scenes import Mark, Scene, scene
from configurator.wording.glossary import Word

SIZE = (300.0, 210.0)
"""Width and height of a picture as it is usually shown, points."""
_TYPE = 9.0
_EDGE = 5.0
_AWAY = (16.0, 26.0, 38.0, 52.0, 70.0, 92.0)
"""How far a name may stand off what it names, points; the nearest place that is free is taken."""
_WAYS = tuple(math.radians(turn) for turn in (40, 140, -40, -140, 90, -90, 0, 180))
Stroke = tuple[Point, Point]
_ELEVATIONS = frozenset({"front", "pair_front", "closer_front", "dutch"})


def word_picture(word: Word, width: float = SIZE[0], height: float = SIZE[1]) -> tuple[Group, ...]:
    """Return a word's picture of that width and height, points.

    Raises KeyError for an unknown scene or mark.
    """
    name, _, shown = word.picture.partition(":")
    drawn = scene(name)
    view = view_of(drawn.extent, Box(0.0, 0.0, width, height))
    mark = _marks(name)[shown](drawn)
    whole = paper(width, height)
    ground = Polygon("A-ANNO-BRDR-PICT", rectangle(0.0, width, 0.0, height), "paper", outlined=False)
    named = tuple(lettered(word.term, mark, drawn.parts, view))
    return Group(whole, (ground,)), Group(view, drawn.parts), Group(view, mark), Group(whole, named)


def _marks(name: str) -> Mapping[str, Callable[[Scene], Mark]]:
    if name in _ELEVATIONS:
        return IN_FRONT
    return ON_SAMPLE if name == "sample" else IN_PLAN


def view_of(extent: Box, window: Box) -> View:
    """Return the view that shows an area, inches, as large as it fits the window, in the middle."""
    scale = min(window.width / extent.width, window.height / extent.height)
    x, y = (extent.left + extent.right) / 2, (extent.bottom + extent.top) / 2
    middle = ((window.left + window.right) / 2, (window.bottom + window.top) / 2)
    return View(scale, (middle[0] - scale * x, middle[1] - scale * y), False, window)


def lettered(
    term: str, mark: Mark, drawn: Mark, view: View, taken: Sequence[Stroke] = (), size: float = _TYPE
) -> Iterator[Primitive]:
    """Letter a term beside its mark, on paper of its own, with a leader to it; `size` in points.

    Where nothing at all lies in its way if there is such a place, else clear of the mark and of `taken`, at
    last anywhere.
    """
    if not mark:
        return
    start, own = _spot(mark, view), [*strokes(mark, view), *taken]
    places = list(_places(start, term, view.window.shrunk(_EDGE), size))
    for lines in ([*own, *strokes(drawn, view)], own, ()):
        for elbow, box in places:
            if _is_clear(box, lines):
                yield from _lettered(term, start, elbow, box, size)
                return


def _lettered(term: str, start: Point, elbow: Point, box: Box, size: float) -> Iterator[Primitive]:
    yield Polyline("A-ANNO-LEAD", (start, elbow))
    strip = rectangle(box.left - 2.0, box.right + 2.0, box.bottom - 1.0, box.top + 1.0)
    yield Polygon("A-ANNO-BRDR-PICT", strip, "paper", outlined=False)
    yield Text("A-ANNO-TEXT", (box.left, box.bottom + DESCENT * size), term, size, bold=True)


def _is_clear(box: Box, lines: Iterable[Stroke]) -> bool:
    around = box.shrunk(-2.0)
    return all(clip_segment(*stroke, around) is None for stroke in lines)


def _places(start: Point, term: str, window: Box, size: float) -> Iterator[tuple[Point, Box]]:
    """Yield where a leader from the spot may end, and the box of the term there, inside the window."""
    for away in _AWAY:
        for turn in _WAYS:
            x, y = start[0] + away * math.cos(turn), start[1] + away * math.sin(turn)
            anchor: Anchor = "start" if math.cos(turn) > 0.1 else "end" if math.cos(turn) < -0.1 else "middle"
            box = text_box((x, y - 0.26 * size), term, size, anchor, bold=True)
            if window.holds(box):
                yield (x, y), box


def _spot(mark: Mark, view: View) -> Point:
    """Return where the leader begins: the middle of a measured line, else of a stroke in view."""
    measured = next((part for part in mark if isinstance(part, Dimension)), None)
    if measured is not None:
        return view.to_sheet(measured.text_at)
    named = next(part for part in mark if part.layer != "A-ANNO-LEAD")
    middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in strokes((named,), view)]
    shown = [one for one in middles if view.window.shrunk(_EDGE).has(one)]
    centre = ((view.window.left + view.window.right) / 2, (view.window.bottom + view.window.top) / 2)
    return min(shown or middles, key=lambda one: math.dist(one, centre))


def strokes(parts: Iterable[Primitive], view: View) -> list[Stroke]:
    """Return every line of some parts as short straight strokes on the sheet."""
    return [stroke for part in parts for line in _lines_of(part, view) for stroke in pairwise(line)]


def _lines_of(part: Primitive, view: View) -> Iterable[Sequence[Point]]:
    match part:
        case Dimension():
            return strokes_of(part, view).lines
        case Arc():
            return (chords(*arc_on_sheet(part, view)),)
        case Polyline() | Polygon():
            points = [view.to_sheet(point) for point in part.points]
            closed = isinstance(part, Polygon) or part.closed
            return ([*points, points[0]] if closed else points,)
        case Text():
            x, y = view.to_sheet(part.at)
            half = text_width(part.text, part.size) / 2
            along, up = abs(math.cos(part.angle)) * half, abs(math.sin(part.angle)) * half
            return (((x - along, y - up), (x + along, y + up)),)
    return ()
