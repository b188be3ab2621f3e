"""Studying a whole job: it can be watched and stopped, and a fault does not end it."""

import pytest

from configurator.long_work import Cancelled
from configurator.order.studied import NotStudied, study_job
from configurator.study import Study
from tests.order.cases import data, job_of, stop_at

LOW = {"size": {"width": 36, "height": 5}, "door": {"undercut": 12}}


def test_an_opening_that_fails_keeps_its_place_and_its_fault():
    first, second, third = study_job(job_of(data("1"), data("2", **LOW), data("3")))
    assert isinstance(first, Study)
    assert isinstance(third, Study)
    assert isinstance(second, NotStudied)
    assert (second.opening.mark, second.field) == ("2", "")
    assert "has no height" in second.fault


def test_the_work_is_told_as_it_goes():
    told = []
    study_job(job_of(data("1"), data("2")), lambda done, of: told.append((done, of)))
    assert told == [(0, 2), (1, 2), (2, 2)]


def test_it_stops_when_it_is_asked_to():
    told = []
    with pytest.raises(Cancelled):
        study_job(job_of(data("1"), data("2"), data("3")), stop_at(1, told))
    assert told == [0, 1]
