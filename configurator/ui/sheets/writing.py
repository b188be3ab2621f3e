"""Writes sheets to a file behind the window, which stays alive; it tells how far it is and can be stopped."""

from collections.abc import Iterable, Iterator
from pathlib import Path
from threading import Event, Thread

from PySide6.QtCore import QCoreApplication, QObject, Signal

from configurator.drawing.pages.page import Page
from configurator.export.pages import write_pages
from configurator.long_work import Cancelled


class SheetWriting(QObject):
    """Writes one file at a time, in a thread of its own: neither openings nor pages ever change.

    Signals:
        progressed: so many pages are laid out.
        ended: the work is over; the argument is a sentence that says how.
    """

    progressed = Signal(int)
    ended = Signal(str)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._thread: Thread | None = None
        self._stop = Event()
        application = QCoreApplication.instance()
        if application is not None:
            application.aboutToQuit.connect(self.finish)

    @property
    def running(self) -> bool:
        """Whether a file is being written."""
        return self._thread is not None and self._thread.is_alive()

    def start(self, pages: Iterable[Page], path: Path) -> None:
        """Begin to write pages, which are made as they are needed, to a file in the format of its ending."""
        self.finish()
        self._stop = Event()
        self._thread = Thread(target=self._write, args=(pages, path, self._stop), name="sheets")
        self._thread.start()

    def cancel(self) -> None:
        """Stop before the next page; no file is written then, and one of that name stays as it was."""
        self._stop.set()

    def finish(self) -> None:
        """Stop, and wait until nothing is at work any more."""
        self.cancel()
        if self._thread is not None:
            self._thread.join()
            self._thread = None

    def _write(self, pages: Iterable[Page], path: Path, stop: Event) -> None:
        sentence = f"{path.name} could not be written."
        try:
            write_pages(self._watched(pages, stop), path)
            sentence = f"Written: {path}"
        except Cancelled:
            sentence = f"Stopped: {path.name} was not written."
        except (OSError, ValueError) as error:
            sentence = f"{path.name} could not be written: {getattr(error, 'strerror', None) or error}"
        finally:
            self.ended.emit(sentence)

    def _watched(self, pages: Iterable[Page], stop: Event) -> Iterator[Page]:
        for done, page in enumerate(pages, 1):
            if stop.is_set():
                raise Cancelled
            yield page
            self.progressed.emit(done)
