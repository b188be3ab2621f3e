"""The opening asked the other way round: which hinge open widths do it, and how much trim each would pass.

Worked out when asked for, never as part of a study.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from configurator.geometry.inverse.widths import greatest_projection, least_hinge_width
from configurator.geometry.pin import least_width_for_barrel
from configurator.geometry.solve import barrel_free_by
from configurator.geometry.swing import polar_contact
from configurator.rules.stock import stock_of, stock_widths
from configurator.rules.width import Must, does_all
from configurator.study.candidate import Candidate
from configurator.study.hang import HungLeaf
from configurator.study.run import LeafHanger, Study
from configurator.study.width_curve import WidthCurve, width_curve
from configurator.units import TOLERANCE

MARGIN = 0.5
"""Inches that are looked at past the narrowest and the widest hinge."""
NARROWEST = 1.0
"""Inches; no narrower hinge is looked at."""
MOST = 48.0
"""Inches; trim that may stand out so far or farther is not limited by the swing."""
_SCAN = 1 / 8
_CLOSE = 1e-10
FLAT, SQUARE = 180.0, 90.0
OPENS, BINDS, BARREL_FREE, CLEAR_WIDTH = "opens", "binds", "barrel free", "clear width"


@dataclass(frozen=True, slots=True)
class BreakPoint:
    """A hinge open width, inches, from which something is otherwise.

    what: "opens" (to `value` degrees from here on), "binds" (the latch edge, from here on), "barrel free"
    (from here on), "clear width" (at 90 no less than `value` inches up to here).
    """

    width: float
    what: str
    value: float = 0.0


@dataclass(frozen=True, slots=True)
class WidthTried:
    """One hinge open width, inches, and what it does.

    stock is how usual it is, None where it is in no list; candidate is None, and refusal says why, where it
    cannot be mounted. projections: for each obstruction the greatest that this width lets pass at the wanted
    angle; None where it does not get there even with that obstruction flat, MOST for no limit.
    """

    width: float
    stock: str | None
    candidate: Candidate | None
    refusal: str
    fits: bool
    projections: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class LeafWidths:
    """The widths of one leaf. Inches and degrees.

    must is what the leaf has to do. least_for_angle is the least width at which the bare leaf opens to the
    wanted angle, barrel_free_from the least whose barrel is free, least the least that does both; None where
    none does. next_in_stock is the least stock width, not below least, that does all the leaf must. low and
    high bound what was looked at for the curve.
    """

    hung: HungLeaf
    must: Must
    least_for_angle: float | None
    barrel_free_from: float | None
    least: float | None
    next_in_stock: WidthTried | None
    tried: tuple[WidthTried, ...]
    breaks: tuple[BreakPoint, ...]
    curve: WidthCurve

    @property
    def leaf(self) -> str:
        """Which leaf it is."""
        return self.hung.name

    @property
    def width_moves_the_pin(self) -> bool:
        """Whether a wider hinge stands the pin farther out at all; with a surface leaf it does not."""
        return self.hung.mounting == "full mortise"


def widths_of(study: Study) -> tuple[LeafWidths, ...]:
    """Return the widths of each leaf of an opening already studied."""
    return tuple(_leaf_widths(study, leaf) for leaf in study.leaves)


def _leaf_widths(study: Study, hung: HungLeaf) -> LeafWidths:
    must = hung.must
    widths = sorted({*stock_widths(must.height), *(one.hinge_width for one in study.candidates)})
    rows = tuple(_tried(study.hanger, hung, must, width) for width in widths)
    low, high = max(NARROWEST, widths[0] - MARGIN), widths[-1] + MARGIN
    barrel = _barrel_free_from(hung, low, high)
    breaks = _break_points(hung, must, low, high, barrel)
    curve = width_curve(hung, low, high, [one.width for one in breaks])
    breaks += _clear_width_break(curve, must)
    least = None if barrel is None else _least(hung, must.wanted, barrel)
    return LeafWidths(
        hung=hung,
        must=must,
        least_for_angle=_least(hung, must.wanted),
        barrel_free_from=barrel,
        least=least,
        next_in_stock=None if least is None else _next_in_stock(rows, least),
        tried=rows,
        breaks=tuple(sorted(breaks, key=lambda one: one.width)),
        curve=curve,
    )


def _tried(hanger: LeafHanger, hung: HungLeaf, must: Must, width: float) -> WidthTried:
    row = stock_of(must.height, width)
    stock = None if row is None else row.stock
    try:
        found = hanger(hung.name, width)
    except ValueError as error:
        return WidthTried(width, stock, None, str(error), False, ())
    places = range(len(hung.obstructions))
    most = tuple(_most_projection(hung, must.wanted, width, place) for place in places)
    return WidthTried(width, stock, found, "", does_all(found, must), most)


def _most_projection(hung: HungLeaf, wanted: float, width: float, place: int) -> float | None:
    """Return how far an obstruction may stand out; a round one has no projection and no limit to it."""
    if hung.obstructions[place].diameter is not None:
        return MOST
    turn = math.radians(wanted)
    return greatest_projection(
        hung.hanging(width), hung.leaf, turn, hung.obstructions, place, hung.other, MOST
    )


def _next_in_stock(rows: tuple[WidthTried, ...], least: float) -> WidthTried | None:
    """Return the least stock width that does everything: one that binds or is too wide is passed over."""
    return next((one for one in rows if one.stock and one.width >= least - 1e-8 and one.fits), None)


def _least(hung: HungLeaf, wanted: float, narrowest: float = NARROWEST) -> float | None:
    h, turn = hung.hanging(narrowest), math.radians(wanted)
    return least_hinge_width(h, hung.leaf, turn, hung.obstructions, hung.other, narrowest=narrowest)


def _break_points(
    hung: HungLeaf, must: Must, low: float, high: float, barrel: float | None
) -> tuple[BreakPoint, ...]:
    if hung.mounting != "full mortise":
        return ()
    found = [] if barrel is None or barrel <= low else [BreakPoint(barrel, BARREL_FREE)]
    for angle in sorted({SQUARE, must.wanted, FLAT}):
        width = _least(hung, angle, low)
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


def _barrel_free_from(hung: HungLeaf, low: float, high: float) -> float | None:
    """Return the least width whose barrel is free of door, frame and what stands there."""
    if hung.mounting != "full mortise":
        return low if _barrel_free(hung, low) else None
    free = least_width_for_barrel(hung.hanging(low))
    if _barrel_free(hung, free):
        return free
    return _first(lambda width: _barrel_free(hung, width), free, high)


def _barrel_free(hung: HungLeaf, width: float) -> bool:
    return barrel_free_by(hung.scene(width)) >= -TOLERANCE


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


def _clear_width_break(curve: WidthCurve, must: Must) -> tuple[BreakPoint, ...]:
    """Return the width up to which the clear width at 90 is kept; between two points it runs straight."""
    least = must.clear_width
    if least is None:
        return ()
    points = [(w, c) for w, c in zip(curve.widths, curve.clear_widths, strict=True) if c is not None]
    for (w, clear), (wider, less) in pairwise(points):
        if clear >= least > less:
            return (BreakPoint(w + (wider - w) * (clear - least) / (clear - less), CLEAR_WIDTH, least),)
    return ()
