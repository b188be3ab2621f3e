"""Shapes as triangles in the building's axes, inches, and the cuts that are made of them."""

import multiprocessing
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from configurator.building.library import library

Points = NDArray[Any]
"""Rows of x, y, z; of triangles three points each: n x 3 x 3."""
METRE = 1 / 0.0254
_THREADS = 2
_AT_ONCE = 400
_KERNEL = "hybrid-passthrough-opencascade"
"""Triangles stay as they are: making solids of 5,000 of them first takes half a second."""


@dataclass(frozen=True, slots=True)
class Mesh:
    """The triangles of one element, and its element in the library."""

    element: Any
    triangles: Points

    @property
    def low(self) -> Points:
        """The least x, y and z."""
        low: Points = self.triangles.reshape(-1, 3).min(axis=0)
        return low

    @property
    def high(self) -> Points:
        """The greatest x, y and z."""
        high: Points = self.triangles.reshape(-1, 3).max(axis=0)
        return high


def meshes(model: Any, elements: Sequence[Any], whole: bool = False) -> Iterator[Mesh | None]:
    """Yield the shape of each element that has one as it is worked out, None for one that has none.

    `whole` leaves openings uncut: quick, and never smaller than it is.
    """
    if not elements:
        return
    geom = library("geom")
    settings = geom.settings()
    settings.set("use-world-coords", True)
    settings.set("weld-vertices", False)
    settings.set("disable-opening-subtractions", whole)
    for first in range(0, len(elements), _AT_ONCE):
        yield from _some(model, settings, elements[first : first + _AT_ONCE])


def _some(model: Any, settings: Any, elements: Sequence[Any]) -> Iterator[Mesh | None]:
    """Yield the shapes of some elements: the library keeps all that it has worked out until it has ended."""
    threads = min(_THREADS, multiprocessing.cpu_count())
    iterator = library("geom").iterator(
        settings, model, threads, include=list(elements), geometry_library=_KERNEL
    )
    if not iterator.initialize():
        return
    while True:
        shape = iterator.get()
        points = np.frombuffer(shape.geometry.verts_buffer, dtype=np.float64).reshape(-1, 3) * METRE
        faces = np.frombuffer(shape.geometry.faces_buffer, dtype=np.int32).reshape(-1, 3)
        yield Mesh(model.by_id(shape.id), points[faces]) if len(faces) and np.isfinite(points).all() else None
        if not iterator.next():
            return


def moved(triangles: Points, matrix: Points) -> Points:
    """Return triangles by another placement."""
    found: Points = triangles @ matrix[:3, :3].T + matrix[:3, 3]
    return found


def clipped(triangles: Points, axis: int, least: float, most: float) -> Points:
    """Return what of the triangles lies between two planes across an axis, as triangles."""
    if np.isfinite(least):
        triangles = _above(triangles, axis, least, 1.0)
    return _above(triangles, axis, most, -1.0) if np.isfinite(most) else triangles


def _above(triangles: Points, axis: int, plane: float, sign: float) -> Points:
    """Return what of the triangles lies on one side of a plane; what is cut is cut into triangles again."""
    if not len(triangles):
        return triangles
    away = sign * (triangles[:, :, axis] - plane)
    inside = away >= 0
    count = inside.sum(axis=1)
    kept = [triangles[count == 3]]
    for inner in (1, 2):
        cut, far = triangles[count == inner], away[count == inner]
        if not len(cut):
            continue
        # The corner that is alone on its side comes first, the others after it in their order.
        alone = np.argmax(inside[count == inner] if inner == 1 else ~inside[count == inner], axis=1)
        order = (alone[:, None] + np.arange(3)) % 3
        rows = np.arange(len(cut))[:, None]
        cut, far = cut[rows, order], far[rows, order]
        a, b, c = cut[:, 0], cut[:, 1], cut[:, 2]
        at_b = a + (b - a) * (far[:, 0] / (far[:, 0] - far[:, 1]))[:, None]
        at_c = a + (c - a) * (far[:, 0] / (far[:, 0] - far[:, 2]))[:, None]
        if inner == 1:
            kept.append(np.stack([a, at_b, at_c], axis=1))
        else:
            kept += [np.stack([at_b, b, c], axis=1), np.stack([at_b, c, at_c], axis=1)]
    found: Points = np.concatenate(kept)
    return found


def holds(triangles: Points, point: Points) -> bool:
    """Say whether a closed shape holds a point: a line up from it leaves once more than it enters."""
    xy = triangles[:, :, :2] - point[:2]
    a, b, c = xy[:, 0], xy[:, 1], xy[:, 2]
    crosses = [p[:, 0] * q[:, 1] - p[:, 1] * q[:, 0] for p, q in ((a, b), (b, c), (c, a))]
    over = np.all([each > 0 for each in crosses], axis=0) | np.all([each < 0 for each in crosses], axis=0)
    if not over.any():
        return False
    weights = np.stack([crosses[1][over], crosses[2][over], crosses[0][over]], axis=1)
    heights = (weights * triangles[over][:, :, 2]).sum(axis=1) / weights.sum(axis=1)
    return bool((heights > point[2]).sum() % 2)
