"""Long work in the window: in pieces, beside it in a thread, and the line that shows either."""

import gc
import logging
import sys
from itertools import pairwise
from threading import Event, get_ident
from time import perf_counter

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QObject
from PySide6.QtWidgets import QWidget

from configurator.ui.kit.runner import PIECE, TURN, Beside, Pieces, ProgressLine

UNDONE = "order.pdf was not written"


@pytest.fixture
def owner(qapp):
    return QObject()


@pytest.fixture
def beside(owner):
    beside = Beside(owner)
    yield beside
    beside.give_up()


@pytest.fixture
def sentences(beside):
    """What was told of work that came to nothing."""
    sentences = []
    beside.failed.connect(sentences.append)
    return sentences


# --- In pieces ---


def busy(steps, seconds, done):
    for step in range(1, steps + 1):
        until = perf_counter() + seconds
        while perf_counter() < until:
            pass
        done.append(step)
        yield step


def test_short_work_is_done_at_once(owner):
    pieces, done, after = Pieces(owner), [], []
    pieces.start(busy(3, 0, done), lambda: after.append(len(done)))
    assert after == [3]
    assert not pieces.running


def test_long_work_goes_on_in_pieces_that_leave_room(qtbot, owner):
    pieces, done, after, reported = Pieces(owner, first=0.0), [], [], []
    pieces.progressed.connect(lambda step, total: reported.append((step, total)))
    start = perf_counter()
    pieces.start(busy(40, 0.004, done), lambda: after.append(True), total=40)
    assert perf_counter() - start < PIECE  # nothing of it was done yet
    assert done == []
    qtbot.waitUntil(lambda: bool(after))
    assert done == list(range(1, 41))
    assert len(reported) > 10
    assert max(after - before for (before, _), (after, _) in pairwise(reported)) <= 4
    assert {total for _, total in reported} == {40}


def test_cancelled_pieces_end_without_what_follows(qtbot, owner):
    pieces, done, after, ends = Pieces(owner, first=0.03), [], [], []
    pieces.ended.connect(ends.append)
    pieces.start(busy(100, 0.004, done), lambda: after.append(True))
    pieces.cancel()
    had = len(done)
    other = Pieces(owner, first=0.0)
    with qtbot.waitSignal(other.ended):
        other.start(busy(10, 0.004, []))
    assert len(done) == had < 100
    assert (after, ends, pieces.running) == ([], [False], False)
    pieces.cancel()
    assert ends == [False]


def test_new_pieces_take_the_place_of_the_old(qtbot, owner):
    pieces, old, new = Pieces(owner, first=0.0), [], []
    pieces.start(busy(100, 0.004, old))
    with qtbot.waitSignal(pieces.ended, check_params_cb=lambda whole: whole):
        pieces.start(busy(2, 0, new))
    assert old == []
    assert new == [1, 2]


def test_pieces_that_fail_end_and_raise_it(owner):
    pieces, ends = Pieces(owner), []
    pieces.ended.connect(ends.append)

    def failing():
        yield 1
        raise ValueError("no such thing")

    with pytest.raises(ValueError, match="no such thing"):
        pieces.start(failing())
    assert ends == [False]
    assert not pieces.running


# --- Beside the window ---


def counting(number):
    def work(progress):
        for done in range(number):
            progress(done, number)
        return number

    return work


def until_stopped(begun):
    def work(progress):
        begun.set()
        while True:
            progress(0, 1)

    return work


def start(beside, work, then=lambda _: None, what="Writing order.pdf"):
    beside.start(what, UNDONE, work, then)


def test_the_result_comes_back_in_the_windows_own_thread(qtbot, beside):
    results, threads = [], []

    def work(progress):
        threads.append(get_ident())
        return counting(5)(progress)

    with qtbot.waitSignal(beside.ended) as ended:
        start(beside, work, lambda result: results.append((result, get_ident())))
        assert beside.running
    assert ended.args == [True]
    assert results == [(5, get_ident())]
    assert threads != [get_ident()]
    assert not beside.running


def test_it_says_how_far_it_is(qtbot, beside):
    told, go_on = [], Event()

    def work(progress):
        progress(3, 10)
        go_on.wait(60)

    beside.progressed.connect(lambda *far: told.append(far))
    start(beside, work)
    qtbot.waitUntil(lambda: (3, 10) in told)
    with qtbot.waitSignal(beside.ended):
        go_on.set()


def test_stopped_work_is_followed_by_a_sentence_only(qtbot, beside, sentences):
    followed, begun = [], Event()
    start(beside, until_stopped(begun), followed.append)
    assert begun.wait(60)
    with qtbot.waitSignal(beside.ended) as ended:
        beside.cancel()
    assert ended.args == [False]
    assert followed == []
    assert sentences == ["Stopped. order.pdf was not written."]


@pytest.mark.parametrize(
    ("error", "why"),
    [
        (OSError(28, "No space left on device"), "No space left on device"),
        (ValueError("a text is too long"), "a text is too long"),
        (KeyError("pin"), "something went wrong in the program (KeyError: 'pin')"),
        (SystemExit(3), "something went wrong in the program (SystemExit: 3)"),
    ],
)
def test_whatever_ended_the_work_is_told_in_a_sentence(qtbot, beside, sentences, caplog, error, why):
    def work(progress):
        raise error

    with qtbot.waitSignal(beside.ended), caplog.at_level(logging.ERROR):
        start(beside, work)
    assert sentences == [f"order.pdf was not written: {why}."]
    assert ("Traceback" in caplog.text) == ("in the program" in why)


def test_work_asked_for_meanwhile_is_refused_in_words(qtbot, beside, sentences):
    done, go_on = [], Event()
    start(beside, lambda _: go_on.wait(60), lambda _: done.append("first"))
    start(beside, counting(1), lambda _: done.append("second"))
    assert sentences == [
        "order.pdf was not written. Writing order.pdf is under way: wait for it, or cancel it, and ask again."
    ]
    with qtbot.waitSignal(beside.ended):
        go_on.set()
    assert done == ["first"]
    with qtbot.waitSignal(beside.ended):
        start(beside, counting(1), lambda _: done.append("third"))
    assert done == ["first", "third"]


def test_waiting_brings_what_follows(beside):
    followed = []
    start(beside, counting(3), followed.append)
    beside.wait()
    assert followed == [3]
    assert not beside.running
    beside.wait()
    assert followed == [3]


@pytest.mark.parametrize("end", ["given up", "owner deleted", "owner's window deleted", "nobody holds it"])
def test_work_ends_with_the_object_it_was_done_for(qapp, end):
    """The thread has ended when that returns, nothing follows, and Python collects again."""
    window = QWidget()
    owner = QObject(window)
    beside, followed, begun = Beside(owner), [], Event()
    start(beside, until_stopped(begun), followed.append)
    assert begun.wait(60)
    thread = beside._runs[0].thread
    if end == "given up":
        beside.give_up()
    elif end == "nobody holds it":
        del beside, owner, window
        gc.collect()
    else:
        (owner if end == "owner deleted" else window).deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not thread.is_alive()
    assert gc.isenabled()
    assert followed == []


# --- The collector ---


class Knot(QWidget):
    """A widget that only the cyclic collector can free; it notes in which thread that happened."""

    freed: list[int]

    def __init__(self, freed):
        super().__init__()
        self.freed = freed
        self.myself = self

    def __del__(self):
        self.freed.append(get_ident())


def allocating(cycles, go_on):
    """Work that allocates as much as would make Python collect every generation, many times."""

    def work(progress):
        for number in range(cycles):
            kept = [[number] for _ in range(10_000)]
            progress(number, cycles)
        go_on.wait(60)
        return len(kept)

    return work


def test_a_widget_in_a_cycle_is_freed_on_the_windows_thread(qtbot, beside):
    freed, go_on = [], Event()
    gc.collect()
    gc.disable()  # they are to be young when the work begins
    for _ in range(20):
        Knot(freed)
    gc.enable()
    start(beside, allocating(50, go_on))
    qtbot.waitUntil(lambda: len(freed) == 20)  # while the thread still lives
    assert beside.running
    assert set(freed) == {get_ident()}
    with qtbot.waitSignal(beside.ended):
        go_on.set()


def test_python_collects_as_before_once_no_work_lives(qtbot, owner):
    one, other, go_on = Beside(owner), Beside(owner), Event()
    start(one, lambda _: go_on.wait(60))
    start(other, counting(1))
    other.wait()
    assert not gc.isenabled()
    go_on.set()
    one.wait()
    assert gc.isenabled()
    gc.disable()
    try:
        start(one, counting(1))
        one.wait()
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_what_the_thread_is_given_is_not_freed_by_it(qtbot, beside):
    """Not even a widget that everybody else has let go: a reference count falls to nothing in any thread."""
    freed, go_on = [], Event()
    knot = Knot(freed)
    knot.myself = None

    def work(progress, knot=knot):
        go_on.wait(60)
        return knot.freed

    start(beside, work)
    del knot, work
    with qtbot.waitSignal(beside.ended):
        go_on.set()
    qtbot.waitUntil(lambda: bool(freed))
    assert freed == [get_ident()]


def test_threads_take_short_turns_while_work_lives(beside):
    turns = sys.getswitchinterval()
    start(beside, counting(1))
    assert sys.getswitchinterval() == TURN < turns
    beside.wait()
    assert sys.getswitchinterval() == turns


# --- The line ---


@pytest.fixture
def line(qtbot, owner, beside):
    pieces = Pieces(owner, first=0.0)
    line = ProgressLine(pieces, beside)
    qtbot.addWidget(line)
    line.pieces = pieces
    return line


def test_the_line_says_what_is_done_and_how_far_it_is(qtbot, line):
    words = []
    line.pieces.progressed.connect(lambda *_: words.append(line.words.text()))
    assert line.isHidden()
    line.pieces.start(busy(3, 0.01, []), what="Trying it", total=3)
    assert not line.isHidden()
    assert line.words.text() == "Trying it: 0 of 3"
    qtbot.waitUntil(lambda: not line.pieces.running)
    assert "Trying it: 1 of 3" in words
    assert line.isHidden()


def test_the_line_counts_rows_where_nobody_knows_how_many_there_are(qtbot, line):
    words = []
    line.pieces.progressed.connect(lambda *_: words.append(line.words.text()))
    line.pieces.start(busy(3, 0.01, []), what="Reading doors.csv")
    assert line.words.text() == "Reading doors.csv…"
    qtbot.waitUntil(lambda: not line.pieces.running)
    assert "Reading doors.csv: 2 rows" in words


def test_its_button_stops_whatever_it_shows(qtbot, line, beside):
    begun, cancelled = Event(), []
    line.cancelled.connect(lambda: cancelled.append(True))
    start(beside, until_stopped(begun))
    assert not line.isHidden()
    assert line.words.text() == "Writing order.pdf…"
    with qtbot.waitSignal(beside.ended):
        line.cancel.click()
    assert line.isHidden()
    line.pieces.start(busy(3, 0.01, []), what="Trying it", total=3)
    line.cancel.click()
    assert not line.pieces.running
    assert len(cancelled) == 2
