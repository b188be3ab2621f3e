"""What a door clears when it lies open flat, and the least hinge width that clears something."""

from random import Random

from configurator.geometry.pin import clear_past_frame_at_180, least_width_for_clearance
from configurator.practice.answers import ChoiceAnswer, LengthAnswer, yes_or_no
from configurator.practice.leaves import (
    PracticeLeaf,
    door_words,
    drawn,
    frame_words,
    inset_line,
    off_door_line,
    practice_leaf,
    proud_words,
    random_leaf,
)
from configurator.practice.problem import Problem, Template
from configurator.practice.words import fraction
from configurator.rules.hinge.stock import least_stock_width, stock_widths
from configurator.units import format_angle

TOPIC = "clearance"
LEAST = "least width"
_HANDBOOK = "The clearance is counted from the closed door's face, as in the handbook rule W = 2 (T − b) + C."
_FROM_FRAME = "The clearance is counted from the frame face."
_FROM_WALL = "What stands on the wall is measured from the wall face."
_FLAT = 180.0


def _wall_clearance(found: PracticeLeaf) -> float:
    return clear_past_frame_at_180(found.h, found.pin) + found.h.p


def _frame_line(found: PracticeLeaf) -> str:
    h, pin = found.h, found.pin
    clear = clear_past_frame_at_180(h, pin)
    return (
        f"Open flat the door face stands 2o − i off the frame face: 2 × {fraction(pin.o)} − {fraction(h.i)} "
        f"= {fraction(clear)} in."
    )


def _wall_line(found: PracticeLeaf) -> str:
    clear = clear_past_frame_at_180(found.h, found.pin)
    total = _wall_clearance(found)
    if not found.h.p:
        return f"That is off the wall too: {fraction(total)} in."
    return f"Off the wall: {fraction(clear)} + {fraction(found.h.p)} = {fraction(total)} in."


def _past_door(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    value = 2 * found.pin.o
    return Problem(
        question=f"{door_words(found)} Open flat, how much does the door clear, counted from its own face?",
        answer=LengthAnswer(value),
        solution=(off_door_line(found), f"C = 2o = 2 × {fraction(found.pin.o)} = {fraction(value)} in."),
        convention=_HANDBOOK,
        opening=found.opening,
        shown_first=True,
        angle=_FLAT,
    )


def _past_frame(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    return Problem(
        question=(
            f"{door_words(found)} {frame_words(found)} Open flat, how far does the door face stand off the "
            "frame face?"
        ),
        answer=LengthAnswer(clear_past_frame_at_180(found.h, found.pin)),
        solution=(off_door_line(found), inset_line(found), _frame_line(found)),
        convention=_FROM_FRAME,
        opening=found.opening,
        shown_first=True,
        angle=_FLAT,
    )


def _past_wall(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or not found.h.p:
        return None
    return Problem(
        question=(
            f"{door_words(found)} {frame_words(found)} {proud_words(found)} Open flat, how far does the "
            "door face stand off the wall?"
        ),
        answer=LengthAnswer(_wall_clearance(found)),
        solution=(off_door_line(found), inset_line(found), _frame_line(found), _wall_line(found)),
        opening=found.opening,
        shown_first=True,
        angle=_FLAT,
    )


def _wider(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    width = random.choice((4.5, 5.0, 6.0, 7.0))
    if width <= found.h.W:
        return None
    gained = _wall_clearance(found.on(width)) - _wall_clearance(found)
    return Problem(
        question=(
            f"A door hangs on hinges {fraction(found.h.W)} in open width. With hinges {fraction(width)} in "
            "instead, how much farther from the wall does it lie when open flat?"
        ),
        answer=LengthAnswer(gained),
        solution=(
            "Half of the added width moves the pin out, and the open door moves by twice that.",
            f"2 × ({fraction(width)} − {fraction(found.h.W)}) / 2 = {fraction(gained)} in.",
        ),
        opening=found.on(width).opening,
        shown_first=True,
        angle=_FLAT,
    )


def _rail(random: Random, projection: float) -> dict[str, object]:
    start = random.choice((0.5, 1.0, 2.0))
    return {"kind": "chair rail", "projection": projection, "start": start, "bottom": 32, "top": 36}


def _with_rail(random: Random) -> PracticeLeaf | None:
    projection = random.choice((0.75, 1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5))
    return random_leaf(random, obstructions=[_rail(random, projection)])


def _spare(random: Random) -> Problem | None:
    found = _with_rail(random)
    if found is None or found.hung().greatest_angle_bare < _FLAT:
        return None
    rail = found.opening.obstructions[0].projection or 0.0
    clear = _wall_clearance(found)
    if clear - rail < 1 / 64:
        return None
    return Problem(
        question=(
            f"Open flat, a door face stands {fraction(clear)} in off the wall. A chair rail stands "
            f"{fraction(rail)} in off the wall behind it. How much is to spare?"
        ),
        answer=LengthAnswer(clear - rail),
        solution=(f"{fraction(clear)} − {fraction(rail)} = {fraction(clear - rail)} in.",),
        convention=_FROM_WALL,
        opening=found.opening,
        shown_first=True,
        angle=_FLAT,
    )


def _folds_flat(random: Random) -> Problem | None:
    found = _with_rail(random)
    if found is None:
        return None
    hung = found.hung()
    rail, clear = found.opening.obstructions[0], _wall_clearance(found)
    projection = rail.projection or 0.0
    if abs(clear - projection) < 1 / 16:
        return None  # a graze is a fine point; the question is about the plain cases
    flat = hung.greatest_angle_bare == _FLAT
    if flat != (clear > projection):
        return None  # something else than the rail decides
    end = "It folds flat." if flat else f"It stops at {format_angle(hung.greatest_angle_bare)}."
    sign = ">" if clear > projection else "<"
    return Problem(
        question=(
            f"{door_words(found)} {frame_words(found)} {proud_words(found)} On the wall, from "
            f"{fraction(rail.start or 0.0)} in beyond the frame, a chair rail stands {fraction(projection)} "
            "in off the wall. Does the bare door fold flat, to 180°?"
        ),
        answer=yes_or_no(flat),
        solution=(
            off_door_line(found),
            inset_line(found),
            _frame_line(found),
            f"{_wall_line(found)} {fraction(clear)} {sign} {fraction(projection)}. {end}",
        ),
        convention=f"{_FROM_WALL} The bare door is leaf and barrel, without lever or knob.",
        opening=found.opening,
        shown_first=True,
        angle=_FLAT,
    )


def _clears(random: Random) -> tuple[PracticeLeaf, float]:
    data = drawn(random)
    projection = random.choice((0.5, 0.75, 1.0, 1.125, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5))
    return practice_leaf(data, 4.5), projection


def _asked_clear(found: PracticeLeaf, projection: float) -> str:
    h = found.h
    return (
        f"A door is {fraction(h.T)} in thick, its hinges are set back {fraction(h.b)} in from the stop-side "
        f"face, and trim stands {fraction(projection)} in past the closed door's face."
    )


def _exact_line(found: PracticeLeaf, projection: float, exact: float) -> str:
    h = found.h
    return (
        f"W = 2 (T − b) + C = 2 × ({fraction(h.T)} − {fraction(h.b)}) + {fraction(projection)} = "
        f"{fraction(exact)} in."
    )


def _least_exact(random: Random) -> Problem:
    found, projection = _clears(random)
    exact = least_width_for_clearance(found.h.T, found.h.b, projection)
    return Problem(
        question=(
            f"{_asked_clear(found, projection)} By the handbook rule, what is the least open width that "
            "clears it, before rounding up to stock?"
        ),
        answer=LengthAnswer(exact),
        solution=(_exact_line(found, projection, exact),),
        convention=_HANDBOOK,
    )


def _options(height: float, random: Random, right: float) -> tuple[str, ...]:
    widths = [width for width in stock_widths(height) if width != right]
    chosen = sorted([*random.sample(widths, 3), right])
    return tuple(f"{fraction(width)} in" for width in chosen)


def _least_stock(random: Random) -> Problem | None:
    found, projection = _clears(random)
    height = random.choice((4.5, 5.0))
    exact = least_width_for_clearance(found.h.T, found.h.b, projection)
    stock = least_stock_width(height, exact)
    if stock is None:
        return None
    known = ", ".join(fraction(width) for width in stock_widths(height))
    return Problem(
        question=(
            f"{_asked_clear(found, projection)} Hinges {fraction(height)} in high come {known} in wide. "
            "What is the least of these widths that clears it?"
        ),
        answer=LengthAnswer(stock),
        solution=(
            _exact_line(found, projection, exact),
            f"Then up, never down, to the next width in stock: {fraction(stock)} in.",
        ),
        convention=_HANDBOOK,
    )


def _least_over_rail(random: Random) -> Problem | None:
    found = _with_rail(random)
    if found is None:
        return None
    height = 4.5
    angles = {width: found.on(width).hung().greatest_angle_bare for width in stock_widths(height)}
    good = [width for width, angle in angles.items() if angle == _FLAT]
    if not good or min(good) == min(angles):
        return None
    least, rail = min(good), found.opening.obstructions[0]
    spare = _wall_clearance(found.on(least)) - (rail.projection or 0.0)
    before = max(width for width in angles if width < least)
    if spare < 1 / 64 or any(angle == _FLAT for width, angle in angles.items() if width < least):
        return None
    h = found.h
    return Problem(
        question=(
            f"A door {fraction(h.T)} in thick, hinge backset {fraction(h.b)} in, rabbet {fraction(h.R)} in, "
            f"gap at the frame stop {fraction(h.k)} in. {proud_words(found)} A chair rail stands "
            f"{fraction(rail.projection or 0.0)} in off the wall, from {fraction(rail.start or 0.0)} in "
            "beyond the frame. Which is the least hinge open width that lets the bare door fold flat?"
        ),
        answer=ChoiceAnswer(f"{fraction(least)} in", _options(height, random, least)),
        solution=(
            inset_line(found),
            f"The door must stand more than {fraction((rail.projection or 0.0) - h.p)} in off the frame "
            "face, and it stands 2o − i = W − 2 (T − b) − i.",
            f"{fraction(before)} in stops at {format_angle(angles[before])}; {fraction(least)} in reaches "
            f"180° with {fraction(spare)} in to spare.",
        ),
        convention=_FROM_WALL,
        opening=found.on(least).opening,
        angle=_FLAT,
    )


TEMPLATES = (
    Template("clearance past the door face", TOPIC, 2, _past_door),
    Template("gain of a wider hinge", TOPIC, 2, _wider),
    Template("spare over a rail", TOPIC, 2, _spare),
    Template("clearance past the frame", TOPIC, 3, _past_frame),
    Template("clearance past the wall", TOPIC, 4, _past_wall),
    Template("whether it folds flat", TOPIC, 4, _folds_flat),
    Template("least width by the handbook", LEAST, 3, _least_exact),
    Template("least width in stock", LEAST, 3, _least_stock),
    Template("least width over a rail", LEAST, 5, _least_over_rail),
)
