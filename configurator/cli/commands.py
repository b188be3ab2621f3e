"""The one way in: it finds a command, runs it, prints its text and its faults, and returns its status."""

import argparse
import contextlib
import io
import json
import os
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path

from configurator.cli.compare import add_compare_command
from configurator.cli.desktop import add_desktop_command
from configurator.cli.draw import add_draw_command
from configurator.cli.import_schedule import add_import_command
from configurator.cli.order import add_order_command
from configurator.cli.schedule import add_schedule_command
from configurator.cli.shared import BROKEN, DONE, NOT_WRITTEN, REFUSED, complain, harmless, over_its_own_input
from configurator.cli.window import add_window_command
from configurator.model.paths import vocabulary
from configurator.project_file import ProjectFileError

_LINES_TOLD, _LONGEST_TOLD = 12, 500
"""The places told of where the program itself failed, and the letters of why."""
COMMANDS = ("compare", "draw", "order", "schedule", "import", "desktop", "kinds")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    if words and words[0] not in COMMANDS and not words[0].startswith("-"):
        words.insert(0, "window")
    options = _parser().parse_args(words or ["window"])
    try:
        if (kept := _its_own_input(options)) is not None:
            complain(f"{kept} is what is read here, so nothing is written over it; give another name")
            return NOT_WRITTEN
        text, status = options.run(options)
        return _print(text, status)
    except ProjectFileError as error:
        for fault in error.faults:
            complain(str(fault))
        return REFUSED
    except KeyboardInterrupt:
        complain("stopped before the end")
        return NOT_WRITTEN
    except BrokenPipeError:
        # Whoever read our output has gone; there is nobody left to tell.
        with contextlib.suppress(OSError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_WRITTEN
    except OSError as error:
        complain(f"the output could not be written: {error.strerror or error}")
        return NOT_WRITTEN
    except Exception as error:
        return _tell_broken(error)


def _tell_broken(error: Exception) -> int:
    """Say what failed and where in the program, without anything of the user's machine."""
    complain("the program itself failed; files are written whole or not at all. For a report:")
    for frame in traceback.extract_tb(error.__traceback__)[-_LINES_TOLD:]:
        complain(f"{Path(frame.filename).name}, line {frame.lineno}, {frame.name}")
    complain(f"{type(error).__name__}: {error}"[:_LONGEST_TOLD])
    return BROKEN


def _its_own_input(options: argparse.Namespace) -> Path | None:
    """Return the file that a command would read and also write over; None where there is none."""
    given = vars(options)
    inputs = [given.get(name) for name in ("file", "prices", "schedule")]
    found = over_its_own_input(given.get("out"), inputs)
    return found or over_its_own_input(given.get("into"), [given.get("schedule")])


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="opening-configurator",
        description="Choose, prove and show the hinges of door openings. "
        "With no word, or with a project file alone, it opens the window.",
    )
    commands = parser.add_subparsers(required=True, metavar="{" + ",".join(COMMANDS) + "}")

    add_window_command(commands)
    add_compare_command(commands)
    add_draw_command(commands)
    add_order_command(commands)
    add_schedule_command(commands)
    add_import_command(commands)
    add_desktop_command(commands)

    kinds = commands.add_parser("kinds", help="list every word a project file may use")
    kinds.add_argument("--json", action="store_true", help="print them as data")
    kinds.set_defaults(run=_kinds)
    return parser


def _kinds(options: argparse.Namespace) -> tuple[str, int]:
    if options.json:
        return json.dumps(vocabulary()) + "\n", DONE
    return "".join(f"{name}: {' | '.join(words)}\n" for name, words in vocabulary().items()), DONE


def _print(text: str, status: int) -> int:
    if sys.stdout is None:  # whoever started us closed it
        return NOT_WRITTEN if text else status
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    sys.stdout.write(harmless(text))
    sys.stdout.flush()
    return status
