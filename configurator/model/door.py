"""The door itself, what hangs on it and what it comes to rest against; inches."""

from typing import NamedTuple, Self

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from configurator.model.fields import Degrees, Length, Pounds, Record, Thing, field, of_its_kind
from configurator.model.words import Construction, DoorStopKind, Face, HardwareKind, LeafName, Outline
from configurator.tables import DoorStopKindRow, HardwareKindRow, row_of


class AngleStop(NamedTuple):
    """What ends a swing at an angle of its own, degrees, with the name that sentences call it by."""

    angle: float
    name: str = "door stop"


class Door(Record):
    """The door itself, inches; pounds for its weight."""

    construction: Construction | None = field(
        "door construction",
        "what the door is made of",
        help="decides the door's weight, the screws and the finish advice",
    )
    thickness: Length | None = field("door thickness", gt=0, le=6, help="from face to face of the door")
    latch_bevel: Length | None = field(
        "latch bevel",
        "slant of the lock edge",
        ge=0,
        le=0.5,
        help="what is off the stop-side corner, as 1/8 in per 2 in of thickness; or square",
    )
    hinge_backset: Length | None = field(
        "door hinge backset",
        "hinge set back from the door's far face",
        ge=0,
        le=6,
        help="stop-side face of the door to the edge of the hinge leaf",
    )
    mortise_depth: Length | None = field(
        "door mortise depth",
        ge=0,
        le=1,
        help="how deep the hinge leaf is let into the door's edge",
        left_out="flush",
    )
    hinge_gap: Length | None = field(
        "hinge-side gap",
        "gap on the hinge side, door closed",
        ge=0,
        le=2,
        help="from the door's hinge edge to the hinge rabbet",
    )
    latch_gap: Length | None = field(
        "latch-side gap",
        "gap on the lock side, door closed",
        ge=0,
        le=2,
        help="from the door's lock edge to the latch rabbet",
    )
    head_gap: Length | None = field(
        "head gap", "gap above the door", ge=0, le=2, help="from the top of the door to the head rabbet"
    )
    meeting_gap: Length | None = field(
        "meeting gap",
        "gap between the two leaves of a pair",
        ge=0,
        le=2,
        help="from lock edge to lock edge, both leaves closed",
    )
    split_gap: Length | None = field(
        "split gap",
        "gap between upper and lower leaf",
        ge=0,
        le=2,
        help="half of it lies above the split height and half below",
    )
    undercut: Length | None = field(
        "undercut", "gap under the door", ge=0, le=12, help="finished floor to the bottom of the door"
    )
    lead_thickness: Length | None = field(
        "lead thickness",
        "how thick the lead in the door is",
        gt=0,
        le=1,
        help="of all its sheets together; decides what a lead-lined door weighs",
        left_out="not known",
    )
    weight: Pounds | None = field(
        "door weight in pounds",
        "what one leaf weighs, in pounds",
        gt=0,
        le=5000,
        help="with its glass and the hardware on it",
        left_out="from the construction",
    )
    lite_width: Length | None = field(
        "lite width",
        "glass in the door, across",
        gt=0,
        le=300,
        help="with its height it decides how much of one leaf is glass, and so its weight",
        left_out="none, or not known",
    )
    lite_height: Length | None = field(
        "lite height",
        "glass in the door, up and down",
        gt=0,
        le=300,
        help="of the glass let into one leaf; several lites count together",
        left_out="none, or not known",
    )
    lite_above_floor: Length | None = field(
        "lite above floor",
        "bottom of the glass above the floor",
        ge=0,
        le=300,
        help="finished floor to the lower edge of the glass; with its size the elevation draws it",
        left_out="not drawn",
    )
    lite_from_latch: Length | None = field(
        "lite from latch edge",
        "glass to the door's lock edge",
        ge=0,
        le=300,
        help="from the lock edge of the door to the nearer edge of the glass",
        left_out="in the middle",
    )
    lock_height: Length | None = field(
        "lock centre above floor",
        gt=0,
        le=300,
        help="finished floor to the middle of the lock and of its strike",
        left_out="as the lever's",
    )
    lock_backset: Length | None = field(
        "lock backset",
        "middle of the lock to the door's lock edge",
        gt=0,
        le=60,
        help="on the pull face; not where the lever ends, but where it turns",
        left_out="as the lever's",
    )
    kick_plate: Length | None = field(
        "kick plate height",
        gt=0,
        le=120,
        help="of the plate at the foot of the push face; it is drawn 2 in narrower than the door",
        left_out="none",
    )
    glass_thickness: Length | None = field(
        "glass thickness",
        "how thick the glass is",
        gt=0,
        le=3,
        help="all panes together, without the air between them: two of 1/4 in are 1/2 in",
        left_out="1/4 to 1/2 in",
    )


class Hardware(Thing):
    """A box (or, for a knob, a round) on one face of a leaf, inches."""

    kind: HardwareKind = field("hardware kind", default=..., help="the name by which findings call it")
    leaf: LeafName | None = field("which leaf", left_out="the active, the lower or the only leaf")
    face: Face = field(
        "face of the door",
        help="the pull face is the one the door swings toward",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "face"),
    )
    projection: Length = field(
        "hardware projection",
        "stands off the door by",
        gt=0,
        le=48,
        help="from that face of the door to its farthest point",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "projection"),
    )
    from_latch_edge: Length = field(
        "centre from latch edge",
        "middle to the door's lock edge",
        ge=-12,
        le=300,
        help="of a lever this is the lock's backset and what the lever reaches beyond",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "from_latch_edge"),
    )
    width: Length = field(
        "hardware width",
        gt=0,
        le=300,
        help="across the door, seen from above; a knob's diameter",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "width"),
    )
    height: Length = field(
        "centre above floor",
        ge=0,
        le=300,
        help="decides what it can meet, and whether it narrows the way",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "height"),
    )
    outline: Outline | None = field(
        "outline from above",
        help="box, or round, as of a ball, with its width for a diameter",
        left_out="box",
    )
    vertical: Length = field(
        "hardware height",
        "how tall it is",
        gt=0,
        le=300,
        help="from its bottom to its top, about its centre",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "vertical"),
    )
    weight: Pounds = field(
        "hardware weight",
        "what it weighs, in pounds",
        ge=0,
        le=1000,
        help="adds to the weight of the leaf it is on",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "weight"),
    )
    opens_to: Degrees | None = field(
        "closer or stop opens to",
        "its arm lets the door open to",
        gt=0,
        le=180,
        help="from closed, by its template; without one, as far as the door goes",
        left_out="usual of its kind",
        usual=of_its_kind(HardwareKindRow, "opens_to"),
    )

    @property
    def angle_stop(self) -> AngleStop | None:
        """Where its arm ends the swing; None where it has none, or where nobody said."""
        return None if self.opens_to is None else AngleStop(self.opens_to, self.kind)

    @model_validator(mode="after")
    def _has_an_arm(self) -> Self:
        if self.opens_to is not None and row_of(HardwareKindRow, self.kind).limits == "no":
            raise PydanticCustomError(
                "needs",
                "only a closer or an overhead stop opens to a degree of its own; a {kind} does not",
                {"field": "opens_to", "kind": self.kind},
            )
        return self


class DoorStop(Thing):
    """What holds the open door, and where; the angle that the door then rests at is worked out."""

    kind: DoorStopKind = field(
        "kind of door stop", default=..., help="on the wall behind the open door, or on the floor before it"
    )
    projection: Length = field(
        "door stop projection",
        "stands off the wall by",
        gt=0,
        le=48,
        help="from the wall face on the pull side to the tip that the door meets",
        left_out="usual of its kind",
        usual=of_its_kind(DoorStopKindRow, "projection"),
    )
    from_frame: Length | None = field(
        "door stop from the frame",
        "middle of the door stop to the frame's outer edge",
        ge=0,
        le=300,
        help="along the wall, from the frame's outer edge",
        left_out="worked out",
    )
    height: Length | None = field(
        "door stop above floor",
        "how high the door stop sits",
        ge=0,
        le=300,
        help="middle of the tip above the floor",
        left_out="worked out",
    )
