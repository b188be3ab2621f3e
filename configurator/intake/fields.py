"""What a column of a schedule can be about: the field of an opening it gives, and how its cells are read."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

Kind = Literal[
    "text",
    "count",
    "size",
    "length",
    "angle",
    "word",
    "code",
    "flag",
    "rating",
    "minutes",
    "hand",
    "swing",
    "keep",
]
Unit = Literal["in", "ft-in", "mm"]
UNITS: tuple[Unit, ...] = ("in", "ft-in", "mm")
"""What a number without a unit of its own means: inches, feet, millimetres."""


@dataclass(frozen=True, slots=True)
class Field:
    """One thing a schedule may say; `path` is where it goes in an opening, empty where another column counts.

    A "code" is read like a "word", but one that is not understood is left out instead of refused.
    """

    name: str
    title: str
    kind: Kind
    path: str = ""


_ALL = (
    Field("mark", "mark", "text", "mark"),
    Field("location", "location", "text", "location"),
    Field("from_room", "location: from", "text"),
    Field("to_room", "location: to", "text"),
    Field("quantity", "quantity", "count", "quantity"),
    Field("size", "opening size", "size"),
    Field("width", "opening width", "length", "size.width"),
    Field("height", "opening height", "length", "size.height"),
    Field("thickness", "door thickness", "length", "door.thickness"),
    Field("hand", "hand", "hand", "hand"),
    Field("swing", "swing, in or out", "swing"),
    Field("leaves", "leaves", "word", "leaves"),
    Field("door", "door construction", "word", "door.construction"),
    Field("door_type", "door type, where it says what of", "code", "door.construction"),
    Field("frame", "frame kind", "word", "frame.kind"),
    Field("frame_type", "frame type, where it says what of", "code", "frame.kind"),
    Field("frame_face", "frame face width", "length", "frame.face"),
    Field("jamb_depth", "jamb depth", "length", "frame.jamb_depth"),
    Field("frame_proud", "frame proud of wall", "length", "wall.frame_proud"),
    Field("wall", "wall thickness", "length", "wall.thickness"),
    Field("undercut", "undercut", "length", "door.undercut"),
    Field("rating", "fire rating", "rating", "use.fire_rated"),
    Field("fire_minutes", "fire rating in minutes", "minutes", "fire_minutes"),
    Field("exposure", "exposure", "word", "use.exposure"),
    Field("traffic", "traffic", "word", "use.traffic"),
    Field("closer", "door closer", "flag", "use.closer"),
    Field("locked", "locked", "flag", "use.locked"),
    Field("accessible", "on an accessible route", "flag", "use.accessible"),
    Field("wanted_angle", "wanted angle", "angle", "use.wanted_angle"),
    Field("hung_on", "hung on", "word", "hung_on"),
    Field("status", "status", "word", "status"),
    Field("order_state", "state of order", "word", "order_state"),
    Field("level", "level", "text", "level"),
    Field("hardware_set", "hardware set", "text", "hardware_set"),
    Field("glass", "glass", "text", "glass"),
    Field("head_detail", "head detail", "text", "details.head"),
    Field("jamb_detail", "jamb detail", "text", "details.jamb"),
    Field("sill_detail", "sill detail", "text", "details.sill"),
    Field("remarks", "schedule's remarks", "text", "remarks"),
    Field("notes", "notes", "text", "notes"),
    Field("questions", "questions to the architect", "text", "questions"),
    Field("keep", "kept under its own heading", "keep"),
)
FIELDS: Mapping[str, Field] = MappingProxyType({field.name: field for field in _ALL})
SEVERAL = frozenset({"notes", "remarks", "keep"})
"""What more than one column may say; texts are put together, and what is kept has its own heading."""
HOUSE = frozenset({"mark", "notes", "questions", "status", "order_state", "hung_on"})
"""Fields that whoever works on the job fills in: a blank cell of a schedule says nothing of them."""
DASHED = frozenset({"level", "hardware_set", "glass", "head_detail", "jamb_detail", "sill_detail"})
"""Texts that are left open by a dash, as every field is that is no text."""
OPENING_SIZES = frozenset({"size", "width", "height"})


def needs_unit(name: str | None) -> bool:
    """Say whether a bare number in such a column means nothing without its unit."""
    return name is not None and FIELDS[name].kind in ("size", "length")
