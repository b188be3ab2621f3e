"""The page about the whole swing: the two long edges, the bevel needed, how far the door stands out."""

from collections.abc import Sequence

from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from configurator.drawing.charts.swing_chart import swing_chart
from configurator.study import Study
from configurator.study.hang import hinge_words
from configurator.study.over_the_swing import OverTheSwing, over_the_swing
from configurator.ui.kit.chart_canvas import ChartCanvas, beside
from configurator.ui.kit.layout import QuietCombo
from configurator.ui.kit.look import GRID
from configurator.ui.kit.table import FittedTable
from configurator.ui.state.session import Session
from configurator.wording.swing_words import swing_reading, swing_rows

EMPTY = "Choose an opening, or add one with + at the left: its swing is shown here."
GAPS = (1 / 32, 1 / 16, 3 / 32, 1 / 8)
"""Gaps at the lock edge, inches, that a bevel can be asked for."""
USUAL_GAP = 1 / 16


class OverTheSwingPage(QWidget):
    """What each width does over the swing, and a chart of one of them that follows the door."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.leaf, self.width_shown, self.gap = QuietCombo(), QuietCombo(), QuietCombo()
        self.words = QLabel(EMPTY)
        self.words.setWordWrap(True)
        self.table = FittedTable("edges, and how far the door stands out")
        self.chart = ChartCanvas("chart of how far the door stands out over its angle")
        self._swings: tuple[OverTheSwing, ...] = ()
        self._study: Study | None = None
        self._drawn: tuple[object, ...] = ()
        self._build()
        for combo in (self.leaf, self.width_shown, self.gap):
            combo.activated.connect(lambda _: self.show_state())
        session.changed.connect(self._follow_door)

    def _follow_door(self, by: str) -> None:
        """A swing of the door is told to the picture only, so the line listens for itself."""
        if by == "swing" and self.isVisible():
            self.chart.stand_line(self.session.angle)

    def show_state(self) -> None:
        """Show the opening on show; a swing of the door only moves the line in the chart."""
        study, display = self.session.study, self.session.display
        asked = (self.leaf.currentIndex(), self.width_shown.currentIndex(), self.gap.currentData())
        now = (display, self.session.dark, *asked)
        if study is not self._study or now != self._drawn or study is None:
            self._work_out(study)
            self._show_swings(study)
            asked = (self.leaf.currentIndex(), self.width_shown.currentIndex(), self.gap.currentData())
            self._drawn = (display, self.session.dark, *asked)
        self.chart.stand_line(self.session.angle)

    def shown(self) -> tuple[OverTheSwing, ...]:
        """Return the widths of the leaf on show."""
        leaf = self.leaf.currentData()
        return tuple(one for one in self._swings if one.leaf == leaf)

    def _work_out(self, study: Study | None) -> None:
        self._study = study
        self._swings = () if study is None else over_the_swing(study, self.gap.currentData() or USUAL_GAP)
        self._fill_gaps()
        leaves = list(dict.fromkeys(one.leaf for one in self._swings))
        _fill(self.leaf, [(f"{leaf} leaf", leaf) for leaf in leaves])
        self.leaf.setVisible(len(leaves) > 1)
        widths = [(hinge_words(one.on), one.on) for one in self.shown()]
        _fill(self.width_shown, widths)

    def _fill_gaps(self) -> None:
        display = self.session.display
        _fill(self.gap, [(display.exact(gap), gap) for gap in GAPS], USUAL_GAP)

    def _show_swings(self, study: Study | None) -> None:
        swings = self.shown()
        for widget in (self._line, self._both):
            widget.setVisible(bool(swings))
        self.words.setVisible(not swings)
        self.words.setText(self.session.trouble or EMPTY)
        if study is None or not swings:
            return
        display = self.session.display
        heads = ["Over the whole swing", *(hinge_words(one.on) for one in swings)]
        rows = swing_rows(swings, display)
        self.table.fill(heads, [((row.name, *row.values), f"Measured {row.measured}") for row in rows])
        place = max(self.width_shown.currentIndex(), 0)
        chart = swing_chart(swings, place, study.opening.use, display)
        self.chart.show_chart(
            chart, lambda angle: swing_reading(swings[place], angle, display), self.session.dark
        )

    def _build(self) -> None:
        self._line = QWidget()
        line = QHBoxLayout(self._line)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.leaf)
        for label, combo in (("Gap wanted at the lock edge", self.gap), ("Chart of", self.width_shown)):
            name = QLabel(label)
            name.setBuddy(combo)
            combo.setAccessibleName(label)
            line.addWidget(name)
            line.addWidget(combo)
        line.addStretch()
        self.leaf.setAccessibleName("leaf")
        self.width_shown.setMinimumContentsLength(12)
        self._both = beside(self.table, self.chart, (1, 1))
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        column.setSpacing(GRID)
        column.addWidget(self.words)
        column.addWidget(self._line)
        column.addWidget(self._both, 1)
        column.addStretch()


def _fill(combo: QuietCombo, choices: Sequence[tuple[str, object]], usual: object = None) -> None:
    """Show other choices, keeping the one that was made where it is still among them."""
    kept = combo.currentData() if combo.count() else usual
    combo.clear()
    for text, value in choices:
        combo.addItem(text, value)
    values = [value for _, value in choices]
    combo.setCurrentIndex(values.index(kept) if kept in values else (0 if values else -1))
