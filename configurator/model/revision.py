"""An order as it was frozen: its lines, and a print of every opening, to see later what has changed since."""

from dataclasses import dataclass

from configurator.model.fields import Flag, Hinges, Length, Record, ScrewShare, Text, Whole, field
from configurator.model.words import (
    Alloy,
    BaseMetal,
    Bearing,
    Corner,
    Hand,
    Mounting,
    Pin,
    ScrewKind,
    Tip,
    Weight,
)


@dataclass(frozen=True, slots=True)
class Issue:
    """A revision as the sheets of one opening tell it; `changed`: the opening was another than before."""

    number: str
    date: str
    note: str
    changed: bool


class OrderedLine(Record):
    """One line of a frozen order; `marks` is how many hinges each mark takes, spare ones are over them.

    `screws` are those that come with one hinge, as a whole number or a fraction in text: `8`, `25/3`.
    """

    item: Text = field("item", default=...)
    height: Length = field("hinge height", default=..., gt=0, le=24)
    width: Length = field("hinge open width", default=..., ge=1, le=24)
    type: Text | None = field("ANSI/BHMA A156.1 type")
    mounting: Mounting = field("hinge mounting", default=...)
    weight: Weight = field("hinge weight grade", default=...)
    bearing: Bearing = field("hinge bearing", default=...)
    leaf_thickness: Length = field("hinge leaf thickness", default=..., gt=0, le=1)
    knuckles: Whole = field("knuckles", default=..., ge=2, le=9)
    base_metal: BaseMetal = field("base metal", default=...)
    alloy: Alloy | None = field("stainless alloy")
    finish_bhma: Text | None = field("BHMA finish number")
    finish_us: Text | None = field("US finish code")
    pin: Pin = field("hinge pin", default=...)
    security_stud: Flag = field("security stud", default=False)
    tip: Tip = field("hinge tip", default=...)
    corner: Corner = field("hinge corner", default=...)
    hand: Hand | None = field("hand of the hinge")
    wires: Whole | None = field("wires of an electric hinge", ge=1, le=100)
    fire: Flag = field("for a labelled fire door", default=False)
    screws: dict[ScrewKind, ScrewShare] = field("screws of one hinge", default=...)
    spare: Hinges = field("spare hinges", "spare hinges over those the openings take", 0)
    marks: dict[Text, Hinges] = field("hinges by mark", default=...)


class OrderedWay(Record):
    """One line of a frozen order that is no butt: what a door hangs on, a loop for its wires."""

    item: Text = field("item", default=...)
    unit: Text = field("unit it is counted in", default=...)
    length: Length | None = field("length of a continuous hinge", gt=0, le=300)
    hand: Hand | None = field("hand of the leaf")
    axis_off_face: Length | None = field("axis off the door's face", ge=-12, le=24)
    axis_from_heel: Length | None = field("axis from the heel edge", ge=-24, le=120)
    axis_assumed: Flag = field("axis at its usual place, not given", default=False)
    let_in: Text = field("what is let in", default=...)
    finish_bhma: Text | None = field("BHMA finish number")
    wired: Text | None = field("which wires it carries")
    marks: dict[Text, Hinges] = field("how many each mark takes", default=...)


class Revision(Record):
    """An order that went out: its number, when and why, what was ordered, and how every opening then was."""

    number: Whole = field("revision number", default=..., ge=1, le=1000)
    date: Text | None = field("date of the revision")
    note: Text | None = field("note on the revision")
    spare: Text | None = field("spare allowance", "spare hinges asked for, as 5% or 2")
    lines: tuple[OrderedLine, ...] = field("order lines", default=())
    other_ways: tuple[OrderedWay, ...] | None = field(
        "lines of what is no butt", "what hangs on no butts", left_out="not kept then"
    )
    openings: dict[Text, Text] = field("prints of the openings", "mark to a print of what was said of it", {})
