"""Jamb depth, stop and wall filled in together: what was given leads."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.rules.filling.frame_and_wall import depth_for, follows_wall, has_returns, loosest, throat_of
from configurator.rules.filling.usual import fill
from configurator.tables import frame_usual
from tests.rules.checks.test_frame_fit import (
    ALUMINUM,
    BUTTED,
    DRYWALL,
    STEP,
    TILED,
    WELDED,
    WOOD,
    opening,
    said,
)
from tests.sweeps import examples


@pytest.mark.parametrize(
    ("kind", "wall", "depth"),
    [
        (DRYWALL, 4.875, 5.875),  # two boards of 5/8 on a 3-5/8 stud, returns of 1/2
        (DRYWALL, 4.625, 5.625),
        (DRYWALL, 7.25, 8.25),
        (WELDED, 4.875, 5.75),  # returns of 7/16
        (WELDED, 6, 6.875),
        (WOOD, 4.5, 4.5625),  # the usual jamb, 1/16 over
        (WOOD, 4.5625, 4.5625),  # just flush
        (WOOD, 4.5625 + STEP, 4.625 + STEP),
        (WOOD, 4.5 - STEP, 4.5625 - STEP),
        (WOOD, 5.25, 5.3125),
        (BUTTED, 7.625, 5.75),  # stands in masonry of any thickness
        (ALUMINUM, 7.25, 4.5),  # a tube has its own depth
    ],
)
def test_the_jamb_depth_follows_a_wall_that_was_given(kind, wall, depth):
    got = fill(opening(kind, thickness=wall))
    assert got.jamb_depth == depth
    assert got.wall_thickness == wall
    assert got.assumed["frame.jamb_depth"].because
    assert not [one for one in said(kind, thickness=wall) if "jamb_depth" in str(one.fixes)]


def test_layers_lead_as_a_thickness_does():
    got = fill(opening(layers=TILED))
    assert (got.wall_thickness, got.jamb_depth, got.frame_proud) == (5.375, 6.375, 0.5)
    assert got.assumed["wall.thickness"].because == "the sum of the wall's layers"


def test_a_jamb_depth_that_was_given_leads_the_wall():
    got = fill(opening(frame={"jamb_depth": 8.25}))
    assert (got.wall_thickness, got.frame_proud) == (7.25, 0.5)


@pytest.mark.parametrize(
    ("kind", "frame", "width"),
    [
        (DRYWALL, {}, 2),  # 5-7/8 less two rabbets of 1-15/16
        (WELDED, {}, 1.875),
        (DRYWALL, {"jamb_depth": 4.625}, 0.75),  # just room for a second rabbet
        (DRYWALL, {"jamb_depth": 4.625 - STEP}, 4.625 - STEP - 1.9375),  # none: to the far face
        (DRYWALL, {"stop_width": 1}, 1),
        (WOOD, {}, 1.375),
        (WOOD, {"jamb_depth": 2.5}, 2.5 - 1.8125),
        (ALUMINUM, {}, 1.375),
    ],
)
def test_the_usual_stop_width(kind, frame, width):
    got = fill(opening(kind, frame=frame))
    assert got.stop_width == width
    assert ("frame.stop_width" in got.assumed) == ("stop_width" not in frame)


def test_the_metal_of_each_frame():
    metals = {kind: fill(opening(kind)).metal_thickness for kind in (DRYWALL, WELDED, BUTTED, ALUMINUM, WOOD)}
    assert metals == {DRYWALL: 0.053, WELDED: 0.053, BUTTED: 0.053, ALUMINUM: 0.125, WOOD: 0}
    assert fill(opening(frame={"metal_thickness": 0.067})).metal_thickness == 0.067
    assert "frame.metal_thickness" not in fill(opening(WOOD)).assumed


DRYWALL, WELDED, WOOD = "knocked-down drywall", "welded steel, wrapped", "wood with casing"


@pytest.mark.parametrize(
    ("kind", "usual", "returns", "wall", "depth"),
    [
        (DRYWALL, 5.875, 0.5, 4.875, 5.875),
        (DRYWALL, 5.875, 0.5, 5.375, 6.375),
        (WELDED, 5.75, 0.4375, 4.875, 5.75),
        (WOOD, 4.5625, 0, 4.5, 4.5625),
        (WOOD, 4.5625, 0, 5.5, 5.5625),
    ],
)
def test_depths_by_hand(kind, usual, returns, wall, depth):
    assert depth_for(kind, usual, returns, wall) == depth


def test_which_frames_follow_their_wall_and_which_turn_back_at_it():
    kinds = (DRYWALL, WELDED, "welded steel, butted", WOOD, "aluminum storefront")
    assert [follows_wall(kind) for kind in kinds] == [True, True, False, True, False]
    assert [has_returns(kind) for kind in kinds] == [True, True, True, False, False]


def test_a_throat_may_be_looser_than_it_is_made():
    for kind in (DRYWALL, WELDED, WOOD):
        assert loosest(kind) > frame_usual(kind)["throat_slack"].value


@examples(30)
@given(kind=st.sampled_from([DRYWALL, WELDED, WOOD]), wall=st.floats(0.25, 24))
def test_a_depth_made_for_a_wall_fits_it(kind, wall):
    returns = {DRYWALL: 0.5, WELDED: 0.4375, WOOD: 0.0}[kind]
    assert follows_wall(kind)
    room = throat_of(depth_for(kind, 5.0, returns, wall), returns) - wall
    assert -1e-9 <= room <= loosest(kind)
