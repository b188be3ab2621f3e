"""The answers of one leaf over the range of one parameter, and the values at which one of them changes.

Worked out when asked for, never as part of a study. Inches and degrees.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.many.solve_many import mounted, solve_many
from configurator.geometry.pin import TOLERANCE
from configurator.model import Opening, Way
from configurator.rules.filling.usual import fill
from configurator.rules.filling.ways import fill_way
from configurator.rules.hinge.answers import Must
from configurator.study.candidate import Candidate, in_degrees
from configurator.study.hang import HangsOn, HungLeaf, hang_leaves
from configurator.study.run import Study
from configurator.study.what_if.barrel import barrel_crossings
from configurator.study.what_if.parameters import Hold, Parameter, with_changes
from configurator.study.what_if.samples import Run, Sample, runs_of, sampler, samples_between
from configurator.study.what_if.thresholds import (
    BARREL,
    SQUARE,
    Does,
    Met,
    Threshold,
    angles_asked,
    threshold_at,
    thresholds_between,
)
from configurator.units import MM_PER_INCH

Floats = NDArray[Any]
POINTS = 257
"""Values at which the curve is looked at first."""
_SHUT: Final = 1.0
"""Degrees: a leaf that opens no farther is as good as held shut, by whatever it meets."""
_PARTS, _FEW = 160, 24
"""Into so many parts a bracket is cut; into few where a barrel touches at rest: such a look costs most."""
_FINE: Final = 1e-5
"""Inches: how finely a threshold is found, unless it is a round number."""
_ROUND: Final = (64.0, 2 * MM_PER_INCH)
"""Round numbers are looked at for themselves: whole 64ths of an inch and halves of a millimetre."""
_MEETING: Final = 2e-4
"""Inches: likewise where only what is met changes, which nobody works to."""
_BESIDE: Final = 4e-9
_LAST: Final = 1e-3
"""Inches: in so narrow a bracket round numbers are tried, since the next look is the last."""
_MOST_BRACKETS: Final = 24


@dataclass(frozen=True, slots=True)
class WhatIfCurve:
    """Greatest angles, degrees, and clear width at 90, inches, at values of the parameter, low to high.

    An angle is None where there can be no such leaf, a clear width also where it does not come to 90.
    """

    values: tuple[float, ...]
    bare: tuple[float | None, ...]
    with_hardware: tuple[float | None, ...]
    clear_widths: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class WhatIf:
    """One leaf on what it hangs on, one parameter varied and all else held.

    `width` is the hinge's open width, inches, 0 of no butt; `place` is then which of what is compared it is.
    """

    parameter: Parameter
    hold: Hold
    leaf: str
    width: float
    must: Must
    has_hardware: bool
    curve: WhatIfCurve
    thresholds: tuple[Threshold, ...]
    place: int | None = None


def what_if(study: Study, candidate: Candidate, parameter: Parameter, hold: Hold) -> WhatIf:
    """Return what a leaf would do over the whole range of one parameter."""
    must = study.hanger.must(candidate.leaf)
    held_short = candidate.clear_width_at_90 is None and candidate.greatest_angle >= SQUARE - TOLERANCE
    sample = sampler(_hung_at(study, candidate, parameter, hold))
    samples = samples_between(sample, parameter.low, parameter.high, parameter.present)
    curve, thresholds = _curve_and_thresholds(_Leaves(runs_of(samples), must, held_short), parameter, samples)
    barrels = candidate.way is None or candidate.way.barrel_beside_faces
    of_barrel = _barrel_thresholds(sample, samples) if barrels else []
    return WhatIf(
        parameter=parameter,
        hold=hold,
        leaf=candidate.leaf,
        width=candidate.hinge_width,
        must=must,
        has_hardware=bool(candidate.solution.scene.hardware),
        curve=curve,
        thresholds=tuple(sorted([*thresholds, *of_barrel], key=lambda one: one.value)),
        place=None if candidate.way is None else study.compared.index(candidate.way.given),
    )


def _curve_and_thresholds(
    leaves: "_Leaves", parameter: Parameter, samples: Sequence[Sample]
) -> tuple[WhatIfCurve, list[Threshold]]:
    """Return the curve, with points on both sides of every threshold, and the thresholds."""
    values = np.unique([*np.linspace(parameter.low, parameter.high, POINTS), *(one.value for one in samples)])
    points = leaves.points(values)
    brackets = _turning(leaves, points)
    beside = [point for bracket in brackets for point in bracket]
    curve = _curve(sorted([*points, *beside], key=lambda one: one.value))
    return curve, [threshold for bracket in brackets for threshold in _thresholds(leaves.must, *bracket)]


def _curve(points: Sequence["_Point"]) -> WhatIfCurve:
    columns = zip(*((one.value, one.bare, one.fitted, one.clear) for one in points), strict=True)
    values, *answers = (tuple(column) for column in columns)
    bare, fitted, clear = (
        tuple(None if math.isnan(number) else number for number in column) for column in answers
    )
    return WhatIfCurve(values, bare, fitted, clear)


def opening_with(opening: Opening, hold: Hold, value: float) -> Opening:
    """Return the opening as its record would be at a value of the parameter; not validated."""
    return with_changes(opening, hold.changes(value))


def _hung_at(
    study: Study, candidate: Candidate, parameter: Parameter, hold: Hold
) -> Callable[[float], tuple[HungLeaf, HangsOn]]:
    """Return the function that gives the leaf and what it hangs on at a value of the parameter."""
    if parameter.of_hinge:
        return lambda value: (candidate.hung, value)  # the width is no part of what is filled in

    def hung_at(value: float) -> tuple[HungLeaf, HangsOn]:
        opening = opening_with(study.opening, hold, value)
        filled = fill(opening)
        leaf = next(one for one in hang_leaves(filled, study.standard) if one.name == candidate.leaf)
        if candidate.way is None:
            return leaf, candidate.hinge_width
        given = opening.compare[study.compared.index(candidate.way.given)] if parameter.of_axis else None
        way = given if isinstance(given, Way) else candidate.way.given
        return leaf, fill_way(way, filled, leaf.hinge.barrel.value)[0]

    return hung_at


class _Point(NamedTuple):
    """The answers at one value; angles in degrees, nan and None where there is no such leaf."""

    value: float
    bare: float
    fitted: float
    clear: float
    does: Does | None
    free: bool
    """Whether the barrel stands clear of door and frame."""


class _Leaves:
    """One leaf at any values of the range, many at once."""

    def __init__(self, runs: tuple[Run, ...], must: Must, held_short: bool) -> None:
        self.runs, self.must, self.held_short = runs, must, held_short
        self.wanted = angles_asked(must)

    def points(self, values: Floats) -> list[_Point]:
        """Return the answers at values that go up, each within the range."""
        ends = [run.high for run in self.runs]
        places = np.minimum(np.searchsorted(ends, values), len(ends) - 1)
        parts = (self._of_run(run, values[places == place]) for place, run in enumerate(self.runs))
        return [point for part in parts for point in part]

    def _of_run(self, run: Run, values: Floats) -> list[_Point]:
        if run.first is None or not len(values):
            return [_Point(value, math.nan, math.nan, math.nan, None, True) for value in values.tolist()]
        many = run.many(values)
        found = solve_many(many)
        bare = [in_degrees(angle) for angle in found.greatest_angle_bare.tolist()]
        fitted = [in_degrees(angle) for angle in found.greatest_angle.tolist()]
        clear = np.full(len(values), np.nan) if self.held_short else found.clear_width_at_90
        names: list[Met | None] = [*found.names, None]
        does = map(
            Does,
            self._angles(bare),
            self._angles(fitted),
            (None if a < _SHUT else names[n] for n, a in zip(found.touches_bare.tolist(), bare, strict=True)),
            (None if a < _SHUT else names[n] for n, a in zip(found.touches.tolist(), fitted, strict=True)),
            self._kept(clear),
            mounted(many).tolist(),
        )
        free = (found.barrel_freedom >= -TOLERANCE).tolist()
        return list(map(_Point, values.tolist(), bare, fitted, clear.tolist(), does, free))

    def _angles(self, degrees: list[float]) -> list[tuple[bool, ...]]:
        reached = np.array(degrees)[:, None] >= np.array(self.wanted) - TOLERANCE
        return [tuple(row) for row in reached.tolist()]

    def _kept(self, clear: Floats) -> list[bool]:
        least = self.must.clear_width
        kept: list[bool] = ([True] * len(clear)) if least is None else (clear >= least - TOLERANCE).tolist()
        return kept


_Bracket = tuple[_Point, _Point]


def _turning(leaves: _Leaves, points: Sequence[_Point]) -> list[_Bracket]:
    """Return each threshold closed in on from both sides."""
    brackets = _changes(points)
    while wide := [one for one in brackets if _too_wide(one)][:_MOST_BRACKETS]:
        looked = [_within(near, far) for near, far in wide]
        found = iter(leaves.points(np.concatenate(looked)))
        brackets = [one for one in brackets if one not in wide]
        brackets += [one for line in looked for one in _changes([next(found) for _ in line])]
    return brackets


def _too_wide(bracket: _Bracket) -> bool:
    one, other = bracket
    before, after = one.does, other.does
    only_met = before is not None and after is not None and _as_far(before) == _as_far(after)
    return other.value - one.value > (_MEETING if only_met else _FINE)


def _as_far(does: Does) -> tuple[Any, ...]:
    """Return all that a leaf does but what it meets: a swing that ends at all has met something."""
    return does.angles, does.fitted_angles, does.clear, does.mounted


def _within(one: _Point, other: _Point) -> Floats:
    """Return values to look at between two: evenly spread, and about the round number among them."""
    near, far = one.value, other.value
    parts = min(_PARTS if one.free and other.free else _FEW, math.ceil((far - near) / _FINE))
    values = set(np.linspace(near, far, max(parts, 2) + 1).tolist())
    if far - near < _LAST:
        middle = (near + far) / 2
        rounds = [round(middle * per_inch) / per_inch for per_inch in _ROUND]
        about = [number + side for number in rounds for side in (-_BESIDE, 0.0, _BESIDE)]
        values |= {value for value in about if near < value < far}
    return np.array(sorted(values))


def _changes(points: Sequence[_Point]) -> list[_Bracket]:
    return [(one, other) for one, other in pairwise(points) if one.does != other.does]


def _barrel_thresholds(sample: Callable[[float], Sample], samples: Sequence[Sample]) -> list[Threshold]:
    """Return where the barrel comes free of door, frame and what stands there, or is no longer free."""
    return [threshold_at(near, far, BARREL, free) for near, far, free in barrel_crossings(sample, samples)]


def _thresholds(must: Must, one: _Point, other: _Point) -> list[Threshold]:
    return thresholds_between(must, one.value, other.value, one.does, other.does)
