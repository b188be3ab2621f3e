"""What the answers of one leaf would be over a range of one thing, and at which values something turns.

Worked out when asked for, never as part of a study. Inches and degrees.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.batch import solve_many
from configurator.geometry.pin import TOLERANCE
from configurator.model import Hinge, JobFacts, Opening
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.rules.specification import must_of
from configurator.rules.width import Must
from configurator.study.candidate import in_degrees
from configurator.study.deviations import mounted
from configurator.study.records import Candidate, Study
from configurator.study.what_if_barrel import barrel_crossings
from configurator.study.what_if_samples import Run, Sample, runs_of, sampler, samples_between
from configurator.study.what_if_things import Hold, Thing, with_changes
from configurator.units import MM_PER_INCH

Floats = NDArray[Any]
POINTS = 257
"""Values at which the curve is looked at first."""
FLAT, SQUARE = 180.0, 90.0
OPENS, FITTED, CLEAR, BARREL = "opens", "opens with hardware", "clear width", "barrel free"
MEETS, CARRIED_MEETS = "meets", "hardware meets"
MOUNTS, A_DOOR = "mounted", "a door"
_PARTS: Final = 160
_FINE: Final = 1e-5
"""Inches: how finely a value where something turns is found, if it is none that is a round number."""
_ROUND: Final = (64.0, 2 * MM_PER_INCH)
"""Round numbers are looked at for themselves: whole 64ths of an inch and halves of a millimetre."""
_BESIDE: Final = 4e-9
_LAST: Final = 1e-3
"""Inches: in so narrow a bracket round numbers are tried, since the next look is the last."""
_MOST_BRACKETS: Final = 24

Met = tuple[str, int | None, str]
"""What stands, its place in the list of obstructions, and the moving part that meets it."""


@dataclass(frozen=True, slots=True)
class Turn:
    """A value at which an answer turns.

    what is a kind of answer; `upward` says that it holds from `value` on, else up to there. `amount` is the
    angle in degrees or the length in inches that it is about, `met` what is met from `value` on and
    `met_before` what up to there, None for nothing.
    """

    value: float
    what: str
    upward: bool
    amount: float = 0.0
    met: Met | None = None
    met_before: Met | None = None


@dataclass(frozen=True, slots=True)
class WhatIfCurve:
    """Greatest angles, degrees, and clear width at 90, inches, at values of the thing, low to high.

    An angle is None where there can be no such leaf, a clear width also where it does not come to 90.
    """

    values: tuple[float, ...]
    bare: tuple[float | None, ...]
    with_hardware: tuple[float | None, ...]
    clear_widths: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class WhatIf:
    """One leaf on one hinge open width, one thing varied and all else held."""

    thing: Thing
    hold: Hold
    leaf: str
    width: float
    must: Must
    has_hardware: bool
    curve: WhatIfCurve
    turns: tuple[Turn, ...]


class Does(NamedTuple):
    """What a leaf does, as far as it can turn from one value to the next."""

    angles: tuple[bool, ...]
    fitted_angles: tuple[bool, ...]
    met: Met | None
    met_fitted: Met | None
    clear: bool
    mounted: bool


def what_if(
    study: Study, candidate: Candidate, thing: Thing, hold: Hold, job: JobFacts | None = None
) -> WhatIf:
    """Return what a leaf on a hinge open width would do over the whole range of one thing.

    The job's facts are those the opening was studied with.
    """
    standard = job.standard_hinge if job is not None else None
    must = _must(study, candidate, standard)
    held_short = candidate.clear_width_at_90 is None and candidate.greatest_angle >= SQUARE - TOLERANCE
    opening_at, width_at = _opening_at(study.opening, thing, hold), _width_at(thing, candidate)
    sample = sampler(opening_at, width_at, candidate.leaf, standard)
    samples = samples_between(sample, thing.low, thing.high, thing.present)
    curve, turns = _curve_and_turns(_Leaves(runs_of(samples), must, held_short), thing, samples)
    return WhatIf(
        thing=thing,
        hold=hold,
        leaf=candidate.leaf,
        width=candidate.hinge_width,
        must=must,
        has_hardware=bool(candidate.solution.scene.hardware),
        curve=curve,
        turns=tuple(sorted([*turns, *_barrel_turns(sample, samples)], key=lambda one: one.value)),
    )


def _must(study: Study, candidate: Candidate, standard: Hinge | None) -> Must:
    hinges = leaf_hinges(study.filled, standard)
    (hinge,) = (one for one in hinges if one.leaf.name == candidate.leaf)
    return must_of(study.filled, hinge)


def _curve_and_turns(
    leaves: "_Leaves", thing: Thing, samples: Sequence[Sample]
) -> tuple[WhatIfCurve, list[Turn]]:
    """Return the curve, with points on both sides of every value where something turns, and the turns."""
    values = np.unique([*np.linspace(thing.low, thing.high, POINTS), *(one.value for one in samples)])
    points = leaves.points(values)
    brackets = _turning(leaves, points)
    beside = [point for bracket in brackets for point in bracket]
    curve = _curve(sorted([*points, *beside], key=lambda one: one.value))
    return curve, [turn for one in brackets for turn in _turns(leaves.must, *one)]


def _curve(points: Sequence["_Point"]) -> WhatIfCurve:
    columns = zip(*((one.value, one.bare, one.fitted, one.clear) for one in points), strict=True)
    values, *answers = (tuple(column) for column in columns)
    bare, fitted, clear = (
        tuple(None if math.isnan(number) else number for number in column) for column in answers
    )
    return WhatIfCurve(values, bare, fitted, clear)


def opening_with(opening: Opening, hold: Hold, value: float) -> Opening:
    """Return the opening as its record would be at a value of the varied thing; not validated."""
    return with_changes(opening, hold.changes(value))


def _opening_at(opening: Opening, thing: Thing, hold: Hold) -> Callable[[float], Opening]:
    if thing.of_hinge:
        return lambda _: opening  # the width is no part of what is filled in
    return lambda value: opening_with(opening, hold, value)


def _width_at(thing: Thing, candidate: Candidate) -> Callable[[float], float]:
    return (lambda value: value) if thing.of_hinge else (lambda _: candidate.hinge_width)


class _Point(NamedTuple):
    """The answers at one value; angles in degrees, nan and None where there is no such leaf."""

    value: float
    bare: float
    fitted: float
    clear: float
    does: Does | None


class _Leaves:
    """One leaf at any values of the range, many at once."""

    def __init__(self, runs: tuple[Run, ...], must: Must, held_short: bool) -> None:
        self.runs, self.must, self.held_short = runs, must, held_short
        self.wanted = tuple(sorted({SQUARE, must.wanted, FLAT}))

    def points(self, values: Floats) -> list[_Point]:
        """Return the answers at values that go up, each within the range."""
        ends = [run.high for run in self.runs]
        places = np.minimum(np.searchsorted(ends, values), len(ends) - 1)
        parts = (self._of_run(run, values[places == place]) for place, run in enumerate(self.runs))
        return [point for part in parts for point in part]

    def _of_run(self, run: Run, values: Floats) -> list[_Point]:
        if run.first is None or not len(values):
            return [_Point(value, math.nan, math.nan, math.nan, None) for value in values.tolist()]
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
            (names[place] for place in found.touches_bare.tolist()),
            (names[place] for place in found.touches.tolist()),
            self._kept(clear),
            mounted(many).tolist(),
        )
        return list(map(_Point, values.tolist(), bare, fitted, clear.tolist(), does))

    def _angles(self, degrees: list[float]) -> list[tuple[bool, ...]]:
        reached = np.array(degrees)[:, None] >= np.array(self.wanted) - TOLERANCE
        return [tuple(row) for row in reached.tolist()]

    def _kept(self, clear: Floats) -> list[bool]:
        least = self.must.clear_width
        kept: list[bool] = ([True] * len(clear)) if least is None else (clear >= least - TOLERANCE).tolist()
        return kept


_Bracket = tuple[_Point, _Point]


def _turning(leaves: _Leaves, points: Sequence[_Point]) -> list[_Bracket]:
    """Return each value where anything turns, closed in on from both sides."""
    brackets = _changes(points)
    while wide := [one for one in brackets if one[1].value - one[0].value > _FINE][:_MOST_BRACKETS]:
        looked = [_within(near.value, far.value) for near, far in wide]
        found = iter(leaves.points(np.concatenate(looked)))
        brackets = [one for one in brackets if one not in wide]
        brackets += [one for line in looked for one in _changes([next(found) for _ in line])]
    return brackets


def _within(near: float, far: float) -> Floats:
    """Return values to look at from near to far: evenly spread, and about the round number among them."""
    values = set(np.linspace(near, far, _PARTS + 1).tolist())
    if far - near < _LAST:
        middle = (near + far) / 2
        rounds = [round(middle * per_inch) / per_inch for per_inch in _ROUND]
        about = [number + side for number in rounds for side in (-_BESIDE, 0.0, _BESIDE)]
        values |= {value for value in about if near < value < far}
    return np.array(sorted(values))


def _changes(points: Sequence[_Point]) -> list[_Bracket]:
    return [(one, other) for one, other in pairwise(points) if one.does != other.does]


def _turns(must: Must, one: _Point, other: _Point) -> list[Turn]:
    """Return what turns between two values that lie close together."""
    near, far, before, after = one.value, other.value, one.does, other.does
    if before is None or after is None:
        return [_turn(near, far, A_DOOR, after is not None)]
    wanted = sorted({SQUARE, must.wanted, FLAT})
    found = []
    for what, old, new in (
        (OPENS, before.angles, after.angles),
        (FITTED, before.fitted_angles, after.fitted_angles),
    ):
        turned = [(angle, now) for angle, was, now in zip(wanted, old, new, strict=True) if was != now]
        found += [_turn(near, far, what, now, angle) for angle, now in turned]
    if must.clear_width is not None and before.clear != after.clear:
        found.append(_turn(near, far, CLEAR, after.clear, must.clear_width))
    if before.mounted != after.mounted:
        found.append(_turn(near, far, MOUNTS, after.mounted))
    return [*_without_echo(found), *_other_met(far, before, after)]


def _turn(near: float, far: float, what: str, upward: bool, amount: float = 0.0) -> Turn:
    """Return a turn at the last value at which the answer still holds."""
    return Turn(far if upward else near, what, upward, amount)


def _without_echo(turns: list[Turn]) -> list[Turn]:
    """Leave out what the leaf with its hardware does where the leaf alone does the same."""
    alone = {(one.upward, one.amount) for one in turns if one.what == OPENS}
    return [one for one in turns if one.what != FITTED or (one.upward, one.amount) not in alone]


def _other_met(far: float, before: Does, after: Does) -> list[Turn]:
    """Return where a swing ends on another thing than it did: of the leaf, or of what it carries."""
    found = []
    if before.met != after.met and None not in (before.met, after.met):
        found.append(Turn(far, MEETS, True, met=after.met, met_before=before.met))
    both = (before.met_fitted, after.met_fitted)
    own = after.met_fitted != after.met or before.met_fitted != before.met
    if both[0] != both[1] and None not in both and own:
        found.append(Turn(far, CARRIED_MEETS, True, met=both[1], met_before=both[0]))
    return found


def _barrel_turns(sample: Callable[[float], Sample], samples: Sequence[Sample]) -> list[Turn]:
    """Return where the barrel comes free of door, frame and what stands there, or is no longer free."""
    return [_turn(near, far, BARREL, free) for near, far, free in barrel_crossings(sample, samples)]
