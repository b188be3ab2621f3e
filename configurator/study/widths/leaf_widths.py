"""The opening asked the other way round: which hinge open widths do it, and how much trim each would pass.

Worked out when asked for, never as part of a study.
"""

import math
from dataclasses import dataclass
from typing import Any

from configurator.geometry.inverse.widths import greatest_projection
from configurator.rules.hinge.answers import Must, barrel_free, binds
from configurator.rules.hinge.stock import stock_of, stock_widths
from configurator.rules.hinge.width import does_all
from configurator.study.candidate import Candidate
from configurator.study.hang import HungLeaf
from configurator.study.run import LeafHanger, Study
from configurator.study.widths.break_points import (
    NARROWEST,
    BreakPoint,
    barrel_free_from,
    break_points,
    clear_width_break,
    least_width,
)
from configurator.study.widths.width_curve import WidthCurve, width_curve
from configurator.units import TOLERANCE

MARGIN = 0.5
"""Inches that are looked at past the narrowest and the widest hinge."""
MOST = 48.0
"""Inches; trim that may stand out so far or farther is not limited by the swing."""


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

    def as_data(self, hung: HungLeaf) -> dict[str, Any]:
        """Return what it does as other tools read it; `hung` is the leaf that was hung on it."""
        data: dict[str, Any] = {"hinge_width": self.width, "stock": self.stock, "fits": self.fits}
        found = self.candidate
        if found is None:
            return data | {"refusal": self.refusal}
        things = zip(hung.obstructions, self.projections, strict=True)
        return data | {
            "greatest_angle_bare": found.greatest_angle_bare,
            "greatest_angle": found.greatest_angle,
            "clear_width_at_90": found.clear_width_at_90,
            "binds": binds(found),
            "barrel_free": barrel_free(found),
            "greatest_projections": [
                {"index": index, "kind": thing.kind, "passes": _passes(most), "projection": _limit(most)}
                for index, (thing, most) in enumerate(things)
            ],
        }


def _passes(most: float | None) -> str:
    """Say what of an obstruction passes: as much as `projection` says, any, or that other things decide."""
    if most is None:
        return "stopped elsewhere"
    return "any" if most >= MOST else "up to"


def _limit(most: float | None) -> float | None:
    return None if most is None or most >= MOST else most


@dataclass(frozen=True, slots=True)
class LeafWidths:
    """The widths of one leaf. Inches and degrees.

    must is what the leaf has to do. least_for_angle is the least width at which the bare leaf opens to the
    wanted angle, barrel_free_from the least whose barrel is free by what choosing asks, least the least that
    does both; None where none does. next_in_stock is the least stock width, not below least, that does all
    the leaf must. low and high bound what was looked at for the curve.
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

    def as_data(self) -> dict[str, Any]:
        """Return the widths as other tools read them; inches and degrees, None where there is no value."""
        chosen = self.next_in_stock
        return {
            "leaf": self.leaf,
            "wanted_angle": self.must.wanted,
            "least_for_angle": self.least_for_angle,
            "barrel_free_from": self.barrel_free_from,
            "least": self.least,
            "next_in_stock": None if chosen is None else chosen.width,
            "break_points": [one.as_data() for one in self.breaks],
            "widths": [one.as_data(self.hung) for one in self.tried],
        }


def widths_of(study: Study) -> tuple[LeafWidths, ...]:
    """Return the widths of each leaf of an opening already studied."""
    return tuple(_leaf_widths(study, leaf) for leaf in study.leaves)


def _leaf_widths(study: Study, hung: HungLeaf) -> LeafWidths:
    must = study.hanger.must(hung.name)
    widths = sorted({*stock_widths(must.height), *(one.hinge_width for one in study.butts)})
    rows = tuple(_tried(study.hanger, hung, must, width) for width in widths)
    low, high = max(NARROWEST, widths[0] - MARGIN), widths[-1] + MARGIN
    barrel = barrel_free_from(hung, low, high)
    breaks = break_points(hung, must, low, high, barrel)
    curve = width_curve(hung, low, high, [one.width for one in breaks])
    breaks += clear_width_break(curve, must)
    least = None if barrel is None else least_width(hung, must.wanted, barrel)
    return LeafWidths(
        hung=hung,
        must=must,
        least_for_angle=least_width(hung, must.wanted),
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
    return next((one for one in rows if one.stock and one.width >= least - TOLERANCE and one.fits), None)
