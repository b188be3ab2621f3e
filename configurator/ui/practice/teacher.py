"""The page for the one who teaches: a set by number, with questions, answers and solutions as PDF."""

from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QFileDialog, QFormLayout, QLabel, QPushButton, QSpinBox, QWidget

from configurator.practice.course import LEVELS, TOPICS
from configurator.practice.progress import Progress
from configurator.practice.sets import LARGEST_SET, MOST, SetAsked, problem_set
from configurator.sentences import capitalized
from configurator.ui.kit.layout import GROW, StillCombo, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.table import RowsTable
from configurator.ui.kit.table_model import Head, Row

_HEADS = (
    Head("", 5, number=True),
    Head("Problem", 22, number=True),
    Head("Level", 10, number=True),
    Head("Question", 110),
    Head("Answer", 40),
)
_PAGES = "PDF pages (*.pdf)"


class TeacherPanel(QWidget):
    """Which set it is, what is in it, and the button that writes it.

    Signals:
        said: a sentence for the window's line.
    """

    said = Signal(str)
    on_a4 = False

    def __init__(self) -> None:
        super().__init__()
        self.number, self.count = QSpinBox(), QSpinBox()
        self.level, self.topic = StillCombo(), StillCombo()
        self.only_questions = QCheckBox("Without answers and solutions, to hand out")
        self.write, self.fault = QPushButton("&Write as PDF…"), QLabel()
        self.list = RowsTable("problems of the set", _HEADS)
        self._put_together()
        self._connect()
        self.show_set()

    def asked(self) -> SetAsked:
        """Return the set that is chosen. Raises ValueError for one without problems."""
        return SetAsked(
            self.number.value(), self.level.currentData(), self.topic.currentData(), self.count.value()
        )

    def show_set(self) -> None:
        """List the problems of the set with their answers, or say why there are none."""
        try:
            problems = problem_set(self.asked())
            self.fault.setText("")
        except ValueError as error:
            problems = ()
            self.fault.setText(f"{capitalized(str(error))}.")
        self.write.setEnabled(bool(problems))
        self.fault.setVisible(not problems)
        self.list.show_rows(
            [
                Row(
                    (
                        str(place),
                        str(number),
                        str(posed.template.level),
                        posed.problem.question.replace("\n", " "),
                        posed.problem.answer.shown,
                    ),
                    number,
                )
                for place, (number, posed) in enumerate(problems, 1)
            ]
        )

    def write_pdf(self) -> None:
        """Ask for a file and write the set to it."""
        from configurator.drawing.pictures.practice_pages import set_pages
        from configurator.export.pages import write_pages

        asked = self.asked()
        if path := ask_pdf(self, "Write the set", asked.title):
            try:
                write_pages(set_pages(asked, self.only_questions.isChecked(), self.on_a4), path)
            except OSError as error:
                self.said.emit(f"{path.name} could not be written: {error.strerror or error}.")
            else:
                self.said.emit(f"{asked.title} is written to {path.name}.")

    def _put_together(self) -> None:
        self.number.setRange(1, LARGEST_SET)
        self.count.setRange(1, MOST)
        self.count.setValue(10)
        for box in (self.number, self.count):
            box.setKeyboardTracking(False)
        self.level.addItem("all levels", 0)
        for level in LEVELS:
            self.level.addItem(f"level {level}", level)
        self.topic.addItem("all topics", "")
        for topic in TOPICS:
            self.topic.addItem(topic, topic)
        heading = QLabel("Sets for a class")
        sized(heading, 1)
        words = QLabel("The same number gives the same problems on every computer, to be printed.")
        words.setWordWrap(True)
        form = QFormLayout()
        margins = (6 * GRID, 4 * GRID, 6 * GRID, 4 * GRID)
        write = across(self.write, self.only_questions, (GROW, 1), spacing=2 * GRID)
        fill(
            self,
            down(heading, words, form, self.fault, (self.list, 1), write, spacing=2 * GRID, margins=margins),
        )
        parts = (
            ("Set number", self.number),
            ("Level", self.level),
            ("Topic", self.topic),
            ("Problems", self.count),
        )
        for name, widget in parts:
            widget.setAccessibleName(name.lower())
            widget.setFixedWidth(44 * GRID)
            form.addRow(name, widget)
        form.setFormAlignment(Qt.AlignmentFlag.AlignLeft)

    def _connect(self) -> None:
        for box in (self.number, self.count):
            box.valueChanged.connect(lambda _: self.show_set())
        for combo in (self.level, self.topic):
            combo.currentIndexChanged.connect(lambda _: self.show_set())
        self.write.clicked.connect(self.write_pdf)


def ask_pdf(owner: QWidget, title: str, name: str) -> Path | None:
    """Ask for the file that a page goes to; None where the user chose none."""
    chosen, _ = QFileDialog.getSaveFileName(owner, title, str(Path.home() / f"{name}.pdf"), _PAGES)
    if not chosen:
        return None
    path = Path(chosen)
    return path if path.suffix.lower() == ".pdf" else path.with_name(f"{path.name}.pdf")


def write_progress(owner: QWidget, progress: Progress, today: date) -> str:
    """Ask for a file and write somebody's progress to it; return what is to be said, empty for nothing."""
    from configurator.documents.practice import progress_document
    from configurator.export.document import write_document

    path = ask_pdf(owner, "Print progress", f"practice of {progress.person}")
    if path is None:
        return ""
    try:
        write_document(progress_document(progress, today), path)
    except OSError as error:
        return f"{path.name} could not be written: {error.strerror or error}."
    return f"The progress of {progress.person} is written to {path.name}."
