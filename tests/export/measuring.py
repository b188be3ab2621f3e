"""Files read back with libraries that had no part in writing them, and what can be measured in them.

Places are points of the paper from its lower left corner, whatever the format.
"""

import ctypes
import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

import pypdfium2
import pypdfium2.raw as pdfium

from configurator.drawing.base.view import Box
from configurator.units import Display

MM_PER_POINT = 25.4 / 72
_SVG = "{http://www.w3.org/2000/svg}"
Point = tuple[float, float]
Stroke = tuple[Point, Point]


@dataclass(frozen=True)
class Lettered:
    """A text as it stands in a file; its box is what its letters cover."""

    text: str
    box: Box


@dataclass(frozen=True)
class Measured:
    """A dimension found in a file: its text, its strokes, and how far apart its arrowheads point, points."""

    lettered: Lettered
    strokes: tuple[Stroke, ...]
    length: float


@dataclass
class Sheet:
    """What was read of one page: millimetres of paper, all texts in order, dimensions, filled rectangles."""

    width: float
    height: float
    texts: list[Lettered] = field(default_factory=list)
    measured: list[Measured] = field(default_factory=list)
    rectangles: list[Box] = field(default_factory=list)


# --- PDF ---


def read_pdf(data: bytes) -> list[Sheet]:
    """Read every page of a PDF; a dimension is strokes, two filled triangles and a text in a row."""
    with pypdfium2.PdfDocument(data) as document:
        return [_pdf_page(page) for page in document]


def bookmarks(data: bytes) -> list[tuple[str, int]]:
    """Return a PDF's bookmarks: words and number of the page, from 0."""
    with pypdfium2.PdfDocument(data) as document:
        return [(one.get_title(), one.get_dest().get_index()) for one in document.get_toc()]


def _pdf_page(page: pypdfium2.PdfPage) -> Sheet:
    wide, high = page.get_size()
    sheet = Sheet(wide * MM_PER_POINT, high * MM_PER_POINT)
    texts = page.get_textpage()
    strokes: tuple[Stroke, ...] = ()
    tips: list[Point] = []
    for one in page.get_objects():
        if one.type == pdfium.FPDF_PAGEOBJ_TEXT:
            lettered = Lettered(_pdf_text(one, texts), Box(*one.get_bounds()))
            sheet.texts.append(lettered)
            if len(tips) == 2:
                sheet.measured.append(Measured(lettered, strokes, math.dist(*tips)))
            tips = []
        elif _is_stroked(one):
            strokes, tips = tuple(_pdf_strokes(one)), []
        else:
            corners = _pdf_corners(one)
            tips = [*tips, _tip(corners)] if len(corners) == 3 else []
            if len(corners) == 4:
                sheet.rectangles.append(Box(*one.get_bounds()))
    return sheet


def _pdf_text(one: pypdfium2.PdfObject, texts: pypdfium2.PdfTextPage) -> str:
    size = pdfium.FPDFTextObj_GetText(one.raw, texts.raw, None, 0)
    letters = ctypes.create_string_buffer(size)
    pdfium.FPDFTextObj_GetText(
        one.raw, texts.raw, ctypes.cast(letters, ctypes.POINTER(ctypes.c_ushort)), size
    )
    return letters.raw[: size - 2].decode("utf-16-le").strip()


def _is_stroked(one: pypdfium2.PdfObject) -> bool:
    fill, stroke = ctypes.c_int(), ctypes.c_int()
    pdfium.FPDFPath_GetDrawMode(one.raw, fill, stroke)
    return bool(stroke.value)


def _pdf_points(one: pypdfium2.PdfObject) -> Iterator[tuple[int, Point]]:
    x, y = ctypes.c_float(), ctypes.c_float()
    count = pdfium.FPDFPath_CountSegments(one.raw)
    for number in range(count if count < 60 else 0):  # nothing measured is longer, and hatches are
        segment = pdfium.FPDFPath_GetPathSegment(one.raw, number)
        pdfium.FPDFPathSegment_GetPoint(segment, x, y)
        yield pdfium.FPDFPathSegment_GetType(segment), (x.value, y.value)


def _pdf_strokes(one: pypdfium2.PdfObject) -> Iterator[Stroke]:
    for (_, a), (kind, b) in pairwise(_pdf_points(one)):
        if kind == pdfium.FPDF_SEGMENT_LINETO:
            yield a, b


def _pdf_corners(one: pypdfium2.PdfObject) -> list[Point]:
    found = list(_pdf_points(one))
    if any(kind == pdfium.FPDF_SEGMENT_BEZIERTO for kind, _ in found):
        return []
    return list(dict.fromkeys(point for _, point in found))


# --- SVG ---


def read_svg(data: bytes, groups: int) -> tuple[Sheet, list[list[Measured]]]:
    """Read an SVG: its sheet, and the dimensions of each of its first groups. Texts have no boxes there."""
    root = ET.fromstring(data)
    wide, high = (float(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
    assert root.attrib["viewBox"] == f"0 0 {wide:g} {high:g}"
    sheet = Sheet(wide, high)
    texts = list(root.iter(f"{_SVG}text"))
    sheet.texts = [_svg_text(one, high) for one in texts]
    for path in root.iter(f"{_SVG}path"):
        corners = list(dict.fromkeys(point for chain in _svg_chains(path, high) for point in chain))
        if path.attrib["fill"] != "none" and len(corners) == 4:
            xs, ys = zip(*corners, strict=True)
            sheet.rectangles.append(Box(min(xs), min(ys), max(xs), max(ys)))
    drawn = root.findall(f"{_SVG}g")
    return sheet, [[_svg_dimension(one, high) for one in _dimensions_in(group)] for group in drawn[:groups]]


def _dimensions_in(group: ET.Element) -> list[ET.Element]:
    return [one for one in group.iter(f"{_SVG}g") if one.get("class") == "dimension"]


def _svg_text(one: ET.Element, high: float) -> Lettered:
    x, y, long, size = (float(one.attrib[key]) for key in ("x", "y", "textLength", "font-size"))
    left, base = x / MM_PER_POINT, (high - y) / MM_PER_POINT
    return Lettered(one.text or "", Box(left, base, left + long / MM_PER_POINT, base + size / MM_PER_POINT))


def _svg_dimension(group: ET.Element, high: float) -> Measured:
    (text,) = group.findall(f"{_SVG}text")
    paths = group.findall(f"{_SVG}path")
    tips = [_tip(_svg_chains(one, high)[0][:3]) for one in paths if one.attrib["fill"] != "none"]
    chains = [chain for one in paths if one.attrib["fill"] == "none" for chain in _svg_chains(one, high)]
    strokes = tuple(stroke for chain in chains for stroke in pairwise(chain))
    first, second = tips
    return Measured(_svg_text(text, high), strokes, math.dist(first, second))


def _svg_chains(path: ET.Element, high: float) -> list[list[Point]]:
    if "A" in path.attrib["d"]:
        return []
    chains = [re.findall(r"-?[\d.]+", chain) for chain in path.attrib["d"].split("M")[1:]]
    return [
        [
            (float(x) / MM_PER_POINT, (high - float(y)) / MM_PER_POINT)
            for x, y in zip(chain[::2], chain[1::2], strict=True)
        ]
        for chain in chains
    ]


# --- All formats ---


def _tip(corners: Sequence[Point]) -> Point:
    """Return the point of an arrowhead: the corner across from its shortest side."""
    sides = {math.dist(corners[n - 2], corners[n - 1]): corners[n] for n in range(3)}
    return sides[min(sides)]


_LENGTH = re.compile(
    r"(?P<mm>\d+(?:\.\d+)?) mm"
    r"|(?P<feet>\d+)'-(?P<more>\d+)(?: (?P<top>\d+)/(?P<bottom>\d+))?\""
    r"|(?:(?P<whole>\d+)-)?(?P<over>\d+)/(?P<under>\d+) in\b"
    r"|(?P<inches>\d+(?:\.\d+)?) in\b"
    r"|(?P<ft>\d+) ft\b|(?P<m>\d+) m\b"
)


def length_said(text: str) -> float | None:
    """Return the first length that a text says, inches; None where it says none."""
    found = _LENGTH.search(text)
    if found is None:
        return None
    said = {key: float(value) for key, value in found.groupdict().items() if value is not None}
    if "mm" in said or "m" in said:
        return (said.get("mm", 0.0) + 1000 * said.get("m", 0.0)) / 25.4
    inches = 12 * (said.get("feet", 0.0) + said.get("ft", 0.0)) + said.get("more", 0.0)
    part = said.get("top", 0.0) / said.get("bottom", 1.0) + said.get("over", 0.0) / said.get("under", 1.0)
    return inches + part + said.get("whole", 0.0) + said.get("inches", 0.0)


def says_its_length(text: str, real: float, display: Display, read: float) -> bool:
    """Whether a dimension says its length, inches, as far as it could be read.

    Half a step may be gained by rounding, and a step lost where less is the safe side, as of a clear width.
    """
    said = length_said(text)
    return said is not None and -display.step - read < said - real <= display.step / 2 + read


def scale_bar(sheet: Sheet, name: str) -> tuple[float, float]:
    """Return how long the bar under a scale's name is, points, and what it says at its end, inches."""
    chains = [chain for one in sheet.texts if one.text == name and (chain := _under(one, sheet.rectangles))]
    (quarters,) = chains
    left, right = min(one.left for one in quarters), max(one.right for one in quarters)
    bottom = min(one.bottom for one in quarters)
    at_its_end = (
        one.text
        for one in sheet.texts
        if 0 < bottom - one.box.bottom < 9 and left < one.box.right and one.box.left < right + 1.0
    )
    return right - left, next(length for text in at_its_end if (length := length_said(text)) is not None)


def _under(name: Lettered, rectangles: Sequence[Box]) -> list[Box]:
    """Return the chain of rectangles that begins under the beginning of a text."""
    chain: list[Box] = []
    for box in sorted(rectangles, key=lambda one: one.left):
        near = 0 < name.box.bottom - box.top < 6
        edge, off = (chain[-1].right, 0.01) if chain else (name.box.left, 2.0)
        if near and abs(box.left - edge) < off:
            chain.append(box)
    return chain
