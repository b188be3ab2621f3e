"""A set of problems by number, for a class: number, level and topic give the same problems anywhere."""

from dataclasses import dataclass
from random import Random

from configurator.practice.course import LEVELS, TOPICS, course, number_of, problem_of
from configurator.practice.problem import Posed, Template

MOST = 40
LARGEST_SET = 99_999
_LARGEST_DRAW = 9_999_999


@dataclass(frozen=True, slots=True)
class SetAsked:
    """Which set: its number; of one level or of all (0); of one topic or of all (empty); how many problems.

    Raises ValueError, with the name of what is wrong first, for what there is not.
    """

    number: int
    level: int = 0
    topic: str = ""
    count: int = 10

    def __post_init__(self) -> None:
        if not 1 <= self.number <= LARGEST_SET:
            raise ValueError(f"set is a number from 1 to {LARGEST_SET}; {self.number} was given")
        if self.level not in (0, *LEVELS):
            raise ValueError(f"level is a number from 1 to {LEVELS[-1]}; {self.level} was given")
        if self.topic not in ("", *TOPICS):
            raise ValueError(f"topic is one of {', '.join(TOPICS)}; {self.topic[:40]!r} was given")
        if not 1 <= self.count <= MOST:
            raise ValueError(f"count is a number from 1 to {MOST}; {self.count} was given")
        if not self.templates:
            raise ValueError(f"topic {self.topic} has no problems of level {self.level}")

    @property
    def templates(self) -> tuple[Template, ...]:
        """The templates it is drawn from, from easy to hard."""
        return tuple(
            one for one in course() if self.level in (0, one.level) and self.topic in ("", one.topic)
        )

    @property
    def title(self) -> str:
        """What it is called, as `Set 12, level 1, hands`."""
        level = f", level {self.level}" if self.level else ""
        return f"Set {self.number}{level}{f', {self.topic}' if self.topic else ''}"


def problem_set(asked: SetAsked) -> tuple[tuple[int, Posed], ...]:
    """Return the problems of a set from easy to hard, each with the number it is called by.

    A kind of problem comes a second time only once every kind there is has come.
    """
    random = Random(f"set {asked.number} {asked.level} {asked.topic}")
    every = list(asked.templates)
    chosen: list[Template] = []
    while len(chosen) < asked.count:
        chosen += random.sample(every, min(len(every), asked.count - len(chosen)))
    ordered = sorted(chosen, key=course().index)
    numbers = [number_of(template, random.randrange(1, _LARGEST_DRAW)) for template in ordered]
    return tuple((number, problem_of(number)) for number in numbers)
