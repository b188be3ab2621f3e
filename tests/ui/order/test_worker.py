"""Work beside the window."""

import sys
from threading import Event

import pytest
from PySide6.QtCore import QObject

from configurator.ui.order.worker import Worker


@pytest.fixture
def worker(qapp):
    owner = QObject()
    worker = Worker(owner)
    yield worker
    worker.cancel()
    owner.deleteLater()


def steps(number):
    def work(progress):
        for done in range(number):
            progress(done, number)
        return number

    return work


def test_the_result_comes_back_in_the_windows_own_thread(qtbot, worker):
    results, turns = [], sys.getswitchinterval()
    with qtbot.waitSignal(worker.ended, timeout=5000):
        worker.start(steps(5), results.append, results.append)
        assert worker.running
    assert results == [5]
    assert not worker.running
    assert sys.getswitchinterval() == turns


def test_it_says_how_far_it_is(qtbot, worker):
    told, go_on = [], Event()

    def work(progress):
        progress(3, 10)
        go_on.wait(5)

    worker.progressed.connect(lambda *far: told.append(far))
    worker.start(work, lambda _: None, print)
    qtbot.waitUntil(lambda: (3, 10) in told, timeout=5000)
    with qtbot.waitSignal(worker.ended, timeout=5000):
        go_on.set()


def test_stopped_work_is_followed_by_nothing(qtbot, worker):
    followed, begun = [], Event()

    def work(progress):
        begun.set()
        while True:
            progress(0, 1)

    worker.start(work, followed.append, followed.append)
    assert begun.wait(5)
    with qtbot.waitSignal(worker.ended, timeout=5000):
        worker.cancel()
    assert followed == []


def test_what_went_wrong_is_handed_on(qtbot, worker):
    failed = []

    def work(progress):
        raise OSError(28, "No space left on device")

    with qtbot.waitSignal(worker.ended, timeout=5000):
        worker.start(work, print, failed.append)
    assert [error.strerror for error in failed] == ["No space left on device"]


def test_one_work_at_a_time(qtbot, worker):
    go_on = Event()
    worker.start(lambda _: go_on.wait(5), lambda _: None, print)
    with pytest.raises(RuntimeError, match="under way"):
        worker.start(steps(1), print, print)
    with qtbot.waitSignal(worker.ended, timeout=5000):
        go_on.set()
    with qtbot.waitSignal(worker.ended, timeout=5000):
        worker.start(steps(1), lambda _: None, print)
