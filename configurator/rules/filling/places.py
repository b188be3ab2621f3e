"""Where along its height a leaf's hinges sit: by a rule, or where an existing door or frame has them."""

from collections.abc import Mapping
from functools import cache

from configurator.rules.filling.leaves import LeafSize
from configurator.rules.filling.usual import FilledOpening
from configurator.tables import LocationRow, Place, table
from configurator.units import TOLERANCE

Places = tuple[tuple[float, float], ...]
"""The bottom and top of each hinge above the finished floor, lowest first; inches."""
USUAL_RULE = "5 and 10"
_ROWS: Mapping[str, tuple[Place, Place]] = {
    USUAL_RULE: ("top", "bottom"),
    "7 and 11": ("western top", "western bottom"),
}


def places_of(filled: FilledOpening, leaf: LeafSize, count: int, hinge_height: float) -> Places:
    """Return where the hinges of one leaf of an opening sit; places typed for it rule, whatever the count."""
    if typed := typed_places(filled, leaf, hinge_height):
        return typed
    rule, half = filled.opening.hinge_locations.rule or USUAL_RULE, filled.split_gap / 2
    return hinge_places(leaf, count, hinge_height, filled.opening_height, rule, half)


def typed_places(filled: FilledOpening, leaf: LeafSize, hinge_height: float) -> Places:
    """Return the places typed for a leaf, none where none were; of a Dutch door each leaf has those on it.

    A hinge belongs to the half that holds its middle; above all that is the upper one, below all the lower.
    """
    head = filled.opening_height
    tops = (head - distance for distance in filled.opening.hinge_locations.tops or ())
    places = tuple(sorted((top - hinge_height, top) for top in tops))
    if filled.opening.leaves != "dutch":
        return places
    above = leaf.name == "upper"
    split = leaf.bottom - filled.split_gap / 2 if above else leaf.top + filled.split_gap / 2
    return tuple(place for place in places if (sum(place) / 2 >= split - TOLERANCE) == above)


def hinge_places(
    leaf: LeafSize,
    count: int,
    hinge_height: float,
    head: float,
    rule: str = USUAL_RULE,
    half_split_gap: float = 0.0,
) -> Places:
    """Return where a rule sets the hinges of a leaf, equally spaced between the top and the bottom one.

    `head` is the height of the head rabbet. The rule is how far below it the top hinge's top is, and how far
    above the floor the bottom hinge's bottom; a Dutch door's leaves count 5 in from the split line, half a
    gap off their edges. A leaf too short for that spreads its hinges over what there is. Source: the hinge
    location table.
    """
    low, high = _ends(leaf, hinge_height, head, rule, half_split_gap)
    if high < low or count < 2:
        low = high = max(leaf.bottom, min((low + high) / 2, leaf.top - hinge_height))
    step = (high - low) / (count - 1) if count > 1 else 0.0
    bottoms = dict.fromkeys(low + step * place for place in range(count))
    return tuple((bottom, bottom + hinge_height) for bottom in bottoms)


@cache
def rows_of_rule(rule: str) -> tuple[LocationRow, LocationRow]:
    """Return the table's rows for a rule: of the top hinge, and of the bottom one."""
    top, bottom = _ROWS[rule]
    return row_of_place(top), row_of_place(bottom)


@cache
def row_of_place(place: Place) -> LocationRow:
    """Return the table's row for one place of a hinge."""
    return next(row for row in table(LocationRow) if row.place == place)


def _ends(leaf: LeafSize, hinge_height: float, head: float, rule: str, half: float) -> tuple[float, float]:
    """Return the bottoms of the lowest and of the highest hinge."""
    top, bottom = (row.distance for row in rows_of_rule(rule))
    low = leaf.bottom - half + row_of_place("above split").distance if leaf.name == "upper" else bottom
    high = leaf.top + half - row_of_place("below split").distance if leaf.name == "lower" else head - top
    return low, high - hinge_height
