"""What another value would cost or break, found by studying the opening with it."""

from dataclasses import replace

import pytest

from configurator.model import Hinge, JobFacts
from configurator.model.paths import vocabulary
from configurator.study import study
from configurator.study.widths.hinge_trials import trials
from configurator.units import Display
from configurator.wording.hinge_words import NOTHING_AGAINST, trial_effect, trial_name
from tests.openings import RAIL
from tests.rules.hung import opening


def effects(key, job=None, **changes):
    given = study(opening(**changes), job)
    return {trial.value: trial_effect(trial, Display()) for trial in trials(given, key)}


def names(given, key):
    return [trial_name(trial, Display()) for trial in trials(given, key)]


def test_widths_say_where_they_stop_and_what_clear_width_is_left():
    rail = RAIL | {"top": 36}
    found = effects("width", obstructions=[rail])
    # Case B: 4 in stops on the rail at 171.788; 7 leaves 31-9/16, short of 32 by 7/16.
    assert "171.7°" in found[4.0]
    assert "short of 32 in by 7/16 in" in found[7.0]
    assert found[5.0].count("uncommon in stock") == 1
    assert "error" not in found[5.0]
    assert 4.5 not in found  # what holds is no alternative


def test_a_plain_bearing_breaks_what_a_closer_asks():
    assert "error: Plain bearing with a closer" in effects("bearing")["plain"]
    without = effects("bearing", use={"closer": False, "traffic": "average"})["plain"]
    assert "closer" not in without


def test_what_follows_is_said():
    found = effects("weight")["heavy"]
    assert "hinge leaf thickness becomes 0.18 in" in found
    assert "ANSI/BHMA A156.1 type becomes A8111" in found


def test_brass_on_a_labelled_door_is_an_error():
    assert "error: " in effects("base_metal", use={"fire_rated": True})["brass"]
    assert "error: " not in effects("base_metal")["brass"]


def test_the_rules_own_effect_comes_first_and_is_not_contradicted():
    assert effects("pin")["non-removable"] == "costs a set screw and makes taking the door off slower"


def test_where_nothing_is_found_it_says_so():
    given = study(opening())
    (leaf,) = given.specification.leaves
    bare = replace(leaf, parts={**leaf.parts, "corner": replace(leaf.parts["corner"], alternatives=())})
    given = replace(given, specification=replace(given.specification, leaves=(bare,)))
    assert {trial_effect(trial, Display()) for trial in trials(given, "corner")} == {NOTHING_AGAINST}


def test_a_part_by_hand_offers_what_the_program_would_take():
    found = effects("bearing", hinge={"bearing": "plain"})
    assert list(found) == ["ball"]
    assert found["ball"].startswith("what the program would take")


def test_one_hinge_more_or_fewer_for_one_leaf_only():
    found = effects("count")
    assert set(found) == {2, 4}
    assert "error: " in found[2]
    assert "error: " not in found[4]
    assert effects("count", leaves="dutch") == {}


def test_the_same_look_on_other_metals():
    given = study(opening())
    assert names(given, "finish_bhma") == ["626 on brass or bronze"]
    assert effects("finish_bhma", hinge={"finish_bhma": "000"}) == {}


def test_alloys_are_offered_for_stainless_alone():
    assert effects("alloy") == {}
    assert set(effects("alloy", use={"exposure": "exterior"})) == {"316"}


def test_the_job_s_standard_holds_while_trying():
    job = JobFacts(standard_hinge=Hinge(width=4.5))
    assert "hinge open width becomes" not in effects("weight", job)["heavy"]


@pytest.mark.parametrize("key", ["knuckles", "electric", "transfer", "wires", "screws", "nothing such"])
def test_what_is_free_or_unknown_has_no_trials(key):
    assert effects(key) == {}


def test_nothing_is_tried_where_no_hinge_is_chosen():
    assert effects("pin", hung_on="pivots") == {}


@pytest.mark.parametrize(
    "key",
    [
        k.removeprefix("hinge.")
        for k in vocabulary()
        if k.startswith("hinge.") and k not in ("hinge.screws", "hinge.transfer")
    ],
)
def test_every_word_a_file_may_use_is_tried(key):
    given = study(opening(use={"exposure": "exterior"}))
    now = given.specification.whole[key].value
    tried = {trial.value for trial in trials(given, key)}
    assert tried == set(vocabulary()[f"hinge.{key}"]) - {now}


def test_a_height_and_a_width_are_told_apart():
    given = study(opening())
    assert "5 in high" in names(given, "height")
    assert "5 in wide" in names(given, "width")


def test_screws_by_hand_offer_the_program_s_own():
    given = study(opening(hinge={"screws": {"machine": 12, "wood": 12}}))
    (only,) = trials(given, "screws")
    assert trial_name(only, Display()) == "24 machine"
    assert only.value == {"machine": 24, "wood": 0}


@pytest.mark.parametrize(("height", "beside"), [(4.5, {4, 5}), (4.25, {4, 4.5}), (3, {3.5}), (6, {5})])
def test_only_the_next_heights_are_tried(height, beside):
    assert set(effects("height", hinge={"height": height})) - {4.5} == beside - {4.5}


def test_a_size_in_no_stock_list_says_so():
    assert "in no stock list here" in effects("height", hinge={"width": 7.5})[5]
    assert "stock" not in effects("height", hinge={"width": 5})[5]


def test_a_height_without_any_width_says_what_stands_against_it():
    given = study(opening(hinge={"height": 11}))
    assert set(effects("height", hinge={"height": 11})) == {4.5, 6}
    assert given.specification.whole["width"].value is None
    assert trials(given, "width") == ()


def test_a_stud_makes_a_pin_that_can_be_drawn_do():
    exposed = {"hand": "RHR", "hinge": {"pin": "removable"}}
    assert "error: " not in effects("security_stud", **exposed)[True]
    assert (
        "error: "
        in effects("security_stud", hand="RHR", hinge={"pin": "removable", "security_stud": True})[False]
    )
