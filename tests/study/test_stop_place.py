"""Where door stops stand, against figures worked by hand on the plain case: a 4 in hinge, frame 1/2 proud.

The pin stands 1/16 across and 3/8 out, 1/2 off the door's face; the frame's outer edge is 2 in to the left of
the rabbet. A floor stop or bumper whose tip is P off the wall stands P - 1/2 - 3/8 past the pin.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.study import study
from tests.openings import LEVER, plain_opening
from tests.sweeps import examples

FLOOR = {"kind": "floor stop", "projection": 3, "from_frame": 28}
BUMPER = {"kind": "wall bumper", "projection": 1.5, "from_frame": 28, "height": 60}


def candidates(**changes):
    return study(plain_opening(**changes)).candidates


def on_4(**changes):
    return candidates(compare=[4], **{"use": {"wanted_angle": 180}} | changes)[0]


def said(one, code):
    return next((finding for finding in one.findings if finding.code == code), None)


def by_hand(projection, from_frame):
    """The angle at which the bare face, 1/2 behind the pin's line, comes to the tip, degrees."""
    x, y = from_frame + 2 + 1 / 16, projection - 0.5 - 0.375
    return math.degrees(math.pi - math.atan2(y, x) + math.asin(0.5 / math.hypot(x, y)))


def test_a_floor_stop_holds_the_leaf():
    one = on_4(door_stop=FLOOR)
    assert one.door_stop.rests_at == pytest.approx(by_hand(3, 28), abs=1e-9)
    assert one.rests_at == pytest.approx(176.9073, abs=5e-5)
    assert (one.greatest_angle, one.door_stop.meets, one.door_stop.fault) == (180.0, "leaf", "")
    assert one.door_stop.from_pin == 28 + 2 + 1 / 16
    assert one.door_stop.height == 0.75 + 0.5


def test_it_limits_the_swing_as_an_angle_given_does():
    stopped = on_4(door_stop=FLOOR)
    by_angle = on_4(use={"stop_angle": stopped.rests_at})
    assert stopped.encroachment_at_rest == pytest.approx(by_angle.encroachment_at_rest, abs=1e-9)
    assert stopped.encroachment_at_rest > on_4().encroachment_at_rest


@pytest.mark.parametrize(("overhead", "rests"), [(100, 100.0), (179, by_hand(3, 28))])
def test_of_an_angle_and_a_place_the_smaller_rules(overhead, rests):
    one = on_4(door_stop=FLOOR, use={"stop_angle": overhead})
    assert one.rests_at == pytest.approx(rests, abs=1e-9)
    assert (said(one, "two door stops") is not None) == (overhead == 100)


def test_a_bumper_at_the_levers_height_meets_the_lever_and_beside_it_the_leaf():
    at_lever = {"kind": "wall bumper", "projection": 1.5, "height": 38}
    lever, leaf = (on_4(hardware=[LEVER], door_stop={**at_lever, "height": height}) for height in (38, 41))
    assert (lever.door_stop.meets, leaf.door_stop.meets) == ("lever", "leaf")
    # In line with the spindle, 1 in from the lever's end: 1-3/4 from the latch edge, 2 ahead of the pin.
    along = 36 - 0.125 - 1.75 - 1 / 16
    rho = math.hypot(along, 2.0)
    angle = math.pi - math.asin(0.625 / rho) - math.atan2(2.0, along)
    assert lever.rests_at == pytest.approx(math.degrees(angle), abs=0.01)
    exact = math.sqrt(rho**2 - 0.625**2) - 2 - 1 / 16
    assert exact - 1 / 16 < lever.door_stop.from_frame <= exact
    assert (lever.door_stop.from_frame * 16).is_integer()


@pytest.mark.parametrize(("height", "meets"), [(35.7, "leaf"), (35.75, "leaf"), (35.76, "lever")])
def test_heights_decide_whether_the_lever_meets_it(height, meets):
    """The lever's underside is 38 - 1-3/4 = 36-1/4; the tip is an inch high."""
    assert (
        on_4(hardware=[LEVER], door_stop={**BUMPER, "height": height, "from_frame": 32}).door_stop.meets
        == meets
    )


@pytest.mark.parametrize(("height", "fault"), [(0.25, "misses"), (0.26, ""), (1.25, "")])
def test_a_floor_stop_that_the_leaf_passes_over(height, fault):
    """The leaf's bottom is 3/4 above the floor; the tip's top is 1/2 over its middle."""
    one = on_4(door_stop={**FLOOR, "height": height})
    assert one.door_stop.fault == fault
    assert (one.rests_at == 180.0) == bool(fault)
    assert (said(one, "stop misses the leaf") is not None) == bool(fault)


@pytest.mark.parametrize(
    ("projection", "rests"), [(1.374, None), (1.375, 180.0), (1.376, pytest.approx(180, abs=0.01))]
)
def test_one_so_short_that_the_flat_leaf_never_comes_to_it(projection, rests):
    """Open flat the face stands 2 x 1/2 - 1/8 + 1/2 = 1-3/8 off the wall."""
    one = on_4(door_stop={**FLOOR, "projection": projection})
    assert one.door_stop.rests_at == rests
    assert (said(one, "stop never met") is not None) == (rests is None)


def test_one_beyond_the_leaf_is_never_met():
    one = on_4(door_stop={**FLOOR, "from_frame": 40})
    assert one.door_stop.fault == "never met"
    assert "no farther along than 32-11/16 in" in said(one, "stop never met").message


@pytest.mark.parametrize(("beyond", "fault"), [(-0.01, ""), (0.01, "near the edge")])
def test_on_the_outer_inch_of_the_leaf(beyond, fault):
    reach = on_4(door_stop=FLOOR).door_stop.reach
    one = on_4(door_stop={**FLOOR, "from_frame": reach + beyond})
    assert one.door_stop.fault == fault
    assert one.door_stop.holds


def test_what_hardware_meets_before_it():
    one = on_4(hardware=[LEVER], door_stop={**FLOOR, "projection": 1.5})
    assert one.door_stop.fault == "met too late"
    assert one.rests_at == one.greatest_angle
    assert "the lever meets the wall at 177.9°, before" in said(one, "stop met too late").message
    assert said(one, "where the door rests") is None


def test_one_behind_a_rail():
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    low, high = (on_4(obstructions=[rail], door_stop={**BUMPER, "height": one}) for one in (34, 50))
    assert (low.door_stop.fault, high.door_stop.fault) == ("buried", "met too late")


def test_one_that_would_stand_in_the_doorway():
    one = on_4(door_stop={"kind": "floor stop", "projection": 40})
    assert one.door_stop.fault == "in the doorway"
    assert said(one, "stop in the doorway") is not None


def test_left_to_the_program_it_goes_near_the_latch_edge():
    place = on_4(door_stop={"kind": "floor stop", "projection": 3}).door_stop
    # An inch of the leaf beyond it: 36 - 1/8 - 1/16 - 1 along the face.
    exact = math.sqrt(34.8125**2 + 0.5**2 - (3 - 0.875) ** 2)
    assert exact - 1 / 16 < place.from_pin <= exact
    assert place.fault == ""


def test_where_it_goes_is_offered_with_one_click_that_does_what_was_said():
    one = on_4(hardware=[LEVER])
    found = said(one, "hardware meets first")
    (fix,) = found.fix
    mended = on_4(hardware=[LEVER], door_stop=fix.value)
    assert mended.rests_at == pytest.approx(found.numbers["rests_at"], abs=1e-9)
    assert mended.rests_at < one.greatest_angle
    assert said(mended, "hardware meets first") is None
    assert said(mended, "where the door rests") is not None


def test_a_leaf_on_a_rail_is_offered_a_floor_stop():
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
    one = on_4(obstructions=[rail])
    message = said(one, "stops short").message
    assert "fit a floor stop whose tip is" in message
    assert said(one, "where a stop goes") is None


def test_a_return_wall_past_the_angle_wanted():
    one = on_4(obstructions=[{"kind": "return wall", "start": 4}], use={"wanted_angle": 90})
    found = said(one, "where a stop goes")
    assert found.numbers["rests_at"] < one.greatest_angle
    assert (
        said(
            on_4(obstructions=[{"kind": "return wall", "start": 4}], use={"stop_angle": 90}),
            "where a stop goes",
        )
        is None
    )


def test_of_two_leaves_each_has_its_own():
    active, inactive = candidates(
        leaves="pair", size={"width": 60, "height": 84}, active_width=36, compare=[4],
        door_stop={"kind": "floor stop", "projection": 3},
    )  # fmt: skip
    assert active.door_stop.from_frame - inactive.door_stop.from_frame == pytest.approx(
        36 - (60 - 36 - 0.375), abs=1 / 16
    )
    upper, lower = candidates(leaves="dutch", compare=[4], door_stop={"kind": "floor stop", "projection": 3})
    assert (upper.door_stop.fault, lower.door_stop.fault) == ("misses", "")


def test_the_results_carry_it():
    data = on_4(door_stop=FLOOR).as_data()
    assert data["rests_at"] == data["door_stop"]["rests_at"]
    assert (data["door_stop"]["kind"], data["door_stop"]["fault"]) == ("floor stop", None)
    assert on_4(door_stop={**FLOOR, "from_frame": 40}).as_data()["door_stop"]["fault"] == "never met"
    assert on_4().as_data()["door_stop"] is None


@examples(20)
@given(projection=st.floats(1.5, 12), from_frame=st.floats(4, 28))
def test_a_stop_moved_nearer_the_frame_or_made_longer_never_lets_the_door_farther(projection, from_frame):
    here, longer, nearer = (
        on_4(door_stop={"kind": "floor stop", "projection": p, "from_frame": x}).rests_at
        for p, x in ((projection, from_frame), (projection + 1, from_frame), (projection, from_frame - 1))
    )
    assert longer <= here + 1e-9
    assert nearer <= here + 1e-9


PULL = {"kind": "pull", "projection": 2.5, "from_latch_edge": 3, "width": 1, "height": 42, "vertical": 48}


def test_a_long_pull_is_not_what_a_stop_is_struck_by():
    """Nobody lets a grip 48 in long strike a bumper: the stop meets the leaf, below what it carries."""
    one = on_4(hardware=[PULL])
    assert (one.stopped_by.part, one.stopped_by.kind) == ("pull", "wall")
    place = one.stop_wanted
    assert (place.kind, place.meets) == ("floor stop", "leaf")
    assert place.height < 42 - 48 / 2
    assert place.rests_at < one.greatest_angle
    lever = on_4(hardware=[LEVER]).stop_wanted
    assert (lever.kind, lever.meets, lever.height) == ("wall bumper", "lever", 38)


@pytest.mark.parametrize(("vertical", "height"), [(48, 17.5), (10, 38), (7, 38), (8, 38)])
def test_a_bumper_goes_to_the_nearest_height_clear_of_what_the_leaf_carries(vertical, height):
    """Half of the pull and half of the tip, 1 in high, from the pull's middle at 42: 17-1/2 for 48 in."""
    one = on_4(hardware=[PULL | {"vertical": vertical}], door_stop={"kind": "wall bumper", "projection": 3})
    by_hand = 42 - (vertical + 1) / 2
    assert one.door_stop.height == (by_hand if by_hand < 38 else 38)
    assert one.door_stop.meets == "leaf"


def test_a_bumper_set_where_the_pull_strikes_it_is_said():
    along = {"from_frame": 30.75, "height": 42}
    one = on_4(hardware=[PULL], door_stop={"kind": "wall bumper", "projection": 3} | along)
    assert one.door_stop.meets == "pull"
    message = said(one, "where the door rests").message
    assert "Set it where it meets the leaf, clear of the pull." in message
