"""One leaf over the range of a parameter: each sample filled in like any opening; inches and radians.

Between two samples everything runs straight, so that whole tables of values are worked out at once; corners
and jumps of it, such as a hinge that changes with the door's thickness, are closed in on and become samples.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, fields
from itertools import groupby, pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.many.solve_many import AXIS, Many
from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import Obstruction, refuse_no_door
from configurator.geometry.solve import Scene, scene
from configurator.study.hang import Arrangement, HangsOn, HungLeaf

Floats = NDArray[Any]
COUNT = 17
"""Samples that a range begins with."""
CLOSE = 1e-7
"""Inches; a corner or a jump lies between two samples so close."""
_BESIDE = 0.9 * CLOSE
_STRAIGHT, _ROUND = 1e-11, 64
_NO_NUMBERS = ("mounting", "axis", "outline")
_LETTERS = (*(item.name for item in fields(Hanging) if item.name not in _NO_NUMBERS), *AXIS)
_MEASURES = ("projection", "start", "length", "offset", "bottom", "top", "diameter")


@dataclass(frozen=True, slots=True)
class Sample:
    """A leaf at one value of the parameter, with what stands about it; None where there can be none."""

    value: float
    laid: Arrangement | None
    numbers: tuple[float | None, ...] = ()

    @property
    def arrangement(self) -> Any:
        """What must be alike in two samples, so that only numbers run between them."""
        if self.laid is None:
            return None
        laid = self.laid
        given = tuple(number is None for number in self.numbers)
        return laid.leaf, laid.hardware, laid.other, laid.hanging.mounting, laid.hanging.outline, given

    def scene(self) -> Scene:
        """Return the leaf and what stands about it, for the single path."""
        assert self.laid is not None
        laid = self.laid
        return scene(laid.hanging, laid.leaf, laid.hardware, laid.obstructions, laid.other)


Sampler = Callable[[float], Sample]


def sampler(hung_at: Callable[[float], tuple[HungLeaf, HangsOn]]) -> Sampler:
    """Return the function that samples a leaf; `hung_at` gives it and what it hangs on at a value."""

    def sample(value: float) -> Sample:
        try:
            hung, on = hung_at(value)
            laid = hung.arrangement(on)
            refuse_no_door(laid.hanging, laid.leaf)
        except ValueError:
            return Sample(value, None)
        return Sample(value, laid, _numbers(laid.hanging, laid.obstructions))

    return sample


def _numbers(h: Hanging, things: Sequence[Obstruction]) -> tuple[float | None, ...]:
    axis = (None, None) if h.axis is None else h.axis
    letters = (getattr(h, letter) for letter in _LETTERS[: -len(AXIS)])
    of_things = (getattr(thing, name) for thing in things for name in _MEASURES)
    return (*letters, *axis, *of_things)


def samples_between(sample: Sampler, low: float, high: float, present: float) -> tuple[Sample, ...]:
    """Return samples from low to high, the present value among them, close about every corner and jump."""
    values = sorted({*np.linspace(low, high, COUNT).tolist(), present})
    coarse = [sample(value) for value in values]
    bent = {0, len(coarse) - 2} if len(coarse) < 3 else set()
    for place in range(1, len(coarse) - 1):
        if not _straight(*coarse[place - 1 : place + 2]):
            bent |= {place - 1, place}
    found = [coarse[0]]
    for place, (one, other) in enumerate(pairwise(coarse)):
        found += [*(_closed_in(sample, one, other) if place in bent else ()), other]
    return tuple(found)


def _closed_in(sample: Sampler, one: Sample, other: Sample) -> Iterator[Sample]:
    """Yield samples between two, so that a corner or a jump lies between two that are next to one another."""
    if other.value - one.value <= CLOSE:
        return
    middle = sample(_between(one.value, other.value))
    if _straight(one, middle, other):
        return
    yield from _closed_in(sample, one, middle)
    yield middle
    yield from _closed_in(sample, middle, other)


def _between(low: float, high: float) -> float:
    """Return where to part an interval: at the round number in it, if any, for there most corners lie.

    Beside one that it ends at comes next: a table that says over or up to 1-3/8 jumps just there.
    """
    middle = (low + high) / 2
    if high - low > 2 / _ROUND:
        return middle
    near = round(middle * _ROUND) / _ROUND
    if low < near < high:
        return near
    for end, beside in ((low, low + _BESIDE), (high, high - _BESIDE)):
        if (end * _ROUND).is_integer() and low < beside < high:
            return beside
    return middle


def _straight(one: Sample, middle: Sample, other: Sample) -> bool:
    if not one.arrangement == middle.arrangement == other.arrangement:
        return False
    share = (middle.value - one.value) / (other.value - one.value)
    each = zip(one.numbers, middle.numbers, other.numbers, strict=True)
    return all(
        b is None or a is None or c is None or abs(a + (c - a) * share - b) <= _STRAIGHT for a, b, c in each
    )


@dataclass(frozen=True, slots=True, eq=False)
class Run:
    """Samples of one arrangement from low to high; `first` is None where there can be no such leaf."""

    low: float
    high: float
    samples: tuple[Sample, ...]

    @property
    def first(self) -> Sample | None:
        """The sample that stands for all that is alike."""
        return self.samples[0] if self.samples[0].laid is not None else None

    def many(self, values: Floats) -> Many:
        """Return the leaves at values within the run; only for a run with leaves."""
        laid = self.samples[0].laid
        assert laid is not None
        columns: dict[str, Floats] = {}
        things: dict[int, dict[str, Floats]] = {}
        for name, column in self._moving(values):
            place, measure = divmod(name - len(_LETTERS), len(_MEASURES))
            if place < 0:
                columns[_LETTERS[name]] = column
            else:
                things.setdefault(place, {})[_MEASURES[measure]] = column
        if not columns and not things:
            columns["T"] = np.full(len(values), laid.hanging.T)
        return Many(
            hanging=laid.hanging,
            leaf=laid.leaf,
            hardware=laid.hardware,
            obstructions=laid.obstructions,
            other=laid.other,
            columns=columns,
            thing_columns=things,
        )

    def _moving(self, values: Floats) -> Iterator[tuple[int, Floats]]:
        """Yield the numbers that are not the same in all samples, and how they run."""
        at = [one.value for one in self.samples]
        for place, column in enumerate(zip(*(one.numbers for one in self.samples), strict=True)):
            if column[0] is not None and any(number != column[0] for number in column):
                yield place, np.interp(values, at, np.array(column, float))


def runs_of(samples: Sequence[Sample]) -> tuple[Run, ...]:
    """Return the samples in runs of one arrangement each, low to high."""
    grouped = [tuple(group) for _, group in groupby(samples, key=lambda one: one.arrangement)]
    return tuple(Run(group[0].value, group[-1].value, group) for group in grouped)
