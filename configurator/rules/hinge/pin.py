"""Whether the hinge pin may be drawn."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from configurator.model import Opening
from configurator.rules.filling.usual import INSWING, FilledOpening
from configurator.rules.finding import Alternative, Finding, Fix, Reason, Severity, finding, reason
from configurator.tables import practice, words_of

OUTSWING = ("LHR", "RHR")


@dataclass(frozen=True, slots=True)
class Lock:
    """What a door is kept shut with: nothing, a key from outside, or a key from both sides.

    `unknown`: nobody said whether there is a lock; `locked` is then what is taken.
    """

    locked: bool
    both_sides: bool = False
    unknown: bool = False


def lock_of(filled: FilledOpening) -> Lock:
    """Return the lock; keys on both sides or a panic device are a lock, whatever else was said."""
    both = filled.use.lock_both_sides
    if both or _panic_device(filled.opening):
        return Lock(True, both)
    return Lock(filled.use.locked, unknown=filled.opening.use.locked is None)


def _panic_device(opening: Opening) -> bool:
    return any(thing.kind == "panic device" for thing in opening.hardware)


def hinge_pin(hand: str | None, lock: Lock) -> Reason:
    """Return "removable" or "non-removable": a locked outswinging door shows its barrel to the public.

    Of a lock with keys on both sides either side may be the one to keep out, and one of them has the barrel.
    """
    stud = Alternative("removable", "with a security stud only, which holds the door with its pin out")
    if not lock.locked:
        return reason("removable", words_of("pin_unlocked"), practice("pin_unlocked"))
    if lock.both_sides:
        return reason("non-removable", words_of("pin_both_sides"), practice("pin_both_sides"), stud)
    if lock.unknown and hand not in INSWING:
        where = "swings out" if hand else "may swing out"
        words = f"whether it locks was not said, and it {where}: taken as locked until you say otherwise"
        return reason("non-removable", words, practice("pin_outswing"), stud)
    if hand is None:
        words = "the hand is not known: the barrel may be on the public side"
        return reason("non-removable", words, practice("pin_outswing"), stud)
    if hand not in INSWING:
        return reason("non-removable", f"{hand}: {words_of('pin_outswing')}", practice("pin_outswing"), stud)
    other = Alternative("non-removable", "costs a set screw and makes taking the door off slower")
    return reason("removable", f"{hand}: {words_of('pin_inswing')}", practice("pin_inswing"), other)


HANDED = ("swing clear", "half surface")
"""Mountings whose hinges may be handed."""


def hand_of_hinge_findings(mounting: str, hand: str | None) -> Iterator[Finding]:
    """Yield an error where the hinges are handed and nobody gave the hand of the door."""
    if mounting in HANDED and hand is None:
        message = f"A {mounting} hinge is handed, and no hand is given. Give the hand before ordering."
        yield finding("hand of the hinge", "error", message, practice("handed_hinge"))


def pin_findings(hand: str | None, lock: Lock, pin: str, stud: bool) -> tuple[Finding, ...]:
    """Return the findings about a pin: an exposed one that can be drawn, or a hand that is not known."""
    found = []
    if hand is None:
        message = "The hand is not known, so the side the barrel shows on is not known. Give the hand."
        severity: Severity = "warning" if lock.locked else "note"
        found.append(finding("hand unknown", severity, message, practice("pin_outswing")))
    if lock.locked and pin == "removable" and not stud and _in_reach(hand, lock):
        found.append(_exposed(lock))
    return tuple(found)


def _in_reach(hand: str | None, lock: Lock) -> bool:
    """Return whether whoever is to be kept out may stand where the barrel is."""
    return lock.both_sides or hand not in INSWING


def lock_unknown(filled: FilledOpening) -> tuple[Finding, ...]:
    """Return the question whether a door locks, where that decides its pin."""
    hand, exterior = filled.opening.hand, filled.use.exposure == "exterior"
    if not lock_of(filled).unknown or hand in INSWING:
        return ()
    where = "swings out" if hand else "may swing out"
    message = (
        f"Whether this door locks was not said. It {where}, so its barrel is where anybody can reach it: "
        "its pins are taken non-removable until then. Say whether it locks; on a passage set, as of a "
        "closet, pins can be removable."
    )
    severity: Severity = "warning" if exterior else "note"
    fix = (Fix("use.locked", True, "It has a lock"),)
    asked = finding("lock unknown", severity, message, practice("pin_outswing"), fix)
    return (replace(asked, other_fixes=((Fix("use.locked", False, "It has no lock"),),)),)


def _exposed(lock: Lock) -> Finding:
    if lock.unknown:
        message = (
            "A removable pin was asked for, the barrel may be reached from outside, and whether the door "
            "locks was not said. Take a non-removable pin or a security stud, or say that it has no lock."
        )
        fix = (Fix("hinge.pin", "non-removable", "Take a non-removable pin"),)
        return finding("pin exposed", "warning", message, practice("pin_outswing"), fix)
    where = (
        "is in reach from one of the sides it keeps out" if lock.both_sides else "may be reached from outside"
    )
    message = (
        f"The door is locked and its barrel {where}: with the pin drawn the lock is no use. Take a "
        "non-removable pin or a security stud."
    )
    fix = (Fix("hinge.pin", "non-removable", "Take a non-removable pin"),)
    source = practice("pin_both_sides" if lock.both_sides else "pin_outswing")
    return finding("pin exposed", "error", message, source, fix)


def lock_findings(opening: Opening) -> tuple[Finding, ...]:
    """Return the findings about a lock with keys on both sides: the pin it takes, and who gets out."""
    use = opening.use
    if not use.lock_both_sides:
        return (_panic_is_lock(),) if use.locked is False and _panic_device(opening) else ()
    message = (
        "A key is needed on both sides, so the hinge takes a pin that cannot be drawn. Whoever is inside "
        "without a key cannot leave: ask the authority having jurisdiction whether such a lock may be fitted "
        "here; local codes decide."
    )
    both = finding("locked from both sides", "warning", message, practice("pin_both_sides"))
    return (both, _contradicted()) if use.locked is False else (both,)


def _panic_is_lock() -> Finding:
    message = (
        "The door is said to have no lock, and carries a panic device, which latches it and keeps people "
        "out. It is taken as locked; say which is right."
    )
    fix = (Fix("use.locked", True, "It has a lock"),)
    return finding("lock contradicted", "warning", message, practice("pin_outswing"), fix)


def _contradicted() -> Finding:
    message = (
        "The door is said to have no lock, and to need a key on both sides. It is taken as locked; "
        "say which is right."
    )
    fix = (Fix("use.locked", True, "It has a lock"),)
    return finding("lock contradicted", "warning", message, practice("pin_both_sides"), fix)
