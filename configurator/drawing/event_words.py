"""A moment of the swing in words: the angle, what happens there, how near, and with which hinge."""

from configurator.study.events import Event, Moment
from configurator.study.records import Study
from configurator.units import Display


def moment_words(moment: Moment, study: Study, display: Display, plain: bool = False) -> str:
    """Return one line: `0.9°: latch edge closest, 1/16 in (4 in hinge)`.

    No hinge is named for what happens with every one; `plain` puts it in plain words.
    """
    said = "; ".join(_event(event, study, display, plain) for event in moment.events)
    return f"{display.angle(moment.angle)}: {said}"


def _event(event: Event, study: Study, display: Display, plain: bool) -> str:
    words = event.plain if plain else event.trade
    if event.distance is not None:
        words += f", {display.length(event.distance, limit=0.0)}"
    if len(event.of) == len(study.candidates):
        return words
    return f"{words} ({', '.join(_hinge(study, place, display) for place in event.of)})"


def _hinge(study: Study, place: int, display: Display) -> str:
    candidate = study.candidates[place]
    width = display.size(0, candidate.hinge_width).split(" x ")[1]
    leaf = "" if candidate.leaf == "single" else f", {candidate.leaf} leaf"
    return f"{width} in hinge{leaf}"
