"""A table to read and to choose a row from: no grid, no frame, rows close together."""

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QTableWidget

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
