"""What a study of one opening answers, in the names that the command line and other tools read."""

from dataclasses import dataclass, fields, replace
from typing import Any

from configurator.geometry.encroachment import encroachment
from configurator.geometry.solve import Solution
from configurator.model import Opening
from configurator.rules.door_stop import StopPlace
from configurator.rules.finding import Finding
from configurator.rules.specification import Specification
from configurator.rules.usual import FilledOpening


@dataclass(frozen=True, slots=True)
class StoppedBy:
    """What ends a swing: what stands (and its place in the list of obstructions), and the moving part."""

    kind: str
    index: int | None
    part: str

    def as_data(self) -> dict[str, Any]:
        """Return the results contract's three keys."""
        return {"kind": self.kind, "index": self.index, "part": self.part}


@dataclass(frozen=True, slots=True)
class Candidate:
    """One leaf on one hinge open width: inches and degrees in full, None where there is no value."""

    leaf: str
    hinge_width: float
    pin_off_door_face: float
    pin_off_frame_face: float
    pin_across: float
    barrel_past_frame: float
    barrel_past_wall: float
    clear_past_frame_at_180: float
    greatest_angle: float
    stopped_by: StoppedBy | None
    contact_point: tuple[float, float] | None
    greatest_angle_bare: float
    stopped_by_bare: StoppedBy | None
    contact_point_bare: tuple[float, float] | None
    clear_width_at_90: float | None
    clear_width_at_greatest: float
    hardware_in_clear_width: float | None
    latch_edge_least: float
    hinge_edge_least: float
    encroachment_greatest: float
    encroachment_at_rest: float
    encroachment_with_hardware_greatest: float
    encroachment_with_hardware_at_rest: float
    least_gap: float | None
    """Least gap of the bare leaf to what stands along the wall; None with nothing there."""
    least_gap_angle: float | None
    barrel_free_by: float
    """How far the barrel stands clear of door, frame and casing; negative where it overlaps."""
    barrel_diameter: float
    rests_at: float
    """Where the open door comes to rest, with its hardware: the least of its stops and of what it meets."""
    door_stop: StopPlace | None
    """Where the door stop that was given stands at this leaf."""
    findings: tuple[Finding, ...]
    solution: Solution
    """The geometry behind the answers, for drawing; not part of the results."""

    @property
    def leaf_out_at_rest(self) -> float:
        """How far the leaf, without its hardware, stands out from the wall face where it does rest, inches.

        `encroachment_at_rest` is that of a door that carries nothing, which may open farther.
        """
        found = self.solution
        return encroachment((found.scene.leaf,), found.hanging, found.pin, found.rest_angle)

    def as_data(self) -> dict[str, Any]:
        """Return the candidate as the results contract names it."""
        data: dict[str, Any] = {}
        for item in fields(self):
            value = getattr(self, item.name)
            if item.name == "solution":
                continue
            if isinstance(value, (StoppedBy, StopPlace)):
                value = value.as_data()
            elif item.name == "findings":
                value = [finding.as_data() for finding in value]
            elif isinstance(value, tuple):
                value = list(value)
            data[item.name] = value
        return data


@dataclass(frozen=True, slots=True)
class Study:
    """The whole answer for one opening."""

    opening: Opening
    filled: FilledOpening
    candidates: tuple[Candidate, ...]
    specification: Specification
    findings: tuple[Finding, ...]

    @property
    def recommended(self) -> dict[str, Any]:
        """The recommended hinge as the results contract names it."""
        return self.specification.as_data()

    def of_leaf(self, name: str) -> "Study":
        """Return the study with the candidates of one leaf only; all of them where there is no such leaf."""
        of_it = tuple(one for one in self.candidates if one.leaf == name)
        return replace(self, candidates=of_it) if of_it else self

    def all_findings(self) -> tuple[Finding, ...]:
        """Return the opening's findings and then its candidates', each sentence once."""
        everything = (*self.findings, *(f for candidate in self.candidates for f in candidate.findings))
        return tuple({(f.code, f.message): f for f in everything}.values())

    def as_data(self) -> dict[str, Any]:
        """Return the study as the results contract names it."""
        return {
            "mark": self.opening.mark,
            "candidates": [candidate.as_data() for candidate in self.candidates],
            "recommended": self.recommended,
            "findings": [finding.as_data() for finding in self.findings],
        }
