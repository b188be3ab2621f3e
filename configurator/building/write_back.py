"""Hinges written into a copy of a building model: as a property set of each door, and as its hardware."""

import os
import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from configurator.building.library import library, open_model
from configurator.long_work import Progress, unwatched, watched

SET = "OpeningConfigurator_Hinges"
"""Our own name: those that begin with Pset_ are the standard's."""
SYSTEM, CLASS = "Opening Configurator hardware", "Hinge"


@dataclass(frozen=True, slots=True)
class HingeSet:
    """Hinges of one kind on one leaf of a door: what they are called, how many, their properties in words."""

    name: str
    words: str
    count: int
    properties: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class WrittenBack:
    """What became of the doors: `missing` are global ids that the model does not have."""

    doors: int
    hinges: int
    missing: tuple[str, ...]


def write_back(
    source: Path,
    copy: Path,
    hinges: Mapping[str, Sequence[HingeSet]],
    status: Mapping[str, str],
    progress: Progress = unwatched,
) -> WrittenBack:
    """Write a copy of a model whose doors, by their global ids, have these hinges, and say how many.

    What an earlier copy had of ours is replaced. `status` says of each door how far it is settled. Raises
    IntakeError where the model cannot be read, OSError where the copy cannot be written.
    """
    model = open_model(source)
    doors = {door.GlobalId: door for door in model.by_type("IfcDoor")}
    there = {key: sets for key, sets in hinges.items() if key in doors}
    writer = _Writer(model)
    writer.clear()
    count = 0
    for key, sets in watched(there.items(), len(there), progress):
        count += writer.write(doors[key], sets, status.get(key, ""))
    _save(model, copy)
    return WrittenBack(len(there), count, tuple(key for key in hinges if key not in doors))


def _save(model: Any, copy: Path) -> None:
    """Write the copy beside its place first, so that there is a whole one or none."""
    handle, name = tempfile.mkstemp(suffix=".ifc", dir=copy.absolute().parent)
    os.close(handle)
    try:
        model.write(name)
        Path(name).replace(copy)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


class _Writer:
    """Makes entities in the schema of the file."""

    def __init__(self, model: Any) -> None:
        self.model = model
        self._old = model.schema == "IFC2X3"
        histories = model.by_type("IfcOwnerHistory")
        self._owner = histories[0] if histories else None
        self._class: Any = None

    def clear(self) -> None:
        """Take away what an earlier copy had of ours."""
        model = self.model
        for made in [one for one in model.by_type("IfcPropertySet") if one.Name == SET]:
            for relation in [*model.get_inverse(made)]:
                if relation.is_a("IfcRelDefinesByProperties") and len(relation.RelatedObjects) == 1:
                    model.remove(relation)
            for value in made.HasProperties:
                model.remove(value)
            model.remove(made)
        ours = [rel for rel in model.by_type("IfcRelAssociatesClassification") if _is_ours(rel)]
        for relation in ours:
            for accessory in relation.RelatedObjects:
                self._remove_accessory(accessory)
            reference = relation.RelatingClassification
            model.remove(relation)
            model.remove(reference.ReferencedSource)
            model.remove(reference)

    def _remove_accessory(self, accessory: Any) -> None:
        for relation in [*self.model.get_inverse(accessory)]:
            if relation.is_a("IfcRelAggregates"):
                others = [one for one in relation.RelatedObjects if one != accessory]
                if others:
                    relation.RelatedObjects = others
                else:
                    self.model.remove(relation)
        placement = accessory.ObjectPlacement
        self.model.remove(accessory)
        if placement is not None and not self.model.get_inverse(placement):
            axes = placement.RelativePlacement
            self.model.remove(placement)
            point = axes.Location
            self.model.remove(axes)
            self.model.remove(point)

    def write(self, door: Any, sets: Sequence[HingeSet], status: str) -> int:
        """Write the hinges of one door; return how many."""
        values: dict[str, Any] = {"HingeCount": sum(one.count for one in sets)}
        for number, one in enumerate(sets, 1):
            first = f"Hinge{number if len(sets) > 1 else ''}"
            values |= {f"{first}Count": one.count, f"{first}Specification": one.words}
            values |= {f"{first}{name}": text for name, text in one.properties.items()}
        if status:
            values["Status"] = status
        made = self._rooted("IfcPropertySet", Name=SET, HasProperties=[*map(self._value, values.items())])
        self._rooted("IfcRelDefinesByProperties", RelatedObjects=[door], RelatingPropertyDefinition=made)
        parts = [self._accessory(door, one, number) for one in sets for number in range(1, one.count + 1)]
        if parts:
            self._rooted("IfcRelAggregates", RelatingObject=door, RelatedObjects=parts)
            self._classify(parts)
        return len(parts)

    def _rooted(self, kind: str, **attributes: Any) -> Any:
        made = self.model.create_entity(kind, GlobalId=library("guid").new(), **attributes)
        if self._owner is not None:
            made.OwnerHistory = self._owner
        return made

    def _value(self, item: tuple[str, Any]) -> Any:
        name, value = item
        whole = isinstance(value, int)
        nominal = self.model.create_entity("IfcInteger" if whole else "IfcText", value)
        return self.model.create_entity("IfcPropertySingleValue", Name=name, NominalValue=nominal)

    def _accessory(self, door: Any, one: HingeSet, number: int) -> Any:
        """Return one hinge as the schema has hardware; it stands where its door stands, and has no shape."""
        file = self.model
        point = file.create_entity("IfcCartesianPoint", (0.0, 0.0, 0.0))
        axes = file.create_entity("IfcAxis2Placement3D", Location=point)
        placed = file.create_entity(
            "IfcLocalPlacement", PlacementRelTo=door.ObjectPlacement, RelativePlacement=axes
        )
        made = self._rooted(
            "IfcDiscreteAccessory",
            Name=f"{one.name} {number} of {one.count}",
            Description=one.words,
            ObjectType=CLASS,
            ObjectPlacement=placed,
        )
        if not self._old:
            made.PredefinedType = "USERDEFINED"
        return made

    def _classify(self, parts: Sequence[Any]) -> None:
        if self._class is None:
            file = self.model
            source = {"Source": "Opening Configurator", "Edition": "1"} if self._old else {}
            system = file.create_entity("IfcClassification", Name=SYSTEM, **source)
            code = {"ItemReference" if self._old else "Identification": CLASS}
            reference = file.create_entity(
                "IfcClassificationReference", Name=CLASS, ReferencedSource=system, **code
            )
            self._class = self._rooted(
                "IfcRelAssociatesClassification", RelatedObjects=[*parts], RelatingClassification=reference
            )
        else:
            self._class.RelatedObjects = [*self._class.RelatedObjects, *parts]


def _is_ours(relation: Any) -> bool:
    source = getattr(relation.RelatingClassification, "ReferencedSource", None)
    return source is not None and getattr(source, "Name", None) == SYSTEM
