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
from configurator.geometry.many.parts import (
    Floats,
    Part,
    most_of,
    part,
    standing_parts,
    turning_parts,
    wall_parts,
)
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


@dataclass(frozen=True, eq=False)
class ManyAnswers:
    """What `solve.Solution` says of many leaves besides `ManySolution`, to 1e-12; inches, one an opening.

    barrel_free_by to out_with_hardware_at_rest are as there by the same names, out for encroachment.
    width_at_90 and hardware_taken are nan where the door does not come to rest at 90 degrees or past it. The
    least gaps are nan where nothing stands at any of their heights: gap_about is as `Solution.gap`, gap and
    gap_with_hardware as `least_gaps`.
    """

    barrel_free_by: Floats
    hinge_edge: Floats
    width_at_90: Floats
    width_at_greatest: Floats
    hardware_taken: Floats
    out_greatest: Floats
    out_at_rest: Floats
    out_with_hardware_greatest: Floats
    out_with_hardware_at_rest: Floats
    gap_about: Floats
    gap: Floats
    gap_with_hardware: Floats


def answers_of(many: Many, solved: ManySolution, stop_angle: float | None = None) -> ManyAnswers:
    """The rest of the answers for openings already solved; stop_angle, radians, is where a stop holds them.

    As many openings at a time as `solve_many` handles together, each laid out once.
    """
    tables, first = [], 0
    for some in many.in_turns():
        last = first + some.count
        tables.append(_answers_together(_laid_out(some), some, solved.between(first, last), stop_angle))
        first = last
    return ManyAnswers(**{name: np.concatenate([table[name] for table in tables]) for name in tables[0]})


def _answers_together(
    laid: _LaidOut, many: Many, solved: ManySolution, stop_angle: float | None
) -> dict[str, Floats]:
    rest_bare, rest = (_held(one, stop_angle) for one in (solved.greatest_angle_bare, solved.greatest_angle))
    return {
        "barrel_free_by": _barrels_free_by(laid, solved),
        "hinge_edge": hinge_edges(laid.h, laid.pin, laid.leaf, laid.standing, solved.greatest_angle_bare),
        **_clear_widths(laid, clear_limits(laid.h, laid.pin, many.other), solved.greatest_angle, rest),
        **_encroachments(laid, rest_bare, rest),
        **_least_gaps(laid, wall_parts(laid.h, laid.pin, many.other, many.count), solved, rest_bare, rest),
    }


def _held(greatest: Floats, stop_angle: float | None) -> Floats:
    """Where the doors come to rest."""
    return np.minimum(greatest, math.inf if stop_angle is None else stop_angle)


def _encroachments(laid: _LaidOut, rest_bare: Floats, rest: Floats) -> dict[str, Floats]:
    """How far the leaves stand out from the wall face, in: greatest and at rest, bare and with hardware."""
    everything = [laid.leaf, *laid.hardware]
    return {
        "out_greatest": out_most([laid.leaf], laid.h, laid.pin, rest_bare),
        "out_at_rest": out_at([laid.leaf], laid.h, laid.pin, rest_bare),
        "out_with_hardware_greatest": out_most(everything, laid.h, laid.pin, rest),
        "out_with_hardware_at_rest": out_at(everything, laid.h, laid.pin, rest),
    }


def _clear_widths(laid: _LaidOut, limit: Any, greatest: Floats, rest: Floats) -> dict[str, Floats]:
    """The clear widths and what hardware takes from them, in."""
    h, pin, square = laid.h, laid.pin, np.full(len(rest), math.pi / 2)
    reached = rest >= math.pi / 2
    bare = np.maximum(h.heel_s, _across([laid.leaf], pin, square))
    at_greatest = np.maximum(h.heel_s, _across([laid.leaf], pin, greatest))
    counted = [one for one in laid.hardware if counts_in_width(one.shape)]
    taken = np.zeros(len(rest))
    if counted:
        taken = np.maximum(np.minimum(_across(counted, pin, square), limit) - bare, 0.0)
    return {
        "width_at_90": np.where(reached, np.maximum(limit - bare, 0.0), np.nan),
        "width_at_greatest": np.maximum(limit - at_greatest, 0.0),
        "hardware_taken": np.where(reached, taken, np.nan),
    }


def _across(parts: list[Part], pin: Pin, theta: Floats) -> Floats:
    """How far into each opening any of the parts reaches at its angle, in."""
    square = theta == math.pi / 2
    cosine, sine = np.where(square, 0.0, np.cos(theta)), np.where(square, 1.0, np.sin(theta))
    reach = most_of([x * cosine - y * sine + one.radius for one in parts for x, y in one.corners])
    return np.asarray(pin.x_p + reach)


def _barrels_free_by(laid: _LaidOut, solved: ManySolution) -> Floats:
    """How far the nearest barrel stands clear of door, frame and what stands about, in; negative in them."""
    free = np.array(solved.barrel_freedom)
    for still in laid.about:
        if any(may_meet(barrel.shape, still.shape) for barrel in laid.barrels):
            free = np.minimum(free, barrel_distances(laid.barrels[0], still))
    return free


def _least_gaps(
    laid: _LaidOut, walls: list[Part], solved: ManySolution, rest_bare: Floats, rest: Floats
) -> dict[str, Floats]:
    """The least gaps, in, each up to where its door rests."""
    others = [*laid.on_other_leaf, *walls]
    bare = [laid.leaf, *laid.barrels]
    about = least_passages(bare, laid.about, rest_bare)
    alone = np.minimum(about, least_passages(bare, others, rest_bare))
    both = least_passages([*bare, *laid.hardware], [*laid.about, *others], rest)
    alone[_stopped_there(solved, solved.touches_bare, solved.greatest_angle_bare, rest_bare)] = 0.0
    both[_stopped_there(solved, solved.touches, solved.greatest_angle, rest)] = 0.0
    gaps = {"gap_about": about, "gap": alone, "gap_with_hardware": both}
    return {name: np.where(np.isinf(gap), np.nan, gap) for name, gap in gaps.items()}


def _stopped_there(solved: ManySolution, touches: Places, greatest: Floats, rest: Floats) -> Any:
    """Where doors come to rest against something that gaps are measured to."""
    measured = np.array([*(is_measured_to(kind, index) for kind, index, _ in solved.names), False])
    return measured[touches] & (greatest <= rest)
