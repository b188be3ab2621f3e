"""The hand of a door, seen from outside and from inside, and what follows from it."""

from dataclasses import replace
from random import Random

from configurator.model import Opening
from configurator.practice.answers import HANDS, ChoiceAnswer, CodeAnswer
from configurator.practice.problem import Problem, Template
from configurator.rules.hinge.pin import OUTSWING

TOPIC = "hands"
CONVENTION = "The hand is told from outside: the side you unlock from, the public one."
_PLACES = (
    ("the corridor", "the store room"),
    ("the yard", "the boat shed"),
    ("the concourse", "the ticket office"),
    ("the landing", "the crew mess"),
    ("the hall", "the linen closet"),
)


def _hand(hinges_left: bool, away: bool) -> str:
    """Return the hand of what is seen from outside."""
    return ("L" if hinges_left else "R") + ("H" if away else "HR")


def hinges_left(hand: str) -> bool:
    """Say whether the hinges are on the left of somebody outside."""
    return hand.startswith("L")


def _side(left: bool) -> str:
    return "left" if left else "right"


def _swing(away: bool) -> str:
    return "away from you" if away else "toward you"


def _rule(hand: str) -> tuple[str, str]:
    reverse = "toward you, so it is a reverse hand" if hand in OUTSWING else "away from you"
    return (
        f"From outside the hinges are on your {_side(hinges_left(hand))} and the door opens {reverse}.",
        f"That is {hand}, {HANDS[hand]}.",
    )


def _shown(hand: str) -> Opening:
    return Opening.model_validate({"mark": "practice", "hand": hand, "size": "3070", "compare": [4.5]})


def _posed(question: str, hand: str, *before: str) -> Problem:
    return Problem(
        question=question,
        answer=CodeAnswer(hand, "hand"),
        solution=(*before, *_rule(hand)),
        convention=CONVENTION,
        opening=_shown(hand),
        picture="hand",
    )


def _from_outside(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    return _posed(
        f"You stand outside, where you unlock the door. The hinges are on your {_side(hinges_left(hand))} "
        f"and the door opens {_swing(hand not in OUTSWING)}. What hand is it?",
        hand,
    )


def _from_inside(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    left, away = not hinges_left(hand), hand in OUTSWING
    return _posed(
        f"You stand inside. The hinges are on your {_side(left)} and the door opens {_swing(away)}. What "
        "hand is it?",
        hand,
        "Walk round to the outside: left and right change places, and so do away and toward.",
    )


def _with_rooms(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    outside, inside = random.choice(_PLACES)
    into = inside if hand not in OUTSWING else outside
    seen_outside = random.random() < 0.5
    stands = outside if seen_outside else inside
    left = hinges_left(hand) if seen_outside else not hinges_left(hand)
    return _posed(
        f"The key is used from {outside}. Standing in {stands} you see the hinge side on your "
        f"{_side(left)}; the door swings into {into}. What hand is it?",
        hand,
        f"Outside is {outside}, the side of the key.",
    )


def _from_the_pull(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    inside = random.random() < 0.5
    pulls = (hand in OUTSWING) != inside
    left = hinges_left(hand) != inside
    where, does = ("inside", "outside")[not inside], "pull" if pulls else "push"
    return _posed(
        f"From {where} you {does} the door to open it, and the lock edge is on your {_side(not left)}. What "
        "hand is it?",
        hand,
        f"The hinges are opposite the lock edge: on your {_side(left)} from {where}.",
        *(("From outside left and right, pull and push change places.",) if inside else ()),
    )


def _from_a_plan(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    return replace(
        _posed("The plan shows a door from above. You stand outside. What hand is it?", hand),
        shown_first=True,
    )


def _name_of(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    options = [f"hinges left, {swing}" for swing in ("push", "pull")]
    options += [f"hinges right, {swing}" for swing in ("push", "pull")]
    right = f"hinges {_side(hinges_left(hand))}, {'pull' if hand in OUTSWING else 'push'}"
    random.shuffle(options)
    return Problem(
        question=f"A door is {hand}. Where are its hinges, and what do you do to open it from outside?",
        answer=ChoiceAnswer(right, tuple(options)),
        solution=_rule(hand),
        convention=CONVENTION,
        opening=_shown(hand),
        picture="hand",
    )


def _seen_barrel(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    seen = hand in OUTSWING
    options = ("from outside", "from inside")
    return Problem(
        question=f"A closed door is {hand}. From which side do you see the barrels of its hinges?",
        answer=ChoiceAnswer(options[not seen], options),
        solution=(
            "The barrel stands on the side that the door swings to.",
            f"{hand} opens {'toward' if seen else 'away from'} somebody outside, so the barrel is seen "
            f"{options[not seen]}.",
        ),
        convention=CONVENTION,
        opening=_shown(hand),
        picture="hand",
    )


TEMPLATES = (
    Template("hand seen from outside", TOPIC, 1, _from_outside),
    Template("what a hand says", TOPIC, 1, _name_of),
    Template("hand from a plan", TOPIC, 1, _from_a_plan),
    Template("side the barrel shows on", TOPIC, 2, _seen_barrel),
    Template("hand seen from inside", TOPIC, 2, _from_inside),
    Template("hand from the rooms", TOPIC, 3, _with_rooms),
    Template("hand from push and pull", TOPIC, 3, _from_the_pull),
)
