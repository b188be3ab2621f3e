"""A tolerance result as the rows of a table: everything that may be off, and what it does by itself."""

from collections.abc import Mapping
from dataclasses import dataclass

from configurator.sentences import capitalized, written
from configurator.study.tolerance.findings import off_words
from configurator.study.tolerance.result import (
    BARREL,
    CLEAR_WIDTH,
    LOCK_EDGE,
    MOUNTING,
    NAMES,
    Effect,
    Reach,
    ToleranceResult,
)
from configurator.units import Display, Rounding

_FAULTS: Mapping[str, str] = {
    MOUNTING: "leaf runs out",
    BARREL: "barrel overlaps",
    LOCK_EDGE: "lock edge binds",
}

_PLAIN: Mapping[str, str] = {
    "frame_setting": "where the frame stands",
    "wall_thickness": "how thick the wall is",
    "hinge_gap": "gap on the hinge side",
    "latch_gap": "gap on the lock side",
    "door_thickness": "how thick the door is",
    "hinge_backset": "where the hinge is let in",
    "hinge_width": "how wide the hinge is",
    "axis_off_face": "how far off the face it turns",
    "axis_from_heel": "how far from the hinge edge it turns",
}


@dataclass(frozen=True, slots=True)
class ToleranceRow:
    """One thing that may be off: what comes of it at both ends, and how far off it may be either way.

    `stops` says for minus and plus whether a leaf that works as drawn does not there; `most` that this one
    matters most.
    """

    name: str
    minus: str
    plus: str
    down_to: str
    up_to: str
    stops: tuple[bool, bool]
    most: bool
    tip: str


def name_of(name: str, plain: bool) -> str:
    """Name one thing that may be off, in the client's words or the trade's."""
    words = (_PLAIN if plain else NAMES)[name]
    return capitalized(words)


def tolerance_heads(result: ToleranceResult | None) -> tuple[str, ...]:
    """Return what heads the columns; what does not work as drawn has something it would work from."""
    until = (
        ("Would work at", "or at")
        if result is not None and not result.works
        else ("Works down to", "Works up to")
    )
    return ("What may be off", "Plus or minus", "At its least", "At its most", *until)


def tolerance_rows(result: ToleranceResult, display: Display) -> tuple[ToleranceRow, ...]:
    """Return a row for everything that may be off, in the display's units; what is left is rounded down."""
    return tuple(_row(result, effect, display) for effect in result.effects)


def _row(result: ToleranceResult, effect: Effect, display: Display) -> ToleranceRow:
    minus, plus = effect.minus, effect.plus
    return ToleranceRow(
        name=effect.name,
        minus=_at(minus.at, display),
        plus=_at(plus.at, display),
        down_to=_until(result, minus.turns_at, "−", display),
        up_to=_until(result, plus.turns_at, "+", display),
        stops=(result.works and bool(minus.at.fails), result.works and bool(plus.at.fails)),
        most=effect.name == result.matters_most,
        tip=written(_tip(result, effect), display),
    )


def _at(at: Reach, display: Display) -> str:
    """Say how far the bare leaf opens there, or what keeps it from working."""
    for check, words in _FAULTS.items():
        if check in at.fails:
            return words
    if CLEAR_WIDTH in at.fails and at.clear_width_at_90 is not None:
        return f"{display.length(at.clear_width_at_90, 'down')} clear"
    return display.angle(at.greatest_angle)


def _until(result: ToleranceResult, turns_at: float | None, sign: str, display: Display) -> str:
    """Say how far off it may be: never more than is so; where it does not work, never less than it needs."""
    if turns_at is None:
        return "any" if result.works else "none"
    rounding: Rounding = "down" if result.works else "up"
    sign = sign if display.shown(turns_at, rounding) else ""
    return f"{sign}{display.length(turns_at, rounding)}"


def _tip(result: ToleranceResult, effect: Effect) -> str:
    sides = [off_words(effect.name, plus, effect.tolerance) for plus, _ in effect.ends]
    looked = "“any” and “none”: nothing changes as far as was looked, an inch at most."
    fails = [
        f"{side}: {', '.join(end.at.fails)} fails"
        for side, (_, end) in zip(sides, effect.ends, strict=True)
        if end.at.fails
    ]
    lines = [f"At its least {sides[0]}, at its most {sides[1]}.", *fails, looked]
    if effect.name == result.matters_most:
        lines.insert(0, "This one matters most.")
    return "\n".join(capitalized(line) for line in lines)
