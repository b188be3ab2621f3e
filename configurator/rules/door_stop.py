"""What a door stop asked for keeps the door from: coming square open, or as far open as is wanted."""

from collections.abc import Iterator

from configurator.rules.finding import Finding, Fix, Source, finding
from configurator.rules.usual import FilledOpening
from configurator.rules.wording import degrees
from configurator.units import TOLERANCE

SQUARE = 90.0
_PLAN = Source("worked out from the plan", "derived")


def holds_short_of_square(stop: float | None) -> bool:
    """Say whether a door stop at that angle, degrees, keeps any door from coming square open."""
    return stop is not None and stop < SQUARE - TOLERANCE


def square_open_mend(stop: float | None, reaches: float) -> str:
    """Say what keeps a door from coming square open and what to do; degrees, `reaches` without the stop."""
    said = []
    if stop is not None and holds_short_of_square(stop):
        held = degrees(stop, SQUARE, "min")
        said.append(
            f"The door stop holds it at {held}, so it never comes square open; move the stop to 90° or more."
        )
    if not said or reaches < SQUARE - TOLERANCE:
        said.append("Move what is in its way.")
    return " ".join(said)


def door_stop_findings(filled: FilledOpening) -> Iterator[Finding]:
    """Yield whether the door stop holds the door short of the angle wanted of it, degrees."""
    stop, wanted = filled.opening.use.stop_angle, filled.wanted_angle
    if stop is None or stop >= wanted - TOLERANCE:
        return
    taken = "taken as wanted" if "use.wanted_angle" in filled.assumed else "wanted"
    held = degrees(stop, wanted, "min")
    message = (
        f"The door stop holds the door at {held}, short of the {degrees(wanted)} {taken}, and the hinge is "
        f"chosen for {degrees(wanted)}. Move the stop, or ask for no more than {held}."
    )
    fix = (Fix("use.wanted_angle", stop, f"Ask for {held}"),)
    yield finding("stop short of wanted", "note", message, _PLAN, fix, stop=stop, wanted=wanted)
