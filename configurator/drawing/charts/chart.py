"""What a chart shows: axes, curves, lines and marks, in the units of its axes."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from configurator.drawing.base.primitives import Point
from configurator.drawing.base.view import Box
from configurator.units import TOLERANCE

SIZE = 7.5
"""Type size of a chart, points."""
TEXT = "A-CHRT-TEXT"
_ROOM_ABOVE, _ROOM_BELOW = 0.12, 0.04
"""Shares of an upright axis kept free past its ends, so that a label finds room."""


@dataclass(frozen=True, slots=True)
class Axis:
    """One axis: what it is, its ends, and where it is ticked with what text ("" for a bare tick)."""

    title: str
    low: float
    high: float
    ticks: tuple[tuple[float, str], ...]

    def share(self, value: float) -> float:
        """Return how far along the axis a value lies, 0 to 1 within its ends."""
        return (value - self.low) / (self.high - self.low)


@dataclass(frozen=True, slots=True)
class Curve:
    """A curve from left to right, by the axis at the left or at the right.

    Its label is put above it or below where there is room; a curve that has none is told by hovering.
    """

    layer: str
    points: tuple[Point, ...]
    label: str = ""
    right: bool = False
    above: bool = True


@dataclass(frozen=True, slots=True)
class Rule:
    """A straight line right across the plot: level at a value of the left axis, or upright."""

    layer: str
    at: float
    label: str = ""
    upright: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """A named point; the wordings from long to short, of which the first that finds room is lettered."""

    at: Point
    wordings: tuple[str, ...]
    right: bool = False


@dataclass(frozen=True, slots=True)
class Chart:
    """What a chart shows, and what it says to who cannot see it."""

    across: Axis
    left: Axis
    curves: tuple[Curve, ...]
    right: Axis | None = None
    rules: tuple[Rule, ...] = ()
    marks: tuple[Mark, ...] = ()
    dots: tuple[Point, ...] = ()
    said: str = ""

    def place(self, plot: Box, x: float, y: float, right: bool = False) -> Point:
        """Return where a value of the axes lies in an area of the sheet."""
        axis = self.right if right and self.right is not None else self.left
        inner = plot.height * (1.0 - _ROOM_ABOVE - _ROOM_BELOW)
        up = plot.bottom + _ROOM_BELOW * plot.height + axis.share(y) * inner
        return plot.left + self.across.share(x) * plot.width, up


def nice_step(span: float, steps: Sequence[float], most: int) -> float:
    """Return the least step that cuts a span into at most `most` parts, else the greatest step."""
    return next((step for step in steps if span / step <= most), steps[-1])


def ticks_between(low: float, high: float, step: float) -> list[float]:
    """Return every multiple of a step from low to high."""
    first, last = math.ceil(low / step - TOLERANCE), math.floor(high / step + TOLERANCE)
    return [number * step for number in range(first, last + 1)]
