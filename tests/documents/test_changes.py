"""What changed since an order, laid out: every line can be told from every other."""

from configurator.documents.changes import changes_as_data, changes_document
from configurator.model import Job
from configurator.order.revisions import changes_since, freeze, with_revision
from configurator.order.take_off import take_off
from configurator.order.tally import tally_job
from tests.order.cases import data, job_of


def changed(before, after):
    """The changes between two lists of openings, the first of them frozen."""
    job = job_of(*before)
    revision = freeze(job, take_off(tally_job(job), job.job))
    now = Job.model_validate(
        {**with_revision(job, revision).model_dump(exclude_unset=True), "openings": after}
    )
    return changes_since(revision, now, take_off(tally_job(now), now.job))


def test_hinges_that_differ_in_screws_alone_can_be_told_apart():
    """Three hinges of 24 machine screws stay, three of 12 machine and 12 wood come: 4 and 4 with each."""
    changes = changed(
        (data("1"),), (data("1", quantity=2), data("2", hinge={"screws": {"machine": 12, "wood": 12}}))
    )
    lines, _openings = changes_document(changes).sheets
    said = [row[4:] for row in lines.rows]
    assert len(said) == 2
    assert len(set(said)) == 2
    assert {row[-1] for row in lines.rows} == {"8 machine", "4 machine, 4 wood"}
    assert [line["screws_each"] for line in changes_as_data(changes)["lines"]] == [
        {"machine": "4", "wood": "4"},
        {"machine": "8"},
    ]


def test_an_emptied_job_returns_everything():
    changes = changed((data("1", quantity=2), data("2")), ())
    lines, openings = changes_document(changes).sheets
    assert [row[:4] for row in lines.rows] == [(0, 9, 9, 0)]
    assert [row[:2] for row in openings.rows] == [("1", "gone"), ("2", "gone")]
