"""The command that takes a door schedule into a job: all of it, or its good rows when told so, or nothing.

What it needs is imported when it runs, so that the other commands start no slower.
"""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import DONE
from configurator.model import Job
from configurator.model.faults import Fault
from configurator.project_file import ProjectFileError

if TYPE_CHECKING:
    from configurator.intake.columns import Reading
    from configurator.intake.comparing import Compared
    from configurator.intake.table import ScheduleTable
    from configurator.project_file.held import HeldFile


def add_import_command(commands: Any) -> None:
    """Add `import` to the command line's commands."""
    command = commands.add_parser("import", help="take a door schedule (CSV or XLSX) into a job")
    command.add_argument("schedule", type=Path, metavar="DOORS.csv|xlsx")
    command.add_argument(
        "--into", required=True, type=Path, metavar="FILE", help="the job; begun if not there"
    )
    command.add_argument(
        "--take-good", action="store_true", help="take the good rows though others have faults"
    )
    command.add_argument(
        "--remove-missing", action="store_true", help="remove openings that the schedule does not have"
    )
    command.add_argument("--dry-run", action="store_true", help="say what would be done and write nothing")
    command.add_argument("--sheet", metavar="NAME", help="which sheet of a workbook (the first if left out)")
    command.add_argument(
        "--column",
        action="append",
        default=[],
        metavar="HEADING=FIELD[:UNIT]",
        help="what a column gives (nothing: pass it over), and its numbers' unit: in, ft-in or mm",
    )
    command.add_argument(
        "--size-order", choices=("width", "height"), default=None, help="which figure of a size comes first"
    )
    command.add_argument(
        "--pair-width",
        choices=("opening", "leaf"),
        default="ask",
        help="what the width of a narrow pair is of",
    )
    command.set_defaults(run=import_command)


def import_command(options: argparse.Namespace) -> tuple[str, int]:
    """Take a schedule into a job and say what changed; with a fault and no word to go on, write nothing."""
    from configurator.intake.sheet import IntakeError

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
    from dataclasses import replace

    from configurator.intake.columns import chosen, reading_of
    from configurator.intake.sheet import IntakeError, sheet_steps
    from configurator.intake.table import schedule_table
    from configurator.long_work import run

    table = schedule_table(run(sheet_steps(options.schedule, options.sheet)))
    reading = reading_of(table)
    for choice in options.column:
        reading = chosen(reading, choice)
    if lacking := reading.lacks():
        raise IntakeError(f"{options.schedule.name}: {lacking}; say which with --column HEADING=mark")
    return table, replace(reading, order=options.size_order or reading.order, pair=options.pair_width)


def _taken(
    options: argparse.Namespace, table: "ScheduleTable", reading: "Reading", file: "HeldFile | None", job: Job
) -> tuple[str, int]:
    from configurator.intake.columns import columns_told
    from configurator.intake.comparing import compared_steps
    from configurator.intake.rows import rows_steps
    from configurator.intake.saying import report
    from configurator.long_work import run

    compared = run(compared_steps(run(rows_steps(table, reading)), reading, job))
    if compared.bad and not (options.take_good or options.dry_run):
        raise ProjectFileError(_refusals(compared))
    text = report(table, compared, columns_told(table, reading), options.remove_missing)
    return f"{text}{_written(options, file, job, compared)}\n", DONE


def _refusals(compared: "Compared") -> tuple[Fault, ...]:
    """Name every fault, and after them what can be done about it."""
    faults = tuple(Fault("", str(fault)) for fault in compared.faults())
    advice = [f"nothing was taken; --take-good takes the {len(compared.good):,} good rows"]
    if compared.asked("size order"):
        advice.append("--size-order width or height says which figure comes first")
    if compared.asked("pair width"):
        advice.append("--pair-width opening or leaf says whose a pair's width is")
    return (*faults, Fault("", "; ".join(advice)))


def _written(options: argparse.Namespace, file: "HeldFile | None", job: Job, compared: "Compared") -> str:
    from configurator.intake.comparing import openings_with
    from configurator.intake.saying import NOTHING
    from configurator.project_file.held import save_held

    openings = openings_with(job, compared, options.remove_missing)
    if openings == job.openings:
        return NOTHING
    taken = _with_openings(job, openings)
    if options.dry_run:
        return "nothing was written: this was a dry run"
    # A file that is there stays ours from reading to writing; what changed meanwhile is not written over.
    save_held(taken, options.into, file).release()
    return f"written: {options.into}"


def _with_openings(job: Job, openings: tuple[Any, ...]) -> Job:
    from pydantic import ValidationError

    from configurator.model.faults import faults_of

    parts = {name: getattr(job, name) for name in job.model_fields_set}
    try:
        return Job.model_validate({**parts, "openings": openings})
    except ValidationError as error:
        raise ProjectFileError(faults_of(error, Job)) from None
