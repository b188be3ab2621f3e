"""The preview as a table to look at, with the choosers for its head."""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableView

from configurator.ui.intake.choosers import ChooserHeader
from configurator.ui.intake.preview import OUTCOME, Preview
from configurator.ui.kit.look import GRID, sized, tabular

_NARROWEST, _WIDEST = 34 * GRID, 60 * GRID
_OUTCOME_WIDTH = 84 * GRID
_ROWS_MEASURED = 40


class PreviewTable(QTableView):
    """Shows the rows of a schedule; Tab goes through the choosers and out again."""

    def __init__(self, preview: Preview) -> None:
        super().__init__()
        self.preview = preview
        self.header = ChooserHeader(self)
        self.setModel(preview)
        self.setHorizontalHeader(self.header)
        self.setAccessibleName("rows of the schedule")
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
        sized(self, -1)
        self.setFont(tabular(self.font()))
        self.header.setFont(self.font())
        self.verticalHeader().setFont(self.font())
        self.verticalHeader().setDefaultSectionSize(6 * GRID)
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
        self.scrollTo(index, QTableView.ScrollHint.PositionAtCenter)

    def _bring_into_view(self, section: int) -> None:
        self.scrollTo(self.preview.index(max(self.rowAt(0), 0), section))
