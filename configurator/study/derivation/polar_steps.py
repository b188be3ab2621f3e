"""The letters of the closed form: a corner's radius and direction, a line's normal and place."""

import math

from configurator.geometry.pin import Point
from configurator.geometry.shapes import Shape
from configurator.study.derivation.case import MEANINGS, Case
from configurator.study.derivation.meetings import Line, polar
from configurator.study.derivation.pin_steps import across, off_frame
from configurator.study.derivation.places import corner_letters, place_of
from configurator.study.derivation.terms import Negative, Number, Symbol, Term, add, call, less, times
from configurator.study.derivation.working import Mark

_LEVEL = 1e-12
_MARKED = 48.0
"""No line is marked farther than this along from the origin of the plan, inches."""
_AXES = {0: ("x", 1), 1: ("y", 1), 2: ("x", -1), -2: ("x", -1), -1: ("y", -1)}
"""Along which axis a normal points, and which way, by its quarter turns from across the opening."""


def radius_of(case: Case, shape: Shape, corner: Point, which: str) -> Symbol:
    """Work out a corner's distance from the pin; `which` is c for a moving corner, s for a standing one."""
    x, y = _from_the_pin(case, shape, corner, which)
    name = f"rho_{which}"
    case.work.marks[name] = Mark(lines=((case.pin.at, corner),))
    return case.work.let(name, call("hypot", x, y), meaning=MEANINGS[name])


def direction_of(case: Case, shape: Shape, corner: Point, which: str) -> Symbol:
    """Work out a corner's direction from the pin, counted from straight across the opening."""
    x, y = _from_the_pin(case, shape, corner, which)
    name = f"phi_{which}"
    rho, phi = polar(case.pin.at, corner)
    level = (case.pin.at, (case.pin.x_p + rho, case.pin.y_p))
    arc = (case.pin.at, rho / 3, min(phi, 0.0), max(phi, 0.0))
    case.work.marks[name] = Mark(lines=((case.pin.at, corner), level), arcs=(arc,))
    return case.work.let(name, call("arctan2", y, x), "angle", MEANINGS[name])


def _from_the_pin(case: Case, shape: Shape, corner: Point, which: str) -> tuple[Term, Term]:
    x, y = corner_letters(case, shape, corner, which)
    case.work.marks[f"x_{which}"] = Mark(lines=(((0.0, corner[1]), corner),))
    case.work.marks[f"y_{which}"] = Mark(lines=(((corner[0], 0.0), corner),))
    return less(x, across(case)), less(y, off_frame(case))


def line_axis(line: Line) -> tuple[str, int] | None:
    """Return the axis a line's normal lies along and its sign; None for a line that is not square to them."""
    quarters = line.alpha / (math.pi / 2)
    return _AXES[round(quarters)] if abs(quarters - round(quarters)) < _LEVEL else None


def normal_of(case: Case, line: Line) -> Symbol:
    """Work out the direction of a line's normal."""
    axis = line_axis(line)
    if axis is not None:
        turn: Term = Number(round(math.degrees(line.alpha)), "angle")
    elif abs(math.tan(line.alpha) + case.h.beta) < _LEVEL and abs(line.alpha) < math.pi / 2:
        turn = Negative(call("arctan", case.letter("beta")))
    else:
        turn = Number(math.degrees(line.alpha), "angle")
    start, end = shown_part(line)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    tip = (middle[0] + math.cos(line.alpha), middle[1] + math.sin(line.alpha))
    case.work.marks["alpha"] = Mark(lines=((start, end), (middle, tip)))
    return case.work.let("alpha", turn, "angle", MEANINGS["alpha"])


def out_of_line(case: Case, shape: Shape, line: Line) -> Symbol:
    """Work out how far out a line lies along its own normal, from the origin of the plan."""
    axis = line_axis(line)
    x, y = place_of(case, shape, line.end)
    if axis is None:
        alpha = normal_of(case, line)
        formula = add(times(x, call("cos", alpha)), times(y, call("sin", alpha)))
    else:
        formula = _signed(x if axis[0] == "x" else y, axis[1])
    case.work.marks["q"] = Mark(lines=(shown_part(line),))
    return case.work.let("q", formula, meaning=MEANINGS["q"])


def pin_along(case: Case, line: Line) -> Symbol:
    """Work out how far out the pin lies along a line's normal."""
    axis = line_axis(line)
    if axis is None:
        alpha = normal_of(case, line)
        x, y = times(across(case), call("cos", alpha)), times(off_frame(case), call("sin", alpha))
        formula = add(x, y)
    else:
        formula = _signed(across(case) if axis[0] == "x" else off_frame(case), axis[1])
    case.work.marks["n_pin"] = Mark(lines=((case.pin.at, foot_of(case.pin.at, line)),))
    return case.work.let("n_pin", formula, meaning=MEANINGS["n_pin"])


def foot_of(point: Point, line: Line) -> Point:
    """Return where the perpendicular from a point meets a line, in."""
    n_x, n_y = math.cos(line.alpha), math.sin(line.alpha)
    away = line.q - n_x * point[0] - n_y * point[1]
    return (point[0] + away * n_x, point[1] + away * n_y)


def shown_part(line: Line) -> tuple[Point, Point]:
    """Return what of a line is worth marking: a wall runs on without end, in either direction."""
    along = (-math.sin(line.alpha), math.cos(line.alpha))
    n = (line.q * math.cos(line.alpha), line.q * math.sin(line.alpha))
    places = [x * along[0] + y * along[1] for x, y in (line.start, line.end)]
    cut = [max(-_MARKED, min(place, _MARKED)) for place in places]
    first, last = ((n[0] + place * along[0], n[1] + place * along[1]) for place in cut)
    return first, last


def _signed(term: Term, sign: int) -> Term:
    if sign > 0 or (isinstance(term, Number) and not term.value):
        return term
    return term.term if isinstance(term, Negative) else Negative(term)
