"""Where along its height a leaf's hinges sit, by the usual convention."""

from configurator.rules.leaves import Leaf
from configurator.tables import LocationRow, table


def hinge_places(leaf: Leaf, count: int, hinge_height: float, head: float) -> tuple[tuple[float, float], ...]:
    """Return the bottom and top of each hinge above the finished floor, lowest first; inches.

    `head` is the height of the head rabbet. The top hinge's top is 5 below the head rabbet, the bottom
    hinge's bottom 10 above the floor, the rest equally spaced; a Dutch door's leaves count 5 from the split
    line. A leaf too short for that spreads its hinges over what there is. Source: the hinge location table.
    """
    low, high = _ends(leaf, hinge_height, head)
    if high < low or count < 2:
        low = high = max(leaf.bottom, min((low + high) / 2, leaf.top - hinge_height))
    step = (high - low) / (count - 1) if count > 1 else 0.0
    bottoms = dict.fromkeys(low + step * place for place in range(count))
    return tuple((bottom, bottom + hinge_height) for bottom in bottoms)


def _ends(leaf: Leaf, hinge_height: float, head: float) -> tuple[float, float]:
    """Return the bottoms of the lowest and of the highest hinge."""
    distance = {row.place: row.distance for row in table(LocationRow)}
    low = leaf.bottom + distance["above split"] if leaf.name == "upper" else distance["bottom"]
    high = leaf.top - distance["below split"] if leaf.name == "lower" else head - distance["top"]
    return low, high - hinge_height
