"""Quantities of an order, and slips in an order line."""

from collections.abc import Callable
from dataclasses import asdict, dataclass
from random import Random
from typing import Any

from configurator.model import Opening
from configurator.practice.answers import CountAnswer
from configurator.practice.problem import Picture, Problem, Slip, Template
from configurator.practice.words import fraction
from configurator.practice.written import ChoiceAnswer
from configurator.rules.hinge.fastening import screw_row
from configurator.rules.hinge.finish import finishes, same_look
from configurator.rules.hinge.sizes import hinge_count, pairs
from configurator.rules.wording import feet, size
from configurator.sentences import as_sentence, written
from configurator.study.run import study

TOPIC = "order quantities"
SLIPS = "slips in an order"
_DOORS = tuple(range(4, 61))
_PAIR = "A pair is two hinges."
_NONE = "none: the line is right"


def _drawn(random: Random) -> tuple[int, float, int]:
    """Draw a number of doors, their leaf height and the hinges of each."""
    height = random.choice((59.0, 79.125, 83.125, 89.125, 95.125, 107.125))
    return random.choice(_DOORS), height, hinge_count(height).value


def _front(width: float, height: float, **more: Any) -> Opening:
    """Return an opening whose leaves are so high, with the usual gaps; inches."""
    size = {"width": width, "height": height + 0.875}
    door = {"head_gap": 0.125, "undercut": 0.75}
    return Opening.model_validate({"mark": "practice", "hand": "LH", "size": size, "door": door, **more})


def _times(count: int, height: float, words: str = "doors", **more: Any) -> Picture:
    opening = _front(72 if more.get("leaves") == "pair" else 36, height, **more)
    return Picture(
        "blank", (("leaf_height", f"{fraction(height)} in"),), (opening,), words=(f"{count} {words}",)
    )


def _hinges(random: Random) -> Problem:
    doors, height, each = _drawn(random)
    return Problem(
        question=f"{doors} single doors, leaves {fraction(height)} in high. How many hinges do you order?",
        answer=CountAnswer(doors * each),
        hint="First how many a leaf so high takes, then times the doors.",
        slips=(
            Slip(doors * (each - 1), "One short on every door. Look again at the height."),
            Slip(doors * (each + 1), "One too many on every door. Look again at the height."),
            Slip(each, "That is for one door."),
        ),
        solution=(
            f"A leaf that high takes {each} hinges.",
            f"{doors} × {each} = {doors * each} hinges, which is {pairs(doors * each)}.",
        ),
        convention=f"{_PAIR} The count goes by the leaf's height: {hinge_count(height).source}.",
        picture=_times(doors, height),
    )


def _in_pairs(random: Random) -> Problem:
    doors = random.choice(_DOORS)
    each = random.choice((2, 3, 3, 4))
    return Problem(
        question=f"{doors} doors take {each} hinges each. How many pair of hinges is that?",
        answer=CountAnswer(doors * each, in_pairs=True),
        hint="Count the hinges. Two make a pair.",
        slips=(
            Slip(2 * doors, "That is a pair a door. Each door takes its own count."),
            Slip(4 * doors * each, "Two hinges make one pair: half as many pair as hinges, not twice."),
        ),
        solution=(f"{doors} × {each} = {doors * each} hinges; / 2 = {pairs(doors * each)}.",),
        convention=_PAIR,
        picture=Picture("pairs", values=(doors, each)),
    )


def _from_pairs(random: Random) -> Problem:
    each, doors = random.choice((3, 3, 4)), random.choice(_DOORS)
    hinges = doors * each
    return Problem(
        question=f"An order reads {pairs(hinges)} of hinges, {each} hinges a door. How many doors is it for?",
        answer=CountAnswer(doors, "doors"),
        hint="A pair is two hinges. Count the hinges first.",
        slips=(
            Slip(hinges, "That is the hinges. Each door takes several."),
            Slip(hinges // 2, "That is the pairs, near enough. Count hinges, then doors."),
            Slip(
                round(hinges / 2 / each), "The pairs were shared out as if they were hinges. A pair is two."
            ),
        ),
        solution=(f"{pairs(hinges)} is {hinges} hinges.", f"{hinges} / {each} = {doors} doors."),
        convention=_PAIR,
        picture=Picture("pairs", values=(0, each)),
    )


def _mixed(random: Random) -> Problem:
    low, high = random.choice(_DOORS), random.choice(_DOORS[:20])
    short, tall = 83.125, random.choice((95.125, 107.125))
    few, many = hinge_count(short).value, hinge_count(tall).value
    total = low * few + high * many
    return Problem(
        question=(
            f"A job has {low} doors with leaves {fraction(short)} in high and {high} with leaves "
            f"{fraction(tall)} in high. How many hinges in all?"
        ),
        answer=CountAnswer(total),
        hint="Two counts, one for each height, and then the sum.",
        slips=(
            Slip((low + high) * few, "The higher leaves take one more each."),
            Slip((low + high) * many, "The lower leaves take one less each."),
            Slip(low * many + high * few, "The two counts are turned about."),
        ),
        solution=(
            f"{low} × {few} = {low * few}, and {high} × {many} = {high * many}.",
            f"{low * few} + {high * many} = {total} hinges.",
        ),
        convention=f"{_PAIR} The count goes by the leaf's height: {hinge_count(short).source}.",
        picture=Picture(
            "two",
            openings=(_front(36, short), _front(36, tall)),
            words=(f"{low} doors, {fraction(short)} in", f"{high} doors, {fraction(tall)} in"),
            values=(1.0,),
        ),
    )


def _double_doors(random: Random) -> Problem:
    openings, height = random.choice(_DOORS[:30]), random.choice((83.125, 95.125))
    each = hinge_count(height).value
    total = 2 * openings * each
    return Problem(
        question=(
            f"{openings} openings with double doors, every leaf {fraction(height)} in high. How many hinges?"
        ),
        answer=CountAnswer(total),
        hint="Double doors are two leaves in one opening.",
        slips=(
            Slip(openings * each, "That is for one leaf of each opening. Double doors have two."),
            Slip(2 * openings * (each - 1), "One short on every leaf. Look again at the height."),
            Slip(2 * openings * (each + 1), "One too many on every leaf. Look again at the height."),
        ),
        solution=(
            f"A pair of doors is two leaves, each with {each} hinges: {2 * each} an opening.",
            f"{openings} × {2 * each} = {total} hinges, which is {pairs(total)} of hinges.",
        ),
        convention=f"{_PAIR} A pair of doors is two leaves in one opening.",
        picture=_times(openings, height, "openings", leaves="pair"),
    )


def _screws(random: Random) -> Problem:
    doors, height = random.choice(_DOORS), random.choice((4.5, 6.0))
    each, leaf = random.choice((2, 3, 4)), screw_row(height).per_leaf
    wood = doors * each * leaf
    return Problem(
        question=(
            f"{doors} wood doors in steel frames, {each} hinges each, {leaf} screws in every hinge "
            "leaf. How many wood screws?"
        ),
        answer=CountAnswer(wood, "wood screws"),
        hint="One leaf of each hinge is on wood, the other on steel.",
        slips=(
            Slip(2 * wood, "That is both leaves. The frame's is on steel and takes machine screws."),
            Slip(doors * leaf, "That is one hinge a door."),
            Slip(each * leaf, "That is for one door."),
        ),
        solution=(
            "The door leaf of each hinge takes wood screws, the frame leaf machine screws.",
            f"{doors} × {each} × {leaf} = {wood} wood screws, and as many machine screws.",
        ),
        convention="Without spares.",
        picture=Picture("sample", (("screws", "screws"),), values=(height, height)),
    )


@dataclass(frozen=True, slots=True)
class Line:
    """An order line as its parts, each in the words of an order."""

    quantity: str
    size: str
    bearing: str
    finish: str
    pin: str

    def parts(self) -> tuple[str, ...]:
        """Return the parts as the options of a question."""
        return (self.quantity, self.size, self.bearing, self.finish, self.pin)


@dataclass(frozen=True, slots=True)
class Ordered:
    """Doors all alike, what they are, and the line that is right for them."""

    opening: Opening
    words: str
    line: Line
    why: dict[str, str]
    doors: int
    height: float
    width: float
    hinges: int
    bhma: str


_BEARING = {"plain": "plain bearing", "ball": "antifriction bearing"}


def _drawn_opening(random: Random, outswing: bool) -> Opening:
    data: dict[str, Any] = {
        "mark": "practice",
        "quantity": random.choice(_DOORS),
        "hand": random.choice(("LHR", "RHR") if outswing else ("LH", "RH")),
        "size": {"width": random.choice((34, 36)), "height": random.choice((80, 84, 96))},
        "door": {"construction": "hollow metal, 18 gage", "thickness": 1.75},
        "use": {
            "closer": True,
            "locked": True,
            "traffic": "average",
            "fire_rated": False,
            "exposure": "interior",
        },
    }
    return Opening.model_validate(data)


def _ordered(random: Random, outswing: bool = False) -> Ordered:
    opening = _drawn_opening(random, outswing)
    found = study(opening)
    whole = found.specification.whole
    said = {key: reason.value for key, reason in whole.items()}
    hinges = said["count"] * opening.quantity
    line = Line(
        f"{hinges} hinges",
        size(said["height"], said["width"]),
        _BEARING[said["bearing"]],
        f"steel, finish {said['finish_bhma']}",
        f"{said['pin']} pin",
    )
    words = (
        f"{opening.quantity} single doors, {feet(opening.size.width)} x {feet(opening.size.height)}, 1-3/4 "
        f"in thick, hollow metal, {opening.hand}, locked with the key outside, with closers, average "
        "traffic, interior, satin chrome look, nothing on the wall."
    )
    why = {key: as_sentence(written(reason.because)) for key, reason in whole.items()}
    count = (opening.quantity, said["height"], said["width"], hinges)
    shown = Opening.model_validate({**opening.model_dump(exclude_unset=True), "compare": [said["width"]]})
    return Ordered(shown, words, line, why, *count, said["finish_bhma"])


_WHY = {"quantity": "count", "size": "height", "bearing": "bearing", "finish": "finish_bhma", "pin": "pin"}


def _fine(ordered: Ordered, part: str) -> str:
    """Say that a part of the line is right, and why."""
    return f"The {part} is right. {ordered.why[_WHY[part]]}"


def _slip(ordered: Ordered, part: str, wrong: str, why: str, random: Random) -> Problem | None:
    """Ask for the slip in an order line, or half of the time in one that is right."""
    line = asdict(ordered.line)
    right = line[part]
    if wrong == right:
        return None
    slipped = random.random() < 0.5
    parts = {**line, part: wrong} if slipped else line
    missed = f"Look at the {part}. {why}" if slipped else ""
    others = tuple(
        Slip(text, _fine(ordered, name)) for name, text in parts.items() if parts[name] == line[name]
    )
    return Problem(
        question=(
            f"For: {ordered.words}\nThe order line reads: {', '.join(parts.values())}.\nWhich part "
            "of it is wrong?"
        ),
        answer=ChoiceAnswer(wrong if slipped else _NONE, (*parts.values(), _NONE)),
        hint="Take the parts one by one: how many, what size, what bearing, what finish, what pin.",
        slips=(*others, *((Slip(_NONE, missed),) if slipped else ())),
        solution=(why, f"It should read: {right}.")
        if slipped
        else tuple(_fine(ordered, name) for name in line),
        convention="The hand is told from outside. Hinge sizes give the height first.",
        opening=ordered.opening,
    )


def _pair_slip(random: Random) -> Problem | None:
    one = _ordered(random)
    why = f"{one.doors} doors × {one.hinges // one.doors} hinges = {one.hinges} hinges = {pairs(one.hinges)}."
    return _slip(one, "quantity", f"{one.hinges} pair of hinges", why, random)


def _count_slip(random: Random) -> Problem | None:
    one = _ordered(random)
    each = one.hinges // one.doors
    wrong = f"{one.doors * (each - 1)} hinges"
    return _slip(one, "quantity", wrong, one.why["count"], random)


def _size_slip(random: Random) -> Problem | None:
    one = _ordered(random)
    if one.height == one.width:
        return None
    why = f"{one.why['height']} The first figure of a hinge size is its height."
    return _slip(one, "size", size(one.width, one.height), why, random)


def _bearing_slip(random: Random) -> Problem | None:
    one = _ordered(random)
    return _slip(one, "bearing", _BEARING["plain"], one.why["bearing"], random)


def _finish_slip(random: Random) -> Problem | None:
    one = _ordered(random)
    row = finishes(bhma=one.bhma)[0]
    metal = random.choice(("brass", "stainless"))
    other = same_look(row, metal) if metal == "brass" else finishes(look="satin stainless", metal=metal)[0]
    if other is None:
        return None
    why = f"{other.bhma} is {other.look} on {other.metal}, and the hinges are steel. {one.why['finish_bhma']}"
    return _slip(one, "finish", f"steel, finish {other.bhma}", why, random)


def _pin_slip(random: Random) -> Problem | None:
    one = _ordered(random, outswing=True)
    return _slip(one, "pin", "removable pin", one.why["pin"], random)


def _slip_template(key: str, make: Callable[[Random], Problem | None], level: int = 4) -> Template:
    return Template(f"slip: {key}", SLIPS, level, make)


TEMPLATES = (
    Template("hinges in pairs", TOPIC, 1, _in_pairs),
    Template("hinges of a job", TOPIC, 2, _hinges),
    Template("doors from pairs", TOPIC, 2, _from_pairs),
    Template("hinges of two heights", TOPIC, 3, _mixed),
    Template("hinges of double doors", TOPIC, 3, _double_doors),
    Template("wood screws", TOPIC, 3, _screws),
    _slip_template("pairs for hinges", _pair_slip),
    _slip_template("too few hinges", _count_slip),
    _slip_template("size turned about", _size_slip),
    _slip_template("bearing", _bearing_slip),
    _slip_template("finish of another metal", _finish_slip),
    _slip_template("pin in reach", _pin_slip),
)
