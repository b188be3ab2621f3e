"""Practising: one problem at a time, marked when it is answered, helped on, and what comes after it."""

from collections.abc import Callable
from datetime import date
from typing import Literal

from configurator.practice.answers import UnreadableError
from configurator.practice.course import number_of, problem_of
from configurator.practice.problem import Posed
from configurator.practice.progress import Progress

State = Literal["asked", "unread", "wrong", "right", "shown"]
Help = Literal["", "hint", "step"]
LARGEST_NUMBER = 999_999_999
TODAY = "today"
"""Name of the day's set, where the name of a topic is asked for."""


class Exercise:
    """The problem on show, and how it stands with it.

    The first answer that can be read counts; a step or a solution shown before that counts as a wrong one.
    After a hint a right one counts as right and is no step toward known. No problem counts twice in one
    sitting. `keep` is called with the progress whenever it has changed, `draw_number` gives a fresh one.
    """

    def __init__(
        self,
        progress: Progress,
        keep: Callable[[Progress], None],
        draw_number: Callable[[], int],
        today: Callable[[], date] = date.today,
    ) -> None:
        self.progress = progress
        self.topic = ""
        self._keep, self.draw_number, self._today = keep, draw_number, today
        self._counted: set[int] = set()
        self._recent: list[str] = []
        self._left_out: set[str] = set()
        self.number = 0
        self.posed: Posed
        self.state: State
        self.said: str
        self.help: Help = ""
        self.go_on()

    @property
    def today(self) -> date:
        """The day that answers count for."""
        return self._today()

    @property
    def ended(self) -> bool:
        """Whether the solution is on show."""
        return self.state in ("right", "shown")

    @property
    def next_help(self) -> Literal["hint", "step", ""]:
        """What help there is next, before the whole solution."""
        if self.ended or self.help == "step":
            return ""
        if not self.help:
            return "hint"
        return "step" if len(self.posed.problem.solution) > 1 else ""

    def answer(self, typed: str) -> None:
        """Mark what was typed; nothing is marked once the solution is on show."""
        if self.ended:
            return
        try:
            marking = self.posed.problem.mark(typed)
        except UnreadableError as error:
            self.state, self.said = "unread", str(error)
            return
        before = self.progress
        self._count(marking.right)
        if marking.right:
            more = f"{self._day_done()}{self._level_met(before)}"
            self.state, self.said = "right", f"Right: {self.posed.problem.answer.shown}.{more}"
        else:
            self.state, self.said = "wrong", f"Not right. {marking.why or 'Try again, or take a hint.'}"

    def help_on(self) -> None:
        """Give the hint; asked once more, the first step of the solution."""
        if wanted := self.next_help:
            self.help = wanted
            if wanted == "step":
                self._count(False)

    def show_solution(self) -> None:
        """Give the problem up."""
        if not self.ended:
            self._count(False)
            shown = self.posed.problem.answer.shown
            self.state, self.said = "shown", f"The answer is {shown}.{self._day_done()}"

    def _day_done(self) -> str:
        """Say that the day's set is done, once its last problem is."""
        day = self.progress.day
        last = day.is_finished and self.posed.template.key == list(day.done)[-1]
        return f" Today's {len(day.keys)} are done, {day.right} of them right at first try." if last else ""

    def _level_met(self, before: Progress) -> str:
        """Lead to the small job of a level with the answer that makes the level whole."""
        level = self.posed.template.level
        met = self.progress.has_met(level) and not before.has_met(level)
        return f" All of level {level} went right once: its small job is waiting." if met else ""

    def go_on(self) -> None:
        """Pose what comes next in the course, in the topic chosen, or in the day's set."""
        if self.number and self.number not in self._counted:
            self._left_out.add(self.posed.template.key)
        template = None
        if self.topic == TODAY:
            self.progress = self.progress.on(self.today)
            template = self.progress.next_of_day()
        if template is None:
            topic = "" if self.topic == TODAY else self.topic
            template = self.progress.next_template(topic, self.today, self._recent, self._left_out)
        self.call(number_of(template, self.draw_number()))

    def call(self, number: int) -> None:
        """Pose the problem of a number."""
        self.number = number
        self.posed = problem_of(number)
        self._recent.append(self.posed.template.key)
        self.state, self.said, self.help = "asked", "", ""

    def practise(self, topic: str) -> None:
        """Take the problems of one topic from now on; of all for an empty name, or the day's set."""
        self.topic = topic
        self._begin()

    def change_person(self, progress: Progress) -> None:
        """Go on as somebody else, or as the same with nothing behind them."""
        self.progress = progress
        self._counted.clear()
        self._begin()

    def take_progress(self, progress: Progress) -> None:
        """Go on with what was reached elsewhere, as in a small job."""
        self.progress = progress
        self._keep(progress)

    def _begin(self) -> None:
        """Go on from the beginning, wherever the sitting has been."""
        self._recent.clear()
        self._left_out.clear()
        self.number = 0
        self.go_on()

    def _count(self, right: bool) -> None:
        if self.number in self._counted:
            return
        self._counted.add(self.number)
        mixed = self.topic in ("", TODAY)
        template = self.posed.template
        self.progress = self.progress.with_answer(template, right, self.today, mixed, bool(self.help))
        self._keep(self.progress)
