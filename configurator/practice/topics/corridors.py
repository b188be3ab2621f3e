"""How far an open door stands out into a corridor, and what remains of it."""

import math
from random import Random

from configurator.geometry.encroachment import encroachment
from configurator.practice.answers import LengthAnswer, yes_or_no
from configurator.practice.leaves import PracticeLeaf, proud_words, random_leaf
from configurator.practice.problem import Problem, Template
from configurator.practice.words import fraction
from configurator.tables import limit

TOPIC = "corridor"
_BARE = "Counted from the wall face to the leaf, without lever or knob."
_CORRIDORS = (44.0, 48.0, 54.0, 60.0, 66.0, 72.0, 84.0)
_REQUIRED = (36.0, 44.0)


def _out(found: PracticeLeaf, degrees: float) -> float:
    hung = found.hung()
    scene = hung.solution.scene
    return encroachment((scene.leaf,), scene.hanging, scene.pin, math.radians(degrees))


def _flat(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None or found.hung().greatest_angle_bare < 180.0:
        return None
    h, pin = found.h, found.pin
    value = found.hung().encroachment_at_rest
    clear = 2 * pin.o - h.i
    return Problem(
        question=(
            f"The pin of a door stands {fraction(pin.o)} in off the door face. The door is {fraction(h.T)} "
            f"in thick and its face sits {fraction(h.i)} in behind the frame face. {proud_words(found)} "
            "Open flat, how far does the door stand out into the corridor?"
        ),
        answer=LengthAnswer(value),
        solution=(
            f"Its face stands 2o − i = {fraction(clear)} in off the frame face, {fraction(clear + h.p)} in "
            "off the wall.",
            f"And the door's thickness: {fraction(clear + h.p)} + {fraction(h.T)} = {fraction(value)} in.",
        ),
        convention=_BARE,
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


def _square(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    h, pin = found.h, found.pin
    value = _out(found, 90.0)
    along = h.O - h.g_l - pin.x_p
    return Problem(
        question=(
            f"On a closed door the pull-side corner of the lock edge is {fraction(along)} in from the pin, "
            f"and the pin stands {fraction(pin.y_p)} in off the frame face. {proud_words(found)} Open 90°, "
            "how far does the door stand out into the corridor?"
        ),
        answer=LengthAnswer(value),
        solution=(
            f"At 90° what lay along the opening points straight out: {fraction(along)} + "
            f"{fraction(pin.y_p)} + {fraction(h.p)} = {fraction(value)} in from the wall face.",
        ),
        convention=_BARE,
        opening=found.opening,
        shown_first=True,
        angle=90.0,
    )


def _at_rest(random: Random) -> Problem | None:
    row = limit("encroachment_at_rest")
    corridor, required = random.choice(_CORRIDORS), random.choice(_REQUIRED)
    out = random.choice((3.0, 3.5, 4.125, 5.5, 7.5, 9.0, 12.25, 18.5, 23.0, 36.0))
    remain, must = corridor - out, required - row.value
    if required > corridor or remain == must:
        return None
    return Problem(
        question=(
            f"A corridor is {fraction(corridor)} in wide and {fraction(required)} in are required. A door "
            f"at rest stands out {fraction(out)} in. Does it leave enough of the required width?"
        ),
        answer=yes_or_no(remain >= must),
        solution=(
            f"Left: {fraction(corridor)} − {fraction(out)} = {fraction(remain)} in.",
            f"A door fully open may take {fraction(row.value)} in of the required width: "
            f"{fraction(required)} − {fraction(row.value)} = {fraction(must)} in must remain.",
        ),
        convention=f"{row.source}. Local codes and the authority decide.",
    )


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
            f"A corridor is {fraction(corridor)} in wide and {fraction(required)} in are required. At the "
            f"worst point of its swing a door stands out {fraction(out)} in. Does it leave enough then?"
        ),
        answer=yes_or_no(remain >= must),
        solution=(
            f"Left: {fraction(corridor)} − {fraction(out)} = {fraction(remain)} in.",
            f"In any position half of the required width must remain: {fraction(must)} in.",
        ),
        convention=f"{row.source}. Local codes and the authority decide.",
        opening=found.opening,
        shown_first=True,
        angle=90.0,
    )


def _remains(random: Random) -> Problem | None:
    found = random_leaf(random)
    corridor = random.choice(_CORRIDORS)
    if found is None or found.hung().greatest_angle_bare < 180.0:
        return None
    out = found.hung().encroachment_at_rest
    return Problem(
        question=(
            f"Open flat, a door stands out {fraction(out)} in from the wall of a corridor "
            f"{fraction(corridor)} in wide. How much of the corridor remains?"
        ),
        answer=LengthAnswer(corridor - out),
        solution=(f"{fraction(corridor)} − {fraction(out)} = {fraction(corridor - out)} in.",),
        convention=_BARE,
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


TEMPLATES = (
    Template("what remains of a corridor", TOPIC, 1, _remains),
    Template("out into the corridor at 90", TOPIC, 3, _square),
    Template("out into the corridor, flat", TOPIC, 3, _flat),
    Template("enough corridor at rest", TOPIC, 4, _at_rest),
    Template("enough corridor in the swing", TOPIC, 4, _in_swing),
)
