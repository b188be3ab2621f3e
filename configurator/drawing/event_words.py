"""A moment of the swing in words: the angle, what happens there, how near, and with which hinge."""

from collections.abc import Sequence

from configurator.study import Study
from configurator.study.events import Event, Moment
from configurator.units import Display, format_size


def moment_words(moment: Moment, study: Study, display: Display, plain: bool = False) -> str:
    """Return one line: `0.9°: latch edge closest, 1/16 in (4 in hinge)`.

    No hinge is named for what happens with every one; `plain` puts it in plain words.
    """
    alike = dict.fromkeys(event.of for event in moment.events)
    said = [_events([one for one in moment.events if one.of == of], study, display, plain) for of in alike]
    return f"{display.angle(moment.angle)}: {'; '.join(said)}"


def _events(alike: Sequence[Event], study: Study, display: Display, plain: bool) -> str:
    """Say what happens with the same hinges, and with which where it is not with all."""
    words = "; ".join(_event(event, display, plain) for event in alike)
    of = alike[0].of
    if len(of) == len(study.candidates):
        return words
    return f"{words} ({', '.join(_hinge(study, place) for place in of)})"


def _event(event: Event, display: Display, plain: bool) -> str:
    words = event.plain if plain else event.trade
    return words if event.distance is None else f"{words}, {display.length(event.distance, 'down')}"


def _hinge(study: Study, place: int) -> str:
    candidate = study.candidates[place]
    leaf = "" if candidate.leaf == "single" else f", {candidate.leaf} leaf"
    return f"{format_size(candidate.hinge_width)} in hinge{leaf}"
