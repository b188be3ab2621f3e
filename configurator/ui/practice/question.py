"""The problem on show: its question, where the answer is typed or picked, help, and its solution."""

import html

from PySide6.QtCore import QRegularExpression, Qt, Signal
from PySide6.QtGui import QRegularExpressionValidator
from PySide6.QtWidgets import QFormLayout, QLabel, QLineEdit, QPushButton, QWidget

from configurator.practice.exercise import Exercise
from configurator.practice.written import LETTERS, ChoiceAnswer
from configurator.sentences import capitalized
from configurator.ui.kit.layout import GROW, Box, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.wording.glossary import Word, words_marked

WIDEST = 190 * GRID
_LONGEST = 60
_HELP = {"hint": "&Hint", "step": "&First step", "": "&Hint"}
SIGNS = {"right": ("✔", "note"), "wrong": ("✖", "error"), "unread": ("▲", "warning"), "shown": ("●", "note")}
"""How an answer was marked: a sign and its colour, with the words beside them."""


def linked(text: str) -> str:
    """Return a text as the window shows it, each word of the glossary in it leading to its meaning."""
    return "".join(_piece(piece, word) for piece, word in words_marked(text)).replace("\n", "<br>")


def _piece(piece: str, word: Word | None) -> str:
    told = html.escape(piece, quote=False)
    return told if word is None else f'<a href="{html.escape(word.term)}">{told}</a>'


class QuestionPanel(QWidget):
    """Question, answer, help and solution.

    Signals:
        answered: what was typed or picked.
        help_wanted: the hint, or after it the first step.
        solution_wanted: the problem is given up.
        next_wanted: another problem is wanted.
        number_called: the number of the problem that is wanted.
        word_wanted: what a word of the question means.
    """

    answered = Signal(str)
    help_wanted = Signal()
    solution_wanted = Signal()
    next_wanted = Signal()
    number_called = Signal(int)
    word_wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.heading, self.question, self.convention = QLabel(), QLabel(), QLabel()
        self.options = [QPushButton() for _ in LETTERS[:6]]
        self.typed, self.hint = QLineEdit(), QLabel()
        self.check, self.help = QPushButton("&Check"), QPushButton(_HELP["hint"])
        self.show_it, self.next = QPushButton("&Show the solution"), QPushButton("&Next problem")
        self.verdict, self.helped, self.solution = QLabel(), QLabel(), QLabel()
        self.number = QLineEdit()
        self._ended, self._words = False, ""
        self._put_together()
        self._connect()

    def asked_about(self) -> str:
        """Return the sentences whose words F1 explains."""
        return self._words

    def show_exercise(self, exercise: Exercise, dark: bool) -> None:
        """Show the problem and how it stands with it."""
        problem, template = exercise.posed.problem, exercise.posed.template
        self._ended, self._words = exercise.ended, f"{problem.question} {problem.convention}"
        self.heading.setText(f"{capitalized(template.topic)}, level {template.level} of 5")
        self.question.setText(linked(problem.question))
        self.convention.setText(linked(problem.convention))
        self.convention.setVisible(bool(problem.convention))
        self.hint.setText(problem.answer.hint)
        self._show_options(problem.answer)
        self._show_marking(exercise, dark)
        self._show_help(exercise)
        self.number.setText(str(exercise.number))
        for label in (self.convention, self.hint):
            tinted(label, "quiet", dark)

    def wanted_height(self, width: int) -> int:
        """Return how high all of it is, so wide."""
        return self._column.totalHeightForWidth(min(width, WIDEST))

    def begin_answer(self) -> None:
        """Take the keyboard to an empty answer."""
        self.typed.clear()
        self.typed.setFocus()

    def _show_options(self, answer: object) -> None:
        options = answer.options if isinstance(answer, ChoiceAnswer) else ()
        for place, button in enumerate(self.options):
            button.setVisible(place < len(options))
            if place < len(options):
                words = f"{LETTERS[place]}   {options[place]}"
                button.setText(words.replace("&", "&&"))
                button.setEnabled(not self._ended)

    def _show_marking(self, exercise: Exercise, dark: bool) -> None:
        sign, colour = SIGNS.get(exercise.state, ("", "note"))
        self.verdict.setText(f"{sign} {exercise.said}" if exercise.said else "")
        self.verdict.setVisible(bool(exercise.said))
        tinted(self.verdict, colour, dark)
        self.typed.setReadOnly(self._ended)
        self.check.setEnabled(not self._ended)
        self.show_it.setEnabled(not self._ended)

    def _show_help(self, exercise: Exercise) -> None:
        """Show what help was taken, and which there is next; the whole solution once it is told."""
        problem = exercise.posed.problem
        lines = []
        if exercise.help:
            lines.append(f"Hint: {problem.hint}")
        if exercise.help == "step" and not exercise.ended:
            lines.append(f"First step: {problem.solution[0]}")
        self.helped.setText("\n".join(lines))
        self.helped.setVisible(bool(lines))
        self.solution.setText("\n".join(problem.solution) if exercise.ended else "")
        self.solution.setVisible(exercise.ended)
        self.help.setText(_HELP[exercise.next_help])
        self.help.setEnabled(bool(exercise.next_help))

    # --- How it is put together ---

    def _put_together(self) -> None:
        plain = (self.heading, self.hint, self.verdict, self.helped, self.solution)
        for label in (*plain, self.question, self.convention):
            label.setTextFormat(Qt.TextFormat.PlainText if label in plain else Qt.TextFormat.RichText)
            label.setWordWrap(True)
        for label in (self.helped, self.solution):
            label.setTextInteractionFlags(
                Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
            )
        for label in (self.question, self.convention):
            label.setTextInteractionFlags(
                Qt.TextInteractionFlag.TextBrowserInteraction
                | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
            )
            label.setToolTip("A click on a word shows what it means; F1 shows all of them")
        self.question.setAccessibleName("question")
        self.convention.setAccessibleName("how it is counted")
        self.solution.setAccessibleName("worked solution")
        sized(self.question, 1)
        sized(self.verdict, 0, bold=True)
        for label in (self.convention, self.hint):
            sized(label, -1)
        self.setMaximumWidth(WIDEST)
        options = down(*(across(button, (GROW, 1)) for button in self.options), spacing=GRID)
        above = (self.heading, self.question, self.convention, options, *self._answer_lines())
        number = QFormLayout()
        parts = (*above, self.verdict, self.helped, self.solution, number, (GROW, 1))
        margins = (5 * GRID, 4 * GRID, 5 * GRID, 2 * GRID)
        self._column = fill(self, down(*parts, spacing=2 * GRID, margins=margins))
        self._fill_number(number)

    def _answer_lines(self) -> tuple[Box | QLabel, ...]:
        self.typed.setMaxLength(_LONGEST)
        self.typed.setMinimumWidth(40 * GRID)
        self.typed.setAccessibleName("answer")
        self.typed.setPlaceholderText("Your answer")
        return (
            across((self.typed, 1), self.check, spacing=GRID),
            self.hint,
            across(self.help, self.show_it, self.next, (GROW, 1), spacing=GRID),
        )

    def _fill_number(self, form: QFormLayout) -> None:
        self.number.setFixedWidth(30 * GRID)
        self.number.setValidator(QRegularExpressionValidator(QRegularExpression(r"\d{1,9}"), self.number))
        self.number.setToolTip("Type a number and press Enter for the same problem again, here or elsewhere")
        self.number.setAccessibleName("number of the problem")
        form.addRow("Problem number", self.number)
        sized(form.labelForField(self.number), -1)
        sized(self.number, -1)

    def _connect(self) -> None:
        self.typed.returnPressed.connect(self._enter)
        self.check.clicked.connect(lambda: self.answered.emit(self.typed.text()))
        self.help.clicked.connect(self.help_wanted)
        self.show_it.clicked.connect(self.solution_wanted)
        self.next.clicked.connect(self.next_wanted)
        self.number.returnPressed.connect(lambda: self.number_called.emit(int(self.number.text())))
        for label in (self.question, self.convention):
            label.linkActivated.connect(self.word_wanted)
        for place, button in enumerate(self.options):
            button.clicked.connect(lambda _=False, place=place: self._pick(place))

    def _enter(self) -> None:
        """Enter marks the answer; once the solution is on show it goes on."""
        if self._ended:
            self.next_wanted.emit()
        else:
            self.answered.emit(self.typed.text())

    def _pick(self, place: int) -> None:
        self.typed.setText(LETTERS[place])
        self.answered.emit(self.typed.text())
