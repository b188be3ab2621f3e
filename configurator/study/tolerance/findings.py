"""A tolerance result in words: a sentence, a finding where one is due, the chance, what to do."""

from collections.abc import Mapping

from configurator.rules.filling.ways import FilledWay
from configurator.rules.finding import Finding, Severity, Source, finding
from configurator.rules.wording import degrees, inches, leaf_named
from configurator.sentences import written
from configurator.study.hang import on_words
from configurator.study.tolerance.result import (
    BARREL,
    CLEAR_WIDTH,
    LOCK_EDGE,
    MENDS,
    MOUNTING,
    SWING,
    Reach,
    ToleranceResult,
)
from configurator.units import Display, Rounding

_LEAST_SAID = 1 / 16
"""Inches: less than this is not said to still work, for nobody builds closer."""
UNLIKELY = 0.9
"""A hinge that works less often than this is warned of; the program's own choice, no source."""
_OFF: Mapping[str, tuple[str, str]] = {
    "frame_setting": ("a frame set {} back", "a frame set {} farther out"),
    "wall_thickness": ("a wall {} thinner", "a wall {} thicker"),
    "hinge_gap": ("a hinge-side gap {} tighter", "a hinge-side gap {} wider"),
    "latch_gap": ("a latch-side gap {} tighter", "a latch-side gap {} wider"),
    "door_thickness": ("a door {} thinner", "a door {} thicker"),
    "hinge_backset": ("a hinge set {} nearer the frame stop", "a hinge set {} farther from the frame stop"),
    "hinge_width": ("a hinge {} narrower", "a hinge {} wider"),
    "axis_off_face": ("an axis {} nearer the stop", "an axis {} farther off the face"),
    "axis_from_heel": ("an axis {} nearer the jamb", "an axis {} nearer the latch"),
}
_SPARE_AT: Mapping[str, str] = {
    SWING: "",
    LOCK_EDGE: " at the lock edge",
    BARREL: " at the barrel",
    CLEAR_WIDTH: " of clear width",
    MOUNTING: " at the hinge leaf",
}


def off_words(name: str, plus: bool, by: float, rounding: Rounding = "near") -> str:
    """Say that one thing is off to one side, its length as a mark: `a wall 1/16 in thicker`."""
    return _OFF[name][plus].format(inches(by, rounding))


def chance_words(worked: int, draws: int) -> str:
    """Say how often it works, no finer than the draws bear: always, 97 %, about half, never.

    “always” and “never” are said only where every draw bears them out.
    """
    share = worked / draws
    if worked == draws:
        return "always"
    if worked == 0:
        return "never"
    if share >= 0.995:
        return "more than 99 %"
    if share < 0.005:
        return "less than 1 %"
    return "about half" if 0.45 <= share <= 0.55 else f"{max(round(100 * share), 1)} %"


def tolerance_sentence(result: ToleranceResult, display: Display | None = None) -> str:
    """Say in a line or two whether it works, with how much to spare, and what would stop it."""
    return written(_sentence(result), display)


def _sentence(result: ToleranceResult) -> str:
    if not result.works:
        often = f" {_often(result)}" if result.worked else ""
        return f"Does not work as drawn: {_fault(result, result.as_drawn)}{_would_work(result)}.{often}"
    if result.works_worst_case:
        return (
            f"Works{_to_spare(result)}, also with everything off at once at its worst{_still_works(result)}."
        )
    return f"Works as drawn{_to_spare(result)}, but {_would_stop(result)}. {_often(result)}"


def tolerance_finding(result: ToleranceResult) -> Finding | None:
    """Return what to warn of: a leaf that works as drawn and not with everything at its worst; else None."""
    if not result.works or result.works_worst_case:
        return None
    leaf = leaf_named(result.leaf, " ({})")
    message = (
        f"{on_words(result.on)}{leaf} the door works as drawn, but "
        f"{_would_stop(result)}. {_often(result)} {what_to_do(result)}"
    )
    numbers = {"chance": result.chance, "draws": result.draws, "worst_angle": result.worst.greatest_angle}
    if result.margin is not None:
        numbers["margin"] = result.margin
    severity: Severity = "note" if result.chance >= UNLIKELY else "warning"
    return finding("how sure", severity, message, _sources(result), (), **numbers)


def _sources(result: ToleranceResult) -> Source:
    """Name where the tolerances that count come from: worked out here, from those."""
    assumed = result.tolerances.assumed.values()
    named = dict.fromkeys(f"{one.source} ({one.mark_of_source})" for one in assumed if one.value)
    return Source("; ".join(("worked out from the plan and the tolerances", *named)), "derived")


def _to_spare(result: ToleranceResult) -> str:
    """Say what there is to spare in the swing, and at what gives way first if that is another check."""
    checks = dict.fromkeys((SWING, result.margin_of))
    spare = {check: margin for check in checks if (margin := result.margins[check]) is not None}
    words = [
        inches(margin, "down") + (_SPARE_AT[check] if place else "")
        for place, (check, margin) in enumerate(spare.items())
    ]
    if not words:
        return ""
    first = next(iter(spare))
    return f" with {words[0]} to spare{_SPARE_AT[first]}" + "".join(f" and {more}" for more in words[1:])


def _still_works(result: ToleranceResult) -> str:
    """Name one thing that may be off by so much: the wall where it counts, else what matters most."""
    for name in ("wall_thickness", result.matters_most):
        if name is None:
            continue
        plus, end = result.effect(name).nearer
        if end.turns_at is not None and end.turns_at >= _LEAST_SAID:
            return f"; {off_words(name, plus, end.turns_at, 'down')} still works"
    return ""


def _would_stop(result: ToleranceResult) -> str:
    """Say what stops it: one thing by itself if one does, the likeliest, else all of them together."""
    alone = [
        (end.turns_at / effect.tolerance, effect, plus, end)
        for effect in result.effects
        for plus, end in effect.ends
        if end.at.fails and end.turns_at is not None
    ]
    if not alone:
        return f"with everything off at once at its worst {_fault(result, result.worst)}"
    _, effect, plus, end = min(alone, key=lambda found: found[0])
    return f"with {off_words(effect.name, plus, effect.tolerance)} {_fault(result, end.at)}"


def _fault(result: ToleranceResult, at: Reach) -> str:
    if MOUNTING in at.fails:
        return "the hinge leaf runs out past the far side"
    if BARREL in at.fails:
        return f"the barrel overlaps the door or the frame by {inches(-at.barrel_freedom, 'up')}"
    if LOCK_EDGE in at.fails:
        return "the lock edge binds"
    if SWING in at.fails:
        return f"it stops at {degrees(at.greatest_angle)}, short of {degrees(result.wanted_angle, 'up')}"
    if at.clear_width_at_90 is None:
        return "it does not come square open"
    return f"it leaves {inches(at.clear_width_at_90, 'down')} to walk through"


def _would_work(result: ToleranceResult) -> str:
    """Name the first thing that would mend it by being off, least first; nothing where none does."""
    found = [
        (end.turns_at, effect.name, plus)
        for effect in result.effects
        for plus, end in effect.ends
        if end.turns_at is not None and effect.name in MENDS
    ]
    if not found:
        return ""
    by, name, plus = min(found)
    return f"; {off_words(name, plus, by, 'up')} would do"


def _often(result: ToleranceResult) -> str:
    words = chance_words(result.worked, result.draws)
    share = {"always": "every one", "never": "none"}.get(words, words)
    return f"It works in {share} of {result.draws:,} draws with each off by chance."


def what_to_do(result: ToleranceResult) -> str:
    """Say what to do about a leaf that works as drawn and not at the worst; empty for any other."""
    if not result.works or result.works_worst_case:
        return ""
    failing, way = result.worst.fails, isinstance(result.on, FilledWay)
    if CLEAR_WIDTH in failing:
        narrower = "an axis nearer the face" if way else "a narrower hinge"
        return f"Take {narrower} or a wider opening, or hold what is built closer."
    if LOCK_EDGE in failing:
        return "Bevel the lock edge more, or widen its gap."
    if SWING in failing or BARREL in failing:
        of_butts = "a wider hinge" if result.width_moves_pin else "another mounting"
        hinge = "an axis farther off the face" if way else of_butts
        return f"Take {hinge}, or measure what is built before ordering."
    return "Measure what is built before ordering."
