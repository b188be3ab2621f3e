"""A document as PDF: landscape letter, the header row on every page, page x of y, always the same bytes."""

import io
from collections.abc import Sequence
from typing import Any
from xml.sax.saxutils import escape

from reportlab.lib import colors
from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.pagesizes import landscape, letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import inch
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import CondPageBreak, LongTable, Paragraph, SimpleDocTemplate, Spacer, TableStyle

from configurator.documents.document import Cell, Column, Document, Table, cell_words, headed
from configurator.export.painting import BOLD, FONT
from configurator.export.pdf import load_fonts
from configurator.long_work import Counter, Progress, unwatched

PAGE = landscape(letter)
MARGIN = 0.5 * inch
ROOM = PAGE[0] - 2 * MARGIN
SIZE, LEADING = 6.5, 8.0
PADDING = 2.5
WITH_TITLE = 70
"""Points of a table that stand on one page with its title: what has no room for them begins the next."""
_RIGHT = ("count", "inches", "degrees", "money")
_PLAIN = ParagraphStyle("cell", fontName=FONT, fontSize=SIZE, leading=LEADING, splitLongWords=1)
_NUMBER = ParagraphStyle("number", parent=_PLAIN, alignment=TA_RIGHT)
_HEAD = ParagraphStyle("head", parent=_PLAIN, fontName=BOLD)
_NUMBER_HEAD = ParagraphStyle("number head", parent=_HEAD, alignment=TA_RIGHT)
_TITLE = ParagraphStyle("title", parent=_HEAD, fontSize=13, leading=17)
_SUBTITLE = ParagraphStyle("subtitle", parent=_HEAD, fontSize=9, leading=14)
_LINES = TableStyle(
    [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("FONT", (0, 0), (-1, -1), FONT, SIZE, LEADING),
        ("BACKGROUND", (0, 0), (-1, 0), colors.Color(0.9, 0.9, 0.9)),
        ("LINEBELOW", (0, 0), (-1, -1), 0.25, colors.Color(0.6, 0.6, 0.6)),
        *((side, (0, 0), (-1, -1), PADDING) for side in ("LEFTPADDING", "RIGHTPADDING")),
        *((side, (0, 0), (-1, -1), 1.5) for side in ("TOPPADDING", "BOTTOMPADDING")),
    ]
)


def pdf_bytes(document: Document, progress: Progress = unwatched) -> bytes:
    """Return a document's sheets as the bytes of a PDF; every table repeats its header on every page.

    Every row is two steps: its cells are made, and later put on a page. Raises Cancelled when `progress`
    says not to go on.
    """
    load_fonts()
    rows = Counter(2 * sum(len(table.rows) for table in document.sheets), progress)
    written = io.BytesIO()
    pages = SimpleDocTemplate(
        written,
        pagesize=PAGE,
        leftMargin=MARGIN,
        rightMargin=MARGIN,
        topMargin=0.55 * inch,
        bottomMargin=0.6 * inch,
        title=document.title,
        author="",
        invariant=1,
    )
    story: list[Any] = [_paragraph(document.title, _TITLE), _paragraph(headed(document), _SUBTITLE)]
    for table in document.sheets:
        title = _paragraph(table.title, _SUBTITLE)
        story += [Spacer(1, 6), CondPageBreak(WITH_TITLE), title, _laid_out(table, rows)]
    story += [Spacer(1, 8), *(_paragraph(note, _PLAIN) for note in document.notes)]
    pages.build(story, canvasmaker=_numbered(headed(document)))
    return written.getvalue()


def _laid_out(table: Table, rows: Counter) -> Any:
    if not table.rows:
        return _paragraph("nothing", _PLAIN)
    columns = table.columns
    widths = _widths(columns)
    cells = []
    for row in table.rows:
        numeric = map(_numeric, columns)
        cells.append([_shown(*each) for each in zip(row, widths, numeric, strict=True)])
        rows.take()
    head = [_paragraph(column.heading, _NUMBER_HEAD if _numeric(column) else _HEAD) for column in columns]
    right = [("ALIGN", (n, 0), (n, -1), "RIGHT") for n, column in enumerate(columns) if _numeric(column)]
    style = TableStyle(right, parent=_LINES)
    kind = _counted(rows)
    return kind([head, *cells], colWidths=widths, repeatRows=1, splitInRow=1, style=style, hAlign="LEFT")


def _counted(rows: Counter) -> type[LongTable]:
    """Return a table that counts its rows when they are drawn; the parts it is split into do so too."""

    class Counted(LongTable):
        """One page of rows under the header."""

        def draw(self) -> None:
            super().draw()
            rows.take(self._nrows - 1)  # type: ignore[attr-defined]

    return Counted


def _widths(columns: Sequence[Column]) -> list[float]:
    """Return widths that fill the page: room for every word of a title first, the rest as cells need it."""
    least = [
        max(pdfmetrics.stringWidth(word, BOLD, SIZE) for word in column.heading.split()) + 2 * PADDING + 1
        for column in columns
    ]
    total = sum(column.width for column in columns)
    left = ROOM - sum(least)
    return [width + left * column.width / total for width, column in zip(least, columns, strict=True)]


def _numeric(column: Column) -> bool:
    return column.kind in _RIGHT


def _shown(cell: Cell, width: float, numeric: bool) -> Any:
    """Return a cell as plain text where it goes on one line, else as text that is broken into lines."""
    text = cell_words(cell)
    fits = pdfmetrics.stringWidth(text, FONT, SIZE) <= width - 2 * PADDING
    if fits and "\n" not in text:
        return text
    return _paragraph(text, _NUMBER if numeric else _PLAIN)


def _paragraph(text: str, style: ParagraphStyle) -> Paragraph:
    return Paragraph(escape(text).replace("\n", "<br/>"), style)


def _numbered(job: str) -> type[Canvas]:
    """Return a canvas that writes `page x of y` when it knows how many there are."""

    class Numbered(Canvas):
        """Keeps every page until the last, and only then writes its foot."""

        def __init__(self, *given: Any, **options: Any) -> None:
            super().__init__(*given, **options)
            self._kept: list[dict[str, Any]] = []

        def showPage(self) -> None:  # noqa: N802 - the library's own name
            self._kept.append(dict(self.__dict__))
            self._startPage()  # type: ignore[attr-defined]

        def save(self) -> None:
            for number, page in enumerate(self._kept, 1):
                self.__dict__.update(page)
                _foot(self, job, number, len(self._kept))
                super().showPage()
            super().save()

    return Numbered


def _foot(canvas: Canvas, job: str, number: int, pages: int) -> None:
    canvas.setFont(FONT, SIZE)
    canvas.drawString(MARGIN, 0.35 * inch, job[:150])
    canvas.drawRightString(PAGE[0] - MARGIN, 0.35 * inch, f"page {number} of {pages}")
