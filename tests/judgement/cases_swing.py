"""Stops, angles and slips: what ends a swing, and what is asked only where it makes sense."""

from tests.judgement.judgement import Judgement

STEEL = {"construction": "hollow metal, 18 gage"}
PULL = {"kind": "pull", "projection": 2.5, "from_latch_edge": 3, "width": 1, "height": 42, "vertical": 48}
LEVER = {"kind": "lever", "projection": 2.5, "from_latch_edge": 4.25, "width": 5, "height": 38, "vertical": 2}
GOES, RESTS, SHORT = "where a stop goes", "where the door rests", "stops short"


def swing(words, found=(), silent=(), says=None, **opening):
    """A 3-0 steel door in a wall whose thickness is known."""
    given = {"hand": "LH", "door": STEEL, "wall": {"thickness": 5}, **opening}
    return Judgement(words, given, findings=tuple(found), silent=tuple(silent), says=says or {})


CASES = (
    swing(
        "a 48 in pull would strike a bumper behind it: the stop meets the leaf",
        (GOES,),
        says={GOES: "Fit a floor stop"},
        hardware=[PULL],
    ),
    swing(
        "a lever may strike a bumper behind it",
        (GOES,),
        says={GOES: "Fit a wall bumper"},
        hardware=[LEVER],
    ),
    swing(
        "a bumper whose height is left out stands below a long pull",
        (RESTS,),
        says={RESTS: "17-1/2 in above the floor"},
        hardware=[PULL],
        door_stop={"kind": "wall bumper", "projection": 3},
    ),
    swing(
        "a bumper set where the pull strikes it is to be set elsewhere",
        (RESTS,),
        says={RESTS: "clear of the pull"},
        hardware=[PULL],
        door_stop={"kind": "wall bumper", "projection": 3, "from_frame": 30.75, "height": 42},
    ),
    swing(
        "nobody asked how far, and a wall ends it past square: no requirement is missed",
        (GOES, "angle not asked for"),
        (SHORT,),
        obstructions=[{"kind": "return wall", "start": 4}],
    ),
    swing(
        "180 was asked for, and a wall ends it: short",
        ("no width does everything",),
        ("angle not asked for",),
        obstructions=[{"kind": "return wall", "start": 4}],
        use={"wanted_angle": 180},
    ),
    swing(
        "held at 105 no stop is wanted against what it would meet farther on",
        (),
        (GOES, SHORT),
        obstructions=[{"kind": "column", "start": 20, "diameter": 12, "offset": 6}],
        use={"stop_angle": 105},
    ),
    swing(
        "a single leaf 6-0 wide: a pair?",
        ("one leaf or two",),
        ("door size swapped",),
        {"one leaf or two": "Say that it is a pair, or confirm"},
        size="6070",
    ),
    swing("a single leaf 4-0 wide is one", (), ("one leaf or two",), size="4070"),
    swing(
        "a single leaf 8-0 wide and 7-0 high: a pair, not two numbers swapped",
        ("one leaf or two",),
        ("door size swapped",),
        size="8070",
    ),
    swing(
        "7-0 wide and 3-0 high: the two numbers are swapped",
        ("door size swapped",),
        ("one leaf or two",),
        size={"width": 84, "height": 36},
    ),
    swing("a pair 6-0 wide is not asked", (), ("one leaf or two",), size="6070", leaves="pair"),
    Judgement(
        "a butted frame in block nobody measured: the block is assumed, and said to be",
        {"hand": "LH", "frame": {"kind": "welded steel, butted"}, "wall": {"frame_proud": 0}},
        assumed=("wall.thickness",),
        source="from memory",
        mark="from memory",
    ),
)
