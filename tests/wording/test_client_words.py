import pytest

from configurator.study.widths.width_pair import width_pair
from configurator.units import Display
from configurator.wording.client_words import (
    NOT_CHOSEN,
    NOTHING_RECOMMENDED,
    client_table,
    others_said,
    part_named,
    recommendation,
    thing_named,
    three_sentences,
)
from configurator.wording.comparison import comparisons
from tests.drawing.cases import case_a, demo

INCHES, METRIC = Display(), Display(metric=True)
PAIR = {"leaves": "pair", "size": {"width": 72, "height": 84}}


def sentences(study, display=INCHES):
    return three_sentences(study, width_pair(study), display)


def advice(study):
    return recommendation(study, width_pair(study), INCHES)


def test_of_a_door_that_the_rail_stops():
    assert sentences(demo("112A")) == (
        "On a hinge 4 in wide the door opens to 171.7°, where the door meets the chair rail.",
        "On a hinge 4-1/2 in wide the door opens to 178.8°, where the lever meets the wall. "
        "180° was asked for; only the wider hinge lets the door itself go so far.",
        "The wider hinge itself stands out 1/4 in farther from the frame, and the way through is 1/4 in "
        "narrower: 32-13/16 in with the door square open.",
    )


def test_of_a_door_that_goes_as_far_on_either_hinge():
    first, second, _ = sentences(case_a())
    assert first == "On either hinge the door opens all the way, flat to 180°."
    assert (
        second == "Lying open flat it leaves 7/8 in between frame and door, on the 4-1/2 in hinge 1-3/8 in."
    )


def test_of_a_door_that_its_door_stop_holds_square():
    """160A is held at 90 degrees, whatever it would meet beyond that: it never lies flat."""
    first, second, _ = sentences(demo("160A"))
    assert first == "On either hinge the door comes to rest at 90° against its door stop."
    assert second.startswith("Left open it stands ")
    table = client_table(demo("160A"), width_pair(demo("160A")), INCHES)
    assert "room behind the door when it lies open flat" not in [row[0] for row in table.rows]


def test_of_one_width():
    first, second, third = sentences(case_a(compare=[4]))
    assert first == "On a hinge 4 in wide the door opens all the way, flat to 180°."
    assert second == "With the door square open the way through is 33-1/16 in wide."
    assert third.startswith("Left open it stands 3-1/8 in out into the room, and 36-25/32 in at most")


@pytest.mark.parametrize(("spare", "said"), [(0.0, True), (1 / 64, True), (1 / 32, False)])
def test_of_a_door_that_passes_with_nothing_to_spare(spare, said):
    """Open flat on a 4 in hinge the door's face stands 1-3/8 in off the wall."""
    thing = {"kind": "other", "start": 0.5, "length": 6, "projection": 1.375 - spare}
    bare = case_a(obstructions=[thing], compare=[4, 4.5])
    assert bare.candidates[0].least_gap == pytest.approx(spare, abs=1e-9)
    first, second, _ = sentences(bare)
    assert first.endswith("flat to 180°, with nothing to spare.") == said
    assert "spare" not in second


def test_a_barrel_beside_the_casing_is_no_tight_swing():
    """Closed, the barrel lies 1/64 in beside the casing; the leaf, as it swings, comes nowhere near it."""
    casing = {"kind": "casing", "projection": 0.6875, "start": -0.5, "length": 2.25}
    one = case_a(frame={"kind": "wood with casing"}, obstructions=[casing], compare=[4.5])
    assert one.candidates[0].least_gap < 1 / 32
    assert one.candidates[0].rests_at == 180
    assert "nothing to spare" not in sentences(one)[0]


def test_of_a_door_with_a_door_stop():
    stop = {"kind": "floor stop", "projection": 8, "height": 1}
    first, *_ = sentences(case_a(door_stop=stop, compare=[4]))
    assert "comes to rest at " in first
    assert first.endswith("against its floor stop.")


def test_what_nobody_asked_for_is_not_said_to_be_asked_for():
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    changes = {"obstructions": [rail], "compare": [4, 4.5]}
    usual = sentences(case_a(**changes, use={}))[1]
    assert "180° is what is usually wished for; only the wider hinge" in usual
    assert "180° was asked for; only" in sentences(case_a(**changes, use={"wanted_angle": 180}))[1]


@pytest.mark.parametrize(
    ("changes", "square"),
    [
        ({"leaves": "pair", "size": {"width": 72, "height": 84}}, "with the active leaf alone square open."),
        ({"leaves": "dutch"}, "with the upper leaf alone square open."),
        ({}, "with the door square open."),
    ],
)
def test_the_way_through_says_which_leaf_stands_open(changes, square):
    study = case_a(**changes)
    *_, last = three_sentences(study, width_pair(study), INCHES)
    assert last.endswith(square)


def test_lengths_follow_the_display_and_hinges_stay_in_inches():
    *_, last = sentences(demo("112A"), METRIC)
    assert "6.4 mm farther" in last
    assert sentences(demo("112A"), METRIC)[0].startswith("On a hinge 4 in wide")


def test_a_clear_width_is_not_rounded_over_its_limit():
    """A 34-15/16 in opening is clear 33-1/16 less 1-1/16 in, and a hair less is not said to be 32 in."""
    for width, whole in ((34.9375, True), (34.9275, False)):
        words = sentences(case_a(size={"width": width, "height": 84}, compare=[4]))[1]
        assert ("is 32 in wide" in words) == whole


def test_the_table_has_its_facts_in_a_clients_words():
    table = client_table(demo("112A"), width_pair(demo("112A")), INCHES)
    assert table.headings == ("", "4 in hinge", "4-1/2 in hinge", "difference")
    assert table.rows[0] == ("the door opens to", "171.7°", "178.8°", "7.1° farther")
    assert [row[0] for row in table.rows][-1] == "the door stands out into the room, left open"
    assert all(len(row) == 4 for row in table.rows)


def test_every_row_of_the_table_is_one_of_the_comparison():
    keys = {row.key for row in comparisons(demo("112A"), INCHES)[0].rows}
    table = client_table(demo("112A"), width_pair(demo("112A")), INCHES)
    assert len(table.rows) == 6  # all but the angle at rest, which is the greatest one here
    assert {"greatest_angle", "leaf_out_at_rest", "clear_width_at_90"} <= keys


@pytest.mark.parametrize(
    ("mark", "why"),
    [
        ("112A", "it is the narrowest with which the door itself opens as far as asked."),
        ("101A", "With it the door itself opens as far as asked."),
    ],
)  # fmt: skip
def test_why_a_width_is_recommended(mark, why):
    assert advice(demo(mark))[0].endswith(why)


def test_a_hinge_with_an_error_is_not_recommended_and_what_would_do_is_said():
    """The narrow valve cupboard binds on every width: its edge is square."""
    said = advice(demo("126C"))
    assert said[0] == NOTHING_RECOMMENDED
    assert said[1].startswith("What would do it: bevel the lock edge 1/8 in 2; or take swing clear hinges")
    narrow = advice(case_a(size="2870", use={"accessible": True}))
    assert narrow[0] == NOTHING_RECOMMENDED
    assert narrow[1] == "What would do it: make the opening 36 in wide."


def test_hardware_that_ends_the_swing_far_short_is_not_passed_over():
    """A shelf 14 in deep on the door's own face meets the wall long before the door does."""
    shelf = {"kind": "shelf", "face": "pull", "projection": 14, "from_latch_edge": 18, "width": 30,
             "height": 40, "vertical": 1}  # fmt: skip
    (words,) = advice(case_a(hardware=[shelf]))
    assert "With it the door alone would open as far as asked; the shelf on it ends that at " in words
    assert "opens as far as asked." not in words


def test_two_leaves_are_each_advised_and_the_other_one_is_spoken_of():
    pair = case_a(**PAIR)
    found = advice(pair)
    assert found[0].startswith("For the active leaf: 3 hinges, 4-1/2 x 4 in")
    assert found[1].startswith("For the inactive leaf: 3 hinges")
    assert others_said(pair, width_pair(pair), INCHES) == (
        "The inactive leaf is not pictured: it opens to 180° on either hinge.",
    )


def test_of_pivots_nothing_is_advised():
    assert advice(case_a(hung_on="pivots")) == (NOT_CHOSEN,)


def test_parts_and_things_have_a_clients_names():
    assert [part_named(name) for name in ("leaf", "barrel", "lever")] == [
        "the door",
        "the hinge",
        "the lever",
    ]
    assert thing_named("latch jamb") == "frame on the lock side"
    assert thing_named("chair rail") == "chair rail"
