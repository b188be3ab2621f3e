"""What the rules read of one leaf on one hinge width: the geometry's answer beside what the record says."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal, Protocol

from configurator.model import Opening
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import FilledWay
from configurator.rules.finding import Finding, Reason
from configurator.rules.hinge.leaf_hinge import LeafHinge
from configurator.tables import limit
from configurator.units import TOLERANCE

Fault = Literal["", "misses", "in the doorway", "never met", "near the edge", "met too late", "buried"]


@dataclass(frozen=True, slots=True)
class StopPlace:
    """Where a door stop stands at one leaf, and where the leaf comes to rest against it; inches, degrees.

    `from_frame` and `from_pin` run along the wall from the frame's outer edge and from the pin axis,
    `projection` is from the wall face to the tip, `height` the tip's middle above the floor. `rests_at` is
    None where the leaf never comes to the tip; `meets` names what of the moving side does. `fault` is what is
    wrong with the place, and `reach` how far along the wall from the frame a stop of that kind may stand.
    """

    kind: str
    projection: float
    from_frame: float
    from_pin: float
    height: float
    rests_at: float | None
    meets: str
    fault: Fault = ""
    reach: float = 0.0

    @property
    def holds(self) -> bool:
        """Whether the leaf comes to it before anything else."""
        return self.rests_at is not None and self.fault in ("", "near the edge")

    def as_data(self) -> dict[str, float | str | None]:
        """Return the place as other tools read it."""
        return {
            "kind": self.kind,
            "projection": self.projection,
            "from_frame": self.from_frame,
            "from_pin": self.from_pin,
            "height": self.height,
            "rests_at": self.rests_at,
            "meets": self.meets,
            "fault": self.fault or None,
        }


def held_at(overhead: float | None, place: StopPlace | None) -> float | None:
    """Return the least angle that the stops given hold a door at, degrees."""
    rests = place.rests_at if place is not None and place.holds else None
    angles = [angle for angle in (overhead, rests) if angle is not None]
    return min(angles, default=None)


def holder_of(filled: FilledOpening, leaf: str, place: StopPlace | None) -> str:
    """Name what holds a leaf at that angle: the arm or the stop at an angle, else a stop that is drawn."""
    arm = filled.opening.angle_stop(leaf)
    if arm is None or arm.angle != held_at(arm.angle, place):
        return "door stop" if place is None else place.kind
    return arm.name


def arm_or_stop(filled: FilledOpening, leaf: str, place: StopPlace | None) -> str:
    """Name the arm that holds a leaf at that angle; anything else is a door stop, to be moved."""
    name = holder_of(filled, leaf, place)
    return "door stop" if place is not None and name == place.kind else name


class Stopped(Protocol):
    """What ends a swing, and which moving part it meets."""

    @property
    def kind(self) -> str:
        """An obstruction's kind, or frame, wall, latch jamb, stop."""

    @property
    def index(self) -> int | None:
        """Its place in the list of obstructions."""

    @property
    def part(self) -> str:
        """Leaf, barrel, or a hardware kind."""

    @property
    def at_rest(self) -> bool:
        """Whether the two overlap with the door closed."""


class WidthAnswer(Protocol):
    """One leaf on one hinge open width; inches and degrees, as the results name them.

    A study's `Candidate` is one; rules that need another of its answers add it here.
    """

    @property
    def filled(self) -> FilledOpening: ...  # noqa: D102
    @property
    def hinge(self) -> LeafHinge: ...  # noqa: D102
    @property
    def leaf(self) -> str: ...  # noqa: D102
    @property
    def hinge_width(self) -> float: ...  # noqa: D102
    @property
    def way(self) -> FilledWay | None: ...  # noqa: D102
    @property
    def axis_off_face(self) -> float: ...  # noqa: D102
    @property
    def mounting(self) -> str: ...  # noqa: D102
    @property
    def refusal(self) -> str | None: ...  # noqa: D102
    @property
    def backset_disagreement(self) -> float: ...  # noqa: D102
    @property
    def gap_disagreement(self) -> float: ...  # noqa: D102
    @property
    def barrel_diameter(self) -> float: ...  # noqa: D102
    @property
    def barrel_free_by(self) -> float: ...  # noqa: D102
    @property
    def barrel_in_trim(self) -> bool: ...  # noqa: D102
    @property
    def clear_past_frame_at_180(self) -> float: ...  # noqa: D102
    @property
    def greatest_angle(self) -> float: ...  # noqa: D102
    @property
    def stopped_by(self) -> Stopped | None: ...  # noqa: D102
    @property
    def greatest_angle_bare(self) -> float: ...  # noqa: D102
    @property
    def stopped_by_bare(self) -> Stopped | None: ...  # noqa: D102
    @property
    def rests_at(self) -> float: ...  # noqa: D102
    @property
    def door_stop(self) -> StopPlace | None: ...  # noqa: D102
    @property
    def stop_wanted(self) -> StopPlace | None: ...  # noqa: D102
    @property
    def clear_width_at_90(self) -> float | None: ...  # noqa: D102
    @property
    def latch_edge_least(self) -> float: ...  # noqa: D102
    @property
    def encroachment_greatest(self) -> float: ...  # noqa: D102
    @property
    def leaf_out_at_rest(self) -> float: ...  # noqa: D102
    @property
    def findings(self) -> tuple[Finding, ...]: ...  # noqa: D102
    @property
    def others(self) -> "Answers": ...  # noqa: D102


Answer = Callable[[str, float], WidthAnswer]
"""Leaf name and hinge open width, inches, to the geometry's answer; asked only for widths that matter."""


class Answers(Protocol):
    """An opening that can be asked for any leaf on any width, and how it would be if it were otherwise."""

    def __call__(self, leaf: str, width: float, /) -> WidthAnswer:
        """Return the named leaf on a hinge open width, inches; ValueError where it cannot be mounted."""

    def must(self, leaf: str) -> "Must":
        """Return what the named leaf has to do."""

    def choice(self, leaf: str) -> "WidthChoice":
        """Return the width that is to be taken for the named leaf; many findings ask for it."""

    def otherwise(self, opening: Opening) -> "Answers":
        """Return the answers for another record of the opening, in the same job."""


@dataclass(frozen=True, slots=True)
class WidthChoice:
    """The width with its reason; `complete` says that it does all that it must.

    `least_bad` is what it does where no stock width does all.
    """

    reason: Reason
    complete: bool
    findings: tuple[Finding, ...] = ()
    least_bad: WidthAnswer | None = None


@dataclass(frozen=True, slots=True)
class Must:
    """What a leaf has to do: degrees, and the least clear width in inches where one is asked.

    `square` says that the job takes a width equal to the height wherever that does it.
    `asked` says that somebody asked for that angle; else it is the usual one that was taken.
    """

    leaf: str
    height: float
    wanted: float
    clear_width: float | None
    square: bool = False
    asked: bool = True


def binds(answer: WidthAnswer) -> bool:
    """Return whether the lock edge meets the latch jamb, or a pair's other leaf, before the door is open.

    What the other leaf carries, which has a place in its list, is not what an edge binds on.
    """
    met = answer.stopped_by_bare
    return met is not None and met.index is None and met.kind in ("latch jamb", "other leaf")


def held_by_other(answer: WidthAnswer) -> bool:
    """Return whether what the other leaf carries ends this one's swing; that is said of the opening."""
    met = answer.stopped_by_bare
    return met is not None and met.kind == "other leaf" and met.index is not None


def held_shut(answer: WidthAnswer) -> bool:
    """Return whether what the other leaf carries keeps this one from opening at all."""
    return answer.greatest_angle_bare <= TOLERANCE and held_by_other(answer)


def reaches(answer: WidthAnswer, wanted: float) -> bool:
    """Return whether the bare leaf opens to the wanted angle, degrees."""
    return answer.greatest_angle_bare >= wanted - TOLERANCE


def wanted_angle(answer: WidthAnswer) -> float:
    """Return the angle the leaf is to open to, degrees: as wanted, but no more than its stops leave.

    Where nobody asked, a door is to come square open at the least.
    """
    filled = answer.filled
    held = held_at(filled.opening.stop_angle(answer.leaf), answer.door_stop)
    asked = "use.wanted_angle" not in filled.assumed
    return min(filled.wanted_angle if asked else limit("usual_angle_least").value, held or 180.0)


def barrel_free(answer: WidthAnswer) -> bool:
    """Return whether the barrel stands clear of door, frame and casing."""
    return answer.barrel_free_by >= -TOLERANCE


def barrel_room(mounting: str) -> float:
    """Return what a barrel must be free by for its hinge to be chosen, inches.

    With a leaf on a face the barrel rests against that face: nothing is asked.
    """
    return limit("barrel_close").value if mounting == FULL_MORTISE else 0.0


def barrel_clear(answer: WidthAnswer) -> bool:
    """Return whether the barrel is free by as much as choosing a width asks."""
    return answer.barrel_free_by >= barrel_room(answer.mounting) - TOLERANCE


FULL_MORTISE = "full mortise"
SURFACE = ("half mortise", "half surface", "full surface")
"""Mountings with a leaf on a face: their template says where the pin stands, not their size."""


def by_template(mounting: str) -> bool:
    """Return whether the hinge's template decides where its pin stands, and so how far the door opens."""
    return mounting in SURFACE


def width_moves_pin(answer: WidthAnswer) -> bool:
    """Return whether a wider hinge stands its pin farther out; on a face the barrel alone decides."""
    return answer.mounting == FULL_MORTISE


def refused(answer: WidthAnswer) -> bool:
    """Return whether a hinge of that width cannot be mounted so: a leaf would run out past the far side."""
    return answer.refusal is not None


def keeps_clear_width(answer: WidthAnswer, least: float | None) -> bool:
    """Return whether the clear width at 90 degrees is at least `least`, inches; true where none is asked.

    Where a door stop holds the door short of square there is none on any width: no hinge is to blame for it.
    """
    if least is None or (answer.clear_width_at_90 is None and answer.greatest_angle >= 90.0 - TOLERANCE):
        return True
    return answer.clear_width_at_90 is not None and answer.clear_width_at_90 >= least - TOLERANCE


def stopped_at(answer: WidthAnswer) -> float | None:
    """Return where a door stop holds the door before anything else does, degrees; None where none does."""
    return answer.rests_at if answer.rests_at < answer.greatest_angle - TOLERANCE else None


def tried(answer: Answer, leaf: str, width: float) -> WidthAnswer | str:
    """Return the geometry's answer, or its sentence where such a hinge cannot be mounted at all."""
    try:
        return answer(leaf, width)
    except ValueError as error:
        return str(error)
