"""A chart in the window: it tells the values at the pointer, and takes a click on a width that is marked."""

from collections.abc import Callable
from typing import Any

from matplotlib.backends.backend_qtagg import FigureCanvasQTAgg
from PySide6.QtCore import QEvent, QPointF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QSplitter, QToolTip, QWidget

from configurator.drawing.charts.chart import Chart
from configurator.drawing.charts.chart_sheet import ChartSheet, chart_sheet
from configurator.export.figure import POINTS_PER_INCH, ChartArtists, make_figure

DPI = 96.0
NEAR = 8.0
"""Pixels within which the pointer is on a marked width."""
_LEAST = QSize(220, 112)
Reader = Callable[[float], str]


class ChartCanvas(FigureCanvasQTAgg):
    """One chart, laid out anew for every size; its words are on hover and in its accessible description.

    Signals:
        chosen(float): a marked value across was clicked.
        pointed(object): the value across under the pointer, None where there is none any more.
        picked(float): the plot was clicked at a value across.
    """

    chosen = Signal(float)
    pointed = Signal(object)
    picked = Signal(float)

    def __init__(self, name: str) -> None:
        super().__init__(make_figure(3.0 * POINTS_PER_INCH, 2.0 * POINTS_PER_INCH, DPI))
        self.setMinimumSize(_LEAST)
        self.setMouseTracking(True)
        self.setAccessibleName(name)
        self._artists = ChartArtists(self.figure)
        self._chart: Chart | None = None
        self._read: Reader = lambda _: ""
        self._choices: tuple[float, ...] = ()
        self.line_at: float | None = None
        self._dark = False
        self._ground: Any = None
        self.sheet: ChartSheet | None = None

    def show_chart(self, chart: Chart, read: Reader, dark: bool, choices: tuple[float, ...] = ()) -> None:
        """Show a chart; read says what there is at a value across, choices are those that can be clicked."""
        self._chart, self._read, self._dark, self._choices = chart, read, dark, choices
        self.setAccessibleDescription(chart.said)
        self._redraw()

    def stand_line(self, across: float | None) -> None:
        """Stand the thin upright line at a value across, or take it away."""
        if across == self.line_at:
            return
        self.line_at = across
        if self.sheet is not None:
            self._artists.point([self.sheet.cursor(across)], self._dark)
            self._paint_line()

    def draw(self) -> None:
        """Draw what stands, keep it, and lay the line over it."""
        line = self._artists.over_the_ground()
        line.set_visible(False)
        super().draw()
        self._ground = self.copy_from_bbox(self.figure.bbox)
        line.set_visible(True)
        self._paint_line()

    def _paint_line(self) -> None:
        if self._ground is not None:
            self.restore_region(self._ground)
            self.figure.draw_artist(self._artists.over_the_ground())
            self.update()

    def read_at(self, position: QPointF) -> str:
        """Return what there is at a place of the widget; nothing beside the plot."""
        across = self._across(position)
        return "" if across is None else self._read(across)

    def choice_at(self, position: QPointF) -> float | None:
        """Return the marked value at a place of the widget, None where there is none near."""
        if self.sheet is None or self._across(position) is None:
            return None
        near = [(abs(self._pixel(choice) - position.x()), choice) for choice in self._choices]
        distance, choice = min(near, default=(NEAR + 1.0, 0.0))
        return choice if distance <= NEAR else None

    def _pixel(self, across: float) -> float:
        assert self.sheet is not None
        return self.sheet.place(across, self.sheet.chart.left.low)[0] * DPI / POINTS_PER_INCH

    def _across(self, position: QPointF) -> float | None:
        if self.sheet is None:
            return None
        share = POINTS_PER_INCH / DPI
        y = self.sheet.height - position.y() * share
        inside = 0.0 <= y <= self.sheet.plot.top
        return self.sheet.value_across(position.x() * share) if inside else None

    def _redraw(self) -> None:
        width, height = (size / DPI * POINTS_PER_INCH for size in (self.width(), self.height()))
        if self._chart is None or width < 1 or height < 1:
            return
        self.sheet = chart_sheet(self._chart, width, height)
        self._artists.show(self.sheet.groups, [self.sheet.cursor(self.line_at)], self._dark)
        self.draw()

    # --- Qt's own names ---

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the chart out again for the room there is."""
        self._ground = None
        super().resizeEvent(event)
        self._redraw()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell what there is at the pointer; over a marked width it says that it can be clicked."""
        super().mouseMoveEvent(event)
        on = self.choice_at(event.position())
        hand = Qt.CursorShape.ArrowCursor if on is None else Qt.CursorShape.PointingHandCursor
        self.setCursor(hand)
        said = self.read_at(event.position()) if on is None else self._read(on)
        QToolTip.showText(event.globalPosition().toPoint(), said, self)
        self.pointed.emit(self._across(event.position()))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a click on a marked width."""
        super().mousePressEvent(event)
        if event.button() != Qt.MouseButton.LeftButton:
            return
        on, across = self.choice_at(event.position()), self._across(event.position())
        if on is not None:
            self.chosen.emit(on)
        if across is not None:
            self.picked.emit(across)

    def leaveEvent(self, event: QEvent) -> None:
        """Say nothing any more."""
        super().leaveEvent(event)
        QToolTip.hideText()
        self.pointed.emit(None)


def beside(left: QWidget, right: QWidget, shares: tuple[int, int]) -> QWidget:
    """Return two widgets side by side with a bar between them that can be dragged."""
    split = QSplitter(Qt.Orientation.Horizontal)
    split.setChildrenCollapsible(False)
    for place, widget in enumerate((left, right)):
        split.addWidget(widget)
        split.setStretchFactor(place, shares[place])
    split.setSizes([1000 * share for share in shares])
    return split
