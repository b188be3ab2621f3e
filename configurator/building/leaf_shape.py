"""What a door's own shape says of its hand: its drawn swing, its leaf in the frame, its handle."""

import math
from collections.abc import Iterator
from typing import Any

import numpy as np

from configurator.building.library import library
from configurator.building.meshes import Points, clipped
from configurator.building.records import LeafShape

_PLANS = ("FootPrint", "Plan", "Annotation")
Faces = tuple[float, float]
"""The lower and the higher y of something."""
_AT_END = 0.2
"""Share of the door's width within which a hinge, or a handle, is at one end of it."""
_HANDLE = (28.0, 52.0)
"""Heights between which handles are, inches; common practice, no source."""
_STANDS_OUT = 0.75
_DEEPER = 0.5
"""Inches by which a leaf must lie nearer to one face of its frame than to the other."""


def leaf_shape(
    door: Any, triangles: Points | None, frame: Faces | None, size: tuple[float, float], inch: float
) -> LeafShape:
    """Return what a door's shape says, its drawn swing first. `triangles` are in the door's own axes.

    `frame` are the faces of its frame, `size` its width and height.
    """
    width, height = size
    drawn = _drawn_swing(door, width, inch)
    if drawn.hinges or triangles is None or frame is None:
        return drawn
    leaf = clipped(clipped(triangles, 2, 0.3 * height, 0.35 * height), 0, 0.3 * width, 0.7 * width)
    if not len(leaf):
        return drawn
    faces = float(leaf[:, :, 1].min()), float(leaf[:, :, 1].max())
    hinges, opens = _handle(triangles, width, frame, faces), _leaf_side(frame, faces)
    why = ("its handle" if hinges else "", "where its leaf lies in the frame" if opens else "")
    return LeafShape(hinges, opens, " and ".join(filter(None, why)))


def frame_faces(triangles: Points, width: float, height: float) -> tuple[float, float] | None:
    """Return the faces of a door's frame in its y: how far its shape reaches beside and over the leaf."""
    jambs = [clipped(triangles, 0, *ends) for ends in ((-math.inf, 0.02 * width), (0.98 * width, math.inf))]
    low = clipped(np.concatenate(jambs), 2, 0.2 * height, 0.35 * height)
    if not len(low):
        return None
    y = low[:, :, 1]
    return (float(y.min()), float(y.max())) if y.max() - y.min() > 1.0 else None


def _leaf_side(frame: Faces, leaf: Faces) -> int:
    """Return to which side a leaf opens: that whose frame face it is near; 0 where it is near none."""
    below, above = leaf[0] - frame[0], frame[1] - leaf[1]
    if min(below, above) < -_DEEPER:  # it is no leaf in a frame
        return 0
    return 0 if abs(above - below) < _DEEPER else 1 if above < below else -1


def _handle(triangles: Points, width: float, frame: Faces, leaf: Faces) -> int:
    """Return at which end the hinges are: the other one than a handle's; 0 where none stands out."""
    band = clipped(triangles, 2, *_HANDLE)
    low, high = min(leaf[0], frame[0]) - _STANDS_OUT, max(leaf[1], frame[1]) + _STANDS_OUT
    out = band[(band[:, :, 1].min(axis=1) < low) | (band[:, :, 1].max(axis=1) > high)]
    if not len(out):
        return 0
    middle = (out[:, :, 0].min() + out[:, :, 0].max()) / 2 / width
    return 1 if middle < 2 * _AT_END else -1 if middle > 1 - 2 * _AT_END else 0


def _drawn_swing(door: Any, width: float, inch: float) -> LeafShape:
    """Return what the swing says that is drawn in a door's plan: an arc about the hinges."""
    for centre, end in _arcs(door, inch):
        hinges = (
            -1 if abs(centre[0]) <= _AT_END * width else 1 if abs(centre[0] - width) <= _AT_END * width else 0
        )
        opens = int(np.sign(round(end[1] - centre[1], 3)))
        if hinges and opens:
            return LeafShape(hinges, opens, "its drawn swing")
    return LeafShape()


def _arcs(door: Any, inch: float) -> Iterator[tuple[Points, Points]]:
    """Yield the centre of every arc in a door's plan, and the point of it farthest off the wall."""
    for representation in door.Representation.Representations if door.Representation else ():
        plan = getattr(representation.ContextOfItems, "ContextType", "") == "Plan"
        if plan or representation.RepresentationIdentifier in _PLANS:
            for item in representation.Items:
                yield from _arcs_in(item, np.eye(4), inch)


def _arcs_in(item: Any, matrix: Points, inch: float) -> Iterator[tuple[Points, Points]]:
    if item.is_a("IfcMappedItem"):
        target = library("util.placement").get_mappeditem_transformation(item)
        for inner in item.MappingSource.MappedRepresentation.Items:
            yield from _arcs_in(inner, matrix if target is None else matrix @ np.array(target), inch)
    elif item.is_a("IfcGeometricSet"):
        for inner in item.Elements:
            yield from _arcs_in(inner, matrix, inch)
    elif item.is_a("IfcCompositeCurve"):
        for segment in item.Segments:
            yield from _arcs_in(segment.ParentCurve, matrix, inch)
    elif item.is_a("IfcTrimmedCurve") and item.BasisCurve.is_a("IfcConic"):
        yield from _trimmed(item, matrix, inch)
    elif item.is_a("IfcIndexedPolyCurve"):
        yield from _indexed(item, matrix, inch)


def _trimmed(curve: Any, matrix: Points, inch: float) -> Iterator[tuple[Points, Points]]:
    place = _in_plan(curve.BasisCurve.Position)
    centre, ends = place[:3, 3], []
    for trim in (curve.Trim1, curve.Trim2):
        for value in trim:
            if value.is_a("IfcCartesianPoint"):
                ends.append(np.array([*value.Coordinates, 0.0])[:3])
                break
        else:
            angle = trim[0].wrappedValue * _plane_angle(curve)
            at = np.array([math.cos(angle), math.sin(angle), 0.0]) * _radii(curve.BasisCurve)
            ends.append((place @ np.array([*at, 1.0]))[:3])
    yield _farthest(centre, ends, matrix, inch)


def _radii(conic: Any) -> Points:
    """Return the half axes of a circle or an ellipse: swings are drawn as either."""
    if conic.is_a("IfcCircle"):
        return np.array([conic.Radius, conic.Radius, 0.0])
    return np.array([conic.SemiAxis1, conic.SemiAxis2, 0.0])


def _in_plan(position: Any) -> Points:
    """Return the placement of a circle in a plan; of one in space its height and tilt are passed over."""
    direction = position.RefDirection.DirectionRatios if position.RefDirection else (1.0, 0.0)
    length = math.hypot(*direction[:2]) or 1.0
    c, s = direction[0] / length, direction[1] / length
    x, y = position.Location.Coordinates[:2]
    return np.array([[c, -s, 0.0, x], [s, c, 0.0, y], [0.0, 0.0, 1.0, 0.0], [0.0, 0.0, 0.0, 1.0]])


def _plane_angle(curve: Any) -> float:
    scale: float = library("util.unit").calculate_unit_scale(curve.file, "PLANEANGLEUNIT")
    return scale


def _indexed(curve: Any, matrix: Points, inch: float) -> Iterator[tuple[Points, Points]]:
    points = [np.array([*point[:2], 0.0]) for point in curve.Points.CoordList]
    for segment in curve.Segments or ():
        if segment.is_a("IfcArcIndex"):
            a, b, c = (points[place - 1] for place in segment.wrappedValue)
            centre = _centre(a, b, c)
            if centre is not None:
                yield _farthest(centre, [a, b, c], matrix, inch)


def _centre(a: Points, b: Points, c: Points) -> Points | None:
    """Return the centre of the circle through three points of a plan; None where they lie in a line."""
    (x_1, y_1), (x_2, y_2) = b[:2] - a[:2], c[:2] - a[:2]
    twice = 2 * (x_1 * y_2 - y_1 * x_2)
    if abs(twice) < 1e-9:
        return None
    one, two = x_1**2 + y_1**2, x_2**2 + y_2**2
    found: Points = a + np.array([(y_2 * one - y_1 * two) / twice, (x_1 * two - x_2 * one) / twice, 0.0])
    return found


def _farthest(centre: Points, ends: list[Points], matrix: Points, inch: float) -> tuple[Points, Points]:
    middle, *others = [(matrix @ np.array([*point, 1.0]))[:3] * inch for point in (centre, *ends)]
    return middle, max(others, key=lambda point: abs(point[1] - middle[1]))
