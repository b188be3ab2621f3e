"""Tables to read and to choose from: one widget for every table of the window."""

import csv
import io
from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QFont, QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from configurator.cells import shield
from configurator.ui.kit.look import GRID, sized, tabular
from configurator.ui.kit.table_model import MIDDLE, Head, Index, Row, RowsModel, TableModel

MOST_WRAPPED = 200
"""Rows whose sentences are given as many lines as they take; of more each stays one line high."""


def as_text(rows: Sequence[Sequence[str]], heads: Sequence[str]) -> str:
    """Write rows for the clipboard, their heads first; no cell of them can run as a formula."""
    text = io.StringIO()
    writer = csv.writer(text, "excel-tab", lineterminator="\n")
    writer.writerows([shield(cell) for cell in row] for row in (heads, *rows))
    return text.getvalue()


class Table(QTableView):
    """Shows a model: no frame, no grid, figures of one width; Tab leaves it, and arrows move within it.

    Signals:
        entered_row: Enter was pressed on a cell, or it was double-clicked.
    """

    entered_row = Signal(QModelIndex)

    def __init__(self, name: str, model: TableModel, high: int = 6, framed: bool = False) -> None:
        """`high` is the height of a row on the grid; `framed` keeps frame, grid and the heads of rows."""
        super().__init__()
        self.setModel(model)
        self.setAccessibleName(name)
        self.setTabKeyNavigation(False)
        self.setWordWrap(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        sized(self, -1)
        self.setFont(tabular(self.font()))
        model.bold = QFont(self.font())
        model.bold.setBold(True)
        side, heads = self.verticalHeader(), self.horizontalHeader()
        for header in (side, heads):
            header.setFont(self.font())
        heads.setHighlightSections(False)
        heads.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | MIDDLE)
        side.setMinimumSectionSize(5 * GRID)
        side.setDefaultSectionSize(high * GRID)
        self.doubleClicked.connect(self.entered_row)
        if not framed:
            self.setFrameShape(QTableView.Shape.NoFrame)
            self.setShowGrid(False)
            side.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
            side.hide()

    def select_rows(self, several: bool = False) -> None:
        """Select rows whole, as a rule one at a time."""
        modes = QAbstractItemView.SelectionMode
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(modes.ExtendedSelection if several else modes.SingleSelection)

    def rowCount(self) -> int:
        """Return how many rows there are."""
        return self.model().rowCount()

    def columnCount(self) -> int:
        """Return how many columns there are."""
        return self.model().columnCount()

    def currentRow(self) -> int:
        """Return the row of the current cell, -1 for none."""
        return self.currentIndex().row()

    def currentColumn(self) -> int:
        """Return the column of the current cell, -1 for none."""
        return self.currentIndex().column()

    def setCurrentCell(self, row: int, column: int) -> None:
        """Go to a cell; to none with a row or column that there is not."""
        self.setCurrentIndex(self.model().index(row, column))

    def text(self, row: int, column: int) -> str:
        """Return what a cell reads."""
        return str(self.model().index(row, column).data() or "")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Tell of Enter on a cell; other keys move."""
        at_rest = self.state() != QAbstractItemView.State.EditingState
        entered = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if at_rest and entered and self.currentIndex().isValid():
            self.entered_row.emit(self.currentIndex())
        else:
            super().keyPressEvent(event)


class RowsTable(Table):
    """Shows rows of words in columns of given widths; one row is chosen at a time. Ctrl+C copies all of it.

    Signals:
        chosen: another row is chosen; the argument is its key, or nothing.
        opened: the row with that key is asked for, by Enter or a double click.
    """

    chosen = Signal(object)
    opened = Signal(object)

    def __init__(
        self,
        name: str,
        heads: Sequence[Head] = (),
        wrapped: bool = False,
        high: int = 6,
        model: RowsModel | None = None,
    ) -> None:
        """Sentences that are `wrapped` go on in a second line."""
        self.shown = model or RowsModel()
        super().__init__(name, self.shown, high)
        self._wrapped = wrapped
        self.setWordWrap(wrapped)
        self.select_rows()
        self.shown.show((), heads)
        self._lay_out()
        self.selectionModel().currentRowChanged.connect(lambda now, _: self.chosen.emit(self._key(now)))
        self.entered_row.connect(lambda index: self.opened.emit(self._key(index)))

    def show_rows(self, rows: Sequence[Row], heads: Sequence[Head] | None = None) -> None:
        """Show other rows; what was chosen stays so while it is there."""
        before = self.current()
        self.shown.show(rows, heads)
        self._stay_with(before)
        self.share_room()

    def choose(self, key: Any) -> None:
        """Choose the row of that key, if there is one."""
        if self._place(key) >= 0:
            self.setCurrentCell(self._place(key), 0)

    def current(self) -> Any:
        """Return the key of the chosen row; nothing where there is none."""
        return self._key(self.currentIndex())

    def share_room(self) -> None:
        """Give rows and columns the room that they need now."""
        for place, head in enumerate(self.shown.heads):
            self.setColumnWidth(place, head.width * GRID)
        self._share_height()

    def copied(self) -> str:
        """Return what Ctrl+C puts on the clipboard: the whole table, for a spreadsheet."""
        return as_text([row.words for row in self.shown.rows], [head.title for head in self.shown.heads])

    def _stay_with(self, key: Any) -> None:
        if key is not None and key != self.current():
            self.setCurrentCell(self._place(key), 0)

    def _place(self, key: Any) -> int:
        return next((place for place, row in enumerate(self.shown.rows) if row.key == key), -1)

    def _key(self, index: Index) -> Any:
        return self.shown.rows[index.row()].key if index.isValid() else None

    def _lay_out(self) -> None:
        self.setAlternatingRowColors(True)
        self.horizontalHeader().setStretchLastSection(True)

    def _share_height(self) -> None:
        if self._wrapped and len(self.shown.rows) <= MOST_WRAPPED:
            self.resizeRowsToContents()

    # --- Qt's own names ---

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break sentences anew where there is more or less room for them."""
        super().resizeEvent(event)
        self._share_height()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy; other keys open and move."""
        if event.matches(QKeySequence.StandardKey.Copy):
            QGuiApplication.clipboard().setText(self.copied())
        else:
            super().keyPressEvent(event)


class QuietTable(RowsTable):
    """Rows close together that scroll smoothly, with one header set up by whoever makes it.

    The cell that is current stays so by its place. Ctrl+C copies it.
    """

    def __init__(
        self, name: str, heads: Sequence[Head] = (), wrapped: bool = False, model: RowsModel | None = None
    ) -> None:
        super().__init__(name, heads, wrapped, 5, model)

    def share_room(self) -> None:
        """Leave the room to the header."""

    def copied(self) -> str:
        """Return what Ctrl+C puts on the clipboard: the current cell."""
        return self.text(self.currentRow(), self.currentColumn())

    def _stay_with(self, key: Any) -> None:
        pass

    def _lay_out(self) -> None:
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the current row in view."""
        super().resizeEvent(event)
        self.scrollTo(self.currentIndex())


class FittedTable(QuietTable):
    """Columns as wide as their words; what room is left over goes to the last one.

    With `wrapped` the last one takes it in any case, and its words go on in a second line.
    """

    def fill(self, heads: Sequence[str], rows: Sequence[tuple[Sequence[str], str]]) -> None:
        """Show other rows of words, each with what its tooltip says, under heads."""
        shown = [Row(tuple(words), tip=tip) for words, tip in rows]
        self.show_rows(shown, [Head(title) for title in heads])

    def share_room(self) -> None:
        """Stretch the last column only while that cuts nothing off it, or where its words wrap."""
        header, last = self.horizontalHeader(), self.columnCount() - 1
        if self._wrapped:
            header.setStretchLastSection(True)
            self._share_height()
            return
        taken = sum(self.columnWidth(column) for column in range(last))
        wanted = max(self.sizeHintForColumn(last), header.sectionSizeHint(last)) if last >= 0 else 0
        header.setStretchLastSection(taken + wanted <= self.viewport().width())

    def _lay_out(self) -> None:
        super()._lay_out()
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the room anew."""
        super().resizeEvent(event)
        self.share_room()
