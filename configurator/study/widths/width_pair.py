"""The two hinge widths that an argument is made with: the one recommended, and the one beside it.

Where no two widths are compared the other is another way of hanging.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from configurator.model.paths import replaced
from configurator.rules.checks.mends import STEP
from configurator.rules.hinge.answers import reaches
from configurator.study import Candidate, Study
from configurator.tables import ObstructionKindRow, row_of

MOST_CUT = 12.0
"""Inches: cutting off more than this is no small matter and is not offered for keeping a hinge."""


@dataclass(frozen=True, slots=True)
class WidthPair:
    """One leaf on a narrower and on a wider hinge; `wider` is None where only one width is compared."""

    leaf: str
    narrower: Candidate
    wider: Candidate | None
    recommended: float | None
    """Recommended hinge open width of this leaf, inches; None where an error stands against it."""

    @property
    def both(self) -> tuple[Candidate, ...]:
        """Return what there is of the two, the narrower first."""
        return (self.narrower,) if self.wider is None else (self.narrower, self.wider)

    @property
    def other_way(self) -> bool:
        """Whether one of the two hangs another way than on butts."""
        return any(one.way is not None for one in self.both)

    def of(self, study: Study) -> Study:
        """Return the study with nothing but these widths of this leaf."""
        return replace(study, candidates=self.both)


def width_pair(study: Study) -> WidthPair:
    """Return the recommended width beside the next narrower one compared, of the leaf that it changes most.

    Beside the next wider one where none is narrower, and the least beside the greatest where the recommended
    width is not compared. Raises ValueError where there is no width at all.
    """
    if not study.candidates:
        raise ValueError("there is no hinge width to draw")
    leaves = dict.fromkeys(candidate.leaf for candidate in study.candidates)
    return max((_of_leaf(study, leaf) for leaf in leaves), key=_gain)


def hung_alike(study: Study, one: Candidate) -> tuple[Candidate, ...]:
    """Return every leaf of the opening on the same hinge, swinging the same way; that one first."""
    others = (
        each
        for each in study.candidates
        if each.leaf != one.leaf and each.on == one.on and each.to_push == one.to_push
    )
    return (one, *others)


def cut_for(study: Study, one: Candidate) -> tuple[int, float] | None:
    """Return which thing to cut off, by how much in inches, so that a leaf opens as wanted on its hinge.

    A thing that is cut by all its length is taken away. None where the leaf is stopped by nothing that can be
    cut, by the trim about the frame, or only by cutting off much.
    """
    met = one.stopped_by_bare
    if met is None or met.index is None or one.way is not None or met.kind == "other leaf":
        return None
    thing = study.opening.obstructions[met.index]
    row = row_of(ObstructionKindRow, thing.kind)
    if row.cut_back == "no" or row.measured_from == "frame":
        return None
    most = MOST_CUT if thing.length is None else min(MOST_CUT, thing.length)
    steps = [STEP * number for number in range(1, int(most / STEP) + 1)]
    if thing.length is not None and thing.length <= MOST_CUT and steps[-1:] != [thing.length]:
        steps.append(thing.length)
    low, high = -1, len(steps)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if _does_cut(study, one, met.index, steps[middle]) else (middle, high)
    return (met.index, steps[high]) if high < len(steps) else None


def _does_cut(study: Study, one: Candidate, place: int, by: float) -> bool:
    """Whether the leaf opens as wanted on its hinge with a thing cut off by so much, inches, or gone."""
    things = study.opening.obstructions
    thing, path = things[place], f"obstructions.{place}"
    if thing.length is not None and by >= thing.length:
        opening = replaced(study.opening, "obstructions", (*things[:place], *things[place + 1 :]))
    else:
        opening = replaced(study.opening, f"{path}.start", (thing.start or 0.0) + by)
        if thing.length is not None:
            opening = replaced(opening, f"{path}.length", thing.length - by)
    other = study.hanger.otherwise(opening)(one.leaf, one.hinge_width)
    return reaches(other, study.hanger.must(one.leaf).wanted)


def _chosen_width(study: Study, leaf: str) -> float | None:
    """Return the width chosen for a leaf, inches, recommended or not; None where there is none."""
    chosen = (one.parts["width"].value for one in study.specification.leaves if one.leaf == leaf)
    return next(chosen, None)


def _of_leaf(study: Study, leaf: str) -> WidthPair:
    chosen = _chosen_width(study, leaf)
    narrower, wider = _beside(chosen, (one for one in study.candidates if one.leaf == leaf))
    return WidthPair(leaf, narrower, wider, None if study.errors else chosen)


def _beside(chosen: float | None, candidates: Iterable[Candidate]) -> tuple[Candidate, Candidate | None]:
    found = list(candidates)
    ordered = sorted((one for one in found if one.way is None), key=lambda one: one.hinge_width)
    if len(ordered) < 2:
        both = (*ordered, *(one for one in found if one.way is not None and not one.to_push))
        return both[0], both[1] if len(both) > 1 else None
    widths = [one.hinge_width for one in ordered]
    if chosen not in widths:
        return ordered[0], ordered[-1]
    at = max(widths.index(chosen), 1)
    return ordered[at - 1], ordered[at]


def _gain(pair: WidthPair) -> tuple[float, float]:
    """How much the hinge changes; where it changes nothing, the leaf that opens least is worth showing."""
    gain = 0.0 if pair.wider is None else abs(pair.wider.rests_at - pair.narrower.rests_at)
    return gain, -pair.narrower.rests_at
