"""A hinge as the user gives it: what is insisted on, and what hangs there now."""

from configurator.model.fields import Flag, Length, Record, ScrewCount, Text, Whole, field
from configurator.model.words import (
    Alloy,
    BaseMetal,
    Bearing,
    Corner,
    Mounting,
    Pin,
    ScrewKind,
    Tip,
    Weight,
)


class Hinge(Record):
    """What the user insists on in the hinge; anything left out the program chooses."""

    height: Length | None = field("hinge height", gt=0, le=24)
    width: Length | None = field("hinge open width", ge=1, le=24)
    count: Whole | None = field("number of hinges", ge=1, le=60)
    mounting: Mounting | None = field("hinge mounting", "how the leaves are fixed")
    weight: Weight | None = field("hinge weight grade")
    bearing: Bearing | None = field("hinge bearing")
    leaf_thickness: Length | None = field("hinge leaf thickness", gt=0, le=1)
    leaf_gap: Length | None = field("gap between hinge leaves", ge=0, le=1)
    barrel: Length | None = field("barrel diameter", gt=0, le=4)
    type: Text | None = field("ANSI/BHMA A156.1 type")
    knuckles: Whole | None = field("knuckles", ge=2, le=9)
    base_metal: BaseMetal | None = field("base metal")
    alloy: Alloy | None = field("stainless alloy")
    finish_bhma: Text | None = field("BHMA finish number")
    finish_us: Text | None = field("US finish code")
    pin: Pin | None = field("hinge pin")
    security_stud: Flag | None = field("security stud")
    tip: Tip | None = field("hinge tip")
    corner: Corner | None = field("hinge corner")
    screws: dict[ScrewKind, ScrewCount] | None = field("screws")
    electric: Whole | None = field("electric hinge", "which hinge from the top carries wires", ge=1, le=60)


class ExistingHinge(Record):
    """What hangs on the door now, as measured: only what decides whether a new hinge goes in its place."""

    height: Length | None = field("existing hinge height", "height of the old hinge", gt=0, le=24)
    width: Length | None = field("existing hinge open width", "width of the old hinge, opened", ge=1, le=24)
    leaf_thickness: Length | None = field(
        "existing leaf thickness", "thickness of the old hinge's leaf", gt=0, le=1
    )
    corner: Corner | None = field("existing hinge corner", "corners of the old hinge")
    count: Whole | None = field(
        "existing hinges a leaf", "how many old hinges each leaf hangs on", ge=1, le=60
    )
    mounting: Mounting | None = field("existing mounting", "how the old hinge is fixed")
