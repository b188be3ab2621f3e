"""One opening as the user described it: only what was said, never what was worked out."""

import math
from typing import Any, Self

from pydantic import field_validator, model_validator
from pydantic_core import PydanticCustomError

from configurator.model.door_stop import DoorStop
from configurator.model.fields import Degrees, Flag, Length, Pounds, Record, Text, Whole, field
from configurator.model.hinge import ExistingHinge, Hinge
from configurator.model.hinge_locations import HingeLocations
from configurator.model.tolerances import Tolerances
from configurator.model.words import (
    Construction,
    Exposure,
    Face,
    FrameKind,
    Hand,
    HardwareKind,
    HungOn,
    LeafName,
    Leaves,
    ObstructionKind,
    Outline,
    Side,
    Status,
    Traffic,
)
from configurator.tables import FrameKindRow, ObstructionKindRow, row_of
from configurator.units import LengthError, format_size, parse_opening_size

# Layers are typed in 1/64ths or tenths of a millimetre; their sum may differ by that much and no more.
LAYER_SUM_TOLERANCE = 1e-6
MOST_OF_ANYTHING = 200


class Size(Record):
    """Opening size: rabbet to rabbet, and finished floor to head rabbet, inches."""

    width: Length = field(
        "opening width",
        "door opening width",
        ...,
        gt=0,
        le=300,
    )
    height: Length = field("opening height", "door opening height", ..., gt=0, le=300)


class Door(Record):
    """The door itself, inches; pounds for its weight."""

    construction: Construction | None = field("door construction", "what the door is made of")
    thickness: Length | None = field("door thickness", gt=0, le=6)
    latch_bevel: Length | None = field(
        "latch bevel",
        "slant of the lock edge",
        ge=0,
        le=0.5,
    )
    hinge_backset: Length | None = field(
        "door hinge backset",
        "hinge set back from the door's far face",
        ge=0,
        le=6,
    )
    mortise_depth: Length | None = field("door mortise depth", ge=0, le=1)
    hinge_gap: Length | None = field("hinge-side gap", "gap on the hinge side, door closed", ge=0, le=2)
    latch_gap: Length | None = field("latch-side gap", "gap on the lock side, door closed", ge=0, le=2)
    head_gap: Length | None = field("head gap", "gap above the door", ge=0, le=2)
    meeting_gap: Length | None = field("meeting gap", "gap between the two leaves of a pair", ge=0, le=2)
    split_gap: Length | None = field("split gap", "gap between upper and lower leaf", ge=0, le=2)
    undercut: Length | None = field("undercut", "gap under the door", ge=0, le=12)
    weight: Pounds | None = field("door weight in pounds", "what one leaf weighs, in pounds", gt=0, le=5000)


class Frame(Record):
    """The frame's profile in plan, inches."""

    kind: FrameKind = field("frame kind", default="knocked-down drywall")
    face: Length | None = field("frame face width", gt=0, le=24)
    rabbet: Length | None = field("rabbet depth", "from frame face back to the frame stop", gt=0, le=12)
    stop_height: Length | None = field(
        "frame stop height", "how far the frame stop stands into the opening", ge=0, le=6
    )
    stop_gap: Length | None = field("gap at the frame stop", "closed door to frame stop", ge=0, le=2)
    jamb_depth: Length | None = field("jamb depth", "frame depth through the wall", gt=0, le=60)
    return_depth: Length | None = field(
        "return depth", "how far the frame turns back at the wall", ge=0, le=6
    )
    hinge_backset: Length | None = field(
        "frame hinge backset", "frame stop to the edge of the hinge leaf", ge=0, le=6
    )
    mortise_depth: Length | None = field("frame mortise depth", ge=0, le=1)
    stop_width: Length | None = field(
        "frame stop width", "how thick the frame stop is, seen from above", gt=0, le=60
    )
    metal_thickness: Length | None = field("frame metal thickness", "the metal of the frame", gt=0, le=0.5)


class WallLayer(Record):
    """One layer of a wall, from the pull side in."""

    name: Text = field("layer name", default=...)
    thickness: Length = field("layer thickness", default=..., gt=0, le=60)


class Wall(Record):
    """The wall beside the frame, inches."""

    thickness: Length | None = field("wall thickness", gt=0, le=120)
    layers: tuple[WallLayer, ...] | None = field(
        "wall layers", "what the wall is made of, from the pull side"
    )
    frame_proud: Length | None = field(
        "frame proud of wall",
        "frame stands out from wall by",
        ge=-60,
        le=24,
    )

    @model_validator(mode="after")
    def _layers_add_up(self) -> Self:
        if self.layers is not None and len(self.layers) > MOST_OF_ANYTHING:
            raise PydanticCustomError("layers", "a wall may have up to 200 layers")
        if self.layers and self.thickness is not None:
            total = math.fsum(layer.thickness for layer in self.layers)
            if abs(total - self.thickness) > LAYER_SUM_TOLERANCE:
                raise PydanticCustomError(
                    "layers",
                    "the layers add up to {total} in and the wall is {wall} in thick; they must agree",
                    {"total": format_size(total), "wall": format_size(self.thickness)},
                )
        return self


class Obstruction(Record):
    """Something that stands along the wall or about the door, inches."""

    kind: ObstructionKind = field("what stands there", default=...)
    side: Side = field("side of the opening", default="hinge")
    projection: Length | None = field(
        "projection",
        "stands off by",
        gt=0,
        le=600,
    )
    start: Length | None = field(
        "start along the wall",
        "begins this far from the frame",
        ge=-24,
        le=600,
    )
    length: Length | None = field("length along the wall", gt=0, le=1200)
    diameter: Length | None = field("diameter of a column", gt=0, le=240)
    offset: Length | None = field("offset from the wall", "held off the wall by", ge=0, le=600)
    bottom: Length | None = field("bottom above floor", ge=0, le=300)
    top: Length | None = field("top above floor", gt=0, le=300)

    @model_validator(mode="after")
    def _makes_sense(self) -> Self:
        low, high = self.bottom or 0.0, self.top
        if high is not None and high <= low:
            raise PydanticCustomError(
                "heights", "top must be higher than bottom ({low} in)", {"low": format_size(low)}
            )
        row = row_of(ObstructionKindRow, self.kind)
        name = {"name": row.name}
        if row.outline == "round" and self.diameter is None:
            raise PydanticCustomError("needs", "a {name} needs a diameter", name)
        if row.outline == "round" and self.length is not None:
            raise PydanticCustomError("needs", "a {name} has a diameter, not a length", name)
        if row.outline != "round" and self.diameter is not None:
            raise PydanticCustomError("needs", "only a column has a diameter")
        if row.outline == "box" and self.projection is None:
            raise PydanticCustomError("needs", "projection must be given")
        if row.outline == "wall" and (self.start or 0.0) < 0:
            raise PydanticCustomError(
                "needs", "a {name} starts at the frame's outer edge or beyond (0 or more)", name
            )
        return self


class Hardware(Record):
    """A box (or, for a knob, a round) on one face of a leaf, inches."""

    kind: HardwareKind = field("hardware kind", default=...)
    leaf: LeafName | None = field("which leaf")
    face: Face = field("face of the door", default="pull")
    projection: Length = field("hardware projection", "stands off the door by", ..., gt=0, le=48)
    from_latch_edge: Length = field(
        "centre from latch edge", "middle to the door's lock edge", ..., ge=-12, le=300
    )
    width: Length = field(
        "hardware width",
        default=...,
        gt=0,
        le=300,
    )
    height: Length = field("centre above floor", default=..., ge=0, le=300)
    outline: Outline | None = field("outline from above")
    vertical: Length = field("hardware height", "how tall it is", ..., gt=0, le=300)


class Use(Record):
    """What the opening is for, and what it has to do; degrees and inches."""

    exposure: Exposure | None = field("exposure")
    coastal: Flag | None = field("near salt water", "by the sea")
    humid: Flag | None = field("humid room")
    locked: Flag | None = field("locked", "has a lock")
    lock_both_sides: Flag | None = field(
        "locked from both sides",
        "needs a key on both sides",
    )
    lock_finish_bhma: Text | None = field(
        "lock's BHMA finish number",
        "finish number of the lock",
    )
    fire_rated: Flag | None = field("fire rated")
    closer: Flag | None = field("door closer", "closes by itself")
    traffic: Traffic | None = field("traffic", "how often it is used")
    accessible: Flag | None = field("on an accessible route")
    clear_width_margin: Length | None = field(
        "margin over the clear width",
        "walk-through width to spare",
        ge=0,
        le=12,
    )
    wanted_angle: Degrees | None = field("wanted angle", "must open to", gt=0, le=180)
    stop_angle: Degrees | None = field("door stop angle", "a door stop holds it at", gt=0, le=180)
    corridor_width: Length | None = field("corridor width", gt=0, le=1200)
    required_width: Length | None = field("required corridor width", gt=0, le=1200)


class Opening(Record):
    """One opening of a job (or several alike, by `quantity`)."""

    mark: Text = field("mark", default=...)
    location: Text | None = field("location")
    quantity: Whole = field("quantity", "how many alike", 1, ge=1, le=100_000)
    status: Status = field("status", default="assumed")
    notes: Text | None = field("notes")
    questions: Text | None = field("questions to the architect", "what is still to be asked")
    hung_on: HungOn = field("hung on", default="butt hinges")
    hand: Hand | None = field("hand")
    leaves: Leaves = field("leaves", default="single")
    active_width: Length | None = field("active leaf net width", gt=0, le=300)
    split_height: Length | None = field(
        "split height", "where a Dutch door divides, above the floor", gt=0, le=300
    )
    size: Size = field("opening size", default=...)
    door: Door = field("door", default=Door())
    frame: Frame = field("frame", default=Frame())
    wall: Wall = field("wall", default=Wall())
    obstructions: tuple[Obstruction, ...] = field("what stands about the door", default=())
    hardware: tuple[Hardware, ...] = field("hardware", default=())
    use: Use = field("use", default=Use())
    compare: tuple[Length, ...] = field("hinge open widths to compare", default=())
    hinge: Hinge | None = field("hinge")
    prepared_height: Length | None = field(
        "prepared hinge height",
        "door or frame is already cut for hinges this high",
        gt=0,
        le=24,
    )
    existing_hinge: ExistingHinge | None = field("existing hinge", "what hangs there now")
    hinge_locations: HingeLocations = field(
        "hinge locations", "where along the height hinges sit", HingeLocations()
    )
    door_stop: DoorStop | None = field("door stop", "what the open door comes to rest against")
    tolerances: Tolerances = field("tolerances", "how far what is built may be off", Tolerances())

    @field_validator("leaves", mode="before")
    @classmethod
    def _no_double_egress(cls, value: Any) -> Any:
        if isinstance(value, str) and "egress" in value.lower():
            raise PydanticCustomError(
                "needs",
                "a double-egress pair, whose two leaves swing opposite ways, is not worked out here; "
                "describe each leaf as a single opening of its own hand",
            )
        return value

    @model_validator(mode="after")
    def _butted_frame_has_its_place(self) -> Self:
        known = row_of(FrameKindRow, self.frame.kind).usual_place
        if not known and self.wall.frame_proud is None:
            raise PydanticCustomError(
                "needs",
                "frame proud of wall must be given: a butted frame has no usual place in the wall "
                "(0 where it is flush, negative where it stands behind the wall face)",
                {"field": "wall.frame_proud"},
            )
        return self

    @model_validator(mode="after")
    def _leaves_fit(self) -> Self:
        if self.leaves == "pair" and self.active_width is not None and self.active_width >= self.size.width:
            raise PydanticCustomError(
                "needs",
                "active leaf net width must be less than the opening width ({width} in)",
                {"field": "active_width", "width": format_size(self.size.width)},
            )
        if self.leaves == "dutch" and self.split_height is not None and self.split_height >= self.size.height:
            raise PydanticCustomError(
                "needs",
                "split height must be less than the opening height ({height} in)",
                {"field": "split_height", "height": format_size(self.size.height)},
            )
        return self

    @field_validator("size", mode="before")
    @classmethod
    def _short_size(cls, value: Any) -> Any:
        if not isinstance(value, str):
            return value
        try:
            width, height = parse_opening_size(value)
        except LengthError as error:
            raise PydanticCustomError("length", "{reason}", {"reason": str(error)}) from None
        return {"width": width, "height": height}

    @field_validator("mark")
    @classmethod
    def _mark_is_there(cls, value: str) -> str:
        if not value.strip() or "\n" in value or len(value) > 100:
            raise PydanticCustomError("mark", "a mark is one line of 1 to 100 characters")
        return value

    @field_validator("obstructions", "hardware")
    @classmethod
    def _not_endless(cls, value: tuple[Any, ...]) -> tuple[Any, ...]:
        if len(value) > MOST_OF_ANYTHING:
            raise PydanticCustomError("many", "an opening may have up to 200 of these")
        return value

    @field_validator("compare")
    @classmethod
    def _widths_to_compare(cls, value: tuple[float, ...]) -> tuple[float, ...]:
        if len(set(value)) != len(value):
            raise PydanticCustomError("compare", "the same hinge open width stands twice")
        if len(value) > 12:
            raise PydanticCustomError("compare", "up to 12 hinge open widths can be compared")
        for width in value:
            if not 1 <= width <= 24:
                raise PydanticCustomError(
                    "compare",
                    "a hinge open width is from 1 to 24 in; {width} was given",
                    {"width": format_size(width)},
                )
        return value
