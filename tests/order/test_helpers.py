"""A large job is worked out by other processes too, to the same tallies in the same order."""

import os
import signal
import time
from contextlib import closing

import pytest

from configurator.long_work import Cancelled
from configurator.order import book, helpers
from configurator.order.book import TallyBook, tally_job
from configurator.order.tally import tally_of
from tests.order.cases import data, job_of

MARKS = range(150)


@pytest.fixture
def large(monkeypatch):
    """A job with one that cannot be studied, which is taken for large on any machine."""
    monkeypatch.setattr(book, "helpers_for", lambda openings: 1 if openings > 1 else 0)
    some = (data(str(mark), size={"width": 30 + mark % 60 / 8, "height": 84}) for mark in MARKS)
    return job_of(*some, data("low", size={"width": 36, "height": 5}, door={"undercut": 12}))


def alone(job):
    return tuple(TallyBook(job.job).of(opening) for opening in job.openings)


def test_the_tallies_are_those_of_one_process_in_the_order_of_the_job(large, monkeypatch):
    told, answered = [], []
    answer = helpers._Helper.answer
    monkeypatch.setattr(helpers._Helper, "answer", lambda one: answered.append(made := answer(one)) or made)
    monkeypatch.setattr(helpers, "tally_of", lambda *_: time.sleep(0.005) or tally_of(*_))
    tallies = tally_job(large, lambda done, total: told.append((done, total)))
    assert tallies == alone(large)
    assert all(one.opening is opening for one, opening in zip(tallies, large.openings, strict=True))
    assert sum(map(len, answered)) >= helpers.PIECE
    assert told == sorted(told)
    assert (told[0], told[-1]) == ((0, 151), (151, 151))


def test_a_helper_that_dies_leaves_its_work_to_this_process(large, monkeypatch):
    ask = helpers._Helper.ask

    def killed(helper, places, openings):
        ask(helper, places, openings)
        os.kill(helper._process.pid, signal.SIGKILL)

    monkeypatch.setattr(helpers._Helper, "ask", killed)
    assert tally_job(large) == alone(large)


def test_who_stops_the_work_ends_the_helpers_at_once(large, monkeypatch):
    ended = []
    end = helpers._Helper.end
    monkeypatch.setattr(helpers._Helper, "end", lambda one: (end(one), ended.append(one._process.exitcode)))

    def stop(done, total):
        if done:
            raise Cancelled

    with pytest.raises(Cancelled):
        tally_job(large, stop)
    assert ended == [-signal.SIGKILL]


def test_a_step_is_short_and_openings_that_are_known_are_not_worked_out_again(large):
    known = TallyBook(large.job)
    with closing(known.work_out(large.openings[:1])) as steps:
        assert list(steps) == [1]
    first = known.of(large.openings[0])
    *_, done = known.work_out(large.openings)
    assert done == len(large.openings)
    assert known.of(large.openings[0]) is first


def test_few_openings_and_one_core_do_without(monkeypatch):
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: {0, 1, 2, 3}, raising=False)
    assert [helpers.helpers_for(openings) for openings in (799, 800, 1600, 10_000)] == [0, 1, 2, 3]
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: {0}, raising=False)
    assert helpers.helpers_for(10_000) == 0
