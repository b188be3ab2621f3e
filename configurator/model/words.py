"""Every word a project file may use where only certain words are allowed."""

from typing import Literal, get_args

Hand = Literal["LH", "RH", "LHR", "RHR"]
Leaves = Literal["single", "pair", "dutch"]
Status = Literal["assumed", "field verified", "approved", "ordered"]
HungOn = Literal["butt hinges", "pivots", "continuous hinge", "spring hinges", "by others"]
FrameKind = Literal[
    "knocked-down drywall",
    "welded steel, wrapped",
    "welded steel, butted",
    "wood with casing",
    "aluminum storefront",
]
Construction = Literal[
    "hollow metal, 20 gage",
    "hollow metal, 18 gage",
    "hollow metal, 16 gage",
    "hollow metal, 14 gage",
    "wood, hollow core",
    "wood, solid core",
    "wood, mineral core",
    "wood, stile and rail",
    "aluminum and glass",
    "lead-lined",
]
ObstructionKind = Literal["chair rail", "base", "casing", "wainscot", "return wall", "column", "other"]
HardwareKind = Literal["lever", "knob", "pull", "panic device", "closer", "shelf", "astragal", "other"]
DoorStopKind = Literal["wall bumper", "floor stop"]
LocationRule = Literal["5 and 10", "7 and 11"]
Side = Literal["hinge", "latch"]
Face = Literal["pull", "push"]
Outline = Literal["box", "round"]
LeafName = Literal["single", "active", "inactive", "upper", "lower"]
Exposure = Literal["interior", "exterior"]
Traffic = Literal["high", "average", "low"]
Mounting = Literal["full mortise", "half mortise", "half surface", "full surface", "swing clear"]
Weight = Literal["standard", "heavy"]
Bearing = Literal["plain", "ball"]
BaseMetal = Literal["steel", "stainless", "brass", "bronze"]
Alloy = Literal["304", "316"]
Pin = Literal["removable", "non-removable"]
Corner = Literal["square", "1/4 radius", "5/8 radius"]
ScrewKind = Literal["machine", "wood"]
Tip = Literal["flat button", "hospital", "ball", "flush"]

VOCABULARY: dict[str, tuple[str, ...]] = {
    "hand": get_args(Hand),
    "leaves": get_args(Leaves),
    "status": get_args(Status),
    "hung_on": get_args(HungOn),
    "frame.kind": get_args(FrameKind),
    "door.construction": get_args(Construction),
    "obstructions.kind": get_args(ObstructionKind),
    "obstructions.side": get_args(Side),
    "hardware.kind": get_args(HardwareKind),
    "hardware.leaf": get_args(LeafName),
    "hardware.face": get_args(Face),
    "hardware.outline": get_args(Outline),
    "door_stop.kind": get_args(DoorStopKind),
    "hinge_locations.rule": get_args(LocationRule),
    "use.exposure": get_args(Exposure),
    "use.traffic": get_args(Traffic),
    "hinge.mounting": get_args(Mounting),
    "hinge.weight": get_args(Weight),
    "hinge.bearing": get_args(Bearing),
    "hinge.base_metal": get_args(BaseMetal),
    "hinge.alloy": get_args(Alloy),
    "hinge.pin": get_args(Pin),
    "hinge.tip": get_args(Tip),
    "hinge.corner": get_args(Corner),
    "hinge.screws": get_args(ScrewKind),
    "existing_hinge.mounting": get_args(Mounting),
    "existing_hinge.corner": get_args(Corner),
}
"""Field (as in a project file, without places in lists) to the words it accepts."""
