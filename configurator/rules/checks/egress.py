"""Doors on accessible routes and beside corridors: what is checked, strictly, and what is not known."""

from collections.abc import Iterator
from dataclasses import dataclass

from configurator.geometry.clear_width import CLOSERS_AND_STOPS
from configurator.rules.checks.door_stop import square_open_mend
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.finding import Finding, Source, finding
from configurator.rules.hinge.answers import WidthAnswer, arm_or_stop, keeps_clear_width
from configurator.rules.hinge.width import NO_WIDTH, decided
from configurator.rules.wording import exactly, hardware, inches, remaining, size
from configurator.tables import limit, practice
from configurator.units import TOLERANCE

_SCOPE = "Check local codes; the authority decides."
WIDER_BY = 2.0
"""Inches: openings are made in steps of 2."""


@dataclass(frozen=True, slots=True)
class ClearWidthAsked:
    """A clear width that a code asks for, inches: strict, and the user's own margin over it.

    `by` says in words what asks for it.
    """

    strict: float
    margin: float
    by: str
    source: Source

    @property
    def least(self) -> float:
        """The clear width to keep, the margin with it."""
        return self.strict + self.margin


def clear_width_asked(filled: FilledOpening, leaf: str) -> ClearWidthAsked | None:
    """Return the clear width asked of a leaf; None where nothing asks for one.

    Of a pair the active leaf serves an accessible route, and both leaves open let beds through.
    """
    asked = []
    if filled.use.accessible and leaf != "inactive":
        asked.append(_accessible(filled, leaf))
    if filled.use.beds_moved and leaf != "active":
        row = limit("clear_width_beds")
        asked.append((row.value, "a doorway that beds are moved through", row.cited))
    if not asked:
        return None
    strict, by, source = max(asked, key=lambda one: one[0])
    return ClearWidthAsked(strict, filled.opening.use.clear_width_margin or 0.0, by, source)


def _accessible(filled: FilledOpening, leaf: str) -> tuple[float, str, Source]:
    """Return what an accessible route asks for, by what, and the section."""
    deep, row, by = limit("deep_opening"), limit("clear_width"), "an accessible route"
    if filled.depth > deep.value + TOLERANCE:
        row, by = limit("clear_width_deep"), f"an accessible opening deeper than {exactly(deep.value)}"
    stop = limit("alteration_stop")
    # A pair's active leaf ends at the other leaf: there is no stop that could stand in the way.
    taken = min(stop.value, filled.stop_height) if filled.opening.use.alteration and leaf != "active" else 0.0
    if taken <= TOLERANCE:
        return row.value, by, row.cited
    by = f"{by}, {exactly(row.value)} less {exactly(taken)} for the latch-side stop in an alteration,"
    return row.value - taken, by, stop.cited


def depth_findings(filled: FilledOpening, clear: float | None) -> Iterator[Finding]:
    """Yield a question where the depth is not known and a deep opening would ask for more clear width."""
    deep, more = limit("deep_opening"), limit("clear_width_deep")
    if not filled.use.accessible or filled.depth_known or (clear or 0.0) >= more.value - TOLERANCE:
        return
    message = (
        f"How thick the wall is was not said; {exactly(filled.depth)} is taken for the depth of the opening. "
        f"Deeper than {exactly(deep.value)} it takes a clear width of {exactly(more.value, 'up')}. "
        "Give the wall's thickness."
    )
    yield finding("depth not known", "note", message, more.cited, (), depth=filled.depth)


def clear_width_findings(
    leaf: str,
    opening: float,
    height: float,
    answer: WidthAnswer,
    asked: ClearWidthAsked,
    stop: float | None = None,
) -> tuple[Finding, ...]:
    """Return whether the clear width at 90 degrees is what is asked for; inches.

    What a code asks for is strict: 2010 ADA Standards 104.1.1. Short of it is an error, short of the margin
    alone a warning. `stop` is where a door stop holds the leaf.
    """
    least, clear = asked.least, answer.clear_width_at_90
    hinge = f"with a {size(height, answer.hinge_width)} hinge"
    if clear is None:
        holder = arm_or_stop(answer.filled, answer.leaf, answer.door_stop)
        message = (
            f"The door does not come to 90°, so there is no clear width to count; {asked.by} asks for "
            f"{exactly(least, 'up')}. {square_open_mend(stop, answer.greatest_angle_bare, holder)} {_SCOPE}"
        )
        return (finding("no clear width", "error", message, asked.source, required=least),)
    if keeps_clear_width(answer, least):
        spare = inches(clear - least, "down")
        message = f"Clear width {inches(clear, 'down')} at 90° {hinge}: {spare} to spare. {_SCOPE}"
        return (finding("clear width kept", "note", message, asked.source, clear_width=clear),)
    mends = f"{_instead(answer, least)} {_wider(leaf, opening, clear, least)} {_SCOPE}"
    return (_short(clear, asked, hinge, f"{mends}{_if_altered(answer, clear, asked)}"),)


def _instead(answer: WidthAnswer, least: float) -> str:
    """Return which width keeps the clear width and all else, and the word before another mend."""
    choice = decided(answer)
    if not choice.complete:
        return f"{NO_WIDTH} Take a"
    clear = answer.others(answer.leaf, choice.reason.value).clear_width_at_90
    leaves = "" if clear is None else f": it leaves {inches(clear - least, 'down')}"
    return f"Take {size(answer.hinge.height.value, choice.reason.value)}{leaves}. Or a"


def _if_altered(answer: WidthAnswer, clear: float, asked: ClearWidthAsked) -> str:
    """Return what a building that is altered may save, where nobody said whether this is one."""
    stop, filled = limit("alteration_stop"), answer.filled
    saves = filled.use.accessible and filled.opening.use.alteration is None and answer.leaf != "active"
    if not saves or asked.least - clear > min(stop.value, filled.stop_height) + TOLERANCE:
        return ""
    return f" Say if this is an alteration: its latch-side stop may take {exactly(stop.value)} of it."


def _short(clear: float, asked: ClearWidthAsked, hinge: str, mends: str) -> Finding:
    least, margin = asked.least, asked.margin
    short = least - clear
    has = f"Clear width {inches(clear, 'down')} at 90° {hinge}"
    if clear < asked.strict - TOLERANCE:
        lacks = f"short of {exactly(least, 'up')} by {inches(short, 'up')}"
        message = f"{has}, {lacks}: {asked.by} asks for it. {mends}"
        return finding("too narrow to pass", "error", message, asked.source, clear_width=clear, short=short)
    message = (
        f"{has} keeps {exactly(asked.strict, 'up')}, but not the margin of {exactly(margin)} asked over it: "
        f"short by {inches(short, 'up')}. {mends}"
    )
    source = practice("access_margin")
    return finding(
        "margin not kept", "warning", message, source, clear_width=clear, short=short, margin=margin
    )


def _wider(leaf: str, opening: float, clear: float, least: float) -> str:
    """Return in words what width would keep it; of a pair the active leaf has to grow, inch for inch."""
    steps = 1
    while clear + steps * WIDER_BY < least - TOLERANCE:
        steps += 1
    more = steps * WIDER_BY
    if leaf == "active":
        return (
            f"wider active leaf: {exactly(more)} more with this hinge gives {inches(clear + more, 'down')}."
        )
    return (
        f"wider opening: {exactly(opening + more)} wide with this hinge gives {inches(clear + more, 'down')}."
    )


@dataclass(frozen=True, slots=True)
class Corridor:
    """A corridor and how far the door stands out into it from the wall face; inches."""

    width: float
    required: float
    greatest: float
    at_rest: float
    flat: float | None
    """How far it stands out where it can open flat against the wall; None where it cannot."""


def corridor_findings(corridor: Corridor) -> tuple[Finding, ...]:
    """Return whether a door leaves half of the required width in any position and all but 7 in at rest."""
    share, rest = limit("encroachment_share"), limit("encroachment_at_rest")
    swinging = _remaining(
        corridor, corridor.greatest, corridor.required * share.value, "while it swings", share.cited
    )
    resting = _remaining(corridor, corridor.at_rest, corridor.required - rest.value, "at rest", rest.cited)
    found = [one for one in (swinging, resting) if one is not None]
    return tuple(found) or (_kept(corridor, rest.cited),)


def _remaining(corridor: Corridor, out: float, must: float, when: str, source: Source) -> Finding | None:
    remain = corridor.width - out
    if remain >= must - TOLERANCE:
        return None
    message = (
        f"In a corridor {exactly(corridor.width)} wide ({exactly(corridor.required, 'up')} required) the "
        f"door leaves {remaining(remain)} {when} and {exactly(must, 'up')} must remain: it fails. "
        f"{_flat(corridor, when)} Local codes and the authority decide; hardware may count too."
    )
    code = "corridor at rest" if when == "at rest" else "corridor in swing"
    return finding(code, "error", message, source, remain=remain, must=must)


def _flat(corridor: Corridor, when: str) -> str:
    if when != "at rest" or corridor.flat is None or corridor.flat >= corridor.at_rest:
        return "Set the door back in an alcove, swing it the other way, or widen the corridor."
    return f"Let it open flat against the wall: that leaves {remaining(corridor.width - corridor.flat)}."


def _kept(corridor: Corridor, source: Source) -> Finding:
    remain = corridor.width - corridor.at_rest
    worst = corridor.width - corridor.greatest
    message = (
        f"The door leaves {inches(worst, 'down')} of the corridor at the worst point of its swing and "
        f"{inches(remain, 'down')} at rest, enough for {exactly(corridor.required, 'up')} required. Local "
        "codes and the authority decide; check what else stands in the corridor."
    )
    return finding("corridor kept", "note", message, source, remain=remain, worst=worst)


MAY_HANG_LOWER = CLOSERS_AND_STOPS
"""Hardware that may come down to 78 in: 2010 ADA Standards 404.2.3, exception 2 (read)."""


@dataclass(frozen=True, slots=True)
class Projecting:
    """Something on the door's push face, which stands in the clear width at 90 degrees; inches."""

    kind: str
    projection: float
    bottom: float
    top: float


def projection_findings(thing: Projecting, clear: float | None, required: float) -> tuple[Finding, ...]:
    """Return whether hardware stands too far into the required clear width of an accessible route.

    2010 ADA Standards 404.2.3: nothing below 34 in, up to 4 in from there to 80; closers and stops may come
    down to 78. `clear` is the width at 90 degrees to the bare door, `required` what is asked.
    """
    low, most = limit("hardware_low"), limit("hardware_projection")
    high = limit("closer_low" if thing.kind in MAY_HANG_LOWER else "hardware_high")
    into = required - ((clear or 0.0) - thing.projection)
    if clear is None or into <= TOLERANCE or thing.bottom >= high.value - TOLERANCE:
        return ()
    if thing.bottom < low.value - TOLERANCE:
        allowed, where, row = 0.0, f"below {exactly(low.value)} above the floor nothing may", low
    else:
        allowed, where, row = (
            most.value,
            f"up to {exactly(high.value)} only {exactly(most.value, 'down')} may",
            most,
        )
    if into <= allowed + TOLERANCE:
        return ()
    message = (
        f"The {hardware(thing.kind)} stands {inches(into, 'up')} into the required clear width, "
        f"and {where}. Take one that stands out less, or a wider opening. {_SCOPE}"
    )
    return (finding("hardware in the way", "error", message, row.cited, into=into, allowed=allowed),)
