"""Where the program's own files lie, in a checkout and in a wheel, and where it remembers things."""

import os
import sys
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def resource_path(*parts: str) -> Path:
    """Return the path of something under `resources/` (or `demo_openings/`), wherever it was installed.

    A wheel carries both folders inside the package; a checkout has them beside it.
    Raises FileNotFoundError naming the resource when neither place has it.
    """
    roots = (_PACKAGE / "resources", _PACKAGE.parent / "resources", _PACKAGE.parent)
    for root in roots:
        path = root.joinpath(*parts)
        if path.exists():
            return path
    raise FileNotFoundError(f"the program's own file {'/'.join(parts)} is missing; install it again")


def state_folder() -> Path:
    """Return where the program remembers things: below XDG_STATE_HOME, or else where the system has it."""
    home = Path.home()
    if given := os.environ.get("XDG_STATE_HOME"):
        base = Path(given)
    elif sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local")
    elif sys.platform == "darwin":
        base = home / "Library" / "Application Support"
    else:
        base = home / ".local" / "state"
    return base / "opening-configurator"
