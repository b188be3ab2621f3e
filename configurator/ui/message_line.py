"""A line under the commands for what must be said: a file that was refused, an error; it can be put away."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QToolButton, QWidget

from configurator.ui.look import GRID


class MessageLine(QWidget):
    """One sentence and a cross."""

    def __init__(self) -> None:
        super().__init__()
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        close = QToolButton()
        close.setText("×")
        close.setAutoRaise(True)
        close.setAccessibleName("take the message away")
        close.clicked.connect(self.hide)
        line = QHBoxLayout(self)
        line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        line.addWidget(self.words, 1)
        line.addWidget(close)

    def say(self, sentence: str) -> None:
        """Show a sentence; an empty one takes the line away."""
        self.words.setText(sentence)
        self.setVisible(bool(sentence))

    def text(self) -> str:
        """Return what was said last."""
        return self.words.text()
