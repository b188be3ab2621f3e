"""The picture of a problem: with the question what gives nothing away, with the solution all of it."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QStackedLayout, QWidget

from configurator.practice.exercise import Exercise
from configurator.study.run import study
from configurator.ui.kit.look import GRID
from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.ui.kit.canvas import PlanCanvas
    from configurator.ui.kit.pictures import Drawer, WordPicture

LEAST = 70 * GRID


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
        wanted = problem.opening is not None and (exercise.ended or problem.shown_first)
        if wanted and problem.picture == "hand":
            self._show_hand(exercise, session)
        elif wanted and exercise.ended:
            self._show_plan(exercise, session)
        elif wanted:
            self._show_closed(exercise, session)
        self.setVisible(wanted)

    def _show_hand(self, exercise: Exercise, session: Session) -> None:
        from configurator.drawing.pictures.hand_pictures import hand_picture

        opening = exercise.posed.problem.opening
        hand = (opening.hand if opening is not None else None) or "LH"
        said = f"Plan of a door, {hand}" if exercise.ended else "Plan of a door; you stand outside, below it"
        self._show_plain(lambda width, height: hand_picture(hand, width, height), session.dark, said)

    def _show_closed(self, exercise: Exercise, session: Session) -> None:
        from configurator.drawing.plan.sheet import bare_plan

        opening = exercise.posed.problem.opening
        if opening is not None:
            found = study(opening)
            said = "Plan of the closed door of the problem, without dimensions"
            self._show_plain(lambda width, height: bare_plan(found, width, height), session.dark, said)

    def _show_plan(self, exercise: Exercise, session: Session) -> None:
        from configurator.ui.kit.canvas import PlanCanvas  # not before the first picture: matplotlib is slow

        problem = exercise.posed.problem
        if self.canvas is None:
            self.canvas = PlanCanvas()
            self._stack.addWidget(self.canvas)
        self._stack.setCurrentWidget(self.canvas)
        if problem.opening is not None:
            self.canvas.show_study(study(problem.opening), problem.angle, session.display, session.dark)

    def _show_plain(self, draw: "Drawer", dark: bool, said: str) -> None:
        from configurator.ui.kit.pictures import WordPicture

        if self.plain is None:
            self.plain = WordPicture()
            self._stack.addWidget(self.plain)
        self._stack.setCurrentWidget(self.plain)
        self.plain.show_picture(draw, dark, said)
