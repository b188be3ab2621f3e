"""What is filled in where nobody said, by frame kind and door."""

from dataclasses import replace
from math import ceil

import pytest

from configurator.model import Opening
from configurator.model.paths import replaced, words_of
from configurator.rules.filling import filler as filling
from configurator.rules.filling.usual import NotGivenError, fill, usual_layers
from configurator.tables import FrameSizeRow, frame_usual

BUTTED = {"kind": "welded steel, butted"}


def opening(**groups) -> Opening:
    return Opening.model_validate({"mark": "1", "size": {"width": 36, "height": 84}, **groups})


@pytest.mark.parametrize(
    ("kind", "thickness", "rabbet", "face", "stop", "depth", "returns", "proud"),
    [
        ("knocked-down drywall", 1.75, 1.9375, 2, 0.625, 5.875, 0.5, 0.5),
        ("welded steel, wrapped", 1.75, 1.9375, 2, 0.625, 5.75, 0.4375, 0.4375),
        ("wood with casing", 1.375, 1.4375, 0.75, 0.4375, 4.5625, 0, 0),
    ],
)
def test_each_frame_kind_has_its_own_usual_values(kind, thickness, rabbet, face, stop, depth, returns, proud):
    got = fill(opening(frame={"kind": kind}))
    assert (got.thickness, got.rabbet, got.frame_face) == (thickness, rabbet, face)
    assert (got.stop_height, got.jamb_depth, got.return_depth) == (stop, depth, returns)
    assert got.wall_thickness == depth - 2 * returns
    assert got.frame_proud == pytest.approx(proud, abs=1e-12)
    assert {"door.thickness", "frame.rabbet", "frame.face", "wall.frame_proud"} <= set(got.assumed)
    assert all(one.because and one.source and one.mark_of_source for one in got.assumed.values())


def test_the_usual_rabbet_follows_the_door():
    assert fill(opening(door={"thickness": 1.375})).rabbet == 1.5625


def test_what_was_given_is_not_assumed():
    got = fill(opening(frame={"rabbet": 2}, wall={"frame_proud": 0.25}))
    assert (got.rabbet, got.frame_proud) == (2, 0.25)
    assert not {"frame.rabbet", "wall.frame_proud"} & set(got.assumed)
    assert fill(opening(frame={"stop_height": 0})).stop_height == 0


def test_a_butted_frame_must_be_given_where_it_stands():
    given = opening(frame=BUTTED, wall={"frame_proud": 0})
    assert fill(given).frame_proud == 0
    unsaid = given.model_copy(update={"wall": given.wall.model_copy(update={"frame_proud": None})})
    with pytest.raises(NotGivenError, match="no usual place") as caught:
        fill(unsaid)
    assert caught.value.field == "wall.frame_proud"


@pytest.mark.parametrize(
    ("jamb", "wall"),
    [
        (5.75, 7.625),
        (5.625, 5.625),
        (4.75, 5.625),
        (7.625, 7.625),
        (7.64, 9.625),
        (11.625, 11.625),
        (12, 11),
    ],
)
def test_the_masonry_about_a_butted_frame_is_a_block_that_exists(jamb, wall):
    """Blocks are 3-5/8, 5-5/8 and so on to 11-5/8 thick, from memory; past them the throat is taken."""
    bare = opening(frame=BUTTED | {"jamb_depth": jamb}, wall={"frame_proud": 0, "thickness": None})
    got = fill(bare)
    assert got.wall_thickness == wall
    assert got.assumed["wall.thickness"].mark_of_source == ("from memory" if jamb < 12 else "derived")
    assert fill(opening(frame=BUTTED, wall={"frame_proud": 0, "thickness": 9.625})).wall_thickness == 9.625


@pytest.mark.parametrize(("thickness", "backset"), [(2.25, 0.25), (2.250001, 0.375), (1.75, 0.25)])
def test_the_backset_grows_above_2_1_4(thickness, backset):
    assert fill(opening(door={"thickness": thickness})).door_backset == backset


def test_a_frame_backset_alone_gives_the_doors():
    got = fill(opening(frame={"hinge_backset": 0.375}))
    assert got.door_backset == 0.3125
    assert "door.hinge_backset" in got.assumed


def test_layers_alone_give_the_wall():
    layers = [{"name": "tile", "thickness": 0.5}, {"name": "block", "thickness": 5.625}]
    got = fill(opening(wall={"layers": layers}))
    assert got.wall_thickness == 6.125
    assert got.layers == (("tile", 0.5), ("block", 5.625))


def test_gaps_that_do_not_matter_are_not_shown_as_assumed():
    assert not {"door.meeting_gap", "door.split_gap"} & set(fill(opening()).assumed)
    assert "door.meeting_gap" in fill(opening(leaves="pair")).assumed
    assert "door.split_gap" in fill(opening(leaves="dutch")).assumed


@pytest.mark.parametrize("thickness", [0.5, 2.25, 2.26, 4.875, 12])
@pytest.mark.parametrize("kind", ["knocked-down drywall", "wood with casing", "welded steel, butted"])
def test_usual_layers_add_up(kind, thickness):
    layers = usual_layers(kind, thickness)
    assert sum(size for _, size in layers) == pytest.approx(thickness, abs=1e-12)
    assert all(size > 0 for _, size in layers)


def test_a_part_without_a_usual_value_must_be_given(monkeypatch):
    row = FrameSizeRow("from memory", "from memory", "knocked-down drywall", "face", None, False)
    monkeypatch.setattr(filling, "frame_usual", lambda kind: {**frame_usual(kind), "face": row})
    with pytest.raises(NotGivenError, match=r"frame\.face has no usual value"):
        fill(Opening(mark="1", size={"width": 36, "height": 84}))


def test_from_which_sides_it_locks_is_assumed_only_of_a_door_that_locks():
    assert "use.lock_both_sides" in fill(opening(use={"locked": True})).assumed
    assert "use.lock_both_sides" not in fill(opening(use={"locked": False})).assumed
    assert "use.lock_both_sides" not in fill(opening(use={"lock_both_sides": True})).assumed


@pytest.mark.parametrize("kind", words_of("frame.kind"))
@pytest.mark.parametrize("leaves", words_of("leaves"))
def test_giving_what_was_assumed_changes_nothing(kind, leaves):
    """What is noted at a path is what that very field would have to hold."""
    size = {"width": 72 if leaves == "pair" else 36, "height": 84}
    proud = {"frame_proud": 0} if "butted" in kind else {}
    given = opening(frame={"kind": kind}, leaves=leaves, size=size, wall=proud)
    before = fill(given)
    for path, one in before.assumed.items():
        if path != "wall.layers":  # told in words
            after = fill(replaced(given, path, one.value))
            assert path not in after.assumed
            assert replace(after, opening=given, assumed=before.assumed) == before


@pytest.mark.parametrize(
    ("minutes", "said", "rated"),
    [(None, None, False), (None, True, True), (20, None, True), (0, None, False), (90, False, True),
     (0, True, True)],
)  # fmt: skip
def test_minutes_make_an_opening_fire_rated(minutes, said, rated):
    filled = fill(opening(fire_minutes=minutes, use={"fire_rated": said}))
    assert filled.use.fire_rated is rated
    assert ("use.fire_rated" in filled.assumed) == (minutes is None and said is None)


def test_an_unknown_weight_is_that_of_the_heaviest_leaf():
    """The heaviest construction short of lead, 8-1/2 lb a square foot, on what the gaps leave."""

    def weight(**changes):
        return fill(opening(**changes)).assumed["door.weight"].value

    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}}
    assert weight() == ceil(8.5 * 35.75 * 83.125 / 144) == 176
    assert weight(**pair) == ceil(8.5 * 35.8125 * 83.125 / 144) == 176
    assert weight(**pair, active_width=48) == ceil(8.5 * 48 * 83.125 / 144) == 236
    assert weight(leaves="dutch") == ceil(8.5 * 35.75 * (83.875 - 42.0625) / 144) == 89
