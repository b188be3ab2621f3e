"""What stands under a table for a while: a text to read and copy."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLabel, QPlainTextEdit, QPushButton, QToolButton, QWidget

from configurator.ui.kit.layout import across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted

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
        head = across((self.heading, 1), self.copy, cross)
        fill(self, down(head, self.text, spacing=GRID, margins=(2 * GRID, GRID, 2 * GRID, GRID)))
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
