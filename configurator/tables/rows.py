"""What a row of each table under `resources/tables/` is, the kinds apart, and which table has which rows."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from configurator.tables.kinds import KINDS, Row


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

    `look` is the short name of it on any metal; `alike` says whether it matches from one metal to another by
    eye: no blackened, relieved or oxidized one does. `swatch` is only an idea of the colour.
    """

    us: str | None
    look: str
    words: str
    metal: str
    bhma: str
    alike: bool
    swatch: str


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
class FrameSizeRow(Row):
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
class FrameProfileRow(Row):
    """A usual profile of a kind of frame: its sizes by the keys of a project file's frame, inches.

    What is None is as usual for the kind.
    """

    profile: str
    kind: str
    face: float
    rabbet: float | None
    stop_height: float
    stop_width: float | None
    jamb_depth: float
    return_depth: float | None

    @property
    def sizes(self) -> dict[str, float]:
        """The sizes it has, by their keys."""
        keys = ("face", "rabbet", "stop_height", "stop_width", "jamb_depth", "return_depth")
        return {key: getattr(self, key) for key in keys if getattr(self, key) is not None}


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
    """Least hinge of a labelled door up to a thickness, width and height; no thickness: or thicker."""

    hinge: Literal["butt", "spring"]
    thickness_over: float
    thickness_to: float | None
    width_to: float
    height_to: float
    hinge_height: float
    leaf_thickness: float


@dataclass(frozen=True, slots=True)
class ManoeuvringRow(Row):
    """The free floor one approach to a door asks for; `more_` is added where it has what `when` says."""

    side: Literal["pull", "push"]
    approach: Literal["front", "hinge", "latch"]
    depth: float
    latch: float
    hinge: float
    more_depth: float
    more_latch: float
    when: str | None


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
    **KINDS,
    "hinge_heights": HeightRow,
    "hinge_counts": CountRow,
    "stock_sizes": StockRow,
    "leaf_gages": GageRow,
    "barrels": BarrelRow,
    "finishes": FinishRow,
    "door_weights": DoorWeightRow,
    "sheet_weights": SheetRow,
    "frame_profiles": FrameProfileRow,
    "frame_sizes": FrameSizeRow,
    "wall_layers": WallLayerRow,
    "frequencies": FrequencyRow,
    "screws": ScrewRow,
    "hinge_locations": LocationRow,
    "fire_hinges": FireRow,
    "manoeuvring": ManoeuvringRow,
    "hinge_types": TypeRow,
    "limits": LimitRow,
    "hardware_groups": HardwareGroupRow,
    "practices": PracticeRow,
    "tolerances": ToleranceRow,
}
"""Every table by name, and what its rows are."""
