"""The sections sheet: jamb, head and sill against figures worked by hand; every number against the paper."""

import pytest

from configurator.drawing.base.primitives import Polygon, Text
from configurator.drawing.pages.page import paper_named, papers, scale_named
from configurator.drawing.sections.sections_page import sections_page
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import FRAMES, case_a, demo, demo_pair
from tests.drawing.pages.on_page import (
    assert_true_to_scale,
    dimensions,
    named,
    outside,
    overlapping,
    struck_through,
    texts,
)

TABLOID, LETTER = paper_named("Tabloid"), paper_named("Letter")
OUTLINES = ("A-DOOR", "A-DETL", "A-WALL", "A-ANNO-BRDR")
WRAPPED = {
    "frame": {
        "kind": "welded steel, wrapped", "face": 2, "rabbet": 1.9375, "stop_height": 0.625,
        "stop_gap": 0.0625, "jamb_depth": 5.75, "return_depth": 0.4375,
    },
    "wall": {"thickness": 4.875, "layers": [
        {"name": "gypsum board", "thickness": 0.625}, {"name": "stud space", "thickness": 3.625},
        {"name": "gypsum board", "thickness": 0.625},
    ]},
    "door": {
        "construction": "hollow metal, 18 gage", "thickness": 1.75, "hinge_backset": 0.25, "hinge_gap": 0.125,
        "latch_gap": 0.125, "head_gap": 0.125, "undercut": 0.75, "latch_bevel": 0.0625,
    },
    "hinge": {"height": 4.5, "width": 4.5},
}  # fmt: skip


def page_of(study, paper=TABLOID, scale=None, display=None):
    return sections_page(study, JobFacts(), paper, scale, display or Display())


def given(**more):
    return case_a(**{**WRAPPED, **more})


def test_the_jamb_is_dimensioned_as_it_was_given():
    page = page_of(given())
    hand = {
        "frame face": [2], "rabbet depth": [1.9375], "frame stop height": [0.625], "soffit": [1.875],
        "second rabbet": [1.9375], "return": [0.4375, 0.4375], "jamb depth": [5.75],
        "throat and wall thickness": [4.875], "wall layer, gypsum board": [0.625, 0.625],
        "wall layer, stud space": [3.625], "door thickness": [1.75, 1.75], "inset": [0.125],
        "hinge-side gap": [0.125], "door hinge backset": [0.25], "hinge leaf on the door": [1.5],
        "gap at the frame stop": [0.0625], "rabbet face to pin": [0.0625],
        # The pin stands half the open width off the far ends of the leaves: 2-1/4 less 1-1/2 of leaf.
        "door face to pin": [0.75],
    }  # fmt: skip
    assert {name: named(page, name) for name in hand} == {n: pytest.approx(v) for n, v in hand.items()}


def test_head_and_sill_are_dimensioned_as_they_were_given():
    page = page_of(given(sill={"threshold_height": 0.5, "threshold_width": 5, "floor_finish": 0.375}))
    hand = {
        "head gap": 0.125, "head face": 2, "frame stop height at the head": 0.625, "undercut": 0.75,
        "threshold height": 0.5, "door over threshold": 0.25, "floor finish over the slab": 0.375,
    }  # fmt: skip
    assert {name: named(page, name) for name in hand} == {n: [pytest.approx(v)] for n, v in hand.items()}
    said = [words for words, _ in texts(page)]
    assert "threshold 5 in wide" in said
    assert "slab" in said
    assert not any("No threshold was given" in words for words in said)


def test_what_was_not_given_is_left_out_and_asked_for():
    said = " ".join(words for words, _ in texts(page_of(given())))
    assert "No threshold was given" in said
    assert "slab under it is not located" in said
    assert not named(page_of(given()), "threshold height")


def test_what_was_assumed_has_an_asterisk():
    found = {one.name: one.text for _, one in dimensions(page_of(given()))}
    assert found["soffit"] == "1-7/8 in * soffit"
    assert found["rabbet depth"] == "1-15/16 in rabbet"


def test_trim_and_its_reveal_are_dimensioned():
    page = page_of(demo("205A"))
    assert named(page, "casing") == [3.25]
    assert named(page, "reveal, rabbet face to casing") == [0.25]


def test_the_head_is_the_jamb_turned_with_the_pull_side_to_the_left():
    page = page_of(given())
    head = next(one for one in page.details if one.name.endswith("Head"))
    frame = next(one for one in head.primitives if isinstance(one, Polygon) and one.fill == "steel")
    across, up = zip(*frame.points, strict=True)
    assert (min(across), max(across)) == (0, 5.75)
    assert (min(up), max(up)) == (-0.625, 2)


def test_each_section_is_marked_in_the_elevation():
    page = page_of(given())
    letters = {one.name[0] for one in page.details if one.name[1:3] == "  "}
    elevation = next(one for one in page.details if one.name.startswith("Elevation"))
    marks = {one.text for one in elevation.primitives if isinstance(one, Text) and one.bold}
    assert letters == {"A", "B", "C", "D"} <= marks


def test_a_pair_shows_its_meeting_edges_and_marks_no_latch_jamb():
    names = {one.name for one in page_of(demo_pair("301A")).details}
    assert "Meeting edges" in names
    assert not any(name.startswith("D") for name in names)


def test_a_door_on_pivots_by_others_has_no_hinge_in_its_jamb():
    page = page_of(given(hung_on="by others", hinge=None, compare=[]))
    assert not named(page, "door face to pin")
    assert named(page, "inset") == [pytest.approx(0.125)]
    assert any("No butt hinge is chosen" in words for words, _ in texts(page))


def test_a_centre_hung_door_has_its_axis_both_ways_and_no_rabbet():
    way = {"hung_on": "centre-hung pivot", "axis_off_face": -0.875, "axis_from_heel": 2.75}
    page = page_of(given(hung_on="pivots", hinge=None, compare=[way]))
    assert named(page, "pull face to axis") == [0.875]
    assert named(page, "heel edge to axis") == [2.75]
    assert named(page, "rabbet face to axis") == [2.875]
    assert not named(page, "rabbet depth")


@pytest.mark.parametrize("kind", FRAMES)
def test_the_bars_of_a_sheet(kind):
    study = case_a(frame={"kind": kind}, **FRAMES[kind])
    for paper in papers().values():
        page = page_of(study, paper, display=Display(metric=paper.name.startswith("A")))
        assert_true_to_scale(page)
        assert (outside(page), overlapping(page)) == ([], [])
        assert [one for one in struck_through(page) if not one[1].startswith(OUTLINES)] == []


def test_a_scale_that_does_not_fit_is_refused_in_words():
    with pytest.raises(ValueError, match="full size does not fit on Letter paper"):
        page_of(given(), LETTER, scale_named("full"))
    page = page_of(given(), LETTER, scale_named("1-1/2"))
    assert {one.scale for one in page.details if one.name[0] in "ABC"} == {scale_named("1-1/2")}
