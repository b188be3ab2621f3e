"""How far a leaf opens over every hinge open width: the curve behind a chart, with its corners kept sharp."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.many.solve_many import Many, solve_many
from configurator.study.candidate import in_degrees
from configurator.study.hang import HungLeaf

Floats = NDArray[Any]

STEP = 1 / 16
"""Inches between the widths looked at first."""
BEND = 0.2
"""Degrees: where the curve turns by more from one width to the next, widths between them are looked at."""
_PARTS, _ROUNDS = 8, 3
_BESIDE = 2e-9
"""Inches. A corner is looked at from both sides, just past the tolerance of the plan."""


@dataclass(frozen=True, slots=True)
class WidthCurve:
    """Greatest angles, degrees, and clear width at 90, inches, over hinge open widths, narrow to wide.

    clear_widths is None at a width on which the door, with its hardware, does not come to 90 degrees.
    """

    widths: tuple[float, ...]
    bare: tuple[float, ...]
    with_hardware: tuple[float, ...]
    clear_widths: tuple[float | None, ...]


def width_curve(hung: HungLeaf, low: float, high: float, corners: Iterable[float] = ()) -> WidthCurve:
    """Return the curve of one leaf from one hinge open width to another, inches.

    corners are widths known to be corners of it; each gets a point on either side. Other bends are closed in
    on. Every point is the plan's own answer, none is drawn between two others.
    """
    steps = max(2, math.ceil((high - low) / STEP) + 1)
    beside = [corner + side for corner in corners for side in (-_BESIDE, 0.0, _BESIDE)]
    widths = np.unique(np.concatenate([np.linspace(low, high, steps), np.clip(beside, low, high)]))
    table = _solved(hung, widths)
    for _ in range(_ROUNDS):
        between = _between_bends(table)
        if not len(between):
            break
        table = np.concatenate([table, _solved(hung, between)])
        table = table[np.argsort(table[:, 0], kind="stable")]
    return WidthCurve(
        tuple(table[:, 0].tolist()),
        tuple(map(in_degrees, table[:, 1].tolist())),
        tuple(map(in_degrees, table[:, 2].tolist())),
        tuple(None if math.isnan(clear) else clear for clear in table[:, 3].tolist()),
    )


def _solved(hung: HungLeaf, widths: Floats) -> Floats:
    """Return a row a width: the width, the two greatest angles in radians, the clear width at 90."""
    many = Many(
        hanging=hung.hanging(float(widths[0])),
        leaf=hung.leaf,
        hardware=hung.hardware,
        obstructions=hung.obstructions,
        other=hung.other,
        columns={"W": widths},
    )
    solved = solve_many(many)
    angles = (solved.greatest_angle_bare, solved.greatest_angle)
    return np.column_stack([widths, *angles, solved.clear_width_at_90])


def _between_bends(table: Floats) -> Floats:
    """Return widths within the steps on either side of which either angle's curve turns."""
    widths = table[:, 0]
    steps = np.diff(widths)
    slopes = np.diff(table[:, 1:3], axis=0) / steps[:, None]
    turns = np.abs(np.diff(slopes, axis=0)).max(axis=1) * np.minimum(steps[1:], steps[:-1])
    bent = np.degrees(turns) > BEND
    wide = steps > STEP / 4**_ROUNDS
    flagged = wide & (np.append(bent, False) | np.insert(bent, 0, False))
    shares = np.arange(1, _PARTS) / _PARTS
    return (widths[:-1][flagged, None] + steps[flagged, None] * shares).ravel()
