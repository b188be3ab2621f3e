"""What the plan itself says of one leaf on one hinge width: findings that need no choice of hardware."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.rules.answers import REFUSED
from configurator.rules.door_stop import (
    StopPlace,
    short_of_wanted,
    square_open_mend,
    stop_findings,
    stop_there,
    where_a_stop_goes,
)
from configurator.rules.finding import Finding, Source, finding
from configurator.rules.stock import stock_of, stock_widths
from configurator.rules.wording import cut_back, degrees, inches, obstruction, size
from configurator.tables import limit, practice

TOLERANCE = 1e-9
_PLAN = Source("worked out from the plan", "derived")


@dataclass(frozen=True, slots=True)
class PlanAnswer:
    """The plan's answers for one leaf on one width, as plain values: inches and degrees.

    `stopped` and `stopped_bare` are (moving part, standing thing), None where the swing reaches 180.
    `wanted_angle` is no more than a door stop leaves, `asked_angle` what was asked for, None where nothing
    was. `stop_angle` is where a stop holds the door, `overhead_stop` the angle given for one, `door_stop` the
    place of one that was given and `stop_wanted` that of one that would keep the door off what it meets.
    `refusal` is why that width cannot be mounted so.
    """

    leaf: str
    height: float
    width: float
    barrel: float
    mounting: str
    refusal: str | None
    barrel_free_by: float
    angle_bare: float
    angle: float
    wanted_angle: float
    stopped_bare: tuple[str, str] | None
    stopped: tuple[str, str] | None
    touching_at_rest: bool
    latch_least: float
    clear_width: float | None
    accessible: bool
    clear_margin: float
    stop_angle: float | None
    backset_disagreement: float
    gap_disagreement: float
    asked_angle: float | None = None
    leaf_heights: tuple[float, float] = (0.0, 0.0)
    overhead_stop: float | None = None
    door_stop: StopPlace | None = None
    stop_wanted: StopPlace | None = None
    held_by_other: bool = False
    """Whether what the other leaf carries holds the leaf shut, which is said of the opening."""
    barrel_in_trim: bool = False
    """Whether the barrel is nearer to what stands about the door than to door and frame."""

    @property
    def binds(self) -> bool:
        """Whether the lock edge binds on the jamb, or on the other leaf of a pair."""
        edge = self.stopped_bare is not None and self.stopped_bare[1] in ("latch jamb", "other leaf")
        return edge and not self.held_by_other

    @property
    def width_moves_pin(self) -> bool:
        """Whether a wider hinge stands its pin farther out; on a face the barrel alone decides."""
        return self.mounting == "full mortise"


def plan_findings(answer: PlanAnswer) -> tuple[Finding, ...]:
    """Return the findings of one candidate, worst first."""
    found = [*_refused(answer), *_barrel(answer), *_swing(answer), *_lock_edge(answer), *_width(answer)]
    found += [*_stock(answer), *_disagreements(answer)]
    return tuple(sorted(found, key=lambda one: ("error", "warning", "note").index(one.severity)))


def _hinge(answer: PlanAnswer) -> str:
    leaf = "" if answer.leaf == "single" else f" ({answer.leaf} leaf)"
    return f"With a {size(answer.height, answer.width)} hinge{leaf}"


def _refused(answer: PlanAnswer) -> Iterator[Finding]:
    if answer.refusal is not None:
        message = f"{answer.refusal} Take a narrower hinge, or another mounting."
        yield finding(REFUSED, "error", message, _PLAN, width=answer.width)


def _barrel(answer: PlanAnswer) -> Iterator[Finding]:
    close = limit("barrel_close").value
    free = answer.barrel_free_by
    if free < -TOLERANCE:
        yield finding(
            "barrel overlaps",
            "error",
            f"{_hinge(answer)} the barrel overlaps {_beside_barrel(answer)} by {inches(-free, 0.0)}: "
            f"{_more_room(answer)}.",
            _PLAN,
            overlap=-free,
            barrel=answer.barrel,
        )
    elif answer.mounting == "full mortise" and free < close - TOLERANCE:
        # With a leaf on a face, the barrel rests against that face by definition: nothing to warn of.
        yield finding(
            "barrel close",
            "warning",
            f"{_hinge(answer)} the barrel is free by {_hardly(free, close)}. "
            "Confirm the barrel's diameter from the hinge's drawing.",
            limit("barrel_close").cited,
            free=free,
            barrel=answer.barrel,
        )


def _beside_barrel(answer: PlanAnswer) -> str:
    return "what stands beside it" if answer.barrel_in_trim else "the door or the frame"


def _more_room(answer: PlanAnswer) -> str:
    if answer.width_moves_pin:
        return "the hinge is too narrow. Take a wider one"
    return "it does not fit so, and no other width moves it. Take another mounting"


def _hardly(free: float, close: float) -> str:
    return "nothing to speak of" if free < 1 / 128 else f"only {inches(free, close)}"


def _swing(answer: PlanAnswer) -> Iterator[Finding]:
    if answer.stopped_bare and answer.touching_at_rest:
        part, thing = answer.stopped_bare[0], obstruction(answer.stopped_bare[1])
        yield finding(
            "overlaps closed",
            "error",
            f"{_hinge(answer)} the {part} already overlaps the {thing} with the door closed. "
            f"Check where the {thing} stands.",
            _PLAN,
            angle=0.0,
        )
    elif answer.binds:
        yield finding(
            "binds at the lock side",
            "error",
            f"{_hinge(answer)} the lock edge binds at {degrees(answer.angle_bare)}: the door cannot open. "
            f"Bevel the lock edge, widen the gap, or {_other_hinge(answer, 'try a narrower hinge')}.",
            _PLAN,
            angle=answer.angle_bare,
        )
    elif answer.stopped_bare and short_of_wanted(answer) and not answer.held_by_other:
        part, kind = answer.stopped_bare
        other = _other_hinge(answer, "take a wider hinge").capitalize()
        yield finding(
            "stops short",
            "warning",
            f"{_hinge(answer)} the {part} meets the {obstruction(kind)} at "
            f"{degrees(answer.angle_bare, answer.wanted_angle)}, short of the "
            f"{degrees(answer.wanted_angle)} wanted. "
            f"{', '.join(filter(None, (other, cut_back(kind))))}, or {stop_there(answer.stop_wanted)}.",
            _PLAN,
            angle=answer.angle_bare,
            wanted=answer.wanted_angle,
        )
    yield from where_a_stop_goes(answer, _hinge(answer))
    yield from stop_findings(answer, _hinge(answer))


def _lock_edge(answer: PlanAnswer) -> Iterator[Finding]:
    row = limit("latch_gap_least")
    # An inactive leaf opens behind the open active one: there is nothing for its free edge to pass.
    passes = not answer.binds and answer.leaf != "inactive"
    if passes and answer.latch_least < row.value - TOLERANCE:
        yield finding(
            "tight at the lock side",
            "note",
            f"{_hinge(answer)} the lock edge passes what it closes against by "
            f"{_small(answer.latch_least, row.value)}. Bevel the lock edge, or check the gap on site.",
            row.cited,
            gap=answer.latch_least,
            least=row.value,
        )


def _small(gap: float, limit: float) -> str:
    return f"only {inches(gap, limit)}" if gap >= 1 / 64 else "less than 1/64 in"


def _other_hinge(answer: PlanAnswer, width: str) -> str:
    """Say what other hinge to try: another width only where width moves the pin."""
    return width if answer.width_moves_pin else "take another mounting"


def _width(answer: PlanAnswer) -> Iterator[Finding]:
    least = limit("clear_width")
    if not answer.accessible:
        return
    if answer.clear_width is None:
        yield finding(
            "no clear width",
            "error",
            f"{_hinge(answer)} the door does not come square open, so it has no clear width at 90 degrees; "
            f"an accessible route asks for {inches(least.value)}. "
            f"{square_open_mend(answer.stop_angle, answer.angle_bare)}",
            least.cited,
            required=least.value,
        )
    elif answer.clear_width >= least.value - TOLERANCE:
        yield from _margin(answer, least.value)
    else:
        short = least.value - answer.clear_width
        yield finding(
            "too narrow to pass",
            "error",
            f"{_hinge(answer)} the walk-through width is {inches(answer.clear_width, least.value)}, short "
            f"by {inches(short, 0.0)} of the {inches(least.value)} an accessible route asks for. "
            "Try a narrower hinge, or take a wider opening. Manoeuvring space is not computed here; "
            "local codes decide.",
            least.cited,
            clear_width=answer.clear_width,
            required=least.value,
        )


def _margin(answer: PlanAnswer, least: float) -> Iterator[Finding]:
    asked = least + answer.clear_margin
    if answer.clear_width is not None and answer.clear_width < asked - TOLERANCE:
        short = asked - answer.clear_width
        yield finding(
            "margin not kept",
            "warning",
            f"{_hinge(answer)} the walk-through width is {inches(answer.clear_width, asked, 'min')}: enough "
            f"for the {inches(least)} of an accessible route, but short by {inches(short, 0.0)} of the "
            f"margin of {inches(answer.clear_margin)} asked over it. Try a narrower hinge, or take "
            "a wider opening.",
            practice("access_margin"),
            clear_width=answer.clear_width,
            required=asked,
        )


def _stock(answer: PlanAnswer) -> Iterator[Finding]:
    known = stock_widths(answer.height)
    if known and answer.width > known[-1] + TOLERANCE:
        yield finding(
            "wider than stock",
            "warning",
            f"{_hinge(answer)}: no stock hinge of that height is wider than {inches(known[-1])}. "
            "It would have to be made; ask first.",
            Source("the stock size table, from memory", "from memory"),
            width=answer.width,
            widest=known[-1],
        )
    elif stock_of(answer.height, answer.width) is None:
        yield finding(
            "not a stock size",
            "note",
            f"{size(answer.height, answer.width)} is not a stock size here. Ask whether it can be had.",
            Source("the stock size table, from memory", "from memory"),
            height=answer.height,
            width=answer.width,
        )


def _disagreements(answer: PlanAnswer) -> Iterator[Finding]:
    if abs(answer.backset_disagreement) > TOLERANCE:
        yield finding(
            "backsets disagree",
            "warning",
            f"{_hinge(answer)} the door's and the frame's hinge backsets differ by other than the gap at "
            f"the frame stop, by {inches(abs(answer.backset_disagreement), 0.0)}. The frame's was used; "
            "check both.",
            _PLAN,
            disagreement=answer.backset_disagreement,
        )
    if abs(answer.gap_disagreement) > TOLERANCE:
        yield finding(
            "gaps disagree",
            "warning",
            f"{_hinge(answer)} the hinge leaves and their mortises leave a hinge-side gap that differs by "
            f"{inches(abs(answer.gap_disagreement), 0.0)} from the one given. Set the mortise depths so that "
            "they agree; leaves flush with a 1/16 in leaf gap leave 1/16, not 1/8.",
            _PLAN,
            disagreement=answer.gap_disagreement,
        )
