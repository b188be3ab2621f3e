"""An independent judge of every way to hang a door: a sweep with a general polygon library.

Every part is built from the written definitions as it stands in the room, unmirrored; a leaf that swings to
the push side turns clockwise, against both walls. Of the program it takes only what it answers, from a whole
project-file opening. Run as a script:

    python -m tests.bench.judge_ways 5000 [seed]
"""

import collections
import math
import random
import sys

import shapely
from shapely import Polygon, box

from configurator.model import Opening
from configurator.study import study
from tests.geometry.judge import FINE, HALVED, REACH, SHRINK

AGREE = 1e-5  # degrees

KINDS = (
    "butt hinge", "swing clear hinge", "continuous hinge", "offset pivot", "centre-hung pivot",
    "double-acting spring hinge",
)  # fmt: skip


def _sixteenth(chance, low, high):
    return chance.randint(round(low * 16), round(high * 16)) / 16


def random_way(chance, kind, thick):
    """A way with its axis typed: where that kind may have it, and now and then anywhere."""
    off, heel = {
        "butt hinge": ((0.25, 2.5), (-0.125, 0)),
        "swing clear hinge": ((0.25, 1), (-3.5, -1.5)),
        "continuous hinge": ((0.1875, 1), (-0.25, 0)),
        "offset pivot": ((0.5, 1.75), (0, 1.5)),
        "centre-hung pivot": ((-thick + 0.5, -0.5), (1.5, 4)),
        "double-acting spring hinge": ((0.25, 0.75), (-0.125, 0.25)),
    }[kind]
    if chance.random() < 0.15:
        off, heel = (-thick - 1, 3), (-4, 8)
    way = {"hung_on": kind, "axis_off_face": _sixteenth(chance, *off)}
    way["axis_from_heel"] = _sixteenth(chance, *heel) + chance.choice([0, 0, 0.0117])
    if kind == "centre-hung pivot" and way["axis_from_heel"] > 0 and chance.random() < 0.7:
        inside = max(abs(way["axis_off_face"]), abs(way["axis_off_face"] + thick))
        way["heel_radius"] = max(way["axis_from_heel"] + chance.choice([0, 0, -0.25, 0.03]), inside + 0.05)
    if kind == "centre-hung pivot" and chance.random() < 0.3:
        way["acting"] = "single"
    return way


def random_opening(chance, kind=None):
    """An opening as a project file has it, hung in one way."""
    kind = kind or chance.choice(KINDS)
    thick = chance.choice([1.375, 1.75, 1.75, 2.25])
    hinge_gap = chance.choice([0.0625, 0.125, 0.125, 0.25, 0.375])
    door = {
        "thickness": thick,
        "hinge_gap": hinge_gap,
        "latch_gap": chance.choice([0.0625, 0.125, 0.1875]),
        "latch_bevel": chance.choice([0, 0.0625]),
        "hinge_backset": 0.25,
    }
    frame = {
        "face": chance.choice([2, 1.75, 1]),
        "rabbet": thick + chance.choice([0.1875, 0.1875, 0.375, 0.5, 1]),
        "stop_height": chance.choice([0.625, 0.5]),
        "stop_gap": chance.choice([0.0625, 0.125, 0.25]),
        "jamb_depth": chance.choice([5.875, 4.75, 8]),
    }
    frame["rabbet"] = max(frame["rabbet"], thick + frame["stop_gap"])
    things = [_random_thing(chance) for _ in range(chance.choice([0, 0, 1, 2]))]
    carried = [_random_hardware(chance) for _ in range(chance.choice([0, 0, 1]))]
    return Opening.model_validate(
        {
            "mark": "1",
            "size": {"width": chance.choice([24, 36, 36, 42]), "height": 84},
            "door": door,
            "frame": frame,
            "wall": {"thickness": chance.choice([3.5, 4.875, 7]), "frame_proud": chance.choice([0.5, 0, -1])},
            "obstructions": things,
            "hardware": carried,
            "hinge": {"barrel": chance.choice([0.5, 0.58])},
            "compare": [random_way(chance, kind, thick)],
        }
    )


def _random_thing(chance):
    thing = {
        "kind": "other",
        "side": "latch" if chance.random() < 0.15 else "hinge",
        "projection": _sixteenth(chance, 0.5, 6),
        "start": _sixteenth(chance, 0, 34) if chance.random() < 0.8 else -_sixteenth(chance, 0.5, 20),
        "length": _sixteenth(chance, 0.5, 10),
        "offset": _sixteenth(chance, 0, 20),
        "bottom": chance.choice([0, 32]),
        "top": chance.choice([36, 84]),
    }
    return thing if chance.random() < 0.7 else thing | {"kind": "chair rail", "offset": 0, "length": None}


def _random_hardware(chance):
    return {
        "kind": chance.choice(["lever", "pull"]),
        "face": chance.choice(["pull", "push"]),
        "projection": _sixteenth(chance, 1, 4),
        "from_latch_edge": _sixteenth(chance, 3, 8),
        "width": _sixteenth(chance, 1, 5),
        "height": 38,
        "vertical": 4,
    }


# --- the parts in the room


def leaf_core(opening, way):
    """The closed leaf, its bevel and its rounded heel cut as arcs of many sides within 2e-8 in."""
    door, frame, width = opening.door, opening.frame, opening.size.width
    pull = -(frame.rabbet - frame.stop_gap - door.thickness)
    stop, edge, heel = pull - door.thickness, width - door.latch_gap, door.hinge_gap
    core = Polygon(
        [(heel, pull), (edge, pull), (edge - door.latch_bevel * door.thickness, stop), (heel, stop)]
    )
    if way.heel_radius is None:
        return core
    # Beyond the axis toward the heel only what lies within the radius is left.
    x, y = axis_of(opening, way)
    beyond = core.intersection(box(-REACH, -REACH, x, REACH))
    rest = core.intersection(box(x, -REACH, REACH, REACH))
    round_heel = shapely.Point(x, y).buffer(way.heel_radius, quad_segs=8000)
    return shapely.union_all([beyond.intersection(round_heel), rest])


def axis_of(opening, way):
    door, frame = opening.door, opening.frame
    pull = -(frame.rabbet - frame.stop_gap - door.thickness)
    return door.hinge_gap + way.axis_from_heel, pull + way.axis_off_face


def turning_axis(opening, way, toward):
    """The axis of one direction: of a spring hinge's two barrels the one before the face it swings to."""
    x, y = axis_of(opening, way)
    if way.hung_on == "double-acting spring hinge" and toward == "push":
        door, frame = opening.door, opening.frame
        middle = -(frame.rabbet - frame.stop_gap - door.thickness) - door.thickness / 2
        return x, 2 * middle - y
    return x, y


def swings_both_ways(way):
    return way.hung_on == "double-acting spring hinge" or (
        way.hung_on == "centre-hung pivot" and way.acting != "single"
    )


def standing(opening, way):
    """Everything that stands, as polygon, heights and kind: both walls, jambs, stops, and the things."""
    frame, wall, width = opening.frame, opening.wall, opening.size.width
    face = -wall.frame_proud
    deep = max(frame.jamb_depth, frame.rabbet)
    sides = [box(-REACH, face - wall.thickness, -frame.face, face)]
    # What lies behind the pull face, beyond the frame, is wall for a leaf that swings out of the pull side.
    if not swings_both_ways(way):
        sides = [box(-REACH, -REACH, -frame.face, face)]
    jamb = box(-frame.face, -deep, 0, 0)
    parts = [(jamb, "frame"), (_across(jamb, width), "latch jamb")]
    parts += [(one, "wall") for side in sides for one in (side, _across(side, width))]
    if not swings_both_ways(way) and frame.jamb_depth > frame.rabbet:
        stop = box(0, -frame.jamb_depth, frame.stop_height, -frame.rabbet)
        parts.append((_across(stop, width), "stop"))
        if way.hung_on != "centre-hung pivot":
            parts.append((stop, "stop"))
    found = [(core, -math.inf, math.inf, kind) for core, kind in parts]
    for thing in opening.obstructions:
        near = -frame.face - (thing.start or 0)
        far = -REACH if thing.length is None else near - thing.length
        out = face + (thing.offset or 0)
        core = box(far, out, near, out + thing.projection)
        core = core if thing.side == "hinge" else _across(core, width)
        found.append((core, thing.bottom, thing.top, thing.kind))
    return found


def _across(core, width):
    return shapely.transform(core, lambda xy: xy * [-1, 1] + [width, 0])


def carried_parts(opening):
    door, frame, width = opening.door, opening.frame, opening.size.width
    pull = -(frame.rabbet - frame.stop_gap - door.thickness)
    for item in opening.hardware:
        middle = width - door.latch_gap - item.from_latch_edge
        face, out = (
            (pull, item.projection) if item.face == "pull" else (pull - door.thickness, -item.projection)
        )
        core = box(
            middle - item.width / 2, min(face, face + out), middle + item.width / 2, max(face, face + out)
        )
        yield core, item.height - item.vertical / 2, item.height + item.vertical / 2


def turned(core, axis, theta):
    """A part turned; theta is positive toward the pull side."""
    cosine, sine = math.cos(theta), math.sin(theta)

    def turn(xy):
        x, y = xy[:, 0] - axis[0], xy[:, 1] - axis[1]
        new = xy.copy()
        new[:, 0], new[:, 1] = axis[0] + x * cosine - y * sine, axis[1] + x * sine + y * cosine
        return new

    return shapely.transform(core, turn)


def first_meeting(moving, still, axis, sense, limit):
    """The first angle at which a part overlaps another, radians, by distance steps and halving; None."""
    core, low, high = moving
    other, bottom, top, _ = still
    if min(top, high) - max(bottom, low) <= SHRINK:
        return None
    shrunk = other.buffer(-SHRINK, join_style="mitre")
    fastest = max(math.dist(axis, xy) for xy in shapely.get_coordinates(core))
    gap = lambda theta: shapely.distance(turned(core, axis, sense * theta), shrunk)  # noqa: E731
    theta, room = 0.0, gap(0.0)
    if room <= 0.0:
        return 0.0
    while theta < limit:
        step = min(max(room / fastest, FINE), limit - theta)
        room = gap(theta + step)
        if room <= 0.0:
            return _halved(gap, theta, theta + step)
        theta += step
    return None


def _halved(gap, clear, met):
    while met - clear > HALVED:
        middle = (clear + met) / 2
        clear, met = (clear, middle) if gap(middle) <= 0.0 else (middle, met)
    return (clear + met) / 2


#: Diameters and heights of barrels: a height of None is all that the hinge's own barrels have.
BARRELS = {
    "butt hinge": (None, None),
    "swing clear hinge": (None, None),
    "continuous hinge": (0.5, (0.75, math.inf)),
    "double-acting spring hinge": (0.75, None),
}


def barrel_is_in_something(opening, way, toward, heights):
    """Whether a barrel, which turns on the spot, stands in anything but the jamb it is let in beside."""
    if way.hung_on not in BARRELS:
        return False
    diameter, own = BARRELS[way.hung_on]
    radius = (diameter or opening.hinge.barrel) / 2
    axis = shapely.Point(turning_axis(opening, way, toward))
    return any(
        kind != "frame"
        and min(high, top) - max(low, bottom) > SHRINK
        and shapely.distance(axis, core) < radius - SHRINK
        for low, high in ((own,) if own else heights)
        for core, bottom, top, kind in standing(opening, way)
    )


def judged(opening, way, toward, heights, *, with_hardware):
    """How far the leaf turns, degrees; heights are those of its hinges."""
    if barrel_is_in_something(opening, way, toward, heights):
        return 0.0
    axis, sense = turning_axis(opening, way, toward), 1 if toward == "pull" else -1
    height = opening.size.height
    turning = [(leaf_core(opening, way), 0.75, height - 0.125)]
    turning += carried_parts(opening) if with_hardware else ()
    limit = math.pi
    for still in standing(opening, way):
        for moving in turning:
            met = first_meeting(moving, still, axis, sense, limit)
            limit = limit if met is None else min(limit, met)
    return math.degrees(limit)


def clear_width(opening, way, toward):
    """The clear width square open, from the leaf's farthest point to the latch stop or jamb."""
    axis, frame = turning_axis(opening, way, toward), opening.frame
    open_leaf = turned(leaf_core(opening, way), axis, math.pi / 2 * (1 if toward == "pull" else -1))
    stop = 0 if swings_both_ways(way) else frame.stop_height
    near = 0 if way.hung_on == "centre-hung pivot" else stop
    return max(0.0, opening.size.width - stop - max(near, open_leaf.bounds[2]))


def depth_at(opening, way, toward, angle, *, with_hardware):
    """How far the distance of anything is from nothing just past an angle, degrees: whether it is a graze."""
    axis, sense = turning_axis(opening, way, toward), 1 if toward == "pull" else -1
    turning = [(leaf_core(opening, way), 0.75, opening.size.height - 0.125)]
    turning += carried_parts(opening) if with_hardware else ()
    deepest = 0.0
    for core, low, high in turning:
        there = turned(core, axis, sense * math.radians(angle))
        for other, bottom, top, _ in standing(opening, way):
            if min(top, high) - max(bottom, low) > SHRINK:
                less = other.buffer(-5 * SHRINK, join_style="mitre")
                deepest = max(deepest, there.intersection(less).area)
    return deepest


def check(opening):
    """Return sentences of disagreement about every candidate of an opening hung in one way."""
    (way,) = opening.compare
    wrong = []
    answer = study(opening)
    heights = answer.leaves[0].leaf.barrels
    for one in answer.candidates:
        data = one.as_data()
        for key, fitted in (("greatest_angle_bare", False), ("greatest_angle", True)):
            told, angle = data[key], judged(opening, way, data["toward"], heights, with_hardware=fitted)
            if abs(told - angle) > AGREE and not _graze(opening, way, data["toward"], told, angle, fitted):
                wrong.append(f"{key} toward {data['toward']}: {told}, judged {angle}")
        clear = data["clear_width_at_90"]
        if clear is not None and abs(clear - clear_width(opening, way, data["toward"])) > 1e-9:
            wrong.append(f"clear width {clear}, judged {clear_width(opening, way, data['toward'])}")
    return wrong


def _graze(opening, way, toward, told, angle, fitted):
    """Whether what the answers differ about overlaps by a few tolerances only, half way between them."""
    return depth_at(opening, way, toward, (told + angle) / 2, with_hardware=fitted) <= 0.0 and told > angle


def main(count, seed):
    chance, kinds, wrong = random.Random(seed), collections.Counter(), 0
    for number in range(count):
        opening = random_opening(chance, KINDS[number % len(KINDS)])
        said = check(opening)
        kinds[opening.compare[0].hung_on] += 1
        wrong += bool(said)
        for sentence in said:
            print(number, sentence, opening.model_dump_json(exclude_unset=True), sep="\n  ", flush=True)
    print(f"{count} openings, {wrong} answers wrong past {AGREE:.0e} degree; {dict(kinds)}")
    return 1 if wrong else 0


if __name__ == "__main__":
    asked = [int(word) for word in sys.argv[1:]]
    sys.exit(main(*(asked + [120, 1][len(asked) :])))
