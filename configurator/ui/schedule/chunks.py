"""Long work in short pieces between what the window has to do, so that it stays alive and can be stopped."""

from collections.abc import Callable, Iterator
from time import perf_counter

from PySide6.QtCore import QObject, QTimer, Signal

BUDGET = 0.008
"""Seconds of one piece: a picture of the screen takes 16 ms."""
FIRST = 0.03
"""Seconds of the first piece: what takes no longer is done at once."""
_END = object()


class Chunks(QObject):
    """Runs one iterator to its end; a new one takes the place of the one before.

    Signals:
        progressed: so many steps are done.
        stopped: nothing runs any more; the argument says whether the work came to its end.
    """

    progressed = Signal(int)
    stopped = Signal(bool)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._steps: Iterator[object] | None = None
        self._then: Callable[[], object] = _nothing
        self._done = 0
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(lambda: self._run(BUDGET))

    @property
    def running(self) -> bool:
        """Whether there is work left."""
        return self._steps is not None

    def start(
        self, steps: Iterator[object], then: Callable[[], object] | None = None, first: float = FIRST
    ) -> None:
        """Do the steps, and then what is to follow; `first` seconds of them before this returns."""
        self.cancel()
        self._steps, self._then, self._done = steps, then or _nothing, 0
        self._run(first)
        if self.running:
            self._timer.start()

    def cancel(self) -> None:
        """Stop before the end; what is to follow does not happen."""
        if self.running:
            self._end(False)

    def _run(self, seconds: float) -> None:
        until = perf_counter() + seconds
        steps = self._steps
        assert steps is not None
        try:
            while perf_counter() < until:
                if next(steps, _END) is _END:
                    self._end(True)
                    return
                self._done += 1
        except Exception:
            self._end(False)
            raise
        self.progressed.emit(self._done)

    def _end(self, whole: bool) -> None:
        self._timer.stop()
        then, self._steps, self._then = self._then, None, _nothing
        self.stopped.emit(whole)
        if whole:
            then()


def _nothing() -> None:
    """What follows where nothing does."""
