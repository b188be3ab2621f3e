"""One opening as the user described it: only what was said, never what was worked out."""

import re
from collections.abc import Mapping
from typing import Annotated, Any, Self

from pydantic import AfterValidator, field_validator, model_validator
from pydantic_core import PydanticCustomError

from configurator.model.door import AngleStop, Door, DoorStop, Hardware
from configurator.model.fields import MOST_OF_ANYTHING, Length, Record, Text, Whole, field, not_endless
from configurator.model.hinge import ExistingHinge, Hinge, HingeLocations
from configurator.model.use import Tolerances, Use
from configurator.model.wall import Floor, Frame, Obstruction, Sill, Wall
from configurator.model.way import Compared, Way, refuse_compared
from configurator.model.words import Hand, HungOn, Leaves, OrderState, Status
from configurator.tables import FrameKindRow, HardwareKindRow, row_of
from configurator.units import LengthError, format_size, parse_opening_size

MOST_COMPARED = 12
MOST_TRACES = 3_000
LONGEST_TRACE = 2_000
"""Lines of a background, and the letters of one."""
_COORDINATE = r"-?[0-9]{1,6}(?:\.[0-9]{1,6})?"
_TRACE = re.compile(rf"{_COORDINATE},{_COORDINATE}(?: {_COORDINATE},{_COORDINATE})+")


class Size(Record):
    """Opening size: rabbet to rabbet, and finished floor to head rabbet, inches."""

    width: Length = field(
        "opening width",
        "door opening width",
        ...,
        gt=0,
        le=300,
        help="rabbet face to rabbet face: the nominal door width",
    )
    height: Length = field(
        "opening height", "door opening height", ..., gt=0, le=300, help="finished floor to head rabbet"
    )


class Details(Record):
    """The drawn details of the frame by their numbers, as 4/A8.1."""

    head: Text | None = field("head detail", help="number of the drawn detail of the frame's head")
    jamb: Text | None = field("jamb detail", help="number of the drawn detail of the frame's jambs")
    sill: Text | None = field("sill detail", help="number of the drawn detail at the floor")


_FIRST_LEAF: Mapping[Leaves, str] = {"single": "single", "pair": "active", "dutch": "lower"}


def _trace(value: str) -> str:
    if not _TRACE.fullmatch(value):
        raise PydanticCustomError("text", "a line is two points or more, inches, as `0,0 12.5,0 12.5,4`")
    return value


Trace = Annotated[Text, AfterValidator(_trace)]
"""A line as its points, inches."""


class Background(Record):
    """Lines of another's drawing under the plan, as the opening is seen from above, its pull side up.

    Inches from the corner of the first leaf's hinge jamb where the frame face meets the rabbet face; x to the
    right, y up.
    """

    drawing: Text | None = field("drawing in the background", help="the file that the lines were taken from")
    layers: tuple[Text, ...] = field("layers in the background", default=(), help="those that were taken")
    lines: tuple[Trace, ...] = field(
        "lines in the background", default=(), help="each as its points, inches from the corner of the jamb"
    )

    @field_validator("layers", "lines", mode="before")
    @classmethod
    def _not_endless(cls, value: Any) -> Any:
        return not_endless(value, MOST_TRACES, "a background may have up to 3,000 lines")


class Opening(Record):
    """One opening of a job (or several alike, by `quantity`)."""

    mark: Text = field(
        "mark", default=..., help="the opening's number on the drawings and the order line, as 112A"
    )
    location: Text | None = field("location", help="the room or place it leads to, for the sheet's title")
    quantity: Whole = field(
        "quantity", "how many alike", 1, ge=1, le=100_000, help="openings in every way alike"
    )
    status: Status = field("status", default="assumed", help="how far what is said here has been settled")
    order_state: OrderState = field(
        "state of order",
        "ordered or not",
        "not ordered",
        help="of its hinges; ordering them verifies nothing, that is the status",
    )
    notes: Text | None = field("notes", help="for people; the program does not read them")
    questions: Text | None = field(
        "questions to the architect",
        "what is still to be asked",
        help="to be settled by the architect; the schedule lists those of the whole job",
    )
    level: Text | None = field("level", "floor or story", help="orders are packed and labelled by it")
    hardware_set: Text | None = field(
        "hardware set", help="the specification's number of all that hangs on the door; hinges are of it too"
    )
    fire_minutes: Whole | None = field(
        "fire rating in minutes",
        "minutes it holds fire back",
        ge=0,
        le=480,
        help="as on the label, 20 to 180; any makes the opening fire rated, 0 says that it is not",
        left_out="not known",
    )
    glass: Text | None = field("glass", "glass in the door", help="size or kind of its lite, as scheduled")
    details: Details = field("details", "numbers of drawn details", Details())
    remarks: Text | None = field(
        "schedule's remarks", "what the schedule remarks", help="the architect's words, kept whole"
    )
    other_columns: dict[Text, Text] = field(
        "other columns",
        "what else the schedule says",
        {},
        help="columns of the schedule kept under their own headings; the program does not read them",
    )
    global_id: Text | None = field(
        "global id in the building model",
        "its name in the architect's model",
        help="by it a newer model finds this opening again, whatever its mark is by then",
    )
    hung_on: HungOn = field(
        "hung on",
        default="butt hinges",
        help="butts are chosen here; what else it hangs on is compared and counted by itself",
    )
    hand: Hand | None = field(
        "hand", help="seen from outside, where you unlock: L, R is the hinges' side; R after it opens to you"
    )
    leaves: Leaves = field(
        "leaves", default="single", help="one door, two side by side, or an upper and a lower half"
    )
    active_width: Length | None = field(
        "active leaf net width",
        gt=0,
        le=300,
        help="of the leaf that opens first, edge to edge",
        left_out="half",
    )
    split_height: Length | None = field(
        "split height",
        "where a Dutch door divides, above the floor",
        gt=0,
        le=300,
        help="from the finished floor to the middle of the gap",
        left_out="halfway",
    )
    size: Size = field(
        "opening size",
        default=...,
        help="width x height: between the rabbets, and from the finished floor to the head rabbet",
    )
    door: Door = field("door", default=Door())
    frame: Frame = field("frame", default=Frame())
    wall: Wall = field("wall", default=Wall())
    obstructions: tuple[Obstruction, ...] = field("what stands about the door", default=())
    sill: Sill = field("threshold and floor", default=Sill())
    pull_side: Floor = field("floor on the pull side", default=Floor())
    push_side: Floor = field("floor on the push side", default=Floor())
    hardware: tuple[Hardware, ...] = field("hardware", default=())
    use: Use = field("use", default=Use())
    compare: tuple[Compared, ...] = field(
        "ways of hanging to compare",
        "hinge widths and other ways to hang it, side by side",
        (),
        help="a butt's open width as a number, or what else the door may hang on",
    )
    hinge: Hinge | None = field("hinge")
    prepared_height: Length | None = field(
        "prepared hinge height",
        "door or frame is already cut for hinges this high",
        gt=0,
        le=24,
        help="of a door or frame already made",
        left_out="not known",
    )
    existing_hinge: ExistingHinge | None = field(
        "existing hinge", "what hangs there now", help="of a door whose hinges are replaced"
    )
    hinge_locations: HingeLocations = field(
        "hinge locations", "where along the height hinges sit", HingeLocations()
    )
    door_stop: DoorStop | None = field("door stop", "what the open door comes to rest against")
    order_despite: tuple[Text, ...] = field(
        "ordered all the same",
        "errors it is ordered in spite of",
        (),
        help="codes of errors that were read and do not hold the order of this opening",
    )
    background: Background | None = field(
        "background of the plan",
        help="lines of another's drawing, laid under the plan; nothing is read from them",
    )
    tolerances: Tolerances = field("tolerances", "how far what is built may be off", Tolerances())

    @property
    def first_leaf(self) -> str:
        """The leaf that carries what names no leaf."""
        return _FIRST_LEAF[self.leaves]

    def carrier(self, hardware: Hardware) -> str:
        """Return the leaf that the hardware is on."""
        return hardware.leaf or self.first_leaf

    def carried_by(self, leaf: str) -> tuple[Hardware, ...]:
        """Return the hardware on the leaf of that name."""
        first = self.first_leaf
        return tuple([item for item in self.hardware if (item.leaf or first) == leaf])

    @property
    def closes_itself(self) -> bool | None:
        """Whether it has a closer: one is described, or it was said; None where nobody said."""
        described = any(row_of(HardwareKindRow, item.kind).limits == "closer" for item in self.hardware)
        return True if described else self.use.closer

    def angle_stop(self, leaf: str) -> AngleStop | None:
        """Return what ends a leaf's swing at the least angle: a stop at an angle, or an arm on that leaf."""
        own = self.use.stop_angle
        stops = [] if own is None else [AngleStop(own)]
        first = self.first_leaf
        for item in self.hardware:
            if item.opens_to is not None and (item.leaf or first) == leaf and (stop := item.angle_stop):
                stops.append(stop)
        return min(stops, key=lambda one: one.angle, default=None)

    def stop_angle(self, leaf: str) -> float | None:
        """Return that angle, degrees; None where nothing ends the swing at an angle."""
        found = self.angle_stop(leaf)
        return None if found is None else found.angle

    @property
    def settled(self) -> str:
        """Why a change of it must be said: `ordered`, `received` or `approved`; empty where nothing is."""
        if self.order_state != "not ordered":
            return self.order_state
        return self.status if self.status == "approved" else ""

    @property
    def fire_label(self) -> bool | None:
        """Whether it is fire rated: as said, or by its minutes; None where neither is given.

        Where the two disagree it is rated: the safe side, and a finding asks.
        """
        if self.fire_minutes is None:
            return self.use.fire_rated
        return bool(self.fire_minutes or self.use.fire_rated)

    @field_validator("leaves", mode="before")
    @classmethod
    def _no_double_egress(cls, value: Any) -> Any:
        if isinstance(value, str) and "egress" in value.lower():
            raise PydanticCustomError(
                "needs",
                "a double-egress pair, whose two leaves swing opposite ways, is not worked out here; "
                "describe each leaf as a single opening of its own hand",
            )
        return value

    @model_validator(mode="after")
    def _butted_frame_has_its_place(self) -> Self:
        known = row_of(FrameKindRow, self.frame.kind).usual_place
        if not known and self.wall.frame_proud is None:
            raise PydanticCustomError(
                "needs",
                "frame proud of wall must be given: a butted frame has no usual place in the wall "
                "(0 where it is flush, negative where it stands behind the wall face)",
                {"field": "wall.frame_proud"},
            )
        return self

    @model_validator(mode="after")
    def _leaves_fit(self) -> Self:
        if self.leaves == "pair" and self.active_width is not None and self.active_width >= self.size.width:
            raise PydanticCustomError(
                "needs",
                "active leaf net width must be less than the opening width ({width} in)",
                {"field": "active_width", "width": format_size(self.size.width)},
            )
        if self.leaves == "dutch" and self.split_height is not None and self.split_height >= self.size.height:
            raise PydanticCustomError(
                "needs",
                "split height must be less than the opening height ({height} in)",
                {"field": "split_height", "height": format_size(self.size.height)},
            )
        return self

    @field_validator("size", mode="before")
    @classmethod
    def _short_size(cls, value: Any) -> Any:
        if not isinstance(value, str):
            return value
        try:
            width, height = parse_opening_size(value)
        except LengthError as error:
            raise PydanticCustomError("length", "{reason}", {"reason": str(error)}) from None
        return {"width": width, "height": height}

    @field_validator("mark")
    @classmethod
    def _mark_is_there(cls, value: str) -> str:
        if not value.strip() or "\n" in value or len(value) > 100:
            raise PydanticCustomError("mark", "a mark is one line of 1 to 100 characters")
        return value

    @field_validator("obstructions", "hardware", "order_despite", "other_columns", mode="before")
    @classmethod
    def _not_endless(cls, value: Any) -> Any:
        return not_endless(value, MOST_OF_ANYTHING, "an opening may have up to 200 of these")

    @field_validator("compare", mode="before")
    @classmethod
    def _few_to_compare(cls, value: Any) -> Any:
        return not_endless(value, MOST_COMPARED, "up to 12 hinge open widths and ways can be compared")

    @field_validator("compare")
    @classmethod
    def _widths_and_ways(cls, value: tuple[float | Way, ...]) -> tuple[float | Way, ...]:
        refuse_compared(value)
        return value
