"""Openings at random, with a fixed seed each, and their sheets of every kind."""

import random
from functools import cache

from configurator.drawing.pages.page import FITTED, Page, Paper, Scale, papers
from configurator.drawing.sheets import SHEETS, sheet_maker
from configurator.model import JobFacts, Opening
from configurator.study import Study, study
from configurator.units import Display
from tests.sweeps import WIDE, sized

SEEDS = range(sized(12, 50))
KINDS = tuple(SHEETS)
_FRAMES = {
    "knocked-down drywall": {},
    "welded steel, wrapped": {},
    "welded steel, butted": {"frame_proud": 0.25},
    "wood with casing": {},
    "aluminum storefront": {},
}
_LONG = "Between the crew mess, the ticket hall and the corridor to the lower vehicle deck"


@cache
def random_study(seed: int) -> Study:
    dice = random.Random(seed)
    return study(Opening.model_validate(random_opening(dice, seed)), _job(seed))


def scales_of(page: Page) -> tuple[Scale, ...]:
    """Return the scales that a page tells with a bar: a client's picture, made to fit, tells none."""
    return tuple(dict.fromkeys(one.scale for one in page.details if one.scale.name != FITTED))


def display_of(seed: int) -> Display:
    """Every third opening is dimensioned in millimetres, the others in 32nds or 64ths."""
    return (Display(), Display(precision=64), Display(metric=True))[seed % 3]


def paper_of(seed: int) -> Paper:
    names = list(papers())
    return papers()[names[seed % len(names)]]


def pages_of(kind: str) -> tuple[Page, ...]:
    """Return the sheets of one kind, one for each seed, on all papers in turn."""
    return tuple(page_of(kind, seed) for seed in SEEDS)


@cache
def page_of(kind: str, seed: int) -> Page:
    """Return the sheet of one kind for one seed."""
    number = (seed + 1, len(SEEDS))
    return sheet_maker(kind)(random_study(seed), _job(seed), paper_of(seed), None, display_of(seed), number)


def seeds_of(kind: str) -> list[int]:
    """Return the openings measured in a format that takes long to write and read: each at least once.

    Of the plan, which every job has, every other one more; all of all kinds when the sweep is wide.
    """
    return [
        seed
        for seed in SEEDS
        if WIDE or seed % len(KINDS) == KINDS.index(kind) or (kind == "plan" and seed % 2)
    ]


def _job(seed: int) -> JobFacts:
    if seed % 4 == 0:
        return JobFacts()
    name = (
        "Kestrel Point Ferry Terminal" if seed % 4 < 3 else "Kestrel Point Ferry Terminal, " + _LONG.lower()
    )
    return JobFacts(name=name, number="26-118", client="Kestrel Point Harbor District", date="2026-03-02")


def random_opening(dice: random.Random, seed: int) -> dict[str, object]:
    """Return an opening as keys of a file."""
    kind = dice.choice(list(_FRAMES))
    leaves = dice.choice(["single", "single", "single", "pair", "dutch"])
    return {
        "mark": f"{100 + seed}{dice.choice(['', 'A', '-B/2'])}",
        "location": dice.choice([None, "Crew mess to corridor", _LONG]),
        "quantity": dice.randint(1, 12),
        "hand": dice.choice(["LH", "RH", "LHR", "RHR"]),
        "leaves": leaves,
        "size": {
            "width": dice.choice([60, 64, 72]) if leaves == "pair" else dice.choice([24, 30, 34.125, 36, 48]),
            "height": dice.choice([80, 83.5, 84, 86, 96]),
        },
        "door": {
            "construction": dice.choice(
                ["hollow metal, 16 gage", "hollow metal, 18 gage", "wood, solid core", "aluminum and glass"]
            ),
            "thickness": dice.choice([1.375, 1.75]),
            "undercut": dice.choice([None, 0.25, 0.6875]),
        },
        "frame": {"kind": kind},
        "wall": _FRAMES[kind],
        "obstructions": [_thing(dice) for _ in range(dice.randint(0, 3))],
        "hardware": [_lever()] if dice.random() < 0.7 else [],
        "use": {"fire_rated": dice.random() < 0.3, "accessible": dice.random() < 0.5},
        "door_stop": dice.choice([None, None, {"kind": "wall bumper", "projection": 3}]),
        "compare": dice.sample([4, 4.5, 5, 6, 7], dice.randint(1, 4)),
    }


def _lever() -> dict[str, object]:
    return {
        "kind": "lever",
        "projection": 2.5,
        "from_latch_edge": 2.75,
        "width": 4,
        "height": 38,
        "vertical": 3,
    }


def _thing(dice: random.Random) -> dict[str, object]:
    kind = dice.choice(["chair rail", "base", "wainscot", "return wall", "column", "other"])
    start = dice.choice([0, 0.5, 2, 6])
    if kind == "return wall":
        return {"kind": kind, "start": start}
    if kind == "column":
        return {"kind": kind, "start": start, "diameter": dice.choice([4, 8]), "offset": dice.choice([0, 6])}
    low = dice.choice([None, 30])
    return {
        "kind": kind,
        "side": dice.choice(["hinge", "hinge", "latch"]),
        "projection": dice.choice([0.5, 1.75, 3]),
        "start": start,
        "bottom": low,
        "top": 36,
    }
