"""What was written into a model is read from it: every size, hand, layer and obstruction; hand-made first."""

import pytest

from configurator.building.reading import read_model
from configurator.model import Opening
from configurator.study import study
from tests.building.author import INCHES, Author, turned
from tests.building.conftest import LAYERS, openings
from tests.building.random_models import SCHEMAS, differences, random_model
from tests.sweeps import WIDE

MODELS, DOORS = (12, 42) if WIDE else (4, 4)
FRAME = {"overall size": "frame", "outside": "push"}


@pytest.mark.parametrize("schema", SCHEMAS)
@pytest.mark.parametrize("unit", [*INCHES][:: 1 if WIDE else 3])
def test_a_door_by_hand_in_every_schema_and_unit(schema, unit, read):
    """A wall turned by 30 degrees, a door in it, a rail 3 in from the frame and a wall 10 in from it."""
    author = Author(schema, unit)
    wall = author.wall(place := turned(1000, 500, 0, 30), 300, LAYERS)
    author.door(wall, place @ turned(100, 0), 36, 84, tag="112A", frame=(-0.5, 5.25), leaf=(3.5, 5.25),
                lining={"LiningDepth": 5.75, "LiningThickness": 2.0}, panel={"PanelDepth": 1.75})  # fmt: skip
    author.thing("IfcRailing", "Chair rail", [author.box(60, 97, 4.75, 6.5, 32, 36)], place)
    author.thing("IfcWall", "Return", [author.box(85, 90, 4.75, 150, 0, 100)], place)
    opening = openings(read(author))["112A"]
    assert (opening.size.width, opening.size.height) == (36, 84)
    assert opening.hand == "LH"
    assert (opening.frame.face, opening.frame.jamb_depth, opening.door.thickness) == (2, 5.75, 1.75)
    assert [(layer.name, layer.thickness) for layer in opening.wall.layers] == LAYERS[::-1]
    assert (opening.wall.thickness, opening.wall.frame_proud) == (4.75, 0.5)
    rail, back = opening.obstructions
    assert rail.model_dump(exclude_unset=True, exclude={"element"}) == {
        "kind": "chair rail", "side": "hinge", "projection": 1.75, "start": 1, "length": 37, "bottom": 32,
        "top": 36,
    }  # fmt: skip
    assert (back.kind, back.side, back.start, back.projection) == ("return wall", "hinge", 8, None)
    assert rail.element.startswith("Chair rail (")


@pytest.mark.parametrize("seed", range(MODELS))
def test_doors_at_random_are_read_as_they_were_written(seed, tmp_path):
    author, wanted = random_model(seed, DOORS)
    found = openings(read_model(author.write(tmp_path / "model.ifc")), FRAME)
    assert found.keys() == wanted.keys()
    assert [f"{mark}: {one}" for mark in wanted for one in differences(found[mark], wanted[mark])] == []


def test_the_swing_found_equals_that_of_the_same_opening_typed_in(tmp_path):
    author, wanted = random_model(3, 8)
    found = openings(read_model(author.write(tmp_path / "model.ifc")), FRAME)
    assert sum(bool(one["obstructions"]) for one in wanted.values()) > 4
    for mark, data in wanted.items():
        typed, read = study(Opening.model_validate(data)), study(found[mark])
        assert [one.hinge_width for one in read.candidates] == [one.hinge_width for one in typed.candidates]
        for one, other in zip(read.candidates, typed.candidates, strict=True):
            near = 0.05 if any(thing["kind"] == "column" for thing in data["obstructions"]) else 1e-9
            assert one.greatest_angle == pytest.approx(other.greatest_angle, abs=near), mark
            assert getattr(one.stopped_by, "kind", None) == getattr(other.stopped_by, "kind", None), mark
            assert one.clear_width_at_90 == pytest.approx(other.clear_width_at_90, abs=near), mark
