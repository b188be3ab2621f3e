"""What a leaf weighs, and what its hinges carry."""

from dataclasses import dataclass

from configurator.rules.finding import Finding, Source, finding
from configurator.rules.wording import counted, pounds
from configurator.tables import DoorWeightRow, SheetRow, practice, table
from configurator.units import TOLERANCE

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
