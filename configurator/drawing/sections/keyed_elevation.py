"""The elevation that says where the sections are cut: each has a letter, and its mark a line and a bubble."""

import math

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.blocks import Block, Side, String
from configurator.drawing.pages.dimension_string import Span
from configurator.drawing.pages.elevation_facts import leaves_shown
from configurator.drawing.pages.elevation_parts import FLOOR_BEYOND, elevation_parts
from configurator.drawing.pages.page import Scale
from configurator.drawing.plan.drawn_leaf import turns_clockwise
from configurator.study import Study

JAMB, HEAD, SILL, LATCH = "A", "B", "C", "D"
"""The letters of the sections; a mark and the name under its section carry the same."""
_LAYER = "A-ANNO-LEAD"
_RADIUS, _TYPE, _HEAD = 6.5, 7.0, 3.0
"""A bubble's radius, its letter and the arrow beside it, points on paper."""
_OUT = 12.0
"""From what is cut to the middle of a bubble, points."""


def keyed_elevation(study: Study, scale: Scale, latch: bool) -> Block:
    """Return the opening from the pull side with the marks of the sections, for a scale it is drawn at.

    `latch`: the latch edge is drawn too, and so marked.
    """
    filled, leaves = study.filled, leaves_shown(study)
    width, height, face = filled.opening_width, filled.opening_height, filled.frame_face
    shown = leaves[0]
    room = (_OUT + 2 * _RADIUS) / scale.points
    across = width * (0.36 if len(leaves) == 1 else 0.2)
    level = shown.leaf.bottom + 0.62 * shown.leaf.height
    marks = (
        *_mark((-face, level), (1.0, 0.0), JAMB, scale),
        *_mark((across, height + face), (0.0, -1.0), HEAD, scale),
        *_mark((across, 0.0), (0.0, 1.0), SILL, scale),
    )
    if latch:
        marks += _mark((width + face, level), (-1.0, 0.0), LATCH, scale)
    # Nothing is lettered inside: a mark's line would run through it.
    shown_parts = [one for one in elevation_parts(filled, leaves) if not isinstance(one, Text)]
    # The bubbles' room counts as the opening's own, so that strings and rows stand clear of them.
    beside = max(FLOOR_BEYOND, room)
    right = width + face + (beside if latch else FLOOR_BEYOND)
    extent = Box(-face - beside, -room, right, height + face + room)
    return Block(
        name="Elevation, pull side",
        extent=extent,
        parts=(*shown_parts, *marks),
        high=Side((String((_rise(height, extent.right),)),)),
        rows=((_run(width, extent.top),),),
        mirrored=not turns_clockwise(filled, shown.leaf.name),
    )


def _rise(height: float, across: float) -> Span:
    return Span((across, 0.0), (across, height), "opening height, floor to head rabbet")


def _run(width: float, top: float) -> Span:
    return Span((0.0, top), (width, top), "opening width, rabbet to rabbet")


def _mark(foot: Point, into: tuple[float, float], letter: str, scale: Scale) -> tuple[Primitive, ...]:
    """Return a section's mark: a bubble off `foot`, its line running `into` what is cut."""
    size = 1 / scale.points
    x, y = foot[0] - into[0] * _OUT * size, foot[1] - into[1] * _OUT * size
    edge = (x + into[0] * _RADIUS * size, y + into[1] * _RADIUS * size)
    end = (foot[0] + into[0] * _OUT * size, foot[1] + into[1] * _OUT * size)
    aside = (-into[1] * _HEAD * size, into[0] * _HEAD * size)
    tip = (edge[0] + into[0] * _HEAD * size, edge[1] + into[1] * _HEAD * size)
    arrow = ((edge[0] + aside[0], edge[1] + aside[1]), tip, (edge[0] - aside[0], edge[1] - aside[1]))
    return (
        Polyline(_LAYER, (edge, end)),
        Polygon(_LAYER, arrow, "steel", f"section {letter}"),
        Arc(_LAYER, (x, y), _RADIUS * size, 0.0, 2 * math.pi, "white", f"section {letter}"),
        Text("A-ANNO-TTLB", (x, y - 0.35 * _TYPE * size), letter, _TYPE, "middle", bold=True),
    )
