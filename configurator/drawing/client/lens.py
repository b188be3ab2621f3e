"""The magnifier that opens from the hinge: what door, frame and wall do there, cut off at a circle."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from configurator.drawing.base.primitives import Arc, Point, Polygon, Polyline, Primitive, rectangle, turned
from configurator.drawing.base.view import Box, View, box_around
from configurator.drawing.client.room import LINE, THIN, jambs, things
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.drawing.plan.leaf import door_leaf_outline, frame_leaf_outline, leaf_outline

_SIDES = 48
_CIRCLE = [(2 * math.pi * n / _SIDES) for n in range(_SIDES)]
_LEAST, _MOST = 3.0, 6.5
"""Radius of what it shows, inches."""
_FAR = 5.0
"""The same where it shows a place far from the hinge."""
_NEAR = 9.0
"""Inches along the wall from the pin within which a thing belongs into the picture of the hinge."""
_AIR = 0.7
_PIN_OF_BARREL = 0.46


@dataclass(frozen=True, slots=True)
class Lens:
    """A circle of the plan, inches, and the view that shows it enlarged on the sheet."""

    centre: Point
    radius: float
    view: View

    @property
    def on_sheet(self) -> tuple[Point, float]:
        """Centre and radius on the sheet, points."""
        return self.view.to_sheet(self.centre), self.radius * self.view.scale


def about(hungs: Sequence[DrawnLeaf]) -> tuple[Point, float]:
    """Return the circle of the plan that tells two hinges apart: centre and radius, the same for both.

    About the hinge with what stands near it; about the contact where a door is stopped far from its hinge
    and nothing near it tells why.
    """
    far = [one.contact for one in hungs if one.contact is not None and _far(one)]
    if far and len(far) == len(hungs):
        (x, y), (x_1, y_1) = far[0], far[-1]
        return ((x + x_1) / 2, (y + y_1) / 2), max(_FAR, math.dist(far[0], far[-1]) / 2 + 3.0)
    box = box_around([point for one in hungs for point in _telling(one)])
    centre = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    wanted = max(math.hypot(box.width, box.height) / 2 * 0.86 + _AIR, _LEAST)
    return centre, min(wanted, _MOST)


def _far(one: DrawnLeaf) -> bool:
    at = one.contact
    return (
        at is not None
        and not one.held
        and math.dist(at, one.pin.at) > _NEAR
        and one.candidate.rests_at < 170.0
    )


def _telling(one: DrawnLeaf) -> Iterator[Point]:
    """Yield the places that a picture of the hinge must show."""
    h, (x, y) = one.h, one.pin.at
    yield (x + h.d_b / 2 + 1.2, y + h.d_b / 2)
    yield (-h.F - 0.8, min(0.0, one.wall_face) - 1.0)
    yield (-h.F, 2 * one.pin.o - h.i + h.T)
    if one.contact is not None and math.dist(one.contact, one.pin.at) <= _NEAR:
        yield (one.contact[0] - 0.6, one.contact[1])
    for thing in one.standing:
        for shape in thing.shapes:
            right = max(point[0] for point in shape.points) + shape.radius
            if thing.met and x - _NEAR < right < x:
                yield (right - 1.0, y)


def lens_still(hung: DrawnLeaf, lens: Lens) -> Iterator[Primitive]:
    """Yield what does not turn: floor, wall, things, frame and the hinge leaf on it."""
    ring = _outline(lens)
    yield Polygon(THIN, ring, "floor", outlined=False)
    left, back = lens.centre[0] - 2 * lens.radius, hung.wall_face - hung.wall_depth
    right = lens.centre[0] + 2 * lens.radius
    parts: list[Primitive] = [
        Polygon(LINE, rectangle(left, -hung.h.F, back, hung.wall_face), "roomwall", "wall"),
        Polygon(THIN, rectangle(left, right, back - 40.0, back), "floorback", outlined=False),
    ]
    if right > hung.opening + hung.h.F:
        parts.append(
            Polygon(LINE, rectangle(hung.opening + hung.h.F, right, back, hung.wall_face), "roomwall")
        )
    parts += [*jambs(hung), *things(hung)]
    if hung.candidate.has_barrel:
        parts.append(Polygon(LINE, frame_leaf_outline(hung), "plate", "hinge"))
    yield from through(lens, parts)


def lens_moving(hung: DrawnLeaf, lens: Lens, turn: float) -> Iterator[Primitive]:
    """Yield the door, what it carries and the hinge as they stand at an angle, radians."""
    at = hung.pin.at
    parts: list[Primitive] = [
        Polygon(LINE, turned(shape.points, at, turn), "hardware", shape.kind)
        for shape in hung.hardware
        if not shape.radius
    ]
    parts.append(Polygon("A-DOOR", turned(leaf_outline(hung), at, turn), "roomdoor", "door"))
    if hung.candidate.has_barrel:
        parts.append(Polygon(LINE, turned(door_leaf_outline(hung), at, turn), "plate", "hinge"))
        parts += [Arc(LINE, at, hung.h.d_b / 2, 0.0, 2 * math.pi, "barrel", "hinge")]
        parts += [Arc(LINE, at, hung.h.d_b / 2 * _PIN_OF_BARREL, 0.0, 2 * math.pi, "roomframe", "hinge")]
    yield from through(lens, parts)


# --- Cut off at the circle ---


def through(lens: Lens, parts: Iterable[Primitive]) -> Iterator[Primitive]:
    """Yield what of filled outlines and discs lies within the circle, their lines with no edge at the rim."""
    ring = _outline(lens)
    for part in parts:
        points = _round(part) if isinstance(part, Arc) else part.points if isinstance(part, Polygon) else ()
        if not points:
            continue
        inside = all(math.dist(point, lens.centre) <= lens.radius for point in points)
        if inside:
            yield part
            continue
        kept = _cut(points, ring)
        if not kept or not isinstance(part, Arc | Polygon):
            continue
        yield Polygon(part.layer, kept, part.fill, part.name, outlined=False)
        if isinstance(part, Arc) or part.outlined:
            yield from (Polyline(part.layer, piece) for piece in _edges(points, lens))


def _outline(lens: Lens) -> tuple[Point, ...]:
    (x, y), r = lens.centre, lens.radius
    return tuple((x + r * math.cos(turn), y + r * math.sin(turn)) for turn in _CIRCLE)


def _round(part: Arc) -> tuple[Point, ...]:
    (x, y), r = part.centre, part.radius
    return tuple((x + r * math.cos(turn), y + r * math.sin(turn)) for turn in _CIRCLE)


def _cut(points: Sequence[Point], ring: Sequence[Point]) -> tuple[Point, ...]:
    """Return the part of an outline inside a convex one that runs counter-clockwise."""
    kept = list(points)
    for (x_0, y_0), (x_1, y_1) in pairwise((*ring, ring[0])):
        nx, ny = y_0 - y_1, x_1 - x_0
        sides = [nx * (x - x_0) + ny * (y - y_0) for x, y in kept]
        if min(sides) >= 0.0:
            continue
        if max(sides) <= 0.0:
            return ()
        cut: list[Point] = []
        before, was = kept[-1], sides[-1]
        for point, side in zip(kept, sides, strict=True):
            if (side >= 0.0) != (was >= 0.0):
                share = was / (was - side)
                cut.append(
                    (before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1]))
                )
            if side >= 0.0:
                cut.append(point)
            before, was = point, side
        kept = cut
    return tuple(kept)


def _edges(points: Sequence[Point], lens: Lens) -> Iterator[tuple[Point, Point]]:
    """Yield the pieces of an outline's edges within the circle."""
    for a, b in pairwise((*points, points[0])):
        piece = _within(a, b, lens)
        if piece is not None:
            yield piece


def _within(a: Point, b: Point, lens: Lens) -> tuple[Point, Point] | None:
    (x, y), r = lens.centre, lens.radius
    dx, dy, fx, fy = b[0] - a[0], b[1] - a[1], a[0] - x, a[1] - y
    long = dx * dx + dy * dy
    if long == 0.0:
        return None
    half, rest = (fx * dx + fy * dy) / long, (fx * fx + fy * fy - r * r) / long
    under = half * half - rest
    if under <= 0.0:
        return None
    root = math.sqrt(under)
    low, high = max(0.0, -half - root), min(1.0, -half + root)
    if low >= high:
        return None
    return (a[0] + low * dx, a[1] + low * dy), (a[0] + high * dx, a[1] + high * dy)


def lens_in(box: Box, circle: tuple[Point, float], mirrored: bool) -> Lens:
    """Return the lens that shows a circle of the plan as large as a square of the sheet allows."""
    (x, y), r = circle
    scale = min(box.width, box.height) / 2 / r
    middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    hand = -1.0 if mirrored else 1.0
    view = View(scale, (middle[0] - hand * scale * x, middle[1] - scale * y), mirrored, box)
    return Lens(
        (x, y), r, replace(view, window=Box(box.left - 1, box.bottom - 1, box.right + 1, box.top + 1))
    )
