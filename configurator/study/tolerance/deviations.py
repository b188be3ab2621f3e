"""What may be off in one hung leaf, and the answers for many such leaves at once; inches and radians.

A frame set farther out moves p by as much. A thicker wall brings its face toward the pull side: by half where
the frame is centred in it, by all of it where the frame's place was given, the worst case of not knowing to
which side the wall grew. A gap off its size narrows or widens the leaf at that edge; the pin follows the
hinge-side gap. A thicker door keeps its far face where the frame stop holds it, so its inset shrinks. A hinge
set off its place moves both its leaves alike. What is no butt has its axis off instead: off the face by as
much as a hinge's backset may be, from the heel edge by as much as its width; not that of a rounded heel.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from configurator.geometry.many.solve_many import Many, latch_edges_of, mounted, solve_many
from configurator.geometry.pin import TOLERANCE, Hanging
from configurator.geometry.shapes import Leaf, Obstruction, OtherLeaf, refuse_no_door
from configurator.study.tolerance.result import BARREL, CHECKS, CLEAR_WIDTH, LOCK_EDGE, MOUNTING, SWING
from configurator.units import format_size

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]

TOLERANCE_OF: Final[Mapping[str, str]] = {
    "frame_setting": "frame_setting",
    "wall_thickness": "wall_thickness",
    "hinge_gap": "gaps",
    "latch_gap": "gaps",
    "door_thickness": "door_thickness",
    "hinge_backset": "hinge_backset",
    "hinge_width": "hinge_width",
}
"""Everything that may be off by itself, and the tolerance it has."""
NAMES: Final = tuple(TOLERANCE_OF)
OF_AN_AXIS: Final = (*NAMES[:-2], "axis_off_face", "axis_from_heel")
"""What they are called, in that order, where a leaf hangs on no butt."""
_ANGLE_TOLERANCE: Final = math.radians(TOLERANCE)


@dataclass(frozen=True, slots=True, eq=False)
class Varied:
    """One leaf as drawn, and what it has to do: wanted degrees, least clear width in inches or None.

    wall_share is how much of a thicker wall comes to the pull side; square whether a stop and the hardware,
    as they are drawn, let it come to 90 degrees at all; to_push that it swings to the push side, in its
    mirrored plan; has_barrel whether a barrel has to lie clear of door and frame. Hardware itself decides no
    hinge and is left out.
    """

    hanging: Hanging
    leaf: Leaf
    obstructions: tuple[Obstruction, ...]
    other: OtherLeaf | None
    wall_share: float
    wanted: float
    clear_width: float | None
    square: bool
    to_push: bool = False
    has_barrel: bool = True

    @property
    def names(self) -> tuple[str, ...]:
        """What may be off, in the order of NAMES."""
        return NAMES if self.hanging.axis is None else OF_AN_AXIS

    @property
    def passes_at_latch(self) -> bool:
        """Whether the latch edge has anything to pass: not behind a leaf that already stands open."""
        return self.other is None or self.other.closed

    def many(self, off: Floats) -> Many:
        """The leaves with each thing off by a row of `off`, in the order of NAMES."""
        h, by = self.hanging, dict(zip(NAMES, off, strict=True))
        columns = {
            "p": self._proud(by["frame_setting"], by["wall_thickness"]),
            "g_h": h.g_h + by["hinge_gap"],
            "g_l": h.g_l + by["latch_gap"],
            "T": h.T + by["door_thickness"],
        }
        if h.axis is None:
            columns |= {"b": h.b + by["hinge_backset"], "W": h.W + by["hinge_width"]}
        elif h.heel_radius is None:
            columns["axis_off_face"] = h.axis[0] + by["hinge_backset"]
            columns["axis_from_heel"] = h.axis[1] + by["hinge_width"]
        if h.b_f is not None:
            columns["b_f"] = h.b_f + by["hinge_backset"]
        return Many(
            hanging=h,
            leaf=self.leaf,
            obstructions=self.obstructions,
            other=self.other,
            columns=columns,
        )

    def _proud(self, setting: Floats, wall: Floats) -> Floats:
        """How far the frame face stands ahead of the wall face where the leaf swings out."""
        if self.to_push:
            return self.hanging.p - setting - (1.0 - self.wall_share) * wall
        return self.hanging.p + setting - self.wall_share * wall

    def refuse_no_door(self, limits: Floats) -> None:
        """Raise ValueError where tolerances as large as these could leave no door at all."""
        by = dict(zip(NAMES, limits, strict=True))
        h = self.hanging
        widest = replace(h, g_h=h.g_h + by["hinge_gap"], g_l=h.g_l + by["latch_gap"])
        refuse_no_door(widest, self.leaf)
        if by["door_thickness"] >= h.T:
            raise ValueError(
                f"A thickness tolerance of {format_size(by['door_thickness'])} in leaves nothing of a door "
                f"{format_size(h.T)} in thick."
            )


@dataclass(frozen=True, slots=True, eq=False)
class Answers:
    """One number or flag a leaf: bare greatest angle, clear width at 90 (nan: not reached), the two gaps.

    singly is how many leaves had to be solved one by one, which costs a hundred times as much.
    """

    angle: Floats
    clear_width: Floats
    latch_edge: Floats
    barrel_freedom: Floats
    holds: Mapping[str, Flags]
    singly: int

    @property
    def works(self) -> Flags:
        """Where every check holds."""
        return np.asarray(np.logical_and.reduce([self.holds[check] for check in CHECKS]))

    def fails(self, row: int) -> tuple[str, ...]:
        """The checks that do not hold for one leaf."""
        return tuple(check for check in CHECKS if not self.holds[check][row])


def answers(varied: Varied, off: Floats) -> Answers:
    """The decisive answers of leaves with each thing off by a row of `off`.

    Raises ValueError as `solve_many` does.
    """
    many = varied.many(off)
    solved = solve_many(many)
    latch = latch_edges_of(many)
    clear = solved.clear_width_at_90 if varied.square else np.full(many.count, np.nan)
    holds = {
        SWING: solved.greatest_angle_bare >= math.radians(varied.wanted) - _ANGLE_TOLERANCE,
        LOCK_EDGE: latch > 0.0 if varied.passes_at_latch else np.ones(many.count, dtype=np.bool_),
        BARREL: (solved.barrel_freedom >= -TOLERANCE) | (not varied.has_barrel),
        CLEAR_WIDTH: _kept(varied, clear),
        MOUNTING: mounted(many),
    }
    return Answers(solved.greatest_angle_bare, clear, latch, solved.barrel_freedom, holds, solved.looked_at)


def _kept(varied: Varied, clear: Floats) -> Flags:
    if varied.clear_width is None:
        return np.ones(len(clear), dtype=np.bool_)
    return np.asarray(clear >= varied.clear_width - TOLERANCE)
