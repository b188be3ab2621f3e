"""What would be: first worked by hand on 112A, then against the study of the very opening it stands for."""

import math
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.model import Opening
from configurator.project_file import load
from configurator.study import study
from configurator.study.what_if.curve import opening_with, what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.study.what_if.thresholds import BARREL, CARRIED_MEETS, CLEAR, FITTED, MEETS, OPENS
from tests.openings import LEVER, RAIL, plain_data
from tests.sweeps import examples

DEMO = Path(__file__).resolve().parents[3] / "demo_openings" / "kestrel_point.json"


@cache
def job():
    """The demo job."""
    return load(DEMO)


@cache
def studied(mark):
    """The study of one of its openings."""
    (opening,) = (one for one in job().openings if one.mark == mark)
    return study(opening, job().job)


def asked(answer, name, hold=0, width=None):
    """What a thing would do to the leaf on a width, the last of those compared if none is said."""
    candidate = next((one for one in answer.candidates if one.hinge_width == width), answer.candidates[-1])
    (parameter,) = (one for one in parameters_of(answer, candidate) if one.name == name)
    return what_if(answer, candidate, parameter, parameter.holds[hold])


def thresholds(found, what):
    """The turns of a kind: value, and whether it holds from there on."""
    return [
        (round(one.value, 9), one.upward) for one in found.thresholds if one.what == what and one.amount != 90
    ]


def at(found, value):
    """The angles, bare and with hardware, at a value that the curve has."""
    place = min(range(len(found.curve.values)), key=lambda n: abs(found.curve.values[n] - value))
    assert found.curve.values[place] == pytest.approx(value, abs=1e-9)
    return found.curve.bare[place], found.curve.with_hardware[place]


# --- By hand: O 36, T 1-3/4, R 1-15/16, k 1/16, b 1/4, p 1/2; clear past the frame at 180: 2 o - i + p ---


@pytest.mark.parametrize(("width", "most"), [(4, 1.375), (4.5, 1.875)])
def test_how_far_a_rail_may_stand_out(width, most):
    found = asked(studied("112A"), "chair rail projection", width=width)
    assert thresholds(found, OPENS) == [(most, False)]


def test_which_hinge_open_widths_do_it():
    found = asked(studied("112A"), "hinge open width")
    assert thresholds(found, OPENS) == [(4.375, True)]
    assert thresholds(found, BARREL) == [(3.83, True)]  # y_p = W/2 - 1-5/8 is the barrel's radius of 0.29
    assert thresholds(found, CLEAR) == [(6.125, False)]  # 35-3/8 less 1/16, 1-3/4 and o = 1-9/16 leaves 32


def test_a_finish_on_the_wall_takes_from_what_the_frame_is_proud():
    found = asked(studied("112A"), "wall thickness", hold=1)
    assert thresholds(found, OPENS) == [(5.0, False)]  # p may be 3/8 and no less
    tiled = as_studied(studied("112A"), studied("112A").candidates[-1], found.parameter, found.hold, 5.375)
    assert tiled.greatest_angle_bare == pytest.approx(171.842, abs=5e-4)  # half an inch of tile


def test_a_wall_that_grows_on_both_faces_takes_half_of_it():
    assert thresholds(asked(studied("112A"), "wall thickness"), OPENS) == [(5.125, False)]


def test_a_frame_made_for_its_wall_stays_as_proud_as_it_was():
    opening = Opening.model_validate({**plain_data(), "wall": {}})
    found = asked(study(opening), "wall thickness", hold=2)
    assert found.thresholds == ()
    assert len(set(found.curve.bare)) == 1


@pytest.mark.parametrize(
    ("name", "hold", "expected"),
    [
        ("frame proud of wall", 0, (0.375, True)),
        ("inset", 0, (0.25, False)),  # o = 3/4 whatever the inset; 1-1/2 - i + 1/2 must be 1-3/4
        ("hinge backset", 0, (0.1875, True)),  # o = 2-1/4 - (1-3/4 - b) must be 11/16
        ("door thickness", 0, (1.8125, False)),  # o = 2-1/2 - T must be 11/16
        ("door thickness", 1, (1.875, False)),  # 2 (2-1/2 - T) - (1-7/8 - T) + 1/2 must be 1-3/4
    ],
)
def test_what_else_lets_it_open_flat(name, hold, expected):
    assert thresholds(asked(studied("112A"), name, hold), OPENS) == [expected]


def test_a_return_wall_lets_it_open_flat_once_the_leaf_lies_short_of_it():
    found = asked(studied("171A"), "return wall start")
    assert thresholds(found, OPENS) == [
        (33.75, True)
    ]  # O - g_l - x_p from the pin, less the face of 2 and x_p
    assert at(found, 4.0)[0] == pytest.approx(studied("171A").candidates[-1].greatest_angle_bare)


def test_what_ends_a_swing_is_named_on_both_sides():
    found = asked(studied("112A"), "chair rail projection")
    (met,) = (one for one in found.thresholds if one.what == CARRIED_MEETS)
    assert (met.met_before, met.met) == (("wall", None, "lever"), ("chair rail", 0, "leaf"))
    found = asked(studied("112A"), "inset")
    (met,) = (one for one in found.thresholds if one.what == MEETS)
    assert (met.met_before, met.met) == (("chair rail", 0, "leaf"), ("frame", None, "leaf"))


def test_the_hardware_is_told_only_where_it_does_otherwise_than_the_leaf():
    found = asked(studied("112A"), "wall thickness", hold=1)
    assert thresholds(found, FITTED) == [(4.25, False)]
    bare = asked(study(Opening.model_validate(plain_data())), "inset")
    assert thresholds(bare, FITTED) == []
    assert not bare.has_hardware


def test_a_thing_that_changes_nothing_has_no_turns():
    assert asked(studied("112A"), "chair rail start", width=4.5).thresholds == ()


def test_a_surface_hinge_does_not_move_with_its_width():
    opening = Opening.model_validate(plain_data(hinge={"mounting": "full surface"}))
    found = asked(study(opening), "hinge open width")
    assert len({round(angle, 9) for angle in found.curve.bare}) == 1


def test_a_door_held_short_of_square_has_no_clear_width():
    opening = Opening.model_validate(plain_data(use={"stop_angle": 80}))
    assert set(asked(study(opening), "inset").curve.clear_widths) == {None}


def test_the_hinge_follows_the_door_it_is_taken_for():
    """A thin door takes a lower hinge with a thinner barrel: a jump, with the curve on both sides of it."""
    opening = Opening.model_validate(plain_data(door={"thickness": 1.75}))
    found = asked(study(opening), "door thickness")
    values = found.curve.values
    assert any(0 < b - a < 1e-6 for a, b in pairwise(values))


# --- Against the study ---

FACTS = job().job
MARKS = ("101A", "112A", "171A", "205A", "118A", "126C", "151A", "160A", "164A")


@examples(20)
@given(st.sampled_from(MARKS), st.data())
def test_the_curve_and_its_turns_are_the_studys_own(mark, data):
    answer = studied(mark)
    candidate = data.draw(st.sampled_from(answer.candidates))
    parameter = data.draw(st.sampled_from(parameters_of(answer, candidate)))
    hold = data.draw(st.sampled_from(parameter.holds))
    found = what_if(answer, candidate, parameter, hold)
    assert parameter.low <= parameter.present <= parameter.high
    place = data.draw(st.integers(0, len(found.curve.values) - 1))
    one = as_studied(answer, candidate, parameter, hold, found.curve.values[place])
    assert found.curve.bare[place] == pytest.approx(one.greatest_angle_bare, abs=1e-9)
    assert found.curve.with_hardware[place] == pytest.approx(one.greatest_angle, abs=1e-9)
    assert found.curve.clear_widths[place] == pytest.approx(one.clear_width_at_90, abs=1e-9)
    for threshold in [one for one in found.thresholds if one.what in (OPENS, BARREL, CLEAR)][:3]:
        holds = [
            does(as_studied(answer, candidate, parameter, hold, threshold.value + side), threshold)
            for side in (-5e-5, 5e-5)
        ]
        assert holds == [not threshold.upward, threshold.upward], (threshold, holds)


def as_studied(answer, candidate, parameter, hold, value, facts=FACTS):
    """The candidate as the study of the opening with that value has it."""
    width = value if parameter.of_hinge else candidate.hinge_width
    opening = opening_with(answer.opening, hold, value).model_copy(update={"compare": (width,)})
    return next(one for one in study(opening, facts).candidates if one.leaf == candidate.leaf)


def does(one, threshold):
    """Whether a candidate does what a turn is about."""
    if threshold.what == OPENS:
        return one.greatest_angle_bare >= threshold.amount - 1e-9
    if threshold.what == BARREL:
        return one.barrel_free_by >= -1e-9
    return one.clear_width_at_90 is not None and one.clear_width_at_90 >= threshold.amount - 1e-9


OTHERS = {
    "a pair": {"leaves": "pair", "size": {"width": 72, "height": 84}, "hardware": [LEVER]},
    "a Dutch door": {"leaves": "dutch", "hardware": [LEVER], "obstructions": [RAIL]},
    "swing clear": {"hinge": {"mounting": "swing clear"}, "obstructions": [RAIL]},
    "half mortise": {"hinge": {"mounting": "half mortise"}},
    "half surface": {"hinge": {"mounting": "half surface"}, "obstructions": [RAIL]},
    "butted": {"frame": {"kind": "welded steel, butted"}, "wall": {"frame_proud": 0}},
    "layers": {
        "wall": {"layers": [{"name": "tile", "thickness": 0.5}, {"name": "block", "thickness": 4.375}]}
    },
    "a frame backset of its own": {"frame": {"hinge_backset": 0.25}},
    "a bumper": {"hardware": [LEVER], "door_stop": {"kind": "wall bumper", "projection": 1}},
    "a column": {"obstructions": [{"kind": "column", "diameter": 8, "start": 10, "offset": 3}]},
}


@pytest.mark.parametrize("name", OTHERS)
def test_every_other_arrangement_agrees_with_the_study_of_the_edited_opening(name):
    answer = study(Opening.model_validate(plain_data(**OTHERS[name])))
    candidate = answer.candidates[-1]
    for parameter in parameters_of(answer, candidate):
        for hold in parameter.holds:
            found = what_if(answer, candidate, parameter, hold)
            for place in (0, len(found.curve.values) // 3, -1):
                one = as_studied(answer, candidate, parameter, hold, found.curve.values[place], None)
                assert found.curve.bare[place] == pytest.approx(one.greatest_angle_bare, abs=1e-9)
                assert found.curve.with_hardware[place] == pytest.approx(one.greatest_angle, abs=1e-9)


def test_a_finish_is_what_grows_of_a_layered_wall():
    answer = study(Opening.model_validate(plain_data(**OTHERS["layers"])))
    (parameter,) = (
        one for one in parameters_of(answer, answer.candidates[0]) if one.name == "wall thickness"
    )
    core, finish = (hold.changes(5.0) for hold in parameter.holds[:2])
    assert core["wall.layers.1.thickness"] == 4.5
    assert finish["wall.layers.0.thickness"] == 0.625
    assert parameter.holds[1].changes(4.25)["wall.layers"] is None  # thinner than without any tile


def test_the_present_value_is_a_point_of_every_curve():
    answer = studied("205A")
    candidate = answer.candidates[0]
    for parameter in parameters_of(answer, candidate):
        found = what_if(answer, candidate, parameter, parameter.holds[0])
        bare, fitted = at(found, parameter.present)
        assert math.isclose(bare, candidate.greatest_angle_bare, abs_tol=1e-9)
        assert math.isclose(fitted, candidate.greatest_angle, abs_tol=1e-9)
