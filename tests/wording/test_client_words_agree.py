"""What a client is told agrees with the study, whatever the opening: hundreds at random, fixed seeds."""

import random
import re
from functools import cache

import pytest

from configurator.model import Opening
from configurator.study import study
from configurator.study.events import gap_on_the_way
from configurator.study.widths.width_pair import width_pair
from configurator.units import Display
from configurator.wording.client_words import (
    client_sayings,
    end_words,
    part_named,
    thing_named,
    three_sentences,
)
from tests.drawing.cases import case_a, demo
from tests.export.random_sheets import random_study
from tests.sweeps import sized

SAME = 1e-9
RANDOM = sized(240, 600)
SOME = RANDOM // 12
DISPLAYS = (Display(), Display(precision=64), Display(metric=True))


@cache
def openings_at_random():
    """Sheets' random openings, each with other hardware, other door stops and another wish."""
    found = []
    for seed in range(RANDOM):
        dice = random.Random(f"client {seed}")
        data = random_study(seed % 50).opening.model_dump(exclude_unset=True)
        data["use"] = {**data["use"], "wanted_angle": dice.choice([90, 120, 170, 180])}
        if dice.random() < 0.3:
            data["use"]["stop_angle"] = dice.choice([45, 88.5, 90, 110, 175])
        data["hardware"] = [piece(dice) for _ in range(dice.choice([0, 1, 1, 2]))]
        stops = [None, {"kind": "wall bumper", "projection": 3}, {"kind": "floor stop", "projection": 6}]
        data["door_stop"] = dice.choice(stops)
        data["compare"] = dice.sample([3.5, 4, 4.5, 5, 6, 7], dice.choice([1, 2, 2, 3]))
        found.append(study(Opening.model_validate(data)))
    return tuple(found)


def piece(dice):
    return {
        "kind": dice.choice(["lever", "knob", "pull", "panic device", "closer"]),
        "face": dice.choice(["pull", "pull", "push"]),
        "projection": dice.choice([1, 2.5, 4, 9]),
        "from_latch_edge": dice.choice([2.75, 4.25, 12]),
        "width": 4,
        "height": dice.choice([20, 34, 38]),
        "vertical": 3.5,
    }


def said_of(study, display):
    """Return each pictured width with the sentence that is about it."""
    two = width_pair(study)
    first, second, _ = three_sentences(study, two, display)
    if two.wider is None or "On either hinge" in first:
        return [(one, first) for one in two.both]
    return [(two.narrower, first), (two.wider, second)]


def every_saying():
    for number, found in enumerate(openings_at_random()):
        display = DISPLAYS[number % 3]
        for one, sentence in said_of(found, display):
            yield found, one, sentence, display


def test_the_openings_are_of_every_sort():
    """Else the tests below would hold for want of anything to find."""
    both = [one for found in openings_at_random() for one in width_pair(found).both]
    by_hardware = [x for x in both if x.stopped_by and x.stopped_by.part not in ("leaf", "barrel")]
    assert sum(x.rests_at >= x.greatest_angle - SAME for x in by_hardware) > SOME
    assert sum(x.rests_at < x.greatest_angle - SAME for x in both) > SOME
    assert sum(x.rests_at == 180 for x in both) > SOME
    assert sum(x.greatest_angle_bare < 180 and x.stopped_by is not None for x in both) > SOME


def test_all_the_way_is_said_only_of_a_door_that_goes_all_the_way():
    for _, one, sentence, _ in every_saying():
        flat = "all the way" in sentence or "flat" in sentence
        assert flat == (one.rests_at == 180 == one.greatest_angle and one.greatest_angle_bare == 180)
        assert flat == (one.stopped_by is None and one.rests_at == 180)


def test_nothing_to_spare_is_said_of_a_door_that_passes_by_a_hair_and_of_no_other():
    for _, one, sentence, _ in every_saying():
        gap = gap_on_the_way(one.solution, one.solution.rest_angle)
        close = one.stopped_by is None and gap is not None and gap.distance < 1 / 32
        assert ("nothing to spare" in sentence) == (close and one.rests_at == 180)


def test_what_comes_first_is_always_named():
    """A lever that ends the swing before the door itself does is said to; so is everything else."""
    for _, one, sentence, _ in every_saying():
        if one.stopped_by is None or one.rests_at < one.greatest_angle - SAME:
            assert " meets " not in sentence
            continue
        part, thing = part_named(one.stopped_by.part), thing_named(one.stopped_by.kind)
        assert f"where {part} meets the {thing}" in sentence


def test_a_door_that_a_stop_holds_first_is_said_to_rest_and_on_what():
    for found, one, sentence, _ in every_saying():
        held = one.rests_at < one.greatest_angle - SAME
        assert ("comes to rest at" in sentence) == held
        if not held:
            continue
        angle = found.opening.use.stop_angle
        if (
            angle is not None
            and angle == pytest.approx(one.rests_at)
            and (one.door_stop is None or not one.door_stop.holds or one.door_stop.rests_at > angle + SAME)
        ):
            assert "against its door stop" in sentence
        else:
            assert f"against its {one.door_stop.kind}" in sentence
            assert one.door_stop.rests_at == pytest.approx(one.rests_at)


def test_the_angle_is_that_at_which_the_door_ends():
    for _, one, sentence, display in every_saying():
        assert sentence.startswith("On ")
        number = re.search(r"(?:opens to|rest at|flat to) (\S+?)°", sentence).group(1)
        assert f"{number}°" == display.angle(one.rests_at)


def test_a_wish_is_said_to_be_met_only_by_the_width_that_meets_it():
    for number, found in enumerate(openings_at_random()):
        two = width_pair(found)
        said = " ".join(three_sentences(found, two, DISPLAYS[number % 3]))
        if "was asked for" not in said:
            continue
        wish = found.filled.wanted_angle
        meets = two.wider if "only the wider" in said else two.narrower
        fails = two.narrower if meets is two.wider else two.wider
        assert meets.greatest_angle_bare >= wish - SAME
        assert fails.greatest_angle_bare < wish - SAME


def test_what_the_way_through_costs_is_that_of_the_two_widths():
    for number, found in enumerate(openings_at_random()):
        two, display = width_pair(found), DISPLAYS[number % 3]
        if two.wider is None or None in (two.narrower.clear_width_at_90, two.wider.clear_width_at_90):
            continue
        last = three_sentences(found, two, display)[2]
        lost = two.narrower.clear_width_at_90 - two.wider.clear_width_at_90
        word = "narrower: " if lost > SAME else "wider: " if lost < -SAME else "stays"
        assert word in last


def test_the_words_over_a_picture_say_the_same_as_the_sentence_under_it():
    for _, one, sentence, display in every_saying():
        fullest = end_words(one, display)[0]
        assert display.angle(one.rests_at) in fullest
        if one.stopped_by is not None and one.rests_at >= one.greatest_angle - SAME:
            assert fullest.partition(": ")[2] in sentence
        elif "rests" in fullest:
            assert fullest.partition(" against ")[2] in sentence
        else:
            assert "all the way" in fullest
            assert "all the way" in sentence


def test_of_a_pair_the_other_leaf_is_spoken_of_too():
    pair = case_a(leaves="pair", size={"width": 72, "height": 84})
    words = client_sayings(pair, width_pair(pair), Display())
    assert len(words) == 4
    assert "inactive leaf" in words[3]
    assert len(client_sayings(demo("112A"), width_pair(demo("112A")), Display())) == 3


def test_of_two_stops_the_one_that_is_reached_first_is_named():
    """A wall bumper far back and a stop at 60 degrees: it is the latter that holds the door."""
    both = case_a(door_stop={"kind": "wall bumper", "projection": 2}, use={"stop_angle": 60}, compare=[4])
    first, *_ = three_sentences(both, width_pair(both), Display())
    assert both.candidates[0].door_stop.holds
    assert first.endswith("comes to rest at 60° against its door stop.")
