"""Pictures as one PDF: vectors, fonts embedded, every page at its own exact size, a bookmark for each.

The same pictures give the same bytes: no date and no random name goes into the file.
"""

import io
import math
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Any

from reportlab import rl_config
from reportlab.lib.rl_accel import fp_str
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from configurator.drawing.base.on_sheet import ArcOnSheet
from configurator.drawing.base.primitives import Point
from configurator.drawing.base.style import Shade, layers
from configurator.export.painting import (
    BOLD,
    FONT,
    WHITE,
    Chain,
    Picture,
    StrokePainter,
    font_file,
    logo_place,
    paint,
)
from configurator.units import TOLERANCE

rl_config.useA85 = 0  # a stream as text is a quarter larger, and slow to write

CREATOR = "Opening Configurator"
_MOST_TEXTS = 20_000
"""Texts that a canvas keeps as they are written; a large order has most of them on every page."""
_QUARTER = math.pi / 2


def load_fonts() -> None:
    """Make both faces known to the PDF library, once; what is used of them is embedded in each file."""
    for name in (FONT, BOLD):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, font_file(name)))
    rl_config.canvas_basefontname = FONT  # else every page names a face of the library's that is not embedded


@lru_cache(maxsize=65_536)
def _number(value: float) -> str:
    return str(fp_str(value))


@lru_cache(maxsize=65_536)
def width_of(text: str, font: str, size: float) -> float:
    """Return how wide a text is, points."""
    return float(pdfmetrics.stringWidth(text, font, size))


class QuickCanvas(Canvas):
    """A canvas of tables and forms: writes what the library writes, but works out no text or number twice."""

    def __init__(self, *given: Any, **options: Any) -> None:
        super().__init__(*given, **options)
        self._written: dict[tuple[str, float, float, str], str] = {}

    def drawString(self, x: float, y: float, text: str, *given: Any, **options: Any) -> None:  # noqa: N802
        """Write a text from a point on."""
        if given or options:
            super().drawString(x, y, text, *given, **options)
            return
        state = vars(self)
        font = state["_fontname"], state["_fontsize"], state["_leading"]
        shown = self._written.get((*font, text))
        if shown is None:
            shown = self._written[*font, text] = self._text(text)
        state["_code"].append(f"BT 1 0 0 1 {_number(x)} {_number(y)} Tm {shown}")

    def drawRightString(self, x: float, y: float, text: str, *given: Any, **options: Any) -> None:  # noqa: N802
        """Write a text up to a point."""
        if given or options:
            super().drawRightString(x, y, text, *given, **options)
            return
        state = vars(self)
        self.drawString(x - width_of(text, state["_fontname"], state["_fontsize"]), y, text)

    def line(self, x1: float, y1: float, x2: float, y2: float) -> None:
        """Draw a line."""
        ends = f"n {_number(x1)} {_number(y1)} m {_number(x2)} {_number(y2)} l S"
        vars(self)["_code"].append(ends)

    def setLineWidth(self, width: float) -> None:  # noqa: N802
        """Set how wide lines are."""
        vars(self).update(_lineWidth=width)
        vars(self)["_code"].append(f"{_number(width)} w")

    def _text(self, text: str) -> str:
        """Return how the library writes a text, without the place where it begins."""
        if len(self._written) >= _MOST_TEXTS:
            self._written.clear()
        made = self.beginText(0, 0)
        made.textLine(text)
        return str(made.getCode()).removeprefix("BT 1 0 0 1 0 0 Tm ")


def pdf_bytes(pictures: Iterable[Picture]) -> bytes:
    """Return the pictures as a PDF, in their order, taken one at a time. Raises ValueError for none."""
    load_fonts()
    written = io.BytesIO()
    canvas = Canvas(written, pageCompression=1, invariant=1)
    titles: list[str] = []
    for picture in pictures:
        _write(canvas, picture, f"page{len(titles)}")
        titles.append(picture.title)
    if not titles:
        raise ValueError("there is no sheet to write")
    _name(canvas, titles)
    canvas.save()
    return written.getvalue()


def _name(canvas: Canvas, titles: Sequence[str]) -> None:
    more = len(titles) - 1
    canvas.setTitle(f"{titles[0]} and {more} more" if more else titles[0])
    if more:
        canvas.showOutline()
    canvas.setAuthor("")
    canvas.setSubject("")
    canvas.setCreator(CREATOR)


def _write(canvas: Canvas, picture: Picture, key: str) -> None:
    canvas.setPageSize((picture.width, picture.height))
    canvas.bookmarkPage(key)
    canvas.addOutlineEntry(picture.title, key, level=0)
    painter = _OnCanvas(canvas, picture.dark)
    if (ground := picture.ground) != WHITE:
        painter.fill(
            ((0, 0), (picture.width, 0), (picture.width, picture.height), (0, picture.height)), ground
        )
    paint(picture.groups, painter)
    place = logo_place(picture.logo)
    if place is not None and picture.logo is not None:
        at = (place.left, place.bottom, place.width, place.height)
        canvas.drawImage(str(picture.logo[0]), *at, mask="auto")
    canvas.showPage()


class _OnCanvas(StrokePainter):
    """Paints one page; what the pen already is is not said again."""

    def __init__(self, canvas: Canvas, dark: bool) -> None:
        self._canvas = canvas
        self._dark = dark
        self._pen: tuple[str, float] | None = None
        self._colour = ""
        canvas.setLineJoin(0)
        canvas.setLineCap(0)

    def fill(self, outline: Chain, shade: Shade) -> None:
        self._fill_with(shade)
        self._canvas.drawPath(self._path([outline], closed=True), stroke=0, fill=1)

    def chains(self, chains: Sequence[Chain], layer: str) -> None:
        self._draw_with(layer, 1.0)
        self._canvas.drawPath(self._path(chains, closed=False), stroke=1, fill=0)

    def arc(self, arc: ArcOnSheet, layer: str, heavier: float = 1.0) -> None:
        self._draw_with(layer, heavier)
        self._curve(arc, stroke=1, fill=0)

    def disc(self, circle: ArcOnSheet, shade: Shade) -> None:
        self._fill_with(shade)
        self._curve(circle, stroke=0, fill=1)

    def letter(self, at: Point, text: str, size: float, layer: str, bold: bool, angle: float) -> None:
        self._fill_with(layers()[layer].ink)
        self._canvas.setFont(BOLD if bold else FONT, size)
        if angle == 0.0:
            self._canvas.drawString(*at, text)
            return
        self._canvas.saveState()
        self._canvas.translate(*at)
        self._canvas.rotate(math.degrees(angle))
        self._canvas.drawString(0.0, 0.0, text)
        self._canvas.restoreState()

    def _path(self, chains: Sequence[Chain], closed: bool) -> PDFPathObject:
        """Return chains as one path; a chain that ends where it starts is joined there as well."""
        code: list[str] = []
        for chain in chains:
            code += [f"{x:.4f} {y:.4f} l" for x, y in chain]
            code[-len(chain)] = code[-len(chain)][:-1] + "m"
            if closed or (len(chain) > 2 and tuple(chain[0]) == tuple(chain[-1])):
                code.append("h")
        return PDFPathObject(code)

    def _curve(self, arc: ArcOnSheet, stroke: int, fill: int) -> None:
        """An arc as curves of up to a quarter turn each, off the true round by less than 3 in 10,000."""
        (x, y), radius, first, last = arc
        path = self._canvas.beginPath()
        pieces = max(1, math.ceil((last - first) / _QUARTER - TOLERANCE))
        step = (last - first) / pieces
        pull = radius * 4 / 3 * math.tan(step / 4)
        path.moveTo(x + radius * math.cos(first), y + radius * math.sin(first))
        for number in range(pieces):
            a, b = first + number * step, first + (number + 1) * step
            path.curveTo(
                x + radius * math.cos(a) - pull * math.sin(a),
                y + radius * math.sin(a) + pull * math.cos(a),
                x + radius * math.cos(b) + pull * math.sin(b),
                y + radius * math.sin(b) - pull * math.cos(b),
                x + radius * math.cos(b),
                y + radius * math.sin(b),
            )
        self._canvas.drawPath(path, stroke=stroke, fill=fill)

    def _fill_with(self, shade: Shade) -> None:
        colour = shade.on(self._dark)
        if colour != self._colour:
            self._canvas.setFillColorRGB(*_rgb(colour))
            self._colour = colour

    def _draw_with(self, layer: str, heavier: float) -> None:
        if (layer, heavier) == self._pen:
            return
        style = layers()[layer]
        self._canvas.setStrokeColorRGB(*_rgb(style.ink.on(self._dark)))
        self._canvas.setLineWidth(style.width * heavier)
        self._canvas.setDash(list(style.dash), 0)
        self._pen = (layer, heavier)


def _rgb(colour: str) -> tuple[float, float, float]:
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return red, green, blue
