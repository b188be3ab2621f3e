"""What does not fit together in an opening, whatever hinge it gets; what overlaps with the door closed."""

import pytest

from configurator.rules.checks.opening_findings import opening_findings
from configurator.rules.filling.usual import fill
from configurator.study.run import study
from tests.rules.hung import LEVER, opening

OFF_ROUTE = {"accessible": False}
CASING = {"kind": "casing", "projection": 0.6875, "start": -0.5, "length": 3.25}


@pytest.mark.parametrize(
    ("changes", "codes"),
    [
        ({}, []),
        ({"frame": {"rabbet": 1.8125}}, []),  # door 1-3/4 and its gap of 1/16: just flush
        ({"frame": {"rabbet": 1.8125 - 1 / 64}}, ["door stands proud"]),
        ({"frame": {"jamb_depth": 5.875}, "wall": {"thickness": 4.875}}, []),
        (
            {"frame": {"jamb_depth": 5.875}, "wall": {"thickness": 4.875 + 1 / 64}},
            ["wall thicker than throat"],
        ),
        ({"frame": {"kind": "wood with casing"}}, ["no casing given"]),
        ({"frame": {"kind": "wood with casing"}, "obstructions": [CASING]}, []),
        ({"frame": {"kind": "aluminum storefront"}}, []),
    ],
)
def test_opening_findings(changes, codes):
    assert [said.code for said in opening_findings(fill(opening(**changes, use=OFF_ROUTE)))] == codes


def test_a_thing_that_stands_in_the_closed_door_is_said():
    block = {"kind": "other", "projection": 3, "start": -8, "length": 6}
    found = study(opening(obstructions=[block])).candidates[0].findings
    assert "overlaps closed" in [said.code for said in found]


@pytest.mark.parametrize(
    ("hardware", "words"),
    [
        ({"face": "pull"}, "in above the floor: the door then rests at"),
        ({"face": "push", "from_latch_edge": 1}, "Move it farther from the"),
    ],
)
def test_what_to_do_where_hardware_meets_something_first(hardware, words):
    found = study(opening(hardware=[{**LEVER, **hardware}])).candidates[0].findings
    (said,) = [one for one in found if one.code == "hardware meets first"]
    assert words in said.message


def test_hardware_on_a_leaf_that_is_not_there_is_named():
    given = opening(hardware=[{**LEVER, "leaf": "upper"}], use=OFF_ROUTE)
    (said,) = opening_findings(fill(given))
    assert said.code == "hardware on no leaf"
    assert (
        "Hardware 1, the lever, is on the upper leaf, which is not there: it is not counted." in said.message
    )
