"""What tolerances do to one leaf on one hinge width, as plain values.

Inches and degrees. A leaf works when, bare, it opens as far as is wanted, its lock edge does not bind, its
barrel is free, its hinge can be mounted, and it keeps the clear width asked on an accessible route.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from configurator.rules.filling.tolerances import FilledTolerances
from configurator.study.hang import HangsOn

SWING, LOCK_EDGE, BARREL, CLEAR_WIDTH, MOUNTING = "swing", "lock edge", "barrel", "clear width", "mounting"
CHECKS = (MOUNTING, BARREL, LOCK_EDGE, SWING, CLEAR_WIDTH)
"""What has to hold for a leaf to work; a cause before what follows from it, as a lock edge that binds."""

NAMES: Mapping[str, str] = {
    "frame_setting": "frame setting",
    "wall_thickness": "wall thickness",
    "hinge_gap": "hinge-side gap",
    "latch_gap": "latch-side gap",
    "door_thickness": "door thickness",
    "hinge_backset": "hinge backset",
    "hinge_width": "hinge width",
    "axis_off_face": "axis off the face",
    "axis_from_heel": "axis from the heel edge",
}
"""Everything that may be off, in the trade's words; the axis is that of what is no butt."""


MENDS = ("frame_setting", "hinge_width", "axis_off_face")
"""What of it stands the door farther from its wall."""


@dataclass(frozen=True, slots=True)
class Reach:
    """The decisive answers with something off: degrees, inches; `fails` names the checks that do not hold."""

    greatest_angle: float
    clear_width_at_90: float | None
    latch_edge_least: float
    barrel_freedom: float
    fails: tuple[str, ...]

    def as_data(self) -> dict[str, Any]:
        """Return the answers by their names in the results."""
        return {
            "greatest_angle_bare": self.greatest_angle,
            "clear_width_at_90": self.clear_width_at_90,
            "latch_edge_least": self.latch_edge_least,
            "barrel_freedom": self.barrel_freedom,
            "fails": list(self.fails),
        }


@dataclass(frozen=True, slots=True)
class End:
    """One thing off to one side by itself.

    `at` is the answers with it off by its whole tolerance. `turns_at` is how far off it may be, inches,
    before the leaf stops working, or, where it does not work as drawn, from where on it would; None where
    nothing changes as far as was looked. `fails_by` is the check that ends it.
    """

    at: Reach
    turns_at: float | None
    fails_by: str | None


@dataclass(frozen=True, slots=True)
class Effect:
    """What one thing being off does by itself, to the minus and to the plus side of its tolerance, inches."""

    name: str
    tolerance: float
    minus: End
    plus: End

    @property
    def ends(self) -> tuple[tuple[bool, End], tuple[bool, End]]:
        """Both sides, each with whether it is the plus side."""
        return ((False, self.minus), (True, self.plus))

    @property
    def nearer(self) -> tuple[bool, End]:
        """The side on which less is needed to turn the answer."""
        return min(self.ends, key=lambda side: math.inf if side[1].turns_at is None else side[1].turns_at)

    def as_data(self) -> dict[str, Any]:
        """Return the effect by the names in the results."""
        data: dict[str, Any] = {"name": self.name, "tolerance": self.tolerance}
        for side, end in (("minus", self.minus), ("plus", self.plus)):
            data[side] = {**end.at.as_data(), "turns_at": end.turns_at, "fails_by": end.fails_by}
        return data


@dataclass(frozen=True, slots=True)
class ToleranceResult:
    """What tolerances do to one leaf on one hinge width; inches and degrees.

    `margins` are what each check has to spare as drawn (below 0: what it lacks), None where the geometry
    sets no bound near; `margin` is that of `margin_of`, the check that gives way first. `worst` are the worst
    answers found with everything off at once. `worked` of `draws` draws worked.
    """

    leaf: str
    on: HangsOn
    wanted_angle: float
    required_clear_width: float | None
    as_drawn: Reach
    worst: Reach
    margins: Mapping[str, float | None]
    margin_of: str
    effects: tuple[Effect, ...]
    matters_most: str | None
    worked: int
    draws: int
    seed: int
    tolerances: FilledTolerances
    width_moves_pin: bool = True
    """Whether a wider hinge stands its pin farther out: not where a leaf of it lies on a face."""

    @property
    def works(self) -> bool:
        """Whether it works as drawn."""
        return not self.as_drawn.fails

    @property
    def works_worst_case(self) -> bool:
        """Whether it still works with everything off at once at its worst."""
        return not self.worst.fails

    @property
    def margin(self) -> float | None:
        """What there is to spare at the check that gives way first, inches."""
        return self.margins[self.margin_of]

    @property
    def chance(self) -> float:
        """The share of the draws that worked."""
        return self.worked / self.draws

    def effect(self, name: str) -> Effect:
        """Return what one thing does. Raises KeyError when there is none of that name."""
        return {effect.name: effect for effect in self.effects}[name]

    def as_data(self) -> dict[str, Any]:
        """Return it by the names in the results."""
        return {
            "works": self.works,
            "works_worst_case": self.works_worst_case,
            "margin": self.margin,
            "margin_of": self.margin_of,
            "margins": dict(self.margins),
            "matters_most": self.matters_most,
            "chance": self.chance,
            "draws": self.draws,
            "seed": self.seed,
            "worst_case": self.worst.as_data(),
            "tolerances": dict(self.tolerances.values),
            "effects": [effect.as_data() for effect in self.effects],
        }
