import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.edges import bevel_for_latch_gap, hinge_edge_passage, latch_edge_least
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import Obstruction, OtherLeaf
from configurator.geometry.solve import solve
from tests.geometry.openings import BEVEL, LEAF, case_a
from tests.sweeps import examples

WORKED = [  # W, square, 1/8 in 2
    (4, 0.056345, 0.123466),
    (4.5, 0.043280, 0.122582),
    (5, 0.030221, 0.121692),
    (6, 0.004128, 0.113054),
    (7, 0.0, 0.086858),
]


def latch(h):
    return latch_edge_least(h, locate_pin(h))


@pytest.mark.parametrize(("W", "square", "beveled"), WORKED)
def test_worked_table(W, square, beveled):
    assert latch(case_a(W)) == pytest.approx(square, abs=5e-7)
    assert latch(case_a(W, beta=BEVEL)) == pytest.approx(beveled, abs=5e-7)


@pytest.mark.parametrize(("W", "beta"), [(4, 0), (4.5, 0), (5, BEVEL), (6, 0), (6, BEVEL)])
def test_while_the_arris_governs_by_hand(W, beta):
    o, y_p, x_p = W / 2 - 1.5, W / 2 - 1.625, 0.0625
    stop_side = math.hypot(36 - 0.125 - beta * 1.75 - x_p, o + 1.75)
    pull_side = math.hypot(36 - 0.125 - x_p, o)
    by_hand = math.hypot(36 - x_p, y_p) - max(stop_side, pull_side)
    assert latch(case_a(W, beta=beta)) == pytest.approx(by_hand, abs=1e-12)


def test_a_leaf_that_binds_leaves_nothing_and_names_the_latch_jamb():
    solved = solve(case_a(7), LEAF)
    assert solved.latch_edge_least == 0
    assert (solved.bare.kind, solved.bare.part) == ("latch jamb", "leaf")
    assert math.degrees(solved.bare.angle) == pytest.approx(2.3842, abs=5e-5)
    # By hand: the stop-side corner at (35.8125, -3.75) from the pin comes to the rabbet face 35.9375 across.
    rho, phi = math.hypot(35.8125, 3.75), math.atan2(-3.75, 35.8125)
    assert solved.bare.angle == pytest.approx(-phi - math.acos(35.9375 / rho), abs=1e-12)


def test_the_bevel_that_is_needed():
    h = case_a(7)
    beta = bevel_for_latch_gap(h, locate_pin(h), 0.0625)
    assert beta > 0
    assert latch(case_a(7, beta=beta)) == pytest.approx(0.0625, abs=1e-9)
    assert latch(case_a(7, beta=beta - 1e-3)) < 0.0625


def test_the_bevel_where_the_arris_governs_by_hand():
    # W 6: the stop-side corner's rho comes down to hypot(O - x_p, y_p) - gap, 3-1/4 below the pin.
    rho = math.hypot(35.9375, 1.375) - 0.0625
    by_hand = (35.8125 - math.sqrt(rho * rho - 3.25**2)) / 1.75
    h = case_a(6)
    assert bevel_for_latch_gap(h, locate_pin(h), 0.0625) == pytest.approx(by_hand, abs=1e-7)


@given(st.floats(3, 9), st.sampled_from([0.0625, 0.1875, 0.5, 1.2]), st.floats(0.01, 0.12))
@examples(30)
def test_the_bevel_found_leaves_the_gap_and_no_less_does(W, deep, gap):
    h = case_a(W, R=1.75 + deep)
    pin = locate_pin(h)
    beta = bevel_for_latch_gap(h, pin, gap)
    if beta is None:
        assert latch_edge_least(case_a(W, R=1.75 + deep, beta=0.5), pin) < gap
        return
    assert latch_edge_least(case_a(W, R=1.75 + deep, beta=beta), pin) >= gap - 1e-9
    if beta > 0:
        assert latch_edge_least(case_a(W, R=1.75 + deep, beta=beta * 0.999), pin) < gap


def test_no_bevel_needed_and_none_that_does():
    h = case_a(4)
    assert bevel_for_latch_gap(h, locate_pin(h), 0.05) == 0
    assert bevel_for_latch_gap(h, locate_pin(h), 0.13) is None


def test_a_pair_is_measured_to_the_other_leaf():
    h = case_a(4.5)
    pin = locate_pin(h)
    square = latch_edge_least(h, pin, OtherLeaf(opening=72, w=35.75))
    # By hand: the pull-side edge of the other leaf is the arris, o below the pin.
    by_hand = math.hypot(36 - 0.0625, 0.75) - math.hypot(35.8125, 0.75 + 1.75)
    assert square == pytest.approx(by_hand, abs=1e-12)


def test_a_beveled_pair_closed_is_nearest_at_its_pull_side():
    # Both meeting edges relieved on the stop side: closed, 1/8 apart on the pull side and more behind; the
    # pull-side corner passes the other leaf's at the difference of their distances from the pin.
    h = case_a(4, beta=BEVEL)
    pin = locate_pin(h)
    by_hand = math.hypot(36 - 0.0625, 0.5) - math.hypot(35.8125, 0.5)
    assert latch_edge_least(h, pin, OtherLeaf(opening=72, w=35.75, beta=BEVEL)) == pytest.approx(by_hand)


def test_an_other_leaf_relieved_on_its_stop_side_leaves_more_room():
    # A 3 in door on a narrow hinge: the pin lies 1-1/4 behind the pull face, so that the stop-side corner,
    # 1-3/4 behind the pin, swings toward the other leaf by hypot(35.8375, 1.75) - 35.8375 before it leaves.
    h = case_a(3, g_l=0.1, T=3, R=3.1875)
    pin = locate_pin(h)
    square, relieved = (latch_edge_least(h, pin, OtherLeaf(opening=72, w=35, beta=b)) for b in (0, 0.05))
    assert square == pytest.approx(35.9375 - math.hypot(35.8375, 1.75), abs=1e-12)
    assert relieved > square + 0.01


@pytest.mark.parametrize("W", [4, 4.5, 6])
def test_hinge_edge_stays_as_far_as_its_gap(W):
    assert solve(case_a(W), LEAF).hinge_edge_least == pytest.approx(0.125, abs=1e-12)


def test_hinge_edge_passes_a_casing():
    # The hinge edge's pull-side corner turns at hypot(1/16, 1/2) about the pin (1/16, 3/8), over the rabbet
    # face, its arris, the frame's face and a casing there that starts 1/4 in from the rabbet, 1/4 in thick.
    casing = Obstruction(kind="casing", from_frame=True, projection=0.25, start=-1.75, length=2.25)
    solved = solve(case_a(4), LEAF, obstructions=(casing,))
    assert 0 < solved.hinge_edge_least < 0.125
    assert solved.hinge_edge_least == pytest.approx(_corner_sampled(), abs=1e-9)


def _corner_sampled():
    """Least distance of that corner over the swing, by dense sampling in plain numbers."""
    least = math.inf
    for step in range(200_001):
        theta = math.pi * step / 200_000
        x = 0.0625 + 0.0625 * math.cos(theta) + 0.5 * math.sin(theta)
        y = 0.375 + 0.0625 * math.sin(theta) - 0.5 * math.cos(theta)
        to_arris = x if y <= 0 else math.hypot(x, y)
        gap = to_arris if x >= 0 else y
        least = min(least, gap, math.hypot(max(x + 0.25, 0), max(y - 0.25, 0)))
    return least


@given(st.floats(3.5, 8), st.floats(0, 0.2), st.floats(0, 0.1))
def test_more_bevel_never_comes_nearer(W, beta, more):
    assert latch(case_a(W, beta=beta + more)) >= latch(case_a(W, beta=beta)) - 1e-12


def test_hinge_edge_over_part_of_the_swing():
    h = case_a(4)
    assert hinge_edge_passage(h, locate_pin(h), (), 0.0)[0] == pytest.approx(0.125, abs=1e-12)
