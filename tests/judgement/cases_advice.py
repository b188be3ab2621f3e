"""What is recommended, which advice is given, and what would mend where nothing passes."""

from tests.judgement.judgement import Judgement

STEEL = {"construction": "hollow metal, 18 gage"}
FLAT = {"wanted_angle": 180, "closer": True, "locked": True}
OPEN_WALL = {"hand": "LH", "door": STEEL, "use": FLAT}
RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
SQUARE = {"width_policy": "square hinges"}
NARROWEST = {"width_policy": "narrowest that works"}
WIDE_LEAF = {**OPEN_WALL, "size": "4070"}

POLICY = (
    Judgement("nothing on the wall, no policy: the narrowest that works", OPEN_WALL, {"width": 4}),
    Judgement("the same, said", OPEN_WALL, {"width": 4}, job=NARROWEST),
    Judgement("square hinges: as wide as high", OPEN_WALL, {"height": 4.5, "width": 4.5}, job=SQUARE),
    Judgement("square hinges on a wide leaf: 5 by 5", WIDE_LEAF, {"height": 5, "width": 5}, job=SQUARE),
    Judgement(
        "square hinges do not pass a rail: what the rail asks for is taken",
        {**OPEN_WALL, "obstructions": [RAIL | {"projection": 2.25}]},
        {"height": 4.5, "width": 5},
        job=SQUARE,
    ),
    Judgement(
        "a width by hand outranks the policy",
        {**OPEN_WALL, "hinge": {"width": 4}},
        {"width": 4},
        job=SQUARE,
    ),
    Judgement(
        "the job's standard hinge outranks the policy",
        OPEN_WALL,
        {"width": 4},
        job={**SQUARE, "standard_hinge": {"width": 4}},
    ),
)
NOBODY_DOES = "no width does everything"
ROUTE = {**FLAT, "accessible": True}
NOT_RECOMMENDED = {"width": None, "height": None, "finish_bhma": None}
CLASSIC = "28 CFR 36.304(b)(9), swing clear hinges, as it is known from memory; worked out from the plan"
WORKED = {"source": "worked out from the plan", "mark": "derived"}


def stuck(words, opening, says, **changes):
    """An opening on which no stock width does everything, and what is said to mend it."""
    base = {"findings": (NOBODY_DOES,), "says": {NOBODY_DOES: says}, **WORKED}
    return Judgement(words, {**OPEN_WALL, **opening}, **{**base, **changes})


def wide(inches):
    """An opening so wide on an accessible route; on a 4-1/2 x 4 it leaves 2-15/16 less than its width."""
    return {"size": {"width": inches, "height": 84}, "use": ROUTE}


COLUMN = {"kind": "column", "diameter": 12, "start": 3}
RETURN = {"kind": "return wall", "start": 3}
CUPBOARD = {"size": {"width": 18, "height": 84}, "door": STEEL | {"latch_bevel": 0}}
MENDS = (
    stuck(
        "a chair rail 6 in deep: the usual width, and where the rail must end",
        {"obstructions": [RAIL | {"projection": 6}]},
        "cut the chair rail back to begin 33-3/4 in from the frame",
        recommended={"width": 4},
    ),
    stuck(
        "the same rail: or the frame farther out of the wall",
        {"obstructions": [RAIL | {"projection": 6}]},
        "set the frame 1-1/8 in proud of the wall instead of 1/2 in",
    ),
    stuck(
        "the same rail: or a stop for the door as it is",
        {"obstructions": [RAIL | {"projection": 6}]},
        "Else fit a door stop before 121.5°.",
    ),
    Judgement(
        "a chair rail that a wider hinge passes: no other mend is needed",
        {**OPEN_WALL, "obstructions": [RAIL | {"projection": 2.25}]},
        {"width": 5},
        silent=(NOBODY_DOES,),
        **WORKED,
    ),
    stuck(
        "a column that no hinge passes: not 7 in wide to go a few degrees farther",
        {"use": ROUTE, "obstructions": [COLUMN]},
        "4-1/2 x 4 stops at 128.3°",
        recommended={"width": 4},
        silent=("too narrow to pass",),
    ),
    stuck(
        "a return wall 3 in off, 180 asked for: the usual width and a stop",
        {"obstructions": [RETURN]},
        "Else fit a door stop before 98.9°.",
        recommended={"width": 4},
    ),
    Judgement(
        "a return wall 3 in off, 90 asked for: nothing is short",
        {**OPEN_WALL, "use": FLAT | {"wanted_angle": 90}, "obstructions": [RETURN]},
        {"width": 4},
        silent=(NOBODY_DOES,),
        **WORKED,
    ),
    Judgement(
        "the clear width a hair short: no hinge is recommended",
        {**OPEN_WALL, **wide(34.9375 - 1 / 64)},
        NOT_RECOMMENDED,
        (NOBODY_DOES, "too narrow to pass"),
        source="2010 ADA Standards 404.2.3",
        mark="read",
    ),
    Judgement(
        "the clear width just kept",
        {**OPEN_WALL, **wide(34.9375)},
        {"width": 4},
        ("clear width kept",),
        (NOBODY_DOES, "too narrow to pass"),
        source="2010 ADA Standards 404.2.3",
        mark="read",
    ),
    Judgement(
        "the clear width kept by a hair", {**OPEN_WALL, **wide(34.9375 + 1 / 64)}, {"width": 4}, **WORKED
    ),
    stuck(
        "a 2-10 opening on a route: swing clear hinges keep the clear width",
        wide(34),
        "take swing clear hinges, sold by height and hand: the leaf then opens to 180°, clear width 32-3/4",
        recommended=NOT_RECOMMENDED,
        source=CLASSIC,
        mark="from memory",
    ),
    stuck(
        "a 2-10 opening on a route: or one 2 in wider",
        wide(34),
        "make the opening 36 in wide",
        recommended=NOT_RECOMMENDED,
    ),
    stuck(
        "a 2-8 opening on a route: swing clear hinges are not enough, a wider opening is",
        wide(32),
        "What would do it: make the opening 36 in wide.",
        recommended=NOT_RECOMMENDED,
    ),
    stuck(
        "swing clear hinges that were asked for are not offered again",
        wide(32) | {"hinge": {"mounting": "swing clear"}},
        "What would do it: make the opening 34 in wide.",
        recommended=NOT_RECOMMENDED,
    ),
    Judgement(
        "a 2-10 opening on swing clear hinges keeps the clear width",
        {**OPEN_WALL, **wide(34), "hinge": {"mounting": "swing clear"}},
        {"mounting": "swing clear"},
        ("clear width kept",),
        (NOBODY_DOES,),
        source=CLASSIC,
        mark="from memory",
    ),
    stuck(
        "a narrow cupboard with a square lock edge: bevel it",
        CUPBOARD,
        "What would do it: bevel the lock edge 1/8 in 2",
        recommended=NOT_RECOMMENDED,
    ),
    Judgement(
        "the narrow cupboard with its edge beveled",
        {**OPEN_WALL, **CUPBOARD, "door": STEEL | {"latch_bevel": 0.0625}},
        {"width": 4},
        silent=(NOBODY_DOES, "binds at the lock side"),
        **WORKED,
    ),
    stuck(
        "of something unknown it is asked whether it can be cut",
        {"obstructions": [{"kind": "other", "projection": 7, "start": 1, "length": 12}]},
        "ask whether the obstruction can be taken away",
    ),
    Judgement(
        "a brass finish asked for on a labelled fire door is not recommended",
        {**OPEN_WALL, "use": FLAT | {"fire_rated": True}, "hinge": {"finish_bhma": "626"}},
        NOT_RECOMMENDED,
        ("fire metal",),
    ),
    Judgement(
        "plain bearings with a closer are not recommended",
        {**OPEN_WALL, "hinge": {"bearing": "plain"}},
        NOT_RECOMMENDED,
        ("plain bearing with closer",),
        source="UFC 3-190-02FA (2003, since cancelled), para. 6d",
        mark="read",
    ),
)
HEAVY = {**OPEN_WALL, "use": FLAT | {"traffic": "high"}}


def barrel(words, diameter, width, **changes):
    """A 4-1/2 x 4 on a usual frame: its pin stands 3/8 off the frame face."""
    given = {**OPEN_WALL, "hinge": {"barrel": diameter}}
    return Judgement(words, given, {"width": width}, silent=("barrel close",), **{**WORKED, **changes})


def cased(words, start, width, says=(), **changes):
    """A 1-3/4 wood door in a jamb 3/4 thick with casing 11/16 thick, which begins so far from the jamb."""
    casing = {"kind": "casing", "projection": 0.6875, "start": start, "length": 2.25}
    frame = {"kind": "wood with casing"}
    door = {"construction": "wood, solid core", "thickness": 1.75}
    given = {"hand": "LH", "door": door, "frame": frame, "use": FLAT, "obstructions": [casing], **changes}
    told = {"findings": (REVEAL,), "says": {REVEAL: says}} if says else {"silent": (REVEAL,)}
    return Judgement(words, given, {"height": 4.5, "width": width}, **told, **WORKED)


REVEAL = "reveal does it too"
BARRELS = (
    Judgement("a heavy hinge 4 wide leaves its barrel nothing", HEAVY, {"width": 4.5}, **WORKED),
    Judgement("a standard hinge 4 wide is free by 3/32", OPEN_WALL, {"width": 4}, **WORKED),
    barrel("a barrel free by a hair less than 1/32", 0.6875 + 1 / 64, 4.5),
    barrel("a barrel free by 1/32", 0.6875, 4),
    barrel("a barrel free by a hair more than 1/32", 0.6875 - 1 / 64, 4),
    Judgement(
        "a heavy hinge 4 wide by hand: confirm its barrel",
        {**HEAVY, "hinge": {"width": 4}},
        {"width": 4},
        ("barrel close",),
        says={"barrel close": "Take 4-1/2 x 4-1/2."},
        **WORKED,
    ),
    cased("casing at a 1/4 reveal: a wide throw, or a 3/8 reveal", -0.5, 5, "4-1/2 x 4 does it too"),
    cased("casing at a 3/8 reveal: a usual hinge", -0.375, 4),
    cased("casing at the edge of the jamb: a usual hinge", 0, 4),
    cased("casing at a 1/4 reveal and a thinner barrel off its drawing", -0.5, 4, hinge={"barrel": 0.5}),
)
TEMPLATE = "template decides"
UNRELATED = ("binds at the lock side", "barrel overlaps", NOBODY_DOES, "stops short", "too narrow to pass")


def surface(words, mounting, **changes):
    """A hinge with a leaf on a face: its template decides, and nothing unrelated is advised."""
    given = {**OPEN_WALL, "hinge": {"mounting": mounting}, **changes}
    source = {"source": "common practice, no source", "mark": "common practice"}
    return Judgement(words, given, {"mounting": mounting}, (TEMPLATE,), UNRELATED, **source)


SURFACE = (
    surface("half surface hinges on a door set back 1/8", "half surface"),
    surface("full surface hinges", "full surface"),
    surface("half mortise hinges", "half mortise"),
    surface("half surface hinges on an accessible route", "half surface", use=ROUTE),
    surface("full surface hinges on a door in a deep rabbet", "full surface", frame={"rabbet": 2.5}),
    surface("half surface hinges on a narrow door with a square edge", "half surface", **CUPBOARD),
    Judgement(
        "full mortise hinges need no template to be known", OPEN_WALL, {"width": 4}, silent=(TEMPLATE,)
    ),
    Judgement(
        "swing clear hinges are worked out",
        {**OPEN_WALL, "hinge": {"mounting": "swing clear"}},
        {"mounting": "swing clear"},
        silent=(TEMPLATE,),
        **WORKED,
    ),
)
OLD = {
    "height": 4.5,
    "width": 4.5,
    "leaf_thickness": 0.134,
    "corner": "square",
    "count": 3,
    "mounting": "full mortise",
}
FITS, OLD_FAILS = "replacement fits", "old width fails"
DIFFERS = ("leaf narrower", "leaf gage differs", "corner differs", "mortise left open", "mortise too short")


def replacing(words, old, recommended, findings=(FITS,), silent=DIFFERS, says=None, **changes):
    """A steel door and frame already cut for a hinge, which hangs there now."""
    given = {**OPEN_WALL, "existing_hinge": OLD | old, **changes}
    return Judgement(words, given, recommended, findings, silent, says or {})


REPLACING = (
    replacing("replacing: the width that hangs there, though a narrower one would do", {}, {"width": 4.5}),
    replacing("replacing a 4 in hinge: 4 again", {"width": 4}, {"width": 4}),
    replacing("replacing a wide throw: as wide again", {"width": 6}, {"width": 6}),
    replacing(
        "replacing rounded corners: as they are cut", {"corner": "1/4 radius"}, {"corner": "1/4 radius"}
    ),
    replacing(
        "replacing heavy leaves where standard would do: the gage that is cut",
        {"leaf_thickness": 0.18},
        {"weight": "heavy", "leaf_thickness": 0.18},
    ),
    replacing(
        "replacing standard leaves on a busy door: the gage stays, and it is said",
        {},
        {"weight": "standard", "bearing": "ball"},
        ("weight too light",),
        says={"weight too light": "keep the gage, or ask who made door and frame"},
        use=FLAT | {"traffic": "high"},
    ),
    replacing(
        "replacing a hinge half an inch lower than the door takes",
        {"height": 4, "leaf_thickness": 0.13},
        {"height": 4, "width": 4.5},
        ("hinge too low",),
    ),
    replacing(
        "replacing a hinge an inch lower than the door takes: it does not serve",
        {"height": 3.5, "width": 3.5, "leaf_thickness": 0.123},
        {"height": 4.5, "width": 4},
        ("mortise too short",),
        (OLD_FAILS,),
        says={"mortise too short": "check that the reinforcement or blocking reaches that far"},
    ),
    replacing(
        "replacing a hinge higher than the door takes: as high again",
        {"height": 5, "leaf_thickness": 0.146},
        {"height": 5, "width": 4.5},
    ),
    replacing("replacing four hinges where three would do: four", {"count": 4}, {"count": 4}),
    replacing(
        "replacing two hinges where three are due: three, with reinforcement behind the third",
        {"count": 2},
        {"count": 3},
        ("hinge count differs",),
        says={"hinge count differs": "see that there is reinforcement or blocking behind"},
    ),
    replacing(
        "replacing a width that leaves its barrel in the frame: it fails",
        {"width": 3.5},
        {"width": 4},
        (OLD_FAILS,),
    ),
    replacing(
        "replacing a width that no longer passes a rail, 180 asked for",
        {"width": 4},
        {"width": 5},
        (OLD_FAILS,),
        obstructions=[RAIL | {"projection": 2.25}],
    ),
    replacing(
        "replacing the same, 180 not asked for: what hangs there",
        {"width": 4},
        {"width": 4},
        silent=(OLD_FAILS,),
        obstructions=[RAIL | {"projection": 2.25}],
        use=FLAT | {"wanted_angle": None},
    ),
    replacing("replacing full surface hinges", {"mounting": "full surface"}, {"mounting": "full surface"}),
    replacing(
        "replacing by hand with a narrower hinge: what that leaves is said",
        {},
        {"width": 4},
        ("leaf narrower",),
        (),
        hinge={"width": 4},
    ),
    Judgement(
        "replacing outranks the job's standard hinge, for the mortises are there",
        {**OPEN_WALL, "existing_hinge": OLD},
        {"width": 4.5},
        job={"standard_hinge": {"width": 5}},
    ),
    replacing(
        "replacing on a labelled door: stop and ask, nothing is recommended",
        {},
        NOT_RECOMMENDED,
        ("replacement on a fire door",),
        use=FLAT | {"fire_rated": True},
    ),
)
THIN = {"construction": "wood, solid core", "thickness": 1.375, "hinge_gap": 0.125, "latch_gap": 0.125}
WOOD = {"frame": {"kind": "wood with casing"}, "hand": "LH", "use": FLAT}
TOO_HIGH, OUTSIDE = "hinge too high", "outside the tables"


def thin(words, width, recommended, findings=(), silent=(TOO_HIGH, OUTSIDE), **changes):
    """A door 1-3/8 thick, so wide."""
    job = changes.pop("job", {})
    given = {**WOOD, "door": THIN, "size": {"width": width + 0.25, "height": 80}, **changes}
    return Judgement(words, given, recommended, findings, silent, job=job)


HEIGHTS = (
    thin("a 1-3/8 door 32 in wide", 32, {"height": 3.5}),
    thin("a 1-3/8 door over 32 in wide", 32 + 1 / 64, {"height": 4}),
    thin("a 1-3/8 door 36 in wide", 36, {"height": 4}),
    thin("a 1-3/8 door over 36 in wide is outside the table", 36 + 1 / 64, {"height": None}, (OUTSIDE,), ()),
    thin(
        "a 1-3/8 door takes no 4-1/2 in hinges by hand",
        36,
        {"height": None},
        (TOO_HIGH,),
        (),
        hinge={"height": 4.5},
    ),
    thin("a 1-3/8 door on 4 in hinges by hand", 30, {"height": 4}, hinge={"height": 4}),
    thin(
        "a 1-3/8 door does not take the job's 4-1/2 in hinges",
        36,
        {"height": 4},
        ("standard too high",),
        job={"standard_hinge": {"height": 4.5}},
    ),
    thin(
        "a 1-3/8 door that is said to be cut for 4-1/2 in hinges: check the thickness",
        36,
        {"height": 4.5},
        (TOO_HIGH,),
        (),
        prepared_height=4.5,
    ),
    Judgement(
        "a 1-3/4 door on 4-1/2 in hinges",
        {**WOOD, "door": THIN | {"thickness": 1.75}},
        {"height": 4.5},
        silent=(TOO_HIGH, OUTSIDE),
    ),
    Judgement(
        "a 1-3/4 door 49 in wide is in the table",
        {**OPEN_WALL, "size": {"width": 49, "height": 84}},
        {"height": 6},
        silent=(OUTSIDE,),
    ),
)
LOW = {"traffic": "low", "closer": False, "locked": True, "wanted_angle": 180}


def heavy(words, why, source, mark, **changes):
    """A door that takes heavy hinges for one reason, which its sentence gives and no other."""
    given = {**OPEN_WALL, "use": LOW, **changes}
    return Judgement(words, given, {"weight": "heavy"}, because={"weight": why}, source=source, mark=mark)


MEMORY = ("from memory", "from memory")
WEIGHTS = (
    heavy(
        "heavy for its thickness, and says so",
        "over 1-3/4 in thick",
        "common practice, no source",
        "common practice",
        door=STEEL | {"thickness": 2.25},
    ),
    heavy("heavy for its weight, and says so", "may weigh 230 lb", *MEMORY, door=STEEL | {"weight": 230}),
    heavy("heavy for its width, and says so", "wide", *MEMORY, size={"width": 43, "height": 80}),
    heavy(
        "heavy for its traffic, and says so",
        "high-frequency doors",
        "UFC 3-190-02FA (2003, since cancelled), para. 6d",
        "read",
        use=LOW | {"traffic": "high"},
    ),
)
MEASURE = "sizes not given"
SIZES = {"source": "sizes usual of each kind, from memory", "mark": "from memory"}
MEASURED = {"kind": "lever", "face": "pull", "projection": 2.5, "from_latch_edge": 4.25, "width": 5}
MEASURED |= {"height": 38, "vertical": 2}
NOT_MEASURED = (
    Judgement(
        "a chair rail that nobody measured: as usual, assumed and asked for",
        {**OPEN_WALL, "obstructions": [{"kind": "chair rail"}]},
        {"width": 4.5},
        (MEASURE,),
        says={MEASURE: "The chair rail was not measured in all; taken as usual: stands off by 1-3/4 in"},
        assumed=("obstructions.0.projection", "obstructions.0.start"),
        **SIZES,
    ),
    Judgement(
        "a chair rail with null for its sizes is not measured either",
        {**OPEN_WALL, "obstructions": [{"kind": "chair rail", "projection": None, "start": None}]},
        {"width": 4.5},
        (MEASURE,),
        assumed=("obstructions.0.projection", "obstructions.0.start"),
        **SIZES,
    ),
    Judgement(
        "a chair rail that was measured is not asked for",
        {**OPEN_WALL, "obstructions": [RAIL]},
        {"width": 4.5},
        silent=(MEASURE,),
        **WORKED,
    ),
    Judgement(
        "a column that nobody measured",
        {**OPEN_WALL, "obstructions": [{"kind": "column"}]},
        findings=(MEASURE,),
        assumed=("obstructions.0.diameter", "obstructions.0.start"),
        **SIZES,
    ),
    Judgement(
        "a lever that nobody measured",
        {**OPEN_WALL, "hardware": [{"kind": "lever"}]},
        findings=(MEASURE,),
        assumed=tuple(f"hardware.0.{key}" for key in MEASURED if key != "kind"),
        **SIZES,
    ),
    Judgement(
        "a panic device that nobody measured is on the push face",
        {**OPEN_WALL, "hardware": [{"kind": "panic device"}]},
        findings=(MEASURE,),
        assumed=("hardware.0.face",),
        **SIZES,
    ),
    Judgement(
        "a lever that was measured is not asked for",
        {**OPEN_WALL, "hardware": [MEASURED]},
        {"width": 4},
        silent=(MEASURE,),
        **WORKED,
    ),
)
CASES = (
    *POLICY, *MENDS, *BARRELS, *SURFACE, *REPLACING, *HEIGHTS, *WEIGHTS, *NOT_MEASURED,
)  # fmt: skip
