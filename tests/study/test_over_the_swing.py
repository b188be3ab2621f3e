"""Edges and encroachment over the swing, against figures worked by hand and the study's own answers."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.edges import latch_edge_least
from configurator.study import study
from configurator.study.over_the_swing import over_the_swing
from tests.openings import LEVER, RAIL, plain_opening
from tests.sweeps import examples


def swings(gap=1 / 16, **changes):
    return over_the_swing(study(plain_opening(**changes)), gap)


@pytest.mark.parametrize(
    ("width", "square", "beveled"),
    [(4, 0.056345, 0.123466), (4.5, 0.043280, 0.122582), (6, 0.004128, 0.113054)],
)
def test_latch_edge_square_and_beveled(width, square, beveled):
    (one,) = swings(compare=[width], door={"latch_bevel": 1 / 16})
    assert one.latch.as_beveled.least == pytest.approx(beveled, abs=5e-7)
    assert one.latch.square.least == pytest.approx(square, abs=5e-7)
    # The stop-side corner stands in line with the pin and the arris.
    o = width / 2 - 1.5
    at_corner = math.atan2(o + 1.75, 36 - 1 / 8 - 1 / 16) - math.atan2(o - 1 / 8, 36 - 1 / 16)
    assert one.latch.square.angle == pytest.approx(math.degrees(at_corner), abs=1e-9)


def test_an_edge_that_binds_says_where():
    (one,) = swings(compare=[7])
    assert one.latch.as_beveled.least == 0
    assert one.latch.as_beveled.angle == pytest.approx(2.3842, abs=5e-5)


def test_the_bevel_needed_leaves_the_gap_and_no_more():
    (one,) = swings(gap=0.1, compare=[4])
    beta = one.latch.bevel_needed
    # hypot(far, y_p) - hypot(near - beta T, o + T) = gap, solved for beta by hand.
    arris = math.hypot(36 - 1 / 16, 0.375)
    by_hand = (36 - 1 / 8 - 1 / 16 - math.sqrt((arris - 0.1) ** 2 - 2.25**2)) / 1.75
    assert beta == pytest.approx(by_hand, abs=1e-8)
    (beveled,) = swings(gap=0.1, compare=[4], door={"latch_bevel": beta})
    assert beveled.latch.as_beveled.least == pytest.approx(0.1, abs=1e-8)


def test_no_bevel_where_square_does_and_none_where_none_does():
    (tight,) = swings(gap=0.13, compare=[4])
    (loose,) = swings(gap=0.05, compare=[4])
    assert tight.latch.bevel_needed is None
    assert loose.latch.bevel_needed == 0.0


def test_encroachment_by_hand():
    (one,) = swings(compare=[4.5])
    # Flat: 2 o - i + p + T. At most the latch's stop-side corner, straight out from the pin.
    assert one.bare.at_rest == pytest.approx(1.5 - 0.125 + 0.5 + 1.75, abs=1e-9)
    assert one.bare.rest == 180
    rho = math.hypot(36 - 1 / 8 - 1 / 16, 0.75 + 1.75)
    assert one.bare.greatest == pytest.approx(0.625 + rho + 0.5, abs=1e-9)
    assert one.bare.greatest_at == pytest.approx(90 + math.degrees(math.asin(2.5 / rho)), abs=1e-9)


def test_a_stop_ends_the_curve():
    (one,) = swings(compare=[4.5], use={"stop_angle": 90})
    assert one.bare.curve[-1] == (90, pytest.approx(36.9375, abs=1e-9))
    assert (one.bare.rest, one.bare.greatest_at) == (90, 90)


@given(
    width=st.sampled_from([4, 4.5, 5, 6, 7]),
    bevel=st.floats(0, 0.2),
    stop=st.none() | st.floats(20, 180),
    rail=st.booleans(),
)
@examples(20)
def test_the_answers_are_the_studys_own(width, bevel, stop, rail):
    changes = {"door": {"latch_bevel": bevel}, "hardware": [LEVER], "obstructions": [RAIL] if rail else []}
    one_study = study(plain_opening(compare=[width], use={"stop_angle": stop}, **changes))
    (one,), (found,) = over_the_swing(one_study, 1 / 16), one_study.candidates
    assert one.latch.as_beveled.least == pytest.approx(found.latch_edge_least, abs=1e-9)
    assert one.hinge.least == pytest.approx(found.hinge_edge_least, abs=1e-9)
    assert one.bare.greatest == pytest.approx(found.encroachment_greatest, abs=1e-9)
    assert one.bare.at_rest == pytest.approx(found.encroachment_at_rest, abs=1e-9)
    assert one.with_hardware.greatest == pytest.approx(
        found.solution.encroachment_with_hardware_greatest, abs=1e-9
    )
    assert one.with_hardware.at_rest == pytest.approx(
        found.solution.encroachment_with_hardware_at_rest, abs=1e-9
    )
    assert max(out for _, out in one.bare.curve) == pytest.approx(one.bare.greatest, abs=1e-12)


def test_a_pairs_leaf_passes_the_other_leaf():
    one_study = study(plain_opening(leaves="pair", size={"width": 72, "height": 84}))
    for one, found in zip(over_the_swing(one_study, 1 / 16), one_study.candidates, strict=True):
        plan = found.solution.scene
        assert one.latch.as_beveled.least == pytest.approx(
            latch_edge_least(plan.hanging, plan.pin, plan.other), abs=1e-12
        )
