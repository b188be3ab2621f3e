"""How a plan sheet is shared so that its plans are as large as a listed scale allows."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from configurator.drawing.base.view import Box
from configurator.drawing.pages.page import POINTS_PER_INCH, Paper, Scale
from configurator.drawing.pages.papers import largest_scale, scales
from configurator.drawing.pages.plan_cells import Cell, arrangements
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.inset import Told, inset_view, small_height
from configurator.drawing.plan.panel import closest_scale, view_scale
from configurator.study import Study
from configurator.units import TOLERANCE

_READABLE = 1.5
"""A whole opening drawn smaller than this is hard to read, points an inch."""
_SPARE = 1.0
"""Height a small plan keeps over what it needs, points."""
_WIDE_ENOUGH = 240.0
"""A plan so wide has room for the words of its dimensions, points."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Where each width is drawn, and at what scale."""

    cells: tuple[Cell, ...]
    scale: Scale
    small: tuple[Scale, ...]
    """What every whole opening may be drawn at, the largest first."""


_LEAST_PLAN = POINTS_PER_INCH / 10
"""A plan drawn smaller than this says little of a hinge, points an inch."""


def fewer_and_fewer(study: Study) -> Iterator[tuple[int, ...]]:
    """Yield which candidates to draw, by their places: all, then fewer of each leaf's, at last one of each.

    The recommended width of a leaf stays to the end, and beside it the first of the others.
    """
    chosen = {one.leaf: one.parts["width"].value for one in study.specification.leaves}
    leaves: dict[str, list[int]] = {}
    for place, one in enumerate(study.candidates):
        leaves.setdefault(one.leaf, []).append(place)
    ranked = [
        sorted(places, key=lambda place: study.candidates[place].hinge_width != chosen.get(leaf))
        for leaf, places in leaves.items()
    ]
    for count in range(max(map(len, ranked)), 0, -1):
        yield tuple(sorted(place for places in ranked for place in places[:count]))


def plan_layout(hungs: Sequence[DrawnLeaf], room: Box, metric: bool, crowded: bool = False) -> Layout | None:
    """Return the way to share the room that has the largest plans, and among those the largest small ones.

    None where so many would be too small to read, unless that is allowed by `crowded`.
    """
    cells = max(arrangements(len(hungs), room), key=lambda cells: _worth(hungs, cells, metric))
    fits, small = _plans_fit(hungs, cells), _small_fit(hungs, cells)
    if not crowded and (fits < _LEAST_PLAN or small < scales(metric)[-1].points):
        return None
    return _layout(hungs, cells, largest_scale(fits, metric) or scales(metric)[-1], metric)


def layout_at(
    hungs: Sequence[DrawnLeaf], room: Box, asked: Scale, paper: Paper, metric: bool, crowded: bool = False
) -> Layout:
    """Return the best way to share the room at a scale, which may leave out what is met far along the wall.

    Raises ValueError where it does not fit even so, naming the largest that does, and where whole openings
    would not fit at any scale, unless that is allowed by `crowded`.
    """
    ways = list(arrangements(len(hungs), room))
    holding = [cells for cells in ways if asked.points <= _closest(hungs, cells) + TOLERANCE]
    if not holding:
        raise ValueError(_too_large(asked, max(_closest(hungs, cells) for cells in ways), paper, metric))
    cells = max(holding, key=lambda cells: _worth(hungs, cells, metric))
    if not crowded and _small_fit(hungs, cells) < scales(metric)[-1].points:
        raise ValueError(
            f"so many whole openings do not fit on {paper.name} paper beside plans at {asked.name}"
        )
    return _layout(hungs, cells, asked, metric)


def _layout(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell], scale: Scale, metric: bool) -> Layout:
    """Give the plans what height the small ones do not need, in every cell alike."""
    fits = _small_fit(hungs, cells)
    small = tuple(one for one in scales(metric) if one.points <= fits) or scales(metric)[-1:]
    needed = max(small_height(hung, Told("x"), small[0].points) for hung in hungs)
    return Layout(tuple(cell.trimmed(needed + _SPARE) for cell in cells), scale, small)


def _too_large(asked: Scale, fits: float, paper: Paper, metric: bool) -> str:
    best = largest_scale(fits, metric)
    may = f"; {best.name} does" if best else ""
    return f"{asked.name} does not fit on {paper.name} paper{may}"


def _worth(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell], metric: bool) -> tuple[float, ...]:
    """Rank a way: small plans that can be read, a large scale, room for words, larger small plans, air."""
    fits, small = _plans_fit(hungs, cells), _small_fit(hungs, cells)
    scale, small_scale = largest_scale(fits, metric), largest_scale(small, metric)
    readable = min(small_scale.points if small_scale else 0.0, _READABLE)
    plan_scale = scale.points if scale else 0.0
    wide = min(cells[0].plan.width, _WIDE_ENOUGH)
    return (readable, plan_scale, wide, small_scale.points if small_scale else 0.0, fits)


def _plans_fit(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell]) -> float:
    both = zip(hungs, cells, strict=True)
    return min(view_scale(hung, cell.plan.width, cell.plan.height) for hung, cell in both)


def _closest(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell]) -> float:
    both = zip(hungs, cells, strict=True)
    return min(closest_scale(hung, cell.plan.width, cell.plan.height) for hung, cell in both)


def _small_fit(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell]) -> float:
    """Points an inch at which every whole opening fits, with a line of words kept for a contact."""
    both = zip(hungs, cells, strict=True)
    return min(inset_view(hung, cell.small, Told("x")).scale for hung, cell in both)
