"""What a client is told agrees with the study, whatever the opening: hundreds at random, fixed seeds.

`faults_of` judges by the numbers of the study alone; `tests/bench/check_client.py` asks it of thousands.
"""

import math
import random
import re
from functools import cache

from configurator.drawing.base.primitives import Text
from configurator.drawing.client.client_picture import client_picture
from configurator.model import Opening
from configurator.study import Study, study
from configurator.study.events import gap_on_the_way
from configurator.study.widths.width_pair import hung_alike, width_pair
from configurator.units import Display
from configurator.wording.verdict import advice, client_sayings, verdicts
from tests.export.random_sheets import random_study
from tests.sweeps import sized

SAME = 1e-9
HAND = 4.0
RANDOM = sized(150, 600)
SOME = RANDOM // 20
DISPLAYS = (Display(), Display(precision=64), Display(metric=True))
UNFIT = {"Jams", "Does not close", "Does not fit", "Too narrow to walk through", "Does not open square",
         "Not to be used so"}  # fmt: skip
THINGS = {"casing": "trim", "base": "baseboard", "wainscot": "panelling", "return wall": "side wall",
          "other": "thing beside the door", "latch jamb": "frame on the lock side",
          "stop": "rim of the frame", "other leaf": "other door"}  # fmt: skip
PARTS = {"leaf": "the door", "barrel": "the hinge"}


def opening_at_random(seed: int) -> Study:
    """Return one of the sheets' openings with other hardware, other door stops, leaves and another wish."""
    dice = random.Random(f"client {seed}")
    data = random_study(seed % 30).opening.model_dump(exclude_unset=True)
    data["use"] = {**data["use"], "wanted_angle": dice.choice([None, 90, 120, 170, 180])}
    if dice.random() < 0.25:
        data["use"]["stop_angle"] = dice.choice([45, 88.5, 90, 110, 175])
    data["hardware"] = [piece(dice) for _ in range(dice.choice([0, 1, 1, 2]))]
    stops = [None, None, {"kind": "wall bumper", "projection": 3}, {"kind": "floor stop", "projection": 6}]
    data["door_stop"] = dice.choice(stops)
    data["compare"] = dice.sample([3.5, 4, 4.5, 5, 6, 7], dice.choice([1, 2, 2, 3]))
    for thing in data.get("obstructions", ()):
        if dice.random() < 0.5 and thing["kind"] != "return wall":
            thing["start"] = dice.choice([0.25, 0.5, 1.0, 3.0])
    return study(Opening.model_validate(data))


def piece(dice: random.Random) -> dict[str, object]:
    return {
        "kind": dice.choice(["lever", "knob", "pull", "panic device", "closer"]),
        "face": dice.choice(["pull", "pull", "push"]),
        "projection": dice.choice([1, 2.5, 4, 9]),
        "from_latch_edge": dice.choice([2.75, 4.25, 12]),
        "width": 4,
        "height": dice.choice([20, 34, 38]),
        "vertical": 3.5,
    }


@cache
def openings_at_random() -> tuple[Study, ...]:
    return tuple(opening_at_random(seed) for seed in range(RANDOM))


def faults_of(found: Study, display: Display) -> list[str]:
    """Return what is told of an opening that its study does not bear out."""
    pair = width_pair(found)
    told = verdicts(found, pair, display)
    faults: list[str] = []
    good = []
    for one, said in zip(pair.both, told, strict=True):
        leaves = hung_alike(found, one)
        faults += [f"{one.name}: {fault}" for fault in _of_hinge(found, leaves, said, display)]
        good.append(all(_does(found, leaf) for leaf in leaves))
        if said.good != good[-1]:
            faults.append(f"{one.name}: {said.title!r}, and the study says {good[-1]}")
    return faults + _of_advice(found, pair, good, display)


def _does(found, leaf) -> bool:
    """Whether a leaf does what is wanted, by its numbers: nothing against it, and open far enough."""
    if any(one.severity == "error" for one in leaf.findings):
        return False
    held = leaf.rests_at < leaf.greatest_angle - SAME
    return held or _flat(leaf) or leaf.rests_at >= found.hanger.must(leaf.leaf).wanted - SAME


def _flat(leaf) -> bool:
    return (180.0 - leaf.rests_at) / 180.0 * math.pi * leaf.h.w <= HAND


def _of_hinge(found, leaves, said, display) -> list[str]:
    faults = []
    (worst,) = [leaf for leaf in leaves if leaf.leaf == said.leaf]
    number = re.search(r"(\d+)°", said.title)
    if number and int(number[1]) != math.floor(worst.rests_at + SAME):
        faults.append(f"{said.title!r} of a door that rests at {worst.rests_at}")
    if said.title == "Opens all the way" and not all(_flat(leaf) for leaf in leaves):
        faults.append("all the way, and it does not lie flat")
    if said.title in UNFIT and not any(one.severity == "error" for one in worst.findings):
        faults.append(f"{said.title!r} with no error against it")
    if said.title.startswith("Held") and worst.rests_at >= worst.greatest_angle - SAME:
        faults.append("held, and nothing holds it")
    said_so = re.findall(
        r"\b(the (?:(?!the )[a-z ])+?) meets the ([a-z ]+?)(?: before)?\.", said.because.lower()
    )
    for part, thing in said_so:
        met = [leaf.stopped_by for leaf in leaves if leaf.stopped_by is not None]
        names = {(PARTS.get(one.part, f"the {one.part}"), THINGS.get(one.kind, one.kind)) for one in met}
        if (part, thing) not in names:
            faults.append(f"{said.because!r}, and what meets is {names}")
    spare = re.search(r"with (\S+(?: in| mm)?) to spare", said.because)
    if spare and len(leaves) == 1:
        gap = gap_on_the_way(worst.solution, worst.solution.rest_angle)
        text = "nothing" if gap.distance < 1 / 32 else display.length(gap.distance, "down")
        if text != spare[1]:
            faults.append(f"{spare[1]} to spare, and the gap is {gap.distance}")
    if "Nothing stands in its way" in said.because and any(leaf.stopped_by is not None for leaf in leaves):
        faults.append("nothing in its way, and something is met")
    return faults


def _of_advice(found, pair, good, display) -> list[str]:
    said = advice(found, pair, display)
    faults = []
    taken = said.taken
    lets_down = taken is not None and not good[taken] and any(good) and "was chosen" not in said.headline
    if lets_down or (taken is not None and found.errors):
        faults.append(f"{said.headline!r} takes what is not recommended or does not do")
    if said.taken is not None and pair.wider is not None and pair.both[said.taken].on != pair.recommended:
        faults.append(f"{said.headline!r}, and the study recommends {pair.recommended}")
    if (
        pair.wider is not None
        and not any(good)
        and found.specification.leaves
        and "Neither" not in said.headline
    ):
        faults.append(f"{said.headline!r}, and neither does it")
    worst = verdicts(found, pair, display)[-1].leaf
    if "hinge changes that" in said.headline:
        for leaf in found.specification.leaves:
            width = leaf.parts["width"].value
            if leaf.leaf == worst and width is not None and _does(found, found.hanger(leaf.leaf, width)):
                faults.append(f"{said.headline!r}, and {width} does")
    cut = re.search(r"shorten the .*? by (.*?) and keep", said.headline)
    if cut and not _cut_does(found, pair, good, cut[1], display):
        faults.append(f"{said.headline!r}, and that cut does not do")
    if pair.wider is not None and not pair.other_way:
        out = pair.wider.barrel_past_frame - pair.narrower.barrel_past_frame
        if out > SAME and f"stands out {display.length(out)} more" not in said.lines[0]:
            faults.append(f"{said.lines[0]!r}, and it is {out}")
        wide = [one.clear_width_at_90 for one in pair.both]
        if None not in wide and display.length(wide[1], "down") not in said.lines[0]:
            faults.append(f"{said.lines[0]!r}, and the way through is {wide[1]}")
    return faults


def _cut_does(found, pair, good, words, display) -> bool:
    """Whether the other hinge opens as wanted with the thing that stops it cut off by what is told."""
    other = pair.both[good.index(False)]
    place = other.stopped_by_bare.index
    data = found.opening.model_dump(exclude_unset=True)
    thing = data["obstructions"][place]
    steps = [step / 8 for step in range(1, 97) if display.exact(step / 8) == words]
    thing["start"] = (found.opening.obstructions[place].start or 0.0) + steps[0]
    if thing.get("length") is not None:
        if thing["length"] <= steps[0]:
            return True
        thing["length"] -= steps[0]
    mended = study(Opening.model_validate({**data, "compare": [other.hinge_width]}))
    (leaf,) = [one for one in mended.candidates if one.leaf == other.leaf]
    return leaf.greatest_angle_bare >= found.hanger.must(other.leaf).wanted - SAME


def test_the_openings_are_of_every_sort():
    """Else the tests below would hold for want of anything to find."""
    titles = [
        one.title for found in openings_at_random() for one in verdicts(found, width_pair(found), Display())
    ]
    for begin in ("Opens all the way", "Opens far enough", "Held open", "Stops short"):
        assert sum(title.startswith(begin) for title in titles) > SOME, begin
    assert sum(title in UNFIT for title in titles) > SOME
    heads = [advice(found, width_pair(found), Display()).headline for found in openings_at_random()]
    for part in ("Either hinge will do", "Choose the ", "Neither hinge does", "What would do it"):
        assert sum(part in head for head in heads) > SOME // 2, part


def test_nothing_is_told_that_the_study_does_not_bear_out():
    wrong = {
        number: faults
        for number, found in enumerate(openings_at_random())
        if (faults := faults_of(found, DISPLAYS[number % 3]))
    }
    assert wrong == {}


def test_the_picture_letters_what_is_told_and_nothing_else():
    for number, found in list(enumerate(openings_at_random()))[:30]:
        display = DISPLAYS[number % 3]
        picture = client_picture(found, display, 1000.0, 640.0, 15.0)
        lettered = " ".join(
            item.text for group in picture.notes for item in group.primitives if isinstance(item, Text)
        )
        pair = width_pair(found)
        for one in verdicts(found, pair, display):
            assert one.title in lettered
            assert one.because in lettered
        assert advice(found, pair, display).headline in lettered


def test_no_sentence_holds_a_number_too_fine_or_an_empty_name():
    for number, found in enumerate(openings_at_random()):
        for said in client_sayings(found, width_pair(found), DISPLAYS[number % 3]):
            assert said.endswith("."), said
            assert not re.search(r"None(?! is)|  |\d\.\d{4}|[\x02\x03]|\.\.", said), said
