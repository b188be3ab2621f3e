"""One row of a schedule to what it says of an opening: faults name their cell, assumptions are told."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from types import MappingProxyType
from typing import Any

from configurator.intake import asking
from configurator.intake.columns import Column, Reading, plain_number
from configurator.intake.fields import DASHED, FIELDS, HOUSE, OPENING_SIZES, needs_unit
from configurator.intake.notes import notes_of_rows
from configurator.intake.reading_cells import READERS
from configurator.intake.refused import (
    CellError,
    CellFault,
    is_date,
    quoted,
    refuse_long,
    refuse_what_no_one_wrote,
)
from configurator.intake.sheet import SheetRow
from configurator.intake.sizes import NARROW_PAIR, Size, settled, without_leaves
from configurator.intake.table import Behind, ScheduleTable
from configurator.intake.words import says_nothing
from configurator.long_work import ROWS_A_STEP, Steps
from configurator.units import format_size

NO_FATES: Mapping[int, asking.Fate] = MappingProxyType({})
SIZES_AGREE = 1 / 16
"""Inches. A size written in words may be rounded that much against width and height beside it."""


@dataclass(frozen=True, slots=True)
class RowRead:
    """What a row says: `values` by path in an opening, `places` the column each came from.

    `refused` are the fields whose cells could not be read, `blank` the paths that the schedule has columns
    for and this row says nothing of. `left_out` says why the row is no opening, as the user answered. `asks`
    are questions to the architect. `fates` has what became of cells that were not simply read, by place.
    """

    line: int
    mark: str
    values: Mapping[str, Any]
    places: Mapping[str, int]
    faults: tuple[CellFault, ...]
    told: tuple[str, ...]
    refused: frozenset[str]
    blank: frozenset[str] = frozenset()
    left_out: str = ""
    asks: tuple[str, ...] = ()
    fates: Mapping[int, asking.Fate] = field(default_factory=lambda: NO_FATES)


def rows_steps(table: ScheduleTable, reading: Reading) -> Steps[tuple[RowRead, ...]]:
    """Read every row of a schedule; notes under it are asked of the rows they name."""
    filled = frozenset(
        place for row in table.rows for place, cell in enumerate(row.cells) if not says_nothing(cell)
    )
    rows: list[RowRead] = []
    cells_of: dict[str, Sequence[str]] = {}
    above = SheetRow(0, ())
    for count, row in enumerate(table.rows):
        full, told = asking.without_ditto(row, above, reading)
        found = _read_row(full, reading, table, filled)
        rows.append(replace(found, told=(*told, *found.told)) if told else found)
        cells_of[found.mark] = _remarks(full, reading)
        above = full
        if count % ROWS_A_STEP == 0:
            yield count
    notes = notes_of_rows(table.notes, cells_of) if table.notes else {}
    asked = {mark: tuple(note.question for note in own) for mark, own in notes.items()}
    return tuple(replace(row, asks=row.asks + asked[row.mark]) if row.mark in asked else row for row in rows)


def _remarks(row: SheetRow, reading: Reading) -> tuple[str, ...]:
    texts = (row.cell(each.place) for each in reading.columns if each.field in ("remarks", "notes"))
    return tuple(text for text in texts if text.strip())


def _read_row(row: SheetRow, reading: Reading, table: ScheduleTable, filled: frozenset[int]) -> RowRead:
    """Read one row; a cell that cannot be read becomes a fault and says nothing."""
    found = _Row(row, reading, filled)
    found.ask_of_row()
    if not found.left_out:
        for column in reading.columns:
            cell = found.texts.get(column.place, "")
            if column.field is not None and cell.strip():
                behind = table.behind.get((row.line, column.place, cell))
                found.attempt(column, partial(found.take, column, cell, behind))
        found.put_together(table.levels.get(row.line, ""))
    return found.read()


class _Row(asking.AskedRow):
    """What is known of a row while it is read: values by field with their columns, faults, assumptions."""

    def __init__(self, row: SheetRow, reading: Reading, filled: frozenset[int]) -> None:
        super().__init__(row, reading)
        self.filled = filled
        self.by_field: dict[str, tuple[Any, Column]] = {}
        self.refused: set[str] = set()
        self.leaves_of_width, self.width_of_each = "", False
        self.kept: dict[str, str] = {}

    def attempt(self, column: Column, act: Callable[[], None]) -> None:
        """Do something with a cell; what refuses it becomes a fault of that cell."""
        try:
            act()
        except CellError as error:
            self.refused.add(column.field or "")
            reason = str(error).rstrip(".")
            self.faults.append(CellFault(self.line, column.place, column.heading, reason, error.question))

    def take(self, column: Column, cell: str, behind: Behind | None) -> None:
        """Read one cell that is not blank, or take what stands behind it. Raises CellError."""
        if behind is not None:
            return self.reach(column, behind)
        of = FIELDS[column.field or ""]
        refuse_what_no_one_wrote(cell)
        if of.kind == "keep":
            return self._keep(column, cell)
        if of.kind != "text":
            refuse_long(cell)
            cell = " ".join(cell.split())  # a size may be broken over two lines of its cell
        if (of.kind != "text" or of.name in DASHED) and says_nothing(cell):
            return None
        value, told = READERS[of.kind](of.name, self._plain(of.name, cell, column), column.unit)
        self.told.extend(told)
        if value is None:
            return self._not_understood(column, cell)
        if of.name in self.by_field:  # only of notes there may be several columns
            value = f"{self.by_field[of.name][0]}; {value}"
        self.by_field[of.name] = (value, column)
        if of.kind == "rating" and not isinstance(value, bool):
            self.put("fire_minutes", value, column)
            value = value > 0
        if of.path:
            self.put(of.path, value, column)
        return None

    def _keep(self, column: Column, cell: str) -> None:
        self.kept[column.heading or f"column {column.place + 1}"] = cell.strip()
        self.places["other_columns"] = column.place

    def _plain(self, name: str, cell: str, column: Column) -> str:
        """Return a cell without what is not its value: marks between thousands, a count of leaves."""
        if needs_unit(name):
            cell = plain_number(cell, column.commas)
        if name == "width":
            cell, self.leaves_of_width, self.width_of_each = without_leaves(cell)
        return cell

    def _not_understood(self, column: Column, cell: str) -> None:
        self.fates[column.place] = "not understood"
        if FIELDS[column.field or ""].kind == "code" and self.reading.keeps_others:
            self.fates[column.place] = "kept"
            self._keep(column, cell)
        if column.field in ("door", "frame"):
            self.asks.append(
                f"{column.heading} is {quoted(cell)}: what is it made of, and is it to be hung anew?"
            )

    def said(self, name: str) -> Any:
        """Return what a field says in this row, None where nothing."""
        return self.by_field[name][0] if name in self.by_field else None

    # --- What stands in more than one column ---

    def put_together(self, level: str) -> None:
        """Put together what stands in more than one column; `level` is the title over the row."""
        self._mark()
        self._location()
        self._hand()
        self.refuse_other_hands()
        self._leaves_in_text()
        self._size()
        if self.typical is not None:
            self.put("quantity", *self.typical)
        if level and "level" not in self.values:
            self.values["level"] = level
            self.told.append(f"the title “{level}” is taken as the level of the rows under it")
        if self.kept:
            self.values["other_columns"] = self.kept

    def read(self) -> RowRead:
        """Return the row as a record."""
        mark = self.said("mark") or self._mark_as_written()
        return RowRead(
            self.line,
            mark,
            MappingProxyType(self.values),
            MappingProxyType(self.places),
            tuple(self.faults) if not self.left_out else (),
            tuple(dict.fromkeys(self.told)),
            frozenset(self.refused),
            frozenset(self._blank()),
            self.left_out,
            tuple(dict.fromkeys(self.asks)),
            MappingProxyType(fates) if (fates := self._fates()) else NO_FATES,
        )

    def _mark_as_written(self) -> str:
        places = (column.place for column in self.reading.columns if column.field == "mark")
        return next((self.texts[place].strip() for place in places if place in self.texts), "")

    def _blank(self) -> Iterator[str]:
        for column in self.reading.columns:
            name = column.field
            if name is None or name in HOUSE | OPENING_SIZES or column.place not in self.filled:
                continue
            of = FIELDS[name]
            if of.path and of.kind not in ("code", "found") and says_nothing(self.row.cell(column.place)):
                yield of.path
                if of.kind == "rating":
                    yield "fire_minutes"

    def _fates(self) -> dict[int, asking.Fate]:
        """Return what became of the cells of the row that were not simply read."""
        asked = {fault.place for fault in self.faults}
        fields = {column.place: column.field for column in self.reading.columns}
        fates: dict[int, asking.Fate] = {}
        for place, cell in enumerate(self.row.cells):
            if cell.strip():
                fate = self._fate(place, cell, fields.get(place), place in asked)
                if fate != "read":
                    fates[place] = fate
        return fates

    def _fate(self, place: int, cell: str, name: str | None, asked: bool) -> asking.Fate:
        if self.left_out:
            return "left out"
        if asked:
            return "asked"
        if place in self.fates:
            return self.fates[place]
        if name is None:
            return "not read"
        if FIELDS[name].kind == "keep":
            return "kept"
        dashed = FIELDS[name].kind != "text" or name in DASHED
        return "says nothing" if dashed and says_nothing(cell) else "read"

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
        for name in ("hand", "swing"):
            if name in self.by_field and asking.active_hand(self.row.cell(self.by_field[name][1].place)):
                self.attempt(self.by_field[name][1], self._pair_by_hand)
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

    def _pair_by_hand(self) -> None:
        """Take the hand of an active leaf for a pair's. Raises CellError where the row says otherwise."""
        leaves = self.said("leaves")
        if leaves not in (None, "pair"):
            raise CellError(f"the hand is that of a pair's active leaf, and the leaves are {leaves}")
        self.leaves_by = self.leaves_by or "pair"
        if leaves is None:
            self.told.append("the hand of an active leaf is that of a pair")

    def _leaves_in_text(self) -> None:
        if self.said("leaves") is None and not self.leaves_by:
            cells = [
                (each, self.texts[each.place]) for each in self.reading.columns if each.place in self.texts
            ]
            found = asking.pair_in_text(cells)
            if found is not None:
                self.leaves_by = "pair"
                self.told.append(f"{quoted(found[1])} says that the opening is a pair")
        if self.leaves_by and self.said("leaves") is None:
            self.values["leaves"] = self.leaves_by

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

    def _size(self) -> None:
        if self.refused & {"size", "width", "height"}:
            return
        column = self._column_of_size()
        if column is not None:
            self.attempt(column, lambda: self._take_size(column))

    def _column_of_size(self) -> Column | None:
        return next(
            (self.by_field[name][1] for name in ("size", "width", "height") if name in self.by_field), None
        )

    def _take_size(self, column: Column) -> None:
        written: Size | None = self.said("size")
        size = self._size_beside(written) or written
        if size is None:
            self._refuse_half_a_pair()
            return
        if written is not None:
            self._agree(written)
        # Beside a column of sizes, the order of figures within one says nothing of width and height.
        reading, order = self.reading, self.reading.answer("size order")
        in_columns = written is None and any(each.field == "size" for each in reading.columns)
        order = "width" if in_columns and order == "height" else order
        size, told = settled(size, self._leaves(size), order, reading.answer("pair width"))
        self.told.extend(told)
        if size.width > NARROW_PAIR and not (size.leaves or self._leaves(size) or "hung_on" in self.values):
            size = self._wide(size)
        self.put("size.width", size.width, self._column("width", column))
        self.put("size.height", size.height, self._column("height", column))
        self._take_rest(size, column)

    def _wide(self, size: Size) -> Size:
        """Return an opening wider than one leaf usually is with its leaves, as answered. Raises CellError."""
        wide = size.written(size.width)
        answer = self.reading.answer("wide door")
        if answer == "ask":
            raise CellError(f"{wide} wide: say whether that is a pair or one leaf", "wide door")
        self.told.append(f"{wide} wide is taken as {'a pair' if answer == 'pair' else 'one leaf'}")
        return replace(size, leaves=answer)

    def _size_beside(self, written: Size | None) -> Size | None:
        """Return the size that width and height give together, None where one of them is blank.

        Where a size is written too, all agree on which figure is which, and nothing needs to be asked.
        """
        width, height = self.said("width"), self.said("height")
        if width is None or height is None:
            return None
        if written is None:
            metric = self.by_field["width"][1].unit == "mm"
            return Size(width, height, self.leaves_of_width, each=self.width_of_each, metric=metric)
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
        said = self.said("leaves") or self.leaves_by
        if said and size.leaves and said != size.leaves:
            where = self.by_field["leaves"][1].heading if "leaves" in self.by_field else "the row otherwise"
            raise CellError(f"the size says {size.leaves}, and {where} {said}")
        return said or ""

    def _agree(self, size: Size) -> None:
        """Refuse a size that width or height beside it contradict, in whichever order its figures stand."""
        figures = [size.width, size.height, *([2 * size.width] if size.each else [])]
        for name in ("width", "height"):
            beside = self.said(name)
            if beside is not None and all(abs(beside - figure) > SIZES_AGREE for figure in figures):
                heading = quoted(self.by_field[name][1].heading)
                said = f"{size.written(size.width)} x {size.written(size.height)}"
                raise CellError(f"the size is {said}, and {heading} says {size.written(beside)}")
