"""Where the pin of a full mortise hinge stands, and the barrel about it."""

from random import Random

from configurator.geometry.pin import barrel_past_frame, barrel_past_wall
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import (
    PracticeLeaf,
    door_words,
    drawn,
    frame_words,
    hung_in_stock,
    inset_line,
    off_door_line,
    off_frame_line,
    proud_words,
    random_leaf,
)
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template
from configurator.practice.words import fraction

TOPIC = "pin and barrel"
_BARRELS = (0.5, 0.5625, 0.625)
Marks = tuple[tuple[str, str], ...]


def rabbet_marks(found: PracticeLeaf) -> Marks:
    """Mark rabbet, stop gap and door thickness with their numbers."""
    h = found.h
    return (
        ("rabbet", f"rabbet {fraction(h.R)}"),
        ("stop_gap", f"gap {fraction(h.k)}"),
        ("thickness", f"door {fraction(h.T)}"),
    )


def hinge_marks(found: PracticeLeaf) -> Marks:
    """Mark backset and half the open width with their numbers."""
    h = found.h
    return (("door_backset", f"backset {fraction(h.b)}"), ("half_width", f"W/2 = {fraction(h.W / 2)}"))


def off_door_slips(found: PracticeLeaf) -> tuple[Slip, ...]:
    """Return the slips in finding how far the pin stands off the door face."""
    h, o = found.h, found.pin.o
    return (
        Slip(
            h.W - (h.T - h.b), "The whole open width was taken. Only one leaf, W/2, reaches from door to pin."
        ),
        Slip(h.W / 2 - h.T, "The leaf does not go in to the full thickness: the backset stays free."),
        Slip(h.W / 2 - h.b, "Take off what is let into the door, T − b, not the backset."),
        Slip(
            o + 2 * h.b, "The backset is what stays free: it makes the let-in part smaller once, not twice."
        ),
        Slip(h.T - h.b, "That is what is let into the door. The rest of the leaf, to the pin, is asked."),
    )


def _asked(
    found: PracticeLeaf,
    question: str,
    value: float,
    hint: str,
    slips: tuple[Slip, ...],
    marks: Marks,
    *solution: str,
) -> Problem:
    return Problem(
        question=question,
        answer=LengthAnswer(value),
        hint=hint,
        slips=slips,
        solution=solution,
        opening=found.opening,
        picture=Picture("hinge", marks, (found.opening,)),
    )


def _inset(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    h = found.h
    question = (
        f"{frame_words(found)} The door is {fraction(h.T)} in thick. How far is its face "
        "behind the frame face?"
    )
    slips = (
        Slip(h.R - h.T, "The gap at the frame stop takes room too."),
        Slip(h.R - h.T + h.k, "The gap at the frame stop comes off, it is not added."),
        Slip(h.R - h.k, "That is what is left of the rabbet. The door's thickness comes off too."),
    )
    hint = "Start with the rabbet. What fills it from the stop outward: a gap, then the door."
    return _asked(
        found, question, h.i, hint, slips, (("inset", ASKED), *rabbet_marks(found)), inset_line(found)
    )


def _off_door(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    question = f"{door_words(found)} How far does the pin stand off the door face?"
    hint = (
        "One leaf of the hinge is half its open width. Part of it is let into the door; the rest "
        "reaches the pin."
    )
    marks = (("pin_off_door", ASKED), ("thickness", f"door {fraction(found.h.T)}"), *hinge_marks(found))
    return _asked(found, question, found.pin.o, hint, off_door_slips(found), marks, off_door_line(found))


def off_frame_slips(found: PracticeLeaf) -> tuple[Slip, ...]:
    """Return the slips in finding how far the pin stands off the frame face."""
    h, pin = found.h, found.pin
    return (
        Slip(pin.o, "That is off the door face. The door sits behind the frame face by the inset."),
        Slip(pin.o + h.i, "The inset comes off: the frame face is nearer to the pin than the door face."),
        Slip(pin.o - h.R + h.T, "The gap at the frame stop belongs to the inset too."),
    )


def _off_frame(random: Random) -> Problem | None:
    found = random_leaf(random)
    if found is None:
        return None
    question = f"{door_words(found)} {frame_words(found)} How far does the pin stand off the frame face?"
    hint = "First off the door face, then less the inset."
    marks = (("pin_off_frame", ASKED), *rabbet_marks(found), *hinge_marks(found))
    lines = (off_door_line(found), inset_line(found), off_frame_line(found))
    return _asked(found, question, found.pin.y_p, hint, off_frame_slips(found), marks, *lines)


def _from_the_frame_side(random: Random) -> Problem | None:
    data = drawn(random)
    backset = data["door"]["hinge_backset"] + data["frame"]["stop_gap"]
    data["frame"]["hinge_backset"] = backset
    found = random_leaf(random, **data)
    if found is None:
        return None
    h, y_p = found.h, found.pin.y_p
    question = (
        f"Rabbet {fraction(h.R)} in deep. The hinge leaf is let into the frame {fraction(backset)} "
        "in from the "
        f"stop. The hinge is {found.size}. How far does the pin stand off the frame face?"
    )
    line = (
        f"From the frame side: W/2 − (R − frame backset) = {fraction(h.W / 2)} − ({fraction(h.R)} − "
        f"{fraction(backset)}) = {fraction(y_p)} in."
    )
    slips = (
        Slip(
            h.W - (h.R - backset),
            "The whole open width was taken. Only one leaf, W/2, is let into the frame.",
        ),
        Slip(h.W / 2 - h.R, "The leaf does not go back to the stop: the frame backset stays free."),
        Slip(
            found.hinge_height / 2 - (h.R - backset),
            "That is half the height. The width is the second figure.",
        ),
    )
    hint = (
        "As from the door: one leaf is W/2, and from the frame face back it fills the rabbet "
        "less the backset."
    )
    marks = (
        ("pin_off_frame", ASKED),
        ("whole_rabbet", f"rabbet {fraction(h.R)}"),
        ("frame_backset", f"backset {fraction(backset)}"),
    )
    return _asked(found, question, y_p, hint, slips, marks, line)


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
    slips = (
        Slip(gap, "That is the whole gap. The pin stands in its middle."),
        Slip(2 * gap, "Half of the gap, not twice."),
    )
    hint = "Flush leaves meet in the middle of the gap, and the pin stands there."
    marks = (("pin_across", ASKED), ("hinge_gap", f"gap {fraction(gap)}"))
    return _asked(found, question, found.pin.x_p, hint, slips, marks, f"{line}{fraction(found.pin.x_p)} in.")


def _with_barrel(random: Random) -> PracticeLeaf | None:
    found = hung_in_stock(drawn(random, hinge={"barrel": random.choice(_BARRELS)}), random)
    return found if min(found.pin.o, found.pin.y_p) >= found.h.d_b / 2 else None


def barrel_slips(found: PracticeLeaf, value: float) -> tuple[Slip, ...]:
    """Return the slips in adding the barrel to where the pin stands."""
    d = found.h.d_b
    return (
        Slip(
            value + d / 2,
            "The whole barrel was added. The pin is in its middle: half of it stands farther out.",
        ),
        Slip(value - d / 2, "That is to the pin. Half of the barrel stands farther out."),
        Slip(value - d, "Half of the barrel is added, not taken off."),
    )


def _past_frame(random: Random) -> Problem | None:
    found = _with_barrel(random)
    if found is None:
        return None
    h, pin = found.h, found.pin
    question = (
        f"The pin of a hinge stands {fraction(pin.y_p)} in off the frame face. Its barrel is "
        f"{fraction(h.d_b)} in across. How far does the barrel stand out past the frame face?"
    )
    value = barrel_past_frame(h, pin)
    line = f"Pin off the frame face and half the barrel: {fraction(pin.y_p)} + {fraction(h.d_b)} / 2 = "
    marks = (
        ("barrel_past_frame", ASKED),
        ("pin_off_frame", f"pin {fraction(pin.y_p)}"),
        ("barrel", f"barrel {fraction(h.d_b)}"),
    )
    hint = "The pin is in the middle of the barrel."
    return _asked(
        found, question, value, hint, barrel_slips(found, value), marks, f"{line}{fraction(value)} in."
    )


def _past_wall(random: Random) -> Problem | None:
    found = _with_barrel(random)
    if found is None or not found.h.p:
        return None
    h, pin = found.h, found.pin
    question = (
        f"{door_words(found)} {frame_words(found)} {proud_words(found)} The barrel is "
        f"{fraction(h.d_b)} in across. How far does it stand out past the wall face?"
    )
    value = barrel_past_wall(h, pin)
    line = (
        f"Half the barrel and the frame's stand more: {fraction(pin.y_p)} + {fraction(h.d_b / 2)} + "
        f"{fraction(h.p)} = {fraction(value)} in."
    )
    lines = (off_door_line(found), inset_line(found), off_frame_line(found), line)
    slips = (
        *barrel_slips(found, value),
        Slip(value - h.p, "That is past the frame face. The frame stands proud of the wall by more."),
        Slip(value - 2 * h.p, "Proud is added: the wall face lies behind the frame face."),
        Slip(value + h.i, "The inset is missing: it comes off the pin's stand off the door."),
    )
    marks = (("barrel_past_wall", ASKED), ("proud", f"proud {fraction(h.p)}"), *rabbet_marks(found))
    hint = (
        "Four steps: pin off the door, less the inset, plus half the barrel, plus what the frame "
        "stands proud."
    )
    return _asked(found, question, value, hint, slips, marks, *lines)


TEMPLATES = (
    Template("inset of a door", TOPIC, 2, _inset),
    Template("pin across", TOPIC, 2, _across),
    Template("pin off the door face", TOPIC, 2, _off_door),
    Template("barrel past the frame", TOPIC, 2, _past_frame),
    Template("pin from the frame side", TOPIC, 3, _from_the_frame_side),
    Template("pin off the frame face", TOPIC, 3, _off_frame),
    Template("barrel past the wall", TOPIC, 4, _past_wall),
)
