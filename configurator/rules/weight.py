"""Weight grade, bearing and type of a hinge."""

from dataclasses import dataclass

from configurator.rules.door_weight import DoorWeight
from configurator.rules.finding import Reason, Source, reason
from configurator.rules.gage import leaf_thickness
from configurator.rules.wording import exactly, pounds
from configurator.tables import TypeRow, limit, practice, table, words_of
from configurator.units import TOLERANCE


@dataclass(frozen=True, slots=True)
class Duty:
    """What a leaf asks of its hinges; inches, pounds. `fire_gage` is the least leaf of a labelled door."""

    width: float
    traffic: str
    closer: bool
    fire_rated: bool
    row_weight: str | None
    door_weight: DoorWeight | None
    fire_gage: float | None


def hinge_weight(duty: Duty, height: float) -> Reason:
    """Return "standard" or "heavy" for a hinge of that height, with the first reason that asks for heavy."""
    heavy = limit("heavy_door")
    wide = limit("heavy_width")
    if duty.row_weight == "heavy":
        practice_source = Source("common practice, no source", "common practice")
        return reason("heavy", "a door over 1-3/4 in thick takes heavy weight hinges", practice_source)
    if duty.traffic == "high":
        return reason("heavy", words_of("bearing_high"), practice("bearing_high"))
    if duty.door_weight is not None and duty.door_weight.high >= heavy.value - TOLERANCE:
        words = (
            f"the door may weigh {pounds(duty.door_weight.high, 'up')}; heavy from {pounds(heavy.value)} on"
        )
        return reason("heavy", words, heavy.cited)
    if duty.width > wide.value + TOLERANCE:
        return reason("heavy", f"a leaf over {exactly(wide.value)} wide", wide.cited)
    if duty.fire_gage is not None and duty.fire_gage > leaf_thickness(height, "standard").value:
        words = f"a labelled door of this size takes a leaf at least {exactly(duty.fire_gage)} thick"
        return reason("heavy", words, practice("fire_table"))
    return reason("standard", words_of("weight_standard"), practice("weight_standard"))


def hinge_bearing(duty: Duty, weight: str) -> Reason:
    """Return "ball" (any antifriction bearing) or "plain", with why."""
    for asks, key in (
        (duty.fire_rated, "bearing_fire"),
        (duty.closer, "bearing_closer"),
        (duty.traffic == "high" or weight == "heavy", "bearing_high"),
        (duty.traffic == "average", "bearing_average"),
    ):
        if asks:
            return reason("ball", words_of(key), practice(key))
    return reason("plain", words_of("bearing_plain"), practice("bearing_plain"))


def hinge_type(metal: str, bearing: str, weight: str, mounting: str) -> Reason:
    """Return the ANSI/BHMA A156.1 type, None where none is known, spelled out in the reason."""
    row = next(
        (r for r in table(TypeRow) if (r.metal, r.bearing, r.weight) == (metal, bearing, weight)), None
    )
    spelled = f"{mounting}, {_bearing_words(bearing)}, {weight} weight, {metal}"
    if row is None or mounting != "full mortise":
        return reason(
            None, f"no type number is known here for {spelled}; order it in words", practice("type")
        )
    return reason(row.type, f"{row.type} is {spelled}, grade {row.grade}", row.cited)


def _bearing_words(bearing: str) -> str:
    return "antifriction bearing" if bearing == "ball" else "plain bearing"
