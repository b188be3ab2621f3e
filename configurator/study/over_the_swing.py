"""One leaf over its whole swing: how near its long edges pass, and how far it stands out at every angle.

Worked out when asked for, from a candidate already studied.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from configurator.geometry.edges import bevel_for_latch_gap, latch_edge_passage
from configurator.geometry.encroachment import encroachment, encroachment_curve
from configurator.geometry.polar import TAU, PolarShape
from configurator.geometry.solve import Solution
from configurator.study.candidate import Candidate, in_degrees
from configurator.study.hang import HangsOn
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
    """What one leaf does over its swing on what it hangs on."""

    leaf: str
    on: HangsOn
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
        on=candidate.on,
        latch=_latch_edge(solution, wanted_gap),
        hinge=_passage(solution.hinge_edge),
        bare=_standing(solution, (plan.leaf,), solution.rest_angle_bare),
        with_hardware=_standing(solution, (plan.leaf, *plan.hardware), solution.rest_angle),
    )


def _latch_edge(solution: Solution, wanted_gap: float) -> LatchEdge:
    h, pin, other = solution.hanging, solution.pin, solution.scene.other
    return LatchEdge(
        bevel=h.beta,
        as_beveled=_passage(solution.latch_edge),
        square=_passage(latch_edge_passage(replace(h, beta=0.0), pin, other)),
        wanted_gap=wanted_gap,
        bevel_needed=bevel_for_latch_gap(h, pin, wanted_gap, other),
    )


def _passage(passage: tuple[float, float]) -> Passage:
    least, angle = passage
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
