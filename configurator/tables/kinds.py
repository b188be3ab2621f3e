"""What a row of a table is, and the rows of the tables of kinds: of frame, door, hardware, what stands about.

A kind is a word that a project file may use, with what is usual of it. One row, one fact. A number is inches
unless its column says otherwise; an empty cell means: no such value.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal, get_args

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
class ConstructionRow(KindRow):
    """What a door is made of, which screws hold a hinge to it, and what is drawn where it is cut.

    `skin` is the thickness of its sheets of steel, None where it has none.
    """

    family: Literal["metal", "wood", "aluminum"]
    screws: Literal["machine", "wood"]
    section: Literal["steel skins", "wood", "hollow wood", "wood and lead", "aluminum and glass"]
    skin: float | None


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
    latch-side end it is held, None for its middle. `place` says what its usual place goes by. `limits`: its
    arm ends the swing at a degree, as a closer that may not be used as a stop, or as a stop. `opens_to` is
    that degree where one is usual, `hinge_to` the widest butt that its usual template is drawn for.
    """

    label: str
    name: str
    front: Literal["box", "round"]
    handle: bool
    meets_bumper: bool
    spindle: float | None
    place: Literal["latch edge", "hinge edge", "top of lower leaf", "gap between leaves"]
    term: str
    face: Literal["pull", "push"]
    projection: float
    from_latch_edge: float
    width: float
    height: float
    vertical: float
    weight: float
    limits: Literal["no", "closer", "stop"]
    opens_to: float | None
    hinge_to: float | None

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


KINDS: Mapping[str, type[KindRow]] = {
    "constructions": ConstructionRow,
    "frame_kinds": FrameKindRow,
    "obstruction_kinds": ObstructionKindRow,
    "hardware_kinds": HardwareKindRow,
    "door_stop_kinds": DoorStopKindRow,
    "way_kinds": WayRow,
}
"""The tables of kinds by name, and what their rows are."""
