"""One leaf over its whole swing: how near its long edges pass, and how far it stands out at every angle.

Worked out when asked for, from a candidate already studied.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from configurator.geometry.edges import (
    bevel_for_latch_gap,
    hinge_edge_shape,
    latch_edge_shape,
    strike_side,
)
from configurator.geometry.encroachment import encroachment, encroachment_curve
from configurator.geometry.gaps import nearest_passage
from configurator.geometry.pin import Hanging, Pin
from configurator.geometry.polar import TAU, PolarShape, seen_from
from configurator.geometry.shapes import OtherLeaf, Shape, may_meet
from configurator.geometry.solve import Scene, Solution
from configurator.geometry.swing import meeting_angle
from configurator.study.candidate import Candidate, in_degrees
from configurator.study.run import Study

SAMPLES = 181


@dataclass(frozen=True, slots=True)
class Passage:
    """How near an edge passes, inches, and the angle at which it does, degrees; 0 where it touches there."""

    least: float
    angle: float


@dataclass(frozen=True, slots=True)
class LatchEdge:
    """The latch edge as it is beveled and as it would be square, both over the whole swing.

    bevel_needed is the least bevel, inches per inch of thickness, that leaves the wanted gap; None where none
    does, 0 where a square edge leaves it.
    """

    bevel: float
    as_beveled: Passage
    square: Passage
    wanted_gap: float
    bevel_needed: float | None


@dataclass(frozen=True, slots=True)
class Standing:
    """How far a door stands out from the wall face, inches over degrees, up to where it comes to rest."""

    curve: tuple[tuple[float, float], ...]
    greatest: float
    greatest_at: float
    at_rest: float
    rest: float


@dataclass(frozen=True, slots=True)
class OverTheSwing:
    """What one leaf on one hinge open width, inches, does over its swing."""

    leaf: str
    width: float
    latch: LatchEdge
    hinge: Passage
    bare: Standing
    with_hardware: Standing


def over_the_swing(study: Study, wanted_gap: float) -> tuple[OverTheSwing, ...]:
    """Return every candidate over its swing; wanted_gap, inches, is asked of the latch edge."""
    return tuple(_of(candidate, wanted_gap) for candidate in study.candidates)


def _of(candidate: Candidate, wanted_gap: float) -> OverTheSwing:
    solution = candidate.solution
    plan = solution.scene
    return OverTheSwing(
        leaf=candidate.leaf,
        width=candidate.hinge_width,
        latch=_latch_edge(plan, wanted_gap),
        hinge=_hinge_passage(plan, solution.greatest_angle_bare),
        bare=_standing(solution, (plan.leaf,), solution.rest_angle_bare),
        with_hardware=_standing(solution, (plan.leaf, *plan.hardware), solution.rest_angle),
    )


def _latch_edge(plan: Scene, wanted_gap: float) -> LatchEdge:
    h, pin, other = plan.hanging, plan.pin, plan.other
    return LatchEdge(
        bevel=h.beta,
        as_beveled=latch_passage(h, pin, other),
        square=latch_passage(replace(h, beta=0.0), pin, other),
        wanted_gap=wanted_gap,
        bevel_needed=bevel_for_latch_gap(h, pin, wanted_gap, other),
    )


def latch_passage(h: Hanging, pin: Pin, other: OtherLeaf | None = None) -> Passage:
    """Return where the latch edge passes the jamb, or the other leaf, nearest, as `edges.latch_edge_least`.

    Where it binds the least is 0 and the angle that of the first touch.
    """
    edge = seen_from(pin.at, latch_edge_shape(h))
    side = strike_side(h, other)
    touch = meeting_angle(edge, seen_from(pin.at, side), math.pi)
    if touch is not None:
        return Passage(0.0, in_degrees(touch))
    face = seen_from(pin.at, Shape((side.points[0], side.points[1]), kind=side.kind))
    least, angle = nearest_passage(edge, face, math.pi)
    return Passage(least, in_degrees(angle))


def _hinge_passage(plan: Scene, reach: float) -> Passage:
    """Return where the hinge edge passes its jamb and the casings nearest, as `edges.hinge_edge_least`."""
    edge = seen_from(plan.pin.at, hinge_edge_shape(plan.hanging))
    face = seen_from(plan.pin.at, Shape(((0.0, -plan.hanging.R), (0.0, 0.0)), kind="frame"))
    casings = [part for part in plan.standing if part.shape.on_frame]
    met = [part for part in casings if may_meet(plan.leaf.shape, part.shape)]
    least, angle = min(nearest_passage(edge, part, reach) for part in (face, *met))
    return Passage(least, in_degrees(angle))


def _standing(solution: Solution, parts: tuple[PolarShape, ...], rest: float) -> Standing:
    h, pin = solution.hanging, solution.pin
    peak = max(_peaks(parts, rest), key=lambda angle: encroachment(parts, h, pin, angle))
    angles = {angle for angle, _ in encroachment_curve(parts, h, pin, rest, SAMPLES)} | {peak}
    curve = [(in_degrees(angle), encroachment(parts, h, pin, angle)) for angle in sorted(angles)]
    return Standing(
        curve=tuple(curve),
        greatest=encroachment(parts, h, pin, peak),
        greatest_at=in_degrees(peak),
        at_rest=encroachment(parts, h, pin, rest),
        rest=in_degrees(rest),
    )


def _peaks(parts: Iterable[PolarShape], rest: float) -> list[float]:
    """Return the angles at which a corner may stand out most: straight out from the pin, or at an end."""
    straight = [(math.pi / 2 - phi) % TAU for part in parts for _, phi in part.corners]
    return [0.0, rest, *(angle for angle in straight if angle < rest)]
