"""One leaf on one hinge width, with its letters ready to be put into formulas."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.solve import Scene, Solution
from configurator.study.candidate import Candidate
from configurator.study.derivation.terms import Symbol, Unit
from configurator.study.derivation.working import Working
from configurator.study.hang import HungLeaf

MEANINGS: Mapping[str, str] = MappingProxyType(
    {
        "O": "opening width, from rabbet face to rabbet face",
        "T": "door thickness",
        "g_h": "gap at the hinge side, door closed",
        "g_l": "gap at the lock side, door closed",
        "beta": "bevel of the lock edge, inches per inch of thickness",
        "R": "rabbet depth, from the frame face back to the frame stop",
        "k": "gap between the closed door and the frame stop",
        "s": "frame stop height, how far it stands into the opening",
        "F": "frame face width",
        "D": "jamb depth",
        "p": "frame proud: the frame face ahead of the wall face, below zero behind it",
        "b": "hinge backset on the door, from its stop-side face to the edge of the hinge leaf",
        "b_f": "hinge backset on the frame, from the frame stop to the edge of the hinge leaf",
        "t": "thickness of a hinge leaf",
        "m_d": "depth of the mortise in the door",
        "m_f": "depth of the mortise in the frame",
        "a": "gap between the closed leaves of the hinge",
        "W": "hinge open width",
        "d_b": "diameter of the barrel",
        "i": "inset: the door's face behind the frame face, below zero ahead of it",
        "o": "pin axis off the face of the closed door",
        "y_p": "pin axis off the frame face",
        "h_a": "axis from the heel edge of the door toward the latch, below zero beyond the edge",
        "x_p": "pin axis across from the rabbet face of the hinge jamb",
        "O_2": "the whole opening of the pair, from rabbet face to rabbet face",
        "w_2": "width of the other leaf",
        "theta": "angle the leaf has turned from closed",
        "alpha": "direction in which the line's normal points, counted from straight across the opening",
        "q": "how far out the line lies along its normal, from the frame's corner",
        "n_pin": "how far out the pin lies along the same normal",
        "u": "distance from the pin to the line",
        "r": "radius of what is round",
        "x_c": "the moving corner, closed: across from the rabbet face",
        "y_c": "the moving corner, closed: off the frame face, below zero behind it",
        "rho_c": "the moving corner's distance from the pin",
        "phi_c": "the moving corner's direction from the pin, door closed",
        "x_s": "the standing corner: across from the rabbet face",
        "y_s": "the standing corner: off the frame face, below zero behind it",
        "rho_s": "the standing corner's distance from the pin",
        "phi_s": "the standing corner's direction from the pin",
        "G": "the least gap",
        "E": "how far the door stands out from the wall face",
        "C": "clear width with the door open 90°",
        "H": "what hardware takes from the clear width",
        "B": "how far the barrel stands out",
        "d": "how deep the closed parts overlap",
        "S": "how far the face of the door, opened flat, stands off the frame face",
        "A_1": "the answer for the first hinge width",
        "A_2": "the answer for the last hinge width",
        "delta": "what the last width changes",
    }
)
UNITS: Mapping[str, Unit] = MappingProxyType({"beta": "plain"})


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
        """Where a stop at an angle or an arm holds the door, degrees; None where there is none."""
        return self.candidate.filled.opening.stop_angle(self.candidate.leaf)

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
