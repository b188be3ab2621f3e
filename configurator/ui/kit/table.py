"""Tables to read and to choose from: one widget, and one model for what every table of the window shows."""

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QFont, QGuiApplication, QIcon, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from configurator.cells import shield
from configurator.ui.kit.look import GRID, colour, sized, tabular

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
MOST_WRAPPED = 200
"""Rows whose sentences are given as many lines as they take; of more each stays one line high."""
MIDDLE = Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True, slots=True)
class Head:
    """One column: its title, its width on the grid (0 where it goes by its words), whether it has numbers."""

    title: str
    width: int = 0
    number: bool = False
    tip: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its words, what it is about (`key`), and the tint of its first word.

    `tip` is the tooltip of all its cells; None leaves each cell its own words. A `heading` stands in bold
    over the rows that follow it.
    """

    words: tuple[str, ...]
    key: Any = None
    tip: str | None = None
    tint: str = ""
    heading: bool = False


# --- What a table shows ---


class TableModel(QAbstractTableModel):
    """Heads and rows; what a cell says in each of Qt's roles is told by the method named for it."""

    def __init__(self, heads: Sequence[Any] = ()) -> None:
        super().__init__()
        self.heads: Sequence[Any] = heads
        self.rows: Sequence[Any] = ()
        self.bold = QFont()

    def rowCount(self, parent: Index = NOWHERE) -> int:
        """Return how many rows there are."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:
        """Return how many columns there are."""
        return 0 if parent.isValid() else len(self.heads)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's title, what its tooltip says, and where both stand."""
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self.heads):
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self.heads[section].title
        if role == Qt.ItemDataRole.ToolTipRole:
            return self.heads[section].tip or None
        return self.side(section) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell says in a role; every cell on show is asked for all of them."""
        teller = _TELLERS.get(role)
        row, place = index.row(), index.column()
        if teller is None or not 0 <= row < len(self.rows) or place >= len(self.heads):
            return None
        return getattr(self, teller)(row, place)

    # --- What a cell says ---

    def text(self, row: int, place: int) -> str:
        """Return what a cell reads."""
        raise NotImplementedError

    def exact(self, _row: int, _place: int) -> str | None:
        """Return what a cell holds without rounding, where it can be edited."""
        return None

    def tip(self, row: int, place: int) -> str | None:
        """Return what a cell's tooltip says."""
        return self.text(row, place)

    def tint(self, _row: int, _place: int) -> str:
        """Return the colour of a cell by its use; empty for that of all text."""
        return ""

    def is_dark(self) -> bool:
        """Return whether tints are seen on a dark ground."""
        return False

    def side(self, place: int) -> Qt.AlignmentFlag:
        """Return where words stand in a column: numbers at its right."""
        right = self.heads[place].number
        return (Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft) | MIDDLE

    def is_bold(self, _row: int, _place: int) -> bool:
        """Return whether a cell stands in bold."""
        return False

    def icon(self, _row: int, _place: int) -> QIcon | None:
        """Return the picture before a cell's words."""
        return None

    def spoken(self, _row: int, _place: int) -> str | None:
        """Return what a screen reader says of a cell; None for its words."""
        return None

    def described(self, _row: int, _place: int) -> str | None:
        """Return what a screen reader adds."""
        return None

    def _colour(self, row: int, place: int) -> QColor | None:
        tint = self.tint(row, place)
        return QColor(colour(tint, self.is_dark())) if tint else None

    def _side(self, _row: int, place: int) -> Qt.AlignmentFlag:
        return self.side(place)

    def _font(self, row: int, place: int) -> QFont | None:
        return self.bold if self.is_bold(row, place) else None


_TELLERS = {
    int(Qt.ItemDataRole.DisplayRole): "text",
    int(Qt.ItemDataRole.EditRole): "exact",
    int(Qt.ItemDataRole.ToolTipRole): "tip",
    int(Qt.ItemDataRole.ForegroundRole): "_colour",
    int(Qt.ItemDataRole.TextAlignmentRole): "_side",
    int(Qt.ItemDataRole.FontRole): "_font",
    int(Qt.ItemDataRole.DecorationRole): "icon",
    int(Qt.ItemDataRole.AccessibleTextRole): "spoken",
    int(Qt.ItemDataRole.AccessibleDescriptionRole): "described",
}


class RowsModel(TableModel):
    """Rows of words as they are given; rows and columns come and go at the end, the others change in place.

    So what is current stays so: a keyboard that stands on a row still stands there after an edit elsewhere.
    """

    dark = False

    def show(self, rows: Sequence[Row], heads: Sequence[Head] | None = None) -> None:
        """Show other rows, under other heads if those are given."""
        if heads is not None:
            self._show_heads(tuple(heads))
        before, after = self.rows, tuple(rows)
        was, now = len(before), len(after)
        if now > was:
            self.beginInsertRows(NOWHERE, was, now - 1)
            self.rows = after
            self.endInsertRows()
        elif now < was:
            self.beginRemoveRows(NOWHERE, now, was - 1)
            self.rows = after
            self.endRemoveRows()
        else:
            self.rows = after
        changed = [n for n, (old, new) in enumerate(zip(before, after, strict=False)) if old != new]
        if changed:
            self._tell(changed[0], changed[-1])

    def use_dark(self, dark: bool) -> None:
        """Show tints on a dark ground, or on a light one."""
        if dark != self.dark:
            self.dark = dark
            self._tell(0, len(self.rows) - 1)

    def text(self, row: int, place: int) -> str:
        """Return a cell's words."""
        words: tuple[str, ...] = self.rows[row].words
        return words[place] if place < len(words) else ""  # while heads are told of before their rows

    def tip(self, row: int, place: int) -> str | None:
        """Return the row's tooltip, or the cell's words."""
        tip: str | None = self.rows[row].tip
        return self.text(row, place) if tip is None else tip

    def tint(self, row: int, place: int) -> str:
        """Return the tint of a row's first word."""
        return str(self.rows[row].tint) if place == 0 else ""

    def is_dark(self) -> bool:
        """Return whether it was told so."""
        return self.dark

    def is_bold(self, row: int, _place: int) -> bool:
        """Return whether it is a heading's cell."""
        return bool(self.rows[row].heading)

    def _show_heads(self, heads: tuple[Head, ...]) -> None:
        was, now = len(self.heads), len(heads)
        if now > was:
            self.beginInsertColumns(NOWHERE, was, now - 1)
            self.heads = heads
            self.endInsertColumns()
        elif now < was:
            self.beginRemoveColumns(NOWHERE, now, was - 1)
            self.heads = heads
            self.endRemoveColumns()
        elif heads != self.heads:
            self.heads = heads
        if heads:
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, now - 1)

    def _tell(self, first: int, last: int) -> None:
        if last >= first and self.heads:
            self.dataChanged.emit(self.index(first, 0), self.index(last, len(self.heads) - 1))


def as_text(rows: Sequence[Sequence[str]], heads: Sequence[str]) -> str:
    """Write rows for the clipboard, their heads first; no cell of them can run as a formula."""
    text = io.StringIO()
    writer = csv.writer(text, "excel-tab", lineterminator="\n")
    writer.writerows([shield(cell) for cell in row] for row in (heads, *rows))
    return text.getvalue()


# --- The table itself ---


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
