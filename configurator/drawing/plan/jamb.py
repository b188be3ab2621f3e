"""The hinge jamb where it is cut, by kind of frame, and the wall beside it as it meets that kind of frame.

Every size is the opening's own, given or usual. No sheet of metal is drawn thinner than can be seen.

The swing is worked out with the frame stop filled back to the far face. On the hinge side that makes no
difference: what turns about the pin from beyond it only moves toward the pull side. On the latch side only
push-face hardware deeper than the stop could come behind it, and has no way past its back: such a door is
stopped within its first degrees either way, by the filled stop a few degrees sooner.
"""

from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

from configurator.drawing.base.primitives import Point, Polygon, Polyline, rectangle
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.tables import FrameKindRow, row_of
from configurator.units import TOLERANCE

_LEAST_STEP = 1 / 16
"""A step at the back of the stop smaller than this is not drawn as a second rabbet, inches; derived."""
FRAME, PATTERN = "A-DOOR-FRAM", "A-DOOR-FRAM-PATT"

Outline = tuple[Polygon | Polyline, ...]
_INTO_THROAT = 0.9
"""How far a board runs into a frame that wraps the wall, inches; common practice, no source."""
_STUD_IN_THROAT = 0.5
_SHIM_SPACE = 0.5
"""Room left about a wood jamb, inches; common practice, no source."""
_STUD = 1.5
"""Width of a framing stud, inches; common practice, no source."""
_FLANGE = 1.25
"""Flange of a steel stud, inches; common practice, no source."""
_LIP = 0.35
_WOOD_STUDS = ("wood stud", "2x", "2 x")
_MASONRY = ("block", "masonry", "cmu", "stone", "grout")
_BOARD = ("gypsum", "plaster", "board", "drywall")
_WOODEN = ("wood", "plywood", "sheathing", "panel")
_HOLLOW = ("stud", "cavity", "space", "air", "insulation")


def hinge_jamb(hung: DrawnLeaf, thinnest: float = 0.0) -> Outline:
    """Return the frame on the hinge side; no sheet of metal is drawn thinner than `thinnest` inches."""
    if (outline := hung.filled.opening.frame.outline) is not None:
        return _outlined(hung, outline)
    return _BY_KIND[hung.filled.opening.frame.kind](hung, thinnest)


def _outlined(hung: DrawnLeaf, outline: tuple[Point, ...]) -> Outline:
    """Return a jamb by its own corners: of steel its outer line, since the wall stands in it."""
    material = row_of(FrameKindRow, hung.frame_kind).material
    if material == "steel":
        return (Polyline(FRAME, outline, closed=True),)
    fill = "endgrain" if material == "wood" else "aluminum"
    return (Polygon(FRAME, outline, fill, f"{material} jamb", pattern_layer=PATTERN),)


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


def material_of(layer: str) -> str:
    """Return the style's material for a wall layer, by the words of its name."""
    words = layer.lower()
    for kinds, material in (
        (_HOLLOW, "cavity"),
        (("tile",), "tile"),
        (_BOARD, "gypsum"),
        (_MASONRY, "masonry"),
        (("brick",), "brick"),
        (("concrete",), "concrete"),
    ):
        if any(word in words for word in kinds):
            return material
    return "wood" if any(word in words for word in _WOODEN) else "solid"


class Band(NamedTuple):
    """One layer where it is cut, in the plan's axes: inches up and down, and where it ends at the frame."""

    name: str
    material: str
    top: float
    bottom: float
    end: float


def bands(hung: DrawnLeaf) -> Iterator[Band]:
    """Yield the wall's layers from the pull side."""
    top = hung.wall_face
    for name, thickness in hung.layers:
        material, bottom = material_of(name), top - thickness
        yield Band(name, material, top, bottom, _end_of(hung, material, top, bottom))
        top = bottom


def wall_beside(hung: DrawnLeaf, left: float) -> tuple[Polygon | Polyline, ...]:
    """Return the wall on the hinge side from `left` (inches, in the plan's axes) to the frame."""
    parts: list[Polygon | Polyline] = []
    for band in bands(hung):
        parts.append(_layer(rectangle(left, band.end, band.bottom, band.top), band.material, band.name))
        if band.material == "cavity":  # its ground covers half of the lines beside it
            parts += [Polyline("A-WALL-LAYR", ((left, y), (band.end, y))) for y in (band.top, band.bottom)]
        if _has_stud(hung, band):
            parts += _stud(hung, band)
    return (*parts, *_faces(hung, left))


def _has_stud(hung: DrawnLeaf, band: Band) -> bool:
    """A stud stands in the hollow between boards; not in an air space."""
    return band.material == "cavity" and len(hung.layers) > 1 and "air" not in band.name.lower()


def _studs_are_wood(hung: DrawnLeaf, band: Band) -> bool:
    """As the layer's name says; where it does not, as the frame is."""
    words = band.name.lower()
    if "steel" in words or "metal" in words:
        return False
    return row_of(FrameKindRow, hung.frame_kind).material == "wood" or any(
        word in words for word in _WOOD_STUDS
    )


def _layer(band: tuple[tuple[float, float], ...], material: str, name: str) -> Polygon:
    hollow = material == "cavity"
    return Polygon("A-WALL-LAYR", band, material, name, outlined=not hollow, pattern_layer="A-WALL-PATT")


def _end_of(hung: DrawnLeaf, material: str, top: float, bottom: float) -> float:
    """Return where a layer ends: inside a frame that wraps it, or at what the wall is built against.

    What does not fit between the returns, as tile put on afterwards, stops at the frame's edge.
    """
    outer = -hung.h.F
    if row_of(FrameKindRow, hung.frame_kind).material == "wood":
        return outer - _SHIM_SPACE
    if not row_of(FrameKindRow, hung.frame_kind).wraps or not _fits_throat(hung, top, bottom):
        return outer
    room = min(_INTO_THROAT, hung.h.F / 2)
    return outer + (_STUD_IN_THROAT * room if material == "cavity" else room)


def _fits_throat(hung: DrawnLeaf, top: float, bottom: float) -> bool:
    near, far = -hung.filled.return_depth, hung.filled.return_depth - hung.h.D
    return top <= near + TOLERANCE and bottom >= far - TOLERANCE


def stud_boxes(hung: DrawnLeaf) -> list[tuple[Point, Point]]:
    """Return where studs are drawn in the wall's hollow, as opposite corners: lettering keeps off them."""
    return [box for band in bands(hung) if _has_stud(hung, band) for box in _stud_boxes(hung, band)]


def _stud_boxes(hung: DrawnLeaf, band: Band) -> list[tuple[Point, Point]]:
    _, _, top, bottom, end = band
    if _studs_are_wood(hung, band):
        return [((end - 2 * _STUD, bottom), (end, top))]
    flange = end - _FLANGE
    return [
        ((flange, top - _LIP), (end, top)),
        ((flange, bottom), (end, bottom + _LIP)),
        ((end, bottom), (end, top)),
    ]


def _stud(hung: DrawnLeaf, band: Band) -> list[Polygon | Polyline]:
    """A steel stud, or two crossed wood ones."""
    _, _, top, bottom, end = band
    if _studs_are_wood(hung, band):
        return [part for n in (0, 1) for part in _wood_stud(end - n * _STUD, bottom, top)]
    web = (
        (end - _FLANGE, top - _LIP), (end - _FLANGE, top), (end, top),
        (end, bottom), (end - _FLANGE, bottom), (end - _FLANGE, bottom + _LIP),
    )  # fmt: skip
    return [Polyline("A-WALL-LAYR", web)]


def _wood_stud(end: float, bottom: float, top: float) -> list[Polygon | Polyline]:
    section = rectangle(end - _STUD, end, bottom, top)
    cross = [Polyline("A-WALL-PATT", (section[n], section[n + 2])) for n in (0, 1)]
    return [Polygon("A-WALL-LAYR", section, "paper", "stud"), *cross]


def _faces(hung: DrawnLeaf, left: float) -> list[Polyline]:
    """The two faces and the end of the wall, in the weight of a cut."""
    across = list(bands(hung))
    top, bottom, first, last = across[0].top, across[-1].bottom, across[0].end, across[-1].end
    ends = [((left, top), (first, top)), ((left, bottom), (last, bottom))]
    if top > 0.0:
        ends.append(((-hung.h.F, 0.0), (-hung.h.F, top)))  # the reveal of a frame behind the wall face
    if bottom < -hung.h.D and not row_of(FrameKindRow, hung.frame_kind).wraps:
        ends.append(((last, bottom), (last, -hung.h.D)))
    return [Polyline("A-WALL", line) for line in ends]


_BY_KIND: Mapping[str, Callable[[DrawnLeaf, float], Outline]] = {
    "knocked-down drywall": _steel,
    "welded steel, wrapped": _steel,
    "welded steel, butted": _butted,
    "wood with casing": _wood,
    "aluminum storefront": _aluminum,
}
"""Every accepted kind of frame, and how it is drawn."""
