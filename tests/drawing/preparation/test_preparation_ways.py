"""Sheets of what is no butt: where it turns, against figures worked by hand, and every number true."""

import pytest

from configurator.drawing.base.primitives import Polygon
from configurator.drawing.pages.elevation_facts import leaves_shown
from configurator.drawing.pages.elevation_page import elevation_page
from configurator.drawing.pages.page import paper_named
from configurator.drawing.preparation.preparation_page import preparation_page
from configurator.drawing.preparation.preparation_ways import way_preparations, way_table
from configurator.model import JobFacts
from configurator.study import study
from configurator.units import Display
from tests.drawing.pages.on_page import (
    assert_true_to_scale,
    dimensions,
    named,
    outside,
    overlapping,
    struck_through,
    texts,
)
from tests.openings import plain_opening

# O 36, T 1-3/4, gaps 1/8, R 1-15/16, k 1/16: the door stands 1/8 behind the frame's face.
FRAME = {"rabbet": 1.9375, "stop_gap": 0.0625}
OFFSET, CENTRE = {"hung_on": "offset pivot"}, {"hung_on": "centre-hung pivot", "heel_radius": 2.875}
SPRING = {"hung_on": "double-acting spring hinge"}
CASES = {
    "offset": {"hung_on": "pivots", "compare": [OFFSET]},
    "centre": {"hung_on": "pivots", "compare": [CENTRE]},
    "continuous": {"hung_on": "continuous hinge", "compare": []},
    "spring": {"hung_on": "spring hinges", "compare": [SPRING]},
    "pair": {"hung_on": "pivots", "compare": [OFFSET], "leaves": "pair", "size": {"width": 72, "height": 84}},
}


def studied(case, **changes):
    door = {"hinge_gap": 0.125, "latch_bevel": 0}
    return study(plain_opening(frame=FRAME, door=door, **{**CASES[case], **changes}))


@pytest.fixture(scope="module")
def pages():
    paper, facts = paper_named("Tabloid"), JobFacts()
    return {case: preparation_page(studied(case), facts, paper, None, Display()) for case in CASES}


def said(page):
    return " ".join(" ".join(text for text, _ in texts(page)).split())


@pytest.mark.parametrize("case", CASES)
def test_a_sheet_is_true_and_can_be_read(pages, case):
    page = pages[case]
    assert_true_to_scale(page)
    assert not overlapping(page)
    assert not outside(page)
    assert not struck_through(page)


def test_an_offset_pivot_is_set_out_from_door_and_frame(pages):
    """3/4 off the door's face is 5/8 off the frame's; 3/4 from the heel edge is 7/8 from the rabbet."""
    page = pages["offset"]
    assert named(page, "pull face to axis") == [0.75]
    assert named(page, "frame face to axis") == [0.625]
    assert named(page, "heel edge to axis") == [0.75]
    assert named(page, "rabbet face to axis") == [0.875]
    assert "the maker's drawing decides over this sheet" in said(page)
    assert "the usual place of the axis of an offset pivot, common practice" in said(page)


def test_a_centre_hung_pivot_stands_in_the_door(pages):
    """Half of 1-3/4 inside the pull face, which is 1/8 behind the frame's: 1 in; 2-3/4 and the gap."""
    page = pages["centre"]
    assert named(page, "pull face to axis") == [0.875]
    assert named(page, "frame face to axis") == [1.0]
    assert named(page, "rabbet face to axis") == [2.875]
    assert "heel R 2-7/8 in" in said(page)
    assert "gap at the frame stop" not in {one.name for _, one in dimensions(page)}


def test_a_spring_hinge_has_a_barrel_before_each_face(pages):
    page = pages["spring"]
    assert named(page, "pull face to axis") == named(page, "push face to its axis") == [0.5]
    barrels = [one for one in page.details[0].primitives if getattr(one, "name", "").startswith("barrel")]
    assert len(barrels) == 2


def test_the_table_says_what_is_ordered_and_let_in():
    (row,) = way_table(way_preparations(studied("continuous")), Display()).rows
    assert row == (
        "single", "continuous hinge", "1", "3/8 in *", "-1/16 in *", "1/16 in *", "1/4 in *", "83-1/8 in",
        "holes all along door and frame",
    )  # fmt: skip
    given = {"axis_off_face": 0.75, "axis_from_heel": 1, **OFFSET}
    (row,) = way_table(way_preparations(studied("offset", compare=[given])), Display()).rows
    assert row[1:7] == (
        "offset pivot, top and bottom", "1 set", "3/4 in", "1 in", "1-1/8 in", "5/8 in",
    )  # fmt: skip


def test_a_fire_door_has_its_intermediate_pivot_in_the_table_of_either_leaf():
    rows = way_table(way_preparations(studied("pair", use={"fire_rated": True})), Display()).rows
    assert [row[:3] for row in rows] == [
        (leaf, item, many)
        for leaf in ("active", "inactive")
        for item, many in (("offset pivot, top and bottom", "1 set"), ("intermediate offset pivot", "1"))
    ]


@pytest.mark.parametrize(
    ("case", "heights"),
    [
        ("continuous", [(0.75, 83.875)]),
        ("offset", [(0.75, 2.0), (82.625, 83.875)]),
    ],
)
def test_an_elevation_shows_what_it_turns_on(case, heights):
    (shown,) = leaves_shown(studied(case))
    assert [ends[:2] for ends in shown.turns_on] == heights
    page = elevation_page(studied(case), JobFacts(), paper_named("Tabloid"), None, Display())
    polygons = (one for one in page.details[0].primitives if isinstance(one, Polygon))
    drawn = [one for one in polygons if one.name == "what the door turns on"]
    assert len(drawn) == len(heights)
    assert "the maker's drawing decides" in said(page)


def test_three_spring_hinges_are_drawn_where_hinges_are_usual():
    (shown,) = leaves_shown(studied("spring"))
    assert len(shown.turns_on) == 3
