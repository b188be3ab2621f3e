"""A problem of practice and the template it is made from: the same seed gives the same problem."""

from collections.abc import Callable
from dataclasses import dataclass
from random import Random
from typing import Literal

from configurator.model import Opening
from configurator.practice.answers import Answer

_MOST_TRIES = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """A question, what is right, and why; `opening` is what the picture shows beside the solution.

    `angle` is how far the door stands open there, degrees; with `shown_first` a picture without numbers
    stands beside the question too. `convention` names whose way of counting is meant, where practice differs.
    """

    question: str
    answer: Answer
    solution: tuple[str, ...]
    convention: str = ""
    opening: Opening | None = None
    angle: float = 0.0
    picture: Literal["plan", "hand"] = "plan"
    shown_first: bool = False


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


def pose(template: Template, seed: int) -> Posed:
    """Return the problem of a template and a seed, always the same one.

    Numbers that make no problem, or that leave two answers as good as one another, are drawn again.
    """
    random = Random(f"{template.key} {seed}")
    for _ in range(_MOST_TRIES):
        problem = template.make(random)
        if problem is not None and problem.answer.is_clear():
            return Posed(template, seed, problem)
    raise RuntimeError(f"the template {template.key!r} finds no numbers for the seed {seed}")
