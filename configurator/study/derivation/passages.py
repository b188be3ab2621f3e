"""The tightest gap of an edge over the swing: where it is, and the closed form that it comes from."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from configurator.geometry.edges import hinge_edge_shape, latch_edge_shape, strike_side
from configurator.geometry.gaps import LeastGap, nearest_passage
from configurator.geometry.meeting_point import nearest_points
from configurator.geometry.pin import Point
from configurator.geometry.polar import TAU, PolarShape, seen_from, turned
from configurator.geometry.shapes import Shape, may_meet
from configurator.geometry.swing import meeting_angle
from configurator.study.candidate import in_degrees
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.contact_form import closed_form
from configurator.study.derivation.lying import Before, before_line, corners_before_lines, overlap_closed
from configurator.study.derivation.meetings import meeting_at, polar
from configurator.study.derivation.pin_steps import across, off_frame
from configurator.study.derivation.places import corner_letters, place_of
from configurator.study.derivation.polar_steps import (
    direction_of,
    foot_of,
    line_axis,
    normal_of,
    out_of_line,
    pin_along,
    radius_of,
)
from configurator.study.derivation.terms import Number, Symbol, Term, add, call, less, times
from configurator.study.derivation.working import Mark
from configurator.units import TOLERANCE


@dataclass(frozen=True, slots=True)
class Passage:
    """A moment at which two parts may be nearest: a corner and a line (`before`), or two corners.

    `distance`, in, at `angle`, radians; `passing` where the corner just passes: closest over all angles.
    """

    moving: Shape
    standing: Shape
    distance: float
    angle: float
    passing: bool
    before: Before | None = None
    corners: tuple[Point, Point] | None = None


def latch_edge(case: Case) -> Symbol:
    """Work out the tightest gap at the lock side, in."""
    h, pin = case.h, case.pin
    edge, side = latch_edge_shape(h), strike_side(h, case.scene.other)
    moving, standing = seen_from(pin.at, edge), seen_from(pin.at, side)
    binds = meeting_angle(moving, standing, math.pi)
    if binds is None or case.solution.latch_edge_least > 0.0:
        face = Shape((side.points[0], side.points[1]), kind=side.kind)
        return _tightest(case, edge, face, math.pi)
    case.work.say(f"The lock edge binds on the {side.kind}, so that no gap is left.")
    meeting = meeting_at(pin.at, [moving], [standing], binds)
    if meeting is not None:
        closed_form(case, meeting, in_degrees(binds))
    else:
        overlap_closed(case, [moving], [standing])
    return _no_gap(case)


def hinge_edge(case: Case) -> Symbol:
    """Work out the tightest gap at the hinge side, to frame and casings, in."""
    edge, limit = hinge_edge_shape(case.h), case.solution.greatest_angle_bare
    face = Shape(((0.0, -case.h.R), (0.0, 0.0)), kind="frame")
    leaf = case.scene.leaf.shape
    casings = [one.shape for one in case.scene.standing if one.shape.on_frame]
    parts = [face, *(one for one in casings if may_meet(leaf, one))]
    seen = seen_from(case.pin.at, edge)
    distances = [nearest_passage(seen, seen_from(case.pin.at, part), limit)[0] for part in parts]
    return _tightest(case, edge, parts[distances.index(min(distances))], limit)


def nearest_of(
    case: Case, gap: LeastGap, moving: Sequence[PolarShape], standing: Sequence[PolarShape], limit: float
) -> None:
    """Work out a least gap that is known, in, between whichever two parts it lies; limit in radians."""
    case.work.also.add("G")
    for one in moving:
        for other in standing:
            value, _ = nearest_passage(one, other, limit)
            if may_meet(one.shape, other.shape) and abs(value - gap.distance) <= TOLERANCE:
                _tightest(case, one.shape, other.shape, limit)
                return


def _no_gap(case: Case) -> Symbol:
    return case.work.let("G", Number(0), meaning=MEANINGS["G"])


def _tightest(case: Case, moving: Shape, standing: Shape, limit: float) -> Symbol:
    """Work out the nearest passage of two parts up to an angle, radians."""
    pin = case.pin.at
    value, angle = nearest_passage(seen_from(pin, moving), seen_from(pin, standing), limit)
    r = moving.radius + standing.radius
    found = [
        one for one in _passages(pin, moving, standing, limit) if abs(one.distance - r - value) <= TOLERANCE
    ]
    at_it = [one for one in found if abs(one.angle - angle) <= TOLERANCE] or found
    case.work.say(f"The {moving.kind} passes nearest the {standing.kind}.")
    if not at_it:
        case.work.say("The two touch.")
        return _no_gap(case)
    passage = min(at_it, key=lambda one: (not one.passing, one.angle != 0.0))
    case.work.angle = in_degrees(passage.angle)
    _mark_gap(case, passage)
    gap = _formula(case, passage)
    if r:
        gap = less(gap, case.work.given("r", r, meaning=MEANINGS["r"]))
    return case.work.let("G", gap, meaning=MEANINGS["G"])


def _mark_gap(case: Case, passage: Passage) -> None:
    pin = case.pin.at
    there = turned(pin, seen_from(pin, passage.moving), passage.angle)
    case.work.marks["G"] = Mark(lines=(nearest_points(there, passage.standing.points),))


def _passages(pin: Point, moving: Shape, standing: Shape, limit: float) -> Iterator[Passage]:
    closed = list(corners_before_lines(moving, standing))
    for before in closed:
        yield from _passing(pin, moving, standing, before, limit)
    for corner in moving.points:
        for other in standing.points:
            yield from _corners(pin, moving, standing, corner, other, limit)
    for angle in (0.0, limit):
        for before in closed:
            yield from _at_an_end(pin, moving, standing, before, angle)


def _passing(pin: Point, moving: Shape, standing: Shape, before: Before, limit: float) -> Iterator[Passage]:
    """A corner on the circle about the pin that comes closest to a line straight before the pin."""
    rho, phi = polar(pin, before.corner)
    line = before.line
    away = math.cos(line.alpha) * pin[0] + math.sin(line.alpha) * pin[1] - line.q
    turn = 1.0 if before.moving_corner else -1.0
    angle = (turn * (line.alpha - phi) + math.pi) % TAU
    if away >= rho and angle < limit and _between(foot_of(pin, line), before):
        yield Passage(moving, standing, away - rho, angle, True, before=before)


def _between(point: Point, before: Before) -> bool:
    line = before.line
    length = math.dist(line.start, line.end)
    return max(math.dist(point, line.start), math.dist(point, line.end)) <= length + TOLERANCE


def _corners(
    pin: Point, moving: Shape, standing: Shape, corner: Point, other: Point, limit: float
) -> Iterator[Passage]:
    """Two corners in line with the pin; and wherever they stand at the ends of the swing."""
    rho_c, phi_c = polar(pin, corner)
    rho_s, phi_s = polar(pin, other)
    in_line = (phi_s - phi_c) % TAU
    if in_line < limit:
        yield Passage(moving, standing, abs(rho_s - rho_c), in_line, True, corners=(corner, other))
    for angle in (0.0, limit):
        square = rho_c * rho_c + rho_s * rho_s - 2 * rho_c * rho_s * math.cos(angle + phi_c - phi_s)
        yield Passage(moving, standing, math.sqrt(max(square, 0.0)), angle, False, corners=(corner, other))


def _at_an_end(pin: Point, moving: Shape, standing: Shape, before: Before, angle: float) -> Iterator[Passage]:
    """A corner before a line where the swing begins or ends."""
    rho, phi = polar(pin, before.corner)
    line, turn = before.line, 1.0 if before.moving_corner else -1.0
    at = phi + turn * angle
    point = (pin[0] + rho * math.cos(at), pin[1] + rho * math.sin(at))
    out = math.cos(line.alpha) * point[0] + math.sin(line.alpha) * point[1] - line.q
    if out >= -TOLERANCE and _between(foot_of(point, line), before):
        here = before if angle else replace(before, out=out)
        yield Passage(moving, standing, max(out, 0.0), angle, False, before=here)


def _formula(case: Case, passage: Passage) -> Term:
    if passage.corners is not None:
        return _of_corners(case, passage)
    before = passage.before
    assert before is not None
    if passage.passing:
        which = "c" if before.moving_corner else "s"
        rho = radius_of(case, before.shape, before.corner, which)
        return less(_pin_off_line(case, before), rho)
    if passage.angle == 0.0 or (passage.angle == math.pi and line_axis(before.line) is not None):
        return before_line(case, before, inward=False, half_turned=passage.angle > 0.0)
    return _out_when_turned(case, passage, before)


def _pin_off_line(case: Case, before: Before) -> Symbol:
    """Work out how far the pin stands off a line that it lies before."""
    axis = line_axis(before.line)
    if axis is None:
        formula = less(pin_along(case, before.line), out_of_line(case, before.line_of, before.line))
    else:
        there = place_of(case, before.line_of, before.line.end)[0 if axis[0] == "x" else 1]
        here = across(case) if axis[0] == "x" else off_frame(case)
        formula = less(here, there) if axis[1] > 0 else less(there, here)
    case.work.marks["u"] = Mark(lines=((case.pin.at, foot_of(case.pin.at, before.line)),))
    return case.work.let("u", formula, meaning=MEANINGS["u"])


def _out_when_turned(case: Case, passage: Passage, before: Before) -> Term:
    which = "c" if before.moving_corner else "s"
    rho = radius_of(case, before.shape, before.corner, which)
    phi, alpha = direction_of(case, before.shape, before.corner, which), normal_of(case, before.line)
    theta = _stopped_at(case, passage.angle)
    turn = less(add(theta, phi), alpha) if before.moving_corner else less(phi, theta, alpha)
    q, pin = out_of_line(case, before.line_of, before.line), pin_along(case, before.line)
    return less(times(rho, call("cos", turn)), less(q, pin))


def _stopped_at(case: Case, angle: float) -> Symbol:
    meaning = "where the swing ends; that number has its own working"
    return case.work.given("theta_end", in_degrees(angle), "angle", meaning)


def _of_corners(case: Case, passage: Passage) -> Term:
    assert passage.corners is not None
    corner, other = passage.corners
    if passage.angle == 0.0 and not passage.passing:
        x, y = corner_letters(case, passage.moving, corner, "c")
        x_s, y_s = corner_letters(case, passage.standing, other, "s")
        return call("hypot", less(x_s, x), less(y_s, y))
    one = radius_of(case, passage.moving, corner, "c")
    two = radius_of(case, passage.standing, other, "s")
    if passage.passing:
        return less(two, one) if two.value >= one.value else less(one, two)
    phi = direction_of(case, passage.moving, corner, "c")
    phi_s = direction_of(case, passage.standing, other, "s")
    turn = call("cos", less(add(_stopped_at(case, passage.angle), phi), phi_s))
    squares = add(times(one, one), times(two, two))
    return call("sqrt", less(squares, times(Number(2), times(times(one, two), turn))))
