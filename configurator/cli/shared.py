"""What several commands need: statuses, refusals, the openings asked for, progress, writing a document."""

import argparse
import re
import sys
import time
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.long_work import Progress, unwatched
from configurator.model import Job, Opening
from configurator.model.faults import Fault
from configurator.project_file import LARGEST_FILE, ProjectFileError, load, parse

if TYPE_CHECKING:
    from configurator.documents.document import Document
    from configurator.order.tally import Tally
    from configurator.study import Study

STANDARD = Path("-")
"""In place of a file: standard input is read, or standard output written."""
STRICTNESS = {"errors": ("error",), "warnings": ("error", "warning")}
"""What of the findings `--strict` counts, by its word."""
DONE = 0
"""All evaluated."""
FOUND_ERRORS = 1
"""A finding of severity error, where strictness was asked for."""
REFUSED = 2
"""The input was refused: nothing on standard output, one line a fault on standard error."""
NOT_WRITTEN = 3
"""The output could not be written."""
BROKEN = 4
"""The program itself failed; standard error says so, and what to keep of it."""
SHOWN_AFTER = 1.0
"""Seconds of work before its progress is shown: what is done sooner needs none."""
BETWEEN = 0.2
"""Seconds between two showings."""
_CONTROLS = {*range(32), *range(0x7F, 0xA0)} - {0x09, 0x0A}
_TURNS = {0x061C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A)}
_SPELLED = {code: f"\\u{code:04x}" for code in _CONTROLS | _TURNS}
_CLEAR = "\r\x1b[K"


def refused(field: str, message: str) -> ProjectFileError:
    """Return the refusal of one field or option, to be raised."""
    return ProjectFileError((Fault(field, message),))


def load_job(path: Path) -> Job:
    """Read a job from a file, or from standard input for `-`. Raises ProjectFileError."""
    if path != STANDARD:
        return load(path)
    data = sys.stdin.buffer.read(LARGEST_FILE + 1) if sys.stdin is not None else b""
    if len(data) > LARGEST_FILE:
        raise refused("", f"standard input is larger than {LARGEST_FILE // 2**20} MB; no job is")
    return parse(data)


def add_strict(command: argparse.ArgumentParser) -> None:
    """Add `--strict` to a command; alone it counts errors, and `main` writes that out."""
    command.add_argument(
        "--strict",
        choices=tuple(STRICTNESS),
        help="exit with 1 when a finding is an error (--strict alone), or a warning too",
    )


def add_out(command: argparse.ArgumentParser, metavar: str, required: bool = False) -> None:
    """Add `--out` to a command, and `--format` for what goes to standard output."""
    command.add_argument(
        "--out", required=required, type=Path, metavar=metavar, help="the file to write; - is standard output"
    )
    command.add_argument("--format", metavar="pdf|csv|...", help="the format where --out is -")


def strict_status(options: argparse.Namespace, severities: Iterable[str]) -> int:
    """Return the exit status that findings of these severities have under the strictness asked for."""
    counted = STRICTNESS.get(options.strict or "", ())
    return FOUND_ERRORS if any(each in counted for each in severities) else DONE


def result_header(kind: str) -> dict[str, Any]:
    """Return the keys that stand first in every result: what it is, its version, and its units."""
    units = {"length": "in", "angle": "degrees", "weight": "lb"}
    return {"format": f"opening-{kind}", "version": 1, "units": units}


def complain(line: str) -> None:
    """Write one line to standard error."""
    if sys.stderr is not None:
        print(harmless(" ".join(line.split())), file=sys.stderr)


def whole_number(text: str) -> int:
    """Read a whole number, zero or more, for an option; the parser says why it is refused."""
    if not re.fullmatch("[0-9]{1,9}", text):
        raise argparse.ArgumentTypeError(f"a whole number is wanted; {harmless(text[:40])} was given")
    return int(text)


def harmless(text: str) -> str:
    """Return a text whose control characters and turns of the writing direction are spelled out.

    A terminal would obey them. They are spelled as JSON spells them, so that data stays data.
    """
    return text.translate(_SPELLED)


def over_its_own_input(out: Path | None, inputs: Sequence[Path | None]) -> Path | None:
    """Return the input that an output would be written over, by whatever name or link; None for none."""
    return next((each for each in inputs if each is not None and out is not None and _same(each, out)), None)


def _same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except (OSError, ValueError):
        return False


def selected(job: Job, mark: str | None) -> tuple[Opening, ...]:
    """Return the opening with a mark, or all of them for None. Raises ProjectFileError if none has it."""
    if mark is None:
        return job.openings
    found = tuple(opening for opening in job.openings if opening.mark == mark)
    if not found:
        known = ", ".join(opening.mark for opening in job.openings[:20]) or "none"
        raise refused("--mark", f"there is no opening {mark!r} in this job; it has {known}")
    return found


def studied(job: Job, opening: Opening) -> "Study":
    """Study one opening. Raises ProjectFileError where the plan refuses it, as a hinge set in too deep."""
    from configurator.study import study

    try:
        return study(opening, job.job)
    except ValueError as error:
        index = job.openings.index(opening)
        field = ".".join(filter(None, (f"openings[{index}]", getattr(error, "field", None))))
        raise refused(field, f"{error} (opening {opening.mark})") from None


def tallies_of(job: Job) -> "Sequence[Tally]":
    """Return the tally of every mark of a job, its progress shown."""
    from configurator.order.book import tally_job

    with progress_line("Working out openings") as tell:
        return tally_job(job, tell)


def refuse_ending(path: Path | None) -> None:
    """Raise ProjectFileError where a document cannot be written with the ending of that name."""
    from configurator.export.document import DOCUMENT_FORMATS

    if path is not None and path.suffix.lower() not in DOCUMENT_FORMATS:
        raise refused("--out", f"must end in {', '.join(DOCUMENT_FORMATS)}; {path.name} was given")


def written(document: "Document", path: Path | None) -> str:
    """Write a document and return where it is; with no file named, return it as text."""
    if path is None:
        from configurator.export.plain_text import document_text

        return document_text(document)
    from configurator.export.document import write_document

    with progress_line(f"Writing {path.name}") as tell:
        write_document(document, path, tell)
    return "\n".join((f"{path}: {document.title.lower()}", *document.notes, *document.office_notes)) + "\n"


@contextmanager
def progress_line(what: str) -> Iterator[Progress]:
    """Give a function that is told how far the work is, and shows it on the last line of a terminal.

    Nothing is shown where standard error is no terminal: no person looks on.
    """
    if not sys.stderr.isatty():
        yield unwatched
        return
    shown = False
    next_time = time.monotonic() + SHOWN_AFTER

    def tell(done: int, total: int) -> None:
        nonlocal shown, next_time
        if (now := time.monotonic()) >= next_time:
            shown, next_time = True, now + BETWEEN
            sys.stderr.write(f"{_CLEAR}{what}: {done:,} of {total:,}")
            sys.stderr.flush()

    try:
        yield tell
    finally:
        if shown:
            sys.stderr.write(_CLEAR)
            sys.stderr.flush()
