"""Whether the hinge pin may be drawn."""

from dataclasses import dataclass

from configurator.model import Use
from configurator.rules.filling.usual import FilledUse
from configurator.rules.finding import Alternative, Finding, Fix, Reason, Severity, finding, reason
from configurator.tables import practice, words_of

OUTSWING = ("LHR", "RHR")


@dataclass(frozen=True, slots=True)
class Lock:
    """What a door is kept shut with: nothing, a key from outside, or a key from both sides."""

    locked: bool
    both_sides: bool = False


def lock_of(use: FilledUse) -> Lock:
    """Return the lock; one with keys on both sides is a lock, whatever else was said."""
    return Lock(use.locked or use.lock_both_sides, use.lock_both_sides)


def hinge_pin(hand: str | None, lock: Lock) -> Reason:
    """Return "removable" or "non-removable": a locked outswinging door shows its barrel to the public.

    Of a lock with keys on both sides either side may be the one to keep out, and one of them has the barrel.
    """
    stud = Alternative("removable", "with a security stud only, which holds the door with its pin out")
    if not lock.locked:
        return reason("removable", words_of("pin_unlocked"), practice("pin_unlocked"))
    if lock.both_sides:
        return reason("non-removable", words_of("pin_both_sides"), practice("pin_both_sides"), stud)
    if hand is None:
        words = "the hand is not known: the barrel may be on the public side"
        return reason("non-removable", words, practice("pin_outswing"), stud)
    if hand in OUTSWING:
        return reason("non-removable", f"{hand}: {words_of('pin_outswing')}", practice("pin_outswing"), stud)
    other = Alternative("non-removable", "costs a set screw and makes taking the door off slower")
    return reason("removable", f"{hand}: {words_of('pin_inswing')}", practice("pin_inswing"), other)


def pin_findings(hand: str | None, lock: Lock, pin: str, stud: bool) -> tuple[Finding, ...]:
    """Return what is to be said of a pin: an exposed one that can be drawn, or a hand that is not known."""
    found = []
    if hand is None:
        message = "The hand is not known, so the side the barrel shows on is not known. Give the hand."
        severity: Severity = "warning" if lock.locked else "note"
        found.append(finding("hand unknown", severity, message, practice("pin_outswing")))
    if lock.locked and pin == "removable" and not stud and _in_reach(hand, lock):
        found.append(_exposed(lock))
    return tuple(found)


def _in_reach(hand: str | None, lock: Lock) -> bool:
    """Say whether whoever is to be kept out may stand where the barrel is."""
    return lock.both_sides or hand is None or hand in OUTSWING


def _exposed(lock: Lock) -> Finding:
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


def lock_findings(use: Use) -> tuple[Finding, ...]:
    """Return what is to be said of a lock with keys on both sides: the pin it takes, and who gets out."""
    if not use.lock_both_sides:
        return ()
    message = (
        "A key is needed on both sides, so the hinge takes a pin that cannot be drawn. Whoever is inside "
        "without a key cannot leave: ask the authority having jurisdiction whether such a lock may be fitted "
        "here; local codes decide."
    )
    both = finding("locked from both sides", "warning", message, practice("pin_both_sides"))
    return (both, _contradicted()) if use.locked is False else (both,)


def _contradicted() -> Finding:
    message = (
        "The door is said to have no lock, and to need a key on both sides. It is taken as locked; "
        "say which is right."
    )
    fix = (Fix("use.locked", True, "It has a lock"),)
    return finding("lock contradicted", "warning", message, practice("pin_both_sides"), fix)
