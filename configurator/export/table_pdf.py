"""A document as PDF: landscape letter, the header row on every page, page x of y; and sheets of labels.

The same document, or the same labels, are always the same bytes.
"""

import io
from collections.abc import Iterator, Sequence
from typing import Any

from reportlab.lib.pagesizes import landscape, letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import inch
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import CondPageBreak, Flowable, PageBreak, Paragraph, SimpleDocTemplate, Spacer

from configurator.documents.document import FOR_THE_OFFICE, Document, Table, headed
from configurator.documents.packing import Label
from configurator.export.painting import BOLD, FONT
from configurator.export.pdf import QuickCanvas, load_fonts
from configurator.export.table_rows_pdf import HEAD, LINE, PLAIN, SIZE, laid_out, paragraph
from configurator.long_work import Counter, Progress, unwatched, watched

PAGE = landscape(letter)
MARGIN = 0.5 * inch
TOP, BOTTOM, FRAME = 0.55 * inch, 0.6 * inch, 6.0
ROOM = PAGE[0] - 2 * MARGIN - 2 * FRAME, PAGE[1] - TOP - BOTTOM - 2 * FRAME
WITH_TITLE = 70
"""Points of a table that stand on one page with its title: what has no room for them begins the next."""
_TITLE = ParagraphStyle("title", parent=HEAD, fontSize=13, leading=17)
_SUBTITLE = ParagraphStyle("subtitle", parent=HEAD, fontSize=9, leading=14)
_COVER = ParagraphStyle("cover", parent=HEAD, fontSize=26, leading=34)
_COVER_JOB = ParagraphStyle("cover job", parent=HEAD, fontSize=16, leading=22)
_FACT_SIZE, _FACT_LEADING = 8.0, 11.0


def pdf_bytes(document: Document, progress: Progress = unwatched) -> bytes:
    """Return a document's sheets as the bytes of a PDF; every table repeats its header on every page.

    Every row is two steps: its cells are made, and later put on a page. Raises Cancelled when `progress`
    says not to go on.
    """
    load_fonts()
    tables = (*document.sheets, *document.office)
    rows = Counter(2 * sum(len(table.rows) + len(table.totals) for table in tables), progress)
    written, index = io.BytesIO(), Index()
    pages = SimpleDocTemplate(
        written,
        pagesize=PAGE,
        leftMargin=MARGIN,
        rightMargin=MARGIN,
        topMargin=TOP,
        bottomMargin=BOTTOM,
        title=document.title,
        author="",
        invariant=1,
    )
    story = [*_front(document, index), *_parts(document, rows, index), *_office(document, rows)]
    pages.build(story, canvasmaker=_numbered(headed(document), index))
    return written.getvalue()


def _front(document: Document, index: "Index") -> Iterator[Flowable]:
    """Yield what stands over the first table, or the cover."""
    if document.cover:
        yield Spacer(1, 40)
        yield paragraph(document.title, _COVER)
        yield paragraph(dict(document.heading).get("Job", ""), _COVER_JOB)
        yield Spacer(1, 12)
        facts = [fact for fact in (*document.heading, *document.head) if fact[0] != "Job"]
        yield Facts(facts, columns=1)
        yield Spacer(1, 16)
        yield index
        return
    yield paragraph(document.title, _TITLE)
    yield paragraph(headed(document), _SUBTITLE)
    if document.head:
        yield Facts(document.head, columns=3)


def _parts(document: Document, rows: Counter, index: "Index") -> Iterator[Flowable]:
    for table in document.sheets:
        if document.cover:
            yield PageBreak()
            yield Begun(index, table.title)
        yield from _table(table, rows)
    yield from _notes(document.notes)


def _office(document: Document, rows: Counter) -> Iterator[Flowable]:
    """Yield what is not for those who get the document, on a page of its own at its end."""
    if not document.office and not document.office_notes:
        return
    yield PageBreak()
    yield paragraph(FOR_THE_OFFICE, _TITLE)
    yield from _notes(document.office_notes)
    for table in document.office:
        yield from _table(table, rows)


def _table(table: Table, rows: Counter) -> Iterator[Flowable]:
    yield Spacer(1, 6)
    yield CondPageBreak(WITH_TITLE)
    yield paragraph(table.title, _SUBTITLE)
    yield laid_out(table, ROOM, rows) if table.rows else paragraph("nothing", PLAIN)


def _notes(notes: Sequence[str]) -> Iterator[Flowable]:
    if notes:
        yield Spacer(1, 8)
        yield from (paragraph(note, PLAIN) for note in notes)


class Facts(Flowable):
    """Facts with their names, in columns, read down each."""

    def __init__(self, facts: Sequence[tuple[str, str]], columns: int) -> None:
        super().__init__()
        self.facts, self.columns = facts, columns

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Return how wide and high it is."""
        self.width = aW
        named, room = 90.0, aW / self.columns - 100.0
        style = ParagraphStyle("fact", parent=PLAIN, fontSize=_FACT_SIZE, leading=_FACT_LEADING)
        made = [(name, paragraph(value, style)) for name, value in self.facts]
        self._cells = [(name, text, text.wrap(room, aH)[1]) for name, text in made]
        self._named = named
        each = -(-len(self._cells) // self.columns)
        self._by_column = [self._cells[n : n + each] for n in range(0, len(self._cells), max(each, 1))]
        self.height = 4 + max((sum(high for *_, high in cells) for cells in self._by_column), default=0.0)
        return self.width, self.height

    def draw(self) -> None:
        """Draw the facts from the top down."""
        for place, cells in enumerate(self._by_column):
            x, y = place * self.width / self.columns, self.height
            for name, text, high in cells:
                self.canv.setFont(BOLD, _FACT_SIZE)
                self.canv.drawString(x, y - _FACT_SIZE, name)
                text.drawOn(self.canv, x + self._named, y - high)
                y -= high


class Index(Flowable):
    """The index of a cover. Where the parts begin is known at the end: it is drawn with the feet of pages."""

    LINE = 14.0

    def __init__(self) -> None:
        super().__init__()
        self.parts: list[tuple[str, int]] = []
        self._at: tuple[float, float] | None = None

    def wrap(self, aW: float, _: float) -> tuple[float, float]:
        """Return how wide it is; nothing follows it on a cover, so it takes no height."""
        return aW, 0

    def draw(self) -> None:
        """Note where it stands."""
        self._at = self.canv.absolutePosition(0, 0)

    def draw_late(self, canvas: Canvas) -> None:
        """Draw a line for each part with its page."""
        if self._at is None:
            return
        x, y = self._at
        canvas.setFont(BOLD, 10)
        canvas.drawString(x, y - self.LINE, "Contents")
        canvas.setFont(FONT, 9)
        canvas.setStrokeColor(LINE)
        for title, page in self.parts:
            y -= self.LINE
            canvas.drawString(x, y - self.LINE, title)
            canvas.drawRightString(x + 300, y - self.LINE, str(page))
            canvas.line(x, y - self.LINE - 3, x + 300, y - self.LINE - 3)


class Begun(Flowable):
    """Nothing to see: notes on which page a part begins."""

    def __init__(self, index: Index, title: str) -> None:
        super().__init__()
        self._index, self._title = index, title
        self.width = self.height = 0

    def draw(self) -> None:
        """Note the page."""
        self._index.parts.append((self._title, self.canv.getPageNumber()))


def _numbered(job: str, index: Index) -> type[Canvas]:
    """Return a canvas that writes `page x of y` when it knows how many there are."""

    class Numbered(QuickCanvas):
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
                if number == 1:
                    index.draw_late(self)
                super().showPage()
            super().save()

    return Numbered


def _foot(canvas: Canvas, job: str, number: int, pages: int) -> None:
    canvas.setFont(FONT, SIZE)
    canvas.drawString(MARGIN, 0.35 * inch, job[:150])
    canvas.drawRightString(PAGE[0] - MARGIN, 0.35 * inch, f"page {number} of {pages}")


# --- Labels: ten to a letter sheet, each 4 x 2 in, two across and five down ---

ACROSS, DOWN = 2, 5
LABEL_WIDTH, LABEL_HEIGHT = 4 * inch, 2 * inch
LABELS_LEFT, LABELS_TOP, PITCH = 5 / 32 * inch, 0.5 * inch, (4 + 3 / 16) * inch
"""Where the first label begins, and from one column to the next: a common sheet, from memory."""
AIR = 0.14 * inch
LABEL_SIZES = (8.5, 7.5, 6.5, 5.5, 4.5)
"""Points of lettering: the largest in which a label has room for all its lines."""


def labels_bytes(labels: Sequence[Label], progress: Progress = unwatched) -> bytes:
    """Return labels as the bytes of a PDF; the same labels are the same bytes."""
    load_fonts()
    written = io.BytesIO()
    canvas = QuickCanvas(written, pagesize=letter, invariant=1)
    canvas.setTitle("Labels")
    for place, label in enumerate(watched(labels, len(labels), progress)):
        at = place % (ACROSS * DOWN)
        if place and not at:
            canvas.showPage()
        x = LABELS_LEFT + at % ACROSS * PITCH
        _draw(canvas, label, x + AIR, letter[1] - LABELS_TOP - at // ACROSS * LABEL_HEIGHT - AIR)
    canvas.showPage()
    canvas.save()
    return written.getvalue()


def _draw(canvas: Canvas, label: Label, x: float, top: float) -> None:
    """Draw one label, its upper left corner there."""
    room = LABEL_WIDTH - 2 * AIR
    canvas.setFont(BOLD, 15 if len(label.title) < 24 else 9)
    canvas.drawString(x, top - 13, label.title[:60])
    canvas.setFont(FONT, 7.5)
    canvas.drawString(x, top - 23, label.place[:80])
    canvas.setFont(FONT, 5.5)
    canvas.drawString(x, top - LABEL_HEIGHT + 2 * AIR, label.foot[:110])
    y = top - 27
    for text in _fitting(label.lines, room, LABEL_HEIGHT - 2 * AIR - 34):
        y -= text.height
        text.drawOn(canvas, x, y)


def _fitting(lines: Sequence[str], width: float, height: float) -> list[Paragraph]:
    """Return lines in the largest lettering that has room; in the least the last ones may be left out."""
    for size in LABEL_SIZES:
        made = list(_lettered(lines, width, size))
        if sum(text.height for text in made) <= height:
            return made
    shown: list[Paragraph] = []
    for text in made:
        if sum(one.height for one in shown) + text.height > height - LABEL_SIZES[-1] * 1.2:
            break
        shown.append(text)
    return [*shown, *_lettered(["and more: see the order"], width, LABEL_SIZES[-1])]


def _lettered(lines: Sequence[str], width: float, size: float) -> Iterator[Paragraph]:
    for number, line in enumerate(lines):
        style = ParagraphStyle("label", fontName=FONT if number else BOLD, fontSize=size, leading=size * 1.2)
        text = paragraph(line, style)
        text.height = text.wrap(width, 0)[1]
        yield text
