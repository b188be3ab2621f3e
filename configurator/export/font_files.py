"""Where the letters of every sheet come from: DejaVu Sans, which comes with matplotlib."""

from pathlib import Path

import matplotlib as mpl

FONT, BOLD = "DejaVuSans", "DejaVuSans-Bold"


def font_file(name: str) -> Path:
    """Return the TrueType file of a face, `FONT` or `BOLD`."""
    return Path(mpl.get_data_path()) / "fonts" / "ttf" / f"{name}.ttf"
