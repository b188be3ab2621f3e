"""The tables under `resources/tables/`: what the trade knows, a row a fact, each with its source.

In come the program's own CSV files. Out go frozen rows, read once, and the few that are wanted by key: a
kind, a limit, a practice, the usual sizes of a frame. `kinds` and `rows` tell what a row of each table is,
`reading` refuses a file that is not so, naming line and column. It knows nothing of openings, rules or
drawings.
"""

from collections.abc import Mapping
from functools import cache

from configurator.tables.kinds import (
    MARKS,
    ConstructionRow,
    DoorStopKindRow,
    FrameKindRow,
    HardwareKindRow,
    KindRow,
    Mark,
    ObstructionKindRow,
    Row,
    Source,
    WayRow,
)
from configurator.tables.reading import TableError, read_table, resource_rows, row_of, table
from configurator.tables.rows import (
    ROWS,
    BarrelRow,
    CountRow,
    DoorWeightRow,
    FinishRow,
    FireRow,
    FrameProfileRow,
    FrameSizeRow,
    FrequencyRow,
    GageRow,
    HardwareGroupRow,
    HeightRow,
    LimitRow,
    LocationRow,
    ManoeuvringRow,
    Place,
    PracticeRow,
    ScrewRow,
    SheetRow,
    StockRow,
    ToleranceRow,
    TypeRow,
    WallLayerRow,
)

__all__ = [
    "MARKS",
    "ROWS",
    "BarrelRow",
    "ConstructionRow",
    "CountRow",
    "DoorStopKindRow",
    "DoorWeightRow",
    "FinishRow",
    "FireRow",
    "FrameKindRow",
    "FrameProfileRow",
    "FrameSizeRow",
    "FrequencyRow",
    "GageRow",
    "HardwareGroupRow",
    "HardwareKindRow",
    "HeightRow",
    "KindRow",
    "LimitRow",
    "LocationRow",
    "ManoeuvringRow",
    "Mark",
    "ObstructionKindRow",
    "Place",
    "PracticeRow",
    "Row",
    "ScrewRow",
    "SheetRow",
    "Source",
    "StockRow",
    "TableError",
    "ToleranceRow",
    "TypeRow",
    "WallLayerRow",
    "WayRow",
    "frame_profile",
    "frame_usual",
    "limit",
    "practice",
    "read_table",
    "resource_rows",
    "row_of",
    "table",
    "words_of",
]


def frame_usual(kind: str) -> Mapping[str, FrameSizeRow]:
    """Return the usual sizes of a kind of frame, by the keys of a project file's frame and door.

    Raises KeyError when there is no such kind.
    """
    return _frame_sizes()[kind]


def frame_profile(name: str) -> FrameProfileRow:
    """Return a usual profile by its name. Raises KeyError when there is none."""
    return {row.profile: row for row in table(FrameProfileRow)}[name]


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
def _frame_sizes() -> Mapping[str, Mapping[str, FrameSizeRow]]:
    kinds = dict.fromkeys(row.kind for row in table(FrameSizeRow))
    return {kind: {row.key: row for row in table(FrameSizeRow) if row.kind == kind} for kind in kinds}
