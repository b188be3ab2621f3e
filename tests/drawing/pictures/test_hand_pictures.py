"""The four hands as they are seen from outside: hinges left or right, door away or toward."""

import pytest

from configurator.drawing.base.primitives import Arc, Polygon, Text
from configurator.drawing.pictures.hand_pictures import (
    NAMES,
    hand_picture,
    hinges_on_left,
    looks_from_inside,
    opens_toward_you,
    said_from_inside,
    seen_from_outside,
)
from configurator.drawing.plan.drawn_leaf import TURNS_CLOCKWISE
from configurator.model import paths
from configurator.model.words import Hand

HANDS = ("LH", "RH", "LHR", "RHR")


def _sheet(hand):
    """Where barrel, leaf end and somebody's head are on the sheet."""
    view, parts = hand_picture(hand)[1].view, hand_picture(hand)[1].primitives
    barrel = next(p for p in parts if isinstance(p, Arc) and p.name == "barrel").centre
    leaf = next(p for p in parts if isinstance(p, Polygon) and p.name == "leaf").points
    you = next(p for p in parts if isinstance(p, Arc) and p.name == "you").centre
    end = max(leaf, key=lambda point: abs(point[0] - barrel[0]) + abs(point[1] - barrel[1]))
    return view.to_sheet(barrel), view.to_sheet(end), view.to_sheet(you)


def test_the_four_hands_are_those_a_project_file_accepts():
    assert set(NAMES) == set(paths.words_of("hand")) == set(HANDS) == set(Hand.__args__)


@pytest.mark.parametrize(
    ("hand", "left", "toward"),
    [("LH", True, False), ("RH", False, False), ("LHR", True, True), ("RHR", False, True)],
)
def test_what_is_drawn_is_what_is_seen_from_outside(hand, left, toward):
    barrel, end, you = _sheet(hand)
    middle = hand_picture(hand)[1].view.window.width / 2
    assert (barrel[0] < middle) is left is hinges_on_left(hand)
    assert (end[1] < barrel[1]) is toward is opens_toward_you(hand)
    assert you[1] < barrel[1]
    assert you[1] < end[1], "you stand clear of the door"
    said = seen_from_outside(hand)
    assert ("left" in said) is left
    assert ("toward" in said) is toward


@pytest.mark.parametrize("hand", HANDS)
def test_the_leaf_turns_as_in_the_plan_of_that_hand(hand):
    """Seen from above a leaf turns the same way however the plan is laid."""
    barrel, end, _ = _sheet(hand)
    lock = next(
        p for p in hand_picture(hand)[1].primitives if isinstance(p, Polygon) and p.layer == "A-DOOR-HDWR"
    )
    view = hand_picture(hand)[1].view
    closed = view.to_sheet(lock.points[0])
    cross = (closed[0] - barrel[0]) * (end[1] - barrel[1]) - (closed[1] - barrel[1]) * (end[0] - barrel[0])
    assert (cross < 0) is (hand in TURNS_CLOCKWISE)


@pytest.mark.parametrize("hand", HANDS)
def test_from_inside_left_and_right_and_the_way_change_places(hand):
    other = looks_from_inside(hand)
    assert hinges_on_left(other) is not hinges_on_left(hand)
    assert opens_toward_you(other) is not opens_toward_you(hand)
    assert looks_from_inside(other) == hand
    assert other in said_from_inside(hand)
    assert NAMES[hand] in said_from_inside(hand)


@pytest.mark.parametrize("hand", HANDS)
def test_inside_and_outside_are_named_within_the_picture(hand):
    words = [part for part in hand_picture(hand)[2].primitives if isinstance(part, Text)]
    assert [word.text for word in words] == ["you, outside", "inside"]
    view = hand_picture(hand)[2].view
    assert all(view.window.has(word.at) for word in words)
    assert words[0].at[1] < words[1].at[1]


def test_a_hand_that_there_is_not_is_refused():
    with pytest.raises(KeyError):
        hand_picture("LHRR")
