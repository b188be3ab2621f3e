"""What a model says of a door in words and figures: operation, sizes, property sets, type, level, marks."""

import math
import re
from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray

from configurator.building.library import library
from configurator.building.records import ModelDoor

Matrix = NDArray[Any]
_MARKS = ("mark", "door number", "door no", "number", "door mark", "door id")
"""Names of properties that hold the mark of one door; common practice, no source."""
_TURNED = 1e-6
_SELDOM = {"FireExit": "Fire exit", "SmokeStop": "Smoke stop", "AcousticRating": "Acoustic rating",
           "SecurityRating": "Security rating", "GlazingAreaFraction": "Glazed share"}  # fmt: skip
_COMMON = "Pset_DoorCommon"


def matrix_of(product: Any, inch: float) -> Matrix:
    """Return the placement of an element: from its own axes in inches to the building's, in inches.

    `inch` is the file's length unit in inches.
    """
    placement = library("util.placement")
    found: Matrix = np.array(placement.get_local_placement(product.ObjectPlacement), dtype=float)
    found[:3, 3] *= inch
    return found


def door_of(door: Any, inch: float) -> ModelDoor:
    """Return what one door says in words and figures; its shape, wall and neighbours are read elsewhere."""
    element = library("util.element")
    kind = element.get_type(door)
    sets = {name: dict(values) for name, values in element.get_psets(door, should_inherit=True).items()}
    common = sets.get(_COMMON, {})
    lining, panel = (
        _predefined(door, kind, "IfcDoorLiningProperties"),
        _predefined(door, kind, "IfcDoorPanelProperties"),
    )
    width, height = _sizes(door, sets, inch)
    casing = (_length(lining, "CasingThickness", inch), _length(lining, "CasingDepth", inch))
    container = element.get_container(door)
    return ModelDoor(
        door.GlobalId,
        _text(door.Name),
        _text(door.Tag),
        _text(getattr(kind, "Name", "")),
        _operation(door, kind),
        width,
        height,
        _text(getattr(container, "Name", "")),
        _refused(door),
        any(rel.RelatingOpeningElement.VoidsElements for rel in door.FillsVoids or ()),
        _text(common.get("FireRating")),
        _flag(common.get("IsExternal")),
        _flag(common.get("HandicapAccessible")),
        _flag(common.get("SelfClosing")),
        {title: _text(common[name]) for name, title in _SELDOM.items() if _text(common.get(name))},
        dict(_marks(sets)),
        _length(lining, "LiningDepth", inch),
        _length(lining, "LiningThickness", inch),
        (casing[0], casing[1]) if casing[0] is not None and casing[1] is not None else None,
        _length(panel, "PanelDepth", inch),
    )


def _operation(door: Any, kind: Any) -> str:
    """Return the operation type: of the door, else of its type (IFC4), or of its style (IFC2X3)."""
    own = getattr(door, "OperationType", None)
    found = own if own not in (None, "NOTDEFINED") else getattr(kind, "OperationType", None)
    if found == "USERDEFINED":
        words = getattr(door, "UserDefinedOperationType", None) or getattr(
            kind, "UserDefinedOperationType", None
        )
        return f"USERDEFINED {words}" if words else ""
    return "" if found in (None, "NOTDEFINED") else str(found)


def _predefined(door: Any, kind: Any, entity: str) -> Mapping[str, Any]:
    """Return the lining or the panel properties of a door, its own before those of its type."""
    own = [
        rel.RelatingPropertyDefinition
        for rel in door.IsDefinedBy or ()
        if rel.is_a("IfcRelDefinesByProperties")
    ]
    of_type = list(getattr(kind, "HasPropertySets", None) or ())
    for found in (*own, *of_type):
        if found.is_a(entity):
            values: Mapping[str, Any] = found.get_info()
            return values
    return {}


def _sizes(
    door: Any, sets: Mapping[str, Mapping[str, Any]], inch: float
) -> tuple[float | None, float | None]:
    """Return overall width and height, inches: the door's attributes, else its quantities."""
    found = []
    for attribute, quantity in (("OverallWidth", "Width"), ("OverallHeight", "Height")):
        value = getattr(door, attribute)
        if not value:
            value = next(
                (own[quantity] for name, own in sets.items() if "Quantities" in name and own.get(quantity)),
                None,
            )
        found.append(float(value) * inch if isinstance(value, int | float) and value > 0 else None)
    return found[0], found[1]


def _refused(door: Any) -> str:
    """Say why a door cannot be read because of how it is placed; empty where it can."""
    if door.ObjectPlacement is None:
        return "it has no placement"
    placed = matrix_of(door, 1.0)[:3, :3]
    if not np.isfinite(placed).all() or np.linalg.det(placed) < 0:
        return "its placement is mirrored, and so its operation type says nothing of its hand"
    if placed[2, 2] < 1 - 1e-3:
        return "it does not stand upright"
    return _mirrored(door)


def _mirrored(door: Any) -> str:
    placement = library("util.placement")
    for representation in door.Representation.Representations if door.Representation else ():
        for item in representation.Items:
            if not item.is_a("IfcMappedItem") or not item.MappingTarget.is_a(
                "IfcCartesianTransformationOperator3D"
            ):
                continue
            if np.linalg.det(np.array(placement.get_mappeditem_transformation(item))[:3, :3]) < -_TURNED:
                return "its shape is a mirror image of its type: its operation type says nothing of its hand"
    return ""


def _marks(sets: Mapping[str, Mapping[str, Any]]) -> Iterator[tuple[str, str]]:
    for own in sets.values():
        for name, value in own.items():
            if re.sub(r"[^a-z]+", " ", name.casefold()).strip() in _MARKS and _text(value):
                yield name, _text(value)


def _length(values: Mapping[str, Any], name: str, inch: float) -> float | None:
    value = values.get(name)
    return value * inch if isinstance(value, int | float) and math.isfinite(value) and value > 0 else None


def _flag(value: Any) -> bool | None:
    return value if isinstance(value, bool) else None


def _text(value: Any) -> str:
    """Return a value as text on one line, without what a file cannot hold."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    text = "".join(letter if letter.isprintable() else " " for letter in str(value))
    return " ".join(text.split())[:200]
