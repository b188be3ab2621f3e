"""Tables on a page, in points: one with headings over several columns, and what was measured of each width.

No number of a sheet depends on a dimension having found room for its words: it stands in the table as well.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Polyline, Primitive, Text
from configurator.drawing.base.view import Box
from configurator.drawing.pages.notes import Marks, cut_to
from configurator.drawing.plan.drawn_leaf import thing_label
from configurator.model import Obstruction
from configurator.rules.hinge.answers import StopPlace
from configurator.rules.wording import obstruction
from configurator.study import Study
from configurator.tables import ObstructionKindRow, row_of
from configurator.units import Display
from configurator.wording.comparison import Comparison, comparisons

SIZES = (7.0, 6.5, 6.0, 5.5)
"""Type sizes tried, points."""
_ROW = 1.5
"""From one row to the next, of the type size."""
_GUTTER, _LEAST_GUTTER = 10.0, 4.0
"""Between two columns, and where the width is short even at the least size; points."""
TABLE_SIZE = 6.5
_LEAST = 5.5
_MEASURED_ROW = 1.32
"""From one row to the next, of the type size."""
_MEASURED_GUTTER = 10.0
_NONE = "·"


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


@dataclass(frozen=True, slots=True)
class MeasuredTable:
    """Headings, the first of them over the facts, and a row of texts for each fact."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    size: float = TABLE_SIZE
    gutter: float = _MEASURED_GUTTER

    def height(self) -> float:
        """Return how high it stands, points."""
        return _MEASURED_ROW * self.size * (len(self.rows) + 1) + 3.0

    def fits(self, width: float) -> bool:
        """Whether every column fits a width in points at the least type size."""
        return self.width(_LEAST) <= width

    def width(self, size: float) -> float:
        """Return how wide it stands at a type size, points."""
        return sum(self._widths(size))

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
            base -= _MEASURED_ROW * size + (2.0 if bold else 0.0)
        under = box.top - _MEASURED_ROW * size - 1.5
        return (*found, Polyline("A-ANNO-LEAD", ((box.left, under), (box.right, under))))

    def _widths(self, size: float) -> list[float]:
        columns = zip(self.headings, *self.rows, strict=True)
        bolder = [text_width(heading, size, bold=True) for heading in self.headings]
        return [
            max(bold, *(text_width(text, size) for text in column[1:]), 0.0) + self.gutter
            for column, bold in zip(columns, bolder, strict=True)
        ]


def measured_table(study: Study, display: Display, size: float = TABLE_SIZE, over: str = "") -> MeasuredTable:
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
    if table.other_ways:
        return width if table.leaf == "single" else f"{table.leaf}, {width}"
    return f"{width} wide hinge" if table.leaf == "single" else f"{leaf}, {width}"


def _row(key: str, tables: Sequence[Comparison], short: bool) -> tuple[str, ...]:
    """Return one fact of every leaf and width; a leaf that has no such fact gets a dot."""
    name = next(row.trade for table in tables for row in table.rows if row.key == key)
    values: list[str] = []
    for table in tables:
        found = next((row.values for row in table.rows if row.key == key), (_NONE,) * len(table.widths))
        values += [value.partition(",")[0] if short else value for value in found]
    return (name, *values)


STANDING = ("", "What stands there", "From frame", "Out", "Long", "Off wall", "Heights")
_STANDING_GUTTER = 6.0


def standing_table(study: Study, display: Display, size: float = TABLE_SIZE) -> MeasuredTable:
    """Return every thing along the wall and the door stop with its own figures; a column for what any has.

    The first column has the key that stands for a name in a plan which has no room for it.
    """
    marks = Marks(study.filled)
    rows = [
        (str(key + 1), *_thing_cells(thing, f"obstructions.{key}", marks, display))
        for key, thing in enumerate(study.opening.obstructions)
    ]
    stops = [one.door_stop for one in study.candidates if one.door_stop]
    rows += dict.fromkeys(_stop_cells(one, marks, display) for one in stops)
    kept = [n for n in range(len(STANDING)) if any(row[n] for row in rows)]
    return MeasuredTable(
        tuple(STANDING[n] for n in kept),
        tuple(tuple(row[n] for n in kept) for row in rows),
        size,
        _STANDING_GUTTER,
    )


def keys_of(study: Study, display: Display) -> dict[str, str]:
    """Return the keys of things along the wall by what a plan calls them."""
    found: dict[str, list[str]] = {}
    for key, thing in enumerate(study.opening.obstructions, 1):
        found.setdefault(thing_label(thing, display), []).append(str(key))
    return {label: ", ".join(keys) for label, keys in found.items()}


def _thing_cells(thing: Obstruction, path: str, marks: Marks, display: Display) -> tuple[str, ...]:
    """Return the row of a thing along the wall; what nobody gave of it is marked."""
    long = thing.diameter or thing.length
    start, projection, diameter = (marks.of(f"{path}.{key}") for key in ("start", "projection", "diameter"))
    fills = row_of(ObstructionKindRow, thing.kind).outline == "wall"
    out = "runs out" if fills else ""
    return (
        obstruction(thing.kind) + (", latch side" if thing.side == "latch" else ""),
        display.exact(thing.start or 0.0) + start,
        out if thing.projection is None else display.exact(thing.projection) + projection,
        "runs on" if long is None else f"{display.exact(long)}{' round' if thing.diameter else ''}{diameter}",
        display.exact(thing.offset) if thing.offset else "",
        _heights(thing, display),
    )


def _stop_cells(stop: StopPlace, marks: Marks, display: Display) -> tuple[str, ...]:
    """Return the row of a door stop."""
    place = display.exact(stop.from_frame)
    out = display.exact(stop.projection) + marks.of("door_stop.projection")
    return ("", stop.kind, place, out, "", "", f"at {display.exact(stop.height)}")


def _heights(thing: Obstruction, display: Display) -> str:
    if thing.top is None:
        return f"from {display.exact(thing.bottom)} up" if thing.bottom else ""
    low = display.exact(thing.bottom or 0.0).rsplit(" ", 1)[0]
    return f"{low} to {display.exact(thing.top)}"
