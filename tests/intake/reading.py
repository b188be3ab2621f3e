"""A schedule written in a test, read and set against a job."""

from pathlib import Path
from typing import Any

from configurator.intake.columns import Reading, reading_of
from configurator.intake.comparing import Compared, compared_steps
from configurator.intake.refused import Question
from configurator.intake.rows import RowRead, rows_steps
from configurator.intake.sheet import Sheet, SheetRow, sheet_steps
from configurator.intake.table import ScheduleTable, schedule_table
from configurator.long_work import run
from configurator.model import Job


def sheet(*rows: list[str]) -> Sheet:
    """Rows as they would come from a file, the first on line 1."""
    return Sheet(
        "doors.csv",
        tuple(SheetRow(line, tuple(row)) for line, row in enumerate(rows, 1) if any(map(str.strip, row))),
    )


def table(*rows: list[str]) -> ScheduleTable:
    return schedule_table(sheet(*rows))


def file_table(path: Path, **options: Any) -> ScheduleTable:
    return schedule_table(run(sheet_steps(path, **options)))


def read(*rows: list[str], **answers: Any) -> tuple[RowRead, ...]:
    """Read rows under their header with the usual choices."""
    found = table(*rows)
    return run(rows_steps(found, Reading(reading_of(found).columns, answers_of(answers))))


def answers_of(words: dict[str, str]) -> dict[Question, str]:
    """Answers by the short names that tests use: `order`, `pair`, or a question with underscores."""
    short = {"order": "size order", "pair": "pair width"}
    return {short.get(word, word.replace("_", " ")): answer for word, answer in words.items()}


def compared(found: ScheduleTable, job: Job | None = None, reading: Reading | None = None) -> Compared:
    reading = reading or reading_of(found)
    return run(compared_steps(run(rows_steps(found, reading)), reading, job or Job()))


def values(heading: str, cell: str, **answers: Any) -> dict[str, Any]:
    """What one cell beside a mark says, by path; its faults raise."""
    (row,) = read(["Mark", heading, "Qty"], ["1", cell, "1"], **answers)
    assert not row.faults, row.faults
    return {path: value for path, value in row.values.items() if path not in ("mark", "quantity")}


def reasons(heading: str, cell: str, **answers: Any) -> list[str]:
    """Why one cell beside a mark is refused."""
    (row,) = read(["Mark", heading, "Qty"], ["1", cell, "1"], **answers)
    return [fault.reason for fault in row.faults]
