"""What was asked for by hand, or by the job's standard, that does not serve or does not go together."""

from collections.abc import Iterator, Mapping

from configurator.model import Hinge
from configurator.rules.checks.slips import swapped_hinge
from configurator.rules.filling.materials import Fastening
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Reason, Severity, Source, finding
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED, LeafHinge, old_hinge, standard_serves
from configurator.rules.hinge.prepared import Prepared, prepared_findings
from configurator.rules.hinge.sizes import too_high
from configurator.rules.wording import exactly, plain
from configurator.tables import limit, practice, words_of

PREPARED = 4.5
"""Inches: the hinge height most doors and frames are prepared for; common practice, no source."""


def height_findings(filled: FilledOpening, hinge: LeafHinge, standard: Hinge) -> Iterator[Finding]:
    """Yield the findings about one leaf's hinge height."""
    needed, height = hinge.needed_height.value, hinge.height.value
    by_hand = filled.opening.hinge or NOTHING_ASKED
    if not standard_serves(standard, hinge.needed_height, filled.thickness):
        yield _standard_does_not_serve(standard, needed)
    if too_high(filled.thickness, height):
        yield _too_high(filled, height, needed)
        return
    if by_hand.height and by_hand.width and (slip := swapped_hinge(needed, by_hand.height, by_hand.width)):
        yield slip
    elif (prepared := filled.opening.prepared_height) is not None:
        yield from prepared_findings(_prepared(filled, hinge, prepared))
    elif height < needed:
        yield _too_low(height, needed)
    elif needed == height > PREPARED:
        yield _ask(hinge.needed_height)


def _standard_does_not_serve(standard: Hinge, needed: float) -> Finding:
    height = standard.height or 0.0
    code = "standard too low" if height < needed else "standard too high"
    message = (
        f"The job's standard hinge is {plain(height)} high; this door takes {plain(needed)}. "
        f"{plain(needed)} is taken; have it noted in the job's specification."
    )
    return finding(code, "warning", message, practice("job_standard"), needed=needed)


def _too_high(filled: FilledOpening, height: float, needed: float) -> Finding:
    """Say that a thin door takes no such hinge; where it is cut for one, ask whether it is so thin."""
    cut = (old_hinge(filled).height, filled.opening.prepared_height)
    hangs = any(one is not None and too_high(filled.thickness, one) for one in cut)
    most = limit("thin_door_height")
    mend = "Check the thickness" if hangs else f"Take {plain(needed)} high, or check the thickness"
    message = (
        f"A door {exactly(filled.thickness)} thick takes hinges no higher than {plain(most.value)}; these "
        f"are {plain(height)}. {mend}."
    )
    fix = () if hangs else (Fix("hinge.height", needed, f"Take {plain(needed)} high"),)
    numbers = {"height": height, "thickness": filled.thickness}
    severity: Severity = "warning" if hangs else "error"
    return finding("hinge too high", severity, message, most.cited, fix, **numbers)


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


USUAL_KNUCKLES = (3, 5)
_PRACTICE = Source("common practice, no source", "common practice")


def asked_part_findings(parts: Mapping[str, Reason], held: Fastening, by_hand: Hinge) -> Iterator[Finding]:
    """Yield a finding for parts of a hinge that do not go together, whoever chose them.

    The screws are those of the whole opening.
    """
    yield from _alloy(parts["alloy"].value, parts["base_metal"].value, by_hand.alloy is not None)
    yield from _screws(parts["screws"], held)
    yield from _knuckles(parts["knuckles"].value)
    yield from _type(parts["type"], parts["mounting"].value)


def _alloy(alloy: str | None, metal: str, chosen_here: bool) -> Iterator[Finding]:
    if alloy == "316" and metal == "stainless":
        message = "316 stainless is seldom kept in stock. Ask first whether it can be had, and by when."
        yield finding("alloy ask first", "note", message, practice("alloy_316_stock"))
    if alloy is None or metal == "stainless":
        return
    message = (
        f"Alloy {alloy} was asked for and the hinge is {metal}: {alloy} is an alloy of stainless only. Take "
        "stainless, or leave the alloy out."
    )
    # One from the job's standard hinge cannot be left out by an edit of this opening.
    fix = (Fix("hinge.alloy", None, "Leave the alloy out"),) if chosen_here else ()
    yield finding("alloy without stainless", "warning", message, practice("alloy_304"), fix)


def _screws(screws: Reason, held: Fastening) -> Iterator[Finding]:
    taken = {held.door_screws, held.frame_screws}
    asked = {kind: number for kind, number in screws.value.items() if number > 0}
    for kind in (kind for kind in asked if kind not in taken):
        (right,) = taken  # of the two kinds of screw, one is not taken here
        fits = screws.alternatives[0].value  # what the program takes
        message = (
            f"{asked[kind]} {kind} screws were asked for, but the door and the frame both take {right} "
            f"screws. Take {fits[right]} {right} screws."
        )
        fix = (Fix("hinge.screws", fits, f"Take {right} screws"),)
        yield finding("screws do not hold", "warning", message, _PRACTICE, fix, asked=asked[kind])


def _knuckles(knuckles: int) -> Iterator[Finding]:
    if knuckles in USUAL_KNUCKLES:
        return
    message = f"{knuckles} knuckles were asked for; 5 are usual, or 3. Ask whether it can be had, or take 5."
    fix = (Fix("hinge.knuckles", 5, "Take 5 knuckles"),)
    yield finding("knuckles not usual", "note", message, _PRACTICE, fix, knuckles=knuckles)


def _type(type_: Reason, mounting: str) -> Iterator[Finding]:
    """A type asked for where no type is known to compare it with."""
    unknown = any(other.value is None for other in type_.alternatives)
    if type_.value is None or not unknown:
        return
    why = "no type is known here for the weight, bearing and metal chosen"
    if mounting != "full mortise":
        why = f"only types of full mortise hinges are known here and the mounting is {mounting}"
    message = f"Type {type_.value} was asked for; {why}. Check the type with whoever supplies the hinges."
    yield finding("type not checked", "note", message, practice("type"))
