"""The frame every sheet has about its details: border, title block, notes column and scale bars."""

import math
from collections.abc import Sequence

from configurator.drawing.base.primitives import Polyline, Primitive, rectangle
from configurator.drawing.base.view import Box
from configurator.drawing.pages.notes_column import Note, notes_column
from configurator.drawing.pages.page import Paper, Scale
from configurator.drawing.pages.scale_bar import HEIGHT as BAR_HEIGHT
from configurator.drawing.pages.scale_bar import scale_bar
from configurator.drawing.pages.title_block import HEIGHT as BLOCK_HEIGHT
from configurator.drawing.pages.title_block import title_block, title_cells
from configurator.model import JobFacts
from configurator.study import Study
from configurator.units import Display

MARGIN = 28.0
"""From the paper's edge to the border, points: what desk printers leave white is less."""
PAD = 8.0
_COLUMN_SHARE, _COLUMN_LEAST, _COLUMN_MOST = 0.265, 168.0, 320.0
_BAR_AIR, _BAR_GUTTER = 8.0, 14.0


def border_box(paper: Paper) -> Box:
    """Return the border of a sheet, points of the paper."""
    return Box(0.0, 0.0, *paper.points).shrunk(MARGIN)


def drawing_box(paper: Paper) -> Box:
    """Return the room for details, inside border, title block and notes column; points of the paper."""
    border = border_box(paper)
    right = border.right - _column_width(border)
    return Box(border.left, border.bottom + BLOCK_HEIGHT, right, border.top).shrunk(PAD)


def page_frame(
    paper: Paper,
    study: Study,
    job: JobFacts,
    display: Display,
    drawing: str,
    scales: Sequence[Scale] = (),
    notes: Sequence[Note] = (),
    number: tuple[int, int] = (1, 1),
) -> tuple[tuple[Primitive, ...], Box]:
    """Return the furniture of a sheet, points of the paper, and the room it leaves, `drawing_box(paper)`.

    `drawing` says in the title block what the sheet shows; there is a scale bar for each of the scales, in
    their order; `number` is which sheet of how many.
    """
    border = border_box(paper)
    block = Box(border.left, border.bottom, border.right, border.bottom + BLOCK_HEIGHT)
    left = border.right - _column_width(border)
    column = Box(left, block.top, border.right, border.top)
    different = tuple(dict.fromkeys(scales))
    bars = math.ceil(len(different) / 2) * (BAR_HEIGHT + _BAR_AIR)
    room = column.shrunk(PAD)
    text = Box(room.left, room.bottom + bars, room.right, room.top)
    furniture = (
        Polyline("A-ANNO-BRDR", rectangle(border.left, border.right, border.bottom, border.top), closed=True),
        Polyline("A-ANNO-TTLB-LINE", ((left, column.bottom), (left, column.top))),
        *title_block(title_cells(study, job, display, drawing, different, number), block),
        *notes_column(notes, text),
        *_bars(different, display, room),
    )
    return furniture, drawing_box(paper)


def _bars(scales: Sequence[Scale], display: Display, room: Box) -> list[Primitive]:
    """A bar for each scale at the foot of the column, two in a row, the first at the top left."""
    rows = math.ceil(len(scales) / 2)
    wide = room.width if len(scales) == 1 else (room.width - _BAR_GUTTER) / 2
    found: list[Primitive] = []
    for place, scale in enumerate(scales):
        row, column = divmod(place, 2)
        at = (
            room.left + column * (wide + _BAR_GUTTER),
            room.bottom + (rows - 1 - row) * (BAR_HEIGHT + _BAR_AIR),
        )
        found += scale_bar(scale, display, at, wide)
    return found


def _column_width(border: Box) -> float:
    return min(max(_COLUMN_SHARE * border.width, _COLUMN_LEAST), _COLUMN_MOST)
