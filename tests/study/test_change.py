"""What a change of frame or wall did, in words; figures of the demo job's openings, worked by hand."""

import pytest

from configurator.model import Opening
from configurator.study.change import what_changed
from configurator.study.run import study
from configurator.ui.state.edits import edited
from configurator.units import Display
from tests.drawing.cases import demo

BOARD = {"name": "gypsum board", "thickness": 0.625}
STUD = {"name": "stud space", "thickness": 3.625}
TILE = {"name": "tile", "thickness": 0.375}
WALL = [BOARD, STUD, BOARD]


def with_wall(opening: Opening, layers, **changes) -> Opening:
    total = sum(layer["thickness"] for layer in layers)
    return edited(opening, {"wall.layers": layers, "wall.thickness": total, **changes})


def changes(before: Opening, after: Opening, **kwargs) -> tuple[str, ...]:
    return what_changed(study(before), study(after), **kwargs)


@pytest.fixture(scope="module")
def plain() -> Opening:
    """101A: nothing on the wall, jamb 5-7/8 given, wall 4-7/8; its frame is centred and so 1/2 proud."""
    return with_wall(demo("101A").opening, WALL)


@pytest.fixture(scope="module")
def railed() -> Opening:
    """112A: a chair rail that 4 in meets at 171.8 degrees and 4-1/2 passes."""
    return with_wall(demo("112A").opening, WALL)


def test_tile_on_the_pull_side_of_a_centred_frame(plain):
    """The wall grows by 3/8, half of it to the pull side: 2 o - i + p goes from 7/8 + 1/2 to 7/8 + 5/16."""
    told = changes(plain, with_wall(plain, [TILE, *WALL]))
    assert told[:3] == (
        "Tile 3/8 in added on the pull side.",
        "The wall is 5-1/4 in (was 4-7/8 in).",
        "On the pull side the wall face moves 3/16 in nearer to the frame face, "
        "for the frame stands centred in the wall.",
    )
    assert told[3].startswith("4 in hinge: with its hardware to 177.")
    assert "room to the wall at 180° 1-3/16 in (was 1-3/8 in)" in told[3]
    assert "clear width" not in "".join(told)


def test_half_an_inch_of_tile_on_both_faces_stops_the_wider_hinge_too(railed):
    """The wall is 5-7/8 and the frame flush: 4-1/2 stops at 171.842, which no width of the two passes."""
    tile = {**TILE, "thickness": 0.5}
    told = changes(railed, with_wall(railed, [tile, *WALL, tile]))
    assert told[0] == "The wall is 5-7/8 in (was 4-7/8 in)."
    assert "4-1/2 in hinge: opens to 171.8° (was 180°)" in " ".join(told)
    assert told[-1] == "The hinge now chosen is 5 in wide (was 4-1/2 in)."


def test_a_frame_whose_place_was_given_keeps_its_swing(plain):
    given = edited(plain, {"wall.frame_proud": 0.5})
    assert changes(given, with_wall(given, [TILE, *WALL])) == (
        "Tile 3/8 in added on the pull side.",
        "The wall is 5-1/4 in (was 4-7/8 in).",
        "On the pull side the wall face stays beside the frame where it was: the frame's place was given.",
        "The swing is as it was.",
    )


def test_a_jamb_that_follows_the_wall_keeps_its_swing(plain):
    free = edited(plain, {"frame.jamb_depth": None})
    told = changes(free, with_wall(free, [TILE, *WALL]))
    assert told[2:] == (
        "The jamb is 6-1/4 in deep (was 5-7/8 in), following the wall.",
        "On the pull side the wall face stays beside the frame where it was: the jamb is deeper by as much.",
        "The swing is as it was.",
    )


def test_a_wall_that_follows_the_frame():
    """Without a wall, a jamb 1 deeper has a throat 1 wider; both faces stay where they were."""
    bare = Opening.model_validate({"mark": "1", "size": {"width": 36, "height": 84}, "compare": [4]})
    told = changes(bare, edited(bare, {"frame.jamb_depth": 6.875}))
    assert "The wall is 5-7/8 in (was 4-7/8 in), following the frame." in told
    assert told[-1] == "The swing is as it was."


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ([TILE, *WALL], WALL, "Tile 3/8 in taken away on the pull side."),
        (WALL, [*WALL, TILE], "Tile 3/8 in added on the far side."),
        (WALL, [BOARD, TILE, STUD, BOARD], "Tile 3/8 in added inside the wall."),
        (
            WALL,
            [BOARD, {**STUD, "thickness": 6}, BOARD],
            "Stud space 6 in inside the wall (was stud space 3-5/8 in).",
        ),
        ([TILE, *WALL], [BOARD, STUD, BOARD, TILE], "The wall's layers stand in another order."),
    ],
)  # fmt: skip
def test_what_happened_to_the_layers(plain, before, after, words):
    assert changes(with_wall(plain, before), with_wall(plain, after))[0] == words


def test_another_order_moves_nothing(plain):
    told = changes(with_wall(plain, [TILE, *WALL]), with_wall(plain, [*WALL, TILE]))
    assert told == ("The wall's layers stand in another order.", "The swing is as it was.")


def test_nothing_is_said_of_what_is_no_matter_of_frame_and_wall(railed):
    assert changes(railed, railed) == ()
    assert changes(railed, edited(railed, {"obstructions": []})) == ()
    assert changes(railed, edited(railed, {"wall.frame_proud": 0.5})) == ()  # given now, but the same


def test_another_stop_takes_from_the_clear_width(plain):
    told = changes(plain, edited(plain, {"frame.stop_height": 0.75}))
    assert "clear width 32-15/16 in (was 33-1/16 in)" in told[0]


def test_each_leaf_of_a_pair_is_named(plain):
    pair = edited(plain, {"leaves": "pair", "size.width": 72, "hardware": []})
    told = " ".join(changes(pair, with_wall(pair, [TILE, *WALL])))
    assert "Active leaf, 4 in hinge: room to the wall at 180°" in told
    assert "Inactive leaf, 4 in hinge: room to the wall at 180°" in told


def test_lengths_are_written_as_they_are_on_show(plain):
    told = changes(plain, with_wall(plain, [TILE, *WALL]), display=Display(metric=True))
    assert told[0] == "Tile 9.5 mm added on the pull side."


def test_other_widths_are_compared_where_nobody_chose_them(railed):
    """A rabbet 1/2 deeper puts the door 5/8 in: the pin of 4-1/2 stands 1/8 off the frame, of 5 it is 3/8."""
    free = edited(railed, {"compare": []})
    told = changes(free, edited(free, {"frame.rabbet": 2.4375}))
    assert "The widths compared are now 5 and 6 in (were 4 and 4-1/2 in)." in told
    assert "The swing is as it was." not in told
