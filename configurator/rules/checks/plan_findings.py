"""What the plan itself says of one leaf on one hinge width: findings that need no choice of hardware."""

from collections.abc import Iterator

from configurator.rules.checks.closers import closer_findings
from configurator.rules.checks.door_stop import (
    short_of_wanted,
    square_open_mend,
    stop_findings,
    stop_there,
    where_a_stop_goes,
)
from configurator.rules.checks.egress import ClearWidthAsked, clear_width_asked
from configurator.rules.checks.way_findings import heel_meets, on_way, way_findings
from configurator.rules.filling.ways import FilledWay
from configurator.rules.finding import Finding, Severity, Source, by_consequence, finding
from configurator.rules.hinge.answers import (
    WidthAnswer,
    arm_or_stop,
    barrel_clear,
    barrel_free,
    binds,
    by_template,
    held_at,
    held_by_other,
    wanted_angle,
)
from configurator.rules.hinge.stock import stock_of, stock_widths
from configurator.rules.hinge.width import NO_WIDTH, instead
from configurator.rules.wording import cut_back, degrees, exactly, inches, leaf_named, obstruction, size
from configurator.sentences import capitalized
from configurator.tables import limit, practice
from configurator.units import TOLERANCE

_PLAN = Source("worked out from the plan", "derived")


def plan_findings(answer: WidthAnswer) -> tuple[Finding, ...]:
    """Return the findings of one candidate, worst first.

    Which other width to take is decided in one place; where none does all, what would mend it is said once,
    of the opening.
    """
    if answer.way is not None:
        return by_consequence(_of_way(answer, answer.way))
    if by_template(answer.mounting):
        found = [*_refused(answer), _by_template(answer)]
    else:
        found = [*_barrel(answer), *_swing(answer), *_lock_edge(answer), *_width(answer)]
    found += [*_stock(answer), *_disagreements(answer), *closer_findings(answer, _hinge(answer))]
    return by_consequence(found)


def _of_way(answer: WidthAnswer, way: FilledWay) -> Iterator[Finding]:
    if way.barrel_beside_faces:
        yield from _barrel(answer)
    if not heel_meets(answer):
        yield from _swing(answer)
    yield from (*_lock_edge(answer), *_width(answer), *way_findings(answer, way))
    yield from closer_findings(answer, _hinge(answer))


def _hinge(answer: WidthAnswer) -> str:
    if answer.way is not None:
        return on_way(answer.way, answer.leaf)
    leaf = leaf_named(answer.leaf, " ({})")
    return f"With a {size(answer.hinge.height.value, answer.hinge_width)} hinge{leaf}"


def _refused(answer: WidthAnswer) -> Iterator[Finding]:
    if answer.refusal is not None:
        mend = instead(answer)
        mend = "Take another mounting." if mend in ("", NO_WIDTH) else mend
        yield finding("refused", "error", f"{answer.refusal} {mend}", _PLAN, width=answer.hinge_width)


def _by_template(answer: WidthAnswer) -> Finding:
    """Say of a hinge with a leaf on a face what is known, and that its template decides the rest."""
    overlaps, sketch = not barrel_free(answer), "A plain sketch of it, with its barrel laid on the face,"
    inside, opens = inches(-answer.barrel_free_by, "up"), degrees(answer.greatest_angle_bare)
    out = f"{sketch} opens to {opens}: no more than a guide."
    if overlaps:
        out = (
            f"{sketch} would stand {inside} inside the door or the frame, so no angle and no clear width is "
            "known here."
        )
    message = (
        f"A {answer.mounting} hinge is made to its template, which says where the pin stands, how far the "
        f"door opens and how wide the way through is. {out} Ask for the template before ordering."
    )
    severity: Severity = "warning" if overlaps or answer.filled.use.accessible else "note"
    numbers = {"free": answer.barrel_free_by, "angle": answer.greatest_angle_bare}
    return finding("template decides", severity, message, practice("by_template"), (), **numbers)


def _barrel(answer: WidthAnswer) -> Iterator[Finding]:
    close = limit("barrel_close").value
    free = answer.barrel_free_by
    if not barrel_free(answer):
        yield finding(
            "barrel overlaps",
            "error",
            f"{_hinge(answer)} the barrel overlaps {_beside_barrel(answer)} by {inches(-free, 'up')}. "
            f"{instead(answer)}".strip(),
            _PLAN,
            overlap=-free,
            barrel=answer.barrel_diameter,
        )
    elif not barrel_clear(answer):
        yield finding(
            "barrel close",
            "warning",
            f"{_hinge(answer)} the barrel is free by {_hardly(free)}, and {exactly(close)} is asked. "
            f"Confirm the barrel's diameter from the hinge's drawing. {instead(answer)}".strip(),
            limit("barrel_close").cited,
            free=free,
            barrel=answer.barrel_diameter,
        )


def _beside_barrel(answer: WidthAnswer) -> str:
    return "what stands beside it" if answer.barrel_in_trim else "the door or the frame"


def _hardly(free: float) -> str:
    return "nothing to speak of" if free < 1 / 128 else inches(free, "down")


def _swing(answer: WidthAnswer) -> Iterator[Finding]:
    met, wanted = answer.stopped_by_bare, wanted_angle(answer)
    thing = "" if met is None else obstruction(met.kind)
    if met is not None and met.at_rest:
        yield finding(
            "overlaps closed",
            "error",
            f"{_hinge(answer)} the {met.part} already overlaps the {thing} with the door closed. "
            f"Check where the {thing} stands.",
            _PLAN,
            angle=0.0,
        )
    elif binds(answer):
        yield finding(
            "binds at the lock side",
            "error",
            f"{_hinge(answer)} the lock edge binds at {degrees(answer.greatest_angle_bare)}: the door cannot "
            f"open. {instead(answer)}".strip(),
            _PLAN,
            angle=answer.greatest_angle_bare,
        )
    elif met is not None and short_of_wanted(answer) and not held_by_other(answer):
        yield finding(
            "stops short",
            "warning",
            f"{_hinge(answer)} the {met.part} meets the {thing} at "
            f"{degrees(answer.greatest_angle_bare)}, short of the {degrees(wanted, 'up')} wanted. "
            f"{_mend_of_angle(answer, met.kind)}",
            _PLAN,
            angle=answer.greatest_angle_bare,
            wanted=wanted,
        )
    yield from where_a_stop_goes(answer, _hinge(answer))
    yield from stop_findings(answer, _hinge(answer))


def _lock_edge(answer: WidthAnswer) -> Iterator[Finding]:
    row = limit("latch_gap_least")
    # An inactive leaf opens behind the open active one: there is nothing for its free edge to pass.
    passes = not binds(answer) and answer.leaf != "inactive"
    if passes and answer.latch_edge_least < row.value - TOLERANCE:
        yield finding(
            "tight at the lock side",
            "note",
            f"{_hinge(answer)} the lock edge passes what it closes against by "
            f"{inches(answer.latch_edge_least, 'down')}. Bevel the lock edge, or check the gap on site.",
            row.cited,
            gap=answer.latch_edge_least,
            least=row.value,
        )


def _mend_of_angle(answer: WidthAnswer, thing: str) -> str:
    """Return what lets a door open farther, or what keeps it off what it meets; no width but the one taken.

    Where no width does all, whether a cut mends it is said with that.
    """
    other, stop = instead(answer), stop_there(answer.stop_wanted)
    if other == NO_WIDTH:
        return f"{NO_WIDTH} {capitalized(stop)}."
    ways = (other.removesuffix("."), cut_back(thing), f"or {stop}")
    return f"{capitalized(', '.join(filter(None, ways)))}."


def _width(answer: WidthAnswer) -> Iterator[Finding]:
    filled, leaf = answer.filled, answer.leaf
    asked = clear_width_asked(filled, leaf)
    if asked is None:
        return
    stop = held_at(filled.opening.stop_angle(leaf), answer.door_stop)
    holder = arm_or_stop(filled, leaf, answer.door_stop)
    if answer.clear_width_at_90 is None:
        yield finding(
            "no clear width",
            "error",
            f"{_hinge(answer)} the door does not come square open, so it has no clear width at 90 degrees; "
            f"{asked.by} asks for {exactly(asked.strict, 'up')}. "
            f"{square_open_mend(stop, answer.greatest_angle_bare, holder)}",
            asked.source,
            required=asked.strict,
        )
    elif answer.clear_width_at_90 >= asked.strict - TOLERANCE:
        yield from _margin(answer, asked)
    else:
        short = asked.strict - answer.clear_width_at_90
        yield finding(
            "too narrow to pass",
            "error",
            f"{_hinge(answer)} the walk-through width is {inches(answer.clear_width_at_90, 'down')}, short "
            f"by {inches(short, 'up')} of the {exactly(asked.strict, 'up')} that {asked.by} asks for. "
            f"{instead(answer)} Local codes decide.",
            asked.source,
            clear_width=answer.clear_width_at_90,
            required=asked.strict,
        )


def _margin(answer: WidthAnswer, asked: ClearWidthAsked) -> Iterator[Finding]:
    if answer.clear_width_at_90 is not None and answer.clear_width_at_90 < asked.least - TOLERANCE:
        short = asked.least - answer.clear_width_at_90
        yield finding(
            "margin not kept",
            "warning",
            f"{_hinge(answer)} the walk-through width is {inches(answer.clear_width_at_90, 'down')}: enough "
            f"for the {exactly(asked.strict, 'up')} that {asked.by} asks for, but short by "
            f"{inches(short, 'up')} of the margin of {exactly(asked.margin)} asked over it. "
            f"{instead(answer)}".strip(),
            practice("access_margin"),
            clear_width=answer.clear_width_at_90,
            required=asked.least,
        )


def _stock(answer: WidthAnswer) -> Iterator[Finding]:
    height = answer.hinge.height.value
    known = stock_widths(height)
    if known and answer.hinge_width > known[-1] + TOLERANCE:
        yield finding(
            "wider than stock",
            "warning",
            f"{_hinge(answer)}: no stock hinge of that height is wider than {exactly(known[-1])}. "
            "It would have to be made; ask first.",
            Source("the stock size table, from memory", "from memory"),
            width=answer.hinge_width,
            widest=known[-1],
        )
    elif stock_of(height, answer.hinge_width) is None:
        yield finding(
            "not a stock size",
            "note",
            f"{size(height, answer.hinge_width)} is not a stock size here. Ask whether it can be had.",
            Source("the stock size table, from memory", "from memory"),
            height=height,
            width=answer.hinge_width,
        )


def _disagreements(answer: WidthAnswer) -> Iterator[Finding]:
    if abs(answer.backset_disagreement) > TOLERANCE:
        yield finding(
            "backsets disagree",
            "warning",
            f"{_hinge(answer)} the door's and the frame's hinge backsets differ by other than the gap at "
            f"the frame stop, by {exactly(abs(answer.backset_disagreement), 'up')}. The frame's was used; "
            "check both.",
            _PLAN,
            disagreement=answer.backset_disagreement,
        )
    if abs(answer.gap_disagreement) > TOLERANCE:
        yield finding(
            "gaps disagree",
            "warning",
            f"{_hinge(answer)} the hinge leaves and their mortises leave a hinge-side gap that differs by "
            f"{exactly(abs(answer.gap_disagreement), 'up')} from the one given. Set the mortise depths so "
            "that they agree; leaves flush with a 1/16 in leaf gap leave 1/16, not 1/8.",
            _PLAN,
            disagreement=answer.gap_disagreement,
        )
