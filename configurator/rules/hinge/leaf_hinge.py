"""What somebody asked for: by hand for this opening, or by the job's standard hinge."""

from dataclasses import dataclass

from configurator.model import ExistingHinge, Hinge
from configurator.rules.filling.door_weight import DoorWeight, door_weight, made_of
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
    too_high,
    weight_of_gage,
)
from configurator.rules.hinge.weight import Duty, hinge_bearing, hinge_weight
from configurator.tables import limit, practice, words_of
from configurator.units import TOLERANCE

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


def old_hinge(filled: FilledOpening) -> ExistingHinge:
    """Return what hangs there now and is taken again unless it fails; nothing of it on a labelled door.

    There its listing decides, and nothing is advised.
    """
    known = None if filled.use.fire_rated else filled.opening.existing_hinge
    return known or _NOTHING_THERE


_NOTHING_THERE = ExistingHinge()


def reused(by_hand: object, standard: object, old: object, program: Reason, words: str) -> Reason:
    """Return one part as `override` does, but what hangs there now outranks the job's standard.

    `old` is None where it was not measured or does not serve; `words` say what is there.
    """
    if by_hand is not None or old is None:
        return override(by_hand, standard, program)
    because = f"{words}: {words_of('reuse')}"
    if old == program.value:
        return reason(old, f"{because}; the program takes the same: {program.because}", practice("reuse"))
    other = Alternative(program.value, WOULD_TAKE + program.because)
    return reason(old, because, practice("reuse"), other)


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
    mounting: Reason
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
    by_hand, old = filled.opening.hinge or NOTHING_ASKED, old_hinge(filled)
    needed, pounds = hinge_height(filled.thickness, leaf.width), _pounds(filled, leaf)
    standard = standard_for(standard, needed, filled.thickness)
    height = _height(filled, needed, pounds, standard)
    duty = _duty(filled, leaf, pounds)
    needed_weight = hinge_weight(duty, height.value)
    gage = old.leaf_thickness
    old_weight = None if gage is None else weight_of_gage(height.value, gage)
    cut = "the mortises are cut for leaves of that gage"
    weight = reused(by_hand.weight, standard.weight, old_weight, needed_weight, cut)
    needed_count = hinge_count(leaf.height)
    usual = reason("full mortise", words_of("mounting"), practice("mounting"))
    fixed = reused(by_hand.mounting, standard.mounting, old.mounting, usual, "so the old hinge is fixed")
    return LeafHinge(
        leaf=leaf,
        mounting=fixed,
        needed_height=needed,
        height=height,
        needed_count=needed_count,
        count=_count(filled, leaf, needed_count, standard),
        needed_weight=needed_weight,
        weight=weight,
        bearing=override(by_hand.bearing, standard.bearing, hinge_bearing(duty, weight.value)),
        leaf_thickness=override(
            by_hand.leaf_thickness, standard.leaf_thickness, leaf_thickness(height.value, weight.value)
        ),
        barrel=override(by_hand.barrel, standard.barrel, barrel_diameter(height.value, weight.value)),
        door_weight=pounds,
    )


def _height(filled: FilledOpening, needed: Reason, pounds: DoorWeight | None, standard: Hinge) -> Reason:
    """Return the hinge height; that of the old hinge where it is enough, or as good as enough."""
    old, opening = old_hinge(filled).height, filled.opening
    by_hand = (opening.hinge or NOTHING_ASKED).height
    prepared = prepared_height(needed, opening.prepared_height)
    serves = old is not None and _serves(old, needed.value, filled, pounds)
    return reused(by_hand, standard.height, old if serves else None, prepared, "the mortises are that long")


def _serves(old: float, needed: float, filled: FilledOpening, pounds: DoorWeight | None) -> bool:
    """Return whether a hinge as high as the old one does, though the door may take a higher one."""
    if old >= needed - TOLERANCE:
        return True
    heavy = pounds is None or pounds.high >= limit("heavy_door").value - TOLERANCE
    near = needed - old <= limit("prepared_step").value + TOLERANCE
    return near and not heavy and filled.use.traffic != "high"


def _count(filled: FilledOpening, leaf: LeafSize, count: Reason, standard: Hinge) -> Reason:
    """Return how many hinges a leaf takes, `count` by its height; as many as hang there where more do."""
    old = old_hinge(filled).count
    more = old if old is not None and old > count.value else None
    # A count by hand is for the whole opening; of two leaves it says nothing about either.
    by_hand = (filled.opening.hinge or NOTHING_ASKED).count if leaf.name == "single" else None
    of_job = standard.count if leaf.name == "single" else None
    return reused(by_hand, of_job, more, count, "so many hang there")


def standard_serves(standard: Hinge, needed: Reason, thickness: float) -> bool:
    """Return whether the job's standard hinge goes on a leaf that needs that height.

    It must be high enough, and on a thin door not too high; `thickness` is the door's, inches.
    """
    height = standard.height
    return height is None or (height >= needed.value and not too_high(thickness, height))


def standard_for(standard: Hinge, needed: Reason, thickness: float) -> Hinge:
    """Return what of the job's standard hinge holds for a leaf that needs that height.

    Of one that does not serve neither size nor weight hold; that is said as a finding.
    """
    serves = standard_serves(standard, needed, thickness)
    return standard if serves else standard.model_copy(update=_OF_A_SIZE)


_OF_A_SIZE = dict.fromkeys(("height", "weight", "leaf_thickness", "barrel", "type"))


def _pounds(filled: FilledOpening, leaf: LeafSize) -> DoorWeight | None:
    made = made_of(filled.opening, filled.thickness, leaf.name)
    return door_weight(made, leaf.width, leaf.height, filled.opening.door.weight)


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
