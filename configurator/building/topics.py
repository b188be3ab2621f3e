"""Findings as topics that any viewer of building models shows: BCF 3.0, an open standard, a zip of XML.

A topic has its door selected, with what the door meets, and a viewpoint before the door. Its guid follows
from the door and what is said of it: the same finding is the same topic in a later file. The form of the
files is from memory; `bcf-client` reads them.
"""

import io
import math
import uuid
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

from configurator.building.doors import matrix_of
from configurator.building.library import library, open_model
from configurator.building.meshes import METRE
from configurator.project_file.writing import write_whole

_OURS = uuid.UUID("5f0d7c1e-52a4-4f0e-9a63-0f2b8f1f9d10")
"""What our guids are made in."""
_STANDS_OFF, _EYE = 3.0, 1.6
"""Metres from the door's middle, and above its bottom, from which a viewpoint looks."""


@dataclass(frozen=True, slots=True)
class Topic:
    """One finding of one door: global ids of the door and of the elements it is about, and what is said."""

    door: str
    mark: str
    code: str
    severity: str
    words: str
    elements: tuple[str, ...] = ()


def write_topics(
    model_path: Path, out: Path, topics: Sequence[Topic], project: str, author: str, when: datetime
) -> tuple[str, ...]:
    """Write topics about the doors of a model; return the marks of those that the model does not have.

    Raises IntakeError where the model cannot be read, OSError where the file cannot be written.
    """
    model = open_model(model_path)
    inch = float(library("util.unit").calculate_unit_scale(model)) * METRE
    doors = {door.GlobalId: door for door in model.by_type("IfcDoor")}
    kept = [topic for topic in topics if topic.door in doors]
    owner = model.by_type("IfcProject")[0].GlobalId
    files = dict(_files(kept, doors, inch, owner, model_path.name, project, author, when))
    write_whole(out, _zipped(files, when))
    return tuple(dict.fromkeys(topic.mark for topic in topics if topic.door not in doors))


def _zipped(files: Mapping[str, ElementTree.Element], when: datetime) -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, root in files.items():
            info = zipfile.ZipInfo(name, when.timetuple()[:6])
            info.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(info, ElementTree.tostring(root, encoding="utf-8", xml_declaration=True))
    return held.getvalue()


def _files(
    topics: Sequence[Topic],
    doors: Mapping[str, Any],
    inch: float,
    owner: str,
    file: str,
    project: str,
    author: str,
    when: datetime,
) -> Iterator[tuple[str, ElementTree.Element]]:
    yield "bcf.version", _element("Version", VersionId="3.0")
    info = _element("ProjectInfo")
    _under(_under(info, "Project", ProjectId=str(uuid.uuid5(_OURS, owner))), "Name", project)
    yield "project.bcfp", info
    yield "extensions.xml", _extensions(topics, author)
    for topic in topics:
        guid = str(uuid.uuid5(_OURS, f"{topic.door} {topic.code} {topic.words}"))
        view = str(uuid.uuid5(_OURS, f"view {guid}"))
        yield f"{guid}/markup.bcf", _markup(topic, guid, view, owner, file, author, when)
        yield f"{guid}/viewpoint.bcfv", _viewpoint(topic, view, doors[topic.door], inch)


def _extensions(topics: Sequence[Topic], author: str) -> ElementTree.Element:
    root = _element("Extensions")
    for many, one, values in (
        ("TopicTypes", "TopicType", sorted({topic.severity for topic in topics})),
        ("TopicStatuses", "TopicStatus", ["Open", "Closed"]),
        ("Priorities", "Priority", []),
        ("TopicLabels", "TopicLabel", sorted({topic.code for topic in topics})),
        ("Users", "User", [author]),
        ("SnippetTypes", "SnippetType", []),
        ("Stages", "Stage", []),
    ):
        group = _under(root, many)
        for value in values:
            _under(group, one, value)
    return root


def _markup(
    topic: Topic, guid: str, view: str, owner: str, file: str, author: str, when: datetime
) -> ElementTree.Element:
    root = _element("Markup")
    files = _under(_under(root, "Header"), "Files")
    _under(_under(files, "File", IfcProject=owner, IsExternal="true"), "Filename", file)
    own = _under(root, "Topic", Guid=guid, TopicType=topic.severity, TopicStatus="Open")
    _under(own, "Title", f"{topic.mark}: {_short(topic.words)}")
    _under(_under(own, "Labels"), "Label", topic.code)
    _under(own, "CreationDate", when.astimezone().isoformat(timespec="seconds"))
    _under(own, "CreationAuthor", author)
    _under(own, "Description", topic.words)
    point = _under(_under(own, "Viewpoints"), "ViewPoint", Guid=view)
    _under(point, "Viewpoint", "viewpoint.bcfv")
    return root


def _viewpoint(topic: Topic, guid: str, door: Any, inch: float) -> ElementTree.Element:
    """Return the view of a door from the side it opens to, from a little beside its middle, metres."""
    root = _element("VisualizationInfo", Guid=guid)
    components = _under(root, "Components")
    selection = _under(components, "Selection")
    for element in (topic.door, *topic.elements):
        _under(selection, "Component", IfcGuid=element)
    _under(components, "Visibility", DefaultVisibility="true")
    if topic.elements:
        colour = _under(_under(components, "Coloring"), "Color", Color="FFD55E00")
        for element in topic.elements:
            _under(_under(colour, "Components"), "Component", IfcGuid=element)
    placed = matrix_of(door, inch) / METRE
    x, y = placed[:2, 0] * METRE, placed[:2, 1] * METRE
    half = (door.OverallWidth or 0.0) * inch / METRE / 2
    middle = placed[:2, 3] + x * half
    eye = middle + y * _STANDS_OFF + x * 0.25 * _STANDS_OFF
    along, down = middle - eye, -(_EYE - 1.0)
    length = math.hypot(*along, down)
    flat = math.hypot(*along)
    direction = (*along / length, down / length)
    up = (*(-direction[2] * along / flat), flat / length)
    camera = _under(root, "PerspectiveCamera")
    _point(camera, "CameraViewPoint", (*eye, placed[2, 3] + _EYE))
    _point(camera, "CameraDirection", direction)
    _point(camera, "CameraUpVector", up)
    _under(camera, "FieldOfView", "60")
    _under(camera, "AspectRatio", "1.5")
    return root


def _short(words: str) -> str:
    """Return the first sentence, cut where it is long."""
    first = words.split(". ")[0].rstrip(".")
    return first if len(first) <= 120 else f"{first[:119]}…"


def _point(under: ElementTree.Element, name: str, values: Sequence[float]) -> None:
    made = _under(under, name)
    for axis, value in zip("XYZ", values, strict=True):
        _under(made, axis, f"{value:.6f}")


def _element(name: str, **attributes: str) -> ElementTree.Element:
    return ElementTree.Element(name, attributes)


def _under(parent: ElementTree.Element, name: str, text: str = "", **attributes: str) -> ElementTree.Element:
    made = ElementTree.SubElement(parent, name, attributes)
    made.text = text or None
    return made
