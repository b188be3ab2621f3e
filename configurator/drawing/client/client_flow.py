"""What the client's page says under its picture, line by line: sentences, table, recommendation."""

from collections.abc import Sequence
from itertools import accumulate

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Polyline, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.notes import broken, cut_to
from configurator.records import dataclass
from configurator.wording.client_words import ClientTable

GAP = 9.0
"""Between two parts of what is said, points."""
_LEADING = 1.4


@dataclass(frozen=True, slots=True)
class Flow:
    """The sentences between the picture and the notes, at one type size, with their height."""

    size: float
    sentences: tuple[str, ...]
    table: ClientTable
    recommended: tuple[str, ...]

    def height(self, width: float) -> float:
        """Return the height it takes in a width, points."""
        said = sum(len(broken(one, self.size, width)) for one in self.sentences)
        advised = 1 + sum(len(broken(one, self.size, width)) for one in self.recommended)
        rows = len(self.table.rows) + 1
        return _LEADING * self.size * (said + advised) + 1.5 * (self.size - 1.5) * rows + 4 * GAP

    def drawn(self, box: Box) -> tuple[list[Primitive], float]:
        """Set sentences, table and recommendation from the top of a rectangle down; return where they end."""
        found, base = _paragraphs(self.sentences, self.size, box, box.top)
        rows, base = _table(self.table, self.size - 1.5, box, base - GAP)
        base -= GAP + self.size
        heading = Text("A-ANNO-TTLB", (box.left, base), "What we recommend", self.size, bold=True)
        advice, base = _paragraphs(self.recommended, self.size, box, base - 0.3 * self.size)
        return [*found, *rows, heading, *advice], base - GAP


def _paragraphs(
    paragraphs: Sequence[str], size: float, box: Box, top: float
) -> tuple[list[Primitive], float]:
    lines = [line for words in paragraphs for line in broken(words, size, box.width)]
    places = [(box.left, top - size - row * _LEADING * size) for row in range(len(lines))]
    found: list[Primitive] = [
        Text("A-ANNO-TEXT", at, line, size) for at, line in zip(places, lines, strict=True)
    ]
    return found, top - _LEADING * size * len(lines)


def _table(table: ClientTable, size: float, box: Box, top: float) -> tuple[list[Primitive], float]:
    """Set the table with its columns as wide as their share of the longest texts."""
    row = 1.5 * size
    lefts = _columns(table, size, box)
    found: list[Primitive] = []
    for number, words in enumerate((table.headings, *table.rows)):
        base = top - size - number * row
        for at, (text, left, right) in enumerate(zip(words, lefts, lefts[1:], strict=False)):
            found += _written(text, (left, base), size, right - left - 5.0, number == 0, at == 0)
    under = top - row + 0.1 * size
    found.append(Polyline("A-ANNO-LEAD", ((box.left, under), (box.right, under))))
    return found, top - row * (len(table.rows) + 1)


def _written(text: str, at: Point, size: float, room: float, bold: bool, named: bool) -> list[Primitive]:
    layer = "A-ANNO-NOTE" if named else "A-ANNO-TEXT"
    return [Text(layer, at, cut_to(text, size, room, bold), size, bold=bold)] if text else []


def _columns(table: ClientTable, size: float, box: Box) -> list[float]:
    columns = zip(table.headings, *table.rows, strict=True)
    wide = [max(text_width(text, size, bold=True) for text in column) + 8.0 for column in columns]
    share = min(box.width / sum(wide), 1.25)
    return [box.left, *(box.left + share * x for x in accumulate(wide))]
