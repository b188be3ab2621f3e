"""One leaf on one hinge width: from the geometry's solution to a candidate in the words of the results."""

import math

from configurator.geometry.pin import backset_refusal
from configurator.geometry.solve import Solution
from configurator.geometry.swing import Contact
from configurator.rules.door_stop import StopPlace
from configurator.rules.plan_findings import PlanAnswer, plan_findings
from configurator.rules.usual import FilledOpening
from configurator.study.hang import HungLeaf
from configurator.study.records import Candidate, StoppedBy
from configurator.study.stop_place import as_met, held_at, stop_wanted


def candidate(
    filled: FilledOpening, hung: HungLeaf, solution: Solution, stop: StopPlace | None = None
) -> Candidate:
    """Return the candidate: inches, and degrees that are 0, 90 and 180 exactly where they are so."""
    pin = solution.pin
    gap = solution.gap
    stop = None if stop is None else as_met(stop, in_degrees(solution.greatest_angle))
    return Candidate(
        leaf=hung.hinge.leaf.name,
        hinge_width=solution.hanging.W,
        pin_off_door_face=pin.o,
        pin_off_frame_face=pin.y_p,
        pin_across=pin.x_p,
        barrel_past_frame=solution.barrel_past_frame,
        barrel_past_wall=solution.barrel_past_wall,
        clear_past_frame_at_180=solution.clear_past_frame_at_180,
        greatest_angle=in_degrees(solution.greatest_angle),
        stopped_by=_stopped_by(solution.with_hardware),
        contact_point=_point(solution.with_hardware),
        greatest_angle_bare=in_degrees(solution.greatest_angle_bare),
        stopped_by_bare=_stopped_by(solution.bare),
        contact_point_bare=_point(solution.bare),
        clear_width_at_90=solution.clear_width_at_90,
        clear_width_at_greatest=solution.clear_width_at_greatest,
        hardware_in_clear_width=None
        if solution.clear_width_at_90 is None
        else solution.hardware_in_clear_width,
        latch_edge_least=solution.latch_edge_least,
        hinge_edge_least=solution.hinge_edge_least,
        encroachment_greatest=solution.encroachment_greatest,
        encroachment_at_rest=solution.encroachment_at_rest,
        encroachment_with_hardware_greatest=solution.encroachment_with_hardware_greatest,
        encroachment_with_hardware_at_rest=solution.encroachment_with_hardware_at_rest,
        least_gap=None if gap is None else gap.distance,
        least_gap_angle=None if gap is None else in_degrees(gap.angle),
        barrel_free_by=solution.barrel_free_by,
        barrel_diameter=solution.hanging.d_b,
        rests_at=in_degrees(solution.rest_angle),
        door_stop=stop,
        findings=plan_findings(_answer(filled, hung, solution, stop)),
        solution=solution,
    )


def in_degrees(radians: float) -> float:
    """Return degrees, exactly 0, 90 or 180 where the angle is so to the last bits."""
    degrees = math.degrees(radians)
    nearest = float(round(degrees / 90.0) * 90)
    return nearest if abs(degrees - nearest) <= 1e-12 else degrees


def _stopped_by(contact: Contact | None) -> StoppedBy | None:
    return None if contact is None else StoppedBy(contact.kind, contact.index, contact.part)


def _point(contact: Contact | None) -> tuple[float, float] | None:
    return None if contact is None else contact.point


def _answer(filled: FilledOpening, hung: HungLeaf, solution: Solution, stop: StopPlace | None) -> PlanAnswer:
    bare, whole = solution.bare, solution.with_hardware
    use = filled.opening.use
    held = held_at(use.stop_angle, stop)
    return PlanAnswer(
        leaf=hung.hinge.leaf.name,
        height=hung.hinge.height.value,
        width=solution.hanging.W,
        barrel=solution.hanging.d_b,
        mounting=solution.hanging.mounting,
        refusal=backset_refusal(solution.hanging, solution.pin),
        barrel_free_by=solution.barrel_free_by,
        angle_bare=in_degrees(solution.greatest_angle_bare),
        angle=in_degrees(solution.greatest_angle),
        wanted_angle=min(filled.wanted_angle, held or 180.0),
        stopped_bare=None if bare is None else (bare.part, bare.kind),
        stopped=None if whole is None else (whole.part, whole.kind),
        touching_at_rest=bare is not None and bare.at_rest,
        latch_least=solution.latch_edge_least,
        clear_width=solution.clear_width_at_90,
        accessible=bool(use.accessible) and hung.hinge.leaf.name != "inactive",
        clear_margin=use.clear_width_margin or 0.0,
        stop_angle=held,
        backset_disagreement=solution.pin.backset_disagreement,
        gap_disagreement=solution.pin.gap_disagreement,
        asked_angle=use.wanted_angle,
        leaf_heights=(hung.leaf.bottom, hung.leaf.top),
        overhead_stop=use.stop_angle,
        door_stop=stop,
        stop_wanted=stop_wanted(filled, hung, solution),
        held_by_other=bare is not None and bare.kind == "other leaf" and bare.index is not None,
        barrel_in_trim=solution.barrel_free_by < solution.barrel_freedom,
    )
