"""Which dimension or part lies at a place of the sheet, for telling its name."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Arc, Dimension, Point, Polygon, Symbol
from configurator.drawing.base.view import Box, Group, View, box_around

_NEAR = 4.0
"""The pointer counts as on a line within so many points."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A named place on the sheet: an area, or lines, in points; `measures` is what a dimension is of."""

    name: str
    outline: tuple[Point, ...] = ()
    lines: tuple[tuple[Point, ...], ...] = ()
    box: Box | None = None
    measures: str = ""


def spots_of(groups: Iterable[Group]) -> tuple[Spot, ...]:
    """Return the named things in painting order."""
    return tuple(
        spot for group in groups for item in group.primitives if (spot := _spot(item, group.view)) is not None
    )


def name_at(spots: Sequence[Spot], point: Point) -> str:
    """Return the name at a point: a mark's or a text's, a line's, the uppermost part's, or nothing."""
    spot = _spot_at(spots, point)
    return spot.name if spot is not None else ""


def measured_at(spots: Sequence[Spot], point: Point) -> str:
    """Return what the dimension at a point measures, as the trade calls it; nothing where there is none."""
    spot = _spot_at(spots, point)
    return spot.measures if spot is not None else ""


def _spot_at(spots: Sequence[Spot], point: Point) -> Spot | None:
    for is_at in (_in_box, _on_lines, _in_outline):
        for spot in reversed(spots):
            if is_at(spot, point):
                return spot
    return None


def _spot(item: object, view: View) -> Spot | None:
    match item:
        case Dimension():
            box = text_box(view.to_sheet(item.text_at), item.text, item.size, "middle")
            return Spot(
                item.explained or item.name, lines=strokes_of(item, view).lines, box=box, measures=item.name
            )
        case Symbol() if item.name:
            x, y = view.to_sheet(item.at)
            return Spot(item.name, box=Box(x - _NEAR, y - _NEAR, x + _NEAR, y + _NEAR))
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
    if not box_around((a, b)).shrunk(-_NEAR).has(point):
        return False
    x, y = b[0] - a[0], b[1] - a[1]
    square = x * x + y * y
    share = ((point[0] - a[0]) * x + (point[1] - a[1]) * y) / square if square else 0.0
    share = min(1.0, max(0.0, share))
    return math.dist(point, (a[0] + share * x, a[1] + share * y)) <= _NEAR


def _in_outline(spot: Spot, point: Point) -> bool:
    """Count the edges to one side of the point: odd is inside."""
    x, y = point
    inside = False
    for (x_0, y_0), (x_1, y_1) in zip(spot.outline, (*spot.outline[1:], *spot.outline[:1]), strict=True):
        if (y_0 > y) != (y_1 > y) and x < x_0 + (y - y_0) * (x_1 - x_0) / (y_1 - y_0):
            inside = not inside
    return inside
