"""The frame, the wall about it, and what stands along the wall; inches."""

import math
from typing import Any, Self

from pydantic import field_validator, model_validator
from pydantic_core import PydanticCustomError

from configurator.model.fields import (
    MOST_OF_ANYTHING,
    Length,
    Record,
    Text,
    Thing,
    field,
    not_endless,
    of_its_kind,
)
from configurator.model.outline import Corner, outline_fault, sizes_of
from configurator.model.words import Approach, FrameKind, FrameProfile, ObstructionKind, Side, SizesFrom
from configurator.tables import ObstructionKindRow, row_of
from configurator.units import TOLERANCE, format_size

# Layers are typed in 1/64ths or tenths of a millimetre; their sum may differ by that much and no more.
LAYER_SUM_TOLERANCE = 1e-6


class Frame(Record):
    """The frame's profile in plan, inches."""

    kind: FrameKind = field(
        "frame kind", default="knocked-down drywall", help="its usual sizes stand wherever none are given"
    )
    profile: FrameProfile | None = field(
        "frame profile",
        help="a usual profile of that kind: its sizes stand wherever none are given",
        left_out="usual of its kind",
    )
    sizes_from: SizesFrom = field(
        "frame sizes from",
        "where the frame's sizes are from",
        "usual",
        help="of a profile that was measured, or is as its maker draws it, no size counts as assumed",
    )
    face: Length | None = field(
        "frame face width",
        gt=0,
        le=24,
        help="how wide the frame shows beside the opening: the jamb of wood, the tube of aluminum",
    )
    rabbet: Length | None = field(
        "rabbet depth",
        "from frame face back to the frame stop",
        gt=0,
        le=12,
        help="the step of the frame that the door closes into",
    )
    stop_height: Length | None = field(
        "frame stop height",
        "how far the frame stop stands into the opening",
        ge=0,
        le=6,
        help="from the rabbet to the edge of the stop that the door closes against",
    )
    stop_gap: Length | None = field(
        "gap at the frame stop",
        "closed door to frame stop",
        ge=0,
        le=2,
        help="room for silencers or a seal behind the closed door",
    )
    jamb_depth: Length | None = field(
        "jamb depth",
        "frame depth through the wall",
        gt=0,
        le=60,
        help="from one frame face to the other, outside to outside",
    )
    return_depth: Length | None = field(
        "return depth",
        "how far the frame turns back at the wall",
        ge=0,
        le=6,
        help="the frame's lip at the wall; the throat is the jamb depth less two of them",
    )
    hinge_backset: Length | None = field(
        "frame hinge backset",
        "frame stop to the edge of the hinge leaf",
        ge=0,
        le=6,
        help="on the frame, for a hinge already prepared there",
        left_out="worked out",
    )
    mortise_depth: Length | None = field(
        "frame mortise depth",
        ge=0,
        le=1,
        help="how deep the hinge leaf is let into the frame",
        left_out="flush",
    )
    stop_width: Length | None = field(
        "frame stop width",
        "how thick the frame stop is, seen from above",
        gt=0,
        le=60,
        help="through the wall: the soffit of a steel frame, or the stop put on a jamb",
    )
    metal_thickness: Length | None = field(
        "frame metal thickness",
        "the metal of the frame",
        gt=0,
        le=0.5,
        help="the sheet of a steel frame, or the wall of an aluminum tube",
    )
    outline: tuple[Corner, ...] | None = field(
        "frame outline",
        "corners of the jamb where it is cut, one after the other",
        help="into the opening, then to the pull side; 0, 0 where face and rabbet meet",
        left_out="by its sizes",
    )

    @field_validator("outline", mode="before")
    @classmethod
    def _not_endless(cls, value: Any) -> Any:
        return not_endless(value, MOST_OF_ANYTHING, "a frame's outline may have up to 200 corners")

    @model_validator(mode="after")
    def _profile_of_its_kind(self) -> Self:
        if self.profile is None:
            return self
        from configurator.tables import frame_profile  # few frames have one: the window's start does without

        if frame_profile(self.profile).kind != self.kind:
            raise PydanticCustomError(
                "needs",
                "the profile {profile} is of a {kind} frame",
                {"field": "profile", "profile": self.profile, "kind": frame_profile(self.profile).kind},
            )
        return self

    @model_validator(mode="after")
    def _outline_is_a_jamb(self) -> Self:
        if self.outline is None:
            return self
        if fault := outline_fault(self.outline):
            raise PydanticCustomError("needs", "{fault}", {"field": "outline", "fault": fault})
        for name, value in sizes_of(self.outline).items():
            given = getattr(self, name)
            if given is not None and abs(given - value) > TOLERANCE:
                raise PydanticCustomError(
                    "needs",
                    "the frame's outline has a {name} of {value} in and {given} in is given: leave one out",
                    {"field": name, "name": name.replace("_", " "), "value": format_size(value),
                     "given": format_size(given)},
                )  # fmt: skip
        return self


class WallLayer(Record):
    """One layer of a wall, from the pull side in."""

    name: Text = field("layer name", default=..., help="as it is lettered in the picture")
    thickness: Length = field(
        "layer thickness", default=..., gt=0, le=60, help="together the layers make the wall"
    )


class Wall(Record):
    """The wall beside the frame, inches."""

    thickness: Length | None = field(
        "wall thickness", gt=0, le=120, help="from wall face to wall face, boards and tile included"
    )
    layers: tuple[WallLayer, ...] | None = field(
        "wall layers",
        "what the wall is made of, from the pull side",
        help="together they make the wall, and so where the wall face stands beside the frame",
    )
    frame_proud: Length | None = field(
        "frame proud of wall",
        "frame stands out from wall by",
        ge=-60,
        le=24,
        help="frame face ahead of the wall face on the pull side; negative: behind it",
    )

    @field_validator("layers", mode="before")
    @classmethod
    def _not_endless(cls, value: Any) -> Any:
        return not_endless(value, MOST_OF_ANYTHING, "a wall may have up to 200 layers")

    @model_validator(mode="after")
    def _layers_add_up(self) -> Self:
        if self.layers and self.thickness is not None:
            total = math.fsum(layer.thickness for layer in self.layers)
            if abs(total - self.thickness) > LAYER_SUM_TOLERANCE:
                raise PydanticCustomError(
                    "layers",
                    "the layers add up to {total} in and the wall is {wall} in thick; they must agree",
                    {"total": format_size(total), "wall": format_size(self.thickness)},
                )
        return self


class Sill(Record):
    """What lies under the closed door, inches."""

    threshold_height: Length | None = field(
        "threshold height",
        "how high the threshold is",
        gt=0,
        le=6,
        help="from the finished floor to its top, under the door",
        left_out="not known",
    )
    threshold_width: Length | None = field(
        "threshold width",
        "the threshold, across the floor",
        gt=0,
        le=60,
        help="from its edge on the pull side to the one on the push side",
        left_out="not dimensioned",
    )
    floor_finish: Length | None = field(
        "floor finish thickness",
        "floor finish over the slab",
        gt=0,
        le=24,
        help="the slab lies this far below the level that heights are counted from",
        left_out="not known",
    )


class Floor(Record):
    """The free floor on one side of the door, inches; asked for on an accessible route."""

    approach: Approach | None = field(
        "approach",
        "from which way people come",
        help="straight on, or along the wall from one of its sides",
        left_out="not known",
    )
    depth: Length | None = field(
        "free floor depth",
        "how deep the floor is",
        gt=0,
        le=1200,
        help="wall face to what stands opposite",
        left_out="not known",
    )
    latch_side: Length | None = field(
        "free beside the lock",
        ge=0,
        le=1200,
        help="along the wall, from the frame's outer edge to what stands in the way",
        left_out="not known",
    )
    hinge_side: Length | None = field(
        "free beside the hinges",
        ge=0,
        le=1200,
        help="the same beside the hinge jamb; counts where people push, coming from the hinge side",
        left_out="not known",
    )


class Obstruction(Thing):
    """Something that stands along the wall or about the door, inches."""

    kind: ObstructionKind = field("what stands there", default=..., help="the name by which findings call it")
    side: Side = field("side of the opening", default="hinge", help="beside the hinge jamb or the latch jamb")
    projection: Length | None = field(
        "projection",
        "stands off by",
        gt=0,
        le=600,
        help="from the wall face on the pull side; a casing counts from the frame face",
        left_out="usual of its kind",
        usual=of_its_kind(ObstructionKindRow, "projection"),
    )
    start: Length | None = field(
        "start along the wall",
        "begins this far from the frame",
        ge=-24,
        le=600,
        help="from the frame's outer edge; negative reaches over the frame's face",
        left_out="usual of its kind",
        usual=of_its_kind(ObstructionKindRow, "start"),
    )
    length: Length | None = field(
        "length along the wall", gt=0, le=1200, help="from its start, away from the frame", left_out="runs on"
    )
    diameter: Length | None = field(
        "diameter of a column",
        gt=0,
        le=240,
        help="a column is round in plan",
        left_out="usual of its kind",
        usual=of_its_kind(ObstructionKindRow, "diameter"),
    )
    offset: Length | None = field(
        "offset from the wall",
        "held off the wall by",
        ge=0,
        le=600,
        help="from the wall face to its back",
        left_out="none",
    )
    bottom: Length | None = field(
        "bottom above floor",
        ge=0,
        le=300,
        help="what is above or below the door cannot be met by it",
        left_out="from floor",
    )
    top: Length | None = field(
        "top above floor",
        gt=0,
        le=300,
        help="what ends below the door cannot be met by it",
        left_out="full height",
    )
    element: Text | None = field(
        "element of the building model",
        "found in the architect's model as",
        help="what was found there, by name and global id; a newer model takes its place",
        left_out="typed here",
    )

    @model_validator(mode="after")
    def _makes_sense(self) -> Self:
        low, high = self.bottom or 0.0, self.top
        if high is not None and high <= low:
            raise PydanticCustomError(
                "heights", "top must be higher than bottom ({low} in)", {"low": format_size(low)}
            )
        row = row_of(ObstructionKindRow, self.kind)
        name = {"name": row.name}
        if row.outline == "round" and self.length is not None:
            raise PydanticCustomError("needs", "a {name} has a diameter, not a length", name)
        if row.outline != "round" and self.diameter is not None:
            raise PydanticCustomError("needs", "only a column has a diameter")
        if row.outline == "wall" and (self.start or 0.0) < 0:
            raise PydanticCustomError(
                "needs", "a {name} starts at the frame's outer edge or beyond (0 or more)", name
            )
        return self
