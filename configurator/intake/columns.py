"""What is taken from each column of a schedule, and in which unit: worked out, and corrected by the user."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from statistics import median

from configurator.intake.fields import FIELDS, SEVERAL, Unit, needs_unit
from configurator.intake.headings import height_first, matched, unit_named
from configurator.intake.sheet import IntakeError
from configurator.intake.sizes import PairWidth, SizeOrder
from configurator.intake.table import ScheduleTable
from configurator.intake.words import says_nothing, word

_ROWS_LOOKED_AT = 300
_LONGEST = 80
_NEVER_PASSED_OVER = frozenset({"leaves", "door", "frame"})
_BARE = re.compile(r"(?:\d+\.?\d*|\.\d+)")
_OPENING = (10.0, 200.0)
"""Openings: numbers up to the first are feet, from the second on millimetres."""
_SMALL = {"thickness": 12.0, "undercut": 5.0, "frame_proud": 5.0, "frame_face": 12.0}
_DEEP = 40.0
"""Other lengths: from here on millimetres."""
_UNIT_WORDS = {"in": "inches", "ft-in": "feet", "mm": "millimetres"}


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its place from 0, its heading, the field it gives (None: it is not read), and its unit."""

    place: int
    heading: str
    field: str | None
    unit: Unit = "in"


@dataclass(frozen=True, slots=True)
class Reading:
    """How a schedule is read: its columns, and the answers to what must be asked of sizes."""

    columns: tuple[Column, ...]
    order: SizeOrder = "ask"
    pair: PairWidth = "ask"

    def with_field(self, place: int, field: str | None) -> "Reading":
        """Return the reading with another field for a column; whichever column had it gives it up."""
        taken = field is not None and field not in SEVERAL
        return self._with(
            replace(column, field=field if column.place == place else None)
            if column.place == place or (taken and column.field == field)
            else column
            for column in self.columns
        )

    def with_unit(self, place: int, unit: Unit) -> "Reading":
        """Return the reading with another unit for a column's numbers."""
        return self._with(
            replace(column, unit=unit) if column.place == place else column for column in self.columns
        )

    def lacks(self) -> str:
        """Say what has to be chosen before a door can be read; empty where nothing has."""
        there = {column.field for column in self.columns}
        return "" if "mark" in there else "no column is said to hold the marks"

    def _with(self, columns: Iterable[Column]) -> "Reading":
        return replace(self, columns=tuple(columns))


def reading_of(table: ScheduleTable) -> Reading:
    """Return how a schedule is read by its headings, and by its numbers where they do not name a unit."""
    columns = []
    for place, (title, field) in enumerate(zip(table.titles(), matched(table.headings), strict=True)):
        if field is not None and _says_otherwise(table, place, field):
            field = None  # as where “Status” has NEW and EXISTING under it
        columns.append(Column(place, title, field, _unit(table, place, title, field)))
    sizes = [column for column in columns if column.field == "size"]
    height = any(height_first(column.heading) for column in sizes)
    return Reading(tuple(columns), "height" if height else "ask")


def units_told(table: ScheduleTable, reading: Reading) -> tuple[str, ...]:
    """Say of each column whose unit was neither named nor inches what its numbers are taken for."""
    return tuple(
        f"{column.heading}: numbers without a unit are taken as {_UNIT_WORDS[column.unit]}"
        for column in reading.columns
        if needs_unit(column.field)
        and column.unit != "in"
        and unit_named(column.heading) is None
        and any(_bare_numbers(table, column.place, column.field))
    )


def columns_told(table: ScheduleTable, reading: Reading) -> tuple[str, ...]:
    """Say of each column what its heading or its numbers were taken for, where that is not plain."""
    fields = matched(table.headings)
    left_out = tuple(
        f"{column.heading}: not read, for none of its words is known as {FIELDS[field].title}"
        for column, field in zip(reading.columns, fields, strict=True)
        if field is not None and column.field is None and _says_otherwise(table, column.place, field)
    )
    return left_out + units_told(table, reading)


def column_called(reading: Reading, heading: str) -> Column:
    """Return the column with that heading. Raises IntakeError naming those there are."""
    for column in reading.columns:
        if column.heading.casefold() == heading.strip().casefold():
            return column
    known = ", ".join(column.heading for column in reading.columns if column.heading)
    raise IntakeError(f"there is no column “{heading[:40]}”; the headings are {known}")


def chosen(reading: Reading, choice: str) -> Reading:
    """Return the reading with one column as it is typed: `Door Ht=height` or `Door Ht=height:mm`.

    `Door Ht=` takes nothing from the column. Raises IntakeError.
    """
    heading, equals, wanted = choice.rpartition("=")
    name, colon, unit = wanted.partition(":")
    name = name.strip().replace(" ", "_")
    if not equals or (name and name not in FIELDS):
        raise IntakeError(f"“{choice[:60]}” is not HEADING=FIELD; the fields are {', '.join(FIELDS)}")
    if colon and unit not in _UNIT_WORDS:
        raise IntakeError(f"“{choice[:60]}”: a unit is one of {', '.join(_UNIT_WORDS)}")
    column = column_called(reading, heading)
    reading = reading.with_field(column.place, name or None)
    return reading.with_unit(column.place, unit) if colon else reading  # type: ignore[arg-type]


def _says_otherwise(table: ScheduleTable, place: int, field: str) -> bool:
    """Say whether not one cell of a column that an opening can do without is understood as its field."""
    if field in _NEVER_PASSED_OVER or FIELDS[field].kind not in ("word", "flag"):
        return False
    name = "flag" if FIELDS[field].kind == "flag" else field
    rows = (row.cells[place] for row in table.rows[:_ROWS_LOOKED_AT] if place < len(row.cells))
    cells = [cell for cell in rows if cell.strip() and not says_nothing(cell)]
    return bool(cells) and all(word(name, cell[:_LONGEST]) is None for cell in cells)


def _unit(table: ScheduleTable, place: int, title: str, field: str | None) -> Unit:
    if field is None or not needs_unit(field):
        return "in"
    named = unit_named(title)
    return named or guessed_unit(table, place, field)


def guessed_unit(table: ScheduleTable, place: int, field: str) -> Unit:
    """Return the unit that a column's bare numbers are most likely in, as that field."""
    numbers = list(_bare_numbers(table, place, field))
    if not numbers:
        return "in"
    middle = median(numbers)
    if field in ("size", "width", "height"):
        return "ft-in" if middle <= _OPENING[0] else "mm" if middle >= _OPENING[1] else "in"
    return "mm" if middle >= _SMALL.get(field, _DEEP) else "in"


def _bare_numbers(table: ScheduleTable, place: int, field: str | None) -> Iterator[float]:
    """Yield the numbers of a column that say no unit; a size of one number is feet and inches, as 3070."""
    for row in table.rows[:_ROWS_LOOKED_AT]:
        if place >= len(row.cells):
            continue
        parts = re.split(r"\s*[x×X]\s*", row.cells[place].strip()[:40])
        if (len(parts) > 1 or field != "size") and all(_BARE.fullmatch(part) for part in parts):
            yield from map(float, parts[:2])
