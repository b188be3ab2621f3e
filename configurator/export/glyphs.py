"""Lettering as outlines: every letter is traced once, every line of text is put together from those.

The letters are those of DejaVu Sans, which comes with matplotlib; their advances are the drawing's own, so
that a text is exactly as wide as the room it was given.
"""

from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import matplotlib as mpl
import numpy as np
from matplotlib.ft2font import FT2Font, LoadFlags
from numpy.typing import NDArray

from configurator.drawing.lettering import UNKNOWN, letter_advances

_TRACED_AT = 100
NOT_IN_FONT = "\u25a1"
"""What stands for a letter that the font lacks."""
Outline = tuple[NDArray[Any], NDArray[Any]]
"""Vertices and path codes of an outline; the type size is 1 and the base line 0."""


@lru_cache(maxsize=1024)
def text_outline(text: str, bold: bool = False) -> Outline:
    """Return a line of text as one compound outline, starting at 0."""
    advances = letter_advances(bold)
    across = 0.0
    vertices, codes = [np.empty((0, 2))], [np.empty(0, np.uint8)]
    for letter in text:
        points, steps = _letter(letter, bold)
        vertices.append(points + np.array((across, 0.0)))
        codes.append(steps)
        across += advances.get(letter, UNKNOWN)
    return np.concatenate(vertices), np.concatenate(codes)


@cache
def _letter(letter: str, bold: bool) -> Outline:
    font = _font(bold)
    if not letter.isprintable():
        letter = " "
    elif not font.get_char_index(ord(letter)):
        letter = NOT_IN_FONT
    font.load_char(ord(letter), flags=LoadFlags.NO_HINTING)
    vertices, codes = font.get_path()
    return np.asarray(vertices, float) / _TRACED_AT, np.asarray(codes, np.uint8)


@cache
def _font(bold: bool) -> FT2Font:
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    font = FT2Font(str(Path(mpl.get_data_path(), "fonts", "ttf", name)))
    font.set_size(_TRACED_AT, 72)
    return font
