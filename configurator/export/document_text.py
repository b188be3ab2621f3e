"""A document as plain text for a terminal: its tables with every cell whole, on several lines at need."""

import textwrap
from collections.abc import Sequence
from decimal import Decimal
from itertools import zip_longest

from configurator.export.table_text import WIDTH
from configurator.order.document import Cell, Column, Document, Table, headed
from configurator.units import format_decimal

_RIGHT = ("count", "inches", "degrees", "money")
_GAP = 2
LONGEST_WORD = 14
"""Characters; a longer word is broken where there is no room."""


def document_text(document: Document) -> str:
    """Return the heading, every sheet as a table, and the notes."""
    heading = f"{document.title}: {headed(document)}"
    lines = [heading, "=" * len(heading)]
    for table in document.sheets:
        lines += ["", table.title, "-" * len(table.title), *_table_lines(table)]
    lines += ["", *(line for note in document.notes for line in textwrap.wrap(note, WIDTH))]
    return "\n".join(lines) + "\n"


def _table_lines(table: Table) -> list[str]:
    if not table.rows:
        return ["nothing"]
    rows = [[_words(cell) for cell in row] for row in table.rows]
    widths = _widths(table.columns, rows)
    titles = [column.title for column in table.columns]
    return [line for row in (titles, *rows) for line in _row_lines(row, widths, table.columns)]


def _widths(columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> list[int]:
    """Return widths that fit the terminal: the longest word of each first, then a share of what is wanted."""
    texts = [(column.title, *(row[place] for row in rows)) for place, column in enumerate(columns)]
    needed = [max(map(len, cells)) for cells in texts]
    least = [min(max(map(_longest_word, cells)), LONGEST_WORD) for cells in texts]
    room = WIDTH - _GAP * (len(columns) - 1)
    if sum(needed) <= room:
        return needed
    wanted = [need - width for need, width in zip(needed, least, strict=True)]
    left = max(room - sum(least), 0)
    return [width + min(want, left * want // sum(wanted)) for width, want in zip(least, wanted, strict=True)]


def _longest_word(text: str) -> int:
    return max((len(word) for word in text.split()), default=1)


def _row_lines(row: Sequence[str], widths: Sequence[int], columns: Sequence[Column]) -> list[str]:
    cells = [
        [piece for line in text.split("\n") for piece in textwrap.wrap(line, width, break_on_hyphens=False)]
        or [""]
        for text, width in zip(row, widths, strict=True)
    ]
    return [
        (" " * _GAP)
        .join(
            piece.rjust(width) if column.kind in _RIGHT else piece.ljust(width)
            for piece, width, column in zip(pieces, widths, columns, strict=True)
        )
        .rstrip()
        for pieces in zip_longest(*cells, fillvalue="")
    ]


def _words(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, Decimal):
        return f"{cell:,}"
    return format_decimal(cell, 4) if isinstance(cell, float) else str(cell)
