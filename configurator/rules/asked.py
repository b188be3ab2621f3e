"""What somebody asked for: by hand for this opening, or by the job's standard hinge."""

from configurator.model import Hinge
from configurator.rules.finding import Alternative, Reason, reason
from configurator.tables import practice

NOTHING_ASKED = Hinge()


def override(by_hand: object, standard: object, program: Reason) -> Reason:
    """Return the value for one part of the hinge: by hand, else the job's standard, else the program's own.

    None: not given. What the program would have taken stays as an alternative, so that resetting shows what
    comes back.
    """
    if by_hand is not None:
        return _instead(by_hand, "chosen by hand", "override", program)
    if standard is not None:
        return _instead(standard, "the job's standard hinge, which outranks", "job_standard", program)
    return program


WOULD_TAKE = "what the program would take: "


def _instead(value: object, words: str, key: str, program: Reason) -> Reason:
    if value == program.value:
        return reason(value, f"{words}; the program takes the same: {program.because}", practice(key))
    other = Alternative(program.value, WOULD_TAKE + program.because)
    return reason(value, words, practice(key), other, *program.alternatives)
