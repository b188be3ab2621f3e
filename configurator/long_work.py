"""Long work, seen by those who do it: they tell how far it is, and learn when to stop. No Qt, no threads.

Work that can be cut is a generator, `Steps`: its caller may stop between two steps. Work that cannot be cut,
because a library runs the loop, calls a `Progress`, which raises `Cancelled` to end it.
"""

from collections.abc import Callable, Generator, Iterable, Iterator
from typing import TypeVar

_T = TypeVar("_T")
Steps = Generator[int, None, _T]
"""Yields how many rows are done and returns what came of them."""
ROWS_A_STEP = 50
Progress = Callable[[int, int], object]
"""Told how much is done, and of how much. Raises Cancelled when the work is to stop."""


class Cancelled(Exception):  # noqa: N818 - not an error: somebody asked for it
    """Whoever watches the work asked to stop it."""


def unwatched(done: int, total: int) -> None:
    """Take no notice of how far the work is: a Progress for work that nobody watches."""


def run(steps: Steps[_T]) -> _T:
    """Run work in steps to its end and return what came of it."""
    while True:
        try:
            next(steps)
        except StopIteration as end:
            result: _T = end.value
            return result


def watched(items: Iterable[_T], total: int, progress: Progress) -> Iterator[_T]:
    """Yield items one by one; `progress` is told before the first and after each."""
    progress(0, total)
    for done, item in enumerate(items, 1):
        yield item
        progress(done, total)


class Counter:
    """Counts rows up to a total, for work whose rows are done in several places."""

    def __init__(self, total: int, progress: Progress) -> None:
        self.done = 0
        self.total = total
        self._progress = progress

    def take(self, rows: int = 1) -> None:
        """Note that so many more rows are done. Raises Cancelled as the progress does."""
        self.done += rows
        self._progress(min(self.done, self.total), self.total)
