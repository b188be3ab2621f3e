"""Work in a thread beside the window, which stays alive: it says how far it is and can be stopped."""

import sys
from collections.abc import Callable
from threading import Thread
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from configurator.order.studied import Cancelled, Progress

Work = Callable[[Progress], Any]
LOOKED_AFTER = 40
"""Milliseconds between two looks at the work."""
QUICK_TURNS = 0.001
"""Seconds after which the thread lets the window have its turn; it would be five times that."""


class Worker(QObject):
    """One piece of work at a time, looked after by a timer, so that the thread itself touches no widget.

    Signals:
        progressed: so much of so much is done.
        ended: nothing runs any more.
    """

    progressed = Signal(int, int)
    ended = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._thread: Thread | None = None
        self._run: _Run | None = None
        self._then: Callable[[Any], object] = print
        self._failed: Callable[[Exception], object] = print
        self._turns = sys.getswitchinterval()
        self._looking = QTimer(self)
        self._looking.setInterval(LOOKED_AFTER)
        self._looking.timeout.connect(self._look)

    @property
    def running(self) -> bool:
        """Whether there is work under way."""
        return self._thread is not None

    def start(self, work: Work, then: Callable[[Any], object], failed: Callable[[Exception], object]) -> None:
        """Do the work, and then what follows, with its result or with the exception that ended it.

        Where it was stopped nothing follows. Raises RuntimeError while other work is under way.
        """
        if self._thread is not None:
            raise RuntimeError("other work is under way")
        self._then, self._failed = then, failed
        run = self._run = _Run(work)
        self._turns = sys.getswitchinterval()
        sys.setswitchinterval(QUICK_TURNS)
        # A program that is closed does not wait for it: a file is put in its place at the very end.
        self._thread = Thread(target=run, name="order desk", daemon=True)
        self._thread.start()
        self._looking.start()

    def cancel(self) -> None:
        """Ask the work to stop; it does so at its next step."""
        if self._run is not None:
            self._run.wanted = False

    def _look(self) -> None:
        thread, run = self._thread, self._run
        assert thread is not None
        assert run is not None
        ended = not thread.is_alive()
        self.progressed.emit(*run.done)
        if ended:
            self._end(run)

    def _end(self, run: "_Run") -> None:
        self._looking.stop()
        sys.setswitchinterval(self._turns)
        self._thread = self._run = None
        self.ended.emit()
        if run.error is None:
            self._then(run.result)
        elif not isinstance(run.error, Cancelled):
            self._failed(run.error)


class _Run:
    """What thread and window both see of the work; each value is put there whole."""

    def __init__(self, work: Work) -> None:
        self.work = work
        self.wanted = True
        self.done = (0, 0)
        self.result: Any = None
        self.error: Exception | None = None

    def __call__(self) -> None:
        try:
            self.result = self.work(self._note)
        except Exception as error:  # whatever it is, the window says it
            self.error = error

    def _note(self, done: int, total: int) -> bool:
        self.done = (done, total)
        return self.wanted
