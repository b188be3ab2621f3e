"""A quiet table as wide as its words; what room is left over goes to the last column."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from configurator.ui.kit.look import GRID, sized, tabular


class QuietTable(QTableWidget):
    """Rows are selected whole, one at a time; Tab leaves the table, and arrows move within it."""

    def __init__(self, columns: int, name: str) -> None:
        super().__init__(0, columns)
        self.setAccessibleName(name)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setTabKeyNavigation(False)
        self.setFrameShape(QTableWidget.Shape.NoFrame)
        self.setShowGrid(False)
        self.setWordWrap(False)
        sized(self, -1)
        self.setFont(tabular(self.font()))
        self.horizontalHeader().setFont(self.font())
        self.horizontalHeader().setHighlightSections(False)
        self.verticalHeader().hide()
        self.verticalHeader().setMinimumSectionSize(5 * GRID)
        self.verticalHeader().setDefaultSectionSize(5 * GRID)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the selected row in view."""
        super().resizeEvent(event)
        self.scrollTo(self.currentIndex())


class FittedTable(QuietTable):
    """Filled whole: heads, and rows of texts each with what its tooltip says.

    With `wraps` the last column takes the room that is left and its words go on in a second line.
    """

    def __init__(self, name: str, wraps: bool = False) -> None:
        super().__init__(0, name)
        self._wraps = wraps
        self.setWordWrap(wraps)
        header = self.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)

    def fill(self, heads: Sequence[str], rows: Sequence[tuple[Sequence[str], str]]) -> None:
        """Show other rows."""
        # Fitting the columns anew for every cell that is put in takes longer than all the rest.
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setColumnCount(len(heads))
        self.setHorizontalHeaderLabels(list(heads))
        self.setRowCount(len(rows))
        for place, (texts, tip) in enumerate(rows):
            for column, text in enumerate(texts):
                item = QTableWidgetItem(text)
                item.setFlags(Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable)
                item.setToolTip(tip)
                self.setItem(place, column, item)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self._share_width()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give what room is left over to the last column."""
        super().resizeEvent(event)
        self._share_width()

    def _share_width(self) -> None:
        """Stretch the last column only while that cuts nothing off it, or where its words wrap."""
        last = self.columnCount() - 1
        header = self.horizontalHeader()
        if self._wraps:
            header.setStretchLastSection(True)
            self.resizeRowsToContents()
            return
        taken = sum(self.columnWidth(column) for column in range(last))
        wanted = max(self.sizeHintForColumn(last), header.sectionSizeHint(last)) if last >= 0 else 0
        header.setStretchLastSection(taken + wanted <= self.viewport().width())


class EnteredTable(FittedTable):
    """A fitted table in which Enter does something with the selected row.

    Signals:
        entered_row: Enter was pressed.
    """

    entered_row = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Tell of Enter; every other key is the table's own."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.entered_row.emit()
            return
        super().keyPressEvent(event)
