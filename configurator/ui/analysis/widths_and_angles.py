"""The page that asks the other way round: the least hinge width, what each stock width does, as a chart."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from configurator.drawing.charts.width_chart import width_chart
from configurator.model import Way
from configurator.rules.specification import MOST_COMPARED
from configurator.sentences import capitalized
from configurator.study import Study
from configurator.study.widths.leaf_widths import LeafWidths, widths_of
from configurator.ui.kit.chart_canvas import ChartCanvas, beside
from configurator.ui.kit.layout import BARE, GROW, QuietCombo, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.table import FittedTable
from configurator.ui.state.session import Session
from configurator.units import format_size
from configurator.wording.width_words import (
    WidthLine,
    WidthTable,
    break_words,
    headline,
    reading,
    width_table,
)

COMPARE = "compare"
EMPTY = "Choose an opening, or add one with + at the left: its hinge widths and angles are shown here."
_SNAP = 64
"""The pointer reads widths to this part of an inch."""


class WidthsAndAngles(QWidget):
    """A sentence, the table of the stock widths, and the chart; one leaf at a time."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.sentence, self.breaks = _words("least hinge width"), _words("where something changes")
        self.leaf = QuietCombo()
        self.leaf.setAccessibleName("leaf")
        self.compare = QPushButton("Compare this width too")
        self.table = FittedTable("hinge open widths and angles")
        self.chart = ChartCanvas("chart of angle and clear width over hinge open width")
        self._leaves: tuple[LeafWidths, ...] = ()
        self._known: Study | None = None
        self._drawn: tuple[object, ...] = ()
        self._lines: tuple[WidthLine, ...] = ()
        self._build()
        self.leaf.activated.connect(lambda _: self._show_leaf())
        self.table.chosen.connect(lambda _: self._show_selected())
        self.compare.clicked.connect(self.compare_selected)
        self.table.entered_row.connect(lambda _: self.compare_selected())
        self.chart.chosen.connect(self._take)

    def show_state(self) -> None:
        """Show the opening on show; the widths are worked out again only for another study."""
        study = self.session.study
        if self._known is not study:
            self._leaves = () if study is None else widths_of(study)
            self._known = study
            self._fill_leaves()
            self._drawn = ()
        now = (self.session.display, self.session.dark, self.session.plain_words, study is None)
        if now != self._drawn:
            self._show_leaf()
            self._drawn = now

    def shown_leaf(self) -> LeafWidths | None:
        """Return the leaf on show."""
        place = max(self.leaf.currentIndex(), 0)
        return self._leaves[place] if place < len(self._leaves) else None

    def selected(self) -> float | None:
        """Return the width of the selected row, inches."""
        place = self.table.currentRow()
        return self._lines[place].width if 0 <= place < len(self._lines) else None

    def compare_selected(self) -> None:
        """Set the selected width beside those compared: one step."""
        width = self.selected()
        if width is not None:
            self._take(width)

    def _take(self, width: float) -> None:
        compared = self._compared()
        if width not in compared and len(compared) < MOST_COMPARED:
            widths = [one for one in (*compared, width) if not isinstance(one, Way)]
            self.session.edit(COMPARE, [*sorted(widths), *(one for one in compared if isinstance(one, Way))])

    def _compared(self) -> tuple[float | Way, ...]:
        study = self.session.study
        return () if study is None else study.compared

    def _fill_leaves(self) -> None:
        names = [one.leaf for one in self._leaves]
        if names != [self.leaf.itemData(place) for place in range(self.leaf.count())]:
            self.leaf.clear()
            for name in names:
                self.leaf.addItem(f"{name} leaf", name)
        self.leaf.setVisible(len(names) > 1)

    def _show_leaf(self) -> None:
        leaf = self.shown_leaf()
        study = self.session.study
        for widget in (self._both, self.compare, self.breaks):
            widget.setVisible(leaf is not None)
        if leaf is None or study is None:
            self.sentence.setText(self.session.trouble or EMPTY)
            return
        display, plain = self.session.display, self.session.plain_words
        self.sentence.setText(headline(leaf, display))
        breaks = "; ".join(break_words(one, display, plain)[0] for one in leaf.breaks)
        self.breaks.setText(capitalized(breaks))
        tinted(self.breaks, "quiet", self.session.dark)
        self._fill_table(width_table(leaf, display, plain))

        def read(across: float) -> str:
            try:
                found = study.hanger(leaf.leaf, round(across * _SNAP) / _SNAP)
                return reading(found, display, plain)
            except ValueError as error:
                return str(error)

        choices = tuple(one.width for one in leaf.tried)
        self.chart.show_chart(width_chart(leaf, display, plain), read, self.session.dark, choices)

    def _fill_table(self, table: WidthTable) -> None:
        kept = self.selected()
        self._lines = table.lines
        self.table.fill(table.heads, [(line.cells, line.tip) for line in table.lines])
        widths = [line.width for line in table.lines]
        usual = self.shown_leaf()
        wanted = usual.next_in_stock.width if usual is not None and usual.next_in_stock else None
        chosen = kept if kept in widths else wanted
        self.table.setCurrentCell(0 if chosen is None else widths.index(chosen), 0)
        self._show_selected()

    def _show_selected(self) -> None:
        width, compared = self.selected(), self._compared()
        free = width is not None and width not in compared and len(compared) < MOST_COMPARED
        self.compare.setEnabled(free)
        if width is None:
            return
        name = format_size(width)
        already = width in compared
        self.compare.setText(f"{name} is compared" if already else f"Compare {name} too")

    def _build(self) -> None:
        above = across((self.sentence, 1), self.leaf, self.compare, spacing=2 * GRID)
        self.compare.setToolTip(
            "Set the selected width beside the others: Enter in the table, or a click on it in the chart"
        )
        left = QWidget()
        fill(left, down((self.table, 1), self.breaks, spacing=GRID, margins=BARE))
        sized(self.breaks, -1)
        self._both = beside(left, self.chart, (5, 4))
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        fill(self, down(above, (self._both, 1), GROW, spacing=GRID, margins=margins))


def _words(name: str) -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setAccessibleName(name)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
