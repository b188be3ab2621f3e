"""Parts asked for that do not go together."""

import pytest

from configurator.model import Hinge
from tests.rules.hung import codes, found, opening, specified

CODES = {"alloy without stainless", "screws do not hold", "knuckles not usual", "type not checked"}
WOOD = {"frame": {"kind": "wood with casing"}, "door": {"construction": "wood, solid core"}}


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ({}, set()),
        ({"hinge": {"base_metal": "brass", "alloy": "316"}}, {"alloy without stainless"}),
        ({"hinge": {"base_metal": "steel", "alloy": "304"}}, {"alloy without stainless"}),
        ({"hinge": {"base_metal": "stainless", "alloy": "316"}}, set()),
        ({"hinge": {"screws": {"wood": 24}}}, {"screws do not hold"}),
        ({"hinge": {"screws": {"machine": 24, "wood": 0}}}, set()),
        ({"frame": {"kind": "wood with casing"}, "hinge": {"screws": {"machine": 12, "wood": 12}}}, set()),
        ({**WOOD, "hinge": {"screws": {"machine": 24}}}, {"screws do not hold"}),
        ({"hinge": {"knuckles": 2}}, {"knuckles not usual"}),
        ({"hinge": {"knuckles": 3}}, set()),
        ({"hinge": {"knuckles": 5}}, set()),
        ({"hinge": {"knuckles": 7}}, {"knuckles not usual"}),
        ({"hinge": {"type": "A8112", "mounting": "half mortise"}}, {"type not checked"}),
        ({"hinge": {"type": "A8112"}}, set()),
        ({"hinge": {"mounting": "half mortise"}}, set()),
    ],
)
def test_what_does_not_go_together(changes, expected):
    assert codes(specified(opening(**changes))) & CODES == expected


def test_what_is_said_and_mended():
    brass = found(
        specified(opening(hinge={"base_metal": "brass", "alloy": "316"})), "alloy without stainless"
    )
    assert "the hinge is brass: 316 is an alloy of stainless only" in brass.message
    assert (brass.fix[0].path, brass.fix[0].value) == ("hinge.alloy", None)
    of_job = specified(opening(hinge={"base_metal": "brass"}), Hinge(alloy="316"))
    assert found(of_job, "alloy without stainless").fix == ()
    wood = found(specified(opening(hinge={"screws": {"wood": 24}})), "screws do not hold")
    assert (
        "24 wood screws were asked for, but the door and the frame both take machine screws" in wood.message
    )
    assert wood.fix[0].value == {"machine": 24, "wood": 0}
    knuckles = found(specified(opening(hinge={"knuckles": 4})), "knuckles not usual")
    assert knuckles.message.startswith("4 knuckles were asked for; 5 are usual, or 3.")


def test_a_type_beside_parts_that_have_none_is_not_checked():
    """Plain bearing, heavy: no such type is known here."""
    given = {"type": "A8112", "bearing": "plain", "weight": "heavy"}
    message = found(specified(opening(hinge=given)), "type not checked").message
    assert "no type is known here for the weight, bearing and metal chosen" in message


def test_where_no_type_is_known_that_is_said():
    type_ = specified(opening(hinge={"mounting": "swing clear"})).whole["type"]
    assert type_.value is None
    assert "no type number is known here for swing clear" in type_.because
