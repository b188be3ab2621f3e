"""The dimensions about the pin, stacked as a drafter sets them.

They are all measured straight out of the frame. Each has its own column; the lines are carried on beyond the
barrel to a shoulder, the nearest column to the highest row, so that no line crosses a text.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from configurator.drawing.base.clip import clip_polygon
from configurator.drawing.base.dimension_strokes import line_boxes
from configurator.drawing.base.lettering import Room, text_box, text_width
from configurator.drawing.base.primitives import Dimension, Point, rectangle, turned
from configurator.drawing.base.view import Box, View, box_around
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.shapes import Shape
from configurator.units import TOLERANCE, Display
from configurator.wording.dimension_words import (
    BOTH,
    FRAME,
    PIN_DOOR,
    PIN_FRAME,
    WALL,
    Measured,
    Wording,
    explained,
    wordings,
)

COLUMN = 9.0
"""From one column to the next, points."""
ROW = 1.5
"""From one row of text to the next, of the type size."""
_FIRST_COLUMN = 10.0
_FIRST_ROW = 12.0
_SHIFTS = tuple((higher, farther) for higher in (0.0, 16.0, 32.0) for farther in (0.0, 14.0, 40.0, 76.0))
"""How much higher and farther out a stack may stand, points, in the order of trying."""
_OFF_LEAF = 4.0
"""Texts keep so far off the leaf at the end of its swing, points."""
PLAIN, AXIS = "A-ANNO-DIMS", "A-ANNO-DIMS-AXIS"
_OVER_THE_WALL_BELOW = math.radians(135)
"""A leaf that stops short of this stands over the opening, so that dimensions go over the wall."""


def about_the_pin(hung: DrawnLeaf) -> tuple[Measured, ...]:
    """Return the lengths measured about the pin, from the column nearest to it outward.

    Where frame and wall are flush, the barrel stands equally far out of both and is dimensioned once.
    """
    h, pin = hung.h, hung.pin
    top = (pin.x_p, pin.y_p + h.d_b / 2)
    frame = (0.0, 0.0)
    # A wall that stands out past the frame is level with the open leaf: its line starts where that ends.
    wall = -h.F if h.p >= 0.0 else pin.x_p
    barrel = (
        (Measured(frame, top, top[1], BOTH, PLAIN),)
        if abs(h.p) < TOLERANCE
        else (
            Measured((wall, -h.p), top, top[1] + h.p, WALL, PLAIN),
            Measured(frame, top, top[1], FRAME, PLAIN),
        )
    )
    return (
        *(barrel if hung.candidate.has_barrel else ()),
        Measured((h.g_h, -h.i), pin.at, pin.o, PIN_DOOR, AXIS),
        Measured(frame, pin.at, pin.y_p, PIN_FRAME, AXIS),
    )


@dataclass(frozen=True, slots=True)
class Stack:
    """One arrangement of the columns: where they start, which way they go, how much text they have."""

    start: float
    base: float
    side: float
    texts: tuple[str, ...]
    size: float

    def corner(self, column: int) -> Point:
        """Return where a column's line turns into its shoulder."""
        row = self.base + (len(self.texts) - 1 - column) * ROW * self.size
        return (self.start + self.side * COLUMN * column, row)

    def middle(self, column: int) -> Point:
        """Return the middle of a column's text, on its base line."""
        x, y = self.corner(column)
        return (x + self.side * (text_width(self.texts[column], self.size) / 2 + 2.0), y + 2.0)

    def boxes(self) -> Iterator[Box]:
        """Yield the boxes of the texts, the farthest out first: most ways fail at that one."""
        for n in reversed(range(len(self.texts))):
            yield text_box(self.middle(n), self.texts[n], self.size, "middle")


@dataclass(frozen=True, slots=True)
class Lettered:
    """The lengths about the pin of one panel, their wordings, and the text of each on hovering."""

    measured: tuple[Measured, ...]
    wordings: tuple[Wording, ...]
    explained: tuple[str, ...]


def lettered(hung: DrawnLeaf, display: Display, size: float, plain: bool) -> Lettered:
    """Return the lengths about the pin with the trade's words or plain ones; type size in points."""
    measured = about_the_pin(hung)
    told = tuple(explained(item, display) for item in measured)
    return Lettered(measured, wordings(measured, display, size, plain), told)


def pin_dimensions(
    hung: DrawnLeaf, view: View, what: Lettered, room: Room, toward_opening: bool, clear_of: float
) -> tuple[Dimension, ...]:
    """Return the placed dimensions about the pin, clear of what stands and what turns at `clear_of` radians.

    `toward_opening` stacks them over the opening, else over the wall. Where the words do not fit beside the
    numbers they are shortened, and at last left to hovering; with no room at all there are none.
    """
    moving = moving_on_sheet(hung, view, clear_of)
    drawn = [*_things_on_sheet(hung, view), *moving]
    for stack in _stacks(hung, what.wordings, view, toward_opening):
        if not all(room.is_free(box) and is_clear(box, drawn) for box in stack.boxes()):
            continue
        placed = tuple(_dimension(what, stack, column, view) for column in range(len(what.measured)))
        lines = line_boxes(placed, view, extensions=False)
        if all(is_clear(box, moving, 0.0) and not _lies_over(box, room.taken) for box in lines):
            return placed
    return ()


def _lies_over(line: Box, lettered: Iterable[Box]) -> bool:
    """Whether a line runs through other lettering, or along another line."""
    around = line.shrunk(-0.5)
    return any(around.overlaps(other) for other in lettered)


def is_clear(box: Box, drawn: Iterable[Sequence[Point]], off: float = _OFF_LEAF) -> bool:
    """Whether lettering in the rectangle keeps off every outline drawn; points on the sheet."""
    around = box.shrunk(-off)
    return not any(
        box_around(outline).overlaps(around) and clip_polygon(outline, around) for outline in drawn
    )


def leaf_on_sheet(hung: DrawnLeaf, view: View, angle: float) -> tuple[Point, ...]:
    """Return the outline of the leaf at an angle, radians, on the sheet."""
    return tuple(view.to_sheet(point) for point in turned(leaf_corners(hung.h), hung.pin.at, angle))


def moving_on_sheet(hung: DrawnLeaf, view: View, angle: float) -> list[tuple[Point, ...]]:
    """Return the outlines of the leaf and of all that it carries at an angle, radians, on the sheet."""
    carried = (turned(_square(shape), hung.pin.at, angle) for shape in hung.hardware)
    things = [tuple(map(view.to_sheet, outline)) for outline in carried]
    return [leaf_on_sheet(hung, view, angle), *things]


def _square(shape: Shape) -> tuple[Point, ...]:
    """Return the corners of a box, or of the square about a round thing."""
    if not shape.radius:
        return shape.points
    (x, y), r = shape.points[0], shape.radius
    return rectangle(x - r, x + r, y - r, y + r)


def text_boxes(dimensions: Iterable[Dimension], view: View) -> list[Box]:
    """Return the boxes of the texts of placed dimensions on the sheet."""
    return [text_box(view.to_sheet(one.text_at), one.text, one.size, "middle") for one in dimensions]


def _things_on_sheet(hung: DrawnLeaf, view: View) -> list[tuple[Point, ...]]:
    shapes = [shape for thing in hung.standing for shape in thing.shapes if not shape.radius]
    return [tuple(view.to_sheet(point) for point in shape.points) for shape in shapes]


def _stacks(hung: DrawnLeaf, choices: Sequence[Wording], view: View, toward_opening: bool) -> Iterator[Stack]:
    """Yield the ways to try: all the words before fewer, and near the pin before farther out."""
    side = view.hand * (1.0 if toward_opening else -1.0)
    radius = hung.h.d_b / 2
    x, top = view.to_sheet((hung.pin.x_p, hung.pin.y_p + radius))
    for words in choices:
        for higher, farther in _SHIFTS:
            start = x + side * (radius * view.scale + _FIRST_COLUMN + farther)
            yield Stack(start, top + _FIRST_ROW + higher, side, words.texts, words.size)


def _dimension(what: Lettered, stack: Stack, column: int, view: View) -> Dimension:
    item, corner, text = what.measured[column], stack.corner(column), stack.texts[column]
    end = (corner[0] + stack.side * (text_width(text, stack.size) + 4.0), corner[1])
    x = view.to_plan(corner)[0]
    return Dimension(
        item.layer, item.a, item.b, (x, item.a[1]), (x, item.b[1]), text, view.to_plan(stack.middle(column)),
        item.name, item.value, 0.0, stack.size, (view.to_plan(corner), view.to_plan(end)),
        what.explained[column],
    )  # fmt: skip


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
        self._placed: dict[tuple[int, int], tuple[Dimension, ...]] = {}
        self._last: tuple[tuple[float, int], tuple[Dimension, ...]] = ((-1.0, 0), ())

    def usual(self) -> tuple[Dimension, ...]:
        """Return them as they stand at the end of the swing."""
        return self.way(0)

    def way(self, number: int, shorter: int = 0) -> tuple[Dimension, ...]:
        """Return them in one way; empty where there is no room for it.

        So many of the fullest wordings are passed over as `shorter` says.
        """
        if (number, shorter) not in self._placed:
            self._placed[number, shorter] = self._place(*self._ways[number], shorter)
        return self._placed[number, shorter]

    def at(self, angle: float, shorter: int = 0) -> tuple[Dimension, ...]:
        """Return them in the first way whose texts and lines nothing that turns meets at an angle, radians.

        Where no way will do, extension lines may run under the leaf; else they are placed for that very
        angle, and with no room even so there are none.
        """
        if self._last[0] != (angle, shorter):
            self._last = (angle, shorter), self._at(angle, shorter)
        return self._last[1]

    def wording_at(self, angle: float, shorter: int = 0) -> int:
        """Return which of the wordings they have at an angle, 0 the fullest; `shorter` without any."""
        placed = self.at(angle, shorter)
        lettered = tuple(one.text for one in placed), placed[0].size if placed else 0.0
        known = ((one.texts, one.size) for one in self._what.wordings)
        return next(
            (n for n, one in enumerate(known) if placed and n >= shorter and one == lettered), shorter
        )

    def _at(self, angle: float, shorter: int) -> tuple[Dimension, ...]:
        shown = self._hung.shown_at(angle)
        moving = moving_on_sheet(self._hung, self._view, shown)
        for extensions in (True, False):
            for number in range(len(self._ways)):
                placed = self.way(number, shorter)
                if placed and self._is_clear_of(placed, moving, extensions):
                    return placed
        flat = opens_flat(self._hung)
        return self._place(flat, shown, shorter) or self._place(not flat, shown, shorter)

    def _is_clear_of(
        self, placed: tuple[Dimension, ...], moving: list[tuple[Point, ...]], extensions: bool
    ) -> bool:
        """Whether no text, and no line that counts, lies over the leaf or what it carries."""
        lines = line_boxes(placed, self._view, extensions)
        texts = [box.shrunk(-1.0) for box in text_boxes(placed, self._view)]
        return all(is_clear(box, moving, 0.0) for box in (*texts, *lines))

    def _place(self, toward_opening: bool, clear_of: float, shorter: int) -> tuple[Dimension, ...]:
        what = replace(self._what, wordings=self._what.wordings[shorter:])
        return pin_dimensions(self._hung, self._view, what, self._room, toward_opening, clear_of)
