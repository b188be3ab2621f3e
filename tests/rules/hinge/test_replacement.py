"""What hangs there now, against the hinge that is chosen."""

import pytest

from tests.rules.hung import codes, found, opening, specified

# 4-1/2 x 4, standard weight, as the rules choose for the usual opening
SAME = {
    "height": 4.5,
    "width": 4,
    "leaf_thickness": 0.134,
    "corner": "square",
    "count": 3,
    "mounting": "full mortise",
}
ALL = {
    "replacement fits", "measure the old hinge", "mortise left open", "mortise too short", "leaf narrower",
    "leaf gage differs", "corner differs", "hinge count differs", "check the holes", "mounting differs",
    "replacement on a fire door",
}  # fmt: skip


def said(use=None, **old):
    return codes(specified(opening(existing_hinge={**SAME, **old}, use=use or {}))) & ALL


@pytest.mark.parametrize(
    ("old", "expected"),
    [
        ({}, {"replacement fits"}),
        ({"height": 4}, {"mortise too short", "check the holes"}),
        ({"height": 5}, {"mortise left open", "check the holes"}),
        ({"width": 4.5}, {"leaf narrower"}),
        ({"width": 3.5}, {"replacement fits"}),
        ({"leaf_thickness": 0.13}, {"leaf gage differs"}),
        ({"corner": "5/8 radius"}, {"corner differs"}),
        ({"count": 2}, {"hinge count differs"}),
        ({"count": 5}, {"hinge count differs"}),
        ({"mounting": "full surface"}, {"mounting differs"}),
        ({"corner": None}, {"measure the old hinge"}),
        ({"height": None, "width": None, "count": 2}, {"measure the old hinge", "hinge count differs"}),
    ],
)
def test_each_difference_is_said(old, expected):
    assert said(**old) == expected


def test_nothing_is_said_where_nothing_hangs_there():
    assert not codes(specified(opening())) & ALL


def test_a_fire_rated_door_gets_no_advice():
    assert said(use={"fire_rated": True}, corner="5/8 radius", height=None) == {"replacement on a fire door"}


def test_no_advice_without_a_hinge_to_advise_on():
    spec = specified(opening(existing_hinge=SAME, hinge={"height": 5.5}))
    assert not codes(spec) & ALL


def test_wood_has_no_template_so_its_holes_are_checked():
    spec = specified(opening(door={"construction": "wood, solid core"}, existing_hinge=SAME))
    assert "check the holes" in codes(spec)


def test_what_was_not_measured_is_named():
    spec = specified(opening(existing_hinge={"height": 4.5}))
    message = found(spec, "measure the old hinge").message
    assert "not known: open width, leaf thickness, corners, number a leaf, mounting." in message


@pytest.mark.parametrize(("count", "words"), [(2, "cut 1 more mortise in"), (1, "cut 2 more mortises in")])
def test_more_hinges_are_more_mortises(count, words):
    spec = specified(opening(existing_hinge={**SAME, "count": count}))
    assert words in found(spec, "hinge count differs").message
