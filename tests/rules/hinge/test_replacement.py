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


NEW = {**SAME, "height": 4.5, "leaf_thickness": None, "weight": "standard"}
"""A hinge by hand: what hangs there is then not what is ordered."""


def said(use=None, new=None, **old):
    return codes(specified(opening(existing_hinge={**SAME, **old}, use=use or {}, hinge=new or {}))) & ALL


def ordered(use=None, door=None, **old):
    """Return what is ordered where a hinge hangs there, by the keys of the results."""
    given = opening(existing_hinge={**SAME, **old}, use=use or {}, door=door or {})
    return specified(given).as_data()


@pytest.mark.parametrize(
    ("old", "expected"),
    [
        ({}, {"replacement fits"}),
        ({"height": 4}, {"mortise too short", "check the holes"}),
        ({"height": 5}, {"mortise left open", "check the holes"}),
        ({"width": 4.5}, {"leaf narrower"}),
        ({"width": 3.5}, {"replacement fits"}),
        ({"leaf_thickness": 0.128}, {"leaf gage differs"}),
        ({"leaf_thickness": 0.13}, {"replacement fits"}),  # as near as leaves are made
        ({"corner": "5/8 radius"}, {"corner differs"}),
        ({"count": 2}, {"hinge count differs"}),
        ({"count": 5}, {"hinge count differs"}),
        ({"mounting": "full surface"}, {"mounting differs"}),
        ({"corner": None}, {"measure the old hinge"}),
        ({"height": None, "width": None, "count": 2}, {"measure the old hinge", "hinge count differs"}),
    ],
)
def test_each_difference_is_said(old, expected):
    assert said(new=NEW, **old) == expected


@pytest.mark.parametrize(
    ("old", "parts"),
    [
        ({}, SAME),
        ({"height": 5, "leaf_thickness": 0.146}, {"height": 5, "width": 4}),
        ({"height": 4, "leaf_thickness": 0.13}, {"height": 4, "weight": "standard"}),  # half an inch lower
        ({"height": 3.5, "leaf_thickness": 0.123}, {"height": 4.5, "width": 4}),  # too low to serve
        ({"width": 4.5}, {"width": 4.5}),
        ({"width": 5}, {"width": 5}),
        ({"width": 3.5}, {"width": 4}),  # its barrel would be in the frame
        ({"leaf_thickness": 0.18}, {"weight": "heavy", "leaf_thickness": 0.18, "width": 4.5}),
        ({"leaf_thickness": 0.25}, {"weight": "standard"}),  # no hinge is that thick
        ({"corner": "5/8 radius"}, {"corner": "5/8 radius"}),
        ({"count": 4}, {"count": 4}),
        ({"count": 2}, {"count": 3}),  # too few for the door
        ({"mounting": "full surface"}, {"mounting": "full surface"}),
    ],
)
def test_what_hangs_there_is_ordered_again_unless_it_fails(old, parts):
    found = ordered(**old)
    assert {key: found[key] for key in parts} == parts


def test_what_fails_is_said_with_what_is_taken():
    spec = specified(opening(existing_hinge={**SAME, "width": 3.5}))
    message = found(spec, "old width fails").message
    assert message.startswith("4-1/2 x 3-1/2, as hangs there now, opens to 180°, its barrel overlaps")
    assert message.endswith("Take 4-1/2 x 4: it does all that it must.")


def test_an_angle_that_nobody_asked_for_changes_no_old_hinge():
    """A rail that stops a 4 in hinge at 171.8 degrees; a 4-1/2 would open flat."""
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    asked = opening(existing_hinge=SAME, obstructions=[rail])
    assert specified(asked).as_data()["width"] == 4.5
    free = opening(existing_hinge=SAME, obstructions=[rail], use={"wanted_angle": None})
    assert specified(free).as_data()["width"] == 4


def test_a_busy_door_keeps_its_gage_in_steel():
    """Nobody mortises a steel preparation deeper by choice."""
    spec = specified(opening(existing_hinge=SAME, use={"traffic": "high"}))
    assert spec.as_data()["weight"] == "standard"
    assert spec.as_data()["bearing"] == "ball"
    message = found(spec, "weight too light").message
    assert "The mortises are 0.134 in deep, for standard weight, where heavy is due" in message
    assert found(spec, "weight too light").fix == ()


@pytest.mark.parametrize(
    ("construction", "mend"),
    [
        ("hollow metal, 18 gage", "order leaves 0.134 in thick, for a steel mortise is not cut deeper"),
        ("wood, solid core", "cut the mortise deeper"),
    ],
)
def test_a_thicker_leaf_by_hand(construction, mend):
    frame = {} if "metal" in construction else {"kind": "wood with casing"}
    given = opening(
        existing_hinge=SAME, hinge={"weight": "heavy"}, frame=frame,
        door={"construction": construction, "thickness": 1.75},
    )  # fmt: skip
    assert mend in found(specified(given), "leaf gage differs").message


def test_nothing_is_said_where_nothing_hangs_there():
    assert not codes(specified(opening())) & ALL


def test_a_fire_rated_door_gets_no_advice():
    old = {"corner": "5/8 radius", "height": None}
    assert said(use={"fire_rated": True}, **old) == {"replacement on a fire door"}
    assert ordered({"fire_rated": True}, **old)["corner"] == "square"


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
