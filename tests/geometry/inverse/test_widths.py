import math
import random
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from configurator.geometry.inverse.break_widths import break_widths
from configurator.geometry.inverse.widths import (
    WIDEST,
    angle_bare,
    greatest_angles,
    greatest_hinge_width,
    greatest_projection,
    least_hinge_width,
    reaches,
    widths_that_work,
)
from configurator.geometry.pin import least_width_for_clearance, locate_pin
from configurator.geometry.shapes import Obstruction
from tests.geometry.openings import BEVEL, LEAF, RAIL, case_a
from tests.geometry.random_openings import random_problem
from tests.sweeps import examples

FLAT = math.pi


def test_least_width_past_a_rail_at_180_by_hand():
    # The rail stands 1-3/4 off the wall, 1-1/4 off the frame face, 1-3/8 off the door face: 2 (T - b) + c.
    by_hand = least_width_for_clearance(1.75, 0.25, 1.375)
    assert by_hand == 4.375
    assert least_hinge_width(case_a(), LEAF, FLAT, (RAIL,)) == pytest.approx(by_hand, abs=1e-8)


def test_widths_whose_barrel_touches_a_corner_are_among_those_where_something_changes():
    # The trim's corner lies 0.2 left of the pin and 1/2 off the frame face; the barrel's radius is 0.29.
    hanging = case_a()
    pin = locate_pin(hanging)
    trim = Obstruction(
        kind="other", from_frame=True, projection=0.5, start=-hanging.F - pin.x_p + 0.2, length=1
    )
    off = math.sqrt(0.29**2 - 0.2**2)
    for y_p in (0.5 - off, 0.5 + off, 0.5 + 0.29):
        by_hand = 2 * (y_p + 1.625)  # y_p = W/2 - 1-5/8
        assert min(abs(width - by_hand) for width in break_widths(hanging, LEAF, FLAT, (trim,))) < 1e-9


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
    wall = Obstruction(kind="return wall", fills=True, start=4.0)
    assert least_hinge_width(case_a(beta=BEVEL), LEAF, FLAT, (wall,)) is None
    assert greatest_projection(case_a(), LEAF, math.radians(100), (wall, RAIL), 1) is not None
    assert greatest_projection(case_a(), LEAF, math.radians(110), (wall, RAIL), 1) is None


def test_greatest_projection_is_bounded():
    far_off = Obstruction(kind="other", projection=1.0, start=60.0)
    assert greatest_projection(case_a(), LEAF, FLAT, (far_off,), 0, most=12.0) == 12.0


# The square latch edge binds where its stop-side corner's circle grows past the strike's arris:
# 35-13/16^2 + (W/2 + 1/4)^2 = 35-15/16^2 + (W/2 - 1-5/8)^2.
BINDS_FROM = 2 * (0.125 * 71.75 + 1.625**2 - 0.25**2) / 3.75


def deep_rail(least):
    """A rail that a hinge so wide just clears at 180 degrees: 2 (T - b) plus what it stands past the door."""
    return Obstruction(kind="chair rail", projection=least - 3.0 + 0.375, start=0.5)


def test_where_a_square_edge_binds_by_hand():
    assert greatest_hinge_width(case_a(), LEAF, FLAT) == pytest.approx(BINDS_FROM, abs=1e-9)
    assert greatest_hinge_width(case_a(beta=BEVEL, g_l=1), LEAF, FLAT) == WIDEST


@pytest.mark.parametrize("window", [0.2, 0.05, 1e-3, 1e-6])
def test_a_narrow_window_is_found(window):
    rail = deep_rail(BINDS_FROM - window)
    ((least, greatest),) = widths_that_work(case_a(), LEAF, FLAT, (rail,))
    assert (least, greatest) == pytest.approx((BINDS_FROM - window, BINDS_FROM), abs=2e-9)
    assert least_hinge_width(case_a(), LEAF, FLAT, (rail,)) == least


def test_a_window_that_is_none():
    assert widths_that_work(case_a(), LEAF, FLAT, (deep_rail(BINDS_FROM + 1e-6),)) == ()
    assert greatest_hinge_width(case_a(), LEAF, FLAT, (deep_rail(BINDS_FROM + 1e-6),)) is None


def test_two_spans():
    # A block before the pin, from 1 to 2 in off the frame face, at the lowest barrel's height: the barrel
    # stands free below it or above it, y_p = W/2 - 1-5/8 no nearer than its radius of 0.29.
    block = Obstruction(kind="other", projection=1.0, offset=1.5, start=-2.5, length=1.0, bottom=8, top=10)
    below, above = widths_that_work(case_a(beta=BEVEL), LEAF, math.radians(20), (block,))
    assert below[1] == pytest.approx(2 * (1.0 - 0.29 + 1.625), abs=1e-9)
    assert above[0] == pytest.approx(2 * (2.0 + 0.29 + 1.625), abs=1e-9)


def test_all_or_nothing_where_width_does_not_move_the_pin():
    h = case_a(mounting="full surface")
    assert widths_that_work(h, LEAF, 1.0, (), widest=8.0) == ((1.0, 8.0),)
    assert widths_that_work(h, LEAF, FLAT, (RAIL,)) == ()


@pytest.mark.parametrize("seed", range(4))
def test_the_spans_are_the_widths_that_work(seed):
    """Any opening, any wanted angle: a width works just where a span says so."""
    chance = random.Random(f"spans {seed}")
    inside = 0
    for _ in range(30):
        problem, wanted = random_problem(chance), chance.choice([0.5, 1.5, math.pi / 2, 2.5, FLAT])
        h = replace(problem.hanging, mounting="full mortise")
        about = (problem.leaf, wanted, problem.obstructions, problem.other)
        spans = widths_that_work(h, *about, widest=14.0)
        for width in [chance.uniform(1.0, 14.0) for _ in range(20)]:
            if min([abs(width - end) for span in spans for end in span], default=1.0) > 1e-6:
                within = any(low < width < high for low, high in spans)
                assert reaches(replace(h, W=width), *about) is within, (width, spans, wanted, problem)
                inside += within
        for end in (end for span in spans for end in span):
            assert reaches(replace(h, W=end), *about), (end, spans, wanted, problem)
    assert inside > 20


def test_width_does_not_move_the_pin_of_a_surface_hinge():
    assert least_hinge_width(case_a(mounting="full surface"), LEAF, FLAT, (RAIL,)) is None


def test_angles_by_width():
    # A return wall 4 in from the frame: what three widths reach.
    wall = (Obstruction(kind="return wall", fills=True, start=4.0),)
    found = greatest_angles(case_a(beta=BEVEL), LEAF, (4, 4.5, 6), wall)
    assert [width for width, _ in found] == [4, 4.5, 6]
    assert [math.degrees(angle) for _, angle in found] == pytest.approx([100.545, 100.944, 102.136], abs=5e-4)


def test_a_column_that_moves_out_by_hand():
    # 4 in across, its centre 20 in beyond the pin: open flat the face, y_p - o = 1/8 behind the frame's face
    # closed, stands at y_p + o = 7/8; the column's front comes to it 7/8 + 1/2 off the wall.
    column = Obstruction(kind="column", diameter=4, start=20 - 2 - 2 - 0.0625)
    assert greatest_projection(case_a(4), LEAF, FLAT, (column,), 0) == pytest.approx(1.375, abs=1e-9)
    # Past the leaf's reach it is out of the way again, which is no leave to stand out so far.
    assert reaches(case_a(4), LEAF, FLAT, (replace(column, projection=46),))
    assert greatest_projection(case_a(4), LEAF, 1.0, (column,), 0) == 48.0


@pytest.mark.parametrize("seed", range(3))
def test_a_column_may_stand_out_just_so_far(seed):
    chance = random.Random(f"columns {seed}")
    bounded = 0
    for _ in range(15):
        h = case_a(chance.choice([4, 4.5, 6]), beta=BEVEL)
        wanted = chance.uniform(1.4, math.pi)
        column = Obstruction(kind="column", diameter=chance.uniform(1, 8), start=chance.uniform(0, 30))
        most = greatest_projection(h, LEAF, wanted, (column,), 0)
        if most is None:
            continue
        inside = [chance.uniform(0, most) for _ in range(20)]
        assert all(reaches(h, LEAF, wanted, (replace(column, projection=one),)) for one in (most, *inside))
        if most < 48.0:
            bounded += 1
            assert not reaches(h, LEAF, wanted, (replace(column, projection=most + 1e-6),))
    assert bounded > 3


rails = st.builds(
    Obstruction,
    kind=st.just("chair rail"),
    projection=st.floats(1.5, 3),
    start=st.floats(0, 3),
)


@given(rails, st.floats(2.2, math.pi))
@examples(25)
def test_the_inverse_undoes_the_forward(rail, wanted):
    h = case_a(4, beta=BEVEL)
    width = least_hinge_width(h, LEAF, wanted, (rail,), narrowest=3.83)
    if width is not None:
        assert reaches(case_a(width, beta=BEVEL), LEAF, wanted, (rail,))


@given(
    st.builds(
        Obstruction, kind=st.just("chair rail"), projection=st.floats(1.9, 2.6), start=st.floats(1.5, 3)
    ),
    st.floats(2.9, math.pi),
)
@examples(25)
def test_a_narrower_hinge_than_the_least_falls_short(rail, wanted):
    """Rails that stand out so far that no hinge of the narrowest width passes them."""
    width = least_hinge_width(case_a(4, beta=BEVEL), LEAF, wanted, (rail,), narrowest=3.83)
    assume(width is not None and width > 3.83)
    narrower = case_a(width - 1e-6, beta=BEVEL)
    assert angle_bare(narrower, LEAF, (rail,)) < wanted
    assert angle_bare(narrower, LEAF, (rail,)) == pytest.approx(wanted, abs=1e-3)


@given(rails, st.floats(2.2, math.pi))
@examples(25)
def test_the_greatest_width_is_the_greatest(rail, wanted):
    # A square edge: past some width it binds.
    width = greatest_hinge_width(case_a(), LEAF, wanted, (rail,), narrowest=3.83)
    if width is None:
        return
    assert reaches(case_a(width), LEAF, wanted, (rail,))
    assert not reaches(case_a(width + 1e-6), LEAF, wanted, (rail,))


@given(st.floats(3.83, 6), st.floats(0, 3), st.floats(2.2, math.pi))
@examples(25)
def test_the_greatest_projection_is_the_greatest(W, start, wanted):
    h = case_a(W, beta=BEVEL)
    rail = Obstruction(kind="chair rail", projection=1, start=start)
    most = greatest_projection(h, LEAF, wanted, (rail,), 0, most=10.0)
    if most is None or most == 10.0:
        return
    here, past = (Obstruction(kind="chair rail", projection=most + d, start=start) for d in (0, 1e-6))
    assert reaches(h, LEAF, wanted, (here,))
    assert not reaches(h, LEAF, wanted, (past,))
