"""Tallies of a large job made in other processes too, one for every core beside this one.

They are processes and not threads, because Python lets one thread work at a time. They are asked through
pipes and not through a pool, because a pool reads its answers in a thread of its own, and beside Qt objects
no thread may free what Python's collector finds. A helper takes about 0.4 s to start and 60 MB, so that a
small job does without. One that dies leaves its openings to the others and to this process.
"""

import copyreg
import gc
import os
import signal
from collections import deque
from collections.abc import Generator, Iterator, Sequence
from contextlib import contextmanager, suppress
from multiprocessing import get_context
from multiprocessing.connection import Connection, wait
from threading import current_thread, main_thread
from types import MappingProxyType
from typing import Any

from configurator.model import JobFacts, Opening
from configurator.order.tally import Tally, tally_of

LARGE = 800
"""So many openings are worth a helper; they take a second here."""
PIECE = 40
"""Openings sent at a time: their tallies are read in a few milliseconds. A helper that has answered is sent
more; one that is at work is not, for two that send at once may wait for each other for ever."""
PATIENCE = 0.004
"""Seconds to wait for a helper once there is nothing left to do here."""
Worked = Sequence[tuple[int, Tally]]
"""Tallies with the places of their openings."""


def _view(numbers: dict[str, float]) -> MappingProxyType[str, float]:
    return MappingProxyType(numbers)


# The numbers of a finding; a view of a dictionary is not sent as it is.
copyreg.pickle(MappingProxyType, lambda view: (_view, (dict(view),)))


def helpers_for(openings: int) -> int:
    """Return how many helpers are worth starting for so many unlike openings."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(cores - 1, openings // LARGE)


def tally_each(
    openings: Sequence[Opening], facts: JobFacts | None, helpers: int
) -> Generator[Worked, None, None]:
    """Yield the tallies of openings as they are made, in steps of a few milliseconds, perhaps of nothing.

    Closing the iterator ends the helpers at once.
    """
    crew: dict[Connection, _Helper] = {}
    try:
        for _ in range(helpers):
            helper = _Helper(facts)
            crew[helper.pipe] = helper
        yield from _shared_out(openings, facts, crew)
    finally:
        for helper in crew.values():
            helper.end()


def _shared_out(
    openings: Sequence[Opening], facts: JobFacts | None, crew: dict[Connection, "_Helper"]
) -> Iterator[Worked]:
    left = deque(range(len(openings)))
    while left or any(helper.asked for helper in crew.values()):
        for helper in crew.values():
            if left and not helper.asked:
                helper.ask([left.popleft() for _ in range(min(PIECE, len(left)))], openings)
        for pipe in wait(list(crew), 0.0 if left else PATIENCE) if crew else ():
            assert isinstance(pipe, Connection)
            try:
                yield crew[pipe].answer()
            except (EOFError, OSError):
                dead = crew.pop(pipe)
                left.extend(dead.asked)
                dead.end()
        if left:  # from the other end, so that this process is never waited for
            place = left.pop()
            yield ((place, tally_of(openings[place], facts)),)
        else:
            yield ()


class _Helper:
    """A process that makes tallies, and what it was asked and has not answered yet."""

    def __init__(self, facts: JobFacts | None) -> None:
        context = get_context("spawn")  # a fork would copy what Qt's threads were at
        self.pipe, theirs = context.Pipe()
        self._process = context.Process(target=_help, args=(theirs, facts), daemon=True)
        with _deaf_to_interrupts():
            self._process.start()
        theirs.close()
        self.asked: list[int] = []

    def ask(self, places: list[int], openings: Sequence[Opening]) -> None:
        """Send openings to be studied."""
        self.asked = places
        with suppress(OSError):  # it died; that is seen when its answer is wanted
            self.pipe.send([openings[place] for place in places])

    def answer(self) -> Worked:
        """Return what it made of the piece that it was asked first. Raises EOFError where it died."""
        made: list[Tally] = self.pipe.recv()
        places, self.asked = self.asked, []
        return tuple(zip(places, made, strict=True))

    def end(self) -> None:
        """End it, whatever it is at."""
        self._process.kill()
        self._process.join()
        self.pipe.close()


@contextmanager
def _deaf_to_interrupts() -> Iterator[None]:
    """Let a process that is started here take no notice of Ctrl-C, which every process of a terminal gets."""
    if current_thread() is not main_thread():
        yield
        return
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def _help(pipe: Any, facts: JobFacts | None) -> None:
    """Study what comes through the pipe until it is closed.

    Garbage is collected between the pieces: while a study grows there is none, and looking takes a sixth.
    """
    gc.disable()
    gc.freeze()
    try:
        while True:
            pipe.send([tally_of(opening, facts) for opening in pipe.recv()])
            gc.collect()
    except (EOFError, OSError):
        return
