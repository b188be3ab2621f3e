"""What changed since an order, laid out: every line can be told from every other."""

from configurator.documents.changes import changes_as_data, changes_document
from configurator.model import Job
from configurator.order.book import tally_job
from configurator.order.revisions import changes_since, freeze, with_revision
from configurator.order.take_off import take_off
from tests.order.cases import data, job_of


def changed(before, after):
    """The changes between two lists of openings, the first of them frozen."""
    job = job_of(*before)
    revision = freeze(job, take_off(tally_job(job), job.job))
    now = Job.model_validate(
        {**with_revision(job, revision).model_dump(exclude_unset=True), "openings": after}
    )
    return changes_since(revision, now, take_off(tally_job(now), now.job))


def test_lines_say_what_to_order_and_what_to_return_as_an_order_line_does():
    changes = changed((data("1"),), (data("1", hinge={"corner": "1/4 radius"}), data("2")))
    lines, _openings = changes_document(changes).sheets
    assert [row[:5] for row in lines.rows] == [(3, 0, 0, 3, "4-1/2 x 4")]
    assert [(one["order"], one["corner"]) for one in changes_as_data(changes)["lines"]] == [(3, "1/4 radius")]


def test_an_opening_described_anew_is_named_though_its_hinges_are_the_same():
    changes = changed((data("1"),), (data("1", use={"fire_rated": True}),))
    found = changes_as_data(changes)
    assert (found["lines"], found["openings"], found["same_hinges"]) == ([], [], ["1"])


def test_an_emptied_job_returns_everything():
    changes = changed((data("1", quantity=2), data("2")), ())
    lines, openings = changes_document(changes).sheets
    assert [row[:4] for row in lines.rows] == [(0, 9, 9, 0)]
    assert [row[:2] for row in openings.rows] == [("1", "gone"), ("2", "gone")]


def test_a_document_names_what_was_described_anew():
    document = changes_document(changed((data("1"),), (data("1", use={"fire_rated": True}),)))
    assert document.notes[1] == "Described anew, with the same hinges: 1."
