"""The clear width that an open door leaves, and how its lock edge passes the latch jamb."""

import math
from dataclasses import replace
from random import Random

from configurator.geometry.clear_width import clear_width
from configurator.geometry.edges import latch_edge_least
from configurator.geometry.pin import Hanging, Pin, locate_pin
from configurator.practice.answers import LengthAnswer, yes_or_no
from configurator.practice.leaves import WIDTHS, PracticeLeaf, random_leaf
from configurator.practice.problem import Problem, Template
from configurator.practice.words import decimal, fraction, places
from configurator.tables import limit
from configurator.units import TOLERANCE

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
        f"An opening is {fraction(h.O)} in wide between the rabbet faces, the frame stops are "
        f"{fraction(h.s)} in high, the door is {fraction(h.T)} in thick. The pin is {fraction(pin.x_p)} in "
        f"from the rabbet face and {fraction(pin.o)} in off the door face."
    )


def _line(found: PracticeLeaf) -> str:
    h, pin = found.h, found.pin
    return (
        f"(O − s) − (across + o + T) = ({fraction(h.O)} − {fraction(h.s)}) − ({fraction(pin.x_p)} + "
        f"{fraction(pin.o)} + {fraction(h.T)}) = {fraction(_clear(found))} in."
    )


def _at_90(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    return Problem(
        question=f"{_asked_about(found)} What is the clear width with the door open 90°?",
        answer=LengthAnswer(_clear(found)),
        solution=(_line(found),),
        convention=_AT_90,
        opening=found.opening,
        shown_first=True,
        angle=90.0,
    )


def _serves(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or not 34 <= found.h.O <= 38:
        return None
    clear, least = _clear(found), limit("clear_width").value
    yes = clear >= least
    more = f"{fraction(abs(clear - least))} in {'to spare' if yes else 'short'}"
    return Problem(
        question=(
            f"{_asked_about(found)} With the door open 90°, does it keep the clear width of "
            f"{fraction(least)} in that is asked on an accessible route?"
        ),
        answer=yes_or_no(yes),
        solution=(_line(found), f"Against {fraction(least)} in that is {more}."),
        convention=_accessible(),
        opening=found.opening,
        shown_first=True,
        angle=90.0,
    )


def _cost(random: Random) -> Problem | None:
    found = random_leaf(random)
    wider = random.choice((5.0, 6.0, 7.0, 8.0))
    if found is None or wider <= found.h.W:
        return None
    lost = _clear(found) - _clear(found.on(wider))
    return Problem(
        question=(
            f"Hinges {fraction(found.h.W)} in open width are changed for {fraction(wider)} in ones. How "
            "much clear width at 90° is lost?"
        ),
        answer=LengthAnswer(lost),
        solution=(
            "The pin moves out by half of what the hinge is wider, and takes the door face along.",
            f"({fraction(wider)} − {fraction(found.h.W)}) / 2 = {fraction(lost)} in.",
        ),
        convention=_AT_90,
        opening=found.on(wider).opening,
        shown_first=True,
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
    return Problem(
        question=(
            f"A door {fraction(h.T)} in thick turns on a pin {fraction(pin.x_p)} in from the rabbet face and "
            f"{fraction(pin.o)} in off the door face; the frame stops are {fraction(h.s)} in high. Openings "
            f"are made in steps of {fraction(_STEP)} in: 30, 32, 34 and so on. What is the least opening "
            f"width that keeps {fraction(least)} in clear at 90°?"
        ),
        answer=LengthAnswer(min(fits)),
        solution=(
            f"Needed: {fraction(least)} + s + across + o + T = {fraction(least)} + {fraction(h.s)} + "
            f"{fraction(pin.x_p)} + {fraction(pin.o)} + {fraction(h.T)} = {fraction(need)} in.",
            f"Up to the next step: {fraction(min(fits))} in.",
        ),
        convention=_accessible(),
    )


def _bevel(random: Random) -> Problem | None:
    thickness = random.choice((1.375, 1.5, 1.75, 2.0, 2.25))
    over_two = random.choice((0.0625, 0.125, 0.1875, 0.25))
    relief = over_two / 2 * thickness
    return Problem(
        question=(
            f"The lock edge of a door {fraction(thickness)} in thick is beveled {fraction(over_two)} in 2. "
            "By how much is its stop-side corner relieved?"
        ),
        answer=LengthAnswer(relief, 0.001),
        solution=(
            f"{fraction(over_two)} in 2 is {fraction(over_two / 2)} for each inch of thickness.",
            f"{fraction(over_two / 2)} × {fraction(thickness)} = {places(relief, 5)} in, "
            f"{places(relief, 3)} in.",
        ),
        convention="A bevel is said over 2 in of thickness.",
    )


def _square_edge(random: Random) -> tuple[PracticeLeaf, Hanging, Pin] | None:
    found = random_leaf(random)
    if found is None:
        return None
    wide = replace(found.h, beta=0.0, W=random.choice((4.0, 4.5, 5.0, 6.0, 7.0, 8.0)))
    return found, wide, locate_pin(wide)


def _reaches(h: Hanging, pin: Pin) -> tuple[float, float]:
    """Return how far the jamb's arris and the leaf's stop-side corner are from the pin."""
    arris = math.hypot(h.O - pin.x_p, pin.y_p)
    return arris, math.hypot(h.O - h.g_l - pin.x_p, pin.o + h.T)


def _edge_words(h: Hanging, pin: Pin) -> str:
    return (
        f"From the pin, across and out: the arris of the latch jamb lies {fraction(h.O - pin.x_p)} in "
        f"across and {fraction(pin.y_p)} in back; the stop-side corner of a square lock edge "
        f"{fraction(h.O - h.g_l - pin.x_p)} in across and {fraction(pin.o + h.T)} in back."
    )


def _edge_lines(h: Hanging, pin: Pin) -> tuple[str, str]:
    arris, corner = _reaches(h, pin)
    return (
        f"Pin to arris: sqrt({decimal(h.O - pin.x_p)}² + {decimal(pin.y_p)}²) = {decimal(arris)} in.",
        f"Pin to corner: sqrt({decimal(h.O - h.g_l - pin.x_p)}² + {decimal(pin.o + h.T)}²) = "
        f"{decimal(corner)} in.",
    )


def _edge_gap(random: Random) -> Problem | None:
    drawn = _square_edge(random)
    if drawn is None:
        return None
    found, h, pin = drawn
    arris, corner = _reaches(h, pin)
    least = latch_edge_least(h, pin)
    if least <= 0.002 or abs(arris - corner - least) > TOLERANCE:
        return None
    return Problem(
        question=f"{_edge_words(h, pin)} What is the least gap as the corner passes the arris?",
        answer=LengthAnswer(least, 0.001),
        solution=(*_edge_lines(h, pin), f"{decimal(arris)} − {decimal(corner)} = {places(least, 3)} in."),
        opening=found.on(h.W).opening,
        shown_first=True,
    )


def _binds(random: Random) -> Problem | None:
    drawn = _square_edge(random)
    if drawn is None:
        return None
    found, h, pin = drawn
    arris, corner = _reaches(h, pin)
    binds = latch_edge_least(h, pin) == 0.0
    if abs(arris - corner) < 0.002 or binds != (corner > arris):
        return None
    sign = ">" if corner > arris else "<"
    end = "the corner cannot pass: it binds" if binds else "the corner passes"
    return Problem(
        question=f"{_edge_words(h, pin)} Does the square edge bind on the latch jamb?",
        answer=yes_or_no(binds),
        solution=(*_edge_lines(h, pin), f"{decimal(corner)} {sign} {decimal(arris)}: {end}."),
        opening=found.on(h.W).opening,
        shown_first=True,
    )


TEMPLATES = (
    Template("clear width lost to a wider hinge", TOPIC, 2, _cost),
    Template("clear width at 90", TOPIC, 3, _at_90),
    Template("clear width of an accessible door", TOPIC, 4, _serves),
    Template("least opening width", TOPIC, 4, _least_opening),
    Template("relief of a bevel", LATCH, 2, _bevel),
    Template("gap at a square lock edge", LATCH, 5, _edge_gap),
    Template("whether a square edge binds", LATCH, 5, _binds),
)
