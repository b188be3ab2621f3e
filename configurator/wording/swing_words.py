"""A leaf over its swing in words: its two long edges, the bevel it needs, and how far it stands out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from configurator.rules.wording import leaf_named
from configurator.study import Study
from configurator.study.events import Event, Moment
from configurator.study.hang import name_of
from configurator.study.over_the_swing import LatchEdge, OverTheSwing, Passage, Standing
from configurator.units import TOLERANCE, Display

BEVEL_OVER = 2.0
"""Inches of thickness that the trade states a bevel over."""


@dataclass(frozen=True, slots=True)
class SwingRow:
    """One fact: its name, a text for each width, and what it is measured from."""

    name: str
    values: tuple[str, ...]
    measured: str


def swing_rows(swings: Sequence[OverTheSwing], display: Display) -> tuple[SwingRow, ...]:
    """Return the facts of one leaf, a text for each of its widths."""
    if not swings:
        return ()
    # An inactive leaf opens behind the open active one: its lock edge has nothing to pass.
    lock = [] if swings[0].leaf == "inactive" else _lock_rows(swings, display)
    hinge = _passages([one.hinge for one in swings], display)
    edge = "from the hinge edge to its jamb and the casing, as far as the leaf turns"
    return (*lock, SwingRow("Hinge edge", hinge, edge), *_standing_rows(swings, display))


def _lock_rows(swings: Sequence[OverTheSwing], display: Display) -> list[SwingRow]:
    """Return how the lock edge passes, as it is and square, and the bevel that would be needed."""
    first = swings[0].latch
    as_beveled = f"Lock edge, {bevel_words(first.bevel, display)}" if first.bevel else "Lock edge, square"
    jamb = "from the lock edge to the jamb, or to the other leaf, over the whole swing"
    rows = [SwingRow(as_beveled, _passages([one.latch.as_beveled for one in swings], display), jamb)]
    if first.bevel:
        square = _passages([one.latch.square for one in swings], display)
        rows.append(SwingRow("Lock edge, if it were square", square, jamb))
    needed = tuple(needed_words(one.latch, display) for one in swings)
    name = f"Bevel that leaves {display.exact(first.wanted_gap)} there"
    rows.append(SwingRow(name, needed, "from the hinge's pin and the gaps: the least bevel, rounded up"))
    return rows


def _passages(passages: Sequence[Passage], display: Display) -> tuple[str, ...]:
    return tuple(_passage(one, display) for one in passages)


def _standing_rows(swings: Sequence[OverTheSwing], display: Display) -> list[SwingRow]:
    """Return how far the door stands out; the hardware has rows of its own where it makes a difference."""
    corner = "from the wall face to the farthest corner of"
    bare = _most_and_rest([one.bare for one in swings], f"{corner} the leaf", display)
    fitted = _most_and_rest([one.with_hardware for one in swings], f"{corner} anything on the leaf", display)
    if [row.values for row in bare] == [row.values for row in fitted]:
        return bare
    named = [replace(row, name=f"{row.name}, leaf alone") for row in bare]
    return [*named, *(replace(row, name=f"{row.name}, with hardware") for row in fitted)]


def _most_and_rest(standings: Sequence[Standing], measured: str, display: Display) -> list[SwingRow]:
    most = tuple(f"{display.length(s.greatest, 'up')} at {display.angle(s.greatest_at)}" for s in standings)
    rest = tuple(f"{display.length(s.at_rest, 'up')} at {display.angle(s.rest)}" for s in standings)
    return [SwingRow("Stands out at most", most, measured), SwingRow("Stands out at rest", rest, measured)]


def _passage(one: Passage, display: Display) -> str:
    at = display.angle(one.angle)
    return f"{display.length(one.least, 'down')} at {at}" if one.least > 0.0 else f"touches at {at}"


def needed_words(latch: LatchEdge, display: Display) -> str:
    """Say which bevel leaves the wanted gap, and whether the one there is does."""
    if latch.bevel_needed is None:
        return "none does: widen the gap"
    if latch.bevel_needed == 0.0:
        return "none: square does"
    enough = latch.bevel >= latch.bevel_needed - TOLERANCE
    needed = _in_two(display.length(latch.bevel_needed * BEVEL_OVER, "up"), display)
    return f"{needed}: {'it has it' if enough else 'it has less'}"


def bevel_words(bevel: float, display: Display) -> str:
    """Write the bevel of a door, inches per inch, as the trade does: `1/8 in 2`."""
    return _in_two(display.exact(bevel * BEVEL_OVER), display)


def _in_two(off: str, display: Display) -> str:
    return f"{off.removesuffix(' in')} in {display.exact(BEVEL_OVER).removesuffix(' in')}"


def swing_reading(one: OverTheSwing, angle: float, display: Display) -> str:
    """Say how far the door stands out at an angle, degrees; past where it stops there is nothing to say."""
    said = f"open {display.angle(angle)}"
    for name, standing in (("the leaf", one.bare), ("with hardware", one.with_hardware)):
        out = out_at(standing, angle)
        if out is None:
            said += f"; {name} stops at {display.angle(standing.rest)}"
        elif name == "the leaf" or one.bare.curve != one.with_hardware.curve:
            said += f"; {name} stands out {display.length(out, 'up')}"
    return said


def out_at(standing: Standing, angle: float) -> float | None:
    """Return how far it stands out at an angle, inches, between the degrees worked out; None past rest."""
    if not 0.0 <= angle <= standing.rest:
        return None
    points = standing.curve
    for (low, out), (high, more) in pairwise(points):
        if low <= angle <= high and high > low:
            return out + (more - out) * (angle - low) / (high - low)
    return points[-1][1]


def edges_said(swings: Sequence[OverTheSwing], display: Display) -> str:
    """Return the facts as sentences, a width after the other."""
    rows = swing_rows(swings, display)
    return " ".join(
        f"{name_of(one.on)}: "
        + "; ".join(f"{row.name[:1].lower()}{row.name[1:]} {row.values[place]}" for row in rows)
        + "."
        for place, one in enumerate(swings)
    )


def moment_words(moment: Moment, study: Study, display: Display, plain: bool = False) -> str:
    """Return one line: `0.9°: latch edge closest, 1/16 in (4 in hinge)`.

    No hinge is named for what happens with every one; `plain` puts it in plain words.
    """
    alike = dict.fromkeys(event.of for event in moment.events)
    said = [_events([one for one in moment.events if one.of == of], study, display, plain) for of in alike]
    return f"{display.angle(moment.angle)}: {'; '.join(said)}"


def _events(alike: Sequence[Event], study: Study, display: Display, plain: bool) -> str:
    """Say what happens with the same hinges, and with which where it is not with all."""
    words = "; ".join(_event(event, display, plain) for event in alike)
    of = alike[0].of
    if len(of) == len(study.candidates):
        return words
    return f"{words} ({', '.join(_hinge(study, place) for place in of)})"


def _event(event: Event, display: Display, plain: bool) -> str:
    words = event.plain if plain else event.trade
    return words if event.distance is None else f"{words}, {display.length(event.distance, 'down')}"


def _hinge(study: Study, place: int) -> str:
    candidate = study.candidates[place]
    leaf = leaf_named(candidate.leaf, ", {}")
    return f"{candidate.hinge_words}{leaf}"
