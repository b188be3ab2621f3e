"""A hinge that is on the shelf for the one ordered: opening by opening, with why not."""

from configurator.documents.changes import substitution_document
from configurator.order.book import tally_job
from configurator.order.substitute import substitute
from configurator.order.take_off import take_off
from tests.order.cases import data, job_of

WANTED = (4.5, 4.0)


def instead(*openings, has=(4.5, 4.5), **facts):
    job = job_of(*openings, **facts)
    return substitute(tally_job(job), has, WANTED, job.job)


def test_a_wider_hinge_does_for_a_plain_door_and_the_order_has_it():
    found = instead(data("1", quantity=2), data("2", hinge={"width": 5}))
    assert [(one.mark, one.hinges, one.does, one.why) for one in found.marks] == [("1", 6, True, "")]
    assert found.words() == "4-1/2 x 4-1/2 will do for 6 of 6 hinges 4-1/2 x 4: everywhere."
    assert [line.hinge.size for line in take_off(found.tallies).lines] == ["4-1/2 x 4-1/2", "4-1/2 x 5"]
    assert [one.hinge.width for one in found.openings] == [4.5, 5]


def test_a_lower_hinge_than_the_door_takes_will_not_do():
    (one,) = instead(data("1"), has=(4.0, 4.0)).marks
    assert not one.does
    assert "4 high is less than the 4-1/2 this door takes" in one.why


def test_a_hinge_too_narrow_will_not_do_and_the_opening_keeps_its_own():
    job = job_of(data("1"), data("2"))
    found = substitute(tally_job(job), (4.5, 3.5), WANTED, job.job)
    assert [one.does for one in found.marks] == [False, False]
    assert found.words() == "4-1/2 x 3-1/2 will do for 0 of 6 hinges 4-1/2 x 4; not for 1, 2."
    assert found.openings == job.openings


def test_less_clear_width_than_is_asked_will_not_do():
    """Of a 36 in door 33-1/8 is clear on a 4 in hinge at 90 degrees, and less on a wider one."""
    asked = {"accessible": True, "wanted_angle": 90}
    size = {"width": 34.9375, "height": 84}
    found = instead(data("1", size=size, use=asked), data("2"), has=(4.5, 6.0))
    assert [(one.mark, one.does) for one in found.marks] == [("1", False), ("2", True)]
    assert found.words().endswith("not for 1.")


def test_an_error_that_stands_with_either_is_why_not():
    (one,) = instead(data("1", hinge={"count": 2})).marks
    assert not one.does
    assert "hinges" in one.why


def test_nothing_takes_it():
    found = instead(data("1", hinge={"width": 5}))
    assert found.words() == "No opening takes 4-1/2 x 4."


def test_it_is_laid_out_with_the_order_it_makes():
    found = instead(data("1"), data("2", hinge={"count": 2}))
    document = substitution_document(found, take_off(found.tallies))
    assert document.title == "Substitution: 4-1/2 x 4-1/2 for 4-1/2 x 4"
    assert [row[:3] for row in document.sheets[0].rows] == [("1", 3, True), ("2", 2, False)]
    assert [one["will_do"] for one in found.as_data()["openings"]] == [True, False]
