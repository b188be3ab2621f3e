"""Everything the plan says about one leaf on one hinge width: the one call the rest of the program needs.

A single leaf, a leaf of a pair and each half of a Dutch door are the same: heights come with the leaf, and
what stands at its latch edge is the jamb or the closed other leaf. Radians and inches.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from configurator.geometry.clear_width import hardware_taken, latch_limit, leaf_clear_width
from configurator.geometry.edges import hinge_edge_least, latch_edge_least
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
from configurator.geometry.polar import PolarShape, seen_from, separation
from configurator.geometry.shapes import (
    Hardware,
    Leaf,
    Obstruction,
    OtherLeaf,
    Shape,
    hardware_shape,
    may_meet,
    moving_shapes,
    refuse_no_door,
    standing_shapes,
)
from configurator.geometry.swing import Contact, contacts_bare_and_with_hardware


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """The answers for one leaf on one hinge width; lengths in inches, angles in radians.

    bare is the first contact of leaf and barrels alone, with_hardware that of anything; None where the leaf
    opens to 180 degrees, whose angle is then exactly math.pi. rest_angle and rest_angle_bare are the stop
    angle where one is given and reached, else the greatest angle. clear_width_at_90 is None where the door
    does not come to 90 degrees; clear_width_at_greatest is at greatest_angle. hardware_in_clear_width is at
    90 degrees, None likewise. barrel_freedom counts door and frame faces, barrel_free_by also what stands
    about the door. gap is the bare side's nearest passage to the obstructions up to rest_angle_bare, None
    where nothing stands at any of its heights; `least_gaps` has it with the walls and with the hardware.
    scene holds the parts, for drawing.
    """

    hanging: Hanging
    pin: Pin
    scene: Scene
    barrel_past_frame: float
    barrel_past_wall: float
    barrel_freedom: float
    barrel_free_by: float
    clear_past_frame_at_180: float
    bare: Contact | None
    with_hardware: Contact | None
    greatest_angle_bare: float
    greatest_angle: float
    rest_angle_bare: float
    rest_angle: float
    clear_width_at_90: float | None
    clear_width_at_greatest: float
    hardware_in_clear_width: float | None
    latch_edge_least: float
    hinge_edge_least: float
    encroachment_greatest: float
    encroachment_at_rest: float
    encroachment_with_hardware_greatest: float
    encroachment_with_hardware_at_rest: float
    gap: LeastGap | None


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
    pin = locate_pin(hanging)
    bare = tuple(seen_from(pin.at, shape) for shape in moving_shapes(hanging, pin, leaf))
    fitted = tuple(
        seen_from(pin.at, hardware_shape(hanging, item, index)) for index, item in enumerate(hardware)
    )
    reach = max([part.far for part in (*bare, *fitted)])
    standing = standing_shapes(hanging, leaf, obstructions, other)
    still = tuple(seen_from(pin.at, shape) for shape in standing if _counts(shape, pin, reach))
    return Scene(hanging, pin, bare, fitted, still, other)


def _counts(shape: Shape, pin: Pin, reach: float) -> bool:
    """Whether a standing part matters: every obstruction, and of frame and wall what the leaf can come to."""
    if shape.index is not None:
        return True
    xs, ys = [x for x, _ in shape.points], [y for _, y in shape.points]
    across = max(min(xs) - pin.x_p, 0.0, pin.x_p - max(xs))
    out = max(min(ys) - pin.y_p, 0.0, pin.y_p - max(ys))
    return math.hypot(across, out) <= reach


def _angle(contact: Contact | None) -> float:
    """The greatest angle a contact leaves."""
    return math.pi if contact is None else contact.angle


def _rest(greatest: float, stop_angle: float | None) -> float:
    """Where the door comes to rest."""
    return greatest if stop_angle is None else min(stop_angle, greatest)


def _clear_widths(plan: Scene, greatest: float, rest: float) -> tuple[float | None, float, float | None]:
    """Clear width at 90 degrees and at the greatest angle, and what hardware takes from it at 90."""
    h, pin, limit, leaf = plan.hanging, plan.pin, plan.limit, plan.leaf.shape
    at_greatest = leaf_clear_width(leaf, h, pin, greatest, limit)
    square = math.pi / 2
    if rest < square:
        return None, at_greatest, None
    at_90 = leaf_clear_width(leaf, h, pin, square, limit)
    hardware = [part.shape for part in plan.hardware]
    return at_90, at_greatest, hardware_taken(leaf, hardware, h, pin, square, limit)


def _hinge_edge(plan: Scene, greatest_bare: float) -> float:
    """The least gap at the hinge edge over what the bare leaf swings through."""
    casings = tuple(
        part for part in plan.standing if part.shape.on_frame and may_meet(plan.leaf.shape, part.shape)
    )
    return hinge_edge_least(plan.hanging, plan.pin, casings, greatest_bare)


def barrel_free_by(plan: Scene) -> float:
    """How far the nearest barrel stands clear of door, frame and obstructions, in; negative in them."""
    gaps = [
        separation(barrel, part, 0.0)
        for barrel in plan.bare[1:]
        for part in plan.obstructions
        if may_meet(barrel.shape, part.shape)
    ]
    return min([barrel_freedom(plan.hanging, plan.pin), *gaps])


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
    return solve_scene(scene(hanging, leaf, hardware, obstructions, other), stop_angle)


def solve_scene(plan: Scene, stop_angle: float | None = None) -> Solution:
    """`solve` for a scene already laid out."""
    h, pin = plan.hanging, plan.pin
    bare, fitted = contacts_bare_and_with_hardware(plan.bare, plan.hardware, plan.standing, pin.at)
    rest_bare, rest = _rest(_angle(bare), stop_angle), _rest(_angle(fitted), stop_angle)
    at_90, at_greatest, taken = _clear_widths(plan, _angle(fitted), rest)
    leaf_alone, all_moving = (plan.leaf,), (plan.leaf, *plan.hardware)
    return Solution(
        hanging=h,
        pin=pin,
        scene=plan,
        barrel_past_frame=barrel_past_frame(h, pin),
        barrel_past_wall=barrel_past_wall(h, pin),
        barrel_freedom=barrel_freedom(h, pin),
        barrel_free_by=barrel_free_by(plan),
        clear_past_frame_at_180=clear_past_frame_at_180(h, pin),
        bare=bare,
        with_hardware=fitted,
        greatest_angle_bare=_angle(bare),
        greatest_angle=_angle(fitted),
        rest_angle_bare=rest_bare,
        rest_angle=rest,
        clear_width_at_90=at_90,
        clear_width_at_greatest=at_greatest,
        hardware_in_clear_width=taken,
        latch_edge_least=latch_edge_least(h, pin, plan.other, _angle(bare)),
        hinge_edge_least=_hinge_edge(plan, _angle(bare)),
        encroachment_greatest=greatest_encroachment(leaf_alone, h, pin, rest_bare),
        encroachment_at_rest=encroachment(leaf_alone, h, pin, rest_bare),
        encroachment_with_hardware_greatest=greatest_encroachment(all_moving, h, pin, rest),
        encroachment_with_hardware_at_rest=encroachment(all_moving, h, pin, rest),
        gap=polar_least_gap(plan.bare, plan.obstructions, pin.at, rest_bare) if plan.obstructions else None,
    )
