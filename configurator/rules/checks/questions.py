"""What nobody said of an opening's use, asked in one place, with what each answer would change."""

from collections.abc import Iterator, Mapping

from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Reason, Source, finding
from configurator.rules.wording import counted

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
        f"{counted(len(asked), 'question is', 'questions are')} open; the usual answer was taken for each. "
        f"{' '.join(asked)} Ask, and say so here."
    )
    return (finding("not said", "note", message, _ASKED, (), questions=len(asked)),)


def _questions(filled: FilledOpening, parts: Parts) -> Iterator[str]:
    yield from _how_used(filled, parts)
    yield from _air(filled, parts["alloy"].value)
    use = filled.opening.use
    if use.fire_rated is None:
        yield (
            "Is it a labelled fire door, and for how many minutes? Then its hinges are steel or stainless "
            "with ball bearings, no lighter than its listing asks."
        )
    if use.accessible is None:
        yield "Is it on an accessible route? Then the clear width is checked."


def _how_used(filled: FilledOpening, parts: Parts) -> Iterator[str]:
    use = filled.opening.use
    heavy, ball = parts["weight"].value == "heavy", parts["bearing"].value == "ball"
    if use.traffic is None and not (heavy and ball):
        yield "How often is it used? High traffic takes heavy weight hinges with ball bearings."
    if use.closer is None and not ball:
        yield "Does it have a closer? Then it takes ball bearings."


def _air(filled: FilledOpening, alloy: str | None) -> Iterator[str]:
    """Ask for what corrodes; nothing is left to ask of a hinge of 316."""
    use = filled.opening.use
    if alloy == "316":
        return
    if use.exposure is None:
        yield "Is it indoors or outdoors? Outdoors takes stainless."
    if use.coastal is None:
        yield "Is it near salt water? Then 316 stainless, asked for first."
    if filled.use.exposure == "interior" and use.humid is not False:
        damp = "" if use.humid else "Is the room humid? Then stainless. "
        yield f"{damp}Is it a pool, or does its air reach the door? Then 316, or ask the hinge's maker."
