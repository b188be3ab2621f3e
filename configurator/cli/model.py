"""The commands that take hinges and findings back to an architect's building model.

What they need is imported when they run, so that the other commands start no slower.
"""

import argparse
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import DONE, STANDARD, load_job, progress_line, refused, tallies_of
from configurator.model import Job
from configurator.model.faults import Fault
from configurator.project_file import ProjectFileError

if TYPE_CHECKING:
    from configurator.building.topics import Topic
    from configurator.building.write_back import HingeSet
    from configurator.order.tally import Tally

_GLOBAL_ID = re.compile(r"\(([0-9A-Za-z_$]{22})\)")


def add_model_commands(commands: Any) -> None:
    """Add `export-model` and `topics` to the command line's commands."""
    export = commands.add_parser(
        "export-model",
        help="write the hinges of a job into a copy of its building model (IFC)",
        epilog="example: opening-configurator export-model job.json --model terminal.ifc --out hinges.ifc",
    )
    _add_files(export, "COPY.ifc", "the copy to write; the model itself is never written")
    export.set_defaults(run=_export)
    topics = commands.add_parser(
        "topics",
        help="write the findings of a job as topics on its building model (BCF 3.0)",
        epilog="example: opening-configurator topics job.json --model terminal.ifc --out findings.bcf",
    )
    _add_files(topics, "X.bcf", "the file of topics to write")
    topics.add_argument("--notes", action="store_true", help="notes too, not only errors and warnings")
    topics.set_defaults(run=_topics)


def _add_files(command: argparse.ArgumentParser, metavar: str, words: str) -> None:
    command.add_argument("file", type=Path, metavar="FILE", help="the job; - is standard input")
    command.add_argument("--model", required=True, type=Path, metavar="MODEL.ifc", help="the building model")
    command.add_argument("--out", required=True, type=Path, metavar=metavar, help=words)


def _export(options: argparse.Namespace) -> tuple[str, int]:
    from configurator.building.write_back import write_back
    from configurator.intake.saying import counted
    from configurator.intake.sheet import IntakeError

    tallies = _of_doors(options, "--out", (".ifc",))
    hinges = {_door(one): _sets(one) for one in tallies if one.ordered}
    status = {_door(one): one.opening.status for one in tallies}
    try:
        with progress_line("Writing hinges") as tell:
            done = write_back(options.model, options.out, hinges, status, tell)
    except IntakeError as error:
        raise ProjectFileError((Fault("", str(error)),)) from None
    held = [one.mark for one in tallies if not one.ordered]
    missing = [one.mark for one in tallies if _door(one) in done.missing]
    lines = [f"{counted(done.hinges, 'hinge')} on {counted(done.doors, 'door')}"]
    lines += [f"not written, without hinges to order: {', '.join(held)}"] if held else []
    lines += [f"not in this model: {', '.join(missing)}"] if missing else []
    return "\n".join([*lines, f"written: {options.out}", ""]), DONE


def _topics(options: argparse.Namespace) -> tuple[str, int]:
    from datetime import datetime

    from configurator.building.topics import write_topics
    from configurator.intake.saying import counted
    from configurator.intake.sheet import IntakeError

    job = load_job(options.file)
    tallies = _of_doors(options, "--out", (".bcf", ".bcfzip"), job)
    told = {"error", "warning", *(["note"] if options.notes else [])}
    topics = [topic for one in tallies for topic in _of(one, told)]
    author = job.job.prepared_by or "Opening Configurator"
    name = job.job.name or options.model.stem
    try:
        missing = write_topics(options.model, options.out, topics, name, author, datetime.now().astimezone())
    except IntakeError as error:
        raise ProjectFileError((Fault("", str(error)),)) from None
    there = [topic for topic in topics if topic.mark not in missing]
    doors = len({topic.door for topic in there})
    lines = [f"{counted(len(there), 'topic')} about {counted(doors, 'door')}"]
    lines += [f"not in this model: {', '.join(missing)}"] if missing else []
    return "\n".join([*lines, f"written: {options.out}", ""]), DONE


def _of_doors(
    options: argparse.Namespace, name: str, endings: Sequence[str], job: Job | None = None
) -> "list[Tally]":
    """Return the tallies of a job's openings that are doors of a model. Raises ProjectFileError for none."""
    if options.out != STANDARD and options.out.suffix.casefold() not in endings:
        raise refused(name, f"must end in {' or '.join(endings)}; {options.out.name} was given")
    job = load_job(options.file) if job is None else job
    tallies = [one for one in tallies_of(job) if one.opening.global_id]
    if not tallies:
        raise refused("", "no opening of this job is a door of a building model: import the model first")
    return tallies


def _door(tally: "Tally") -> str:
    return tally.opening.global_id or ""


def _sets(tally: "Tally") -> "tuple[HingeSet, ...]":
    from configurator.building.write_back import HingeSet
    from configurator.documents.line_words import (
        detail_words,
        hinge_words,
        metal_words,
        screws_each_words,
    )

    kinds = hinge_words, metal_words, detail_words
    return tuple(
        HingeSet(
            f"{one.hinge.item.capitalize()}{'' if one.leaf == 'single' else f', {one.leaf} leaf'}",
            ", ".join((one.hinge.size, *(words(one.hinge) for words in kinds))),
            one.count,
            {
                "Leaf": one.leaf,
                "Size": one.hinge.size,
                "Kind": hinge_words(one.hinge),
                "MetalAndFinish": metal_words(one.hinge),
                "Details": detail_words(one.hinge),
                "Screws": screws_each_words(one.hinge),
            },
        )
        for one in tally.ordered
    )


def _of(tally: "Tally", told: set[str]) -> "Iterator[Topic]":
    """Yield the findings of one door, each with the elements it is about."""
    from configurator.building.topics import Topic
    from configurator.tables import ObstructionKindRow, row_of

    for one in tally.findings:
        if one.severity in told:
            things = [
                found[1]
                for thing in tally.opening.obstructions
                if row_of(ObstructionKindRow, thing.kind).name in one.message
                and (found := _GLOBAL_ID.search(thing.element or "")) is not None
            ]
            elements = tuple(dict.fromkeys(things))
            yield Topic(_door(tally), tally.mark, one.code, one.severity, one.message, elements)
