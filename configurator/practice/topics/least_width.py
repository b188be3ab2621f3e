"""The least hinge width that clears something: by the rule, in stock, and over a rail."""

from random import Random

from configurator.geometry.pin import least_width_for_clearance
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import (
    PracticeLeaf,
    drawn,
    frame_words,
    hinge_size,
    inset_line,
    practice_leaf,
    proud_words,
    usual_widths,
)
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template
from configurator.practice.topics.clearances import (
    FLAT,
    FROM_WALL,
    HANDBOOK,
    rail_marks,
    rail_of,
    wall_clearance,
    with_rail,
)
from configurator.practice.topics.pins import hinge_marks
from configurator.practice.words import fraction
from configurator.practice.written import ChoiceAnswer
from configurator.rules.hinge.stock import least_stock_width
from configurator.units import format_angle

TOPIC = "least width"


def _clears(random: Random) -> tuple[PracticeLeaf, float]:
    data = drawn(random)
    projection = random.choice((0.5, 0.75, 1.0, 1.125, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5))
    return practice_leaf(data, 4.5), projection


def _asked_clear(found: PracticeLeaf, projection: float) -> str:
    h = found.h
    return (
        f"A {fraction(h.T)} in door, hinge backset {fraction(h.b)} in. Trim beside the frame stands "
        f"{fraction(projection)} in past the closed door's face."
    )


def _exact_line(found: PracticeLeaf, projection: float, exact: float) -> str:
    h = found.h
    return (
        f"W = 2 (T − b) + C = 2 × ({fraction(h.T)} − {fraction(h.b)}) + {fraction(projection)} = "
        f"{fraction(exact)} in."
    )


def _rule_slips(found: PracticeLeaf, projection: float) -> tuple[Slip, ...]:
    h = found.h
    return (
        Slip(h.T - h.b + projection, "The hinge is let into door and frame alike: T − b counts twice."),
        Slip(2 * h.T + projection, "The backset stays free: it comes off the thickness first."),
        Slip(
            2 * (h.T - h.b + projection),
            "The clearance counts once: the door goes out twice what the pin does.",
        ),
        Slip(2 * (h.T - h.b), "That is the hinge for no clearance. Add what it has to clear."),
    )


def _rule_picture(found: PracticeLeaf) -> Picture:
    marks = (
        ("half_width", f"W/2, W = {ASKED}"),
        *hinge_marks(found)[:1],
        ("thickness", f"door {fraction(found.h.T)}"),
    )
    return Picture("hinge", marks, (found.opening,))


def _least_exact(random: Random) -> Problem:
    found, projection = _clears(random)
    exact = least_width_for_clearance(found.h.T, found.h.b, projection)
    return Problem(
        question=(
            f"{_asked_clear(found, projection)} By the handbook rule, what is the least open width that "
            "clears it, before you go to stock sizes?"
        ),
        answer=LengthAnswer(exact, limit="least"),
        hint="The rule: W = 2 (T − b) + C. T is the door, b the backset, C what is to be cleared.",
        slips=_rule_slips(found, projection),
        solution=(_exact_line(found, projection, exact),),
        convention=HANDBOOK,
        picture=_rule_picture(found),
    )


def _least_stock(random: Random) -> Problem | None:
    found, projection = _clears(random)
    height = found.hinge_height
    exact = least_width_for_clearance(found.h.T, found.h.b, projection)
    stock, listed = least_stock_width(height, exact), usual_widths(height)
    if stock not in listed or exact == stock:
        return None
    below = [width for width in listed if width < exact]
    above = [width for width in listed if width > stock]
    return Problem(
        question=(
            f"{_asked_clear(found, projection)} Hinges {fraction(height)} in high come "
            f"{', '.join(fraction(width) for width in listed)} in wide. Which is the least of these "
            "widths that "
            "clears it?"
        ),
        answer=LengthAnswer(stock, limit="stock"),
        hint="Work out the rule W = 2 (T − b) + C, then go up to the next width of the list.",
        slips=(
            *(
                Slip(width, "Too narrow: the door would meet the trim. Go up to the next width.")
                for width in below
            ),
            *(Slip(width, "It clears, and a narrower one of the list does too.") for width in above),
            Slip(exact, "That is the rule's own width. Go up to the next one of the list."),
        ),
        solution=(
            _exact_line(found, projection, exact),
            f"Then up, never down, to the next width in stock: {fraction(stock)} in.",
        ),
        convention=HANDBOOK,
        picture=_rule_picture(found),
    )


def _least_over_rail(random: Random) -> Problem | None:
    found = with_rail(random)
    if found is None or len(widths := usual_widths(found.hinge_height)) < 3:
        return None
    angles = {width: found.on(width).hung().greatest_angle_bare for width in widths}
    good = [width for width, angle in angles.items() if angle == FLAT]
    if not good or min(good) == min(angles) or len(good) + widths.index(min(good)) != len(widths):
        return None
    least, (projection, start), h = min(good), rail_of(found), found.h
    spare = wall_clearance(found.on(least)) - projection
    before = max(width for width in widths if width < least)
    if spare < 1 / 64:
        return None
    options = tuple(f"{fraction(width)} in" for width in widths)
    return Problem(
        question=(
            f"A {fraction(h.T)} in door, hinge backset {fraction(h.b)} in. {frame_words(found)} "
            f"{proud_words(found)} A chair rail begins {fraction(start)} in beyond the frame and stands "
            f"{fraction(projection)} in off the wall. Hinges {fraction(found.hinge_height)} in "
            "high: which is the "
            "least open width that lets the bare door open flat?"
        ),
        answer=ChoiceAnswer(f"{fraction(least)} in", options),
        hint="The door face has to land beyond the rail: W − 2 (T − b) − inset, plus what the frame "
        "stands proud.",
        slips=tuple(
            Slip(
                option,
                f"On {option} it stops at {format_angle(angles[width])}, against the rail."
                if width < least
                else "It opens flat, and so does a narrower one.",
            )
            for option, width in zip(options, widths, strict=True)
            if width != least
        ),
        solution=(
            inset_line(found),
            f"The door must stand more than {fraction(projection - h.p)} in off the frame "
            "face, and it stands 2o − i = W − 2 (T − b) − i.",
            f"{hinge_size(found.hinge_height, before)} stops at {format_angle(angles[before])}; "
            f"{fraction(least)} in "
            f"reaches 180° with {fraction(spare)} in to spare.",
        ),
        convention=FROM_WALL,
        opening=found.on(least).opening,
        picture=Picture("rail_closed", rail_marks(found), (found.opening,)),
        angle=FLAT,
    )


TEMPLATES = (
    Template("least width by the handbook", TOPIC, 3, _least_exact),
    Template("least width in stock", TOPIC, 3, _least_stock),
    Template("least width over a rail", TOPIC, 5, _least_over_rail),
)
