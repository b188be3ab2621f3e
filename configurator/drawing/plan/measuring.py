"""Measuring in the plan: a place near the pointer that a distance is rightly taken from, and the distance."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, Region
from configurator.drawing.plan.panel import Panel, moving_parts
from configurator.units import Display


@dataclass(frozen=True, slots=True)
class Snap:
    """A place in plan, inches, and what it is: a corner, a centre, an edge; empty where nothing is near."""

    point: Point
    what: str = ""


def drawn_parts(panel: Panel, angle: float) -> tuple[Primitive, ...]:
    """Return all that a panel draws of the plan with its leaf at `angle`, degrees."""
    return (*panel.main.still, *moving_parts(panel, math.radians(angle)))


def snapped(parts: Iterable[Primitive], at: Point, near: float) -> Snap:
    """Return the nearest corner or centre within `near` inches, else an edge, else the place itself."""
    outlines = [line for part in parts for line in _outlines(part)]
    corners = [(math.dist(at, point), Snap(point, "corner")) for line in outlines for point in line.points]
    centres = [(math.dist(at, arc.centre), Snap(arc.centre, "centre")) for arc in _arcs(parts)]
    edges = [
        (math.dist(at, point), Snap(point, "edge")) for line in outlines for point in _feet(line, at)
    ] + [(abs(math.dist(at, arc.centre) - arc.radius), Snap(_on(arc, at), "edge")) for arc in _arcs(parts)]
    for found in ((*centres, *corners), edges):
        least = min(found, key=lambda each: round(each[0], 9), default=None)
        if least is not None and least[0] <= near:
            return least[1]
    return Snap(at)


def distance_words(a: Point, b: Point, display: Display) -> str:
    """Say how far two places are from one another, and how much of that is along the wall and off it."""
    whole = display.length(math.dist(a, b))
    along, off = abs(b[0] - a[0]), abs(b[1] - a[1])
    if min(along, off) < display.step / 2:
        return whole
    return f"{whole} ({display.length(along)} along the wall, {display.length(off)} off it)"


def _outlines(part: Primitive) -> Iterator[Polyline]:
    match part:
        case Polyline():
            yield part
        case Polygon():
            yield Polyline(part.layer, part.points, closed=True)
        case Region():
            yield from (bound for bound in part.bounds if isinstance(bound, Polyline))


def _arcs(parts: Iterable[Primitive]) -> Iterator[Arc]:
    for part in parts:
        if isinstance(part, Arc):
            yield part
        elif isinstance(part, Region):
            yield from (bound for bound in part.bounds if isinstance(bound, Arc))


def _feet(line: Polyline, at: Point) -> Iterator[Point]:
    """Yield the place of each segment that is nearest to a point."""
    points: Sequence[Point] = (*line.points, line.points[0]) if line.closed else line.points
    for (x_0, y_0), (x_1, y_1) in pairwise(points):
        square = (x_1 - x_0) ** 2 + (y_1 - y_0) ** 2
        share = ((at[0] - x_0) * (x_1 - x_0) + (at[1] - y_0) * (y_1 - y_0)) / square if square else 0.0
        share = min(max(share, 0.0), 1.0)
        yield (x_0 + share * (x_1 - x_0), y_0 + share * (y_1 - y_0))


def _on(arc: Arc, at: Point) -> Point:
    """Return the place of the whole circle that is nearest to a point."""
    x, y = at[0] - arc.centre[0], at[1] - arc.centre[1]
    away = math.hypot(x, y) or 1.0
    return arc.centre[0] + x / away * arc.radius, arc.centre[1] + y / away * arc.radius
