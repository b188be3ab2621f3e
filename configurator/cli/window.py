"""The command that opens the window; without a screen it does the main job in the terminal."""

import argparse
import os
import tempfile
from pathlib import Path
from typing import Any

from configurator.cli.draw import write_picture
from configurator.cli.shared import DONE, complain, studied
from configurator.project_file import load


def add_window_command(commands: Any) -> None:
    """Add `window` to the command line's commands: what is done where no command is named."""
    window = commands.add_parser("window", epilog="example: opening-configurator job.json")
    window.add_argument("file", nargs="?", type=Path, metavar="FILE")
    window.set_defaults(run=_window)


def _window(options: argparse.Namespace) -> tuple[str, int]:
    from configurator.ui.window.environment import load_qt_quickly, missing_library_sentence, why_no_window

    if (reason := why_no_window()) is not None:
        return _without_window(options.file, reason)
    try:
        load_qt_quickly()
        from configurator.ui.app import run_window
    except ImportError as error:
        if (sentence := missing_library_sentence(error)) is None:
            raise
        return _without_window(options.file, sentence)
    return "", run_window(options.file)


def _without_window(path: Path | None, reason: str) -> tuple[str, int]:
    """Do the main job without a screen: print the comparison, write the first picture, say where and why."""
    job = load(path) if path is not None else None  # of a bad file nothing else is said
    complain(reason)
    if path is None or job is None:
        complain("name a project file and its comparison is printed here instead")
        return "", DONE
    from configurator.export.plain_text import studies_as_text

    if not job.openings:
        complain(f"{path.name} has no openings, so there is nothing to compare or to draw")
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
