"""Closers and overhead stops: the degree the opening leaves them, what ends the swing first, their templates.

Their bodies and arms are hardware like any other. A closer whose degree nobody gave ends no swing here: how
far the opening lets the door go is what it is ordered for.
"""

from collections.abc import Iterator

from configurator.model.door import Hardware
from configurator.rules.finding import Finding, Source, finding
from configurator.rules.hinge.answers import WidthAnswer
from configurator.rules.wording import an, degrees, exactly, hardware, obstruction
from configurator.sentences import capitalized
from configurator.tables import HardwareKindRow, limit, practice, row_of
from configurator.units import TOLERANCE

_PLAN = Source("worked out from the plan", "derived")


def arms_on(answer: WidthAnswer) -> tuple[Hardware, ...]:
    """Return the closers and overhead stops that a leaf carries."""
    carried = answer.filled.opening.carried_by(answer.leaf)
    return tuple(one for one in carried if row_of(HardwareKindRow, one.kind).limits != "no")


def closer_findings(answer: WidthAnswer, hung: str) -> Iterator[Finding]:
    """Yield what the opening leaves each closer and stop; `hung` starts the sentence: `On a 4 in hinge`."""
    if answer.greatest_angle <= TOLERANCE:
        return  # what keeps it shut is told where it is met
    for one in arms_on(answer):
        if one.opens_to is None:
            yield _degree_to_order(answer, one, hung)
        elif one.opens_to > answer.greatest_angle + TOLERANCE:
            yield _past_the_opening(answer, one, one.opens_to, hung)
        elif one.opens_to <= answer.rests_at + TOLERANCE:
            yield _holds(answer, one, one.opens_to, hung)
        yield from _template(answer, one)


def _opening_leaves(answer: WidthAnswer) -> str:
    """Return how far the opening lets the door go, and what it meets there."""
    met, opens = answer.stopped_by, degrees(answer.greatest_angle)
    return (
        opens if met is None else f"{opens}, where the {hardware(met.part)} meets the {obstruction(met.kind)}"
    )


def _degree_to_order(answer: WidthAnswer, one: Hardware, hung: str) -> Finding:
    before = "" if answer.stopped_by is None else ", and fit a door stop before that"
    message = (
        f"{hung} the opening lets the door go to {_opening_leaves(answer)}. How far the {one.kind} opens was "
        f"not given: order it for no more than {degrees(answer.rests_at)}{before}."
    )
    return finding("closer degree", "note", message, practice("closer_no_stop"), (), angle=answer.rests_at)


def _past_the_opening(answer: WidthAnswer, one: Hardware, opens_to: float, hung: str) -> Finding:
    leaves = degrees(answer.greatest_angle)
    message = (
        f"{hung} the opening lets the door go to {_opening_leaves(answer)}, before the {one.kind} ends the "
        f"swing at {degrees(opens_to, 'up')}. Have it made for no more than {leaves}, or fit a door "
        "stop there."
    )
    numbers = {"angle": answer.greatest_angle, "opens_to": opens_to}
    return finding("arm past the opening", "warning", message, _PLAN, (), **numbers)


def _holds(answer: WidthAnswer, one: Hardware, opens_to: float, hung: str) -> Finding:
    """Say that its arm is what ends the swing: as it should of a stop, not of a closer."""
    numbers = {"angle": answer.greatest_angle, "opens_to": opens_to}
    if row_of(HardwareKindRow, one.kind).limits == "closer":
        message = (
            f"{hung} the arm of the {one.kind} ends the swing at {degrees(opens_to)}, before any stop. "
            "Fit a door stop before that, or ask for a closer with a stop in its arm."
        )
        return finding("closer as a stop", "warning", message, practice("closer_no_stop"), (), **numbers)
    place = answer.filled.opening.hardware.index(one)
    assumed = answer.filled.assumed.get(f"hardware.{place}.opens_to")
    ask = "" if assumed is None else " Nobody gave its degree, and this is usual: ask before ordering."
    message = (
        f"{hung} the {one.kind} holds the door at {degrees(opens_to)}. The opening itself lets it go to "
        f"{_opening_leaves(answer)}.{ask}"
    )
    source = _PLAN if assumed is None else row_of(HardwareKindRow, one.kind).cited
    return finding("overhead stop holds", "note", message, source, (), **numbers)


def _template(answer: WidthAnswer, one: Hardware) -> Iterator[Finding]:
    """Warn where its usual template is drawn for another hinge than the one it would work with."""
    row, pivot, way = row_of(HardwareKindRow, one.kind), limit("closer_pivot_off").value, answer.way
    if row.hinge_to is None or _as_drawn(answer, row.hinge_to, pivot):
        return
    off = answer.axis_off_face
    what = f"a hinge {exactly(answer.hinge_width)} wide" if way is None else an(way.kind)
    where = f"{exactly(abs(off))} {'off' if off >= 0 else 'inside'} the door's face"
    message = (
        f"The usual template of {an(one.kind)} is drawn for butts to {exactly(row.hinge_to)} wide and pivots "
        f"{exactly(pivot)} off the face. {capitalized(what)} has its axis {where}: ask for the {one.kind}'s "
        "template with that before ordering."
    )
    yield finding("arm template", "warning", message, row.cited, (), off_face=off)


def _as_drawn(answer: WidthAnswer, widest: float, pivot_off: float) -> bool:
    """Return whether the leaf hangs on what usual templates are drawn for; inches."""
    if answer.way is None:
        return answer.hinge_width <= widest + TOLERANCE
    return answer.way.kind == "offset pivot" and abs(answer.axis_off_face - pivot_off) <= TOLERANCE
