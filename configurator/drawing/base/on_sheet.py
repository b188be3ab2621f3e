"""Curves and marks as they lie on the sheet, points: what every way of writing a picture has in common."""

import math
from collections.abc import Sequence
from itertools import pairwise

from configurator.drawing.base.primitives import Arc, Point, Polyline, Region
from configurator.drawing.base.view import Box, View
from configurator.units import TOLERANCE

RING, SMALL_RING, DOT = 5.5, 2.6, 1.3
"""Radii of the marks of a contact, a graze and a leader's end, points."""
CROSS = ((2.4, 2.4), (2.4, -2.4))
"""Half of each stroke of the cross within a contact's ring, points."""
WHOLE_TURN = 2 * math.pi

ArcOnSheet = tuple[Point, float, float, float]
"""Centre and radius in points, and where it starts and ends counter-clockwise, radians."""


def arc_on_sheet(item: Arc, view: View) -> ArcOnSheet:
    """Return an arc as it is seen: mirrored where its view mirrors."""
    first, last = item.start, item.end
    if view.mirrored:
        first, last = math.pi - item.end, math.pi - item.start
    return view.to_sheet(item.centre), item.radius * view.scale, first, last


def is_round(arc: ArcOnSheet) -> bool:
    """Whether an arc goes all the way round."""
    return arc[3] - arc[2] >= WHOLE_TURN - TOLERANCE


def chords(centre: Point, radius: float, first: float, last: float) -> list[Point]:
    """Return an arc on the sheet as chords that no eye tells from it."""
    steps = max(8, int(abs(last - first) * math.sqrt(radius) * 4))
    turns = [first + (last - first) * step / steps for step in range(steps + 1)]
    return [(centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns]


def clip_arc(arc: ArcOnSheet, box: Box) -> list[tuple[float, float]]:
    """Return the pieces of an arc that lie in the box, each as where it starts and ends, radians."""
    centre, radius, first, last = arc
    cuts = sorted({first, last, *_crossings(centre, radius, first, last, box)})
    pieces: list[tuple[float, float]] = []
    for start, end in pairwise(cuts):
        middle = (start + end) / 2
        at = (centre[0] + radius * math.cos(middle), centre[1] + radius * math.sin(middle))
        if end - start <= TOLERANCE or not box.has(at):
            continue
        if pieces and pieces[-1][1] == start:
            start = pieces.pop()[0]
        pieces.append((start, end))
    return pieces


def _crossings(centre: Point, radius: float, first: float, last: float, box: Box) -> list[float]:
    """Return where the circle crosses the lines of the box's edges, as angles within the arc."""
    found: list[float] = []
    for share in ((box.left - centre[0]) / radius, (box.right - centre[0]) / radius):
        if abs(share) <= 1.0:
            found += [math.acos(share), -math.acos(share)]
    for share in ((box.bottom - centre[1]) / radius, (box.top - centre[1]) / radius):
        if abs(share) <= 1.0:
            found += [math.asin(share), math.pi - math.asin(share)]
    turned = [angle + WHOLE_TURN * math.ceil((first - angle) / WHOLE_TURN) for angle in found]
    return [angle for angle in turned if first < angle < last]


def around(item: Region, view: View) -> list[Point]:
    """Return a region's outline on the sheet, every bound run through from where the one before it ends."""
    pieces = [
        [view.to_sheet(point) for point in bound.points]
        if isinstance(bound, Polyline)
        else chords(*arc_on_sheet(bound, view))
        for bound in item.bounds
    ]
    outline = pieces[0]
    if len(pieces) > 1 and _nearer(outline[0], outline[-1], pieces[1]):
        outline.reverse()
    for piece in pieces[1:]:
        backward = math.dist(outline[-1], piece[-1]) < math.dist(outline[-1], piece[0])
        outline += piece[::-1] if backward else piece
    return outline


def _nearer(one: Point, other: Point, piece: Sequence[Point]) -> bool:
    """Whether the first of two points is the nearer to an end of a piece."""
    ends = (piece[0], piece[-1])
    return min(math.dist(one, end) for end in ends) < min(math.dist(other, end) for end in ends)
