"""The tables under `resources/tables/` as frozen rows, each with its source and how sure it is.

One row, one fact. A number in a table is inches unless its column says otherwise; an empty cell means that
there is no such value (no limit, no number on that metal).
"""

import csv
import types
from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import cache
from typing import Any, Literal, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from configurator.resource_files import resource_path

Mark = Literal["read", "common practice", "from memory", "derived"]
MARKS: tuple[Mark, ...] = get_args(Mark)


class TableError(ValueError):
    """A table of the program's own is not as it should be; the message names table, line and column."""


@dataclass(frozen=True, slots=True)
class Source:
    """Where a fact comes from, and how sure it is.

    `mark` is "read" only when the words stand in the named document; "common practice" and "from memory" have
    no citable source; "derived" is worked out here.
    """

    text: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Row:
    """What every row ends in."""

    source: str
    mark: Mark

    @property
    def cited(self) -> Source:
        """The row's source and mark together."""
        return Source(self.source, self.mark)


@dataclass(frozen=True, slots=True)
class HeightRow(Row):
    """A hinge height for doors over and up to a thickness and a leaf width."""

    thickness_over: float
    thickness_to: float
    width_over: float
    width_to: float | None
    height: float
    weight: str | None


@dataclass(frozen=True, slots=True)
class CountRow(Row):
    """How many hinges a leaf of that height takes, and the step by which one more is added."""

    height_over: float
    height_to: float | None
    count: int
    one_more_each: float | None


@dataclass(frozen=True, slots=True)
class StockRow(Row):
    """One hinge size, height and open width, and how usual it is to find it in stock."""

    height: float
    width: float
    stock: Literal["common", "uncommon", "ask first"]


@dataclass(frozen=True, slots=True)
class GageRow(Row):
    """Leaf thickness of a hinge by height and weight."""

    height: float
    weight: str
    thickness: float


@dataclass(frozen=True, slots=True)
class BarrelRow(Row):
    """Outside diameter of the knuckles by height and weight."""

    height_over: float
    height_to: float | None
    weight: str
    diameter: float


@dataclass(frozen=True, slots=True)
class FinishRow(Row):
    """One finish on one base metal: its US code (none for some), its BHMA number, and what it looks like.

    `look` is the short name two finishes share when they look alike; `swatch` is only an idea of the colour.
    """

    us: str | None
    look: str
    words: str
    metal: str
    bhma: str
    alike: bool
    swatch: str


@dataclass(frozen=True, slots=True)
class ConstructionRow(Row):
    """What a door is made of, and which screws hold a hinge to it."""

    construction: str
    family: Literal["metal", "wood", "aluminum"]
    screws: Literal["machine", "wood"]


@dataclass(frozen=True, slots=True)
class DoorWeightRow(Row):
    """Pounds per square foot of a door, least and greatest, and the thickness that holds for."""

    construction: str
    low: float
    high: float
    thickness: float
    scales: bool


@dataclass(frozen=True, slots=True)
class SheetRow(Row):
    """The sheets that a door of that construction has at the least, and the pounds a square foot of each."""

    construction: str
    sheets: int
    sheet: str
    pounds: float


@dataclass(frozen=True, slots=True)
class FrameRow(Row):
    """The usual value of one part of a frame of that kind; `plus_thickness` adds the door's thickness."""

    kind: str
    key: str
    value: float | None
    plus_thickness: bool

    def for_door(self, thickness: float) -> float | None:
        """Return the usual value, inches, for a door of that thickness; None where nothing is usual."""
        if self.value is None:
            return None
        return self.value + (thickness if self.plus_thickness else 0.0)


@dataclass(frozen=True, slots=True)
class FrameMaterialRow(Row):
    """What a kind of frame is made of, and which screws hold a hinge to it."""

    kind: str
    material: Literal["steel", "wood", "aluminum"]
    screws: Literal["machine", "wood"]
    words: str


@dataclass(frozen=True, slots=True)
class WallLayerRow(Row):
    """A layer that walls are commonly made of, and how thick."""

    name: str
    thickness: float


@dataclass(frozen=True, slots=True)
class FrequencyRow(Row):
    """How often such a door is opened in a day, and the traffic that is called."""

    place: str
    per_day_low: int
    per_day_high: int
    traffic: str


@dataclass(frozen=True, slots=True)
class ScrewRow(Row):
    """Screws in each leaf of a hinge of that height, and their usual sizes."""

    height: float
    per_leaf: int
    machine: str
    wood: str


Place = Literal["top", "bottom", "western top", "western bottom", "above split", "below split"]


@dataclass(frozen=True, slots=True)
class LocationRow(Row):
    """Where a hinge is set: inches from a datum to an end of the hinge."""

    place: Place
    distance: float
    datum: str


@dataclass(frozen=True, slots=True)
class FireRow(Row):
    """Least hinge of a labelled door up to a thickness, width and height."""

    thickness_over: float
    thickness_to: float
    width_to: float
    height_to: float
    hinge_height: float
    leaf_thickness: float


@dataclass(frozen=True, slots=True)
class TypeRow(Row):
    """An ANSI/BHMA A156.1 type number and what it stands for."""

    metal: str
    bearing: str
    weight: str
    type: str
    grade: int


@dataclass(frozen=True, slots=True)
class LimitRow(Row):
    """One number that a rule tests against, in the unit it names."""

    key: str
    value: float
    unit: str
    words: str


@dataclass(frozen=True, slots=True)
class HardwareGroupRow(Row):
    """One group of a hardware schedule by its place in it; `kinds` are the things in it, with semicolons."""

    place: int
    name: str
    kinds: str


@dataclass(frozen=True, slots=True)
class PracticeRow(Row):
    """A rule that is words rather than a number, with where it comes from."""

    key: str
    words: str


@dataclass(frozen=True, slots=True)
class ToleranceRow(Row):
    """How far one thing is usually off, plus or minus; `made_of` narrows it to doors or frames of that."""

    key: str
    made_of: Literal["metal", "wood"] | None
    value: float


ROWS: Mapping[str, type[Row]] = {
    "hinge_heights": HeightRow,
    "hinge_counts": CountRow,
    "stock_sizes": StockRow,
    "leaf_gages": GageRow,
    "barrels": BarrelRow,
    "finishes": FinishRow,
    "constructions": ConstructionRow,
    "door_weights": DoorWeightRow,
    "sheet_weights": SheetRow,
    "frame_kinds": FrameRow,
    "frame_materials": FrameMaterialRow,
    "wall_layers": WallLayerRow,
    "frequencies": FrequencyRow,
    "screws": ScrewRow,
    "hinge_locations": LocationRow,
    "fire_hinges": FireRow,
    "hinge_types": TypeRow,
    "limits": LimitRow,
    "hardware_groups": HardwareGroupRow,
    "practices": PracticeRow,
    "tolerances": ToleranceRow,
}
"""Every table by name, and what its rows are."""

R = TypeVar("R", bound=Row)


def table(kind: type[R]) -> tuple[R, ...]:
    """Return all rows of a kind, in the order of the file; each file is read once.

    Raises TableError when the file is not as it should be, FileNotFoundError when it is missing.
    """
    return cast(tuple[R, ...], _rows(kind))  # type: ignore[arg-type]


@cache
def _rows(kind: type[Row]) -> tuple[Row, ...]:
    name = next(name for name, row in ROWS.items() if row is kind)
    return read_table(resource_path("tables", f"{name}.csv").read_text("utf-8"), name, kind)


def read_table(text: str, name: str, kind: type[R]) -> tuple[R, ...]:
    """Read one table's text; `name` is what a fault calls it. Raises TableError naming line and column."""
    reader = csv.DictReader(text.splitlines())
    wanted = {field.name for field in fields(kind)}
    if set(reader.fieldnames or ()) != wanted:
        raise TableError(f"{name}.csv: the columns must be {', '.join(sorted(wanted))}")
    rows = tuple(_row(cells, f"{name}.csv line {reader.line_num}", kind) for cells in reader)
    if not rows:
        raise TableError(f"{name}.csv: it has no rows")
    return rows


def frame_usual(kind: str) -> Mapping[str, FrameRow]:
    """Return the usual values of a kind of frame, by the keys of a project file's frame and door.

    Raises KeyError when there is no such kind.
    """
    return _frame_kinds()[kind]


def limit(key: str) -> LimitRow:
    """Return one limit by its key. Raises KeyError when there is none."""
    return _limits()[key]


def practice(key: str) -> Source:
    """Return where a rule that is words comes from. Raises KeyError when there is none."""
    return _practices()[key].cited


def words_of(key: str) -> str:
    """Return a practice in words. Raises KeyError when there is none."""
    return _practices()[key].words


@cache
def _limits() -> Mapping[str, LimitRow]:
    return {row.key: row for row in table(LimitRow)}


@cache
def _practices() -> Mapping[str, PracticeRow]:
    return {row.key: row for row in table(PracticeRow)}


@cache
def _frame_kinds() -> Mapping[str, Mapping[str, FrameRow]]:
    kinds = dict.fromkeys(row.kind for row in table(FrameRow))
    return {kind: {row.key: row for row in table(FrameRow) if row.kind == kind} for kind in kinds}


@cache
def _types_of(kind: type[Row]) -> Mapping[str, Any]:
    return get_type_hints(kind)


def _row(cells: Mapping[str, str | None], where: str, kind: type[R]) -> R:
    if None in cells or None in cells.values():
        raise TableError(f"{where}: it has too many or too few cells")
    wanted: Mapping[str, Any] = _types_of(kind)  # type: ignore[arg-type]
    values = {name: _cell(cells[name] or "", of, f"{where}, {name}") for name, of in wanted.items()}
    return kind(**values)


def _cell(cell: str, wanted: Any, where: str) -> Any:
    cell = cell.strip()
    options = get_args(wanted) if get_origin(wanted) in (Union, types.UnionType) else (wanted,)
    if not cell and type(None) in options:
        return None
    return _converted(cell, options[0], where)


def _converted(cell: str, wanted: Any, where: str) -> Any:
    if get_origin(wanted) is Literal:
        if cell not in get_args(wanted):
            raise TableError(f"{where}: “{cell}” is none of {', '.join(get_args(wanted))}")
        return cell
    if wanted is bool:
        return _converted(cell, Literal["yes", "no"], where) == "yes"
    try:
        value = wanted(cell)
    except ValueError:
        raise TableError(f"{where}: “{cell}” is not a number") from None
    if value == "":
        raise TableError(f"{where}: the cell is empty")
    return value
