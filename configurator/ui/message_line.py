"""Lines under the commands for what must be said or asked: a refused file, an error, work to recover."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QToolButton, QVBoxLayout, QWidget

from configurator.ui.look import GRID

Choice = tuple[str, Callable[[], object]]
"""What a button says, and what it does."""


class MessageLine(QWidget):
    """One sentence that the next one replaces, and below it questions that stand until they are answered."""

    def __init__(self) -> None:
        super().__init__()
        self.questions: dict[str, SentenceRow] = {}
        self._said = SentenceRow()
        self._said.hide()
        self._said.put_away.connect(self._said.hide)
        self._said.put_away.connect(self._fold)
        self.words = self._said.words
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addWidget(self._said)

    def say(self, sentence: str) -> None:
        """Show a sentence; an empty one takes it away."""
        self.words.setText(sentence)
        self._said.setVisible(bool(sentence))
        self._fold()

    def text(self) -> str:
        """Return what was said last."""
        return self.words.text()

    def ask(self, about: str, sentence: str, choices: Sequence[Choice] = ()) -> None:
        """Put a question in the place of the one about the same; an empty sentence takes it away."""
        old = self.questions.pop(about, None)
        if old is not None:
            self._column.removeWidget(old)
            old.hide()
            old.deleteLater()
        if sentence:
            row = self.questions[about] = SentenceRow(sentence)
            for title, answer in choices:
                row.add_button(title, partial(self._answer, about, answer))
            row.put_away.connect(partial(self.ask, about, ""))
            self._column.addWidget(row)
        self._fold()

    def _answer(self, about: str, answer: Callable[[], object]) -> None:
        self.ask(about, "")
        answer()

    def _fold(self) -> None:
        self.setVisible(not self._said.isHidden() or bool(self.questions))


class SentenceRow(QWidget):
    """A sentence, buttons if it is a question, and a cross; `put_away` is the cross being clicked."""

    def __init__(self, sentence: str = "") -> None:
        super().__init__()
        self.words = QLabel(sentence)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.buttons: dict[str, QPushButton] = {}
        cross = QToolButton()
        cross.setText("×")
        cross.setAutoRaise(True)
        cross.setAccessibleName("take the message away")
        self.put_away = cross.clicked
        self._cross = cross
        self._line = QHBoxLayout(self)
        self._line.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        self._line.setSpacing(2 * GRID)
        self._line.addWidget(self.words, 1)
        self._line.addWidget(cross)

    def add_button(self, title: str, run: Callable[[], object]) -> None:
        """Add an answer before the cross."""
        button = self.buttons[title] = QPushButton(title)
        button.clicked.connect(lambda: run())
        self._line.insertWidget(self._line.count() - 1, button)
