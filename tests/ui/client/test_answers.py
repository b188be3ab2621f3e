import pytest

from configurator.model import Opening
from configurator.study import study
from configurator.ui.client.answers import (
    HANDLES,
    NO_HANDLE,
    THINGS,
    WALLS,
    handle_of,
    places_of,
    wall_changes,
    wall_of,
    with_handle,
    with_nothing,
    with_thing,
)
from configurator.ui.form.presets import usual_casing
from configurator.ui.state import edits
from tests.openings import plain_opening

THING = {thing.name: thing for thing in THINGS}
WALL = {wall.name: wall for wall in WALLS}
RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}


def taken(opening, wall):
    return edits.edited(opening, wall_changes(opening, WALL[wall]))


def test_a_wall_is_known_by_its_frame():
    assert wall_of(plain_opening()) is WALL["Plasterboard"]
    assert wall_of(plain_opening(frame={"kind": "welded steel, wrapped"})) is WALL["Plasterboard"]
    assert wall_of(plain_opening(frame={"kind": "aluminum storefront"})) is WALL["Glass in aluminum"]


@pytest.mark.parametrize("first", WALL)
@pytest.mark.parametrize("then", WALL)
def test_any_wall_can_follow_any_other_and_be_studied(first, then):
    opening = taken(taken(plain_opening(), first), then)
    assert wall_of(opening) is WALL[then]
    assert study(opening).candidates


def test_block_stands_flush_and_nothing_is_left_of_the_wall_before():
    before = plain_opening(wall={"thickness": 5, "frame_proud": 0.5}, frame={"jamb_depth": 6})
    after = taken(before, "Block or brick")
    assert after.wall.frame_proud == 0
    assert after.wall.thickness is None
    assert after.frame.jamb_depth is None


def test_wood_trim_comes_with_a_wood_frame_and_goes_with_it():
    house = taken(plain_opening(obstructions=[RAIL]), "House, wood trim")
    assert [one.kind for one in house.obstructions] == ["casing", "chair rail"]
    assert [one.kind for one in taken(house, "Plasterboard").obstructions] == ["chair rail"]


def test_casing_that_somebody_measured_stays():
    measured = plain_opening(obstructions=[{**usual_casing(), "projection": 0.75}])
    house = taken(measured, "House, wood trim")
    assert [one.projection for one in house.obstructions] == [0.75]
    assert taken(house, "Plasterboard").obstructions == measured.obstructions


def test_a_thing_is_put_there_once_and_taken_away():
    bare = plain_opening()
    with_rail = edits.edited(bare, {"obstructions": with_thing(bare, THING["Chair rail"], True)})
    assert places_of(with_rail, THING["Chair rail"]) == (0,)
    assert with_thing(with_rail, THING["Chair rail"], True) == [
        {"kind": "chair rail", "bottom": 32, "top": 36}
    ]
    assert with_thing(with_rail, THING["Chair rail"], False) == []


def test_what_stands_on_the_latch_side_and_casing_are_not_asked_about():
    other = [usual_casing(), {**RAIL, "side": "latch"}, RAIL]
    opening = plain_opening(obstructions=other)
    assert with_nothing(opening) == other[:2]


def test_a_thing_begins_where_the_casing_ends():
    opening = plain_opening(obstructions=[usual_casing()])
    assert with_thing(opening, THING["Chair rail"], True)[1]["start"] == 1.75
    assert "start" not in with_thing(opening, THING["Room corner"], True)[1]


@pytest.mark.parametrize("thing", THINGS, ids=lambda one: one.name)
def test_every_thing_makes_an_opening_that_can_be_studied(thing):
    bare = plain_opening()
    opening = edits.edited(bare, {"obstructions": with_thing(bare, thing, True)})
    assert isinstance(opening, Opening)
    assert study(opening).candidates
    assert all(getattr(opening.obstructions[0], key) is not None for key in thing.measures)
    assumed = study(opening).filled.assumed
    assert all(f"obstructions.0.{key}" in assumed for key in thing.measures)


def test_a_handle_takes_the_place_of_another_and_leaves_what_else_a_door_carries():
    closer = {"kind": "closer", "face": "push", "projection": 2.5, "from_latch_edge": 28, "width": 10}
    closer |= {"height": 81, "vertical": 3}
    opening = plain_opening(hardware=[closer, dict(HANDLES["Lever"])])
    assert handle_of(opening) == "Lever"
    knob = edits.edited(opening, {"hardware": with_handle(opening, "Knob")})
    assert handle_of(knob) == "Knob"
    assert [one.kind for one in knob.hardware] == ["knob", "closer"]
    assert with_handle(knob, NO_HANDLE) == [closer]


def test_a_door_without_hardware_has_no_handle_drawn():
    assert handle_of(plain_opening()) == NO_HANDLE
