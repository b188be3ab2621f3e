"""What can be said of a leaf's hinges before any width is tried: height, count, weight, bearing, gage."""

from dataclasses import dataclass

from configurator.model import Hinge
from configurator.rules.asked import NOTHING_ASKED, override
from configurator.rules.count import hinge_count
from configurator.rules.door_weight import DoorWeight, door_weight
from configurator.rules.finding import Reason
from configurator.rules.fire import fire_row
from configurator.rules.gage import barrel_diameter, leaf_thickness
from configurator.rules.height import height_row, hinge_height
from configurator.rules.leaves import Leaf, leaves_of
from configurator.rules.prepared import prepared_height
from configurator.rules.usual import FilledOpening
from configurator.rules.weight import Duty, hinge_bearing, hinge_weight


@dataclass(frozen=True, slots=True)
class LeafHinge:
    """The hinges of one leaf so far, each part with its reason; inches."""

    leaf: Leaf
    needed_height: Reason
    height: Reason
    needed_count: Reason
    count: Reason
    weight: Reason
    bearing: Reason
    leaf_thickness: Reason
    barrel: Reason
    door_weight: DoorWeight | None


def leaf_hinges(filled: FilledOpening, standard: Hinge | None = None) -> tuple[LeafHinge, ...]:
    """Return the hinges of each leaf before a width is chosen; `standard` is the job's standard hinge."""
    given = standard or NOTHING_ASKED
    return tuple(leaf_hinge(filled, leaf, given) for leaf in leaves_of(filled))


def leaf_hinge(filled: FilledOpening, leaf: Leaf, standard: Hinge) -> LeafHinge:
    """Return one leaf's hinges before a width is chosen."""
    by_hand = filled.opening.hinge or NOTHING_ASKED
    needed = hinge_height(filled.thickness, leaf.width)
    standard = standard_for(standard, needed)
    height = override(
        by_hand.height, standard.height, prepared_height(needed, filled.opening.prepared_height)
    )
    pounds = _pounds(filled, leaf)
    duty = _duty(filled, leaf, pounds)
    weight = override(by_hand.weight, standard.weight, hinge_weight(duty, height.value))
    count = hinge_count(leaf.height)
    return LeafHinge(
        leaf=leaf,
        needed_height=needed,
        height=height,
        needed_count=count,
        # A count by hand is for the whole opening; of two leaves it says nothing about either.
        count=override(by_hand.count, standard.count, count) if leaf.name == "single" else count,
        weight=weight,
        bearing=override(by_hand.bearing, standard.bearing, hinge_bearing(duty, weight.value)),
        leaf_thickness=override(
            by_hand.leaf_thickness, standard.leaf_thickness, leaf_thickness(height.value, weight.value)
        ),
        barrel=override(by_hand.barrel, standard.barrel, barrel_diameter(height.value, weight.value)),
        door_weight=pounds,
    )


def standard_serves(standard: Hinge, needed: Reason) -> bool:
    """Say whether the job's standard hinge is high enough for a leaf that needs that height."""
    return standard.height is None or standard.height >= needed.value


def standard_for(standard: Hinge, needed: Reason) -> Hinge:
    """Return what of the job's standard hinge holds for a leaf that needs that height.

    Of one too low for it neither size nor weight hold; that is said as a finding.
    """
    return standard if standard_serves(standard, needed) else standard.model_copy(update=_OF_A_SIZE)


_OF_A_SIZE = dict.fromkeys(("height", "weight", "leaf_thickness", "barrel", "type"))


def _pounds(filled: FilledOpening, leaf: Leaf) -> DoorWeight | None:
    door = filled.opening.door
    return door_weight(door.construction, filled.thickness, leaf.width, leaf.height, door.weight)


def _duty(filled: FilledOpening, leaf: Leaf, pounds: DoorWeight | None) -> Duty:
    use = filled.use
    row = fire_row(filled.thickness, leaf.width, leaf.height) if use.fire_rated else None
    return Duty(
        width=leaf.width,
        traffic=use.traffic,
        closer=use.closer,
        fire_rated=use.fire_rated,
        row_weight=height_row(filled.thickness, leaf.width).weight,
        door_weight=pounds,
        fire_gage=None if row is None else row.leaf_thickness,
    )
