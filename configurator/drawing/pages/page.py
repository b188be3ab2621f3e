"""What a page is: a paper, details at a true scale, and the furniture about them.

The papers and scales there are to choose from stand in resources/style.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Literal

from configurator.drawing.base.primitives import Primitive
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.tables import Mark, resource_rows
from configurator.units import TOLERANCE, Display

MM_PER_INCH = 25.4
POINTS_PER_INCH = 72.0
USUAL_PAPER = "Letter"
METRIC_PAPER = "A4"
FITTED = "fitted"
"""Name of the scale of a picture that is made as large as there is room for, and tells no scale."""
_MARKS = str.maketrans({"″": '"', "”": '"', "“": '"', "′": "'", "’": "'"})


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper size as it lies, millimetres."""

    name: str
    width: float
    height: float

    @property
    def points(self) -> tuple[float, float]:
        """Width and height in points."""
        return self.width / MM_PER_INCH * POINTS_PER_INCH, self.height / MM_PER_INCH * POINTS_PER_INCH

    def turned(self) -> "Paper":
        """Return the same paper lying the other way."""
        return Paper(self.name, self.height, self.width)


@dataclass(frozen=True, slots=True)
class Scale:
    """A drawing scale: how it is written, and inches on paper for an inch of the real thing."""

    name: str
    ratio: float

    @property
    def points(self) -> float:
        """Points on paper for an inch of the real thing: a view's scale."""
        return POINTS_PER_INCH * self.ratio


@dataclass(frozen=True, slots=True)
class Detail:
    """One drawing on a page: primitives in inches of the real thing, seen through a view at a true scale."""

    name: str
    scale: Scale
    view: View
    primitives: tuple[Primitive, ...]
    hinge: str = ""
    """The hinge it shows, where it is another than the page's own."""
    opening: tuple[tuple[str, str], ...] = ()
    """What the opening it shows is, by tag, where its page has several."""

    @property
    def group(self) -> Group:
        """The detail as it is painted."""
        return Group(self.view, self.primitives)


@dataclass(frozen=True, slots=True)
class Page:
    """A page to hand on; `furniture` (border, title block, notes, scale bars) is in points of the paper.

    `title` is the page's bookmark, as "112A plan". `metric`: its lengths are shown in millimetres.
    """

    title: str
    paper: Paper
    details: tuple[Detail, ...]
    furniture: tuple[Primitive, ...]
    metric: bool = False
    logo: tuple[Path, Box] | None = None
    """A picture's file and the room for it, points of the paper; a DXF has none."""
    opening: tuple[tuple[str, str], ...] = ()
    """What the opening drawn is, by tag: MARK, HAND, SIZE, HINGE. Door, frame and hinge in a DXF carry it."""

    @property
    def groups(self) -> tuple[Group, ...]:
        """Everything in painting order."""
        whole = paper(*self.paper.points)
        return (*(detail.group for detail in self.details), Group(whole, self.furniture))


@dataclass(frozen=True, slots=True)
class _PaperRow:
    """A paper with its long side level, millimetres."""

    paper: str
    width: float
    height: float
    words: str
    source: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class _ScaleRow:
    """A scale of drawings: 1 in on paper stands for `reduction` inches of the real thing."""

    scale: str
    reduction: float
    system: Literal["inch", "metric"]
    short: str
    source: str | None
    mark: Mark


@cache
def papers() -> Mapping[str, Paper]:
    """Return every paper by name, lying with its long side level."""
    rows = resource_rows("style", "papers", _PaperRow)
    return {row.paper: Paper(row.paper, row.width, row.height) for row in rows}


@cache
def scales(metric: bool) -> tuple[Scale, ...]:
    """Return the scales of drawings in inches or in millimetres, the largest first."""
    system = "metric" if metric else "inch"
    return tuple(_scale(row) for row in _scale_rows() if row.system == system)


def paper_named(words: str) -> Paper:
    """Return the paper called so, in any case. Raises ValueError that lists the papers."""
    wanted = "".join(words.lower().split())
    for name, size in papers().items():
        if "".join(name.lower().split()) == wanted:
            return size
    raise ValueError(f"is one of {', '.join(papers())}; {words!r} was given")


def usual_paper(display: Display) -> Paper:
    """Return the paper taken where none is asked for."""
    return papers()[METRIC_PAPER if display.metric else USUAL_PAPER]


def scale_named(words: str) -> Scale:
    """Return the scale written so: in full, or short as `3`, `1-1/2`, `full` or `1:5`.

    Raises ValueError that lists them.
    """
    wanted = _plain(words)
    for row in _scale_rows():
        if wanted in (_plain(row.scale), _plain(row.short), _plain(f"{row.short} in")):
            return _scale(row)
    raise ValueError(f"is one of {', '.join(row.short for row in _scale_rows())}; {words!r} was given")


def largest_scale(points_per_inch: float, metric: bool) -> Scale | None:
    """Return the largest listed scale of at most `points_per_inch` points on paper for a real inch.

    None where even the smallest would be larger.
    """
    return next((one for one in scales(metric) if one.points <= points_per_inch + TOLERANCE), None)


def fitted_or_asked(points_per_inch: float, asked: Scale | None, paper: Paper, metric: bool) -> Scale:
    """Return the scale asked for if it fits `points_per_inch`, else the largest listed one that does.

    Raises ValueError, in words, where the scale asked for does not fit or none does.
    """
    best = largest_scale(points_per_inch, metric)
    if asked is None and best is not None:
        return best
    if asked is not None and asked.points <= points_per_inch + TOLERANCE:
        return asked
    if best is None or asked is None:
        raise ValueError(f"no scale is small enough for {paper.name} paper")
    raise ValueError(f"{asked.name} does not fit on {paper.name} paper; {best.name} does")


def _plain(words: str) -> str:
    return "".join(words.translate(_MARKS).lower().split())


def _scale(row: _ScaleRow) -> Scale:
    return Scale(row.scale, 1.0 / row.reduction)


def _scale_rows() -> tuple[_ScaleRow, ...]:
    return resource_rows("style", "scales", _ScaleRow)
