"""A door or frame already made: limits of what still serves are from memory, no source."""

import pytest

from configurator.rules.finding import Source, reason
from configurator.rules.hinge.prepared import Prepared, prepared_findings, prepared_height
from tests.rules.hung import codes, found, opening, specified

STEP = 1 / 64
SOURCE = Source("a test", "derived")


@pytest.mark.parametrize(
    ("prepared", "height"), [(None, 4.5), (4.5 - STEP, 4.5), (4.5, 4.5), (4.5 + STEP, 4.5 + STEP), (5, 5)]
)
def test_what_was_prepared_is_taken_where_it_is_enough(prepared, height):
    assert prepared_height(reason(4.5, "a door so wide", SOURCE), prepared).value == height


def said(**changes):
    usual = {
        "height": 4.5,
        "needed": 5,
        "chosen": 5,
        "weight": "standard",
        "count": 3,
        "needed_count": 3,
        "traffic": "average",
        "fire_rated": False,
        "door_weight": 150,
    }
    return [one.code for one in prepared_findings(Prepared(**{**usual, **changes}))]


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"height": 5}, "preparation fits"),
        ({"height": 5, "chosen": 4.5}, "preparation differs"),
        ({"height": 5, "chosen": 6}, "preparation differs"),
        ({"height": 6, "chosen": 6}, "preparation fits"),
        ({}, "preparation low"),
        ({"chosen": 4.5}, "preparation low"),
        ({"chosen": 4.5, "weight": "heavy"}, "preparation serves"),
        ({"weight": "heavy"}, "preparation low"),
        ({"chosen": 4.5, "count": 3}, "preparation low"),
        ({"chosen": 4.5, "count": 4}, "preparation serves"),
        ({"chosen": 4.5, "count": 5}, "preparation serves"),
        ({"height": 4.5 + STEP}, "preparation low"),
        ({"height": 4.5 - STEP}, "preparation too low"),
        ({"door_weight": 199}, "preparation low"),
        ({"door_weight": 200}, "preparation too low"),
        ({"door_weight": 201}, "preparation too low"),
        ({"door_weight": None}, "preparation low"),
        ({"traffic": "low"}, "preparation low"),
        ({"traffic": "high"}, "preparation too low"),
        ({"fire_rated": True}, "preparation too low"),
        ({"fire_rated": True, "chosen": 4.5, "weight": "heavy"}, "preparation too low"),
    ],
)
def test_limits_of_what_serves(changes, code):
    assert said(**changes) == [code]


def test_a_42_in_door_prepared_for_four_and_a_half():
    """The table's 5 stays until the mend is taken; then 4-1/2, heavy, with a 0.18 in leaf."""
    wide = {"size": {"width": 42, "height": 84}, "prepared_height": 4.5}
    spec = specified(opening(**wide))
    assert spec.as_data()["height"] == 5
    low = found(spec, "preparation low")
    assert "Take 4-1/2 high in heavy weight (0.18 in leaf), or 4 of them" in low.message
    assert "ask about preparation" not in codes(spec)
    mended = specified(opening(**wide, hinge={fix.path.split(".")[1]: fix.value for fix in low.fix}))
    assert mended.as_data()["height"] == 4.5
    assert mended.as_data()["leaf_thickness"] == 0.18
    assert "by heavier leaves, in average use only" in found(mended, "preparation serves").message
    assert "hinge too low" not in codes(mended)


def test_one_hinge_more_serves_too():
    wide = {"size": {"width": 42, "height": 84}, "prepared_height": 4.5}
    spec = specified(opening(**wide, hinge={"height": 4.5, "weight": "standard", "count": 4}))
    assert "by one hinge more than 3" in found(spec, "preparation serves").message


def test_a_higher_preparation_is_used():
    spec = specified(opening(prepared_height=5))
    assert spec.as_data()["height"] == 5
    assert "prepared for 5 high" in spec.as_data()["because"]["height"]["reason"]
    lower = specified(opening(prepared_height=5, hinge={"height": 4.5}))
    assert found(lower, "preparation differs").fix[0].value == 5
