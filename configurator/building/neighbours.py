"""What stands before a door, cut where it may matter: boxes, never smaller than the thing is."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np

from configurator.building.doors import Matrix
from configurator.building.meshes import Mesh, Points, clipped, moved
from configurator.building.records import Box, ModelDoor

SWEEP = 12.0
"""Inches beyond its width that a leaf with its hardware may reach."""
MANOEUVRE = (48.0, 62.0)
"""Inches beside and before a door that manoeuvring takes up at most; `manoeuvring.csv` has what is asked."""
_OFF_WALL = 0.02
_FLOOR = 0.5
"""Inches: what ends so near the floor is under the leaf."""
_SAME = 1 / 16
_STRIP = 4.0
_MOST_CUTS, _MOST_BOXES = 8, 12
_SLACK = 2e-5
_INSIDE = 1e-3
"""Inches by which a piece is cut short, so that faces at its ends count for the one they bound."""
_KINDS = (
    ("chair rail", ("chair rail", "wall rail", "crash rail", "handrail")),
    ("wainscot", ("wainscot", "panelling", "paneling")),
    ("base", ("skirting", "baseboard", "wall base")),
)


@dataclass(frozen=True, slots=True)
class Zone:
    """The space on one side of a door in which things matter, in its axes; y counts from the wall face."""

    door: ModelDoor
    side: int
    face: float
    inverse: Matrix
    left: float
    right: float
    far: float
    top: float

    def low_high(self) -> tuple[Points, Points]:
        """Return the box about it in the building's axes."""
        ends = (self.face, self.face + self.side * self.far)
        corners = np.array(
            [(x, y, z) for x in (self.left, self.right) for y in ends for z in (0.0, self.top)]
        )
        placed = moved(corners, np.linalg.inv(self.inverse))
        return placed.min(axis=0), placed.max(axis=0)

    def seen(self, triangles: Points) -> Points:
        """Return triangles in the zone's axes: x as the door's, y off the wall face, z up from the floor."""
        own = moved(triangles, self.inverse)
        own[:, :, 1] = self.side * (own[:, :, 1] - self.face)
        return own


def zone_of(door: ModelDoor, side: int, inverse: Matrix) -> Zone:
    """Return the space that is looked at on the side of lower (-1) or higher (+1) y of a door."""
    assert door.width is not None
    assert door.height is not None
    faces = (door.wall.low, door.wall.high) if door.wall is not None else (None, None)
    face = faces[0] if side < 0 else faces[1]
    if face is None:
        face = 0.0 if door.frame is None else door.frame[0 if side < 0 else 1]
    reach = max(door.width + SWEEP, MANOEUVRE[0])
    far = max(door.width + SWEEP, MANOEUVRE[1])
    return Zone(door, side, face, inverse, -reach, door.width + reach, far, door.height)


class Zones:
    """Every zone of a model, found quickly by the box about it."""

    def __init__(self, zones: Sequence[Zone]) -> None:
        self.zones = zones
        boxes = [zone.low_high() for zone in zones]
        self._low = np.array([low for low, _ in boxes]).reshape(-1, 3)
        self._high = np.array([high for _, high in boxes]).reshape(-1, 3)

    def near(self, mesh: Mesh) -> Iterator[Zone]:
        """Yield the zones whose boxes a shape reaches into."""
        hit = np.all((mesh.low <= self._high) & (mesh.high >= self._low), axis=1)
        yield from (self.zones[int(place)] for place in np.flatnonzero(hit))


def boxes_in(zone: Zone, triangles: Points, element: Any) -> tuple[Box, ...]:
    """Return what of an element stands in a zone: one box, or several where its outline changes."""
    own = zone.seen(triangles)
    name, kind = named(element), _kind(element)
    column = _round_column(zone, own, name) if element.is_a("IfcColumn") else None
    if column is not None:
        return (column,)
    return tuple(boxes(zone, own, name, kind))


def boxes(zone: Zone, own: Points, name: str, kind: str) -> Iterator[Box]:
    """Yield boxes about triangles in a zone's axes: several where one would be much larger than the thing."""
    high = clipped(own, 2, _FLOOR, zone.top)
    if not len(high) or not _reaches(zone, _bounds(high)):
        return
    found = _cut(zone, high, _STRIP)
    if len(found) > _MOST_BOXES:
        found = _cut(zone, high, 3 * _STRIP)
    if len(found) > _MOST_BOXES or not _covers(zone, found, high):
        found = [(_bounds(high), float(high[:, :, 2].min()), float(high[:, :, 2].max()))]
    for (left, right, near, far), low, top in found:
        yield Box(
            name,
            kind,
            -math.inf if left <= zone.left else _outward(left, -1),
            math.inf if right >= zone.right else _outward(right, 1),
            _outward(near, -1) if near > _OFF_WALL else 0.0,
            math.inf if far > zone.far else _outward(far, 1),
            -math.inf if low <= _FLOOR + _OFF_WALL else _outward(low, -1),
            math.inf if top >= zone.top - _OFF_WALL else _outward(top, 1),
        )


def named(element: Any) -> str:
    """Return what an element is called, with its global id: as findings and topics name it."""
    name = " ".join((element.Name or element.is_a().removeprefix("Ifc")).split())[:80]
    return f"{name} ({element.GlobalId})"


_Bounds = tuple[float, float, float, float]
"""Left and right in x, near and far in y."""
_Piece = tuple[_Bounds, float, float]
"""Bounds with bottom and top."""


def _cut(zone: Zone, triangles: Points, step: float) -> list[_Piece]:
    """Return pieces of a thing: cut in height where it changes, and along the wall where its outline does."""
    levels = _breaks(triangles[:, :, 2], float(triangles[:, :, 2].min()), float(triangles[:, :, 2].max()))
    bands: list[tuple[list[_Bounds], float, float]] = []
    for low, high in pairwise(levels):
        strips = _strips(zone, clipped(triangles, 2, low + _INSIDE, high - _INSIDE), step)
        if bands and bands[-1][2] == low and _alike(bands[-1][0], strips):
            strips = [_union(one, two) for one, two in zip(bands[-1][0], strips, strict=True)]
            low = bands.pop()[1]
        bands.append((strips, low, high))
    return [(strip, low, high) for strips, low, high in bands for strip in strips]


def _strips(zone: Zone, part: Points, step: float) -> list[_Bounds]:
    """Return the outline of a band from strip to strip along the wall, those alike as one."""
    if not len(part) or not _reaches(zone, _bounds(part)):
        return []
    left, right, _, _ = _bounds(part)
    ends = _breaks(
        part[:, :, 0], max(left, zone.left), min(right, zone.right), step if _slants(part) else None
    )
    found: list[_Bounds] = []
    for low, high in pairwise(ends):
        piece = clipped(part, 0, low + _INSIDE, high - _INSIDE)
        if not len(piece):
            continue
        own = _bounds(piece)
        strip = (_reached(own[0], low), _reached(own[1], high), *own[2:])
        if not _reaches(zone, strip):
            continue
        if found and found[-1][1] == strip[0] and _alike([(0, 0, *found[-1][2:])], [(0, 0, *strip[2:])]):
            strip = _union(found.pop(), strip)
        found.append(strip)
    return found


def _breaks(values: Points, least: float, most: float, step: float | None = None) -> list[float]:
    """Return where a thing is cut between two ends: at its own corners, and every `step` inches.

    Of very many corners, as of a curve, only steps are left.
    """
    inner = np.unique(values[(values > least + _SAME) & (values < most - _SAME)].round(3))
    inner = inner[np.diff(inner, prepend=-math.inf) > _SAME]
    many = len(inner) > _MOST_CUTS
    wide = step or ((most - least) / _MOST_CUTS if many else None)
    steps = np.arange(least + wide, most - _SAME, wide) if wide else np.zeros(0)
    found = np.unique(np.concatenate([[least], steps if many else np.concatenate([inner, steps]), [most]]))
    return [float(value) for value in found]


def _covers(zone: Zone, found: Sequence[_Piece], triangles: Points) -> bool:
    """Say whether pieces reach as far as the whole does; sheets without thickness may fall between them."""
    if not found:
        return False
    inside = clipped(triangles, 0, zone.left, zone.right)
    if not len(inside):
        return True
    whole = _bounds(inside)
    near, far = whole[2:]
    own = [piece[0] for piece in found]
    reach = (min(b[0] for b in own), max(b[1] for b in own), min(b[2] for b in own), max(b[3] for b in own))
    heights = min(low for _, low, _ in found), max(high for *_, high in found)
    z = triangles[:, :, 2]
    return (
        (reach[0] <= whole[0] + _SAME or near < 0 or far > zone.far)
        and (reach[1] >= whole[1] - _SAME or near < 0 or far > zone.far)
        and reach[3] >= min(whole[3], zone.far) - _SAME
        and heights[0] <= z.min() + _SAME
        and heights[1] >= z.max() - _SAME
    )


def _bounds(triangles: Points) -> _Bounds:
    x, y = triangles[:, :, 0], triangles[:, :, 1]
    return float(x.min()), float(x.max()), float(y.min()), float(y.max())


def _reaches(zone: Zone, bounds: _Bounds) -> bool:
    left, right, near, far = bounds
    return left < zone.right and right > zone.left and near < zone.far and far > _OFF_WALL


def _reached(own: float, end: float) -> float:
    return end if abs(own - end) <= 2 * _INSIDE else own


def _alike(one: Sequence[_Bounds], two: Sequence[_Bounds]) -> bool:
    return len(one) == len(two) and all(
        max(map(abs, np.subtract(a, b))) <= _SAME for a, b in zip(one, two, strict=True)
    )


def _union(one: _Bounds, two: _Bounds) -> _Bounds:
    return min(one[0], two[0]), max(one[1], two[1]), min(one[2], two[2]), max(one[3], two[3])


def _slants(part: Points) -> bool:
    """Say whether any of its faces runs neither along the wall nor square to it, in plan."""
    normal = np.abs(np.cross(part[:, 1] - part[:, 0], part[:, 2] - part[:, 0]))
    longest = normal.max(axis=1, initial=1e-12)
    return bool((np.minimum(normal[:, 0], normal[:, 1]) > 1e-3 * longest).any())


def _outward(value: float, sign: int) -> float:
    """Return a length to 1/10,000 in, rounded away from the thing, but not for the kernel's noise."""
    return float(sign * math.ceil((sign * value - _SLACK) * 1e4) / 1e4)


def _round_column(zone: Zone, own: Points, name: str) -> Box | None:
    """Return a round column as what it is; None where it is not round, or stands half in the wall."""
    left, right, near, far = _bounds(own)
    wide, deep = right - left, far - near
    if near < -_OFF_WALL or not _reaches(zone, (left, right, near, far)) or abs(wide - deep) > 0.02 * wide:
        return None
    points = np.unique(own[:, :, :2].reshape(-1, 2).round(6), axis=0)
    middle, off = map(float, points.mean(axis=0))
    away = np.linalg.norm(points - [middle, off], axis=1)
    radius = float(away.max())
    if (away < 0.98 * radius).any() or len(points) <= _MOST_CUTS:
        return None
    z = own[:, :, 2]
    return Box(
        name,
        "column",
        _outward(middle - radius, -1),
        _outward(middle + radius, 1),
        max(_outward(off - radius, -1), 0.0),
        _outward(off + radius, 1),
        -math.inf if z.min() <= _FLOOR else _outward(float(z.min()), -1),
        math.inf if z.max() >= zone.top else _outward(float(z.max()), 1),
        _outward(2 * radius, 1),
    )


def _kind(element: Any) -> str:
    """Return the kind of obstruction that an element is; what it is not sure of is just something."""
    if element.is_a("IfcWall"):
        return "return wall"
    words = f"{element.Name or ''} {getattr(element, 'ObjectType', '') or ''}".casefold()
    predefined = str(getattr(element, "PredefinedType", "") or "").casefold()
    if predefined == "skirtingboard":
        return "base"
    return next((kind for kind, names in _KINDS if any(name in words for name in names)), "other")


# --- Other doors' swings ---


def swing_mesh(door: ModelDoor, placed: Matrix) -> Points | None:
    """Return what a door sweeps to 90 degrees, as triangles in the building's axes; None: not known."""
    if door.width is None or door.height is None or (door.sides is None and not door.pair):
        return None
    face = 0.0 if door.wall is None or door.wall.high is None else door.wall.high
    if door.pair:
        half = door.width / 2
        sectors = [_sector(0.0, half, face), _sector(door.width, -half, face)]
    else:
        left = door.sides == (-1, 1)
        sectors = [_sector(0.0 if left else door.width, door.width if left else -door.width, face)]
    sheets = [_upright(points, door.height) for points in sectors]
    return moved(np.concatenate(sheets), placed)


def _sector(hinge: float, reach: float, face: float) -> Points:
    angles = np.radians(np.arange(0, 91, 7.5))
    # The chords of a circle lie inside it: its points stand so far out that the chords touch it.
    out = reach / math.cos(math.radians(3.75))
    arc = np.stack([hinge + out * np.cos(angles), face + abs(out) * np.sin(angles)], axis=1)
    return np.concatenate([[[hinge, face]], arc])


def _upright(points: Points, height: float) -> Points:
    ends = np.stack([points, np.roll(points, -1, axis=0)], axis=1)
    low = np.concatenate([ends, np.full((*ends.shape[:2], 1), 0.0)], axis=2)
    high = low + np.array([0.0, 0.0, height])
    one = np.stack([low[:, 0], low[:, 1], high[:, 1]], axis=1)
    two = np.stack([low[:, 0], high[:, 1], high[:, 0]], axis=1)
    found: Points = np.concatenate([one, two])
    return found
