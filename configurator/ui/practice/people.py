"""Who practises, their way through the topics and how far they are on it, and how to print or clear that."""

from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import (
    QComboBox,
    QHeaderView,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from configurator.practice.course import LEVELS, TOPICS, of_topic
from configurator.practice.exercise import TODAY
from configurator.practice.progress import LONGEST_NAME, SET_OF_DAY, Progress, strength
from configurator.sentences import capitalized
from configurator.ui.kit.layout import StillCombo
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.table import QuietTable
from configurator.ui.kit.table_model import Head, Row, RowsModel

COURSE = "the whole course"
JOB, CLASS = "job ", "class"
"""What the key of a small job begins with, before its level; and the key of the sets for a class."""
WIDTH = 60 * GRID
_SIGNS = {"known": "✔ ", "weak": "▲ ", "begun": "", "new": ""}


class TopicsModel(RowsModel):
    """Topics, and how many of each are known, said in one to a screen reader; bold where the course is."""

    now = ""

    def is_bold(self, row: int, _place: int) -> bool:
        """Say whether the problem on show is of that topic."""
        return bool(self.now) and self.rows[row].key == self.now

    def spoken(self, row: int, place: int) -> str | None:
        """Return what a screen reader says of a row."""
        return None if place else f"{self.text(row, 0)}, {self.rows[row].tip or self.text(row, 1)}"


class PeopleColumn(QWidget):
    """The person, the day's set, the topics with how many of each are known, the small jobs, and buttons.

    Signals:
        person_chosen: the name of who practises now.
        topic_chosen: the topic to practise, empty for the whole course, or the day's set.
        job_chosen: the small job of a level.
        class_chosen: sets for a class.
        print_wanted: the person's progress is to be written for the one who teaches.
        clear_wanted: the person's progress is to be forgotten; asked twice.
    """

    person_chosen = Signal(str)
    topic_chosen = Signal(str)
    job_chosen = Signal(int)
    class_chosen = Signal()
    print_wanted = Signal()
    clear_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        heads = (Head(""), Head("", number=True))
        self.person = StillCombo()
        self.model = TopicsModel()
        self.topics = QuietTable("topics of practice", heads, model=self.model)
        self.clear, self.sure, self.keep = (
            QPushButton("Clear progress…"),
            QPushButton(),
            QPushButton("Keep it"),
        )
        self.print_it = QPushButton("Print progress…")
        self.summary = QLabel()
        self._put_together()
        self._connect()

    def show_people(self, names: tuple[str, ...], person: str) -> None:
        """Show who may be chosen, and who is."""
        self.person.clear()
        self.person.addItems([name for name in dict.fromkeys((person, *names)) if name])
        self.person.setCurrentText(person)

    def show_progress(self, progress: Progress, topic: str, today: date, now: str = "") -> None:
        """Show the way through the topics, with what is known of each and what is weak.

        `topic` is what was chosen, `now` the topic of the problem on show.
        """
        self.topics.blockSignals(True)
        self.model.now = now
        rows = _rows(progress)
        self.topics.show_rows(rows)
        keys = [row.key for row in rows]
        if topic in keys:
            self.topics.selectRow(keys.index(topic))
        self.topics.blockSignals(False)
        self.summary.setText(" ".join(_summary(progress, today)))
        for button in (self.clear, self.print_it):
            button.setEnabled(bool(progress.tallies))
        self._ask(False)

    # --- How it is put together ---

    def _put_together(self) -> None:
        self.setFixedWidth(WIDTH)
        self.person.setEditable(True)
        self.person.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.person.setAccessibleName("who practises")
        self.person.setToolTip("Progress is kept for each name apart, on this computer only")
        line = self.person.lineEdit()
        assert line is not None
        line.setMaxLength(LONGEST_NAME)
        self._fill_topics()
        self.summary.setWordWrap(True)
        sized(self.summary, -1)
        name = QLabel("Who &practises")
        name.setBuddy(self.person)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, 2 * GRID, 2 * GRID, 2 * GRID)
        column.setSpacing(GRID)
        for widget in (
            name,
            self.person,
            self.topics,
            self.summary,
            self.print_it,
            self.clear,
            self.sure,
            self.keep,
        ):
            column.addWidget(widget)

    def _fill_topics(self) -> None:
        self.topics.horizontalHeader().hide()
        self.topics.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.topics.horizontalHeader().setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        self.topics.verticalHeader().setDefaultSectionSize(6 * GRID)

    def _connect(self) -> None:
        line = self.person.lineEdit()
        assert line is not None
        self.person.activated.connect(lambda _: self._choose())
        line.editingFinished.connect(self._choose)
        self.topics.chosen.connect(self._choose_topic)
        self.print_it.clicked.connect(self.print_wanted)
        self.clear.clicked.connect(lambda: self._ask(True))
        self.keep.clicked.connect(lambda: self._ask(False))
        self.sure.clicked.connect(self.clear_wanted)

    def _choose(self) -> None:
        self.person_chosen.emit(self.person.currentText().strip())

    def _choose_topic(self, topic: str | None) -> None:
        if topic is None:
            return
        if topic.startswith(JOB):
            self.job_chosen.emit(int(topic.removeprefix(JOB)))
        elif topic == CLASS:
            self.class_chosen.emit()
        else:
            self.topic_chosen.emit(topic)

    def _ask(self, asked: bool) -> None:
        """Ask once more before anything is forgotten, where the button was."""
        name = self.person.currentText().strip()
        short = QFontMetrics(self.font()).elidedText(name, Qt.TextElideMode.ElideRight, 26 * GRID)
        self.sure.setText(f"Clear all of {short}".replace("&", "&&"))
        self.sure.setVisible(asked)
        self.keep.setVisible(asked)
        self.clear.setVisible(not asked)
        if asked:
            self.keep.setFocus()


def _rows(progress: Progress) -> list[Row]:
    done = len(progress.day.done)
    today = Row((f"Today's {SET_OF_DAY}", f"{done} of {len(progress.day.keys) or SET_OF_DAY}"), TODAY, "")
    jobs = [_job_row(level, progress) for level in LEVELS]
    teacher = Row(("Sets for a class", ""), CLASS, "questions, answers and solutions to print")
    return [today, *(_topic_row(topic, progress) for topic in ("", *TOPICS)), *jobs, teacher]


def _job_row(level: int, progress: Progress) -> Row:
    done = "✔ done" if str(level) in progress.jobs else ""
    return Row((f"Small job, level {level}", done), f"{JOB}{level}", "four openings against their order")


def _topic_row(topic: str, progress: Progress) -> Row:
    kinds, known, stands = len(of_topic(topic)), progress.known(topic), strength(progress, topic)
    missed = "; some went wrong last" if stands == "weak" else ""
    tip = f"{known} of {kinds} kinds of problem known{missed}"
    return Row((capitalized(topic or COURSE), f"{_SIGNS[stands]}{known} of {kinds}"), topic, tip)


def _summary(progress: Progress, today: date) -> list[str]:
    """Say how much was answered, on how many days, and what is weak."""
    answered = sum(one.right + one.wrong for one in progress.tallies.values())
    if not answered:
        return ["A kind of problem is known after two right answers, days apart."]
    right = sum(one.right for one in progress.tallies.values())
    said = [f"{answered} answered, {right} of them right at first try."]
    if (days := progress.days_in_a_row(today)) > 1:
        said.append(f"{days} days in a row.")
    if weak := progress.weak():
        said.append(f"Weak: {', '.join(one.key for one in weak[:3])}.")
    return said
