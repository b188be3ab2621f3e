"""An independent judge of the first contact: a sweep with a general polygon library.

It builds every part anew from the written definitions, turns it step by step, never past what the distance
allows (no corner moves farther than its radius times the step), and halves the last step to 1e-6 degree. A
round part is a centre and a distance, never a polygon. Run as a script for many openings:

    python tests/geometry/judge.py 5000 [seed]
"""

import collections
import math
import random
import sys
from dataclasses import dataclass

import shapely
from shapely import Point, Polygon, box

from configurator.geometry.pin import locate_pin
from configurator.geometry.solve import solve
from tests.geometry.random_openings import random_problem

REACH = 400.0  # farther than any leaf here
SHRINK = 1e-9  # the one tolerance: overlap no deeper than this is clear
FINE = 1e-5  # radians: nearer than this the sweep steps instead of creeping
HALVED = 2e-9  # radians, about 1e-7 degree
AGREE = math.radians(2e-6)
TOGETHER = math.radians(4e-6)


@dataclass
class Part:
    """One part: a polygon or, with a radius, a centre; heights and what it is called."""

    core: Polygon | Point
    radius: float
    bottom: float
    top: float
    name: tuple
    sense: int = 1  # -1: it turns clockwise


# --- the parts, built from the written definitions alone


def _round(x, y, radius, bottom, top, name):
    return Part(Point(x, y), radius, bottom, top, name)


def _flat(polygon, bottom, top, name):
    return Part(polygon, 0.0, bottom, top, name)


def moving_parts(problem):
    h, leaf = problem.hanging, problem.leaf
    pin = locate_pin(h)
    i = h.R - h.k - h.T
    edge = h.O - h.g_l
    corners = [(h.g_h, -i), (edge, -i), (edge - h.beta * h.T, -i - h.T), (h.g_h, -i - h.T)]
    bare = [_flat(Polygon(corners), leaf.bottom, leaf.top, ("leaf",))]
    bare += [_round(pin.x_p, pin.y_p, h.d_b / 2, low, high, ("barrel",)) for low, high in leaf.barrels]
    fitted = [_carried(h, thing, edge - thing.from_latch_edge, (thing.kind,)) for thing in problem.hardware]
    return bare, fitted


def _carried(h, thing, middle, name):
    """Hardware on a closed leaf, its middle at a place across."""
    i = h.R - h.k - h.T
    low, high = thing.height - thing.vertical / 2, thing.height + thing.vertical / 2
    half = thing.width / 2
    face, way = (-i, 1) if thing.face == "pull" else (-i - h.T, -1)
    if thing.round:
        return _round(middle, face + way * (thing.projection - half), half, low, high, name)
    out = face + way * thing.projection
    return _flat(box(middle - half, min(face, out), middle + half, max(face, out)), low, high, name)


def _on_wall(h, thing):
    """One obstruction as if on the hinge side, as a polygon or a centre and radius."""
    outer_edge, wall = -h.F, -h.p
    near = outer_edge - thing.start
    if thing.fills:
        out = REACH if thing.projection is None else wall + thing.projection
        return box(-REACH, -max(h.D, h.R) + min(-h.p, 0.0), near, out), 0.0
    if thing.diameter is not None:
        base = 0.0 if thing.from_frame else wall
        out = base + thing.offset + (thing.diameter if thing.projection is None else thing.projection)
        return Point(near - thing.diameter / 2, out - thing.diameter / 2), thing.diameter / 2
    far = -REACH if thing.length is None else near - thing.length
    if thing.from_frame:
        # counts from the frame face, fills back to the wall beside the frame; over the face from the face
        beyond = box(far, min(wall, 0.0), min(near, outer_edge), thing.projection)
        over = box(max(far, outer_edge), 0.0, near, thing.projection) if near > outer_edge else None
        return (beyond if over is None else shapely.union_all([beyond, over])), 0.0
    return box(far, wall + thing.offset, near, wall + thing.offset + thing.projection), 0.0


def _mirror(core, opening):
    return shapely.transform(core, lambda xy: xy * [-1, 1] + [opening, 0])


def standing_parts(problem):
    h = problem.hanging
    opening = h.O if problem.other is None else problem.other.opening
    parts = []
    for index, thing in enumerate(problem.obstructions):
        core, radius = _on_wall(h, thing)
        core = core if thing.side == "hinge" else _mirror(core, opening)
        low = -math.inf if thing.bottom is None else thing.bottom
        high = math.inf if thing.top is None else thing.top
        parts.append(Part(core, radius, low, high, (thing.kind, index)))
    deep = max(h.D, h.R)
    wall = box(-REACH, -REACH, -h.F, -h.p)
    fixed = [(box(-h.F, -deep, 0, 0), "frame"), (wall, "wall"), (_mirror(wall, opening), "wall")]
    fixed.append((box(opening, -deep, opening + h.F, 0), "latch jamb"))
    if h.s > 0 and h.D > h.R:
        stop = box(0, -h.D, h.s, -h.R)
        fixed += [(stop, "stop"), (_mirror(stop, opening), "stop")]
    parts += [_flat(core, -math.inf, math.inf, (kind, None)) for core, kind in fixed]
    return parts + _closed_beside(problem)


def _closed_beside(problem):
    """The closed other leaf of a pair and other half of a Dutch door, with what they carry."""
    h, leaf, other, half = problem.hanging, problem.leaf, problem.other, problem.leaf.half
    parts = []
    if other is not None and other.closed:
        i = h.R - h.k - h.T
        meeting = [(h.O, -i), (h.O + other.w, -i), (h.O + other.w, -i - h.T)]
        shape = Polygon([*meeting, (h.O + other.beta * h.T, -i - h.T)])
        parts.append(_flat(shape, leaf.bottom, leaf.top, ("other leaf", None)))
        for index, thing in enumerate(other.hardware):
            parts.append(_carried(h, thing, h.O + thing.from_latch_edge, ("other leaf", index)))
    if half is not None:
        own = moving_parts(problem)[0][0]
        parts.append(_flat(own.core, half.bottom, half.top, ("other leaf", None)))
        for index, thing in enumerate(half.hardware):
            at = h.O - h.g_l - thing.from_latch_edge
            parts.append(_carried(h, thing, at, ("other leaf", index)))
    return parts


# --- the sweep


def _turned(core, pin, theta):
    cosine, sine = math.cos(theta), math.sin(theta)

    def turn(xy):
        x, y = xy[:, 0] - pin[0], xy[:, 1] - pin[1]
        turned = xy.copy()
        turned[:, 0] = pin[0] + x * cosine - y * sine
        turned[:, 1] = pin[1] + x * sine + y * cosine
        return turned

    return shapely.transform(core, turn)


def _shrunk(part):
    if part.radius:
        return part.core
    return part.core.buffer(-SHRINK, join_style="mitre")


def apart(moving, shrunk, standing, pin, theta):
    """Distance between the surfaces; 0 or less when they overlap deeper than the tolerance."""
    allowance = SHRINK if moving.radius or standing.radius else 0.0
    cores = shapely.distance(_turned(moving.core, pin, moving.sense * theta), shrunk)
    return cores - moving.radius - standing.radius + allowance


def _radius_of(core, pin):
    return max(math.dist(pin, xy) for xy in shapely.get_coordinates(core))


def meeting(moving, standing, pin, limit):
    """The first angle at which two parts overlap, to 1e-7 degree, or None."""
    if min(moving.top, standing.top) - max(moving.bottom, standing.bottom) <= SHRINK:
        return None
    shrunk, fastest = _shrunk(standing), _radius_of(moving.core, pin)
    if fastest + moving.radius <= shapely.distance(Point(pin), standing.core) - standing.radius:
        return None
    theta = 0.0
    gap = apart(moving, shrunk, standing, pin, 0.0)
    if gap <= 0.0:
        return 0.0
    while theta < limit:
        step = min(max(gap / fastest, FINE) if fastest else math.inf, limit - theta)
        gap = apart(moving, shrunk, standing, pin, theta + step)
        if gap <= 0.0:
            return _halved(moving, shrunk, standing, pin, theta, theta + step)
        theta += step
    return None


def _halved(moving, shrunk, standing, pin, clear, met):
    while met - clear > HALVED:
        middle = (clear + met) / 2
        if apart(moving, shrunk, standing, pin, middle) <= 0.0:
            met = middle
        else:
            clear = middle
    return (clear + met) / 2


def judged(moving, standing, pin):
    """The earliest meeting and the names of all that meet at that moment, or (pi, {})."""
    limit, met = math.pi, []
    for still in standing:
        for part in moving:
            if part.name == ("barrel",) and still.name == ("frame", None):
                continue  # the frame never stops the barrel it holds
            angle = meeting(part, still, pin, min(math.pi, limit + TOGETHER))
            if angle is not None:
                met.append((angle, (*still.name, *part.name)))
                limit = min(limit, angle)
    together = [name for angle, name in met if angle <= limit + TOGETHER]
    return (limit if met else math.pi), together


# --- comparing


def disagreement(contact, angle, together, moving, standing, pin):
    """What the exact answer and the judge say differently, None if nothing."""
    exact = math.pi if contact is None else contact.angle
    if abs(exact - angle) <= AGREE:
        if contact is None or not together:
            return None
        named = (contact.kind, contact.index, contact.part)
        return None if named in together else f"names {named}, judged {together}"
    if contact is not None and exact < angle and _overlaps_just_past(contact, moving, standing, pin):
        return None  # so slight a clip that the sweep stepped over it
    if _barely(exact, angle, moving, standing, pin):
        return None
    return f"{math.degrees(exact):.8f} ({contact}), judged {math.degrees(angle):.8f} {together}"


def _overlaps_just_past(contact, moving, standing, pin):
    for still in standing:
        for part in moving:
            if (*still.name, *part.name) != (contact.kind, contact.index, contact.part):
                continue
            shrunk = _shrunk(still)
            if any(apart(part, shrunk, still, pin, contact.angle + step) <= 0 for step in (1e-8, 1e-7, 1e-6)):
                return True
    return False


def _barely(exact, angle, moving, standing, pin):
    """Whether what the two answers differ about is an overlap of a few tolerances, half way between them."""
    middle = (exact + angle) / 2
    return not any(
        _deep(part, still, pin, middle)
        for still in standing
        for part in moving
        if min(part.top, still.top) - max(part.bottom, still.bottom) > SHRINK
        and not (part.name == ("barrel",) and still.name == ("frame", None))
    )


def _deep(moving, standing, pin, theta):
    """Whether two parts overlap deeper than a few tolerances."""
    if moving.radius or standing.radius:
        return apart(moving, standing.core, standing, pin, theta) < -4 * SHRINK
    less = standing.core.buffer(-5 * SHRINK, join_style="mitre")
    return apart(moving, less, standing, pin, theta) <= 0.0


@dataclass
class Verdict:
    """Sentences of disagreement, the kinds of what met, and how far answers that agree lie apart."""

    wrong: list
    kinds: list
    apart: list


def check(problem):
    """Judge one opening bare and with hardware."""
    pin = locate_pin(problem.hanging).at
    bare, fitted = moving_parts(problem)
    standing = standing_parts(problem)
    solved = solve(problem.hanging, problem.leaf, problem.hardware, problem.obstructions, problem.other)
    answers = [(solved.bare, bare)]
    if fitted:
        answers.append((solved.with_hardware, bare + fitted))
    verdict = Verdict([], [], [])
    for contact, moving in answers:
        angle, together = judged(moving, standing, pin)
        said = disagreement(contact, angle, together, moving, standing, pin)
        verdict.wrong += [said] if said else []
        verdict.kinds.append(kind_of(contact, problem))
        away = abs((math.pi if contact is None else contact.angle) - angle)
        if away <= AGREE:
            verdict.apart.append(away)
        elif not said:
            verdict.kinds.append("(a graze, let pass either way)")
    return verdict


def kind_of(contact, problem):
    """The kind of pair a first contact is, for counting."""
    if contact is None:
        return "opens to 180"
    if contact.at_rest:
        return "overlap at rest"
    if contact.kind == "other leaf":
        return _kind_on_other_leaf(contact, problem)
    if contact.part == "knob" and any(thing.round for thing in problem.hardware):
        return "round on straight"
    if contact.index is not None and problem.obstructions[contact.index].diameter is not None:
        return "straight on round"
    if contact.part not in ("leaf", "barrel"):
        return f"hardware on {'trim' if contact.index is not None else contact.kind}"
    if contact.kind == "latch jamb":
        return "latch bind"
    pin = locate_pin(problem.hanging).at
    leaf = _turned(moving_parts(problem)[0][0].core, pin, contact.angle)
    if min(math.dist(contact.point, xy) for xy in shapely.get_coordinates(leaf)) < 1e-6:
        return f"leaf corner on {contact.kind}"
    return f"{contact.kind} corner on leaf"


def _kind_on_other_leaf(contact, problem):
    """A meeting with the other leaf or other half, or with what it carries."""
    moving = "leaf" if contact.part == "leaf" else "hardware"
    beside = "other half" if problem.other is None else "other leaf"
    carried = "" if contact.index is None else "'s hardware"
    resting = ", at once" if contact.angle == 0.0 else ""
    return f"{moving} on {beside}{carried}{resting}"


def main(count, seed):
    chance, kinds, wrong, apart = random.Random(seed), collections.Counter(), 0, [0.0]
    for number in range(count):
        problem = random_problem(chance)
        verdict = check(problem)
        kinds.update(verdict.kinds)
        apart += verdict.apart
        wrong += bool(verdict.wrong)
        for sentence in verdict.wrong:
            print(number, sentence, problem, sep="\n  ")
    print(f"{count} openings, {wrong} disagreements past {math.degrees(AGREE):.0e} degree or in what touches")
    print(f"{len(apart) - 1} first contacts agree, the farthest to {math.degrees(max(apart)):.1e} degree")
    for kind, many in kinds.most_common():
        print(f"{many:6} {kind}")
    return 1 if wrong else 0


if __name__ == "__main__":
    asked = [int(word) for word in sys.argv[1:]]
    sys.exit(main(*(asked + [300, 1][len(asked) :])))
