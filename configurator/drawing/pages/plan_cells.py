"""How the plans of several widths share a sheet: a cell each, with heading, plan and the small plan."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from configurator.drawing.base.view import Box

HEADING = 27.0
CAPTION = 10.0
"""Points kept over a plan for its heading, and over the small plan for its scale."""
_GUTTER = 10.0
_UNDER = (0.22, 0.26, 0.3, 0.34, 0.38, 0.42)
"""Shares of a cell's height that the small plan may have under the large one."""
_BESIDE = (0.36, 0.44, 0.5)
"""Shares of a cell's width that it may have beside the large one."""


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
        """Return the cell with a small plan no higher than so much; what it gives up is the large one's."""
        plan, small = self.plan, self.small
        if height >= small.height:
            return self
        if small.left > plan.left:
            return Cell(plan, Box(small.left, small.top - height, small.right, small.top))
        top = small.bottom + height
        upper = Box(plan.left, top + CAPTION, plan.right, plan.top)
        return Cell(upper, Box(small.left, small.bottom, small.right, top))


def arrangements(count: int, room: Box) -> Iterator[tuple[Cell, ...]]:
    """Yield the ways so many cells, all alike, may share the room, in rows and columns."""
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
