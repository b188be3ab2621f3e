"""The commands of the order desk: the order of a job, and its schedules.

What they need is imported when one of them runs, so that the other commands start no slower.
"""

import argparse
import json
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.exit_status import DONE, FOUND_ERRORS
from configurator.model import Job
from configurator.model.faults import Fault
from configurator.project_file import ProjectFileError, load

if TYPE_CHECKING:
    from configurator.order.document import Document
    from configurator.order.prices import Priced
    from configurator.order.take_off import TakeOff

TABLES = ("doors", "openings", "groups")
"""The schedules by the word that asks for one: doors, hardware by opening, hardware by group."""


def add_order_commands(commands: Any) -> None:
    """Add `order` and `schedule` to the command line's commands."""
    order = commands.add_parser("order", help="count the hinges of a job into order lines")
    order.add_argument("file", type=Path, metavar="FILE")
    order.add_argument("--json", action="store_true", help="print the order as data")
    order.add_argument("--out", type=Path, metavar="X.csv|xlsx|pdf", help="write the order")
    order.add_argument(
        "--spare", metavar="5%|2", help="spare hinges: per cent of each line, or a number a line"
    )
    order.add_argument("--screw-pack", type=int, metavar="N", help="count screws in packs of N too")
    order.add_argument("--prices", type=Path, metavar="P.csv", help="your own price list")
    order.add_argument("--strict", action="store_true", help="exit with 1 when a finding is an error")
    order.set_defaults(run=order_command)

    schedule = commands.add_parser("schedule", help="list the doors of a job, and their hardware")
    schedule.add_argument("file", type=Path, metavar="FILE")
    schedule.add_argument("--out", type=Path, metavar="X.csv|xlsx|pdf", help="write the schedules")
    schedule.add_argument(
        "--only", choices=TABLES, help="one schedule: doors, hardware by opening, hardware by group"
    )
    schedule.set_defaults(run=schedule_command)


def order_command(options: argparse.Namespace) -> tuple[str, int]:
    """Return the order as text or data and the exit status; written to a file too where one is named."""
    job = load(options.file)
    _refuse_ending(options.out)
    order = _taken_off(job, options)
    priced = _priced(order, options.prices)
    status = FOUND_ERRORS if options.strict and order.has_errors else DONE
    from configurator.order.order_document import order_document

    said = _written(order_document(order, priced), options.out)
    if options.json:
        return json.dumps(_as_data(order, priced), allow_nan=False) + "\n", status
    return said, status


def schedule_command(options: argparse.Namespace) -> tuple[str, int]:
    """Return the schedules as text, or where they were written, and the exit status."""
    job = load(options.file)
    _refuse_ending(options.out)
    from configurator.order.hardware_schedule import schedule_document
    from configurator.order.tally import tally_job

    document = schedule_document(tally_job(job), job.job)
    if options.only is not None:
        place = TABLES.index(options.only)
        document = replace(document, data=(document.data[place],), sheets=(document.sheets[place],))
    return _written(document, options.out), DONE


def _taken_off(job: Job, options: argparse.Namespace) -> "TakeOff":
    from configurator.order.spare import parse_spare
    from configurator.order.take_off import take_off
    from configurator.order.tally import tally_job
    from configurator.order.uniform import uniform

    try:
        spare = parse_spare(options.spare) if options.spare is not None else None
    except ValueError as error:
        raise _refused("--spare", str(error)) from None
    if options.screw_pack is not None and options.screw_pack < 1:
        raise _refused("--screw-pack", f"a pack holds at least 1 screw; {options.screw_pack} was given")
    tallies = tally_job(job)
    return take_off(tallies, job.job, spare, options.screw_pack, uniform(tallies, job.job))


def _priced(order: "TakeOff", path: Path | None) -> "Priced | None":
    if path is None:
        return None
    from configurator.order.price_list import PriceListError, load_prices
    from configurator.order.prices import price_order

    try:
        return price_order(order.lines, load_prices(path))
    except PriceListError as error:
        faults = tuple(Fault(f"{path.name} {fault.field}".strip(), fault.message) for fault in error.faults)
        raise ProjectFileError(faults) from None


def _as_data(order: "TakeOff", priced: "Priced | None") -> dict[str, Any]:
    data = order.as_data()
    if priced is not None:
        for line in data["lines"]:
            one = priced.by_line.get(line["line"])
            line |= {"price": None, "price_unit": None, "amount": None} if one is None else one.as_data()
        data["totals"] |= priced.as_data()
    return data


def _written(document: "Document", path: Path | None) -> str:
    """Write a document and say so; with no file named, return it as text."""
    if path is None:
        from configurator.export.document_text import document_text

        return document_text(document)
    from configurator.export.document import write_document

    write_document(document, path)
    return "\n".join((f"{path}: {document.title.lower()}", *document.notes)) + "\n"


def _refuse_ending(path: Path | None) -> None:
    from configurator.export.document import DOCUMENT_FORMATS

    if path is not None and path.suffix.lower() not in DOCUMENT_FORMATS:
        raise _refused("--out", f"must end in {', '.join(DOCUMENT_FORMATS)}; {path.name} was given")


def _refused(field: str, message: str) -> ProjectFileError:
    return ProjectFileError((Fault(field, message),))
