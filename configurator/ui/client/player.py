"""Plays the swing: turns the door from where it stands to where it stops, evenly and once."""

from PySide6.QtCore import QEasingCurve, QObject, QVariantAnimation, Signal

from configurator.ui.state.session import Session

MILLISECONDS_A_DEGREE = 20.0
_SAME = 1e-6


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
        start = float(self.session.angle) if self.session.angle < self.end - _SAME else 0.0
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
        if self.playing and abs(self.session.angle - self._shown) > _SAME:
            self.pause()

    def _turn(self, angle: float) -> None:
        self._shown = float(angle)
        self.session.swing(self._shown)
