"""Labels as PDF: ten to a letter sheet, each 4 x 2 in, two across and five down."""

import io
from collections.abc import Iterator, Sequence
from pathlib import Path

from reportlab.lib.pagesizes import letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import inch
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Paragraph

from configurator.documents.packing import Label
from configurator.export.painting import BOLD, FONT
from configurator.export.pdf import load_fonts
from configurator.export.table_rows_pdf import paragraph
from configurator.long_work import Progress, unwatched, watched
from configurator.project_file import write_whole

ACROSS, DOWN = 2, 5
WIDTH, HEIGHT = 4 * inch, 2 * inch
LEFT, TOP, PITCH = 5 / 32 * inch, 0.5 * inch, (4 + 3 / 16) * inch
"""Where the first label begins, and from one column to the next: a common sheet, from memory."""
AIR = 0.14 * inch
SIZES = (8.5, 7.5, 6.5, 5.5, 4.5)
"""Points of lettering: the largest in which a label has room for all its lines."""


def write_labels(labels: Sequence[Label], path: Path, progress: Progress = unwatched) -> None:
    """Write labels as a PDF, whole or not at all. Raises OSError, and Cancelled as `progress` does."""
    write_whole(path, labels_bytes(labels, progress))


def labels_bytes(labels: Sequence[Label], progress: Progress = unwatched) -> bytes:
    """Return labels as the bytes of a PDF; the same labels are the same bytes."""
    load_fonts()
    written = io.BytesIO()
    canvas = Canvas(written, pagesize=letter, invariant=1)
    canvas.setTitle("Labels")
    for place, label in enumerate(watched(labels, len(labels), progress)):
        at = place % (ACROSS * DOWN)
        if place and not at:
            canvas.showPage()
        x = LEFT + at % ACROSS * PITCH
        _draw(canvas, label, x + AIR, letter[1] - TOP - at // ACROSS * HEIGHT - AIR)
    canvas.showPage()
    canvas.save()
    return written.getvalue()


def _draw(canvas: Canvas, label: Label, x: float, top: float) -> None:
    """Draw one label, its upper left corner there."""
    room = WIDTH - 2 * AIR
    canvas.setFont(BOLD, 15 if len(label.title) < 24 else 9)
    canvas.drawString(x, top - 13, label.title[:60])
    canvas.setFont(FONT, 7.5)
    canvas.drawString(x, top - 23, label.place[:80])
    canvas.setFont(FONT, 5.5)
    canvas.drawString(x, top - HEIGHT + 2 * AIR, label.foot[:110])
    y = top - 27
    for text in _fitting(label.lines, room, HEIGHT - 2 * AIR - 34):
        y -= text.height
        text.drawOn(canvas, x, y)


def _fitting(lines: Sequence[str], width: float, height: float) -> list[Paragraph]:
    """Return lines in the largest lettering that has room; in the least the last ones may be left out."""
    for size in SIZES:
        made = list(_lettered(lines, width, size))
        if sum(text.height for text in made) <= height:
            return made
    shown: list[Paragraph] = []
    for text in made:
        if sum(one.height for one in shown) + text.height > height - SIZES[-1] * 1.2:
            break
        shown.append(text)
    return [*shown, *_lettered(["and more: see the order"], width, SIZES[-1])]


def _lettered(lines: Sequence[str], width: float, size: float) -> Iterator[Paragraph]:
    for number, line in enumerate(lines):
        style = ParagraphStyle("label", fontName=FONT if number else BOLD, fontSize=size, leading=size * 1.2)
        text = paragraph(line, style)
        text.height = text.wrap(width, 0)[1]
        yield text
