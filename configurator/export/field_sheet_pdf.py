"""A field sheet as PDF: blanks to measure on site, each beside the value so far; to be printed."""

import io
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import islice
from pathlib import Path

from reportlab.lib.pagesizes import letter
from reportlab.lib.units import inch
from reportlab.lib.utils import simpleSplit
from reportlab.pdfgen.canvas import Canvas

from configurator.documents.document import headed_facts
from configurator.documents.field_sheet import FieldBlock, Measure, block_count, field_blocks
from configurator.export.painting import BOLD, FONT
from configurator.export.pdf import QuickCanvas, load_fonts, width_of
from configurator.long_work import Counter, Progress, unwatched
from configurator.model import Job
from configurator.project_file import write_whole
from configurator.units import Display

PAGE = letter
MARGIN = 0.5 * inch
WIDE = PAGE[0] - 2 * MARGIN
TOP, BOTTOM = PAGE[1] - 1.03 * inch, 0.7 * inch
SIZE, LEADING = 7.0, 8.0
ROW = 19.0
"""Points: room enough to write by hand on a site."""
HEAD = 25.0
BETWEEN = 12.0
GUTTER = 14.0
COLUMN = (WIDE - GUTTER) / 2
NAME, VALUE = 0.43 * COLUMN, 0.23 * COLUMN
TICK = 6.0
EXPLAINED = (
    "Write what is measured on the line; lengths in {unit}. Beside it stands the value so far: in brackets "
    "where nobody gave it and the usual value is taken, a question mark where none is known."
)


def write_field_sheet(
    job: Job, path: Path, display: Display | None = None, progress: Progress = unwatched
) -> None:
    """Write the field sheet of a job, whole or not at all; `progress` is told of every opening.

    Raises OSError when the file cannot be written, Cancelled when `progress` says not to go on.
    """
    write_whole(path, field_sheet_bytes(job, display, progress))


def field_sheet_bytes(job: Job, display: Display | None = None, progress: Progress = unwatched) -> bytes:
    """Return the field sheet of a job as the bytes of a PDF, always the same. Raises Cancelled.

    Its blocks are made twice, once to count the pages: of a large job they fill more memory than they take
    time.
    """
    load_fonts()
    shown = display or Display()
    counter = Counter(2 * block_count(job.openings), progress)
    written = io.BytesIO()
    canvas = QuickCanvas(written, pagesize=PAGE, invariant=1)
    canvas.setTitle("Field sheet")
    counts = _blocks_per_page(field_blocks(job.openings, shown), counter)
    blocks = field_blocks(job.openings, shown)
    for number, count in enumerate(counts, 1):
        _page(canvas, headed_facts(job.job), shown, (number, len(counts)))
        _blocks(canvas, islice(blocks, count), counter)
        canvas.showPage()
    canvas.save()
    return written.getvalue()


def _blocks_per_page(blocks: Iterable[FieldBlock], counter: Counter) -> list[int]:
    """Return how many blocks go on each page, none cut in two; a job without openings has one page."""
    counts = [0]
    room = TOP - BOTTOM
    for block in blocks:
        counter.take(not block.continued)
        height = _height(block)
        if height > room and counts[-1]:
            counts.append(0)
            room = TOP - BOTTOM
        counts[-1] += 1
        room -= height + BETWEEN
    return counts


def _height(block: FieldBlock) -> float:
    return HEAD + ROW * _rows(block)


def _rows(block: FieldBlock) -> int:
    return -(-len(block.measures) // 2)


def _page(canvas: Canvas, job: str, shown: Display, number: tuple[int, int]) -> None:
    """Draw what every page has: title, job, how it is filled in, who measured, and which page it is."""
    top = PAGE[1] - MARGIN
    canvas.setFont(BOLD, 12)
    canvas.drawString(MARGIN, top - 6, "Field sheet")
    canvas.setFont(BOLD, 8)
    canvas.drawRightString(PAGE[0] - MARGIN, top - 6, _cut(job, BOLD, 8, 0.75 * WIDE))
    canvas.setFont(FONT, SIZE)
    unit = "millimetres" if shown.metric else "inches"
    for index, line in enumerate(_fitted(EXPLAINED.format(unit=unit), WIDE)):
        canvas.drawString(MARGIN, top - 20 - LEADING * index, line)
    foot = 0.4 * inch
    canvas.drawRightString(PAGE[0] - MARGIN, foot, f"page {number[0]} of {number[1]}")
    canvas.setLineWidth(0.4)
    for start, wide, words in ((MARGIN, 150, "Measured by"), (MARGIN + 225, 80, "Date")):
        canvas.drawString(start, foot, words)
        canvas.line(start + 52, foot - 1, start + 52 + wide, foot - 1)


def _blocks(canvas: Canvas, blocks: Iterable[FieldBlock], counter: Counter) -> None:
    top = TOP
    for block in blocks:
        _block(canvas, block, top)
        counter.take(not block.continued)
        top -= _height(block) + BETWEEN
    if top == TOP:
        canvas.drawString(MARGIN, top - LEADING, "This job has no openings.")


def _block(canvas: Canvas, block: FieldBlock, top: float) -> None:
    mark = f"{block.mark}  {block.which}".strip()
    canvas.setLineWidth(0.9)
    canvas.line(MARGIN, top, MARGIN + WIDE, top)
    canvas.setFont(BOLD, 10)
    mark = _cut(mark, BOLD, 10, 0.4 * WIDE)
    canvas.drawString(MARGIN, top - 13, mark)
    canvas.setFont(FONT, SIZE)
    start = MARGIN + width_of(mark, BOLD, 10) + 10
    _lines(canvas, block.words, start, top - 12, MARGIN + WIDE - start)
    rows = _rows(block)
    for index, measure in enumerate(block.measures):
        left = MARGIN + (COLUMN + GUTTER) * (index // rows)
        _measure(canvas, measure, left, top - HEAD - ROW * (index % rows))


def _measure(canvas: Canvas, measure: Measure, left: float, top: float) -> None:
    """Draw one measure: name, value so far, and a line to write on or boxes to tick."""
    canvas.setFont(FONT, SIZE)
    _lines(canvas, measure.name, left, top - 8, NAME - 4)
    _lines(canvas, _so_far(measure), left + NAME, top - 8, VALUE - 4)
    start, end = left + NAME + VALUE, left + COLUMN
    canvas.setLineWidth(0.4)
    if measure.ticks:
        _ticks(canvas, measure.ticks, start, end, top - 11)
    else:
        canvas.line(start, top - 14, end, top - 14)


def _so_far(measure: Measure) -> str:
    if measure.how == "not known":
        return "?"
    return f"({measure.value})" if measure.how == "assumed" else measure.value


def _ticks(canvas: Canvas, words: Sequence[str], start: float, end: float, base: float) -> None:
    """Draw a box before each word, closer together where they are long."""
    size = 6.0
    wide = [width_of(word, FONT, size) + TICK + 2 for word in words]
    gap = max((end - start - sum(wide)) / max(len(words) - 1, 1), 1.0)
    canvas.setFont(FONT, size)
    left = start
    for word, width in zip(words, wide, strict=True):
        canvas.rect(left, base - 1, TICK, TICK)
        canvas.drawString(left + TICK + 2, base, word)
        left += width + min(gap, 12.0)


def _lines(canvas: Canvas, text: str, left: float, top: float, width: float) -> None:
    """Write a text on at most two lines; what does not go there ends in an ellipsis."""
    for number, line in enumerate(_fitted(text, width)):
        canvas.drawString(left, top - LEADING * number, line)


@lru_cache(maxsize=4096)
def _fitted(text: str, width: float) -> tuple[str, ...]:
    """Return a text in lines of that many points; most texts of a field sheet stand on it many times."""
    lines = simpleSplit(text, FONT, SIZE, width)
    lines = [lines[0], " ".join(lines[1:])] if len(lines) > 2 else lines
    return tuple(_cut(line, FONT, SIZE, width) for line in lines)


def _cut(text: str, font: str, size: float, width: float) -> str:
    """Return the text, cut off with an ellipsis where it is longer than there is room."""
    if width_of(text, font, size) <= width:
        return text
    shorter = text[: int(len(text) * width / width_of(text, font, size)) + 1]
    while shorter and width_of(f"{shorter}…", font, size) > width:
        shorter = shorter[:-1]
    return f"{shorter.rstrip()}…"
