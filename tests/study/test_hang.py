"""What each leaf is studied against: on the other leaf, on the other side."""

from configurator.geometry.shapes import OtherHalf
from configurator.rules.filling.usual import fill
from configurator.study.hang import hang_leaves
from tests.openings import LEVER, answers, plain_opening

BAR = {
    "kind": "panic device",
    "face": "push",
    "projection": 4,
    "from_latch_edge": 16,
    "width": 28,
    "height": 40,
    "vertical": 3,
}
SHELF = {
    "kind": "shelf",
    "projection": 8,
    "from_latch_edge": 18,
    "width": 30,
    "height": 41.4375,
    "vertical": 1,
}
PAIR = {"leaves": "pair", "size": {"width": 72, "height": 84}}


def hung(**changes):
    filled = fill(plain_opening(**changes))
    return {leaf.name: leaf for leaf in hang_leaves(filled)}, filled


def test_a_single_leaf_has_nothing_beside_it():
    leaves, _ = hung(hardware=[LEVER])
    assert leaves["single"].other is None
    assert leaves["single"].leaf.half is None


def test_the_closed_inactive_leaf_stands_with_what_it_carries():
    leaves, _ = hung(**PAIR, hardware=[LEVER, BAR | {"leaf": "inactive"}])
    active = leaves["active"]
    assert [one.kind for one in active.hardware] == ["lever"]
    assert active.other.closed
    assert [(one.kind, one.from_latch_edge, one.face) for one in active.other.hardware] == [
        ("panic device", 16, "push")
    ]


def test_the_active_leaf_already_stands_open_when_the_inactive_one_swings():
    leaves, _ = hung(**PAIR, hardware=[LEVER, BAR | {"leaf": "inactive"}])
    inactive = leaves["inactive"]
    assert [one.kind for one in inactive.hardware] == ["panic device"]
    assert not inactive.other.closed


def test_a_pairs_leaves_close_to_each_other_and_stand_in_the_whole_opening():
    # 72 in less two hinge gaps of 1/8 and one between: each leaf closes a width of 36 and a half gap.
    leaves, filled = hung(**PAIR)
    for name in ("active", "inactive"):
        h = leaves[name].hanging(4)
        assert h.O + leaves[name].other.w + h.g_h == leaves[name].other.opening == 72
        assert h.g_l == filled.meeting_gap


def test_what_is_at_the_far_jamb_of_a_pair_is_at_the_other_leafs_hinge_side():
    rail = {"kind": "chair rail", "side": "latch", "projection": 3, "start": 0.5, "bottom": 32, "top": 42}
    active, inactive = (
        next(one for one in answers(**PAIR, obstructions=[rail]) if one.leaf == name)
        for name in ("active", "inactive")
    )
    assert active.greatest_angle == 180
    assert (inactive.stopped_by.kind, inactive.stopped_by.index) == ("chair rail", 0)


def test_each_half_of_a_dutch_door_swings_with_the_other_closed():
    leaves, _ = hung(leaves="dutch", hardware=[SHELF | {"leaf": "lower"}])
    upper, lower = leaves["upper"], leaves["lower"]
    assert isinstance(upper.leaf.half, OtherHalf)
    assert (upper.leaf.half.bottom, upper.leaf.half.top) == (lower.leaf.bottom, lower.leaf.top)
    assert [one.kind for one in upper.leaf.half.hardware] == ["shelf"]
    assert lower.leaf.half.hardware == ()
    assert [one.kind for one in lower.hardware] == ["shelf"]


def test_a_shelf_level_with_the_split_keeps_the_upper_half_from_nothing():
    upper = [
        one for one in answers(leaves="dutch", hardware=[SHELF | {"leaf": "lower"}]) if one.leaf == "upper"
    ]
    assert {one.greatest_angle for one in upper} == {180}
