"""The client's picture on a canvas: two widths, large letters, the doors turning on the quick path."""

import math

from PySide6.QtCore import QEasingCurve, QObject, QPointF, Qt, QVariantAnimation, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QWidget

from configurator.drawing.base.view import Group
from configurator.drawing.client.client_picture import (
    ClientPicture,
    client_picture,
    turning_groups,
    turning_note_groups,
)
from configurator.export.figure import POINTS_PER_INCH, SheetArtists
from configurator.ui.kit.canvas import DPI, PlanCanvas
from configurator.ui.state.session import Session
from configurator.units import CLOSED_IN

_OF_WIDTH, _OF_HEIGHT = 1 / 62, 1 / 37
"""Of a large screen the letters take so much, whatever the reader's distance asks at the least."""


class ClientCanvas(PlanCanvas):
    """The picture of one opening as a client is shown it; its letters are as high as `set_letters` says.

    Signals:
        turned: a finger or the mouse has dragged the door to an angle, degrees.
    """

    turned = Signal(float)

    def __init__(self, parent: QWidget | None = None) -> None:
        self._letters = 10.0
        self._also: tuple[str, ...] = ()
        self._held: tuple[int, float] | None = None
        super().__init__(parent)
        self.setAccessibleName("Picture of the door from above, one for each hinge width")

    def set_letters(self, pixels: float) -> None:
        """Set the type size of the picture, pixels of the screen."""
        points = pixels / DPI * POINTS_PER_INCH
        if points != self._letters:
            self._letters = points
            self._redraw()

    def make_artists(self) -> SheetArtists:
        """Return collections that turn the client's picture."""
        return SheetArtists(self.figure, turning_groups, turning_note_groups)

    def lay_out(self, width: float, height: float) -> ClientPicture:
        """Return the two widths laid out so many points wide and high."""
        assert self._study is not None
        letters = max(self._letters, min(width * _OF_WIDTH, height * _OF_HEIGHT))
        return client_picture(self._study, self._display, width, height, letters, self._also)

    def accessible_summary(self) -> str:
        """Return every hinge with its verdict as one sentence."""
        panels = self._sheet.panels if self._sheet else ()
        return "; ".join(f"{one.title}: {one.verdict.title}" for one in panels)

    def tell_also(self, lines: tuple[str, ...]) -> None:
        """Set further lines under the advice, as what it costs; shown with the next study."""
        self._also = lines

    def turning_groups(self) -> tuple[Group, ...]:
        """Return everything that stands where the angle puts it."""
        return (*turning_groups(self._sheet, self._angle), *turning_note_groups(self._sheet, self._angle))

    # --- Qt's own names ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the door of the picture under the pointer."""
        panel = self._panel_at(event.position())
        if panel is not None and event.button() == Qt.MouseButton.LeftButton:
            stands = min(self._angle, self._sheet.panels[panel].room.first.candidate.rests_at)
            self._held = (panel, self._angle_at(event.position(), panel) - stands)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Turn the door that is held; with nothing held tell what is under the pointer."""
        if self._held is None:
            super().mouseMoveEvent(event)
            return
        panel, ahead = self._held
        angle = (self._angle_at(event.position(), panel) - ahead + 90.0) % 360.0 - 90.0
        self.turned.emit(min(max(angle, 0.0), 180.0))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of the door."""
        super().mouseReleaseEvent(event)
        self._held = None

    def _panel_at(self, position: QPointF) -> int | None:
        if self._sheet is None:
            return None
        at = self._on_sheet(position)
        return next((n for n, window in enumerate(self._sheet.windows) if window.has(at)), None)

    def _angle_at(self, position: QPointF, panel: int) -> float:
        """Return the direction from a picture's pin to a place of the widget, as the door turns, degrees."""
        room = self._sheet.panels[panel].room
        x, y = room.view.to_plan(self._on_sheet(position))
        pin_x, pin_y = room.first.pin.at
        return math.degrees(math.atan2(y - pin_y, x - pin_x))

    def measured_under(self, position: QPointF) -> None:
        """Say that nothing is measured here: no number of the client's picture asks for its work."""

    def looked_at(self, position: QPointF) -> None:
        """Say that no place of the picture is looked up beside it."""


MILLISECONDS_A_DEGREE = 20.0


class Player(QObject):
    """Turns the session's door; whoever else turns it meanwhile has it, and the playing stops.

    Signals:
        turned_on: whether it plays now.
    """

    turned_on = Signal(bool)

    def __init__(self, session: Session, owner: QObject) -> None:
        super().__init__(owner)
        self.session = session
        self.end = 180.0
        """Where the door stops, degrees."""
        self._shown = session.angle
        self._run = QVariantAnimation(self)
        self._run.setEasingCurve(QEasingCurve.Type.InOutSine)
        self._run.valueChanged.connect(self._turn)
        self._run.finished.connect(lambda: self.turned_on.emit(False))

    @property
    def playing(self) -> bool:
        """Whether the door is turning."""
        return bool(self._run.state() == QVariantAnimation.State.Running)

    def play(self) -> None:
        """Turn the door on from where it stands, or from closed where it stands at its end."""
        start = float(self.session.angle) if self.session.angle < self.end - CLOSED_IN else 0.0
        self._shown = start
        self.session.swing(start)
        self._run.setStartValue(start)
        self._run.setEndValue(float(self.end))  # two kinds of number would not be turned between
        self._run.setDuration(max(int(MILLISECONDS_A_DEGREE * (self.end - start)), 1))
        self._run.start()
        self.turned_on.emit(True)

    def pause(self) -> None:
        """Leave the door where it stands."""
        if self.playing:
            self._run.stop()
            self.turned_on.emit(False)

    def toggle(self) -> None:
        """Play, or pause."""
        if self.playing:
            self.pause()
        else:
            self.play()

    def follow(self) -> None:
        """Give way where somebody else has turned the door."""
        if self.playing and abs(self.session.angle - self._shown) > CLOSED_IN:
            self.pause()

    def _turn(self, angle: float) -> None:
        self._shown = float(angle)
        self.session.swing(self._shown)
