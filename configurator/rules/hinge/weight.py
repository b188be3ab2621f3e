"""What a door weighs and how busy it is, and so the weight, bearing and type of its hinges."""

from dataclasses import dataclass

from configurator.rules.finding import Finding, Reason, Source, finding, reason
from configurator.rules.hinge.sizes import leaf_thickness
from configurator.rules.wording import counted, exactly, pounds
from configurator.tables import (
    DoorWeightRow,
    FrequencyRow,
    SheetRow,
    TypeRow,
    limit,
    practice,
    table,
    words_of,
)
from configurator.units import TOLERANCE


def traffic_help() -> str:
    """Return the doors that each kind of traffic is known from, a line each, and how sure that is."""
    rows = table(FrequencyRow)
    lines = [f"{row.traffic}: {row.place}, {_a_day(row)} openings a day" for row in rows]
    return "\n".join((*lines, *dict.fromkeys(row.source for row in rows)))


def _a_day(row: FrequencyRow) -> str:
    if row.per_day_low == row.per_day_high:
        return f"{row.per_day_low:,}"
    return f"{row.per_day_low:,} to {row.per_day_high:,}"


SQUARE_INCHES = 144.0


@dataclass(frozen=True, slots=True)
class DoorWeight:
    """Pounds, least and greatest, and where that comes from; equal where the weight was given."""

    low: float
    high: float
    source: Source


@dataclass(frozen=True, slots=True)
class SheetWeight:
    """Pounds of the sheets in a leaf, how many and of what."""

    pounds: float
    sheets: int
    sheet: str
    source: Source


@dataclass(frozen=True, slots=True)
class Reactions:
    """Pounds: each hinge's share of the weight, and the pull out of the top (push into the bottom) hinge."""

    share: float
    pull: float


def door_weight(
    construction: str | None, thickness: float, width: float, height: float, given: float | None = None
) -> DoorWeight | None:
    """Return what a leaf weighs; inches in, pounds out. None where nothing is known of the construction.

    Solid doors are scaled by their thickness; steel skins and glass are not.
    """
    if given is not None:
        return DoorWeight(given, given, Source("given", "derived"))
    row = next((row for row in table(DoorWeightRow) if row.construction == construction), None)
    if row is None:
        return None
    area = width * height / SQUARE_INCHES * (thickness / row.thickness if row.scales else 1.0)
    return DoorWeight(row.low * area, row.high * area, row.cited)


def sheet_weight(construction: str | None, width: float, height: float) -> SheetWeight | None:
    """Return what the sheets in a leaf weigh, a check on any weight given; None where it has no such sheets.

    Inches in, pounds out. Two steel skins by the sheet's gage, or a pane over the whole leaf.
    """
    row = next((row for row in table(SheetRow) if row.construction == construction), None)
    if row is None:
        return None
    pounds = row.sheets * row.pounds * width * height / SQUARE_INCHES
    return SheetWeight(pounds, row.sheets, row.sheet, row.cited)


def given_weight_findings(given: float | None, sheets: SheetWeight | None) -> tuple[Finding, ...]:
    """Return whether a weight given for a leaf, pounds, is less than the sheets in it weigh alone."""
    if given is None or sheets is None or given >= sheets.pounds - TOLERANCE:
        return ()
    what = f"{counted(sheets.sheets, 'sheet', 'sheets')} of {sheets.sheet}"
    message = (
        f"A leaf of {pounds(given, 'down')} is lighter than the {what} in it, which alone weigh "
        f"{pounds(sheets.pounds, 'up')}. Check the weight (it is of one leaf, in pounds) and "
        "the construction, unless much of the leaf is cut out."
    )
    numbers = {"given": given, "sheets": sheets.pounds}
    return (finding("lighter than its skins", "warning", message, sheets.source, (), **numbers),)


def reactions(weight: float, width: float, distance: float, hinges: int) -> Reactions:
    """Return what the hinges carry: weight and forces in one unit, width and distance in another.

    The centre of gravity at mid-width, `distance` between the outer hinges' centres: H = weight x (width / 2)
    / distance, by statics. Raises ValueError when the distance is not positive.
    """
    if distance <= 0:
        raise ValueError(f"the outer hinges must stand apart; {distance} was given")
    return Reactions(weight / hinges, weight * (width / 2) / distance)


REACTIONS_SOURCE = practice("reactions")


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
