"""Hatch patterns of the drawing style as DXF defines them: families of parallel lines, dashed or not."""

import math

from configurator.drawing.hatch import DOT, DOT_ROWS, DOT_SHIFT, GRAIN_EVERY, GRAIN_SHIFT
from configurator.drawing.primitives import Point
from configurator.drawing.style import Material

PatternLine = tuple[float, Point, Point, list[float]]
"""Angle in degrees, base point, step to the next line, and dashes with gaps below zero."""
_GRAIN_MEAN = 0.725
"""A stroke of the grain, of its period: the drawing's own run from 0.55 to 0.9, which one family cannot."""


def pattern_lines(material: Material, turned: float, about: Point, per_point: float) -> list[PatternLine]:
    """Return a material's pattern, `turned` radians about a point; `per_point` is drawing units a point."""
    spacing = material.spacing * per_point
    angle = math.radians(material.angle) + turned
    along, across, dashes = 0.0, spacing, list[float]()
    if material.pattern == "dots":
        along, across = DOT_SHIFT * spacing, DOT_ROWS * spacing
        dashes = [DOT * per_point, DOT * per_point - spacing]
    elif material.pattern == "grain":
        every = GRAIN_EVERY * spacing
        along, dashes = GRAIN_SHIFT * every, [_GRAIN_MEAN * every, (_GRAIN_MEAN - 1) * every]
    c, s = math.cos(angle), math.sin(angle)
    step = (along * c - across * s, along * s + across * c)
    return [(math.degrees(angle), about, step, dashes)]
