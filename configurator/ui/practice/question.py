"""The problem on show: its question, where the answer is typed or picked, and its worked solution."""

from PySide6.QtCore import QRegularExpression, Qt, Signal
from PySide6.QtGui import QRegularExpressionValidator
from PySide6.QtWidgets import QFormLayout, QLabel, QLineEdit, QPushButton, QWidget

from configurator.practice.answers import ChoiceAnswer
from configurator.practice.exercise import Exercise
from configurator.ui.kit.layout import GROW, Box, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted

WIDEST = 190 * GRID
_LONGEST = 60
_MOST_OPTIONS = 5
SIGNS = {"right": ("✔", "note"), "wrong": ("✖", "error"), "unread": ("▲", "warning"), "shown": ("●", "note")}
"""How an answer was marked: a sign and its colour, with the words beside them."""


class QuestionPanel(QWidget):
    """Question, answer and solution.

    Signals:
        answered: what was typed or picked.
        solution_wanted: the problem is given up.
        next_wanted: another problem is wanted.
        number_called: the number of the problem that is wanted.
    """

    answered = Signal(str)
    solution_wanted = Signal()
    next_wanted = Signal()
    number_called = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.heading, self.question, self.convention = QLabel(), QLabel(), QLabel()
        self.options = [QPushButton() for _ in range(_MOST_OPTIONS)]
        self.typed, self.hint = QLineEdit(), QLabel()
        self.check = QPushButton("&Check")
        self.show_it, self.next = QPushButton("&Show the solution"), QPushButton("&Next problem")
        self.verdict, self.solution = QLabel(), QLabel()
        self.number = QLineEdit()
        self._ended = False
        self._put_together()
        self._connect()

    def show_exercise(self, exercise: Exercise, dark: bool) -> None:
        """Show the problem and how it stands with it."""
        problem, template = exercise.posed.problem, exercise.posed.template
        self._ended = exercise.ended
        self.heading.setText(f"{template.topic.capitalize()}, level {template.level} of 5")
        self.question.setText(problem.question)
        self.convention.setText(problem.convention)
        self.convention.setVisible(bool(problem.convention))
        self.hint.setText(problem.answer.hint)
        self._show_options(problem.answer)
        self._show_marking(exercise, dark)
        self.solution.setText("\n".join(problem.solution) if exercise.ended else "")
        self.solution.setVisible(exercise.ended)
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
                words = f"{'ABCDE'[place]}   {options[place]}"
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

    # --- How it is put together ---

    def _put_together(self) -> None:
        for label in (self.heading, self.question, self.convention, self.hint, self.verdict, self.solution):
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setWordWrap(True)
        for label in (self.question, self.solution):
            label.setTextInteractionFlags(
                Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
            )
        self.question.setAccessibleName("question")
        self.solution.setAccessibleName("worked solution")
        sized(self.question, 1)
        sized(self.verdict, 0, bold=True)
        for label in (self.convention, self.hint):
            sized(label, -1)
        self.setMaximumWidth(WIDEST)
        options = down(*(across(button, (GROW, 1)) for button in self.options), spacing=GRID)
        above = (self.heading, self.question, self.convention, options, self._answer_line())
        number = QFormLayout()
        parts = (*above, self.hint, self.verdict, self.solution, number, (GROW, 1))
        margins = (6 * GRID, 4 * GRID, 6 * GRID, 2 * GRID)
        self._column = fill(self, down(*parts, spacing=2 * GRID, margins=margins))
        self._fill_number(number)

    def _answer_line(self) -> Box:
        self.typed.setMaxLength(_LONGEST)
        self.typed.setMinimumWidth(45 * GRID)
        self.typed.setAccessibleName("answer")
        self.typed.setPlaceholderText("Your answer")
        return across((self.typed, 1), self.check, self.show_it, self.next, spacing=GRID)

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
        self.show_it.clicked.connect(self.solution_wanted)
        self.next.clicked.connect(self.next_wanted)
        self.number.returnPressed.connect(lambda: self.number_called.emit(int(self.number.text())))
        for place, button in enumerate(self.options):
            button.clicked.connect(lambda _=False, place=place: self._pick(place))

    def _enter(self) -> None:
        """Enter marks the answer; once the solution is on show it goes on."""
        if self._ended:
            self.next_wanted.emit()
        else:
            self.answered.emit(self.typed.text())

    def _pick(self, place: int) -> None:
        self.typed.setText("ABCDE"[place])
        self.answered.emit(self.typed.text())
