"""A picture as SVG, in millimetres: one unit of the drawing is a millimetre of paper.

Every stroke has its layer for a class; a dimension is a group that says its name. Lettering stays text, its
length fixed, so that it keeps its room in whatever face the reader has.
"""

import base64
import math
from collections.abc import Sequence
from xml.sax.saxutils import escape, quoteattr

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.on_sheet import ArcOnSheet, is_round
from configurator.drawing.base.primitives import Dimension, Point
from configurator.drawing.base.style import Shade, layers
from configurator.drawing.base.view import View
from configurator.export.painting import Chain, Picture, StrokePainter, logo_place, paint

_MM = 25.4 / 72
_FACES = "DejaVu Sans, Verdana, sans-serif"
_XML = '<?xml version="1.0" encoding="UTF-8"?>'


def svg_text(picture: Picture) -> str:
    """Return a picture as the text of an SVG file."""
    width, height = round(picture.width * _MM, 6), round(picture.height * _MM, 6)
    marks = _Marks(height, picture.dark)
    for group in picture.groups:
        marks.lines.append("<g>")
        paint([group], marks)
        marks.lines.append("</g>")
    marks.lines += _logo(picture, height)
    size = f'width="{width:g}mm" height="{height:g}mm" viewBox="0 0 {width:g} {height:g}"'
    head = f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" {size} font-family="{_FACES}">'
    sheet = f'<rect width="{width:g}" height="{height:g}" fill="{picture.ground.on(picture.dark)}"/>'
    return "\n".join(
        [_XML, head, f"<title>{escape(picture.title)}</title>", sheet, *marks.lines, "</svg>", ""]
    )


def _logo(picture: Picture, height: float) -> list[str]:
    """Return the logo as an element that holds its whole file; none where there is no logo."""
    place = logo_place(picture.logo)
    if place is None or picture.logo is None:
        return []
    file = picture.logo[0]
    kind = "png" if file.suffix.lower() == ".png" else "jpeg"
    data = base64.b64encode(file.read_bytes()).decode("ascii")
    sides = {
        "x": place.left * _MM,
        "y": height - place.top * _MM,
        "width": place.width * _MM,
        "height": place.height * _MM,
    }
    at = " ".join(f'{name}="{round(value, 4):g}"' for name, value in sides.items())
    return [f'<image {at} href="data:image/{kind};base64,{data}"/>']


class _Marks(StrokePainter):
    """Collects the elements of a page; points upward from below become millimetres downward from above."""

    def __init__(self, height: float, dark: bool) -> None:
        self.lines: list[str] = []
        self._height = height
        self._dark = dark

    def fill(self, outline: Chain, shade: Shade) -> None:
        self.lines.append(f'<path d="{self._path(outline)}Z" fill="{shade.on(self._dark)}"/>')

    def chains(self, chains: Sequence[Chain], layer: str) -> None:
        self._stroke("".join(self._path(chain) for chain in chains), layer)

    def arc(self, arc: ArcOnSheet, layer: str, heavier: float = 1.0) -> None:
        (x, y), radius, first, last = arc
        if is_round(arc):
            self.lines.append(f'<circle {self._circle(arc)} fill="none" {self._pen(layer, heavier)}/>')
            return
        a, b = ((x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in (first, last))
        large = int(last - first > math.pi)
        r = _number(radius * _MM)
        self._stroke(f"M{self._at(a)}A{r} {r} 0 {large} 0 {self._at(b)}", layer, heavier)

    def disc(self, circle: ArcOnSheet, shade: Shade) -> None:
        self.lines.append(f'<circle {self._circle(circle)} fill="{shade.on(self._dark)}"/>')

    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        x, y = self._at(at).split()
        long = _number(text_width(text, size, bold) * _MM)
        turned = f' transform="rotate({_number(-math.degrees(angle))} {x} {y})"' if angle else ""
        weight = ' font-weight="bold"' if bold else ""
        ink = layers()[layer].ink.on(self._dark)
        self.lines.append(
            f'<text class="{layer}" x="{x}" y="{y}" font-size="{_number(size * _MM)}"{weight}'
            f' fill="{ink}" textLength="{long}" lengthAdjust="spacingAndGlyphs"{turned}>'
            f"{escape(_printable(text))}</text>"
        )

    def dimension(self, item: Dimension, view: View) -> None:
        self.lines.append(f'<g class="dimension" data-name={quoteattr(item.name)}>')
        super().dimension(item, view)
        self.lines.append("</g>")

    def _stroke(self, path: str, layer: str, heavier: float = 1.0) -> None:
        self.lines.append(f'<path class="{layer}" d="{path}" fill="none" {self._pen(layer, heavier)}/>')

    def _pen(self, layer: str, heavier: float) -> str:
        style = layers()[layer]
        dash = " ".join(_number(part * _MM) for part in style.dash)
        dashed = f' stroke-dasharray="{dash}"' if dash else ""
        width = _number(style.width * heavier * _MM)
        return f'stroke="{style.ink.on(self._dark)}" stroke-width="{width}"{dashed}'

    def _path(self, chain: Chain) -> str:
        return "M" + "L".join(self._at(point) for point in chain)

    def _at(self, point: Sequence[float]) -> str:
        return f"{_number(point[0] * _MM)} {_number(self._height - point[1] * _MM)}"

    def _circle(self, arc: ArcOnSheet) -> str:
        x, y = self._at(arc[0]).split()
        return f'cx="{x}" cy="{y}" r="{_number(arc[1] * _MM)}"'


def _number(value: float) -> str:
    """Write a number to a ten-thousandth of a millimetre, without noughts at its end."""
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _printable(text: str) -> str:
    return "".join(letter if letter.isprintable() else " " for letter in text)
