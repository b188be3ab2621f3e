"""What the pointer is about: marks over the picture for a letter of a formula, and names of what is there."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from configurator.drawing.base.clip import clip_polyline
from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.lettering import text_box, text_width
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
)
from configurator.drawing.base.view import Box, Group, View, box_around, paper
from configurator.drawing.plan.dimensions import leaf_on_sheet
from configurator.drawing.plan.panel import Panel, small_picture
from configurator.drawing.plan.sheet import Sheet
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.study.derivation.working import Mark
from configurator.study.hang import HangsOn

LAYER = "A-ANNO-LETR"
SIZE = 10.0
_BESIDE = 5.0
"""The letter stands so far beside the middle of what it names, points."""
_NEAR = 5.0
"""The pointer counts as on a mark within so many points."""
_ON_LINE = 4.0
"""The pointer counts as on a line within so many points."""


@dataclass(frozen=True, slots=True)
class Pointed:
    """A letter that is pointed at: its leaf, what that hangs on, its mark in plan, and what it is called."""

    leaf: str
    on: HangsOn
    mark: Mark
    words: str


def pointed_groups(sheet: Sheet, leaves: Sequence[str], pointed: Pointed, angle: float) -> tuple[Group, ...]:
    """Return the mark in the large and the small picture of its hinge, and its letter in one of them.

    `leaves` names the leaf of each panel of the sheet; with the doors at `angle`, degrees, the small picture
    may be of the latch side alone. Empty where no panel shows that leaf on that hinge.
    """
    groups: list[Group] = []
    for panel, leaf in zip(sheet.panels, leaves, strict=True):
        if leaf != pointed.leaf or panel.hung.candidate.on != pointed.on:
            continue
        small = small_picture(panel, math.radians(angle), sheet.display)
        views = [panel.main.view, *([small[0]] if small is not None else [])]
        groups += [Group(view, tuple(_marks_of(pointed.mark))) for view in views]
        lettered = (tuple(_lettered(pointed, view)) for view in views)
        # The large picture has the letter if what it names is to be seen there, else the small one.
        shown = next((letter for letter in lettered if letter), ())
        groups.append(Group(paper(sheet.width, sheet.height), shown))
    return tuple(groups)


@dataclass(frozen=True, slots=True)
class LookedAt:
    """A place of the picture that the pointer is on: leaf, what it hangs on, and where in plan, inches.

    What lies within `near` inches of it counts as under the pointer.
    """

    leaf: str
    on: HangsOn
    point: Point
    near: float


def looked_at(sheet: Sheet, leaves: Sequence[str], at: Point) -> LookedAt | None:
    """Return the place in plan at a place of the sheet, points; None beside the large pictures."""
    for panel, leaf in zip(sheet.panels, leaves, strict=True):
        view = panel.main.view
        in_inset = panel.inset is not None and panel.inset.view.window.has(at)
        if view.window.has(at) and not in_inset:
            return LookedAt(leaf, panel.hung.candidate.on, view.to_plan(at), _NEAR / view.scale)
    return None


def leaf_at(sheet: Sheet, angle: float, at: Point) -> Panel | None:
    """Return the large picture whose leaf, the door at `angle`, degrees, lies at a place of the sheet."""
    for panel in sheet.panels:
        view = panel.main.view
        in_inset = panel.inset is not None and panel.inset.view.window.has(at)
        if view.window.has(at) and not in_inset:
            shown = panel.hung.shown_at(math.radians(angle))
            leaf = leaf_on_sheet(panel.hung, view, shown)
            return panel if _is_inside(leaf, at) else None
    return None


def direction(panel: Panel, at: Point) -> float:
    """Return the direction from a picture's pin to a place of the sheet, as its leaf turns, degrees."""
    x, y = panel.main.view.to_plan(at)
    pin_x, pin_y = panel.hung.pin.at
    return math.degrees(math.atan2(y - pin_y, x - pin_x))


def hinge_at(sheet: Sheet, leaves: Sequence[str], at: Point) -> tuple[str, HangsOn] | None:
    """Return the leaf and what it hangs on whose pictures are at a place of the sheet, points."""
    for panel, leaf in zip(sheet.panels, leaves, strict=True):
        if panel.main.view.window.has(at):
            return leaf, panel.hung.candidate.on
    return None


def letter_at(marks: Mapping[str, Mark], place: LookedAt) -> str:
    """Return the letter whose mark runs nearest to a place, of several the shortest; empty for none."""
    found = [
        (round(_distance(place.point, line) / place.near, 1), math.dist(line[0], line[-1]), name)
        for name, mark in marks.items()
        for line in mark.lines
        if _distance(place.point, line) <= place.near
    ]
    return min(found, default=(0.0, 0.0, ""))[2]


def _distance(point: Point, line: tuple[Point, ...]) -> float:
    return math.dist(point, nearest_on_outline(point, line))


def _marks_of(mark: Mark) -> Iterator[Primitive]:
    for line in mark.lines:
        yield Polyline(LAYER, line)
        yield from (Symbol(LAYER, end, "dot") for end in (line[0], line[-1]))
    for centre, radius, start, end in mark.arcs:
        yield Arc(LAYER, centre, radius, start, end)


def _lettered(pointed: Pointed, view: View) -> Iterator[Primitive]:
    """Set the letter, on a ground of its own, beside the middle of the longest line that the window shows."""
    pieces = [
        piece
        for line in pointed.mark.lines
        for piece in clip_polyline([view.to_sheet(point) for point in line], view.window)
    ]
    if not pieces or not pointed.words:
        return
    longest = max(pieces, key=lambda piece: math.dist(piece[0], piece[-1]))
    (x_0, y_0), (x_1, y_1) = longest[0], longest[-1]
    level = abs(x_1 - x_0) >= abs(y_1 - y_0)
    x, y = (x_0 + x_1) / 2, (y_0 + y_1) / 2
    at = (x, y + _BESIDE) if level else (x + _BESIDE, y - SIZE / 3)
    width = text_width(pointed.words, SIZE, True)
    left = at[0] - width / 2 if level else at[0]
    left = min(max(left, view.window.left + 2.0), view.window.right - width - 2.0)
    low = min(max(at[1], view.window.bottom + 2.0), view.window.top - SIZE)
    ground = rectangle(left - 2.0, left + width + 2.0, low - 3.0, low + SIZE)
    yield Polygon(LAYER, ground, "paper", outlined=False)
    yield Text(LAYER, (left, low), pointed.words, SIZE, bold=True)


@dataclass(frozen=True, slots=True)
class Spot:
    """A named place on the sheet: an area, or lines, in points.

    `measures` is what a dimension is of, `text` how it is lettered.
    """

    name: str
    outline: tuple[Point, ...] = ()
    lines: tuple[tuple[Point, ...], ...] = ()
    box: Box | None = None
    measures: str = ""
    text: str = ""


def spots_of(groups: Iterable[Group]) -> tuple[Spot, ...]:
    """Return the named things in painting order."""
    return tuple(
        spot for group in groups for item in group.primitives if (spot := _spot(item, group.view)) is not None
    )


def name_at(spots: Sequence[Spot], point: Point) -> str:
    """Return the name at a point: a mark's or a text's, a line's, the uppermost part's, or nothing."""
    spot = spot_at(spots, point)
    return spot.name if spot is not None else ""


def measured_at(spots: Sequence[Spot], point: Point) -> str:
    """Return what the dimension at a point measures, as the trade calls it; nothing where there is none."""
    spot = spot_at(spots, point)
    return spot.measures if spot is not None else ""


def spot_at(spots: Sequence[Spot], point: Point) -> Spot | None:
    """Return what is at a point: a mark or a text, a line, the uppermost part, or nothing."""
    for is_at in (_in_box, _on_lines, _in_outline):
        for spot in reversed(spots):
            if is_at(spot, point):
                return spot
    return None


def _spot(item: object, view: View) -> Spot | None:
    match item:
        case Dimension():
            box = text_box(view.to_sheet(item.text_at), item.text, item.size, "middle")
            name, lines = item.explained or item.name, strokes_of(item, view).lines
            return Spot(name, lines=lines, box=box, measures=item.name, text=item.text)
        case Symbol() if item.name:
            x, y = view.to_sheet(item.at)
            return Spot(item.name, box=Box(x - _ON_LINE, y - _ON_LINE, x + _ON_LINE, y + _ON_LINE))
        case Polygon() if item.name:
            return Spot(item.name, tuple(view.to_sheet(point) for point in item.points))
        case Arc() if item.name:
            turns = [math.pi * n / 12 for n in range(24)]
            x, y = item.centre
            circle = [(x + item.radius * math.cos(t), y + item.radius * math.sin(t)) for t in turns]
            return Spot(item.name, tuple(view.to_sheet(point) for point in circle))
    return None


def _in_box(spot: Spot, point: Point) -> bool:
    return spot.box is not None and spot.box.has(point)


def _on_lines(spot: Spot, point: Point) -> bool:
    return any(_near_segment(a, b, point) for line in spot.lines for a, b in pairwise(line))


def _near_segment(a: Point, b: Point, point: Point) -> bool:
    if not box_around((a, b)).shrunk(-_ON_LINE).has(point):
        return False
    x, y = b[0] - a[0], b[1] - a[1]
    square = x * x + y * y
    share = ((point[0] - a[0]) * x + (point[1] - a[1]) * y) / square if square else 0.0
    share = min(1.0, max(0.0, share))
    return math.dist(point, (a[0] + share * x, a[1] + share * y)) <= _ON_LINE


def _in_outline(spot: Spot, point: Point) -> bool:
    return _is_inside(spot.outline, point)


def _is_inside(outline: Sequence[Point], point: Point) -> bool:
    """Count the edges to one side of the point: odd is inside."""
    x, y = point
    inside = False
    for (x_0, y_0), (x_1, y_1) in zip(outline, (*outline[1:], *outline[:1]), strict=True):
        if (y_0 > y) != (y_1 > y) and x < x_0 + (y - y_0) * (x_1 - x_0) / (y_1 - y_0):
            inside = not inside
    return inside
