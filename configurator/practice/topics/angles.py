"""How far a door opens, and what ends its swing: judged by eye and by a few shares."""

from collections.abc import Mapping
from random import Random
from types import MappingProxyType
from typing import Any

from configurator.practice.leaves import LEVER, PracticeLeaf, drawn, hung_in_stock, practice_leaf, random_leaf
from configurator.practice.problem import Picture, Problem, Slip, Template, balanced
from configurator.practice.words import fraction
from configurator.practice.written import ChoiceAnswer
from configurator.units import format_angle

TOPIC = "greatest angle"
_BARE = "The bare door is leaf and barrel, without lever or knob."
_SHARES: Mapping[str, tuple[str, float]] = MappingProxyType(
    {
        "95°": ("about a tenth", 0.1), "105°": ("about a quarter", 0.25), "120°": ("about half", 0.5),
        "150°": ("about seven eighths", 0.87),
    }
)  # fmt: skip
"""How far a door turns against a return wall, by how far the wall is from the pin, as a share of the door."""
_NEAR = 2.5
"""Degrees: an answer named by an eye is as near as this to what the geometry says."""


@balanced(*_SHARES)
def _return_wall(random: Random) -> Problem | None:
    start = random.choice(
        (0.5, 1.0, 2.0, 5.0, 6.0, 7.0, 8.0, 13.0, 14.0, 15.0, 16.0, 18.0, 25.0, 28.0, 30.0, 32.0)
    )
    found = random_leaf(random, obstructions=[{"kind": "return wall", "start": start}])
    if found is None:
        return None
    h, pin = found.h, found.pin
    along, beside = h.O - h.g_l - pin.x_p, h.F + start + pin.x_p
    angle = found.hung().greatest_angle_bare
    right = next((one for one in _SHARES if abs(float(one[:-1]) - angle) < _NEAR), None)
    if right is None:
        return None
    share, square = _SHARES[right][0], float(right[:-1]) - 90
    return Problem(
        question=(
            f"A return wall stands square to the opening, {fraction(beside)} in beside the pin. The door is "
            f"{fraction(along)} in from the pin to its lock edge. About how far does the bare door open?"
        ),
        answer=ChoiceAnswer(right, tuple(_SHARES)),
        hint="Square open it stands off the wall by all of that. What share of the door's width is it?",
        slips=tuple(
            Slip(one, f"So far it goes where the wall is {words} of the door's width away.")
            for one, (words, _) in _SHARES.items()
            if one != right
        ),
        solution=(
            f"{fraction(beside)} in is {share} of the door's {fraction(along)} in.",
            "Past square a door turns about 5° for a tenth of its width, 15° for a quarter, 30° for "
            "a half, 60° for "
            "seven eighths.",
            f"90° + {square:.0f}° = {right}; worked out exactly it is {format_angle(angle)}.",
        ),
        convention=f"0° is the closed door. {_BARE}",
        opening=found.opening,
        picture=Picture("swing", (("beside", fraction(beside)),), (found.opening,)),
        angle=180.0,
    )


_A, _B, _ALIKE = "door A", "door B", "both alike"


def _greatest(found: PracticeLeaf, bare: bool) -> float:
    hung = found.hung()
    return hung.greatest_angle_bare if bare else hung.greatest_angle


def _of_two(
    random: Random,
    data: dict[str, Any],
    changes: tuple[tuple[str, str, float], ...],
    words: str,
    bare: bool,
    why: str,
) -> Problem | None:
    """Pose which of two doors opens farther: alike but for a change: a path, its words, its new value."""
    path, named, value = random.choice(changes)
    first = hung_in_stock(data, random)
    if path == "compare":
        wider = [one for one in first.wider if one <= first.width + value]
        if not wider:
            return None
        second = first.on(wider[0])
        told = (f"{first.size} hinges", f"{second.size} hinges")
    else:
        room, _, name = path.rpartition(".")
        old = _at(data, room)[name]
        if old == value:
            return None
        second = _changed(data, room, name, value, first.width)
        told = (_with_length(named, old), _with_length(named, value))
    if random.random() < 0.5:
        first, second, told = second, first, (told[1], told[0])
    one, two = (_greatest(each, bare) for each in (first, second))
    if (
        min(one, two) < 90
        or 0 < abs(one - two) < 0.3
        or one == two == 180
        or min(first.pin.o, first.pin.y_p) < 0.3
    ):
        return None
    right = _ALIKE if one == two else _A if one > two else _B
    reached = f"A reaches {format_angle(one)}, B {format_angle(two)}."
    return Problem(
        question=f"{words} They differ in one thing: A has {told[0]}, B {told[1]}. Which opens farther?",
        answer=ChoiceAnswer(right, (_A, _B, _ALIKE)),
        hint="What moves: the pin, the thing it meets, or neither?",
        slips=tuple(Slip(each, f"{_REASONS[path]} {reached}") for each in (_A, _B, _ALIKE) if each != right),
        solution=(_REASONS[path], reached),
        convention=why,
        opening=first.opening,
        picture=Picture("two", (), (first.opening, second.opening), words=told),
        angle=180.0,
    )


def _with_length(named: str, value: float) -> str:
    """Say a thing with its length, inches; a frame that is not proud is flush."""
    return f"{named} {fraction(value)} in" if value else "a frame flush with the wall"


def _at(data: dict[str, Any], room: str) -> Any:
    """Return the part of an opening that a path names, a thing in a list as its first."""
    part: Any = data
    for name in filter(None, room.split(".")):
        part = part[0] if name == "0" else part[name]
    return part


def _changed(data: dict[str, Any], room: str, name: str, value: float, width: float) -> PracticeLeaf:
    place = room.split(".")[0]
    inner = {**_at(data, room), name: value}
    return practice_leaf({**data, place: [inner] if isinstance(data[place], list) else inner}, width)


_REASONS: Mapping[str, str] = MappingProxyType(
    {
        "compare": "A wider hinge holds the pin farther off, and the door passes more.",
        "obstructions.0.start": "A rail that begins farther out is met nearer to flat.",
        "obstructions.0.projection": "What stands out less is met later.",
        "wall.frame_proud": "The prouder the frame, the farther back is the wall and all that is on it.",
        "hardware.0.projection": "A lever that stands out less comes to the wall later.",
        "size.height": "How high the opening is changes nothing in plan.",
        "frame.stop_height": "How high the frame stop is does not move the pin or the wall.",
    }
)


_PLAN_ALIKE = (("size.height", "an opening height of", 84.0), ("frame.stop_height", "frame stops of", 0.75))


@balanced(_A, _B, _ALIKE)
def _rail(random: Random) -> Problem | None:
    rail = {
        "kind": "chair rail",
        "projection": random.choice((1.75, 2.0, 2.25)),
        "start": 0.5,
        "bottom": 32,
        "top": 36,
    }
    data = drawn(random, obstructions=[rail])
    changes = (
        ("compare", "", 2.0),
        ("obstructions.0.start", "a rail that begins beyond the frame by", random.choice((4.0, 6.0))),
        ("obstructions.0.projection", "a rail that stands out", 1.5),
        ("wall.frame_proud", "a frame proud by", random.choice((0.0, 0.25, 0.5))),
        *_PLAN_ALIKE,
    )
    return _of_two(random, data, changes, "Two bare doors swing against a chair rail.", bare=True, why=_BARE)


@balanced(_A, _B, _ALIKE)
def _lever(random: Random) -> Problem | None:
    lever = {**LEVER, "projection": random.choice((2.25, 2.5, 2.75))}
    changes = (
        ("compare", "", 2.0),
        ("hardware.0.projection", "a lever that stands out", random.choice((2.0, 3.0))),
        ("wall.frame_proud", "a frame proud by", random.choice((0.0, 0.25, 0.5))),
        *_PLAN_ALIKE,
    )
    data = drawn(random, hardware=[lever])
    return _of_two(
        random,
        data,
        changes,
        "Two doors swing until their levers meet the wall.",
        bare=False,
        why="The lever is taken as a box seen from above.",
    )


def lever_leaf(random: Random) -> PracticeLeaf | None:
    """Draw an opening whose door carries a lever on the pull face."""
    lever = {
        **LEVER,
        "projection": random.choice((2.0, 2.25, 2.5, 2.75)),
        "from_latch_edge": random.choice((2.75, 3.75)),
    }
    return random_leaf(random, hardware=[lever])


_LEVER, _LEAF, _NOTHING = "the lever, on the wall", "the leaf, on the rail", "nothing: it opens flat"


@balanced(_LEVER, _LEAF, _NOTHING)
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
    reaches = (
        f"The bare door reaches {format_angle(hung.greatest_angle_bare)}, with its hardware "
        f"{format_angle(hung.greatest_angle)}."
    )
    flat = fraction(_flat(found))
    return Problem(
        question=f"{_what_stands(found)} What ends the swing first?",
        answer=ChoiceAnswer(right, (_LEVER, _LEAF, _NOTHING)),
        hint=f"Set each thing against the {flat} in there would be. What stands out more is met.",
        slips=(
            Slip(_LEVER, "The lever does not come to the wall first here. " + reaches),
            Slip(_LEAF, "The leaf does not come to the rail here. " + reaches),
            Slip(_NOTHING, f"Something stands out more than {flat} in. " + reaches),
        ),
        solution=(*_against_flat(found), reaches, f"So it is {right}."),
        convention="A lever that meets a wall first wants a stop, not a wider hinge.",
        opening=found.opening,
        picture=Picture("swing", (), (found.opening,)),
        angle=180.0,
    )


def _flat(found: PracticeLeaf) -> float:
    """Return how far the face of the door opened flat would stand off the wall."""
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
    words = [f"Opened flat, the face of a door would be {fraction(flat)} in off the wall."]
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
