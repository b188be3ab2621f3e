"""Tallies kept while a job is worked on."""

from typing import get_args

import pytest

from configurator.model import Hinge, JobFacts, Opening
from configurator.model.words import Status
from configurator.order import tally as tally_module
from configurator.order.book import TallyBook, tally_job
from configurator.order.studied import study_or_fault
from configurator.order.tally import tally
from tests.order.cases import data, job_of


def counting(monkeypatch):
    """Count studies."""
    studied = []
    real = tally_module.study_or_fault
    monkeypatch.setattr(
        tally_module,
        "study_or_fault",
        lambda one, *how, **more: studied.append(one.mark) or real(one, *how, **more),
    )
    return studied


def test_the_book_says_what_a_whole_count_says():
    job = job_of(data("1"), data("2", quantity=3), data("3", location="hall"))
    book = TallyBook(job.job)
    assert tuple(map(book.of, job.openings)) == tally_job(job)


def test_like_openings_are_studied_once_and_keep_their_own_marks(monkeypatch):
    studied = counting(monkeypatch)
    job = job_of(data("1"), data("2", notes="ask"), data("3", hung_on="pivots"), data("4", hung_on="pivots"))
    book = TallyBook(job.job)
    tallies = [book.of(opening) for opening in job.openings]
    assert studied == ["1", "3"]
    assert [one.mark for one in tallies] == ["1", "2", "3", "4"]
    assert [left.mark for one in tallies for left in one.left_out] == ["3", "4"]
    assert [book.of(opening) for opening in job.openings] == tallies
    assert studied == ["1", "3"]


def test_only_what_was_looked_at_is_known():
    job = job_of(data("1"), data("2"))
    book = TallyBook(job.job)
    assert book.known(job.openings[0]) is None
    book.of(job.openings[0])
    assert book.known(job.openings[0]) is not None
    assert book.known(job.openings[1]) is None


def test_another_standard_hinge_makes_other_answers():
    job = job_of(data("1"))
    book = TallyBook(job.job)
    assert book.of(job.openings[0]).leaves[0].width == 4
    book.use_facts(JobFacts(name="another name"))
    assert book.known(job.openings[0]) is not None
    book.use_facts(JobFacts(standard_hinge=Hinge(width=4.5)))
    assert book.known(job.openings[0]) is None
    assert book.of(job.openings[0]).leaves[0].width == 4.5


def test_what_is_gone_is_forgotten_once_it_is_the_most():
    job = job_of(*(data(str(number)) for number in range(103)))
    book = TallyBook(job.job)
    for opening in job.openings:
        book.of(opening)
    book.forget_others(job.openings[:2])
    assert book.known(job.openings[0]) is not None
    assert book.known(job.openings[50]) is not None, "104 are not yet exceeded"
    book.forget_others(job.openings[:1])
    assert book.known(job.openings[0]) is not None
    assert book.known(job.openings[50]) is None


@pytest.mark.parametrize("width", [None, 4, 4.5])
@pytest.mark.parametrize("status", get_args(Status))
def test_a_status_changes_no_answer_that_the_book_keeps(width, status):
    """With a rail that a 4 in hinge fails, what a width by hand is told depends on the status."""
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
    more = {} if width is None else {"hinge": {"width": width}}
    openings = [
        Opening.model_validate(data("1", obstructions=[rail], use={"wanted_angle": 180}, status=one, **more))
        for one in ("assumed", status)
    ]
    book = TallyBook()
    book.of(openings[0])
    assert book.of(openings[1]) == tally(study_or_fault(openings[1]))
