"""One leaf on one hinge width, with its letters ready to be put into formulas."""

from dataclasses import dataclass, field

from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.solve import Scene, Solution
from configurator.study.candidate import Candidate
from configurator.study.hang import HungLeaf
from configurator.study.worked.meanings import MEANINGS, UNITS
from configurator.study.worked.terms import Symbol
from configurator.study.worked.working import Working


@dataclass(slots=True)
class Case:
    """A candidate being worked: its numbers, what stands about it, and the steps so far."""

    candidate: Candidate
    work: Working = field(default_factory=Working)

    @property
    def solution(self) -> Solution:
        """The geometry's own answers."""
        return self.candidate.solution

    @property
    def leaf(self) -> HungLeaf:
        """The leaf with what it carries and what stands about it."""
        return self.candidate.hung

    @property
    def stop_angle(self) -> float | None:
        """Where an overhead stop holds the door, degrees; None where there is none."""
        return self.candidate.filled.opening.use.stop_angle

    @property
    def scene(self) -> Scene:
        """The parts as seen from the pin."""
        return self.candidate.solution.scene

    @property
    def h(self) -> Hanging:
        """The lengths of the hung leaf, in."""
        return self.candidate.h

    @property
    def pin(self) -> Pin:
        """Where the pin stands, in."""
        return self.candidate.pin

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
