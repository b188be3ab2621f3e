"""The comparison table: measured facts down, hinge open widths across, the difference in words."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from configurator.sentences import capitalized
from configurator.ui.kit.look import GRID, sized, tabular
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.wording.comparison import Comparison, Row

WORK_TIP = "Double click or Enter: where this number comes from"
_FLAGS = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the table: its cells, what its tooltip says, and whether it heads a leaf."""

    cells: tuple[str, ...]
    tip: str
    heading: bool = False
    number: tuple[str, str] | None = None
    """The leaf and the name in the results of the number that the line is about."""


class ComparisonTable(QTableWidget):
    """Shows the rows that the drawing worked out; a leaf of several has a heading line of its own.

    Signals:
        work_wanted: the work behind a number is asked for; leaf, name in the results, and the place of the
            hinge open width, -1 for the difference.
    """

    work_wanted = Signal(str, str, int)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self._numbers: tuple[tuple[str, str] | None, ...] = ()
        self.cellDoubleClicked.connect(self._ask_for_work)
        self.setAccessibleName("comparison of hinge open widths")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setFrameShape(QTableWidget.Shape.NoFrame)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)  # arrows go from cell to cell; Tab goes on
        sized(self, -1)
        self.setFont(tabular(self.font()))
        self.horizontalHeader().setFont(self.font())
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(5 * GRID)
        self.verticalHeader().setMinimumSectionSize(5 * GRID)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.horizontalHeader().setHighlightSections(False)

    def show_state(self) -> None:
        """Show the comparison of the opening on show; empty while it cannot be studied."""
        from configurator.wording.comparison import comparisons

        study = self.session.study
        tables = comparisons(study, self.session.display) if study is not None else ()
        if not tables:
            self.setRowCount(0)
            self.setColumnCount(0)
            return
        heads = [
            "Measured",
            *(f"{width} hinge" for width in tables[0].widths),
            _difference_of(tables[0].widths),
        ]
        self._fill(heads, [line for table in tables for line in self._lines(table, named=len(tables) > 1)])

    def _lines(self, table: "Comparison", named: bool) -> list[Line]:
        heading = Line((f"{table.leaf} leaf".capitalize(), *("" for _ in (*table.widths, ""))), "", True)
        return [*([heading] if named else []), *(self._line(row, table.leaf) for row in table.rows)]

    def _line(self, row: "Row", leaf: str) -> Line:
        name, other = (row.plain, row.trade) if self.session.plain_words else (row.trade, row.plain)
        tip = f"{capitalized(other)}: measured {row.measured}\n{WORK_TIP}"
        cells = (capitalized(name), *row.values, row.difference)
        return Line(cells, tip, number=(leaf, row.key))

    def _fill(self, heads: list[str], lines: list[Line]) -> None:
        self._numbers = tuple(line.number for line in lines)
        reshaped = self.columnCount() != len(heads)
        self.setColumnCount(len(heads))
        self.setRowCount(len(lines))
        self.setHorizontalHeaderLabels(heads)
        for place, line in enumerate(lines):
            for column, text in enumerate(line.cells):
                self._put(place, column, text, line.tip, line.heading)
        if reshaped:
            self._fit_columns()
        self._share_width()

    def _put(self, row: int, column: int, text: str, tip: str, heading: bool) -> None:
        item = self.item(row, column)
        if item is None:
            item = QTableWidgetItem()
            item.setFlags(_FLAGS)
            self.setItem(row, column, item)
        if item.text() != text:
            item.setText(text)
        item.setToolTip(tip)
        font = self.font()
        font.setBold(heading)
        item.setFont(font)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Show the work behind the number that the keyboard is on."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._ask_for_work(self.currentRow(), self.currentColumn())
            return
        super().keyPressEvent(event)

    def _ask_for_work(self, row: int, column: int) -> None:
        number = self._numbers[row] if 0 <= row < len(self._numbers) else None
        if number is not None:
            is_difference = 1 < column == self.columnCount() - 1 and self.columnCount() > 3
            self.work_wanted.emit(*number, -1 if is_difference else max(column - 1, 0))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give what width is left over to the difference."""
        super().resizeEvent(event)
        self._share_width()

    def _share_width(self) -> None:
        """Stretch the last column only while that cuts nothing off it."""
        last = self.columnCount() - 1
        taken = sum(self.columnWidth(column) for column in range(last))
        fits = taken + self.sizeHintForColumn(last) <= self.viewport().width()
        self.horizontalHeader().setStretchLastSection(fits)

    def _fit_columns(self) -> None:
        header = self.horizontalHeader()
        for column in range(self.columnCount()):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)


def _difference_of(widths: tuple[str, ...]) -> str:
    """Head the difference by the widths it lies between."""
    return "Difference" if len(widths) < 2 else f"{widths[0].removesuffix(' in')} to {widths[-1]}"
