"""Rows as text between the schedule and a spreadsheet: cells apart by tabs, as both copy and paste. No Qt."""

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from configurator.cells import unshield
from configurator.model import Opening
from configurator.ui.kit.kinds import NotReadError
from configurator.ui.schedule.changing import Change, typed
from configurator.ui.schedule.columns import COLUMNS, PLACES, Column, Worked
from configurator.units import Display

MOST_ROWS = 100_000
_OTHER_TITLES = {
    "qty": "quantity", "size": "size", "frame kind": "frame", "hinge": "hinge", "angle": "angle",
    "questions to the architect": "questions", "door": "mark", "door no.": "mark", "opening": "mark",
}  # fmt: skip
"""What a head may say instead of a column's own title."""


@dataclass(frozen=True, slots=True)
class Target:
    """Where it is pasted: the job's openings, the places shown from the current row down, its column.

    `hidden` are the keys of columns that are not shown, and take nothing without heads.
    """

    openings: Sequence[Opening]
    shown: Sequence[int]
    column: int
    display: Display
    hidden: frozenset[str] = frozenset()


@dataclass(slots=True)
class Pasted:
    """What the pasted rows say: changes to try, what was refused outright, columns that were not read."""

    changes: list[Change] = field(default_factory=list)
    refusals: list[str] = field(default_factory=list)
    not_read: list[str] = field(default_factory=list)


def read_pasted(text: str, target: Target) -> Pasted:
    """Read rows from the clipboard.

    With a row of heads they are read by these, else from the current column on. Rows that hold a mark change
    the opening of that mark or add one; without marks they change the rows shown from the current one down.
    """
    pasted = Pasted()
    rows = _rows(text)
    if not rows:
        pasted.refusals.append("There is nothing to paste: copy rows of a spreadsheet first.")
        return pasted
    heads = _heads(rows[0])
    columns = heads or [column for column in COLUMNS[target.column :] if column.key not in target.hidden]
    if heads is not None:
        pasted.not_read += [
            cell.strip() for cell, column in zip(rows[0], heads, strict=False) if column is None
        ]
    _Reader(target, columns, pasted).read(rows[1:] if heads else rows, 2 if heads else 1)
    if heads is not None and len(rows) == 1:
        pasted.refusals.append("There is only a row of heads; nothing stands below it.")
    return pasted


class _Reader:
    """Reads the rows one by one into `pasted`."""

    def __init__(self, target: Target, columns: Sequence[Column | Worked | None], pasted: Pasted) -> None:
        self.target = target
        self.columns = columns
        self.pasted = pasted
        self.by_mark = any(column is not None and column.key == "mark" for column in columns)
        self._places = {opening.mark: place for place, opening in enumerate(target.openings)}
        self._seen: set[str] = set()

    def read(self, rows: Sequence[Sequence[str]], first: int) -> None:
        """Read all rows; the first of them is called by that number."""
        if len(rows) > MOST_ROWS:
            self.pasted.refusals.append(f"{len(rows):,} rows are more than a job can hold.")
            return
        for place, cells in enumerate(rows):
            if any(cell.strip() for cell in cells):
                self._row(f"row {first + place}", place, cells)

    def _row(self, name: str, place: int, cells: Sequence[str]) -> None:
        refused = len(self.pasted.refusals)
        if sum(1 for cell in cells[len(self.columns) :] if cell.strip()):
            there = "1 column" if len(self.columns) == 1 else f"{len(self.columns)} columns"
            self._refuse(f"{name}: {len(cells)} cells, and only {there} to take them")
        by_key = {column.key: cell for column, cell in zip(self.columns, cells, strict=False) if column}
        where = self._where(name, place, by_key)
        if len(self.pasted.refusals) > refused:
            return
        values = dict(self._values(name, where, by_key))
        if len(self.pasted.refusals) == refused and values:
            self.pasted.changes.append(Change(where, values, name))

    def _where(self, name: str, place: int, by_key: Mapping[str, str]) -> int | None:
        """Return the place in the job of what a row changes; None for a new opening, or a refused row."""
        if not self.by_mark:
            if place < len(self.target.shown):
                return self.target.shown[place]
            self._refuse(f"{name}: no opening stands there; with a column of marks, rows add openings")
            return None
        mark = by_key.get("mark", "")
        mark = mark if mark in self._places else mark.strip()
        if not mark:
            self._refuse(f"{name}, mark: a mark is missing")
        elif mark in self._seen:
            self._refuse(f"{name}, mark: “{mark}” stands twice in what was pasted")
        self._seen.add(mark)
        return self._places.get(mark)

    def _values(self, name: str, where: int | None, by_key: Mapping[str, str]) -> Iterator[tuple[str, Any]]:
        for column in self.columns:
            cell = by_key.get(column.key) if column is not None else None
            if column is None or cell is None:
                continue
            if isinstance(column, Worked):
                if cell.strip() and column.title not in self.pasted.not_read:
                    self.pasted.not_read.append(column.title)
            elif not self._stands_already(column, where, cell):
                try:
                    yield column.path, typed(column.path, cell, self.target.display)
                except NotReadError as error:
                    self._refuse(f"{name}, {column.title.lower()}: {error}")

    def _stands_already(self, column: Column, where: int | None, cell: str) -> bool:
        """Say whether a cell only says what holds: what is left out must not become given by it."""
        if where is None:
            return column.path != "mark" and not cell.strip()
        opening = self.target.openings[where]
        display = self.target.display
        return cell.strip() in (column.exact(opening, display).strip(), column.text((opening,), display))

    def _refuse(self, sentence: str) -> None:
        self.pasted.refusals.append(sentence)


def _rows(text: str) -> list[list[str]]:
    """Return the cells of a clipboard's text; a break inside quotes does not end a row."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").replace("\x00", "")
    limit = csv.field_size_limit(max(len(lines), 1))
    try:
        cells = list(csv.reader(io.StringIO(lines), "excel-tab", strict=True))
    except csv.Error:  # a quotation mark that quotes nothing: inches, or a name
        cells = [line.split("\t") for line in lines.split("\n")]
    finally:
        csv.field_size_limit(limit)
    rows = [[unshield(cell) for cell in row] for row in cells]
    while rows and not any(cell.strip() for cell in rows[-1]):
        rows.pop()
    return rows


def _heads(row: Sequence[str]) -> list[Column | Worked | None] | None:
    """Return the columns that a row of heads names, None for one that is not known; None for another row.

    One known head alone makes a row of heads only where nothing else stands beside it.
    """
    known = {column.title.casefold(): column.key for column in COLUMNS} | _OTHER_TITLES
    known |= {column.key: column.key for column in COLUMNS}
    keys = [known.get(" ".join(cell.split()).casefold()) for cell in row]
    named = [key for key in keys if key is not None]
    others = sum(1 for cell in row if cell.strip()) - len(named)
    if not named or len(set(named)) < len(named) or (len(named) == 1 and others):
        return None
    return [COLUMNS[PLACES[key]] if key is not None else None for key in keys]
