"""Where over the range of a parameter the barrel comes free of door, frame and trim, or stops being so."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from configurator.geometry.pin import TOLERANCE, barrel_freedom, locate_pin
from configurator.geometry.solve import barrel_free_by
from configurator.study.what_if.samples import CLOSE, Sample, Sampler

_MOST_STEPS = 60


class _Freedom(NamedTuple):
    """How far the barrel is free at a value; None where there can be no such leaf."""

    value: float
    free_by: float | None

    @property
    def free(self) -> bool:
        return self.free_by is not None and self.free_by >= -TOLERANCE


def barrel_crossings(sample: Sampler, samples: Sequence[Sample]) -> list[tuple[float, float, bool]]:
    """Return the values just before and just at each change, and whether the barrel is free from there on."""
    looked = [_freedom(one) for one in samples]
    return [
        (*_crossing(sample, one, other), other.free)
        for one, other in pairwise(looked)
        if one.free != other.free and None not in (one.free_by, other.free_by)
    ]


def _crossing(sample: Sampler, one: _Freedom, other: _Freedom) -> tuple[float, float]:
    """Return a value on either side of a change; it mostly runs straight, so the chord is tried first."""
    rising = other.free
    for step in range(_MOST_STEPS):
        if other.value - one.value <= CLOSE:
            break
        share = _chord(one, other) if step % 3 < 2 else 0.5
        between = _freedom(sample(one.value + share * (other.value - one.value)))
        if between.free_by is not None and abs(between.free_by) <= TOLERANCE:
            return between.value, between.value
        one, other = (one, between) if between.free == rising else (between, other)
    return one.value, other.value


def _chord(one: _Freedom, other: _Freedom) -> float:
    """Return the share of the way at which a straight run would come to nothing."""
    if one.free_by is None or other.free_by is None or one.free_by == other.free_by:
        return 0.5
    return min(max(one.free_by / (one.free_by - other.free_by), 0.0), 1.0)


def _freedom(at: Sample) -> _Freedom:
    if at.laid is None:
        return _Freedom(at.value, None)
    h = at.laid.hanging
    of_frame = barrel_freedom(h, locate_pin(h))
    beside = any(thing.start < h.F and thing.side == "hinge" for thing in at.laid.obstructions)
    # What stands farther along than the frame's face never comes as near to the barrel as the frame does.
    return _Freedom(at.value, barrel_free_by(at.scene()) if beside and of_frame >= 0.0 else of_frame)
