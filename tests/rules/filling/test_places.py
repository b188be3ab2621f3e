"""Where hinges sit, against the worked table of the 5-10-equal convention (derived from read distances)."""

import pytest

from configurator.rules.filling.leaves import LeafSize, leaves_of
from configurator.rules.filling.places import hinge_places, places_of
from configurator.rules.filling.usual import fill
from tests.rules.hung import codes, found, opening, specified


def centres(leaf, count, head, height=4.5, **more):
    return [(low + high) / 2 for low, high in hinge_places(leaf, count, height, head, **more)]


def of_opening(leaf=0, count=3, **changes):
    """Return the centres of the hinges, 4-1/2 high, of one leaf of an opening 84 in high."""
    filled = fill(opening(**changes))
    return [(low + high) / 2 for low, high in places_of(filled, leaves_of(filled)[leaf], count, 4.5)]


@pytest.mark.parametrize(
    ("head", "count", "expected"),
    [
        (80, 3, [12.25, 42.5, 72.75]),
        (84, 3, [12.25, 44.5, 76.75]),
        (86, 3, [12.25, 45.5, 78.75]),
        (96, 4, [12.25, 37.75, 63.25, 88.75]),
    ],
)
def test_five_ten_equal(head, count, expected):
    """A radio home-repair FAQ on hinge locations (2002): U.S. standard procedures."""
    leaf = LeafSize("single", 35.75, 0.75, head - 0.125)
    assert centres(leaf, count, head) == expected


def test_a_dutch_doors_leaves_count_five_from_the_split():
    upper, lower = LeafSize("upper", 35.75, 42.0625, 83.875), LeafSize("lower", 35.75, 0.75, 41.9375)
    half_gap = {"half_split_gap": 0.0625}
    assert centres(upper, 2, 84, **half_gap) == [49.25, 76.75]
    assert centres(lower, 2, 84, **half_gap) == [12.25, 34.75]


def test_one_hinge_and_a_leaf_too_short_for_two():
    assert len(hinge_places(LeafSize("single", 20, 0.75, 40), 1, 4.5, 40)) == 1
    short = LeafSize("single", 20, 0.75, 12)
    assert all(low >= 0.75 and high <= 12 for low, high in hinge_places(short, 2, 4.5, 12.125))


def test_the_western_rule_is_seven_and_eleven():
    """11 + 2-1/4 and 84 - 7 - 2-1/4, the middle one halfway. Same FAQ: certain western states."""
    assert of_opening(hinge_locations={"rule": "7 and 11"}) == [13.25, 44.0, 74.75]
    assert of_opening(hinge_locations={"rule": "5 and 10"}) == of_opening() == [12.25, 44.5, 76.75]


def test_an_opening_of_two_halves_knows_its_split():
    dutch = {"leaves": "dutch", "split_height": 40}
    assert of_opening(0, 2, **dutch) == [47.25, 76.75]
    assert of_opening(1, 2, **dutch) == [12.25, 32.75]


def test_typed_places_rule_whatever_the_count():
    """Tops 6, 40 and 70 below a head at 84: the hinges of 4-1/2 have their middles at 75.75, 41.75, 11.75."""
    typed = {"hinge_locations": {"rule": "7 and 11", "tops": [6, 40, 70]}}
    assert of_opening(count=4, **typed) == [11.75, 41.75, 75.75]


def test_typed_places_of_a_dutch_door_go_to_the_leaf_that_has_the_middle():
    typed = {"leaves": "dutch", "split_height": 42, "hinge_locations": {"tops": [5, 39.75, 39.875, 70]}}
    assert of_opening(0, 2, **typed) == [42.0, 76.75]
    assert of_opening(1, 2, **typed) == [11.75, 41.875]
    none_below = {"leaves": "dutch", "hinge_locations": {"tops": [5, 30]}}
    assert of_opening(1, 2, **none_below) == [12.25, 34.75]  # the rule, until they are typed


def test_what_is_said_of_typed_places():
    def said(tops, **changes):
        return codes(specified(opening(hinge_locations={"tops": tops}, **changes))) & {
            "hinge places number", "hinge off its leaf", "typed hinges overlap",
        }  # fmt: skip

    assert said([5, 37, 69.5]) == set()
    assert said([5, 69.5]) == {"hinge places number"}
    assert said([5, 69.5], hinge={"count": 2}) == set()
    # The leaf ends 1/8 below the head and 3/4 above the floor; a hinge of 4-1/2 just there is on it.
    assert said([0.125, 37, 78.75]) == set()
    assert said([0.125 - 1 / 64, 37, 78.75]) == {"hinge off its leaf"}
    assert said([0.125, 37, 78.75 + 1 / 64]) == {"hinge off its leaf"}
    assert said([5, 9.5, 69.5]) == set()
    assert said([5, 9.5 - 1 / 64, 69.5]) == {"typed hinges overlap"}


def test_the_words_for_typed_places():
    number = found(specified(opening(hinge_locations={"tops": [5, 69.5]})), "hinge places number")
    assert "The places of 2 hinges were typed for the leaf, which takes 3." in number.message
    assert [(fix.path, fix.value) for fix in number.fix] == [("hinge.count", 2)]
