"""How a plan sheet is shared so that its plans are as large as a listed scale allows.

Every width has a cell with its heading, its plan and the small plan of the whole opening.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from configurator.drawing.base.view import Box
from configurator.drawing.pages.page import POINTS_PER_INCH, Paper, Scale, largest_scale, scales
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.inset import Told, inset_view, small_height
from configurator.drawing.plan.panel import closest_scale, view_scale
from configurator.drawing.plan.standing_things import floor_boxes
from configurator.study import Study
from configurator.units import TOLERANCE

HEADING = 27.0
CAPTION = 10.0
"""Points kept over a plan for its heading, and over the small plan for its scale."""
_GUTTER = 10.0
_UNDER = (0.22, 0.26, 0.3, 0.34, 0.38, 0.42)
"""Shares of a cell's height that the small plan may have under the large one."""
_BESIDE = (0.36, 0.44, 0.5)
"""Shares of a cell's width that it may have beside the large one."""
_READABLE = 1.5
"""A whole opening drawn smaller than this is hard to read, points an inch."""
_SPARE = 1.0
"""Height a small plan keeps over what it needs, points."""
_WIDE_ENOUGH = 240.0
"""A plan so wide has room for the words of its dimensions, points."""


@dataclass(frozen=True, slots=True)
class Cell:
    """Where one width is drawn: the window of its plan, and that of the whole opening; points."""

    plan: Box
    small: Box

    @property
    def right(self) -> float:
        """How far the heading may run."""
        return max(self.plan.right, self.small.right)

    def trimmed(self, height: float) -> "Cell":
        """Return the cell with a small plan of at most that height; the large plan gets the rest."""
        plan, small = self.plan, self.small
        if height >= small.height:
            return self
        if small.left > plan.left:
            return Cell(plan, Box(small.left, small.top - height, small.right, small.top))
        top = small.bottom + height
        upper = Box(plan.left, top + CAPTION, plan.right, plan.top)
        return Cell(upper, Box(small.left, small.bottom, small.right, top))


def arrangements(count: int, room: Box) -> Iterator[tuple[Cell, ...]]:
    """Yield the ways in which `count` equal cells can share the room, in rows and columns."""
    for columns in range(1, count + 1):
        boxes = _grid(count, columns, room)
        for share in _UNDER:
            yield tuple(_under(box, share) for box in boxes)
        for share in _BESIDE:
            yield tuple(_beside(box, share) for box in boxes)


def _grid(count: int, columns: int, room: Box) -> Sequence[Box]:
    rows = math.ceil(count / columns)
    across = (room.width - (columns - 1) * _GUTTER) / columns
    down = (room.height - (rows - 1) * _GUTTER) / rows
    lefts = [room.left + column * (across + _GUTTER) for column in range(columns)]
    tops = [room.top - row * (down + _GUTTER) for row in range(rows)]
    boxes = [Box(left, top - down, left + across, top - HEADING) for top in tops for left in lefts]
    return boxes[:count]


def _under(box: Box, share: float) -> Cell:
    top = box.bottom + share * box.height - CAPTION
    plan = Box(box.left, top + CAPTION, box.right, box.top)
    return Cell(plan, Box(box.left, box.bottom, box.right, top))


def _beside(box: Box, share: float) -> Cell:
    """The small plan stands right of the large one, its caption level with the heading's second line."""
    left = box.right - share * box.width
    plan = Box(box.left, box.bottom, left - _GUTTER, box.top)
    return Cell(plan, Box(left, box.bottom, box.right, box.top))


@dataclass(frozen=True, slots=True)
class Layout:
    """Where each width is drawn, and at what scale."""

    cells: tuple[Cell, ...]
    scale: Scale
    small: tuple[Scale, ...]
    """What every whole opening may be drawn at, the largest first."""
    floor: bool = True
    """Whether the whole openings show the manoeuvring space: not where the plans would pay for it."""


_LEAST_PLAN = POINTS_PER_INCH / 10
"""A plan drawn smaller than this says little of a hinge, points an inch."""


def fewer_and_fewer(study: Study) -> Iterator[tuple[int, ...]]:
    """Yield the indexes of the candidates to draw: all, then fewer of each leaf's, at last one of each.

    The recommended width of a leaf stays to the end, and beside it the first of the others.
    """
    chosen = {one.leaf: one.parts["width"].value for one in study.specification.leaves}
    leaves: dict[str, list[int]] = {}
    for index, one in enumerate(study.candidates):
        leaves.setdefault(one.leaf, []).append(index)
    ranked = [
        sorted(indexes, key=lambda index: study.candidates[index].on != chosen.get(leaf))
        for leaf, indexes in leaves.items()
    ]
    for count in range(max(map(len, ranked)), 0, -1):
        yield tuple(sorted(index for indexes in ranked for index in indexes[:count]))


def plan_layout(hungs: Sequence[DrawnLeaf], room: Box, metric: bool, crowded: bool = False) -> Layout | None:
    """Return the layout with the largest plans, and among those the one with the largest small plans.

    None where the plans would be too small to read, unless `crowded` allows it.
    """
    bare = _largest_plans(hungs, room, metric, crowded, Told("x", floor=False))
    if not any(floor_boxes(hung) for hung in hungs):
        return bare
    whole = _largest_plans(hungs, room, metric, crowded, Told("x"))
    return bare if whole is None or (bare and bare.scale.points > whole.scale.points) else whole


def _largest_plans(
    hungs: Sequence[DrawnLeaf], room: Box, metric: bool, crowded: bool, told: Told
) -> Layout | None:
    ways = arrangements(len(hungs), room)
    cells = max(ways, key=lambda cells: _worth(hungs, cells, metric, told))
    fits, small = _plans_fit(hungs, cells), _small_fit(hungs, cells, told)
    if not crowded and (fits < _LEAST_PLAN or small < scales(metric)[-1].points):
        return None
    return _layout(hungs, cells, largest_scale(fits, metric) or scales(metric)[-1], metric, told)


def layout_at(
    hungs: Sequence[DrawnLeaf], room: Box, asked: Scale, paper: Paper, metric: bool, crowded: bool = False
) -> Layout:
    """Return the best way to share the room at a scale, which may leave out what is met far along the wall.

    Raises ValueError where it does not fit even so, naming the largest that does, and where whole openings
    would not fit at any scale, unless that is allowed by `crowded`.
    """
    ways = list(arrangements(len(hungs), room))
    holding = [cells for cells in ways if asked.points <= _plans_fit(hungs, cells, closest_scale) + TOLERANCE]
    if not holding:
        raise ValueError(
            _too_large(asked, max(_plans_fit(hungs, cells, closest_scale) for cells in ways), paper, metric)
        )
    told = Told("x", floor=False)
    cells = max(holding, key=lambda cells: _worth(hungs, cells, metric, told))
    if not crowded and _small_fit(hungs, cells, told) < scales(metric)[-1].points:
        raise ValueError(
            f"so many whole openings do not fit on {paper.name} paper beside plans at {asked.name}"
        )
    if _small_fit(hungs, cells, Told("x")) >= _READABLE:
        told = Told("x")
    return _layout(hungs, cells, asked, metric, told)


def _layout(
    hungs: Sequence[DrawnLeaf], cells: Sequence[Cell], scale: Scale, metric: bool, told: Told
) -> Layout:
    """Give the plans what height the small ones do not need, in every cell alike."""
    fits = _small_fit(hungs, cells, told)
    small = tuple(one for one in scales(metric) if one.points <= fits) or scales(metric)[-1:]
    needed = max(small_height(hung, told, small[0].points) for hung in hungs)
    return Layout(tuple(cell.trimmed(needed + _SPARE) for cell in cells), scale, small, told.floor)


def _too_large(asked: Scale, fits: float, paper: Paper, metric: bool) -> str:
    best = largest_scale(fits, metric)
    may = f"; {best.name} does" if best else ""
    return f"{asked.name} does not fit on {paper.name} paper{may}"


def _worth(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell], metric: bool, told: Told) -> tuple[float, ...]:
    """Rank a way: small plans that can be read, a large scale, room for words, larger small plans, air."""
    fits, small = _plans_fit(hungs, cells), _small_fit(hungs, cells, told)
    scale, small_scale = largest_scale(fits, metric), largest_scale(small, metric)
    readable = min(small_scale.points if small_scale else 0.0, _READABLE)
    plan_scale = scale.points if scale else 0.0
    wide = min(cells[0].plan.width, _WIDE_ENOUGH)
    return (readable, plan_scale, wide, small_scale.points if small_scale else 0.0, fits)


def _plans_fit(
    hungs: Sequence[DrawnLeaf],
    cells: Sequence[Cell],
    scale_of: Callable[[DrawnLeaf, float, float], float] = view_scale,
) -> float:
    """Return the greatest scale, points an inch, that fits every plan."""
    both = zip(hungs, cells, strict=True)
    return min(scale_of(hung, cell.plan.width, cell.plan.height) for hung, cell in both)


def _small_fit(hungs: Sequence[DrawnLeaf], cells: Sequence[Cell], told: Told) -> float:
    """Points an inch at which every whole opening fits, with a line of words kept for a contact."""
    both = zip(hungs, cells, strict=True)
    return min(inset_view(hung, cell.small, told).scale for hung, cell in both)
