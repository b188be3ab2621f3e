"""Where a door stop goes, and when one is wanted rather than a wider hinge."""

import math
from random import Random

from configurator.geometry.inverse.bumper import stop_on_wall
from configurator.practice.answers import AngleAnswer, ChoiceAnswer, LengthAnswer
from configurator.practice.leaves import LEVER, random_leaf
from configurator.practice.problem import Problem, Template
from configurator.practice.topics.angles import lever_leaf
from configurator.practice.words import decimal, fraction
from configurator.units import format_angle, rounded

TOPIC = "door stops"
_REST = "The stop is to hold the door before lever or leaf meets anything."
_TIP = "The bumper is taken as its tip; check it against the stop's own drawing."
_SPINDLE = 1.0


def _whole_degree(random: Random) -> Problem | None:
    found = lever_leaf(random)
    if found is None:
        return None
    angle = found.hung().greatest_angle
    shown = rounded(angle, 10)
    if not 90 < angle < 180 or shown == round(shown) or math.floor(shown) != math.floor(angle):
        return None
    return Problem(
        question=(
            f"The lever of a door meets the wall at {format_angle(angle)}. An overhead stop is set in whole "
            "degrees. What is the widest setting that keeps the lever off the wall?"
        ),
        answer=AngleAnswer(math.floor(angle)),
        solution=(f"Down, never up, to the whole degree below {format_angle(angle)}: {math.floor(angle)}°.",),
        convention=f"0° is the closed door. {_REST}",
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


def _return_wall(random: Random) -> Problem | None:
    start = random.choice((2.0, 3.0, 4.0, 5.0, 6.0))
    wall = {"kind": "return wall", "start": start}
    found = random_leaf(random, obstructions=[wall], hardware=[LEVER])
    if found is None:
        return None
    angle = found.hung().greatest_angle
    settings = (80, 85, 90, 95, 100, 105, 110)
    if any(abs(angle - one) < 0.5 for one in settings) or not 85 < angle < 110:
        return None
    right = max(one for one in settings if one < angle)
    place = settings.index(right)
    around = settings[max(place - 1, 0) : place + 3]
    return Problem(
        question=(
            f"A return wall begins {fraction(start)} in beyond the frame. With its lever the door goes to "
            f"{format_angle(angle)}, without to {format_angle(found.hung().greatest_angle_bare)}. Which is "
            "the widest of these settings for an overhead stop?"
        ),
        answer=ChoiceAnswer(f"{right}°", tuple(f"{one}°" for one in around)),
        solution=(
            "The lever comes to the wall first, so it decides.",
            f"{right}° is the widest setting below {format_angle(angle)}. No hinge buys swing past a return "
            "wall.",
        ),
        convention=_REST,
        opening=found.opening,
        shown_first=True,
        angle=float(right),
    )


_BUMPER, _WIDER, _HEAVY, _NONE = "a wall bumper", "a wider hinge", "a heavier hinge", "nothing at all"


def _what_is_wanted(random: Random) -> Problem | None:
    found = lever_leaf(random) if random.random() < 0.7 else random_leaf(random)
    if found is None:
        return None
    hung = found.hung()
    if hung.greatest_angle_bare < 180 or 179.9 < hung.greatest_angle < 180:
        return None
    right = _NONE if hung.greatest_angle == 180 else _BUMPER
    goes = f"with its hardware it meets the wall at {format_angle(hung.greatest_angle)}"
    if right is _NONE:
        goes = "it carries nothing that meets the wall"
    why = {
        _BUMPER: "It is the lever that meets the wall, and the bare door folds flat already: fit a bumper.",
        _NONE: "It folds flat, and nothing strikes the wall.",
    }
    return Problem(
        question=(
            "A door must open to 180° against the wall. Bare it reaches "
            f"{format_angle(hung.greatest_angle_bare)}; {goes}. What does it want?"
        ),
        answer=ChoiceAnswer(right, (_BUMPER, _WIDER, _HEAVY, _NONE)),
        solution=(why[right],),
        convention="The hinge is chosen on the bare answer and on trim; hardware wants a stop.",
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


def _bumper(random: Random) -> Problem | None:
    found = lever_leaf(random)
    if found is None:
        return None
    h, pin, lever = found.h, found.pin, found.opening.hardware[0]
    along = h.O - h.g_l - (lever.from_latch_edge - lever.width / 2 + _SPINDLE) - pin.x_p
    projection = random.choice((1.0, 1.25, 1.5))
    place = stop_on_wall(h, pin, projection, along, lever.projection)
    if place is None:
        return None
    from_pin = pin.x_p - place.point[0]
    answer = LengthAnswer(from_pin, 1 / 16)
    ahead, behind = lever.projection - pin.o, h.p + pin.y_p - projection
    if min(ahead, behind) <= 0:
        return None
    rho = math.hypot(along, ahead)
    return Problem(
        question=(
            f"A bumper stands {fraction(projection)} in off the wall; its tip is then {fraction(behind)} in "
            f"behind the pin. It is to meet a point of the lever that lies {fraction(along)} in from the "
            f"pin along the closed door and {fraction(ahead)} in ahead of it. How far from the pin, along "
            "the wall, does the bumper go?"
        ),
        answer=answer,
        solution=(
            f"The point turns at sqrt({decimal(along)}² + {decimal(ahead)}²) = {decimal(rho)} in about the "
            "pin.",
            f"{decimal(behind)} in behind the pin it is sqrt({decimal(rho)}² − {decimal(behind)}²) = "
            f"{decimal(from_pin)} in along the wall: {answer.shown} to the nearest 1/16.",
        ),
        convention=_TIP,
        opening=found.opening,
        shown_first=True,
        angle=math.degrees(place.angle),
    )


TEMPLATES = (
    Template("what a door wants", TOPIC, 2, _what_is_wanted),
    Template("setting that keeps the lever off", TOPIC, 2, _whole_degree),
    Template("setting at a return wall", TOPIC, 3, _return_wall),
    Template("place of a bumper", TOPIC, 5, _bumper),
)
