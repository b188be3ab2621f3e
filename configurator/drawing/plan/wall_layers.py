"""The wall beside the hinge jamb, layer by layer, as it meets that kind of frame."""

from collections.abc import Iterator
from typing import NamedTuple

from configurator.drawing.base.primitives import Point, Polygon, Polyline, rectangle
from configurator.drawing.plan.drawn_leaf import DrawnLeaf
from configurator.tables import FrameKindRow, row_of

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
_TOLERANCE = 1e-9
_MASONRY = ("block", "masonry", "cmu", "stone", "grout")
_BOARD = ("gypsum", "plaster", "board", "drywall")
_WOODEN = ("wood", "plywood", "sheathing", "panel")
_HOLLOW = ("stud", "cavity", "space", "air", "insulation")


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
    return top <= near + _TOLERANCE and bottom >= far - _TOLERANCE


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
