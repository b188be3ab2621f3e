"""The notes beside the details: what the hinge is, findings and cautions, what was assumed.

All of it is set as large as the column allows. What finds no room even at the least size is counted and said
to be missing, the least severe first; it is never dropped in silence.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from configurator.drawing.pages.lines_of_text import broken
from configurator.drawing.primitives import Primitive, Text
from configurator.drawing.view import Box

SIZES = (8.0, 7.5, 7.0, 6.5, 6.0, 5.5)
"""Type sizes tried, points; the last is the least that is read without a glass."""
_LEADING = 1.36
_BEFORE_HEADING, _AFTER_PARAGRAPH = 0.7, 0.32
"""Air before a heading and after a paragraph, of the type size."""
_ASCENT = 0.95


@dataclass(frozen=True, slots=True)
class Note:
    """A heading and its paragraphs; `warns` letters it in the warning ink."""

    heading: str
    paragraphs: tuple[str, ...]
    warns: bool = False


@dataclass(frozen=True, slots=True)
class _Line:
    text: str
    air: float
    """Air over it, of the type size."""
    bold: bool = False
    layer: str = "A-ANNO-TEXT"


def notes_column(notes: Sequence[Note], box: Box) -> tuple[Primitive, ...]:
    """Return the notes set in a rectangle of the page, from its top down."""
    for size in SIZES:
        lines = list(_lines(notes, size, box.width))
        if _height(lines, size) <= box.height:
            return _set(lines, size, box)
    return _set(_as_many_as_fit(notes, box), SIZES[-1], box)


def _lines(notes: Sequence[Note], size: float, width: float) -> Iterator[_Line]:
    for number, note in enumerate(note for note in notes if note.paragraphs):
        layer = "A-ANNO-REDL" if note.warns else "A-ANNO-TEXT"
        before = _BEFORE_HEADING if number else 0.0
        for line in broken(note.heading, size, width, bold=True):
            yield _Line(line, before, True, layer)
            before = 0.0
        for paragraph in note.paragraphs:
            air = 0.0 if paragraph is note.paragraphs[0] else _AFTER_PARAGRAPH
            for line in broken(paragraph, size, width):
                yield _Line(line, air)
                air = 0.0


def _height(lines: Sequence[_Line], size: float) -> float:
    return size * sum(_LEADING + line.air for line in lines)


def _as_many_as_fit(notes: Sequence[Note], box: Box) -> list[_Line]:
    """Leave out whole paragraphs from the end, and say how many."""
    size = SIZES[-1]
    kept, left_out = list(notes), 0
    while True:
        said = Note("Not shown here", (_left_out(left_out),), warns=True)
        lines = list(_lines([*kept, said] if left_out else kept, size, box.width))
        if _height(lines, size) <= box.height or not kept:
            return lines
        last = kept.pop()
        left_out += 1 if last.paragraphs else 0
        if len(last.paragraphs) > 1:
            kept.append(Note(last.heading, last.paragraphs[:-1], last.warns))


def _left_out(count: int) -> str:
    more = "1 more note has" if count == 1 else f"{count} more notes have"
    return f"{more} no room on this paper; a larger paper or the comparison shows all."


def _set(lines: Sequence[_Line], size: float, box: Box) -> tuple[Primitive, ...]:
    base = box.top - _ASCENT * size
    found: list[Primitive] = []
    for line in lines:
        base -= line.air * size
        found.append(Text(line.layer, (box.left, base), line.text, size, bold=line.bold))
        base -= _LEADING * size
    return tuple(found)
