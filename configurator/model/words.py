"""Every word a project file may use where only certain words are allowed."""

from typing import Literal

Hand = Literal["LH", "RH", "LHR", "RHR"]
Leaves = Literal["single", "pair", "dutch"]
Status = Literal["assumed", "field verified", "approved"]
OrderState = Literal["not ordered", "ordered", "received"]
HungOn = Literal["butt hinges", "pivots", "continuous hinge", "spring hinges", "by others"]
WayKind = Literal[
    "butt hinge",
    "swing clear hinge",
    "continuous hinge",
    "offset pivot",
    "centre-hung pivot",
    "double-acting spring hinge",
]
Acting = Literal["single", "double"]
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
    "wood, composite core",
    "wood, mineral core",
    "wood, stile and rail",
    "aluminum and glass",
    "lead-lined",
]
ObstructionKind = Literal["chair rail", "base", "casing", "wainscot", "return wall", "column", "other"]
HardwareKind = Literal[
    "lever",
    "knob",
    "pull",
    "panic device",
    "closer",
    "parallel-arm closer",
    "closer arm",
    "overhead stop",
    "shelf",
    "astragal",
    "other",
]
DoorStopKind = Literal["wall bumper", "floor stop"]
LocationRule = Literal["5 and 10", "7 and 11"]
Side = Literal["hinge", "latch"]
Approach = Literal["front", "hinge", "latch"]
Face = Literal["pull", "push"]
Outline = Literal["box", "round"]
LeafName = Literal["single", "active", "inactive", "upper", "lower"]
Exposure = Literal["interior", "exterior"]
Traffic = Literal["high", "average", "low"]
Mounting = Literal["full mortise", "half mortise", "half surface", "full surface", "swing clear"]
Weight = Literal["standard", "heavy"]
WidthPolicy = Literal["narrowest that works", "square hinges"]
Bearing = Literal["plain", "ball"]
BaseMetal = Literal["steel", "stainless", "brass", "bronze"]
Alloy = Literal["304", "316"]
Pin = Literal["removable", "non-removable"]
Corner = Literal["square", "1/4 radius", "5/8 radius"]
Transfer = Literal["electric hinge", "door loop", "concealed transfer"]
ScrewKind = Literal["machine", "wood"]
Tip = Literal["flat button", "hospital", "ball", "flush"]
