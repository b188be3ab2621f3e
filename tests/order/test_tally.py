"""What is kept of a study: little, and all that counting and scheduling need."""

import pytest

from configurator.long_work import Cancelled
from configurator.order import tally as tally_module
from configurator.order.book import tally_job
from configurator.order.studied import NotStudied, study_or_fault
from configurator.order.tally import leaf_choices, tally
from configurator.study import Study
from tests.openings import RAIL
from tests.order.cases import data, job_of, stop_at

LOW = {"size": {"width": 36, "height": 5}, "door": {"undercut": 12}}


def one(**changes):
    job = job_of(data("1", **changes))
    (found,) = tally_job(job)
    return found


def test_it_keeps_what_the_leaf_does_on_the_hinge_to_be_ordered():
    counted = one(compare=[4, 4.5], obstructions=[RAIL], use={"wanted_angle": 180})
    (leaf,) = counted.leaves
    assert (leaf.count, leaf.height, leaf.width, leaf.complete) == (3, 4.5, 4.5, True)
    assert (leaf.greatest_angle, leaf.stopped_by) == (180.0, None)
    assert leaf.does == {4.0: False, 4.5: True}
    (choice,) = leaf_choices([counted])  # what no study asked is worked out when somebody does
    assert [choice.does_all(width) for width in (4.0, 4.5, 5.0)] == [False, True, True]


def test_what_stops_it_is_named():
    (leaf,) = one(obstructions=[{"kind": "return wall", "start": 4}]).leaves
    assert leaf.stopped_by == "return wall"
    assert 90 < leaf.greatest_angle < 180


def test_a_width_that_is_not_compared_is_worked_out_all_the_same():
    counted = one(compare=[5, 6])
    (leaf,) = counted.leaves
    assert leaf.width == 4
    assert leaf.greatest_angle == pytest.approx(180)
    assert leaf.does == {4.0: True}
    (choice,) = leaf_choices([counted])
    assert all(choice.does_all(width) for width in (4.0, 4.5, 5.0, 6.0))


def test_one_that_could_not_be_studied_has_its_fault_and_nothing_else():
    found = one(**LOW)
    assert "has no height" in found.fault
    assert (found.hinges, found.items, found.leaves) == (0, (), ())


def test_openings_that_differ_in_name_and_place_only_are_studied_once(monkeypatch):
    studied = []
    real = tally_module.study_or_fault
    monkeypatch.setattr(
        tally_module,
        "study_or_fault",
        lambda one, *how, **more: studied.append(one.mark) or real(one, *how, **more),
    )
    job = job_of(
        data("1"),
        data("2", location="hall", notes="like 1"),
        data("3", quantity=2),
        data("4", **LOW),
        data("5", **LOW),
    )
    tallies = tally_job(job)
    assert studied == ["1", "3", "4"]
    assert [one.mark for one in tallies] == ["1", "2", "3", "4", "5"]
    assert tallies[1].opening is job.openings[1]
    assert [left.mark for one in tallies for left in one.left_out] == ["4", "5"]
    for one in tallies:
        assert one == tally(study_or_fault(one.opening))


def test_a_sentence_said_of_many_openings_is_held_once():
    job = job_of(data("1", hinge={"count": 2}), data("2", hinge={"count": 2}))
    first, second = tally_job(job)
    assert first.findings[0] is second.findings[0]
    assert tally(study_or_fault(job.openings[0])).findings == first.findings


def test_the_work_is_told_as_it_goes():
    told = []
    tally_job(job_of(data("1"), data("2")), lambda done, of: told.append((done, of)))
    assert told == [(0, 2), (1, 2), (2, 2)]


def test_it_stops_when_it_is_asked_to():
    told = []
    with pytest.raises(Cancelled):
        tally_job(job_of(data("1"), data("2"), data("3")), stop_at(1, told))
    assert told == [0, 1]


def test_an_opening_that_fails_keeps_its_place_and_its_fault():
    openings = job_of(data("1"), data("2", **LOW), data("3")).openings
    first, second, third = map(study_or_fault, openings)
    assert isinstance(first, Study)
    assert isinstance(third, Study)
    assert isinstance(second, NotStudied)
    assert (second.opening.mark, second.field) == ("2", "")
    assert "has no height" in second.fault
