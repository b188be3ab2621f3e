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

from configurator.geometry.pin import Hanging, locate_pin
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherLeaf
from configurator.geometry.solve import solve

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


@dataclass
class Problem:
    hanging: Hanging
    leaf: Leaf
    hardware: tuple = ()
    obstructions: tuple = ()
    other: OtherLeaf | None = None


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
    fitted = []
    for thing in problem.hardware:
        low, high = thing.height - thing.vertical / 2, thing.height + thing.vertical / 2
        middle, half = edge - thing.from_latch_edge, thing.width / 2
        face, way = (-i, 1) if thing.face == "pull" else (-i - h.T, -1)
        if thing.round:
            centre = face + way * (thing.projection - half)
            fitted.append(_round(middle, centre, half, low, high, (thing.kind,)))
        else:
            out = face + way * thing.projection
            shape = box(middle - half, min(face, out), middle + half, max(face, out))
            fitted.append(_flat(shape, low, high, (thing.kind,)))
    return bare, fitted


def _on_wall(h, thing):
    """One obstruction as if on the hinge side, as a polygon or a centre and radius."""
    outer_edge, wall = -h.F, -h.p
    near = outer_edge - thing.start
    if thing.kind == "return wall":
        out = REACH if thing.projection is None else wall + thing.projection
        return box(-REACH, -max(h.D, h.R) + min(-h.p, 0.0), near, out), 0.0
    if thing.diameter is not None:
        out = wall + thing.offset + (thing.diameter if thing.projection is None else thing.projection)
        return Point(near - thing.diameter / 2, out - thing.diameter / 2), thing.diameter / 2
    far = -REACH if thing.length is None else near - thing.length
    if thing.kind == "casing":
        # counts from the frame face, fills back to the wall beside the frame; over the face from the face
        beyond = box(far, min(wall, 0.0), min(near, outer_edge), thing.projection)
        over = box(max(far, outer_edge), 0.0, near, thing.projection) if near > outer_edge else None
        return (beyond if over is None else shapely.union_all([beyond, over])), 0.0
    return box(far, wall + thing.offset, near, wall + thing.offset + thing.projection), 0.0


def _mirror(core, opening):
    return shapely.transform(core, lambda xy: xy * [-1, 1] + [opening, 0])


def standing_parts(problem):
    h, leaf = problem.hanging, problem.leaf
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
    other = problem.other
    if other is not None and other.closed:
        i = h.R - h.k - h.T
        meeting = [(h.O, -i), (h.O + other.w, -i), (h.O + other.w, -i - h.T)]
        shape = Polygon([*meeting, (h.O + other.beta * h.T, -i - h.T)])
        parts.append(_flat(shape, leaf.bottom, leaf.top, ("other leaf", None)))
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


def check(problem):
    """Judge one opening bare and with hardware: sentences of disagreement, and the kinds of what met."""
    pin = locate_pin(problem.hanging).at
    bare, fitted = moving_parts(problem)
    standing = standing_parts(problem)
    solved = solve(problem.hanging, problem.leaf, problem.hardware, problem.obstructions, problem.other)
    wrong, kinds = [], []
    judged_bare = judged(bare, standing, pin)
    answers = [(solved.bare, bare, judged_bare)]
    if fitted:
        answers.append((solved.with_hardware, bare + fitted, judged(bare + fitted, standing, pin)))
    for contact, moving, (angle, together) in answers:
        said = disagreement(contact, angle, together, moving, standing, pin)
        if said:
            wrong.append(said)
        kinds.append(kind_of(contact, problem))
        if not said and abs((math.pi if contact is None else contact.angle) - angle) > AGREE:
            kinds.append("(a graze, let pass either way)")
    return wrong, kinds


def kind_of(contact, problem):
    """The kind of pair a first contact is, for counting."""
    if contact is None:
        return "opens to 180"
    if contact.at_rest:
        return "overlap at rest"
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


# --- random openings


def _sixteenth(chance, low, high):
    return chance.randint(round(low * 16), round(high * 16)) / 16


def random_hanging(chance, **given):
    thick = chance.choice([1.375, 1.75, 1.75, 1.75, 2.0, 2.25])
    values = {
        "O": chance.choice([24, 30, 32, 36, 36, 42, 48]) + chance.choice([0, 0, 0.3711]),
        "T": thick,
        "g_h": chance.choice([0.0625, 0.09375, 0.125, 0.125, 0.11]),
        "g_l": chance.choice([0.0625, 0.125, 0.125]),
        "beta": chance.choice([0, 0.0625, 0.0625]),
        "R": thick + chance.choice([0.1875, 0.1875, 0.0625, 0.25, 0.5, 1.0]),
        "k": chance.choice([0.0625, 0.0625, 0.03, 0]),
        "s": chance.choice([0.625, 0.4375, 0]),
        "F": chance.choice([2, 2, 1.75, 1, 0.75]),
        "D": chance.choice([5.875, 4.5625, 8, 3.5]),
        "p": chance.choice([0.5, 0.5, 0, 0.25, -0.5, -1.0, -2.0]) + chance.choice([0, 0.0173]),
        "b": 0.25,
        "t": 0.134,
        "W": chance.choice([3.5, 4, 4, 4.5, 4.5, 5, 6, 7]),
        "d_b": chance.choice([0.5, 0.58, 0.75]),
    }
    return Hanging(**(values | given))


def random_thing(chance, kind=None):
    kind = kind or chance.choice(["chair rail", "base", "casing", "wainscot", "column", "other", "other"])
    side = "latch" if chance.random() < 0.1 else "hinge"
    low = chance.choice([None, 0.0, 20.0, 32.0])
    high = chance.choice([None, 36.0, 40.0, 8.0]) if not low else chance.choice([None, low + 6])
    common = {"kind": kind, "side": side, "bottom": low, "top": high}
    if kind == "return wall":
        return Obstruction(kind=kind, start=_sixteenth(chance, 0, 30) + 0.01)
    if kind == "casing":
        return Obstruction(
            **common,
            projection=_sixteenth(chance, 0.25, 2),
            start=chance.choice([0, -0.5, 0.25]),
            length=chance.choice([None, 3.25, 2.0]),
        )
    if kind == "column":
        size = _sixteenth(chance, 0.5, 12)
        far = chance.choice([None, size + _sixteenth(chance, 0, 20)])
        return Obstruction(**common, diameter=size, start=_sixteenth(chance, 0, 30), projection=far)
    if kind == "other":
        return Obstruction(
            **common,
            projection=_sixteenth(chance, 0.5, 10),
            start=_sixteenth(chance, 0, 34),
            length=_sixteenth(chance, 0.5, 10),
            offset=_sixteenth(chance, 0, 30),
        )
    return Obstruction(
        **common,
        projection=_sixteenth(chance, 0.25, 3),
        start=_sixteenth(chance, 0, 4),
        length=chance.choice([None, None, 6.0, 20.0]),
    )


def random_hardware(chance):
    kind = chance.choice(["lever", "knob", "knob", "pull", "panic device", "closer", "other"])
    width = 2.0 if kind == "knob" else chance.choice([1.0, 4.0, 4.5, 12.0])
    return Hardware(
        kind=kind,
        projection=_sixteenth(chance, 1, 4) + (1.0 if kind == "knob" else 0.0),
        from_latch_edge=width / 2 + _sixteenth(chance, 0.5, 8),
        width=width,
        height=chance.choice([38.0, 42.0, 80.0, 6.0]),
        vertical=chance.choice([2.0, 3.5, 10.0]),
        face="push" if chance.random() < 0.15 else "pull",
        round=kind == "knob" and chance.random() < 0.8,
    )


def random_problem(chance):
    """One opening of any arrangement, mounting and surroundings, in sixteenths and odd values mixed."""
    style = chance.choice(
        [
            "walls",
            "walls",
            "things",
            "things",
            "return",
            "column",
            "knob",
            "bind",
            "bind",
            "pair",
            "pair",
            "dutch",
            "mounting",
        ]
    )
    barrels = tuple((low, low + 4.5) for low in (10.0, 40.0, 72.0))
    leaf, other, given = Leaf(barrels=barrels), None, {}
    if style == "bind":
        given = {"W": chance.choice([6.0, 7.0, 8.0, 9.0]), "beta": 0, "g_l": 0.0625}
    if style == "mounting":
        given = {"mounting": chance.choice(["half mortise", "half surface", "full surface", "swing clear"])}
    if style == "walls" and chance.random() < 0.9:
        given = {"p": -_sixteenth(chance, 4, 120)}  # deep in a reveal
    if style == "dutch":
        leaf = chance.choice(
            [
                Leaf(bottom=0.75, top=42.0, barrels=barrels[:2]),
                Leaf(bottom=42.125, top=83.875, barrels=barrels[2:]),
            ]
        )
    if style == "pair":
        given = {"beta": chance.choice([0, 0.0625]), "W": chance.choice([4, 5, 6, 7, 8.0])}
    hanging = random_hanging(chance, **given)
    if style == "pair":
        w = chance.choice([18.0, 30.0, hanging.w])
        opening = hanging.O + w + hanging.g_h
        other = OtherLeaf(opening=opening, w=w, beta=hanging.beta, closed=chance.random() < 0.9)
    things = {"things": 2, "pair": 1, "dutch": 2, "mounting": 1, "knob": 1}.get(style, 0)
    about = [random_thing(chance) for _ in range(things if chance.random() < 0.6 else 0)]
    if style in ("return", "column"):
        about.append(random_thing(chance, {"return": "return wall"}.get(style, style)))
    fitted = [random_hardware(chance) for _ in range(chance.choice([0, 1, 1, 2]))]
    return Problem(hanging, leaf, tuple(fitted), tuple(about), other)


def main(count, seed):
    chance, kinds, wrong = random.Random(seed), collections.Counter(), 0
    for number in range(count):
        problem = random_problem(chance)
        said, met = check(problem)
        kinds.update(met)
        wrong += bool(said)
        for sentence in said:
            print(number, sentence, problem, sep="\n  ")
    print(f"{count} openings, {wrong} disagreements past {math.degrees(AGREE):.0e} degree")
    for kind, many in kinds.most_common():
        print(f"{many:6} {kind}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(
        main(int(sys.argv[1]) if len(sys.argv) > 1 else 300, int(sys.argv[2]) if len(sys.argv) > 2 else 1)
    )
