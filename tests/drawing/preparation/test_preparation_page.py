"""The preparation sheet: what is cut, against figures worked by hand; every number against the paper."""

import pytest

from configurator.drawing.base.primitives import Arc, Polygon, Region
from configurator.drawing.pages.page import paper_named, scale_named
from configurator.drawing.preparation.preparation_facts import preparation_table, preparations
from configurator.drawing.preparation.preparation_page import preparation_page
from configurator.drawing.preparation.preparation_parts import mortise
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
from tests.rules.hung import opening

TABLOID, LETTER = paper_named("Tabloid"), paper_named("Letter")
INCHES = Display()
PLAIN = {
    "door": {"thickness": 1.75, "hinge_backset": 0.25, "hinge_gap": 0.125, "latch_bevel": 0.0625},
    "frame": {"rabbet": 1.9375, "stop_gap": 0.0625, "hinge_backset": 0.3125},
    "hinge": {"height": 4.5, "width": 4.5},
}


def page_of(paper=TABLOID, scale=None, display=INCHES, job=None, **changes):
    facts = job or JobFacts()
    merged = {**PLAIN, **changes}
    return preparation_page(study(opening(**merged), facts), facts, paper, scale, display)


def said(page):
    return " ".join(text for text, _ in texts(page))


def printed(page):
    return {one.name: one.text for _, one in dimensions(page)}


def test_what_is_cut_for_the_plain_case():
    """Door 1-3/4 less 1/4, rabbet 1-15/16 less 5/16; the leaf of 0.134 flush; pin 2-1/4 from both edges."""
    page = page_of()
    assert named(page, "mortise height") == [4.5, 4.5]
    assert named(page, "door mortise width") == named(page, "hinge leaf on the door") == [1.5]
    assert named(page, "frame mortise width") == named(page, "hinge leaf on the frame") == [1.625]
    assert named(page, "door hinge backset") == [0.25, 0.25]
    assert named(page, "frame hinge backset") == [0.3125, 0.3125]
    assert named(page, "door mortise depth") == pytest.approx([0.134])
    assert named(page, "frame mortise depth") == pytest.approx([0.134])
    assert named(page, "hinge-side gap") == named(page, "gap between the hinge leaves") == [0.125]
    assert named(page, "door face to pin") == [0.75]
    assert named(page, "frame face to pin") == [0.625]
    assert named(page, "inset") == [0.125]
    assert named(page, "gap at the frame stop") == [0.0625]
    assert named(page, "bevel") == pytest.approx([0.109375])


def test_what_the_numbers_say():
    words = printed(page_of())
    assert words["door mortise depth"] == "0.134 in * deep"  # flush, since no depth was given
    assert words["bevel"] == "7/64 in bevel"
    assert words["door hinge backset"] in ("1/4 in", "1/4 in backset")
    given = page_of(door={**PLAIN["door"], "mortise_depth": 0.125}, frame={"mortise_depth": 0.109375})
    assert printed(given)["door mortise depth"] == "1/8 in deep"
    assert printed(given)["frame mortise depth"] == "7/64 in deep"
    # 1/8 of gap less 0.009 and 0.024625 that the leaves stand out of their mortises.
    assert named(given, "gap between the hinge leaves") == pytest.approx([0.125 - 0.009 - 0.024625])


def test_assumed_numbers_are_marked():
    words = printed(page_of(door={"hinge_backset": None}, frame={"hinge_backset": None}))
    assert words["door hinge backset"].startswith("1/4 in *")
    assert words["frame hinge backset"].startswith("5/16 in *")


@pytest.mark.parametrize(
    ("mounting", "on_door", "on_frame"),
    [
        ("full mortise", True, True),
        ("half mortise", True, False),
        ("half surface", False, True),
        ("full surface", False, False),
        ("swing clear", False, False),
    ],
)
def test_only_what_is_let_in_is_cut(mounting, on_door, on_frame):
    page = page_of(hinge={"mounting": mounting, "height": 4.5, "width": 3.5})
    names = [detail.name for detail in page.details]
    assert ("Door, hinge edge" in names) == on_door
    assert ("Frame, hinge rabbet" in names) == on_frame
    assert bool(named(page, "door mortise depth")) == on_door
    assert bool(named(page, "frame mortise depth")) == on_frame
    on_its_face = not on_door and mounting != "swing clear"
    assert ("nothing is let into the door's edge" in " ".join(said(page).split())) == on_its_face
    assert_true_to_scale(page)
    assert overlapping(page) == []


HUNG_OTHERWISE = {
    # d_b/2 of a barrel of 0.58 is 0.29; the door is set in 1/8, so off its face 0.415.
    "half mortise": {"frame face to pin": 0.29, "door face to pin": 0.415},
    # Off the door's face 0.29, so 0.165 off the frame's.
    "half surface": {"frame face to pin": 0.165, "door face to pin": 0.29},
    "full surface": {"frame face to pin": 0.29, "door face to pin": 0.415, "rabbet face to pin": 0.0625},
    # Across back over the frame's face by o + T = 0.415 + 1.75.
    "swing clear": {"frame face to pin": 0.29, "door face to pin": 0.415, "rabbet face to pin": 2.165},
}


@pytest.mark.parametrize("mounting", HUNG_OTHERWISE)
@pytest.mark.parametrize("paper", [LETTER, TABLOID])
def test_the_pin_is_located_off_both_faces_and_across(mounting, paper):
    page = page_of(paper, hinge={"mounting": mounting, "height": 4.5, "width": 3.5})
    for name, inches in HUNG_OTHERWISE[mounting].items():
        assert named(page, name) == pytest.approx([inches]), name
    assert len(named(page, "rabbet face to pin")) == 1
    assert struck_through(page) == []
    assert outside(page) == []


@pytest.mark.parametrize(
    ("mounting", "door", "frame"),
    [
        ("half mortise", "let in", "on the face"),
        ("half surface", "on the face", "let in"),
        ("full surface", "on the face", "on the face"),
        ("swing clear", "by template", "by template"),
    ],
)
def test_the_table_says_of_each_side_what_is_cut_there(mounting, door, frame):
    answer = study(opening(**PLAIN | {"hinge": {"mounting": mounting, "height": 4.5, "width": 3.5}}))
    (row,) = preparation_table(preparations(answer), INCHES).rows
    assert row[5] == door or (door == "let in" and row[5].endswith(" in"))
    assert row[9] == frame or (frame == "let in" and row[9].endswith(" in"))
    for side, screws in ((door, row[8]), (frame, row[12])):
        assert (screws == "through-bolts, by template") == (side == "on the face")


def test_swing_clear_says_that_its_template_decides():
    page = page_of(hinge={"mounting": "swing clear", "height": 4.5, "width": 4.5})
    words = " ".join(said(page).split())
    assert "cut nothing from this sheet" in words
    assert "nothing is let into" not in words


def test_a_door_set_in_is_packed_out_under_a_full_surface_hinge():
    page = page_of(hinge={"mounting": "full surface", "height": 4.5, "width": 4.5})
    assert named(page, "packing under the door leaf") == [0.125]
    assert "Pack the door leaf out 1/8 in" in " ".join(said(page).split())
    flush = page_of(
        hinge={"mounting": "full surface", "height": 4.5, "width": 4.5},
        frame={**PLAIN["frame"], "rabbet": 1.8125},
    )
    assert named(flush, "packing under the door leaf") == []


def test_both_leaves_are_drawn_where_they_differ_and_once_where_they_do_not():
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}, "hinge": None}
    names = [detail.name for detail in page_of(**pair, active_width=50).details]
    assert [name for name in names if "Section" in name] == [
        "Section at a hinge, active",
        "Section at a hinge, inactive",
    ]
    assert len([name for name in names if "Door, hinge edge" in name]) == 2
    alike = [detail.name for detail in page_of(**pair).details]
    assert alike.count("Section at a hinge, closed") == 1
    small = page_of(LETTER, **pair, active_width=42)
    assert "the table has their mortises" in " ".join(said(small).split())
    assert min(detail.scale.points for detail in small.details) >= 18.0
    assert overlapping(small) == []
    dutch = [detail.name for detail in page_of(leaves="dutch").details]
    assert dutch.count("Section at a hinge, closed") == 1


def test_a_rounded_mortise_has_its_radius_as_arcs():
    """1-1/2 x 4-1/2 with corners of 5/8: centres 5/8 off the far side and each end."""
    shape = mortise(1.5, 4.5, 0.625)
    assert isinstance(shape, Region)
    arcs = [bound for bound in shape.bounds if isinstance(bound, Arc)]
    assert [(arc.centre, arc.radius) for arc in arcs] == [((0.875, 0.625), 0.625), ((0.875, 3.875), 0.625)]
    assert isinstance(mortise(1.5, 4.5, 0.0), Polygon)
    page = page_of(hinge={**PLAIN["hinge"], "corner": "5/8 radius"})
    assert said(page).count("R 5/8 in") == 2
    assert "R " not in said(page_of())


def test_screws_and_count_are_listed():
    page = page_of()
    assert said(page).count("4 #12-24 x 1/2 flat head") >= 2
    wood = page_of(door={**PLAIN["door"], "construction": "wood, solid core"})
    assert "4 #12 x 1-1/4" in said(wood)
    assert "4 #12-24 x 1/2 flat head" in said(wood)


def test_the_bevel_in_words():
    assert "Latch edge beveled 1/8 in 2: 7/64 in over the door's thickness, 3.6°." in said(page_of())
    square = page_of(door={**PLAIN["door"], "latch_bevel": 0})
    assert "The latch edge is square." in said(square)
    assert not named(square, "bevel")


def test_a_job_standard_hinge_is_what_is_cut_for():
    job = JobFacts.model_validate({"standard_hinge": {"height": 5, "weight": "heavy"}})
    page = page_of(job=job, hinge=None)
    assert named(page, "mortise height") == [5.0, 5.0]
    assert named(page, "door mortise depth") == pytest.approx([0.19])


def test_a_pair_closes_on_its_other_leaf():
    page = page_of(leaves="pair", size={"width": 72, "height": 84}, active_width=50, hinge=None)
    assert "Meeting edges" in [detail.name for detail in page.details]
    assert named(page, "meeting gap") == [0.125]
    assert "hinge of the inactive leaf." in " ".join(said(page).split())
    alike = page_of(leaves="pair", size={"width": 72, "height": 84})
    assert "active and inactive" in said(alike)


def test_hinges_not_chosen_here_are_not_prepared_for():
    page = page_of(hung_on="by others", hinge=None)
    assert page.details == ()
    assert "nothing is prepared" in said(page)


def test_a_fire_rated_door_defers_to_its_listing():
    assert "only as its listing allows" in said(page_of(use={"fire_rated": True}))
    assert "only as its listing allows" not in said(page_of())


def test_scales_asked_for_and_fitted():
    asked = page_of(LETTER, scale_named("3"))
    assert {detail.scale for detail in asked.details} == {scale_named("3")}
    fitted = page_of(TABLOID)
    assert fitted.details[0].scale.points >= fitted.details[-1].scale.points
    with pytest.raises(ValueError, match="full size does not fit on Letter paper"):
        page_of(LETTER, scale_named("full"))


@pytest.mark.parametrize(("one", "facts"), demo_openings())
def test_every_demo_opening_is_true_to_scale_and_no_texts_overlap(one, facts):
    answer = study(one, facts)
    for paper, display in (("Letter", INCHES), ("A3", Display(metric=True)), ("Tabloid", INCHES)):
        page = preparation_page(answer, facts, paper_named(paper), None, display)
        assert_true_to_scale(page)
        assert overlapping(page) == []
        assert outside(page) == []
        assert struck_through(page) == []


def test_the_hinge_that_carries_wires_is_spoken_of_where_there_is_one():
    wires = "carries wires needs its mortises cut"
    assert wires in said(page_of(hinge={**PLAIN["hinge"], "electric": 2}))
    assert wires not in said(page_of(hinge={**PLAIN["hinge"], "electric": 4}))  # the leaf has three
    assert wires not in said(page_of())
