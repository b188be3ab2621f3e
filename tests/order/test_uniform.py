"""One hinge width for the whole job: offered with what it costs and which openings change."""

import pytest

from configurator.long_work import Cancelled
from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.order.uniform import made_uniform, offered_width, uniform
from tests.openings import RAIL
from tests.order.cases import data, job_of, stop_at


def said(*openings, **facts):
    job = job_of(*openings, **facts)
    return uniform(tally_job(job), job.job)


NARROW = data("1", quantity=4)
WIDE = data("2", hinge={"width": 4.5})


def test_it_is_offered_with_its_cost_and_every_mark_that_changes():
    (one,) = said(NARROW, WIDE, data("3", compare=[]))
    assert one.finding.code == "one width would do"
    assert one.finding.numbers == {"height": 4.5, "width": 4.5, "wider": 15}
    assert one.marks == ("1", "3")
    assert one.words == one.finding.message


def test_a_width_that_no_study_tried_is_asked_of_the_geometry():
    tight = data("1", size={"width": 35, "height": 84}, use={"accessible": True, "wanted_angle": 90})
    deep = data(
        "2",
        obstructions=[RAIL | {"kind": "wainscot", "projection": 2.5}],
        use={"wanted_angle": 180},
        compare=[],
    )
    (one,) = said(tight, deep)
    assert one.finding.code == "widths differ"
    assert one.marks == ()


def test_one_width_alone_needs_no_word():
    assert said(NARROW, data("3")) == ()
    assert said() == ()


def test_the_jobs_standard_holds_for_the_question():
    standard = {"height": 4.5, "width": 4.5}
    assert said(NARROW, data("2"), standard_hinge=standard) == ()


def test_it_goes_with_the_order_when_it_is_asked_for():
    job = job_of(NARROW, WIDE)
    tallies = tally_job(job)
    order = take_off(tallies, job.job, also=uniform(tallies, job.job))
    assert [one.finding.code for one in order.findings] == ["one width would do"]


def test_taking_the_offer_leaves_one_line_and_all_else_as_it_was():
    job = job_of(NARROW, WIDE, data("3", hung_on="pivots"), data("4", hinge={"tip": "ball", "height": 4.5}))
    (one,) = uniform(tally_job(job), job.job)
    assert offered_width(one) == 4.5
    made = made_uniform(job.openings, one)
    assert [opening is before for opening, before in zip(made, job.openings, strict=True)] == [
        False, True, True, False,
    ]  # fmt: skip
    assert (made[3].hinge.width, made[3].hinge.tip) == (4.5, "ball")
    after = job.model_copy(update={"openings": made})
    assert uniform(tally_job(after), job.job) == ()
    assert {line.hinge.width for line in take_off(tally_job(after), job.job).lines} == {4.5}


def test_where_nothing_is_offered_nothing_is_made():
    tight = data("1", size={"width": 35, "height": 84}, use={"accessible": True, "wanted_angle": 90})
    deep = data("2", obstructions=[RAIL | {"projection": 2.5}], use={"wanted_angle": 180})
    job = job_of(tight, deep)
    (one,) = uniform(tally_job(job), job.job)
    assert offered_width(one) is None
    with pytest.raises(ValueError, match="no one width"):
        made_uniform(job.openings, one)


def test_every_question_is_told_of_and_can_be_the_last():
    job = job_of(NARROW, WIDE)
    told = []
    found = uniform(tally_job(job), job.job, lambda done, total: told.append((done, total)))
    assert found == uniform(tally_job(job), job.job)
    assert [done for done, _ in told] == list(range(len(told)))
    with pytest.raises(Cancelled):
        uniform(tally_job(job), job.job, stop_at(0))
