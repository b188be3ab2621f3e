"""A document as plain values: a heading, tables of typed cells, notes. Every format is written from it."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from configurator.model import JobFacts
from configurator.sentences import capitalized
from configurator.units import format_decimal

Cell = str | int | float | Decimal | bool | None
MOST_IN_CELL = 2000
"""Marks: a spreadsheet's cell holds 32,767 characters, and a program would cut the rest off in silence."""
MOST_ON_PAPER = 60
"""Marks: more would fill a page with one row."""
NO_NAME = "no job name given"
LONGEST_CELL = 32_000
"""Characters."""
Kind = Literal["text", "count", "inches", "degrees", "money", "flag"]


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its key for other programs, its title for people, what its cells are, and how wide.

    `width` is about how many characters its longest usual cell has.
    """

    key: str
    title: str
    kind: Kind = "text"
    width: int = 10

    @property
    def heading(self) -> str:
        """What stands over the column on paper, in a workbook and in a terminal."""
        return capitalized(self.title)


@dataclass(frozen=True, slots=True)
class Table:
    """One table; every row has a cell for each column, None where there is nothing to say."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]


@dataclass(frozen=True, slots=True)
class Document:
    """What is handed on: the title, whose job it is, the tables, and the notes under them.

    `data` are tables with a column for every fact, the first of them the whole of it; `sheets` are those for
    paper. `book` is what a workbook has where that is not the data alone.
    """

    title: str
    heading: tuple[tuple[str, str], ...]
    data: tuple[Table, ...]
    sheets: tuple[Table, ...]
    notes: tuple[str, ...]
    book: tuple[Table, ...] = ()

    @property
    def workbook(self) -> tuple[Table, ...]:
        """The tables of a workbook, the one to be read first in front; the notes are the last of them."""
        column = Column("note", "Note", "text", 110)
        notes = Table("Notes", (column,), tuple((note,) for note in self.notes))
        return (*(self.book or self.data), *((notes,) if self.notes else ()))


def heading_of(facts: JobFacts) -> tuple[tuple[str, str], ...]:
    """Return what is known of the job, by name, as it stands over a page."""
    known = (
        ("Job", facts.name),
        ("Number", facts.number),
        ("Client", facts.client),
        ("Prepared by", facts.prepared_by),
        ("Date", facts.date),
    )
    return tuple((name, value) for name, value in known if value)


def listed(words: Sequence[str], most: int) -> str:
    """Return words in a row; of too many for a cell the first, and how many more there are.

    A cell of a spreadsheet also ends long before its last character could be lost.
    """
    shown, length = 0, 0
    for word in words[:most]:
        length += len(word) + 2
        if length > LONGEST_CELL:
            break
        shown += 1
    more = len(words) - shown
    return ", ".join(words[:shown]) + (f" and {more} more" if more else "")


def headed(document: Document) -> str:
    """Return the heading on one line, as `Kestrel Point Ferry Terminal, 26-118`."""
    return _on_one_line(document.heading)


def headed_facts(facts: JobFacts) -> str:
    """Return whose job it is on one line, as it stands over every document of it."""
    return _on_one_line(heading_of(facts))


def _on_one_line(heading: tuple[tuple[str, str], ...]) -> str:
    return ", ".join(value for _, value in heading) or NO_NAME


def cell_words(cell: Cell) -> str:
    """Return a cell as a page or a terminal shows it; empty where there is nothing."""
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, Decimal):
        return f"{cell:,}"
    return format_decimal(cell, 4) if isinstance(cell, float) else str(cell)
