"""The swing of a leaf: what it meets first, exactly, and how near it passes everything else.

Every meeting of two convex parts begins where a corner of one crosses an edge of the other (or, for round
parts, comes within the sum of their radii). Those angles are few and closed form; between two of them nothing
about the meeting changes, so one exact look at the overlap there tells a meeting from a graze. Radians and
inches.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from configurator.geometry.meeting_point import meeting_point
from configurator.geometry.pin import TOLERANCE, Point
from configurator.geometry.polar import PolarShape, crossings, overlaps, seen_from
from configurator.geometry.shapes import Shape, may_meet

#: Angles closer than this are one moment, radians: 1e-9 keeps a yard-wide leaf within 4e-8 in.
SAME_MOMENT: Final = 1e-9
#: An angle this near to closed or to square is just that, radians.
_ROUNDING: Final = 1e-12


@dataclass(frozen=True, slots=True)
class Contact:
    """The first meeting of the moving side with something that stands.

    angle in radians; kind and index name what stands, part what of the moving side; point is where, the
    middle of a flat contact, in inches; at_rest when the closed door already overlaps it.
    """

    angle: float
    kind: str
    index: int | None
    part: str
    point: Point
    at_rest: bool = False

    @property
    def between(self) -> tuple[str, int | None, str]:
        """What meets, wherever it does: what stands, its place in its list, and the moving part."""
        return self.kind, self.index, self.part


def _boxes_meet(moving: PolarShape, standing: PolarShape) -> bool:
    """Whether the closed parts could touch, by their upright boxes."""
    left, right, low, high = moving.box
    s_left, s_right, s_low, s_high = standing.box
    return (
        left <= s_right + TOLERANCE
        and s_left <= right + TOLERANCE
        and low <= s_high + TOLERANCE
        and s_low <= high + TOLERANCE
    )


def in_reach(moving: PolarShape, standing: PolarShape) -> bool:
    """Whether two parts share any height and any distance from the pin."""
    return (
        moving.far > standing.near + TOLERANCE
        and standing.far > moving.near + TOLERANCE
        and may_meet(moving.shape, standing.shape)
    )


def _counts(moving: PolarShape, standing: PolarShape) -> bool:
    """Whether a meeting of the two ends the swing: all do but barrel and frame.

    The barrel is let in beside the frame and turns about itself, so the frame never stops it; whether it is
    free there is `barrel_freedom`, a finding about the hinge.
    """
    return not (moving.shape.kind == "barrel" and standing.shape.kind == "frame")


def meeting_angle(moving: PolarShape, standing: PolarShape, limit: float) -> float | None:
    """The angle at which a part turned from closed to limit first overlaps another, None if it never does.

    Radians; 0 when the closed part already overlaps deeper than the tolerance.
    """
    if not in_reach(moving, standing):
        return None
    close = _boxes_meet(moving, standing)
    if close and overlaps(moving, standing, 0.0):
        return 0.0
    into, out_of = crossings(moving, standing)
    first = min(into, default=math.inf)
    if first >= limit and not close:
        return None
    start = 0.0 if close else first
    moments = sorted([angle for angle in (*into, *out_of) if start < angle < limit])
    return _first_overlap(moving, standing, start, (*moments, limit))


def _first_overlap(
    moving: PolarShape, standing: PolarShape, begin: float, ends: Sequence[float]
) -> float | None:
    """The beginning of the first span between crossings with overlap past the tolerance."""
    for end in ends:
        if overlaps(moving, standing, (begin + end) / 2) or overlaps(moving, standing, end):
            return begin
        begin = end
    return None


@dataclass(frozen=True, slots=True)
class _Meeting:
    """A first meeting before its point is worked out, with the places of its parts for settling ties."""

    angle: float
    order: tuple[int, int]
    moving: PolarShape
    standing: PolarShape


def _first_meeting(
    moving: Sequence[PolarShape], standing: Sequence[PolarShape], limit: float
) -> _Meeting | None:
    """The earliest meeting of any two parts; of two at once the first listed standing, then moving part."""
    best: _Meeting | None = None
    for place, still in enumerate(standing):
        near, far = still.near + TOLERANCE, still.far
        for turn, part in enumerate(moving):
            if part.far <= near or far <= part.near + TOLERANCE or not _counts(part, still):
                continue
            angle = meeting_angle(part, still, limit if best is None else best.angle)
            if angle is not None and (best is None or angle < best.angle - SAME_MOMENT):
                best = _Meeting(angle, (place, turn), part, still)
    return best


def polar_contact(
    moving: Sequence[PolarShape], standing: Sequence[PolarShape], pin: Point, limit: float = math.pi
) -> Contact | None:
    """`first_contact` for parts already seen from the pin."""
    first = _first_meeting(moving, standing, limit)
    return None if first is None else _contact(first, pin)


def _contact(meeting: _Meeting, pin: Point) -> Contact:
    """The meeting as it is reported; an angle within rounding of closed or of square is just that."""
    whole = (exact for exact in (0.0, math.pi / 2) if abs(meeting.angle - exact) < _ROUNDING)
    angle = next(whole, meeting.angle)
    still, part = meeting.standing.shape, meeting.moving.shape
    point = meeting_point(pin, meeting.moving, meeting.standing, angle)
    at_rest = angle == 0.0 and overlaps(meeting.moving, meeting.standing, 0.0)
    return Contact(angle, still.kind, still.index, part.kind, point, at_rest)


def contacts_bare_and_with_hardware(
    bare: Sequence[PolarShape],
    hardware: Sequence[PolarShape],
    standing: Sequence[PolarShape],
    pin: Point,
    limit: float = math.pi,
) -> tuple[Contact | None, Contact | None]:
    """The first contact of leaf and barrels alone, and of those with the hardware, in one pass.

    Ties as in `first_contact`, hardware listed after leaf and barrels.
    """
    first = _first_meeting(bare, standing, limit)
    alone = None if first is None else _contact(first, pin)
    if not hardware:
        return alone, alone
    bound = limit if first is None else min(limit, first.angle + 2 * SAME_MOMENT)
    other = _first_meeting(hardware, standing, bound)
    if other is None or (first is not None and not _sooner(other, first)):
        return alone, alone
    return alone, _contact(other, pin)


def _sooner(hardware: _Meeting, bare: _Meeting) -> bool:
    """Whether the hardware's meeting is the one named: earlier, or at once with a thing listed earlier."""
    if abs(hardware.angle - bare.angle) <= SAME_MOMENT:
        return hardware.order[0] < bare.order[0]
    return hardware.angle < bare.angle


def first_contact(
    moving: Iterable[Shape], standing: Iterable[Shape], pin: Point, limit: float = math.pi
) -> Contact | None:
    """The first contact of a turning side with a standing side, exact; None if limit is reached.

    Radians. Overlap no deeper than the tolerance is clear; what rests against something closed is stopped
    only if opening closes it further. Of two contacts at once the first listed standing part is named, then
    the first listed moving part.
    """
    turning = [seen_from(pin, shape) for shape in moving]
    still = [seen_from(pin, shape) for shape in standing]
    return polar_contact(turning, still, pin, limit)
