"""How far the door opens, and where it comes to rest: the closed form of the contact that decides it."""

import math

from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.polar import PolarShape, seen_from
from configurator.geometry.shapes import Shape, walls
from configurator.geometry.swing import Contact
from configurator.rules.hinge.answers import holder_of
from configurator.study.candidate import in_degrees
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.contact_form import closed_form
from configurator.study.derivation.lying import overlap_closed
from configurator.study.derivation.meetings import meeting_at
from configurator.study.derivation.passages import nearest_of
from configurator.study.derivation.terms import Number, Symbol, call
from configurator.study.stop_place import TIP
from configurator.tables import DoorStopKindRow, row_of

FLAT = 180.0


def opens_to_bare(case: Case) -> Symbol:
    """Work out how far leaf and barrel alone turn, degrees."""
    return _opens_to(case, case.solution.bare, bare=True)


def opens_to(case: Case) -> Symbol:
    """Work out how far the door turns with its hardware, degrees."""
    return _opens_to(case, case.solution.with_hardware, bare=False)


def rests(case: Case) -> Symbol:
    """Work out where the open door comes to rest, degrees: the least of its stops and of what it meets."""
    work, stop = case.work, case.candidate.door_stop
    greatest = case.candidate.greatest_angle
    held = stop.rests_at if stop is not None and stop.holds else None
    if held is not None and held <= min(greatest, case.stop_angle or FLAT):
        return _against_the_stop(case, held)
    if case.stop_angle is None or case.stop_angle >= greatest:
        return opens_to(case)
    name = holder_of(case.candidate.filled, case.candidate.leaf, None)
    holds = "an overhead stop" if name == "door stop" else f"the {name}"
    stop_letter = work.given("theta_stop", case.stop_angle, "angle", f"where {holds} holds the door")
    opened = work.given("theta_most", greatest, "angle", "how far the door could turn, with its hardware")
    work.angle = case.stop_angle
    return work.let("theta", call("min", stop_letter, opened), "angle", MEANINGS["theta"])


def _against_the_stop(case: Case, held: float) -> Symbol:
    place, point = case.candidate.door_stop, case.candidate.stop_tip
    assert place is not None
    assert point is not None
    bottom = 0.0 if row_of(DoorStopKindRow, place.kind).stands == "floor" else place.height - TIP / 2
    tip = Shape((point,), 0.0, bottom, place.height + TIP / 2, "door stop")
    moving = [part for part in (*case.scene.bare, *case.scene.hardware) if part.shape.kind == place.meets]
    case.work.say(f"The {place.meets} comes to the tip of the {place.kind}.")
    angle = math.pi if held == FLAT else math.radians(held)
    meeting = meeting_at(case.pin.at, moving, [seen_from(case.pin.at, tip)], angle)
    if meeting is None:
        return _flat(case)
    return closed_form(case, meeting, held)


def _opens_to(case: Case, contact: Contact | None, bare: bool) -> Symbol:
    if contact is None:
        _say_nothing_met(case, bare)
        return _flat(case)
    case.work.say(f"The {contact.part} meets the {contact.kind}.")
    moving = [part for part in _moving(case, bare) if part.shape.kind == contact.part]
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
    """Say that no contact comes before the half turn, and work out what passes nearest."""
    case.work.say("Nothing is met on the way: 180° is as far as the door is turned.")
    found = least_gaps(case.solution)
    gap = found.bare if bare else found.with_hardware
    if gap is None or gap.distance <= 0.0:
        return
    walls_of = [seen_from(case.pin.at, wall) for wall in walls(case.h, case.opening)]
    moving = [part for part in _moving(case, bare) if part.shape.kind == gap.part]
    standing = [
        part
        for part in (*case.scene.standing, *walls_of)
        if (part.shape.kind, part.shape.index) == (gap.kind, gap.index)
    ]
    nearest_of(case, gap, moving, standing, math.pi)


def _moving(case: Case, bare: bool) -> tuple[PolarShape, ...]:
    return case.scene.bare if bare else (*case.scene.bare, *case.scene.hardware)
