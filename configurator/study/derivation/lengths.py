"""The lengths about the pin, the clear width, and how far the door stands out, each from its formula."""

import math

from configurator.geometry.clear_width import CLOSER_LOW, HARDWARE_BAND, counts_in_width
from configurator.geometry.pin import TOLERANCE, Point
from configurator.geometry.polar import TAU
from configurator.geometry.shapes import Shape
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.meetings import polar
from configurator.study.derivation.pin_steps import across, inset, off_door, off_frame
from configurator.study.derivation.places import corner_letters
from configurator.study.derivation.polar_steps import direction_of, radius_of
from configurator.study.derivation.terms import Number, Symbol, Term, add, call, half, less, times
from configurator.study.derivation.working import Mark
from configurator.units import format_size

SQUARE, FLAT = 90.0, 180.0


def barrel_past_frame(case: Case) -> Symbol:
    """Work out how far the barrel stands out of the frame face, in."""
    formula = add(off_frame(case), half(case.letter("d_b")))
    _mark_barrel(case, 0.0)
    return case.work.let("B", formula, meaning=f"{MEANINGS['B']} of the frame face")


def barrel_past_wall(case: Case) -> Symbol:
    """Work out how far the barrel stands out of the wall face, in."""
    formula = add(off_frame(case), half(case.letter("d_b")), case.letter("p"))
    _mark_barrel(case, -case.h.p)
    return case.work.let("B", formula, meaning=f"{MEANINGS['B']} of the wall face")


def _mark_barrel(case: Case, face: float) -> None:
    x, y = case.pin.at
    case.work.marks["B"] = Mark(lines=(((x, face), (x, y + case.h.d_b / 2)),))


def clear_past_frame(case: Case) -> Symbol:
    """Work out how far the face of the door opened flat stands off the frame face, in."""
    case.work.angle = FLAT
    x = -case.h.F / 2
    case.work.marks["S"] = Mark(lines=(((x, 0.0), (x, 2 * case.pin.o - case.h.i)),))
    formula = less(times(Number(2), off_door(case)), inset(case))
    return case.work.let("S", formula, meaning=MEANINGS["S"])


# --- Clear width ---


def clear_width(case: Case) -> Symbol | None:
    """Work out the clear width with the door open 90 degrees, in; None where it does not come so far."""
    if case.candidate.clear_width_at_90 is None:
        _say_not_square(case)
        return None
    case.work.angle = SQUARE
    leaf = _leaf_across(case)
    other = case.scene.other
    if other is None:
        room: Term = less(less(case.letter("O"), case.letter("s")), leaf)
    elif other.closed:
        room = less(case.letter("O"), leaf)
    else:
        whole = case.work.given("O_2", other.opening, meaning=MEANINGS["O_2"])
        room = less(whole, leaf, leaf)
    _mark_clear(case)
    return case.work.let("C", _not_below_zero(room), meaning=MEANINGS["C"])


def _say_not_square(case: Case) -> None:
    rests = case.candidate.rests_at
    case.work.angle = rests
    case.work.given("theta", rests, "angle", "where the door rests; that number has its own working")
    case.work.say("The door does not come to 90°, where clear width is measured.")


def _leaf_across(case: Case) -> Term:
    """How far the leaf, or else the frame stop, reaches into the opening at 90 degrees."""
    stop = case.letter("s") if case.h.heel_stop else Number(0)
    return call("max", stop, add(across(case), off_door(case), case.letter("T")))


def _not_below_zero(term: Term) -> Term:
    return term if term.value >= 0.0 else call("max", Number(0), term)


def _mark_clear(case: Case) -> None:
    h, pin = case.h, case.pin
    near, y = max(h.heel_s, pin.x_p + pin.o + h.T), pin.y_p
    case.work.marks["C"] = Mark(lines=(((near, y), (case.scene.limit, y)),))


def hardware_taken(case: Case) -> Symbol | None:
    """Work out what hardware takes from the clear width at 90 degrees, in; None if it comes no farther."""
    if case.candidate.hardware_in_clear_width is None:
        _say_not_square(case)
        return None
    case.work.angle = SQUARE
    counted = [
        (index, part.shape) for index, part in enumerate(case.scene.hardware) if counts_in_width(part.shape)
    ]
    if not counted:
        low, high, closer = (format_size(height) for height in (*HARDWARE_BAND, CLOSER_LOW))
        case.work.say(
            f"Nothing on the leaf counts: from {low} to {high} in above the floor, a closer to {closer}."
        )
        return case.work.let("H", Number(0), meaning=MEANINGS["H"])
    corners = [(shape, point) for _, shape in counted for point in shape.points]
    # With the door square open, what stood farthest out of the push side reaches farthest across.
    shape, corner = max(corners, key=lambda one: one[0].radius - one[1][1])
    return case.work.let("H", _hardware_reach(case, shape, corner), meaning=MEANINGS["H"])


def _hardware_reach(case: Case, shape: Shape, corner: Point) -> Term:
    _, y = corner_letters(case, shape, corner, "c")
    reach: Term = less(across(case), less(y, off_frame(case)))
    if shape.radius:
        reach = add(reach, case.work.given("r", shape.radius, meaning=f"{shape.kind}: its radius"))
    limit = _limit(case)
    within = reach if reach.value <= limit.value else call("min", reach, limit)
    x_at = case.pin.x_p - (corner[1] - case.pin.y_p) + shape.radius
    y_at = case.pin.y_p + corner[0] - case.pin.x_p
    case.work.marks["H"] = Mark(lines=(((case.pin.x_p + case.pin.o + case.h.T, y_at), (x_at, y_at)),))
    return _not_below_zero(less(within, _leaf_across(case)))


def _limit(case: Case) -> Term:
    other = case.scene.other
    if other is None:
        return less(case.letter("O"), case.letter("s"))
    if other.closed:
        return case.letter("O")
    return less(case.work.given("O_2", other.opening, meaning=MEANINGS["O_2"]), _leaf_across(case))


# --- How far it stands out ---


def stands_out(case: Case) -> Symbol:
    """Work out how far the leaf alone stands out from the wall face at most over its swing, in."""
    reach = case.solution.rest_angle_bare
    leaf = case.scene.leaf.shape
    corner = max(leaf.points, key=lambda one: _farthest(case, one, reach)[0])
    out, angle = _farthest(case, corner, reach)
    case.work.angle = math.degrees(angle)
    _mark_out(case, corner, angle)
    rho = radius_of(case, leaf, corner, "c")
    if abs(out - rho.value) > TOLERANCE:
        phi = direction_of(case, leaf, corner, "c")
        theta = case.work.given(
            "theta",
            case.work.angle,
            "angle",
            "where the swing that counts begins or ends; see its own working",
        )
        rho_out: Term = times(rho, call("sin", add(phi, theta)))
    else:
        rho_out = rho
        case.work.say("A corner passes straight out from the pin on its way.")
    formula = add(off_frame(case), rho_out, case.letter("p"))
    return case.work.let("E", formula, meaning=f"{MEANINGS['E']}, at most")


def _farthest(case: Case, corner: Point, reach: float) -> tuple[float, float]:
    """How far out of the pin a corner comes over the swing, in, and at which angle, radians."""
    rho, phi = polar(case.pin.at, corner)
    straight = (math.pi / 2 - phi) % TAU
    if straight <= reach:
        return rho, straight
    return max((rho * math.sin(phi + angle), angle) for angle in (0.0, reach))


def stands_out_at_rest(case: Case) -> Symbol:
    """Work out how far the leaf stands out from the wall face where the door rests, in."""
    work, leaf = case.work, case.scene.leaf.shape
    rest = case.solution.rest_angle
    work.angle = case.candidate.rests_at
    corner = max(leaf.points, key=lambda one: _out_at(case, one, rest))
    _mark_out(case, corner, rest)
    x, y = corner_letters(case, leaf, corner, "c")
    theta = work.given("theta", work.angle, "angle", "where the door rests; that number has its own working")
    sideways = times(less(x, across(case)), call("sin", theta))
    straight = times(less(y, off_frame(case)), call("cos", theta))
    formula = add(off_frame(case), sideways, straight, case.letter("p"))
    return work.let("E", formula, meaning=f"{MEANINGS['E']}, at rest")


def _out_at(case: Case, corner: Point, angle: float) -> float:
    rho, phi = polar(case.pin.at, corner)
    return rho * math.sin(phi + angle)


def _mark_out(case: Case, corner: Point, angle: float) -> None:
    rho, phi = polar(case.pin.at, corner)
    x, y = case.pin.x_p + rho * math.cos(phi + angle), case.pin.y_p + rho * math.sin(phi + angle)
    case.work.marks["E"] = Mark(lines=(((x, -case.h.p), (x, y)),))
    case.work.marks["rho_c"] = Mark(lines=((case.pin.at, (x, y)),))
