"""DXF's painter: arcs as arcs, dimensions as dimensions, hatches that can be changed, lettering as text."""

import math
from collections.abc import Sequence
from typing import Any

from ezdxf.document import Drawing
from ezdxf.entities import DXFGraphic
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts import BaseLayout, BlockLayout

from configurator.drawing.base.dimension_strokes import strokes_of
from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.on_sheet import ArcOnSheet, chords, is_round
from configurator.drawing.base.primitives import Arc, Dimension, Point, Polygon, Polyline, Symbol, Text
from configurator.drawing.base.style import materials
from configurator.drawing.base.view import View
from configurator.drawing.pages.page import Scale
from configurator.export.dxf.tables import (
    BOLD,
    CAPITALS,
    GROUND,
    MARK_TAG,
    MASK,
    REGULAR,
    dimension_style,
    ground_shade,
    live_text,
    mark_block,
    pattern_lines,
    per_inch,
    unseen,
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
_TOP_LEFT, _MIDDLE_CENTRE = 1, 5
_EXACTLY, _LINE_OF_MTEXT = 2, 5 / 3
"""Lines are as far apart as said; a factor of 1 is 5/3 of the height of capitals."""


class DxfPainter:
    """Paints into a space of a drawing, `per_point` units of the space for a point on the sheet.

    The point `origin` of the sheet lies at `at` in the space. Lines of dimensions are scaled by the scale.
    """

    def __init__(
        self,
        drawing: Drawing,
        space: BaseLayout,
        scale: Scale,
        per_point: float,
        origin: Point,
        at: Point = (0.0, 0.0),
    ) -> None:
        self._drawing, self._space, self._scale = drawing, space, scale
        self._per_point, self._origin, self._at = per_point, origin, at

    @property
    def per_point(self) -> float:
        """Units of the space for a point on the sheet."""
        return self._per_point

    @property
    def at(self) -> Point:
        """Where the sheet's origin lies in the space."""
        return self._at

    def into(self, block: BlockLayout) -> "DxfPainter":
        """Return a painter of a block whose base is the sheet's origin."""
        return DxfPainter(self._drawing, block, self._scale, self._per_point, self._origin)

    def point(self, on_sheet: Point) -> Point:
        """Return where a point of the sheet is drawn."""
        x, y = (
            round((here - origin) * self._per_point + at, _PLACES) + 0.0
            for here, origin, at in zip(on_sheet, self._origin, self._at, strict=True)
        )
        return x, y

    def line(self, pieces: Sequence[Sequence[Point]], item: Polyline | Polygon) -> None:
        """A polygon carries its name."""
        closed, name = (True, item.name) if isinstance(item, Polygon) else (item.closed, "")
        for piece in pieces:
            if closed and len(piece) > 2 and piece[0] == piece[-1]:
                shown = [self.point(point) for point in piece[:-1]]
                _name(self._space.add_lwpolyline(shown, close=True, dxfattribs={"layer": item.layer}), name)
            else:
                self._open_line(piece, item.layer, name)

    def _open_line(self, piece: Sequence[Point], layer: str, name: str) -> None:
        shown = [self.point(point) for point in piece]
        if len(set(shown)) < 2:
            return
        if len(shown) == 2:
            _name(self._space.add_line(shown[0], shown[1], dxfattribs={"layer": layer}), name)
        else:
            _name(self._space.add_lwpolyline(shown, dxfattribs={"layer": layer}), name)

    def curve(self, arc: ArcOnSheet, item: Arc) -> None:
        """A whole circle is a circle."""
        (centre, radius, first, last), attributes = arc, {"layer": item.layer}
        middle, reach = self.point(centre), radius * self._per_point
        if is_round(arc):
            _name(self._space.add_circle(middle, reach, dxfattribs=attributes), item.name)
            return
        start, end = math.degrees(first), math.degrees(last)
        _name(self._space.add_arc(middle, reach, start, end, dxfattribs=attributes), item.name)

    def ground(self, outline: Sequence[Point], material: str) -> None:
        """Lay the ground under what comes after: a gray, or a mask where it is light.

        A light gray would hide the lines from whoever has a dark screen, for those are white there.
        """
        shown = self._corners(outline)
        if not shown:
            return
        if (shade := ground_shade(material)) is None:
            # The library takes a layer with the others of a wipeout's attributes, and drops it.
            self._space.add_wipeout(shown).dxf.layer = MASK
        else:
            self._shaded(shown, shade)

    def round_ground(self, circle: ArcOnSheet, material: str) -> None:
        """A gray is bounded by two half circles, a mask by chords."""
        (x, y), radius, *_ = circle
        shade = ground_shade(material)
        if shade is None:
            self.ground(chords(*circle), material)
            return
        left, right = self.point((x - radius, y)), self.point((x + radius, y))
        self._shaded([(*left, 1.0), (*right, 1.0)], shade)

    def _corners(self, outline: Sequence[Point]) -> list[Point]:
        """Return an outline's corners as they are drawn; none where it has no area."""
        shown = list(dict.fromkeys(self.point(point) for point in outline))
        flat = any(len({point[axis] for point in shown}) < 2 for axis in (0, 1))
        return [] if flat or len(shown) < 3 else shown

    def _shaded(self, boundary: Sequence[tuple[float, ...]], shade: int) -> None:
        hatch = self._space.add_hatch(color=shade, dxfattribs={"layer": GROUND})
        hatch.paths.add_polyline_path(boundary, is_closed=True)

    def pattern(self, outline: Sequence[Point], item: Polygon, view: View) -> None:
        """A hatch is a pattern with a boundary, which the reader can change."""
        assert item.fill is not None
        material, shown = materials()[item.fill], self._corners(outline)
        if material.pattern == "none" or not shown:
            return
        about = self.point(view.to_sheet(item.about))
        lines = pattern_lines(material, view.hand * item.turned, about, self._per_point)
        hatch = self._space.add_hatch(dxfattribs={"layer": item.pattern_layer})
        hatch.set_pattern_fill(material.name.upper(), color=256, definition=lines, pattern_type=2)
        hatch.paths.add_polyline_path(shown, is_closed=True)

    def lettering(self, at: Point, item: Text) -> None:
        """Texts keep their anchor."""
        style = BOLD if item.bold else REGULAR
        self._letter(self._space, at, item.text, item.size, item.anchor, item.angle, item.layer, style)

    def _letter(
        self,
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
        height = size * CAPITALS * self._per_point
        attributes = {"layer": layer, "style": style, "rotation": math.degrees(angle)}
        lettering = space.add_text(one_line(text), height=height, dxfattribs=attributes)
        lettering.set_placement(self.point(at), align=_ALIGNED[anchor])

    def dimension(self, item: Dimension, view: View) -> None:
        """A dimension measures its own points, and is drawn in its block exactly as it is on paper.

        Its number is live: drawn anew after a stretch it says the new length, with the words about it.
        """
        a, b, line_a, line_b, text_at = (
            self.point(view.to_sheet(point))
            for point in (item.a, item.b, item.line_a, item.line_b, item.text_at)
        )
        unit = per_inch(self._drawing)
        text, way = live_text(one_line(item.text), item.value, unit != 1.0)
        up = item.size * CAPITALS * self._per_point / 2
        middle = (text_at[0] - up * math.sin(item.text_angle), text_at[1] + up * math.cos(item.text_angle))
        attributes: dict[str, Any] = {
            "layer": item.layer,
            "dimtype": _ROTATED + _OWN_BLOCK + _TEXT_PLACED,
            "dimstyle": dimension_style(self._drawing, self._scale, item.text_angle != 0.0, way),
            "geometry": self._dimension_block(item, view),
            "defpoint": line_b,
            "defpoint2": a,
            "defpoint3": b,
            "text_midpoint": middle,
            "attachment_point": _MIDDLE_CENTRE,
            "angle": math.degrees(math.atan2(line_b[1] - line_a[1], line_b[0] - line_a[0])),
            "text": shielded(text),
            "actual_measurement": item.value * unit,
        }
        _name(self._space.new_entity("DIMENSION", attributes), item.name)

    def paragraph(self, lines: Sequence[Text]) -> None:
        """Set a paragraph of the notes as one text that breaks its own lines in the width it was set in."""
        first, width = lines[0], max(text_width(one.text, one.size, one.bold) for one in lines)
        leading = (first.at[1] - lines[-1].at[1]) / (len(lines) - 1) if len(lines) > 1 else 0.0
        height = first.size * CAPITALS * self._per_point
        x, y = first.at
        words = " ".join(one_line(one.text) for one in lines)
        attributes: dict[str, Any] = {
            "layer": first.layer,
            "style": BOLD if first.bold else REGULAR,
            "char_height": height,
            "width": (width + first.size / 4) * self._per_point,
            "insert": self.point((x, y + first.size * CAPITALS)),
            "attachment_point": _TOP_LEFT,
            "line_spacing_style": _EXACTLY,
        }
        if leading:
            usual = _LINE_OF_MTEXT * first.size * CAPITALS
            attributes["line_spacing_factor"] = min(max(leading / usual, 0.25), 4.0)
        self._space.add_mtext(shielded(words), attributes)

    def _dimension_block(self, item: Dimension, view: View) -> str:
        """Return the name of a block with a dimension's strokes, arrowheads and text."""
        block = self._drawing.blocks.new_anonymous_block(type_char="D")
        strokes = strokes_of(item, view)
        for line in strokes.lines:
            block.add_lwpolyline([self.point(point) for point in line])
        for arrow in strokes.arrows:
            block.add_solid([self.point(point) for point in arrow])
        at = view.to_sheet(item.text_at)
        self._letter(block, at, item.text, item.size, "middle", item.text_angle, "0")
        return block.name

    def mark(self, at: Point, item: Symbol) -> None:
        """A mark is a block."""
        size = dict.fromkeys(("xscale", "yscale", "zscale"), self._per_point)
        attributes = {"layer": item.layer, **size}
        inserted = self._space.add_blockref(mark_block(item.kind), self.point(at), dxfattribs=attributes)
        if item.name:
            inserted.add_attrib(MARK_TAG, one_line(item.name), self.point(at), unseen(self._per_point))
        _name(inserted, item.name)


def one_line(text: str) -> str:
    """Return text that a DXF text shows as it stands: no control codes, no breaks."""
    plain = "".join(letter if letter.isprintable() else " " for letter in text)
    while "%%" in plain:
        plain = plain.replace("%%", "% %")
    return plain.replace("^", "^ ")


def shielded(text: str) -> str:
    """Return text in which no sign is a code of a text of several lines."""
    return text.replace("\\", "\\\\").replace("{", "\\{").replace("}", "\\}")


def _name(entity: DXFGraphic, name: str) -> None:
    if name:
        entity.set_xdata(NAMES, [(1000, one_line(name)[:255])])
