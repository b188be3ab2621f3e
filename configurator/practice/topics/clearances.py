"""What a door clears when it opens flat."""

from random import Random

from configurator.geometry.pin import clear_past_frame_at_180
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import (
    PracticeLeaf,
    door_words,
    frame_words,
    inset_line,
    off_door_line,
    proud_words,
    random_leaf,
)
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template, balanced
from configurator.practice.words import fraction
from configurator.practice.written import yes_or_no
from configurator.units import format_angle

TOPIC = "clearance"
HANDBOOK = "The clearance is counted from the closed door's face, as in the handbook rule W = 2 (T − b) + C."
_FROM_FRAME = "The clearance is counted from the frame face."
FROM_WALL = "What stands on the wall is measured from the wall face."
FLAT = 180.0


def wall_clearance(found: PracticeLeaf) -> float:
    """Return how far the face of a door opened flat is off the wall, inches."""
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
    total = wall_clearance(found)
    if not found.h.p:
        return f"That is off the wall too: {fraction(total)} in."
    return f"Off the wall: {fraction(clear)} + {fraction(found.h.p)} = {fraction(total)} in."


def _flat_problem(
    found: PracticeLeaf, question: str, value: float, hint: str, slips: tuple[Slip, ...],
    lines: tuple[str, ...], convention: str, mark: str,
) -> Problem:  # fmt: skip
    return Problem(
        question=question,
        answer=LengthAnswer(value),
        hint=hint,
        slips=slips,
        solution=lines,
        convention=convention,
        opening=found.opening,
        picture=Picture("flat", ((mark, ASKED),), (found.opening,)),
        angle=FLAT,
    )


def _past_door(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    h, o = found.h, found.pin.o
    slips = (
        Slip(
            o,
            "That is how far the pin stands off. Opened flat, the door swings over to the far side: "
            "twice that.",
        ),
        Slip(
            2 * (h.W - h.T + h.b),
            "The whole open width was taken. Only one leaf, W/2, reaches from door to pin.",
        ),
        Slip(h.W - 2 * h.T, "The backset stays free: T − b is let into the door, not T."),
    )
    return _flat_problem(
        found,
        f"{door_words(found)} Opened flat, how far is its face from where it was closed?",
        2 * o,
        "The door turns about the pin, so it lands as far beyond the pin as it was short of it.",
        slips,
        (off_door_line(found), f"C = 2o = 2 × {fraction(o)} = {fraction(2 * o)} in."),
        HANDBOOK,
        "past_own_face",
    )


def _past_frame(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    value, h, o = clear_past_frame_at_180(found.h, found.pin), found.h, found.pin.o
    slips = (
        Slip(2 * o, "That is from the closed door's face. The frame face is in front of it by the inset."),
        Slip(2 * (o - h.i), "The inset comes off once: only the closed door sits behind the frame face."),
        Slip(o - h.i, "That is where the pin stands. Opened flat, the door lands as far again beyond it."),
        Slip(2 * o + h.i, "The inset comes off: the frame face is nearer than the closed door's."),
    )
    return _flat_problem(
        found,
        f"{door_words(found)} {frame_words(found)} Opened flat, how far is the door face off the frame face?",
        value,
        "Twice the pin's stand off the door, less the inset once.",
        slips,
        (off_door_line(found), inset_line(found), _frame_line(found)),
        _FROM_FRAME,
        "clear_past",
    )


def _past_wall(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or not found.h.p:
        return None
    value, h, o = wall_clearance(found), found.h, found.pin.o
    slips = (
        Slip(
            value - h.p, "That is off the frame face. The wall lies behind it by what the frame stands proud."
        ),
        Slip(value - 2 * h.p, "Proud is added: the wall lies behind the frame face."),
        Slip(2 * o + h.p, "The inset comes off: the closed door sits behind the frame face."),
    )
    return _flat_problem(
        found,
        f"{door_words(found)} {frame_words(found)} {proud_words(found)} Opened flat, how far is the "
        "door face "
        "off the wall?",
        value,
        "Off the frame face first, as before; then add what the frame stands proud of the wall.",
        slips,
        (off_door_line(found), inset_line(found), _frame_line(found), _wall_line(found)),
        "",
        "past_wall",
    )


def _wider(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or not found.wider:
        return None
    wide = found.on(random.choice(found.wider))
    gained = wall_clearance(wide) - wall_clearance(found)
    slips = (
        Slip(gained / 2, "The pin moves out by half. The door, opened flat, by twice that."),
        Slip(
            2 * gained,
            "Half of the added width moves the pin, and the door twice that: the added width itself.",
        ),
    )
    return _flat_problem(
        wide,
        f"A door hangs on {found.size} hinges. You change them for {wide.size}. Opened flat, how "
        "much farther "
        "off the wall does it stand?",
        gained,
        "Half of the added width goes to each leaf. Then the door swings over the pin to the far side.",
        slips,
        (
            "Half of the added width moves the pin out, and the open door moves by twice that.",
            f"2 × ({fraction(wide.width)} − {fraction(found.width)}) / 2 = {fraction(gained)} in.",
        ),
        "",
        "past_wall",
    )


def with_rail(random: Random) -> PracticeLeaf | None:
    """Draw a door beside a chair rail."""
    projection = random.choice((0.75, 1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5))
    start = random.choice((0.5, 1.0, 2.0))
    rail = {"kind": "chair rail", "projection": projection, "start": start, "bottom": 32, "top": 36}
    return random_leaf(random, obstructions=[rail])


def rail_of(found: PracticeLeaf) -> tuple[float, float]:
    """Return how far its rail stands off the wall, and where it begins; inches."""
    rail = found.opening.obstructions[0]
    return rail.projection or 0.0, rail.start or 0.0


def _spare(random: Random) -> Problem | None:
    found = with_rail(random)
    if found is None or found.hung().greatest_angle_bare < FLAT:
        return None
    (rail, _), clear = rail_of(found), wall_clearance(found)
    if clear - rail < 1 / 64:
        return None
    return Problem(
        question=(
            f"Opened flat, the door face is {fraction(clear)} in off the wall. The chair rail "
            "behind it stands "
            f"{fraction(rail)} in off the wall. How much is to spare?"
        ),
        answer=LengthAnswer(clear - rail),
        hint="Both are measured off the same wall.",
        slips=(
            Slip(clear + rail, "Both are counted from the wall: the smaller comes off the larger."),
            Slip(clear, "That is off the wall. The rail takes its share of it."),
        ),
        solution=(f"{fraction(clear)} − {fraction(rail)} = {fraction(clear - rail)} in.",),
        convention=FROM_WALL,
        opening=found.opening,
        picture=Picture(
            "rail", (("spare", ASKED), ("projection", f"rail {fraction(rail)}")), (found.opening,)
        ),
        angle=FLAT,
    )


@balanced("yes", "no")
def _folds_flat(random: Random) -> Problem | None:
    found = with_rail(random)
    if found is None:
        return None
    hung = found.hung()
    (projection, start), clear = rail_of(found), wall_clearance(found)
    if abs(clear - projection) < 1 / 16:
        return None  # a graze is a fine point; the question is about the plain cases
    flat = hung.greatest_angle_bare == FLAT
    if flat != (clear > projection):
        return None  # something else than the rail decides
    end = "It opens flat." if flat else f"It stops at {format_angle(hung.greatest_angle_bare)}."
    sign = ">" if clear > projection else "<"
    return Problem(
        question=(
            f"{door_words(found)} {frame_words(found)} {proud_words(found)} A chair rail begins "
            f"{fraction(start)} "
            f"in beyond the frame and stands {fraction(projection)} in off the wall. Does the bare "
            "door open flat, "
            "to 180°?"
        ),
        answer=yes_or_no(flat),
        hint="Find how far the door face would be off the wall, opened flat. Is that more than the rail?",
        slips=(
            Slip(
                "yes", f"Flat it would be {fraction(clear)} in off the wall, and the rail stands out farther."
            ),
            Slip("no", f"Flat it is {fraction(clear)} in off the wall, more than the rail stands out."),
        ),
        solution=(
            off_door_line(found),
            inset_line(found),
            _frame_line(found),
            f"{_wall_line(found)} {fraction(clear)} {sign} {fraction(projection)}. {end}",
        ),
        convention=f"{FROM_WALL} The bare door is leaf and barrel, without lever or knob.",
        opening=found.opening,
        picture=Picture("rail_closed", rail_marks(found), (found.opening,)),
        angle=FLAT,
    )


def rail_marks(found: PracticeLeaf) -> tuple[tuple[str, str], ...]:
    """Mark how far the rail stands off the wall and the frame stands proud of it."""
    rail = ("projection", f"rail {fraction(rail_of(found)[0])}")
    return (rail, ("proud", f"proud {fraction(found.h.p)}")) if found.h.p else (rail,)


TEMPLATES = (
    Template("clearance past the door face", TOPIC, 2, _past_door),
    Template("gain of a wider hinge", TOPIC, 2, _wider),
    Template("spare over a rail", TOPIC, 2, _spare),
    Template("clearance past the frame", TOPIC, 3, _past_frame),
    Template("clearance past the wall", TOPIC, 4, _past_wall),
    Template("whether it folds flat", TOPIC, 4, _folds_flat),
)
