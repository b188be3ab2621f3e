"""How far an open door stands out into a corridor, and what remains of it."""

import math
from random import Random

from configurator.geometry.encroachment import encroachment
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import PracticeLeaf, proud_words, random_leaf
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template, balanced
from configurator.practice.words import fraction
from configurator.practice.written import yes_or_no
from configurator.tables import limit

TOPIC = "corridor"
_BARE = "Counted from the wall face to the leaf, without lever or knob."
_CORRIDORS = (44.0, 48.0, 54.0, 60.0, 66.0, 72.0, 84.0)
_REQUIRED = (36.0, 44.0)
_SQUARE_OPEN, _FLAT_OPEN = 90.0, 180.0


def _out(found: PracticeLeaf, degrees: float) -> float:
    hung = found.hung()
    scene = hung.solution.scene
    return encroachment((scene.leaf,), scene.hanging, scene.pin, math.radians(degrees))


def _picture(
    found: PracticeLeaf, degrees: float, corridor: float = 0.0, words: str = ASKED, mark: str = "out"
) -> Picture:
    marks = ((mark, words), ("corridor", f"corridor {fraction(corridor)}")) if corridor else ((mark, words),)
    return Picture("corridor", marks, (found.opening,), values=(degrees, corridor))


def _flat(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or found.hung().greatest_angle_bare < 180.0:
        return None
    h, pin = found.h, found.pin
    value = found.hung().encroachment_at_rest
    clear = 2 * pin.o - h.i
    return Problem(
        question=(
            f"The pin is {fraction(pin.o)} in off the door face. The door is {fraction(h.T)} "
            f"in thick and sits {fraction(h.i)} in behind the frame face. {proud_words(found)} "
            "Opened flat, how far does the door stand out into the corridor?"
        ),
        answer=LengthAnswer(value),
        hint="Where its face lands off the wall, and then the thickness of the door.",
        slips=(
            Slip(value - h.T, "That is to the face at the wall. The door's thickness stands out beyond it."),
            Slip(
                value - pin.o, "Opened flat, the door swings over the pin: what it stands off counts twice."
            ),
            Slip(value + h.i, "The inset comes off: the closed door sits behind the frame face."),
            Slip(value - h.p, "That is past the frame face. The frame stands proud of the wall by more."),
        ),
        solution=(
            f"Its face stands 2o − i = {fraction(clear)} in off the frame face, {fraction(clear + h.p)} in "
            "off the wall.",
            f"And the door's thickness: {fraction(clear + h.p)} + {fraction(h.T)} = {fraction(value)} in.",
        ),
        convention=_BARE,
        opening=found.opening,
        picture=_picture(found, _FLAT_OPEN),
        angle=_FLAT_OPEN,
    )


def _square(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    h, pin = found.h, found.pin
    value = _out(found, _SQUARE_OPEN)
    along = h.O - h.g_l - pin.x_p
    return Problem(
        question=(
            f"On a closed door the pull-side corner of the lock edge is {fraction(along)} in from the pin, "
            f"and the pin is {fraction(pin.y_p)} in off the frame face. {proud_words(found)} Square open, "
            "how far does the door stand out into the corridor?"
        ),
        answer=LengthAnswer(value),
        hint="Turned square, what lay along the opening points straight out from the pin.",
        slips=(
            Slip(along, "That is from the pin. The pin itself stands off the wall."),
            Slip(value - pin.y_p, "The pin stands off the frame face, and the door begins there."),
            Slip(value - h.p, "That is past the frame face. The frame stands proud of the wall by more."),
            Slip(value - 2 * h.p, "Proud is added: the wall lies behind the frame face."),
        ),
        solution=(
            f"At 90° what lay along the opening points straight out: {fraction(along)} + "
            f"{fraction(pin.y_p)} + {fraction(h.p)} = {fraction(value)} in from the wall face.",
        ),
        convention=_BARE,
        opening=found.opening,
        picture=_picture(found, _SQUARE_OPEN),
        angle=_SQUARE_OPEN,
    )


def _enough(corridor: float, out: float, must: float) -> tuple[Slip, Slip]:
    """Return what a wrong yes and a wrong no overlook."""
    left = f"{fraction(corridor - out)} in are left, and {fraction(must)} in must be."
    return Slip("yes", left), Slip("no", left)


@balanced("yes", "no")
def _at_rest(random: Random) -> Problem | None:
    row = limit("encroachment_at_rest")
    corridor, required = random.choice(_CORRIDORS), random.choice(_REQUIRED)
    found = random_leaf(random)
    out = random.choice((3.0, 3.5, 4.125, 5.5, 7.5, 9.0, 12.25, 18.5, 23.0, 36.0))
    remain, must = corridor - out, required - row.value
    if found is None or required > corridor or remain == must:
        return None
    return Problem(
        question=(
            f"A corridor is {fraction(corridor)} in wide; {fraction(required)} in are required. A door "
            f"fully open stands out {fraction(out)} in. Does it leave enough of the required width?"
        ),
        answer=yes_or_no(remain >= must),
        hint=f"Fully open, a door may take {fraction(row.value)} in of the required width. What must remain?",
        slips=_enough(corridor, out, must),
        solution=(
            f"Left: {fraction(corridor)} − {fraction(out)} = {fraction(remain)} in.",
            f"A door fully open may take {fraction(row.value)} in of the required width: "
            f"{fraction(required)} − {fraction(row.value)} = {fraction(must)} in must remain.",
        ),
        convention=f"{row.source}. Local codes and the authority decide.",
        picture=_picture(found, _FLAT_OPEN, corridor, f"door {fraction(out)}"),
    )


@balanced("yes", "no")
def _in_swing(random: Random) -> Problem | None:
    row = limit("encroachment_share")
    corridor, required = random.choice(_CORRIDORS), random.choice(_REQUIRED)
    found = random_leaf(random)
    if found is None or required > corridor:
        return None
    out = math.ceil(found.hung().encroachment_greatest * 8) / 8
    remain, must = corridor - out, required * row.value
    if remain <= 0 or remain == must:
        return None
    return Problem(
        question=(
            f"A corridor is {fraction(corridor)} in wide; {fraction(required)} in are required. At the "
            f"worst point of its swing a door stands out {fraction(out)} in. Does it leave enough then?"
        ),
        answer=yes_or_no(remain >= must),
        hint="While it swings, half of the required width must remain.",
        slips=_enough(corridor, out, must),
        solution=(
            f"Left: {fraction(corridor)} − {fraction(out)} = {fraction(remain)} in.",
            f"In any position half of the required width must remain: {fraction(must)} in.",
        ),
        convention=f"{row.source}. Local codes and the authority decide.",
        opening=found.opening,
        picture=_picture(found, _SQUARE_OPEN, corridor, f"door {fraction(out)}"),
        angle=_SQUARE_OPEN,
    )


def _remains(random: Random) -> Problem | None:
    found = random_leaf(random)
    corridor = random.choice(_CORRIDORS)
    if found is None or found.hung().greatest_angle_bare < 180.0:
        return None
    out = found.hung().encroachment_at_rest
    return Problem(
        question=(
            f"Opened flat against the wall, a door stands out {fraction(out)} in. The corridor is "
            f"{fraction(corridor)} in wide. How much of it remains?"
        ),
        answer=LengthAnswer(corridor - out),
        hint="Both are measured from the same wall.",
        slips=(
            Slip(corridor + out, "The door takes from the corridor: it comes off."),
            Slip(corridor - 2 * out, "One door stands out, not two."),
            Slip(out, "That is what the door takes. What is left is asked."),
        ),
        solution=(f"{fraction(corridor)} − {fraction(out)} = {fraction(corridor - out)} in.",),
        convention=_BARE,
        opening=found.opening,
        picture=_picture(found, _FLAT_OPEN, corridor, mark="left"),
        angle=_FLAT_OPEN,
    )


TEMPLATES = (
    Template("what remains of a corridor", TOPIC, 1, _remains),
    Template("out into the corridor at 90", TOPIC, 3, _square),
    Template("out into the corridor, flat", TOPIC, 3, _flat),
    Template("enough corridor at rest", TOPIC, 4, _at_rest),
    Template("enough corridor in the swing", TOPIC, 4, _in_swing),
)
