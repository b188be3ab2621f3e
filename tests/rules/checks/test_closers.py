"""Closers and overhead stops: what the opening leaves them, what ends the swing first, their templates."""

import math

import pytest
from pydantic import ValidationError

from configurator.model import Hardware
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.answers import holder_of
from configurator.study.derivation.derive import derive
from configurator.study.events import moments
from configurator.tables import HardwareKindRow, row_of
from configurator.ui.form.presets import usual_hardware
from configurator.units import Display
from configurator.wording.verdict import verdict
from tests.openings import answers, plain_opening

from configurator.study import study  # isort: skip

FLAT = {"use": {"wanted_angle": 180}}
WALL = {"kind": "return wall", "start": 14}


def arm(kind, **more):
    return {"hardware": [{"kind": kind, **more}]}


def said(candidate, code):
    return [one.message for one in candidate.findings if one.code == code]


def test_the_body_of_a_closer_meets_the_wall_where_its_near_corner_does():
    """Its near corner is 36 - 1/8 - 28 - 5 = 2-7/8 from the rabbet face and 2-1/2 off the door's face."""
    (one, _) = answers(**arm("closer"), **FLAT)
    along, out = 2.875 - one.pin_across, 2.5 - one.pin_off_door_face
    angle = math.radians(one.greatest_angle)
    assert (one.stopped_by.part, one.stopped_by.kind) in {("closer", "wall"), ("closer", "frame")}
    height = along * math.sin(angle) + out * math.cos(angle) + one.pin_off_frame_face
    assert height == pytest.approx(-0.5 if one.stopped_by.kind == "wall" else 0.0)


def test_a_closer_that_nobody_set_ends_no_swing_and_is_ordered_for_what_the_opening_leaves():
    (one, _) = answers(**arm("parallel-arm closer"), **FLAT)
    assert (one.rests_at, one.greatest_angle) == (180, 180)
    (words,) = said(one, "closer degree")
    assert "was not given: order it for no more than 180" in words


def test_an_overhead_stop_holds_at_its_usual_degree_until_it_is_given():
    (one, _) = answers(**arm("overhead stop"))
    assert (one.rests_at, one.greatest_angle) == (90, 180)
    assert one.clear_width_at_90 is not None
    assert "hardware.0.opens_to" in one.filled.assumed
    assert "ask before ordering" in said(one, "overhead stop holds")[0]
    (given, _) = answers(**arm("overhead stop", opens_to=90))
    assert "ask before ordering" not in said(given, "overhead stop holds")[0]


def test_a_stop_set_short_of_square_leaves_no_clear_width_and_says_whose_fault_that_is():
    (one, _) = answers(**arm("overhead stop", opens_to=85), use={"accessible": True})
    assert (one.rests_at, one.clear_width_at_90) == (85, None)
    (words,) = said(one, "no clear width")
    assert "The overhead stop holds it at 85°" in words
    assert "have it set for 90° or more" in words


def test_the_first_of_two_holds():
    stop = {"stop_angle": 100}
    assert answers(**arm("overhead stop", opens_to=110), use=stop)[0].rests_at == 100
    first = answers(**arm("overhead stop", opens_to=95), use=stop)[0]
    assert (first.rests_at, first.as_data()["held_by"]) == (95, "overhead stop")
    assert holder_of(first.filled, first.leaf, None) == "overhead stop"


def test_a_stop_that_comes_too_late_is_told_the_degree_the_opening_leaves():
    (one, _) = answers(**arm("overhead stop", opens_to=170), obstructions=[WALL])
    assert one.greatest_angle < 170
    assert one.rests_at == one.greatest_angle
    (words,) = said(one, "arm past the opening")
    assert "where the leaf meets the return wall, before the overhead stop ends the swing at 170°" in words


def test_a_closer_is_no_stop():
    (one, _) = answers(**arm("closer", opens_to=100))
    assert one.rests_at == 100
    assert said(one, "closer as a stop")


def test_templates_are_drawn_for_usual_hinges():
    offset, swing = {"hung_on": "offset pivot"}, {"hung_on": "swing clear hinge"}
    found = answers(**arm("overhead stop"), compare=[5, 6, offset, {**offset, "axis_off_face": 1.5}, swing])
    assert [bool(said(one, "arm template")) for one in found] == [False, True, False, True, True]
    assert "A hinge 6 in wide has its axis" in said(found[1], "arm template")[0]


def test_only_the_leaf_that_carries_it_is_held():
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}}
    found = answers(**arm("overhead stop", opens_to=95, leaf="inactive"), **pair, compare=[4.5])
    assert {one.leaf: one.rests_at for one in found}["inactive"] == 95
    assert {one.leaf: one.rests_at for one in found}["active"] == 180


def test_it_is_told_in_events_work_and_to_a_client():
    found = study(plain_opening(**arm("overhead stop", opens_to=95)))
    words = [event.plain for moment in moments(found) for event in moment.events]
    assert "held by the overhead stop" in words
    work = derive(found.candidates[0], "rests_at")
    assert work.value == 95
    assert "where the overhead stop holds the door" in str(work)
    assert verdict(found, found.candidates[0], Display()).because == "Its overhead stop keeps it there."


def test_a_lever_has_no_degree():
    with pytest.raises(ValidationError, match="only a closer or an overhead stop opens to a degree"):
        Hardware.model_validate({"kind": "lever", "opens_to": 90})


def test_a_closer_is_put_on_a_narrow_or_high_leaf_as_far_from_hinges_and_top_as_on_a_usual_one():
    """A leaf of 29-3/4 is 6 in narrower than one of 35-3/4, and one 95-7/8 high 12 in higher."""
    row = row_of(HardwareKindRow, "closer")
    assert usual_hardware(row, fill(plain_opening())) == {"kind": "closer"}
    placed = usual_hardware(row, fill(plain_opening(size={"width": 30, "height": 96})))
    assert placed == {"kind": "closer", "from_latch_edge": 22, "height": 93}
    dutch = usual_hardware(row, fill(plain_opening(leaves="dutch")))
    assert dutch == {"kind": "closer", "leaf": "upper"}


def test_a_closer_that_is_described_is_not_asked_for_and_takes_bearings():
    low = {"use": {"traffic": "low"}}
    bare, closed = (study(plain_opening(**more, **low)) for more in ({}, arm("parallel-arm closer")))
    assert [one.specification.whole["bearing"].value for one in (bare, closed)] == ["plain", "ball"]
    assert [one.filled.use.closer for one in (bare, closed)] == [False, True]
    assert "use.closer" in bare.filled.assumed
    assert "use.closer" not in closed.filled.assumed
    assert not any("A closer (ball bearings)?" in one.message for one in closed.findings)
