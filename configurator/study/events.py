"""The moments of a swing worth stopping at: the latch edge closest, square open, the least gap, contact.

Worked out when asked for, from a study already made; a study holds none of it. Degrees and inches.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from configurator.geometry.edges import latch_edge_shape, strike_side
from configurator.geometry.gaps import LeastGap, polar_least_gap
from configurator.geometry.pin import TOLERANCE
from configurator.geometry.polar import seen_from
from configurator.geometry.shapes import Shape
from configurator.geometry.solve import Solution
from configurator.geometry.swing import Contact
from configurator.model.door import AngleStop
from configurator.rules.wording import hardware, obstruction
from configurator.study.candidate import Candidate, in_degrees
from configurator.study.run import Study

SAME_ANGLE = 1e-6
"""Degrees: events nearer together than this are one moment."""


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happens at an angle of the swing, in plain words and in the trade's.

    `distance` is the gap measured there, inches, None where nothing is measured. `of` are the places, in the
    study, of the candidates it happens to.
    """

    angle: float
    plain: str
    trade: str
    distance: float | None = None
    of: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Moment:
    """All that happens at one angle, degrees."""

    angle: float
    events: tuple[Event, ...]


def moments(study: Study) -> tuple[Moment, ...]:
    """Return every candidate's events, those at one angle together, in the order of the angles."""
    found: dict[tuple[str, float, float | None], Event] = {}
    for place, candidate in enumerate(study.candidates):
        for event in candidate_events(candidate):
            key = (event.trade, round(event.angle, 6), event.distance)
            known = found.get(key, event)
            found[key] = Event(known.angle, known.plain, known.trade, known.distance, (*known.of, place))
    in_order = sorted(found.values(), key=lambda event: event.angle)
    return tuple(Moment(bunch[0].angle, tuple(bunch)) for bunch in _together(in_order))


def _together(in_order: Sequence[Event]) -> list[list[Event]]:
    """Return the events in bunches, each of one angle."""
    bunches: list[list[Event]] = []
    for event in in_order:
        if bunches and event.angle - bunches[-1][-1].angle <= SAME_ANGLE:
            bunches[-1].append(event)
        else:
            bunches.append([event])
    return bunches


def next_moment(among: Sequence[Moment], angle: float) -> Moment | None:
    """Return the first moment past an angle, degrees; None past the last."""
    return next((moment for moment in among if moment.angle > angle + SAME_ANGLE), None)


def moment_before(among: Sequence[Moment], angle: float) -> Moment | None:
    """Return the last moment before an angle, degrees; None before the first."""
    return next((moment for moment in reversed(among) if moment.angle < angle - SAME_ANGLE), None)


def moment_at(among: Sequence[Moment], angle: float) -> Moment | None:
    """Return the moment at an angle, degrees; None where nothing happens."""
    return next((moment for moment in among if abs(moment.angle - angle) <= SAME_ANGLE), None)


def candidate_events(candidate: Candidate) -> tuple[Event, ...]:
    """Return what happens to one leaf on one hinge width as far as it goes, the chief thing first.

    Past that comes only where the leaf alone would be stopped, unless a door stop holds the leaf before.
    """
    solution, held, filled = candidate.solution, _held(candidate), candidate.filled
    stop = filled.opening.angle_stop(candidate.leaf)
    end = _end(solution) if held is None else held
    events = [Event(0.0, "closed", "closed"), end]
    events.append(Event(90.0, "square open", "square open, where the clear width counts"))
    if stop is not None and held_by(candidate) != "angle":
        events.append(_held_at(stop))
    events.append(Event(filled.wanted_angle, "must open to here", "wanted angle"))
    events += [*_latch_edge(solution), *_gap(solution, end.angle)]
    within = [event for event in events if event.angle <= end.angle + SAME_ANGLE]
    return (*within, *(_bare_end(solution) if held is None else ()))


def held_by(candidate: Candidate) -> Literal["", "tip", "angle"]:
    """Say what holds a leaf before anything else: a door stop's tip, a stop at an angle, or neither."""
    place, rests = candidate.door_stop, candidate.rests_at
    stop = candidate.filled.opening.stop_angle(candidate.leaf)
    if place is not None and place.holds and (place.rests_at or 0.0) <= rests + SAME_ANGLE:
        return "tip"
    return "angle" if stop is not None and stop < candidate.greatest_angle - SAME_ANGLE else ""


def _held(candidate: Candidate) -> Event | None:
    """The leaf at rest against a door stop, None where none holds it."""
    place, by = candidate.door_stop, held_by(candidate)
    if by == "angle":
        arm = candidate.filled.opening.angle_stop(candidate.leaf)
        return None if arm is None else _held_at(arm)
    if by == "" or place is None or place.rests_at is None:
        return None
    part = hardware(place.meets)
    return Event(
        place.rests_at, f"{part} rests against the {place.kind}", f"at rest: {part} on the {place.kind}"
    )


def _held_at(stop: AngleStop) -> Event:
    return Event(stop.angle, f"held by the {stop.name}", f"{stop.name} angle")


def _latch_edge(solution: Solution) -> Iterator[Event]:
    """The latch edge where it passes closest, unless it binds: that is the first contact."""
    passage = latch_passage(solution)
    if passage is not None:
        angle = in_degrees(passage.angle)
        yield Event(angle, "lock edge closest to the frame", "latch edge closest", passage.distance)


def latch_passage(solution: Solution) -> LeastGap | None:
    """Return how near the latch edge passes what it closes against over the whole swing, and where.

    None where it binds or closes against nothing.
    """
    h, pin, other = solution.hanging, solution.pin, solution.scene.other
    if solution.latch_edge_least <= TOLERANCE or (other is not None and not other.closed):
        return None
    side = strike_side(h, other)
    face = Shape((side.points[0], side.points[1]), kind=side.kind)
    edge = seen_from(pin.at, latch_edge_shape(h))
    return polar_least_gap((edge,), (seen_from(pin.at, face),), pin.at, math.pi)


def _gap(solution: Solution, reach: float) -> Iterator[Event]:
    gap = gap_on_the_way(solution, math.radians(reach))
    if gap is not None and gap.distance > TOLERANCE:
        thing = obstruction(gap.kind)
        angle = in_degrees(gap.angle)
        yield Event(angle, f"nearest to the {thing}", f"least gap to the {thing}", gap.distance)


def gap_on_the_way(solution: Solution, reach: float) -> LeastGap | None:
    """Return the nearest passage of the leaf to walls and what stands about, from closed to reach, radians.

    The barrels are left out: they turn about themselves, and are nowhere nearer than when closed. None where
    the leaf comes near nothing, or only moves away from it: closed it lies in its frame.
    """
    scene = solution.scene
    about = [part for part in scene.standing if part.shape.index is not None or part.shape.kind == "wall"]
    gap = polar_least_gap((scene.leaf,), about, solution.pin.at, reach)
    return gap if gap is not None and gap.angle > 0.0 else None


def _end(solution: Solution) -> Event:
    """What ends the swing."""
    whole = solution.with_hardware
    return Event(180.0, "open flat", "fully open") if whole is None else _meeting(whole, "", "first contact")


def _bare_end(solution: Solution) -> Iterator[Event]:
    """What would end the swing of the leaf alone, where it would go farther than with its hardware."""
    bare = solution.bare
    if bare is not None and bare.angle > solution.greatest_angle + TOLERANCE:
        yield _meeting(bare, " alone", "first contact, bare")


def _meeting(contact: Contact, alone: str, trade: str) -> Event:
    part, thing = hardware(contact.part), obstruction(contact.kind)
    angle = in_degrees(contact.angle)
    return Event(angle, f"{part}{alone} meets the {thing}", f"{trade}: {part} on the {thing}")
