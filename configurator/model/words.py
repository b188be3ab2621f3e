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
FrameProfile = Literal[
    "drywall 3-3/4 throat",
    "drywall 4-7/8 throat",
    "drywall 7-1/4 throat",
    "welded single rabbet 3-3/4",
    "welded double rabbet 5-3/4",
    "welded double rabbet 7-3/4",
    "butted 5-3/4",
    "butted 7-3/4",
    "wood jamb 4-9/16",
    "wood jamb 6-9/16",
    "wood frame, rabbeted",
    "storefront 1-3/4 x 4",
    "storefront 1-3/4 x 4-1/2",
    "storefront 2 x 4-1/2",
]
SizesFrom = Literal["usual", "measured", "maker's drawing"]
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
