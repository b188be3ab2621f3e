"""What a model says besides hand and size, and what stands before a door in every shape that things have."""

import math

import ifcopenshell.api.pset
import pytest

from configurator.building.reading import read_model
from tests.building.author import Author, turned
from tests.building.conftest import ANSWERS, LAYERS, compared, openings


@pytest.fixture(scope="module")
def model(terminal):
    return read_model(terminal)


def test_property_sets_rooms_and_levels(model):
    found = openings(model, {**ANSWERS, "no hinged door": "leave out", "no opening": "take"})["112A"]
    assert (found.level, found.location) == ("Level 1", "100 Corridor to 101 Ticket office")
    assert (found.fire_minutes, found.use.closer, found.use.exposure) == (90, True, "interior")
    assert found.hand == "LH"
    assert len(found.global_id) == 22
    door = next(one for one in model.doors if one.tag == "112A")
    assert door.texts == {"Fire exit": "yes"}


def test_every_door_that_cannot_be_read_is_named_with_its_reason(model):
    found = compared(model)
    reasons = {(fault.row, fault.question): fault.reason for fault in found.faults()}
    assert "sliding door" in reasons["113", "no hinged door"]
    assert reasons["114", "no opening"] == "it stands in no opening of a wall: say what becomes of it"
    left_out = compared(model, {**ANSWERS, "no hinged door": "leave out", "no opening": "leave out"})
    assert {row.mark: row.left_out for row in left_out.left_out} == {
        "113": "it is a sliding door",
        "114": "it stands in no opening of a wall",
    }


def test_a_pair_is_one_opening_of_two_leaves(model):
    pair = openings(model, {**ANSWERS, "no hinged door": "leave out", "no opening": "leave out"})["115"]
    assert (pair.leaves, pair.size.width) == ("pair", 72)


def test_the_overall_size_is_of_the_frame_when_told_so(model):
    answers = {"outside": "push", "no hinged door": "leave out", "no opening": "leave out"}
    assert compared(model, answers).asked("overall size") == 2
    frame, opening = (
        openings(model, {**answers, "overall size": each})["112A"] for each in ("frame", "opening")
    )
    assert (frame.size.width, frame.size.height) == (32, 82)
    assert (opening.size.width, opening.size.height) == (36, 84)
    # The rail ends 3 in left of the door's left end: from the frame's outer edge that is 3 in, or 1 in.
    assert [one.start for one in frame.obstructions] == [3]
    assert [one.start for one in opening.obstructions] == [1]


@pytest.mark.parametrize(
    ("operation", "words"),
    [
        ("SLIDING_TO_RIGHT", "a sliding door"),
        ("DOUBLE_DOOR_SLIDING", "a sliding door"),
        ("FOLDING_TO_LEFT", "a folding partition"),
        ("DOUBLE_DOOR_FOLDING", "a folding partition"),
        ("REVOLVING", "a revolving door"),
        ("ROLLINGUP", "an overhead or coiling door"),
        ("DOUBLE_SWING_LEFT", "a double-acting door"),
        ("DOUBLE_DOOR_DOUBLE_SWING", "a double-acting door"),
        ("DOUBLE_DOOR_SINGLE_SWING_OPPOSITE_LEFT", "a double-egress pair"),
    ],
)
def test_what_is_no_hinged_door_is_asked_about(operation, words, read):
    author = Author("IFC2X3", "foot")
    author.door(author.wall(turned(0, 0), 200, LAYERS), turned(90, 0), 36, 84, operation, tag="1A")
    faults = compared(read(author)).faults()
    assert [fault.question for fault in faults if fault.question == "no hinged door"]
    assert words in str(faults[0])


def _before(make):
    """Return what is found before a door whose pull side is at y = 4.75, its hinges at x = 0."""
    author = Author("IFC4", "inch")
    wall = author.wall(turned(-300, 0), 700, LAYERS)
    author.door(wall, turned(0, 0), 36, 84, tag="1A", frame=(0.0, 5.25), leaf=(3.5, 5.25))
    make(author)
    return author


def _found(read, make):
    return openings(read(_before(make)), {**ANSWERS, "overall size": "frame"})["1A"].obstructions


def test_things_beyond_reach_above_and_behind_are_no_obstructions(read):
    def make(author):
        author.thing("IfcFurniture", "Far", [author.box(-90, -80, 4.75, 20, 0, 30)])
        author.thing("IfcFurniture", "Over", [author.box(-30, -10, 4.75, 20, 90, 100)])
        author.thing("IfcFurniture", "Behind", [author.box(-30, -10, -20, 0, 0, 30)])
        author.thing("IfcSlab", "Floor", [author.box(-300, 300, -100, 100, -8, 0)])
        author.thing("IfcFurniture", "Opposite", [author.box(-30, 40, 120, 140, 0, 30)])

    assert _found(read, make) == ()


def test_a_table_is_its_top_and_its_legs(read):
    def make(author):
        solids = [author.box(-40, -6, 4.75, 28.75, 28, 30), author.box(-40, -38, 4.75, 6.75, 0, 28)]
        author.thing("IfcFurniture", "Desk", solids)

    top, leg = sorted(_found(read, make), key=lambda one: -(one.bottom or 0))
    assert (top.start, top.length, top.projection, top.bottom, top.top) == (6, 34, 24, 28, 30)
    assert (leg.start, leg.length, leg.projection, leg.bottom, leg.top) == (38, 2, 2, None, 28)


def test_a_slanted_wall_is_stepped_and_never_smaller_than_it_is(read):
    """A wall that leaves the host at 45 degrees: each strip reaches as far as the slant does."""

    def make(author):
        author.thing(
            "IfcWall", "Slant", [author.prism([(-6, 4.75), (-50, 48.75), (-54, 48.75), (-12, 4.75)], 0, 100)]
        )

    found = _found(read, make)
    assert len(found) > 3
    for at in (7.0, 15.0, 22.5, 30.0, 41.0):  # inches from the frame, and as far off the wall, less 6
        holding = [one for one in found if one.start <= at <= one.start + (one.length or math.inf)]
        assert max(one.projection + (one.offset or 0) for one in holding) >= at - 6 - 1e-6, at
    reach = max(found, key=lambda one: one.start)
    assert reach.projection + (reach.offset or 0) < 44 + 6


def test_a_round_column_and_a_square_one(read):
    def make(author):
        author.thing("IfcColumn", "Round", [author.cylinder(-20, 14.75, 6, 0, 120)])
        author.thing("IfcColumn", "Square", [author.box(46, 58, 10.75, 22.75, 0, 120)])

    one, square = _found(read, make)
    assert (one.kind, one.side, one.start, one.diameter) == ("column", "hinge", 14, 12)
    assert one.offset == pytest.approx(4, abs=1e-3)
    assert (square.kind, square.side, square.start) == ("other", "latch", 10)
    assert (square.length, square.offset, square.projection) == (12, 6, 12)


def test_a_thing_before_the_opening_is_told_from_the_nearer_jamb(read):
    found = _found(
        read,
        lambda author: author.thing("IfcFurniture", "Bollard", [author.box(10, 26, 34.75, 40.75, 0, 36)]),
    )
    assert {(one.side, one.start, one.length, one.offset, one.projection) for one in found} == {
        ("hinge", -18, 8, 30, 6),
        ("latch", -18, 8, 30, 6),
    }


def test_what_cannot_be_told_from_either_jamb_is_asked(read):
    author = Author("IFC4", "inch")
    author.door(author.wall(turned(-300, 0), 700, LAYERS), turned(0, 0), 60, 84, tag="1A")
    author.thing("IfcFurniture", "Bollard", [author.box(29, 31, 34.75, 40.75, 0, 36)])
    found = openings(read(author), {**ANSWERS, "overall size": "frame"})["1A"]
    assert found.obstructions == ()
    assert "Bollard" in found.questions


def test_the_swing_of_another_door_stands_before_a_door(read):
    def make(author):
        side = author.wall(turned(-10, 4.75, 0, 90), 200, [("block", 4.0)], name="Side")
        author.door(side, turned(-10, 8.75, 0, 90), 30, 84, tag="2B", frame=(0.0, 4.0),
                    leaf=(2.25, 4.0))  # fmt: skip

    names = {one.element.split(" (")[0] for one in _found(read, make)}
    assert names == {"Side"}  # it opens the other way

    def toward(author):
        side = author.wall(turned(-14, 4.75, 0, 90), 200, [("block", 4.0)], name="Side")
        author.door(side, turned(-18, 38.75, 0, -90), 30, 84, tag="2B", frame=(0.0, 4.0), leaf=(2.25, 4.0))

    answers = {**ANSWERS, "overall size": "frame"}
    found = openings(read(_before(toward)), answers)["1A"].obstructions
    assert any(one.element.startswith("swing of door 2B to 90°") for one in found)


def test_layers_that_are_not_sure_are_told_and_not_taken(read):
    author = Author("IFC4", "inch")
    wall = author.wall(turned(0, 0), 300, LAYERS, usage=False)
    author.door(wall, turned(100, 0), 36, 84, tag="1A")
    found = compared(read(author))
    assert found.good[0].opening.wall.layers is None
    assert found.good[0].opening.wall.thickness == 4.75
    assert any("from which face its wall layers run" in told for told in found.told)


def test_marks_come_from_where_they_are_marks(read):
    author = Author("IFC4", "inch")
    wall = author.wall(turned(0, 0), 600, LAYERS)
    for number, mark in enumerate(("101", "102")):
        author.door(wall, turned(100 + 200 * number, 0), 36, 84, tag=f"44781{number}", name=f"Flush:{number}",
                    psets={"Identity": {"Mark": mark}})  # fmt: skip
    assert {row.opening.mark for row in compared(read(author)).good} == {"101", "102"}


def test_two_doors_of_one_global_id_are_told(read):
    author = Author("IFC4", "inch")
    wall = author.wall(turned(0, 0), 600, LAYERS)
    doors = [
        author.door(wall, turned(100 + 200 * number, 0), 36, 84, tag=f"{number}A") for number in range(2)
    ]
    doors[1].GlobalId = doors[0].GlobalId
    found = read(author)
    assert [door.tag for door in found.doors] == ["0A"]
    assert found.doors[0].place[0] == 100
    assert found.told == ("of doors that share a global id only the first is read: 1 are not",)


def test_a_size_may_stand_in_the_quantities_alone(read):
    author = Author("IFC4", "inch")
    door = author.door(author.wall(turned(0, 0), 200, LAYERS), turned(90, 0), 36, 84, tag="1A")
    door.OverallWidth = None
    made = ifcopenshell.api.pset.add_qto(author.file, product=door, name="Qto_DoorBaseQuantities")
    ifcopenshell.api.pset.edit_qto(author.file, qto=made, properties={"Width": 36.0})
    assert openings(read(author))["1A"].size.width == 36


def test_sections_for_a_plan_of_each_storey(model):
    (plan,) = model.storeys
    assert plan.name == "Level 1"
    assert len(plan.lines) >= 4
    xs = [x for line in plan.lines for x, _ in line]
    assert (min(xs), max(xs)) == pytest.approx((0, 900))
