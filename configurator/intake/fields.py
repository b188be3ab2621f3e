"""What a column of a schedule can be about, and by which headings: the field of an opening it gives.

What fields are commonly called is in `resources/intake/headings.csv`; common practice, no source.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from types import MappingProxyType
from typing import Literal

from configurator.tables import resource_rows

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
    "found",
]
Unit = Literal["in", "ft-in", "mm"]
UNITS: tuple[Unit, ...] = ("in", "ft-in", "mm")
"""What a number without a unit of its own means: inches, feet, millimetres."""


@dataclass(frozen=True, slots=True)
class Field:
    """One thing a schedule may say; `path` is where it goes in an opening, empty where another column counts.

    A "code" is read like a "word", but one that is not understood is left out instead of refused. What is
    "found" stands behind its cell, put there by a building model, and cannot be typed.
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
    Field("global_id", "global id in the building model", "text", "global_id"),
    Field("layers", "wall layers, from a building model", "found", "wall.layers"),
    Field("along_wall", "what stands along the wall, from a building model", "found", "obstructions"),
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


# --- Headings ---

_UNITS: tuple[tuple[str, Unit], ...] = (
    (r"\b(?:ft\.?\s*[-&]?\s*in\.?|feet(?:\s+and\s+inches)?|ft\.?)(?=\W|$)", "ft-in"),
    (r"\b(?:mm|millimet(?:er|re)s?)\b", "mm"),
    (r"(?:\(\s*in(?:ches|\.)?\s*\)|\[\s*in(?:ches|\.)?\s*\]|\binches\b|,\s*in\.?$)", "in"),
)
_LONGEST_HEADING = 80
_OF_DOORS = frozenset({"size", "width", "height", "hand", "leaves", "door"})
_LEAST_OF_DOORS = 2


@dataclass(frozen=True, slots=True)
class _HeadingRow:
    """A field, and what a schedule may call it."""

    field: str
    heading: str


def fields_named(heading: str) -> tuple[str, ...]:
    """Return the fields a heading may stand for, the likeliest first; none where it is not known."""
    return _table().get(_plain(heading), ())


def unit_named(heading: str) -> Unit | None:
    """Return the unit a heading names, as in “Width (mm)”."""
    return next((unit for pattern, unit in _UNITS if re.search(pattern, heading, re.IGNORECASE)), None)


def height_first(heading: str) -> bool:
    """Say whether the heading of a size names the height before the width, as H x W does."""
    return re.search(r"\bh(?:eight|t)?\.?\s*(?:x|×|by)\s*w", heading, re.IGNORECASE) is not None


def matched(headings: Sequence[tuple[str, str]]) -> tuple[str | None, ...]:
    """Return the field of every column, None where it says none; each field once, the best match first.

    A heading has what stands over it and itself; both together count more than itself alone. “Door” is the
    mark where no other column is.
    """
    found: dict[int, str] = {}
    for parts in (2, 1):
        for place, heading in enumerate(headings):
            taken = set(found.values()) - SEVERAL
            free = [field for field in fields_named(_joined(heading[-parts:])) if field not in taken]
            if place not in found and free:
                found[place] = free[0]
    if "mark" not in found.values():
        found |= _mark_after_all(headings)
    return tuple(found.get(place) for place in range(len(headings)))


@dataclass(frozen=True, slots=True)
class Header:
    """A header among rows: its place from 0, how many rows it takes, and its headings.

    `fields` are those that its headings name. Of a header in two rows the headings have the upper one first,
    and `groups` counts those that mean something only together with it.
    """

    place: int
    depth: int
    headings: tuple[tuple[str, str], ...]
    fields: frozenset[str]
    groups: int = 0

    @property
    def of_doors(self) -> bool:
        """Whether it is plainly that of a door schedule."""
        return "mark" in self.fields and bool(_OF_DOORS & self.fields) and len(self.fields) > _LEAST_OF_DOORS


def best_header(rows: Sequence[Sequence[str]]) -> Header | None:
    """Return the row, or the two rows, that name the most fields; None where none names two."""
    best: Header | None = None
    for place, depth, headings in _candidates(rows):
        fields = frozenset(field for field in matched(headings) if field is not None)
        groups = sum(bool(upper and fields_named(_joined((upper, lower)))) for upper, lower in headings)
        if (len(fields), groups) > ((len(best.fields), best.groups) if best is not None else (1, 99)):
            best = Header(place, depth, headings, fields, groups)
    return best


def _candidates(rows: Sequence[Sequence[str]]) -> Iterator[tuple[int, int, tuple[tuple[str, str], ...]]]:
    """Yield every row as a header, and then every two rows in a row: those must match more to win."""
    for place, cells in enumerate(rows):
        yield place, 1, tuple(("", cell.strip()) for cell in cells)
    for place, (upper, lower) in enumerate(pairwise(rows)):
        yield place, 2, _two_lines(upper, lower)


def _two_lines(upper: Sequence[str], lower: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """Put a line of groups over a line of headings; a group reaches as far as the next one."""
    width = max(len(upper), len(lower))
    group = ""
    headings = []
    for place in range(width):
        above = upper[place].strip() if place < len(upper) else ""
        below = lower[place].strip() if place < len(lower) else ""
        group = above or group
        headings.append((group, below) if below else ("", above))
    return tuple(headings)


def _mark_after_all(headings: Sequence[tuple[str, str]]) -> dict[int, str]:
    for place, heading in enumerate(headings):
        if "mark" in fields_named(heading[1]):
            return {place: "mark"}
    return {}


def _joined(parts: Sequence[str]) -> str:
    return " ".join(filter(None, parts))


def _plain(heading: str) -> str:
    """Return a heading as words only: no unit, no marks, # for a number."""
    text = heading[:_LONGEST_HEADING].casefold().replace("#", " no ").replace("×", " x ").replace("_", " ")
    for pattern, _ in _UNITS:
        text = re.sub(pattern, " ", text)
    return " ".join(re.findall(r"[^\W_]+", text.replace("'", "")))


@cache
def _table() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for row in resource_rows("intake", "headings", _HeadingRow):
        if row.field not in FIELDS:
            raise ValueError(f"headings.csv: there is no field {row.field}")
        heading = _plain(row.heading)
        found[heading] = (*found.get(heading, ()), row.field)
    return found
