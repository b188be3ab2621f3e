"""How many hinges, how high, of what kind, and where they sit."""

from random import Random

from configurator.model import Opening
from configurator.practice.answers import ChoiceAnswer, CountAnswer, LengthAnswer
from configurator.practice.problem import Problem, Template
from configurator.practice.words import fraction
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.places import hinge_places, rows_of_rule
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.pin import Lock, hinge_pin
from configurator.rules.hinge.sizes import hinge_count, hinge_height
from configurator.rules.wording import feet
from configurator.sentences import as_sentence, written
from configurator.study.run import study

TOPIC = "count and height"
_HEIGHTS = (58.0, 60.0, 62.0, 79.125, 83.125, 89.0, 90.0, 91.0, 95.125, 107.0, 119.0, 120.0, 121.0)
_RULES = ("5 and 10", "7 and 11")


def _count(random: Random) -> Problem:
    height = random.choice(_HEIGHTS)
    said = hinge_count(height)
    return Problem(
        question=f"A leaf is {fraction(height)} in high. How many hinges does it take?",
        answer=CountAnswer(said.value),
        solution=(as_sentence(written(said.because)),),
        convention=f"The count goes by the leaf's height: {said.source}.",
    )


def _dutch(random: Random) -> Problem:
    height, split = random.choice((80.0, 84.0, 96.0)), random.choice((36.0, 40.0, 42.0))
    size = {"width": 36, "height": height}
    opening = Opening.model_validate(
        {"mark": "practice", "leaves": "dutch", "size": size, "split_height": split}
    )
    counts = [(leaf, hinge_count(leaf.height).value) for leaf in leaves_of(fill(opening))]
    total = sum(count for _, count in counts)
    lines = tuple(
        f"With the usual gaps the {leaf.name} leaf is {fraction(leaf.height)} in high and takes {count}."
        for leaf, count in counts
    )
    return Problem(
        question=(
            f"A Dutch door in an opening {feet(height)} high is divided {fraction(split)} in above the "
            "floor. How many hinges does it take in all?"
        ),
        answer=CountAnswer(total),
        solution=(*lines, f"Each leaf hangs by itself: {total} together."),
        convention=f"Each leaf is counted by its own height: {hinge_count(40).source}.",
    )


def _height(random: Random) -> Problem:
    thickness = random.choice((1.375, 1.75, 1.75, 2.25))
    width = random.choice((27.75, 31.75, 33.75, 35.75, 37.75, 39.75, 43.75, 47.75, 49.75))
    if thickness == 1.375:
        width = min(width, 35.75)
    said = hinge_height(thickness, width)
    return Problem(
        question=(
            f"A door is {fraction(thickness)} in thick and {fraction(width)} in wide. How high is its hinge "
            "to be?"
        ),
        answer=LengthAnswer(said.value),
        solution=(as_sentence(written(said.because)),),
        convention=f"The usual table, which makers' tables may differ from: {said.source}.",
    )


def _door(random: Random) -> tuple[LeafSize, float, float, str]:
    """Draw a leaf, the height of its head rabbet, that of its hinges, and a rule for where they sit."""
    head = random.choice((80.0, 84.0, 90.0))
    leaf = LeafSize("single", 35.75, 0.75, head - 0.125)
    return leaf, head, random.choice((4.0, 4.5, 5.0)), random.choice(_RULES)


def _rule_words(rule: str) -> str:
    top, bottom = rows_of_rule(rule)
    return (
        f"The rule “{rule}”: {fraction(top.distance)} in from the {top.datum}, {fraction(bottom.distance)} "
        f"in from the {bottom.datum} ({top.source}). Others set them otherwise."
    )


def _top_hinge(random: Random) -> Problem:
    leaf, head, height, rule = _door(random)
    bottom, top = hinge_places(leaf, 3, height, head, rule)[-1]
    distance = rows_of_rule(rule)[0].distance
    return Problem(
        question=(
            f"The head rabbet is {fraction(head)} in above the finished floor and the hinges are "
            f"{fraction(height)} in high. By the rule “{rule}”, how high above the floor is the bottom of "
            "the top hinge?"
        ),
        answer=LengthAnswer(bottom),
        solution=(
            f"Its top is {fraction(distance)} in below the head rabbet: {fraction(head)} − "
            f"{fraction(distance)} = {fraction(top)} in.",
            f"Less its height: {fraction(top)} − {fraction(height)} = {fraction(bottom)} in.",
        ),
        convention=_rule_words(rule),
    )


def _middle_hinge(random: Random) -> Problem:
    leaf, head, height, rule = _door(random)
    places = hinge_places(leaf, 3, height, head, rule)
    low, high = places[0][0], places[2][1]
    middle = sum(places[1]) / 2
    return Problem(
        question=(
            f"A door hangs on three hinges {fraction(height)} in high; the head rabbet is {fraction(head)} "
            f"in above the finished floor. By the rule “{rule}”, how high above the floor is the middle of "
            "the middle hinge?"
        ),
        answer=LengthAnswer(middle),
        solution=(
            f"The bottom hinge begins at {fraction(low)} in, the top one ends at {fraction(high)} in.",
            f"Halfway between: ({fraction(low)} + {fraction(high)}) / 2 = {fraction(middle)} in.",
        ),
        convention=f"{_rule_words(rule)} The middle hinge is halfway between the other two.",
    )


_BEARINGS = {"plain": "plain bearing", "ball": "antifriction bearing"}


def _bearing(random: Random) -> Problem:
    use = {
        "closer": random.random() < 0.5,
        "traffic": random.choice(("low", "average", "high")),
        "fire_rated": False,
    }
    door = {"construction": "hollow metal, 18 gage"}
    data = {"mark": "practice", "size": "3070", "hand": "LH", "door": door, "use": use}
    opening = Opening.model_validate(data)
    said = study(opening).specification.whole["bearing"]
    closer = "with a door closer" if use["closer"] else "without a closer"
    return Problem(
        question=(
            f"An interior hollow metal door, 3'-0\" x 7'-0\", {closer}, sees {use['traffic']} traffic and "
            "is not fire rated. Does it take a plain or an antifriction bearing?"
        ),
        answer=ChoiceAnswer(_BEARINGS[said.value], tuple(_BEARINGS.values())),
        solution=(as_sentence(written(said.because)),),
        convention=f"{said.source}. A ball bearing is the common antifriction bearing.",
    )


def _pin(random: Random) -> Problem:
    hand, locked = random.choice(("LH", "RH", "LHR", "RHR")), random.random() < 0.75
    said = hinge_pin(hand, Lock(locked))
    lock = "is locked, with the key outside" if locked else "has no lock"
    return Problem(
        question=f"A door is {hand} and {lock}. May the pins of its hinges be removable?",
        answer=ChoiceAnswer(
            "yes" if said.value == "removable" else "no, non-removable", ("yes", "no, non-removable")
        ),
        solution=(as_sentence(written(said.because)),),
        convention="Hinges without a security stud. The hand is told from outside, the side of the key.",
    )


TEMPLATES = (
    Template("count of hinges", TOPIC, 1, _count),
    Template("height of a hinge", TOPIC, 2, _height),
    Template("place of the top hinge", TOPIC, 2, _top_hinge),
    Template("bearing of a hinge", TOPIC, 2, _bearing),
    Template("pin of a hinge", TOPIC, 2, _pin),
    Template("count on a Dutch door", TOPIC, 3, _dutch),
    Template("place of the middle hinge", TOPIC, 3, _middle_hinge),
)
