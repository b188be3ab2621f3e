"""A small table on a page: columns under headings, some of which stand over several of them. Points."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Polyline, Primitive, Text

SIZES = (7.0, 6.5, 6.0, 5.5)
"""Type sizes tried, points."""
_ROW = 1.5
"""From one row to the next, of the type size."""
_GUTTER, _LEAST_GUTTER = 10.0, 4.0
"""Between two columns, and where the width is short even at the least size; points."""


@dataclass(frozen=True, slots=True)
class SmallTable:
    """Headings (text, columns it spans), a heading for each column, and rows of texts."""

    over: tuple[tuple[str, int], ...]
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    def height(self) -> float:
        """Return how high it stands at the largest size, points."""
        return _ROW * SIZES[0] * (len(self.rows) + 2)

    def _widths(self, size: float, gutter: float) -> list[float]:
        columns = zip(self.headings, *self.rows, strict=True)
        widths = [max(text_width(text, size) for text in column) for column in columns]
        first = 0
        for words, span in self.over:
            lack = text_width(words, size) - sum(widths[first : first + span]) - gutter * (span - 1)
            for column in range(first, first + span):
                widths[column] += max(lack, 0.0) / span
            first += span
        return widths

    def drawn(self, corner: Point, width: float) -> tuple[Primitive, ...]:
        """Return the table with its upper left corner there, lettered so small that the width holds it."""
        size, gutter = self._fitted(width)
        steps = (wide + gutter for wide in self._widths(size, gutter))
        lefts = [corner[0], *(corner[0] + x for x in accumulate(steps))]
        base = corner[1] - size
        found = [*self._over(lefts, base, size)]
        for words in (self.headings, *self.rows):
            base -= _ROW * size
            layer = "A-ANNO-NOTE" if words is self.headings else "A-ANNO-TEXT"
            found += [
                Text(layer, (x, base), text, size) for x, text in zip(lefts, words, strict=False) if text
            ]
        under = corner[1] - 2.9 * size
        found.append(Polyline("A-ANNO-LEAD", ((corner[0], under), (lefts[-1] - gutter, under))))
        return tuple(found)

    def _fitted(self, width: float) -> tuple[float, float]:
        """Return the largest size that the width holds, else the least with what is left between columns."""
        for size in SIZES:
            if sum(self._widths(size, _GUTTER)) + _GUTTER * (len(self.headings) - 1) <= width:
                return size, _GUTTER
        left = width - sum(self._widths(SIZES[-1], _LEAST_GUTTER))
        return SIZES[-1], max(left / (len(self.headings) - 1), _LEAST_GUTTER)

    def _over(self, lefts: Sequence[float], base: float, size: float) -> list[Primitive]:
        firsts = [0, *accumulate(span for _, span in self.over)]
        return [
            Text("A-ANNO-TEXT", (lefts[first], base), words, size)
            for first, (words, _) in zip(firsts, self.over, strict=False)
            if words
        ]
