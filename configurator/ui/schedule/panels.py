"""What stands under the table for a while: a text to read and copy, and work that goes on."""

from collections.abc import Callable, Iterator

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QProgressBar,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from configurator.ui.look import GRID, sized, tinted
from configurator.ui.schedule.chunks import Chunks

_LINES = 7


class TextPanel(QWidget):
    """A heading and a text of several lines, to be read, selected, copied and put away."""

    def __init__(self) -> None:
        super().__init__()
        self._colour = "quiet"
        self.heading, self.text = QLabel(), QPlainTextEdit()
        self.heading.setWordWrap(True)
        self.heading.setTextFormat(Qt.TextFormat.PlainText)
        self.text.setReadOnly(True)
        self.text.setTabChangesFocus(True)
        sized(self.text, -1)
        self.copy = QPushButton("Copy text")
        self.copy.clicked.connect(self.copy_text)
        cross = QToolButton()
        cross.setText("×")
        cross.setAutoRaise(True)
        cross.setAccessibleName("put the text away")
        cross.clicked.connect(self.hide)
        self.cross = cross
        head = QHBoxLayout()
        head.addWidget(self.heading, 1)
        head.addWidget(self.copy)
        head.addWidget(cross)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        column.setSpacing(GRID)
        column.addLayout(head)
        column.addWidget(self.text)
        self.hide()

    def show_text(self, heading: str, text: str, name: str, colour: str, dark: bool) -> None:
        """Show a heading and a text; without text the heading alone."""
        self.heading.setText(heading)
        self._colour = colour
        self.use_dark(dark)
        self.text.setPlainText(text)
        self.text.setAccessibleName(name)
        lines = min(max(text.count("\n") + 1, 2), _LINES)
        self.text.setFixedHeight(lines * self.text.fontMetrics().lineSpacing() + 3 * GRID)
        self.text.setVisible(bool(text))
        self.copy.setVisible(bool(text))
        self.show()

    def use_dark(self, dark: bool) -> None:
        """Show the heading in its colour on a light or a dark ground."""
        tinted(self.heading, self._colour, dark)

    def copy_text(self) -> None:
        """Put the text on the clipboard."""
        QGuiApplication.clipboard().setText(self.text.toPlainText())


class ProgressPanel(QWidget):
    """Says what is being done and how far it is, and does it if it is given the steps; else hidden.

    Signals:
        cancelled: the user has stopped it.
    """

    cancelled = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.chunks = Chunks(self)
        self.words, self.bar, self.cancel = QLabel(), QProgressBar(), QPushButton("Cancel")
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("progress")
        self.cancel.clicked.connect(self._cancel)
        self.chunks.progressed.connect(self.advance)
        self.chunks.stopped.connect(lambda _: self.hide())
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words)
        line.addWidget(self.bar, 1)
        line.addWidget(self.cancel)
        self.hide()

    @property
    def running(self) -> bool:
        """Whether something is being done."""
        return self.chunks.running

    def run(self, what: str, steps: Iterator[object], total: int, then: Callable[[], object]) -> None:
        """Do something in so many steps, in place of what was being done, and then what is to follow."""
        self.stop()
        self.begin(what, total)
        self.chunks.start(steps, then)

    def begin(self, what: str, total: int) -> None:
        """Show that something is being done in so many steps, here or elsewhere."""
        self._what = what
        self.bar.setRange(0, total)
        self.advance(0)
        self.show()

    def stop(self) -> None:
        """Stop what is being done here; nothing follows."""
        self.chunks.cancel()

    def _cancel(self) -> None:
        self.stop()
        self.cancelled.emit()

    def advance(self, done: int) -> None:
        """Show that so many steps are done."""
        self.bar.setValue(done)
        self.words.setText(f"{self._what}: {done:,} of {self.bar.maximum():,}")
