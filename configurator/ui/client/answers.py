"""What a client can answer about a door, and what each answer changes in the opening. No Qt here.

Sizes that nobody measured are left out: they are the usual ones of their kind, and count as assumed.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby
from types import MappingProxyType
from typing import Any

from configurator.model import Opening
from configurator.tables import FrameKindRow, HardwareKindRow, ObstructionKindRow, row_of, table
from configurator.ui.form.presets import usual_casing, usual_hardware, usual_obstruction

Row = dict[str, Any]


@dataclass(frozen=True, slots=True)
class WallAnswer:
    """A wall in a client's words, the kind of frame that goes with it, and the kinds that look alike."""

    name: str
    frame: FrameKindRow
    alike: frozenset[str]


@dataclass(frozen=True, slots=True)
class ThingAnswer:
    """A thing on the wall in a client's words, the row it starts as, and what a client can say of it.

    `usual` has the sizes that are taken until somebody measures, inches.
    """

    name: str
    row: Row
    measures: tuple[str, ...]
    usual: Row


_FRAMES = {name: tuple(group) for name, group in groupby(table(FrameKindRow), lambda row: row.client)}
WALLS = tuple(
    WallAnswer(name, rows[0], frozenset(row.kind for row in rows)) for name, rows in _FRAMES.items()
)
"""The walls in the order they are offered; of frames that look alike the first is taken."""

THINGS = tuple(
    ThingAnswer(row.client, usual_obstruction(row), tuple((row.client_measures or "").split()), row.usual)
    for row in table(ObstructionKindRow)
    if row.client is not None
)
"""The things in the order they are offered. Casing is part of the door and goes with the wall."""

NO_HANDLE = "None drawn"
HANDLES: Mapping[str, Row] = MappingProxyType(
    {row.label: usual_hardware(row, None) for row in table(HardwareKindRow) if row.handle}
)
"""Handles in the order they are offered."""


def wall_of(opening: Opening) -> WallAnswer | None:
    """Return the answer that describes the opening's wall."""
    return next((wall for wall in WALLS if opening.frame.kind in wall.alike), None)


def wall_changes(opening: Opening, wall: WallAnswer) -> dict[str, Any]:
    """Return what taking a wall changes; thickness and place in the wall are those usual for its frame.

    A wood frame brings its casing, and takes it along when it goes.
    """
    # A frame without a usual place is taken to stand flush until somebody measures.
    proud = None if wall.frame.usual_place else 0.0
    changes: dict[str, Any] = {"frame.kind": wall.frame.kind, "wall.frame_proud": proud}
    given = {"wall.thickness": opening.wall.thickness, "frame.jamb_depth": opening.frame.jamb_depth}
    changes |= {path: None for path, value in given.items() if value is not None}
    if opening.wall.layers is not None:
        changes["wall.layers"] = None
    rows = [row for row in _rows(opening) if row != usual_casing()]
    if wall.frame.cased and all(row["kind"] != "casing" for row in rows):
        rows.insert(0, usual_casing())
    return changes if rows == _rows(opening) else {**changes, "obstructions": rows}


def places_of(opening: Opening, thing: ThingAnswer) -> tuple[int, ...]:
    """Return where in the list things of that kind stand on the hinge side."""
    return tuple(
        place
        for place, one in enumerate(opening.obstructions)
        if one.kind == thing.row["kind"] and one.side == "hinge"
    )


def with_thing(opening: Opening, thing: ThingAnswer, there: bool) -> list[Row]:
    """Return the list of what stands about the door with a thing put there, or taken away."""
    rows, places = _rows(opening), places_of(opening, thing)
    if not there:
        return [row for place, row in enumerate(rows) if place not in places]
    return rows if places else [*rows, _beside_casing(thing.row, opening)]


def with_nothing(opening: Opening) -> list[Row]:
    """Return the list without anything that a client was asked about."""
    gone = {place for thing in THINGS for place in places_of(opening, thing)}
    return [row for place, row in enumerate(_rows(opening)) if place not in gone]


def handle_of(opening: Opening) -> str:
    """Return the answer that describes the handle on the side that the door is pulled open from."""
    kinds = {row["kind"]: name for name, row in HANDLES.items()}
    on_it = (kinds[one.kind] for one in opening.hardware if one.kind in kinds and one.face == "pull")
    return next(on_it, NO_HANDLE)


def with_handle(opening: Opening, name: str) -> list[Row]:
    """Return the door's hardware with another handle, or none; what else it carries stays."""
    data: dict[str, Any] = opening.model_dump(include={"hardware"}, exclude_unset=True)
    kinds = {row["kind"] for row in HANDLES.values()}
    others = [row for row in data.get("hardware", ()) if row["kind"] not in kinds]
    return others if name == NO_HANDLE else [dict(HANDLES[name]), *others]


def _beside_casing(row: Row, opening: Opening) -> Row:
    """Return the row, beginning where the door's casing ends if it would begin behind that."""
    usual = row_of(ObstructionKindRow, row["kind"]).start or 0.0
    ends = [
        (one.start or 0.0) + (one.length or 0.0)
        for one in opening.obstructions
        if one.kind == "casing" and one.side == "hinge"
    ]
    return {**row, "start": max(ends)} if ends and max(ends) > usual else row


def _rows(opening: Opening) -> list[Row]:
    data: dict[str, Any] = opening.model_dump(include={"obstructions"}, exclude_unset=True)
    return [dict(row) for row in data.get("obstructions", ())]
