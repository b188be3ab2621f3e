"""A document as plain text for a terminal: its tables with every cell whole, on several lines at need."""

import textwrap
from collections.abc import Sequence
from itertools import zip_longest

from configurator.documents.document import Column, Document, Table, cell_words, headed
from configurator.export.table_text import WIDTH

_RIGHT = ("count", "inches", "degrees", "money")
_GAP = 2
_INDENT = " " * 8
WIDE = 20
"""Characters; a wider column holds sentences and lists."""
LONGEST_WORD = 24
"""Characters; a longer word is broken."""


def document_text(document: Document) -> str:
    """Return the heading, every sheet as a table, and the notes."""
    heading = f"{document.title}: {headed(document)}"
    lines = [*textwrap.wrap(heading, WIDTH), "=" * min(len(heading), WIDTH)]
    for table in document.sheets:
        lines += ["", table.title, "-" * len(table.title), *_table_lines(table)]
    lines += ["", *(line for note in document.notes for line in textwrap.wrap(note, WIDTH))]
    return "\n".join(lines) + "\n"


def _table_lines(table: Table) -> list[str]:
    """Return a table's lines; of one too wide for the terminal the wide columns stand under each row."""
    if not table.rows:
        return ["nothing"]
    rows = [
        [column.title for column in table.columns],
        *([cell_words(cell) for cell in row] for row in table.rows),
    ]
    widths = _widths(rows, table.columns)
    if sum(widths) + _GAP * (len(widths) - 1) <= WIDTH:
        return [line for row in rows for line in _row_lines(row, widths, table.columns)]
    return _in_two_parts(rows, table.columns, widths)


def _in_two_parts(
    rows: Sequence[Sequence[str]], columns: Sequence[Column], widths: Sequence[int]
) -> list[str]:
    narrow = [place for place, column in enumerate(columns) if column.width < WIDE]
    wide = [place for place in range(len(columns)) if place not in narrow]
    beside = [widths[place] for place in narrow], [columns[place] for place in narrow]
    titles = rows[0]
    lines = _row_lines([titles[place] for place in narrow], *beside)
    for row in rows[1:]:
        lines += _row_lines([row[place] for place in narrow], *beside)
        lines += _under([(titles[place], row[place]) for place in wide])
    return lines


def _under(said: Sequence[tuple[str, str]]) -> list[str]:
    text = "; ".join(f"{title.lower()}: {words}" for title, words in said if words)
    return textwrap.wrap(
        text, WIDTH, initial_indent=_INDENT, subsequent_indent=_INDENT, break_on_hyphens=False
    )


def _widths(rows: Sequence[Sequence[str]], columns: Sequence[Column]) -> list[int]:
    """Return what each column needs, no more than its usual width or its longest word."""
    return [
        min(max(map(len, cells)), max(column.width, *map(_longest_word, cells)))
        for cells, column in zip(zip(*rows, strict=True), columns, strict=True)
    ]


def _longest_word(text: str) -> int:
    return min(max((len(word) for word in text.split()), default=1), LONGEST_WORD)


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
