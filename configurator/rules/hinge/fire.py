"""Labelled fire doors: the least hinge, and what the program does not know."""

from dataclasses import dataclass

from configurator.rules.finding import Finding, Fix, finding
from configurator.rules.wording import exactly, plain
from configurator.tables import FireRow, practice, table
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


def fire_row(thickness: float, width: float, height: float) -> FireRow | None:
    """Return the row of the fire table for a leaf, inches; None where the leaf is outside it."""
    return next(
        (
            row
            for row in table(FireRow)
            if row.thickness_over < thickness <= row.thickness_to + TOLERANCE
            and width <= row.width_to + TOLERANCE
            and height <= row.height_to + TOLERANCE
        ),
        None,
    )


def fire_findings(hinge: FireHinge) -> tuple[Finding, ...]:
    """Return the findings about the hinge of a labelled leaf."""
    row = fire_row(hinge.thickness, hinge.width, hinge.leaf_height)
    found = _bearing(hinge)
    found += [_outside(hinge)] if row is None else _least(hinge, row)
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
        f"{exactly(hinge.thickness, 'up')} thick is outside the part of the fire door table known here. "
        f"{_DEFER}"
    )
    return finding(
        "fire size", "error", message, practice("fire_table"), width=hinge.width, height=hinge.leaf_height
    )


def _least(hinge: FireHinge, row: FireRow) -> list[Finding]:
    found = []
    if hinge.hinge_height < row.hinge_height:
        message = (
            f"A fire rated leaf of this size takes hinges at least {plain(row.hinge_height)} high; "
            f"{plain(hinge.hinge_height)} was chosen. Take the higher one."
        )
        fix = Fix("hinge.height", row.hinge_height, f"Take {plain(row.hinge_height)} high")
        found.append(finding("fire height", "error", message, row.cited, (fix,), least=row.hinge_height))
    if hinge.leaf_thickness < row.leaf_thickness - TOLERANCE:
        message = (
            f"A fire rated leaf of this size takes hinge leaves at least {exactly(row.leaf_thickness)} "
            f"thick; these have {exactly(hinge.leaf_thickness)}. Take the heavier hinge."
        )
        fix = Fix("hinge.weight", "heavy", "Take heavy weight")
        found.append(finding("fire gage", "error", message, row.cited, (fix,), least=row.leaf_thickness))
    return found
