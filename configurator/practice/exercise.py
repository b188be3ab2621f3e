"""Practising: one problem at a time, marked when it is answered, and what comes after it. No Qt here."""

from collections.abc import Callable
from typing import Literal

from configurator.practice.answers import UnreadableError
from configurator.practice.course import number_of, problem_of
from configurator.practice.problem import Posed
from configurator.practice.progress import Progress

State = Literal["asked", "unread", "wrong", "right", "shown"]
LARGEST_NUMBER = 999_999_999


class Exercise:
    """The problem on show, and how it stands with it.

    The first answer that can be read counts; a solution shown before that counts as a wrong one. No problem
    counts twice in one sitting. `keep` is called with the progress whenever it has changed, `draw` gives a
    fresh whole number.
    """

    def __init__(self, progress: Progress, keep: Callable[[Progress], None], draw: Callable[[], int]) -> None:
        self.progress = progress
        self.topic = ""
        self._keep, self._draw = keep, draw
        self._counted: set[int] = set()
        self.number = 0
        self.posed: Posed
        self.state: State
        self.said: str
        self.go_on()

    @property
    def ended(self) -> bool:
        """Whether the solution is on show."""
        return self.state in ("right", "shown")

    def answer(self, typed: str) -> None:
        """Mark what was typed; nothing is marked once the solution is on show."""
        if self.ended:
            return
        try:
            right = self.posed.problem.answer.is_right(typed)
        except UnreadableError as error:
            self.state, self.said = "unread", str(error)
            return
        self._count(right)
        shown = self.posed.problem.answer.shown
        if right:
            self.state, self.said = "right", f"Right: {shown}."
        else:
            self.state, self.said = "wrong", "Not right. Try again, or show the solution."

    def show_solution(self) -> None:
        """Give the problem up."""
        if not self.ended:
            self._count(False)
            self.state, self.said = "shown", f"The answer is {self.posed.problem.answer.shown}."

    def go_on(self) -> None:
        """Pose what comes next in the course, or in the topic chosen."""
        after = self.posed.template if self.number else None
        template = self.progress.next_template(self.topic, after)
        self.call(number_of(template, self._draw()))

    def call(self, number: int) -> None:
        """Pose the problem of a number."""
        self.number = number
        self.posed = problem_of(number)
        self.state, self.said = "asked", ""

    def practise(self, topic: str) -> None:
        """Take the problems of one topic from now on; of all for an empty name."""
        self.topic = topic
        self.go_on()

    def change_person(self, progress: Progress) -> None:
        """Go on as somebody else, or as the same with nothing behind them."""
        self.progress = progress
        self._counted.clear()
        self.go_on()

    def _count(self, right: bool) -> None:
        if self.number in self._counted:
            return
        self._counted.add(self.number)
        self.progress = self.progress.with_answer(self.posed.template, right)
        self._keep(self.progress)
