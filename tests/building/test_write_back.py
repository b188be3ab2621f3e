"""Hinges in a copy of the model, and findings as topics: in every schema, and read again by others."""

import warnings
import zipfile
from datetime import UTC, datetime
from xml.etree import ElementTree

import ifcopenshell
import ifcopenshell.util.element
import ifcopenshell.validate
import pytest

from configurator.building.topics import Topic, write_topics
from configurator.building.write_back import SET, HingeSet, write_back
from tests.building.author import Author, turned
from tests.building.conftest import LAYERS
from tests.sweeps import WIDE

HINGES = (HingeSet("Butt hinge", "4-1/2 x 4-1/2, standard weight", 3, {"Size": "4-1/2 x 4-1/2"}),)
WHEN = datetime(2026, 5, 4, 12, 0, tzinfo=UTC)


def statements(path):
    """What the library's own validator says; its rules take half a minute, so that a wide sweep has them."""
    logger = ifcopenshell.validate.json_logger()
    with warnings.catch_warnings():  # the library leaves the file of its rules open
        warnings.simplefilter("ignore", ResourceWarning)
        ifcopenshell.validate.validate(str(path), logger, express_rules=WIDE)
    return [str(one) for one in logger.statements]


def model(tmp_path, schema):
    author = Author(schema, "foot" if schema == "IFC2X3" else "MILLIMETRE")
    wall = author.wall(turned(0, 0), 600, LAYERS)
    doors = [author.door(wall, turned(100 + 200 * n, 0), 36, 84, tag=f"{n}A").GlobalId for n in range(2)]
    rail = author.thing("IfcRailing", "Chair rail", [author.box(20, 97, 4.75, 6.5, 32, 36)])
    return author.write(tmp_path / "model.ifc"), doors, rail.GlobalId


@pytest.mark.parametrize("schema", ["IFC2X3", "IFC4", "IFC4X3"])
def test_hinges_go_into_a_copy_that_the_library_finds_valid(schema, tmp_path):
    source, (one, two), _ = model(tmp_path, schema)
    before = source.read_bytes()
    copy, again = tmp_path / "copy.ifc", tmp_path / "again.ifc"
    done = write_back(source, copy, {one: HINGES, "0" * 22: HINGES}, {one: "approved"})
    assert (done.doors, done.hinges, done.missing) == (1, 3, ("0" * 22,))
    assert statements(source) == statements(copy) == []
    assert source.read_bytes() == before
    # Once more over its own copy, with other hinges: what was ours is replaced, not added to.
    write_back(copy, again, {two: HINGES, one: (HINGES[0].__class__("Butt hinge", "5 x 4-1/2", 4, {}),)}, {})
    assert statements(again) == []
    file = ifcopenshell.open(str(again))
    door = file.by_guid(one)
    assert ifcopenshell.util.element.get_psets(door)[SET]["HingeCount"] == 4
    parts = ifcopenshell.util.element.get_parts(door)
    assert [part.is_a() for part in parts] == ["IfcDiscreteAccessory"] * 4
    assert {part.Description for part in parts} == {"5 x 4-1/2"}
    assert len(file.by_type("IfcDiscreteAccessory")) == 7
    assert len([one for one in file.by_type("IfcPropertySet") if one.Name == SET]) == 2
    (classes,) = file.by_type("IfcRelAssociatesClassification")
    assert len(classes.RelatedObjects) == 7


def test_the_properties_say_what_to_order(tmp_path):
    source, (one, _), _ = model(tmp_path, "IFC4")
    write_back(source, tmp_path / "copy.ifc", {one: HINGES}, {one: "approved"})
    file = ifcopenshell.open(str(tmp_path / "copy.ifc"))  # its entities live as long as it does
    own = ifcopenshell.util.element.get_psets(file.by_guid(one))[SET]
    own.pop("id")
    assert own == {
        "HingeCount": 3,
        "HingeSpecification": "4-1/2 x 4-1/2, standard weight",
        "HingeSize": "4-1/2 x 4-1/2",
        "Status": "approved",
    }


def test_a_topic_has_the_door_and_what_it_meets_selected_and_looks_at_the_door(tmp_path):
    source, (one, two), rail = model(tmp_path, "IFC4")
    out = tmp_path / "findings.bcf"
    topics = [
        Topic(one, "112A", "hits", "error", "The door meets the chair rail at 92.1°. Cut it back.", (rail,)),
        Topic(two, "113", "unknown", "warning", "How thick is the wall?"),
        Topic("0" * 22, "gone", "unknown", "warning", "How thick is the wall?"),
    ]
    assert write_topics(source, out, topics, "Kestrel Point", "Office", WHEN) == ("gone",)
    with zipfile.ZipFile(out) as archive:
        files = {name: ElementTree.fromstring(archive.read(name)) for name in archive.namelist()}
    assert files["bcf.version"].get("VersionId") == "3.0"
    folders = {name.split("/")[0] for name in files if "/" in name}
    assert len(folders) == 2
    hit = next(f for f in folders if "chair rail" in files[f"{f}/markup.bcf"].findtext("Topic/Title"))
    topic, view = files[f"{hit}/markup.bcf"].find("Topic"), files[f"{hit}/viewpoint.bcfv"]
    assert topic.get("Guid") == hit
    assert topic.findtext("Title") == "112A: The door meets the chair rail at 92.1°"
    assert topic.findtext("Description") == topics[0].words
    assert [c.get("IfcGuid") for c in view.findall("Components/Selection/Component")] == [one, rail]
    assert topic.find("Viewpoints/ViewPoint").get("Guid") == view.get("Guid")
    # The door's middle is 118 in along the wall; the eye is 3 m off it on the side to which it opens.
    eye, way, up = (
        [float(view.findtext(f"PerspectiveCamera/{name}/{axis}")) for axis in "XYZ"]
        for name in ("CameraViewPoint", "CameraDirection", "CameraUpVector")
    )
    assert eye[:2] == pytest.approx([118 * 0.0254 + 0.75, 3.0], abs=1e-5)
    assert sum(a * a for a in way) == pytest.approx(1)
    assert sum(a * b for a, b in zip(way, up, strict=True)) == pytest.approx(0, abs=1e-5)
    at = [e + w * (eye[1] / -way[1]) for e, w in zip(eye, way, strict=True)]
    assert at[:2] == pytest.approx([118 * 0.0254, 0], abs=1e-4)


def test_the_same_finding_is_the_same_topic_later(tmp_path):
    source, (one, _), _ = model(tmp_path, "IFC4")
    names = []
    for count, out in enumerate((tmp_path / "a.bcf", tmp_path / "b.bcf")):
        topics = [Topic(one, "1", "hits", "error", "It meets the rail.")]
        write_topics(source, out, topics, "Job", "Office", WHEN.replace(hour=12 + count))
        with zipfile.ZipFile(out) as archive:
            names.append(archive.namelist())
    assert names[0] == names[1]
