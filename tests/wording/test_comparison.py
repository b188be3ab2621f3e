"""The comparison says what the candidates say, and the difference in words."""

import pytest

from configurator.export.plain_text import studies_as_text
from configurator.study import study
from configurator.units import Display
from configurator.wording import comparison
from configurator.wording.comparison import comparisons
from tests.openings import LEVER, RAIL, flat_opening, plain_opening


def rows(display=None, **changes):
    (table,) = comparisons(study(plain_opening(**changes)), display or Display())
    return {row.key: row for row in table.rows}


def test_the_difference_is_said_in_words():
    found = rows(obstructions=[RAIL])
    assert found["pin_off_frame_face"].values == ("3/8 in", "5/8 in")
    assert found["pin_off_frame_face"].difference == "1/4 in farther off the frame"
    assert found["clear_width_at_90"].difference == "1/4 in narrower"
    assert found["greatest_angle_bare"].values == ("171.7°, leaf on the chair rail", "180°")
    assert found["greatest_angle_bare"].difference == "8.2° farther"
    assert found["hinge_edge_least"].difference == "the same"


NO_ROW = {
    "leaf": "a table for each",
    "hinge_width": "a column for each",
    "hung_on": "a column for each",
    "toward": "a column for each",
    "axis_off_face": "the row is off the face it swings out of",
    "pin_across": "no measure that anybody sets out by",
    "contact_point": "marked in the picture",
    "contact_point_bare": "marked in the picture",
    "held_by": "said beside the angle",
    "stopped_by": "said beside the angle",
    "stopped_by_bare": "said beside the angle",
    "clear_width_at_greatest": "for other tools",
    "encroachment_at_rest": "the row is where the door does rest, with its stop",
    "encroachment_with_hardware_greatest": "for other tools",
    "encroachment_with_hardware_at_rest": "for other tools",
    "least_gap": "dimensioned in the picture",
    "least_gap_angle": "said with the gap",
    "barrel_free_by": "a finding says where it is little",
    "barrel_diameter": "of the hinge, not of the swing",
    "door_stop": "a finding says where it stands",
    "findings": "listed below the table",
}
"""Answers of a candidate that are no row of the table, and why."""


def test_every_answer_of_a_candidate_is_a_row_or_is_left_out_on_purpose():
    (candidate, _) = study(plain_opening()).candidates
    shown = {fact.key for fact in comparison.FACTS}
    answers = set(candidate.as_data())
    forgotten = sorted(answers - shown - set(NO_ROW))
    assert forgotten == [], "give these a row in wording/comparison.py, or say why none in NO_ROW here"
    assert sorted(set(NO_ROW) - (answers - shown)) == [], "take these from NO_ROW here"
    assert shown - answers == {"leaf_out_at_rest"}, "answer these in `as_data` of study/candidate.py"


def test_a_difference_too_small_to_show_is_not_shown_as_nothing():
    assert rows(door={"latch_bevel": 1 / 16})["latch_edge_least"].difference == "less than 1/32 in tighter"


@pytest.mark.parametrize(
    ("precision", "shown"), [(16, "31-15/16 in"), (32, "31-31/32 in"), (64, "31-31/32 in")]
)
def test_a_clear_width_never_rounds_across_32(precision, shown):
    # 36 less (32.8125 - 31.97) in leaves a clear width of 31.97 with a 4-1/2 in hinge.
    found = rows(Display(precision), size={"width": 35.1575}, compare=[4.5])
    assert found["clear_width_at_90"].values == (shown,)


def test_a_width_not_reached_says_so():
    wall = {"kind": "return wall", "start": 0}
    found = rows(obstructions=[wall], hardware=[LEVER | {"projection": 6}])
    assert found["clear_width_at_90"].values == ("not reached", "not reached")
    assert found["clear_width_at_90"].difference == ""


def test_room_behind_a_door_that_never_opens_flat_is_not_printed():
    """4 in stops at 171.8 on the rail, 4-1/2 in opens flat; held at 105 neither does."""

    def row(**use):
        (table,) = comparisons(study(plain_opening(obstructions=[RAIL], use=use)), Display())
        return next(one for one in table.rows if one.key == "clear_past_frame_at_180").values

    assert row() == ("not reached", "1-3/8 in")
    assert row(stop_angle=105) == ("not reached", "not reached")


def test_one_width_alone_has_no_difference():
    assert {row.difference for row in rows(compare=[4]).values()} == {""}


def test_what_hardware_takes_is_shown_where_it_takes_something():
    bar = {
        "kind": "panic device",
        "face": "push",
        "projection": 3.5,
        "from_latch_edge": 14,
        "width": 26,
        "height": 40,
        "vertical": 3,
    }
    assert "hardware_in_clear_width" not in rows()
    assert rows(hardware=[bar])["hardware_in_clear_width"].values[0] == "3-1/2 in"


def test_metric_is_one_switch():
    assert rows(Display(metric=True))["pin_off_door_face"].values == ("12.7 mm", "19.1 mm")


def test_each_leaf_has_its_own_table():
    opening = plain_opening(leaves="pair", size={"width": 72, "height": 84})
    active, inactive = comparisons(study(opening), Display())
    assert (active.leaf, inactive.leaf) == ("active", "inactive")
    assert inactive.between == "4 to 4-1/2"
    both = {row.key: row for row in inactive.rows}["clear_width_at_90"]
    assert both.plain == "walk-through width, both leaves square open"


def test_a_terminal_gets_everything():
    text = studies_as_text([study(flat_opening(obstructions=[RAIL]))])
    assert "difference" in text
    assert "warning: With a 4-1/2 x 4 hinge the leaf meets the chair rail at 171.7°" in text
    assert "Assumed, not given: door.head_gap" in text
    assert max(len(line) for line in text.splitlines()) < 200


def test_where_the_door_rests_is_a_row_of_its_own_where_a_stop_holds_it():
    assert "rests_at" not in rows()
    found = rows(door_stop={"kind": "floor stop", "projection": 3, "from_frame": 28})["rests_at"]
    # Worked by hand with the stops: 2-1/8 past the pin and 30-1/16 along on a 4 in hinge.
    assert found.values[0] == "176.9°"
    assert found.difference.endswith("farther")


def test_an_inactive_leaf_has_no_lock_side_to_pass():
    opening = plain_opening(leaves="pair", size={"width": 72, "height": 84})
    active, inactive = comparisons(study(opening), Display())
    assert "latch_edge_least" in {row.key for row in active.rows}
    assert "latch_edge_least" not in {row.key for row in inactive.rows}
