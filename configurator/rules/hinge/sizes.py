"""How high a hinge a leaf takes, how many, how thick its leaves are and how thick its barrel."""

import math
from functools import lru_cache

from configurator.rules.finding import Reason, reason
from configurator.rules.wording import counted, exactly, plain
from configurator.tables import BarrelRow, CountRow, GageRow, HeightRow, limit, table
from configurator.units import TOLERANCE


def height_row(thickness: float, width: float) -> HeightRow:
    """Return the row of the height table that holds for a leaf; inches.

    A door thicker or wider than the table goes takes the last row that comes near it; what lies outside is
    said by the checks. Boundaries belong to the lower row: exactly 36 in wide takes 4-1/2.
    """
    rows = table(HeightRow)
    ends = (row.thickness_to for row in rows if thickness <= row.thickness_to + TOLERANCE)
    group = next(ends, rows[-1].thickness_to)
    thick = [row for row in rows if row.thickness_to == group]
    fits = (row for row in thick if row.width_to is None or width <= row.width_to + TOLERANCE)
    return next(fits, thick[-1])


def too_high(thickness: float, height: float) -> bool:
    """Return whether a hinge is higher than a thin door takes, whatever asks for it; inches."""
    thin = thickness <= limit("thin_door").value + TOLERANCE
    return thin and height > limit("thin_door_height").value + TOLERANCE


def hinge_height(thickness: float, width: float) -> Reason:
    """Return the hinge height, inches, with its reason. Common practice; see the height table."""
    row = height_row(thickness, width)
    upper = "" if row.width_to is None else f" to {exactly(row.width_to)}"
    lower = f" over {exactly(row.width_over)}" if row.width_over else ""
    because = (
        f"a door {exactly(thickness)} thick and {exactly(width)} wide (row: width{lower}{upper}) "
        f"takes a hinge {plain(row.height)} high"
    )
    return reason(row.height, because, row.cited)


def count_row(leaf_height: float) -> CountRow:
    """Return the row of the count table for a leaf height, inches; a boundary belongs to the lower row."""
    height = leaf_height - TOLERANCE
    return next(row for row in table(CountRow) if row.height_to is None or height <= row.height_to)


def hinge_count(leaf_height: float) -> Reason:
    """Return the number of hinges of one leaf of that height, inches, with its reason.

    Two up to 60, three up to 90, one more for each further 30 or part: UFC 3-190-02FA, para. 6e.
    """
    row = count_row(leaf_height)
    count = row.count
    if row.one_more_each is not None:
        count += math.ceil((leaf_height - TOLERANCE - row.height_over) / row.one_more_each)
    because = f"a leaf {exactly(leaf_height)} high takes {counted(count, 'hinge', 'hinges')}: {_rule(row)}"
    return reason(count, because, row.cited)


def _rule(row: CountRow) -> str:
    if row.one_more_each is not None:
        step = exactly(row.one_more_each)
        return f"{row.count} up to {exactly(row.height_over)} and one more each {step} or part"
    over = f"over {exactly(row.height_over)} and " if row.height_over else ""
    return f"{over}up to {exactly(row.height_to or 0.0)}"


def pairs(hinges: int) -> str:
    """Write hinges in pairs as the trade counts them: 3 is `1-1/2 pair`."""
    whole, half = divmod(hinges, 2)
    return f"{whole}-1/2 pair" if whole and half else "1/2 pair" if half else f"{whole} pair"


@lru_cache(maxsize=256)
def leaf_thickness(height: float, weight: str) -> Reason:
    """Return the leaf thickness, inches, of a hinge of that height and weight ("standard" or "heavy").

    A size the table lacks takes the row of the nearest lower height, else the nearest at all, and says so.
    """
    rows = [row for row in table(GageRow) if row.weight == weight]
    lower = [row for row in rows if row.height <= height]
    row = lower[-1] if lower else rows[0]
    because = f"{exactly(row.thickness)}: a {weight} weight hinge {plain(height)} high"
    if row.height != height:
        because += f" is in no list; taken as one {plain(row.height)} high"
    return reason(row.thickness, because, row.cited)


def weight_of_gage(height: float, gage: float) -> str | None:
    """Return the weight of a hinge of that height with leaves `gage` thick, inches; None where none has."""
    weights = ("standard", "heavy")
    near = (weight for weight in weights if abs(leaf_thickness(height, weight).value - gage) <= SAME_GAGE)
    return next(near, None)


SAME_GAGE = 0.005
"""Inches: a leaf measured within this is of that gage; the tolerance of a leaf in A156.1, as read."""


@lru_cache(maxsize=256)
def barrel_diameter(height: float, weight: str) -> Reason:
    """Return the outside diameter of the barrel, inches: from memory, no published source."""
    row = next(
        row
        for row in table(BarrelRow)
        if row.weight == weight and (row.height_to is None or height <= row.height_to)
    )
    because = f"usual for a {weight} weight hinge {plain(height)} high; confirm from the hinge's drawing"
    return reason(row.diameter, because, row.cited)
