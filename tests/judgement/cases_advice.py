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
CASES = POLICY
