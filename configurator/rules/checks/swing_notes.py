"""What is worth saying of the chosen width's swing, and what a wider hinge would buy."""

from collections.abc import Iterator

from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, finding
from configurator.rules.hinge.answers import (
    Answer,
    Must,
    WidthAnswer,
    by_template,
    keeps_clear_width,
    reaches,
    tried,
)
from configurator.rules.hinge.stock import stock_widths
from configurator.rules.wording import degrees, inches, obstruction, plain, size
from configurator.tables import limit, practice
from configurator.units import TOLERANCE

# The chosen width's own findings that are said better by a rule that knows the alternatives.
SAID_ELSEWHERE = ("stops short", "too narrow to pass", "margin not kept", "no clear width")
MUCH_WIDER = 2.0
"""Inches: how much wider a hinge is set beside the chosen one to show that width buys no swing."""


def swing_notes(filled: FilledOpening, must: Must, width: float, answer: Answer) -> Iterator[Finding]:
    """Yield the chosen width's own findings, what a wider hinge does not buy, what the open door clears."""
    chosen = answer(must.leaf, width)
    yield from (found for found in chosen.findings if found.code not in SAID_ELSEWHERE)
    if not by_template(chosen.mounting):
        yield from _no_gain(must, chosen, answer)
        yield from _flat(filled, must, chosen)


def _no_gain(must: Must, chosen: WidthAnswer, answer: Answer) -> Iterator[Finding]:
    wider = [width for width in stock_widths(must.height) if width >= chosen.hinge_width + MUCH_WIDER]
    stopped = chosen.stopped_by_bare
    if stopped is None or not wider or not reaches(chosen, must.wanted):
        return
    tries = (found for width in wider if not isinstance(found := tried(answer, must.leaf, width), str))
    other = next(tries, None)
    if other is None:
        return
    gain, worth = other.greatest_angle_bare - chosen.greatest_angle_bare, limit("same_angle").value
    # Where nobody asked for the angle, no width still wider may gain either.
    if gain >= worth or (
        not must.asked
        and any(found.greatest_angle_bare - chosen.greatest_angle_bare >= worth for found in tries)
    ):
        return
    ends = degrees(chosen.greatest_angle_bare)
    gains = f"{degrees(max(gain, 0.0), 'near')}{_loss(chosen, other)}"
    message = (
        f"The {obstruction(stopped.kind)} ends the swing at {ends}; a {plain(wider[0])} in wide hinge gains "
        f"{gains}. Fit a door stop at {degrees(must.wanted, 'up')}; a wider hinge is not the answer."
    )
    source, angle = practice("plan_geometry"), chosen.greatest_angle_bare
    yield finding("wider gains nothing", "note", message, source, angle=angle, gain=gain)


def _loss(chosen: WidthAnswer, other: WidthAnswer) -> str:
    if chosen.clear_width_at_90 is None or other.clear_width_at_90 is None:
        return ""
    lost = chosen.clear_width_at_90 - other.clear_width_at_90
    return f" and loses {inches(lost, 'up')} of clear width" if lost > TOLERANCE else ""


def _lies_flat(chosen: WidthAnswer) -> bool:
    """Whether the bare leaf opens flat, and nothing on it stops it sooner than at the wall itself."""
    met = chosen.stopped_by
    return reaches(chosen, 180.0) and (met is None or met.kind == "wall")


def _flat(filled: FilledOpening, must: Must, chosen: WidthAnswer) -> Iterator[Finding]:
    """Return a note: what base or trim the open door still clears where no obstruction was given."""
    on_wall = any(thing.side == "hinge" for thing in filled.opening.obstructions)
    given = filled.opening
    stopped = given.door_stop is not None or (given.stop_angle(chosen.leaf) or 180.0) < 180.0 - TOLERANCE
    if on_wall or stopped or not _lies_flat(chosen) or not keeps_clear_width(chosen, must.clear_width):
        return
    off = chosen.clear_past_frame_at_180 + filled.frame_proud
    row = limit("standard_proud")
    usual = -TOLERANCE <= filled.frame_proud <= row.value + TOLERANCE
    source = row.cited if usual and chosen.hinge_width == 4 else practice("plan_geometry")
    message = (
        f"Open flat on a {size(must.height, chosen.hinge_width)} hinge the door lies {inches(off, 'down')} "
        "off the wall, so base or trim up to that thick still clears. Nothing was said to stand there: "
        "check on site."
    )
    yield finding("open flat", "note", message, source, off_wall=off)
