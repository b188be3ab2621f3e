"""The hinge height beside what the door takes, what was asked for, and what is already prepared."""

from collections.abc import Iterator

from configurator.model import Hinge
from configurator.rules.asked import NOTHING_ASKED
from configurator.rules.finding import Finding, Fix, Reason, Source, finding
from configurator.rules.leaf_hinge import LeafHinge, standard_serves
from configurator.rules.prepared import Prepared, prepared_findings
from configurator.rules.slips import swapped_hinge
from configurator.rules.usual import FilledOpening
from configurator.rules.wording import plain
from configurator.tables import practice, words_of

PREPARED = 4.5
"""Inches: the hinge height most doors and frames are prepared for; common practice, no source."""


def height_findings(filled: FilledOpening, hinge: LeafHinge, standard: Hinge) -> Iterator[Finding]:
    """Yield what is to be said of one leaf's hinge height."""
    needed, height = hinge.needed_height.value, hinge.height.value
    by_hand = filled.opening.hinge or NOTHING_ASKED
    if not standard_serves(standard, hinge.needed_height):
        yield _standard_too_low(standard, needed)
    if by_hand.height and by_hand.width and (slip := swapped_hinge(needed, by_hand.height, by_hand.width)):
        yield slip
    elif (prepared := filled.opening.prepared_height) is not None:
        yield from prepared_findings(_prepared(filled, hinge, prepared))
    elif height < needed:
        yield _too_low(height, needed)
    elif needed == height > PREPARED:
        yield _ask(hinge.needed_height)


def _standard_too_low(standard: Hinge, needed: float) -> Finding:
    message = (
        f"The job's standard hinge is {plain(standard.height or 0.0)} high; this door takes "
        f"{plain(needed)}. {plain(needed)} is taken; have it noted in the job's specification."
    )
    return finding("standard too low", "warning", message, practice("job_standard"), needed=needed)


def _prepared(filled: FilledOpening, hinge: LeafHinge, prepared: float) -> Prepared:
    use, pounds = filled.use, hinge.door_weight
    return Prepared(
        height=prepared,
        needed=hinge.needed_height.value,
        chosen=hinge.height.value,
        weight=hinge.weight.value,
        count=hinge.count.value,
        needed_count=hinge.needed_count.value,
        traffic=use.traffic,
        fire_rated=use.fire_rated,
        door_weight=None if pounds is None else pounds.high,
    )


def _too_low(height: float, needed: float) -> Finding:
    message = (
        f"{plain(height)} high is less than the {plain(needed)} this door takes. Where door or frame is "
        f"already prepared for {plain(height)}: {words_of('prepared')}, but not on a fire rated door. "
        f"Ask who made the preparation; else take {plain(needed)}."
    )
    fix = (Fix("hinge.height", needed, f"Take {plain(needed)} high"),)
    return finding(
        "hinge too low", "warning", message, practice("prepared"), fix, needed=needed, height=height
    )


def _ask(needed: Reason) -> Finding:
    message = (
        f"This door takes {plain(needed.value)} high. Doors and frames already made are often prepared for "
        f"{plain(PREPARED)}: ask before ordering."
    )
    source = Source(needed.source, needed.mark)
    return finding("ask about preparation", "note", message, source, needed=needed.value)
