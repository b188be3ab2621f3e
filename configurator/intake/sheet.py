"""A file of rows, as texts: which kind it is, and what is refused before anything is read into it."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from configurator.long_work import Steps

LARGEST_FILE = 64 * 1024 * 1024
"""Bytes. A schedule of a hundred thousand doors takes about a tenth of this."""
MOST_ROWS = 100_500
"""As many openings as a job may have, and room for titles and headers between them."""
MOST_COLUMNS = 256
_PROJECT = re.compile(rb'\s*\{\s*"format"\s*:\s*"opening-project"')
_ZIP, _OLD_WORKBOOK = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"


NOT_STRUCK: Mapping[int, str] = MappingProxyType({})


class IntakeError(ValueError):
    """A schedule that cannot be read, or not so; the message is a sentence."""


class SheetAskedError(IntakeError):
    """Several sheets of a workbook look like a door schedule: one must be named. `sheets` are all of them."""

    def __init__(self, name: str, likely: tuple[str, ...], sheets: tuple[str, ...]) -> None:
        named = ", ".join(f"“{sheet}”" for sheet in likely)
        super().__init__(f"{name} has {len(likely)} sheets with the headings of a door schedule: {named}")
        self.sheets = sheets


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One row that is not blank; `line` is where it begins in the file, counted as people count, from 1.

    `hidden` and `struck` are of a workbook: the places of cells with struck-out text, and the rest of them.
    """

    line: int
    cells: tuple[str, ...]
    hidden: bool = False
    struck: Mapping[int, str] = field(default_factory=lambda: NOT_STRUCK)

    def cell(self, place: int) -> str:
        """Return the cell at a place, blank where the row is shorter."""
        return self.cells[place] if place < len(self.cells) else ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The rows of a file, what was assumed in reading it, and the sheets of a workbook to choose from."""

    name: str
    rows: tuple[SheetRow, ...]
    told: tuple[str, ...] = ()
    sheets: tuple[str, ...] = ()


def sheet_steps(path: Path, sheet: str | None = None) -> Steps[Sheet]:
    """Read a CSV file, or a sheet of a workbook: the named one, else the schedule. Raises IntakeError."""
    data = _bytes_of(path)
    if _PROJECT.match(data):
        raise IntakeError(f"{path.name} is an opening project, not a schedule; open it instead")
    if data.startswith(_OLD_WORKBOOK):
        raise IntakeError(
            f"{path.name} is a workbook of the old kind or one with a password; save it as .xlsx or .csv"
        )
    if data.startswith(_ZIP):
        from configurator.intake.workbook import workbook_steps

        return (yield from workbook_steps(data, path.name, sheet))
    if sheet is not None:
        raise IntakeError(f"{path.name} is no workbook, so it has no sheet “{sheet[:40]}”")
    from configurator.intake.text_file import text_steps

    return (yield from text_steps(data, path.name))


def row_of(
    line: int, cells: list[str], hidden: bool = False, struck: Mapping[int, str] = NOT_STRUCK
) -> SheetRow | None:
    """Return a row without the blank cells at its end; None where all are. Raises IntakeError if too wide."""
    while cells and not cells[-1].strip():
        cells.pop()
    refuse_too_wide(line, len(cells))
    return SheetRow(line, tuple(cells), hidden, struck) if cells else None


def refuse_too_wide(line: int, columns: int) -> None:
    """Raise IntakeError where a row has more columns than any schedule."""
    if columns > MOST_COLUMNS:
        raise IntakeError(
            f"line {line} has {columns:,} columns; a schedule has up to {MOST_COLUMNS} here. "
            "Check that this is the right file"
        )


def refuse_too_long(rows: int) -> None:
    """Raise IntakeError where there are more rows than a job may have openings."""
    if rows > MOST_ROWS:
        raise IntakeError(f"the file has more than {MOST_ROWS:,} rows; a job may have up to 100,000 openings")


def _bytes_of(path: Path) -> bytes:
    try:
        if not path.exists():
            raise IntakeError(f"{path.name} is not there")
        if not path.is_file():
            raise IntakeError(f"{path.name} is not a file")
        if path.stat().st_size > LARGEST_FILE:
            raise IntakeError(f"{path.name} is larger than {LARGEST_FILE // 2**20} MB; no door schedule is")
        data = path.read_bytes()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise IntakeError(f"{path.name} could not be read: {reason}") from None
    if not data.strip():
        raise IntakeError(f"{path.name} is empty")
    return data
