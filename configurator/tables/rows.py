"""What a row of each table under `resources/tables/` is.

One row, one fact. A number is inches unless its column says otherwise; an empty cell means: no such value.
"""

from collections.abc import Mapping
from functools import cached_property
from typing import Any, Literal, get_args

from configurator.records import dataclass

Mark = Literal["read", "common practice", "from memory", "derived"]
MARKS: tuple[Mark, ...] = get_args(Mark)


@dataclass(frozen=True, slots=True)
class Source:
    """Where a fact comes from, and how sure it is.

    `mark` is "read" only when the words stand in the named document; "common practice" and "from memory" have
    no citable source; "derived" is worked out here.
    """

    text: str
    mark: Mark


@dataclass(frozen=True)
class Row:
    """What every row ends in."""

    source: str
    mark: Mark

    @cached_property
    def cited(self) -> Source:
        """The row's source and mark together."""
        return Source(self.source, self.mark)


@dataclass(frozen=True, slots=True)
class KindRow(Row):
    """A row that tells all there is to know of one accepted word of the project file."""

    kind: str


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
class ConstructionRow(KindRow):
    """What a door is made of, which screws hold a hinge to it, and what is drawn where it is cut.

    `skin` is the thickness of its sheets of steel, None where it has none.
    """

    family: Literal["metal", "wood", "aluminum"]
    screws: Literal["machine", "wood"]
    section: Literal["steel skins", "wood", "hollow wood", "wood and lead", "aluminum and glass"]
    skin: float | None


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
class FrameKindRow(KindRow):
    """What a kind of frame is made of, which screws hold a hinge to it, and how it stands in the wall.

    `client` is what a client calls the wall about it; of kinds that share one the first is taken for it.
    `wraps`: it closes around the wall's edge, so that the wall ends inside the frame. `returns`: it turns
    back at the wall. `usual_place`: where it stands in the wall is usual and need not be given. `cased`: its
    joint with the wall is covered by casing.
    """

    client: str
    material: Literal["steel", "wood", "aluminum"]
    screws: Literal["machine", "wood"]
    wraps: bool
    returns: bool
    usual_place: bool
    cased: bool
    words: str


@dataclass(frozen=True, slots=True)
class ObstructionKindRow(KindRow):
    """A kind of thing that stands along the wall or about the door, with the sizes it starts from.

    `label` is how a list offers it, `name` how a sentence calls it, `client` what a client calls it (None:
    nothing is asked) and `client_measures` the keys a client is asked for. `outline` is its shape in plan:
    a straight-sided box, a wall that fills all beyond its face, or round. `cut_back`: whether it can be
    trimmed to let the door by. `material` is what the style fills it with, `term` its word in the glossary.
    """

    label: str
    name: str
    client: str | None
    client_measures: str | None
    outline: Literal["box", "wall", "round"]
    measured_from: Literal["wall", "frame"]
    cut_back: Literal["yes", "no", "unknown"]
    material: str
    term: str
    projection: float | None
    start: float | None
    length: float | None
    diameter: float | None
    offset: float | None
    bottom: float | None
    top: float | None

    @property
    def usual(self) -> dict[str, Any]:
        """The obstruction it starts as, by the keys of a project file."""
        sizes = {
            "projection": self.projection,
            "start": self.start,
            "length": self.length,
            "diameter": self.diameter,
            "offset": self.offset,
            "bottom": self.bottom,
            "top": self.top,
        }
        return {"kind": self.kind} | {key: size for key, size in sizes.items() if size is not None}


@dataclass(frozen=True, slots=True)
class HardwareKindRow(KindRow):
    """A kind of hardware on a leaf, with the sizes and the place it starts from.

    `label`, `name` and `term` as of an obstruction. `front` is its outline seen from in front. `handle`: the
    door is opened by it. `meets_bumper`: it may be what meets a wall bumper. `spindle` is how far from its
    latch-side end it is held, None for its middle. `place` says what its usual place goes by.
    """

    label: str
    name: str
    front: Literal["box", "round"]
    handle: bool
    meets_bumper: bool
    spindle: float | None
    place: Literal["latch edge", "top of lower leaf", "gap between leaves"]
    term: str
    face: Literal["pull", "push"]
    projection: float
    from_latch_edge: float
    width: float
    height: float
    vertical: float
    weight: float

    @property
    def usual(self) -> dict[str, Any]:
        """The hardware it starts as, by the keys of a project file."""
        return {
            "kind": self.kind,
            "face": self.face,
            "projection": self.projection,
            "from_latch_edge": self.from_latch_edge,
            "width": self.width,
            "height": self.height,
            "vertical": self.vertical,
        }


@dataclass(frozen=True, slots=True)
class DoorStopKindRow(KindRow):
    """A kind of door stop: what it stands on, and how far off the wall its tip usually is."""

    stands: Literal["wall", "floor"]
    projection: float


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
class WayRow(KindRow):
    """A kind of thing a door may hang on, with the usual place of the axis that the door turns about.

    `barrel` is its diameter, None where it has none or the hinge's own counts. `off_face` is off the door's
    pull face, `from_heel` from its heel edge toward the latch; None where they follow from what they are
    counted from. `handed`: left and right differ. `sold_by` is what it is counted in, `let_in` what is cut
    for it, `takes` the weight and traffic it is for.
    """

    acting: Literal["single", "double"]
    turns_on: Literal["hinge barrels", "full length", "pivots"]
    barrel: float | None
    off_face: float | None
    off_face_from: Literal["pull face", "middle of the door", "clear of the faces", "frame face", "its size"]
    from_heel: float | None
    from_heel_from: Literal["heel edge", "middle of the gap", "clear of the frame", "its size"]
    sold_by: Literal["each", "length", "set"]
    handed: bool
    let_in: str
    takes: str


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
    "frame_kinds": FrameKindRow,
    "frame_sizes": FrameSizeRow,
    "obstruction_kinds": ObstructionKindRow,
    "hardware_kinds": HardwareKindRow,
    "door_stop_kinds": DoorStopKindRow,
    "wall_layers": WallLayerRow,
    "frequencies": FrequencyRow,
    "screws": ScrewRow,
    "hinge_locations": LocationRow,
    "fire_hinges": FireRow,
    "manoeuvring": ManoeuvringRow,
    "way_kinds": WayRow,
    "hinge_types": TypeRow,
    "limits": LimitRow,
    "hardware_groups": HardwareGroupRow,
    "practices": PracticeRow,
    "tolerances": ToleranceRow,
}
"""Every table by name, and what its rows are."""
