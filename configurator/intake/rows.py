"""One row of a schedule to what it says of an opening: faults name their cell, assumptions are told."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from types import MappingProxyType
from typing import Any

from configurator.intake.columns import Column, Reading
from configurator.intake.fields import FIELDS
from configurator.intake.reading_cells import READERS
from configurator.intake.refused import (
    CellError,
    Question,
    is_date,
    quoted,
    refuse_long,
    refuse_what_no_one_wrote,
)
from configurator.intake.sheet import SheetRow
from configurator.intake.sizes import Size, settled, without_leaves
from configurator.intake.table import ScheduleTable
from configurator.intake.words import says_nothing
from configurator.long_work import ROWS_A_STEP, Steps
from configurator.units import format_feet, format_size

SIZES_AGREE = 1 / 16
"""Inches. A size written in words may be rounded that much against width and height beside it."""


@dataclass(frozen=True, slots=True)
class CellFault:
    """Why a cell is not taken. `place` is its column from 0, None where the row as a whole is meant."""

    line: int
    place: int | None
    heading: str
    reason: str
    question: Question = ""

    def __str__(self) -> str:
        """Return the one line a person reads: which line, which column, why."""
        where = f", {' '.join(self.heading.split())}" if self.heading else ""
        return f"line {self.line}{where}: {self.reason}"


@dataclass(frozen=True, slots=True)
class RowRead:
    """What a row says: `values` by path in an opening, `places` the column each came from.

    `refused` are the fields whose cells could not be read.
    """

    line: int
    mark: str
    values: Mapping[str, Any]
    places: Mapping[str, int]
    faults: tuple[CellFault, ...]
    told: tuple[str, ...]
    refused: frozenset[str]


def rows_steps(table: ScheduleTable, reading: Reading) -> Steps[tuple[RowRead, ...]]:
    """Read every row of a schedule."""
    columns = [column for column in reading.columns if column.field is not None]
    rows = []
    for count, row in enumerate(table.rows):
        rows.append(read_row(row, columns, reading))
        if count % ROWS_A_STEP == 0:
            yield count
    return tuple(rows)


def read_row(row: SheetRow, columns: Sequence[Column], reading: Reading) -> RowRead:
    """Read one row; a cell that cannot be read becomes a fault and says nothing."""
    found = _Row(row.line)
    for column in columns:
        cell = row.cells[column.place] if column.place < len(row.cells) else ""
        if cell.strip():
            found.attempt(column, partial(found.take, column, cell))
    found.put_together(reading)
    return found.read()


class _Row:
    """What is known of a row while it is read: values by field with their columns, faults, assumptions."""

    def __init__(self, line: int) -> None:
        self.line = line
        self.by_field: dict[str, tuple[Any, Column]] = {}
        self.values: dict[str, Any] = {}
        self.places: dict[str, int] = {}
        self.faults: list[CellFault] = []
        self.told: list[str] = []
        self.refused: set[str] = set()
        self.leaves_of_width, self.width_of_each = "", False

    def attempt(self, column: Column, act: Callable[[], None]) -> None:
        """Do something with a cell; what refuses it becomes a fault of that cell."""
        try:
            act()
        except CellError as error:
            self.refused.add(column.field or "")
            reason = str(error).rstrip(".")
            self.faults.append(CellFault(self.line, column.place, column.heading, reason, error.question))

    def take(self, column: Column, cell: str) -> None:
        """Read one cell that is not blank. Raises CellError."""
        field = FIELDS[column.field or ""]
        refuse_what_no_one_wrote(cell)
        if field.kind != "text":
            refuse_long(cell)
            cell = " ".join(cell.split())  # a size may be broken over two lines of its cell
            if says_nothing(cell):
                return
        if field.name == "width":
            cell, self.leaves_of_width, self.width_of_each = without_leaves(cell)
        value, told = READERS[field.kind](field.name, cell, column.unit)
        self.told.extend(told)
        if value is None:
            return
        if field.name in self.by_field:  # only of notes there may be several columns
            value = f"{self.by_field[field.name][0]}; {value}"
        self.by_field[field.name] = (value, column)
        if field.kind == "rating" and not isinstance(value, bool):
            self.put("fire_minutes", value, column)
            value = value > 0
        if field.path:
            self.put(field.path, value, column)

    def put(self, path: str, value: Any, column: Column) -> None:
        """Note a value of the opening; a column about a field itself outranks one that only touches on it."""
        if FIELDS[column.field or ""].kind == "code" and path in self.values:
            return
        self.values[path] = value
        self.places[path] = column.place

    def said(self, name: str) -> Any:
        """Return what a field says in this row, None where nothing."""
        return self.by_field[name][0] if name in self.by_field else None

    def put_together(self, reading: Reading) -> None:
        """Put together what stands in more than one column."""
        self._mark()
        self._location()
        self._hand()
        self._size(reading)

    def read(self) -> RowRead:
        """Return the row as a record."""
        mark = self.said("mark") or ""
        values, places = MappingProxyType(self.values), MappingProxyType(self.places)
        told, refused = tuple(dict.fromkeys(self.told)), frozenset(self.refused)
        return RowRead(self.line, mark, values, places, tuple(self.faults), told, refused)

    def _mark(self) -> None:
        mark = self.said("mark")
        if mark is not None and is_date(mark):  # it may be a mark all the same, so it is not refused
            self.told.append(f"the mark {quoted(mark)} is a date: a spreadsheet makes one of a mark like 3-4")
        if mark is None and "mark" not in self.refused:
            self.faults.append(CellFault(self.line, None, "", "it has no mark"))

    def _location(self) -> None:
        rooms = [room for room in (self.said("from_room"), self.said("to_room")) if room]
        if rooms and "location" not in self.by_field:
            name = "from_room" if "from_room" in self.by_field else "to_room"
            self.put("location", " to ".join(rooms), self.by_field[name][1])

    def _hand(self) -> None:
        hand, swing = self.said("hand"), self.said("swing")
        if swing is None:
            return
        column = self.by_field["swing"][1]
        if swing not in ("in", "out"):  # a whole hand stands under Swing
            self.attempt(column, lambda: self._same_hand(hand, swing, column))
        elif hand is not None:
            self.attempt(column, lambda: self._turned(hand, swing, column))
        elif "hand" not in self.refused:
            self.told.append(f"a door that swings {swing} is of neither hand yet: the hand is left open")

    def _same_hand(self, hand: str | None, swing: str, column: Column) -> None:
        if hand is not None and hand != swing:
            raise CellError(f"{swing} here and {hand} under {self.by_field['hand'][1].heading}")
        if hand is None:
            self.put("hand", swing, column)

    def _turned(self, hand: str, swing: str, column: Column) -> None:
        """Put hand and swing together: seen from outside, only a reverse hand swings out."""
        if swing == "in" and hand in ("LHR", "RHR"):
            raise CellError(f"swings in, but {hand} opens outward")
        if swing == "out" and hand in ("LH", "RH"):
            self.told.append(f"{hand} that swings out is {hand}R")
            self.put("hand", f"{hand}R", column)

    def _size(self, reading: Reading) -> None:
        if self.refused & {"size", "width", "height"}:
            return
        column = self._column_of_size()
        if column is not None:
            self.attempt(column, lambda: self._take_size(reading, column))

    def _column_of_size(self) -> Column | None:
        return next(
            (self.by_field[name][1] for name in ("size", "width", "height") if name in self.by_field), None
        )

    def _take_size(self, reading: Reading, column: Column) -> None:
        written: Size | None = self.said("size")
        size = self._size_beside(written) or written
        if size is None:
            self._refuse_half_a_pair()
            return
        if written is not None:
            self._agree(written)
        # Beside a column of sizes, the order of figures within one says nothing of width and height.
        in_columns = written is None and any(each.field == "size" for each in reading.columns)
        order = "width" if in_columns and reading.order == "height" else reading.order
        size, told = settled(size, self._leaves(size), order, reading.pair)
        self.told.extend(told)
        self.put("size.width", size.width, self._column("width", column))
        self.put("size.height", size.height, self._column("height", column))
        self._take_rest(size, column)

    def _size_beside(self, written: Size | None) -> Size | None:
        """Return the size that width and height give together, None where one of them is blank.

        Where a size is written too, all agree on which figure is which, and nothing needs to be asked.
        """
        width, height = self.said("width"), self.said("height")
        if width is None or height is None:
            return None
        if written is None:
            return Size(width, height, self.leaves_of_width, each=self.width_of_each)
        each = written.each and abs(width - written.width) <= SIZES_AGREE
        return replace(written, width=width, height=height, named=True, each=each)

    def _refuse_half_a_pair(self) -> None:
        if self.leaves_of_width:
            raise CellError(
                f"the width of a {self.leaves_of_width} is read with its height beside it, not alone"
            )

    def _take_rest(self, size: Size, column: Column) -> None:
        """Take what a size says beside itself: how many leaves, and how thick the door is."""
        if size.leaves and "leaves" not in self.by_field:
            self.told.append(f"{size.leaves}, as the size says")
            self.put("leaves", size.leaves, column)
        if size.thickness is not None and "thickness" not in self.by_field:
            self.told.append(
                f"the third figure of a size is the door's thickness: {format_size(size.thickness)} in"
            )
            self.put("door.thickness", size.thickness, column)

    def _column(self, name: str, otherwise: Column) -> Column:
        return self.by_field[name][1] if name in self.by_field else otherwise

    def _leaves(self, size: Size) -> str:
        said = self.said("leaves")
        if said and size.leaves and said != size.leaves:
            raise CellError(f"the size says {size.leaves}, and {self.by_field['leaves'][1].heading} {said}")
        return said or ""

    def _agree(self, size: Size) -> None:
        """Refuse a size that width or height beside it contradict, in whichever order its figures stand."""
        figures = [size.width, size.height, *([2 * size.width] if size.each else [])]
        for name in ("width", "height"):
            beside = self.said(name)
            if beside is not None and all(abs(beside - figure) > SIZES_AGREE for figure in figures):
                heading = quoted(self.by_field[name][1].heading)
                said = f"{format_feet(size.width)} x {format_feet(size.height)}"
                raise CellError(f"the size is {said}, and {heading} says {format_feet(beside)}")
