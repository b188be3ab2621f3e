"""The opening asked the other way round: which hinge open widths do it, and how much trim each would pass.

Worked out when asked for, never as part of a study.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from configurator.geometry.inverse.widths import greatest_projection, least_hinge_width
from configurator.geometry.pin import least_width_for_barrel
from configurator.geometry.solve import scene
from configurator.geometry.swing import polar_contact
from configurator.model import JobFacts
from configurator.rules.answers import Answer, barrel_free, tried
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.rules.specification import must_of
from configurator.rules.stock import stock_of, stock_widths
from configurator.rules.usual import FilledOpening
from configurator.rules.width import Must, does_all
from configurator.study.hang import HungLeaf, hanging, hung_leaves
from configurator.study.records import Candidate, Study
from configurator.study.run import hang
from configurator.study.width_curve import WidthCurve, width_curve

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
        return self.hung.hinge.leaf.name

    @property
    def width_moves_the_pin(self) -> bool:
        """Whether a wider hinge stands the pin farther out at all; with a surface leaf it does not."""
        return self.hung.mounting == "full mortise"


def widths_of(study: Study, job: JobFacts | None = None) -> tuple[LeafWidths, ...]:
    """Return the widths of each leaf of an opening already studied, with the same facts of the job."""
    standard = job.standard_hinge if job is not None else None
    filled = study.filled
    leaves = hung_leaves(filled, leaf_hinges(filled, standard), standard)
    return tuple(_leaf_widths(study, leaf) for leaf in leaves)


class _Tries:
    """One leaf on any width, each worked out once."""

    def __init__(self, filled: FilledOpening, hung: HungLeaf) -> None:
        self.filled, self.hung = filled, hung
        self._known: dict[float, Candidate] = {}

    def __call__(self, leaf: str, width: float) -> Candidate:
        """Return the leaf on a hinge open width, inches; leaf is the one there is."""
        assert leaf == self.hung.hinge.leaf.name
        if width not in self._known:
            self._known[width] = hang(self.filled, self.hung, width)
        return self._known[width]

    def at(self, width: float) -> Candidate:
        """Return the leaf on a hinge open width, inches."""
        return self(self.hung.hinge.leaf.name, width)

    def binds_at(self, width: float) -> bool:
        """Say whether the latch edge is what stops the bare leaf; far quicker than all that a width does."""
        hung = self.hung
        plan = scene(hanging(self.filled, hung, width), hung.leaf, (), hung.obstructions, hung.other)
        contact = polar_contact(plan.bare, plan.standing, plan.pin.at)
        return contact is not None and contact.kind in ("latch jamb", "other leaf")


def _leaf_widths(study: Study, hung: HungLeaf) -> LeafWidths:
    filled = study.filled
    tries = _Tries(filled, hung)
    must = must_of(filled, hung.hinge)
    widths = sorted({*stock_widths(must.height), *(one.hinge_width for one in study.candidates)})
    rows = tuple(_tried(tries, must, width) for width in widths)
    low, high = max(NARROWEST, widths[0] - MARGIN), widths[-1] + MARGIN
    barrel = _barrel_free_from(tries, low, high)
    angle = _least(tries, must.wanted)
    least = None if barrel is None else _least(tries, must.wanted, barrel)
    breaks = _break_points(tries, must, low, high, barrel)
    curve = width_curve(filled, hung, low, high, [one.width for one in breaks])
    breaks = (*breaks, *_clear_width_break(curve, must))
    in_stock = None if least is None else _next_in_stock(rows, least)
    return LeafWidths(
        hung, must, angle, barrel, least, in_stock, rows, tuple(sorted(breaks, key=lambda b: b.width)), curve
    )


def _tried(tries: _Tries, must: Must, width: float) -> WidthTried:
    answer: Answer = tries
    found = tried(answer, must.leaf, width)
    row = stock_of(must.height, width)
    stock = None if row is None else row.stock
    if isinstance(found, str):
        return WidthTried(width, stock, None, found, False, ())
    most = tuple(
        _most_projection(tries, must.wanted, width, place) for place in range(len(tries.hung.obstructions))
    )
    return WidthTried(width, stock, tries.at(width), "", does_all(found, must), most)


def _most_projection(tries: _Tries, wanted: float, width: float, place: int) -> float | None:
    """Return how far an obstruction may stand out; a round one has no projection and no limit to it."""
    hung = tries.hung
    if hung.obstructions[place].diameter is not None:
        return MOST
    h = hanging(tries.filled, hung, width)
    turn = math.radians(wanted)
    return greatest_projection(h, hung.leaf, turn, hung.obstructions, place, hung.other, MOST)


def _next_in_stock(rows: tuple[WidthTried, ...], least: float) -> WidthTried | None:
    """Return the least stock width that does everything: one that binds or is too wide is passed over."""
    return next((one for one in rows if one.stock and one.width >= least - 1e-8 and one.fits), None)


def _least(tries: _Tries, wanted: float, narrowest: float = NARROWEST) -> float | None:
    hung = tries.hung
    h = hanging(tries.filled, hung, narrowest)
    return least_hinge_width(
        h, hung.leaf, math.radians(wanted), hung.obstructions, hung.other, narrowest=narrowest
    )


def _break_points(
    tries: _Tries, must: Must, low: float, high: float, barrel: float | None
) -> tuple[BreakPoint, ...]:
    if tries.hung.mounting != "full mortise":
        return ()
    found = [] if barrel is None or barrel <= low else [BreakPoint(barrel, BARREL_FREE)]
    for angle in sorted({SQUARE, must.wanted, FLAT}):
        width = _least(tries, angle, low)
        if width is not None and low < width <= high:
            found.append(BreakPoint(width, OPENS, angle))
    binding = _first(tries.binds_at, low, high)
    if binding is not None and binding > low:
        found.append(BreakPoint(binding, BINDS))
    return tuple(found)


def _barrel_free_from(tries: _Tries, low: float, high: float) -> float | None:
    """Return the least width whose barrel is free of door, frame and what stands there."""
    if tries.hung.mounting != "full mortise":
        return low if barrel_free(tries.at(low)) else None
    free = least_width_for_barrel(hanging(tries.filled, tries.hung, low))
    if barrel_free(tries.at(free)):
        return free
    return _first(lambda width: barrel_free(tries.at(width)), free, high)


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


def at_width(study: Study, leaf: LeafWidths, width: float) -> Candidate:
    """Return one leaf on any hinge open width, inches: what a pointer on the curve asks for."""
    return hang(study.filled, leaf.hung, width)
