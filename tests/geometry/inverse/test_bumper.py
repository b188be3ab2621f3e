import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from configurator.geometry.inverse.bumper import (
    greatest_along,
    met_stop,
    rest_angle,
    stop_for_angle,
    stop_on_wall,
)
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import Obstruction, Shape
from configurator.geometry.solve import scene, solve
from tests.geometry.openings import BOX, LEAF, case_a

CASE = case_a(4)
PIN = locate_pin(CASE)


def test_a_bumper_as_long_as_the_door_stands_off_is_met_flat():
    # Open flat the face stands 2o - i + p = 1-3/8 off the wall.
    place = stop_on_wall(CASE, PIN, 1.375, 30)
    assert place.angle == pytest.approx(math.pi, abs=1e-12)
    assert place.point == pytest.approx((0.0625 - 30, 0.875), abs=1e-12)


def test_shorter_is_never_met_and_longer_holds_it_off():
    assert stop_on_wall(CASE, PIN, 1.375 - 1e-6, 30) is None
    # By hand: 30 sin t - (-1/2) cos t ... the tip stands 2-1/2 - 1/2 - 3/8 = 1-5/8 above the pin.
    place = stop_on_wall(CASE, PIN, 2.5, 30)
    rho = math.hypot(30, 0.5)
    assert place.angle == pytest.approx(math.pi - math.asin(1.625 / rho) + math.atan2(0.5, 30), abs=1e-12)


def test_the_swing_meets_it_there_too():
    """A post with its corner at the tip stops the bare leaf at the very same angle."""
    place = stop_on_wall(CASE, PIN, 4.0, 30)
    x, _ = place.point
    post = Obstruction(kind="other", projection=4.0, start=-2.0 - x, length=0.5)
    assert solve(CASE, LEAF, obstructions=(post,)).bare.angle == pytest.approx(place.angle, abs=1e-12)


def test_a_bumper_at_lever_height_meets_the_lever():
    lever_along = 36 - 0.125 - 2.75 - 0.0625
    place = stop_on_wall(CASE, PIN, 1.0, lever_along, out=BOX.projection)
    assert place.angle < solve(CASE, LEAF, (BOX,)).greatest_angle
    assert place.point[1] == pytest.approx(0.5, abs=1e-12)


def test_a_stop_too_long_for_90_is_refused():
    assert stop_on_wall(CASE, PIN, 60, 30) is None
    assert stop_on_wall(CASE, PIN, 2, 0) is None


def test_a_floor_stop_for_90_by_hand():
    place, projection = stop_for_angle(CASE, PIN, math.pi / 2, 30)
    assert place.point == (0.0625 + 0.5, 0.375 + 30)
    assert projection == 30.875


@given(st.floats(0.1, math.pi), st.floats(1, 30), st.floats(0, 3))
@example(math.pi, 17.96875, 0.0)
def test_a_stop_placed_for_an_angle_holds_it_there(angle, along, out):
    place, _ = stop_for_angle(CASE, PIN, angle, along, out)
    assert rest_angle(CASE, PIN, place.point, out) == pytest.approx(angle, abs=1e-9)


def test_a_stop_that_is_not_met():
    reach = greatest_along(CASE, PIN)
    assert rest_angle(CASE, PIN, (0.0625 - reach - 1, 0.875)) is None  # beyond the leaf
    assert rest_angle(CASE, PIN, (0.0625, 0.375 + 0.25)) is None  # nearer the pin than the face ever comes
    assert rest_angle(CASE, PIN, (-20.0, -5.0)) is None  # behind the wall


def tip(point, bottom=0.0, top=84.0):
    return Shape((point,), 0.0, bottom, top, "door stop")


def moving(width=4, hardware=()):
    plan = scene(case_a(width), LEAF, hardware)
    return (*plan.bare, *plan.hardware)


@given(st.floats(0.2, math.pi - 0.01), st.floats(2, 30))
def test_the_whole_leaf_comes_to_a_tip_where_its_face_does(angle, along):
    place, _ = stop_for_angle(CASE, PIN, angle, along)
    met, part = met_stop(moving(), tip(place.point), PIN)
    assert part == "leaf"
    assert met == pytest.approx(angle, abs=1e-9)


def test_a_tip_just_touched_by_the_flat_leaf_holds_it_there():
    # Open flat the face lies 2o - i = 7/8 ahead of the frame face.
    assert met_stop(moving(), tip((-20.0, 0.875)), PIN) == (math.pi, "leaf")
    assert met_stop(moving(), tip((-20.0, 0.874)), PIN) is None


@pytest.mark.parametrize(("top", "part"), [(36.25, "leaf"), (36.26, "lever")])
def test_heights_tell_leaf_from_hardware(top, part):
    # The box is 3-1/2 high about 38: its underside is at 36-1/4.
    place = stop_on_wall(CASE, PIN, 1.5, 33, out=BOX.projection)
    _, met = met_stop(moving(hardware=(BOX,)), tip(place.point, 0.0, top), PIN)
    assert met == part


def test_the_side_of_hardware_comes_to_a_tip_too():
    # The tip lies nearer the pin than the box's inner side, past its outer face: only the side can meet it.
    near = 36 - 0.125 - 2.75 - 2 - 1 / 16
    x = math.hypot(near, 1.5)
    met, part = met_stop(moving(hardware=(BOX,)), tip((1 / 16 - x, 0.375), 37.5, 38.5), PIN)
    assert part == "lever"
    assert met == pytest.approx(math.pi - math.atan2(1.5, near), abs=1e-9)
