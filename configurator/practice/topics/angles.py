"""How far a door opens, and what ends its swing."""

import math
from random import Random

from configurator.practice.answers import AngleAnswer, ChoiceAnswer
from configurator.practice.leaves import LEVER, PracticeLeaf, drawn, random_leaf
from configurator.practice.problem import Problem, Template
from configurator.practice.words import decimal, fraction, places
from configurator.units import CLOSED_IN, format_angle

TOPIC = "greatest angle"
_BARE = "The bare door is leaf and barrel, without lever or knob."


def _nearest(angle: float, decimals: int) -> str:
    """Write an angle as it is worked out, and then as the answer wants it."""
    return (
        f"{places(angle, 3)}°, to the nearest {'tenth' if decimals else 'degree'} {places(angle, decimals)}°"
    )


def face_on_corner(o: float, along: float, out: float) -> float:
    """Return the angle, degrees, at which the door face comes to a corner; inches.

    The corner stands `along` from the pin, away from the opening, and `out` off the pin, away from the wall.
    """
    rho = math.hypot(along, out)
    return math.degrees(math.atan2(out, -along) + math.asin(o / rho))


def point_on_wall(along: float, ahead: float, behind: float) -> float:
    """Return the angle, degrees, at which a point of the door comes to a wall `behind` the pin; inches.

    On the closed door the point is `along` from the pin and `ahead` of it, on the pull side.
    """
    rho = math.hypot(along, ahead)
    return math.degrees(math.pi + math.asin(behind / rho) - math.atan2(ahead, along))


def point_on_return_wall(along: float, ahead: float, beside: float) -> float:
    """Return the angle, degrees, at which a point comes to a wall square to the opening, `beside` the pin."""
    rho = math.hypot(along, ahead)
    return math.degrees(math.acos(-beside / rho) - math.atan2(ahead, along))


def _rail(random: Random) -> Problem | None:
    thing = {
        "kind": "chair rail",
        "projection": random.choice((1.5, 1.75, 2.0, 2.25, 2.5)),
        "start": random.choice((0.5, 1.0, 2.0, 3.0, 4.0)),
        "bottom": 32,
        "top": 36,
    }
    found = random_leaf(random, obstructions=[thing])
    if found is None:
        return None
    h, pin = found.h, found.pin
    along = h.F + found.opening.obstructions[0].start + pin.x_p  # type: ignore[operator]
    out = found.opening.obstructions[0].projection - h.p - pin.y_p  # type: ignore[operator]
    hung = found.hung()
    angle = hung.greatest_angle_bare
    if out <= 0 or abs(face_on_corner(pin.o, along, out) - angle) > CLOSED_IN:
        return None
    rho, lead = math.hypot(along, out), math.degrees(math.atan2(out, -along))
    return Problem(
        question=(
            f"The pin stands {fraction(pin.o)} in off the door face. Along the wall, the corner of a rail "
            f"is {fraction(along)} in from the pin, and it stands {fraction(out)} in farther off the wall "
            "than the pin does. At what angle does the face of the bare door come to that corner?"
        ),
        answer=AngleAnswer(angle, 0.1),
        solution=(
            f"From the pin to the corner: sqrt({decimal(along)}² + {decimal(out)}²) = {decimal(rho)} in, in "
            f"the direction {places(lead, 3)}°.",
            f"The face passes the pin at {fraction(pin.o)} in, so it comes there asin({decimal(pin.o)} / "
            f"{decimal(rho)}) = {places(math.degrees(math.asin(pin.o / rho)), 3)}° later.",
            f"{places(lead, 3)}° + {places(angle - lead, 3)}° = {_nearest(angle, 1)}.",
        ),
        convention=f"0° is the closed door. {_BARE}",
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


def _return_wall(random: Random) -> Problem | None:
    start = random.choice((2.0, 3.0, 4.0, 5.0, 6.0, 8.0))
    found = random_leaf(random, obstructions=[{"kind": "return wall", "start": start}])
    if found is None:
        return None
    h, pin = found.h, found.pin
    along, beside = h.O - h.g_l - pin.x_p, h.F + start + pin.x_p
    angle = found.hung().greatest_angle_bare
    if abs(point_on_return_wall(along, -pin.o, beside) - angle) > CLOSED_IN:
        return None
    rho, lag = math.hypot(along, pin.o), math.degrees(math.atan2(pin.o, along))
    return Problem(
        question=(
            f"A return wall stands square to the opening, {fraction(beside)} in beside the pin. The "
            f"pull-side corner of the lock edge is {fraction(along)} in from the pin along the closed door "
            f"and {fraction(pin.o)} in behind it. At what angle does that corner of the bare door meet the "
            "wall?"
        ),
        answer=AngleAnswer(angle),
        solution=(
            f"From the pin to the corner: sqrt({decimal(along)}² + {decimal(pin.o)}²) = {decimal(rho)} in; "
            f"closed it lies at −{places(lag, 3)}°.",
            f"It meets the wall where {decimal(rho)} × cos(angle − {places(lag, 3)}°) = −{decimal(beside)}.",
            f"angle = acos(−{decimal(beside)} / {decimal(rho)}) + {places(lag, 3)}° = {_nearest(angle, 0)}.",
        ),
        convention=f"0° is the closed door. {_BARE}",
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


def lever_leaf(random: Random) -> PracticeLeaf | None:
    """Draw an opening whose door carries a lever on the pull face."""
    lever = {
        **LEVER,
        "projection": random.choice((2.0, 2.25, 2.5, 2.75)),
        "from_latch_edge": random.choice((2.75, 3.75)),
    }
    return random_leaf(random, hardware=[lever])


def lever_corner(found: PracticeLeaf) -> tuple[float, float]:
    """Return where the lever's corner nearest the hinge is: along the door from the pin, and ahead of it."""
    h, pin, lever = found.h, found.pin, found.opening.hardware[0]
    along = h.O - h.g_l - (lever.from_latch_edge + lever.width / 2) - pin.x_p
    return along, lever.projection - pin.o


def _lever(random: Random) -> Problem | None:
    found = lever_leaf(random)
    if found is None:
        return None
    along, ahead = lever_corner(found)
    behind = found.h.p + found.pin.y_p
    angle = found.hung().greatest_angle
    if angle == 180.0 or abs(point_on_wall(along, ahead, behind) - angle) > CLOSED_IN:
        return None
    rho, lead = math.hypot(along, ahead), math.degrees(math.atan2(ahead, along))
    return Problem(
        question=(
            "On the closed door the outer corner of a lever, on the side of the hinge, is "
            f"{fraction(along)} in from the pin along the door and {fraction(ahead)} in ahead of it. The "
            f"wall face lies {fraction(behind)} in behind the pin. At what angle does the lever meet the "
            "wall?"
        ),
        answer=AngleAnswer(angle, 0.1),
        solution=(
            f"From the pin to the corner: sqrt({decimal(along)}² + {decimal(ahead)}²) = {decimal(rho)} in, "
            f"closed at {places(lead, 3)}°.",
            f"It is {decimal(behind)} in behind the pin at 180° + asin({decimal(behind)} / {decimal(rho)}) = "
            f"{places(angle + lead, 3)}°.",
            f"{places(angle + lead, 3)}° − {places(lead, 3)}° = {_nearest(angle, 1)}.",
        ),
        convention="0° is the closed door; the lever is taken as a box seen from above.",
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


_LEVER, _LEAF, _NOTHING = "the lever, on the wall", "the leaf, on the rail", "nothing: it folds flat"


def _what_stops(random: Random) -> Problem | None:
    data = drawn(random, hardware=[LEVER] if random.random() < 0.6 else [])
    if random.random() < 0.7:
        rail = {"kind": "chair rail", "projection": random.choice((0.75, 1.75, 2.5)), "start": 0.5}
        data["obstructions"] = [{**rail, "bottom": 30, "top": 34}]
    found = random_leaf(random, **data)
    if found is None:
        return None
    hung = found.hung()
    met = hung.stopped_by
    parts = {("lever", "wall"): _LEVER, ("leaf", "chair rail"): _LEAF}
    right = _NOTHING if met is None else parts.get((met.part, met.kind))
    if right is None or 180.0 > hung.greatest_angle > 179.9 or _grazes(found):
        return None
    return Problem(
        question=f"{_what_stands(found)} What ends the swing first?",
        answer=ChoiceAnswer(right, (_LEVER, _LEAF, _NOTHING)),
        solution=(
            *_against_flat(found),
            f"The bare door reaches {format_angle(hung.greatest_angle_bare)}, with its hardware "
            f"{format_angle(hung.greatest_angle)}.",
            f"So it is {right}.",
        ),
        convention="A lever that meets a wall first wants a stop, not a wider hinge.",
        opening=found.opening,
        shown_first=True,
        angle=180.0,
    )


def _flat(found: PracticeLeaf) -> float:
    """Return how far the face of the door open flat would stand off the wall."""
    return 2 * found.pin.o - found.h.i + found.h.p


def _grazes(found: PracticeLeaf) -> bool:
    return any(abs(_flat(found) - out) < 1 / 16 for _, out in _things(found))


def _things(found: PracticeLeaf) -> list[tuple[str, float]]:
    """Return what stands behind the open door and what stands on it, and how far each stands out."""
    rails = [("rail", rail.projection or 0.0) for rail in found.opening.obstructions]
    return rails + [("lever", lever.projection) for lever in found.opening.hardware]


def _against_flat(found: PracticeLeaf) -> list[str]:
    """Set what stands behind the open door and what stands on it against the room there would be."""
    flat = _flat(found)
    return [
        f"The {name} stands out {fraction(out)} in, "
        f"{'less' if out < flat else 'more'} than the {fraction(flat)} in there would be."
        for name, out in _things(found)
    ]


def _what_stands(found: PracticeLeaf) -> str:
    flat = _flat(found)
    words = [f"Open flat, the face of a door would stand {fraction(flat)} in off the wall."]
    for thing in found.opening.obstructions:
        words.append(
            f"A chair rail 30 to 34 in high stands {fraction(thing.projection or 0.0)} in off the wall."
        )
    if found.opening.hardware:
        lever = found.opening.hardware[0]
        words.append(
            "On that face a lever, middle 38 in high and 3-1/2 in tall, stands "
            f"{fraction(lever.projection)} in off the door."
        )
    else:
        words.append("Nothing is on the face of the door.")
    return " ".join(words)


TEMPLATES = (
    Template("what ends the swing", TOPIC, 3, _what_stops),
    Template("angle at a return wall", TOPIC, 5, _return_wall),
    Template("angle at a rail", TOPIC, 5, _rail),
    Template("angle of a lever on the wall", TOPIC, 5, _lever),
)
