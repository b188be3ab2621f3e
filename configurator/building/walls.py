"""The wall a door stands in: its faces where the door is, and its layers from one face to the other."""

import math
from typing import Any

import numpy as np

from configurator.building.doors import Matrix
from configurator.building.library import library
from configurator.building.meshes import Points, clipped, moved
from configurator.building.records import Layer, WallRead

_PARALLEL = math.cos(math.radians(0.5))
_AGREE = 1 / 16
"""Inches by which layers and shape may disagree about a wall's thickness."""
_THICKEST = 120.0


def host_of(door: Any) -> Any:
    """Return the element whose opening a door fills; None where it fills none."""
    for fills in door.FillsVoids or ():
        for voids in fills.RelatingOpeningElement.VoidsElements or ():
            return voids.RelatingBuildingElement
    return None


def wall_of(
    wall: Any, placed: Matrix, door: Matrix, width: float, height: float, shape: Points | None, inch: float
) -> WallRead:
    """Return a wall as its door sees it; `placed` and `door` are both placements, `shape` the uncut wall."""
    inverse = np.linalg.inv(door)
    name = wall.Name or wall.is_a()
    turned = (inverse @ placed)[:3, :3]
    told: list[str] = []
    if abs(turned[0, 0]) < _PARALLEL:
        return WallRead(name, told=("the wall does not run parallel to the door: its faces are not taken",))
    faces = _faces(shape, inverse, width, height)
    layers, offset, sense = _layers(wall, inch)
    if layers and sense == 0:
        told.append("the model does not say from which face its wall layers run: they are not taken")
        layers = ()
    total = math.fsum(layer.thickness for layer in layers)
    if layers and faces is None:
        at = (inverse @ placed @ np.array([0.0, offset, 0.0, 1.0]))[1]
        other = at + sense * total * np.sign(turned[1, 1])
        faces = min(at, other), max(at, other)
    if faces is None or not 0 < faces[1] - faces[0] <= _THICKEST:
        return WallRead(
            name, told=(*told, "the wall has no shape where the door is: its faces are not known")
        )
    if layers and abs(faces[1] - faces[0] - total) > _AGREE:
        told.append("the layers of the wall add up to another thickness than it is drawn: they are not taken")
        layers = ()
    upward = sense * turned[1, 1] > 0
    return WallRead(name, float(faces[0]), float(faces[1]), layers if upward else layers[::-1], tuple(told))


def _faces(shape: Points | None, inverse: Matrix, width: float, height: float) -> tuple[float, float] | None:
    """Return how far a wall reaches in the door's y, where the door stands in it."""
    if shape is None:
        return None
    near = clipped(clipped(moved(shape, inverse), 0, 0.0, width), 2, 0.0, height)
    if not len(near):
        return None
    y = near[:, :, 1]
    return float(y.min()), float(y.max())


def _layers(wall: Any, inch: float) -> tuple[tuple[Layer, ...], float, int]:
    """Return a wall's layers in their order, where they begin in the wall's y, and which way they run.

    The way is 0 where no usage says so.
    """
    element = library("util.element")
    material = element.get_material(wall, should_skip_usage=False)
    if material is None:
        return (), 0.0, 0
    offset, sense = 0.0, 0
    if material.is_a("IfcMaterialLayerSetUsage"):
        if material.LayerSetDirection == "AXIS2":
            sense = 1 if material.DirectionSense == "POSITIVE" else -1
        offset = (material.OffsetFromReferenceLine or 0.0) * inch
        material = material.ForLayerSet
    if not material.is_a("IfcMaterialLayerSet"):
        return (), 0.0, 0
    layers = tuple(
        Layer(_name(layer), layer.LayerThickness * inch)
        for layer in material.MaterialLayers
        if layer.LayerThickness > 0
    )
    if len(layers) == 1 or layers == layers[::-1]:
        sense = sense or 1
    return layers, offset, sense


def _name(layer: Any) -> str:
    return getattr(layer, "Name", None) or (layer.Material.Name if layer.Material else "") or "layer"
