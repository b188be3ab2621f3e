"""How many hinges, how high, of what kind, and where they sit."""

from random import Random

from configurator.model import Opening
from configurator.practice.answers import CountAnswer, LengthAnswer
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template, balanced
from configurator.practice.words import fraction
from configurator.practice.written import ChoiceAnswer
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
_HEAD_GAP, _UNDERCUT = 0.125, 0.75


def _opening(width: float, height: float, **more: object) -> Opening:
    data = {"mark": "practice", "hand": "LH", "size": {"width": width, "height": height}, **more}
    return Opening.model_validate(data)


def count_slips(height: float) -> tuple[Slip, ...]:
    """Return the slips in counting the hinges of a leaf so high, inches."""
    right = hinge_count(height).value
    return (
        Slip(right - 1, "One short. A height past the limit takes one more, even by a part of an inch."),
        Slip(right + 1, "One too many. Up to the limit and on it, the lower count holds."),
    )


def _count(random: Random) -> Problem:
    height = random.choice(_HEIGHTS)
    said = hinge_count(height)
    return Problem(
        question=f"A leaf is {fraction(height)} in high. How many hinges?",
        answer=CountAnswer(said.value),
        hint="Two up to 60 in, three up to 90 in, one more for each 30 in or part of it.",
        slips=count_slips(height),
        solution=(as_sentence(written(said.because)),),
        convention=f"The count goes by the leaf's height: {said.source}.",
        picture=Picture(
            "blank",
            (("leaf_height", f"{fraction(height)} in"),),
            (
                _opening(
                    36, height + _HEAD_GAP + _UNDERCUT, door={"head_gap": _HEAD_GAP, "undercut": _UNDERCUT}
                ),
            ),
        ),
    )


def _dutch(random: Random) -> Problem:
    height, split = random.choice((80.0, 84.0, 96.0)), random.choice((36.0, 40.0, 42.0))
    opening = _opening(36, height, leaves="dutch", split_height=split)
    counts = [(leaf, hinge_count(leaf.height).value) for leaf in leaves_of(fill(opening))]
    total = sum(count for _, count in counts)
    lines = tuple(
        f"With the usual gaps the {leaf.name} leaf is {fraction(leaf.height)} in high and takes {count}."
        for leaf, count in counts
    )
    whole = hinge_count(height).value
    return Problem(
        question=(
            f"A Dutch door in an opening {feet(height)} high is split {fraction(split)} in above the "
            "floor. How many hinges in all?"
        ),
        answer=CountAnswer(total),
        hint="The two leaves swing apart. Count each as a door of its own.",
        slips=(
            Slip(whole, "That is for one leaf of full height. Each half hangs by itself."),
            Slip(counts[0][1], "That is one of the two leaves."),
        ),
        solution=(*lines, f"Each leaf hangs by itself: {total} together."),
        convention=f"Each leaf is counted by its own height: {hinge_count(40).source}.",
        picture=Picture(
            "blank", (("split", f"{fraction(split)} in"), ("height", f"{fraction(height)} in")), (opening,)
        ),
    )


def _height(random: Random) -> Problem:
    thickness = random.choice((1.375, 1.75, 1.75, 2.25))
    width = random.choice((27.75, 31.75, 33.75, 35.75, 37.75, 39.75, 43.75, 47.75, 49.75))
    if thickness == 1.375:
        width = min(width, 35.75)
    said = hinge_height(thickness, width)
    return Problem(
        question=f"A door is {fraction(thickness)} in thick and {fraction(width)} in wide. What "
        "height hinge?",
        answer=LengthAnswer(said.value, limit="stock"),
        hint="First the thickness picks the rows of the table, then the width picks the height.",
        slips=(
            Slip(said.value - 0.5, "Too low for a door this thick and wide. Look at the row for its width."),
            Slip(said.value + 0.5, "Higher than it needs. Look at the row for its width."),
            Slip(said.value - 1, "Too low for a door this thick and wide. Look at the row for its width."),
            Slip(said.value + 1, "Higher than it needs. Look at the row for its width."),
        ),
        solution=(as_sentence(written(said.because)),),
        convention=f"The usual table, which makers' tables may differ from: {said.source}.",
        picture=Picture("sample", (("height", f"height {ASKED}"),), values=(4.5, 4.5)),
    )


def _door(random: Random) -> tuple[LeafSize, float, float, str, Opening]:
    """Draw a leaf, the height of its head, that of its hinges, a rule for their places, and all of it."""
    head, height, rule = (
        random.choice((80.0, 84.0, 90.0)),
        random.choice((4.0, 4.5, 5.0)),
        random.choice(_RULES),
    )
    leaf = LeafSize("single", 35.75, _UNDERCUT, head - _HEAD_GAP)
    door = {"head_gap": _HEAD_GAP, "undercut": _UNDERCUT}
    hung = _opening(
        36,
        head,
        door=door,
        hinge={"height": height, "count": 3},
        hinge_locations={"rule": rule},
        compare=[4.5],
    )
    return leaf, head, height, rule, hung


def _rule_words(rule: str) -> str:
    top, bottom = rows_of_rule(rule)
    return (
        f"The rule “{rule}”: {fraction(top.distance)} in from the {top.datum}, {fraction(bottom.distance)} "
        f"in from the {bottom.datum} ({top.source}). Others set them otherwise."
    )


def _top_hinge(random: Random) -> Problem:
    leaf, head, height, rule, opening = _door(random)
    bottom, top = hinge_places(leaf, 3, height, head, rule)[-1]
    distance = rows_of_rule(rule)[0].distance
    return Problem(
        question=(
            f"The head rabbet is {fraction(head)} in off the finished floor, the hinges are "
            f"{fraction(height)} in high. By the rule “{rule}”, how far off the floor is the bottom "
            "of the top "
            "hinge?"
        ),
        answer=LengthAnswer(bottom),
        hint="Come down from the head rabbet: first the distance of the rule, then the hinge itself.",
        slips=(
            Slip(top, "That is the top of the hinge. Its own height comes off too."),
            Slip(top - height / 2, "That is its middle. Its bottom is asked."),
            Slip(head - height, "The distance of the rule comes off too."),
            Slip(distance, "That is the distance below the head. The height off the floor is asked."),
        ),
        solution=(
            f"Its top is {fraction(distance)} in below the head rabbet: {fraction(head)} − "
            f"{fraction(distance)} = {fraction(top)} in.",
            f"Less its height: {fraction(top)} − {fraction(height)} = {fraction(bottom)} in.",
        ),
        convention=_rule_words(rule),
        picture=Picture("front", (("top_hinge", ASKED), ("height", f"{fraction(head)} in")), (opening,)),
    )


def _middle_hinge(random: Random) -> Problem:
    leaf, head, height, rule, opening = _door(random)
    places = hinge_places(leaf, 3, height, head, rule)
    low, high = places[0][0], places[2][1]
    middle = sum(places[1]) / 2
    return Problem(
        question=(
            f"A door hangs on three hinges {fraction(height)} in high; the head rabbet is {fraction(head)} "
            f"in off the finished floor. By the rule “{rule}”, how far off the floor is the middle of "
            "the middle hinge?"
        ),
        answer=LengthAnswer(middle),
        hint="Find where the bottom hinge begins and where the top one ends. The middle one is halfway.",
        slips=(
            Slip(head / 2, "That is half the opening. Top and bottom hinge sit at different distances."),
            Slip(middle - height / 2, "That is its bottom. Its middle is asked."),
            Slip((high - low) / 2, "That is counted from the bottom hinge. Add where that begins."),
        ),
        solution=(
            f"The bottom hinge begins at {fraction(low)} in, the top one ends at {fraction(high)} in.",
            f"Halfway between: ({fraction(low)} + {fraction(high)}) / 2 = {fraction(middle)} in.",
        ),
        convention=f"{_rule_words(rule)} The middle hinge is halfway between the other two.",
        picture=Picture("front", (("middle_hinge", ASKED), ("height", f"{fraction(head)} in")), (opening,)),
    )


_BEARINGS = {"plain": "plain bearing", "ball": "antifriction bearing"}


@balanced(*_BEARINGS.values())
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
    right, wrong = _BEARINGS[said.value], _BEARINGS["plain" if said.value == "ball" else "ball"]
    why = (
        "A plain bearing wears under a closer, and in any but light traffic."
        if said.value == "ball"
        else "It costs more, and a door with little traffic and no closer does not need it."
    )
    return Problem(
        question=(
            f"An interior hollow metal door, 3'-0\" x 7'-0\", {closer}, {use['traffic']} traffic, not fire "
            "rated. Plain or antifriction bearing?"
        ),
        answer=ChoiceAnswer(right, tuple(_BEARINGS.values())),
        hint="Ask two things: is there a closer, and how often is the door used?",
        slips=(Slip(wrong, why),),
        solution=(as_sentence(written(said.because)),),
        convention=f"{said.source}. A ball bearing is the common antifriction bearing.",
        picture=Picture("sample", (("joints", f"bearing {ASKED}"),), values=(4.5, 4.5)),
    )


_MAY, _MAY_NOT = "yes", "no, non-removable"


@balanced(_MAY, _MAY_NOT)
def _pin(random: Random) -> Problem:
    hand, locked = random.choice(("LH", "RH", "LHR", "RHR")), random.random() < 0.6
    said = hinge_pin(hand, Lock(locked))
    lock = "is locked, with the key outside" if locked else "has no lock"
    may = said.value == "removable"
    return Problem(
        question=f"A door is {hand} and {lock}. May the pins of its hinges be removable?",
        answer=ChoiceAnswer(_MAY if may else _MAY_NOT, (_MAY, _MAY_NOT)),
        hint="Could somebody locked out see the barrels, and is there anything to keep them out of?",
        slips=(
            Slip(
                _MAY,
                "It swings out: whoever is locked out stands beside the barrels and drives the pins out.",
            ),
            Slip(_MAY_NOT, "Nobody locked out can get at these pins, so the usual pin will do."),
        ),
        solution=(as_sentence(written(said.because)),),
        convention="Hinges without a security stud. The hand is told from outside, the side of the key.",
        picture=Picture("closed", openings=(_opening(36, 84, hand=hand),)),
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
