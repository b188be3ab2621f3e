"""The bare main window: it tells when it was first painted, and what was dropped on it."""

from pathlib import Path

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QPaintEvent
from PySide6.QtWidgets import QMainWindow


class Frame(QMainWindow):
    """A main window with nothing in it yet.

    Signals:
        painted: the window was painted for the first time.
        dropped: a file was dropped on it; the argument is its path.
    """

    painted = Signal()
    dropped = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._was_painted = False
        self.setAcceptDrops(True)

    # --- Qt's own names ---

    def createPopupMenu(self) -> None:
        """Offer no menu that hides the commands: nothing would bring them back."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Tell once that the window stands on the screen."""
        super().paintEvent(event)
        if not self._was_painted:
            self._was_painted = True
            QTimer.singleShot(0, self.painted.emit)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let a file be dropped, whatever it is: what it cannot be used for is told then."""
        if _file_of(event) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Tell which file was dropped."""
        path = _file_of(event)
        if path is not None:
            self.dropped.emit(path)


def _file_of(event: QDropEvent) -> Path | None:
    urls = event.mimeData().urls()
    path = Path(urls[0].toLocalFile()) if urls and urls[0].isLocalFile() else None
    return path if path is not None and path.is_file() else None
