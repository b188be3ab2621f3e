"""Every cell of twelve schedules is read, asked, or named as not read; checked by count."""

import csv
import io
from collections import Counter

import pytest
from openpyxl import load_workbook

from configurator.documents.intake_report import intake_report
from configurator.export.document import write_document
from configurator.intake.columns import reading_of
from configurator.intake.comparing import compared_steps, openings_with
from configurator.intake.refused import QUESTIONS
from configurator.intake.rows import rows_steps
from configurator.intake.saying import fates, fault_words, report
from configurator.long_work import run
from configurator.model import Job, JobFacts
from configurator.model.paths import value_at
from tests.intake.reading import file_table
from tests.intake.twelve import TWELVE


def read(case, folder, answers):
    """Read a case with those answers; return its table, how it was read, its rows, and how it compares."""
    table = file_table(case.write(folder))
    reading = reading_of(table)
    reading = reading.keeping_others() if case.keep else reading
    for question, answer in answers.items():
        reading = reading.with_answer(question, answer)
    job = Job.model_validate({"openings": list(case.job)})
    rows = run(rows_steps(table, reading))
    return table, reading, rows, run(compared_steps(rows, reading, job)), job


def cells_in(path, sheet):
    """Count the cells of a file that are not blank, by another path than the one that reads it."""
    if path.suffix == ".xlsx":
        rows = load_workbook(path)[sheet].iter_rows(values_only=True)
        return sum(value is not None for row in rows for value in row)
    data = path.read_bytes()
    text = data.decode("utf-16" if data.startswith((b"\xff\xfe", b"\xfe\xff")) else "utf-8")
    between = max(",;\t", key=text.splitlines()[0].count)
    return sum(bool(cell.strip()) for row in csv.reader(io.StringIO(text), delimiter=between) for cell in row)


each = pytest.mark.parametrize("case", TWELVE, ids=lambda case: case.name)


@each
def test_every_question_is_asked_before_it_is_answered(case, tmp_path):
    found = read(case, tmp_path, {})[3]
    assert {name: count for name in QUESTIONS if (count := found.asked(name))} == case.asked


@each
def test_every_opening_is_as_the_schedule_says(case, tmp_path):
    *_, found, job = read(case, tmp_path, case.answers)
    openings = {opening.mark: opening for opening in openings_with(job, found)}
    assert set(openings) == set(case.openings)
    said = {
        mark: {path: value_at(openings[mark], path) for path in own} for mark, own in case.openings.items()
    }
    for mark, own in case.openings.items():
        assert said[mark] == {
            path: pytest.approx(value) if isinstance(value, float) else value for path, value in own.items()
        }
    words = [fault_words(alike) for alike in found.like_faults()]
    assert len(words) == len(case.faults)
    for word, begins in zip(words, case.faults, strict=True):
        assert word.startswith(begins)


@each
def test_every_cell_is_accounted_for(case, tmp_path):
    table, _, rows, _, _ = read(case, tmp_path, case.answers)
    found = list(fates(table, rows))
    assert Counter(fate for *_, fate in found) == case.fates
    assert len(found) == cells_in(next(tmp_path.glob("doors.*")), table.name)
    assert len({(line, place) for line, place, *_ in found}) == len(found), "each cell once"


@each
def test_the_report_names_what_was_not_read(case, tmp_path):
    table, reading, rows, found, _ = read(case, tmp_path, case.answers)
    said = report(table, reading, found, removed=False)
    headings = table.titles()
    for line, place, text, fate in fates(table, rows):
        if fate in ("above the table", "passed over", "note"):
            assert f"line {line}," in said
            assert " ".join(text.split()) in said or fate == "passed over"
        if fate == "not read":
            assert f"not read: {headings[place]}" in said
        if fate == "left out":
            assert f"left out: line {line}," in said or f"“{text}” is struck out" in said
    for part in case.said:
        assert part in said


@each
@pytest.mark.parametrize("ending", ["xlsx", "csv", "pdf"])
def test_the_report_can_be_kept(case, ending, tmp_path):
    table, reading, rows, found, _ = read(case, tmp_path, {})
    path = tmp_path / f"report.{ending}"
    document = intake_report(JobFacts(), table, reading, rows, found)
    write_document(document, path)
    assert path.stat().st_size > 200
    about = Counter(row[0] for row in document.data[0].rows)
    assert about["question"] + about["fault"] == len(found.like_faults())
