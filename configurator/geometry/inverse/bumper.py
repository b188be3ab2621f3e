"""Where a wall or floor stop goes, and the angle the door then rests at. Inches and radians.

A stop is taken as a point: its tip. It meets the leaf's pull face, or the face of something on it, `out`
ahead of the pull face. Derived; the tip's own width is left out, so confirm against the stop's drawing.
`stop_on_wall`, `stop_for_angle` and `rest_angle` are closed form for one face; `met_stop` asks the whole
moving side, with the sides and heights of its hardware.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from configurator.geometry.pin import TOLERANCE, Hanging, Pin
from configurator.geometry.polar import PolarShape, cosine_and_sine, seen_from, separation
from configurator.geometry.shapes import Shape, may_meet
from configurator.geometry.swing import SAME_MOMENT, meeting_angle

#: A stop is met by no less than this much of the leaf beyond it, in, so that the face and not its edge lands.
EDGE_KEPT = 1.0


@dataclass(frozen=True, slots=True)
class StopTip:
    """A stop's tip in plan, in, the angle the door rests at, radians, and how far along the leaf it lands.

    along is counted on the leaf's face from the pin toward the latch edge, in.
    """

    point: tuple[float, float]
    angle: float
    along: float


def greatest_along(h: Hanging, pin: Pin) -> float:
    """How far along the leaf's face from the pin a stop may land, in."""
    return h.O - h.g_l - pin.x_p - EDGE_KEPT


def stop_on_wall(h: Hanging, pin: Pin, projection: float, along: float, out: float = 0.0) -> StopTip | None:
    """Where on the wall a stop of a given projection goes, to be met so far along the face.

    projection counts from the wall face, along from the pin; out is how far what meets it stands ahead of the
    pull face. None where a stop so short is not met before 180 degrees, or so long that 90 is not reached.
    """
    tip = projection - h.p - pin.y_p
    rho = math.hypot(along, out - pin.o)
    if along <= 0.0 or abs(tip) > rho:
        return None
    angle = math.pi - math.asin(tip / rho) - math.atan2(out - pin.o, along)
    if not math.pi / 2 <= angle <= math.pi:
        return None
    return StopTip(_tip(pin, along, out, angle), angle, along)


def stop_for_angle(
    h: Hanging, pin: Pin, angle: float, along: float, out: float = 0.0
) -> tuple[StopTip, float]:
    """Where a stop goes for the door to rest at a given angle, and the projection from the wall it needs, in.

    A floor stop takes the place alone; a projection below 0 means that the face is behind the wall's there.
    """
    point = _tip(pin, along, out, angle)
    return StopTip(point, angle, along), point[1] + h.p


def rest_angle(h: Hanging, pin: Pin, point: tuple[float, float], out: float = 0.0) -> float | None:
    """The angle at which a stop with its tip at a point holds the door, radians; None if it is not met.

    Met by the pull face, or by a face out ahead of it, no farther along than a leaf's width less EDGE_KEPT.
    """
    x, y = point[0] - pin.x_p, point[1] - pin.y_p
    rho, off = math.hypot(x, y), out - pin.o
    if abs(off) > rho:
        return None
    along = math.sqrt(rho * rho - off * off)
    angle = math.atan2(y, x) - math.atan2(off, along)
    angle += 2 * math.pi if angle < 0.0 else 0.0
    # A stop placed for exactly 180 may come out a rounding error beyond it, and still holds the door.
    if angle > math.pi + SAME_MOMENT or along > greatest_along(h, pin):
        return None
    return min(angle, math.pi)


def met_stop(moving: Sequence[PolarShape], tip: Shape, pin: Pin) -> tuple[float, str] | None:
    """The angle at which a turning side comes to a stop's tip, and the part that does; None if it never does.

    Radians. A tip that is just touched at 180 degrees holds the door there. moving is seen from the pin.
    """
    seen = seen_from(pin.at, tip)
    best: tuple[float, str] | None = None
    for part in moving:
        angle = meeting_angle(part, seen, math.pi if best is None else best[0])
        if angle is not None and (best is None or angle < best[0] - SAME_MOMENT):
            best = angle, part.shape.kind
    return best or _just_touched(moving, seen)


def _just_touched(moving: Sequence[PolarShape], tip: PolarShape) -> tuple[float, str] | None:
    """The half turn and the first part that touches a tip there without having come up against it."""
    for part in moving:
        if may_meet(part.shape, tip.shape) and separation(part, tip, math.pi) <= TOLERANCE:
            return math.pi, part.shape.kind
    return None


def _tip(pin: Pin, along: float, out: float, angle: float) -> tuple[float, float]:
    """A point of the face in plan with the door at an angle."""
    cosine, sine = cosine_and_sine(angle)
    off = out - pin.o
    return (pin.x_p + along * cosine - off * sine, pin.y_p + along * sine + off * cosine)
