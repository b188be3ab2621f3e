"""How deep two closed parts overlap, and how far apart two parts are with the door standing still."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from configurator.geometry.pin import Point
from configurator.geometry.polar import PolarShape, separation
from configurator.geometry.shapes import Shape
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.meetings import Line, edges_of
from configurator.study.derivation.pin_steps import across, off_frame
from configurator.study.derivation.places import corner_letters, place_of
from configurator.study.derivation.polar_steps import line_axis, normal_of, out_of_line
from configurator.study.derivation.terms import Number, Term, add, call, less, times


@dataclass(frozen=True, slots=True)
class Before:
    """A corner of one part before a line of another, the door closed, and how far out of it, in."""

    shape: Shape
    corner: Point
    moving_corner: bool
    line_of: Shape
    line: Line
    out: float


def corners_before_lines(moving: Shape, standing: Shape) -> Iterator[Before]:
    """Yield every corner of either part with every line of the other."""
    for moving_corner, one, other in ((True, moving, standing), (False, standing, moving)):
        for line in edges_of(other):
            n_x, n_y = math.cos(line.alpha), math.sin(line.alpha)
            for corner in one.points:
                out = n_x * corner[0] + n_y * corner[1] - line.q
                yield Before(one, corner, moving_corner, other, line, out)


def overlap_closed(case: Case, moving: Sequence[PolarShape], standing: Sequence[PolarShape]) -> None:
    """Work out how deep the deepest of two closed parts overlap: a door that cannot open at all."""
    pairs = [(separation(part, still, 0.0), part.shape, still.shape) for part in moving for still in standing]
    _, one, other = min(pairs, key=lambda pair: pair[0])
    case.work.angle = 0.0
    case.work.say("The two lie against one another with the door closed.")
    least: dict[Line, Before] = {}
    for before in corners_before_lines(one, other):
        if before.line not in least or before.out < least[before.line].out:
            least[before.line] = before
    if not least:
        return
    deciding = max(least.values(), key=lambda before: before.out)
    r = one.radius + other.radius
    depth = before_line(case, deciding, inward=True)
    if r:
        depth = add(case.work.given("r", r, meaning=MEANINGS["r"]), depth)
    case.work.also.add("d")
    case.work.let("d", depth, meaning=MEANINGS["d"])


def before_line(case: Case, before: Before, inward: bool, half_turned: bool = False) -> Term:
    """Return the formula of how far a corner is out of a line, or inside of it, the door closed.

    `half_turned` is for a door opened flat: the corner then stands as far beyond the pin as it stood before
    it. The line must then lie along an axis of the plan.
    """
    which = "c" if before.moving_corner else "s"
    x, y = corner_letters(case, before.shape, before.corner, which)
    axis = line_axis(before.line)
    if axis is None:
        alpha = normal_of(case, before.line)
        q = out_of_line(case, before.line_of, before.line)
        along = add(times(x, call("cos", alpha)), times(y, call("sin", alpha)))
        return less(q, along) if inward else less(along, q)
    there = place_of(case, before.line_of, before.line.end)[0 if axis[0] == "x" else 1]
    here: Term = x if axis[0] == "x" else y
    if half_turned:
        pin = across(case) if axis[0] == "x" else off_frame(case)
        here = less(times(Number(2), pin), here)
    return less(there, here) if inward == (axis[1] > 0) else less(here, there)
