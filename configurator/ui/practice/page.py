"""Practice as a page of the window: the picture large, the question beside it, the way through the topics."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from random import SystemRandom
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QSplitter, QStackedLayout, QStackedWidget, QWidget

from configurator.practice.exercise import Exercise
from configurator.practice.problem import Problem
from configurator.practice.progress import Progress, clear_progress, load_progress, people, save_progress
from configurator.study.run import study
from configurator.ui.kit.layout import BARE, across, fill
from configurator.ui.kit.look import GRID
from configurator.ui.practice.people import CLASS, JOB, PeopleColumn
from configurator.ui.practice.question import QuestionPanel
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.drawing.base.view import Group
    from configurator.ui.kit.canvas import PlanCanvas
    from configurator.ui.kit.pictures import WordPicture
    from configurator.ui.practice.small_job import SmallJobPanel
    from configurator.ui.practice.teacher import TeacherPanel

LEAST = 70 * GRID
SOMEBODY = "trainee"
_OPENED = "The small job is open. F6 shows its schedule, Ctrl+Shift+O the order that the program makes of it."
_LARGEST_DRAW = 9_999_999
_QUESTION = 106 * GRID
"""Pixels the question takes beside its picture."""
_NARROW = 250 * GRID
"""Below this width the picture stands over the question, not beside it."""


def _draw() -> int:
    return SystemRandom().randrange(1, _LARGEST_DRAW)


class PracticePage(QWidget):
    """Nothing here touches the job: problems and small jobs have openings of their own.

    Signals:
        said: a sentence for the window's line.
        word_wanted: what a word means is to be shown.
        file_wanted: a small job is to be opened in the program.
    """

    said = Signal(str)
    word_wanted = Signal(str)
    file_wanted = Signal(object)

    def __init__(
        self, session: Session, draw: Callable[[], int] = _draw, today: Callable[[], date] = date.today
    ) -> None:
        super().__init__()
        self.session = session
        names = people()
        progress = load_progress(names[0] if names else SOMEBODY).on(today())
        self.exercise = Exercise(progress, self._keep, draw, today)
        self.who, self.question = PeopleColumn(), QuestionPanel()
        self.picture = ProblemPicture()
        self.split = QSplitter(Qt.Orientation.Horizontal)
        self.room = QStackedWidget()
        self.job: SmallJobPanel | None = None
        self.teacher: TeacherPanel | None = None
        self._put_together()
        self._connect()
        self.who.show_people(names, progress.person)

    def show_state(self, by: str) -> None:
        """Bring the page in line with the session: its theme, and how it shows lengths."""
        if by in ("open", "theme", "display"):
            self._show()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the picture where there is room for it."""
        super().resizeEvent(event)
        ways = Qt.Orientation
        self.split.setOrientation(ways.Vertical if event.size().width() < _NARROW else ways.Horizontal)
        self._share_room()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Hand the keyboard to the answer; a focus proxy would take all before it out of reach of Tab."""
        super().focusInEvent(event)
        self.question.typed.setFocus()

    # --- What its parts ask for ---

    def answer(self, typed: str) -> None:
        """Mark an answer."""
        self.exercise.answer(typed)
        self._show()
        self.question.typed.selectAll()

    def help_on(self) -> None:
        """Show the hint, or after it the first step."""
        self.exercise.help_on()
        self._show()
        self.question.typed.setFocus()

    def show_solution(self) -> None:
        """Show the worked solution and its picture."""
        self.exercise.show_solution()
        self._show()
        self.question.typed.setFocus()

    def go_on(self) -> None:
        """Pose the next problem."""
        self.exercise.go_on()
        self._begin()

    def call(self, number: int) -> None:
        """Pose the problem of a number."""
        self.exercise.call(number)
        self._begin()

    def practise(self, topic: str) -> None:
        """Take problems of a topic, of the whole course, or of the day's set."""
        self.room.setCurrentWidget(self.split)
        self.exercise.practise(topic)
        self._begin(take_keyboard=False)

    def show_job(self, level: int) -> None:
        """Show the small job at the end of a level."""
        from configurator.ui.practice.small_job import SmallJobPanel

        if self.job is None:
            self.job = SmallJobPanel(self.exercise)
            self.job.passed.connect(self._show)
            self.job.file_wanted.connect(self._open_job)
            self.job.said.connect(self.said)
            self.room.addWidget(self.job)
        self.job.begin(level, self.exercise.draw_number())
        self.room.setCurrentWidget(self.job)
        self._show()

    def _open_job(self, path: Path) -> None:
        """Open a small job in the program; the user may want to keep what is open."""
        self.file_wanted.emit(path)
        if self.session.path == path:
            self.said.emit(_OPENED)

    def show_class(self) -> None:
        """Show the page for the one who teaches."""
        from configurator.ui.practice.teacher import TeacherPanel

        if self.teacher is None:
            self.teacher = TeacherPanel()
            self.teacher.said.connect(self.said)
            self.room.addWidget(self.teacher)
        self.teacher.on_a4 = self.session.display.metric
        self.room.setCurrentWidget(self.teacher)
        self._show()

    def print_progress(self) -> None:
        """Write the person's progress as a page for the one who teaches."""
        from configurator.ui.practice.teacher import write_progress

        if sentence := write_progress(self, self.exercise.progress, self.exercise.today):
            self.said.emit(sentence)

    def change_person(self, person: str) -> None:
        """Go on as somebody else."""
        known = person or SOMEBODY
        if known != self.exercise.progress.person:
            self.exercise.change_person(load_progress(known).on(self.exercise.today))
            self.who.show_people(people(), known)
            self._begin(take_keyboard=False)

    def clear(self) -> None:
        """Forget what the person on show has practised."""
        person = self.exercise.progress.person
        try:
            clear_progress(person)
        except OSError as error:
            self.said.emit(f"The progress of {person} could not be cleared: {error.strerror or error}.")
            return
        self.exercise.change_person(Progress(person))
        self.said.emit(f"The progress of {person} is cleared.")
        self._begin()

    def _keep(self, progress: Progress) -> None:
        try:
            save_progress(progress)
        except OSError as error:
            self.said.emit(f"Your progress could not be kept: {error.strerror or error}.")

    # --- What it shows ---

    def _begin(self, take_keyboard: bool = True) -> None:
        self._show()
        self.question.typed.clear()
        if take_keyboard:
            self.question.begin_answer()

    def _show(self) -> None:
        self.question.show_exercise(self.exercise, self.session.dark)
        exercise, key = self.exercise, self._key()
        now = exercise.posed.template.topic if key == exercise.topic else ""
        self.who.show_progress(exercise.progress, key, exercise.today, now)
        self.picture.show_exercise(self.exercise, self.session)
        if self.job is not None:
            self.job.show_state(self.session.dark)
        self._share_room()

    def _key(self) -> str:
        """Return what is on show, as the rows of the topics have it."""
        now = self.room.currentWidget()
        if self.job is not None and now is self.job:
            return f"{JOB}{self.job.one.level}"
        return CLASS if self.teacher is not None and now is self.teacher else self.exercise.topic

    def _share_room(self) -> None:
        """Give the question what it needs, beside the picture or under it, and the picture the rest."""
        width, height = self.split.width(), self.split.height()
        if self.split.orientation() == Qt.Orientation.Horizontal:
            self.split.setSizes([max(width - _QUESTION, 1), _QUESTION])
        else:
            needed = min(self.question.wanted_height(width), height - LEAST)
            self.split.setSizes([max(height - needed, 1), needed])

    def _put_together(self) -> None:
        room = QScrollArea()
        room.setWidgetResizable(True)
        room.setFrameShape(QFrame.Shape.NoFrame)
        room.setMinimumWidth(_QUESTION)
        room.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        room.setWidget(self.question)
        self.split.setChildrenCollapsible(False)
        self.split.addWidget(self.picture)
        self.split.addWidget(room)
        self.split.setStretchFactor(0, 1)
        self.room.addWidget(self.split)
        fill(self, across(self.who, (self.room, 1), spacing=0, margins=BARE))

    def _connect(self) -> None:
        self.question.answered.connect(self.answer)
        self.question.help_wanted.connect(self.help_on)
        self.question.word_wanted.connect(self.word_wanted)
        self.question.solution_wanted.connect(self.show_solution)
        self.question.next_wanted.connect(self.go_on)
        self.question.number_called.connect(self.call)
        self.who.person_chosen.connect(self.change_person)
        self.who.topic_chosen.connect(self.practise)
        self.who.job_chosen.connect(self.show_job)
        self.who.class_chosen.connect(self.show_class)
        self.who.print_wanted.connect(self.print_progress)
        self.who.clear_wanted.connect(self.clear)


class ProblemPicture(QWidget):
    """Hidden where a problem has nothing to show yet; its parts are made when first shown."""

    def __init__(self) -> None:
        super().__init__()
        self.canvas: PlanCanvas | None = None
        self.plain: WordPicture | None = None
        self._stack = QStackedLayout(self)
        self.setMinimumHeight(LEAST)
        self.hide()

    def show_exercise(self, exercise: Exercise, session: Session) -> None:
        """Show what may be seen of the problem as it stands."""
        problem = exercise.posed.problem
        picture = problem.picture
        marked = picture is not None and (picture.marks_asked or not problem.angle)
        swings = exercise.ended and problem.opening is not None and not marked
        if swings:
            self._show_plan(exercise, session)
        elif problem.picture is not None:
            self._show_picture(problem, exercise.ended, session.dark)
        self.setVisible(bool(swings) or problem.picture is not None)

    def _show_picture(self, problem: Problem, told: bool, dark: bool) -> None:
        from configurator.drawing.pictures.practice_pictures import problem_picture
        from configurator.ui.kit.pictures import WordPicture

        if self.plain is None:
            self.plain = WordPicture()
            self._stack.addWidget(self.plain)
        self._stack.setCurrentWidget(self.plain)
        said = "Picture of the problem" + (", with the answer" if told else ", what is asked marked with ?")

        def draw(width: float, height: float) -> "tuple[Group, ...]":
            return problem_picture(problem, width, height, told)

        self.plain.show_picture(draw, dark, said)

    def _show_plan(self, exercise: Exercise, session: Session) -> None:
        from configurator.ui.kit.canvas import PlanCanvas  # not before the first picture: matplotlib is slow

        problem = exercise.posed.problem
        if self.canvas is None:
            self.canvas = PlanCanvas()
            self._stack.addWidget(self.canvas)
        self._stack.setCurrentWidget(self.canvas)
        if problem.opening is not None:
            self.canvas.show_study(study(problem.opening), problem.angle, session.display, session.dark)
