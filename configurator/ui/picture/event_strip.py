"""The strip under the swing slider: a tick for every moment worth stopping at, told on hovering."""

from typing import Any

from PySide6.QtCore import QEvent, QRect, QSize, Qt, Signal
from PySide6.QtGui import QHelpEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QSlider, QStyle, QToolTip, QWidget

from configurator.ui.kit.look import GRID

_HEIGHT = 2 * GRID
_WIDE, _WIDER = 1, 3
_NEAR = 4
"""The pointer counts as on a tick within so many pixels."""


class EventStrip(QWidget):
    """Ticks that stand below the slider's handle where it comes to be; the one at the angle on show is wider.

    Signals: chosen(float), the angle of the tick that was clicked, degrees.
    """

    chosen = Signal(float)

    def __init__(self, slider: QSlider, steps: int) -> None:
        super().__init__()
        self._slider, self._steps = slider, steps
        self._ticks: tuple[tuple[float, str], ...] = ()
        self._now: float | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("moments of the swing")

    def show_ticks(self, ticks: tuple[tuple[float, str], ...], now: float | None) -> None:
        """Show ticks, each an angle in degrees with its words, and which of them the door stands at."""
        if (ticks, now) != (self._ticks, self._now):
            self._ticks, self._now = ticks, now
            self.setAccessibleDescription("; ".join(words for _, words in ticks))
            self.update()

    def words_at(self, x: float) -> str:
        """Return the words of the ticks at a place across the strip, pixels; empty where there is none."""
        return "\n".join(words for angle, words in self._ticks if abs(self._place(angle) - x) <= _NEAR)

    def _place(self, angle: float) -> int:
        """Return where the middle of the slider's handle stands at an angle."""
        handle = self.style().pixelMetric(QStyle.PixelMetric.PM_SliderLength, None, self._slider)
        value = round(angle * self._steps)
        room = self._slider.width() - handle
        low, high = self._slider.minimum(), self._slider.maximum()
        return handle // 2 + QStyle.sliderPositionFromValue(low, high, value, room)

    # --- Qt's own names ---

    def sizeHint(self) -> QSize:
        """Ask for a low strip."""
        return QSize(40 * GRID, _HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ticks in the window's own ink."""
        painter = QPainter(self)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(
            self.palette().windowText()
        )  # not fillRect: its first call makes every preset gradient
        for angle, _ in self._ticks:
            wide = _WIDER if angle == self._now else _WIDE
            tick = QRect(self._place(angle) - wide // 2, 0, wide, _HEIGHT - 2)
            painter.drawRect(tick)
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the tick that was clicked."""
        x = event.position().x()
        near = [angle for angle, _ in self._ticks if abs(self._place(angle) - x) <= _NEAR]
        if near and event.button() == Qt.MouseButton.LeftButton:
            self.chosen.emit(min(near, key=lambda angle: abs(self._place(angle) - x)))

    def event(self, event: QEvent) -> Any:
        """Tell on hovering what happens at a tick."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self.words_at(event.pos().x()), self)
            return True
        return super().event(event)
