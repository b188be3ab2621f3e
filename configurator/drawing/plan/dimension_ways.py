"""Where the dimensions about the pin stand while the leaf swings: clear of it, on one side or the other."""

import math

from configurator.drawing.base.dimension_strokes import line_boxes
from configurator.drawing.base.lettering import Room
from configurator.drawing.base.primitives import Dimension, Point
from configurator.drawing.base.view import View
from configurator.drawing.plan.dimensions import (
    Lettered,
    is_clear,
    moving_on_sheet,
    pin_dimensions,
    text_boxes,
)
from configurator.drawing.plan.drawn_leaf import DrawnLeaf

_OVER_THE_WALL_BELOW = math.radians(135)
"""A leaf that stops short of this stands over the opening, so that dimensions go over the wall."""


def opens_flat(hung: DrawnLeaf) -> bool:
    """Whether the leaf opens far enough that the opening is free for dimensions."""
    return hung.reach >= _OVER_THE_WALL_BELOW


class Dimensions:
    """The dimensions about the pin of one panel in the ways they may stand, each placed when first needed.

    The usual way keeps clear of the leaf at the end of its swing, the others of the leaf half open.
    """

    def __init__(self, hung: DrawnLeaf, view: View, what: Lettered, room: Room) -> None:
        self._hung, self._view, self._what, self._room = hung, view, what, room
        flat = opens_flat(hung)
        half_open = [math.radians(degrees) for degrees in (125, 105)] if flat else []
        self._ways = [(flat, hung.reach), (not flat, min(hung.reach, math.pi / 2))]
        self._ways += [(flat, angle) for angle in half_open]
        self._placed: dict[int, tuple[Dimension, ...]] = {}

    def usual(self) -> tuple[Dimension, ...]:
        """Return them as they stand at the end of the swing."""
        return self.way(0)

    def way(self, number: int) -> tuple[Dimension, ...]:
        """Return them in one way; empty where there is no room for it."""
        if number not in self._placed:
            self._placed[number] = self._place(*self._ways[number])
        return self._placed[number]

    def at(self, angle: float) -> tuple[Dimension, ...]:
        """Return them in the first way whose texts and lines nothing that turns meets at an angle, radians.

        Where no way will do, extension lines may run under the leaf; else they are placed for that very
        angle, and with no room even so there are none.
        """
        shown = self._hung.shown_at(angle)
        moving = moving_on_sheet(self._hung, self._view, shown)
        for extensions in (True, False):
            for placed in map(self.way, range(len(self._ways))):
                if placed and self._is_clear_of(placed, moving, extensions):
                    return placed
        flat = opens_flat(self._hung)
        return self._place(flat, shown) or self._place(not flat, shown)

    def _is_clear_of(
        self, placed: tuple[Dimension, ...], moving: list[tuple[Point, ...]], extensions: bool
    ) -> bool:
        """Whether no text, and no line that counts, lies over the leaf or what it carries."""
        lines = line_boxes(placed, self._view, extensions)
        texts = [box.shrunk(-1.0) for box in text_boxes(placed, self._view)]
        return all(is_clear(box, moving, 0.0) for box in (*texts, *lines))

    def _place(self, toward_opening: bool, clear_of: float) -> tuple[Dimension, ...]:
        return pin_dimensions(self._hung, self._view, self._what, self._room, toward_opening, clear_of)
