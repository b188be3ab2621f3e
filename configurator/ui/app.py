"""Starts the window: Qt and the records first, the picture once the window stands on the screen."""

import faulthandler
import gc
import logging
import os
import signal
import sys
import threading
from contextlib import suppress
from pathlib import Path
from types import TracebackType
from typing import IO

from PySide6.QtCore import QSettings, QSocketNotifier, QTimer
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication

from configurator.export import load_matplotlib_quickly
from configurator.model import Job
from configurator.project_file import ProjectFileError
from configurator.project_file.writing import PRIVATE_MODE
from configurator.resource_files import resource_path, state_folder
from configurator.ui.files.files import refusal_words
from configurator.ui.kit import look
from configurator.ui.state.preferences import Preferences
from configurator.ui.state.session import Session
from configurator.ui.window.window import Window

NAME = "opening-configurator"
LARGEST_LOG = 2**20
"""Bytes; a longer log is put aside, in place of the one before."""
AFTER_THE_PICTURE_MS = 200
"""What looks after the file is loaded only when the picture is on the screen too."""


def run_window(path: Path | None) -> int:
    """Open the window on a project file, or on the start page, and return when it is closed.

    A file that is refused leaves the start page, with the words that Open has for it.
    """
    keep_log()
    gc.disable()  # until the picture stands: see `begin`, which goes on with it
    session = Session(Job())
    refused = _why_not_opened(session, path)
    application = new_application()
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    preferences = Preferences(QSettings(NAME, NAME))
    if session.path is not None:
        preferences.note_recent(session.path)
    window = open_window(session, preferences)
    window.say(refused)
    end_on_request(application, window)
    # The records of a large job would be looked through again and again, and hold up the window each time.
    window.picture_shown.connect(gc.freeze)
    sys.excepthook = lambda *error: report(window, *error)
    window.show()
    return int(application.exec())


def _why_not_opened(session: Session, path: Path | None) -> str:
    try:
        if path is not None:
            session.open(path)
    except ProjectFileError as error:
        return refusal_words(Path(path or ""), error)
    return ""


def end_on_request(application: QApplication, window: Window) -> None:
    """End in order when the system asks for it: unsaved work is kept, the file is let go, nobody is asked.

    Python hears of a signal only between its own steps; a socket wakes it while Qt waits.
    """
    import socket  # where the window is shown by other means, nothing asks for it

    ours, woken = socket.socketpair()
    woken.setblocking(False)
    signal.set_wakeup_fd(woken.fileno())
    notifier = QSocketNotifier(ours.fileno(), QSocketNotifier.Type.Read, window)
    notifier.activated.connect(lambda *_: ours.recv(64))

    def end(*_: object) -> None:
        woken.setblocking(False)  # it is held here as long as the handler is
        window.files.leave()
        application.exit(0)

    for asked in (signal.SIGTERM, signal.SIGHUP):
        signal.signal(asked, end)
    application.commitDataRequest.connect(lambda *_: window.files.keep_if_unsaved())


def log_place() -> Path:
    """Return the file that tells what went wrong, for a report."""
    return state_folder() / "log.txt"


class Log(logging.StreamHandler[IO[str]]):
    """Writes to the log as long as the program runs; where it grew long it is put aside and begun anew.

    Raises OSError where it cannot be written.
    """

    def __init__(self, place: Path) -> None:
        place.parent.mkdir(parents=True, exist_ok=True)
        self.place = place
        super().__init__(self._opened())

    def emit(self, record: logging.LogRecord) -> None:
        """Write a record, to a new log where this one grew long."""
        if self.stream.tell() > LARGEST_LOG:
            with suppress(OSError):
                grown, self.stream = self.stream, self._opened()
                grown.close()
        super().emit(record)

    def _opened(self) -> IO[str]:
        if self.place.exists() and self.place.stat().st_size > LARGEST_LOG:
            self.place.replace(self.place.with_suffix(".before.txt"))
        # Open as long as the program runs. Of what somebody works on, no one else is to read.
        log = open(self.place, "a", encoding="utf-8", errors="backslashreplace", opener=_open_privately)  # noqa: SIM115
        faulthandler.enable(log)
        return log


def keep_log() -> None:
    """Write what goes wrong to the log too, in any thread, and even where the program itself dies of it.

    Where no log can be written, standard error has to do.
    """
    handlers: list[logging.Handler] = [logging.StreamHandler()] if sys.stderr is not None else []
    with suppress(OSError):
        handlers.append(Log(log_place()))
    logging.basicConfig(format="%(asctime)s %(levelname)s %(name)s: %(message)s", handlers=handlers)
    threading.excepthook = lambda died: logging.getLogger(NAME).error(
        "a thread died", exc_info=(died.exc_type, died.exc_value or died.exc_type(), died.exc_traceback)
    )


def _open_privately(name: str, flags: int) -> int:
    return os.open(name, flags, PRIVATE_MODE)


def new_application() -> QApplication:
    """Return the one Qt application, named for its settings and title bars."""
    application = QApplication([NAME])
    application.setApplicationName(NAME)
    application.setApplicationDisplayName("")
    application.setDesktopFileName(NAME)
    return application


def open_window(session: Session, preferences: Preferences) -> Window:
    """Return the window, set to load its picture as soon as it was painted."""
    application = QApplication.instance()
    if preferences.dark and isinstance(application, QApplication):
        look.use_theme(application, True)
    window = Window(session, preferences)
    window.painted.connect(lambda: fill(window))
    return window


def fill(window: Window) -> None:
    """Add the work area and put it on the screen before the picture is loaded, which takes longer."""
    window.fill()
    QApplication.sendPostedEvents()
    window.repaint()
    QTimer.singleShot(0, lambda: begin(window))


def begin(window: Window) -> None:
    """Load and show the picture, without looking for garbage among the thousands of things that stay.

    Collecting while matplotlib loads takes a tenth of the time to the first picture.
    """
    gc.disable()
    try:
        # Here and not earlier: the window is painted before matplotlib, and does without where there is none.
        with suppress(ImportError):
            load_matplotlib_quickly()
        window.begin()
    finally:
        gc.enable()
    QTimer.singleShot(AFTER_THE_PICTURE_MS, window, window.files.begin)
    QTimer.singleShot(AFTER_THE_PICTURE_MS, window, _finish_looks)


def _finish_looks() -> None:
    """Mend the palette and show the icon; only now, for both take Qt some milliseconds to make."""
    application = QApplication.instance()
    if isinstance(application, QApplication):
        look.mend(application)
        application.setWindowIcon(QIcon(str(resource_path("desktop", f"{NAME}.svg"))))


def report(
    window: Window, kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> None:
    """Show an unforeseen error to the user, who can still save, and write it in full to the log."""
    if issubclass(kind, KeyboardInterrupt):
        window.close()
        return
    logging.getLogger(NAME).error("unforeseen", exc_info=(kind, error, trace))
    if not window.isVisible():
        return  # it is closing: a dialog would keep the program from its end
    from configurator.ui.window.failure import (
        KEPT,
        NOT_KEPT,
        NOTHING_TO_KEEP,
        FailureDialog,
        report_of,
    )

    unsaved, kept = window.session.history.unsaved, window.files.keep_if_unsaved()
    if window.beside.failure is None:
        window.beside.failure = FailureDialog(window, log_place(), window.files.save_copy)
    said = NOTHING_TO_KEEP if not unsaved else KEPT if kept else NOT_KEPT
    window.beside.failure.tell(said, report_of(kind, error, trace))
