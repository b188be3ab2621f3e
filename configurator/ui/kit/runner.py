"""Long work in the window, which stays alive: it shows how far the work is, and can stop it.

Work that can be cut goes in `Pieces` between the window's other duties. Work that cannot be cut, because a
library runs the loop or a disk is waited for, goes `Beside` the window in a thread. It is no second process:
that would have to be sent a job of ten thousand openings and would send back copies, but history, tallies and
the texts of a file know an opening by its identity.

A thread beside Qt objects has one trap. Python's cyclic collector runs in whichever thread allocates, and a
thread that frees a widget of the window may crash the program. So the collector is off while a thread of work
lives, and the window's own thread collects in its place (`_Interpreter`). Nor does a thread free anything of
Qt by counting references: all it was given is kept here until it has ended.
"""

import gc
import logging
import sys
from collections.abc import Callable, Iterator
from threading import Thread
from time import perf_counter
from typing import Any

from PySide6.QtCore import QCoreApplication, QObject, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QPushButton, QWidget

from configurator.long_work import Cancelled, Progress
from configurator.ui.kit.look import GRID

PIECE = 0.008
"""Seconds of one piece: a picture of the screen takes 16 ms."""
FIRST = 0.03
"""Seconds of the first piece: what takes no longer is done at once."""
LOOKED_AFTER = 40
"""Milliseconds between two looks at a thread."""
TURN = 0.001
"""Seconds after which a thread gives way to the window. Python's own are 0.005, which pass at every call into
Qt: beside a document being written a table took 27 to 92 ms to paint, and takes 10 to 20 ms with this."""
Then = Callable[[Any], object]


class Work(QObject):
    """Work that goes on while the window lives.

    Signals:
        began: what is done, and how many steps it has; 0 where nobody knows yet.
        progressed: so many steps are done, of how many.
        ended: nothing runs any more; the argument says whether the work came to its end.
    """

    began = Signal(str, int)
    progressed = Signal(int, int)
    ended = Signal(bool)

    def __init__(self, parent: QObject | None, precious: bool) -> None:
        """`precious` work is not lost without a question when the window closes."""
        super().__init__(parent)
        self.precious = precious
        self.what = ""
        """What is being done, as in "Writing order.pdf"; empty while nothing is."""

    def cancel(self) -> None:
        """Stop before the end; what is to follow does not happen."""
        raise NotImplementedError

    def give_up(self) -> None:
        """Stop, and return once nothing is at work any more; nothing follows."""
        self.cancel()


class Pieces(Work):
    """Runs one iterator to its end, in pieces; a new one takes the place of the one before."""

    def __init__(self, parent: QObject, first: float | None = None, precious: bool = False) -> None:
        """`first` is the seconds of the first piece, done before `start` returns; as a rule FIRST."""
        super().__init__(parent, precious)
        self._first = first
        self._steps: Iterator[int] | None = None
        self._then: Callable[[], object] | None = None
        self._done = self._total = 0
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(lambda: self._run(PIECE))

    @property
    def running(self) -> bool:
        """Whether there is work left."""
        return self._steps is not None

    def start(
        self,
        steps: Iterator[int],
        then: Callable[[], object] | None = None,
        what: str = "",
        total: int = 0,
    ) -> None:
        """Do the steps, which yield how many are done, and then what is to follow.

        What a step raises ends the work and is raised on.
        """
        self.cancel()
        self._steps, self._then, self._done, self._total = steps, then, 0, total
        self.what = what
        self.began.emit(what, total)
        self._run(FIRST if self._first is None else self._first)
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
                self._done = next(steps)
        except StopIteration:
            self._end(True)
            return
        except Exception:
            self._end(False)
            raise
        self.progressed.emit(self._done, self._total)

    def _end(self, whole: bool) -> None:
        self._timer.stop()
        then, self._steps, self._then, self.what = self._then, None, None, ""
        self.ended.emit(whole)
        if whole and then is not None:
            then()


class Beside(Work):
    """Does one piece of work at a time in a thread, which touches nothing of Qt: a timer looks after it.

    Signals:
        failed: the sentence that says why the work came to nothing, or was not begun.
    """

    failed = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent, precious=True)
        self._looking = QTimer(self)
        self._looking.setInterval(LOOKED_AFTER)
        self._looking.timeout.connect(self._look)
        self._runs: list[_Run] = []
        runs = self._runs  # nothing of this object can be asked any more when it is told to be destroyed
        self.destroyed.connect(lambda: _give_up(runs))
        application = QCoreApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.give_up)

    @property
    def running(self) -> bool:
        """Whether there is work under way."""
        return bool(self._runs)

    def start(self, what: str, undone: str, work: Callable[[Progress], Any], then: Then) -> None:
        """Do the work and then what follows, with its result; `failed` tells what else came of it.

        `undone` says what is not so when the work comes to nothing, as in "order.pdf was not written". Work
        asked for while other work is under way is refused in words.
        """
        if self._runs:
            self.failed.emit(f"{undone}. {self.what} is under way: wait for it, or cancel it, and ask again.")
            return
        run = _Run(undone, work, then)
        run.begin()
        self._runs.append(run)
        self.what = what
        self._looking.start()
        self.began.emit(what, 0)

    def cancel(self) -> None:
        """Ask the work to stop; it does so the next time it tells how far it is."""
        for run in self._runs:
            run.wanted = False

    def wait(self) -> None:
        """Wait until the work has come to its end, and do what follows."""
        if self._runs:
            self._end()

    def give_up(self) -> None:
        """Stop, and return once nothing is at work any more; nothing follows."""
        self._looking.stop()
        _give_up(self._runs)
        self.what = ""

    def _look(self) -> None:
        run = self._runs[0]
        ended = not run.thread.is_alive()  # asked first, so that the last word on how far it is is not missed
        _INTERPRETER.collect()
        self.progressed.emit(*run.done)
        if ended:
            self._end()

    def _end(self) -> None:
        self._looking.stop()
        run = self._runs[0]
        run.join()
        self._runs.clear()
        self.what = ""
        self.ended.emit(run.error is None)
        if run.error is None:
            run.then(run.result)
        else:
            self.failed.emit(_why(run))


def under_way(window: QObject) -> list[str]:
    """Return what a window's pages are doing that would be lost if it closed now."""
    return [work.what for work in window.findChildren(Work) if work.what and work.precious]


class _Run:
    """What thread and window both see of the work; each value is put there whole."""

    def __init__(self, undone: str, work: Callable[[Progress], Any], then: Then) -> None:
        self.undone = undone
        self.then = then
        self.wanted = True
        self.done = (0, 0)
        self.result: Any = None
        self.error: BaseException | None = None
        self._work = work
        self.thread = Thread(target=self._do)

    def begin(self) -> None:
        _INTERPRETER.share(self)
        try:
            self.thread.start()
        except RuntimeError:  # the system has no thread to give
            _INTERPRETER.leave(self)
            raise

    def join(self) -> None:
        self.thread.join()
        _INTERPRETER.leave(self)

    def _do(self) -> None:
        try:
            self.result = self._work(self._note)
        except BaseException as error:  # whatever it is, the user is told
            self.error = error

    def _note(self, done: int, total: int) -> None:
        self.done = (done, total)
        if not self.wanted:
            raise Cancelled


class _Interpreter:
    """How Python is set while a thread of work lives: only `collect` collects, and turns are short."""

    def __init__(self) -> None:
        self._living: set[_Run] = set()
        self._collected = False
        self._turns = 0.0

    def share(self, run: _Run) -> None:
        """Make it ready for the thread of a run."""
        if not self._living:
            self._collected, self._turns = gc.isenabled(), sys.getswitchinterval()
            gc.disable()
            sys.setswitchinterval(TURN)
        self._living.add(run)

    def leave(self, run: _Run) -> None:
        """Make it as it was, once no thread lives any more."""
        self.collect()
        self._living.discard(run)
        if not self._living:
            sys.setswitchinterval(self._turns)
            if self._collected:
                gc.enable()

    def collect(self) -> None:
        """Collect what is young, when Python would; what is old waits, for that may take long."""
        young, middle, _ = gc.get_count()
        most_young, most_middle, _ = gc.get_threshold()
        if 0 < most_young < young:
            gc.collect(1 if middle > most_middle else 0)


_INTERPRETER = _Interpreter()


def _give_up(runs: list[_Run]) -> None:
    for run in runs:
        run.wanted = False
        run.join()
    runs.clear()


def _why(run: _Run) -> str:
    error = run.error
    if isinstance(error, Cancelled):
        return f"Stopped. {run.undone}."
    if isinstance(error, OSError | ValueError):
        return f"{run.undone}: {getattr(error, 'strerror', None) or error}."
    logging.getLogger(__name__).error("%s", run.undone, exc_info=error)
    return f"{run.undone}: something went wrong in the program ({type(error).__name__}: {error})."


class ProgressLine(QWidget):
    """Says what is being done and how far it is, with a button that stops it; hidden while nothing is.

    Signals:
        cancelled: the user has stopped it.
    """

    cancelled = Signal()

    def __init__(self, *shown: Work, stop: str = "Cancel") -> None:
        super().__init__()
        self._what = ""
        self.words, self.bar, self.cancel = QLabel(), QProgressBar(), QPushButton(stop)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("progress")
        for work in shown:
            work.began.connect(self._begin)
            work.progressed.connect(self._advance)
            work.ended.connect(self.hide)
            self.cancel.clicked.connect(work.cancel)
        self.cancel.clicked.connect(self.cancelled)
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words)
        line.addWidget(self.bar, 1)
        line.addWidget(self.cancel)
        self.hide()

    def _begin(self, what: str, total: int) -> None:
        self._what = what
        self._advance(0, total)
        self.show()

    def _advance(self, done: int, total: int) -> None:
        self.bar.setRange(0, total)
        self.bar.setValue(done)
        counted = f": {done:,} of {total:,}" if total else f": {done:,} rows" if done else "…"
        self.words.setText(f"{self._what}{counted}")
