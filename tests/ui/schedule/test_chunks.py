from itertools import pairwise
from time import perf_counter

import pytest
from PySide6.QtCore import QObject

from configurator.ui.schedule.chunks import BUDGET, Chunks


@pytest.fixture
def owner(qapp):
    return QObject()


def busy(steps, seconds, done):
    for step in range(steps):
        until = perf_counter() + seconds
        while perf_counter() < until:
            pass
        done.append(step)
        yield


def test_short_work_is_done_at_once(owner):
    chunks, done, after = Chunks(owner), [], []
    chunks.start(busy(3, 0, done), lambda: after.append(len(done)))
    assert after == [3]
    assert not chunks.running


def test_long_work_goes_on_in_pieces_that_leave_room(qtbot, owner):
    chunks, done, after, reported = Chunks(owner), [], [], []
    chunks.progressed.connect(reported.append)
    start = perf_counter()
    chunks.start(busy(40, 0.004, done), lambda: after.append(True), first=0.0)
    assert perf_counter() - start < BUDGET  # nothing of it was done yet
    assert done == []
    qtbot.waitUntil(lambda: bool(after))
    assert done == list(range(40))
    assert len(reported) > 10
    assert max(after - before for before, after in pairwise(reported)) <= 4


def test_cancelling_ends_it_without_what_follows(qtbot, owner):
    chunks, done, after, ends = Chunks(owner), [], [], []
    chunks.stopped.connect(ends.append)
    chunks.start(busy(100, 0.004, done), lambda: after.append(True))
    chunks.cancel()
    had = len(done)
    qtbot.wait(40)
    assert len(done) == had < 100
    assert (after, ends, chunks.running) == ([], [False], False)
    chunks.cancel()
    assert ends == [False]


def test_new_work_takes_the_place_of_the_old(qtbot, owner):
    chunks, old, new = Chunks(owner), [], []
    chunks.start(busy(100, 0.004, old))
    chunks.start(busy(2, 0, new))
    qtbot.wait(40)
    assert len(old) < 100
    assert new == [0, 1]


def test_work_that_fails_ends_and_tells(owner):
    chunks, ends = Chunks(owner), []
    chunks.stopped.connect(ends.append)

    def failing():
        yield
        raise ValueError("no such thing")

    with pytest.raises(ValueError, match="no such thing"):
        chunks.start(failing())
    assert ends == [False]
    assert not chunks.running
