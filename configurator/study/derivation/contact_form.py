"""The closed form of a contact: a corner on its circle about the pin comes to a line or another corner."""

import math

from configurator.geometry.shapes import Shape
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.meetings import Meeting, polar
from configurator.study.derivation.polar_steps import (
    direction_of,
    normal_of,
    out_of_line,
    pin_along,
    radius_of,
)
from configurator.study.derivation.terms import Number, Symbol, Term, add, call, less, over, times
from configurator.study.derivation.working import Mark

_NEAR_THE_PIN = 1.25
"""Inches: the radius of an arc that is to be seen close to the pin."""


def closed_form(case: Case, meeting: Meeting, degrees: float) -> Symbol:
    """Work out the angle at which a meeting happens, degrees: rho cos(theta + phi - alpha) = q - n.pin."""
    case.work.angle = degrees
    raw = _round_form(case, meeting) if meeting.line is None else _line_form(case, meeting)
    turns = round((degrees - raw.value) / 360.0)
    formula = raw if not turns else _turned(raw, turns)
    _mark_angle(case, meeting, degrees)
    theta = Symbol("theta", formula.value, "angle")
    if meeting.line is not None:
        case.work.equal(*_law(case, meeting, theta))
    return case.work.let("theta", formula, "angle", MEANINGS["theta"])


def _turned(raw: Term, turns: int) -> Term:
    whole = Number(abs(turns) * 360.0, "angle")
    return add(raw, whole) if turns > 0 else less(raw, whole)


def _which(meeting: Meeting) -> tuple[str, Shape]:
    return ("c", meeting.moving) if meeting.moving_corner else ("s", meeting.standing)


def _line_form(case: Case, meeting: Meeting) -> Term:
    """The angle from a corner over a line: the arc cosine, from the normal."""
    assert meeting.line is not None
    which, shape = _which(meeting)
    rho = radius_of(case, shape, meeting.corner, which)
    phi, alpha = direction_of(case, shape, meeting.corner, which), normal_of(case, meeting.line)
    turn = call("arccos", over(_out_from_pin(case, meeting), rho))
    base = less(alpha, phi) if meeting.moving_corner else less(phi, alpha)
    return add(base, turn) if meeting.sense > 0 else less(base, turn)


def _out_from_pin(case: Case, meeting: Meeting) -> Term:
    assert meeting.line is not None
    shape = meeting.standing if meeting.moving_corner else meeting.moving
    q, pin = out_of_line(case, shape, meeting.line), pin_along(case, meeting.line)
    return less(add(q, _radius(case, meeting)), pin) if meeting.r else less(q, pin)


def _radius(case: Case, meeting: Meeting) -> Symbol:
    parts = [one.kind for one in (meeting.moving, meeting.standing) if one.radius]
    return case.work.given("r", meeting.r, meaning=f"radius of what is round: {' and '.join(parts)}")


def _law(case: Case, meeting: Meeting, theta: Symbol) -> tuple[Term, Term]:
    which, _ = _which(meeting)
    known = case.work.known
    rho, phi, alpha = known[f"rho_{which}"], known[f"phi_{which}"], known["alpha"]
    turned = less(add(theta, phi), alpha) if meeting.moving_corner else less(phi, theta, alpha)
    return times(rho, call("cos", turned)), _out_from_pin(case, meeting)


def _round_form(case: Case, meeting: Meeting) -> Term:
    """The angle from two centres that come within a distance: the law of cosines about the pin."""
    assert meeting.other is not None
    one = radius_of(case, meeting.moving, meeting.corner, "c")
    other = radius_of(case, meeting.standing, meeting.other, "s")
    phi = direction_of(case, meeting.moving, meeting.corner, "c")
    phi_s = direction_of(case, meeting.standing, meeting.other, "s")
    r = _radius(case, meeting)
    squares = less(add(times(one, one), times(other, other)), times(r, r))
    turn = call("arccos", over(squares, times(Number(2), times(one, other))))
    base = less(phi_s, phi)
    return less(base, turn) if meeting.sense > 0 else add(base, turn)


def _mark_angle(case: Case, meeting: Meeting, degrees: float) -> None:
    corner = meeting.corner if meeting.moving_corner else None
    marks, pin = case.work.marks, case.pin.at
    turn = math.radians(degrees)
    rho, phi = polar(pin, corner) if corner is not None else (case.h.O / 2, 0.0)
    ends = [(pin[0] + rho * math.cos(at), pin[1] + rho * math.sin(at)) for at in (phi, phi + turn)]
    # Large for the picture of the whole swing, small for the one about the hinge.
    arcs = tuple((pin, radius, phi, phi + turn) for radius in (rho / 2, _NEAR_THE_PIN))
    marks["theta"] = Mark(lines=((pin, ends[0]), (pin, ends[1])), arcs=arcs)
    if corner is not None:
        marks["rho_c"] = Mark(lines=((pin, ends[0]), (pin, ends[1])))
