"""Finishes, metals and the sources of what is common practice, as an expert would have them said."""

from tests.judgement.judgement import Judgement

STEEL = {"construction": "hollow metal, 18 gage"}
OUTSIDE = {"exposure": "exterior"}
UNSTABLE, BRONZE, EXPOSED = "finish unstable", "brass or bronze", "metal exposed"
NO_NUMBER = "finish not on metal"


def finish(words, hinge, found=(), silent=(), use=None, recommended=None, **changes):
    """An 18 gage door whose hinges are asked for in a finish."""
    opening = {"hand": "LH", "door": STEEL, "use": use or {}, "hinge": hinge}
    return Judgement(words, opening, recommended or {}, tuple(found), tuple(silent), **changes)


def number(bhma, found):
    """A finish by its number: whether it is one that never matches."""
    words = f"{bhma} {'never matches' if found else 'matches'} across metals by eye"
    codes = {"found": (UNSTABLE,)} if found else {"silent": (UNSTABLE,)}
    return finish(words, {"finish_bhma": bhma}, **codes)


CASES = (
    *(number(bhma, True) for bhma in ("609", "610", "616", "620", "621", "636", "638", "643", "647", "648")),
    *(number(bhma, False) for bhma in ("605", "626", "652", "619", "646", "630")),
    *(
        finish(f"{bhma} is asked whether it is on brass or bronze", {"finish_bhma": bhma}, (BRONZE,))
        for bhma in ("611", "612", "614", "617")
    ),
    finish("606 is brass, and nothing is to be asked", {"finish_bhma": "606"}, silent=(BRONZE,)),
    finish("618 is nickel on either, and nothing is to be asked", {"finish_bhma": "618"}, silent=(BRONZE,)),
    finish(
        "612 on brass is asked about, not refused",
        {"finish_bhma": "612", "base_metal": "brass"},
        (BRONZE,),
        ("finish metal",),
        recommended={"base_metal": "brass", "finish_bhma": "612"},
    ),
    finish(
        "US10B outdoors: solid bronze is proposed",
        {"finish_us": "US10B"},
        (NO_NUMBER,),
        use=OUTSIDE,
        says={NO_NUMBER: "take bronze, 613"},
    ),
    finish(
        "US10B on a labelled door outdoors: no bronze",
        {"finish_us": "US10B"},
        use=OUTSIDE | {"fire_rated": True},
        found=(NO_NUMBER,),
        says={NO_NUMBER: "Choose another look or metal"},
    ),
    finish(
        "640 outdoors rusts: solid bronze first, or stainless",
        {"finish_bhma": "640"},
        (EXPOSED,),
        use=OUTSIDE,
        says={EXPOSED: "Take solid bronze, 613, or stainless."},
    ),
    finish(
        "652 outdoors rusts: stainless",
        {"finish_bhma": "652"},
        (EXPOSED,),
        use=OUTSIDE,
        says={EXPOSED: "Take stainless."},
    ),
    finish(
        "613 outdoors is solid bronze already",
        {"finish_bhma": "613"},
        silent=(EXPOSED,),
        use=OUTSIDE,
        recommended={"base_metal": "bronze"},
    ),
    Judgement(
        "a lock in 609 and steel hinges: the nearest is taken, and does not match",
        {"hand": "LH", "door": STEEL, "use": {"lock_finish_bhma": "609"}},
        {"finish_bhma": "638"},
        ("finish near the lock's", UNSTABLE),
    ),
    Judgement(
        "a lock in 626 and steel hinges match",
        {"hand": "LH", "door": STEEL, "use": {"lock_finish_bhma": "626"}},
        {"finish_bhma": "652"},
        silent=("finish near the lock's", "finish differs from the lock", UNSTABLE),
    ),
    Judgement(
        "outdoors away from salt: 304",
        {"hand": "LH", "door": STEEL, "use": OUTSIDE | {"coastal": False}},
        {"base_metal": "stainless", "alloy": "304", "finish_bhma": "630"},
    ),
    Judgement(
        "square corners are the commercial norm",
        {"hand": "LH", "door": STEEL},
        {"corner": "square"},
        silent=("corner differs",),
    ),
)
