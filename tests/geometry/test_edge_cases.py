"""The cases at the very edge, each by its name and each with one answer."""

import math
from dataclasses import replace

import pytest

from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.pin import TOLERANCE, locate_pin
from configurator.geometry.shapes import Hardware, Leaf, Obstruction
from configurator.geometry.solve import solve
from tests.geometry.openings import BEVEL, BOX, LEAF, RAIL, case_a

SQUARE = math.pi / 2
NO_BARRELS = replace(LEAF, barrels=())


def said(contact):
    return (contact.angle, contact.kind, contact.part, contact.at_rest)


# --- grazing: as deep as the tolerance is clear, deeper is not


@pytest.mark.parametrize(("deeper", "met"), [(-1e-6, False), (0.0, False), (3e-9, True), (1e-6, True)])
def test_a_corner_grazing_what_stands_straight_out(deeper, met):
    # Farthest out comes the stop-side corner, hypot(35-13/16, 2-1/4) past the pin 7/8 off the wall.
    reach = math.hypot(35.8125, 2.25)
    across = Obstruction(kind="other", start=-6, length=8, offset=reach + 0.875 - deeper, projection=2)
    solved = solve(case_a(4), LEAF, obstructions=(across,))
    assert (solved.bare is not None) is met
    square = SQUARE + math.atan2(2.25, 35.8125)
    angle = solved.gap.angle if solved.bare is None else solved.greatest_angle_bare
    assert angle == pytest.approx(square, abs=1e-3)
    assert solved.gap.distance == pytest.approx(max(-deeper, 0.0), abs=TOLERANCE)


@pytest.mark.parametrize(("wall", "met"), [(-0.875 + 1e-6, False), (-0.875, False), (-0.875 - 1e-6, True)])
def test_the_open_leaf_grazing_the_wall(wall, met):
    # Open flat the face stands 2o - i = 7/8 off the frame face.
    assert (solve(case_a(4, p=wall), LEAF).bare is not None) is met


def test_a_graze_is_a_least_gap_of_nothing():
    rail = replace(RAIL, projection=1.375)  # the face stands 2o - i + p = 1-3/8 off the wall
    solved = solve(case_a(4), LEAF, obstructions=(rail,))
    assert solved.bare is None
    assert solved.gap.distance == pytest.approx(0.0, abs=TOLERANCE)


# --- touching at rest: a stop only if opening closes it further


def test_touching_at_rest_what_the_leaf_turns_away_from():
    # k 0: the leaf rests on the frame stop.
    assert solve(case_a(4, k=0, beta=BEVEL), LEAF).greatest_angle == math.pi


def test_touching_at_rest_what_the_leaf_turns_into():
    # With no inset the leaf's face lies in the frame's, 1/2 off the wall; a block begins right on it.
    flush = case_a(4, R=1.8125)
    touching = Obstruction(kind="other", start=-22, length=2, offset=0.5, projection=4)
    assert said(solve(flush, LEAF, obstructions=(touching,)).bare) == (0.0, "other", "leaf", False)
    raised = replace(touching, offset=0.5 + 1e-6)
    angle = solve(flush, LEAF, obstructions=(raised,)).greatest_angle_bare
    assert 0.0 < angle < 1e-6


# --- overlap at rest: angle 0, and what overlaps is named


def test_overlap_at_rest_of_the_leaf():
    # A column 3 in across, its outermost point 1/4 off the wall: it fills to 1/4 behind the frame's face.
    column = Obstruction(kind="column", start=-20, diameter=3, projection=0.5 - 0.125 + 1e-6)
    assert said(solve(case_a(4), LEAF, obstructions=(column,)).bare) == (0.0, "column", "leaf", True)


def test_overlap_at_rest_of_hardware_leaves_the_bare_leaf_its_swing():
    shelf = Obstruction(
        kind="other", side="latch", start=-4, length=2, offset=2, projection=4, bottom=37, top=39
    )
    solved = solve(case_a(4), replace(LEAF, bottom=40), (BOX,), (shelf,))
    assert solved.bare is None
    assert said(solved.with_hardware) == (0.0, "other", "lever", True)
    assert (solved.rest_angle, solved.clear_width_at_90) == (0.0, None)
    assert least_gaps(solved).with_hardware.distance == 0.0


@pytest.mark.parametrize(("deeper", "overlaps"), [(TOLERANCE / 2, False), (4 * TOLERANCE, True)])
def test_overlap_at_rest_no_deeper_than_the_tolerance_is_touching(deeper, overlaps):
    block = Obstruction(kind="other", start=-22, length=2, offset=0.5 - deeper, projection=4)
    contact = solve(case_a(4, R=1.8125), LEAF, obstructions=(block,)).bare
    assert said(contact) == (0.0, "other", "leaf", overlaps)


# --- the pin on an obstruction


def test_the_pin_inside_an_obstruction_at_a_barrels_height():
    post = Obstruction(kind="other", start=-2.5, length=2, offset=0.5, projection=2)
    assert said(solve(case_a(4), LEAF, obstructions=(post,)).bare) == (0.0, "other", "barrel", True)
    assert solve(case_a(4), LEAF, obstructions=(post,)).barrel_free_by < 0


def test_the_pin_on_a_corner_of_an_obstruction_between_the_barrels():
    # The corner at the pin (1/16, 3/8) stays where it is; the leaf's face, 1/2 below, comes to the post's
    # outer side x = 1/16 when what is over the pin by less than 90 has turned there.
    post = Obstruction(kind="other", start=-2.0625, length=3, offset=0.875, projection=2, bottom=20, top=30)
    contact = solve(case_a(4), LEAF, obstructions=(post,)).bare
    assert (contact.kind, contact.part) == ("other", "leaf")
    # Beyond x_p the face turned by 90 stands 1/2 to the right of the pin; the post's top left of it, 2 up,
    # is met where the face's line, 1/2 off the pin, comes to the corner (1/16, 2-3/8): 90 + asin(1/2 / 2).
    assert contact.angle == pytest.approx(SQUARE + math.asin(0.5 / 2), abs=1e-12)


def test_an_obstruction_around_the_pin_at_no_barrels_height():
    # A 1/4 in post around the pin: the leaf's near corner turns at hypot(1/16, 1/2) about it.
    post = Obstruction(kind="column", start=-2.1875, diameter=0.25, offset=0.75, bottom=20, top=30)
    solved = solve(case_a(4), LEAF, obstructions=(post,))
    assert solved.bare is None
    assert solved.gap.distance == pytest.approx(math.hypot(0.0625, 0.5) - 0.125, abs=1e-12)


# --- zero gaps


@pytest.mark.parametrize("zero", [{"g_h": 0}, {"k": 0}, {"g_h": 0, "k": 0}])
def test_zero_gaps_at_hinge_and_stop_open(zero):
    assert solve(case_a(4.5, beta=BEVEL, **zero), LEAF).greatest_angle == math.pi


def test_a_zero_latch_gap_binds_at_once_and_has_no_latch_edge():
    solved = solve(case_a(4.5, g_l=0), LEAF)
    assert said(solved.bare) == (0.0, "latch jamb", "leaf", False)
    assert solved.latch_edge_least == 0.0


def test_a_zero_latch_gap_with_the_pin_in_the_plane_of_the_face_opens():
    # With o = 0 the pull-side corner moves straight out at first; the relieved edge stays behind it.
    level = case_a(3, g_l=0, beta=0.2)
    assert locate_pin(level).o == 0.0
    assert solve(level, NO_BARRELS).greatest_angle_bare > SQUARE


# --- swings that end exactly where something else does


def test_a_swing_that_ends_exactly_at_90():
    post = Obstruction(kind="other", start=-3.5625, length=1, offset=20, projection=5)
    solved = solve(case_a(6), LEAF, obstructions=(post,))
    assert solved.greatest_angle == SQUARE
    assert solved.clear_width_at_90 == 36 - 0.625 - (0.0625 + 1.5 + 1.75)
    assert solved.clear_width_at_90 == solved.clear_width_at_greatest


@pytest.mark.parametrize(("nearer", "reached"), [(1e-6, False), (-1e-6, True)])
def test_a_swing_that_ends_a_hair_beside_90(nearer, reached):
    # The post's side stands at x = 1-9/16, where the face is at 90; nearer, it is met before.
    post = Obstruction(kind="other", start=-3.5625 - nearer, length=1, offset=20, projection=5)
    solved = solve(case_a(6), LEAF, obstructions=(post,))
    assert (solved.greatest_angle > SQUARE) is reached
    assert (solved.clear_width_at_90 is not None) is reached


@pytest.mark.parametrize(
    ("projection", "reached"), [(1.375 - 1e-6, True), (1.375, True), (1.375 + 1e-6, False)]
)
def test_a_swing_that_ends_exactly_at_180(projection, reached):
    solved = solve(case_a(4), LEAF, obstructions=(replace(RAIL, projection=projection),))
    assert (solved.greatest_angle == math.pi) is reached
    assert (solved.bare is None) is reached


@pytest.mark.parametrize("away", [-1e-9, 0.0, 1e-9])
def test_a_stop_exactly_at_the_contact_angle(away):
    free = solve(case_a(4), LEAF, obstructions=(RAIL,))
    held = solve(case_a(4), LEAF, obstructions=(RAIL,), stop_angle=free.greatest_angle + away)
    assert held.greatest_angle == free.greatest_angle
    assert held.rest_angle == free.greatest_angle + min(away, 0.0)
    assert held.gap.distance == pytest.approx(0.0, abs=1e-7)
    assert held.encroachment_at_rest == pytest.approx(free.encroachment_at_rest, abs=1e-6)


# --- heights that only meet


def test_hardware_ending_where_a_rail_begins_passes_it():
    lever = Hardware(kind="lever", projection=2.5, from_latch_edge=2.75, width=4, height=30, vertical=4)
    leaf = Leaf(bottom=50, top=80)
    for vertical, kind in ((4.0, "wall"), (4.0 + 4 * TOLERANCE, "chair rail")):
        fitted = (replace(lever, vertical=vertical),)
        assert solve(case_a(4), leaf, fitted, (RAIL,)).with_hardware.kind == kind
