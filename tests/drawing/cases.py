"""Openings for the tests of the drawing: the demo job's, and random ones with a fixed seed."""

import random
from functools import cache

from configurator.model import JobFacts, Opening
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import Study, study
from configurator.tables import FrameKindRow, table

FRAMES = {row.kind: {} if row.usual_place else {"wall": {"frame_proud": 0.25}} for row in table(FrameKindRow)}
"""Every kind of frame, with what else must be given of it."""


@cache
def demo(mark: str) -> Study:
    job = load(resource_path("demo_openings", "kestrel_point.json"))
    return study(next(one for one in job.openings if one.mark == mark), job.job)


@cache
def demo_pair(mark: str) -> Study:
    """Return an opening of the demo job of pairs and Dutch doors."""
    job = load(resource_path("demo_openings", "pairs_and_dutch.json"))
    return study(next(one for one in job.openings if one.mark == mark), job.job)


def case_a(**changes: object) -> Study:
    """The plain case of the geometry: proud 1/2, two widths."""
    data: dict[str, object] = {
        "mark": "A",
        "hand": "LH",
        "size": {"width": 36, "height": 84},
        "door": {"construction": "hollow metal, 18 gage", "thickness": 1.75, "latch_bevel": 0},
        "frame": {"kind": "knocked-down drywall"},
        "wall": {"thickness": 4.875},
        "compare": [4, 4.5],
    }
    return study(Opening.model_validate({**data, **changes}), JobFacts(name="Case"))


@cache
def random_study(seed: int) -> Study:
    """An opening of any frame kind with things along the wall, levers and 1 to 4 widths."""
    dice = random.Random(seed)
    kind = dice.choice(list(FRAMES))
    things = [_thing(dice) for _ in range(dice.randint(0, 3))]
    return case_a(
        hand=dice.choice(["LH", "RH", "LHR", "RHR"]),
        size={"width": dice.choice([24, 30, 36, 48]), "height": 84},
        door={
            "construction": dice.choice(["hollow metal, 16 gage", "wood, solid core", "aluminum and glass"]),
            "thickness": dice.choice([1.375, 1.75]),
        },
        frame={"kind": kind},
        wall=FRAMES[kind].get("wall", {}),
        obstructions=things,
        hardware=[
            {
                "kind": "lever",
                "projection": 2.5,
                "from_latch_edge": 2.75,
                "width": 4,
                "height": 38,
                "vertical": 3,
            }
        ],
        compare=dice.sample([4, 4.5, 5, 6, 7], dice.randint(1, 4)),
    )


def _thing(dice: random.Random) -> dict[str, object]:
    kind = dice.choice(["chair rail", "base", "wainscot", "return wall", "column", "other"])
    start = dice.choice([0, 0.5, 2, 6])
    if kind == "return wall":
        return {"kind": kind, "start": start}
    if kind == "column":
        return {"kind": kind, "start": start, "diameter": dice.choice([4, 8]), "offset": dice.choice([0, 6])}
    low = dice.choice([None, 30])
    return {"kind": kind, "projection": dice.choice([0.5, 1.75, 3]), "start": start, "bottom": low, "top": 36}
