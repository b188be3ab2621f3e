"""What there is to say of a leaf that hangs on something else than a butt of some width."""

import math
from collections.abc import Iterator, Sequence

from configurator.model import Way
from configurator.model.opening import MOST_COMPARED
from configurator.model.words import WayKind
from configurator.rules.filling.usual import FilledOpening
from configurator.rules.filling.ways import FilledWay
from configurator.rules.finding import Finding, Fix, Severity, Source, finding
from configurator.rules.hinge.answers import WidthAnswer, wanted_angle
from configurator.rules.hinge.electric import beside_the_hinges, wires_asked
from configurator.rules.hinge.leaf_hinge import NOTHING_ASKED, LeafHinge
from configurator.rules.wording import an, degrees, exactly, inches, leaf_named, pounds
from configurator.tables import WayRow, limit, practice, row_of
from configurator.units import TOLERANCE

_PLAN = Source("worked out from the plan", "derived")


def on_way(way: FilledWay, leaf: str = "single") -> str:
    """Return the start of a sentence about a leaf that hangs so: `On an offset pivot`."""
    side = f"Swung to the {way.toward} side on" if way.double_acting else "On"
    return f"{side} {an(way.kind_with_axis)}{leaf_named(leaf, ' ({})')}"


def heel_meets(answer: WidthAnswer) -> bool:
    """Return whether the heel of the leaf meets its own frame before the door is open as wanted."""
    met, way = answer.stopped_by_bare, answer.way
    if way is None or met is None or met.at_rest or met.kind not in ("frame", "stop"):
        return False
    return way.from_heel > 0.0 and answer.greatest_angle_bare < min(wanted_angle(answer), 90.0) - TOLERANCE


def way_findings(answer: WidthAnswer, way: FilledWay) -> Iterator[Finding]:
    """Yield what is known of the way itself: a heel that binds, an axis to ask for, a fire door."""
    if heel_meets(answer):
        yield _heel(answer, way)
    if way.assumed and way.toward == "pull" and way.kind != "butt hinge":
        yield _axis_to_ask(answer, way)
    if way.row.turns_on == "pivots" and way.toward == "pull":
        yield from _wires_on_pivots(answer, way)
    if way.double_acting and way.toward == "pull":
        yield _no_stop(answer, way)
        if answer.filled.use.fire_rated:
            yield _on_a_fire_door(way)


def _heel(answer: WidthAnswer, way: FilledWay) -> Finding:
    """Say where the heel binds, and by how much more room it would pass."""
    angle, met, thick = answer.greatest_angle_bare, answer.stopped_by_bare, answer.filled.thickness
    on_stop = met is not None and met.kind == "stop"
    # The corner comes as far as its distance from the axis: sideways to the jamb, or back to the stop.
    inside = max(abs(way.off_face), abs(way.off_face + thick))
    straight = abs(way.off_face + thick) if on_stop else way.from_heel
    room = math.hypot(way.from_heel, inside) - straight
    mend = (
        f"Leave more than {inches(room, 'up')} between the door and its stop there"
        if on_stop
        else f"Leave more than {inches(room, 'up')} between the door and the jamb there"
    )
    message = (
        f"{on_way(way, answer.leaf)} the heel of the door meets the {'stop' if on_stop else 'frame'} at "
        f"{degrees(angle)}. {mend}, or have the heel edge rounded as the drawing of the {way.kind} shows."
    )
    return finding("heel binds", "error", message, _PLAN, (), angle=angle, gap_needed=room)


def _axis_to_ask(answer: WidthAnswer, way: FilledWay) -> Finding:
    off, heel = way.off_face, way.from_heel
    where = f"{exactly(abs(off))} {'off' if off >= 0 else 'inside'} the door's pull face"
    where += f" and {exactly(abs(heel))} {'from' if heel >= 0 else 'beyond'} its heel edge"
    message = (
        f"The axis of the {way.kind} is taken at its usual place, {where}. The angle and the clear width "
        "stand on it. Ask for its drawing before ordering."
    )
    severity: Severity = "warning" if answer.filled.use.accessible else "note"
    return finding("axis not given", severity, message, way.row.cited, (), off_face=off, from_heel=heel)


def _wires_on_pivots(answer: WidthAnswer, way: FilledWay) -> Iterator[Finding]:
    asked = answer.filled.opening.hinge or NOTHING_ASKED
    if wires_asked(asked) and not beside_the_hinges(asked):
        message = (
            f"The door is to have wires, and {an(way.kind)} of the usual kind carries none. Take a door loop "
            "or a concealed transfer, or ask for a pivot made for wires."
        )
        fix = (Fix("hinge.transfer", "door loop", "Take a door loop"),)
        yield finding(
            "wires on pivots", "warning", message, practice("transfer"), fix, wires=asked.wires or 0
        )


def _no_stop(answer: WidthAnswer, way: FilledWay) -> Finding:
    message = (
        f"A door on a {way.kind} swings both ways: its frame is taken without a stop, and the door where the "
        f"rabbet would put it, {exactly(answer.filled.inset)} behind the frame's pull face. Say so to "
        "whoever makes the frame."
    )
    return finding("no stop in the frame", "note", message, practice("double_acting"))


def _on_a_fire_door(way: FilledWay) -> Finding:
    message = (
        f"A fire door has to latch, and a door on a {way.kind} that swings both ways does not of itself. Ask "
        "for its listing, or hang the door another way."
    )
    return finding("way on a fire door", "error", message, practice("double_acting_fire"))


def ways_worth_comparing(
    filled: FilledOpening, hinges: Sequence[LeafHinge], entries: Sequence[float | Way]
) -> Iterator[Finding]:
    """Yield another way to hang the door that speaks for itself here, where it is not compared yet.

    A door whose clear width wants swing clear hinges is told with what mends that.
    """
    if filled.opening.hung_on != "butt hinges":
        return
    compared = {one.hung_on for one in entries if isinstance(one, Way)}
    for kind, why, key in _speaking_for(filled, hinges):
        if kind not in compared and len(entries) < MOST_COMPARED:
            message = (
                f"{why} Add it to compare before butts are ordered; what is cut for it: "
                f"{row_of(WayRow, kind).let_in}."
            )
            label = f"Compare {an(kind)} too"
            fix = Fix("compare", (*entries, Way(hung_on=kind)), label)
            yield finding("another way to hang it", "note", message, practice(key), (fix,))


def _speaking_for(filled: FilledOpening, hinges: Sequence[LeafHinge]) -> Iterator[tuple[WayKind, str, str]]:
    """Yield a way, why, and the key of where that comes from."""
    used_much = filled.use.traffic == "high" and "use.traffic" not in filled.assumed
    heaviest = max((one.door_weight.low for one in hinges if one.door_weight is not None), default=0.0)
    if used_much and heaviest >= limit("heavy_door").value:
        why = (
            f"A door of {pounds(heaviest, 'down')} or more that many people use wears its butts; a "
            "continuous hinge carries it along its whole edge."
        )
        yield "continuous hinge", why, "way_continuous"
    if filled.opening.frame.kind == "aluminum storefront":
        yield "offset pivot", "Storefront doors are commonly hung on offset pivots.", "way_offset"
