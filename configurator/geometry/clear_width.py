"""Clear width: what an opening leaves to pass through with the door at an angle.

The 2010 ADA Standards, 404.2.3 (read), measure it between the face of the door and the stop with the door
open 90 degrees. Inches and radians; axes as in `pin`.
"""

import math
from collections.abc import Iterable, Sequence
from typing import Final

from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.pin import TOLERANCE, Hanging, Pin
from configurator.geometry.polar import cosine_and_sine
from configurator.geometry.shapes import OtherLeaf, Shape

#: Heights between which hardware in the clear width counts, in (2010 ADA Standards 404.2.3, read).
HARDWARE_BAND: Final = (34.0, 80.0)
#: Down to here closers and stops may come and are not counted, in (the same, exception 2, read).
CLOSER_LOW: Final = 78.0
CLOSERS_AND_STOPS: Final = ("closer", "parallel-arm closer", "closer arm", "overhead stop")


def counts_in_width(part: Shape) -> bool:
    """Whether a part of the hardware stands at heights where it counts in the clear width."""
    low, high = HARDWARE_BAND
    if part.kind in CLOSERS_AND_STOPS:
        high = CLOSER_LOW
    return min(part.top, high) - max(part.bottom, low) > TOLERANCE


def greatest_across(parts: Iterable[Shape], pin: Pin, theta: float) -> float:
    """How far into the opening any of the parts reaches with the door at theta, in; -inf for no parts."""
    cosine, sine = cosine_and_sine(theta)
    x_p, y_p = pin.at
    return max(
        (x_p + (x - x_p) * cosine - (y - y_p) * sine + part.radius for part in parts for x, y in part.points),
        default=-math.inf,
    )


def latch_limit(h: Hanging, pin: Pin, other: OtherLeaf | None) -> float:
    """Where the clear width ends across, in.

    At the latch stop; at the closed other leaf's edge; or, where the other leaf stands open first, at that
    leaf open 90 degrees on a hinge like this one.
    """
    if other is None:
        return h.O - h.s
    return h.O if other.closed else other.opening - max(h.heel_s, pin.x_p + pin.o + h.T)


def leaf_clear_width(leaf: Shape, h: Hanging, pin: Pin, theta: float, limit: float) -> float:
    """Clear width past a leaf that ends at limit across, in, never below 0."""
    return max(0.0, limit - max(h.heel_s, greatest_across((leaf,), pin, theta)))


def clear_width(h: Hanging, pin: Pin, theta: float, *, meets_leaf: bool = False) -> float:
    """Clear width with the bare leaf at theta, in, never below 0.

    (O - s) less the greater of s and how far any corner of the leaf reaches; meets_leaf for a leaf of a pair,
    whose clear width ends at the closed other leaf's edge. Source: 2010 ADA Standards 404.2.3, read, for 90
    degrees; derived for any other angle.
    """
    return leaf_clear_width(Shape(leaf_corners(h)), h, pin, theta, h.O if meets_leaf else h.O - h.s)


def hardware_taken(
    leaf: Shape,
    hardware: Sequence[Shape],
    h: Hanging,
    pin: Pin,
    theta: float,
    limit: float,
) -> float:
    """What hardware at the heights that count takes from the clear width with the door at theta, in."""
    counted = [part for part in hardware if counts_in_width(part)]
    bare = max(h.heel_s, greatest_across((leaf,), pin, theta))
    reach = min(greatest_across(counted, pin, theta), limit)
    return max(0.0, reach - bare)


def pair_clear_width(opening: float, s: float, across: float, across_other: float) -> float:
    """Clear width with both leaves of a pair open, in, never below 0.

    across and across_other are how far each leaf reaches into the opening from its own rabbet face.
    """
    return max(0.0, opening - max(s, across) - max(s, across_other))
