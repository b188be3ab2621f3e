"""How many hinges a leaf takes, from its height."""

import math

from configurator.rules.finding import Reason, reason
from configurator.rules.wording import counted, exactly
from configurator.tables import CountRow, table
from configurator.units import TOLERANCE


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
