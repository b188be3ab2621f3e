"""Findings about an opening: given values that do not fit together, and what nobody said of its use."""

from collections.abc import Iterator, Mapping

from configurator.model.paths import plain_name
from configurator.rules.checks.door_stop import door_stop_findings
from configurator.rules.checks.frame_fit import frame_fit_findings
from configurator.rules.checks.lapping import lapping_findings
from configurator.rules.checks.manoeuvring import manoeuvring_findings
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Reason, Source, finding
from configurator.rules.wording import counted, exactly, hardware, obstruction
from configurator.tables import (
    DoorStopKindRow,
    FrameKindRow,
    HardwareKindRow,
    ObstructionKindRow,
    limit,
    row_of,
)
from configurator.units import TOLERANCE

_PLAN = Source("worked out from the plan", "derived")
_PRACTICE = Source("common practice, no source", "common practice")
_ASKED = Source("what each answer would change here; common practice, no source", "common practice")


def opening_findings(filled: FilledOpening) -> tuple[Finding, ...]:
    """Return what does not fit together in an opening, whatever hinge is chosen."""
    return (
        *_rabbet(filled),
        *frame_fit_findings(filled),
        *_casing(filled),
        *_sizes(filled),
        *_lost_hardware(filled),
        *_fire_label(filled),
        *door_stop_findings(filled),
        *lapping_findings(filled),
        *manoeuvring_findings(filled),
    )


def _rabbet(filled: FilledOpening) -> Iterator[Finding]:
    if filled.inset < -TOLERANCE:
        yield finding(
            "door stands proud",
            "warning",
            f"The rabbet is {exactly(filled.rabbet)} deep, shallower than the door "
            f"({exactly(filled.thickness)}) and its gap at the frame stop need: the door face stands "
            f"{exactly(-filled.inset, 'up')} out of the frame. Check the rabbet and the door thickness.",
            _PLAN,
            rabbet=filled.rabbet,
            thickness=filled.thickness,
            proud=-filled.inset,
        )


def _casing(filled: FilledOpening) -> Iterator[Finding]:
    cased = row_of(FrameKindRow, filled.opening.frame.kind).cased
    if cased and not any(thing.kind == "casing" for thing in filled.opening.obstructions):
        yield finding(
            "no casing given",
            "note",
            "A wood frame usually has casing; none was given, so none stands here. Add it, as it decides how "
            "far the door opens.",
            _PRACTICE,
            face=filled.frame_face,
        )


def _fire_label(filled: FilledOpening) -> Iterator[Finding]:
    """Yield an error where minutes and a yes or no beside them disagree: it is taken as rated until then."""
    minutes, rated = filled.opening.fire_minutes, filled.opening.use.fire_rated
    if minutes is None or rated is None or rated == bool(minutes):
        return
    words = f"{minutes} minutes but not fire rated" if minutes else "fire rated but 0 minutes"
    message = (
        f"The opening is given as {words}. It is taken as fire rated until this is settled; ask which is "
        "right."
    )
    yield finding("fire rating disagrees", "error", message, _PRACTICE, minutes=minutes)


def _sizes(filled: FilledOpening) -> Iterator[Finding]:
    """Ask for the sizes of what stands along the wall, is on a leaf and stops it, where nobody gave them."""
    for place, thing in enumerate(filled.opening.obstructions):
        row = row_of(ObstructionKindRow, thing.kind)
        yield from _not_measured(filled, f"obstructions.{place}.", obstruction(thing.kind), row.cited)
    for place, item in enumerate(filled.opening.hardware):
        yield from _not_measured(
            filled, f"hardware.{place}.", hardware(item.kind), row_of(HardwareKindRow, item.kind).cited
        )
    if (stop := filled.opening.door_stop) is not None:
        yield from _not_measured(filled, "door_stop.", stop.kind, row_of(DoorStopKindRow, stop.kind).cited)


def _not_measured(filled: FilledOpening, before: str, name: str, source: Source) -> Iterator[Finding]:
    taken = {path: told.value for path, told in filled.assumed.items() if path.startswith(before)}
    taken.pop(f"{before}weight", None)  # it is weighed, and seldom decides
    sizes = {path: value for path, value in taken.items() if isinstance(value, float | int)}
    if not sizes:
        return
    named = ", ".join(f"{plain_name(path)} {exactly(size)}" for path, size in sizes.items())
    message = (
        f"The {name} was not measured in all; taken as usual: {named}. Measure it and type what is there, or "
        "say that these are right."
    )
    (first, size), *rest = taken.items()
    fix = (Fix(first, size, "These are right"), *(Fix(path, value, "") for path, value in rest))
    yield finding("sizes not given", "note", message, source, fix, sizes=len(sizes))


def _lost_hardware(filled: FilledOpening) -> Iterator[Finding]:
    """Yield an error for hardware on a leaf that the opening does not have: it is not counted."""
    names = [leaf.name for leaf in leaves_of(filled)]
    for place, thing in enumerate(filled.opening.hardware, 1):
        if thing.leaf is not None and thing.leaf not in names:
            yield finding(
                "hardware on no leaf",
                "error",
                f"Hardware {place}, the {hardware(thing.kind)}, is on the {thing.leaf} leaf, "
                f"which is not there: it is not counted. Put it on the {' or the '.join(names)} leaf, "
                "or leave the leaf out.",
                _PLAN,
                place=place,
            )


def question_findings(filled: FilledOpening, parts: Mapping[str, Reason]) -> tuple[Finding, ...]:
    """Return one finding with every question still open whose answer would change the hinge or its checks.

    `parts` are those of the hinge chosen meanwhile.
    """
    asked = tuple(_questions(filled, parts))
    if not asked:
        return ()
    message = (
        f"{counted(len(asked), 'question is', 'questions are')} open, answered as usual until then: "
        f"{' '.join(asked)} Ask, and say so here."
    )
    return (finding("not said", "note", message, _ASKED, (), questions=len(asked)),)


def _questions(filled: FilledOpening, parts: Mapping[str, Reason]) -> Iterator[str]:
    yield from _how_used(filled, parts)
    yield from _air(filled, parts["alloy"].value)
    use = filled.opening.use
    if filled.opening.fire_label is None:
        yield "A fire label, for how many minutes (steel, ball bearings, as listed)?"
    elif filled.opening.fire_label and not filled.opening.fire_minutes:
        yield "How many minutes its label says (the listing goes by them)?"
    wide, beds = limit("beds_asked"), limit("clear_width_beds")
    if use.beds_moved is None and filled.opening_width >= wide.value - TOLERANCE:
        yield f"Beds moved through, as in a hospital (clear width {exactly(beds.value)})?"
    if use.accessible is None:
        yield "On an accessible route (clear width checked)?"


def _how_used(filled: FilledOpening, parts: Mapping[str, Reason]) -> Iterator[str]:
    use = filled.opening.use
    heavy, ball = parts["weight"].value == "heavy", parts["bearing"].value == "ball"
    if use.traffic is None and not (heavy and ball):
        yield "How often used (high traffic: heavy weight, ball bearings)?"
    if filled.opening.closes_itself is None and not ball:
        yield "A closer (ball bearings)?"


def _air(filled: FilledOpening, alloy: str | None) -> Iterator[str]:
    """Ask for what corrodes; nothing is left to ask of a hinge of 316."""
    use = filled.opening.use
    if alloy == "316":
        return
    if use.exposure is None:
        yield "Indoors or outdoors (outdoors: stainless)?"
    if use.coastal is None:
        yield "Salt water near (316 stainless, ask first)?"
    if filled.use.exposure == "interior" and use.humid is not False:
        damp = "" if use.humid else "A humid room (stainless)? "
        yield f"{damp}A pool (316, or ask the hinge's maker)?"
