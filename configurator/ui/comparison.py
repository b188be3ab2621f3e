"""The comparison table: measured facts down, hinge open widths across, the difference in words."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from configurator.ui.look import GRID, tabular
from configurator.ui.session import Session

_FLAGS = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable


class ComparisonTable(QTableWidget):
    """Shows the rows that the drawing worked out; a leaf of several has a heading line of its own."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.setAccessibleName("comparison of hinge open widths")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setFrameShape(QTableWidget.Shape.NoFrame)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setFont(tabular(self.font()))
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(5 * GRID)
        self.verticalHeader().setMinimumSectionSize(5 * GRID)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.horizontalHeader().setHighlightSections(False)

    def show_state(self) -> None:
        """Show the comparison of the opening on show; empty while it cannot be studied."""
        from configurator.drawing.comparison import comparisons

        study = self.session.study
        if study is None:
            if self.session.opening is None:
                self.setRowCount(0)
            return
        tables = comparisons(study, self.session.display)
        heads = (
            ["Measured", *(f"{width} hinge" for width in tables[0].widths), "Difference"] if tables else []
        )
        lines: list[tuple[str, ...]] = []
        tips: list[tuple[str, str]] = []
        for table in tables:
            if len(tables) > 1:
                lines.append((f"{table.leaf} leaf".capitalize(), *("" for _ in heads[1:])))
                tips.append(("", ""))
            for row in table.rows:
                name = row.plain if self.session.plain_words else row.trade
                lines.append((name[:1].upper() + name[1:], *row.values, row.difference))
                other = row.trade if self.session.plain_words else row.plain
                tips.append((f"{other}\nmeasured {row.measured}", row.key))
        self._fill(heads, lines, tips)

    def _fill(self, heads: list[str], lines: list[tuple[str, ...]], tips: list[tuple[str, str]]) -> None:
        reshaped = self.columnCount() != len(heads)
        self.setColumnCount(len(heads))
        self.setRowCount(len(lines))
        self.setHorizontalHeaderLabels(heads)
        for place, (line, (tip, key)) in enumerate(zip(lines, tips, strict=True)):
            for column, text in enumerate(line):
                self._put(place, column, text, tip, heading=not key)
        if reshaped:
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

    def _share_width(self) -> None:
        header = self.horizontalHeader()
        for column in range(self.columnCount()):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
        header.setStretchLastSection(True)
