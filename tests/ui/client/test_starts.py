import pytest

from configurator.model import Job
from configurator.study import study
from configurator.ui.client.starts import STARTS, started, with_start
from configurator.ui.state import edits
from configurator.ui.state.edits import new_job


@pytest.mark.parametrize("name", STARTS)
def test_every_start_can_be_studied_and_has_an_answer(name):
    found = study(started("101", name))
    assert found.candidates
    assert all(leaf.parts["width"].value is not None for leaf in found.specification.leaves)


def test_the_chair_rail_shows_why_a_wider_hinge_is_worth_it():
    four, wider = study(started("101", "Chair-rail corridor")).candidates
    assert four.stopped_by.kind == "chair rail"
    assert wider.greatest_angle_bare == 180


def test_a_start_takes_the_place_of_a_door_that_nobody_has_touched():
    job = new_job()
    openings, fresh = with_start(job, job.openings[0], "Office door")
    assert openings == (fresh,)
    assert fresh.mark == "101"
    job = edits.with_openings(job, openings)
    openings, again = with_start(job, fresh, "Pair of doors")
    assert openings == (again,)
    assert again.leaves == "pair"


def test_a_start_stands_beside_a_door_that_somebody_worked_on():
    worked = edits.edited(started("101", "Office door"), {"size.width": 34})
    job = edits.with_openings(Job(), (worked,))
    openings, fresh = with_start(job, worked, "Office door")
    assert openings == (worked, fresh)
    assert fresh.mark == "102"


def test_a_job_without_openings_begins_with_the_start():
    openings, fresh = with_start(Job(), None, "Office door")
    assert openings == (fresh,)
