"""What the codes ask of a door, no more and no less, with the section each comes from."""

from tests.judgement.judgement import Judgement

ADA = "2010 ADA Standards 404.2.3"
NYC = "New York City Building Code 2022, 1010.1.1.1, which follows the IBC: group I-2"
IN_THE_WAY = ("hardware in the way",)
SHORT, KEPT, DEPTH, OPEN = "too narrow to pass", "clear width kept", "depth not known", "not said"


def closer(words, underside, found, kind="closer"):
    """Something 8 in deep on the push face of a 36 in door, which takes over 4 in of the 32 in asked."""
    thing = {"kind": kind, "face": "push", "projection": 8, "from_latch_edge": 20, "width": 10}
    opening = {
        "hand": "LH",
        "use": {"accessible": True},
        "hardware": [{**thing, "vertical": 2, "height": underside + 1}],
    }
    codes = {"findings" if found else "silent": IN_THE_WAY}
    return Judgement(words, opening, source=f"{ADA}, exception 2", mark="read", **codes)


def clear(words, width, use, found, wall=5, source=ADA, mark="read", **changes):
    """An opening of that width, 84 in high: on a 4 in hinge it leaves 2-15/16 in less than its width."""
    opening = {"hand": "LH", "size": {"width": width, "height": 84}, "use": use, "wall": {"thickness": wall}}
    opening |= {key: changes.pop(key) for key in ("leaves", "frame") if key in changes}
    other = {SHORT: KEPT, KEPT: SHORT}.get(found, KEPT)
    silent = changes.pop("silent", (other,))
    return Judgement(words, opening, findings=(found,), silent=silent, source=source, mark=mark, **changes)


ROUTE = {"accessible": True}
ALTERED = ROUTE | {"alteration": True}
BEDS = {"beds_moved": True}

CLEAR_WIDTHS = (
    clear("a 2'-10-15/16 opening leaves just 32 in", 34.9375, ROUTE, KEPT),
    clear("a 2'-10-7/8 opening leaves 31-15/16 in", 34.875, ROUTE, SHORT),
    # A knocked-down frame goes 1/2 in round its wall on both sides: 23 in of wall are an opening 24 in deep.
    clear("an opening 24 in deep takes 32 in", 36, ROUTE, KEPT, wall=23),
    clear("an opening 24-1/16 in deep takes 36 in", 36, ROUTE, SHORT, wall=23.0625, says={SHORT: "36 in"}),
    clear("an opening 30 in deep and 3-4 wide keeps 36 in", 40, ROUTE, KEPT, wall=29),
    clear("an opening 30 in deep and 3-2-7/8 wide leaves 35-15/16 in", 38.875, ROUTE, SHORT, wall=29),
    clear("a deep opening on no accessible route asks for nothing", 34, {"accessible": False}, OPEN, wall=29),
    clear("a wall nobody measured never makes 32 in enough in silence", 36, ROUTE, DEPTH, None, silent=()),
    clear("a wall nobody measured is asked for in what is short too", 34, ROUTE, DEPTH, wall=None),
    clear("a wall that is known asks nothing", 36, ROUTE, KEPT, silent=(DEPTH, SHORT)),
    clear("3-4 keeps what a deep opening takes, so nothing is asked", 40, ROUTE, KEPT, wall=None),
    clear(
        "an alteration: the latch-side stop takes 5/8, so 31-3/8 in are enough",
        34.3125,
        ALTERED,
        KEPT,
        source=f"{ADA}, exception 1",
    ),
    clear("an alteration that leaves 31-5/16 in", 34.25, ALTERED, SHORT, source=f"{ADA}, exception 1"),
    clear("no alteration: 31-3/8 in are short", 34.3125, ROUTE | {"alteration": False}, SHORT),
    clear(
        "nobody said whether it is an alteration, and it would be enough in one",
        34.3125,
        ROUTE,
        SHORT,
        says={SHORT: "Say if this is an alteration"},
    ),
    clear("an alteration of a deep opening: 35-3/8 in", 38.3125, ALTERED, KEPT, wall=29),
    clear("a doorway for beds leaves 41-1/2 in", 44.6875, BEDS, KEPT, source=NYC),
    clear("a 3-8 doorway for beds is short", 44, BEDS, SHORT, source=NYC, says={SHORT: "41-1/2 in"}),
    clear("a 4-0 doorway for beds", 48, BEDS, KEPT, source=NYC),
    clear("beds and a route: the more of the two", 42, BEDS | ROUTE, SHORT, source=NYC),
    clear("a pair lets beds through with both leaves open", 72, BEDS, KEPT, leaves="pair", source=NYC),
    clear("a pair 3-10 wide leaves 41-3/8 in with both open", 46, BEDS, SHORT, leaves="pair", source=NYC),
    clear("a 3-6 opening is asked about beds", 42, {}, OPEN, says={OPEN: "Beds moved"}, source=NYC),
    clear("a 3-0 opening is not asked about beds", 36, ROUTE, KEPT, source=NYC),
)

NOTE = "unattributed hardware note quoting NFPA 80 Table 2-8A; said as quoted in a secondary text"
SIZE, LISTING, MEMORY = "fire size", "fire listing", "fire row from memory"
FIRE_FINDINGS = (SIZE, "fire height", "fire gage", MEMORY)


def fire(words, size, found=(), thickness=1.75, source=NOTE, mark="common practice", **changes):
    """A labelled door of that size in inches; of what is said of its hinge, `found` and no more."""
    opening = {"hand": "LH", "size": {"width": size[0], "height": size[1]}, "use": {"fire_rated": True}}
    opening |= {"door": {"construction": "hollow metal, 18 gage", "thickness": thickness}}
    opening |= {key: changes.pop(key) for key in ("hinge",) if key in changes}
    silent = tuple(code for code in FIRE_FINDINGS if code not in found)
    return Judgement(
        words, opening, findings=(*found, LISTING), silent=silent, source=source, mark=mark, **changes
    )


FOUR, LEAD = {"height": 4, "width": 4, "leaf_thickness": 0.13}, {"construction": "lead-lined"}
MILITARY = "UFC 3-190-02FA (2003, since cancelled), Builders' Hardware, para. 6e"
FIRE = (
    fire("a labelled door 1-3/4 thick", (36, 84)),
    fire("a labelled door 2-1/4 thick is within “1-3/4 or thicker”", (36, 84), thickness=2.25),
    fire("a labelled door 2-1/2 thick", (48, 96), thickness=2.5),
    fire("a labelled door over 4 ft wide: check the listing", (50, 96), (SIZE,)),
    fire("a labelled leaf of 4-0 x 8-0 takes 0.134", (48, 96), recommended={"height": 5}),
    fire("a labelled leaf over 10 ft high: check the listing", (48, 122), (SIZE,)),
    fire("a labelled 1-3/8 door over 3-0", (38, 84), (SIZE,), 1.375, "from memory, unchecked", "from memory"),
    fire("a labelled door on hinges 4 high", (36, 84), ("fire height", "fire gage"), hinge=FOUR),
    fire("a labelled 3-0 x 5-0 on 4 in hinges rests on memory", (36, 60), (MEMORY,), hinge=FOUR),
    fire(
        "a labelled 3-0 x 5-6 takes more than 4 in hinges",
        (36, 66),
        ("fire height", "fire gage"),
        hinge=FOUR,
    ),
    Judgement(
        "a label of unknown minutes is asked about",
        {"hand": "LH", "use": {"fire_rated": True}},
        findings=("not said", LISTING),
        says={"not said": "How many minutes its label says"},
    ),
    Judgement(
        "a label of 90 minutes: rated without another word, and within the table",
        {"hand": "LH", "fire_minutes": 90, "door": {"construction": "hollow metal, 18 gage"}},
        {"bearing": "ball", "base_metal": "steel"},
        (LISTING,),
        (SIZE,),
    ),
    Judgement(
        "a label of 180 minutes is within what is known of the table",
        {"hand": "LH", "fire_minutes": 180},
        findings=(LISTING,),
        silent=(SIZE,),
        source=NOTE,
    ),
    Judgement(
        "a label of 240 minutes: check the listing",
        {"hand": "LH", "fire_minutes": 240},
        findings=(SIZE, LISTING),
        says={SIZE: "labelled 240 minutes"},
        source=NOTE,
    ),
    Judgement(
        "0 minutes are no label",
        {"hand": "LH", "fire_minutes": 0},
        silent=(SIZE, LISTING),
    ),
    Judgement(
        "a labelled door on spring hinges is cautioned of",
        {"hand": "LH", "hung_on": "spring hinges", "use": {"fire_rated": True}},
        findings=("fire spring hinges",),
        says={"fire spring hinges": "From memory"},
        source="from memory: NFPA 80 Table 6.4.3.1 is the place to check",
        mark="from memory",
    ),
    Judgement(
        "spring hinges on a door without a label",
        {"hand": "LH", "hung_on": "spring hinges", "use": {"fire_rated": False}},
        silent=("fire spring hinges",),
    ),
)
LEAD_LINED = (
    Judgement(
        "a lead-lined 3-0 door: hinges by its weight, and a caution",
        {"hand": "LH", "door": LEAD | {"weight": 300}},
        {"weight": "heavy", "bearing": "ball", "count": 3},
        ("lead-lined",),
        says={"lead-lined": "since withdrawn"},
        order={"quantity": 3},
        source=MILITARY,
        mark="read",
    ),
    Judgement(
        "a lead-lined 2-11 door is below what that rule speaks of",
        {"hand": "LH", "size": {"width": 35, "height": 84}, "door": LEAD | {"weight": 200}},
        silent=("lead-lined",),
        source=MILITARY,
        mark="read",
    ),
    Judgement(
        "a steel door with lead in it is not what that rule speaks of",
        {"hand": "LH", "door": {"construction": "hollow metal, 18 gage", "lead_thickness": 0.0625}},
        silent=("lead-lined",),
        source=MILITARY,
        mark="read",
    ),
)

TABLE, RECESS = "2010 ADA Standards, Table 404.2.4.1", "2010 ADA Standards 404.2.4.3"
ROOM, NO_ROOM, ASKED = "manoeuvring kept", "manoeuvring short", "manoeuvring not known"
WIDE = {"depth": 96, "latch_side": 60, "hinge_side": 60}


def floors(words, found, silent=(), pull=None, push=None, closer=True, **changes):
    """An accessible 3-0 door with a latch; room enough on a side that is not spoken of."""
    use = {"accessible": True, "closer": closer, "locked": True}
    opening = {"hand": "LH", "wall": {"thickness": 5}, "use": use}
    opening |= {"pull_side": WIDE if pull is None else pull, "push_side": WIDE if push is None else push}
    for key in ("wall", "leaves", "size", "obstructions"):
        opening |= {key: changes.pop(key)} if key in changes else {}
    return Judgement(
        words,
        opening,
        findings=(found,),
        silent=silent,
        **{"source": TABLE, "mark": "read", **changes},
    )


# The frame shows 2 in beside the opening: 16 in from it are 18 in past the lock.
MANOEUVRING = (
    floors("room enough on both sides, whichever way people come", ROOM, (NO_ROOM, ASKED)),
    floors("nothing is known of the floor on the pull side", ASKED, (NO_ROOM,), pull={}),
    floors("nothing is known of the floor on the push side", ASKED, (NO_ROOM,), push={}),
    floors(
        "pull from the front: 60 x 18",
        ROOM,
        (NO_ROOM, ASKED),
        pull={"approach": "front", "depth": 60, "latch_side": 16},
    ),
    floors(
        "pull from the front with 17-15/16 past the lock",
        NO_ROOM,
        pull={"approach": "front", "depth": 60, "latch_side": 15.9375},
        says={NO_ROOM: "18 in past the lock"},
        recommended={"height": 4.5, "width": 4},
        order={"quantity": 3},
    ),
    floors(
        "pull from the front in a corridor 4-11 wide",
        NO_ROOM,
        pull={"approach": "front", "depth": 59, "latch_side": 20},
    ),
    floors(
        "pull from the hinge side: 54 deep serves with 42 past the lock",
        ROOM,
        (NO_ROOM,),
        pull={"approach": "hinge", "depth": 54, "latch_side": 40},
    ),
    floors(
        "pull from the hinge side: 54 deep does not serve with 36 past the lock",
        NO_ROOM,
        pull={"approach": "hinge", "depth": 54, "latch_side": 34},
    ),
    floors(
        "pull from the lock side with a closer: 54 deep",
        NO_ROOM,
        pull={"approach": "latch", "depth": 48, "latch_side": 22},
    ),
    floors(
        "pull from the lock side without a closer: 48 deep",
        ROOM,
        (NO_ROOM,),
        pull={"approach": "latch", "depth": 48, "latch_side": 22},
        closer=False,
    ),
    floors(
        "push from the front with closer and latch: 12 past the lock",
        NO_ROOM,
        push={"approach": "front", "depth": 48, "latch_side": 9},
        says={NO_ROOM: "12 in past the lock"},
    ),
    floors(
        "push from the front without a closer: nothing past the lock",
        ROOM,
        (NO_ROOM, ASKED),
        push={"approach": "front", "depth": 48},
        closer=False,
    ),
    floors(
        "whether it closes by itself was not said: supposed, and said so",
        NO_ROOM,
        push={"approach": "front", "depth": 48, "latch_side": 0},
        closer=None,
        says={NO_ROOM: "Nobody said whether it has a closer"},
    ),
    floors(
        "push from the hinge side: 22 past the hinges",
        ROOM,
        (NO_ROOM,),
        push={"approach": "hinge", "depth": 48, "hinge_side": 20},
    ),
    floors(
        "push from the hinge side with 21 past the hinges",
        NO_ROOM,
        push={"approach": "hinge", "depth": 48, "hinge_side": 19},
    ),
    floors(
        "the floor is measured and the way people come is not said: asked",
        ASKED,
        (NO_ROOM,),
        pull={"depth": 60, "latch_side": 16},
        says={ASKED: "from which way people come"},
    ),
    floors(
        "a wall that turns 12 in beside the lock leaves 14 for a pull",
        NO_ROOM,
        obstructions=[{"kind": "return wall", "side": "latch", "start": 12}],
        source=RECESS,
        says={NO_ROOM: "recessed more than 8 in"},
    ),
    floors(
        "a wall that turns 16 in beside the lock leaves 18",
        ROOM,
        (NO_ROOM,),
        pull={"approach": "front", "depth": 96},
        obstructions=[{"kind": "return wall", "side": "latch", "start": 16}],
    ),
    floors(
        "a chair rail beside the lock stands out less than 8 in",
        ROOM,
        (NO_ROOM, ASKED),
        obstructions=[{"kind": "chair rail", "side": "latch", "projection": 1.75, "start": 1}],
        source=RECESS,
    ),
    floors(
        "a 12 in wall: the push side is recessed, and closer and latch take 12 beside the lock",
        NO_ROOM,
        wall={"thickness": 12},
        source=RECESS,
    ),
    floors("a 12 in wall without a closer", ROOM, (NO_ROOM,), wall={"thickness": 12}, closer=False),
    floors(
        "a pair's other leaf is room beside the lock",
        ROOM,
        (NO_ROOM,),
        pull={"approach": "front", "depth": 60, "latch_side": 0},
        leaves="pair",
        size="6070",
    ),
    Judgement(
        "off an accessible route nothing is asked of the floor",
        {"hand": "LH", "use": {"accessible": False}, "pull_side": {"depth": 20}},
        silent=(ROOM, NO_ROOM, ASKED),
        source=TABLE,
        mark="read",
    ),
)

CASES = (
    closer("a closer that comes down to 77.9 in", 77.9, found=True),
    closer("a closer that comes down to 78 in", 78, found=False),
    closer("a closer that comes down to 78.1 in", 78.1, found=False),
    closer("a panic device is no closer: 78.1 in", 78.1, found=True, kind="panic device"),
    closer("a panic device at 80 in", 80, found=False, kind="panic device"),
    *CLEAR_WIDTHS,
    *FIRE,
    *LEAD_LINED,
    *MANOEUVRING,
)
