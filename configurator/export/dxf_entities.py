"""Primitives as DXF entities: arcs as arcs, dimensions as dimensions, hatches that can be changed.

Everything is cut off at its view's window, as on paper, and never by a chord for an arc.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from ezdxf.document import Drawing
from ezdxf.entities import DXFGraphic
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts import BaseLayout

from configurator.drawing.clip import clip_polygon, clip_polyline
from configurator.drawing.dimension_strokes import strokes_of
from configurator.drawing.on_sheet import ArcOnSheet, arc_on_sheet, around, chords, clip_arc
from configurator.drawing.pages.page import Scale
from configurator.drawing.primitives import (
    Arc,
    Dimension,
    Point,
    Polygon,
    Polyline,
    Primitive,
    Region,
    Symbol,
    Text,
)
from configurator.drawing.style import materials
from configurator.drawing.view import View
from configurator.export.dxf_patterns import pattern_lines
from configurator.export.dxf_tables import (
    BOLD,
    CAPITALS,
    GROUND,
    REGULAR,
    dimension_style,
    ground_shade,
    mark_block,
)

NAMES = "OPENING_CONFIGURATOR"
"""The application name under which an entity carries what a reader would call it."""
_PLACES = 9
_ALIGNED = {
    "start": TextEntityAlignment.LEFT,
    "middle": TextEntityAlignment.CENTER,
    "end": TextEntityAlignment.RIGHT,
}
_ROTATED, _OWN_BLOCK, _TEXT_PLACED = 0, 32, 128
_MIDDLE_CENTRE = 5


@dataclass(frozen=True, slots=True)
class Place:
    """Where what a view shows is drawn: `per_point` units of the space for a point on the sheet."""

    drawing: Drawing
    space: BaseLayout
    view: View
    scale: Scale
    per_point: float
    origin: Point
    """The point of the sheet that lies at `at`, in units of the space."""
    at: Point = (0.0, 0.0)

    def point(self, on_sheet: Point) -> Point:
        """Return where a point of the sheet is drawn."""
        x, y = (
            round((here - origin) * self.per_point + at, _PLACES) + 0.0
            for here, origin, at in zip(on_sheet, self.origin, self.at, strict=True)
        )
        return x, y

    def seen(self, point: Point) -> Point:
        """Return where a point of the plan is drawn."""
        return self.point(self.view.to_sheet(point))


def add_primitive(place: Place, item: Primitive) -> None:
    """Draw one primitive over everything before it."""
    _DRAWN[type(item)](place, item)


def one_line(text: str) -> str:
    """Return text that a DXF text shows as it stands: no control codes, no breaks."""
    plain = "".join(letter if letter.isprintable() else " " for letter in text)
    while "%%" in plain:
        plain = plain.replace("%%", "% %")
    return plain.replace("^", "^ ")


def _polyline(place: Place, item: Polyline) -> None:
    points = [place.view.to_sheet(point) for point in item.points]
    _line(place, points, item.layer, item.closed)


def _line(place: Place, points: Sequence[Point], layer: str, closed: bool, name: str = "") -> None:
    """Draw a chain where the window shows it; a closed one wholly inside stays one closed polyline."""
    whole = [*points, points[0]] if closed else list(points)
    pieces = clip_polyline(whole, place.view.window)
    if closed and pieces == [tuple(whole)]:
        shown = [place.point(point) for point in points]
        _named(place.space.add_lwpolyline(shown, close=True, dxfattribs={"layer": layer}), name)
        return
    for piece in pieces:
        _open_line(place, piece, layer, name)


def _open_line(place: Place, piece: Sequence[Point], layer: str, name: str) -> None:
    shown = [place.point(point) for point in piece]
    if len(set(shown)) < 2:
        return
    if len(shown) == 2:
        _named(place.space.add_line(shown[0], shown[1], dxfattribs={"layer": layer}), name)
    else:
        _named(place.space.add_lwpolyline(shown, dxfattribs={"layer": layer}), name)


def _named(entity: DXFGraphic, name: str) -> None:
    if name:
        entity.set_xdata(NAMES, [(1000, one_line(name)[:255])])


def _polygon(place: Place, item: Polygon) -> None:
    points = [place.view.to_sheet(point) for point in item.points]
    if item.fill is not None:
        _fill(place, clip_polygon(points, place.view.window), item.fill)
        _pattern(place, clip_polygon(points, place.view.window), item)
    if item.outlined:
        _line(place, points, item.layer, True, item.name)


def _fill(place: Place, on_sheet: Sequence[Point], fill: str) -> None:
    """Lay the plain ground of a material under what comes after: a gray, or a mask where it is light.

    A light gray would hide the lines from whoever has a dark screen, for those are white there.
    """
    shown = _corners(place, on_sheet)
    if not shown:
        return
    if (shade := ground_shade(fill)) is None:
        place.space.add_wipeout(shown, dxfattribs={"layer": GROUND})
    else:
        _shaded(place, shown, shade)


def _corners(place: Place, on_sheet: Sequence[Point]) -> list[Point]:
    """Return an outline's corners as they are drawn; none where it has no area."""
    shown = list(dict.fromkeys(place.point(point) for point in on_sheet))
    flat = any(len({point[axis] for point in shown}) < 2 for axis in (0, 1))
    return [] if flat or len(shown) < 3 else shown


def _shaded(place: Place, boundary: Sequence[tuple[float, ...]], shade: int) -> None:
    hatch = place.space.add_hatch(color=shade, dxfattribs={"layer": GROUND})
    hatch.paths.add_polyline_path(boundary, is_closed=True)


def _pattern(place: Place, on_sheet: Sequence[Point], item: Polygon) -> None:
    assert item.fill is not None
    material = materials()[item.fill]
    shown = _corners(place, on_sheet)
    if material.pattern == "none" or not shown:
        return
    lines = pattern_lines(material, place.view.hand * item.turned, place.seen(item.about), place.per_point)
    hatch = place.space.add_hatch(dxfattribs={"layer": item.pattern_layer})
    hatch.set_pattern_fill(material.name.upper(), color=256, definition=lines, pattern_type=2)
    hatch.paths.add_polyline_path(shown, is_closed=True)


def _arc(place: Place, item: Arc) -> None:
    arc = arc_on_sheet(item, place.view)
    pieces = clip_arc(arc, place.view.window)
    if item.fill is not None:
        _arc_ground(place, arc, item.fill)
    for start, end in pieces:
        _named(_curve(place, arc, start, end, item.layer), item.name)


def _arc_ground(place: Place, arc: ArcOnSheet, fill: str) -> None:
    """A circle wholly in the window is bounded by two half circles, anything else by chords."""
    (x, y), radius, start, end = arc
    shade = ground_shade(fill)
    whole = end - start >= 2 * math.pi - 1e-9 and place.view.window.shrunk(radius).has((x, y))
    if whole and shade is not None:
        left, right = place.point((x - radius, y)), place.point((x + radius, y))
        _shaded(place, [(*left, 1.0), (*right, 1.0)], shade)
    else:
        _fill(place, clip_polygon(chords(*arc), place.view.window), fill)


def _curve(place: Place, arc: ArcOnSheet, start: float, end: float, layer: str) -> DXFGraphic:
    centre, radius = place.point(arc[0]), arc[1] * place.per_point
    if end - start >= 2 * math.pi - 1e-9:
        return place.space.add_circle(centre, radius, dxfattribs={"layer": layer})
    first, last = math.degrees(start), math.degrees(end)
    return place.space.add_arc(centre, radius, first, last, dxfattribs={"layer": layer})


def _region(place: Place, item: Region) -> None:
    if item.fill is not None:
        _fill(place, clip_polygon(around(item, place.view), place.view.window), item.fill)
    for bound in item.bounds:
        add_primitive(place, bound)


def _text(place: Place, item: Text) -> None:
    style = BOLD if item.bold else REGULAR
    _lettering(
        place,
        place.space,
        place.seen(item.at),
        item.text,
        item.size,
        item.anchor,
        item.angle,
        item.layer,
        style,
    )


def _lettering(
    place: Place,
    space: BaseLayout,
    at: Point,
    text: str,
    size: float,
    anchor: str,
    angle: float,
    layer: str,
    style: str = REGULAR,
) -> None:
    if not text.strip():
        return
    height = size * CAPITALS * place.per_point
    attributes = {"layer": layer, "style": style, "rotation": math.degrees(angle)}
    lettering = space.add_text(one_line(text), height=height, dxfattribs=attributes)
    lettering.set_placement(at, align=_ALIGNED[anchor])


def _dimension(place: Place, item: Dimension) -> None:
    """A dimension that measures its own points, drawn in its block exactly as it is on paper."""
    a, b, line_a, line_b, text_at = map(place.seen, (item.a, item.b, item.line_a, item.line_b, item.text_at))
    up = item.size * CAPITALS * place.per_point / 2
    middle = (text_at[0] - up * math.sin(item.text_angle), text_at[1] + up * math.cos(item.text_angle))
    attributes: dict[str, Any] = {
        "layer": item.layer,
        "dimtype": _ROTATED + _OWN_BLOCK + _TEXT_PLACED,
        "dimstyle": dimension_style(place.drawing, place.scale, item.text_angle != 0.0),
        "geometry": _dimension_block(place, item, text_at),
        "defpoint": line_b,
        "defpoint2": a,
        "defpoint3": b,
        "text_midpoint": middle,
        "attachment_point": _MIDDLE_CENTRE,
        "angle": math.degrees(math.atan2(line_b[1] - line_a[1], line_b[0] - line_a[0])),
        "text": one_line(item.text).replace("\\", "\\\\").replace("{", "\\{").replace("}", "\\}"),
        "actual_measurement": item.value,
    }
    _named(place.space.new_entity("DIMENSION", attributes), item.name)


def _dimension_block(place: Place, item: Dimension, text_at: Point) -> str:
    """Return the name of a block with a dimension's strokes, arrowheads and text."""
    block = place.drawing.blocks.new_anonymous_block(type_char="D")
    strokes = strokes_of(item, place.view)
    for line in strokes.lines:
        block.add_lwpolyline([place.point(point) for point in line])
    for arrow in strokes.arrows:
        block.add_solid([place.point(point) for point in arrow])
    _lettering(place, block, text_at, item.text, item.size, "middle", item.text_angle, "0")
    return block.name


def _symbol(place: Place, item: Symbol) -> None:
    if not place.view.window.has(place.view.to_sheet(item.at)):
        return
    size = {"xscale": place.per_point, "yscale": place.per_point, "zscale": place.per_point}
    attributes = {"layer": item.layer, **size}
    _named(
        place.space.add_blockref(mark_block(item.kind), place.seen(item.at), dxfattribs=attributes), item.name
    )


_DRAWN: dict[type[Primitive], Callable[[Place, Any], None]] = {
    Polyline: _polyline,
    Polygon: _polygon,
    Arc: _arc,
    Region: _region,
    Dimension: _dimension,
    Text: _text,
    Symbol: _symbol,
}
