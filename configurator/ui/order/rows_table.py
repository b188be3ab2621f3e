"""A table to read: any number of rows of words, and it says which one is chosen."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from configurator.ui.kit.look import GRID, colour, sized, tabular
from configurator.ui.schedule.pasting import as_text

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()
MOST_WRAPPED = 200


@dataclass(frozen=True, slots=True)
class Head:
    """One column: its title, its width on the grid, and whether numbers stand in it."""

    title: str
    width: int
    number: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its words, what it is about (`key`), what its tooltip says, and the tint of its first word."""

    words: tuple[str, ...]
    key: Any = None
    tip: str = ""
    tint: str = ""


class RowsModel(QAbstractTableModel):
    """Rows of words as they are given."""

    def __init__(self, heads: Sequence[Head]) -> None:
        super().__init__()
        self.heads = tuple(heads)
        self.rows: tuple[Row, ...] = ()
        self.dark = False

    def show(self, rows: Sequence[Row], heads: Sequence[Head] | None = None) -> None:
        """Show other rows, under other heads if those are given."""
        self.beginResetModel()
        self.rows, self.heads = tuple(rows), self.heads if heads is None else tuple(heads)
        self.endResetModel()

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Return how many rows there are."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Return how many columns there are."""
        return 0 if parent.isValid() else len(self.heads)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a cell's words, where they stand, or all of them as its tooltip."""
        row, column = self.rows[index.row()], index.column()
        if role == Qt.ItemDataRole.DisplayRole:
            return row.words[column]
        if role == Qt.ItemDataRole.ToolTipRole:
            return row.tip or row.words[column]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(self.heads[column])
        if role == Qt.ItemDataRole.ForegroundRole and row.tint and column == 0:
            return QColor(colour(row.tint, self.dark))
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's title."""
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self.heads):
            return None
        head = self.heads[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(head)
        return head.title if role == Qt.ItemDataRole.DisplayRole else None


def _side(head: Head) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if head.number else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


class RowsTable(QTableView):
    """Shows rows; one is chosen at a time.

    Signals:
        chosen: another row is chosen; the argument is its key, or nothing.
        opened: the row with that key is asked for, by Enter or a double click.
    """

    chosen = Signal(object)
    opened = Signal(object)

    def __init__(self, name: str, heads: Sequence[Head], wrapped: bool = False) -> None:
        super().__init__()
        self._wrapped = wrapped
        self.shown = RowsModel(heads)
        self.setModel(self.shown)
        self.setAccessibleName(name)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self._look()
        self.selectionModel().currentRowChanged.connect(lambda now, _: self.chosen.emit(self._key(now)))
        self.doubleClicked.connect(lambda index: self.opened.emit(self._key(index)))

    def show_rows(self, rows: Sequence[Row], heads: Sequence[Head] | None = None) -> None:
        """Show other rows; what was chosen stays so while it is there."""
        before = self.current()
        self.shown.show(rows, heads)
        for place, head in enumerate(self.shown.heads):
            self.setColumnWidth(place, head.width * GRID)
        self._share_height()
        if before is not None:
            self.choose(before)

    def choose(self, key: Any) -> None:
        """Choose the row of that key, if there is one."""
        place = next((n for n, row in enumerate(self.shown.rows) if row.key == key), None)
        if place is not None:
            self.setCurrentIndex(self.shown.index(place, 0))

    def current(self) -> Any:
        """Return the key of the chosen row; nothing where there is none."""
        return self._key(self.currentIndex())

    def _key(self, index: QModelIndex) -> Any:
        return self.shown.rows[index.row()].key if index.isValid() else None

    def _share_height(self) -> None:
        """Make rows of sentences as high as these are; of very many rows each stays one line high."""
        if self._wrapped and len(self.shown.rows) <= MOST_WRAPPED:
            self.resizeRowsToContents()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break sentences anew where there is more or less room for them."""
        super().resizeEvent(event)
        self._share_height()

    def _look(self) -> None:
        self.setTabKeyNavigation(False)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setWordWrap(self._wrapped)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        sized(self, -1)
        self.setFont(tabular(self.font()))
        side, heads = self.verticalHeader(), self.horizontalHeader()
        side.hide()
        side.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        side.setMinimumSectionSize(5 * GRID)
        side.setDefaultSectionSize(6 * GRID)
        heads.setFont(self.font())
        heads.setHighlightSections(False)
        heads.setStretchLastSection(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open on Enter, copy the table; other keys move."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.opened.emit(self.current())
        elif event.matches(QKeySequence.StandardKey.Copy):
            self._copy()
        else:
            super().keyPressEvent(event)

    def _copy(self) -> None:
        """Put the whole table on the clipboard, for a spreadsheet."""
        heads = [head.title for head in self.shown.heads]
        QGuiApplication.clipboard().setText(as_text([row.words for row in self.shown.rows], heads))
