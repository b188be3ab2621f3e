"""What nobody said of an opening's use, asked in one place, with what each answer would change."""

from collections.abc import Iterator, Mapping

from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Reason, Source, finding
from configurator.rules.wording import counted, exactly
from configurator.tables import limit
from configurator.units import TOLERANCE

Parts = Mapping[str, Reason]
_ASKED = Source("what each answer would change here; common practice, no source", "common practice")


def question_findings(filled: FilledOpening, parts: Parts) -> tuple[Finding, ...]:
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


def _questions(filled: FilledOpening, parts: Parts) -> Iterator[str]:
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


def _how_used(filled: FilledOpening, parts: Parts) -> Iterator[str]:
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
