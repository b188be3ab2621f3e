import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.bumper import greatest_along, rest_angle, stop_for_angle, stop_on_wall
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import Obstruction
from configurator.geometry.solve import solve
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
def test_a_stop_placed_for_an_angle_holds_it_there(angle, along, out):
    place, _ = stop_for_angle(CASE, PIN, angle, along, out)
    assert rest_angle(CASE, PIN, place.point, out) == pytest.approx(angle, abs=1e-9)


def test_a_stop_that_is_not_met():
    reach = greatest_along(CASE, PIN)
    assert rest_angle(CASE, PIN, (0.0625 - reach - 1, 0.875)) is None  # beyond the leaf
    assert rest_angle(CASE, PIN, (0.0625, 0.375 + 0.25)) is None  # nearer the pin than the face ever comes
    assert rest_angle(CASE, PIN, (-20.0, -5.0)) is None  # behind the wall
