"""Where hinges sit, against the worked table of the 5-10-equal convention (derived from read distances)."""

import pytest

from configurator.rules.leaves import Leaf
from configurator.rules.places import hinge_places


def centres(leaf, count, head, height=4.5):
    return [(low + high) / 2 for low, high in hinge_places(leaf, count, height, head)]


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
    leaf = Leaf("single", 35.75, 0.75, head - 0.125)
    assert centres(leaf, count, head) == expected


def test_a_dutch_doors_leaves_count_five_from_the_split():
    upper, lower = Leaf("upper", 35.75, 42.0625, 83.875), Leaf("lower", 35.75, 0.75, 41.9375)
    assert centres(upper, 2, 84) == [42.0625 + 7.25, 76.75]
    assert centres(lower, 2, 84) == [12.25, 41.9375 - 7.25]


def test_one_hinge_and_a_leaf_too_short_for_two():
    assert len(hinge_places(Leaf("single", 20, 0.75, 40), 1, 4.5, 40)) == 1
    short = Leaf("single", 20, 0.75, 12)
    assert all(low >= 0.75 and high <= 12 for low, high in hinge_places(short, 2, 4.5, 12.125))
