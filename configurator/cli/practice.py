"""The command for the one who teaches: a set of problems by number, or how far somebody is, as a file.

What it needs is imported when it runs, so that the other commands start no slower.
"""

import argparse
from datetime import date
from pathlib import Path
from typing import Any

from configurator.cli.shared import DONE, add_out, refused


def add_practice_command(commands: Any) -> None:
    """Add `practice` to the command line's commands."""
    practice = commands.add_parser(
        "practice",
        help="write a set of practice problems with answers and solutions, or somebody's progress, as PDF",
        epilog="example: opening-configurator practice --set 12 --level 1 --out set-12.pdf",
    )
    which = practice.add_mutually_exclusive_group(required=True)
    which.add_argument("--set", type=int, metavar="N", help="a number; it gives the same set anywhere")
    which.add_argument(
        "--progress", metavar="NAME", help="how far somebody is who practises on this computer"
    )
    add_out(practice, "X.pdf", required=True)
    practice.add_argument("--level", type=int, default=0, help="problems of one level only, 1 to 5")
    practice.add_argument("--topic", default="", help="problems of one topic only, as hands")
    practice.add_argument("--count", type=int, default=10, help="how many problems; 10 if left out")
    practice.add_argument(
        "--questions", action="store_true", help="without answers and solutions, to hand out"
    )
    practice.add_argument("--metric", action="store_true", help="on A4 paper")
    practice.set_defaults(run=practice_command)


def practice_command(options: argparse.Namespace) -> tuple[str, int]:
    """Write what was asked for; return where it was written, and the exit status."""
    if options.out.suffix.lower() != ".pdf":
        raise refused("--out", f"must end in .pdf; {options.out.name} was given")
    if options.progress is not None:
        return _progress(options.progress, options.out), DONE
    from configurator.drawing.pictures.practice_pages import set_pages
    from configurator.export.pages import write_pages
    from configurator.practice.sets import SetAsked

    try:
        asked = SetAsked(options.set, options.level, options.topic, options.count)
    except ValueError as error:
        name, _, why = str(error).partition(" ")
        raise refused(f"--{name}", why) from None
    write_pages(set_pages(asked, options.questions, options.metric), options.out)
    return f"{options.out}: {asked.title}, {asked.count} problems\n", DONE


def _progress(name: str, path: Path) -> str:
    from configurator.documents.practice import progress_document
    from configurator.export.document import write_document
    from configurator.practice.progress import load_progress, people

    if name not in people():
        known = ", ".join(people()) or "nobody yet"
        raise refused("--progress", f"{name[:60]!r} has not practised here; {known} did")
    write_document(progress_document(load_progress(name), date.today()), path)
    return f"{path}: progress of {name}\n"
