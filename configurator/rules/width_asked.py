"""The width by the geometry, the job's standard or by hand, and what to say when they differ."""

from dataclasses import dataclass

from configurator.model import Hinge
from configurator.rules.answers import Answer, WidthAnswer, tried
from configurator.rules.asked import NOTHING_ASKED, override
from configurator.rules.finding import Alternative, Finding, Fix, Reason, finding, reason
from configurator.rules.leaf_hinge import LeafHinge
from configurator.rules.usual import FilledOpening
from configurator.rules.width import Must, WidthChoice, choose_width, does, does_all
from configurator.rules.wording import plain, size
from configurator.tables import practice


@dataclass(frozen=True, slots=True)
class WidthAsked:
    """The width with its reason, whether it does all that it must, and what there is to say of it."""

    reason: Reason
    complete: bool
    findings: tuple[Finding, ...]


def ask_width(
    filled: FilledOpening, hinge: LeafHinge, must: Must, answer: Answer, standard: Hinge
) -> WidthAsked:
    """Return the width for one leaf: by hand outranks the job's standard, and that the geometry's choice."""
    chosen = choose_width(must, answer)
    by_hand = filled.opening.hinge or NOTHING_ASKED
    if by_hand.width is not None:
        return _by_hand(by_hand.width, filled, hinge, must, answer, chosen)
    if standard.width is None:
        return WidthAsked(chosen.reason, chosen.complete, chosen.findings)
    return _standard(standard, must, answer, chosen)


def _by_hand(
    width: float, filled: FilledOpening, hinge: LeafHinge, must: Must, answer: Answer, chosen: WidthChoice
) -> WidthAsked:
    why = override(width, None, chosen.reason)
    if does_all(found := answer(must.leaf, width), must):
        return WidthAsked(why, True, ())
    ordered = filled.opening.status in ("approved", "ordered")
    code = "changed since the order" if ordered else "width by hand"
    count = hinge.count.value * filled.opening.quantity
    start = f"Since the order ({count} hinges) the answer has changed: " if ordered else ""
    mend, fix = _better(must, chosen, width)
    message = f"{start}{size(must.height, width)}, chosen by hand, {does(found, must)}. {mend}"
    key = "changed_after_order" if ordered else "override"
    numbers = {"angle": found.greatest_angle_bare, "wanted": must.wanted, "width": width}
    said = finding(code, "error" if ordered else "warning", message, practice(key), fix, **numbers)
    return WidthAsked(why, False, (said,))


def _better(must: Must, chosen: WidthChoice, width: float) -> tuple[str, tuple[Fix, ...]]:
    value = chosen.reason.value
    if value is None or value == width:
        return "No stock width does more: fit a door stop, or change what is in the way.", ()
    name = size(must.height, value)
    words = "does all that it must" if chosen.complete else "is the least bad"
    return f"Take {name}: it {words}.", (Fix("hinge.width", value, f"Take {name}"),)


def _standard(standard: Hinge, must: Must, answer: Answer, chosen: WidthChoice) -> WidthAsked:
    width = standard.width or 0.0
    why = override(None, standard.width, chosen.reason)
    value = chosen.reason.value
    if value is None or value == width:
        return WidthAsked(why, chosen.complete, chosen.findings)
    found = tried(answer, must.leaf, width)
    if not isinstance(found, str) and does_all(found, must):
        return WidthAsked(why, True, (_would_do(must, width, value, answer),))
    if not chosen.complete and not isinstance(found, str):
        return WidthAsked(why, False, chosen.findings)
    return _not_the_standard(must, width, chosen, found)


def _would_do(must: Must, width: float, value: float, answer: Answer) -> Finding:
    word = "narrower" if value < width else "more usual"
    message = (
        f"The job's standard is {plain(width)} wide; a {word} {size(must.height, value)} would do here: "
        f"{does(answer(must.leaf, value), must)}. Keep the standard for one width over the whole job, "
        f"or note {size(must.height, value)} for this opening."
    )
    fix = (Fix("hinge.width", value, f"Take {size(must.height, value)}"),)
    return finding(
        "standard outranks", "note", message, practice("job_standard"), fix, standard=width, would_do=value
    )


def _not_the_standard(must: Must, width: float, chosen: WidthChoice, found: WidthAnswer | str) -> WidthAsked:
    value = chosen.reason.value
    effect = found if isinstance(found, str) else does(found, must)
    message = (
        f"The job's standard width of {plain(width)} does not do here: {effect}. "
        f"{size(must.height, value)} is taken instead; have it noted in the job's specification."
    )
    said = finding(
        "standard does not do", "warning", message, practice("job_standard"), standard=width, width=value
    )
    other = Alternative(width, f"the job's standard: {effect}")
    why = reason(value, chosen.reason.because, practice("width_geometry"), other, *chosen.reason.alternatives)
    return WidthAsked(why, chosen.complete, (said, *chosen.findings))
