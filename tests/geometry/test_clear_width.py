import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.clear_width import clear_width, pair_clear_width
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import Hardware, OtherLeaf
from configurator.geometry.solve import solve
from tests.geometry.openings import BOX, LEAF, case_a

SQUARE = math.pi / 2


def at_90(h, **more):
    return clear_width(h, locate_pin(h), SQUARE, **more)


@pytest.mark.parametrize(
    ("W", "width"), [(4, 33.0625), (4.5, 32.8125), (5, 32.5625), (6, 32.0625), (7, 31.5625)]
)
def test_worked_table(W, width):
    assert at_90(case_a(W)) == pytest.approx(width, abs=1e-12)


@pytest.mark.parametrize(
    ("mounting", "width"),
    [("half mortise", 33.1475), ("half surface", 33.2725), ("full surface", 33.1475), ("swing clear", 34.75)],
)
def test_by_mounting(mounting, width):
    assert at_90(case_a(4.5, mounting=mounting)) == pytest.approx(width, abs=1e-12)
    assert solve(case_a(4.5, mounting=mounting), LEAF).clear_width_at_90 == pytest.approx(width, abs=1e-12)


def test_as_the_ada_standards_define_it():
    # 2010 ADA Standards 404.2.3, read: between the face of the door and the stop, door open 90 degrees.
    # The push face stands g/2 + W/2 - (T - b) + T off the hinge rabbet; the stop 5/8 off the strike rabbet.
    for O, W in ((34, 4.5), (36, 4.5), (38, 6)):  # noqa: E741
        face = 0.0625 + W / 2 - 1.5 + 1.75
        assert at_90(case_a(W, O=O)) == pytest.approx(O - 0.625 - face, abs=1e-12)


def test_the_hinge_side_stop_governs_a_swing_clear_hinge():
    h = case_a(4.5, mounting="swing clear")
    assert at_90(h) == pytest.approx(36 - 2 * 0.625, abs=1e-12)
    assert at_90(case_a(4.5, mounting="swing clear", s=0)) == pytest.approx(36, abs=1e-12)


def test_closed_door_leaves_nothing():
    h = case_a()
    assert clear_width(h, locate_pin(h), 0.0) == 0.0


def test_a_pair_counts_to_the_other_leaf():
    assert at_90(case_a(4.5), meets_leaf=True) == at_90(case_a(4.5)) + 0.625
    solved = solve(case_a(4.5), LEAF, other=OtherLeaf(opening=72, w=35.75))
    assert solved.clear_width_at_90 == pytest.approx(36 - 2.5625, abs=1e-12)


def test_both_leaves_of_a_pair_open():
    assert pair_clear_width(72, 0.625, 2.5625, 2.5625) == 72 - 2 * 2.5625
    assert pair_clear_width(72, 0.625, 0.1, 2.5625) == 72 - 0.625 - 2.5625


def test_hardware_on_the_push_face_takes_its_projection():
    bar = Hardware(
        kind="panic device", projection=3, from_latch_edge=18, width=30, height=40, vertical=3, face="push"
    )
    solved = solve(case_a(4.5), LEAF, (bar,))
    assert solved.clear_width_at_90 == pytest.approx(32.8125, abs=1e-12)
    assert solved.hardware_in_clear_width == pytest.approx(3, abs=1e-12)
    assert solve(case_a(4.5), LEAF, (BOX,)).hardware_in_clear_width == 0  # on the pull face it is behind


@pytest.mark.parametrize(("height", "taken"), [(32, 0), (33, 0), (33.5, 3), (80.5, 3), (81, 0), (82, 0)])
def test_hardware_counts_between_34_and_80_in(height, taken):
    # 2 in tall: at 33 it ends at 34 exactly and does not count; at 81 it begins at 80.
    bar = Hardware(
        kind="other", projection=3, from_latch_edge=18, width=2, height=height, vertical=2, face="push"
    )
    assert solve(case_a(4.5), LEAF, (bar,)).hardware_in_clear_width == pytest.approx(taken, abs=1e-12)


@pytest.mark.parametrize(("underside", "taken"), [(77.9, 3), (78, 0), (78.1, 0), (80, 0)])
def test_a_closer_may_come_down_to_78_in(underside, taken):
    """2010 ADA Standards 404.2.3, exception 2 (read); any other hardware counts up to 80."""
    arm = Hardware(
        kind="closer",
        projection=3,
        from_latch_edge=28,
        width=10,
        height=underside + 1,
        vertical=2,
        face="push",
    )
    assert solve(case_a(4.5), LEAF, (arm,)).hardware_in_clear_width == pytest.approx(taken, abs=1e-12)


@given(st.floats(3.5, 8), st.floats(0, 1))
def test_a_wider_hinge_takes_half_of_what_it_adds(W, more):
    assert at_90(case_a(W)) - at_90(case_a(W + more)) == pytest.approx(more / 2, abs=1e-12)
