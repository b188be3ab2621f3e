"""A building model into plain records: every door with its wall, its rooms and what stands before it."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import chain
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np

from configurator.building.doors import Matrix, door_of, matrix_of
from configurator.building.leaf_shape import frame_faces, leaf_shape
from configurator.building.library import errors_logged, library, open_model
from configurator.building.meshes import METRE, Mesh, Points, holds, meshes, moved
from configurator.building.neighbours import Zones, boxes, boxes_in, swing_mesh, zone_of
from configurator.building.records import Box, BuildingModel, ModelDoor, Polyline, StoreyPlan
from configurator.building.storey import section, without_openings
from configurator.building.walls import host_of, wall_of
from configurator.intake.sheet import IntakeError
from configurator.long_work import Progress, unwatched

MOST_DOORS = 20_000
_LIKELY = (10.0, 400.0)
"""Inches. Half of all doors are this wide in a file whose unit is right."""
_CUT_AT = 40.0
"""Inches above the floor at which a plan is cut."""
_IN_PLAN = (
    "IfcWall",
    "IfcColumn",
    "IfcCurtainWall",
    "IfcPlate",
    "IfcMember",
    "IfcRailing",
    "IfcFurnishingElement",
)
_ROOM_OFF = 9.7
"""Inches off a wall's face at which a room is looked for; no round number, so that no edge lies there."""


@dataclass
class _Reading:
    """What is known of a model while it is read."""

    model: Any
    inch: float
    doors: dict[str, ModelDoor] = field(default_factory=dict)
    placed: dict[str, Matrix] = field(default_factory=dict)
    beside: dict[tuple[str, int], list[Box]] = field(default_factory=lambda: defaultdict(list))
    rooms: dict[str, dict[int, str]] = field(default_factory=lambda: defaultdict(dict))
    lines: dict[str, list[Polyline]] = field(default_factory=lambda: defaultdict(list))
    hosts: dict[int, Mesh] = field(default_factory=dict)
    """The walls that doors stand in, uncut."""


def read_model(path: Path, progress: Progress = unwatched) -> BuildingModel:
    """Return what a model has of doors. Raises IntakeError, and Cancelled as the progress does."""
    errors_logged()  # reading them takes them away: those of another file are not of this one
    model = open_model(path)
    lost = errors_logged()
    damaged = f"{lost:,} of its entities cannot be read: it is damaged" if lost else ""
    inch = float(library("util.unit").calculate_unit_scale(model)) * METRE
    every = _doors(path, model, damaged)
    found = _Reading(model, inch)
    elements, spaces = _elements(model), model.by_type("IfcSpace")
    count = _Count(progress, 2 * len(every) + len(elements) + len(spaces))
    for door in count.each(every):
        found.doors[door.GlobalId] = door_of(door, inch)
    _refuse_absurd(path, found.doors.values())
    _own_shapes(found, every, count)
    _walls(found, every)
    _neighbours(found, elements, count)
    _rooms(found, spaces, count)
    twice = len(model.by_type("IfcDoor")) - len(every)
    told = [f"{path.name}: {damaged}"] if damaged else []
    told += [f"of doors that share a global id only the first is read: {twice:,} are not"] if twice else []
    whole = _whole(found), _storeys(found)
    return BuildingModel(path.name, model.schema, _is_metric(model), *whole, _name(model), tuple(told))


def _doors(path: Path, model: Any, damaged: str) -> list[Any]:
    """Return the doors of a model, each global id once. Raises IntakeError for none, or for too many."""
    every: dict[str, Any] = {}
    for door in model.by_type("IfcDoor"):
        every.setdefault(door.GlobalId, door)
    if not every:
        raise IntakeError(f"{path.name} has no door in it{damaged and ', and '}{damaged}")
    if len(every) > MOST_DOORS:
        raise IntakeError(f"{path.name} has {len(every):,} doors; up to {MOST_DOORS:,} are read")
    return [*every.values()]


def _is_metric(model: Any) -> bool:
    unit = library("util.unit").get_project_unit(model, "LENGTHUNIT")
    return unit is None or bool(unit.is_a("IfcSIUnit"))


def _name(model: Any) -> str:
    project = model.by_type("IfcProject")[0]
    return " ".join((project.LongName or project.Name or "").split())


class _Count:
    """Tells how much of all that is to be looked at is done."""

    def __init__(self, progress: Progress, total: int) -> None:
        self._progress, self._total, self._done = progress, total, 0
        progress(0, total)

    def each(self, items: Iterable[Any]) -> Iterator[Any]:
        """Yield items and count them."""
        for item in items:
            yield item
            self._done += 1
            self._progress(min(self._done, self._total), self._total)


def _elements(model: Any) -> list[Any]:
    """Return every element that may stand before a door: not doors, their parts, nor what only cuts."""
    kept = []
    for element in model.by_type("IfcElement"):
        if element.is_a("IfcDoor") or element.is_a("IfcFeatureElement") or element.is_a("IfcVirtualElement"):
            continue
        whole = next((rel.RelatingObject for rel in element.Decomposes or ()), None)
        if element.Representation is not None and not (whole is not None and whole.is_a("IfcDoor")):
            kept.append(element)
    return kept


def _refuse_absurd(path: Path, doors: Iterable[ModelDoor]) -> None:
    widths = [door.width for door in doors if door.width is not None]
    if widths and not _LIKELY[0] <= median(widths) <= _LIKELY[1]:
        raise IntakeError(
            f"{path.name}: half of its doors are {median(widths):,.4g} in wide or more, so that the "
            "length unit of the file is wrong"
        )


def _own_shapes(found: _Reading, every: list[Any], count: _Count) -> None:
    shapes = {mesh.element.GlobalId: mesh for mesh in meshes(found.model, _shown(every)) if mesh is not None}
    for door in count.each(every):
        own = found.doors[door.GlobalId]
        if own.refused or own.width is None or own.height is None:
            found.doors[door.GlobalId] = own if own.refused else _sized(own, shapes.get(door.GlobalId))
            continue
        placed = found.placed[door.GlobalId] = matrix_of(door, found.inch)
        mesh = shapes.get(door.GlobalId)
        triangles = None if mesh is None else moved(mesh.triangles, np.linalg.inv(placed))
        frame = None if triangles is None else frame_faces(triangles, own.width, own.height)
        found.doors[door.GlobalId] = replace(
            own,
            frame=frame,
            shape=leaf_shape(door, triangles, frame, (own.width, own.height), found.inch),
            place=_place(placed),
        )


def _place(placed: Matrix) -> tuple[float, float, float, float]:
    x, y, z = map(float, placed[:3, 3])
    return x, y, z, math.atan2(placed[1, 0], placed[0, 0])


def _sized(door: ModelDoor, mesh: Mesh | None) -> ModelDoor:
    lacks = "width" if door.width is None else "height"
    more = "" if mesh is not None else ", and no shape"
    return replace(door, refused=f"it has no overall {lacks}{more}")


def _shown(elements: Iterable[Any]) -> list[Any]:
    return [element for element in elements if element.Representation is not None]


def _walls(found: _Reading, every: list[Any]) -> None:
    hosts = {door.GlobalId: host_of(door) for door in every if door.GlobalId in found.placed}
    walls = {wall.id(): wall for wall in hosts.values() if wall is not None}
    found.hosts = {
        mesh.element.id(): mesh
        for mesh in meshes(found.model, _shown(walls.values()), whole=True)
        if mesh is not None
    }
    for key, wall in hosts.items():
        own = found.doors[key]
        assert own.width is not None
        assert own.height is not None
        if wall is not None and wall.ObjectPlacement is not None:
            placed = matrix_of(wall, found.inch)
            mesh = found.hosts.get(wall.id())
            shape = None if mesh is None else mesh.triangles
            read = wall_of(wall, placed, found.placed[key], own.width, own.height, shape, found.inch)
            found.doors[key] = replace(own, wall=read)


def _neighbours(found: _Reading, elements: list[Any], count: _Count) -> None:
    zones = Zones(
        [
            zone_of(own, side, np.linalg.inv(found.placed[key]))
            for key, own in found.doors.items()
            if key in found.placed
            for side in _sides_of(own)
        ]
    )
    levels = _levels(found)
    rest = [element for element in elements if element.id() not in found.hosts]
    for mesh in count.each(chain(found.hosts.values(), meshes(found.model, rest))):
        if mesh is None:
            continue
        for zone in zones.near(mesh):
            key = zone.door.global_id, zone.side
            found.beside[key].extend(boxes_in(zone, mesh.triangles, mesh.element))
        _outline(found, mesh, levels)
    _swings(found, zones)


def _sides_of(door: ModelDoor) -> tuple[int, ...]:
    """Return the sides on which to look: that to which the door opens, and both where that is not sure."""
    sure = (door.sides is not None or door.pair) and door.shape.opens >= 0
    return (1,) if sure else (-1, 1)


def _swings(found: _Reading, zones: Zones) -> None:
    for key, placed in found.placed.items():
        own = found.doors[key]
        swept = swing_mesh(own, placed)
        if swept is None:
            continue
        for zone in zones.near(Mesh(None, swept)):
            if zone.door.global_id != key:
                name = f"swing of door {own.tag or own.name or 'without a name'} to 90° ({key})"
                boxed = boxes(zone, zone.seen(swept), name, "other")
                found.beside[zone.door.global_id, zone.side].extend(boxed)


def _levels(found: _Reading) -> Mapping[str, float]:
    placement = library("util.placement")
    return {
        storey.GlobalId: float(placement.get_storey_elevation(storey)) * found.inch
        for storey in found.model.by_type("IfcBuildingStorey")
    }


def _outline(found: _Reading, mesh: Mesh, levels: Mapping[str, float]) -> None:
    """Keep what a plan of its storey shows of an element."""
    if not any(mesh.element.is_a(kind) for kind in _IN_PLAN):
        return
    container = library("util.element").get_container(mesh.element)
    level = levels.get(getattr(container, "GlobalId", ""))
    if level is None:
        return
    low, high = float(mesh.low[2]), float(mesh.high[2])
    height = level + _CUT_AT if low < level + _CUT_AT < high else (low + high) / 2
    found.lines[container.GlobalId] += section(mesh.triangles, height + 1e-3)


def _rooms(found: _Reading, spaces: list[Any], count: _Count) -> None:
    keys = [(key, side) for key in found.placed for side in (-1, 1)]
    points = np.array([_before(found, *each) for each in keys]).reshape(-1, 3)
    for mesh in count.each(meshes(found.model, _shown(spaces))):
        if mesh is None:
            continue
        near = np.flatnonzero(np.all((points >= mesh.low) & (points <= mesh.high), axis=1))
        for place in near:
            if holds(mesh.triangles, points[place]):
                key, side = keys[place]
                found.rooms[key][side] = _room(mesh.element)


def _before(found: _Reading, key: str, side: int) -> Points:
    """Return a point before a door, in the building's axes."""
    own = found.doors[key]
    assert own.width is not None
    faces = (own.wall.low, own.wall.high) if own.wall is not None else (None, None)
    face = faces[0 if side < 0 else 1] or 0.0
    at = np.array([0.513 * own.width, face + side * _ROOM_OFF, _CUT_AT])
    return moved(at, found.placed[key])


def _room(space: Any) -> str:
    """Return a room's number and name: Name has the one and LongName the other as a rule."""
    parts = (space.Name or "", space.LongName or "")
    return " ".join(" ".join(dict.fromkeys(filter(None, parts))).split())[:100]


def _whole(found: _Reading) -> tuple[ModelDoor, ...]:
    return tuple(
        replace(
            own,
            rooms=dict(found.rooms.get(key, {})),
            beside={
                side: tuple(sorted(found.beside[key, side], key=_order))
                for side in (-1, 1)
                if (key, side) in found.beside
            },
        )
        for key, own in found.doors.items()
    )


def _order(box: Box) -> tuple[str, float, float]:
    return box.element, box.left, box.bottom


def _storeys(found: _Reading) -> tuple[StoreyPlan, ...]:
    storeys = found.model.by_type("IfcBuildingStorey")
    levels = _levels(found)
    plans = []
    for storey in storeys:
        name = storey.Name or ""
        doors = [door for door in found.doors.values() if door.level == name]
        lines = without_openings(found.lines.get(storey.GlobalId, ()), doors)
        plans.append(StoreyPlan(name, levels[storey.GlobalId], lines))
    return tuple(sorted(plans, key=lambda plan: plan.elevation))
