"""What the opening is for, and how far what is built may be off what is drawn."""

from configurator.model.fields import Degrees, Flag, Length, Record, Text, field
from configurator.model.words import Exposure, Traffic


class Use(Record):
    """What the opening is for, and what it has to do; degrees and inches."""

    exposure: Exposure | None = field("exposure", help="weather decides metal, pin and finish")
    coastal: Flag | None = field(
        "near salt water", "by the sea", help="decides metal and finish: salt air corrodes"
    )
    humid: Flag | None = field("humid room", help="decides metal and finish, as at a pool or a shower")
    locked: Flag | None = field(
        "locked",
        "has a lock",
        help="decides the pin: a locked door that opens outward shows its hinges outside",
    )
    lock_both_sides: Flag | None = field(
        "locked from both sides",
        "needs a key on both sides",
        help="each side may then be the one to keep out; yes means that there is a lock",
    )
    lock_finish_bhma: Text | None = field(
        "lock's BHMA finish number",
        "finish number of the lock",
        help="the hinges show beside the lock and should look the same",
    )
    fire_rated: Flag | None = field(
        "fire rated", help="hinges of a rated opening follow its listing; the local authority decides"
    )
    closer: Flag | None = field("door closer", "closes by itself", help="decides the bearing of the hinges")
    traffic: Traffic | None = field("traffic", "how often it is used")
    accessible: Flag | None = field(
        "on an accessible route", help="checks the clear width against 32 in; local codes may ask more"
    )
    clear_width_margin: Length | None = field(
        "margin over the clear width",
        "walk-through width to spare",
        ge=0,
        le=12,
        help="to spare over 32 in, for what building takes off",
        left_out="none",
    )
    beds_moved: Flag | None = field(
        "beds moved through",
        help="as in a hospital: checks the clear width against 41-1/2 in; local codes decide",
    )
    alteration: Flag | None = field(
        "alteration of a building",
        "in a building that is altered",
        help="its latch-side stop may take 5/8 in of the clear width of an accessible route",
        left_out="no",
    )
    wanted_angle: Degrees | None = field(
        "wanted angle",
        "must open to",
        gt=0,
        le=180,
        help="from closed; a hinge width that stays below it is named",
    )
    stop_angle: Degrees | None = field(
        "door stop angle",
        "a door stop holds it at",
        gt=0,
        le=180,
        help="from closed",
        left_out="no door stop",
    )
    corridor_width: Length | None = field(
        "corridor width", gt=0, le=1200, help="from wall to wall where the door opens", left_out="not asked"
    )
    required_width: Length | None = field(
        "required corridor width",
        gt=0,
        le=1200,
        help="what the local code asks of that corridor",
        left_out="not asked",
    )


class Tolerances(Record):
    """One tolerance a key, plus or minus; a key left out has its usual value, 0 says that it is exact."""

    frame_setting: Length | None = field(
        "frame setting tolerance",
        "the frame may stand off its place by",
        ge=0,
        le=2,
        help="plus or minus: how far the installed frame may be off its place",
    )
    wall_thickness: Length | None = field(
        "wall thickness tolerance",
        "the wall may be thicker or thinner by",
        ge=0,
        le=2,
        help="plus or minus: boards, studs and tile together",
    )
    gaps: Length | None = field(
        "door gap tolerance",
        "the gaps about the door may be off by",
        ge=0,
        le=0.5,
        help="plus or minus, of the hinge-side gap and the latch-side gap each",
    )
    door_thickness: Length | None = field(
        "door thickness tolerance",
        "the door may be thicker or thinner by",
        ge=0,
        le=0.5,
        help="plus or minus, from face to face",
    )
    hinge_backset: Length | None = field(
        "hinge backset tolerance",
        "the hinge may be set off its place by",
        ge=0,
        le=0.5,
        help="plus or minus: where the hinge is let into door and frame",
    )
    hinge_width: Length | None = field(
        "hinge width tolerance",
        "the hinge may be wider or narrower by",
        ge=0,
        le=0.5,
        help="plus or minus, across both leaves laid flat",
    )
