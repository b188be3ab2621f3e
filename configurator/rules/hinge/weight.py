"""What a door weighs and how busy it is, and so the weight, bearing and type of its hinges."""

from dataclasses import dataclass

from configurator.model import Door
from configurator.rules.filling.door_weight import DoorWeight, SheetWeight, lead_pounds
from configurator.rules.filling.leaves import LeafSize
from configurator.rules.finding import Finding, Reason, Severity, Source, finding, reason
from configurator.rules.hinge.sizes import leaf_thickness
from configurator.rules.wording import counted, exactly, pounds, the_leaf
from configurator.tables import (
    FrequencyRow,
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


@dataclass(frozen=True, slots=True)
class Reactions:
    """Pounds: each hinge's share of the weight, and the pull out of the top (push into the bottom) hinge."""

    share: float
    pull: float


def unknown_weight_findings(
    leaf: str, pounds_: DoorWeight | None, width: float, height: float
) -> tuple[Finding, ...]:
    """Return what is asked where a leaf's weight cannot be worked out, and what is taken meanwhile."""
    name = the_leaf(leaf)
    if pounds_ is None:
        each, row = lead_pounds(1 / 16, width, height), limit("lead_density")
        message = (
            f"How thick the lead is was not said, so what {name} weighs is not known: each 1/16 in of lead "
            f"adds about 3.7 lb to a square foot, {pounds(each)} to this leaf. Its hinges are taken heavy "
            "weight with ball bearings until then. Ask for the lead thickness or the weight."
        )
        return (finding("weight unknown", "warning", message, row.cited, (), each_sixteenth=each),)
    heavy = limit("heavy_door").value
    if not pounds_.guessed:
        return _glass_not_sized(name, pounds_, heavy)
    may = pounds_.high >= heavy - TOLERANCE
    taken = " Its hinges are taken heavy weight until then." if may else ""
    message = (
        f"What {name} is made of was not said, so its weight is not known: taken as up to "
        f"{pounds(pounds_.high, 'up')}, the heaviest construction short of lead.{taken} Ask for the "
        "construction or the weight."
    )
    severity: Severity = "warning" if may else "note"
    return (finding("weight unknown", severity, message, pounds_.source, (), weight=pounds_.high),)


def _glass_not_sized(name: str, weight: DoorWeight, heavy: float) -> tuple[Finding, ...]:
    """Return what is asked where only glass of unknown size may make a leaf heavy; pounds."""
    without = weight.without_glass
    if without is None or without >= heavy - TOLERANCE or weight.high < heavy - TOLERANCE:
        return ()
    row = limit("thick_glass")
    message = (
        f"How much of {name} is glass was not said: taken as up to {pounds(weight.high, 'up')}, glass "
        "throughout, and its hinges as heavy weight until then. Ask for the lite's width and height and how "
        "thick the glass is."
    )
    return (finding("weight unknown", "warning", message, row.cited, (), weight=weight.high),)


def lite_findings(door: Door, leaf: LeafSize) -> tuple[Finding, ...]:
    """Return whether the glass of a door fits the leaf it is let into; inches."""
    wide, high = door.lite_width, door.lite_height
    if wide is None or high is None:
        return ()
    if wide < leaf.width - TOLERANCE and high < leaf.height - TOLERANCE:
        return ()
    message = (
        f"Check the lite: one of {exactly(wide)} x {exactly(high)} does not go into {the_leaf(leaf.name)}, "
        f"which is {exactly(leaf.width)} x {exactly(leaf.height)}. A lite is given width x height, as a door "
        "is; of a pair it is the glass of one leaf."
    )
    source = Source("both sizes as given", "derived")
    numbers = {"width": wide, "height": high}
    return (finding("lite larger than the leaf", "error", message, source, (), **numbers),)


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
    if duty.door_weight is None:
        words = "what the door weighs is not known, so it is taken as heavy until it is"
        return reason("heavy", words, Source("the safe case, until you say otherwise", "derived"))
    if duty.door_weight.high >= heavy.value - TOLERANCE:
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
        (duty.traffic == "high", "bearing_high"),
        (weight == "heavy", "bearing_heavy"),
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
