"""The title block: whose opening, which job, what the sheet shows, at what scale, and how far it is checked.

What is not known is left blank, to be written in by hand; a date is only ever the job's own.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Polyline, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.lines_of_text import cut_to
from configurator.drawing.pages.page import Scale
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

HEIGHT = 54.0
_LABEL, _VALUE, _LEAST = 5.0, 8.0, 6.0
_AIR = 3.5
_STATUS = {"assumed": "assumed, not yet verified"}


@dataclass(frozen=True, slots=True)
class Cell:
    """One field of the block: its label, what stands there, and its share of the row's width."""

    label: str
    value: str
    share: float
    bold: bool = False


def title_cells(
    study: Study,
    job: JobFacts,
    display: Display,
    drawing: str,
    scales: Sequence[Scale],
    number: tuple[int, int],
) -> tuple[tuple[Cell, ...], ...]:
    """Return the block's two rows; `drawing` says what the sheet shows, `number` is sheet and sheets."""
    filled, opening = study.filled, study.opening
    above = (
        Cell("Job", job.name or "", 3.2, True),
        Cell("Client", job.client or "", 3.0),
        Cell("Opening", opening.mark, 1.5, True),
        Cell("Location", opening.location or "", 3.0),
        Cell("Drawing", drawing, 3.0, True),
    )
    below = (
        Cell("Job number", job.number or "", 1.2),
        Cell("Prepared by", job.prepared_by or "", 1.7),
        Cell("Date", job.date or "", 1.2),
        Cell("Revision", job.revision or "", 0.8),
        Cell("Opening size", display.opening(filled.opening_width, filled.opening_height), 1.6),
        Cell("Hand", opening.hand or "not given", 0.9),
        Cell("Leaves", opening.leaves, 0.9),
        Cell("How many", str(opening.quantity), 0.8),
        Cell("Dimensions", _STATUS.get(opening.status, opening.status), 2.2),
        Cell("Scale", _scale_words(scales), 1.6),
        Cell("Sheet", f"{number[0]} of {number[1]}", 0.9),
    )
    return above, below


def _scale_words(scales: Sequence[Scale]) -> str:
    names = list(dict.fromkeys(scale.name for scale in scales))
    return names[0] if len(names) == 1 else "as shown" if names else "none"


def title_block(rows: Sequence[Sequence[Cell]], box: Box) -> tuple[Primitive, ...]:
    """Return the block drawn in a rectangle of the page: its lines, labels and values."""
    high = box.height / len(rows)
    found: list[Primitive] = []
    for number, cells in enumerate(rows):
        top = box.top - number * high
        edges = _edges(cells, box)
        found.append(_line((box.left, top), (box.right, top)))
        found += [_line((x, top - high), (x, top)) for x in edges[1:-1]]
        for cell, (left, right) in zip(cells, pairwise(edges), strict=True):
            found += _cell(cell, Box(left, top - high, right, top))
    return tuple(found)


def _edges(cells: Sequence[Cell], box: Box) -> list[float]:
    shares = [0.0, *accumulate(cell.share for cell in cells)]
    return [box.left + box.width * share / shares[-1] for share in shares]


def _line(a: Point, b: Point) -> Polyline:
    return Polyline("A-ANNO-TTLB-LINE", (a, b))


def _cell(cell: Cell, box: Box) -> list[Primitive]:
    """The label small over the value, which is lettered smaller before it is cut."""
    room = box.width - 2 * _AIR
    size = _VALUE
    while size > _LEAST and text_width(cell.value, size, cell.bold) > room:
        size -= 0.5
    label = Text("A-ANNO-NOTE", (box.left + _AIR, box.top - _LABEL - 2.5), cell.label, _LABEL)
    if not cell.value:
        return [label]
    words = cut_to(cell.value, size, room, cell.bold)
    at = (box.left + _AIR, box.bottom + 5.5)
    return [label, Text("A-ANNO-TTLB", at, words, size, bold=cell.bold)]
