import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from configurator.geometry.inverse import (
    angle_bare,
    greatest_angles,
    greatest_projection,
    least_hinge_width,
    reaches,
)
from configurator.geometry.pin import least_width_for_clearance
from configurator.geometry.shapes import Obstruction
from tests.geometry.openings import BEVEL, LEAF, RAIL, case_a

FLAT = math.pi


def test_least_width_past_a_rail_at_180_by_hand():
    # The rail stands 1-3/4 off the wall, 1-1/4 off the frame face, 1-3/8 off the door face: 2 (T - b) + c.
    by_hand = least_width_for_clearance(1.75, 0.25, 1.375)
    assert by_hand == 4.375
    assert least_hinge_width(case_a(), LEAF, FLAT, (RAIL,)) == pytest.approx(by_hand, abs=1e-8)


def test_greatest_projection_at_180_by_hand():
    # Open flat the face stands 2o - i + p off the wall.
    for W, by_hand in ((4, 1.375), (4.5, 1.875), (6, 3.375)):
        assert greatest_projection(case_a(W), LEAF, FLAT, (RAIL,), 0) == pytest.approx(by_hand, abs=1e-8)


def test_greatest_projection_at_another_angle_by_hand():
    # At 120 the leaf's pull face passes above (-5/2, y): n = (-sin, cos), n . (-2.5625, y - 3/8) = -1/2.
    wanted = math.radians(120)
    y = 0.375 + (-0.5 - 2.5625 * math.sin(wanted)) / math.cos(wanted)
    assert greatest_projection(case_a(4), LEAF, wanted, (RAIL,), 0) == pytest.approx(y + 0.5, abs=1e-8)


def test_a_square_edge_that_binds_gets_no_wider_answer():
    # Wide enough for 6 in of trim it would bind at the latch long before: no width does both.
    deep = Obstruction(kind="other", projection=6.0, start=1.0)
    assert least_hinge_width(case_a(), LEAF, FLAT, (deep,)) is None
    assert least_hinge_width(case_a(beta=BEVEL, g_l=0.25), LEAF, FLAT, (deep,)) is not None


def test_narrowest_is_taken_where_it_does():
    assert least_hinge_width(case_a(), LEAF, FLAT, (), narrowest=4.0) == 4.0


def test_no_hinge_passes_a_return_wall():
    wall = Obstruction(kind="return wall", start=4.0)
    assert least_hinge_width(case_a(beta=BEVEL), LEAF, FLAT, (wall,)) is None
    assert greatest_projection(case_a(), LEAF, math.radians(100), (wall, RAIL), 1) is not None
    assert greatest_projection(case_a(), LEAF, math.radians(110), (wall, RAIL), 1) is None


def test_greatest_projection_is_bounded():
    far_off = Obstruction(kind="other", projection=1.0, start=60.0)
    assert greatest_projection(case_a(), LEAF, FLAT, (far_off,), 0, most=12.0) == 12.0


def test_width_does_not_move_the_pin_of_a_surface_hinge():
    assert least_hinge_width(case_a(mounting="full surface"), LEAF, FLAT, (RAIL,)) is None


def test_angles_by_width():
    # A return wall 4 in from the frame: what three widths reach.
    wall = (Obstruction(kind="return wall", start=4.0),)
    found = greatest_angles(case_a(beta=BEVEL), LEAF, (4, 4.5, 6), wall)
    assert [width for width, _ in found] == [4, 4.5, 6]
    assert [math.degrees(angle) for _, angle in found] == pytest.approx([100.545, 100.944, 102.136], abs=5e-4)


rails = st.builds(
    Obstruction,
    kind=st.just("chair rail"),
    projection=st.floats(1.5, 3),
    start=st.floats(0, 3),
)


@given(rails, st.floats(2.2, math.pi))
@settings(max_examples=25, deadline=None)
def test_the_inverse_undoes_the_forward(rail, wanted):
    h = case_a(4, beta=BEVEL)
    width = least_hinge_width(h, LEAF, wanted, (rail,), narrowest=3.83)
    if width is None:
        return
    assert reaches(case_a(width, beta=BEVEL), LEAF, wanted, (rail,))
    if width > 3.83:
        narrower = case_a(width - 1e-6, beta=BEVEL)
        assert angle_bare(narrower, LEAF, (rail,)) < wanted
        assert angle_bare(narrower, LEAF, (rail,)) == pytest.approx(wanted, abs=1e-3)


@given(st.floats(3.83, 6), st.floats(0, 3), st.floats(2.2, math.pi))
@settings(max_examples=25, deadline=None)
def test_the_greatest_projection_is_the_greatest(W, start, wanted):
    h = case_a(W, beta=BEVEL)
    rail = Obstruction(kind="chair rail", projection=1, start=start)
    most = greatest_projection(h, LEAF, wanted, (rail,), 0, most=10.0)
    if most is None or most == 10.0:
        return
    here, past = (Obstruction(kind="chair rail", projection=most + d, start=start) for d in (0, 1e-6))
    assert reaches(h, LEAF, wanted, (here,))
    assert not reaches(h, LEAF, wanted, (past,))
