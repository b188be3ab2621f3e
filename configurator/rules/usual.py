"""What the user did not say, filled in with the usual value for that frame kind and door, and marked so."""

from collections.abc import Mapping
from dataclasses import dataclass

from configurator.model import Opening


@dataclass(frozen=True, slots=True)
class Assumed:
    """A value nobody gave: what was taken for it and where that comes from."""

    value: float | str | bool | None
    because: str
    source: str
    mark_of_source: str


@dataclass(frozen=True, slots=True)
class FilledOpening:
    """An opening with every number present: inches, the symbols of the plan geometry beside each name."""

    opening: Opening
    opening_width: float  # O
    opening_height: float
    thickness: float  # T
    latch_bevel: float  # beta
    door_backset: float  # b
    frame_backset: float | None  # b_f, None where it follows from b + k
    door_mortise: float | None  # m_d, None = flush
    frame_mortise: float | None  # m_f
    hinge_gap: float  # g_h
    latch_gap: float  # g_l
    head_gap: float
    meeting_gap: float
    split_gap: float
    undercut: float
    frame_face: float  # F
    rabbet: float  # R
    stop_height: float  # s
    stop_gap: float  # k
    jamb_depth: float  # D
    return_depth: float
    wall_thickness: float
    layers: tuple[tuple[str, float], ...]
    """Wall layers from the pull side as (name, inches); usual ones where none were given."""
    frame_proud: float  # p
    wanted_angle: float  # degrees
    assumed: Mapping[str, Assumed]
    """Path of a field in the opening (such as `frame.rabbet`) to what was assumed for it."""

    @property
    def inset(self) -> float:
        """How far the closed door's pull face sits behind the frame face (i); negative if it stands proud."""
        return self.rabbet - self.stop_gap - self.thickness

    @property
    def leaf_bottom(self) -> float:
        """Height of the leaf's bottom above the finished floor."""
        return self.undercut

    @property
    def leaf_top(self) -> float:
        """Height of the leaf's top above the finished floor."""
        return self.opening_height - self.head_gap
