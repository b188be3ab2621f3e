"""The command that lists the doors of a job and their hardware, or writes the sheet to measure on site."""

import argparse
import json
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import (
    DONE,
    add_out,
    load_job,
    progress_line,
    refuse_ending,
    refused,
    result_header,
    tallies_of,
    written,
)
from configurator.model import Job
from configurator.units import Display

if TYPE_CHECKING:
    from configurator.documents.document import Document

TABLES = ("doors", "openings", "groups")
"""The schedules by the word that asks for one: doors, hardware by opening, hardware by group."""


def add_schedule_command(commands: Any) -> None:
    """Add `schedule` to the command line's commands."""
    schedule = commands.add_parser(
        "schedule",
        help="list the doors of a job, and their hardware",
        epilog="example: opening-configurator schedule job.json --only doors --out doors.csv",
    )
    schedule.add_argument("file", type=Path, metavar="FILE", help="the job; - is standard input")
    schedule.add_argument("--json", action="store_true", help="print the schedules as data")
    add_out(schedule, "X.csv|xlsx|pdf")
    schedule.add_argument(
        "--only", choices=TABLES, help="one schedule: doors, hardware by opening, hardware by group"
    )
    schedule.add_argument("--field", action="store_true", help="a sheet to fill in on site instead, as a PDF")
    schedule.add_argument("--metric", action="store_true", help="millimetres on the field sheet")
    schedule.set_defaults(run=schedule_command)


def schedule_command(options: argparse.Namespace) -> tuple[str, int]:
    """Return the schedules as text, or where they were written, and the exit status."""
    job = load_job(options.file)
    if options.field:
        return _field_sheet(job, options), DONE
    if options.metric:
        raise refused("--metric", "goes with --field")
    refuse_ending(options.out)
    from configurator.documents.hardware_schedule import schedule_document

    document = schedule_document(tallies_of(job), job.job)
    if options.only is not None:
        index = TABLES.index(options.only)
        document = replace(document, data=(document.data[index],), sheets=(document.sheets[index],))
    if options.json:
        return json.dumps(result_header("schedule") | _as_data(document), allow_nan=False) + "\n", DONE
    return written(document, options.out), DONE


def _as_data(document: "Document") -> dict[str, Any]:
    """Return the tables, each row by the keys of its columns."""
    tables = [
        {
            "title": table.title,
            "columns": [{"key": each.key, "title": each.title, "kind": each.kind} for each in table.columns],
            "rows": [
                {each.key: cell for each, cell in zip(table.columns, row, strict=True)} for row in table.rows
            ],
        }
        for table in document.data
    ]
    return {"tables": tables, "notes": list(document.notes)}


def _field_sheet(job: Job, options: argparse.Namespace) -> str:
    """Write the sheet to fill in on site and say where."""
    from configurator.export.field_sheet_pdf import write_field_sheet

    if options.only is not None:
        raise refused("--field", "is a sheet of its own; leave out --only")
    path: Path | None = options.out
    if path is None or path.suffix.lower() != ".pdf":
        given = "no file" if path is None else path.name
        raise refused("--out", f"a field sheet is printed: it must end in .pdf; {given} was given")
    with progress_line(f"Writing {path.name}") as tell:
        write_field_sheet(job, path, Display(metric=options.metric), tell)
    return f"{path}: field sheet\n"
