"""The swing control: turns the door of every panel at once, 0 to 180 degrees, and stops at what happens."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QEvent, QRect, QSize, Qt, Signal
from PySide6.QtGui import QHelpEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import (
    QGridLayout,
    QLabel,
    QSizePolicy,
    QSlider,
    QStyle,
    QToolButton,
    QToolTip,
    QVBoxLayout,
    QWidget,
)

from configurator.ui.kit.layout import StillSlider, StillSpin, add
from configurator.ui.kit.look import GRID, sized, tabular
from configurator.ui.state.session import Session

if TYPE_CHECKING:  # loaded with the study: the window is painted before the first one
    from configurator.study import Study
    from configurator.study.events import Moment

STEPS = 10
"""Slider steps in a degree."""
NEXT_KEY, BEFORE_KEY, SWEPT_KEY = "F8", "Shift+F8", "F7"


class SwingControl(QWidget):
    """Slider and angle field; arrow keys turn by 1 degree, page keys by 15, F8 to the next moment."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self._of: tuple[Study | None, object] = (None, None)
        self._moments: tuple[Moment, ...] = ()
        self._ticks: tuple[tuple[float, str], ...] = ()
        self.slider = StillSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, 180 * STEPS)
        self.slider.setSingleStep(STEPS)
        self.slider.setPageStep(15 * STEPS)
        self.slider.setMinimumWidth(24 * GRID)
        self.slider.setAccessibleName("swing of the door")
        self.slider.valueChanged.connect(lambda value: session.swing(value / STEPS))
        self.slider.setToolTip("Alt+Left and Alt+Right turn by 1°, Alt+Page Up and Page Down by 15°")
        self.strip = EventStrip(self.slider, STEPS)
        self.strip.chosen.connect(session.swing)
        self.happens = QLabel()
        self.happens.setAccessibleName("what happens at this angle")
        self.before = _button(Qt.ArrowType.LeftArrow, f"the moment before ({BEFORE_KEY})")
        self.next = _button(Qt.ArrowType.RightArrow, f"the next moment of the swing ({NEXT_KEY})")
        self.before.clicked.connect(lambda: self.step(forward=False))
        self.next.clicked.connect(lambda: self.step(forward=True))
        self.swept = QToolButton()
        self.angle = StillSpin()
        self._set_up_field()
        self._put_together()

    def step(self, forward: bool) -> None:
        """Turn the door to the next thing that happens, or to the one before; at the ends it stays."""
        from configurator.study.events import moment_before, next_moment

        moment = (next_moment if forward else moment_before)(self._moments, self.session.angle)
        if moment is not None:
            self.session.swing(moment.angle)

    def show_state(self) -> None:
        """Show the angle that holds; without an opening there is no door to turn."""
        self.setVisible(self.session.opening is not None)
        for widget, value in (
            (self.slider, round(self.session.angle * STEPS)),
            (self.angle, self.session.angle),
        ):
            widget.blockSignals(True)
            widget.setValue(value)  # type: ignore[arg-type]
            widget.blockSignals(False)
        self.swept.setChecked(self.session.swept)
        if self._of[0] is not None:
            self._show_moment()

    def show_moments(self) -> None:
        """Show what happens in the swing of the opening on show; only once studies are worked out."""
        study, shown = self.session.pictured, (self.session.display, self.session.plain_words)
        if self._of[0] is study and self._of[1] == shown:
            return
        self._of = (study, shown)
        self._moments, self._ticks = (), ()
        if study is not None:
            from configurator.study.events import moments
            from configurator.wording.swing_words import moment_words

            self._moments = moments(study)
            self._ticks = tuple(
                (moment.angle, moment_words(moment, study, *shown)) for moment in self._moments
            )
        self._show_moment()

    def _show_moment(self) -> None:
        """Tell what happens where the door stands, mark its tick, and which way there is more to come."""
        from configurator.study.events import moment_at, moment_before, next_moment

        angle = self.session.angle
        moment = moment_at(self._moments, angle)
        now = None if moment is None else moment.angle
        words = dict(self._ticks).get(now, "") if now is not None else ""
        self.happens.setToolTip(words)
        room = max(self.happens.width(), 1)
        self.happens.setText(self.happens.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room))
        self.happens.setAccessibleDescription(words)
        self.strip.show_ticks(self._ticks, now)
        self.before.setEnabled(moment_before(self._moments, angle) is not None)
        self.next.setEnabled(next_moment(self._moments, angle) is not None)

    def _set_up_field(self) -> None:
        self.angle.setRange(0, 180)
        self.angle.setDecimals(1)
        self.angle.setSuffix("°")
        self.angle.setKeyboardTracking(False)
        self.angle.setAccessibleName("angle of the door in degrees")
        self.angle.setFont(tabular(self.angle.font()))
        self.angle.valueChanged.connect(self.session.swing)
        self.swept.setText("Sweep")
        self.swept.setCheckable(True)
        self.swept.setToolTip(f"Show what the leaf and its hardware sweep ({SWEPT_KEY})")
        self.swept.setAccessibleName("show what it sweeps")
        self.swept.clicked.connect(self.session.show_swept)

    def _put_together(self) -> None:
        sized(self.happens, -1)
        self.happens.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        bar = QVBoxLayout()
        bar.setSpacing(0)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GRID)
        grid.setVerticalSpacing(0)
        grid.addWidget(QLabel("Swing"), 0, 0)
        grid.addLayout(bar, 0, 1)
        add(bar, self.slider, self.strip)  # only now that it stands in its place
        for column, widget in enumerate((self.before, self.next, self.swept, self.angle), start=2):
            grid.addWidget(widget, 0, column)
        grid.addWidget(self.happens, 1, 1, 1, 5)
        grid.setColumnStretch(1, 1)

    # --- Qt's own names ---

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Cut the words anew for the room there is."""
        super().resizeEvent(event)
        if self._of[0] is not None:
            self._show_moment()


def _button(arrow: Qt.ArrowType, words: str) -> QToolButton:
    button = QToolButton()
    button.setArrowType(arrow)
    button.setAutoRaise(True)
    button.setToolTip(f"Go to {words}")
    button.setAccessibleName(f"go to {words}")
    return button


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
