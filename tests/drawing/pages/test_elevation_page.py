"""The elevation sheet: hinge centres against worked figures, and every number against the paper."""

import pytest

from configurator.drawing.base.primitives import Polygon, Text
from configurator.drawing.pages.elevation_page import elevation_page
from configurator.drawing.pages.frame import drawing_box
from configurator.drawing.pages.page import paper_named, scale_named
from configurator.model import JobFacts
from configurator.study.run import study
from configurator.units import Display
from tests.drawing.pages.on_page import (
    assert_true_to_scale,
    demo_openings,
    dimensions,
    named,
    outside,
    overlapping,
    struck_through,
    texts,
)
from tests.openings import LEVER
from tests.rules.hung import opening

TABLOID, LETTER = paper_named("Tabloid"), paper_named("Letter")
INCHES = Display()


def page_of(paper=TABLOID, scale=None, display=INCHES, **changes):
    return elevation_page(study(opening(**changes), JobFacts()), JobFacts(), paper, scale, display)


def said(page):
    return " ".join(text for text, _ in texts(page))


def centres(page, above="floor"):
    """Return the centres of the hinges by their number from the top."""
    numbers = range(1, 6)
    return [one for n in numbers for one in named(page, f"{above} to centre of hinge {n}")]


@pytest.mark.parametrize(
    ("height", "expected"),
    [
        (80, [72.75, 42.5, 12.25]),
        (84, [76.75, 44.5, 12.25]),
        (86, [78.75, 45.5, 12.25]),
        (96, [88.75, 63.25, 37.75, 12.25]),
    ],
)
def test_hinge_centres_above_the_floor(height, expected):
    """Worked from 5 below the head and 10 above the floor, hinges 4-1/2 high, the rest equally spaced."""
    page = page_of(size={"width": 36, "height": height})
    assert centres(page) == expected
    # On the door they are less by the undercut of 3/4.
    assert centres(page, "bottom of door") == [one - 0.75 for one in expected]


def test_the_door_and_the_frame_differ_by_head_gap_and_undercut():
    page = page_of()
    assert named(page, "top of hinge 1 to head rabbet") == [5.0]
    assert named(page, "top of hinge 1 to top of door") == [4.875]
    assert named(page, "floor to bottom of hinge 3") == [10.0]
    assert named(page, "bottom of door to bottom of hinge 3") == [9.25]
    assert named(page, "top of hinge 3 to bottom of hinge 2") == [27.75, 27.75]


def test_tops_count_from_head_and_from_the_doors_top_where_there_is_room():
    """Tops of hinges 4-1/2 high with centres at 76-3/4, 44-1/2 and 12-1/4 under a head at 84."""
    roomy = page_of(paper_named("Arch C"))
    numbers = (1, 2, 3)
    assert [named(roomy, f"head rabbet to top of hinge {n}") for n in numbers] == [[5.0], [37.25], [69.5]]
    assert [named(roomy, f"top of door to top of hinge {n}") for n in numbers] == [
        [4.875],
        [37.125],
        [69.375],
    ]
    assert {"5 in", "37-1/4 in", "69-1/2 in", "4-7/8 in", "37-1/8 in", "69-3/8 in"} <= {
        text for text, _ in texts(page_of(LETTER))
    }  # the table has them in any case


def test_a_dutch_door_counts_from_its_split():
    """Split at 42: centres 5 + 2-1/4 above and below it; each leaf's own count begins at its own bottom."""
    page = page_of(leaves="dutch")
    assert sorted(centres(page)) == [12.25, 34.75, 49.25, 76.75]
    lower, upper = 0.75, 42.0625
    expected = [12.25 - lower, 34.75 - lower, 49.25 - upper, 76.75 - upper]
    assert sorted(centres(page, "bottom of door")) == sorted(expected)
    assert named(page, "split gap") == [0.125]
    assert "upper 1" in said(page)
    assert "lower 2" in said(page)


def test_the_western_rule_and_typed_places():
    assert centres(page_of(hinge_locations={"rule": "7 and 11"})) == [74.75, 44.0, 13.25]
    typed = page_of(hinge_locations={"tops": [6, 40, 70]})
    assert centres(typed) == [75.75, 41.75, 11.75]
    assert "Places as typed" in said(typed)


def test_what_was_assumed_is_marked():
    texts_of = {one.name: one.text for _, one in dimensions(page_of(door={"undercut": None}))}
    assert texts_of["undercut"] == "3/4 in *"
    assert texts_of["top of hinge 1 to head rabbet"] == "5 in *"
    given = page_of(door={"undercut": 0.75}, hinge_locations={"rule": "5 and 10"})
    texts_of = {one.name: one.text for _, one in dimensions(given)}
    assert texts_of["undercut"] == "3/4 in"
    assert texts_of["top of hinge 1 to head rabbet"] == "5 in"


@pytest.mark.parametrize(
    ("hand", "on_the_right"), [("LH", True), ("RHR", True), ("RH", False), ("LHR", False)]
)
def test_hinges_are_where_they_are_seen_from_the_pull_side(hand, on_the_right):
    """A left-hand door seen from inside, the side it swings to, has its hinges on the right."""
    elevation = page_of(hand=hand).details[0]
    barrel = next(one for one in elevation.primitives if isinstance(one, Polygon) and one.name == "barrel")
    across = elevation.view.to_sheet(barrel.points[0])[0]
    middle = elevation.view.to_sheet((18.0, 0.0))[0]
    assert (across > middle) == on_the_right


def test_a_lever_and_the_electric_hinge_are_shown():
    page = page_of(hardware=[LEVER], hinge={"electric": 2})
    assert named(page, "lever above floor") == [38.0]
    assert "38 in lever" in said(page)
    assert "latch edge" in said(page)
    assert "finished floor" in said(page)
    assert "2 electric" in said(page)
    assert "2, electric" in said(page)
    assert "carries wires" in said(page)
    assert "electric:" not in said(page_of()).lower()


def test_hinges_not_chosen_here_are_not_drawn():
    page = page_of(hung_on="by others")
    assert len(page.details) == 1
    assert not centres(page)
    assert "none are located" in said(page)
    assert named(page, "opening height, floor to head rabbet") == [84.0]


def test_a_pair_whose_leaves_take_other_hinges_shows_both_edges():
    """A leaf of 50 takes hinges 6 high, one of 21 those of 4-1/2."""
    page = page_of(leaves="pair", size={"width": 72, "height": 84}, active_width=50)
    assert [detail.name for detail in page.details][1:] == [
        "Hinge edge, active",
        "Hinge edge, inactive",
    ]
    alike = page_of(leaves="pair", size={"width": 72, "height": 84})
    assert [detail.name for detail in alike.details][1:] == ["Hinge edge"]


def test_how_exact_is_said_of_wood_doors_only():
    """The Architectural Woodwork Standards were read; no figure for steel was."""
    wood = said(page_of(door={"construction": "wood, solid core"}))
    assert "within 1/32 in of its place" in wood
    assert "of its place" not in said(page_of())


def test_a_scale_that_does_not_fit_is_refused_in_words():
    with pytest.raises(ValueError, match="does not fit on Letter paper"):
        page_of(LETTER, scale_named("3"))


def test_a_scale_asked_for_leaves_out_what_has_no_room():
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}}
    some = page_of(paper_named("A4"), scale_named("1/2"), **pair)
    assert named(some, "bottom of door to bottom of hinge 3") == [9.25]
    assert not centres(some, "bottom of door")
    page = page_of(LETTER, scale_named("1/2"), **pair, hardware=[{**LEVER, "kind": "panic device"}])
    assert len(page.details) == 1
    assert page.details[0].scale == scale_named("1/2")
    assert "The doors' edges have no room on this paper" in said(page)


@pytest.mark.parametrize(("one", "facts"), demo_openings())
def test_every_demo_opening_is_true_to_scale_and_no_texts_overlap(one, facts):
    answer = study(one, facts)
    for paper, display in (("Letter", INCHES), ("A3", Display(metric=True)), ("Tabloid", INCHES)):
        page = elevation_page(answer, facts, paper_named(paper), None, display)
        assert_true_to_scale(page)
        assert overlapping(page) == []
        assert outside(page) == []
        assert struck_through(page) == []
        room = drawing_box(page.paper).shrunk(-1.0)
        for detail in page.details:
            corners = [detail.view.to_sheet(one.at) for one in detail.primitives if isinstance(one, Text)]
            assert all(room.has(corner) for corner in corners)


SET = {
    "door": {
        "lite_width": 6, "lite_height": 30, "lite_above_floor": 44, "lite_from_latch": 6,
        "lock_height": 40.25, "lock_backset": 2.75, "kick_plate": 10, "undercut": 0.75,
    },
    "sill": {"threshold_height": 0.5},
}  # fmt: skip


def test_lock_lite_kick_plate_and_threshold_stand_where_they_were_given():
    page = page_of(**SET)
    assert named(page, "lock centre above floor") == [40.25]
    assert named(page, "bottom of lite above floor") == [44]
    assert named(page, "top of lite above floor") == [74]
    assert named(page, "top of kick plate above floor") == [10.75]
    parts = [one for one in page.details[0].primitives if isinstance(one, Polygon)]
    lite = next(one for one in parts if one.name == "lite")
    # A 36 in opening less 1/8 in at the latch, then 6 in of door, then 6 in of glass.
    assert {x for x, _ in lite.points} == {23.875, 29.875}
    assert any(one.name == "threshold" for one in parts)
    assert "backset 2-3/4 in" in " ".join(words for words, _ in texts(page))


def test_a_lite_without_a_place_is_said_not_to_be_drawn():
    said = " ".join(words for words, _ in texts(page_of(door={"lite_width": 6, "lite_height": 30})))
    assert "The lite's place in the door was not given" in said


def test_the_lock_is_where_the_lever_turns_where_nobody_said():
    said = " ".join(words for words, _ in texts(page_of(hardware=[{"kind": "lever"}])))
    # Its box is 5 in wide about 4-1/4 in from the edge and turns 1 in from its latch end.
    assert (
        "Lock and strike centred 38 in above the floor, backset 2-3/4 in (* the lever's usual place)" in said
    )


def test_the_hinge_side_is_named():
    assert any(words == "hinge side" for words, _ in texts(page_of()))
