"""Parts of a hinge asked for that do not go together, or that nobody usually makes so."""

from collections.abc import Iterator, Mapping

from configurator.model import Hinge
from configurator.rules.fastening import Fastening
from configurator.rules.finding import Finding, Fix, Reason, Source, finding
from configurator.tables import practice

USUAL_KNUCKLES = (3, 5)
_PRACTICE = Source("common practice, no source", "common practice")


def asked_part_findings(parts: Mapping[str, Reason], held: Fastening, by_hand: Hinge) -> Iterator[Finding]:
    """Yield what does not go together in the parts of a hinge, whoever chose each.

    The screws are those of the whole opening.
    """
    yield from _alloy(parts["alloy"].value, parts["base_metal"].value, by_hand.alloy is not None)
    yield from _screws(parts["screws"], held)
    yield from _knuckles(parts["knuckles"].value)
    yield from _type(parts["type"], parts["mounting"].value)


def _alloy(alloy: str | None, metal: str, chosen_here: bool) -> Iterator[Finding]:
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
