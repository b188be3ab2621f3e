import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.pin import (
    MOUNTINGS,
    backset_refusal,
    barrel_freedom,
    barrel_past_frame,
    barrel_past_wall,
    clear_past_frame_at_180,
    least_width_for_barrel,
    least_width_for_clearance,
    locate_pin,
)
from tests.geometry.openings import case_a

WORKED = [  # W, o, y_p, barrel past frame, clear past frame at 180
    (4, 0.5, 0.375, 0.665, 0.875),
    (4.5, 0.75, 0.625, 0.915, 1.375),
    (5, 1.0, 0.875, 1.165, 1.875),
    (6, 1.5, 1.375, 1.665, 2.875),
    (7, 2.0, 1.875, 2.165, 3.875),
]


@pytest.mark.parametrize(("W", "o", "y_p", "barrel", "clear"), WORKED)
def test_worked_table(W, o, y_p, barrel, clear):
    h = case_a(W)
    pin = locate_pin(h)
    assert (pin.o, pin.y_p, pin.x_p) == (o, y_p, 0.0625)
    assert barrel_past_frame(h, pin) == pytest.approx(barrel, abs=1e-12)
    assert barrel_past_wall(h, pin) == pytest.approx(barrel + 0.5, abs=1e-12)
    assert clear_past_frame_at_180(h, pin) == clear


def test_pocketbook_rule_and_its_worked_example():
    # The Building Trades Pocketbook, "Doors", read: twice the thickness, less 1/2 in, plus the projection
    # past the door's face; a 2 in door past 1-7/8 in takes 5-3/8 in.
    assert least_width_for_clearance(T=2, b=0.25, c=1.875) == 5.375


def test_pin_stands_at_half_the_distance_to_what_it_clears():
    # A second textbook (on open joint hingeing, read): the pin stands at half the distance from the closed
    # door's face to the outside of the architrave.
    for c in (0.5, 1.875, 3.0):
        h = case_a(least_width_for_clearance(T=1.75, b=0.25, c=c))
        assert locate_pin(h).o == c / 2


@pytest.mark.parametrize(
    ("T", "b", "W", "clearance"),
    [(1.375, 0.25, 3.5, 1.25), (1.75, 0.25, 4.5, 1.5), (2.25, 0.375, 5, 1.25), (3, 0.375, 6, 0.75)],
)
def test_clearance_by_thickness_and_width(T, b, W, clearance):
    # Derived from the read rule: W - 2 (T - b), counted from the door's face.
    h = case_a(W, T=T, b=b, R=T + 0.1875)
    assert 2 * locate_pin(h).o == clearance


def test_the_frame_side_rules_where_backsets_disagree():
    pin = locate_pin(case_a(4.5, b_f=0.375))
    assert pin.y_p == 2.25 - (1.9375 - 0.375)
    assert pin.o == pin.y_p + 0.125
    assert pin.backset_disagreement == 0.0625 - (0.375 - 0.25)


def test_backsets_that_agree_are_no_disagreement():
    assert locate_pin(case_a(4.5, b_f=0.3125)).backset_disagreement == 0
    assert locate_pin(case_a(4.5)).backset_disagreement == 0


def test_published_leaf_gap_leaves_half_the_published_door_gap():
    pin = locate_pin(case_a(4.5, a=0.0625))
    assert pin.x_p == 0.03125
    assert pin.gap_disagreement == 0.0625


def test_shallow_mortises_push_the_pin_across():
    pin = locate_pin(case_a(4.5, m_d=0.114, m_f=0.104))
    assert pin.a == pytest.approx(0.125 - 0.02 - 0.03, abs=1e-15)
    assert pin.x_p == pytest.approx(0.03 + pin.a / 2, abs=1e-15)


@pytest.mark.parametrize(
    ("mounting", "x_p", "y_p", "o"),
    [
        ("half mortise", 0.0625, 0.29, 0.415),
        ("half surface", 0.0625, 0.165, 0.29),
        ("full surface", 0.0625, 0.29, 0.415),
        ("swing clear", -(0.415 + 1.75), 0.29, 0.415),
    ],
)
def test_other_mountings(mounting, x_p, y_p, o):
    pin = locate_pin(case_a(4.5, mounting=mounting))
    assert (pin.x_p, pin.y_p, pin.o) == pytest.approx((x_p, y_p, o), abs=1e-15)


def test_full_surface_packs_the_leaf_that_lies_deeper():
    assert locate_pin(case_a(mounting="full surface")).packing == 0.125
    proud = locate_pin(case_a(mounting="full surface", R=1.6875))  # i = -1/8
    assert proud.packing == -0.125
    assert (proud.y_p, proud.o) == pytest.approx((0.415, 0.29), abs=1e-15)


def test_swing_clear_pin_may_be_given():
    assert locate_pin(case_a(mounting="swing clear", x_p=-2.5)).x_p == -2.5


def test_a_leaf_wider_than_the_door_is_refused_in_words():
    # Half mortise: b = T + o - W/2 = 2.165 - W/2, so 4.33 in just fits and nothing wider.
    fits, wide = (case_a(W, mounting="half mortise") for W in (4.33, 4.34))
    assert backset_refusal(fits, locate_pin(fits)) is None
    said = backset_refusal(wide, locate_pin(wide))
    assert "4.34" in said
    assert "door" in said


def test_a_leaf_wider_than_the_frame_is_refused_in_words():
    # Half surface: b_f = R + y_p - W/2 = 2.1025 - W/2.
    fits, wide = (case_a(W, mounting="half surface") for W in (4.2, 4.21))
    assert backset_refusal(fits, locate_pin(fits)) is None
    assert "frame" in backset_refusal(wide, locate_pin(wide))


def test_an_unknown_mounting_is_refused_by_name():
    with pytest.raises(ValueError, match=r"floating.*full mortise"):
        locate_pin(case_a(mounting="floating"))


def test_barrel_freedom_at_below_and_above_the_boundary():
    # Free of the frame face from y_p = d_b/2 on: W/2 - 1.625 = 0.29, W = 3.83.
    least = least_width_for_barrel(case_a())
    assert least == pytest.approx(3.83, abs=1e-12)
    for W, free_by in ((least - 0.25, -0.125), (least, 0.0), (least + 0.25, 0.125)):
        h = case_a(W)
        assert barrel_freedom(h, locate_pin(h)) == pytest.approx(free_by, abs=1e-12)


def test_barrel_of_a_proud_door_is_bounded_by_the_door():
    h = case_a(least_width_for_barrel(case_a(R=1.6875)), R=1.6875)  # i = -1/8: the door face is in front
    assert barrel_freedom(h, locate_pin(h)) == pytest.approx(0, abs=1e-12)
    assert locate_pin(h).o == pytest.approx(0.29, abs=1e-12)


@given(st.sampled_from(MOUNTINGS), st.floats(2, 8), st.floats(0, 4))
def test_a_wider_hinge_never_lowers_the_pin(mounting, W, more):
    low, high = (locate_pin(case_a(width, mounting=mounting)) for width in (W, W + more))
    assert high.o >= low.o
    assert high.y_p >= low.y_p
    assert math.isclose(high.o - high.y_p, low.o - low.y_p, abs_tol=1e-12)
