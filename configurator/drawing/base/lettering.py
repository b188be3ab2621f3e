"""How wide a line of lettering is on paper, from the advance widths of its letters.

Needs no font at hand, so that the drawing can place text without any toolkit. Sizes are points.
"""

import csv
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache

from configurator.resource_files import resource_path

ASCENT = 0.76
"""Height of capitals and figures with a little air, of the type size."""
DESCENT = 0.24
UNKNOWN = 0.6
"""Advance taken for a letter that is not in the table, of the type size."""


@lru_cache(maxsize=2048)
def text_width(text: str, size: float, bold: bool = False) -> float:
    """Return the width of one line, points."""
    advances = letter_advances(bold)
    return size * sum(advances.get(letter, UNKNOWN) for letter in text)


@cache
def letter_advances(bold: bool) -> Mapping[str, float]:
    """Return each letter's advance, of the type size."""
    return {letter: wide[bold] for letter, wide in _rows().items()}


@cache
def _rows() -> Mapping[str, tuple[float, float]]:
    """Return each letter's advances, regular and bold."""
    lines = resource_path("style", "advances.csv").read_text(encoding="utf-8").splitlines()
    rows = csv.reader(line for line in lines if not line.startswith("# "))
    next(rows)
    return {letter: (float(regular) / 1000, float(bold) / 1000) for letter, _, regular, bold in rows}


def fitted(choices: Sequence[str], size: float, width: float) -> str:
    """Return the first wording that fits the width, else the last."""
    return next((words for words in choices if text_width(words, size) <= width), choices[-1])
