"""How wide lettering is on paper, and where there is room for it: rectangles that never lie over one another.

Needs no font at hand, so that the drawing can place text without any toolkit. Sizes are points.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, lru_cache

from configurator.drawing.base.primitives import Anchor, Point
from configurator.drawing.base.view import Box
from configurator.tables import resource_rows

ASCENT = 0.76
"""Height of capitals and figures with a little air, of the type size."""
DESCENT = 0.24
UNKNOWN = 0.6
"""Advance taken for a letter that is not in the table, of the type size."""
AIR = 1.5
"""Least room between two texts, points."""


@dataclass(frozen=True, slots=True)
class _AdvanceRow:
    """How wide a letter is, in thousandths of the type size; `character` is there to be read."""

    character: str | None
    code: int
    regular: float
    bold: float


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
    rows = resource_rows("style", "advances", _AdvanceRow)
    return {chr(row.code): (row.regular / 1000, row.bold / 1000) for row in rows}


def fitted(choices: Sequence[str], size: float, width: float) -> str:
    """Return the first wording that fits the width, else the last."""
    return next((words for words in choices if text_width(words, size) <= width), choices[-1])


def wrapped(words: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """Return a text in lines that fit the width, points; a line that begins anew in it begins anew here."""
    lines: list[str] = []
    for paragraph in words.split("\n"):
        line = ""
        for word in paragraph.split(" "):
            longer = f"{line} {word}".strip()
            if line and text_width(longer, size, bold) > width:
                lines.append(line)
                longer = word
            line = longer
        lines.append(line)
    return tuple(lines)


def text_box(at: Point, text: str, size: float, anchor: Anchor = "start", bold: bool = False) -> Box:
    """Return the box of a level line of lettering, `at` on its base line; points."""
    width = text_width(text, size, bold)
    left = at[0] - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * width
    return Box(left, at[1] - DESCENT * size, left + width, at[1] + ASCENT * size)


@dataclass(slots=True)
class Room:
    """The part of a window that is still free for lettering; points on the sheet."""

    window: Box
    taken: list[Box] = field(default_factory=list)

    def is_free(self, box: Box) -> bool:
        """Whether the rectangle lies in the window and clear of everything taken."""
        if not self.window.holds(box):
            return False
        # Asked some thousands of times a picture: the same as `overlaps`, without a call for each.
        left, right, low, high = box.left, box.right + AIR, box.bottom, box.top + AIR
        for other in self.taken:
            beside = left >= other.right + AIR or other.left >= right
            if not (beside or low >= other.top + AIR or other.bottom >= high):
                return False
        return True

    def take(self, box: Box) -> None:
        """Mark the rectangle as taken."""
        self.taken.append(box)

    def first_free(self, boxes: Iterable[Box]) -> Box | None:
        """Take and return the first of the rectangles that is free, None where none is."""
        for box in boxes:
            if self.is_free(box):
                self.take(box)
                return box
        return None

    def copy(self) -> "Room":
        """Return the same room, to be filled on its own."""
        return Room(self.window, list(self.taken))
