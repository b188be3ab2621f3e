"""What is taken from each column of a schedule, and in which unit: worked out, and corrected by the user."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from dataclasses import field as no_value
from statistics import median
from types import MappingProxyType
from typing import Literal

from configurator.intake.fields import FIELDS, SEVERAL, Unit, height_first, matched, needs_unit, unit_named
from configurator.intake.refused import QUESTIONS, Question
from configurator.intake.sheet import IntakeError
from configurator.intake.table import ScheduleTable
from configurator.intake.words import says_nothing, word

_ROWS_LOOKED_AT = 300
_LONGEST = 80
_COMMA_WORDS = {
    "decimal": "commas are read as decimal commas, as 914,4 for 914.4",
    "thousands": "commas are read as marks between thousands, as 1,010 for 1010",
}
_NEVER_PASSED_OVER = frozenset({"leaves", "door", "frame"})
_BARE = re.compile(r"(?:\d+\.?\d*|\.\d+)")
_OPENING = (10.0, 200.0)
"""Openings: numbers up to the first are feet, from the second on millimetres."""
_SMALL = {"thickness": 12.0, "undercut": 5.0, "frame_proud": 5.0, "frame_face": 12.0}
_DEEP = 40.0
"""Other lengths: from here on millimetres."""
NO_ANSWERS: Mapping[Question, str] = MappingProxyType({})
Commas = Literal["", "decimal", "thousands"]
"""What commas in the numbers of a column are; empty where it has none."""
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+(?!\d)")
_COMMA = re.compile(r"\d,\d+")
_SPACED = re.compile(r"(?<![\d/.,-])\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?![\d/.,])")
_UNIT_WORDS = {"in": "inches", "ft-in": "feet", "mm": "millimetres"}


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its place from 0, its heading, the field it gives (None: it is not read), and its unit.

    `commas` is what commas in its numbers are.
    """

    place: int
    heading: str
    field: str | None
    unit: Unit = "in"
    commas: Commas = ""


@dataclass(frozen=True, slots=True)
class Reading:
    """How a schedule is read: its columns, and the answers to what must be asked.

    With `keeps_others` a type that says nothing of the door is kept as it stands, under its own heading.
    `names_doors`: rows are named by their marks, for a building model has no lines.
    """

    columns: tuple[Column, ...]
    answers: Mapping[Question, str] = no_value(default_factory=lambda: NO_ANSWERS)
    keeps_others: bool = False
    names_doors: bool = False

    def answer(self, question: Question) -> str:
        """Return the answer to a question, `ask` while there is none."""
        return self.answers.get(question, "ask")

    def with_answer(self, question: Question, answer: str) -> "Reading":
        """Return the reading with a question answered. Raises IntakeError for what is no answer to it."""
        if answer != "ask" and answer not in QUESTIONS[question].answers:
            raise IntakeError(f"“{answer[:40]}” is no answer to {question}: {QUESTIONS[question].usage}")
        return replace(self, answers=MappingProxyType({**self.answers, question: answer}))

    def keeping_others(self) -> "Reading":
        """Return the reading that keeps every column it does not read under its own heading."""
        kept = self._with(
            replace(column, field="keep") if column.field is None and column.heading else column
            for column in self.columns
        )
        return replace(kept, keeps_others=True)

    def with_commas(self, commas: Commas) -> "Reading":
        """Return the reading that takes the commas of every column's numbers so."""
        return self._with(replace(column, commas=commas) for column in self.columns)

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
        columns.append(Column(place, title, field, _unit(table, place, title, field), _commas(table, place)))
    sizes = [column for column in columns if column.field == "size"]
    reading = Reading(tuple(columns), names_doors=table.source == "model")
    height = any(height_first(column.heading) for column in sizes)
    return reading.with_answer("size order", "height") if height else reading


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
    commas = tuple(
        f"{column.heading}: {_COMMA_WORDS[column.commas]}"
        for column in reading.columns
        if column.commas and needs_unit(column.field)
    )
    spaced = tuple(
        f"{column.heading}: blanks between thousands are passed over, as 2 110 for 2110"
        for column in reading.columns
        if needs_unit(column.field) and any(_SPACED.search(row.cell(column.place)) for row in table.rows)
    )
    return left_out + units_told(table, reading) + commas + spaced


def not_read(table: ScheduleTable, reading: Reading) -> tuple[tuple[str, int], ...]:
    """Return the heading of every column that is not read, and how many of its cells say something."""
    found = []
    for column in reading.columns:
        cells = sum(bool(row.cell(column.place).strip()) for row in table.rows)
        if column.field is None and (cells or column.heading):
            found.append((column.heading or f"column {column.place + 1}", cells))
    return tuple(found)


def plain_number(cell: str, commas: Commas) -> str:
    """Return a cell whose numbers have a decimal point and nothing between their thousands."""
    text = _SPACED.sub(lambda match: re.sub(r"\s", "", match[0]), cell)
    if commas == "decimal":
        return re.sub(r"(?<=\d),(?=\d)", ".", re.sub(r"(?<=\d)\.(?=\d{3}(?!\d))", "", text))
    return _THOUSANDS.sub(lambda match: match[0].replace(",", ""), text) if commas else text


def _commas(table: ScheduleTable, place: int) -> Commas:
    """Return what the commas of a column's numbers are, found from all of its cells.

    One that parts off anything but three figures can only be a decimal comma, and then all of them are.
    """
    cells = [row.cell(place) for row in table.rows if "," in row.cell(place)]
    found = [cell for cell in cells if _COMMA.search(cell)]
    if not found:
        return ""
    return "thousands" if all(not _COMMA.search(_THOUSANDS.sub("", cell)) for cell in found) else "decimal"


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
    rows = (row.cell(place) for row in table.rows[:_ROWS_LOOKED_AT])
    cells = [cell for cell in rows if cell.strip() and not says_nothing(cell)]
    return bool(cells) and all(word(name, cell[:_LONGEST]) is None for cell in cells)


def _unit(table: ScheduleTable, place: int, title: str, field: str | None) -> Unit:
    named = unit_named(title)
    if field is None:  # it may still be said to be a width: then its numbers are known
        return named or ("mm" if guessed_unit(table, place, "width") == "mm" else "in")
    return (named or guessed_unit(table, place, field)) if needs_unit(field) else "in"


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
    commas = _commas(table, place)
    for row in table.rows[:_ROWS_LOOKED_AT]:
        parts = re.split(r"\s*[x×X]\s*", plain_number(row.cell(place).strip()[:40], commas))
        if (len(parts) > 1 or field != "size") and all(_BARE.fullmatch(part) for part in parts):
            yield from map(float, parts[:2])
