"""The table of the schedule: rows are chosen whole, cells are edited in place, and keys do the rest."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QAbstractItemModel, QItemSelection, QItemSelectionModel, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QComboBox, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from configurator.ui.kit.look import GRID
from configurator.ui.kit.table import Table
from configurator.ui.kit.table_model import Index
from configurator.ui.schedule.columns import COLUMNS, HIDDEN, PLACES, Column
from configurator.ui.schedule.model import ScheduleModel

WIDTHS = {
    "mark": 19, "location": 40, "quantity": 16, "hand": 12, "size": 29, "leaves": 14, "frame": 36,
    "level": 14, "door": 34, "thickness": 16, "fire": 16, "closer": 12, "set": 14, "glass": 18, "remarks": 34,
    "hinge": 34, "angle": 17, "status": 27, "order_state": 22, "findings": 40, "questions": 30,
}  # fmt: skip
"""Width of each column on the grid of the window."""
GROWS = {"mark": 0.08, "location": 0.3, "size": 0.08, "hinge": 0.14, "angle": 0.12}
"""Share of what room is left over that a column takes; the last column has the rest."""


class WordsDelegate(QStyledItemDelegate):
    """Edits a cell that is one of a few words by choosing, and the others by typing."""

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """Return a list of the words there are, or a line to type in."""
        column = COLUMNS[index.column()]
        if not isinstance(column, Column) or not column.words:
            editor = super().createEditor(parent, option, index)
            editor.setAccessibleName(column.title)
            return editor
        choice = QComboBox(parent)
        choice.setAccessibleName(column.title)
        choice.addItems(list(column.words))
        choice.activated.connect(lambda: self._choose(choice))
        return choice

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Start from the word that holds."""
        if isinstance(editor, QComboBox):
            editor.setCurrentText(str(index.data(Qt.ItemDataRole.EditRole)))
        else:
            super().setEditorData(editor, index)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Hand the chosen word on."""
        if isinstance(editor, QComboBox):
            model.setData(model.index(index.row(), index.column()), editor.currentText())
        else:
            super().setModelData(editor, model, index)

    def _choose(self, choice: QComboBox) -> None:
        self.commitData.emit(choice)
        self.closeEditor.emit(choice)


class ScheduleTable(Table):
    """Shows the schedule.

    Signals:
        opened: the opening of the current row is to be worked on.
        copy_asked, paste_asked, remove_asked: keys that ask for it.
        moved: other rows than before are in view.
    """

    opened = Signal()
    copy_asked = Signal()
    paste_asked = Signal()
    remove_asked = Signal()
    moved = Signal()

    def __init__(self, schedule: ScheduleModel) -> None:
        super().__init__("schedule of openings", schedule)
        self.schedule = schedule
        self._sharing = self._set_by_user = False
        self.setItemDelegate(WordsDelegate(self))
        self.select_rows(several=True)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.EditKeyPressed | QAbstractItemView.EditTrigger.AnyKeyPressed
        )
        self._look()
        self.entered_row.connect(lambda _: self.opened.emit())
        self.verticalScrollBar().valueChanged.connect(lambda _: self.moved.emit())

    def _look(self) -> None:
        self.setAlternatingRowColors(True)
        heads = self.horizontalHeader()
        # To paint its heads Qt would ask whether whole columns are selected, cell by cell.
        heads.setSelectionModel(QItemSelectionModel(self.schedule, heads))
        heads.setSortIndicatorClearable(True)
        heads.setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
        heads.setSortIndicatorShown(True)
        heads.setSectionsClickable(True)
        heads.setSectionsMovable(True)
        heads.setStretchLastSection(True)
        for key, place in PLACES.items():
            self.setColumnWidth(place, WIDTHS[key] * GRID)
        self.hide_columns(HIDDEN)
        heads.sectionResized.connect(self._heed_user)

    @property
    def hidden(self) -> frozenset[str]:
        """The keys of the columns that are not shown."""
        return frozenset(key for key, place in PLACES.items() if self.isColumnHidden(place))

    def hide_columns(self, keys: Iterable[str]) -> None:
        """Show every column but those of some keys; the mark always stays."""
        hidden = set(keys) - {"mark"}
        for key, place in PLACES.items():
            self.setColumnHidden(place, key in hidden)
        self._share_room()

    def _share_room(self) -> None:
        """Widen the columns that may have more to say, unless the user has set a width."""
        if self._set_by_user:
            return
        taken = sum(width for key, width in WIDTHS.items() if not self.isColumnHidden(PLACES[key]))
        spare = max(self.viewport().width() - taken * GRID, 0)
        self._sharing = True
        for key, share in GROWS.items():
            self.setColumnWidth(PLACES[key], WIDTHS[key] * GRID + int(share * spare))
        self._sharing = False

    def _heed_user(self, section: int, _: int, __: int) -> None:
        if not self._sharing and section != self.horizontalHeader().logicalIndex(len(COLUMNS) - 1):
            self._set_by_user = True

    # --- Which rows ---

    def rows_in_view(self) -> range:
        """Return the rows that are in view."""
        first = self.rowAt(0)
        if first < 0:
            return range(0)
        last = self.rowAt(self.viewport().height() - 1)
        return range(first, (last if last >= 0 else self.schedule.rowCount() - 1) + 1)

    def chosen_rows(self) -> list[int]:
        """Return the selected rows, from the top."""
        chosen = self.selectionModel().selection()
        parts = [chosen.at(place) for place in range(chosen.count())]
        return sorted({row for part in parts for row in range(part.top(), part.bottom() + 1)})

    def choose(self, rows: Sequence[int], current: int | None) -> None:
        """Select those rows and make one of them the current one; without rows there is no current one."""
        chosen = QItemSelection()
        last = len(COLUMNS) - 1
        for first, end in _stretches(rows):
            chosen.select(self.schedule.index(first, 0), self.schedule.index(end, last))
        picker = self.selectionModel()
        if not rows:
            picker.clear()
        if current is not None:
            column = max(self.currentIndex().column(), 0)
            picker.setCurrentIndex(
                self.schedule.index(current, column), QItemSelectionModel.SelectionFlag.NoUpdate
            )
        picker.select(chosen, QItemSelectionModel.SelectionFlag.ClearAndSelect)

    # --- Qt's own ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open on Enter, copy, paste and remove; other keys move, choose and begin to edit."""
        if self.state() == QAbstractItemView.State.EditingState:
            super().keyPressEvent(event)
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy_asked.emit()
        elif event.matches(QKeySequence.StandardKey.Paste):
            self.paste_asked.emit()
        elif event.matches(QKeySequence.StandardKey.Delete):
            self.remove_asked.emit()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Tell that other rows are in view."""
        super().resizeEvent(event)
        self._share_room()
        self.moved.emit()


def _stretches(rows: Sequence[int]) -> list[tuple[int, int]]:
    """Return first and last of each stretch of rows next to each other; rows come in order."""
    found: list[tuple[int, int]] = []
    for row in rows:
        if found and row == found[-1][1] + 1:
            found[-1] = (found[-1][0], row)
        else:
            found.append((row, row))
    return found
