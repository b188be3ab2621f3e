"""How thick a hinge's leaves are, and how thick its barrel, by height and weight."""

from configurator.rules.finding import Reason, reason
from configurator.rules.wording import exactly, plain
from configurator.tables import BarrelRow, GageRow, table


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


def barrel_diameter(height: float, weight: str) -> Reason:
    """Return the outside diameter of the barrel, inches: from memory, no published source."""
    row = next(
        row
        for row in table(BarrelRow)
        if row.weight == weight and (row.height_to is None or height <= row.height_to)
    )
    because = f"usual for a {weight} weight hinge {plain(height)} high; confirm from the hinge's drawing"
    return reason(row.diameter, because, row.cited)
