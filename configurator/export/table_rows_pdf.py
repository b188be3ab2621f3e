"""The rows of a table on the pages of a PDF: the header on each, and no row cut that a page has room for."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from xml.sax.saxutils import escape

from reportlab.lib import colors
from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, Paragraph

from configurator.documents.document import Cell, Column, Table, cell_words
from configurator.export.painting import BOLD, FONT
from configurator.export.pdf import width_of
from configurator.long_work import Counter

SIZE, LEADING = 6.5, 8.0
SIDE, ABOVE, BELOW = 2.5, 1.5, 1.5
"""Points of air about the text of a cell."""
INDENT = 22.0
"""Points that a text under its row stands in."""
GREY, LINE = colors.Color(0.9, 0.9, 0.9), colors.Color(0.6, 0.6, 0.6)
PLAIN = ParagraphStyle("cell", fontName=FONT, fontSize=SIZE, leading=LEADING, splitLongWords=1)
NUMBER = ParagraphStyle("number", parent=PLAIN, alignment=TA_RIGHT)
HEAD = ParagraphStyle("head", parent=PLAIN, fontName=BOLD)
NUMBER_HEAD = ParagraphStyle("number head", parent=HEAD, alignment=TA_RIGHT)
_RIGHT = ("count", "inches", "degrees", "money")


def paragraph(text: str, style: ParagraphStyle) -> Paragraph:
    """Return text as it stands, no sign of it taken for markup."""
    return Paragraph(escape(text).replace("\n", "<br/>"), style)


@dataclass(frozen=True, slots=True)
class Placed:
    """A text of a row: where it begins, how wide it may be and how high it is; a str is one line."""

    x: float
    width: float
    height: float
    text: str | Paragraph
    right: bool = False
    bold: bool = False


@dataclass(frozen=True, slots=True)
class PlacedRow:
    """One row: its cells beside one another, and below them what runs across the page; with their heights."""

    bands: tuple[tuple[Placed, ...], ...]
    heights: tuple[float, ...]
    height: float
    total: bool = False


def row_of(bands: tuple[tuple[Placed, ...], ...], total: bool = False) -> PlacedRow:
    """Return a row of bands, as high as its highest texts."""
    heights = tuple(max(cell.height for cell in band) for band in bands)
    return PlacedRow(bands, heights, sum(heights) + ABOVE + BELOW, total)


class Rows(Flowable):
    """Rows under a header. It is split between rows; a row higher than a page goes on under the header."""

    def __init__(
        self, head: PlacedRow, rows: Sequence[PlacedRow], room: tuple[float, float], counter: Counter
    ) -> None:
        super().__init__()
        self.head, self.rows, self.counter = head, rows, counter
        self.width, self.page = room

    def wrap(self, *_: float) -> tuple[float, float]:
        """Return how wide and high it is."""
        self.height = self.head.height + sum(row.height for row in self.rows)
        return self.width, self.height

    def split(self, _: float, aH: float) -> list[Flowable]:
        """Return what goes on this page and what is left; nothing where not even one row has room."""
        room, fit = aH - self.head.height, 0
        for row in self.rows:
            if row.height > room:
                break
            room -= row.height
            fit += 1
        if fit:
            return [self._with(self.rows[:fit]), self._with(self.rows[fit:])]
        whole_page = self.head.height + self.rows[0].height <= self.page
        return [] if whole_page else self._cut(room)

    def _cut(self, room: float) -> list[Flowable]:
        """Cut the first row, which no page holds: its first lines here, the others under the next header."""
        first, rest = cut_row(self.rows[0], room)
        if rest is None or first is None:
            return []
        return [self._with((first,)), self._with((rest, *self.rows[1:]))]

    def _with(self, rows: Sequence[PlacedRow]) -> "Rows":
        return Rows(self.head, rows, (self.width, self.page), self.counter)

    def draw(self) -> None:
        """Draw the header and the rows, from the top down."""
        top = self.height
        self.canv.setFillColor(GREY)
        self.canv.rect(0, top - self.head.height, self.width, self.head.height, stroke=0, fill=1)
        self.canv.setFillColor(colors.black)
        for row in (self.head, *self.rows):
            self._draw_row(row, top)
            top -= row.height
        self.counter.take(len(self.rows))

    def _draw_row(self, row: PlacedRow, top: float) -> None:
        y = top - ABOVE
        for band, height in zip(row.bands, row.heights, strict=True):
            for cell in band:
                self._draw_cell(cell, y)
            y -= height
        self.canv.setStrokeColor(LINE)
        self.canv.setLineWidth(0.25)
        self.canv.line(0, top - row.height, self.width, top - row.height)
        if row.total:
            self.canv.line(0, top - 0.8, self.width, top - 0.8)

    def _draw_cell(self, cell: Placed, top: float) -> None:
        if not isinstance(cell.text, str):
            cell.text.drawOn(self.canv, cell.x, top - cell.height)
            return
        self.canv.setFont(BOLD if cell.bold else FONT, SIZE)
        base = top - SIZE
        if cell.right:
            self.canv.drawRightString(cell.x + cell.width, base, cell.text)
        else:
            self.canv.drawString(cell.x, base, cell.text)


def cut_row(row: PlacedRow, room: float) -> tuple[PlacedRow | None, PlacedRow | None]:
    """Return a row in two: what has room, and the rest; None for a part that has nothing in it."""
    here: list[tuple[Placed, ...]] = []
    left = room - ABOVE - BELOW
    for place, band in enumerate(row.bands):
        if row.heights[place] <= left:
            here.append(band)
            left -= row.heights[place]
            continue
        first, rest = _cut_band(band, left)
        shown = (*here, *((first,) if first else ()))
        return (row_of(shown, row.total) if shown else None), row_of(
            (rest, *row.bands[place + 1 :]), row.total
        )
    return row, None


def _cut_band(band: tuple[Placed, ...], room: float) -> tuple[tuple[Placed, ...], tuple[Placed, ...]]:
    first: list[Placed] = []
    rest: list[Placed] = []
    for cell in band:
        if isinstance(cell.text, str):
            first.append(cell)
            continue
        parts = cell.text.split(cell.width, max(room, 0))
        if not parts:
            return (), band
        for part, cells in zip(parts, (first, rest), strict=False):
            cells.append(_lines(cell, part))
    return tuple(first), tuple(rest)


def _lines(cell: Placed, text: Flowable) -> Placed:
    """Return a cell with a part of its lines."""
    assert isinstance(text, Paragraph)
    return replace(cell, text=text, height=text.wrap(cell.width, 0)[1])


def laid_out(table: Table, page: tuple[float, float], counter: Counter) -> Rows:
    """Return a table for pages with so much room, points; the counter is told of every row."""
    room = page[0]
    beside = [place for place, column in enumerate(table.columns) if not column.under]
    columns = [table.columns[place] for place in beside]
    widths = _widths(columns, room)
    starts = [sum(widths[:place]) for place in range(len(widths))]

    def placed(cells: Sequence[Cell], total: bool = False) -> PlacedRow:
        band = tuple(
            _placed(cells[place], start, width, numeric(table.columns[place]), total)
            for place, start, width in zip(beside, starts, widths, strict=True)
        )
        counter.take()
        return row_of((band, *_under(table.columns, cells, room)), total)

    head = tuple(
        _broken(start + SIDE, width - 2 * SIDE, paragraph(column.heading, _head_style(column)))
        for column, start, width in zip(columns, starts, widths, strict=True)
    )
    rows = [placed(row) for row in table.rows] + [placed(row, total=True) for row in table.totals]
    return Rows(row_of((head,)), rows, page, counter)


def _under(columns: Sequence[Column], cells: Sequence[Cell], room: float) -> tuple[tuple[Placed, ...], ...]:
    """Return the texts that run across the page under a row, each after its title, in one paragraph."""
    said = [
        f"<font name='{BOLD}'>{escape(column.heading)}:</font> {escape(words)}"
        for column, cell in zip(columns, cells, strict=True)
        if column.under and (words := cell_words(cell))
    ]
    if not said:
        return ()
    return ((_broken(INDENT, room - INDENT - SIDE, Paragraph("<br/>".join(said), PLAIN)),),)


def _broken(x: float, width: float, text: Paragraph) -> Placed:
    return Placed(x, width, text.wrap(width, 0)[1], text)


def numeric(column: Column) -> bool:
    """Return whether the cells of a column are numbers, which stand on the right."""
    return column.kind in _RIGHT


def _head_style(column: Column) -> ParagraphStyle:
    return NUMBER_HEAD if numeric(column) else HEAD


def _widths(columns: Sequence[Column], room: float) -> list[float]:
    """Return widths that fill the page: room for every word of a title first, the rest as cells need it."""
    least = [
        max(width_of(word, BOLD, SIZE) for word in column.heading.split()) + 2 * SIDE + 1
        for column in columns
    ]
    total = sum(column.width for column in columns)
    left = room - sum(least)
    return [width + left * column.width / total for width, column in zip(least, columns, strict=True)]


def _placed(cell: Cell, start: float, width: float, right: bool, bold: bool) -> Placed:
    """Return a cell as plain text where it goes on one line, else as text that is broken into lines."""
    text, room = cell_words(cell), width - 2 * SIDE
    if width_of(text, BOLD if bold else FONT, SIZE) <= room and "\n" not in text:
        return Placed(start + SIDE, room, LEADING, text, right, bold)
    return _broken(start + SIDE, room, paragraph(text, NUMBER if right else PLAIN))
