"""The tables under `resources/tables/`: what the trade knows, a row a fact, each with its source.

In come the program's own CSV files. Out go frozen rows, read once, and the few that are wanted by key: a
kind, a limit, a practice, the usual sizes of a frame. `kinds` and `rows` tell what a row of each table is,
`reading` refuses a file that is not so, naming line and column, and `keyed` finds a row by its key. It knows
nothing of openings, rules or drawings.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

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

if TYPE_CHECKING:
    from configurator.tables.keyed import frame_profile, frame_usual, limit, practice, words_of
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

_KEYED = ("frame_profile", "frame_usual", "limit", "practice", "words_of")


def __getattr__(name: str) -> Any:
    """Load `rows` and `keyed` only when something of theirs is asked for: a window stands without them."""
    if name in __all__:
        module = "keyed" if name in _KEYED else "rows"
        globals()[name] = getattr(import_module(f"configurator.tables.{module}"), name)
        return globals()[name]
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
