"""The command that puts the program among a Linux desktop's programs, or takes it away again.

What it puts there follows the desktops' own standards (desktop entry, icon theme and shared MIME-info of
freedesktop.org): an entry of the menu, the icon, and the type of a project file, told by how it begins.
"""

import argparse
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

from configurator.cli.shared import DONE, refused
from configurator.project_file import write_whole
from configurator.resource_files import resource_path

NAME = "opening-configurator"
TYPES = "application/x-opening-project+json;application/json;"
"""A desktop goes by the ending first: a project whose name ends in `.openings.json` opens here at a double
click, and any other JSON file can be opened with the program."""
ENTRY, ICON, KIND = (
    f"applications/{NAME}.desktop",
    f"icons/hicolor/scalable/apps/{NAME}.svg",
    "mime/packages/opening-project.xml",
)
_REBUILT = {"update-desktop-database": "applications", "update-mime-database": "mime"}
"""What tells the desktop of a change, where it is installed, and the folder that it looks through."""
_QUOTED = str.maketrans({letter: f"\\{letter}" for letter in '"`$\\'})


def add_desktop_command(commands: Any) -> None:
    """Add `desktop` to the command line's commands."""
    command = commands.add_parser(
        "desktop",
        help="put the program into the menu of a Linux desktop",
        epilog="example: opening-configurator desktop",
    )
    command.add_argument("--remove", action="store_true", help="take it away again")
    command.set_defaults(run=desktop_command)


def desktop_command(options: argparse.Namespace) -> tuple[str, int]:
    """Put the three files where the user's desktop looks for them, or remove them; return what was done."""
    if not sys.platform.startswith("linux"):
        raise refused("desktop", "is for the desktops of Linux; elsewhere start the program by its name")
    folder = data_folder()
    if options.remove:
        found = [folder / name for name in (ENTRY, ICON, KIND) if (folder / name).exists()]
        for each in found:
            each.unlink()
        said = [f"removed: {each}" for each in found] or [f"nothing of the program stands in {folder}"]
    else:
        said = [f"written: {_put(folder / name, data)}" for name, data in _files().items()]
    for command, part in _REBUILT.items():
        if (folder / part).is_dir() and (program := shutil.which(command)) is not None:
            subprocess.run([program, str(folder / part)], check=False, capture_output=True)
    return "".join(f"{line}\n" for line in said), DONE


def data_folder() -> Path:
    """Return where a user's own entries, icons and file types stand: XDG_DATA_HOME, or what stands for it."""
    given = os.environ.get("XDG_DATA_HOME", "")
    return Path(given) if os.path.isabs(given) else Path.home() / ".local" / "share"  # noqa: PTH117


def _files() -> dict[str, bytes]:
    return {
        ENTRY: _entry().encode(),
        ICON: resource_path("desktop", f"{NAME}.svg").read_bytes(),
        KIND: resource_path("desktop", "opening-project.xml").read_bytes(),
    }


def _entry() -> str:
    return (
        "[Desktop Entry]\n"
        "Type=Application\n"
        "Version=1.1\n"
        "Name=Opening Configurator\n"
        "GenericName=Door openings and their hinges\n"
        "Comment=Choose, prove, show and order the hinges of door openings\n"
        f"Exec={_command()} %f\n"
        f"Icon={NAME}\n"
        "Terminal=false\n"
        "Categories=Office;Engineering;\n"
        "Keywords=door;hinge;frame;hardware;schedule;\n"
        f"MimeType={TYPES}\n"
        "StartupNotify=true\n"
    )


def _command() -> str:
    """Return how the program is started from anywhere: as it was installed, or by the Python it runs on."""
    installed = Path(sys.executable).with_name(NAME)
    if os.access(installed, os.X_OK):
        return _argument(installed)
    return f"{_argument(Path(sys.executable))} -m configurator"


def _argument(path: Path) -> str:
    return '"' + str(path).translate(_QUOTED).replace("%", "%%") + '"'


def _put(path: Path, data: bytes) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, data)
    return path
