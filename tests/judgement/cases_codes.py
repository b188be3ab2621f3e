"""What the codes ask of a door, no more and no less, with the section each comes from."""

from tests.judgement.judgement import Judgement

ADA = "2010 ADA Standards 404.2.3"
IN_THE_WAY = ("hardware in the way",)


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


CASES = (
    closer("a closer that comes down to 77.9 in", 77.9, found=True),
    closer("a closer that comes down to 78 in", 78, found=False),
    closer("a closer that comes down to 78.1 in", 78.1, found=False),
    closer("a panic device is no closer: 78.1 in", 78.1, found=True, kind="panic device"),
    closer("a panic device at 80 in", 80, found=False, kind="panic device"),
)
