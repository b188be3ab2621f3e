"""Who practises, how far they are topic by topic, and the way to clear that."""

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

from configurator.practice.course import TOPICS, of_topic
from configurator.practice.progress import LONGEST_NAME, Progress
from configurator.ui.kit.layout import StillCombo
from configurator.ui.kit.look import GRID, sized
from configurator.ui.kit.table import QuietTable
from configurator.ui.kit.table_model import Head, Row, RowsModel

COURSE = "the whole course"
WIDTH = 60 * GRID


class TopicsModel(RowsModel):
    """Topics, and how many of each are known, said in one for a screen reader."""

    def spoken(self, row: int, place: int) -> str | None:
        """Return what a screen reader says of a topic."""
        name, count = self.rows[row].key or COURSE, self.text(row, 1)
        return None if place else f"{name}, {count} known"


class PeopleColumn(QWidget):
    """The person, the topics with how many of each are known, and a button that clears them.

    Signals:
        person_chosen: the name of who practises now.
        topic_chosen: the topic to practise, empty for the whole course.
        clear_wanted: the person's progress is to be forgotten; asked twice.
    """

    person_chosen = Signal(str)
    topic_chosen = Signal(str)
    clear_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        heads = (Head(""), Head("", number=True))
        self.person = StillCombo()
        self.topics = QuietTable("topics of practice", heads, model=TopicsModel())
        self.clear, self.sure, self.keep = (
            QPushButton("Clear progress…"),
            QPushButton(),
            QPushButton("Keep it"),
        )
        self.summary = QLabel()
        self._put_together()
        self._connect()

    def show_people(self, names: tuple[str, ...], person: str) -> None:
        """Show who may be chosen, and who is."""
        self.person.clear()
        self.person.addItems([name for name in dict.fromkeys((person, *names)) if name])
        self.person.setCurrentText(person)

    def show_progress(self, progress: Progress, topic: str) -> None:
        """Show how many templates of each topic were answered right the last time."""
        self.topics.blockSignals(True)
        names = ("", *TOPICS)
        self.topics.show_rows([_topic_row(name, progress) for name in names])
        if topic in names:
            self.topics.selectRow(names.index(topic))
        self.topics.blockSignals(False)
        answered = sum(one.right + one.wrong for one in progress.tallies.values())
        right = sum(one.right for one in progress.tallies.values())
        self.summary.setText(f"{answered} answered, {right} of them right at first try." if answered else "")
        self.clear.setEnabled(bool(progress.tallies))
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
        for widget in (name, self.person, self.topics, self.summary, self.clear, self.sure, self.keep):
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
        self.clear.clicked.connect(lambda: self._ask(True))
        self.keep.clicked.connect(lambda: self._ask(False))
        self.sure.clicked.connect(self.clear_wanted)

    def _choose(self) -> None:
        self.person_chosen.emit(self.person.currentText().strip())

    def _choose_topic(self, topic: str | None) -> None:
        if topic is not None:
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


def _topic_row(topic: str, progress: Progress) -> Row:
    count = f"{progress.known(topic)} of {len(of_topic(topic))}"
    return Row(((topic or COURSE).capitalize(), count), topic, "")
