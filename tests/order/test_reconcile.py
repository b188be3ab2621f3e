"""The two ways of counting: a difference is seen, named, and said."""

from dataclasses import replace

from configurator.order.book import tally_job
from configurator.order.order_findings import sum_findings
from configurator.order.reconcile import reconcile
from configurator.order.take_off import take_off
from tests.order.cases import data, job_of


def counted(change):
    job = job_of(data("1", quantity=2), data("2"))
    tallies = tally_job(job)
    (line,) = take_off(tallies, job.job).lines
    return reconcile([change(line)], tallies, ())


def with_marks(line, marks):
    return replace(line, parts={next(iter(line.parts)): marks})


def test_lines_that_are_right_agree():
    sums = counted(lambda line: line)
    assert sums.agrees
    assert (sums.by_lines, sums.by_openings, sums.openings) == (9, 9, 3)
    assert sum_findings(sums) == ()


def test_a_hinge_too_few_is_found_at_its_mark():
    sums = counted(lambda line: with_marks(line, {"1": 5, "2": 3}))
    assert not sums.agrees
    assert sums.differing == ("1",)
    (said,) = sum_findings(sums)
    assert said.finding.severity == "error"
    assert "THEY DIFFER at 1" in said.words


def test_marks_that_make_up_for_each_other_are_still_found():
    sums = counted(lambda line: with_marks(line, {"1": 5, "2": 4}))
    assert sums.by_lines == sums.by_openings
    assert sums.differing == ("1", "2")


def test_a_mark_that_no_opening_has_is_found():
    assert counted(lambda line: with_marks(line, {**line.by_mark, "9": 1})).differing == ("9",)
