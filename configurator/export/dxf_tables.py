"""An empty DXF drawing in inches with the layers, line types, lettering, marks and hatches of the style."""

import math
from collections.abc import Iterable
from functools import cache
from typing import Any

import ezdxf
from ezdxf.document import Drawing
from ezdxf.enums import InsertUnits
from ezdxf.layouts import BlockLayout

from configurator.drawing.base.dimension_strokes import ARROW, BEYOND, GAP
from configurator.drawing.base.hatch import DOT as STIPPLE
from configurator.drawing.base.hatch import DOT_ROWS, DOT_SHIFT, GRAIN_EVERY, GRAIN_SHIFT
from configurator.drawing.base.on_sheet import CROSS, DOT, RING, SMALL_RING
from configurator.drawing.base.primitives import Point
from configurator.drawing.base.style import POINTS_PER_MM, Layer, Material, inks, layers, materials
from configurator.drawing.pages.page import POINTS_PER_INCH, Scale

PatternLine = tuple[float, Point, Point, list[float]]
"""Angle in degrees, base point, step to the next line, and dashes with gaps below zero."""
CAPITALS = 0.729
"""Height of capitals, of the type size: DXF letters by it. From the font file of DejaVu Sans (derived)."""
REGULAR, BOLD = "LETTERING", "LETTERING-BOLD"
GROUND = "A-DETL-GRND"
"""The layer of the plain grounds under hatches: frozen alone, it leaves the lines."""
NOT_PLOTTED = "A-ANNO-NPLT"
"""The layer of the viewports; the National CAD Standard pattern has it for what is not plotted."""
_COLOURS = {"ink": 7, "soft": 8, "hatch": 9, "rule": 9, "accent": 5, "warning": 1}
"""Color index of each ink of the style; 7 is black on paper and white on a dark screen."""
_GRAY, _LIGHT_GRAY = 8, 9
_DARK, _LIGHT = 0.65, 0.86
_FRACTIONAL, _NOT_STACKED = 5, 2
_THIRTY_SECONDS = 5
_GRAIN_MEAN = 0.725
"""A stroke of the grain, of its period: the drawing's own run from 0.55 to 0.9, which one family cannot."""
_NO_STYLE = "Standard"


def new_drawing() -> Drawing:
    """Return the drawing; line types are dashed in inches on paper."""
    drawing = ezdxf.new("R2010", units=InsertUnits.Inches)
    drawing.header["$LUNITS"], drawing.header["$LUPREC"] = _FRACTIONAL, _THIRTY_SECONDS
    drawing.header["$MEASUREMENT"] = 0
    drawing.header["$LTSCALE"], drawing.header["$PSLTSCALE"] = 1.0, 1
    drawing.header["$LWDISPLAY"] = 1
    drawing.header["$DIMSTYLE"] = _NO_STYLE
    drawing.styles.add(REGULAR, font="DejaVuSans.ttf")
    drawing.styles.add(BOLD, font="DejaVuSans-Bold.ttf")
    _add_marks(drawing)
    return drawing


def add_layers(drawing: Drawing, names: Iterable[str]) -> None:
    """Add the layers of the drawing style that are called so, in the style's order, and that of grounds."""
    wanted = set(names)
    for name, layer in layers().items():
        if name in wanted:
            _add_layer(drawing, layer)
    grounds = drawing.layers.add(GROUND, color=9, lineweight=0)
    grounds.description = "grays and masks under what is cut"
    if NOT_PLOTTED not in drawing.layers:
        _add_layer(drawing, layers()[NOT_PLOTTED])
    drawing.layers.get(NOT_PLOTTED).dxf.plot = 0


def dimension_style(drawing: Drawing, scale: Scale, along: bool) -> str:
    """Return the name of the dimension style for a scale, made where it is not there yet.

    A program that draws a dimension anew then letters it as large as it was, level or `along` its line.
    The first style made is the drawing's own.
    """
    name = f"DIMS-{1 / scale.ratio:g}" + ("-ALONG" if along else "")
    if name not in drawing.dimstyles:
        style = drawing.dimstyles.add(name)
        style.update_dxf_attribs(_dimension_variables(scale, along))
        if drawing.header["$DIMSTYLE"] == _NO_STYLE:
            drawing.header["$DIMSTYLE"] = name
            for variable, value in _dimension_variables(scale, along).items():
                drawing.header[f"${variable.upper()}"] = value
    return name


def _dimension_variables(scale: Scale, along: bool) -> dict[str, Any]:
    return {
        "dimscale": 1 / scale.ratio,
        "dimtxt": 8.0 * CAPITALS / POINTS_PER_INCH,
        "dimasz": ARROW / POINTS_PER_INCH,
        "dimexo": GAP / POINTS_PER_INCH,
        "dimexe": BEYOND / POINTS_PER_INCH,
        "dimgap": 2.0 / POINTS_PER_INCH,
        "dimtad": 1,
        "dimtih": int(not along),
        "dimtoh": int(not along),
        "dimtmove": 2,
        "dimlunit": _FRACTIONAL,
        "dimfrac": _NOT_STACKED,
        "dimdec": _THIRTY_SECONDS,
        "dimtxsty": REGULAR,
    }


@cache
def ground_shade(material: str) -> int | None:
    """Return the color index of the gray that stands for a material's ground, None for one that is light."""
    red, green, blue = bytes.fromhex(materials()[material].ground.light.removeprefix("#"))
    light = (0.299 * red + 0.587 * green + 0.114 * blue) / 255
    if light >= _LIGHT:
        return None
    return _LIGHT_GRAY if light >= _DARK else _GRAY


def pattern_lines(material: Material, turned: float, about: Point, per_point: float) -> list[PatternLine]:
    """Return a material's pattern, `turned` radians about a point; `per_point` is drawing units a point."""
    spacing = material.spacing * per_point
    angle = math.radians(material.angle) + turned
    along, across, dashes = 0.0, spacing, list[float]()
    if material.pattern == "dots":
        along, across = DOT_SHIFT * spacing, DOT_ROWS * spacing
        dashes = [STIPPLE * per_point, STIPPLE * per_point - spacing]
    elif material.pattern == "grain":
        every = GRAIN_EVERY * spacing
        along, dashes = GRAIN_SHIFT * every, [_GRAIN_MEAN * every, (_GRAIN_MEAN - 1) * every]
    c, s = math.cos(angle), math.sin(angle)
    step = (along * c - across * s, along * s + across * c)
    return [(math.degrees(angle), about, step, dashes)]


def mark_block(kind: str) -> str:
    """Return the name of the block that holds a mark, drawn in points about its middle."""
    return "MARK-" + kind.upper().replace(" ", "-")


def _add_layer(drawing: Drawing, layer: Layer) -> None:
    named = {shade: ink for ink, shade in inks().items()}
    added = drawing.layers.add(
        layer.name,
        color=_COLOURS[named[layer.ink]],
        linetype=_line_type(drawing, layer.dash),
        lineweight=round(layer.width / POINTS_PER_MM * 100),
    )
    added.description = layer.words


def _line_type(drawing: Drawing, dash: tuple[float, ...]) -> str:
    """Return the line type of a dash in points; its lengths are inches on paper, gaps below zero."""
    if not dash:
        return "CONTINUOUS"
    name = "DASH-" + "-".join(f"{part:g}".replace(".", "P") for part in dash)
    if name not in drawing.linetypes:
        lengths = [part / POINTS_PER_INCH * (-1 if number % 2 else 1) for number, part in enumerate(dash)]
        words = "dash and gap on paper, points: " + " ".join(f"{part:g}" for part in dash)
        drawing.linetypes.add(name, [sum(map(abs, lengths)), *lengths], description=words)
    return name


def _add_marks(drawing: Drawing) -> None:
    contact = drawing.blocks.new(mark_block("contact"))
    contact.add_circle((0, 0), RING)
    for x, y in CROSS:
        contact.add_line((-x, -y), (x, y))
    drawing.blocks.new(mark_block("graze")).add_circle((0, 0), SMALL_RING)
    for kind in ("pin axis", "dot"):
        _add_dot(drawing.blocks.new(mark_block(kind)))


def _add_dot(block: BlockLayout) -> None:
    """A filled dot is a ring of half the radius as thick as the radius."""
    ring = [(-DOT / 2, 0.0, 1.0), (DOT / 2, 0.0, 1.0)]
    block.add_lwpolyline(ring, format="xyb", close=True, dxfattribs={"const_width": DOT})
