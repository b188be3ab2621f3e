"""What the window says and asks in lines of text: a message, questions with answers, a text to copy."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLabel, QPlainTextEdit, QPushButton, QToolButton, QWidget

from configurator.ui.kit.layout import BARE, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted

Choice = tuple[str, Callable[[], object]]
"""What a button says, and what it does."""
_LINES = 7


class MessageLine(QWidget):
    """One sentence that the next one replaces, and below it questions that stand until they are answered."""

    def __init__(self) -> None:
        super().__init__()
        self.questions: dict[str, SentenceRow] = {}
        self._free: list[SentenceRow] = []
        self._said = SentenceRow()
        self._said.hide()
        self._said.put_away.connect(self._said.hide)
        self._said.put_away.connect(self._fold)
        self.words = self._said.words
        self._column = fill(self, down(self._said, spacing=0, margins=BARE))

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
            old.hide()
            self._free.append(old)
        if sentence:
            asked = self._free.pop() if self._free else self._row()
            self.questions[about] = asked
            asked.show_sentence(
                sentence, [(title, partial(self._answer, about, run)) for title, run in choices]
            )
            self._column.removeWidget(asked)  # the last one asked stands last
            self._column.addWidget(asked)
            asked.show()
        self._fold()

    def _answer(self, about: str, answer: Callable[[], object]) -> None:
        self.ask(about, "")
        answer()

    def _row(self) -> "SentenceRow":
        made = SentenceRow()
        made.put_away.connect(lambda: self._put_away(made))
        return made

    def _put_away(self, put_away: "SentenceRow") -> None:
        for about in [about for about, asked in self.questions.items() if asked is put_away]:
            self.ask(about, "")

    def _fold(self) -> None:
        self.setVisible(not self._said.isHidden() or bool(self.questions))


class SentenceRow(QWidget):
    """A sentence, buttons if it is a question, and a cross; `put_away` is the cross being clicked."""

    def __init__(self) -> None:
        super().__init__()
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.buttons: dict[str, QPushButton] = {}
        self._runs: list[Callable[[], object]] = []
        self._pool = Pool(self._button)
        cross = QToolButton()
        cross.setText("×")
        cross.setAutoRaise(True)
        cross.setAccessibleName("take the message away")
        self.put_away = cross.clicked
        self._cross = cross
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        self._line = fill(self, across((self.words, 1), cross, spacing=2 * GRID, margins=margins))

    def show_sentence(self, sentence: str, choices: Sequence[Choice] = ()) -> None:
        """Show another sentence, with its answers before the cross."""
        self.words.setText(sentence)
        self._runs = [run for _, run in choices]
        shown = zip(choices, self._pool.take(len(choices)), strict=True)
        self.buttons = {title: button for (title, _), button in shown}
        for title, button in self.buttons.items():
            button.setText(title)

    def _button(self, place: int) -> QPushButton:
        button = QPushButton()
        button.clicked.connect(lambda: self._runs[place]())
        self._line.insertWidget(1 + place, button)
        return button


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
