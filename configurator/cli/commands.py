"""The one way in: it finds a command, runs it, prints its text and its faults, and returns its status."""

import argparse
import contextlib
import difflib
import io
import json
import os
import re
import sys
import tempfile
import traceback
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any, NoReturn

from configurator.cli.compare import add_compare_command
from configurator.cli.desktop import add_desktop_command
from configurator.cli.draw import add_draw_command
from configurator.cli.import_schedule import add_import_command
from configurator.cli.model import add_model_commands
from configurator.cli.order import add_order_command
from configurator.cli.practice import add_practice_command
from configurator.cli.schedule import add_schedule_command
from configurator.cli.schema import add_schema_command
from configurator.cli.shared import (
    BROKEN,
    DONE,
    NOT_WRITTEN,
    REFUSED,
    STANDARD,
    complain,
    harmless,
    over_its_own_input,
    refused,
)
from configurator.cli.trace import add_trace_command
from configurator.cli.window import add_window_command
from configurator.model.paths import vocabulary
from configurator.project_file import ProjectFileError

_LINES_TOLD, _LONGEST_TOLD = 12, 500
"""The places told of where the program itself failed, and the letters of why."""
COMMANDS = (
    "compare", "draw", "order", "schedule", "import", "trace", "export-model", "topics", "practice",
    "desktop", "kinds", "schema", "completion",
)  # fmt: skip
SHELLS = ("bash", "zsh")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    if words and words[0] not in COMMANDS and not words[0].startswith("-"):
        if (meant := _mistyped(words[0])) is not None:
            complain(f"there is no command {words[0]!r}; did you mean {meant}?")
            return REFUSED
        words.insert(0, "window")
    # Alone it stands for errors; what follows it may be the file.
    words = ["--strict=errors" if word == "--strict" else word for word in words]
    options = _parser().parse_args(words or ["window"])
    try:
        if (kept := _its_own_input(options)) is not None:
            complain(f"{kept} is what is read here, so nothing is written over it; give another name")
            return NOT_WRITTEN
        if vars(options).get("out") == STANDARD:
            return _to_standard_output(options)
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


def _mistyped(word: str) -> str | None:
    """Return the command that a first word was meant to be; None where it may well be a file."""
    if Path(word).suffix or Path(word).exists():
        return None
    return next(iter(difflib.get_close_matches(word, COMMANDS, 1)), None)


def _to_standard_output(options: argparse.Namespace) -> int:
    """Run a command whose file goes to standard output; what it says goes to standard error."""
    if not options.format:
        raise refused("--format", "must be given where --out is -, as --format pdf")
    if vars(options).get("json"):
        raise refused("--json", "goes to standard output too; leave out --out -")
    with tempfile.TemporaryDirectory() as folder:
        options.out = Path(folder) / f"standard-output.{options.format.lower().lstrip('.')}"
        text, status = options.run(options)
        written: bytes = options.out.read_bytes()
    for line in text.replace(str(options.out), "-").splitlines():
        complain(line)
    sys.stdout.buffer.write(written)
    sys.stdout.flush()
    return int(status)


class _Parser(argparse.ArgumentParser):
    """A parser that refuses as everything here does: one line, the option first."""

    def error(self, message: str) -> NoReturn:
        complain(f"{_in_our_words(message)} ({self.prog} --help shows an example)")
        self.exit(REFUSED)


def _in_our_words(message: str) -> str:
    """Return what the parser of options says, as a refusal: the option, a colon, what is wrong."""
    for pattern, words in (
        (r"the following arguments are required: (.*)", r"\1: must be given"),
        (r"one of the arguments (.*) is required", r"\1: one of them must be given"),
        (r"unrecognized arguments: (.*)", r"\1: there is no such option"),
        (r"argument (\S+): (.*)", r"\1: \2"),
    ):
        if found := re.fullmatch(pattern, message, re.DOTALL):
            return found.expand(words)
    return message


class _Version(argparse.Action):
    """Print the version and end; it is looked up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: Any) -> None:
        print("opening-configurator", version("opening-configurator"))
        parser.exit(DONE)


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
    inputs = [given.get(name) for name in ("file", "prices", "schedule", "model")]
    found = over_its_own_input(given.get("out"), inputs)
    return found or over_its_own_input(given.get("into"), [given.get("schedule")])


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="opening-configurator",
        description="Choose, prove and show the hinges of door openings. "
        "With no word, or with a project file alone, it opens the window.",
        epilog="example: opening-configurator compare demo_openings/kestrel_point.json --mark 112A",
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="print the version and end")
    commands = parser.add_subparsers(required=True, metavar="{" + ",".join(COMMANDS) + "}")

    add_window_command(commands)
    add_compare_command(commands)
    add_draw_command(commands)
    add_order_command(commands)
    add_schedule_command(commands)
    add_import_command(commands)
    add_trace_command(commands)
    add_model_commands(commands)
    add_practice_command(commands)
    add_desktop_command(commands)

    kinds = commands.add_parser(
        "kinds",
        help="list every word a project file may use",
        epilog="example: opening-configurator kinds --json",
    )
    kinds.add_argument("--json", action="store_true", help="print them as data")
    kinds.set_defaults(run=_kinds)
    add_schema_command(commands)
    completion = commands.add_parser(
        "completion",
        help="print the script by which a shell completes these commands",
        epilog="example: opening-configurator completion bash > ~/.local/share/bash-completion/completions/"
        "opening-configurator",
    )
    completion.add_argument("shell", choices=SHELLS)
    completion.set_defaults(run=lambda options: (_completion(parser, options.shell), DONE))
    return parser


def _completion(parser: argparse.ArgumentParser, shell: str) -> str:
    import shtab

    _complete_files(parser)
    return shtab.complete(parser, shell)


def _complete_files(parser: argparse.ArgumentParser) -> None:
    """Let every option that takes a file be completed with files."""
    import shtab

    for action in parser._actions:  # argparse has no other way to list them
        if isinstance(action, argparse._SubParsersAction):
            for command in action.choices.values():
                _complete_files(command)
        elif action.type is Path:
            action.complete = shtab.FILE  # type: ignore[attr-defined]


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
