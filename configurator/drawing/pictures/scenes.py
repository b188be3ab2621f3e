"""The scenes that words are pictured in: a typical opening in plan or elevation, whole or in part.

Everything is drawn by the program's own drawing of that opening; nothing here is a picture of its own but the
hinge laid flat. What is marked in a scene is drawn heavy, and a span has arrowheads, so that it is told apart
without its colour too.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from configurator.drawing.base.primitives import Arc, Dimension, Point, Polygon, Polyline, Primitive
from configurator.drawing.base.view import Box
from configurator.drawing.pages.elevation_facts import LeafShown, leaves_shown
from configurator.drawing.pages.elevation_parts import elevation_parts
from configurator.drawing.pictures.hinge_sample import HingeSample, sample_extent, sample_parts
from configurator.drawing.pictures.small_plan import mapped, small_extent, small_plan
from configurator.drawing.plan.drawn_leaf import DrawnLeaf, drawn_leaves
from configurator.drawing.plan.jamb import hinge_jamb, wall_beside
from configurator.drawing.plan.leaf import (
    barrel,
    closed_outline,
    door_leaf,
    frame_leaf,
    hardware_parts,
    open_leaf,
)
from configurator.drawing.plan.standing_things import door_stop_parts, standing_things
from configurator.rules.filling.usual import FilledOpening
from configurator.study import Study
from configurator.study.typical import typical_study
from configurator.tables import ObstructionKindRow, row_of
from configurator.units import Display

_FAR_LEFT = -60.0
"""The wall runs on past the edge of every picture, inches."""
_BELOW, _ABOVE, _BESIDE = 0.9, 1.6, 3.6
"""Inches shown of the plan about the hinge: past the frame, past the barrel, and of wall and door."""
WORD, MEASURED = "A-ANNO-WORD", "A-ANNO-DIMS-AXIS"
Mark = tuple[Primitive, ...]


@dataclass(frozen=True, slots=True)
class Scene:
    """One picture without a mark: its primitives, what it shows of them (inches), and what marks are set by.

    `hung` is the leaf on its hinge, open to `angle` radians; `leaves` and `filled` are for elevations.
    """

    parts: tuple[Primitive, ...]
    extent: Box
    hung: DrawnLeaf
    angle: float
    filled: FilledOpening
    leaves: tuple[LeafShown, ...]
    sample: HingeSample


@cache
def scene(name: str) -> Scene:
    """Return a scene by name. Raises KeyError for one that there is not."""
    opening, _ = _SCENES[name]
    return scene_of(name, typical_study(opening))


def scene_of(name: str, found: Study) -> Scene:
    """Return a scene as it shows another opening. Raises KeyError for one that there is not."""
    hung = drawn_leaves(found, Display())[0]
    parts, extent, angle = _SCENES[name][1](hung, found.filled, leaves_shown(found))
    return Scene(parts, extent, hung, angle, found.filled, leaves_shown(found), HingeSample())


_Made = tuple[tuple[Primitive, ...], Box, float]
_Maker = Callable[[DrawnLeaf, FilledOpening, tuple[LeafShown, ...]], _Made]


def _hinge_side(hung: DrawnLeaf, _: FilledOpening, __: tuple[LeafShown, ...]) -> _Made:
    return _about_hinge(hung, 0.0)


def _open_flat(hung: DrawnLeaf, _: FilledOpening, __: tuple[LeafShown, ...]) -> _Made:
    return _about_hinge(hung, hung.reach)


def _about_hinge(hung: DrawnLeaf, angle: float) -> _Made:
    """The plan about the hinge, with what stands along the wall as far as its near end."""
    h = hung.h
    extent = Box(-h.F - _wall_shown(hung), -h.D - _BELOW, _BESIDE, _top_of(hung, angle))
    still: list[Primitive] = [*wall_beside(hung, _FAR_LEFT), *standing_things(hung)]
    still += [*door_stop_parts(hung), *hinge_jamb(hung, 0.05), *frame_leaf(hung)]
    if angle:
        still.append(closed_outline(hung))
    moving = (*hardware_parts(hung, angle), *open_leaf(hung, angle, 0.05), *door_leaf(hung, angle))
    return (*still, *moving, *barrel(hung)), extent, angle


def _wall_shown(hung: DrawnLeaf) -> float:
    near = [-max(x for x, _ in one.points) - hung.h.F for thing in hung.standing for one in thing.shapes]
    stop = [] if hung.door_stop is None else [hung.door_stop.from_frame]
    return max([_BESIDE, *(end + 4.5 for end in (*near, *stop))])


def _top_of(hung: DrawnLeaf, angle: float) -> float:
    tops = [hung.pin.y_p + hung.h.d_b / 2 + _ABOVE]
    if angle:
        tops.append(2 * hung.pin.o - hung.h.i + hung.h.T + _BELOW)
    if any(row_of(ObstructionKindRow, thing.kind).outline != "box" for thing in hung.standing):
        tops.append(7.0)
    return max(tops)


def _latch_side(hung: DrawnLeaf, _: FilledOpening, __: tuple[LeafShown, ...]) -> _Made:
    return _about_latch(hung, 0.0)


def _passing(hung: DrawnLeaf, _: FilledOpening, __: tuple[LeafShown, ...]) -> _Made:
    return _about_latch(hung, 0.0 if hung.latch is None else hung.latch.angle)


def _about_latch(hung: DrawnLeaf, angle: float) -> _Made:
    """The plan about the latch jamb, or about the meeting edges of a pair."""
    h = hung.h
    moving = (*hardware_parts(hung, angle), *open_leaf(hung, angle, 0.05))
    if hung.other_leaf:
        other = [Polygon("A-DOOR", one.points, "core", "other leaf") for one in hung.other_leaf[:1]]
        return (*other, *moving), Box(h.O - 5.0, -h.i - h.T - 1.8, h.O + 5.0, 3.4), angle
    jamb = (*wall_beside(hung, _FAR_LEFT), *hinge_jamb(hung, 0.05))
    middle = (hung.opening / 2, 0.0)
    still = tuple(mapped(part, -1.0, 1.0, middle) for part in jamb)
    return (*still, *moving), Box(hung.opening - 7.4, -h.D - _BELOW, hung.opening + h.F + 2.4, 3.4), angle


def _whole(angle: float) -> _Maker:
    def made(hung: DrawnLeaf, _: FilledOpening, __: tuple[LeafShown, ...]) -> _Made:
        extent = small_extent(hung, angle)
        room = Box(extent.left, extent.bottom - 7.0, extent.right, extent.top + 2.0)
        return small_plan(hung, angle), room, angle

    return made


def _front(_: DrawnLeaf, filled: FilledOpening, leaves: tuple[LeafShown, ...]) -> _Made:
    width, height, face = filled.opening_width, filled.opening_height, filled.frame_face
    extent = Box(-face - 16.0, -9.0, width + face + 16.0, height + face + 10.0)
    return elevation_parts(filled, leaves), extent, 0.0


def _sample(_: DrawnLeaf, __: FilledOpening, ___: tuple[LeafShown, ...]) -> _Made:
    return sample_parts(HingeSample()), sample_extent(HingeSample()), 0.0


def span(a: Point, b: Point, off: Point = (0.0, 0.0)) -> Dimension:
    """Return a measured distance without a number, its line set off from the two points."""
    line_a, line_b = ((x + off[0], y + off[1]) for x, y in (a, b))
    middle = ((line_a[0] + line_b[0]) / 2, (line_a[1] + line_b[1]) / 2)
    return Dimension(MEASURED, a, b, line_a, line_b, "", middle, "", math.dist(a, b))


def outline(points: tuple[Point, ...]) -> Polyline:
    """Return the outline of a part."""
    return Polyline(WORD, points, closed=True)


def ring(at: Point, radius: float) -> Arc:
    """Return a ring about a spot."""
    return Arc(WORD, at, radius, 0.0, 2 * math.pi)


def arrow(tail: Point, tip: Point) -> tuple[Polyline, Polyline]:
    """Return an arrow from one point to another."""
    dx, dy = (tip[0] - tail[0]) / 4, (tip[1] - tail[1]) / 4
    barbs = tuple((tip[0] - dx + side * dy / 2, tip[1] - dy - side * dx / 2) for side in (1.0, -1.0))
    return Polyline(WORD, (tail, tip)), Polyline(WORD, (barbs[0], tip, barbs[1]))


_SCENES: Mapping[str, tuple[str, _Maker]] = MappingProxyType(
    {
        "hinge": ("bare", _hinge_side),
        "flat": ("bare", _open_flat),
        "rail": ("rail", _open_flat),
        "stopped": ("narrow", _open_flat),
        "column": ("column", _hinge_side),
        "return": ("return", _hinge_side),
        "casing": ("casing", _hinge_side),
        "stop": ("stop", _open_flat),
        "latch": ("typical", _latch_side),
        "passing": ("typical", _passing),
        "pair": ("pair", _latch_side),
        "whole": ("typical", _whole(math.radians(65))),
        "bare_whole": ("bare", _whole(math.radians(70))),
        "square": ("bare", _whole(math.pi / 2)),
        "flat_whole": ("bare", _whole(math.pi)),
        "front": ("typical", _front),
        "pair_front": ("pair", _front),
        "closer_front": ("closer", _front),
        "dutch": ("dutch", _front),
        "sample": ("bare", _sample),
    }
)
"""Name of a scene to the opening it shows and how that is laid out."""
