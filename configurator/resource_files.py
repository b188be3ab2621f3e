"""Where the tables, styles and demo jobs lie, in a checkout and in an installed wheel."""

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
