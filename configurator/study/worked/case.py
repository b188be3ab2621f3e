"""One leaf on one hinge width, with its letters ready to be put into formulas."""

from dataclasses import dataclass, field

from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.solve import Scene, Solution
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.study.hang import HungLeaf, hung_leaves
from configurator.study.records import Candidate, Study
from configurator.study.worked.meanings import MEANINGS, UNITS
from configurator.study.worked.terms import Symbol
from configurator.study.worked.working import Working


@dataclass(slots=True)
class Case:
    """A candidate being worked: its numbers, what stands about it, and the steps so far."""

    candidate: Candidate
    leaf: HungLeaf
    stop_angle: float | None
    work: Working = field(default_factory=Working)

    @property
    def solution(self) -> Solution:
        """The geometry's own answers."""
        return self.candidate.solution

    @property
    def scene(self) -> Scene:
        """The parts as seen from the pin."""
        return self.candidate.solution.scene

    @property
    def h(self) -> Hanging:
        """The lengths of the hung leaf, in."""
        return self.candidate.solution.hanging

    @property
    def pin(self) -> Pin:
        """Where the pin stands, in."""
        return self.candidate.solution.pin

    @property
    def opening(self) -> float:
        """The whole width between rabbet faces, in; more than O for a leaf of a pair."""
        return self.h.O if self.scene.other is None else self.scene.other.opening

    def letter(self, name: str) -> Symbol:
        """Return a letter of the hung leaf with its value, as it was given or assumed."""
        value = getattr(self.h, name)
        if value is None:
            raise ValueError(f"{name} was not given")
        return self.work.given(name, value, UNITS.get(name, "length"), MEANINGS[name])


def case_of(study: Study, candidate: Candidate) -> Case:
    """Return a candidate of a study, to be worked."""
    filled = study.filled
    leaves = {leaf.hinge.leaf.name: leaf for leaf in hung_leaves(filled, leaf_hinges(filled))}
    return Case(candidate, leaves[candidate.leaf], filled.opening.use.stop_angle)
