"""Which hinge open width: the least stock width that does all that it must, or the one asked for."""

from dataclasses import dataclass, replace

from configurator.model import Hinge
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Alternative, Finding, Fix, Later, Reason, finding, reason
from configurator.rules.hinge.answers import (
    Answer,
    Answers,
    Must,
    WidthAnswer,
    WidthChoice,
    barrel_clear,
    barrel_free,
    binds,
    by_template,
    held_shut,
    keeps_clear_width,
    reaches,
    refused,
    tried,
)
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED, LeafHinge, old_hinge, override
from configurator.rules.hinge.stock import next_narrower, next_wider, stock_of, widths_by_stock
from configurator.rules.wording import degrees, hardware, inches, leaf_named, obstruction, plain, size
from configurator.tables import limit, practice, words_of
from configurator.units import TOLERANCE


def does_all(answer: WidthAnswer, must: Must) -> bool:
    """Return whether a width opens far enough bare, its barrel clear, clear width kept, and no fault.

    Of a hinge whose template decides nobody knows.
    """
    return does_the_rest(answer, must) and reaches(answer, must.wanted)


def does_the_rest(answer: WidthAnswer, must: Must) -> bool:
    """Return whether a width does all that it must but for the angle it opens to."""
    return (
        barrel_clear(answer)
        and keeps_clear_width(answer, must.clear_width)
        and not binds(answer)
        and not refused(answer)
        and not by_template(answer.mounting)
    )


def decided(answer: WidthAnswer) -> WidthChoice:
    """Return the width that is to be taken for the leaf of an answer, which may be on another width."""
    return answer.others.choice(answer.leaf)


NO_WIDTH = "No stock width does it: choose one of the mends."
"""What stands in place of another width: those mends are told once, with what the least bad width does."""


def instead(answer: WidthAnswer) -> str:
    """Return in words which width to take instead of an answer's; empty where that is the one."""
    if answer.way is not None:  # hung another way: no width was asked about
        return ""
    choice = decided(answer)
    width = choice.reason.value
    if width is None or choice.least_bad is not None:
        return NO_WIDTH
    return "" if width == answer.hinge_width else f"Take {size(answer.hinge.height.value, width)}."


def choose_width(must: Must, answer: Answer) -> WidthChoice:
    """Return the width: the first in stock order that does all, else the one that does the rest best.

    Stock order: the common narrow to wide, then the uncommon, then those to ask for. A job may put the square
    hinge first. Where no width does all, a width that does not open as far is no worse for it: see
    `_least_bad`. Of a hinge whose template decides the first that can be mounted.
    """
    widths = widths_by_stock(must.height)
    for width in (*_square(must), *widths):
        found = tried(answer, must.leaf, width)
        if isinstance(found, str):
            continue
        if does_all(found, must):
            return _complete(found, must, answer)
        if by_template(found.mounting) and not refused(found):
            because = f"{words_of('by_template')}; {plain(width)} wide is usual of that height"
            return WidthChoice(reason(width, because, practice("by_template")), False)
    return _least_bad(widths, must, answer)


def _square(must: Must) -> tuple[float, ...]:
    """Return the width that the job's policy puts first: as wide as high, where that is in stock."""
    return (must.height,) if must.square and stock_of(must.height, must.height) else ()


def _complete(found: WidthAnswer, must: Must, answer: Answer) -> WidthChoice:
    width = found.hinge_width
    row = stock_of(must.height, width)
    stock = "" if row is None or row.stock == "common" else f" ({row.stock} in stock)"
    key = "policy_square" if width in _square(must) else "width_geometry"
    because = f"{words_of(key)}: {does(found, must)}{stock}{_not_square(must, width, answer)}"
    return WidthChoice(_reason(width, because, key, must, answer), True, ())


def _reason(width: float, because: str, key: str, must: Must, answer: Answer) -> Reason:
    beside = Later(lambda: alternatives(width, must, answer))
    return replace(reason(width, because, practice(key)), alternatives=beside)


def _not_square(must: Must, width: float, answer: Answer) -> str:
    """Return in words why the square hinge of the job's policy is not taken; empty where it is."""
    square = _square(must)
    if not square or width in square:
        return ""
    found = tried(answer, must.leaf, square[0])
    does_not = found if isinstance(found, str) else does(found, must)
    return f"; square, as the job's policy has it, does not do here: {does_not}"


def alternatives(width: float, must: Must, answer: Answer) -> tuple[Alternative, ...]:
    """Return what the next narrower and the next wider stock width would do."""
    beside = (next_narrower(must.height, width), next_wider(must.height, width))
    return tuple(_alternative(other, must, answer) for other in beside if other is not None)


def _alternative(width: float, must: Must, answer: Answer) -> Alternative:
    row = stock_of(must.height, width)
    stock = "" if row is None or row.stock == "common" else f"; {row.stock} in stock"
    found = tried(answer, must.leaf, width)
    return Alternative(width, (found if isinstance(found, str) else does(found, must)) + stock)


def does(answer: WidthAnswer, must: Must) -> str:
    """Return in words what a width does: angle, barrel, binding, clear width."""
    if refused(answer):
        return "is too wide to be mounted so"
    if by_template(answer.mounting):
        return "opens as its template has it"
    if binds(answer):
        return f"binds at {degrees(answer.greatest_angle_bare)}"
    said = [_opens(answer, must)]
    if not barrel_free(answer):
        said.append(f"its barrel overlaps by {inches(-answer.barrel_free_by, 'up')}")
    elif not barrel_clear(answer):
        said.append(f"its barrel is free by {inches(answer.barrel_free_by, 'down')} only")
    if (part := hardware_before_square(answer, must)) is not None:
        said.append(f"but its {hardware(part)} ends the swing at {degrees(answer.greatest_angle)}")
    if answer.clear_width_at_90 is not None:
        said.append(f"clear width {inches(answer.clear_width_at_90, 'down')}")
    return ", ".join(said)


def hardware_before_square(answer: WidthAnswer, must: Must) -> str | None:
    """Return the kind of hardware that alone keeps the door from square, where it has to come there."""
    met = answer.stopped_by
    if must.clear_width is None or met is None or answer.greatest_angle >= 90.0 - TOLERANCE:
        return None
    return met.part if answer.greatest_angle_bare >= 90.0 - TOLERANCE else None


def _opens(answer: WidthAnswer, must: Must) -> str:
    stopped = answer.stopped_by_bare
    if held_shut(answer):
        return "is held shut by what the other leaf carries"
    opens = degrees(answer.greatest_angle_bare)
    if stopped is None:
        return f"opens to {opens}"
    verb = "opens to" if reaches(answer, must.wanted) else "stops at"
    return f"{verb} {opens}, where the {stopped.part} meets the {obstruction(stopped.kind)}"


def _least_bad(widths: tuple[float, ...], must: Must, answer: Answer) -> WidthChoice:
    """Return the width that is the least bad of those in stock order.

    Barrel clear and nothing binding come first, then the clear width. Then a usual width that opens square:
    one that only opens a little farther is not worth being wider, nor one that is longer to get.
    """
    tries = [tried(answer, must.leaf, width) for width in widths]
    answers = [found for found in tries if not isinstance(found, str)]
    if not answers:
        return _no_stock(must, [found for found in tries if isinstance(found, str)])
    mounted = [a for a in answers if not refused(a)] or answers
    sound = [a for a in mounted if barrel_clear(a) and not binds(a)]
    sound = sound or [a for a in mounted if barrel_free(a) and not binds(a)] or mounted
    wide_enough = [a for a in sound if keeps_clear_width(a, must.clear_width)] or sound
    chosen = _usual_that_opens(must, wide_enough)
    because = f"no stock width does everything; the least bad: {does(chosen, must)}"
    why = _reason(chosen.hinge_width, because, "width_geometry", must, answer)
    return WidthChoice(why, False, (), chosen)


def _usual_that_opens(must: Must, answers: list[WidthAnswer]) -> WidthAnswer:
    """Return the narrowest of the most usual widths that opens about as far as any as usual as it.

    Of widths that all stop short of square the farthest counts, however usual.
    """
    square = min(limit("usual_angle_least").value, must.wanted)
    usual = next((_stock(must.height, a) for a in answers if reaches(a, square)), None)
    pool = [a for a in answers if usual is None or _stock(must.height, a) == usual]
    best = max(min(a.greatest_angle_bare, must.wanted) for a in pool)
    near = [a for a in pool if a.greatest_angle_bare >= best - limit("same_angle").value]
    return near[0]


def _stock(height: float, answer: WidthAnswer) -> str | None:
    row = stock_of(height, answer.hinge_width)
    return None if row is None else row.stock


def _no_stock(must: Must, refusals: list[str]) -> WidthChoice:
    """Return the choice where there is no width: none in stock, or none that can be mounted, and why."""
    why = f"No stock width is known for a hinge {plain(must.height)} high."
    if refusals:
        why = f"No stock width of a hinge {plain(must.height)} high can be mounted so: {refusals[-1]}."
    message = (
        f"{why} Choose another height or mounting, or give the width by hand and ask whether it can be had."
    )
    found = finding("no stock width", "error", message, practice("width_geometry"), height=must.height)
    return WidthChoice(reason(None, why, practice("width_geometry")), False, (found,))


@dataclass(frozen=True, slots=True)
class WidthAsked:
    """The width with its reason, whether it does all that it must, and what there is to say of it.

    `least_bad` is what the least bad width does where no stock width does all.
    """

    reason: Reason
    complete: bool
    findings: tuple[Finding, ...] = ()
    least_bad: WidthAnswer | None = None


def ask_width(filled: FilledOpening, hinge: LeafHinge, answer: Answers, standard: Hinge) -> WidthAsked:
    """Return the width for one leaf: by hand outranks the job's standard, and that the geometry's choice."""
    must, chosen = answer.must(hinge.leaf.name), answer.choice(hinge.leaf.name)
    by_hand, old = filled.opening.hinge or NOTHING_ASKED, _old_width_for(filled, must.height)
    if by_hand.width is not None:
        return _by_hand(by_hand.width, filled, hinge, must, answer, chosen)
    if old is not None:
        return _old_width(old, must, answer, chosen)
    if standard.width is None:
        return WidthAsked(chosen.reason, chosen.complete, chosen.findings, chosen.least_bad)
    return _standard(standard, must, answer, chosen)


def _by_hand(
    width: float, filled: FilledOpening, hinge: LeafHinge, must: Must, answer: Answer, chosen: WidthChoice
) -> WidthAsked:
    why = override(width, None, chosen.reason)
    if does_all(found := answer(must.leaf, width), must):
        return WidthAsked(why, True)
    if by_template(found.mounting) and not refused(found):
        return WidthAsked(why, False)
    ordered = bool(filled.opening.settled)
    code = "changed since the order" if ordered else "width by hand"
    count = hinge.count.value * filled.opening.quantity
    start = f"Since the order ({count} hinges) the answer has changed: " if ordered else ""
    mend, fix = _better(must, chosen)
    leaf = leaf_named(must.leaf, " ({})")
    message = f"{start}{size(must.height, width)}{leaf}, chosen by hand, {does(found, must)}. {mend}"
    key = "changed_after_order" if ordered else "override"
    numbers = {"angle": found.greatest_angle_bare, "wanted": must.wanted, "width": width}
    said = finding(code, "error" if ordered else "warning", message, practice(key), fix, **numbers)
    return WidthAsked(why, False, (said,), chosen.least_bad)


def _better(must: Must, chosen: WidthChoice) -> tuple[str, tuple[Fix, ...]]:
    value = chosen.reason.value
    if value is None or chosen.least_bad is not None:
        return NO_WIDTH, ()
    name = size(must.height, value)
    words = "does all that it must" if chosen.complete else "can be mounted so"
    return f"Take {name}: it {words}.", (Fix("hinge.width", value, f"Take {name}"),)


def _old_width_for(filled: FilledOpening, height: float) -> float | None:
    """Return the width that hangs there now, if hinges of that height come so wide; inches."""
    old = old_hinge(filled)
    made = old.width is not None and (old.height in (None, height) or stock_of(height, old.width) is not None)
    return old.width if made else None


def _old_width(width: float, must: Must, answer: Answer, chosen: WidthChoice) -> WidthAsked:
    """Return the width that hangs there now, unless it fails; then the one chosen, and why."""
    found = tried(answer, must.leaf, width)
    because = f"the width that hangs there now: {words_of('reuse')}"
    if isinstance(found, str):
        return _old_fails(width, found, must, chosen)
    # An angle that nobody asked for is no reason to change what hangs there.
    wanted = must.wanted if must.asked else min(must.wanted, limit("usual_angle_least").value)
    why = reason(width, f"{because}; {does(found, must)}", practice("reuse"), *chosen.reason.alternatives)
    if does_all(found, replace(must, wanted=wanted)):
        return WidthAsked(why, True)
    if by_template(found.mounting) and not refused(found):
        return WidthAsked(why, False)
    if chosen.least_bad is not None and does_the_rest(found, must):
        return WidthAsked(why, False, (), found)
    return _old_fails(width, does(found, must), must, chosen)


def _old_fails(width: float, fault: str, must: Must, chosen: WidthChoice) -> WidthAsked:
    mend, _ = _better(must, chosen)
    leaf = leaf_named(must.leaf, " ({})")
    message = f"{size(must.height, width)}{leaf}, as hangs there now, {fault}. {mend}"
    said = finding("old width fails", "warning", message, practice("reuse"), width=width)
    return WidthAsked(chosen.reason, chosen.complete, (said, *chosen.findings), chosen.least_bad)


def _standard(standard: Hinge, must: Must, answer: Answer, chosen: WidthChoice) -> WidthAsked:
    width = standard.width or 0.0
    why = override(None, standard.width, chosen.reason)
    value = chosen.reason.value
    if value is None or value == width:
        return WidthAsked(why, chosen.complete, chosen.findings, chosen.least_bad)
    found = tried(answer, must.leaf, width)
    if not isinstance(found, str) and does_all(found, must):
        return WidthAsked(why, True, (_would_do(must, width, value, answer),))
    if not chosen.complete and not isinstance(found, str):
        return WidthAsked(why, False, chosen.findings, chosen.least_bad)
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
    return WidthAsked(why, chosen.complete, (said, *chosen.findings), chosen.least_bad)
