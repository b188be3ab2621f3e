"""What is said of a whole job: one hinge width for all, and what it costs."""

from configurator.model import Hinge, JobFacts
from configurator.study import job_findings, study
from tests.openings import RAIL, plain_opening


def said(*openings, **facts):
    job = JobFacts(**facts)
    return job_findings([study(one, job) for one in openings])


def one(mark, **changes):
    return plain_opening(**{"compare": [], "use": {"wanted_angle": 180}, **changes}, mark=mark)


NARROW = one("1", quantity=4)
WIDE = one("2", obstructions=[RAIL])


def test_one_width_is_offered_with_what_it_costs():
    """4 does for the bare wall and 4-1/2 for the rail: twelve hinges of fifteen wider than they need be."""
    (found,) = said(NARROW, WIDE)
    assert found.code == "one width would do"
    assert found.numbers == {"height": 4.5, "width": 4.5, "wider": 12}
    assert "costs 12 of 15 hinges" in found.message


def test_a_job_of_one_width_needs_no_word():
    assert said(NARROW, one("3")) == ()
    assert said() == ()


def test_a_width_that_one_opening_cannot_take_is_no_width_for_all():
    """35 wide and accessible: the wide throw that a deep wainscot takes elsewhere leaves less than 32 in."""
    tight = one("1", size={"width": 35, "height": 84}, use={"accessible": True, "wanted_angle": 90})
    deep = one("2", obstructions=[{"kind": "wainscot", "projection": 2.5, "bottom": 0, "top": 42}])
    (found,) = said(tight, deep)
    assert found.code == "widths differ"
    assert "does not for 1. Keep them apart." in found.message


def test_an_opening_that_nothing_mends_is_left_out():
    stuck = one("9", frame={"rabbet": 4}, door={"thickness": 2.5})
    assert not study(stuck).specification.leaves[0].complete
    assert said(NARROW, stuck) == ()


def test_the_jobs_standard_is_known_to_the_question():
    standard = Hinge(height=4.5, width=4.5)
    assert said(NARROW, WIDE, standard_hinge=standard) == ()


def test_a_pair_is_asked_leaf_by_leaf():
    pair = one("7", leaves="pair", size={"width": 72, "height": 84})
    (found,) = said(pair, WIDE)
    assert found.numbers == {"height": 4.5, "width": 4.5, "wider": 6}
