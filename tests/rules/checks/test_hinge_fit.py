"""Hinges that cannot go on: too many for the leaf, or mortises too deep, too shallow or too far in."""

import pytest

from tests.rules.hung import codes, found, opening, specified

STEP = 1 / 64
FIT = {
    "hinges do not fit",
    "hinges overlap",
    "leaf too short",
    "backset too deep",
    "leaf below flush",
    "leaves clash",
}


def fit(**changes):
    return codes(specified(opening(**changes))) & FIT


def leaf_of(height):
    """Return a size whose leaf is that high: head gap 1/8 and undercut as usual are taken off."""
    return {"size": {"width": 36, "height": height}, "door": {"head_gap": 0.125, "undercut": 0.75}}


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ({}, set()),
        ({"hinge": {"count": 30}}, {"hinges do not fit"}),  # 135 in on 83-1/8
        ({"hinge": {"count": 60, "height": 24}}, {"hinges do not fit"}),
        ({"leaves": "dutch", "split_height": 83.8}, {"hinges do not fit"}),
        # Usual places: 10 above the floor to 5 below the head, 84 - 15 = 69 in for 15 of 4.6, 16 of 4.3 in.
        ({"hinge": {"count": 15}}, set()),
        ({"hinge": {"count": 16}}, {"hinges overlap"}),
        ({**leaf_of(9.875), "hinge": {"count": 2}}, {"hinges overlap"}),  # leaf of 9: just two hinges
        ({**leaf_of(9.875 - STEP), "hinge": {"count": 2}}, {"hinges do not fit"}),
        ({**leaf_of(9.875), "hinge": {"count": 1}}, set()),
        ({**leaf_of(9.875 - STEP), "hinge": {"count": 1}}, {"leaf too short"}),
    ],
)
def test_hinges_along_a_leaf(changes, expected):
    assert fit(**changes) == expected


def test_what_is_said_of_hinges_that_do_not_fit():
    upper = found(specified(opening(leaves="dutch", split_height=83.8)), "hinges do not fit")
    assert upper.severity == "error"
    assert upper.message.startswith(
        "2 hinges 4-1/2 in high, 9 in in all, cannot go on the upper leaf, which is "
    )
    many = found(specified(opening(hinge={"count": 16})), "hinges overlap")
    assert (
        "stand 4-9/32 in from bottom to bottom and are 4-1/2 in high: they overlap by 7/32 in" in many.message
    )


@pytest.mark.parametrize(
    ("backset", "expected"), [(1.75 - STEP, set()), (1.75, {"backset too deep"}), (2, {"backset too deep"})]
)
def test_a_backset_has_to_leave_some_of_the_hinge_leaf_on_the_door(backset, expected):
    assert fit(door={"hinge_backset": backset}) == expected


@pytest.mark.parametrize(
    ("door", "frame", "leaf", "mounting", "expected"),
    [
        (0.134, 0.134, None, None, set()),
        (1, 1, 0.134, None, {"leaf below flush"}),
        (0.134 + STEP, None, 0.134, None, {"leaf below flush"}),
        (0.134 + STEP, None, 0.134, "half surface", set()),  # its door leaf lies on the face
        (0, 0, 1, None, {"leaves clash"}),
        (0.134 - 0.0625, 0.134 - 0.0625, 0.134, None, set()),  # 1/8 out together: all of the gap
        (0.134 - 0.0625, 0.134 - 0.0625 - STEP, 0.134, None, {"leaves clash"}),
        (0, None, 0.25, "half mortise", {"leaves clash"}),
        (0, 0, 1, "full surface", set()),
    ],
)
def test_mortise_depths_beside_the_leaf(door, frame, leaf, mounting, expected):
    hinge = {"leaf_thickness": leaf, "mounting": mounting}
    given = {"door": {"mortise_depth": door, "hinge_gap": 0.125}, "frame": {"mortise_depth": frame}}
    assert fit(**given, hinge=hinge) == expected


def test_mortises_are_mended_by_one_click():
    given = {"door": {"mortise_depth": 0}, "frame": {"mortise_depth": 0}, "hinge": {"leaf_thickness": 1}}
    clash = found(specified(opening(**given)), "leaves clash")
    assert {(one.path, one.value) for one in clash.fix} == {
        ("door.mortise_depth", 1),
        ("frame.mortise_depth", 1),
    }
    sunk = found(specified(opening(door={"mortise_depth": 0.5})), "leaf below flush")
    assert "0.134 in thick: the leaf sinks" in sunk.message
