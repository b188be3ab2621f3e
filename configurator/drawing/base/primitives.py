"""The few things every picture is made of. Lengths are inches in plan, text sizes points."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Polyline:
    """Straight segments through `points`, closed or not."""

    layer: str
    points: tuple[Point, ...]
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Polygon:
    """A filled outline; `fill` names a material of the drawing style (its colour and hatch), or None.

    `layer` draws its outline, `pattern_layer` its hatch. Neither draws a line where the picture cuts it off.
    """

    layer: str
    points: tuple[Point, ...]
    fill: str | None = None
    name: str = ""
    """What a reader would call it, for hovering and for files; empty where it needs no name."""
    outlined: bool = True
    pattern_layer: str = "A-DETL-PATT"
    turned: float = 0.0
    """How far the part has turned from where its grain is level, radians."""
    about: Point = (0.0, 0.0)
    """What it has turned about."""


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, counter-clockwise from `start` to `end`, radians. A full circle spans 2 pi."""

    layer: str
    centre: Point
    radius: float
    start: float
    end: float
    fill: str | None = None
    name: str = ""


@dataclass(frozen=True, slots=True)
class Region:
    """An area bounded by segments and arcs, one after the other around it, either may run backward.

    Each bound is drawn on its own layer, an arc as an arc; `layer` is the region's own.
    """

    layer: str
    bounds: tuple[Polyline | Arc, ...]
    fill: str | None = None
    name: str = ""


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance between two points, with its line and its text placed.

    `a` and `b` are the points measured; `line_a` and `line_b` the ends of the dimension line (where extension
    lines meet it); `text_at` the middle of the text. `name` is what a client would call it. `shoulder`
    carries the line on to a text that stands apart. `value` is inches along the line.
    """

    layer: str
    a: Point
    b: Point
    line_a: Point
    line_b: Point
    text: str
    text_at: Point
    name: str
    value: float
    text_angle: float = 0.0
    size: float = 8.0
    shoulder: tuple[Point, ...] = ()
    explained: str = ""
    """What it is and what it is measured from, with its number, for hovering."""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; `size` in points; `angle` radians on the sheet; `anchor` as it reads on the sheet."""

    layer: str
    at: Point
    text: str
    size: float
    anchor: Anchor = "start"
    angle: float = 0.0
    bold: bool = False
    field: str = ""
    """The field of the title block that it names or fills; a file that knows attributes keeps it as one."""
    paragraph: int = 0
    """The number of the paragraph it is a line of, 0 for none; a file that knows those keeps it whole."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """A mark drawn at a fixed size on paper: the pin axis' cross, a contact's ring, a leader's dot."""

    layer: str
    at: Point
    kind: Literal["pin axis", "contact", "graze", "dot"]
    name: str = ""


def turned(points: Sequence[Point], about: Point, angle: float) -> tuple[Point, ...]:
    """Return the points turned counter-clockwise about one of them, radians; 90 and 180 degrees are exact."""
    c, s = _exact(math.cos(angle)), _exact(math.sin(angle))
    x_0, y_0 = about
    return tuple(
        (x_0 + c * (x - x_0) - s * (y - y_0), y_0 + s * (x - x_0) + c * (y - y_0)) for x, y in points
    )


def _exact(value: float) -> float:
    """Take off the rounding that a quarter or half turn leaves."""
    nearest = round(value)
    return float(nearest) if abs(value - nearest) < 1e-15 else value


def rectangle(x_0: float, x_1: float, y_0: float, y_1: float) -> tuple[Point, ...]:
    """Return the corners of an upright rectangle, counter-clockwise."""
    return ((x_0, y_0), (x_1, y_0), (x_1, y_1), (x_0, y_1))


Primitive = Polyline | Polygon | Arc | Region | Dimension | Text | Symbol
