"""The frame every sheet has about its details: border, title block, notes column and scale bars.

In the title block what is not known is left blank, to be written in by hand; a date is only ever the job's.
A scale bar is a drafter's bar of a round length, exact to the scale, with its scale in words.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Polygon, Polyline, Primitive, Text, rectangle
from configurator.drawing.base.view import Box
from configurator.drawing.pages.notes import Note, cut_to, notes_column
from configurator.drawing.pages.page import MM_PER_INCH, Paper, Scale
from configurator.model import Issue, JobFacts
from configurator.study import Study
from configurator.units import Display, format_decimal, format_size

MARGIN = 28.0
"""From the paper's edge to the border, points: what desk printers leave white is less."""
PAD = 8.0
_COLUMN_SHARE, _COLUMN_LEAST, _COLUMN_MOST = 0.265, 168.0, 320.0
_BAR_AIR, _BAR_GUTTER = 8.0, 14.0
BLOCK_HEIGHT = 54.0
_LABEL, _VALUE, _LEAST = 5.0, 8.0, 6.0
_AIR = 3.5
_STATUS = {"assumed": "assumed, not yet verified"}
_REVISION_ROW, _MOST_REVISIONS = 12.0, 6
_MARK_AT = (3.2 + 3.0 + 1.5 - 0.16) / 13.7
"""Where in the block's width the revision mark stands: at the right of the cell of the opening."""
BAR_LAYER = "A-ANNO-SBAR"
BAR_HEIGHT = 22.0
"""Points from the base of the lower line of words to the top of the upper one."""
_BAR = 4.0
_BAR_TYPE = 6.5
_QUARTERS = 4
_INCHES = (0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 36.0, 48.0, 96.0)
_MM = (10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0)


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
    different = tuple(dict.fromkeys(scales))
    cells = title_cells(study, job, display, drawing, different, number)
    border = border_box(paper)
    block = Box(border.left, border.bottom, border.right, border.bottom + BLOCK_HEIGHT)
    frame = frame_about(paper, cells, display, different, notes, study.issues)
    return (*frame, *revision_mark(study.issues, block)), drawing_box(paper)


def frame_about(
    paper: Paper,
    cells: Sequence[Sequence["Cell"]],
    display: Display,
    different: Sequence[Scale] = (),
    notes: Sequence[Note] = (),
    issues: Sequence[Issue] = (),
) -> tuple[Primitive, ...]:
    """Return border, title block of those cells, notes, revisions and a bar for each scale."""
    border = border_box(paper)
    block = Box(border.left, border.bottom, border.right, border.bottom + BLOCK_HEIGHT)
    left = border.right - _column_width(border)
    column = Box(left, block.top, border.right, border.top)
    bars = math.ceil(len(different) / 2) * (BAR_HEIGHT + _BAR_AIR)
    room = column.shrunk(PAD)
    revisions = revision_table(issues, Box(room.left, room.bottom + bars, room.right, room.top))
    foot = max((top for _, top in _extents(revisions)), default=room.bottom + bars)
    text = Box(room.left, foot + (_BAR_AIR if revisions else 0.0), room.right, room.top)
    return (
        Polyline("A-ANNO-BRDR", rectangle(border.left, border.right, border.bottom, border.top), closed=True),
        Polyline("A-ANNO-TTLB-LINE", ((left, column.bottom), (left, column.top))),
        *title_block(cells, block),
        *notes_column(notes, text),
        *revisions,
        *_bars(different, display, room),
    )


def revision_table(issues: Sequence[Issue], box: Box) -> tuple[Primitive, ...]:
    """Return the table of revisions at the foot of a rectangle, the last at the top, if there are any.

    A triangle stands by those that the opening was changed in. Earlier ones than the last few are counted.
    """
    if not issues:
        return ()
    rows = [(one.number, one.date, one.note, one.changed) for one in issues[-_MOST_REVISIONS:]]
    if earlier := len(issues) - len(rows):
        rows[0] = ("", "", f"and {earlier + 1} earlier", False)
    over = (box.left, box.bottom + len(rows) * _REVISION_ROW + 3.0)
    found: list[Primitive] = [Text("A-ANNO-REVS", over, "Revisions", 7.0, bold=True)]
    for place, (number, date, note, changed) in enumerate(rows):
        base = box.bottom + place * _REVISION_ROW + 2.0
        line = base + _REVISION_ROW - 2.0
        found += triangle((box.left + 6.0, base + 2.0), number) if changed else []
        found += [Text("A-ANNO-REVS", (box.left + 6.0, base), number, 5.5, "middle")] if not changed else []
        found.append(Text("A-ANNO-REVS", (box.left + 15.0, base), cut_to(date, 6.0, 46.0), 6.0))
        left = box.left + (62.0 if date else 15.0)
        found.append(Text("A-ANNO-REVS", (left, base), cut_to(note, 6.0, box.right - left), 6.0))
        found.append(Polyline("A-ANNO-TTLB-LINE", ((box.left, line), (box.right, line))))
    return tuple(found)


def revision_mark(issues: Sequence[Issue], block: Box) -> tuple[Primitive, ...]:
    """Return the triangle of the last revision that changed the opening, beside its mark in the block."""
    last = next((one for one in reversed(issues) if one.changed), None)
    if last is None:
        return ()
    at = (block.left + block.width * _MARK_AT, block.top - 0.36 * block.height)
    return tuple(triangle(at, last.number))


def triangle(middle: Point, number: str) -> list[Primitive]:
    """Return a revision's triangle about a point of the page, with its number."""
    (x, y), half = middle, 5.5
    corners = ((x - half, y - 3.5), (x + half, y - 3.5), (x, y + 6.0))
    outline = Polyline("A-ANNO-REVS", corners, closed=True)
    return [outline, Text("A-ANNO-REVS", (x, y - 2.2), number, 5.0, "middle")]


def _extents(parts: Sequence[Primitive]) -> list[tuple[float, float]]:
    """Return where texts stand from and to, with air over a heading."""
    return [(one.at[1], one.at[1] + 1.2 * one.size) for one in parts if isinstance(one, Text)]


def _bars(scales: Sequence[Scale], display: Display, room: Box) -> list[Primitive]:
    """A bar for each scale at the foot of the column, two in a row, the first at the top left."""
    rows = math.ceil(len(scales) / 2)
    wide = room.width if len(scales) == 1 else (room.width - _BAR_GUTTER) / 2
    found: list[Primitive] = []
    for index, scale in enumerate(scales):
        row, column = divmod(index, 2)
        at = (
            room.left + column * (wide + _BAR_GUTTER),
            room.bottom + (rows - 1 - row) * (BAR_HEIGHT + _BAR_AIR),
        )
        found += scale_bar(scale, display, at, wide)
    return found


def _column_width(border: Box) -> float:
    return min(max(_COLUMN_SHARE * border.width, _COLUMN_LEAST), _COLUMN_MOST)


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
        Cell("Sheet", f"{number[0]} of {number[1]}" if number[1] else str(number[0]), 0.9),
    )
    return above, below


def _scale_words(scales: Sequence[Scale]) -> str:
    names = list(dict.fromkeys(scale.name for scale in scales))
    return names[0] if len(names) == 1 else "as shown" if names else "none"


def title_block(rows: Sequence[Sequence[Cell]], box: Box) -> tuple[Primitive, ...]:
    """Return the block drawn in a rectangle of the page: its lines, labels and values."""
    height = box.height / len(rows)
    found: list[Primitive] = []
    for number, cells in enumerate(rows):
        top = box.top - number * height
        edges = _edges(cells, box)
        found.append(_line((box.left, top), (box.right, top)))
        found += [_line((x, top - height), (x, top)) for x in edges[1:-1]]
        for cell, (left, right) in zip(cells, pairwise(edges), strict=True):
            found += _cell(cell, Box(left, top - height, right, top))
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
    at = (box.left + _AIR, box.top - _LABEL - 2.5)
    label = Text("A-ANNO-NOTE", at, cell.label, _LABEL, field=cell.label)
    words = cut_to(cell.value, size, room, cell.bold)
    at = (box.left + _AIR, box.bottom + 5.5)
    return [label, Text("A-ANNO-TTLB", at, words, size, bold=cell.bold, field=cell.label)]


def scale_bar(scale: Scale, display: Display, at: Point, width: float) -> tuple[Primitive, ...]:
    """Return the bar with its lower left end at a point of the page, at most `width` points wide.

    Under the bar stand 0 and its length, over it the scale in words.
    """
    length, label = bar_length(scale, display, width - text_width("0", _BAR_TYPE))
    left, base = at
    bottom = base + 9.0
    long = length * scale.points
    bar = tuple(_quarter(left, bottom, long, number) for number in range(_QUARTERS))
    ends = (Text("A-ANNO-NOTE", (left, base + 1.5), "0", _BAR_TYPE), _far_end(left + long, base, label, long))
    words = Text("A-ANNO-TEXT", (left, bottom + _BAR + 3.0), scale.name, _BAR_TYPE)
    return (*bar, *ends, words)


def bar_length(scale: Scale, display: Display, width: float) -> tuple[float, str]:
    """Return how long a bar is, inches of the real thing, and that in words: the longest that fits.

    The shortest one where none does.
    """
    if display.metric:
        choices = [(mm / MM_PER_INCH, _metric(mm)) for mm in _MM]
    else:
        choices = [(inches, _imperial(inches)) for inches in _INCHES]
    return next((one for one in reversed(choices) if one[0] * scale.points <= width), choices[0])


def _quarter(left: float, bottom: float, long: float, number: int) -> Polygon:
    x_0, x_1 = (left + long * (number + end) / _QUARTERS for end in (0, 1))
    fill = "steel" if number % 2 == 0 else "white"
    return Polygon(BAR_LAYER, rectangle(x_0, x_1, bottom, bottom + _BAR), fill)


def _far_end(right: float, base: float, label: str, long: float) -> Text:
    """The length under the bar's end, kept off the nought of a short one."""
    room = long - text_width("0", _BAR_TYPE) - 3.0
    anchor = "end" if text_width(label, _BAR_TYPE) <= room else "start"
    at = right if anchor == "end" else right - text_width("0", _BAR_TYPE)
    return Text("A-ANNO-NOTE", (at, base + 1.5), label, _BAR_TYPE, anchor)  # type: ignore[arg-type]


def _metric(mm: float) -> str:
    return f"{format_decimal(mm, 0)} mm" if mm < 1000 else f"{format_decimal(mm / 1000, 0)} m"


def _imperial(inches: float) -> str:
    if inches >= 12:
        return f"{format_decimal(inches / 12, 0)} ft"
    return f"{format_size(inches)} in"
