"""Long work in steps: a generator that yields how many rows are done and returns what came of them."""

from collections.abc import Generator
from typing import TypeVar

_T = TypeVar("_T")
Steps = Generator[int, None, _T]
EVERY = 50
"""Rows from one step to the next."""


def run(steps: Steps[_T]) -> _T:
    """Run long work to its end and return what came of it."""
    while True:
        try:
            next(steps)
        except StopIteration as end:
            result: _T = end.value
            return result
