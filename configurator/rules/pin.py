"""Whether the hinge pin may be drawn."""

from configurator.rules.finding import Alternative, Finding, Fix, Reason, Severity, finding, reason
from configurator.tables import practice, words_of

OUTSWING = ("LHR", "RHR")


def hinge_pin(hand: str | None, locked: bool) -> Reason:
    """Return "removable" or "non-removable": a locked outswinging door shows its barrel to the public."""
    stud = Alternative("removable", "with a security stud only, which holds the door with its pin out")
    if not locked:
        return reason("removable", words_of("pin_unlocked"), practice("pin_unlocked"))
    if hand is None:
        words = "the hand is not known: the barrel may be on the public side"
        return reason("non-removable", words, practice("pin_outswing"), stud)
    if hand in OUTSWING:
        return reason("non-removable", f"{hand}: {words_of('pin_outswing')}", practice("pin_outswing"), stud)
    other = Alternative("non-removable", "costs a set screw and makes taking the door off slower")
    return reason("removable", f"{hand}: {words_of('pin_inswing')}", practice("pin_inswing"), other)


def pin_findings(hand: str | None, locked: bool, pin: str, stud: bool) -> tuple[Finding, ...]:
    """Return what is to be said of a pin: an exposed one that can be drawn, or a hand that is not known."""
    found = []
    if hand is None:
        message = "The hand is not known, so the side the barrel shows on is not known. Give the hand."
        severity: Severity = "warning" if locked else "note"
        found.append(finding("hand unknown", severity, message, practice("pin_outswing")))
    if locked and pin == "removable" and not stud and (hand is None or hand in OUTSWING):
        message = (
            "The door is locked and its barrel may be reached from outside: with the pin drawn the lock is "
            "no use. Take a non-removable pin or a security stud."
        )
        fix = (Fix("hinge.pin", "non-removable", "Take a non-removable pin"),)
        found.append(finding("pin exposed", "error", message, practice("pin_outswing"), fix))
    return tuple(found)
