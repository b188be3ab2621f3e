"""Work in a thread beside the window, which stays alive: it says how far it is and can be stopped."""

import sys
from collections.abc import Callable
from queue import SimpleQueue
from threading import Thread
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from configurator.long_work import Cancelled, Progress

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
        self._waiting: SimpleQueue[_Run | None] | None = None
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
        return self._run is not None

    def start(self, work: Work, then: Callable[[Any], object], failed: Callable[[Exception], object]) -> None:
        """Do the work, and then what follows, with its result or with the exception that ended it.

        Where it was stopped nothing follows. Raises RuntimeError while other work is under way.
        """
        if self._run is not None:
            raise RuntimeError("other work is under way")
        self._then, self._failed = then, failed
        self._run = _Run(work)
        self._turns = sys.getswitchinterval()
        sys.setswitchinterval(QUICK_TURNS)
        self._queue().put(self._run)
        self._looking.start()

    def cancel(self) -> None:
        """Ask the work to stop; it does so at its next step."""
        if self._run is not None:
            self._run.wanted = False

    def _queue(self) -> "SimpleQueue[_Run | None]":
        """Return what the thread takes its work from, and start the thread with the first.

        One thread does all of it: each would keep the memory it once took to itself.
        """
        if self._waiting is None:
            queue = self._waiting = SimpleQueue()
            # A program that is closed does not wait for it: a file is put in its place at the very end.
            Thread(target=_work_off, args=(queue,), name="order desk", daemon=True).start()
            self.destroyed.connect(lambda: queue.put(None))
        return self._waiting

    def _look(self) -> None:
        run = self._run
        assert run is not None
        ended = run.ended  # asked before it is told, so that the last word on how far it is is not missed
        self.progressed.emit(*run.done)
        if ended:
            self._end(run)

    def _end(self, run: "_Run") -> None:
        self._looking.stop()
        sys.setswitchinterval(self._turns)
        self._run = None
        self.ended.emit()
        if run.error is None:
            self._then(run.result)
        elif not isinstance(run.error, Cancelled):
            self._failed(run.error)


def _work_off(queue: "SimpleQueue[_Run | None]") -> None:
    while (run := queue.get()) is not None:
        run()
        del run  # its result may be large, and the next work may be long in coming


class _Run:
    """What thread and window both see of the work; each value is put there whole."""

    def __init__(self, work: Work) -> None:
        self.work = work
        self.wanted = True
        self.ended = False
        self.done = (0, 0)
        self.result: Any = None
        self.error: Exception | None = None

    def __call__(self) -> None:
        try:
            self.result = self.work(self._note)
        except Exception as error:  # whatever it is, the window says it
            self.error = error
        self.ended = True

    def _note(self, done: int, total: int) -> None:
        self.done = (done, total)
        if not self.wanted:
            raise Cancelled
