"""How deep a jamb is for its wall."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.rules.throat import depth_for, follows_wall, has_returns, loosest, throat_of
from configurator.tables import frame_usual
from tests.sweeps import examples

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


@examples(60)
@given(kind=st.sampled_from([DRYWALL, WELDED, WOOD]), wall=st.floats(0.25, 24))
def test_a_depth_made_for_a_wall_fits_it(kind, wall):
    returns = {DRYWALL: 0.5, WELDED: 0.4375, WOOD: 0.0}[kind]
    assert follows_wall(kind)
    room = throat_of(depth_for(kind, 5.0, returns, wall), returns) - wall
    assert -1e-9 <= room <= loosest(kind)
