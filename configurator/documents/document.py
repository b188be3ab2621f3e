"""A document as plain values: a heading, tables of typed cells, notes. Every format is written from it."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any, Literal

from configurator.model import JobFacts
from configurator.sentences import capitalized
from configurator.units import format_decimal

Cell = str | int | float | Decimal | bool | None
MOST_IN_CELL = 2000
"""Marks: a spreadsheet's cell holds 32,767 characters, and a program would cut the rest off in silence."""
MOST_ON_PAPER = 60
"""Marks: more would fill a page with one row."""
PLACES = 6
"""Decimals that a 64th of an inch has; what stands behind them is the machine's own noise."""
FOR_THE_OFFICE = "For the office: not part of what goes out"
NO_NAME = "no job name given"
LONGEST_CELL = 32_000
"""Characters."""
Kind = Literal["text", "count", "inches", "degrees", "money", "flag"]


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its key for other programs, its title for people, what its cells are, and how wide.

    `width` is about how many characters its longest usual cell has. An `under` column has no room beside the
    others on paper: its text runs across the page under its row, after its title.
    """

    key: str
    title: str
    kind: Kind = "text"
    width: int = 10
    under: bool = False

    @property
    def heading(self) -> str:
        """What stands over the column, with its unit where that is not plain."""
        return capitalized(self.title) + (", in" if self.kind == "inches" else "")


@dataclass(frozen=True, slots=True)
class Table:
    """One table; every row has a cell for each column, None where there is nothing to say.

    `totals` are rows that stand at the end, apart from the others.
    """

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    totals: tuple[tuple[Cell, ...], ...] = ()

    def only(self, keys: Collection[str]) -> "Table":
        """Return the table without its other columns."""
        places = [place for place, column in enumerate(self.columns) if column.key in keys]

        def kept(rows: Iterable[tuple[Any, ...]]) -> tuple[tuple[Any, ...], ...]:
            return tuple(tuple(row[place] for place in places) for row in rows)

        (columns,) = kept((self.columns,))
        return Table(self.title, columns, kept(self.rows), kept(self.totals))

    def without_empty(self, keys: Collection[str]) -> "Table":
        """Return the table without those of the columns that have nothing in any row."""
        empty = {
            column.key
            for place, column in enumerate(self.columns)
            if column.key in keys and all(row[place] in (None, "", 0) for row in self.rows)
        }
        return self.only({column.key for column in self.columns} - empty)


@dataclass(frozen=True, slots=True)
class Document:
    """What is handed on: the title, whose job it is, the tables, and the notes under them.

    `data` are tables with a column for every fact, the first of them the whole of it; `sheets` are those for
    paper. `book` is what a workbook has where that is not the data alone. `head` are further facts that stand
    over it, as whom an order goes to. `office` is for those who write it and not for those who get it: on
    paper it begins a page of its own. With a `cover` the facts have a page of their own with an index, and
    every table begins a page.
    """

    title: str
    heading: tuple[tuple[str, str], ...]
    data: tuple[Table, ...]
    sheets: tuple[Table, ...]
    notes: tuple[str, ...]
    book: tuple[Table, ...] = ()
    head: tuple[tuple[str, str], ...] = ()
    office: tuple[Table, ...] = ()
    office_notes: tuple[str, ...] = ()
    cover: bool = False

    @property
    def workbook(self) -> tuple[Table, ...]:
        """The tables of a workbook, the one to be read first in front; the notes are the last of them."""
        said = (("Notes", self.notes), ("For the office", self.office_notes))
        notes = (_notes_table(title, notes) for title, notes in said if notes)
        return (*(self.book or self.data), *self.office, *notes)

    @property
    def going_out(self) -> "Document":
        """The document without what is for the office."""
        return replace(self, office=(), office_notes=())

    @property
    def lead(self) -> tuple[tuple[str, str], ...]:
        """What stands over the table of a file that holds cells only: what it is, and whose."""
        return (("Document", self.title), *self.heading, *self.head)


def _notes_table(title: str, notes: Iterable[str]) -> Table:
    return Table(title, (Column("note", "Note", "text", 110),), tuple((note,) for note in notes))


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
