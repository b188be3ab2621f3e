"""What passes a door: the clear width it leaves, and how its lock edge passes the latch jamb."""

import math
from dataclasses import replace
from random import Random

from configurator.geometry.clear_width import clear_width
from configurator.geometry.edges import latch_edge_least
from configurator.geometry.pin import Hanging, Pin
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import WIDTHS, PracticeLeaf, drawn, hung_in_stock, random_leaf
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template, balanced
from configurator.practice.words import decimal, fraction, places
from configurator.practice.written import yes_or_no
from configurator.tables import limit
from configurator.units import TOLERANCE, rounded

TOPIC = "clear width"
LATCH = "lock edge"
_AT_90 = "Clear width is measured with the door open 90°, from the door's face to the frame stop."
_SQUARE = math.pi / 2
_STEP = 2.0
"""Inches: openings are made in steps of 2."""


def _accessible() -> str:
    row = limit("clear_width")
    asked = f"{fraction(row.value)} in is asked on an accessible route"
    return f"{_AT_90} {asked} ({row.source}); local codes decide."


def _clear(found: PracticeLeaf) -> float:
    return clear_width(found.h, found.pin, _SQUARE)


def _asked_about(found: PracticeLeaf) -> str:
    h, pin = found.h, found.pin
    return (
        f"Opening {fraction(h.O)} in between the rabbets, frame stops {fraction(h.s)} in high, door "
        f"{fraction(h.T)} in thick. The pin is {fraction(pin.x_p)} in from the rabbet and "
        f"{fraction(pin.o)} in off "
        "the door face."
    )


def _line(found: PracticeLeaf) -> str:
    h, pin = found.h, found.pin
    return (
        f"(O − s) − (across + o + T) = ({fraction(h.O)} − {fraction(h.s)}) − ({fraction(pin.x_p)} + "
        f"{fraction(pin.o)} + {fraction(h.T)}) = {fraction(_clear(found))} in."
    )


def _square_picture(found: PracticeLeaf, words: str) -> Picture:
    marks = (("clear", words), ("opening", f"opening {fraction(found.h.O)}"))
    return Picture("square", marks, (found.opening,))


def _at_90(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    h, pin, value = found.h, found.pin, _clear(found)
    return Problem(
        question=f"{_asked_about(found)} What is the clear width with the door square open?",
        answer=LengthAnswer(value),
        hint="Open square, the door stands in the way with its thickness and with how far its pin "
        "stands off.",
        slips=(
            Slip(value + h.T, "The open door's thickness stands in the way too."),
            Slip(value + h.s, "The frame stop on the latch side stands in the way too."),
            Slip(
                value + pin.o, "The pin holds the open door into the opening by what it stands off the face."
            ),
            Slip(value - h.s, "Only the frame stop on the latch side counts; the door covers the other."),
            Slip(h.O, "That is the opening itself, with no door in it."),
        ),
        solution=(_line(found),),
        convention=_AT_90,
        opening=found.opening,
        picture=_square_picture(found, ASKED),
        angle=90.0,
    )


@balanced("yes", "no")
def _serves(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or not 34 <= found.h.O <= 38:
        return None
    clear, least = _clear(found), limit("clear_width").value
    yes = clear >= least
    more = f"{fraction(abs(clear - least))} in {'to spare' if yes else 'short'}"
    return Problem(
        question=f"{_asked_about(found)} Square open, does it leave the {fraction(least)} in of an "
        "accessible route?",
        answer=yes_or_no(yes),
        hint="Opening less stop, less what the open door takes: from the rabbet to its far face.",
        slips=(
            Slip("yes", f"It leaves {fraction(clear)} in, {more}."),
            Slip("no", f"It leaves {fraction(clear)} in, {more}."),
        ),
        solution=(_line(found), f"Against {fraction(least)} in that is {more}."),
        convention=_accessible(),
        opening=found.opening,
        picture=_square_picture(found, f"{fraction(least)} in?"),
        angle=90.0,
    )


def _cost(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or not found.wider:
        return None
    wide = found.on(random.choice(found.wider))
    lost = _clear(found) - _clear(wide)
    return Problem(
        question=f"You change {found.size} hinges for {wide.size}. How much clear width is lost, "
        "door square open?",
        answer=LengthAnswer(lost),
        hint="By how much does one leaf of the hinge get longer?",
        slips=(
            Slip(
                2 * lost, "The pin moves out by half of the added width: one leaf of the two is on the door."
            ),
            Slip(lost / 2, "Half of the added width, not a quarter."),
        ),
        solution=(
            "The pin moves out by half of what the hinge is wider, and takes the door face along.",
            f"({fraction(wide.width)} − {fraction(found.width)}) / 2 = {fraction(lost)} in.",
        ),
        convention=_AT_90,
        opening=wide.opening,
        picture=Picture("square", (("clear", f"{ASKED} less"),), (wide.opening,)),
        angle=90.0,
    )


def _least_opening(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    h, pin, least = found.h, found.pin, limit("clear_width").value
    fits = [width for width in WIDTHS if clear_width(replace(h, O=width), pin, _SQUARE) >= least]
    if not fits:
        return None
    need = least + h.s + pin.x_p + pin.o + h.T
    if need == min(fits):
        return None
    return Problem(
        question=(
            f"A {fraction(h.T)} in door turns on a pin {fraction(pin.x_p)} in from the rabbet and "
            f"{fraction(pin.o)} in off the door face; frame stops {fraction(h.s)} in high. Openings "
            f"come in steps of {fraction(_STEP)} in: 30, 32, 34 and so on. What is the least opening "
            f"that leaves {fraction(least)} in clear, door square open?"
        ),
        answer=LengthAnswer(min(fits), limit="stock"),
        hint="Add to the clear width all that stands in it, then go up to the next step.",
        slips=(
            Slip(
                min(fits) - _STEP,
                "Too narrow: add up once more all that stands in the way, and go up, not down.",
            ),
            Slip(min(fits) + _STEP, "It does, and so does the next narrower one."),
            Slip(rounded(need, 64), "That is what is needed. Go up to the next opening that is made."),
            Slip(least, "That is the clear width. The opening is wider by all that stands in it."),
        ),
        solution=(
            f"Needed: {fraction(least)} + s + across + o + T = {fraction(least)} + {fraction(h.s)} + "
            f"{fraction(pin.x_p)} + {fraction(pin.o)} + {fraction(h.T)} = {fraction(need)} in.",
            f"Up to the next step: {fraction(min(fits))} in.",
        ),
        convention=_accessible(),
        picture=Picture(
            "square", (("opening", ASKED), ("clear", f"clear {fraction(least)}")), (found.opening,)
        ),
    )


_THREE_DEGREES = "3°"
_BEVELS = (
    ("1/8 in 2", 0.125 / 2),
    ("1/8 in 2-1/4", 0.125 / 2.25),
    (_THREE_DEGREES, math.tan(math.radians(3))),
)
"""The bevels that are made: how each is said, and the relief of an inch of thickness."""


def _bevel(random: Random) -> Problem:
    thickness = random.choice((1.375, 1.75, 2.25))
    said, slope = random.choice(_BEVELS)
    relief, degrees = slope * thickness, said == _THREE_DEGREES
    over = 0.0 if degrees else 0.125 / slope
    first = (
        "3° is 0.0524 for each inch of thickness."
        if degrees
        else (f"{said} is 1/8 / {fraction(over)} = {places(slope, 4)} for each inch of thickness.")
    )
    return Problem(
        question=(
            f"The lock edge of a {fraction(thickness)} in door is beveled {said}. How far back is "
            "its stop-side "
            "corner?"
        ),
        answer=LengthAnswer(relief, 0.001),
        hint="3° slopes 0.0524 in an inch."
        if degrees
        else f"It slopes 1/8 in over {fraction(over)} in of thickness. This door is "
        f"{fraction(thickness)} in.",
        slips=(
            Slip(0.125, "That is over the thickness the bevel is said for. This door has its own."),
            Slip(0.125 * thickness, "The bevel is said over more than one inch: divide by that first."),
            Slip(slope, "That is for one inch of thickness. Multiply by the door's."),
        ),
        solution=(first, f"{places(slope, 4)} × {fraction(thickness)} = {places(relief, 3)} in."),
        convention="A bevel is said as so much over so much thickness, or in degrees.",
        picture=Picture("latch", (("bevel", ASKED),)),
    )


def _square_edge(random: Random) -> tuple[PracticeLeaf, Hanging, Pin] | None:
    data = drawn(random)
    data["door"]["latch_bevel"] = 0
    found = hung_in_stock(data, random)
    return (found, found.h, found.pin) if min(found.pin.o, found.pin.y_p) >= found.h.d_b / 2 else None


def _reaches(h: Hanging, pin: Pin) -> tuple[float, float]:
    """Return how far the jamb's arris and the leaf's stop-side corner are from the pin."""
    arris = math.hypot(h.O - pin.x_p, pin.y_p)
    return arris, math.hypot(h.O - h.g_l - pin.x_p, pin.o + h.T)


def _edge_words(arris: float, corner: float) -> str:
    return (
        f"A square lock edge. From the pin to the arris of the latch jamb it is {places(arris, 3)} "
        "in, from the pin "
        f"to the far corner of the lock edge {places(corner, 3)} in."
    )


def _edge_picture(found: PracticeLeaf) -> Picture:
    return Picture("passing", (("arris", ASKED),), (found.opening,))


def _edge_gap(random: Random) -> Problem | None:
    square = _square_edge(random)
    if square is None:
        return None
    found, h, pin = square
    arris, corner = (rounded(one, 1000) for one in _reaches(h, pin))
    least = latch_edge_least(h, pin)
    if least <= 0.004 or abs(arris - corner - least) > 0.0011:
        return None
    return Problem(
        question=f"{_edge_words(arris, corner)} What is the least gap as the corner passes the arris?",
        answer=LengthAnswer(arris - corner, 0.001),
        hint="Both turn about the same pin. The corner passes by as much as it reaches less far.",
        slips=(
            Slip(
                h.g_l,
                "That is the gap with the door closed. The corner swings nearer than that as it passes.",
            ),
            Slip((arris - corner) / 2, "The whole difference is the gap, not half of it."),
        ),
        solution=(f"{decimal(arris)} − {decimal(corner)} = {places(arris - corner, 3)} in.",),
        convention="Both lengths are rounded to the thousandth.",
        opening=found.opening,
        picture=_edge_picture(found),
    )


@balanced("yes", "no")
def _binds(random: Random) -> Problem | None:
    square = _square_edge(random)
    if square is None:
        return None
    found, h, pin = square
    arris, corner = _reaches(h, pin)
    binds = latch_edge_least(h, pin) <= TOLERANCE
    if abs(arris - corner) < 0.002 or binds != (corner > arris):
        return None
    sign = ">" if corner > arris else "<"
    end = "the corner cannot pass: it binds" if binds else "the corner passes"
    return Problem(
        question=f"{_edge_words(arris, corner)} Does the door bind on the latch jamb?",
        answer=yes_or_no(binds),
        hint="Which of the two reaches farther from the pin?",
        slips=(
            Slip("yes", "The corner reaches less far than the arris, so it passes."),
            Slip("no", "The corner reaches farther than the arris, and it has to pass it."),
        ),
        solution=(
            f"{places(corner, 3)} {sign} {places(arris, 3)}: {end}.",
            "A bevel takes the corner back, so that it passes.",
        ),
        opening=found.opening,
        picture=_edge_picture(found),
    )


TEMPLATES = (
    Template("clear width lost to a wider hinge", TOPIC, 2, _cost),
    Template("clear width at 90", TOPIC, 3, _at_90),
    Template("clear width of an accessible door", TOPIC, 4, _serves),
    Template("least opening width", TOPIC, 4, _least_opening),
    Template("relief of a bevel", LATCH, 2, _bevel),
    Template("gap at a square lock edge", LATCH, 3, _edge_gap),
    Template("whether a square edge binds", LATCH, 3, _binds),
)
