"""What came of reading an architect's schedule, to be kept: what is asked, taken for what, or not read.

Every row of the first table says what it is about, on which lines, in which column, what is written there and
what is said of it; the sheets have the same, one table for each thing.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from configurator.documents.document import Column, Document, Table, heading_of
from configurator.intake.columns import Reading
from configurator.intake.comparing import Compared, title_of
from configurator.intake.refused import QUESTIONS
from configurator.intake.rows import RowRead
from configurator.intake.saying import (
    all_told,
    change_words,
    counted,
    display_of,
    not_read_words,
    notes_told,
    summary,
    value_words,
)
from configurator.intake.table import ScheduleTable
from configurator.model import JobFacts
from configurator.sentences import as_sentence, capitalized

_ALL = (
    Column("about", "about", "text", 14),
    Column("lines", "lines", "text", 16),
    Column("column", "column", "text", 16),
    Column("written", "written", "text", 24),
    Column("said", "what is said of it", "text", 60),
    Column("rows", "rows", "count", 6),
)
_MOST_LINES = 400
"""Lines that a cell names; a spreadsheet's cell has an end."""
Row = tuple[str, str, str, str, str, int | None]


def intake_report(
    facts: JobFacts,
    table: ScheduleTable,
    reading: Reading,
    rows: Sequence[RowRead],
    compared: Compared,
) -> Document:
    """Return the report of a schedule that was read and set against a job."""
    every = tuple(_rows(table, reading, rows, compared))
    by_about: dict[str, list[Row]] = defaultdict(list)
    for row in every:
        by_about[row[0]].append(row)
    sheets = tuple(
        Table(capitalized(about), _ALL[1:], tuple(row[1:] for row in own)) for about, own in by_about.items()
    )
    notes = (as_sentence(summary(table, compared)),)
    whole = Table("Schedule as read", _ALL, every)
    return Document("Schedule as read", heading_of(facts), (whole,), sheets, notes, sheets)


def _rows(
    table: ScheduleTable, reading: Reading, rows: Sequence[RowRead], compared: Compared
) -> Iterator[Row]:
    cells = {row.line: row for row in table.rows}
    for alike in compared.like_faults():
        first = alike[0]
        lines = _lines(fault.line for fault in alike)
        written = "" if first.place is None else cells[first.line].cell(first.place)
        about = "question" if first.question else "fault"
        answers = QUESTIONS[first.question].answers.values() if first.question else ()
        asked = f"; answers: {', or '.join(answers)}" if answers else ""
        yield about, lines, first.heading, written, first.reason + asked, len(alike)
    for change in compared.of_kind("changed"):
        for each in change.changes:
            words = change_words(each, display_of(reading))
            yield "change", str(change.line), "", change.opening.mark, words, 1
    for new in compared.of_kind("new"):
        yield "new", str(new.line), "", new.opening.mark, "a new opening", 1
    for mark in compared.gone:
        yield f"not in the {table.source}", "", "", mark, f"in the job, and not in the {table.source}", 1
    yield from _taken(table, reading, rows)
    for sentence in all_told(table, reading, compared):
        yield "assumed", "", "", "", sentence, None
    for words in not_read_words(table, reading):
        yield "not read", "", "", words, "this column is not read", None
    for row in compared.left_out:
        yield "left out", str(row.line), "", row.mark, row.left_out, 1
    for over in table.passed_over:
        yield "passed over", str(over.row.line), "", "", over.why, 1
    for line, words in notes_told(table, compared):
        yield "note", str(line), "", "", words, None


def _taken(table: ScheduleTable, reading: Reading, rows: Iterable[RowRead]) -> Iterator[Row]:
    """Yield what was taken for what: each text of a column once, with how many rows have it."""
    display = display_of(reading)
    headings = {column.place: column.heading for column in reading.columns}
    cells = {row.line: row for row in table.rows}
    found: dict[tuple[str, str, str], list[int]] = defaultdict(list)
    for row in rows:
        for path, place in row.places.items():
            written = " ".join(cells[row.line].cell(place).split())
            shown = value_words(path, row.values[path], display) if path in row.values else "kept"
            if written and written != shown:
                found[headings[place], written, f"{title_of(path)}: {shown}"].append(row.line)
    for (heading, written, said), lines in found.items():
        yield "taken as", _lines(lines), heading, written, said, len(lines)


def _lines(lines: Iterable[int]) -> str:
    numbers = list(lines)
    more = f" and {counted(len(numbers) - _MOST_LINES, 'more', 'more')}" if len(numbers) > _MOST_LINES else ""
    return ", ".join(map(str, numbers[:_MOST_LINES])) + more
