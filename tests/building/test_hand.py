"""Which way a door opens: by its operation and placement, held against its own shape."""

import ifcopenshell.api.context
import ifcopenshell.api.geometry
import pytest

from tests.building.author import Author, turned
from tests.building.conftest import ANSWERS, LAYERS, compared, openings

LEFT, RIGHT = "SINGLE_SWING_LEFT", "SINGLE_SWING_RIGHT"


def door(operation, *, turn=0, **shape):
    """A model with one door in a wall along x; turned by 180 it opens to the other side of the wall."""
    author = Author("IFC4", "MILLIMETRE")
    wall = author.wall(turned(0, 0), 300, LAYERS)
    place = turned(136, 4.75, 0, 180) if turn else turned(100, 0)
    return author, author.door(wall, place, 36, 84, operation, tag="112A", **shape)


@pytest.mark.parametrize(
    ("operation", "outside", "hand"),
    [(LEFT, "push", "LH"), (LEFT, "pull", "RHR"), (RIGHT, "push", "RH"), (RIGHT, "pull", "LHR")],
)
@pytest.mark.parametrize("turn", [0, 180])
def test_the_operation_says_the_hand_however_the_door_is_turned(operation, outside, hand, turn, read):
    """Left: hinges on the left in the direction of positive y, to which it opens: LH or RHR from outside."""
    author, _ = door(operation, turn=turn, frame=(-0.25, 5.25), leaf=(3.5, 5.25))
    assert openings(read(author), {**ANSWERS, "outside": outside})["112A"].hand == hand


def test_turned_about_a_door_has_the_wall_the_other_way_round(read):
    plain, turned_about = (
        openings(read(door(LEFT, turn=turn, frame=(-0.25, 5.0), leaf=(3.25, 5.0))[0]))["112A"]
        for turn in (0, 180)
    )
    assert [layer.name for layer in plain.wall.layers] == ["tile", "stud", "gypsum"]
    assert [layer.name for layer in turned_about.wall.layers] == ["gypsum", "stud", "tile"]
    assert plain.wall.frame_proud == turned_about.wall.frame_proud == 0.25


SWINGS = [  # the swing drawn, and where that leaves the hand with the outside on the push side
    ((-1, 1), "LH"), ((1, 1), "RH"), ((-1, -1), "RH"), ((1, -1), "LH"),
]  # fmt: skip


@pytest.mark.parametrize(("swing", "hand"), SWINGS)
def test_a_drawn_swing_that_contradicts_is_asked_about(swing, hand, read):
    author, _ = door(LEFT, swing=swing)
    model = read(author)
    found = compared(model)
    if swing == (-1, 1):
        assert not found.bad
        assert found.good[0].opening.hand == hand
        return
    assert found.asked("hand of model") == 1
    assert "its drawn swing" in str(found.faults()[0])
    assert openings(model, {**ANSWERS, "hand of model": "shape"})["112A"].hand == hand
    assert openings(model, {**ANSWERS, "hand of model": "operation"})["112A"].hand == "LH"
    left_open = openings(model, {**ANSWERS, "hand of model": "open"})["112A"]
    assert left_open.hand is None
    assert left_open.obstructions == ()


def test_a_leaf_at_the_wrong_face_and_a_handle_at_the_wrong_end_are_seen(read):
    stale, _ = door(LEFT, frame=(-0.25, 5.25), leaf=(-0.25, 1.5))
    assert "where its leaf lies in the frame" in str(compared(read(stale)).faults()[0])
    flipped, _ = door(LEFT, frame=(-0.25, 5.25), leaf=(3.5, 5.25), handle=4)
    assert "its handle" in str(compared(read(flipped)).faults()[0])
    right, _ = door(LEFT, frame=(-0.25, 5.25), leaf=(3.5, 5.25), handle=32)
    assert not compared(read(right)).bad


def test_a_door_without_an_operation_is_what_its_shape_shows_or_stays_open(read):
    drawn, _ = door("NOTDEFINED", swing=(1, 1))
    assert openings(read(drawn))["112A"].hand == "RH"
    silent, _ = door("NOTDEFINED", body=False)
    found = compared(read(silent))
    assert found.good[0].opening.hand is None
    assert any("does not say which way the door opens" in told for told in found.told)


@pytest.mark.parametrize("operation", [LEFT, RIGHT])
@pytest.mark.parametrize("drawn", ["Model", "Plan"])
def test_the_library_s_own_doors_agree_with_their_operation(operation, drawn, read):
    """Its authoring makes solids with handles, and plans with a swing: both say what the operation says."""
    author, made = door(operation, body=False)
    file = author.file
    contexts = {one.ContextType: one for one in file.by_type("IfcGeometricRepresentationContext", False)}
    plan = ifcopenshell.api.context.add_context(file, "Plan", "Body", "PLAN_VIEW", parent=contexts["Plan"])
    shape = ifcopenshell.api.geometry.add_door_representation(
        file,
        context=author.body if drawn == "Model" else plan,
        overall_width=914.4,
        overall_height=2133.6,
        operation_type=operation,
    )
    author._represent(made, shape)
    (one,) = read(author).doors
    assert (one.shape.hinges, one.shape.opens) == one.sides


def test_a_mirrored_shape_is_refused_in_words_and_can_be_typed(read):
    author, made = door(LEFT)
    file = author.file
    body = made.Representation.Representations[0]
    point = file.createIfcCartesianPoint((0.0, 0.0, 0.0))
    source = file.createIfcRepresentationMap(file.createIfcAxis2Placement3D(point), body)
    axes = [file.createIfcDirection(each) for each in ((-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))]
    target = file.createIfcCartesianTransformationOperator3D(axes[0], axes[1], point, 1.0, axes[2])
    mapped = file.createIfcMappedItem(source, target)
    shown = file.createIfcShapeRepresentation(author.body, "Body", "MappedRepresentation", [mapped])
    made.Representation.Representations = [shown]
    assert "mirror image of its type" in str(compared(read(author)).faults()[0])


def test_a_door_that_lies_down_is_refused_in_words(read):
    author, made = door(LEFT)
    made.ObjectPlacement.RelativePlacement.Axis = author.file.createIfcDirection((0.0, 0.0, -1.0))
    made.ObjectPlacement.RelativePlacement.RefDirection = author.file.createIfcDirection((1.0, 0.0, 0.0))
    assert "it does not stand upright" in str(compared(read(author)).faults()[0])


def test_the_corridor_and_the_open_air_are_outside(read):
    """Without an answer: the corridor lies on the push side, then the pull side has no room."""
    inside, _ = door(LEFT)
    inside.thing("IfcSpace", "100", [inside.box(0, 300, -80, 0, 0, 100)], LongName="Corridor")
    inside.thing("IfcSpace", "101", [inside.box(0, 300, 4.75, 90, 0, 100)], LongName="Office")
    found = openings(read(inside), {"overall size": "opening"})["112A"]
    assert (found.hand, found.location) == ("LH", "100 Corridor to 101 Office")
    outer, _ = door(LEFT, psets={"Pset_DoorCommon": {"IsExternal": True}})
    outer.thing("IfcSpace", "100", [outer.box(0, 300, -80, 0, 0, 100)], LongName="Hall")
    assert openings(read(outer), {"overall size": "opening"})["112A"].hand == "RHR"
