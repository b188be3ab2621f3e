"""What was read from a building model: plain records without the library, in inches and the door's own axes.

A door's own axes are those of its placement: x along the wall from its left end, as seen in the direction of
positive y; y through the wall; z up from its bottom.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

Sides = tuple[int, int]
"""At which end the hinges are (-1: at x = 0, +1: at the other), and to which y the door opens (+1, -1)."""
Polyline = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer of a wall, inches."""

    name: str
    thickness: float


@dataclass(frozen=True, slots=True)
class WallRead:
    """The wall a door stands in: its faces in the door's y, and its layers from the lower y up.

    `low` and `high` are None where the wall has no shape. `told` is what could not be taken of it, and why.
    """

    name: str
    low: float | None = None
    high: float | None = None
    layers: tuple[Layer, ...] = ()
    told: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Box:
    """Something that stands on one side of a wall: `element` names it, with its global id.

    x runs as the door's, `near` and `far` count from the wall face of that side, z from the door's bottom. An
    end that lies beyond what was looked at is infinite. `diameter` is set of a round column.
    """

    element: str
    kind: str
    left: float
    right: float
    near: float
    far: float
    bottom: float
    top: float
    diameter: float | None = None


@dataclass(frozen=True, slots=True)
class LeafShape:
    """What a door's own shape says: the end its hinges are at and the y it opens to, 0 where it says nothing.

    `why` is how that is known.
    """

    hinges: int = 0
    opens: int = 0
    why: str = ""


@dataclass(frozen=True, slots=True)
class ModelDoor:
    """One door as a model has it, inches; None and empty where the model says nothing."""

    global_id: str
    name: str = ""
    tag: str = ""
    type_name: str = ""
    operation: str = ""
    width: float | None = None
    height: float | None = None
    level: str = ""
    refused: str = ""
    """Why it cannot be read as a door at all, in words."""
    in_opening: bool = True
    rating: str = ""
    external: bool | None = None
    accessible: bool | None = None
    self_closing: bool | None = None
    texts: Mapping[str, str] = field(default_factory=dict)
    """What else its property sets say that is worth a column, by heading."""
    marks: Mapping[str, str] = field(default_factory=dict)
    """What may be its mark, by the name of the property."""
    lining_depth: float | None = None
    lining_thickness: float | None = None
    casing: tuple[float, float] | None = None
    leaf_thickness: float | None = None
    frame: tuple[float, float] | None = None
    """The faces of its frame in y, from its shape."""
    shape: LeafShape = LeafShape()
    wall: WallRead | None = None
    rooms: Mapping[int, str] = field(default_factory=dict)
    """The space on the side of lower (-1) and of higher y (+1)."""
    beside: Mapping[int, tuple[Box, ...]] = field(default_factory=dict)
    """What stands on either side, by the sign of y."""
    place: tuple[float, float, float, float] = (0.0, 0.0, 0.0, 0.0)
    """Where its left end is in the building: x, y, z, and the direction of its x axis in radians."""

    @property
    def sides(self) -> Sides | None:
        """Where its hinges are and where it opens to by its operation; None of a pair and where not said.

        SINGLE_SWING_LEFT has its hinges on the left as viewed in the direction of positive y, and opens
        toward positive y; right likewise (ISO 16739, IfcDoorTypeOperationEnum: read).
        """
        return {"SINGLE_SWING_LEFT": (-1, 1), "SINGLE_SWING_RIGHT": (1, 1)}.get(self.operation)

    @property
    def pair(self) -> bool:
        """Whether it has two leaves side by side."""
        return self.operation == "DOUBLE_DOOR_SINGLE_SWING"


@dataclass(frozen=True, slots=True)
class StoreyPlan:
    """The outlines of a storey at door height, inches in the building's axes."""

    name: str
    elevation: float
    lines: tuple[Polyline, ...] = ()


@dataclass(frozen=True, slots=True)
class BuildingModel:
    """What was read from one file. `told` are the assumptions; `name` is that of its project."""

    file: str
    schema: str
    metric: bool
    doors: tuple[ModelDoor, ...]
    storeys: tuple[StoreyPlan, ...] = ()
    name: str = ""
    told: tuple[str, ...] = ()


def infinite(value: float) -> bool:
    """Say whether an end lies beyond what was looked at."""
    return math.isinf(value)
