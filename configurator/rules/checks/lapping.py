"""Two leaves and what one carries over the face of the other: an astragal decides which leaf opens first."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.model import Hardware
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Severity, Source, finding
from configurator.rules.wording import exactly, hardware
from configurator.units import TOLERANCE

_PLAN = Source("worked out from where it stands; both leaves swing toward the pull side", "derived")
_OTHER = {"active": "inactive", "inactive": "active", "upper": "lower", "lower": "upper"}


@dataclass(frozen=True, slots=True)
class Lap:
    """Hardware of one leaf that may reach over the other: by so much, inches, below 0 where it falls short.

    `place` counts in the list of hardware from 0. On the pull face it goes with its own leaf and holds the
    other one shut; on the push face its own leaf is held by the other one.
    """

    place: int
    kind: str
    carrier: str
    face: str
    by: float

    @property
    def first(self) -> str:
        """The leaf that opens freely."""
        return self.carrier if self.face == "pull" else _OTHER[self.carrier]

    @property
    def second(self) -> str:
        """The leaf that opens only after the other, or together with it."""
        return _OTHER[self.first]


def reaches_over(filled: FilledOpening) -> tuple[Lap, ...]:
    """Return how far each piece of hardware reaches over the leaf that does not carry it."""
    leaves = {leaf.name: leaf for leaf in leaves_of(filled)}
    if len(leaves) < 2:
        return ()
    carried = [(place, one, filled.opening.carrier(one)) for place, one in enumerate(filled.opening.hardware)]
    return tuple(
        Lap(place, one.kind, name, one.face, _reach(filled, one, name, leaves[_OTHER[name]]))
        for place, one, name in carried
        if name in leaves
    )


def _reach(filled: FilledOpening, thing: Hardware, carrier: str, other: LeafSize) -> float:
    half = thing.vertical / 2
    if carrier == "upper":
        return other.top - (thing.height - half)
    if carrier == "lower":
        return thing.height + half - other.bottom
    return thing.width / 2 - thing.from_latch_edge - filled.meeting_gap


def laps_of(filled: FilledOpening) -> tuple[Lap, ...]:
    """Return the hardware that does reach over the other leaf."""
    return tuple(lap for lap in reaches_over(filled) if lap.by > TOLERANCE)


def opens_second(filled: FilledOpening) -> str | None:
    """Return the leaf that opens only after the other one; None where there is none, or neither can open."""
    second = {lap.second for lap in laps_of(filled)}
    return second.pop() if len(second) == 1 else None


def lapping_findings(filled: FilledOpening) -> Iterator[Finding]:
    """Yield in what order two leaves open, and an astragal that covers no gap."""
    laps = laps_of(filled)
    if len({lap.second for lap in laps}) > 1:
        yield _neither(laps)
    else:
        yield from (_in_order(filled, lap) for lap in laps)
    yield from _covers_nothing(filled)


def _in_order(filled: FilledOpening, lap: Lap) -> Finding:
    pair = filled.opening.leaves == "pair"
    wrong = lap.second == "active"
    severity: Severity = "warning" if wrong else "note"
    message = (
        f"The {hardware(lap.kind)} on the {lap.face} face of the {lap.carrier} leaf reaches "
        f"{exactly(lap.by, 'up')} over the {_OTHER[lap.carrier]} leaf: the {lap.second} leaf opens only "
        f"after the {lap.first} leaf, or together with it"
    )
    other = "push" if lap.face == "pull" else "pull"
    fix: tuple[Fix, ...] = ()
    if wrong:
        message += ". People pass through the active leaf: move it to the other face, or to the other leaf."
        fix = (Fix(f"hardware.{lap.place}.face", other, f"Move it to the {other} face"),)
    elif pair:
        message += (
            ", and closes before it. Have the leaves close in that order: where both close by themselves "
            "that takes a coordinator. On an exit or a fire door confirm what is allowed."
        )
    else:
        message += f". Have it so, or move it to the {other} face for the other order."
    return finding("leaves open in order", severity, message, _PLAN, fix, reaches_over=lap.by)


def _neither(laps: tuple[Lap, ...]) -> Finding:
    words = " and ".join(f"the {hardware(lap.kind)} of the {lap.carrier} leaf" for lap in laps[:2])
    message = (
        f"Neither leaf can open first: {words} each hold the other leaf shut. Move one of them to the other "
        "face, or take it off."
    )
    return finding("neither leaf opens", "error", message, _PLAN, (), reaches_over=laps[0].by)


def _covers_nothing(filled: FilledOpening) -> Iterator[Finding]:
    """Yield a warning for an astragal that does not reach the other leaf, or on a door of one leaf."""
    if filled.opening.leaves == "single":
        if any(one.kind == "astragal" for one in filled.opening.hardware):
            message = "An astragal covers the gap between two leaves; this door has 1. Take it off the list."
            yield finding("astragal covers nothing", "warning", message, _PLAN)
        return
    for lap in reaches_over(filled):
        if lap.kind == "astragal" and lap.by <= TOLERANCE:
            short = f"{exactly(-lap.by, 'down')} short of" if lap.by < -TOLERANCE else "just at the edge of"
            message = (
                f"The astragal of the {lap.carrier} leaf ends {short} the {_OTHER[lap.carrier]} leaf: it "
                "does not cover the gap. Move it, or take a wider one."
            )
            yield finding("astragal covers nothing", "warning", message, _PLAN, (), short_by=-lap.by)
