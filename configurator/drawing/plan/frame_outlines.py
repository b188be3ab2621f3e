"""The hinge jamb where it is cut, by kind of frame: sheet steel, wood or aluminum tube.

Every size is the opening's own, given or usual. No sheet of metal is drawn thinner than can be seen.

The swing is worked out with the frame stop filled back to the far face. On the hinge side that makes no
difference: what turns about the pin from beyond it only moves toward the pull side. On the latch side only
push-face hardware deeper than the stop could come behind it, and has no way past its back: such a door is
stopped within its first degrees either way, by the filled stop a few degrees sooner.
"""

from collections.abc import Callable, Mapping

from configurator.drawing.base.primitives import Point, Polygon, Polyline, rectangle
from configurator.drawing.plan.drawn_leaf import DrawnLeaf

_LEAST_STEP = 1 / 16
"""A step at the back of the stop smaller than this is not drawn as a second rabbet, inches; derived."""
FRAME, PATTERN = "A-DOOR-FRAM", "A-DOOR-FRAM-PATT"

Outline = tuple[Polygon | Polyline, ...]


def hinge_jamb(hung: DrawnLeaf, thinnest: float = 0.0) -> Outline:
    """Return the frame on the hinge side; no sheet of metal is drawn thinner than `thinnest` inches."""
    return _BY_KIND[hung.filled.opening.frame.kind](hung, thinnest)


def stop_width(hung: DrawnLeaf) -> float:
    """Return how far the stop runs through the wall, never past the jamb's far face; inches."""
    return min(hung.filled.stop_width, max(hung.h.D - hung.h.R, 0.0))


def steel_profile(hung: DrawnLeaf) -> tuple[Point, ...]:
    """Return the outer line of a steel jamb, from the pull-side return round to the push-side one.

    A second rabbet behind the stop where the stop leaves one, else the stop runs to the far face.
    """
    h, back = hung.h, hung.filled.return_depth
    behind = h.R + stop_width(hung)
    pull = ((-h.F, -back), (-h.F, 0.0), (0.0, 0.0), (0.0, -h.R), (h.s, -h.R))
    if h.D - behind >= _LEAST_STEP:
        push: tuple[Point, ...] = ((h.s, -behind), (0.0, -behind), (0.0, -h.D))
    else:
        push = ((h.s, -h.D),)
    return (*pull, *push, (-h.F, -h.D), (-h.F, back - h.D))


def thickened(line: tuple[Point, ...], by: float) -> tuple[Point, ...]:
    """Return a square-cornered line thickened to its right, as a sheet folded along it. Inches."""
    inner: list[Point] = []
    for at, point in enumerate(line):
        normals = [_right(line[j], line[j + 1]) for j in (at - 1, at) if 0 <= j < len(line) - 1]
        dx = sum({n for n in (n[0] for n in normals) if n}) or 0.0
        dy = sum({n for n in (n[1] for n in normals) if n}) or 0.0
        inner.append((point[0] + by * dx, point[1] + by * dy))
    return (*line, *reversed(inner))


def _right(a: Point, b: Point) -> Point:
    """Return the unit normal to the right of an upright or level step."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    return ((dy > 0) - (dy < 0), -((dx > 0) - (dx < 0)))


def _steel(hung: DrawnLeaf, thinnest: float) -> Outline:
    sheet = thickened(steel_profile(hung), max(hung.filled.metal_thickness, thinnest))
    return (Polygon(FRAME, sheet, "steel", "frame, sheet steel"),)


def _butted(hung: DrawnLeaf, thinnest: float) -> Outline:
    """A welded frame in masonry is grouted full (common practice, no source)."""
    grout = Polygon(
        FRAME, steel_profile(hung), "grout", "grout in the frame", outlined=False, pattern_layer=PATTERN
    )
    return (grout, *_steel(hung, thinnest))


def _wood(hung: DrawnLeaf, _: float) -> Outline:
    h = hung.h
    width = stop_width(hung)
    jamb = Polygon(FRAME, rectangle(-h.F, 0.0, -h.D, 0.0), "endgrain", "wood jamb", pattern_layer=PATTERN)
    if width <= 0 or h.s <= 0:
        return (jamb,)
    stop = rectangle(0.0, h.s, -h.R - width, -h.R)
    return (jamb, Polygon(FRAME, stop, "endgrain", "frame stop", pattern_layer=PATTERN))


def _aluminum(hung: DrawnLeaf, thinnest: float) -> Outline:
    h, wall = hung.h, max(hung.filled.metal_thickness, thinnest)
    parts = [*_tube(rectangle(-h.F, 0.0, -h.D, 0.0), wall, "aluminum tube")]
    deep = stop_width(hung)
    if deep > 2 * wall and h.s > 2 * wall:
        parts += _tube(rectangle(0.0, h.s, -h.R - deep, -h.R), wall, "applied frame stop")
    return tuple(parts)


def _tube(outer: tuple[Point, ...], wall: float, name: str) -> Outline:
    (x_0, y_0), _, (x_1, y_1), _ = outer
    hollow = rectangle(x_0 + wall, x_1 - wall, y_0 + wall, y_1 - wall)
    return (Polygon(FRAME, outer, "aluminum", name), Polygon(FRAME, hollow, "paper"))


_BY_KIND: Mapping[str, Callable[[DrawnLeaf, float], Outline]] = {
    "knocked-down drywall": _steel,
    "welded steel, wrapped": _steel,
    "welded steel, butted": _butted,
    "wood with casing": _wood,
    "aluminum storefront": _aluminum,
}
"""Every accepted kind of frame, and how it is drawn."""
