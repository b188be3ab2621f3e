"""Everything the plan says about one leaf on one hinge width: the one call the rest of the program needs.

A single leaf, a leaf of a pair and each half of a Dutch door are the same: heights come with the leaf, and
what stands at its latch edge is the jamb or the closed other leaf. Radians and inches.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from configurator.geometry.clear_width import hardware_taken, latch_limit, leaf_clear_width
from configurator.geometry.edges import hinge_edge_passage, latch_edge_passage
from configurator.geometry.encroachment import encroachment, greatest_encroachment
from configurator.geometry.gaps import LeastGap, polar_least_gap
from configurator.geometry.pin import (
    Hanging,
    Pin,
    barrel_freedom,
    barrel_past_frame,
    barrel_past_wall,
    clear_past_frame_at_180,
    locate_pin,
)
from configurator.geometry.polar import PolarShape, separation
from configurator.geometry.shapes import (
    Hardware,
    Leaf,
    Obstruction,
    OtherLeaf,
    Shape,
    barrel_shapes,
    hardware_shape,
    leaf_shape,
    may_meet,
    refuse_no_door,
    standing_shapes,
)
from configurator.geometry.swing import Contact, contacts_bare_and_with_hardware

SQUARE: Final = math.pi / 2


@dataclass(frozen=True, slots=True)
class Scene:
    """One leaf's parts seen from its pin: leaf and barrels, hardware, and what stands about them."""

    hanging: Hanging
    pin: Pin
    bare: tuple[PolarShape, ...]
    hardware: tuple[PolarShape, ...]
    standing: tuple[PolarShape, ...]
    other: OtherLeaf | None = None

    @property
    def leaf(self) -> PolarShape:
        """The leaf alone."""
        return self.bare[0]

    @property
    def obstructions(self) -> tuple[PolarShape, ...]:
        """What stands about the door besides frame, walls and the other leaf with what it carries."""
        return tuple(
            part for part in self.standing if part.shape.index is not None and part.shape.kind != "other leaf"
        )

    @property
    def on_other_leaf(self) -> tuple[PolarShape, ...]:
        """What the closed other leaf carries."""
        return tuple(
            part for part in self.standing if part.shape.index is not None and part.shape.kind == "other leaf"
        )

    @property
    def limit(self) -> float:
        """Where the clear width ends across, in."""
        return latch_limit(self.hanging, self.pin, self.other)


@dataclass(frozen=True)
class Solution:
    """The answers for one leaf on one hinge width, each worked out when it is first asked for.

    scene holds the parts; stop_angle, radians, is where a door stop holds the door, None where none does.
    Lengths in inches, angles in radians; an angle that reaches 180 degrees is exactly math.pi.
    """

    scene: Scene
    stop_angle: float | None = None

    @property
    def hanging(self) -> Hanging:
        """The lengths of the hung leaf, in."""
        return self.scene.hanging

    @property
    def pin(self) -> Pin:
        """Where the pin stands, in."""
        return self.scene.pin

    # --- How far it turns ---

    @cached_property
    def _contacts(self) -> tuple[Contact | None, Contact | None]:
        plan = self.scene
        return contacts_bare_and_with_hardware(plan.bare, plan.hardware, plan.standing, plan.pin.at)

    @property
    def swing_is_known(self) -> bool:
        """Whether anybody asked yet how far it turns."""
        return "_contacts" in vars(self)

    @property
    def bare(self) -> Contact | None:
        """The first contact of leaf and barrels alone; None where they open to 180 degrees."""
        return self._contacts[0]

    @property
    def with_hardware(self) -> Contact | None:
        """The first contact of anything that turns; None where the leaf opens to 180 degrees."""
        return self._contacts[1]

    @property
    def greatest_angle_bare(self) -> float:
        """How far leaf and barrels turn."""
        return math.pi if self.bare is None else self.bare.angle

    @property
    def greatest_angle(self) -> float:
        """How far the leaf turns with its hardware."""
        return math.pi if self.with_hardware is None else self.with_hardware.angle

    @property
    def rest_angle_bare(self) -> float:
        """Where a leaf without hardware comes to rest: at its stop, or as far as it goes."""
        return self._held(self.greatest_angle_bare)

    @property
    def rest_angle(self) -> float:
        """Where the leaf with its hardware comes to rest."""
        return self._held(self.greatest_angle)

    def _held(self, greatest: float) -> float:
        return greatest if self.stop_angle is None else min(self.stop_angle, greatest)

    # --- The hinge ---

    @property
    def barrel_past_frame(self) -> float:
        """How far the barrel stands past the frame face, in."""
        return barrel_past_frame(self.hanging, self.pin)

    @property
    def barrel_past_wall(self) -> float:
        """How far the barrel stands past the wall face, in."""
        return barrel_past_wall(self.hanging, self.pin)

    @property
    def clear_past_frame_at_180(self) -> float:
        """How far the leaf open flat stands off the frame face, in; whether or not it gets there."""
        return clear_past_frame_at_180(self.hanging, self.pin)

    @property
    def barrel_freedom(self) -> float:
        """How far the barrel stands clear of door and frame faces, in; negative where it overlaps."""
        return barrel_freedom(self.hanging, self.pin)

    @cached_property
    def barrel_free_by(self) -> float:
        """How far the nearest barrel stands clear of door, frame and obstructions, in; negative in them."""
        return barrel_free_by(self.scene)

    # --- The way through ---

    @property
    def _comes_square(self) -> bool:
        return self.rest_angle >= SQUARE

    @cached_property
    def clear_width_at_90(self) -> float | None:
        """The clear width with the leaf square open, in; None where it does not come to 90 degrees."""
        return self._clear_width(SQUARE) if self._comes_square else None

    @cached_property
    def clear_width_at_greatest(self) -> float:
        """The clear width with the leaf open as far as it goes, in."""
        return self._clear_width(self.greatest_angle)

    @cached_property
    def hardware_in_clear_width(self) -> float | None:
        """What hardware takes from the clear width at 90 degrees, in; None where it does not come there."""
        plan = self.scene
        if not self._comes_square:
            return None
        hardware = [part.shape for part in plan.hardware]
        return hardware_taken(plan.leaf.shape, hardware, plan.hanging, plan.pin, SQUARE, plan.limit)

    def _clear_width(self, angle: float) -> float:
        plan = self.scene
        return leaf_clear_width(plan.leaf.shape, plan.hanging, plan.pin, angle, plan.limit)

    # --- What it passes, and how far it stands out ---

    @cached_property
    def latch_edge(self) -> tuple[float, float]:
        """The nearest passage of the latch edge over the whole swing, in, and its angle; 0 where it binds."""
        return latch_edge_passage(self.hanging, self.pin, self.scene.other, self.greatest_angle_bare)

    @property
    def latch_edge_least(self) -> float:
        """The least gap at the latch edge, in."""
        return self.latch_edge[0]

    @cached_property
    def hinge_edge(self) -> tuple[float, float]:
        """The nearest passage of the hinge edge over what the bare leaf swings through, in, and its angle."""
        leaf = self.scene.leaf.shape
        casings = (part for part in self.scene.standing if part.shape.on_frame)
        met = (part for part in casings if may_meet(leaf, part.shape))
        return hinge_edge_passage(self.hanging, self.pin, met, self.greatest_angle_bare)

    @property
    def hinge_edge_least(self) -> float:
        """The least gap at the hinge edge, in."""
        return self.hinge_edge[0]

    @cached_property
    def gap(self) -> LeastGap | None:
        """The nearest passage of leaf and barrels to the obstructions, as far as they come to rest.

        None where nothing stands at any of their heights; `least_gaps` counts walls and hardware too.
        """
        plan = self.scene
        if not plan.obstructions:
            return None
        return polar_least_gap(plan.bare, plan.obstructions, plan.pin.at, self.rest_angle_bare)

    @cached_property
    def encroachment_greatest(self) -> float:
        """The most that the leaf alone stands out from the wall face on the pull side, in."""
        return greatest_encroachment((self.scene.leaf,), self.hanging, self.pin, self.rest_angle_bare)

    @cached_property
    def encroachment_at_rest(self) -> float:
        """How far a leaf that carries nothing stands out where it rests, in."""
        return encroachment((self.scene.leaf,), self.hanging, self.pin, self.rest_angle_bare)

    @cached_property
    def encroachment_with_hardware_greatest(self) -> float:
        """The most that leaf and hardware stand out from the wall face, in."""
        return greatest_encroachment(self._fitted, self.hanging, self.pin, self.rest_angle)

    @cached_property
    def encroachment_with_hardware_at_rest(self) -> float:
        """How far leaf and hardware stand out where the leaf rests, in."""
        return encroachment(self._fitted, self.hanging, self.pin, self.rest_angle)

    @cached_property
    def leaf_out_at_rest(self) -> float:
        """How far the leaf alone stands out where it rests with its hardware, in."""
        return encroachment((self.scene.leaf,), self.hanging, self.pin, self.rest_angle)

    @property
    def _fitted(self) -> tuple[PolarShape, ...]:
        return (self.scene.leaf, *self.scene.hardware)


def scene(
    hanging: Hanging,
    leaf: Leaf,
    hardware: Sequence[Hardware] = (),
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
) -> Scene:
    """Lay out one leaf and all that stands about it, as seen from its pin.

    Raises ValueError as `refuse_no_door`, `locate_pin` and `standing_shapes` do.
    """
    refuse_no_door(hanging, leaf)
    return seen(hanging, leaf, laid_out(hanging, leaf, hardware, obstructions, other), other)


@dataclass(frozen=True, slots=True)
class LaidOut:
    """The shapes of a leaf and of what is about it that are the same wherever its pin stands."""

    leaf: Shape
    hardware: tuple[Shape, ...]
    standing: tuple[Shape, ...]


def laid_out(
    hanging: Hanging,
    leaf: Leaf,
    hardware: Sequence[Hardware],
    obstructions: Sequence[Obstruction],
    other: OtherLeaf | None,
) -> LaidOut:
    """Lay out what no width, barrel or mounting of a hinge changes; ValueError as in `standing_shapes`."""
    return LaidOut(
        leaf_shape(hanging, leaf),
        tuple([hardware_shape(hanging, item, index) for index, item in enumerate(hardware)]),
        standing_shapes(hanging, leaf, obstructions, other),
    )


def seen(hanging: Hanging, leaf: Leaf, laid: LaidOut, other: OtherLeaf | None) -> Scene:
    """See what was laid out from the pin. Raises ValueError as `refuse_no_door` and `locate_pin` do."""
    refuse_no_door(hanging, leaf)
    pin = locate_pin(hanging)
    at = pin.at
    bare = tuple([PolarShape(at, shape) for shape in (laid.leaf, *barrel_shapes(hanging, pin, leaf))])
    fitted = tuple([PolarShape(at, shape) for shape in laid.hardware])
    reach = max([part.far for part in (*bare, *fitted)])
    standing = [PolarShape(at, shape) for shape in laid.standing]
    # Every obstruction counts, and of frame and wall what the leaf can come to.
    still = tuple([part for part in standing if part.shape.index is not None or part.near <= reach])
    return Scene(hanging, pin, bare, fitted, still, other)


def barrel_free_by(plan: Scene) -> float:
    """How far the nearest barrel stands clear of door, frame and obstructions, in; negative in them."""
    free, barrels = barrel_freedom(plan.hanging, plan.pin), plan.bare[1:]
    for part in plan.obstructions:
        # Barrels differ in their heights only, and nothing is nearer to them than its ring about the pin.
        if part.near - plan.bare[-1].far < free and any(may_meet(one.shape, part.shape) for one in barrels):
            free = min(free, separation(barrels[0], part, 0.0))
    return free


def solve(
    hanging: Hanging,
    leaf: Leaf,
    hardware: Sequence[Hardware] = (),
    obstructions: Sequence[Obstruction] = (),
    other: OtherLeaf | None = None,
    stop_angle: float | None = None,
) -> Solution:
    """Work out everything for one leaf on one hinge width, bare and with its hardware.

    Inches and radians; stop_angle is where a stop holds the door. Raises ValueError for a mounting that is
    not known, a return wall in front of the frame, and numbers that leave no door.
    """
    return Solution(scene(hanging, leaf, hardware, obstructions, other), stop_angle)
