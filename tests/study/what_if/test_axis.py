"""What would be of the axis of another way of hanging: worked by hand, then against the edited opening."""

import pytest

from configurator.model import Opening
from configurator.study import study
from configurator.study.what_if.curve import opening_with, what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.study.what_if.thresholds import BARREL, CLEAR, OPENS
from tests.openings import LEVER, RAIL, plain_data

WAYS = {
    "continuous": {"hung_on": "continuous hinge"},
    "swing clear": {"hung_on": "swing clear hinge"},
    "offset": {"hung_on": "offset pivot", "axis_from_heel": 0.25},
    "centre": {"hung_on": "centre-hung pivot"},
    "rounded": {"hung_on": "centre-hung pivot", "heel_radius": 2.9},
    "spring": {"hung_on": "double-acting spring hinge"},
}


def studied(way, **changes):
    """O 36, T 1-3/4, R 1-15/16, k 1/16, gaps 1/8, p 1/2, so that i is 1/8."""
    frame = {"rabbet": 1.9375, "stop_gap": 0.0625, "stop_height": 0.625}
    data = plain_data(compare=[4, WAYS[way]], frame=frame, door={"hinge_gap": 0.125, "latch_gap": 0.125})
    return study(Opening.model_validate({**data, **changes}))


def asked(answer, name):
    candidate = next(one for one in answer.candidates if one.way is not None)
    (parameter,) = (one for one in parameters_of(answer, candidate) if one.name == name)
    return what_if(answer, candidate, parameter, parameter.holds[0])


def turns(found, what, amount):
    return [
        (round(one.value, 9), one.upward)
        for one in found.thresholds
        if one.what == what and one.amount == pytest.approx(amount)
    ]


def test_how_far_off_the_face_the_axis_lets_the_door_lie_past_a_rail():
    """Flat it lies 2 o - i + p off the wall: 1-3/4 of rail asks for o of (1-3/4 + 1/8 - 1/2) / 2 = 11/16.

    Farther out the square latch edge binds: its stop corner, 35-13/16 across and o + 1-3/4 back from the
    axis, leaves the frame's face, o - 1/8 back, at 35-15/16: 3-3/4 o + 3-3/64 = 35-15/16^2 - 35-13/16^2.
    """
    answer = studied("continuous", obstructions=[RAIL], use={"wanted_angle": 180})
    first, last = turns(asked(answer, "axis off the door's face"), OPENS, 180)
    assert first == (0.6875, True)
    assert last == (pytest.approx((8.96875 - 3.046875) / 3.75, abs=1e-5), False)


def test_how_far_the_axis_may_stand_for_the_clear_width():
    """36 - 5/8 - (1/16 + o + 1-3/4) is 32 or more up to o = 1-9/16.

    More than 1/16 inside the face the heel's corner meets the rabbet, 1/16 off, before the door is square.
    With o 3/8 the heel's other corner, h before and 2-1/8 back, meets the edge of the stop at 5/8, 2-3/16
    back: (h - 1/2)^2 + 2-3/16^2 = h^2 + 2-1/8^2.
    """
    answer = studied("continuous", use={"accessible": True})
    assert turns(asked(answer, "axis off the door's face"), CLEAR, 32) == [(-0.0625, True), (1.5625, False)]
    (turn,) = turns(asked(answer, "axis from the heel edge"), CLEAR, 32)
    assert turn == (pytest.approx(0.25 + 2.1875**2 - 2.125**2, abs=1e-5), False)


def test_a_barrel_that_lies_in_the_faces_is_told_and_pivots_have_none():
    """A barrel of 1/2 is free of the frame's face from o - 1/8 = 1/4 on: 3/8."""
    found = asked(studied("continuous"), "axis off the door's face")
    assert [(round(one.value, 6), one.upward) for one in found.thresholds if one.what == BARREL] == [
        (0.375, True)
    ]
    assert BARREL not in {one.what for one in asked(studied("offset"), "axis off the door's face").thresholds}


def test_a_rounded_heel_keeps_its_axis_and_no_width_is_asked_about():
    names = {
        way: {one.name for one in parameters_of(answer, answer.candidates[-1])}
        for way in ("rounded", "offset")
        for answer in [studied(way)]
    }
    axis = {"axis off the door's face", "axis from the heel edge"}
    assert names["offset"] - names["rounded"] == axis
    assert not names["offset"] & {"hinge open width", "hinge backset"}


@pytest.mark.parametrize("way", WAYS)
def test_every_curve_agrees_with_the_study_of_the_edited_opening(way):
    answer = studied(way, obstructions=[RAIL], hardware=[LEVER])
    candidate = next(one for one in answer.candidates if one.way is not None)
    assert not candidate.to_push
    for parameter in parameters_of(answer, candidate):
        found = what_if(answer, candidate, parameter, parameter.holds[0])
        for place in (0, len(found.curve.values) // 3, -1):
            value = found.curve.values[place]
            if found.curve.bare[place] is None:
                continue
            edited = study(opening_with(answer.opening, parameter.holds[0], value))
            one = next(one for one in edited.candidates if one.way is not None)
            assert found.curve.bare[place] == pytest.approx(one.greatest_angle_bare, abs=1e-9), parameter
            assert found.curve.with_hardware[place] == pytest.approx(one.greatest_angle, abs=1e-9)
            assert found.curve.clear_widths[place] == pytest.approx(one.clear_width_at_90, abs=1e-9)
