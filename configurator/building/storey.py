"""The outlines of a storey: what is cut at door height, without the walls where doors stand in them."""

import math
from collections.abc import Sequence

import numpy as np

from configurator.building.meshes import Points
from configurator.building.records import ModelDoor, Polyline

_EPSILON = 1e-6
_PAST_WALL = 1.0
"""Inches by which a door's opening is cut out beyond the faces of its wall."""


def section(triangles: Points, height: float) -> tuple[Polyline, ...]:
    """Return the outline at a height as pieces of two points each."""
    above = triangles[:, :, 2] > height
    count = above.sum(axis=1)
    found = []
    for inner in (1, 2):
        cut = triangles[count == inner]
        if not len(cut):
            continue
        alone = np.argmax(above[count == inner] if inner == 1 else ~above[count == inner], axis=1)
        order = (alone[:, None] + np.arange(3)) % 3
        cut = cut[np.arange(len(cut))[:, None], order]
        a = cut[:, 0]
        ends = []
        for other in (cut[:, 1], cut[:, 2]):
            part = (height - a[:, 2]) / (other[:, 2] - a[:, 2])
            ends.append(a[:, :2] + (other[:, :2] - a[:, :2]) * part[:, None])
        found.append(np.stack(ends, axis=1))
    lines = np.concatenate(found) if found else np.zeros((0, 2, 2))
    long = np.linalg.norm(lines[:, 0] - lines[:, 1], axis=1) > _EPSILON
    return tuple(((float(a[0]), float(a[1])), (float(b[0]), float(b[1]))) for a, b in lines[long])


def without_openings(lines: Sequence[Polyline], doors: Sequence[ModelDoor]) -> tuple[Polyline, ...]:
    """Return lines of two points each without what of them lies where doors stand."""
    if not lines:
        return ()
    kept = np.array(lines)
    for door in doors:
        if door.wall is not None and door.wall.low is not None and door.wall.high is not None and door.width:
            x, y, _, angle = door.place
            c, s = math.cos(angle), math.sin(angle)
            own = (kept - (x, y)) @ np.array([[c, -s], [s, c]])
            box = (0.0, door.width, door.wall.low - _PAST_WALL, door.wall.high + _PAST_WALL)
            kept = _outside(kept, own, box)
    return tuple(((float(a[0]), float(a[1])), (float(b[0]), float(b[1]))) for a, b in kept)


def _outside(lines: Points, own: Points, box: tuple[float, float, float, float]) -> Points:
    """Return lines without what of them lies in a box; `own` are the lines in the axes of the box."""
    start, way = own[:, 0], own[:, 1] - own[:, 0]
    first, last = np.zeros(len(own)), np.ones(len(own))
    with np.errstate(divide="ignore", invalid="ignore"):
        for axis, least, most in ((0, box[0], box[1]), (1, box[2], box[3])):
            level = np.abs(way[:, axis]) < _EPSILON
            ends = np.stack([(least - start[:, axis]) / way[:, axis], (most - start[:, axis]) / way[:, axis]])
            inside = (start[:, axis] > least) & (start[:, axis] < most)
            low = np.where(level, np.where(inside, -math.inf, math.inf), ends.min(axis=0))
            high = np.where(level, np.where(inside, math.inf, -math.inf), ends.max(axis=0))
            first, last = np.maximum(first, low), np.minimum(last, high)
    hit = last - first > _EPSILON
    if not hit.any():
        return lines
    cut, a, b = lines[hit], first[hit, None], last[hit, None]
    along = cut[:, 1] - cut[:, 0]
    before = np.stack([cut[:, 0], cut[:, 0] + along * a], axis=1)[a[:, 0] > _EPSILON]
    after = np.stack([cut[:, 0] + along * b, cut[:, 1]], axis=1)[b[:, 0] < 1 - _EPSILON]
    found: Points = np.concatenate([lines[~hit], before, after])
    return found
