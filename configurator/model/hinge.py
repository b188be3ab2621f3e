"""A hinge as the user gives it: what is insisted on, what hangs there now, and where hinges sit."""

from typing import Any, Self

from pydantic import field_validator, model_validator
from pydantic_core import PydanticCustomError

from configurator.model.fields import Flag, Length, Record, ScrewCount, Text, Whole, field, not_endless
from configurator.model.words import (
    Alloy,
    BaseMetal,
    Bearing,
    Corner,
    LocationRule,
    Mounting,
    Pin,
    ScrewKind,
    Tip,
    Transfer,
    Weight,
)

MOST_TYPED = 24
_FIELD = {"field": "tops"}


class Hinge(Record):
    """What the user insists on in the hinge; anything left out the program chooses."""

    height: Length | None = field(
        "hinge height", gt=0, le=24, help="length of the leaf up the door; a hinge is height x width"
    )
    width: Length | None = field("hinge open width", ge=1, le=24, help="across both leaves, laid open flat")
    count: Whole | None = field("number of hinges", ge=1, le=60, help="for one opening")
    mounting: Mounting | None = field(
        "hinge mounting", "how the leaves are fixed", help="let into door and frame, or laid on"
    )
    weight: Weight | None = field(
        "hinge weight grade", help="heavy hinges are thicker, for heavy or busy doors"
    )
    bearing: Bearing | None = field(
        "hinge bearing", help="what the knuckles turn on: plain metal or ball bearings"
    )
    leaf_thickness: Length | None = field(
        "hinge leaf thickness", gt=0, le=1, help="the metal of one leaf: its gage"
    )
    leaf_gap: Length | None = field(
        "gap between hinge leaves", ge=0, le=1, help="between the two closed leaves", left_out="worked out"
    )
    barrel: Length | None = field(
        "barrel diameter", gt=0, le=4, help="across the knuckles that the pin runs through"
    )
    type: Text | None = field("ANSI/BHMA A156.1 type", help="the standard's number for such a hinge")
    knuckles: Whole | None = field("knuckles", ge=2, le=9, help="how many pieces the barrel is made of")
    base_metal: BaseMetal | None = field("base metal", help="what lies under the finish")
    alloy: Alloy | None = field("stainless alloy", help="which stainless steel, where the metal is that")
    finish_bhma: Text | None = field("BHMA finish number", help="names the look and the metal it is on")
    finish_us: Text | None = field("US finish code", help="names the look only")
    pin: Pin | None = field("hinge pin", help="whether it can be driven out while the door is closed")
    security_stud: Flag | None = field(
        "security stud", help="holds the closed leaves together with the pin gone"
    )
    tip: Tip | None = field("hinge tip", help="how the ends of the barrel look")
    corner: Corner | None = field("hinge corner", help="of the leaf, as the mortise is cut")
    screws: dict[ScrewKind, ScrewCount] | None = field("screws", help="for one opening, by kind")
    electric: Whole | None = field(
        "electric hinge", "which hinge from the top carries wires", ge=1, le=60, left_out="none"
    )
    transfer: Transfer | None = field(
        "electric transfer",
        "what carries the wires to the door",
        help="a hinge with wires, a loop on the faces, or a transfer in both edges",
        left_out="a hinge, where wired",
    )
    wires: Whole | None = field(
        "number of wires",
        "how many wires the door needs",
        ge=1,
        le=100,
        help="of all that is on the door: lock, reader, exit device",
        left_out="asked before ordering",
    )


class ExistingHinge(Record):
    """What hangs on the door now, as measured: only what decides whether a new hinge goes in its place."""

    height: Length | None = field(
        "existing hinge height", "height of the old hinge", gt=0, le=24, help="length of its leaf up the door"
    )
    width: Length | None = field(
        "existing hinge open width",
        "width of the old hinge, opened",
        ge=1,
        le=24,
        help="across both leaves, laid open flat",
    )
    leaf_thickness: Length | None = field(
        "existing leaf thickness",
        "thickness of the old hinge's leaf",
        gt=0,
        le=1,
        help="the metal of one leaf",
    )
    corner: Corner | None = field(
        "existing hinge corner", "corners of the old hinge", help="as the mortises are cut"
    )
    count: Whole | None = field(
        "existing hinges a leaf",
        "how many old hinges each leaf hangs on",
        ge=1,
        le=60,
        help="counted on one leaf",
    )
    mounting: Mounting | None = field(
        "existing mounting", "how the old hinge is fixed", help="let into door and frame, or laid on"
    )


class HingeLocations(Record):
    """A rule for all hinges, or the top of every hinge below the head rabbet, from the top one down."""

    rule: LocationRule | None = field(
        "hinge location rule",
        "how far from top and floor hinges sit",
        help="inches: head rabbet to top hinge, floor to bottom hinge",
        left_out="5 and 10",
    )
    tops: tuple[Length, ...] | None = field(
        "tops of hinges below head rabbet",
        "from the frame's head down to the top of each hinge",
        help="each hinge's top, as an existing frame was measured",
        left_out="by rule",
    )

    @field_validator("tops", mode="before")
    @classmethod
    def _not_endless(cls, value: Any) -> Any:
        return not_endless(value, MOST_TYPED, "the places of up to 24 hinges can be typed")

    @model_validator(mode="after")
    def _go_down(self) -> Self:
        tops = self.tops or ()
        if any(top < 0 or top > 300 for top in tops):
            raise PydanticCustomError(
                "needs", "tops of hinges are from 0 to 300 in below the head rabbet", _FIELD
            )
        if list(tops) != sorted(set(tops)):
            raise PydanticCustomError(
                "needs",
                "tops of hinges are given from the top hinge down, each farther below than the last",
                _FIELD,
            )
        return self
