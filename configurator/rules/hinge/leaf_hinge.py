"""What somebody asked for: by hand for this opening, or by the job's standard hinge."""

from dataclasses import dataclass

from configurator.model import Hinge
from configurator.rules.filling.door_weight import DoorWeight, Made, door_weight
from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Alternative, Reason, reason
from configurator.rules.hinge.fire import fire_row
from configurator.rules.hinge.prepared import prepared_height
from configurator.rules.hinge.sizes import (
    barrel_diameter,
    height_row,
    hinge_count,
    hinge_height,
    leaf_thickness,
)
from configurator.rules.hinge.weight import Duty, hinge_bearing, hinge_weight
from configurator.tables import practice

NOTHING_ASKED = Hinge()


def override(by_hand: object, standard: object, program: Reason) -> Reason:
    """Return the value for one part of the hinge: by hand, else the job's standard, else the program's own.

    None: not given. What the program would have taken stays as an alternative, so that resetting shows what
    comes back.
    """
    if by_hand is not None:
        return _instead(by_hand, "chosen by hand", "override", program)
    if standard is not None:
        return _instead(standard, "the job's standard hinge, which outranks", "job_standard", program)
    return program


WOULD_TAKE = "what the program would take: "


def _instead(value: object, words: str, key: str, program: Reason) -> Reason:
    if value == program.value:
        return reason(value, f"{words}; the program takes the same: {program.because}", practice(key))
    other = Alternative(program.value, WOULD_TAKE + program.because)
    return reason(value, words, practice(key), other, *program.alternatives)


@dataclass(frozen=True, slots=True)
class LeafHinge:
    """The hinges of one leaf so far, each part with its reason; inches."""

    leaf: LeafSize
    needed_height: Reason
    height: Reason
    needed_count: Reason
    count: Reason
    needed_weight: Reason
    weight: Reason
    bearing: Reason
    leaf_thickness: Reason
    barrel: Reason
    door_weight: DoorWeight | None


def leaf_hinges(filled: FilledOpening, standard: Hinge | None = None) -> tuple[LeafHinge, ...]:
    """Return the hinges of each leaf before a width is chosen; `standard` is the job's standard hinge."""
    given = standard or NOTHING_ASKED
    return tuple(leaf_hinge(filled, leaf, given) for leaf in leaves_of(filled))


def leaf_hinge(filled: FilledOpening, leaf: LeafSize, standard: Hinge) -> LeafHinge:
    """Return one leaf's hinges before a width is chosen."""
    by_hand = filled.opening.hinge or NOTHING_ASKED
    needed = hinge_height(filled.thickness, leaf.width)
    standard = standard_for(standard, needed)
    height = override(
        by_hand.height, standard.height, prepared_height(needed, filled.opening.prepared_height)
    )
    pounds = _pounds(filled, leaf)
    duty = _duty(filled, leaf, pounds)
    needed_weight = hinge_weight(duty, height.value)
    weight = override(by_hand.weight, standard.weight, needed_weight)
    count = hinge_count(leaf.height)
    return LeafHinge(
        leaf=leaf,
        needed_height=needed,
        height=height,
        needed_count=count,
        # A count by hand is for the whole opening; of two leaves it says nothing about either.
        count=override(by_hand.count, standard.count, count) if leaf.name == "single" else count,
        needed_weight=needed_weight,
        weight=weight,
        bearing=override(by_hand.bearing, standard.bearing, hinge_bearing(duty, weight.value)),
        leaf_thickness=override(
            by_hand.leaf_thickness, standard.leaf_thickness, leaf_thickness(height.value, weight.value)
        ),
        barrel=override(by_hand.barrel, standard.barrel, barrel_diameter(height.value, weight.value)),
        door_weight=pounds,
    )


def standard_serves(standard: Hinge, needed: Reason) -> bool:
    """Return whether the job's standard hinge is high enough for a leaf that needs that height."""
    return standard.height is None or standard.height >= needed.value


def standard_for(standard: Hinge, needed: Reason) -> Hinge:
    """Return what of the job's standard hinge holds for a leaf that needs that height.

    Of one too low for it neither size nor weight hold; that is said as a finding.
    """
    return standard if standard_serves(standard, needed) else standard.model_copy(update=_OF_A_SIZE)


_OF_A_SIZE = dict.fromkeys(("height", "weight", "leaf_thickness", "barrel", "type"))


def _pounds(filled: FilledOpening, leaf: LeafSize) -> DoorWeight | None:
    door = filled.opening.door
    made = Made(door.construction, filled.thickness, door.lead_thickness)
    return door_weight(made, leaf.width, leaf.height, door.weight)


def _duty(filled: FilledOpening, leaf: LeafSize, pounds: DoorWeight | None) -> Duty:
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
