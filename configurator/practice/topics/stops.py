"""Which door stop a door gets, how far it is set, where it goes, and when a wider hinge is wanted besides."""

import math
from random import Random

from configurator.geometry.inverse.bumper import stop_on_wall
from configurator.practice.answers import AngleAnswer, LengthAnswer
from configurator.practice.leaves import LEVER, PracticeLeaf, hinge_size, random_leaf
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template, balanced
from configurator.practice.topics.angles import lever_leaf
from configurator.practice.words import decimal, fraction
from configurator.practice.written import ChoiceAnswer
from configurator.tables import limit
from configurator.units import format_angle, rounded

TOPIC = "door stops"
_REST = "The stop is to hold the door before lever or leaf meets anything."
_TIP = "The bumper is taken as a point; check it against the stop's own drawing."
_EVERY = "Every door gets a stop: one that runs on past flat pries at its hinges."
_SPINDLE = 1.0
_SETTINGS = (80, 85, 90, 95, 100, 105, 110)


def _to_return_wall(random: Random) -> tuple[PracticeLeaf, float] | None:
    """Draw a door with a lever beside a return wall; also where the wall begins beyond the frame, inches."""
    start = random.choice((1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0))
    found = random_leaf(random, obstructions=[{"kind": "return wall", "start": start}], hardware=[LEVER])
    return None if found is None else (found, start)


def _wall_words(found: PracticeLeaf, start: float) -> str:
    hung = found.hung()
    return (
        f"A return wall begins {fraction(start)} in beyond the frame. With its lever the door goes to "
        f"{format_angle(hung.greatest_angle)}, without to {format_angle(hung.greatest_angle_bare)}."
    )


def _wall_picture(found: PracticeLeaf) -> Picture:
    return Picture("swing", (("stop_at", ASKED),), (found.opening,))


def _whole_degree(random: Random) -> Problem | None:
    drawn = _to_return_wall(random)
    if drawn is None:
        return None
    found, start = drawn
    angle, most = found.hung().greatest_angle, int(limit("usual_angle_most").value)
    shown = rounded(angle, 10)
    if not 86 < angle < most + 8 or shown == round(shown) or math.floor(shown) != math.floor(angle):
        return None
    right = min(math.floor(angle), most)
    bare = math.floor(found.hung().greatest_angle_bare)
    why = (
        f"The stop itself ends at {most}°."
        if right == most
        else (f"Down, never up, to the whole degree below {format_angle(angle)}: {right}°.")
    )
    return Problem(
        question=(
            f"{_wall_words(found, start)} An overhead stop is set in whole degrees, up to {most}°. "
            "What is the "
            "widest setting that keeps lever and door off the wall?"
        ),
        answer=AngleAnswer(right, setting=True),
        hint="The lever comes to the wall first. And a stop is set short of the touch, not past it.",
        slips=(
            Slip(bare, "That is the bare door. Its lever comes to the wall before."),
            Slip(math.ceil(angle), "There the lever already touches. Round a stop down, never up."),
        ),
        solution=(f"The lever meets the wall at {format_angle(angle)}.", why),
        convention=f"0° is the closed door. {_REST} Overhead stops end near {most}°: common "
        "practice, no source.",
        opening=found.opening,
        picture=_wall_picture(found),
        angle=float(right),
    )


@balanced(*(f"{one}°" for one in _SETTINGS[2:6]))
def _return_wall(random: Random) -> Problem | None:
    drawn = _to_return_wall(random)
    if drawn is None:
        return None
    found, start = drawn
    angle = found.hung().greatest_angle
    if any(abs(angle - one) < 0.5 for one in _SETTINGS) or not 85 < angle < 110:
        return None
    right = max(one for one in _SETTINGS if one < angle)
    place = _SETTINGS.index(right)
    around = _SETTINGS[max(place - 1, 0) : place + 3]
    return Problem(
        question=f"{_wall_words(found, start)} Which of these is the widest setting for its overhead stop?",
        answer=ChoiceAnswer(f"{right}°", tuple(f"{one}°" for one in around)),
        hint="The lever comes to the wall first, so it decides.",
        slips=tuple(
            Slip(
                f"{one}°",
                f"Safe, and {right}° is too: it still stops short of {format_angle(angle)}."
                if one < right
                else f"Too far: at {format_angle(angle)} the lever is at the wall already.",
            )
            for one in around
            if one != right
        ),
        solution=(
            "The lever comes to the wall first, so it decides.",
            f"{right}° is the widest setting below {format_angle(angle)}. No hinge buys swing past a return "
            "wall.",
        ),
        convention=_REST,
        opening=found.opening,
        picture=_wall_picture(found),
        angle=float(right),
    )


_STOP, _WIDER = "a stop, hinge as it is", "a wider hinge, and a stop"
_HEAVY, _NONE = "a heavier hinge, and a stop", "nothing more"


def _with_rail(random: Random) -> PracticeLeaf | None:
    rail = {
        "kind": "chair rail",
        "projection": random.choice((1.5, 1.75, 2.0)),
        "start": 0.5,
        "bottom": 32,
        "top": 36,
    }
    return random_leaf(random, obstructions=[rail])


@balanced(_STOP, _WIDER)
def _what_is_wanted(random: Random) -> Problem | None:
    found = random.choice((lever_leaf, random_leaf, _with_rail))(random)
    if found is None:
        return None
    hung = found.hung()
    wider = next((one for one in found.wider if found.on(one).hung().greatest_angle_bare == 180), None)
    if 179.9 < hung.greatest_angle < 180 or (hung.greatest_angle_bare < 180 and wider is None):
        return None
    right = _STOP if hung.greatest_angle_bare == 180 else _WIDER
    goes, why = _how_it_goes(found)
    if wider is not None and right == _WIDER:
        why += f" On {hinge_size(found.hinge_height, wider)} it does."
    return Problem(
        question=(
            f"A door on {found.size} hinges must open flat, to 180°. Bare it reaches "
            f"{format_angle(hung.greatest_angle_bare)}; {goes}. What does it get?"
        ),
        answer=ChoiceAnswer(right, (_STOP, _WIDER, _HEAVY, _NONE)),
        hint="Does the bare door open flat? That is the hinge's part. What the lever meets is the stop's.",
        slips=(
            Slip(_NONE, _EVERY),
            Slip(_HEAVY, "Weight is a grade, for heavy or busy doors. It does not move the pin."),
            Slip(_WIDER, "The bare door opens flat already. A wider hinge buys nothing here."),
            Slip(_STOP, "The bare door itself does not open flat. The pin has to stand farther off."),
        ),
        solution=(why, _EVERY),
        convention="The hinge is chosen on the bare answer and on trim; hardware wants a stop.",
        opening=found.opening,
        picture=Picture("swing", (), (found.opening,)),
        angle=180.0,
    )


def _how_it_goes(found: PracticeLeaf) -> tuple[str, str]:
    """Say what ends the swing of a door, for the question and for its solution."""
    hung = found.hung()
    if hung.greatest_angle_bare < 180:
        return "then it meets the chair rail", "The bare door meets the rail, so the hinge is too narrow."
    if hung.greatest_angle < 180:
        meets = f"its lever meets the wall at {format_angle(hung.greatest_angle)}"
        return meets, "The bare door opens flat; only the lever meets the wall. A stop holds it off."
    return "it carries nothing that meets the wall", "It opens flat as it is."


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
    if round(2 * along) != round(2 * from_pin):
        return None
    answer = LengthAnswer(from_pin, 1 / 2)
    return Problem(
        question=(
            f"A bumper {fraction(projection)} in off the wall is to meet the lever's spindle, which is "
            f"{fraction(along)} in from the pin along the closed door. The door opens nearly flat. "
            "How far from the "
            "pin, along the wall, does the bumper go?"
        ),
        answer=answer,
        hint="Flat or nearly so, what was so far from the pin on the closed door is as far from it "
        "on the wall.",
        slips=(
            Slip(
                along / 2, "Halfway out the door levers at its hinges. The bumper goes where the lever comes."
            ),
            Slip(h.O - along, "That is from the lock edge. It is measured from the pin."),
            Slip(along + h.F, "From the pin, not from the frame's edge."),
        ),
        solution=(
            f"The point turns about the pin, {decimal(along)} in from it, and meets the bumper at "
            f"{format_angle(math.degrees(place.angle))}.",
            f"So near to flat it is as far along the wall: {answer.shown} to the nearest 1/2.",
        ),
        convention=_TIP,
        opening=found.opening,
        picture=Picture("swing", (("along", fraction(along)), ("bumper", ASKED)), (found.opening,)),
        angle=math.degrees(place.angle),
    )


TEMPLATES = (
    Template("what a door wants", TOPIC, 2, _what_is_wanted),
    Template("setting that keeps the lever off", TOPIC, 2, _whole_degree),
    Template("setting at a return wall", TOPIC, 3, _return_wall),
    Template("place of a bumper", TOPIC, 4, _bumper),
)
