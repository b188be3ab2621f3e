"""Where the pin of a full mortise hinge stands, and the barrel about it."""

from random import Random

from configurator.geometry.pin import barrel_past_frame, barrel_past_wall
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import (
    PracticeLeaf,
    door_words,
    drawn,
    frame_words,
    inset_line,
    off_door_line,
    off_frame_line,
    proud_words,
    random_leaf,
)
from configurator.practice.problem import Problem, Template
from configurator.practice.words import fraction

TOPIC = "pin and barrel"
_BARRELS = (0.5, 0.5625, 0.625)


def _asked(found: PracticeLeaf, question: str, value: float, *solution: str) -> Problem:
    return Problem(
        question=question,
        answer=LengthAnswer(value),
        solution=solution,
        opening=found.opening,
        shown_first=True,
    )


def _inset(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    question = (
        f"{frame_words(found)} The door is {fraction(found.h.T)} in thick. How far does its face sit behind "
        "the frame face?"
    )
    return _asked(found, question, found.h.i, inset_line(found))


def _off_door(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    question = f"{door_words(found)} How far does the pin stand off the door face?"
    return _asked(found, question, found.pin.o, off_door_line(found))


def _off_frame(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    question = f"{door_words(found)} {frame_words(found)} How far does the pin stand off the frame face?"
    lines = (off_door_line(found), inset_line(found), off_frame_line(found))
    return _asked(found, question, found.pin.y_p, *lines)


def _from_the_frame_side(random: Random) -> Problem | None:
    data = drawn(random)
    backset = data["door"]["hinge_backset"] + data["frame"]["stop_gap"]
    data["frame"]["hinge_backset"] = backset
    found = random_leaf(random, **data)
    if found is None:
        return None
    h = found.h
    question = (
        f"In a frame with a rabbet {fraction(h.R)} in deep the hinge leaf is let in so that its edge is "
        f"{fraction(backset)} in from the frame stop. The hinge is {fraction(h.W)} in open width. How far "
        "does the pin stand off the frame face?"
    )
    line = (
        f"From the frame side: W/2 − (R − frame backset) = {fraction(h.W / 2)} − ({fraction(h.R)} − "
        f"{fraction(backset)}) = {fraction(found.pin.y_p)} in."
    )
    return _asked(found, question, found.pin.y_p, line)


def _across(random: Random) -> Problem | None:
    gap = random.choice((0.0625, 0.09375, 0.125, 0.15625, 0.1875))
    data = drawn(random)
    data["door"]["hinge_gap"] = gap
    found = random_leaf(random, **data)
    if found is None:
        return None
    question = (
        f"Both leaves of a hinge lie flush in door and frame, and the hinge-side gap is {fraction(gap)} in. "
        "How far is the pin from the rabbet face of the hinge jamb?"
    )
    line = f"With flush leaves the pin stands in the middle of the gap: {fraction(gap)} / 2 = "
    return _asked(found, question, found.pin.x_p, f"{line}{fraction(found.pin.x_p)} in.")


def _with_barrel(random: Random) -> PracticeLeaf | None:
    return random_leaf(random, hinge={"barrel": random.choice(_BARRELS)})


def _past_frame(random: Random) -> Problem | None:
    found = _with_barrel(random)
    if found is None:
        return None
    h, pin = found.h, found.pin
    question = (
        f"The pin of a hinge stands {fraction(pin.y_p)} in off the frame face. Its barrel measures "
        f"{fraction(h.d_b)} in across. How far does the barrel stand out past the frame face?"
    )
    value = barrel_past_frame(h, pin)
    line = f"Pin off the frame face and half the barrel: {fraction(pin.y_p)} + {fraction(h.d_b)} / 2 = "
    return _asked(found, question, value, f"{line}{fraction(value)} in.")


def _past_wall(random: Random) -> Problem | None:
    found = _with_barrel(random)
    if found is None or not found.h.p:
        return None
    h, pin = found.h, found.pin
    question = (
        f"{door_words(found)} {frame_words(found)} {proud_words(found)} The barrel measures "
        f"{fraction(h.d_b)} in across. How far does it stand out past the wall face?"
    )
    value = barrel_past_wall(h, pin)
    line = (
        f"Half the barrel and the frame's stand more: {fraction(pin.y_p)} + {fraction(h.d_b / 2)} + "
        f"{fraction(h.p)} = {fraction(value)} in."
    )
    lines = (off_door_line(found), inset_line(found), off_frame_line(found), line)
    return _asked(found, question, value, *lines)


TEMPLATES = (
    Template("inset of a door", TOPIC, 2, _inset),
    Template("pin across", TOPIC, 2, _across),
    Template("pin off the door face", TOPIC, 2, _off_door),
    Template("barrel past the frame", TOPIC, 2, _past_frame),
    Template("pin from the frame side", TOPIC, 3, _from_the_frame_side),
    Template("pin off the frame face", TOPIC, 3, _off_frame),
    Template("barrel past the wall", TOPIC, 4, _past_wall),
)
