"""The opening asked the other way round, against figures worked by hand."""

import math

import pytest

from configurator.drawing.charts.width_chart import width_chart
from configurator.study import study
from configurator.study.widths.break_points import BARREL_FREE, BINDS, CLEAR_WIDTH, OPENS
from configurator.study.widths.leaf_widths import MOST, widths_of
from configurator.units import Display
from tests.openings import LEVER, RAIL, flat_opening

ACCESSIBLE = {"use": {"accessible": True}}


def widths(**changes):
    (leaf,) = widths_of(study(flat_opening(**changes)))
    return leaf


def breaks_of(leaf, what):
    return [(one.width, one.value) for one in leaf.breaks if one.what == what]


def row(leaf, width):
    return next(one for one in leaf.tried if one.width == width)


def test_least_width_past_a_rail_by_hand():
    # 2 (T - b) + c, c = 1-3/4 off the wall, less 1/2 proud, and 1/8 inset: 1-3/8 past the door's face.
    leaf = widths(obstructions=[RAIL])
    assert leaf.least == pytest.approx(2 * (1.75 - 0.25) + 1.375, abs=1e-8)
    assert leaf.next_in_stock.width == 4.5
    assert [(one.width, one.fits) for one in leaf.tried[:3]] == [(4, False), (4.5, True), (5, True)]


def test_the_barrel_rules_where_the_angle_asks_less():
    # Flat from o = i / 2: 2 (T - b) + i. The barrel is free by 1/32 from y_p = 0.58 / 2 + 1/32.
    leaf = widths()
    assert leaf.least_for_angle == pytest.approx(3.125, abs=1e-8)
    assert leaf.barrel_free_from == pytest.approx(2 * (1.5 + 0.125 + 0.29 + 1 / 32), abs=1e-8)
    assert leaf.least == leaf.barrel_free_from
    assert leaf.next_in_stock.width == 4
    assert breaks_of(leaf, BARREL_FREE) == [(pytest.approx(3.8925, abs=1e-8), 0)]


def test_the_latch_binds_from_where_its_corner_no_longer_passes_the_arris():
    # hypot(O - x_p, y_p) = hypot(O - g_l - x_p, o + T), solved for o by hand.
    far, near = 36 - 1 / 16, 36 - 1 / 8 - 1 / 16
    o = (far**2 - near**2 - (1.75**2 - 0.125**2)) / (2 * (1.75 + 0.125))
    assert breaks_of(widths(), BINDS) == [(pytest.approx(2 * (o + 1.5), abs=1e-6), 0)]
    assert not breaks_of(widths(door={"latch_bevel": 1 / 8}), BINDS)


def test_clear_width_is_kept_up_to_a_width_where_one_is_asked():
    # 33-1/16 with 4 in, and half of what the width adds is lost.
    leaf = widths(**ACCESSIBLE)
    assert breaks_of(leaf, CLEAR_WIDTH) == [(pytest.approx(4 + 2 * 1.0625, abs=1e-8), 32)]
    assert not breaks_of(widths(), CLEAR_WIDTH)
    assert not row(leaf, 7).fits


def test_where_flat_and_the_wanted_angle_are_first_reached():
    leaf = widths(obstructions=[RAIL], use={"wanted_angle": 170})
    (at_170, at_180) = breaks_of(leaf, OPENS)
    assert (at_170[1], at_180) == (170, (pytest.approx(4.375, abs=1e-8), 180))
    assert 3.83 < at_170[0] < 4
    assert leaf.least == pytest.approx(at_170[0], abs=1e-9)
    here = study(flat_opening(obstructions=[RAIL])).hanger(leaf.leaf, at_170[0])
    assert here.greatest_angle_bare == pytest.approx(170, abs=1e-5)


def test_greatest_projections_by_hand():
    # Open flat the face stands 2 o - i + p off the wall; on 7 in the square edge binds first.
    leaf = widths(obstructions=[RAIL], compare=[4])
    by_width = {one.width: one.projections[0] for one in leaf.tried}
    for width, by_hand in ((4, 1.375), (4.5, 1.875), (6, 3.375)):
        assert by_width[width] == pytest.approx(by_hand, abs=1e-8)
    assert by_width[7] is None


def test_what_no_swing_meets_may_stand_out_as_far_as_it_likes():
    far_off = {"kind": "other", "projection": 2, "start": 60}
    column = {"kind": "column", "start": 60, "diameter": 4}
    leaf = widths(obstructions=[far_off, column])
    assert row(leaf, 4).projections == (MOST, MOST)


def test_a_width_that_binds_is_never_offered():
    # 2 (T - b) + c is 6.1: 6 is too narrow, and the next in stock binds at its latch.
    leaf = widths(obstructions=[RAIL | {"projection": 3.475}])
    assert leaf.least == pytest.approx(6.1, abs=1e-8)
    assert row(leaf, 7).candidate.stopped_by_bare.kind == "latch jamb"
    assert leaf.next_in_stock is None


def test_no_width_where_all_that_are_wide_enough_bind():
    leaf = widths(obstructions=[RAIL | {"projection": 6}])
    assert leaf.least is None
    assert leaf.least_for_angle is None
    assert leaf.next_in_stock is None


def test_a_width_in_no_list_is_tried_but_not_offered():
    leaf = widths(obstructions=[RAIL], compare=[4, 4.4])
    assert row(leaf, 4.4).stock is None
    assert row(leaf, 4.4).fits
    assert leaf.next_in_stock.width == 4.5


@pytest.mark.parametrize("mounting", ["half mortise", "half surface", "full surface", "swing clear"])
def test_other_mountings_have_no_break_points(mounting):
    leaf = widths(hinge={"mounting": mounting}, obstructions=[RAIL])
    assert not leaf.width_moves_the_pin
    assert not leaf.breaks
    assert len(set(leaf.curve.bare)) == 1


def test_each_leaf_of_a_pair_and_of_a_dutch_door():
    pair = widths_of(study(flat_opening(leaves="pair", size={"width": 72, "height": 84})))
    assert [one.leaf for one in pair] == ["active", "inactive"]
    dutch = widths_of(study(flat_opening(leaves="dutch", split_height=42, obstructions=[RAIL])))
    assert {one.leaf for one in dutch} == {"upper", "lower"}
    assert all(one.least is not None for one in (*pair, *dutch))


@pytest.mark.parametrize("changes", [{}, {"obstructions": [RAIL], "hardware": [LEVER]}])
def test_every_point_of_the_curve_is_the_plans_own_answer(changes):
    one_study = study(flat_opening(**changes))
    (leaf,) = widths_of(one_study)
    curve = leaf.curve
    for place in range(0, len(curve.widths), 7):
        here = one_study.hanger(leaf.leaf, curve.widths[place])
        assert curve.bare[place] == pytest.approx(here.greatest_angle_bare, abs=1e-9)
        assert curve.with_hardware[place] == pytest.approx(here.greatest_angle, abs=1e-9)
        assert curve.clear_widths[place] == pytest.approx(here.clear_width_at_90, abs=1e-9)


def test_the_curve_has_a_point_on_either_side_of_each_corner():
    leaf = widths(obstructions=[RAIL])
    for corner in (4.375, breaks_of(leaf, BINDS)[0][0]):
        near = [width for width in leaf.curve.widths if abs(width - corner) <= 1e-8]
        assert min(near) < corner < max(near)
    angles = dict(zip(leaf.curve.widths, leaf.curve.bare, strict=True))
    binding = breaks_of(leaf, BINDS)[0][0]
    before = max(width for width in angles if width < binding - 1e-9)
    after = min(width for width in angles if width > binding + 1e-9)
    assert angles[before] == 180
    assert angles[after] < 5
    assert after - before < 1e-7


def test_the_curve_is_bounded_by_what_is_made():
    leaf = widths()
    assert leaf.curve.widths[0] == 3.5
    assert leaf.curve.widths[-1] == 8.5
    assert all(a < b for a, b in zip(leaf.curve.widths, leaf.curve.widths[1:], strict=False))
    assert all(math.isfinite(angle) for angle in leaf.curve.bare)


def test_a_barrel_beside_a_casing_is_free_only_past_it():
    # The casing's corner stands 0.1 behind the rabbet face and 2 off the frame: the barrel's disc about it.
    casing = {"kind": "casing", "start": -1.9, "length": 3, "projection": 2}
    leaf = widths(obstructions=[casing])
    y_p = 2 + math.sqrt((0.29 + 1 / 32) ** 2 - (1 / 16 + 0.1) ** 2)
    assert leaf.barrel_free_from == pytest.approx(2 * (1.5 + 0.125 + y_p), abs=1e-6)
    assert not row(leaf, 7).candidate.barrel_free_by >= 0


def test_a_barrel_that_comes_free_past_every_width_looked_at_is_no_turn_of_the_curve():
    leaf = widths(door={"thickness": 5})
    assert leaf.barrel_free_from > leaf.curve.widths[-1]
    assert not breaks_of(leaf, BARREL_FREE)
    assert all(one.width <= leaf.curve.widths[-1] for one in leaf.breaks)
    assert width_chart(leaf, Display()).marks
