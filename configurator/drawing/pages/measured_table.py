"""What was measured of each width, as a table under the plans.

No number of a sheet depends on a dimension having found room for its words.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Polyline, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.comparison import Comparison, comparisons
from configurator.drawing.pages.lines_of_text import cut_to
from configurator.study import Study
from configurator.units import Display

SIZE = 6.5
_LEAST = 5.5
_ROW = 1.32
"""From one row to the next, of the type size."""
_GUTTER = 10.0
_NONE = "·"


@dataclass(frozen=True, slots=True)
class MeasuredTable:
    """Headings, the first of them over the facts, and a row of texts for each fact."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    size: float = SIZE

    def height(self) -> float:
        """Return how high it stands, points."""
        return _ROW * self.size * (len(self.rows) + 1) + 3.0

    def fits(self, width: float) -> bool:
        """Whether so many points hold every column, lettered as small as may be."""
        return sum(self._widths(_LEAST)) <= width

    def drawn(self, box: Box) -> tuple[Primitive, ...]:
        """Return the table from the top of a rectangle down, lettered so that its width holds it."""
        size = self.size
        while size > _LEAST and sum(self._widths(size)) > box.width:
            size -= 0.5
        widths = self._widths(size)
        lefts = [box.left, *(box.left + x for x in accumulate(widths))]
        found: list[Primitive] = []
        base = box.top - size
        for row in (self.headings, *self.rows):
            bold = row is self.headings
            for left, room, text in zip(lefts, widths, row, strict=False):
                words = cut_to(text, size, min(room - 4.0, box.right - left), bold)
                found += [Text("A-ANNO-TEXT", (left, base), words, size, bold=bold)] if words else []
            base -= _ROW * size + (2.0 if bold else 0.0)
        under = box.top - _ROW * size - 1.5
        return (*found, Polyline("A-ANNO-LEAD", ((box.left, under), (box.right, under))))

    def _widths(self, size: float) -> list[float]:
        columns = zip(self.headings, *self.rows, strict=True)
        bolder = [text_width(heading, size, bold=True) for heading in self.headings]
        return [
            max(bold, *(text_width(text, size) for text in column[1:])) + _GUTTER
            for column, bold in zip(columns, bolder, strict=True)
        ]


def measured_table(study: Study, display: Display, size: float = SIZE, over: str = "") -> MeasuredTable:
    """Return the table: facts down in the trade's words, every leaf's widths across; size in points.

    `over` stands over the facts.
    """
    tables = comparisons(study, display)
    headings = [_heading(table, width, table.leaf) for table in tables for width in table.widths]
    keys = list(dict.fromkeys(row.key for table in tables for row in table.rows))
    short = len(headings) > 2
    rows = [_row(key, tables, short) for key in keys]
    return MeasuredTable((over, *headings), tuple(rows), size)


def _heading(table: Comparison, width: str, leaf: str) -> str:
    return f"{width} wide hinge" if table.leaf == "single" else f"{leaf}, {width}"


def _row(key: str, tables: Sequence[Comparison], short: bool) -> tuple[str, ...]:
    """Return one fact of every leaf and width; a leaf that has no such fact gets a dot."""
    name = next(row.trade for table in tables for row in table.rows if row.key == key)
    values: list[str] = []
    for table in tables:
        found = next((row.values for row in table.rows if row.key == key), (_NONE,) * len(table.widths))
        values += [value.partition(",")[0] if short else value for value in found]
    return (name, *values)
