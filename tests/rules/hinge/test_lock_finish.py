"""The lock's finish beside the hinge's."""

import pytest

from configurator.rules.hinge.finish import lock_finish_findings, matching
from tests.rules.hung import codes, found, opening, specified


@pytest.mark.parametrize(
    ("lock", "metal", "number"),
    [
        (None, "steel", None),
        ("605", "steel", "632"),  # bright brass: 605 on brass is 632 on steel
        ("626", "steel", "652"),
        ("BHMA 626", "brass", "626"),
        ("626", "stainless", "630"),  # near: satin chrome beside satin stainless
        ("625", "stainless", "629"),
        ("630", "steel", "652"),
        ("605", "stainless", None),
        ("999", "steel", None),
    ],
)
def test_the_finish_that_goes_with_the_locks(lock, metal, number):
    row = matching(lock, metal)
    assert (None if row is None else row.bhma) == number


@pytest.mark.parametrize(
    ("lock", "metal", "hinge", "expected"),
    [
        (None, "steel", "652", []),
        ("626", "steel", "652", []),
        ("626", "stainless", "630", ["finish near the lock's"]),
        ("605", "steel", "652", ["finish differs from the lock"]),
        ("605", "stainless", "630", ["finish differs from the lock"]),
        ("999", "steel", "652", ["lock finish unknown"]),
        ("626", "steel", "999", []),
        ("626", "steel", None, []),
    ],
)
def test_what_is_said_of_two_finishes_side_by_side(lock, metal, hinge, expected):
    assert [said.code for said in lock_finish_findings(lock, metal, hinge)] == expected


def test_the_mend_names_a_number_on_the_hinges_metal_or_where_there_is_one():
    (said,) = lock_finish_findings("605", "steel", "652")
    assert "Take 632 (bright brass) on steel." in said.message
    assert said.fix[0].value == "632"
    (said,) = lock_finish_findings("605", "stainless", "630")
    assert "Nothing on stainless looks so: choose 632 on steel or 605 on brass or another" in said.message
    assert said.fix == ()
    (said,) = lock_finish_findings("628", "steel", "652")
    assert said.message.endswith("Nothing on steel looks so: choose another finish for the lock.")


def test_a_hinge_follows_its_lock_unless_somebody_asked_otherwise():
    brass = specified(opening(use={"lock_finish_bhma": "605"}))
    assert brass.as_data()["finish_bhma"] == "632"
    assert "goes with the lock's finish" in brass.as_data()["because"]["finish_bhma"]["reason"]
    assert "finish differs from the lock" not in codes(brass)
    asked = specified(opening(use={"lock_finish_bhma": "605"}, hinge={"finish_us": "US26D"}))
    assert asked.as_data()["finish_bhma"] == "652"
    assert found(asked, "finish differs from the lock").severity == "warning"
    assert specified(opening(use={"lock_finish_bhma": "999"})).as_data()["finish_bhma"] == "652"
