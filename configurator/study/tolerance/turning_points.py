"""How far each thing that may be off can be off before the answer turns; inches."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from configurator.geometry.pin import TOLERANCE
from configurator.study.tolerance.deviations import NAMES, Flags, Floats, Varied, answers
from configurator.units import MM_PER_INCH, rounded

FARTHEST: Final = 1.0
"""Inches: nothing is looked at farther off than this, nor farther than half the door's own thickness."""
EXACT: Final = TOLERANCE / 2
"""Inches: how finely what may be off is found, unless less will do."""
_LOOKS, _PARTS, _FEW = 64, 16, 4
_NEAR = 1e-3
"""Inches: so near to where the answer turns, each look may cost a single solve, so as few as can be."""


@dataclass(slots=True)
class _Brackets:
    """Between `near`, where the answer is as drawn, and `far`, where it has turned; inches, one a way."""

    near: Floats
    far: Floats


def turning_points(
    varied: Varied, ways: Floats, works: bool, fineness: float
) -> list[tuple[float | None, str | None]]:
    """Return for each way how far off it may be before the answer turns, and the check that turns it.

    All ways are narrowed together, each pass in so many parts, until they are fine enough.
    """
    found = _Brackets(np.zeros(len(ways)), np.repeat(_looked_at(varied), 2))
    turning = _narrow(varied, ways, works, found, _LOOKS)
    rows = np.flatnonzero(turning)
    some = _Brackets(found.near[rows], found.far[rows])
    while len(rows) and (left := (some.far - some.near).max()) > fineness:
        _narrow(varied, ways[rows], works, some, _PARTS if left > _NEAR else _FEW)
    failing = answers(varied, (ways[rows] * some.far[:, None]).T) if len(rows) else None
    turned: list[tuple[float | None, str | None]] = [(None, None)] * len(ways)
    for place, row in enumerate(rows):
        by = _settled(float(some.near[place]), float(some.far[place]), works)
        check = failing.fails(place)[0] if failing is not None and works else None
        turned[row] = (by, check)
    return turned


def _settled(near: float, far: float, works: bool) -> float:
    """Return where between two values the answer turns: the round number there, which is what it nearly is.

    Round are whole 64ths of an inch and tenths of a millimetre. Else the end that is on the safe side.
    """
    rounds = (rounded(far, 64, "down"), rounded(far, 10 * MM_PER_INCH, "down"))
    return next((one for one in rounds if near <= one), near if works else far)


def _narrow(varied: Varied, ways: Floats, works: bool, found: _Brackets, parts: int) -> Flags:
    """Narrow each bracket to the first of so many parts in which the answer turns; say where it does."""
    shares = np.arange(1, parts + 1) / parts
    steps = found.near[:, None] + (found.far - found.near)[:, None] * shares
    steps[:, -1] = found.far
    off = (ways[:, None, :] * steps[:, :, None]).reshape(-1, len(NAMES)).T
    turned = answers(varied, off).works.reshape(steps.shape) != works
    first = turned.argmax(axis=1)
    rows = np.arange(len(ways))
    near = np.where(first > 0, steps[rows, first - 1], found.near)
    any_turned: Flags = turned.any(axis=1)
    found.near = np.where(any_turned, near, found.near)
    found.far = np.where(any_turned, steps[rows, first], found.far)
    return any_turned


def _looked_at(varied: Varied) -> Floats:
    """Return how far off each thing is looked at, inches, so that there is always a door and a hinge."""
    h = varied.hanging
    width = h.W / 2 if h.axis is None else FARTHEST
    most = {"door_thickness": h.T / 2, "hinge_width": width, "hinge_gap": h.w / 4, "latch_gap": h.w / 4}
    return np.array([min(FARTHEST, most.get(name, FARTHEST)) for name in NAMES])
