"""The hand of a door, seen from outside and from inside, and what follows from it."""

from random import Random

from configurator.model import Opening
from configurator.practice.problem import Picture, Problem, Slip, Template
from configurator.practice.written import HANDS, ChoiceAnswer, CodeAnswer
from configurator.rules.hinge.pin import OUTSWING

TOPIC = "hands"
CONVENTION = "The hand is told from outside: the side you unlock from, the public one."
_HINT = "Stand outside, where the key goes in. Which side are the hinges on, and does the door come at you?"
_PLACES = (
    ("the corridor", "the store room"),
    ("the yard", "the boat shed"),
    ("the concourse", "the ticket office"),
    ("the landing", "the crew mess"),
    ("the hall", "the linen closet"),
)


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


def _opening(hand: str) -> Opening:
    return Opening.model_validate({"mark": "practice", "hand": hand, "size": "3070", "compare": [4.5]})


def _picture(hand: str, outside: str, inside: str) -> Picture:
    return Picture("hand", openings=(_opening(hand),), words=(outside, inside))


def _posed(
    question: str, hand: str, *before: str, seen: tuple[str, str] = ("you, outside", "inside")
) -> Problem:
    return Problem(
        question=question,
        answer=CodeAnswer(hand, "hand"),
        hint=_HINT,
        solution=(*before, *_rule(hand)),
        convention=CONVENTION,
        picture=_picture(hand, *seen),
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
        seen=("outside", "you, inside"),
    )


def _with_rooms(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    outside, inside = random.choice(_PLACES)
    into = inside if hand not in OUTSWING else outside
    seen_outside = random.random() < 0.5
    stands = outside if seen_outside else inside
    left = hinges_left(hand) if seen_outside else not hinges_left(hand)
    return _posed(
        f"The key is used from {outside}. Standing in {stands} you see the hinges on your "
        f"{_side(left)}; the door swings into {into}. What hand is it?",
        hand,
        f"Outside is {outside}, the side of the key.",
        seen=(f"you, in {outside}", inside) if seen_outside else (outside, f"you, in {inside}"),
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
        seen=("outside", "you, inside") if inside else ("you, outside", "inside"),
    )


def _from_a_plan(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    return _posed("The plan shows a door from above. You stand outside. What hand is it?", hand)


def _name_of(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    words = {
        one: f"hinges {_side(hinges_left(one))}, {'pull' if one in OUTSWING else 'push'}" for one in HANDS
    }
    order = random.sample(tuple(HANDS), 4)
    return Problem(
        question=f"A door is {hand}. Where are its hinges, and what do you do to open it from outside?",
        answer=ChoiceAnswer(words[hand], tuple(words[one] for one in order)),
        hint="The first letter is the side of the hinges. An R at the end means the door comes toward you.",
        slips=tuple(Slip(words[one], f"That is {one}, {HANDS[one]}.") for one in order if one != hand),
        solution=_rule(hand),
        convention=CONVENTION,
        picture=Picture("hands", openings=tuple(_opening(one) for one in order)),
    )


def _seen_barrel(random: Random) -> Problem:
    hand = random.choice(tuple(HANDS))
    seen = hand in OUTSWING
    options = ("from outside", "from inside")
    right, wrong = options[not seen], options[seen]
    return Problem(
        question=f"A closed door is {hand}. From which side do you see the barrels of its hinges?",
        answer=ChoiceAnswer(right, options),
        hint="The barrel is always on the side that the door swings to.",
        slips=(Slip(wrong, f"{hand} swings {'out, toward' if seen else 'in, away from'} somebody outside."),),
        solution=(
            "The barrel stands on the side that the door swings to.",
            f"{hand} opens {'toward' if seen else 'away from'} somebody outside, so the barrel is "
            f"seen {right}.",
        ),
        convention=CONVENTION,
        picture=Picture("closed", openings=(_opening(hand),)),
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
