"""Door stops: where one goes, what it keeps the door from, and what is wrong with where one stands."""

from collections.abc import Iterator

from configurator.model.door import AngleStop
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Fix, Source, finding
from configurator.rules.hinge.answers import StopPlace, WidthAnswer, reaches, wanted_angle
from configurator.rules.hinge.width import NO_WIDTH, instead
from configurator.rules.wording import degrees, exactly, hardware, inches, obstruction
from configurator.tables import DoorStopKindRow, HardwareKindRow, limit, row_of
from configurator.units import TOLERANCE, rounded

SQUARE = 90.0
_PLAN = Source("worked out from the plan", "derived")
_PRACTICE = Source("common practice, no source", "common practice")
_USUAL = Source("worked out from the plan, for a tip that stands off so far; from memory", "from memory")
#: What no door stop can keep a door from: its own frame, and the other leaf.
_OWN = ("frame", "latch jamb", "stop", "other leaf")


def holds_short_of_square(stop: float | None) -> bool:
    """Return whether a door stop at that angle, degrees, keeps any door from coming square open."""
    return stop is not None and stop < SQUARE - TOLERANCE


def square_open_mend(stop: float | None, opens_to: float, name: str = "door stop") -> str:
    """Return what keeps a door from opening square, and the mend; degrees, `opens_to` without the stop.

    `name` is what the stop is called.
    """
    said = []
    if stop is not None and holds_short_of_square(stop):
        held = degrees(stop)
        said.append(
            f"The {name} holds it at {held}, so it never comes square open; "
            f"{'move the stop to' if name == 'door stop' else 'have it set for'} 90° or more."
        )
    if not said or opens_to < SQUARE - TOLERANCE:
        said.append("Move what is in its way.")
    return " ".join(said)


def door_stop_findings(filled: FilledOpening) -> Iterator[Finding]:
    """Yield a note where a stop at an angle, or an arm, holds a leaf short of the wanted angle, degrees."""
    wanted = filled.wanted_angle
    stops = (filled.opening.angle_stop(leaf.name) for leaf in leaves_of(filled))
    for stop in dict.fromkeys(stop for stop in stops if stop and stop.angle < wanted - TOLERANCE):
        yield _short_of_wanted(filled, stop)


def _short_of_wanted(filled: FilledOpening, stop: AngleStop) -> Finding:
    wanted, held = filled.wanted_angle, degrees(stop.angle)
    taken = "taken as wanted" if "use.wanted_angle" in filled.assumed else "wanted"
    mend = "Move the stop" if stop.name == "door stop" else "Take one that opens farther"
    message = (
        f"The {stop.name} holds the door at {held}, short of the {degrees(wanted, 'up')} {taken}, and the "
        f"hinge is chosen for {degrees(wanted, 'up')}. {mend}, or ask for no more than {held}."
    )
    fix = (Fix("use.wanted_angle", stop.angle, f"Ask for {held}"),)
    return finding("stop short of wanted", "note", message, _PLAN, fix, stop=stop.angle, wanted=wanted)


def place_words(place: StopPlace) -> str:
    """Return a stop and its place in words: `a wall bumper 1 in off the wall, 29-1/16 in along ...`."""
    return (
        f"a {place.kind} whose tip is {exactly(place.projection)} off the wall, "
        f"{inches(place.from_frame)} along the wall from the frame ({inches(place.from_pin)} from the pin) "
        f"and {exactly(place.height)} above the floor"
    )


def place_fix(place: StopPlace, alone: bool) -> tuple[Fix, ...]:
    """Return the one click that puts the stop there; of two leaves each keeps a place of its own."""
    value: dict[str, float | str] = {"kind": place.kind, "projection": place.projection}
    if alone:
        value |= {"from_frame": place.from_frame, "height": place.height}
    return (Fix("door_stop", value, f"Put the {place.kind} there"),)


def where_a_stop_goes(answer: WidthAnswer, hinge: str) -> Iterator[Finding]:
    """Yield what hardware or leaf meets before 180 degrees, and where a stop goes that prevents it."""
    place, meets_first = answer.stop_wanted, hardware_first(answer)
    fix = () if place is None else place_fix(place, answer.leaf == "single")
    if meets_first and answer.greatest_angle <= TOLERANCE:
        yield _never_opens(answer, hinge)
    elif meets_first:
        (part, thing), wanted = _met(answer), wanted_angle(answer)
        message = (
            f"{hinge} the {hardware(part)} meets the {obstruction(thing)} at "
            f"{degrees(answer.greatest_angle)}. "
            f"{_hardware_mend(thing, place)}{_no_wider(answer)}."
        )
        numbers = {"angle": answer.greatest_angle, "wanted": wanted} | _numbers(place)
        yield finding("hardware meets first", "note", message, _PLAN, fix, **numbers)
    elif place is not None and answer.stopped_by is not None and not short_of_wanted(answer):
        part, thing = _met(answer)
        message = (
            f"{hinge} the {hardware(part)} meets the {obstruction(thing)} at "
            f"{degrees(answer.greatest_angle)}. Fit {place_words(place)}: the door then rests at "
            f"{degrees(place.rests_at or 0.0)}."
        )
        yield finding(
            "where a stop goes", "note", message, _PLAN, fix, angle=answer.greatest_angle, **_numbers(place)
        )


def _never_opens(answer: WidthAnswer, hinge: str) -> Finding:
    """Return the finding for hardware that meets something before the door has moved at all."""
    part, thing = _met(answer)
    message = (
        f"{hinge} the {hardware(part)} meets the {obstruction(thing)} with the door closed: the door cannot "
        f"open. Move it farther from the {obstruction(thing)}, or take one that stands out "
        f"less{_no_wider(answer)}."
    )
    return finding("hardware meets first", "error", message, _PLAN, angle=0.0, wanted=wanted_angle(answer))


def _no_wider(answer: WidthAnswer) -> str:
    """Return that no wider hinge helps what the door carries; nothing where the door itself takes another."""
    other = short_of_wanted(answer) or instead(answer) not in ("", NO_WIDTH)
    return "" if other else "; a wider hinge is not the answer"


def _met(answer: WidthAnswer) -> tuple[str, str]:
    """Return the part that meets something, and what it meets."""
    met = answer.stopped_by
    return ("leaf", "wall") if met is None else (met.part, met.kind)


def hardware_first(answer: WidthAnswer) -> bool:
    """Return whether hardware ends the swing before the leaf does, and short of what is wanted.

    Hardware that laps the other leaf holds it shut from the start, which is said of the opening.
    """
    met = answer.stopped_by
    return (
        met is not None
        and (met.kind != "other leaf" or answer.greatest_angle > 0.0)
        and met.part not in ("leaf", "barrel")
        and answer.greatest_angle < min(answer.greatest_angle_bare, wanted_angle(answer)) - TOLERANCE
    )


def short_of_wanted(answer: WidthAnswer) -> bool:
    """Return whether the leaf alone is stopped short of the angle wanted."""
    return answer.stopped_by_bare is not None and not reaches(answer, wanted_angle(answer))


def stop_there(place: StopPlace | None) -> str:
    """Return the end of a sentence: where a stop goes that keeps the leaf off what it would meet."""
    if place is None:
        return "fit a door stop there"
    return f"fit {place_words(place)}, to rest at {degrees(place.rests_at or 0.0)}"


def _hardware_mend(thing: str, place: StopPlace | None) -> str:
    """Return the mend in words. No stop helps where hardware meets the door's own frame or other leaf."""
    if thing in _OWN:
        return f"Move it farther from the {thing}, or take one that stands out less"
    if place is None:
        return "Fit a bumper or a floor stop there"
    return f"Fit {place_words(place)}: the door then rests at {degrees(place.rests_at or 0.0)}"


def _numbers(place: StopPlace | None) -> dict[str, float]:
    if place is None:
        return {}
    return {
        "rests_at": place.rests_at or 0.0,
        "from_frame": place.from_frame,
        "from_pin": place.from_pin,
        "height": place.height,
        "projection": place.projection,
    }


def stop_findings(answer: WidthAnswer, hinge: str) -> Iterator[Finding]:
    """Yield where the door rests against the given stop, or why it does not come to it."""
    place = answer.door_stop
    if place is None:
        return
    if place.fault:
        code, message = _fault(answer, place, hinge)
        yield finding(code, "warning", message, _PLAN, (), **_numbers(place))
    if place.holds:
        yield from _rests(answer, place, hinge)
    yield from _where_people_walk(place)


def _where_people_walk(place: StopPlace) -> Iterator[Finding]:
    """Caution where a stop stands out so far that people may walk into it, or trip over it."""
    most = limit("protruding_most")
    if place.projection <= most.value + TOLERANCE:
        return
    stands = f"The {place.kind} stands {exactly(place.projection, 'up')} off the wall"
    numbers = {"projection": place.projection, "height": place.height}
    if row_of(DoorStopKindRow, place.kind).stands == "floor":
        message = f"{stands}: it may be tripped over. Check that nobody walks there; local codes decide."
        yield finding("stop underfoot", "note", message, _PRACTICE, (), **numbers)
    elif limit("protruding_low").value < place.height <= limit("protruding_high").value:
        message = (
            f"{stands}; where people walk nothing may stand out more than {exactly(most.value, 'down')} from "
            "27 to 80 in above the floor. Take a shorter one, set it lower, or check that nobody walks "
            "there; local codes decide."
        )
        yield finding("stop where people walk", "warning", message, most.cited, (), **numbers)


def _rests(answer: WidthAnswer, place: StopPlace, hinge: str) -> Iterator[Finding]:
    rests, arm = place.rests_at or 0.0, answer.filled.opening.angle_stop(answer.leaf)
    if arm is not None and arm.angle < rests - TOLERANCE:
        message = (
            f"{hinge} the {arm.name} at {degrees(arm.angle)} holds the door before it comes to the "
            f"{place.kind} at {degrees(rests, 'up')}. Take one of the two out, unless both "
            "are wanted."
        )
        yield finding("two door stops", "note", message, _PLAN, (), stop=arm.angle, **_numbers(place))
        return
    asked, wanted = "", answer.filled.opening.use.wanted_angle
    fix: tuple[Fix, ...] = ()
    if wanted is not None and rests < wanted - TOLERANCE:
        least = rounded(rests, 10, "down")
        asked = f", short of the {degrees(wanted, 'up')} wanted"
        fix = (Fix("use.wanted_angle", least, f"Ask for {degrees(least)}"),)
    message = (
        f"{hinge} the {hardware(place.meets)} comes to rest at {degrees(rests)} "
        f"against {place_words(place)}{asked}. {_struck(place)}Confirm the tip from the stop's own drawing."
    )
    yield finding("where the door rests", "note", message, _USUAL, fix, **_numbers(place))


def _struck(place: StopPlace) -> str:
    """Return the advice to set a stop clear of what the leaf carries and is not made to strike it."""
    if place.meets in ("leaf", "barrel") or row_of(HardwareKindRow, place.meets).meets_bumper:
        return ""
    return f"Set it where it meets the leaf, clear of the {hardware(place.meets)}. "


def _fault(answer: WidthAnswer, place: StopPlace, hinge: str) -> tuple[str, str]:
    """Return the code and the sentence of what is wrong with a stop's place."""
    stop, where = place.kind, f"{inches(place.from_frame)} along the wall from the frame"
    match place.fault:
        case "misses":
            low, high = exactly(answer.hinge.leaf.bottom), exactly(answer.hinge.leaf.top)
            return "stop misses the leaf", (
                f"{hinge} the {stop} stands {exactly(place.height)} above the floor and the leaf from {low} "
                f"to {high}: nothing comes to it. Set it at another height, or take another kind of stop."
            )
        case "in the doorway":
            return "stop in the doorway", (
                f"{hinge} a {stop} {exactly(place.projection)} off the wall would have to stand in front of "
                "the doorway to be met. Take one that stands out less."
            )
        case "never met":
            return "stop never met", (
                f"{hinge} the door never comes to the {stop} {where} and {exactly(place.projection)} off the "
                f"wall. Set it no farther along than {inches(place.reach, 'down')}, or take one that stands "
                "out more."
            )
        case "near the edge":
            return "stop near the edge", (
                f"{hinge} the {stop} {where} meets the outer inch of the leaf, or only its edge. Set it no "
                f"farther along than {inches(place.reach, 'down')}."
            )
        case "buried":
            return "stop behind trim", (
                f"{hinge} the {stop} {where} has its tip inside what stands along the wall there. Take one "
                "that stands out more, or move it to another height."
            )
    (part, thing), opens = _met(answer), answer.greatest_angle
    return "stop met too late", (
        f"{hinge} the {hardware(part)} meets the {obstruction(thing)} at {degrees(opens)}, before the door "
        f"comes to the {stop} at {degrees(place.rests_at or 0.0, 'up')}. Move the stop, or take one that "
        "stands out more."
    )
