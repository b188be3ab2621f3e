"""The hinges of an opening as items to order, counted by hand."""

from dataclasses import replace
from fractions import Fraction

import pytest

from configurator.model import Hinge
from configurator.rules.hinge.fastening import whole_shares
from configurator.rules.hinge_items import CONTRACT_KEYS, HingeItem, hinge_items, screws_of_items, sort_key
from tests.rules.hung import codes, found, opening, specified

PAIR = {"leaves": "pair", "size": {"width": 72, "height": 84}}
"""Two leaves 83-1/8 high: three hinges each, 4-1/2 high, four screws a hinge leaf, 24 a leaf."""
THREE_AND_TWO = {"leaves": "dutch", "size": {"width": 36, "height": 120}, "split_height": 48}
"""An upper leaf 71-7/8 high, over 60 and under 90: three hinges; a lower one of 47-3/16: two."""


def items(standard=None, **changes):
    given = opening(**changes)
    return hinge_items(specified(given, standard), given)


def counted(**changes):
    return [(one.leaf, one.hinge.electric, one.count) for one in items(**changes)]


def screws(**changes):
    return [one.hinge.screws for one in items(**changes)]


def test_each_leaf_has_its_hinges():
    assert counted() == [("single", False, 3)]
    assert counted(**PAIR) == [("active", False, 3), ("inactive", False, 3)]
    assert counted(**THREE_AND_TWO) == [("upper", False, 3), ("lower", False, 2)]
    assert counted(hung_on="pivots") == []


def test_a_leaf_without_a_width_to_be_had_has_no_item():
    assert counted(hinge={"height": 11}) == []


DIFFERENT = {
    "height": 5.0, "width": 4.5, "mounting": "swing clear", "weight": "standard", "bearing": "plain",
    "base_metal": "steel", "alloy": "304", "finish_bhma": "652", "finish_us": "US32D", "pin": "removable",
    "tip": "hospital", "corner": "square", "hand": "LH", "type": "A8112", "leaf_thickness": 0.146,
    "knuckles": 5, "security_stud": True, "fire": True, "item": "electric butt hinge",
    "wires": 8,
    "screws": (("machine", Fraction(9)),),
}  # fmt: skip
"""What comes later in each thing that tells hinges apart, in the order in which lines are sorted by them."""


@pytest.mark.parametrize("first", range(len(DIFFERENT)))
def test_lines_are_put_in_order_by_one_thing_after_the_other(first):
    base = HingeItem(
        "butt hinge", 4.5, 4.0, "A8111", "full mortise", "heavy", "ball", 0.134, 3, "brass", None, "600",
        None, "non-removable", False, "ball", "1/4 radius", None, None, False, (("machine", Fraction(8)),),
    )  # fmt: skip
    keys = list(DIFFERENT)
    earlier = replace(base, **{key: DIFFERENT[key] for key in keys[first + 1 :]})
    later = replace(base, **{keys[first]: DIFFERENT[keys[first]]})
    assert sort_key(base) < sort_key(later)
    assert sort_key(earlier) < sort_key(later)


# --- Screws ---


def test_eight_machine_screws_come_with_a_hinge_in_steel():
    assert screws() == [(("machine", Fraction(8)),)]


def test_screws_by_hand_are_shared_by_the_hinges_of_both_leaves():
    # 10 over six hinges: 5/3 each; 5 for the three of each leaf.
    given = {**PAIR, "hinge": {"screws": {"machine": 10, "wood": 0}}}
    assert screws(**given) == [(("machine", Fraction(5, 3)),)] * 2
    spec = specified(opening(**given))
    assert spec.whole["screws"].value == {"machine": 10, "wood": 0}
    assert [leaf.parts["screws"].value for leaf in spec.leaves] == [{"machine": 5, "wood": 0}] * 2
    assert spec.leaves[1].parts["screws"].because == (
        "chosen by hand: 10 machine for the whole opening, and 3 of its 6 hinges hang this leaf"
    )
    assert [other.value for other in spec.leaves[1].parts["screws"].alternatives] == [
        {"machine": 48, "wood": 0}
    ]


def test_an_odd_number_goes_to_the_leaves_in_whole_screws():
    # 7 over two leaves of three hinges: 3-1/2 each, so 4 and then the 3 that are left.
    spec = specified(opening(**PAIR, hinge={"screws": {"machine": 7}}))
    assert [leaf.parts["screws"].value for leaf in spec.leaves] == [{"machine": 4}, {"machine": 3}]


def test_the_job_s_standard_screws_are_for_the_whole_opening_too():
    # 50 over 3 + 2 hinges: 10 each.
    standard = Hinge.model_validate({"screws": {"machine": 50}})
    both = items(standard, **THREE_AND_TWO)
    assert [one.hinge.screws for one in both] == [(("machine", Fraction(10)),)] * 2
    spec = specified(opening(**THREE_AND_TWO), standard)
    assert [leaf.parts["screws"].value for leaf in spec.leaves] == [{"machine": 30}, {"machine": 20}]


@pytest.mark.parametrize(
    ("each", "counts", "shares"),
    [
        (Fraction(8), (3, 3), (24, 24)),
        (Fraction(7, 6), (3, 3), (4, 3)),
        (Fraction(5, 3), (2, 1), (4, 1)),
        (Fraction(1, 6), (2, 2, 2), (1, 0, 0)),
        (Fraction(0), (3, 2), (0, 0)),
    ],
)
def test_whole_screws_add_up_to_their_total_rounded_up(each, counts, shares):
    assert whole_shares(each, counts) == shares


def test_screws_of_like_items_add_up_to_those_of_one_order_line():
    # 7 for an opening, two openings: 14 for six hinges on each leaf, 7 a leaf.
    assert screws_of_items(items(**PAIR, hinge={"screws": {"machine": 7}}), 2) == ({"machine": 7},) * 2
    # 10 for three hinges of which one carries wires: 6-2/3 and 3-1/3, each line rounded up.
    wired = items(hinge={"electric": 2, "screws": {"machine": 10}})
    assert screws_of_items(wired, 1) == ({"machine": 7}, {"machine": 4})


def test_the_reason_for_the_screws_of_two_leaves_names_what_each_takes():
    because = specified(opening(**THREE_AND_TWO)).whole["screws"].because
    assert because == (
        "upper leaf: machine screws into the door, machine screws into the frame: 4 a hinge leaf, 3 hinges; "
        "#12-24 x 1/2 flat head; screws are of the hinge's metal; "
        "lower leaf: machine screws into the door, machine screws into the frame: 4 a hinge leaf, 2 hinges; "
        "#12-24 x 1/2 flat head; screws are of the hinge's metal"
    )
    assert specified(opening(**THREE_AND_TWO)).whole["screws"].value == {"machine": 40, "wood": 0}


def test_an_uneven_pair_counts_the_screws_of_either_height():
    # A leaf 41-3/4 wide takes hinges 5 high, one 23-3/4 wide 4-1/2: both with four screws a hinge leaf.
    spec = specified(opening(leaves="pair", size={"width": 66, "height": 84}, active_width=41.75))
    assert spec.whole["screws"].value == {"machine": 48, "wood": 0}
    spec = specified(
        opening(leaves="pair", size={"width": 84, "height": 84}, active_width=59, door={"thickness": 2.25})
    )
    high, low = (leaf.parts["height"].value for leaf in spec.leaves)
    assert (high, low) == (6, 5)
    # 5 a hinge leaf of a hinge 6 high, 4 of one 5 high; three hinges a leaf.
    assert spec.whole["screws"].value == {"machine": 3 * 10 + 3 * 8, "wood": 0}
    assert "active leaf: " in spec.whole["screws"].because
    assert "5 a hinge leaf" in spec.whole["screws"].because
    assert "4 a hinge leaf" in spec.whole["screws"].because


def test_of_leaves_alike_the_reason_is_given_once():
    because = specified(opening(**PAIR)).whole["screws"].because
    assert because.startswith("on each leaf machine screws into the door")
    assert because.count("3 hinges") == 1


def test_screws_that_do_not_hold_are_counted_for_both_leaves():
    said = found(specified(opening(**PAIR, hinge={"screws": {"wood": 10}})), "screws do not hold")
    assert said.message == (
        "10 wood screws were asked for, but the door and the frame both take machine screws. "
        "Take 48 machine screws."
    )
    assert said.fix[0].value == {"machine": 48, "wood": 0}


# --- The hinge that carries wires ---


def test_of_two_leaves_with_room_for_wires_the_first_has_them_and_it_is_asked():
    given = {**PAIR, "hinge": {"electric": 2}}
    assert counted(**given) == [("active", False, 2), ("active", True, 1), ("inactive", False, 3)]
    spec = specified(opening(**given))
    assert [leaf.electric for leaf in spec.leaves] == [2, None]
    said = found(spec, "electric hinge leaf")
    assert said.severity == "warning"
    assert said.message == (
        "Both leaves have a hinge 2 from the top, and nobody said which of the two carries wires. "
        "It is counted on the active leaf. Say with the order on which leaf it hangs."
    )


def test_the_only_leaf_with_so_many_hinges_has_the_wires_and_nobody_is_asked():
    given = {**THREE_AND_TWO, "hinge": {"electric": 3}}
    assert counted(**given) == [("upper", False, 2), ("upper", True, 1), ("lower", False, 2)]
    assert "electric hinge leaf" not in codes(specified(opening(**given)))
    low = {**THREE_AND_TWO, "split_height": 72, "hinge": {"electric": 3}}
    assert counted(**low) == [("upper", False, 2), ("lower", False, 2), ("lower", True, 1)]
    # The middle one of that leaf's three is the usual place, though the first leaf has two hinges.
    said = found(specified(opening(**low)), "electric hinge place")
    assert (said.severity, said.numbers["count"], said.fix[0].value) == ("warning", 3, 2)


def test_a_place_that_no_leaf_has_is_an_error_and_splits_nothing():
    given = {**THREE_AND_TWO, "hinge": {"electric": 4}}
    assert counted(**given) == [("upper", False, 3), ("lower", False, 2)]
    said = found(specified(opening(**given)), "electric hinge place")
    assert said.severity == "error"
    assert "there are only 3. Take hinge 2." in said.message
    assert "electric hinge leaf" not in codes(specified(opening(**given)))


def test_a_single_leaf_is_never_asked_about():
    assert "electric hinge leaf" not in codes(specified(opening(hinge={"electric": 2})))
    said = found(specified(opening(hinge={"electric": 3})), "electric hinge place")
    assert said.severity == "warning"  # there is a third hinge, only not the usual one
    assert found(specified(opening(hinge={"electric": 4})), "electric hinge place").severity == "error"


def test_an_item_has_the_keys_of_an_order_line_in_their_order():
    (item,) = items()
    assert tuple(item.hinge.as_data()) == CONTRACT_KEYS
