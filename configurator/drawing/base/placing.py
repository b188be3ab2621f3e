"""Finding room for lettering: rectangles on the sheet, taken in turn, that never lie over one another."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from configurator.drawing.base.lettering import ASCENT, DESCENT, text_width
from configurator.drawing.base.primitives import Anchor, Point
from configurator.drawing.base.view import Box

AIR = 1.5
"""Least room between two texts, points."""


def text_box(at: Point, text: str, size: float, anchor: Anchor = "start", bold: bool = False) -> Box:
    """Return what a level line of lettering covers, `at` being on its base line; points."""
    width = text_width(text, size, bold)
    left = at[0] - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * width
    return Box(left, at[1] - DESCENT * size, left + width, at[1] + ASCENT * size)


@dataclass(slots=True)
class Room:
    """What of a window is still free for lettering; points on the sheet."""

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
        """Keep the rectangle for whoever asked."""
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
