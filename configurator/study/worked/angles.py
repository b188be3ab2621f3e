"""How far the door opens, and where it comes to rest: the closed form of the contact that decides it."""

import math
from collections.abc import Sequence

from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.polar import PolarShape, seen_from
from configurator.geometry.shapes import Shape
from configurator.geometry.swing import Contact
from configurator.study.candidate import in_degrees
from configurator.study.stop_place import TIP
from configurator.study.worked.case import Case
from configurator.study.worked.lying import overlap_closed
from configurator.study.worked.meanings import MEANINGS
from configurator.study.worked.meetings import Meeting, meeting_at, polar
from configurator.study.worked.polar_steps import direction_of, normal_of, out_of_line, pin_along, radius_of
from configurator.study.worked.terms import Number, Symbol, Term, add, call, less, over, times
from configurator.study.worked.working import Mark

FLAT = 180.0
_NEAR_THE_PIN = 1.25
"""Inches: the radius of an arc that is to be seen close to the pin."""


def opens_to_bare(case: Case) -> Symbol:
    """Work out how far leaf and barrel alone turn, degrees."""
    return _opens_to(case, case.solution.bare, case.scene.bare, bare=True)


def opens_to(case: Case) -> Symbol:
    """Work out how far the door turns with its hardware, degrees."""
    parts = (*case.scene.bare, *case.scene.hardware)
    return _opens_to(case, case.solution.with_hardware, parts, bare=False)


def rests(case: Case) -> Symbol:
    """Work out where the open door comes to rest, degrees: the least of its stops and of what it meets."""
    work, stop = case.work, case.candidate.door_stop
    greatest = case.candidate.greatest_angle
    held = stop.rests_at if stop is not None and stop.holds else None
    if held is not None and held <= min(greatest, case.stop_angle or FLAT):
        return _against_the_stop(case, held)
    if case.stop_angle is None or case.stop_angle >= greatest:
        return opens_to(case)
    stop_letter = work.given("theta_stop", case.stop_angle, "angle", "where an overhead stop holds the door")
    opened = work.given("theta_most", greatest, "angle", "how far the door could turn, with its hardware")
    work.angle = case.stop_angle
    return work.let("theta", call("min", stop_letter, opened), "angle", MEANINGS["theta"])


def _against_the_stop(case: Case, held: float) -> Symbol:
    place = case.candidate.door_stop
    assert place is not None
    point = (-case.h.F - place.from_frame, place.projection - case.h.p)
    bottom = 0.0 if place.kind == "floor stop" else place.height - TIP / 2
    tip = Shape((point,), 0.0, bottom, place.height + TIP / 2, "door stop")
    moving = [part for part in (*case.scene.bare, *case.scene.hardware) if part.shape.kind == place.meets]
    case.work.say(f"The {place.meets} comes to the tip of the {place.kind}.")
    angle = math.pi if held == FLAT else math.radians(held)
    meeting = meeting_at(case.pin.at, moving, [seen_from(case.pin.at, tip)], angle)
    if meeting is None:
        return _flat(case)
    return closed_form(case, meeting, held)


def _opens_to(case: Case, contact: Contact | None, parts: Sequence[PolarShape], bare: bool) -> Symbol:
    if contact is None:
        _say_nothing_met(case, bare)
        return _flat(case)
    case.work.say(f"The {contact.part} meets the {contact.kind}.")
    moving = [part for part in parts if part.shape.kind == contact.part]
    standing = [
        part
        for part in case.scene.standing
        if (part.shape.kind, part.shape.index) == (contact.kind, contact.index)
    ]
    meeting = None if contact.at_rest else meeting_at(case.pin.at, moving, standing, contact.angle)
    if meeting is None:
        overlap_closed(case, moving, standing)
        return case.work.let("theta", Number(0, "angle"), "angle", MEANINGS["theta"])
    return closed_form(case, meeting, in_degrees(contact.angle))


def _flat(case: Case) -> Symbol:
    case.work.angle = FLAT
    return case.work.let("theta", Number(FLAT, "angle"), "angle", MEANINGS["theta"])


def _say_nothing_met(case: Case, bare: bool) -> None:
    """Say that no closed form below the half turn is one of a contact, and how near the door passes."""
    case.work.say("Nothing is met on the way: 180° is as far as the door is turned.")
    found = least_gaps(case.solution)
    gap = found.bare if bare else found.with_hardware
    if gap is not None and math.isfinite(gap.distance) and gap.distance > 0.0:
        case.work.given("G", gap.distance, meaning=f"nearest the {gap.part} passes the {gap.kind}")
        case.work.marks["G"] = Mark(lines=((gap.point_moving, gap.point_standing),))


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
