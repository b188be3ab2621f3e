"""The rest of the answers for many openings already solved, each equal to the single path's.

Kept apart from `solve_many`, which is what sampling asks a hundred thousand times: these are worked out
only for who wants them. Inches and radians.
"""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from configurator.geometry.clear_width import counts_in_width
from configurator.geometry.least_gaps import is_measured_to
from configurator.geometry.many.edges import hinge_edges, out_at, out_most
from configurator.geometry.many.parts import Floats, Part, part, standing_parts, turning_parts, wall_parts
from configurator.geometry.many.passages import barrel_distances, least_passages
from configurator.geometry.many.reach import Places
from configurator.geometry.many.solve_many import Many, ManySolution, clear_limits
from configurator.geometry.pin import Hanging, Pin, locate_pin
from configurator.geometry.shapes import barrel_shapes, may_meet


@dataclass(frozen=True, slots=True, eq=False)
class _LaidOut:
    """Many openings with their parts."""

    h: Hanging
    pin: Pin
    leaf: Part
    hardware: list[Part]
    barrels: list[Part]
    standing: list[Part]

    @property
    def about(self) -> list[Part]:
        """What stands besides frame, walls and the other leaf with what it carries."""
        return [one for one in self._listed if one.shape.kind != "other leaf"]

    @property
    def on_other_leaf(self) -> list[Part]:
        """What the closed other leaf carries."""
        return [one for one in self._listed if one.shape.kind == "other leaf"]

    @property
    def _listed(self) -> list[Part]:
        """What has a place in a list of its own."""
        return [one for one in self.standing if one.shape.index is not None]


def _laid_out(many: Many) -> _LaidOut:
    """The parts of many openings."""
    h, things = many.records(lambda column: column)
    pin, count = locate_pin(h), many.count
    leaf, hardware = turning_parts(h, pin, many.leaf, many.hardware, count)
    barrels = [part(shape, pin, count) for shape in barrel_shapes(h, pin, many.leaf)]
    standing = standing_parts(h, pin, many.leaf, things, many.other, count)
    return _LaidOut(h, pin, leaf, hardware, barrels, standing)


def _held(greatest: Floats, stop_angle: float | None) -> Floats:
    """Where the doors come to rest."""
    return np.minimum(greatest, math.inf if stop_angle is None else stop_angle)


@dataclass(frozen=True, eq=False)
class ManyEncroachments:
    """How far many leaves stand out from the wall face, in: greatest and at rest, bare and with hardware."""

    greatest: Floats
    at_rest: Floats
    with_hardware_greatest: Floats
    with_hardware_at_rest: Floats


def encroachments_of(many: Many, solved: ManySolution, stop_angle: float | None = None) -> ManyEncroachments:
    """The encroachments of many openings already solved.

    Inches; stop_angle, radians, is where a stop holds the doors. As in `solve.Solution`, to 1e-12.
    """
    laid = _laid_out(many)
    bare, both = (_held(one, stop_angle) for one in (solved.greatest_angle_bare, solved.greatest_angle))
    everything = [laid.leaf, *laid.hardware]
    return ManyEncroachments(
        out_most([laid.leaf], laid.h, laid.pin, bare),
        out_at([laid.leaf], laid.h, laid.pin, bare),
        out_most(everything, laid.h, laid.pin, both),
        out_at(everything, laid.h, laid.pin, both),
    )


@dataclass(frozen=True, eq=False)
class ManyClearWidths:
    """Clear widths of many leaves and what hardware takes from them, in, as in `solve.Solution`.

    at_90 and hardware_taken are nan where the door does not come to rest at 90 degrees or past it.
    """

    at_90: Floats
    at_greatest: Floats
    hardware_taken: Floats


def clear_widths_of(many: Many, solved: ManySolution, stop_angle: float | None = None) -> ManyClearWidths:
    """The clear widths of many openings already solved, in; stop_angle in radians."""
    laid = _laid_out(many)
    h, pin, limit = laid.h, laid.pin, clear_limits(laid.h, laid.pin, many.other)
    square = np.full(many.count, math.pi / 2)
    reached = _held(solved.greatest_angle, stop_angle) >= math.pi / 2
    bare = np.maximum(h.heel_s, _across([laid.leaf], pin, square))
    greatest = np.maximum(h.heel_s, _across([laid.leaf], pin, solved.greatest_angle))
    counted = [one for one in laid.hardware if counts_in_width(one.shape)]
    taken = np.zeros(many.count)
    if counted:
        taken = np.maximum(np.minimum(_across(counted, pin, square), limit) - bare, 0.0)
    return ManyClearWidths(
        np.where(reached, np.maximum(limit - bare, 0.0), np.nan),
        np.maximum(limit - greatest, 0.0),
        np.where(reached, taken, np.nan),
    )


def _across(parts: list[Part], pin: Pin, theta: Floats) -> Floats:
    """How far into each opening any of the parts reaches at its angle, in."""
    square = theta == math.pi / 2
    cosine, sine = np.where(square, 0.0, np.cos(theta)), np.where(square, 1.0, np.sin(theta))
    reach = [x * cosine - y * sine + one.radius for one in parts for x, y in one.corners]
    across: Any = pin.x_p + np.max(reach, axis=0)
    return np.asarray(across)


def hinge_edges_of(many: Many, solved: ManySolution) -> Floats:
    """The least distance at each leaf's hinge edge as far as the bare leaf swings, in."""
    laid = _laid_out(many)
    return hinge_edges(laid.h, laid.pin, laid.leaf, laid.standing, solved.greatest_angle_bare)


def barrels_free_by(many: Many, solved: ManySolution) -> Floats:
    """How far the nearest barrel stands clear of door, frame and what stands about, in; negative in them."""
    laid = _laid_out(many)
    free = np.array(solved.barrel_freedom)
    for barrel in laid.barrels:
        for still in laid.about:
            if may_meet(barrel.shape, still.shape):
                free = np.minimum(free, barrel_distances(barrel, still))
    return free


@dataclass(frozen=True, eq=False)
class ManyGaps:
    """Least gaps of many openings over their swings, in; nan where nothing stands at any of their heights.

    about is as `Solution.gap`, bare and with_hardware as `least_gaps`.
    """

    about: Floats
    bare: Floats
    with_hardware: Floats


def least_gaps_of(many: Many, solved: ManySolution, stop_angle: float | None = None) -> ManyGaps:
    """The least gaps of many openings already solved, in, each up to where its door rests."""
    laid = _laid_out(many)
    walls = wall_parts(laid.h, laid.pin, many.other, many.count)
    others = [*laid.on_other_leaf, *walls]
    rest_bare, rest = (_held(one, stop_angle) for one in (solved.greatest_angle_bare, solved.greatest_angle))
    bare = [laid.leaf, *laid.barrels]
    about = least_passages(bare, laid.about, rest_bare)
    alone = np.minimum(about, least_passages(bare, others, rest_bare))
    both = least_passages([*bare, *laid.hardware], [*laid.about, *others], rest)
    alone[_stopped_there(solved, solved.touches_bare, solved.greatest_angle_bare, rest_bare)] = 0.0
    both[_stopped_there(solved, solved.touches, solved.greatest_angle, rest)] = 0.0
    return ManyGaps(*(np.where(np.isinf(gap), np.nan, gap) for gap in (about, alone, both)))


def _stopped_there(solved: ManySolution, touches: Places, greatest: Floats, rest: Floats) -> Any:
    """Where doors come to rest against something that gaps are measured to."""
    measured = np.array([*(is_measured_to(kind, index) for kind, index, _ in solved.names), False])
    return measured[touches] & (greatest <= rest)
