"""The two parts that touch where a leaf is stopped, marked by a heavy broken line along their outlines."""

import math

from configurator.drawing.base.primitives import Arc, Point, Polyline, turned
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.geometry.shapes import BUILDING

LARGE, SMALL = "A-ANNO-REDL-PART", "A-ANNO-REDL-SMLL"
_AT = 1e-6
"""An edge this near to the contact is at it, inches."""


def touching_marks(hung: DrawnLeaf, layer: str = LARGE) -> list[Polyline | Arc]:
    """Return the marks along both parts with the leaf where it is stopped; none where nothing is met."""
    if hung.touching is None or hung.contact is None:
        return []
    moving, standing = hung.touching
    # Of the building only the edges at the contact are marked: the rest runs on without end, or is hidden.
    at = hung.contact if standing.kind in BUILDING else None
    there = turned(moving.points, hung.pin.at, hung.reach)
    return [
        *_marked(there, moving.radius, None, layer),
        *_marked(standing.points, standing.radius, at, layer),
    ]


def _marked(points: tuple[Point, ...], radius: float, at: Point | None, layer: str) -> list[Polyline | Arc]:
    """Return a part's whole outline, or only its edges at a point, if there are any."""
    if radius:
        return [Arc(layer, points[0], radius, 0.0, 2 * math.pi)]
    edges = [] if at is None else _edges_at(points, at)
    return [Polyline(layer, edge) for edge in edges] or [Polyline(layer, points, closed=True)]


def _edges_at(points: tuple[Point, ...], at: Point) -> list[tuple[Point, Point]]:
    edges = zip(points, (*points[1:], points[0]), strict=True)
    return [(a, b) for a, b in edges if math.dist(at, nearest_on_outline(at, (a, b))) <= _AT]
