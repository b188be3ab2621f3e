"""What the rules need to know of the geometry's answer for one leaf on one hinge width."""

from collections.abc import Callable
from typing import Protocol

from configurator.rules.finding import Finding
from configurator.units import TOLERANCE


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


class WidthAnswer(Protocol):
    """One leaf on one hinge open width; inches and degrees, as the results name them."""

    @property
    def leaf(self) -> str: ...  # noqa: D102
    @property
    def hinge_width(self) -> float: ...  # noqa: D102
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
    def clear_width_at_90(self) -> float | None: ...  # noqa: D102
    @property
    def barrel_free_by(self) -> float: ...  # noqa: D102
    @property
    def encroachment_greatest(self) -> float: ...  # noqa: D102
    @property
    def leaf_out_at_rest(self) -> float: ...  # noqa: D102
    @property
    def findings(self) -> tuple[Finding, ...]: ...  # noqa: D102


Answer = Callable[[str, float], WidthAnswer]
"""Leaf name and hinge open width, inches, to the geometry's answer; asked only for widths that matter."""

REFUSED = "refused"
"""The code of the finding that a width cannot be mounted so."""


def binds(answer: WidthAnswer) -> bool:
    """Say whether the lock edge meets the latch jamb, or a pair's other leaf, before the door is open.

    What the other leaf carries, which has a place in its list, is not what an edge binds on.
    """
    met = answer.stopped_by_bare
    return met is not None and met.index is None and met.kind in ("latch jamb", "other leaf")


def held_shut(answer: WidthAnswer) -> bool:
    """Say whether what the other leaf carries keeps this one from opening at all."""
    met = answer.stopped_by_bare
    closed = answer.greatest_angle_bare <= TOLERANCE
    return closed and met is not None and met.kind == "other leaf" and met.index is not None


def reaches(answer: WidthAnswer, wanted: float) -> bool:
    """Say whether the bare leaf opens to the wanted angle, degrees."""
    return answer.greatest_angle_bare >= wanted - TOLERANCE


def barrel_free(answer: WidthAnswer) -> bool:
    """Say whether the barrel stands clear of door, frame and casing."""
    return answer.barrel_free_by >= -TOLERANCE


def refused(answer: WidthAnswer) -> bool:
    """Say whether a hinge of that width cannot be mounted so: a leaf would run out past the far side."""
    return any(one.code == REFUSED for one in answer.findings)


def keeps_clear_width(answer: WidthAnswer, least: float | None) -> bool:
    """Say whether the clear width at 90 degrees is at least `least`, inches; true where none is asked.

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
