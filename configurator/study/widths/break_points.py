"""The hinge open widths at which a leaf begins to do otherwise: found exactly, or closed in on."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from configurator.geometry.inverse.widths import least_hinge_width
from configurator.geometry.pin import least_width_for_barrel
from configurator.geometry.solve import barrel_free_by
from configurator.geometry.swing import polar_contact
from configurator.rules.hinge.answers import Must, barrel_room
from configurator.study.hang import HungLeaf
from configurator.study.widths.width_curve import WidthCurve
from configurator.units import TOLERANCE

NARROWEST = 1.0
"""Inches; no narrower hinge is looked at."""
_SCAN = 1 / 8
_CLOSE = 1e-10
FLAT, SQUARE = 180.0, 90.0
OPENS, BINDS, BARREL_FREE, CLEAR_WIDTH = "opens", "binds", "barrel free", "clear width"


@dataclass(frozen=True, slots=True)
class BreakPoint:
    """A hinge open width, inches, from which something is otherwise.

    what: "opens" (to `value` degrees from here on), "binds" (the latch edge, from here on), "barrel free"
    (by what choosing a hinge asks, from here on), "clear width" (at 90 no less than `value` up to here).
    """

    width: float
    what: str
    value: float = 0.0

    def as_data(self) -> dict[str, Any]:
        """Return the point as other tools read it."""
        return {"hinge_width": self.width, "what": self.what, "value": self.value}


def least_width(hung: HungLeaf, wanted: float, narrowest: float = NARROWEST) -> float | None:
    """Return the least width at which the bare leaf opens to an angle, degrees; None where none does."""
    h, turn = hung.hanging(narrowest), math.radians(wanted)
    return least_hinge_width(h, hung.leaf, turn, hung.obstructions, hung.other, narrowest=narrowest)


def break_points(
    hung: HungLeaf, must: Must, low: float, high: float, barrel: float | None
) -> tuple[BreakPoint, ...]:
    """Return where angles are reached, the barrel comes free and the latch edge begins to bind."""
    if hung.mounting != "full mortise":
        return ()
    found = [BreakPoint(barrel, BARREL_FREE)] if barrel is not None and low < barrel <= high else []
    for angle in sorted({SQUARE, must.wanted, FLAT}):
        width = least_width(hung, angle, low)
        if width is not None and low < width <= high:
            found.append(BreakPoint(width, OPENS, angle))
    binding = _first(lambda width: _binds(hung, width), low, high)
    if binding is not None and binding > low:
        found.append(BreakPoint(binding, BINDS))
    return tuple(found)


def _binds(hung: HungLeaf, width: float) -> bool:
    """Say whether the latch edge is what stops the bare leaf."""
    plan = hung.scene(width)
    contact = polar_contact(plan.bare, plan.standing, plan.pin.at)
    return contact is not None and contact.kind in ("latch jamb", "other leaf")


def barrel_free_from(hung: HungLeaf, low: float, high: float) -> float | None:
    """Return the least width whose barrel is free of door, frame and what stands there by what is asked."""
    if hung.mounting != "full mortise":
        return low if _barrel_free(hung, low) else None
    free = least_width_for_barrel(hung.hanging(low)) + 2 * barrel_room(hung.mounting)
    if _barrel_free(hung, free):
        return free
    return _first(lambda width: _barrel_free(hung, width), free, high)


def _barrel_free(hung: HungLeaf, width: float) -> bool:
    return barrel_free_by(hung.scene(width)) >= barrel_room(hung.mounting) - TOLERANCE


def _first(holds: Callable[[float], bool], low: float, high: float) -> float | None:
    """Return the least width from low to high from which something holds, looked for step by step."""
    if holds(low):
        return low
    steps = math.ceil((high - low) / _SCAN)
    for number in range(1, steps + 1):
        width = min(high, low + number * _SCAN)
        if holds(width):
            return _closed_in(holds, width - _SCAN, width)
    return None


def _closed_in(holds: Callable[[float], bool], below: float, at: float) -> float:
    while at - below > _CLOSE:
        middle = (below + at) / 2
        below, at = (below, middle) if holds(middle) else (middle, at)
    return at


def clear_width_break(curve: WidthCurve, must: Must) -> tuple[BreakPoint, ...]:
    """Return the width up to which the clear width at 90 is kept; between two points it runs straight."""
    least = must.clear_width
    if least is None:
        return ()
    points = [(w, c) for w, c in zip(curve.widths, curve.clear_widths, strict=True) if c is not None]
    for (w, clear), (wider, less) in pairwise(points):
        if clear >= least > less:
            return (BreakPoint(w + (wider - w) * (clear - least) / (clear - less), CLEAR_WIDTH, least),)
    return ()
