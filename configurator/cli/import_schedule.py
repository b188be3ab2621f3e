"""The command that takes a door schedule or a building model into a job: all, or its good rows, or nothing.

What it needs is imported when it runs, so that the other commands start no slower.
"""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import DONE, STANDARD, refused, written
from configurator.model import Job, JobFacts
from configurator.model.faults import Fault
from configurator.project_file import ProjectFileError

if TYPE_CHECKING:
    from configurator.intake.columns import Reading
    from configurator.intake.comparing import Compared
    from configurator.intake.rows import RowRead
    from configurator.intake.table import ScheduleTable
    from configurator.project_file.held import HeldFile


def add_import_command(commands: Any) -> None:
    """Add `import` to the command line's commands."""
    command = commands.add_parser(
        "import",
        help="take a door schedule (CSV or XLSX) or a building model (IFC) into a job",
        epilog="example: opening-configurator import doors.csv --into job.json --dry-run",
    )
    command.add_argument("schedule", type=Path, metavar="DOORS.csv|xlsx|ifc")
    command.add_argument(
        "--into", required=True, type=Path, metavar="FILE", help="the job; begun if not there"
    )
    command.add_argument(
        "--take-good", action="store_true", help="take the good rows though others have faults"
    )
    command.add_argument(
        "--remove-missing", action="store_true", help="remove openings that the schedule does not have"
    )
    command.add_argument(
        "--against",
        type=Path,
        metavar="DOORS.csv|xlsx",
        help="say mark by mark where a building model and a door schedule disagree",
    )
    command.add_argument("--dry-run", action="store_true", help="say what would be done and write nothing")
    _add_how_it_is_read(command)
    command.set_defaults(run=import_command)


def _add_how_it_is_read(command: argparse.ArgumentParser) -> None:
    """Add the options that say what stands where in a schedule, and what its cells mean."""
    command.add_argument(
        "--sheet", metavar="NAME", help="which sheet of a workbook (that with a schedule if left out)"
    )
    command.add_argument(
        "--column",
        action="append",
        default=[],
        metavar="HEADING=FIELD[:UNIT]",
        help="what a column gives (nothing: pass it over), and its numbers' unit: in, ft-in or mm",
    )
    command.add_argument(
        "--keep-others", action="store_true", help="keep columns that are not read under their own headings"
    )
    command.add_argument(
        "--read",
        action="append",
        default=[],
        metavar="HEADING=OLD=NEW",
        help="read every cell of a column that says OLD as NEW",
    )
    command.add_argument(
        "--commas", choices=("decimal", "thousands"), help="what commas in numbers are, where it is not found"
    )
    command.add_argument(
        "--answer",
        action="append",
        default=[],
        metavar="QUESTION=ANSWER",
        help="answer what is asked of rows, as 'no hinged door=leave out'; a refusal names the questions",
    )
    command.add_argument(
        "--name-job", action="store_true", help="take the job's name from the lines above the table"
    )
    command.add_argument(
        "--report", type=Path, metavar="X.csv|xlsx|pdf", help="write what was asked and taken for what"
    )
    command.add_argument(
        "--size-order", choices=("width", "height"), default=None, help="which figure of a size comes first"
    )
    command.add_argument(
        "--pair-width",
        choices=("opening", "leaf"),
        help="what the width of a narrow pair is of",
    )


def import_command(options: argparse.Namespace) -> tuple[str, int]:
    """Take a schedule into a job and say what changed; with a fault and no word to go on, write nothing."""
    from configurator.intake.sheet import IntakeError

    if STANDARD in (options.schedule, options.into):
        raise refused("", "a schedule and its job are files; - stands for neither")
    try:
        table, reading = _read(options)
    except IntakeError as error:
        raise ProjectFileError((Fault("", str(error)),)) from None
    from configurator.project_file.held import is_there, open_held

    if not is_there(options.into):
        return _taken(options, table, reading, None, Job())
    file, job = open_held(options.into)
    try:
        return _taken(options, table, reading, file, job)
    finally:
        file.release()


def _read(options: argparse.Namespace) -> "tuple[ScheduleTable, Reading]":
    from configurator.intake.columns import chosen, column_called, reading_of
    from configurator.intake.sheet import IntakeError
    from configurator.intake.table import corrected_alike

    table = _table(options.schedule, options.sheet)
    reading = reading_of(table)
    for choice in options.column:
        reading = chosen(reading, choice)
    for choice in options.read:
        heading, old, new = _parts(choice, 3, "HEADING=OLD=NEW")
        table = corrected_alike(table, column_called(reading, heading).place, old, new)
    if lacking := reading.lacks():
        raise IntakeError(f"{options.schedule.name}: {lacking}; say which with --column HEADING=mark")
    if options.keep_others:
        reading = reading.keeping_others()
    if options.commas:
        reading = reading.with_commas(options.commas)
    return table, _answered(options, reading)


def _table(path: Path, sheet: str | None) -> "ScheduleTable":
    """Return a schedule or a building model as a table. Raises IntakeError."""
    from configurator.building.apart import is_model, read_apart
    from configurator.intake.sheet import IntakeError, SheetAskedError, sheet_steps
    from configurator.intake.table import schedule_table
    from configurator.long_work import run

    if is_model(path):
        from configurator.building.schedule import model_table

        return model_table(read_apart(path))
    try:
        return schedule_table(run(sheet_steps(path, sheet)))
    except SheetAskedError as error:
        raise IntakeError(f"{error}; say which with --sheet") from None


def _answered(options: argparse.Namespace, reading: "Reading") -> "Reading":
    from configurator.intake.refused import QUESTIONS
    from configurator.intake.sheet import IntakeError

    given = [_parts(answer, 2, "QUESTION=ANSWER") for answer in options.answer]
    given += [["size order", options.size_order or ""], ["pair width", options.pair_width or ""]]
    for question, answer in given:
        if question not in QUESTIONS:
            raise IntakeError(f"“{question[:40]}” is no question; they are {', '.join(QUESTIONS)}")
        if answer:
            reading = reading.with_answer(question, answer)  # type: ignore[arg-type]
    return reading


def _parts(text: str, count: int, form: str) -> list[str]:
    from configurator.intake.sheet import IntakeError

    parts = [part.strip() for part in text.split("=", count - 1)]
    if len(parts) < count:
        raise IntakeError(f"“{text[:60]}” is not {form}")
    return parts


def _taken(
    options: argparse.Namespace, table: "ScheduleTable", reading: "Reading", file: "HeldFile | None", job: Job
) -> tuple[str, int]:
    from configurator.intake.comparing import compared_steps
    from configurator.intake.rows import rows_steps
    from configurator.intake.saying import report
    from configurator.long_work import run

    rows = run(rows_steps(table, reading))
    compared = run(compared_steps(rows, reading, job))
    if options.report is not None:
        from configurator.documents.intake_report import intake_report

        written(intake_report(job.job, table, reading, rows, compared), options.report)
    if compared.bad and not (options.take_good or options.dry_run):
        raise ProjectFileError(_refusals(compared))
    text = report(table, reading, compared, options.remove_missing)
    if options.against is not None:
        text += _disagreements(options, table, rows)
    return f"{text}{_written(options, file, job, table, compared)}\n", DONE


def _disagreements(options: argparse.Namespace, table: "ScheduleTable", rows: "tuple[RowRead, ...]") -> str:
    """Say mark by mark what a model and a schedule of the same job disagree about."""
    from configurator.building.against import disagreements
    from configurator.intake.columns import reading_of
    from configurator.intake.rows import rows_steps
    from configurator.intake.saying import display_of
    from configurator.intake.sheet import IntakeError
    from configurator.long_work import run

    try:
        if table.source != "model":
            raise IntakeError("--against sets a building model against a schedule; the first file is none")
        other = _table(options.against, options.sheet)
        if other.source == "model":
            raise IntakeError(f"{options.against.name} is a building model; --against names a door schedule")
        reading = _answered(options, reading_of(other))
    except IntakeError as error:
        raise ProjectFileError((Fault("", str(error)),)) from None
    name = options.against.name
    lines = [*disagreements(rows, run(rows_steps(other, reading)), name, display_of(reading))]
    return "".join(f"against {name}: {line}\n" for line in lines) or f"against {name}: nothing differs\n"


def _refusals(compared: "Compared") -> tuple[Fault, ...]:
    """Name every fault, those alike in one line, and after them what can be done about it."""
    from configurator.intake.refused import QUESTIONS
    from configurator.intake.saying import fault_words

    faults = tuple(Fault("", fault_words(alike)) for alike in compared.like_faults())
    advice = [f"nothing was taken; --take-good takes the {len(compared.good):,} good rows"]
    for question, asked in QUESTIONS.items():
        if compared.asked(question):
            option = _OPTIONS.get(question, f"--answer '{question}=…'")
            advice.append(f"{option} answers: {asked.words} … ({asked.usage})")
    if any(len(alike) > 1 and alike[0].heading and not alike[0].question for alike in compared.like_faults()):
        advice.append("--read 'HEADING=OLD=NEW' mends all cells of a column that read alike")
    return (*faults, Fault("", "; ".join(advice)))


_OPTIONS = {"size order": "--size-order", "pair width": "--pair-width"}


def _written(
    options: argparse.Namespace,
    file: "HeldFile | None",
    job: Job,
    table: "ScheduleTable",
    compared: "Compared",
) -> str:
    from configurator.intake.comparing import facts_with, openings_with
    from configurator.intake.saying import nothing_words
    from configurator.project_file.held import save_held

    openings = openings_with(job, compared, options.remove_missing)
    facts = facts_with(job, table, options.name_job)
    if openings == job.openings and facts == job.job:
        return nothing_words(table.source)
    taken = _with_openings(job, openings, facts)
    if options.dry_run:
        return "nothing was written: this was a dry run"
    # A file that is there stays ours from reading to writing; what changed meanwhile is not written over.
    save_held(taken, options.into, file).release()
    return f"written: {options.into}"


def _with_openings(job: Job, openings: tuple[Any, ...], facts: JobFacts) -> Job:
    from pydantic import ValidationError

    from configurator.model.faults import faults_of

    parts = {name: getattr(job, name) for name in job.model_fields_set}
    if facts.model_fields_set:
        parts["job"] = facts
    try:
        return Job.model_validate({**parts, "openings": openings})
    except ValidationError as error:
        raise ProjectFileError(faults_of(error, Job)) from None
