"""The wall beside the hinge jamb, layer by layer, as it meets that kind of frame."""

from configurator.drawing.hung import Hung
from configurator.drawing.primitives import Point, Polygon, Polyline
from configurator.drawing.turning import rectangle

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
_WRAPPED = frozenset({"knocked-down drywall", "welded steel, wrapped"})
_MASONRY = ("block", "brick", "masonry", "concrete", "cmu", "stone", "grout")
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
    ):
        if any(word in words for word in kinds):
            return material
    return "wood" if any(word in words for word in _WOODEN) else "solid"


def wall_beside(hung: Hung, left: float) -> tuple[Polygon | Polyline, ...]:
    """Return the wall on the hinge side from `left` (inches, in the plan's axes) to the frame."""
    parts: list[Polygon | Polyline] = []
    top = hung.wall_face
    for name, thickness in hung.layers:
        material = material_of(name)
        end = _end_of(hung, material)
        band = rectangle(left, end, top - thickness, top)
        parts.append(_layer(band, material, name))
        if material == "cavity" and len(hung.layers) > 1:
            parts += _stud(hung, end, top - thickness, top)
        top -= thickness
    return (*parts, *_faces(hung, left))


def _layer(band: tuple[tuple[float, float], ...], material: str, name: str) -> Polygon:
    hollow = material == "cavity"
    return Polygon("A-WALL-LAYR", band, material, name, outlined=not hollow, pattern_layer="A-WALL-PATT")


def _end_of(hung: Hung, material: str) -> float:
    """Return where a layer ends: inside a frame that wraps it, or at what the wall is built against."""
    outer = -hung.h.F
    if hung.frame_kind in _WRAPPED:
        room = min(_INTO_THROAT, hung.h.F / 2)
        return outer + (_STUD_IN_THROAT * room if material == "cavity" else room)
    if hung.frame_kind == "wood with casing":
        return outer - _SHIM_SPACE
    return outer


def stud_boxes(hung: Hung) -> list[tuple[Point, Point]]:
    """Return where studs are drawn in the wall's hollow, as opposite corners: lettering keeps off them."""
    boxes: list[tuple[Point, Point]] = []
    top = hung.wall_face
    for name, thickness in hung.layers:
        if material_of(name) == "cavity" and len(hung.layers) > 1:
            boxes += _stud_boxes(hung, top - thickness, top)
        top -= thickness
    return boxes


def _stud_boxes(hung: Hung, bottom: float, top: float) -> list[tuple[Point, Point]]:
    end = _end_of(hung, "cavity")
    if hung.frame_kind == "wood with casing":
        return [((end - 2 * _STUD, bottom), (end, top))]
    flange = end - _FLANGE
    return [
        ((flange, top - _LIP), (end, top)),
        ((flange, bottom), (end, bottom + _LIP)),
        ((end, bottom), (end, top)),
    ]


def _stud(hung: Hung, end: float, bottom: float, top: float) -> list[Polygon | Polyline]:
    """A steel stud beside a steel frame; two crossed wood studs beside a wood one."""
    if hung.frame_kind == "wood with casing":
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


def _faces(hung: Hung, left: float) -> list[Polyline]:
    """The two faces and the end of the wall, in the weight of a cut."""
    top, bottom = hung.wall_face, hung.wall_face - hung.wall_depth
    first, last = (_end_of(hung, material_of(name)) for name in (hung.layers[0][0], hung.layers[-1][0]))
    ends = [((left, top), (first, top)), ((left, bottom), (last, bottom))]
    if top > 0.0:
        ends.append(((-hung.h.F, 0.0), (-hung.h.F, top)))  # the reveal of a frame behind the wall face
    if bottom < -hung.h.D and hung.frame_kind not in _WRAPPED:
        ends.append(((last, bottom), (last, -hung.h.D)))
    return [Polyline("A-WALL", line) for line in ends]
