"""The rows of a schedule as the file has them, each with what becomes of it, faults at their cells."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView

from configurator.intake.columns import Reading
from configurator.intake.comparing import Compared
from configurator.intake.saying import opening_words
from configurator.intake.sheet import SheetRow
from configurator.intake.table import ScheduleTable
from configurator.ui.intake.choosers import ChooserHeader
from configurator.ui.kit.look import GRID
from configurator.ui.kit.table import Table
from configurator.ui.kit.table_model import Head, Index, TableModel
from configurator.units import Display

FAULT = "▲"
OUTCOME = 0
"""The column that says what becomes of a row; those of the file follow."""


class Preview(TableModel):
    """Shows a schedule. A cell can be corrected for this import; the file is not ours and stays as it is.

    Signals:
        corrected: a cell is to read otherwise: the line of the file, the column from 0, and the text.
    """

    corrected = Signal(int, int, str)

    def __init__(self) -> None:
        super().__init__()
        self.table: ScheduleTable | None = None
        self._read: frozenset[int] = frozenset()
        self._outcomes: dict[int, str] = {}
        self._faults: dict[tuple[int, int | None], str] = {}
        self._dark = False

    def show_schedule(
        self,
        table: ScheduleTable | None,
        reading: Reading | None,
        compared: Compared | None,
        display: Display,
        dark: bool,
    ) -> None:
        """Show other rows, or the same ones read otherwise."""
        self.beginResetModel()
        self.table, self._dark = table, dark
        titles = ("What becomes of it", *table.titles()) if table is not None else ()
        self.heads = [Head(" ".join(title.split())) for title in titles]
        self.rows = table.rows if table is not None else ()
        columns = reading.columns if reading is not None else ()
        self._read = frozenset(column.place for column in columns if column.field is not None)
        self._faults, self._outcomes = {}, {}
        if compared is not None:
            for fault in compared.faults():
                self._faults.setdefault((fault.line, fault.place), fault.reason)
            outcomes = {row.line: opening_words(row, display) for row in compared.good}
            self._outcomes = outcomes | {row.line: f"left out: {row.left_out}" for row in compared.left_out}
            for row in compared.bad:
                first, more = row.faults[0], len(row.faults) - 1
                said = f"{first.heading}: {first.reason}" if first.heading else first.reason
                self._outcomes[row.line] = f"{FAULT} {said}" + (f" (and {more} more)" if more else "")
        self.endResetModel()

    def row_of(self, line: int) -> int:
        """Return the row that shows a line of the file. Raises ValueError where none does."""
        return [row.line for row in self.rows].index(line)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Return what can be done with a cell: those of the file can be corrected."""
        editable = index.isValid() and index.column() != OUTCOME
        return super().flags(index) | (Qt.ItemFlag.ItemIsEditable if editable else Qt.ItemFlag.NoItemFlags)

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Tell what a cell is to read instead."""
        if not self.rows or role != Qt.ItemDataRole.EditRole or index.column() == OUTCOME:
            return False
        row, place, text = self.rows[index.row()], index.column() - 1, str(value).strip()
        if text != _on_one_line(row, place):
            self.corrected.emit(row.line, place, text)
        return True

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's heading, or the line of a row in the file."""
        if orientation == Qt.Orientation.Vertical and role == Qt.ItemDataRole.DisplayRole:
            return self.rows[section].line if section < len(self.rows) else None
        return super().headerData(section, orientation, role)

    def text(self, row: int, place: int) -> str:
        """Return a cell as it stands in the file, or what becomes of the row."""
        line = self.rows[row]
        if place == OUTCOME:
            return self._outcomes.get(line.line, "")
        text = self.exact(row, place)
        return f"{FAULT} {text or 'blank'}" if (line.line, place - 1) in self._faults else text

    def exact(self, row: int, place: int) -> str:
        """Return a cell as it is corrected."""
        return _on_one_line(self.rows[row], place - 1)

    def tip(self, row: int, place: int) -> str:
        """Return what is wrong with a cell, or all of its words."""
        return self.described(row, place) or self.text(row, place).removeprefix(f"{FAULT} ")

    def tint(self, row: int, place: int) -> str:
        """Tell a fault, and what is not read, from the rest."""
        if self.described(row, place):
            return "error"
        return "quiet" if place != OUTCOME and place - 1 not in self._read else ""

    def is_dark(self) -> bool:
        """Return whether the window is dark."""
        return self._dark

    def described(self, row: int, place: int) -> str:
        """Say what is wrong with a cell; of the first column with the row."""
        line = self.rows[row].line
        if place != OUTCOME:
            return self._faults.get((line, place - 1), "")
        said = self._outcomes.get(line, "")
        return said.removeprefix(f"{FAULT} ") if said.startswith(FAULT) else ""


def _on_one_line(row: SheetRow, place: int) -> str:
    return " ".join(row.cells[place].split()) if 0 <= place < len(row.cells) else ""


_NARROWEST, _WIDEST = 34 * GRID, 60 * GRID
_OUTCOME_WIDTH = 84 * GRID
_ROWS_MEASURED = 40


class PreviewTable(Table):
    """Shows the rows of a schedule; Tab goes through the choosers and out again."""

    def __init__(self, preview: Preview) -> None:
        super().__init__("rows of the schedule", preview, framed=True)
        self.preview = preview
        self.header = ChooserHeader(self)
        self.setHorizontalHeader(self.header)
        self.header.setFont(self.font())
        self.verticalHeader().setToolTip("line of the file")
        self.header.reached.connect(self._bring_into_view)

    def share_width(self) -> None:
        """Give each column the room of its first texts, within what its choosers need and a screen has."""
        metrics = self.fontMetrics()
        rows = range(min(self.preview.rowCount(), _ROWS_MEASURED))
        self.setColumnWidth(OUTCOME, _OUTCOME_WIDTH)
        for column in range(1, self.preview.columnCount()):
            texts = [str(self.preview.headerData(column, Qt.Orientation.Horizontal) or "")]
            texts += [str(self.preview.index(row, column).data() or "") for row in rows]
            wanted = max(metrics.horizontalAdvance(text) for text in texts) + 4 * GRID
            self.setColumnWidth(column, min(max(wanted, _NARROWEST), _WIDEST))

    @contextmanager
    def staying(self) -> Iterator[None]:
        """Keep the current cell and what is in view while the rows are shown anew."""
        current = self.currentIndex()
        row, column = current.row(), current.column()
        bars = self.verticalScrollBar(), self.horizontalScrollBar()
        values = [bar.value() for bar in bars]
        yield
        self.setCurrentIndex(self.preview.index(row, column))
        for bar, value in zip(bars, values, strict=True):
            bar.setValue(value)

    def look_at(self, line: int, place: int | None) -> None:
        """Go to a cell of the file, or to what becomes of its row where no cell is meant."""
        index = self.preview.index(self.preview.row_of(line), OUTCOME if place is None else place + 1)
        self.setCurrentIndex(index)
        self.scrollTo(index, QAbstractItemView.ScrollHint.PositionAtCenter)

    def _bring_into_view(self, section: int) -> None:
        self.scrollTo(self.preview.index(max(self.rowAt(0), 0), section))
