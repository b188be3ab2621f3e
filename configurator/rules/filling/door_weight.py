"""What a leaf weighs, from its construction and size; pounds from inches."""

from dataclasses import dataclass

from configurator.model import Opening
from configurator.rules.finding import Source
from configurator.tables import DoorWeightRow, SheetRow, limit, table

SQUARE_INCHES = 144.0


@dataclass(frozen=True, slots=True)
class DoorWeight:
    """Pounds, least and greatest, and where that comes from; equal where the weight was given.

    `guessed`: nobody said what the door is made of, so this is the range over all that is in the table.
    `without_glass` is the greatest weight but for glass whose size is not known, None where it is.
    """

    low: float
    high: float
    source: Source
    guessed: bool = False
    without_glass: float | None = None


@dataclass(frozen=True, slots=True)
class SheetWeight:
    """Pounds of the sheets in a leaf, how many and of what."""

    pounds: float
    sheets: int
    sheet: str
    source: Source


@dataclass(frozen=True, slots=True)
class Lite:
    """The glass let into a leaf: its area, square inches, and all its panes' thickness; None: not known."""

    area: float | None
    glass: float | None


@dataclass(frozen=True, slots=True)
class Made:
    """What of a leaf decides its weight: make, thickness, glass and what it carries; inches, pounds.

    `lite` is the glass let into it, None where there is none; `carried` what its hardware weighs.
    """

    construction: str | None
    thickness: float
    lead: float | None = None
    lite: Lite | None = None
    carried: float = 0.0


LEAD_LINED = "lead-lined"
_GUESSED = Source("the lightest and the heaviest construction in the table of door weights", "derived")


def door_weight(made: Made, width: float, height: float, given: float | None = None) -> DoorWeight | None:
    """Return what a leaf weighs; inches in, pounds out. None for a lead-lined door whose lead is not known.

    A weight given is of the whole leaf, with its glass and what it carries. Solid doors are scaled by their
    thickness; steel skins and glass are not. Where the construction is not
    known, from the lightest to the heaviest that does not hold lead.
    """
    if given is not None:
        return DoorWeight(given, given, Source("given", "derived"))
    if made.construction is None:
        known = [_of_row(row, made, width, height) for row in _weighed() if row.construction != LEAD_LINED]
        return DoorWeight(min(one.low for one in known), max(one.high for one in known), _GUESSED, True)
    if made.construction == LEAD_LINED and made.lead is None:
        return None
    row = next(row for row in _weighed() if row.construction == made.construction)
    return _of_row(row, made, width, height)


def lead_pounds(lead: float, width: float, height: float) -> float:
    """Return what a sheet of lead over a whole leaf weighs; inches in, pounds out."""
    return limit("lead_density").value * lead * width * height


def _weighed() -> tuple[DoorWeightRow, ...]:
    return table(DoorWeightRow)


def made_of(opening: Opening, thickness: float, leaf: str) -> Made:
    """Return what decides the weight of the leaf of that name; the door's thickness in inches."""
    door = opening.door
    carried = sum(item.weight for item in opening.carried_by(leaf))
    sized = door.lite_width is not None and door.lite_height is not None
    lite = None
    if sized or opening.glass or door.lite_width or door.lite_height or door.glass_thickness:
        area = (door.lite_width or 0.0) * (door.lite_height or 0.0) if sized else None
        lite = Lite(area, door.glass_thickness)
    return Made(door.construction, thickness, door.lead_thickness, lite, carried)


def _of_row(row: DoorWeightRow, made: Made, width: float, height: float) -> DoorWeight:
    thicker = made.thickness / row.thickness if row.scales else 1.0
    leaf = width * height / SQUARE_INCHES
    added = lead_pounds(made.lead or 0.0, width, height) + made.carried  # lead may be in a steel door too
    low, high = row.low * thicker * leaf, row.high * thicker * leaf
    without = high + added if made.lite is not None and made.lite.area is None else None
    if made.lite is not None:
        low, high = _with_glass(made.lite, low, high, leaf)
    return DoorWeight(low + added, high + added, row.cited, without_glass=without)


def _with_glass(lite: Lite, low: float, high: float, leaf: float) -> tuple[float, float]:
    """Return what a leaf weighs with its glass; pounds without it, and the leaf in square feet.

    Glass whose size is not known may be none of the leaf or all of it, whichever is heavier.
    """
    pane = limit("glass_weight").value
    least, most = (limit("thin_glass").value, limit("thick_glass").value)
    light, heavy = (pane * (lite.glass or usual) * leaf for usual in (least, most))
    if lite.area is None:
        return min(low, light), max(high, heavy)
    share = min(lite.area / SQUARE_INCHES / leaf, 1.0)
    return low + share * (light - low), high + share * (heavy - high)


def sheet_weight(made: Made, width: float, height: float) -> SheetWeight | None:
    """Return what the sheets in a leaf weigh, a check on any weight given; None where it has no such sheets.

    Inches in, pounds out. Two steel skins by the sheet's gage, or a pane over the whole leaf. None too where
    glass of unknown size is let into them.
    """
    row = next((row for row in table(SheetRow) if row.construction == made.construction), None)
    if row is None or (made.lite is not None and made.lite.area is None):
        return None
    cut_out = made.lite.area or 0.0 if made.lite is not None else 0.0
    pounds = row.sheets * row.pounds * max(width * height - cut_out, 0.0) / SQUARE_INCHES
    return SheetWeight(pounds, row.sheets, row.sheet, row.cited)
