"""The corners of a closed leaf in plan: its bevel counted, its heel rounded about the axis if it is."""

import math
from typing import Any

import numpy as np

from configurator.geometry.pin import Hanging, Point
from configurator.units import format_size


def leaf_corners(h: Hanging) -> tuple[Point, ...]:
    """The closed leaf's corners from the hinge side's stop corner counter-clockwise, in; bevel counted."""
    pull, stop, edge = -h.i, -h.i - h.T, h.O - h.g_l
    if h.heel_radius is None:
        return ((h.g_h, stop), (edge - h.beta * h.T, stop), (edge, pull), (h.g_h, pull))
    heel = _heel_corners(h)
    return (heel[0], (edge - h.beta * h.T, stop), (edge, pull), *heel[1:])


def _heel_corners(h: Hanging) -> tuple[Point, ...]:
    """A rounded heel's corners, in: on the stop face first, then from the pull face back round.

    Between corners on the rounding the heel is an arc about the axis. The arc turns along itself, so its ends
    meet whatever the heel meets: the straight line between them stands for it. Raises ValueError for a radius
    that does not reach both faces, or an axis that is not given.
    """
    if h.axis is None or h.heel_radius is None:
        raise ValueError("A heel is rounded about the axis the leaf turns on; that is not given.")
    (off, from_heel), r = h.axis, h.heel_radius
    if from_heel <= 0.0:
        raise ValueError("A heel is rounded about an axis that stands within the door's width.")
    if np.any(r <= np.maximum(abs(off), abs(off + h.T))):
        raise ValueError(
            f"A heel radius of {format_size(r)} in about an axis there does not reach both faces of the door."
        )
    stop, pull = -off - h.T, -off
    half = math.sqrt(max(r * r - from_heel * from_heel, 0.0))
    arc = () if r <= from_heel else tuple(np.clip(out, stop, pull) for out in (half, -half))
    return tuple(_on_heel(h, r, out) for out in (stop, pull, *arc))


def _on_heel(h: Hanging, r: float, out: Any) -> Point:
    """A corner of the rounded heel, so far out from the axis; of many leaves a column of them."""
    off, from_heel = h.axis or (0.0, 0.0)
    x = h.g_h + np.maximum(0.0, from_heel - (r * r - out * out) ** 0.5)
    y = off - h.i + out
    return (x, y) if np.ndim(x) or np.ndim(y) else (float(x), float(y))
