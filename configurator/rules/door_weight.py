"""What a leaf weighs, and what its hinges carry."""

from dataclasses import dataclass

from configurator.rules.finding import Source
from configurator.tables import DoorWeightRow, practice, table

SQUARE_INCHES = 144.0


@dataclass(frozen=True, slots=True)
class DoorWeight:
    """Pounds, least and greatest, and where that comes from; equal where the weight was given."""

    low: float
    high: float
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


def reactions(weight: float, width: float, distance: float, hinges: int) -> Reactions:
    """Return what the hinges carry: weight and forces in one unit, width and distance in another.

    The centre of gravity at mid-width, `distance` between the outer hinges' centres: H = weight x (width / 2)
    / distance, by statics. Raises ValueError when the distance is not positive.
    """
    if distance <= 0:
        raise ValueError(f"the outer hinges must stand apart; {distance:g} was given")
    return Reactions(weight / hinges, weight * (width / 2) / distance)


REACTIONS_SOURCE = practice("reactions")
