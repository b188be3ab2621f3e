"""Where a schedule's header stands, and what is under it: titles, totals and second headers are no doors."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from configurator.intake.headings import matched
from configurator.intake.sheet import IntakeError, Sheet, SheetRow

LONGEST_TITLE = 120
_ROWS_TRIED = 60
_LEAST_COLUMNS = 2
_TOTAL = re.compile(r"(?:sub|grand )?\s*totals?\b.*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ScheduleTable:
    """The headings, the rows under them, and the rows that were passed over with why.

    Of a header in two lines `headings` has both, the upper one (as DOOR over WIDTH) before the lower.
    """

    name: str
    line: int
    headings: tuple[tuple[str, str], ...]
    rows: tuple[SheetRow, ...]
    passed_over: tuple[tuple[int, str], ...]
    told: tuple[str, ...]
    sheets: tuple[str, ...] = ()

    def titles(self) -> tuple[str, ...]:
        """Return the headings as a person reads them."""
        return tuple(" ".join(filter(None, both))[:LONGEST_TITLE] for both in self.headings)


def schedule_table(sheet: Sheet) -> ScheduleTable:
    """Find the header of a schedule. Raises IntakeError where there is none, or nothing under it."""
    if not sheet.rows:
        raise IntakeError(f"{sheet.name} has nothing in it")
    place, depth, headings = _header(sheet)
    header = sheet.rows[place : place + depth]
    rows, passed_over = _rows_under(sheet.rows[place + depth :], header)
    if not rows:
        raise IntakeError(f"{sheet.name} has a header on line {header[0].line} and no door under it")
    width = max(len(headings), max(len(row.cells) for row in rows))
    headings += (("", ""),) * (width - len(headings))
    return ScheduleTable(sheet.name, header[0].line, headings, rows, passed_over, sheet.told, sheet.sheets)


def corrected(table: ScheduleTable, line: int, place: int, text: str) -> ScheduleTable:
    """Return the table with one cell as somebody says it should read, and that it was not read so.

    `place` is the column from 0. Raises ValueError where no row begins on that line.
    """
    number = [row.line for row in table.rows].index(line)
    cells = [*table.rows[number].cells]
    cells += [""] * (place + 1 - len(cells))
    heading = table.titles()[place]
    where = f"line {line}, {heading}" if heading else f"line {line}"
    told = f"{where}: corrected here from {_quoted(cells[place])} to {_quoted(text)}"
    cells[place] = text
    rows = (*table.rows[:number], SheetRow(line, tuple(cells)), *table.rows[number + 1 :])
    return replace(table, rows=rows, told=(*table.told, told))


def _quoted(cell: str) -> str:
    text = " ".join(cell.split())
    return f"“{text[:60]}”" if text else "blank"


def _header(sheet: Sheet) -> tuple[int, int, tuple[tuple[str, str], ...]]:
    """Return where the header is, how many rows it takes, and its headings."""
    best: tuple[int, int, int, tuple[tuple[str, str], ...]] = (0, 0, 0, ())
    for place, headings in _candidates(sheet.rows[: _ROWS_TRIED + 1]):
        depth = 2 if any(upper for upper, _ in headings) else 1
        score = len(set(matched(headings)) - {None})
        if score > best[0]:
            best = (score, place, depth, headings)
    return best[1:] if best[0] >= _LEAST_COLUMNS else _first_wide_row(sheet)


def _first_wide_row(sheet: Sheet) -> tuple[int, int, tuple[tuple[str, str], ...]]:
    """Take the first row of several cells for the header, for the user to say what its columns are."""
    for place, row in enumerate(sheet.rows):
        if sum(bool(cell.strip()) for cell in row.cells) >= _LEAST_COLUMNS:
            return place, 1, tuple(("", cell.strip()) for cell in row.cells)
    raise IntakeError(
        f"{sheet.name} has no header that can be told: headings such as Mark, Width, Height, Hand"
    )


def _candidates(rows: Sequence[SheetRow]) -> Iterator[tuple[int, tuple[tuple[str, str], ...]]]:
    """Yield every row as a header, and then every two rows in a row: those must match more to win."""
    for place, row in enumerate(rows):
        yield place, tuple(("", cell.strip()) for cell in row.cells)
    for place, (upper, lower) in enumerate(pairwise(rows)):
        yield place, _two_lines(upper.cells, lower.cells)


def _two_lines(upper: Sequence[str], lower: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """Put a line of groups over a line of headings; a group reaches as far as the next one."""
    width = max(len(upper), len(lower))
    group = ""
    headings = []
    for place in range(width):
        above = upper[place].strip() if place < len(upper) else ""
        below = lower[place].strip() if place < len(lower) else ""
        group = above or group
        headings.append((group, below) if below else ("", above))
    return tuple(headings)


def _rows_under(
    rows: Sequence[SheetRow], header: Sequence[SheetRow]
) -> tuple[tuple[SheetRow, ...], tuple[tuple[int, str], ...]]:
    heads = [_plain(row) for row in header]
    kept, passed = [], []
    for row in rows:
        filled = [cell.strip() for cell in row.cells if cell.strip()]
        if _plain(row) in heads:
            passed.append((row.line, "the header once more"))
        elif _TOTAL.fullmatch(filled[0]):
            passed.append((row.line, f"a total: “{filled[0][:40]}”"))
        elif len(filled) == 1 and _is_title(filled[0]) and len(header[-1].cells) > 1:
            passed.append((row.line, f"a title: “{filled[0][:40]}”"))
        else:
            kept.append(row)
    return tuple(kept), tuple(passed)


def _is_title(text: str) -> bool:
    """Say whether the only text of a row heads what follows; a mark by itself is a door left unfinished."""
    return " " in text or not any(letter.isdigit() for letter in text)


def _plain(row: SheetRow) -> list[str]:
    return [cell.strip().casefold() for cell in row.cells]
