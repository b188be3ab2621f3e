"""The command line: open the window, compare, draw, order, schedule, and list the accepted words.

Exit status: 0 all evaluated; 1 a finding of severity error, with `--strict`; 2 the input was refused (nothing
on standard output, one line a fault on standard error); 3 the output could not be written.
Nothing here imports Qt except the window itself, and only when it opens.
"""

import argparse
import contextlib
import io
import json
import os
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.chosen import chosen, refused, studied
from configurator.draw_command import add_draw_command, write_picture
from configurator.exit_status import DONE, FOUND_ERRORS, NOT_WRITTEN, REFUSED
from configurator.import_command import add_import_command
from configurator.model import Job
from configurator.model.words import VOCABULARY
from configurator.order_commands import add_order_commands
from configurator.project_file import ProjectFileError, load

if TYPE_CHECKING:
    from configurator.rules.finding import Finding
    from configurator.rules.how_sure import HowSure
    from configurator.study import Study

COMMANDS = ("compare", "draw", "order", "schedule", "import", "kinds")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    if words and words[0] not in COMMANDS and not words[0].startswith("-"):
        words.insert(0, "window")
    options = _parser().parse_args(words or ["window"])
    try:
        text, status = options.run(options)
        return _print(text, status)
    except ProjectFileError as error:
        for fault in error.faults:
            _complain(str(fault))
        return REFUSED
    except KeyboardInterrupt:
        _complain("stopped before the end")
        return NOT_WRITTEN
    except BrokenPipeError:
        # Whoever read our output has gone; there is nobody left to tell.
        with contextlib.suppress(OSError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_WRITTEN
    except OSError as error:
        _complain(f"the output could not be written: {error.strerror or error}")
        return NOT_WRITTEN


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="opening-configurator",
        description="Choose, prove and show the hinges of door openings. "
        "With no word, or with a project file alone, it opens the window.",
    )
    commands = parser.add_subparsers(required=True, metavar="{" + ",".join(COMMANDS) + "}")

    window = commands.add_parser("window")
    window.add_argument("file", nargs="?", type=Path, metavar="FILE")
    window.set_defaults(run=_window)

    compare = commands.add_parser("compare", help="print every opening's widths side by side")
    compare.add_argument("file", type=Path, metavar="FILE")
    compare.add_argument("--mark", help="only the opening with this mark")
    compare.add_argument("--json", action="store_true", help="print results as data")
    compare.add_argument("--widths", action="store_true", help="add what every stock hinge width would do")
    compare.add_argument("--strict", action="store_true", help="exit with 1 when a finding is an error")
    compare.add_argument("--sure", action="store_true", help="add how sure each is, tolerances considered")
    compare.set_defaults(run=_compare)

    add_draw_command(commands)
    add_order_commands(commands)
    add_import_command(commands)

    kinds = commands.add_parser("kinds", help="list every word a project file may use")
    kinds.add_argument("--json", action="store_true", help="print them as data")
    kinds.set_defaults(run=_kinds)
    return parser


def _compare(options: argparse.Namespace) -> tuple[str, int]:
    job = load(options.file)
    openings = chosen(job, options.mark)
    studies = [studied(job, opening) for opening in openings]
    errors = any(finding.severity == "error" for each in studies for finding in each.all_findings())
    status = FOUND_ERRORS if options.strict and errors else DONE
    whole = _job_findings(job, studies) if options.mark is None else ()
    sure = [_how_sure(job, each) if options.sure else () for each in studies]
    if options.json:
        data = {
            "openings": [
                _with_sure(_as_data(job, each, options.widths), one)
                for each, one in zip(studies, sure, strict=True)
            ],
            "job_findings": [finding.as_data() for finding in whole],
        }
        return json.dumps(data, allow_nan=False) + "\n", status
    from configurator.export.table_text import job_as_text, studies_as_text

    widths = _widths_text(job, studies) if options.widths else ""
    said = _sure_text(studies, sure) if options.sure else ""
    return studies_as_text(studies) + widths + said + job_as_text(whole), status


def _how_sure(job: Job, study: "Study") -> "tuple[HowSure, ...]":
    """Work out how sure every candidate is; tolerances that leave no door are refused as input."""
    from configurator.study.how_sure import all_how_sure

    try:
        return all_how_sure(study)
    except ValueError as error:
        field = f"openings[{job.openings.index(study.opening)}].tolerances"
        raise refused(field, f"{error} (opening {study.opening.mark})") from None


def _with_sure(data: dict[str, Any], sure: "Sequence[HowSure]") -> dict[str, Any]:
    """Add to every candidate how sure it is, where that was asked for."""
    if sure:
        from configurator.study.how_sure import sure_data

        for candidate, one in zip(data["candidates"], sure, strict=True):
            candidate["how_sure"] = sure_data(one)
    return data


def _sure_text(studies: "list[Study]", sure: "Sequence[Sequence[HowSure]]") -> str:
    from configurator.export.sure_text import sure_as_text

    return "".join(sure_as_text(each.opening.mark, one) for each, one in zip(studies, sure, strict=True))


def _as_data(job: Job, study: "Study", with_widths: bool) -> dict[str, Any]:
    if not with_widths:
        return study.as_data()
    from configurator.study.inverse import widths_of
    from configurator.study.widths_data import widths_as_data

    return study.as_data() | {"widths": [widths_as_data(leaf) for leaf in widths_of(study, job.job)]}


def _widths_text(job: Job, studies: "list[Study]") -> str:
    from configurator.export.widths_text import widths_as_text
    from configurator.study.inverse import widths_of

    return "".join(widths_as_text(each.opening.mark, widths_of(each, job.job)) for each in studies)


def _job_findings(job: Job, studies: "list[Study]") -> "tuple[Finding, ...]":
    from configurator.study import job_findings

    return job_findings(studies, job.job)


def _kinds(options: argparse.Namespace) -> tuple[str, int]:
    if options.json:
        return json.dumps(VOCABULARY) + "\n", DONE
    return "".join(f"{name}: {' | '.join(words)}\n" for name, words in VOCABULARY.items()), DONE


def _window(options: argparse.Namespace) -> tuple[str, int]:
    from configurator.ui.environment import missing_library_sentence, why_no_window

    if (reason := why_no_window()) is not None:
        return _without_window(options.file, reason)
    try:
        from configurator.ui.app import run_window
    except ImportError as error:
        if (sentence := missing_library_sentence(error)) is None:
            raise
        return _without_window(options.file, sentence)
    return "", run_window(options.file)


def _without_window(path: Path | None, reason: str) -> tuple[str, int]:
    """Do the main job without a screen: print the comparison, write the first picture, say where and why."""
    job = load(path) if path is not None else None  # of a bad file nothing else is said
    _complain(reason)
    if path is None or job is None:
        _complain("name a project file and its comparison is printed here instead")
        return "", DONE
    from configurator.export.table_text import studies_as_text

    if not job.openings:
        _complain(f"{path.name} has no openings, so there is nothing to compare or to draw")
        return "", DONE
    text = studies_as_text([studied(job, opening) for opening in job.openings])
    first = job.openings[0]
    picture = _writable_folder() / f"{path.stem}-{_file_name(first.mark)}.png"
    write_picture(job, first, picture, None)
    return f"{text}\nPicture of {first.mark}: {picture} (written because there is no window)\n", DONE


def _writable_folder() -> Path:
    here = Path.cwd()
    return here if os.access(here, os.W_OK) else Path(tempfile.gettempdir())


def _file_name(mark: str) -> str:
    return "".join(c if c.isalnum() or c in "-_" else "_" for c in mark)[:60]


def _print(text: str, status: int) -> int:
    if sys.stdout is None:  # whoever started us closed it
        return NOT_WRITTEN if text else status
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    sys.stdout.write(text)
    sys.stdout.flush()
    return status


def _complain(line: str) -> None:
    if sys.stderr is not None:
        print(" ".join(line.split()), file=sys.stderr)
