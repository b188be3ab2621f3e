"""A piece cut out of a larger drawing: what runs past its edges is cut off there, without a line."""

from collections.abc import Iterable
from itertools import pairwise

from configurator.drawing.base.clip import clip_polygon, clip_polyline
from configurator.drawing.base.primitives import Point, Polygon, Polyline, Primitive
from configurator.drawing.base.view import Box


def cut_out(parts: Iterable[Primitive], box: Box) -> tuple[Primitive, ...]:
    """Return what of the parts lies in a box of the drawing's own inches; arcs and marks are kept whole."""
    found: list[Primitive] = []
    for part in parts:
        if isinstance(part, Polygon):
            found += _polygon(part, box)
        elif isinstance(part, Polyline):
            found += _lines(part.layer, _closed(part.points) if part.closed else part.points, box)
        else:
            found.append(part)
    return tuple(found)


def mirrored(parts: Iterable[Primitive], across: float) -> tuple[Primitive, ...]:
    """Return polygons and lines mirrored left to right about an upright line, inches."""
    found: list[Primitive] = []
    for part in parts:
        assert isinstance(part, Polygon | Polyline)
        points = tuple((2 * across - x, y) for x, y in part.points)
        if isinstance(part, Polygon):
            found.append(Polygon(part.layer, points, part.fill, part.name, part.outlined, part.pattern_layer))
        else:
            found.append(Polyline(part.layer, points, part.closed))
    return tuple(found)


def _polygon(part: Polygon, box: Box) -> list[Primitive]:
    kept = clip_polygon(part.points, box)
    if not kept:
        return []
    inside: list[Primitive] = []
    if part.fill is not None:
        inside.append(
            Polygon(
                part.layer, kept, part.fill, part.name, False, part.pattern_layer, part.turned, part.about
            )
        )
    return inside + (_lines(part.layer, _closed(part.points), box) if part.outlined else [])


def _closed(points: tuple[Point, ...]) -> tuple[Point, ...]:
    return (*points, points[0])


def _lines(layer: str, points: tuple[Point, ...], box: Box) -> list[Primitive]:
    return [
        Polyline(layer, piece)
        for piece in clip_polyline(points, box)
        if any(a != b for a, b in pairwise(piece))
    ]
