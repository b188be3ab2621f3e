"""Hatches as line segments, cut off at their outline by ourselves: no backend has a pattern of its own.

Lengths are points on paper, so that a hatch is as quiet in a small picture as in a large one.
"""

import math
from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from configurator.drawing.base.primitives import Point
from configurator.drawing.base.style import Material

Segments = NDArray[Any]
"""An array of n x 2 x 2: n segments of two points."""

NONE: Segments = np.empty((0, 2, 2))
DOT = 0.55
"""Length of a stipple dot, points."""
DOT_ROWS, DOT_SHIFT = 0.62, 0.381966
"""Rows of dots, and how far each is set off from the one before; of the spacing."""
GRAIN_EVERY, GRAIN_SHIFT = 9.0, 0.618034
"""Strokes of grain along a row, of the spacing; how far each row is set off, of that."""
_MOST_LINES = 1500
"""No outline gets more rows than this; the spacing grows instead."""


def hatch(
    outline: Sequence[Point], material: Material, turned: float = 0.0, about: Point = (0.0, 0.0)
) -> Segments:
    """Return the segments of a material's pattern inside a closed outline.

    `turned` (radians) and `about` turn the pattern with a part that moves, so that its grain moves with it.
    """
    if material.pattern == "none" or len(outline) < 3:
        return NONE
    angle = math.radians(material.angle) + turned
    level = _turned(np.asarray(outline, float) - about, -angle)
    segments = _PATTERNS[material.pattern](level, material.spacing)
    moved: Segments = _turned(segments, angle) + np.asarray(about)
    return moved


def _turned(points: NDArray[Any], angle: float) -> NDArray[Any]:
    c, s = math.cos(angle), math.sin(angle)
    result: NDArray[Any] = points @ np.array([[c, s], [-s, c]])
    return result


def _rows(level: NDArray[Any], spacing: float, shift: float = 0.0) -> tuple[NDArray[Any], ...]:
    """Return rows of y, and where each enters and leaves the outline: arrays of equal length."""
    low, high = float(level[:, 1].min()), float(level[:, 1].max())
    spacing = max(spacing, (high - low) / _MOST_LINES)
    first = math.ceil((low - shift) / spacing)
    ys = np.arange(first, math.floor((high - shift) / spacing) + 1) * spacing + shift
    ys = ys[(ys > low) & (ys < high)]
    a, b = level, np.roll(level, -1, axis=0)
    crosses = (a[None, :, 1] > ys[:, None]) != (b[None, :, 1] > ys[:, None])
    row, edge = np.nonzero(crosses)
    y = ys[row]
    x = a[edge, 0] + (y - a[edge, 1]) * (b[edge, 0] - a[edge, 0]) / (b[edge, 1] - a[edge, 1])
    order = np.lexsort((x, row))
    x, y = x[order], y[order]
    return y[0::2], x[0::2], x[1::2]


def _segments(y: NDArray[Any], start: NDArray[Any], end: NDArray[Any]) -> Segments:
    return np.stack([np.column_stack([start, y]), np.column_stack([end, y])], axis=1)


def _lines(level: NDArray[Any], spacing: float) -> Segments:
    return _segments(*_rows(level, spacing))


def _dots(level: NDArray[Any], spacing: float) -> Segments:
    """Scatter dots on a staggered grid, set off row by row so that no rows or columns stand out."""
    y, start, end = _rows(level, spacing * DOT_ROWS, shift=spacing * 0.31)
    if not len(y):
        return NONE
    number = np.round(y / (spacing * DOT_ROWS)).astype(int)
    shift = spacing * np.mod(number * DOT_SHIFT + 0.13, 1.0)
    return _marks(y, start + 0.4, end - 0.4, spacing, shift, np.full(len(y), DOT))


def _grain(level: NDArray[Any], spacing: float) -> Segments:
    """Draw long and short strokes along the grain, their breaks wandering from row to row."""
    y, start, end = _rows(level, spacing, shift=spacing * 0.5)
    if not len(y):
        return NONE
    number = np.round(y / spacing).astype(int)
    every = spacing * GRAIN_EVERY
    shift = every * np.mod(number * GRAIN_SHIFT, 1.0)
    return _marks(y, start, end, every, shift, every * (0.55 + 0.35 * np.mod(number * 0.754878, 1.0)))


def _marks(
    y: NDArray[Any],
    start: NDArray[Any],
    end: NDArray[Any],
    every: float,
    shift: NDArray[Any],
    length: NDArray[Any],
) -> Segments:
    """Lay marks of a length along each row, one every so far, cut off where the row ends."""
    first = np.floor((start - shift) / every)
    count = np.maximum(np.floor((end - shift) / every) - first + 1, 0).astype(int)
    row = np.repeat(np.arange(len(y)), count)
    if not len(row):
        return NONE
    step = np.arange(len(row)) - np.repeat(np.cumsum(count) - count, count)
    left = shift[row] + (first[row] + step) * every
    right = np.minimum(left + length[row], end[row])
    left = np.maximum(left, start[row])
    keep = right > left
    return _segments(y[row][keep], left[keep], right[keep])


_PATTERNS = {"lines": _lines, "dots": _dots, "grain": _grain}
