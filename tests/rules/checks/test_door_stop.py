"""A door stop asked for, beside the angle and the clear width wanted of the door."""

import re

import pytest

from configurator.rules.checks.door_stop import holds_short_of_square, square_open_mend
from configurator.sentences import written
from configurator.study.run import study
from tests.rules.hung import codes, found, opening, specified

STOP = "The door stop holds it at 60°, so it never comes square open; move the stop to 90° or more."


@pytest.mark.parametrize(("stop", "short"), [(None, False), (89.9, True), (90.0, False), (90.1, False)])
def test_short_of_square(stop, short):
    assert holds_short_of_square(stop) == short


@pytest.mark.parametrize(
    ("stop", "reaches", "said"),
    [
        (60.0, 180.0, STOP),
        (60.0, 90.0, STOP),
        (60.0, 89.0, f"{STOP} Move what is in its way."),
        (None, 89.0, "Move what is in its way."),
        (90.0, 89.0, "Move what is in its way."),
    ],
)
def test_what_keeps_it_from_square(stop, reaches, said):
    assert written(square_open_mend(stop, reaches)) == said


def test_a_stop_at_60_is_the_cause_and_no_hinge_width_is_to_blame():
    spec = specified(opening(use={"stop_angle": 60}))
    assert "no width does everything" not in codes(spec)
    assert spec.as_data()["width"] == 4
    assert STOP in found(spec, "no clear width").message
    said = [one.message for one in study(opening(use={"stop_angle": 60})).candidates[0].findings]
    assert all(STOP in message and "in its way" not in message for message in said)
    assert said


@pytest.mark.parametrize(("stop", "noted"), [(90, True), (179.5, True), (180, False), (None, False)])
def test_a_stop_short_of_the_angle_wanted_is_noted(stop, noted):
    said = [
        one for one in study(opening(use={"stop_angle": stop})).findings if one.code == "stop short of wanted"
    ]
    assert bool(said) == noted
    assert [one.fix[0].value for one in said] == ([stop] if noted else [])


def test_an_angle_nobody_gave_is_not_said_to_be_wanted():
    (said,) = [
        one
        for one in study(opening(use={"stop_angle": 90, "wanted_angle": None})).findings
        if one.code == "stop short of wanted"
    ]
    assert "at 90°, short of the 180° taken as wanted" in said.message


@pytest.mark.parametrize(("stop", "flat"), [(None, True), (180, True), (179.5, False), (90, False)])
def test_a_door_that_is_stopped_short_never_lies_open_flat(stop, flat):
    assert ("open flat" in codes(specified(opening(use={"stop_angle": stop})))) == flat


PULL = {"kind": "pull", "projection": 4, "from_latch_edge": 28, "width": 8, "height": 42, "vertical": 10}
NEAR = {"kind": "wall bumper", "projection": 7, "from_frame": 0, "height": 42}


def test_a_bumper_that_holds_it_short_of_square_is_the_cause_and_no_hinge_width_is_to_blame():
    given = opening(hardware=[PULL], door_stop=NEAR)
    one = study(given).candidates[0]
    assert one.rests_at < 90 < one.greatest_angle
    assert one.clear_width_at_90 is None
    said = study(given).all_findings()
    assert "no width does everything" not in {finding.code for finding in said}
    messages = [finding.message for finding in said if finding.code == "no clear width"]
    assert messages
    for message in messages:
        assert re.search(r"The door stop holds it at \d\d\.\d°, so it never comes square open", message), (
            message
        )
        assert "in its way" not in message


def test_with_a_stop_on_the_wall_it_is_not_said_to_lie_open_flat():
    assert "open flat" in codes(specified(opening()))
    stop = {"kind": "floor stop", "projection": 3}
    assert "open flat" not in codes(specified(opening(door_stop=stop)))


@pytest.mark.parametrize(
    ("kind", "projection", "height", "code"),
    [
        ("wall bumper", 4, 38, None),
        ("wall bumper", 4.01, 27, None),
        ("wall bumper", 4.01, 27.01, "stop where people walk"),
        ("wall bumper", 4.01, 80, "stop where people walk"),
        ("wall bumper", 4.01, 80.01, None),
        ("floor stop", 4, 1, None),
        ("floor stop", 4.01, 1, "stop underfoot"),
    ],
)
def test_a_stop_far_off_the_wall_stands_where_people_walk(kind, projection, height, code):
    stop = {"kind": kind, "projection": projection, "height": height}
    said = {one.code for one in study(opening(door_stop=stop)).candidates[0].findings}
    assert said & {"stop where people walk", "stop underfoot"} == ({code} if code else set())
