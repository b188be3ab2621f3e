"""From a study's answer to the leaf as it is drawn."""

import math
from dataclasses import replace

from configurator.drawing.comparison import stopped_words
from configurator.drawing.hung import Hung, Standing, StopDrawn
from configurator.drawing.touching import touching_parts
from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import hardware_shape, obstruction_shapes, other_leaf_shapes
from configurator.model import Obstruction as ObstructionRecord
from configurator.rules.door_stop import StopPlace
from configurator.rules.leaf_hinge import leaf_hinges
from configurator.rules.usual import FilledOpening
from configurator.rules.wording import obstruction
from configurator.study.events import gap_on_the_way, latch_passage
from configurator.study.hang import HungLeaf, hung_leaves
from configurator.study.records import Candidate, Study
from configurator.units import Display

_TURNS_CLOCKWISE = frozenset({"RH", "LHR"})


def hungs_of(study: Study, display: Display) -> tuple[Hung, ...]:
    """Return every candidate's leaf with all that its picture needs, in the order of the candidates."""
    leaves = _leaves(study.filled)
    return tuple(_hung(study.filled, one, leaves[one.leaf], display) for one in study.candidates)


def _hung(filled: FilledOpening, candidate: Candidate, leaf: HungLeaf, display: Display) -> Hung:
    solution = candidate.solution
    h = solution.hanging
    hung = Hung(
        h=h,
        pin=solution.pin,
        opening=filled.opening_width,
        frame_kind=filled.opening.frame.kind,
        construction=filled.opening.door.construction or "",
        return_depth=filled.return_depth,
        stop_width=filled.stop_width,
        metal_thickness=filled.metal_thickness,
        layers=filled.layers or (("wall", filled.wall_thickness),),
        standing=_standing(filled, leaf, h, display),
        hardware=tuple(hardware_shape(h, item, index) for index, item in enumerate(leaf.hardware)),
        other_leaf=other_leaf_shapes(h, leaf.other, leaf.leaf),
        reach=solution.greatest_angle,
        stopped_by=stopped_words(candidate.stopped_by) if candidate.stopped_by else "",
        contact=candidate.contact_point if candidate.stopped_by else None,
        touching=touching_parts(solution),
        reach_bare=solution.greatest_angle_bare,
        contact_bare=candidate.contact_point_bare,
        least=gap_on_the_way(solution, solution.greatest_angle),
        latch=latch_passage(solution),
        mirrored=turns_clockwise(filled, candidate.leaf),
        open_other=None if leaf.other is None or leaf.other.closed else leaf.other.w,
    )
    if candidate.door_stop is None:
        return hung
    held = _against_its_stop(hung, candidate.door_stop)
    return replace(held, least=gap_on_the_way(solution, held.reach))


def _against_its_stop(hung: Hung, place: StopPlace) -> Hung:
    """Return the leaf with its door stop, and going no farther than that where it holds."""
    tip = (-hung.h.F - place.from_frame, place.projection - hung.h.p)
    drawn = StopDrawn(place.kind, tip, place.from_frame, place.holds)
    if not place.holds or place.rests_at is None:
        return replace(hung, door_stop=drawn)
    return replace(
        hung,
        door_stop=drawn,
        reach=math.radians(place.rests_at),
        stopped_by=f"{place.meets} on the {place.kind}",
        contact=tip,
        touching=None,
    )


def _leaves(filled: FilledOpening) -> dict[str, HungLeaf]:
    """Return the leaves by name. A job's standard hinge moves barrels up and down, which no plan shows."""
    return {leaf.hinge.leaf.name: leaf for leaf in hung_leaves(filled, leaf_hinges(filled))}


def turns_clockwise(filled: FilledOpening, leaf: str) -> bool:
    """Whether the leaf turns clockwise seen from above, pull side up: RH and LHR do, LH and RHR do not.

    The inactive leaf of a pair turns against the active one.
    """
    return (filled.opening.hand in _TURNS_CLOCKWISE) != (leaf == "inactive")


def _standing(
    filled: FilledOpening, leaf: HungLeaf, hanging: Hanging, display: Display
) -> tuple[Standing, ...]:
    heights = (leaf.leaf.bottom, leaf.leaf.top)
    return tuple(
        Standing(
            obstruction_shapes(hanging, plain, index, filled.opening_width),
            thing.kind,
            thing_label(thing, display),
            _is_met(thing, heights),
        )
        for index, (thing, plain) in enumerate(
            zip(filled.opening.obstructions, leaf.obstructions, strict=True)
        )
    )


def _is_met(thing: ObstructionRecord, heights: tuple[float, float]) -> bool:
    bottom, top = heights
    return (thing.bottom or 0.0) < top and (thing.top is None or thing.top > bottom)


def thing_label(thing: ObstructionRecord, display: Display) -> str:
    """Return what to call a thing, with its heights above the floor where it has any."""
    name = obstruction(thing.kind)
    if thing.top is None and not thing.bottom:
        return name
    if thing.top is None:
        return f"{name}, from {display.length(thing.bottom or 0.0)} above floor"
    if not thing.bottom:
        return f"{name}, to {display.length(thing.top)} above floor"
    low = display.length(thing.bottom)
    high = display.length(thing.top)
    return f"{name}, {low.rsplit(' ', 1)[0]} to {high} above floor"


def degrees(radians: float) -> float:
    """Return an angle in degrees, exact at the half turn."""
    return 180.0 if radians == math.pi else math.degrees(radians)
