"""Where a schedule's header stands, and what is under it: titles, totals and second headers are no doors."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any, NamedTuple

from configurator.intake.fields import Header, best_header
from configurator.intake.notes import Note, is_title, name_above, note_of, notes_begin
from configurator.intake.refused import Question
from configurator.intake.sheet import IntakeError, Sheet, SheetRow

LONGEST_TITLE = 120
_ROWS_TRIED = 60
_LEAST_COLUMNS = 2
_LEVEL = re.compile(
    r"\b(?:floor|level|lvl|basement|mezzanine|penthouse|stor(?:e)?y|roof|cellar)\b", re.IGNORECASE
)
_TOTAL = re.compile(r"(?:sub|grand )?\s*totals?\b.*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Behind:
    """What stands behind a cell of a building model, as long as the cell reads as it did.

    `values` are the opening's, by path. With a `question` they depend on its answer, and `answers` has what
    stands behind each; a `sentence` without a question refuses the cell. `left_out` says why the row is no
    opening. `hands` are those it holds for: another one typed beside it refuses the cell.
    """

    values: Mapping[str, Any] = field(default_factory=lambda: MappingProxyType({}))
    told: tuple[str, ...] = ()
    question: Question = ""
    sentence: str = ""
    answers: Mapping[str, "Behind"] = field(default_factory=lambda: MappingProxyType({}))
    left_out: str = ""
    asks: tuple[str, ...] = ()
    hands: tuple[str, ...] = ()


class PassedOver(NamedTuple):
    """A row that is no door, and why."""

    row: SheetRow
    why: str


@dataclass(frozen=True, slots=True)
class ScheduleTable:
    """The headings, the rows under them, and everything that stands about them.

    Of a header in two lines `headings` has both, the upper one (as DOOR over WIDTH) before the lower. `above`
    are the rows over the header and `header` its own, `notes` what stands under the table. `levels` has the
    title that says on which floor the rows under it are, by their lines. `behind` has what a building model
    put behind cells, by line, column and text. `source` is what gave the table, as it is spoken of.
    """

    name: str
    line: int
    headings: tuple[tuple[str, str], ...]
    rows: tuple[SheetRow, ...]
    passed_over: tuple[PassedOver, ...]
    told: tuple[str, ...]
    sheets: tuple[str, ...] = ()
    above: tuple[SheetRow, ...] = ()
    header: tuple[SheetRow, ...] = ()
    notes: tuple[Note, ...] = ()
    levels: Mapping[int, str] = field(default_factory=lambda: MappingProxyType({}))
    behind: Mapping[tuple[int, int, str], Behind] = field(default_factory=lambda: MappingProxyType({}))
    source: str = "schedule"

    def titles(self) -> tuple[str, ...]:
        """Return the headings as a person reads them."""
        return tuple(" ".join(filter(None, both))[:LONGEST_TITLE] for both in self.headings)

    @property
    def job_name(self) -> str:
        """What may be the job's name among the lines above the table; empty where nothing looks like one."""
        return name_above(self.above)


def schedule_table(sheet: Sheet) -> ScheduleTable:
    """Find the header of a schedule. Raises IntakeError where there is none, or nothing under it."""
    if not sheet.rows:
        raise IntakeError(f"{sheet.name} has nothing in it")
    found = _header(sheet)
    header = sheet.rows[found.place : found.place + found.depth]
    under = _under(sheet.rows[found.place + found.depth :], header)
    if not under.rows:
        raise IntakeError(f"{sheet.name} has a header on line {header[0].line} and no door under it")
    width = max(len(found.headings), max(len(row.cells) for row in under.rows))
    return ScheduleTable(
        sheet.name,
        header[0].line,
        found.headings + (("", ""),) * (width - len(found.headings)),
        tuple(under.rows),
        tuple(under.passed_over),
        sheet.told,
        sheet.sheets,
        sheet.rows[: found.place],
        header,
        tuple(under.notes),
        MappingProxyType({line: level for line, level in under.levels.items() if level}),
    )


def corrected(table: ScheduleTable, line: int, place: int, text: str) -> ScheduleTable:
    """Return the table with one cell as somebody says it should read, and that it was not read so.

    `place` is the column from 0. Raises ValueError where no row begins on that line.
    """
    number = [row.line for row in table.rows].index(line)
    row = table.rows[number]
    told = f"{_where(table, line, place)}: corrected here from {_quoted(row.cell(place))} to {_quoted(text)}"
    rows = (*table.rows[:number], _with_cell(row, place, text), *table.rows[number + 1 :])
    return replace(table, rows=rows, told=(*table.told, told))


def corrected_alike(table: ScheduleTable, place: int, old: str, new: str) -> ScheduleTable:
    """Return the table with every cell of a column that reads `old` as somebody says it should read.

    Raises IntakeError where none reads so.
    """
    wanted = " ".join(old.split()).casefold()
    alike = {row.line for row in table.rows if " ".join(row.cell(place).split()).casefold() == wanted}
    if not alike:
        raise IntakeError(f"no cell under “{table.titles()[place]}” reads {_quoted(old)}")
    many = f"{len(alike):,} cells" if len(alike) > 1 else "1 cell"
    told = f"{table.titles()[place]}: {many} corrected here from {_quoted(old)} to {_quoted(new)}"
    rows = tuple(_with_cell(row, place, new) if row.line in alike else row for row in table.rows)
    return replace(table, rows=rows, told=(*table.told, told))


def _with_cell(row: SheetRow, place: int, text: str) -> SheetRow:
    cells = [*row.cells, *([""] * (place + 1 - len(row.cells)))]
    cells[place] = text
    return replace(row, cells=tuple(cells))


def _where(table: ScheduleTable, line: int, place: int) -> str:
    heading = table.titles()[place]
    return f"line {line}, {heading}" if heading else f"line {line}"


def _quoted(cell: str) -> str:
    text = " ".join(cell.split())
    return f"“{text[:60]}”" if text else "blank"


def _header(sheet: Sheet) -> Header:
    """Return the header of a schedule, else the first row of several cells for the user to name."""
    found = best_header([row.cells for row in sheet.rows[: _ROWS_TRIED + 1]])
    if found is not None:
        return found
    for place, row in enumerate(sheet.rows):
        if _filled(row) >= _LEAST_COLUMNS:
            return Header(place, 1, tuple(("", cell.strip()) for cell in row.cells), frozenset())
    raise IntakeError(
        f"{sheet.name} has no header that can be told: headings such as Mark, Width, Height, Hand"
    )


@dataclass(slots=True)
class _Under:
    """What stands under a header, sorted out: doors, what is passed over with why, notes, levels by line."""

    rows: list[SheetRow] = field(default_factory=list)
    passed_over: list[PassedOver] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    levels: dict[int, str] = field(default_factory=dict)


def _under(rows: Sequence[SheetRow], header: Sequence[SheetRow]) -> _Under:
    heads = [_plain(row) for row in header]
    found, level = _Under(), ""
    begin = notes_begin(rows, len(header[-1].cells))
    for row in rows[:begin]:
        text = " ".join(filled := [cell.strip() for cell in row.cells if cell.strip()])
        if _plain(row) in heads:
            found.passed_over.append(PassedOver(row, "the header once more"))
        elif _TOTAL.fullmatch(filled[0]):
            found.passed_over.append(PassedOver(row, f"a total: “{text}”"))
        elif len(filled) == 1 and is_title(filled[0]) and len(header[-1].cells) > 1:
            level = filled[0] if _LEVEL.search(filled[0]) else level
            taken = ", taken as the level of the rows under it" if level == filled[0] else ""
            found.passed_over.append(PassedOver(row, f"a title: “{text}”{taken}"))
        else:
            found.rows.append(row)
            found.levels[row.line] = level
    found.notes = [note_of(row) for row in rows[begin:]]
    return found


def _filled(row: SheetRow) -> int:
    return sum(bool(cell.strip()) for cell in row.cells)


def _plain(row: SheetRow) -> list[str]:
    return [cell.strip().casefold() for cell in row.cells]
