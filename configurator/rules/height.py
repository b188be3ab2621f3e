"""How high a hinge a door takes, from its thickness and width."""

from configurator.rules.finding import Reason, reason
from configurator.rules.wording import exactly, plain
from configurator.tables import HeightRow, table
from configurator.units import TOLERANCE


def height_row(thickness: float, width: float) -> HeightRow:
    """Return the row of the height table that holds for a leaf; inches.

    A door thicker or wider than the table goes takes the last row that comes near it; what lies outside is
    said by `rules.limits`. Boundaries belong to the lower row: exactly 36 in wide takes 4-1/2.
    """
    rows = table(HeightRow)
    ends = (row.thickness_to for row in rows if thickness <= row.thickness_to + TOLERANCE)
    group = next(ends, rows[-1].thickness_to)
    thick = [row for row in rows if row.thickness_to == group]
    fits = (row for row in thick if row.width_to is None or width <= row.width_to + TOLERANCE)
    return next(fits, thick[-1])


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
