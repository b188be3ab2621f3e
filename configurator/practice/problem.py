"""A problem of practice and the template it is made from: the same seed gives the same problem."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from configurator.model import Opening
from configurator.practice.answers import Answer

_MOST_TRIES = 500
_MOST_CASES = 200
ASKED = "?"
"""Stands for the answer in the lettering of a picture."""


@dataclass(frozen=True, slots=True)
class Slip:
    """A wrong answer that is often given, and in one sentence how it comes about."""

    value: Any
    why: str


@dataclass(frozen=True, slots=True)
class Picture:
    """What stands beside a question: a scene, and what is marked in it, each mark by name with its lettering.

    The mark that is asked for is lettered with `ASKED`, and with the answer once that is told. `openings` are
    what the scene shows, side by side as A, B and so on where there are several; none is a typical opening.
    `words` are lettered by the scene itself, as the rooms on both sides of a door.
    """

    scene: str
    marks: tuple[tuple[str, str], ...] = ()
    openings: tuple[Opening, ...] = ()
    words: tuple[str, ...] = ()
    values: tuple[float, ...] = ()

    @property
    def marks_asked(self) -> bool:
        """Whether it marks the very thing that is asked."""
        return any(ASKED in words for _, words in self.marks)


@dataclass(frozen=True, slots=True)
class Marking:
    """Whether an answer is right; of a wrong one, how it came about, in one sentence or empty."""

    right: bool
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """A question, what is right, and why; the first line of `solution` is the first step.

    `hint` says where to look and gives no number away. `picture` stands beside the question, and beside the
    solution too where it marks what is asked; else `opening` is drawn in full there, its door open to `angle`
    degrees. `convention` names whose way of counting is meant, where practice differs.
    """

    question: str
    answer: Answer
    solution: tuple[str, ...]
    hint: str
    slips: tuple[Slip, ...] = ()
    convention: str = ""
    opening: Opening | None = None
    angle: float = 0.0
    picture: Picture | None = None

    def mark(self, typed: str) -> Marking:
        """Mark what was typed, and name the slip in it. Raises UnreadableError."""
        if self.answer.is_right(typed):
            return Marking(True)
        for slip in self.slips:
            if self.answer.like(slip.value).is_right(typed):
                return Marking(False, slip.why)
        return Marking(False, self.answer.slip_of(typed))


Maker = Callable[[Random], Problem | None]
"""Draws fresh numbers; None where those drawn make no sensible problem, so that others are drawn."""


@dataclass(frozen=True, slots=True)
class Template:
    """What problems are made from: a topic, how hard it is (1 to 5), what it asks, and its maker."""

    key: str
    topic: str
    level: int
    make: Maker


@dataclass(frozen=True, slots=True)
class Posed:
    """One problem with fresh numbers, and what it takes to pose it again."""

    template: Template
    seed: int
    problem: Problem


def balanced(*answers: str) -> Callable[[Maker], Maker]:
    """Return a decorator for makers of questions with few answers: each of them is right equally often."""

    def of(make: Maker) -> Maker:
        def balanced_maker(random: Random) -> Problem | None:
            wanted = random.choice(answers)
            for _ in range(_MOST_CASES):
                problem = make(random)
                if problem is not None and problem.answer.like(wanted) == problem.answer:
                    return problem
            return None

        return balanced_maker

    return of


def pose(template: Template, seed: int) -> Posed:
    """Return the problem of a template and a seed, always the same one.

    Numbers that make no problem, or that leave two answers as good as one another, are drawn again.
    """
    random = Random(f"{template.key} {seed}")
    for _ in range(_MOST_TRIES):
        problem = template.make(random)
        if problem is not None and problem.answer.is_clear():
            return Posed(template, seed, _with_told_slips(problem))
    raise RuntimeError(f"the template {template.key!r} finds no numbers for the seed {seed}")


def as_typed(answer: Answer) -> str:
    """Return what somebody types who means an answer: a code or an option as it is, else what is shown."""
    return str(getattr(answer, "right", answer.shown))


def _with_told_slips(problem: Problem) -> Problem:
    """Leave out slips that come to nothing or to the right answer here, and all but the first of a value."""
    kept: list[Slip] = []
    for slip in problem.slips:
        if isinstance(slip.value, int | float) and slip.value <= 0:
            continue
        typed = as_typed(problem.answer.like(slip.value))
        same = problem.answer.is_right(typed)
        if not same and not any(problem.answer.like(one.value).is_right(typed) for one in kept):
            kept.append(slip)
    return replace(problem, slips=tuple(kept))
