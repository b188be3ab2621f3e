"""What is asked of a schedule once for all its rows: how sizes are written, and whose width a pair's is."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QWidget

from configurator.intake.refused import Question
from configurator.ui.kit.look import GRID, tinted

ORDERS = (("ask", "choose…"), ("width", "the width, as written"), ("height", "the height, so swap them"))
PAIRS = (("ask", "choose…"), ("opening", "of the opening"), ("leaf", "of each leaf"))


class Asked(QWidget):
    """One question with its answers; hidden while no row waits for it and nothing was answered.

    Signals:
        answered: the name of the answer.
    """

    answered = Signal(str)

    def __init__(self, question: Question, name: str, answers: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.question = question
        self.words, self.answers = QLabel(), QComboBox()
        self.answers.setAccessibleName(name)
        self.words.setBuddy(self.answers)
        for value, title in answers:
            self.answers.addItem(title, value)
        self.answers.activated.connect(lambda _: self.answered.emit(self.answers.currentData()))
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words)
        line.addWidget(self.answers)
        line.addStretch(1)
        self.hide()

    def show_answer(self, answer: str, words: str, waiting: int, dark: bool) -> None:
        """Show what holds, and how many rows wait for an answer."""
        self.answers.setCurrentIndex(self.answers.findData(answer))
        self.words.setText(words)
        tinted(self.words, "error" if waiting else "quiet", dark)
        self.setVisible(bool(waiting) or answer != "ask")
