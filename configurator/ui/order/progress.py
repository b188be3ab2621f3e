"""A line that says what is being done and how far it is; hidden while nothing is."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QPushButton, QWidget

from configurator.ui.look import GRID


class ProgressLine(QWidget):
    """Words, a bar, and Cancel.

    Signals:
        cancelled: the user wants it stopped.
    """

    cancelled = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._what = ""
        self.words, self.bar, self.cancel = QLabel(), QProgressBar(), QPushButton("Cancel")
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("progress")
        self.cancel.clicked.connect(self.cancelled)
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words)
        line.addWidget(self.bar, 1)
        line.addWidget(self.cancel)
        self.hide()

    def begin(self, what: str) -> None:
        """Show that something is being done; nobody knows yet how much there is of it."""
        self._what = what
        self.words.setText(f"{what}…")
        self.bar.setRange(0, 0)
        self.show()

    def advance(self, done: int, total: int) -> None:
        """Show how much of it is done."""
        if total:
            self.bar.setRange(0, total)
            self.bar.setValue(done)
            self.words.setText(f"{self._what}: {done:,} of {total:,}")
