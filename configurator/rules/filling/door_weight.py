"""What a leaf weighs, from its construction and size; pounds from inches."""

from dataclasses import dataclass

from configurator.rules.finding import Source
from configurator.tables import DoorWeightRow, SheetRow, limit, table

SQUARE_INCHES = 144.0


@dataclass(frozen=True, slots=True)
class DoorWeight:
    """Pounds, least and greatest, and where that comes from; equal where the weight was given.

    `guessed`: nobody said what the door is made of, so this is the range over all that is in the table.
    """

    low: float
    high: float
    source: Source
    guessed: bool = False


@dataclass(frozen=True, slots=True)
class SheetWeight:
    """Pounds of the sheets in a leaf, how many and of what."""

    pounds: float
    sheets: int
    sheet: str
    source: Source


@dataclass(frozen=True, slots=True)
class Made:
    """What of a door decides its weight: what it is made of and its thickness; inches."""

    construction: str | None
    thickness: float
    lead: float | None = None


LEAD_LINED = "lead-lined"
_GUESSED = Source("the lightest and the heaviest construction in the table of door weights", "derived")


def door_weight(made: Made, width: float, height: float, given: float | None = None) -> DoorWeight | None:
    """Return what a leaf weighs; inches in, pounds out. None for a lead-lined door whose lead is not known.

    Solid doors are scaled by their thickness; steel skins and glass are not. Where the construction is not
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


def _of_row(row: DoorWeightRow, made: Made, width: float, height: float) -> DoorWeight:
    area = width * height / SQUARE_INCHES * (made.thickness / row.thickness if row.scales else 1.0)
    lead = lead_pounds(made.lead or 0.0, width, height)  # also in a steel door
    return DoorWeight(row.low * area + lead, row.high * area + lead, row.cited)


def sheet_weight(construction: str | None, width: float, height: float) -> SheetWeight | None:
    """Return what the sheets in a leaf weigh, a check on any weight given; None where it has no such sheets.

    Inches in, pounds out. Two steel skins by the sheet's gage, or a pane over the whole leaf.
    """
    row = next((row for row in table(SheetRow) if row.construction == construction), None)
    if row is None:
        return None
    pounds = row.sheets * row.pounds * width * height / SQUARE_INCHES
    return SheetWeight(pounds, row.sheets, row.sheet, row.cited)
