"""The dimensions about the pin, stacked as a drafter sets them.

They are all measured straight out of the frame. Each has its own column; the lines are carried on beyond the
barrel to a shoulder, the nearest column to the highest row, so that no line crosses a text and no text another.
"""

from dataclasses import dataclass

from configurator.drawing.hung import Hung
from configurator.drawing.lettering import text_width
from configurator.drawing.placing import Room, text_box
from configurator.drawing.primitives import Dimension, Point
from configurator.drawing.view import View
from configurator.units import Display

COLUMN = 10.0
"""From one column to the next, points."""
ROW = 1.5
"""From one row of text to the next, of the type size."""
_FIRST_COLUMN = 13.0
_FIRST_ROW = 12.0
PLAIN, AXIS = "A-ANNO-DIMS", "A-ANNO-DIMS-AXIS"


@dataclass(frozen=True, slots=True)
class Measured:
    """One length to be dimensioned: its two points in plan, what it is called, and its layer."""

    a: Point
    b: Point
    value: float
    name: str
    layer: str


def about_the_pin(hung: Hung) -> tuple[Measured, ...]:
    """Return what is measured about the pin, from the column nearest to it outward."""
    h, pin = hung.h, hung.pin
    top = (pin.x_p, pin.y_p + h.d_b / 2)
    frame = (0.0, 0.0)
    return (
        Measured((-h.F, -h.p), top, top[1] + h.p, "barrel past wall face", PLAIN),
        Measured(frame, top, top[1], "barrel past frame face", PLAIN),
        Measured((h.g_h, -h.i), pin.at, pin.o, "pin axis off door face", AXIS),
        Measured(frame, pin.at, pin.y_p, "pin axis off frame face", AXIS),
    )


def pin_dimensions(
    hung: Hung, view: View, display: Display, room: Room, size: float, toward_opening: bool
) -> tuple[Dimension, ...]:
    """Return the placed dimensions about the pin.

    `toward_opening` stacks them over the opening, else over the wall. Where the words do not fit beside the
    number, the number stands alone and the words are left to hovering; what has no room at all is left out.
    """
    measured = about_the_pin(hung)
    side = view.hand * (1.0 if toward_opening else -1.0)
    pin_x, top = view.to_sheet((hung.pin.x_p, hung.pin.y_p + hung.h.d_b / 2))
    start = pin_x + side * (hung.h.d_b / 2 * view.scale + _FIRST_COLUMN)
    placed = []
    for column, item in enumerate(measured):
        x = start + side * COLUMN * column
        row = top + _FIRST_ROW + (len(measured) - 1 - column) * ROW * size
        placed.append(_placed(item, (x, row), view, display, room, size, side))
    return tuple(dimension for dimension in placed if dimension is not None)


def _placed(
    item: Measured, corner: Point, view: View, display: Display, room: Room, size: float, side: float
) -> Dimension | None:
    """Place one dimension whose line turns into its shoulder at `corner`, on the sheet."""
    number = display.length(item.value)
    for text in (f"{number} {item.name}", number):
        width = text_width(text, size)
        middle = (corner[0] + side * (width / 2 + 2.0), corner[1] + 2.0)
        box = text_box(middle, text, size, "middle")
        if not room.is_free(box):
            continue
        room.take(box)
        x = view.to_plan(corner)[0]
        end = (corner[0] + side * (width + 4.0), corner[1])
        return Dimension(
            item.layer, item.a, item.b, (x, item.a[1]), (x, item.b[1]), text, view.to_plan(middle),
            item.name, item.value, 0.0, size, (view.to_plan(corner), view.to_plan(end)),
        )  # fmt: skip
    return None
