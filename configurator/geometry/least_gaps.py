"""The least gap over a whole swing to everything about the door, bare and with hardware; made when asked for.

Against what stands about the door, the wall faces, and what the closed other leaf carries. The frame, its
stop and what the latch edge closes against have answers of their own (`edges`). Radians and inches.
"""

import math
from dataclasses import dataclass

from configurator.geometry.gaps import LeastGap, polar_least_gap
from configurator.geometry.pin import TOLERANCE
from configurator.geometry.polar import PolarShape, seen_from
from configurator.geometry.shapes import walls
from configurator.geometry.solve import Scene, Solution
from configurator.geometry.swing import Contact

#: Kinds that have answers of their own, so that their contact is no gap of 0 here.
_OWN_ANSWERS = frozenset({"frame", "stop", "latch jamb"})


@dataclass(frozen=True, slots=True)
class LeastGaps:
    """The nearest passage of leaf and barrels alone, and with the hardware, each as far as it comes to rest.

    None where nothing stands at any of their heights within reach.
    """

    bare: LeastGap | None
    with_hardware: LeastGap | None


def least_gaps(solution: Solution) -> LeastGaps:
    """The least gap over the swing that a solution describes, with its angle and where it occurs.

    0 at the contact where the leaf comes to rest against something; what only lies against the other leaf's
    hardware while closed, as before an astragal, is no passage. With hardware the swing may end sooner,
    so that gap may be the greater.
    """
    plan = solution.scene
    stopped, rest = solution.bare, solution.rest_angle_bare
    bare = _at_contact(stopped, rest) or _nearer(solution.gap, _to_the_rest(plan, plan.bare, rest))
    if not plan.hardware:
        return LeastGaps(bare, bare)
    stopped, rest = solution.with_hardware, solution.rest_angle
    return LeastGaps(bare, _at_contact(stopped, rest) or _with_hardware(plan, rest))


def _at_contact(contact: Contact | None, rest: float) -> LeastGap | None:
    """The gap of 0 where the door rests against something that gaps are measured to; None if it does not."""
    if contact is None or contact.angle > rest or not is_measured_to(contact.kind, contact.index):
        return None
    point = contact.point
    return LeastGap(0.0, contact.angle, point, point, contact.part, contact.kind, contact.index)


def _with_hardware(plan: Scene, rest: float) -> LeastGap | None:
    """The nearest passage of leaf, barrels and hardware up to where the door rests."""
    everything = (*plan.bare, *plan.hardware)
    about = polar_least_gap(everything, plan.obstructions, plan.pin.at, rest)
    return _nearer(about, _to_the_rest(plan, everything, rest))


def _to_the_rest(plan: Scene, moving: tuple[PolarShape, ...], rest: float) -> LeastGap | None:
    """The nearest passage of some of the moving side to wall faces and what the other leaf carries.

    The walls are laid out anew, for a scene leaves out a wall that the leaf cannot come to.
    """
    opening = plan.hanging.O if plan.other is None else plan.other.opening
    faces = [seen_from(plan.pin.at, wall) for wall in walls(plan.hanging, opening)]
    return polar_least_gap(moving, (*plan.on_other_leaf, *faces), plan.pin.at, rest)


def is_measured_to(kind: str, index: int | None) -> bool:
    """Whether what a contact names is among what the gaps are measured to."""
    return kind not in _OWN_ANSWERS and (kind != "other leaf" or index is not None)


def _nearer(one: LeastGap | None, other: LeastGap | None) -> LeastGap | None:
    """The lesser of two gaps, of two alike the first."""
    distances = [math.inf if gap is None else gap.distance for gap in (one, other)]
    return other if distances[1] < distances[0] - TOLERANCE else one
