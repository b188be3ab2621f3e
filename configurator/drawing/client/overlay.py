"""One leaf on two hinge widths, laid over one another: what both have once, what only one has hatched.

Inches, in the axes of the plan; the narrower hinge is dashed, the wider one drawn out. What only one takes up
is worked out exactly: convex outlines less one another, and circles.
"""

import math
from collections.abc import Sequence
from typing import Literal

from configurator.drawing.base.primitives import (
    Anchor,
    Arc,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Symbol,
    Text,
    turned,
)
from configurator.drawing.base.view import View
from configurator.drawing.pages.dimension_string import Span, heights_of, upright_string, width_of
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.jamb import hinge_jamb, wall_beside
from configurator.drawing.plan.leaf import frame_leaf
from configurator.drawing.plan.standing_things import door_stop_parts, standing_things
from configurator.geometry.leaf_corners import leaf_corners
from configurator.units import TOLERANCE, Display

NARROWER, WIDER = "narrower", "wider"
"""The fills of what only one of the two takes up."""
_THINNEST = 1.0
_LINES = {NARROWER: "A-DOOR-NARW", WIDER: "A-DOOR"}
_HARDWARE = {NARROWER: "A-DOOR-NARW", WIDER: "A-DOOR-HDWR"}
_HATCHES = {NARROWER: "A-DOOR-PATT-NARW", WIDER: "A-DOOR-PATT-WIDE"}
_ONLY = {
    NARROWER: "where the door is on the narrower hinge only",
    WIDER: "where the door is on the wider hinge only",
}
_BETWEEN = 12.0
"""From the texts of one string to the line of the next, points."""
_EDGE = 6.0
_HEADING = 6.5
_OVER = 13.0
_FRAME_FACE: Point = (0.0, 0.0)
_FLAT, _SQUARE = math.radians(135), math.radians(89.9)
_CROSS = 0.25
"""Room for the mark of the pin axis, inches."""
Outline = tuple[Point, ...]
_STEPS = 48
"""Chords of a round outline: the hatch in it shows none of them."""


def standing_parts(hung: DrawnLeaf, view: View) -> tuple[Primitive, ...]:
    """Return wall, what stands along it, and the frame: the same for both widths."""
    left = view.plan_window().left - 1.0
    return (
        *wall_beside(hung, left),
        *standing_things(hung),
        *door_stop_parts(hung),
        *hinge_jamb(hung, _THINNEST / view.scale),
    )


def overlaid(narrower: DrawnLeaf, wider: DrawnLeaf | None, turn: float) -> tuple[Primitive, ...]:
    """Return both leaves, each as far open as it goes up to `turn` radians, with barrels and contacts.

    The one leaf alone, without a hatch, where there is no wider one.
    """
    if wider is None:
        return (*frame_leaf(narrower), *_outlines(narrower, turn, WIDER))
    return (
        *frame_leaf(wider),
        *_hatched(narrower, wider, turn, NARROWER),
        *_hatched(wider, narrower, turn, WIDER),
        *_outlines(narrower, turn, NARROWER),
        *_outlines(wider, turn, WIDER),
    )


def leaves_overlaid(narrower: DrawnLeaf, wider: DrawnLeaf | None, turn: float) -> tuple[Primitive, ...]:
    """Return the two leaves with their hardware, as a picture of the whole opening shows them."""
    if wider is None:
        return _small(narrower, turn, WIDER)
    return (
        *_leaf_only(narrower, wider, turn, NARROWER),
        *_leaf_only(wider, narrower, turn, WIDER),
        *_small(narrower, turn, NARROWER),
        *_small(wider, turn, WIDER),
    )


def _small(hung: DrawnLeaf, turn: float, which: str) -> tuple[Primitive, ...]:
    return (
        *_hardware(hung, turn, which),
        _leaf(hung, turn, which),
        *_contact(hung, turn, which, "graze"),
    )


def _hatched(one: DrawnLeaf, other: DrawnLeaf, turn: float, which: str) -> list[Polygon]:
    """Return what of one leaf and its barrel the other one's do not cover."""
    found = _leaf_only(one, other, turn, which)
    barrel = round_difference(one.pin.at, one.h.d_b / 2, other.pin.at, other.h.d_b / 2)
    return [*found, _piece(barrel, which)] if barrel else found


def _leaf_only(one: DrawnLeaf, other: DrawnLeaf, turn: float, which: str) -> list[Polygon]:
    pieces = outline_difference(leaf_at(one, turn), leaf_at(other, turn))
    return [_piece(piece, which) for piece in pieces]


def _piece(outline: Sequence[Point], which: str) -> Polygon:
    return Polygon(_LINES[which], tuple(outline), which, _ONLY[which], False, _HATCHES[which])


def leaf_at(hung: DrawnLeaf, turn: float) -> tuple[Point, ...]:
    """Return the outline of a leaf as far open as it goes up to `turn` radians."""
    return turned(leaf_corners(hung.h), hung.pin.at, hung.shown_at(turn))


def _leaf(hung: DrawnLeaf, turn: float, which: str) -> Polyline:
    return Polyline(_LINES[which], leaf_at(hung, turn), closed=True)


def _outlines(hung: DrawnLeaf, turn: float, which: str) -> list[Primitive]:
    """Return leaf, hardware, barrel and pin axis, and a ring where the leaf is stopped."""
    at = hung.pin.at
    found: list[Primitive] = [
        *_hardware(hung, turn, which),
        _leaf(hung, turn, which),
        Arc(_LINES[which], at, hung.h.d_b / 2, 0.0, 2 * math.pi, name=f"barrel of the {which} hinge"),
        Symbol("A-ANNO-AXIS", at, "pin axis", f"pin axis of the {which} hinge"),
    ]
    return [*found, *_contact(hung, turn, which, "contact")]


def _hardware(hung: DrawnLeaf, turn: float, which: str) -> list[Primitive]:
    """Return what projects from the leaf, as lines: what is hatched is the leaf alone."""
    layer = _HARDWARE[which]
    found: list[Primitive] = []
    for shape in hung.hardware:
        points = turned(shape.points, hung.pin.at, hung.shown_at(turn))
        name = f"{shape.kind} on the {which} hinge"
        if shape.radius:
            found.append(Arc(layer, points[0], shape.radius, 0.0, 2 * math.pi, name=name))
        else:
            found.append(Polyline(layer, points, closed=True))
    return found


def _contact(hung: DrawnLeaf, turn: float, which: str, mark: Literal["contact", "graze"]) -> list[Primitive]:
    if hung.contact is None or turn < hung.reach - TOLERANCE:
        return []
    return [Symbol("A-ANNO-REDL", hung.contact, mark, f"contact on the {which} hinge")]


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


def outline_difference(one: Sequence[Point], other: Sequence[Point]) -> tuple[Outline, ...]:
    """Return what of a convex outline lies outside another, in convex pieces that do not overlap.

    Both run counter-clockwise.
    """
    rest: Outline = tuple(one)
    pieces: list[Outline] = []
    for a, b in zip(other, (*other[1:], other[0]), strict=True):
        pieces.append(_cut(rest, b, a))
        rest = _cut(rest, a, b)
    return tuple(piece for piece in pieces if _area(piece) > TOLERANCE)


def round_difference(at: Point, radius: float, other_at: Point, other_radius: float) -> Outline:
    """Return what of a circle lies outside another as chords; empty where it is none, or a ring."""
    apart = math.dist(at, other_at)
    if apart <= abs(other_radius - radius):
        return ()
    if apart >= radius + other_radius:
        return _chords(at, radius, 0.0, 2 * math.pi)
    toward = math.atan2(other_at[1] - at[1], other_at[0] - at[0])
    mine = _half_angle(radius, other_radius, apart)
    its = _half_angle(other_radius, radius, apart)
    outer = _chords(at, radius, toward + mine, toward + 2 * math.pi - mine)
    inner = _chords(other_at, other_radius, toward + math.pi + its, toward + math.pi - its)
    return (*outer, *inner)


def _half_angle(radius: float, other: float, apart: float) -> float:
    """Return half of the angle under which a circle's centre sees where another one crosses it."""
    cosine = (apart * apart + radius * radius - other * other) / (2 * apart * radius)
    return math.acos(min(max(cosine, -1.0), 1.0))


def _chords(centre: Point, radius: float, first: float, last: float) -> Outline:
    turns = (first + (last - first) * step / _STEPS for step in range(_STEPS + 1))
    return tuple((centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turns)


def _cut(points: Outline, a: Point, b: Point) -> Outline:
    """Keep what of a convex outline lies to the left of the way from a to b."""
    kept: list[Point] = []
    for point, after in zip(points, (*points[1:], *points[:1]), strict=True):
        here, there = _leftward(a, b, point), _leftward(a, b, after)
        if here >= 0.0:
            kept.append(point)
        if (here > 0.0 > there) or (here < 0.0 < there):
            share = here / (here - there)
            kept.append((point[0] + share * (after[0] - point[0]), point[1] + share * (after[1] - point[1])))
    return tuple(kept)


def _leftward(a: Point, b: Point, point: Point) -> float:
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])


def _area(points: Outline) -> float:
    pairs = zip(points, (*points[1:], *points[:1]), strict=True)
    return abs(math.fsum(x_0 * y_1 - x_1 * y_0 for (x_0, y_0), (x_1, y_1) in pairs)) / 2
