"""An empty DXF drawing, in inches or millimetres, with layers, line types, marks and hatches of the style."""

import math
import re
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
from configurator.drawing.pages.page import MM_PER_INCH, POINTS_PER_INCH, Scale
from configurator.units import TOLERANCE, parse_length

PatternLine = tuple[float, Point, Point, list[float]]
"""Angle in degrees, base point, step to the next line, and dashes with gaps below zero."""
CAPITALS = 0.729
"""Height of capitals, of the type size: DXF letters by it. From the font file of DejaVu Sans (derived)."""
REGULAR, BOLD = "LETTERING", "LETTERING-BOLD"
MARK_TAG = "NAME"
"""The attribute of a mark: what it marks."""
_INVISIBLE = 1
GROUND = "A-DETL-GRND"
"""The layer of the gray grounds under what is cut: frozen alone, it leaves the lines."""
MASK = "A-DETL-MASK"
"""The layer of the masks (wipeouts) under what is cut and light."""
NOT_PLOTTED = "A-ANNO-NPLT"
"""The layer of the viewports; the National CAD Standard pattern has it for what is not plotted."""
_FAMILY = "Arial"
_FONTS = {REGULAR: "arial.ttf", BOLD: "arialbd.ttf"}
"""A font that drawing programs have or replace by its like, and narrower than the one sheets are laid out in.

The family stands beside the file, for a program that goes by it."""
_COLOURS = {"ink": 7, "soft": 8, "hatch": 9, "rule": 9, "accent": 5, "warning": 1, "verdict": 7}
"""Color index of each ink of the style; 7 is black on paper and white on a dark screen."""
_GRAY, _LIGHT_GRAY = 8, 9
_DARK, _LIGHT = 0.65, 0.86
_DECIMAL, _FRACTIONAL, _NOT_STACKED, _NO_ZEROS_BEHIND = 2, 5, 2, 8
_THIRTY_SECONDS = 5
_PLACES_OF = {"32": _THIRTY_SECONDS, "64": 6}
_WAYS = {"32": 1 / 32, "64": 1 / 64, "DECIMAL": 0.001, "": 0.1}
"""How a style writes a number: fractions of an inch, its decimals, or millimetres; with the step of each."""
_HALF_UP = 1.0 + 1e-9
"""Factor of every length measured anew, so that 6.35 mm reads 6.4 wherever halves are rounded to even."""
_NUMBER = re.compile(r"(\d[\d./-]*) (?:in|mm)\b")
_GRAIN_MEAN = 0.725
"""A stroke of the grain, of its period: the drawing's own run from 0.55 to 0.9, which one family cannot."""
_NO_STYLE = "Standard"


def new_drawing(metric: bool = False) -> Drawing:
    """Return the drawing, in inches or in millimetres; line types are dashed in that unit on paper."""
    drawing = ezdxf.new("R2010", units=InsertUnits.Millimeters if metric else InsertUnits.Inches)
    units = (_DECIMAL, 1) if metric else (_FRACTIONAL, _THIRTY_SECONDS)
    drawing.header["$LUNITS"], drawing.header["$LUPREC"] = units
    drawing.header["$MEASUREMENT"] = int(metric)
    drawing.header["$LTSCALE"], drawing.header["$PSLTSCALE"] = 1.0, 1
    drawing.header["$LWDISPLAY"] = 1
    drawing.header["$DIMSTYLE"] = _NO_STYLE
    for style, font in _FONTS.items():
        added = drawing.styles.add(style, font=font)
        added.set_extended_font_data(_FAMILY, bold=style == BOLD)
    drawing.set_wipeout_variables(frame=0)  # type: ignore[no-untyped-call]
    _add_marks(drawing)
    return drawing


def per_inch(drawing: Drawing) -> float:
    """Return how many units of a drawing are an inch: 1, or 25.4 of one in millimetres."""
    return MM_PER_INCH if drawing.header["$INSUNITS"] == InsertUnits.Millimeters else 1.0


def add_layers(drawing: Drawing, names: Iterable[str]) -> None:
    """Add the layers of the drawing style that are called so, in the style's order, and that of grounds."""
    wanted = set(names)
    for name, layer in layers().items():
        if name in wanted:
            _add_layer(drawing, layer)
    for name, words in ((GROUND, "grays under what is cut"), (MASK, "masks under what is cut")):
        drawing.layers.add(name, color=9, lineweight=0).description = words
    if NOT_PLOTTED not in drawing.layers:
        _add_layer(drawing, layers()[NOT_PLOTTED])
    drawing.layers.get(NOT_PLOTTED).dxf.plot = 0


def live_text(text: str, value: float, metric: bool) -> tuple[str, str]:
    """Return a dimension's text with `<>` for its number, and how a style writes that number anew.

    `value` is inches. The text stays as it is, and the way the usual one, where no style would write that
    number: it was rounded to the safe side, or says less than the least that is shown.
    """
    found, usual = _NUMBER.match(text), "" if metric else "32"
    if found is None:
        return text, usual
    said = float(found[1]) if metric else parse_length(found[1])
    shown = value * MM_PER_INCH if metric else value
    for way, step in _WAYS.items():
        mine = way == "" if metric else way != ""
        if mine and abs(round(shown * _HALF_UP / step) * step - said) < TOLERANCE:
            return "<>" + text[found.end(1) :], way
    return text, usual


def dimension_style(drawing: Drawing, scale: Scale, along: bool, way: str) -> str:
    """Return the name of the dimension style for a scale, made where it is not there yet.

    A program that draws a dimension anew then letters it as large as it was, level or `along` its line, its
    number in a `way` of `live_text`. The first style made is the drawing's own.
    """
    name = (
        f"DIMS-{1 / scale.ratio:g}" + ("-ALONG" if along else "") + ("" if way in ("", "32") else f"-{way}")
    )
    if name not in drawing.dimstyles:
        variables = _dimension_variables(scale, along, way, per_inch(drawing))
        style = drawing.dimstyles.add(name)
        style.update_dxf_attribs(variables)
        if drawing.header["$DIMSTYLE"] == _NO_STYLE:
            drawing.header["$DIMSTYLE"] = name
            for variable, value in variables.items():
                drawing.header[f"${variable.upper()}"] = value
    return name


def _dimension_variables(scale: Scale, along: bool, way: str, unit: float) -> dict[str, Any]:
    point = unit / POINTS_PER_INCH
    return {
        "dimscale": 1 / scale.ratio,
        "dimtxt": 8.0 * CAPITALS * point,
        "dimasz": ARROW * point,
        "dimexo": GAP * point,
        "dimexe": BEYOND * point,
        "dimgap": 2.0 * point,
        "dimtad": 1,
        "dimtih": int(not along),
        "dimtoh": int(not along),
        "dimtmove": 2,
        "dimlunit": _FRACTIONAL if way in _PLACES_OF else _DECIMAL,
        "dimfrac": _NOT_STACKED,
        "dimdec": _PLACES_OF.get(way, 3 if way else 1),
        "dimrnd": _WAYS[way or ("" if unit != 1.0 else "32")],
        "dimdsep": ord("."),
        "dimlfac": _HALF_UP,
        "dimzin": _NO_ZEROS_BEHIND if way == "DECIMAL" else 0,
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
        point = per_inch(drawing) / POINTS_PER_INCH
        lengths = [part * point * (-1 if number % 2 else 1) for number, part in enumerate(dash)]
        words = "dash and gap on paper, points: " + " ".join(f"{part:g}" for part in dash)
        drawing.linetypes.add(name, [sum(map(abs, lengths)), *lengths], description=words)
    return name


def unseen(height: float, layer: str = "0") -> dict[str, Any]:
    """Return how an attribute is kept that is read, but not shown."""
    return {"layer": layer, "height": height, "style": REGULAR, "flags": _INVISIBLE}


def _add_marks(drawing: Drawing) -> None:
    contact = drawing.blocks.new(mark_block("contact"))
    contact.add_circle((0, 0), RING)
    for x, y in CROSS:
        contact.add_line((-x, -y), (x, y))
    drawing.blocks.new(mark_block("graze")).add_circle((0, 0), SMALL_RING)
    for kind in ("pin axis", "dot"):
        _add_dot(drawing.blocks.new(mark_block(kind)))
    for kind in ("contact", "graze", "pin axis", "dot"):
        drawing.blocks.get(mark_block(kind)).add_attdef(MARK_TAG, (0, 0), dxfattribs=unseen(1.0))


def _add_dot(block: BlockLayout) -> None:
    """A filled dot is a ring of half the radius as thick as the radius."""
    ring = [(-DOT / 2, 0.0, 1.0), (DOT / 2, 0.0, 1.0)]
    block.add_lwpolyline(ring, format="xyb", close=True, dxfattribs={"const_width": DOT})
