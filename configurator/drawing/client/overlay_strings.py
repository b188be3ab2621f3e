"""The dimensions beside two overlaid hinges: a string for each, counted from the frame face."""

import math
from collections.abc import Sequence

from configurator.drawing.base.primitives import Anchor, Point, Primitive, Text
from configurator.drawing.base.view import View
from configurator.drawing.pages.dimension_string import Span, heights_of, upright_string, width_of
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.units import Display

_BETWEEN = 12.0
"""From the texts of one string to the line of the next, points."""
_EDGE = 6.0
_HEADING = 6.5
_OVER = 13.0
_FRAME_FACE: Point = (0.0, 0.0)
_FLAT, _SQUARE = math.radians(135), math.radians(89.9)
_CROSS = 0.25
"""Room for the mark of the pin axis, inches."""


def spans_of(hung: DrawnLeaf, turn: float, words: bool) -> tuple[Span, ...]:
    """Return what is measured of one width, straight out from the frame face; `words` says what each is."""
    pin, radius = hung.pin, hung.h.d_b / 2
    found = [
        ((pin.x_p, pin.y_p), "pin axis off frame face", "pin axis"),
        ((pin.x_p, pin.y_p + radius), "barrel past frame face", "barrel"),
    ]
    if hung.shown_at(turn) == math.pi:
        clear = 2 * pin.o - hung.h.i
        found.append(((2 * pin.x_p - hung.h.g_h, clear), "clear past frame face at 180", "door face"))
    return tuple(Span(_FRAME_FACE, at, name, words=short if words else "") for at, name, short in found)


def strings_go_over_opening(hungs: Sequence[DrawnLeaf], turn: float) -> bool:
    """Whether the strings stand over the opening: no leaf does, or the wall has something in the way."""
    least = min(hung.shown_at(turn) for hung in hungs)
    greatest = max(hung.shown_at(turn) for hung in hungs)
    stands = any(thing.met for hung in hungs for thing in hung.standing)
    touches = any(hung.contact is not None and hung.contact[0] < 0.0 for hung in hungs)
    return greatest >= _FLAT or (least >= _SQUARE and (stands or touches))


def start_of(hung: DrawnLeaf, turn: float) -> float:
    """Return how far into the opening hinge and open leaf reach, inches."""
    pin = hung.pin
    barrel = pin.x_p + hung.h.d_b / 2 + _CROSS
    return barrel if hung.shown_at(turn) >= _FLAT else max(barrel, pin.x_p + pin.o + hung.h.T)


def start_of_wall(hungs: Sequence[DrawnLeaf]) -> float:
    """Return how far over the wall frame and barrel reach, inches."""
    return max(hung.h.F for hung in hungs)


def room_of(strings: Sequence[Sequence[Span]], display: Display) -> float:
    """Return the width the strings take with their texts, points."""
    return 2 * _EDGE + sum(width_of(spans, display) + _BETWEEN for spans in strings)


def strings_beside(
    strings: Sequence[Sequence[Span]],
    headings: Sequence[str],
    start: float,
    out: float,
    view: View,
    display: Display,
) -> tuple[Primitive, ...]:
    """Return the strings outward from `start` points, to the right (`out` 1) or left (-1), each headed."""
    found: list[Primitive] = []
    lines: list[float] = []
    tops = [height for spans in strings for height in heights_of(spans, view)]
    x = start + out * _EDGE
    for number, spans in enumerate(strings):
        beyond = [height for later in strings[number + 1 :] for height in heights_of(later, view)]
        placed = upright_string(spans, x, out, view, display, beyond, running=True)
        found += placed.primitives
        tops += [box.top for box in placed.boxes]
        lines.append(x)
        x += out * (width_of(spans, display) + _BETWEEN)
    return (*found, *_headed(headings, lines, max(tops) + _OVER, out, view))


def _headed(
    headings: Sequence[str], lines: Sequence[float], base: float, out: float, view: View
) -> list[Text]:
    """Over each string the width it belongs to, all level."""
    places = [view.to_plan((x + out * 4.0, base)) for x in lines]
    anchor: Anchor = "start" if out > 0 else "end"
    return [
        Text("A-ANNO-NOTE", at, words, _HEADING, anchor) for at, words in zip(places, headings, strict=True)
    ]
