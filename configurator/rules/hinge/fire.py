"""Labelled fire doors: the least hinge, and what the program does not know."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf
from typing import Literal

from configurator.rules.filling.leaves import LeafSize
from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.wording import exactly, feet, leaf_named, plain
from configurator.tables import FireRow, limit, practice, table
from configurator.units import TOLERANCE

_DEFER = (
    "The listing of the door, frame and hinge and the authority having jurisdiction decide: check them "
    "before ordering."
)
STEELS = ("steel", "stainless")


@dataclass(frozen=True, slots=True)
class FireHinge:
    """The hinge of a labelled leaf as chosen; inches."""

    thickness: float
    width: float
    leaf_height: float
    hinge_height: float
    leaf_thickness: float
    bearing: str
    minutes: int | None = None
    """What its label says; None where nobody said."""
    needed_height: float = 0.0
    """What the door takes by its size, whatever its label asks."""


def fire_row(
    thickness: float, width: float, height: float, hinge: Literal["butt", "spring"] = "butt"
) -> FireRow | None:
    """Return the row of the fire table for a leaf, inches; None where the leaf is outside it."""
    return next(
        (
            row
            for row in table(FireRow)
            if row.hinge == hinge
            and row.thickness_over < thickness <= (row.thickness_to or inf) + TOLERANCE
            and width <= row.width_to + TOLERANCE
            and height <= row.height_to + TOLERANCE
        ),
        None,
    )


def spring_hinges(thickness: float, leaf: LeafSize) -> Finding:
    """Return what a labelled leaf on spring hinges takes, as far as it is known."""
    row = fire_row(thickness, leaf.width, leaf.height, "spring")
    size = "Their size for this leaf is not known here"
    if row is not None:
        size = f"From memory: {plain(row.hinge_height)} high and {exactly(row.leaf_thickness)} thick at least"
    named = leaf_named(leaf.name) or "door"
    message = f"A fire rated {named} on spring hinges takes at least two. {size}. {_DEFER}"
    return finding("fire spring hinges", "warning", message, practice("fire_spring"))


def fire_findings(hinge: FireHinge) -> tuple[Finding, ...]:
    """Return the findings about the hinge of a labelled leaf."""
    row = fire_row(hinge.thickness, hinge.width, hinge.leaf_height)
    row = None if (hinge.minutes or 0) > limit("fire_minutes").value else row
    found = _bearing(hinge)
    found += [_outside(hinge)] if row is None else [*_least(hinge, row), *_remembered(hinge, row)]
    caution = finding(
        "fire listing",
        "warning",
        "Fire rated: steel or stainless hinges with bearings are taken, and the size checked against the "
        f"part of the table known here. {_DEFER}",
        practice("fire_listing"),
    )
    return (*found, caution)


def _bearing(hinge: FireHinge) -> list[Finding]:
    if hinge.bearing == "ball":
        return []
    message = "Plain bearing hinges on a fire rated door: a labelled door takes bearing hinges. Choose ball."
    fix = Fix("hinge.bearing", "ball", "Take bearing hinges")
    return [finding("fire bearing", "error", message, practice("bearing_fire"), (fix,))]


def _outside(hinge: FireHinge) -> Finding:
    message = (
        f"A fire rated leaf {exactly(hinge.width, 'up')} wide, {exactly(hinge.leaf_height, 'up')} high and "
        f"{exactly(hinge.thickness, 'up')} thick{_labelled(hinge.minutes)} is outside the part of the fire "
        f"door table known here. {_DEFER}"
    )
    return finding(
        "fire size", "warning", message, practice("fire_table"), width=hinge.width, height=hinge.leaf_height
    )


def _labelled(minutes: int | None) -> str:
    return f", labelled {minutes} minutes," if minutes else ""


def _remembered(hinge: FireHinge, row: FireRow) -> Iterator[Finding]:
    """Yield a warning for a hinge that only a row known from memory lets by."""
    known = [one for one in table(FireRow) if one.hinge == "butt" and one.mark != "from memory"]
    least = min(known, key=lambda one: one.leaf_thickness)
    enough = hinge.hinge_height >= least.hinge_height and hinge.leaf_thickness >= least.leaf_thickness
    if row.mark != "from memory" or enough:
        return
    message = (
        f"Hinges {plain(hinge.hinge_height)} high and {exactly(hinge.leaf_thickness)} thick are enough here "
        f"only by a row of the fire door table known from memory: up to {feet(row.width_to)} x "
        f"{feet(row.height_to)}. {_DEFER}"
    )
    yield finding("fire row from memory", "warning", message, row.cited, least=row.leaf_thickness)


def _least(hinge: FireHinge, row: FireRow) -> list[Finding]:
    found = []
    if hinge.hinge_height < row.hinge_height:
        higher = max(row.hinge_height, hinge.needed_height)
        message = (
            f"A fire rated leaf of this size takes hinges at least {plain(row.hinge_height)} high; "
            f"{plain(hinge.hinge_height)} was chosen. Take {plain(higher)} high."
        )
        fix = Fix("hinge.height", higher, f"Take {plain(higher)} high")
        found.append(finding("fire height", "error", message, row.cited, (fix,), least=row.hinge_height))
    if hinge.leaf_thickness < row.leaf_thickness - TOLERANCE:
        message = (
            f"A fire rated leaf of this size takes hinge leaves at least {exactly(row.leaf_thickness)} "
            f"thick; these have {exactly(hinge.leaf_thickness)}. Take the heavier hinge."
        )
        fix = Fix("hinge.weight", "heavy", "Take heavy weight")
        found.append(finding("fire gage", "error", message, row.cited, (fix,), least=row.leaf_thickness))
    return found
