"""What nobody said is never the mild case: it is asked, taken on the safe side, and listed as assumed."""

from tests.judgement.judgement import Judgement

LEAD = {"construction": "lead-lined", "thickness": 1.75}
STEEL = {"construction": "hollow metal, 18 gage"}
SOLID = {"construction": "wood, solid core"}
HEAVIEST = {"construction": "hollow metal, 14 gage"}
CARRIED = {"kind": "other", "projection": 1, "from_latch_edge": 4, "width": 2, "height": 40, "vertical": 2}
GLASS_SOURCE = "the table of door weights; glass at 13 lb a square foot and inch"
NARROW = {"width": 34, "height": 84}
INSIDE = {"exposure": "interior"}
OUTSIDE = {"exposure": "exterior"}
PANIC = {
    "kind": "panic device",
    "face": "push",
    "projection": 3.5,
    "from_latch_edge": 16,
    "width": 30,
    "height": 40,
    "vertical": 4,
}
HEAVY_BALL = {"weight": "heavy", "bearing": "ball"}
LEAD_SOURCE = "derived from the density of lead, 0.41 lb/in3"
STAYS, OUT = {"pin": "removable"}, {"pin": "non-removable"}
LOW = {"traffic": "low", "closer": False}


def lead(words, thick=None, weight=None, size=NARROW, **changes):
    """A lead-lined door with low traffic and no closer, so that only its weight asks for a heavy hinge."""
    door = LEAD | {"lead_thickness": thick, "weight": weight}
    base = {"opening": {"size": size, "door": door, "hand": "LH", "use": LOW}}
    return Judgement(words, **{**base, "source": LEAD_SOURCE, "mark": "derived", **changes})


def pin(words, hand, use, pins, asks, **changes):
    """An opening of which only the lock and the hand matter; `asks` whether the lock is asked for."""
    given = {"door": STEEL, "hand": hand, "use": use}
    given |= {key: changes.pop(key) for key in ("hardware", "leaves", "hinge") if key in changes}
    codes = ("lock unknown",)
    here = {"findings": codes, "assumed": ("use.locked",)} if asks else {"silent": codes}
    return Judgement(words, given, pins, **{**here, **changes})


WEIGHT = (
    lead(
        "lead-lined, neither lead nor weight known",
        recommended=HEAVY_BALL,
        findings=("weight unknown",),
        says={"weight unknown": "lead thickness or the weight"},
        order=HEAVY_BALL | {"quantity": 3},
        assumed=("door.weight",),
        silent=("door weight",),
    ),
    lead(
        "the question tells what each sixteenth of lead adds",
        says={"weight unknown": "3.7 lb to a square foot"},
    ),
    # The leaf is 33-3/4 x 83-1/8, 19.48 square feet: 91 lb of wood at most, 71.9 lb for each 1/16 in of lead.
    lead("1/32 in of lead", 1 / 32, recommended={"weight": "standard"}, silent=("weight unknown",)),
    lead("1/16 in of lead is 163 lb", 0.0625, recommended={"weight": "standard", "bearing": "plain"}),
    lead("3/32 in of lead is 199 lb", 3 / 32, recommended={"weight": "standard"}, silent=("weight unknown",)),
    lead("1/8 in of lead is 235 lb", 0.125, recommended=HEAVY_BALL, silent=("weight unknown",)),
    lead("1/16 in of lead is said with its weight", 0.0625, findings=("door weight",)),
    lead("a lead-lined door of 199 lb", weight=199, recommended={"weight": "standard"}),
    lead("a lead-lined door of 200 lb", weight=200, recommended=HEAVY_BALL),
    lead("a lead-lined door of 300 lb", weight=300, recommended=HEAVY_BALL, silent=("weight unknown",)),
    Judgement(
        "standard weight asked for by hand where the lead is not known",
        {"size": NARROW, "door": LEAD, "hand": "LH", "use": LOW, "hinge": {"weight": "standard"}},
        findings=("weight unknown", "weight too light"),
        says={"weight too light": "not known"},
        source=LEAD_SOURCE,
        mark="derived",
    ),
    Judgement(
        "a 3070 door of nobody knows what: up to 179 lb, so standard, and asked",
        {"hand": "LH", "use": LOW},
        {"weight": "standard"},
        ("weight unknown",),
        ("door weight",),
        {"weight unknown": "construction or the weight"},
        ("door.weight",),
        source="the heaviest construction in the table of door weights",
        mark="derived",
    ),
    Judgement(
        "a 3-6 x 8-0 door of nobody knows what: up to 238 lb, so heavy, and asked",
        {"size": "3680", "hand": "LH", "use": LOW},
        HEAVY_BALL,
        ("weight unknown",),
        assumed=("door.weight",),
        source="the heaviest construction in the table of door weights",
        mark="derived",
    ),
    # A 14 gage leaf 35-3/4 x 83-1/8 is 20.64 square feet at 8.5 lb: 175.4 lb at most.
    Judgement(
        "a 14 gage door with 24 lb of hardware: 199.4 lb",
        {"door": HEAVIEST, "hardware": [CARRIED | {"weight": 24}], "hand": "LH", "use": LOW},
        {"weight": "standard"},
        silent=("weight unknown",),
        source=GLASS_SOURCE,
        mark="derived",
    ),
    Judgement(
        "a 14 gage door with 25 lb of hardware: 200.4 lb",
        {"door": HEAVIEST, "hardware": [CARRIED | {"weight": 25}], "hand": "LH", "use": LOW},
        HEAVY_BALL,
        silent=("weight unknown",),
        source=GLASS_SOURCE,
        mark="derived",
    ),
    Judgement(
        "what hardware weighs is assumed until it is given: 20 lb of a panic device, 5 of a lever",
        {"door": HEAVIEST, "hardware": [PANIC, {"kind": "lever"}], "hand": "LH", "use": LOW},
        HEAVY_BALL,
        assumed=("hardware.0.weight", "hardware.1.weight"),
        source="weights of hardware from memory",
        mark="from memory",
    ),
    Judgement(
        "of a pair what names no leaf is on the active one: 30 lb make that leaf heavy",
        {
            "size": "6070",
            "leaves": "pair",
            "door": HEAVIEST,
            "hardware": [CARRIED | {"weight": 30}],
            "hand": "LH",
            "use": LOW,
        },
        HEAVY_BALL,
        source=GLASS_SOURCE,
        mark="derived",
    ),
    Judgement(
        "how far a bumper stands off the wall is assumed and asked for",
        {"door_stop": {"kind": "wall bumper"}, "hand": "LH", "use": LOW},
        findings=("sizes not given",),
        says={"sizes not given": "The wall bumper was not measured"},
        assumed=("door_stop.projection",),
        source="what stands off a wall is measured",
    ),
    Judgement(
        "a bumper that was measured is not asked for",
        {"door_stop": {"kind": "wall bumper", "projection": 1}, "hand": "LH", "use": LOW},
        silent=("sizes not given",),
        source="what stands off a wall is measured",
    ),
    # A solid core leaf 35-3/4 x 95-1/8 is 23.62 square feet at 4.67 lb: 110 lb at most.
    Judgement(
        "glass of unknown size, 3/4 in thick: up to 230 lb, so heavy, and asked",
        {"size": "3080", "door": SOLID | {"glass_thickness": 0.75}, "hand": "LH", "use": LOW},
        HEAVY_BALL,
        ("weight unknown",),
        says={"weight unknown": "lite's width and height"},
        source=GLASS_SOURCE,
        mark="derived",
    ),
    Judgement(
        "its lite 24 x 60: 10 square feet of glass at 9.75 lb, 161 lb in all",
        {
            "size": "3080",
            "door": SOLID | {"lite_width": 24, "lite_height": 60, "glass_thickness": 0.75},
            "hand": "LH",
            "use": LOW,
        },
        {"weight": "standard"},
        silent=("weight unknown", "lite larger than the leaf"),
        source=GLASS_SOURCE,
        mark="derived",
    ),
    Judgement(
        "glass of unknown size and thickness: 154 lb at most, so nobody is asked",
        {"size": "3080", "door": SOLID, "glass": "a lite", "hand": "LH", "use": LOW},
        {"weight": "standard"},
        silent=("weight unknown",),
        source=GLASS_SOURCE,
        mark="derived",
    ),
    Judgement(
        "a lite given height x width is no lite of this door",
        {"door": SOLID | {"lite_width": 60, "lite_height": 24}, "hand": "LH", "use": LOW},
        findings=("lite larger than the leaf",),
        source="both sizes as given",
        mark="derived",
    ),
    Judgement(
        "an 18 gage door is weighed, not guessed",
        {"door": STEEL, "hand": "LH", "use": LOW},
        {"weight": "standard"},
        ("door weight",),
        ("weight unknown",),
    ),
    Judgement(
        "a solid core door is weighed, not guessed",
        {"door": SOLID, "hand": "LH", "use": LOW},
        {"weight": "standard", "bearing": "plain"},
        ("door weight",),
        ("weight unknown",),
    ),
    Judgement(
        "an 18 gage door 34 x 84 with 1/8 in of lead: 117 lb of steel at most, 144 lb of lead",
        {"size": NARROW, "door": STEEL | {"lead_thickness": 0.125}, "hand": "LH", "use": LOW},
        HEAVY_BALL,
        ("door weight",),
        ("weight unknown",),
        source=LEAD_SOURCE,
        mark="derived",
    ),
    Judgement(
        "an 18 gage door 34 x 84 with 1/32 in of lead: 153 lb at most",
        {"size": NARROW, "door": STEEL | {"lead_thickness": 1 / 32}, "hand": "LH", "use": LOW},
        {"weight": "standard"},
        source=LEAD_SOURCE,
        mark="derived",
    ),
    Judgement(
        "a 3070 composite core door: 125 lb at most",
        {"door": {"construction": "wood, composite core"}, "hand": "LH", "use": LOW},
        {"weight": "standard"},
        ("door weight",),
        ("weight unknown",),
        source="a density of structural composite lumber from memory",
        mark="derived",
    ),
    Judgement(
        "a 4080 composite core door: 195 lb at most, and wide, so heavy",
        {"size": "4080", "door": {"construction": "wood, composite core"}, "hand": "LH", "use": LOW},
        HEAVY_BALL,
        ("door weight",),
        ("weight unknown",),
    ),
    Judgement(
        "a 2-1/4 door is heavy for its thickness, and says so",
        {"door": STEEL | {"thickness": 2.25}, "hand": "LH", "use": LOW},
        HEAVY_BALL,
    ),
    Judgement(
        "316 by the sea is to be asked for first",
        {"door": STEEL, "hand": "LH", "use": {"exposure": "exterior", "coastal": True}},
        {"base_metal": "stainless", "alloy": "316"},
        ("alloy ask first",),
        source="from memory",
        mark="from memory",
    ),
    Judgement(
        "304 outdoors away from the sea needs no such question",
        {"door": STEEL, "hand": "LH", "use": {"exposure": "exterior", "coastal": False}},
        {"base_metal": "stainless", "alloy": "304"},
        silent=("alloy ask first",),
    ),
)
LOCK = (
    pin("outswing exterior, lock not said", "RHR", OUTSIDE, OUT, True, order=OUT),
    pin("outswing exterior on the other hand, lock not said", "LHR", OUTSIDE, OUT, True),
    pin("outswing exterior, said to have no lock", "RHR", OUTSIDE | {"locked": False}, STAYS, False),
    pin("outswing exterior with a lock", "RHR", OUTSIDE | {"locked": True}, OUT, False),
    pin("outswing exterior with a panic device", "RHR", OUTSIDE, OUT, False, hardware=[PANIC]),
    pin("outswing interior with a panic device", "LHR", INSIDE, OUT, False, hardware=[PANIC]),
    pin("inswing exterior with a panic device", "LH", OUTSIDE, STAYS, False, hardware=[PANIC]),
    pin(
        "a panic device where no lock was said to be",
        "RHR",
        OUTSIDE | {"locked": False},
        OUT,
        False,
        hardware=[PANIC],
        findings=("lock contradicted",),
    ),
    pin("outswing interior, lock not said", "LHR", INSIDE, OUT, True),
    pin("outswing, neither exposure nor lock said", "LHR", {}, OUT, True),
    pin("an outswing closet on a passage set", "LHR", INSIDE | {"locked": False}, STAYS, False),
    pin("an inswing closet on a passage set", "LH", INSIDE | {"locked": False}, STAYS, False),
    pin("outswing interior with a lock", "RHR", INSIDE | {"locked": True}, OUT, False),
    pin("inswing exterior, lock not said: its barrel is inside", "RH", OUTSIDE, STAYS, False),
    pin("inswing interior, lock not said: its barrel is inside", "LH", INSIDE, STAYS, False),
    pin("hand and lock not said", None, {}, OUT, True, findings=("lock unknown", "hand unknown")),
    pin("hand not said, no lock", None, {"locked": False}, STAYS, False, findings=("hand unknown",)),
    pin("null is not said", "RHR", OUTSIDE | {"locked": None}, OUT, True),
    pin("a key on both sides and inswing", "LH", INSIDE | {"lock_both_sides": True}, OUT, False),
    pin(
        "a removable pin by hand where the lock was not said",
        "RHR",
        OUTSIDE,
        STAYS,
        True,
        hinge={"pin": "removable"},
        findings=("lock unknown", "pin exposed"),
    ),
    pin(
        "a removable pin with a security stud holds the door",
        "RHR",
        OUTSIDE,
        STAYS,
        True,
        hinge={"pin": "removable", "security_stud": True},
        silent=("pin exposed",),
    ),
)
SET_BACK = {"hand": "LH", "door": STEEL, "wall": {"frame_proud": -2}}
RETURN = {"hand": "LH", "door": STEEL, "obstructions": [{"kind": "return wall", "start": 4}]}
OPEN_WALL = {"hand": "LH", "door": STEEL}
ASKS_ANGLE = ("angle not asked for",)


def angle(words, base, wanted, width, asks, **changes):
    """An opening of which only the width matters; `wanted` is the angle that was said, or None."""
    use = {"closer": True, "locked": True, "wanted_angle": wanted, **changes.pop("use", {})}
    codes = {"findings": ASKS_ANGLE} if asks else {"silent": ASKS_ANGLE}
    return Judgement(words, {**base, "use": use}, {"width": width}, **codes, **changes)


ANGLE = (
    angle(
        "a door set back 2 in, angle not said: the usual width, and what 180 would take",
        SET_BACK,
        None,
        4,
        True,
        says={"angle not asked for": "To open to 180° it would take 4-1/2 x 6"},
        assumed=("use.wanted_angle",),
    ),
    angle("a door set back 2 in that must open to 180", SET_BACK, 180, 6, False),
    angle("a door set back 2 in that must open to 90", SET_BACK, 90, 4, False),
    angle("a return wall at 4 in, angle not said", RETURN, None, 4, True),
    angle("a return wall at 4 in, 90 asked for", RETURN, 90, 4, False),
    angle("nothing on the wall, angle not said: 180 costs nothing", OPEN_WALL, None, 4, False),
    angle("a stop at 105 says how far it opens", SET_BACK, None, 4, False, use={"stop_angle": 105}),
)
ASKED = ("not said",)
ALL_SAID = {
    "exposure": "interior",
    "coastal": False,
    "humid": False,
    "locked": False,
    "fire_rated": False,
    "closer": True,
    "traffic": "average",
    "accessible": False,
}
TRAFFIC, SALT, POOL, FIRE = "How often", "Salt water", "pool", "how many minutes"


def asked(words, changes, *says):
    """An opening of which everything is said but for the changes; None asks the question again."""
    given = {"hand": "LH", "door": STEEL, "use": ALL_SAID | changes}
    if not says:
        return Judgement(words, given, silent=ASKED)
    return Judgement(words, given, findings=ASKED, says={"not said": says[0]}, assumed=says[1:])


QUESTIONS = (
    asked("everything said: nothing is asked", {}),
    asked("traffic not said", {"traffic": None}, TRAFFIC, "use.traffic"),
    asked("near the sea not said", {"coastal": None}, "316 stainless, ask first", "use.coastal"),
    asked("near the sea not said, outdoors", {"coastal": None, "exposure": "exterior"}, SALT),
    asked("by the sea: already 316", {"coastal": True, "exposure": "exterior"}),
    asked("humidity not said", {"humid": None}, POOL, "use.humid"),
    asked("a humid room: a pool is asked for", {"humid": True}, "316, or ask the hinge's maker"),
    asked("a dry room: no pool", {"humid": False}),
    asked("outdoors: no room to be humid", {"humid": None, "exposure": "exterior"}),
    asked("a label not said", {"fire_rated": None}, FIRE, "use.fire_rated"),
    asked("no label", {"fire_rated": False}),
    asked("an accessible route not said", {"accessible": None}, "accessible route", "use.accessible"),
    asked("a closer not said, low traffic", {"closer": None, "traffic": "low"}, "closer", "use.closer"),
    asked("a closer not said, bearings in any case", {"closer": None}),
    asked("exposure not said", {"exposure": None}, "Indoors or outdoors", "use.exposure"),
)
CASES = (*WEIGHT, *LOCK, *ANGLE, *QUESTIONS)
