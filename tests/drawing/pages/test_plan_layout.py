import pytest

from configurator.drawing.base.primitives import Dimension
from configurator.drawing.pages.frame import drawing_box
from configurator.drawing.pages.page import papers, scale_named, scales
from configurator.drawing.pages.plan_layout import arrangements, fewer_and_fewer, layout_at, plan_layout
from configurator.drawing.pages.plan_page import plan_page
from configurator.drawing.plan.drawn_leaf import drawn_leaves
from configurator.drawing.plan.panel import closest_scale, view_scale
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study

LETTER = papers()["Letter"]
ROOM = drawing_box(LETTER)


def plans_fit(hungs, cells):
    return min(view_scale(h, c.plan.width, c.plan.height) for h, c in zip(hungs, cells, strict=True))


def shares_of(layout):
    """The ways to share the room that a layout may have come from: plans gain height in it, no width."""
    across = [(cell.plan.left, cell.plan.right, cell.plan.top) for cell in layout.cells]
    for cells in arrangements(len(layout.cells), ROOM):
        if [(cell.plan.left, cell.plan.right, cell.plan.top) for cell in cells] == across:
            yield cells


def test_the_scale_is_the_largest_listed_at_which_every_plan_fits():
    for seed in range(12):
        hungs = drawn_leaves(random_study(seed), Display())
        layout = plan_layout(hungs, ROOM, metric=False, crowded=True)
        assert layout.scale.points <= plans_fit(hungs, layout.cells) + 1e-9
        fits = [plans_fit(hungs, cells) for cells in shares_of(layout)]
        assert layout.scale in [next(one for one in scales(False) if one.points <= most) for most in fits]


def test_a_larger_paper_never_draws_smaller():
    names = ("Letter", "Tabloid", "Arch C")
    for mark in ("112A", "171A", "205A"):
        hungs = drawn_leaves(demo(mark), Display())
        drawn = [plan_layout(hungs, drawing_box(papers()[name]), False).scale.points for name in names]
        assert drawn == sorted(drawn)


def test_a_scale_that_is_asked_for_holds_frame_and_hinge_or_is_refused():
    hungs = drawn_leaves(demo("112A"), Display())
    layout = layout_at(hungs, ROOM, scale_named("3"), LETTER, False)
    assert layout.scale == scale_named("3")
    for hung, cell in zip(hungs, layout.cells, strict=True):
        assert scale_named("3").points <= closest_scale(hung, cell.plan.width, cell.plan.height) + 1e-9
    with pytest.raises(ValueError, match=r"full size does not fit on Letter paper; .* does"):
        layout_at(hungs, ROOM, scale_named("full"), LETTER, False)


def test_too_many_to_be_read_have_no_layout_unless_crowded():
    hungs = drawn_leaves(case_a(compare=[4, 4.5, 5, 6, 7, 8, 9, 10]), Display())
    assert plan_layout(hungs, ROOM, False) is None
    assert len(plan_layout(hungs, ROOM, False, crowded=True).cells) == 8


def test_fewer_keep_each_leafs_recommended_width_to_the_end():
    study = case_a(compare=[4.5, 5, 4, 6])
    ways = list(fewer_and_fewer(study))
    wanted = study.recommended["width"]
    place = next(n for n, one in enumerate(study.candidates) if one.hinge_width == wanted)
    assert ways[0] == (0, 1, 2, 3)
    assert ways[-1] == (place,)
    assert all(place in way for way in ways)
    assert [len(way) for way in ways] == [4, 3, 2, 1]


def test_fewer_of_a_pair_are_as_many_of_each_leaf():
    study = case_a(leaves="pair", size={"width": 72, "height": 84}, compare=[4, 4.5])
    ways = list(fewer_and_fewer(study))
    assert [len(way) for way in ways] == [4, 2]
    assert {study.candidates[place].leaf for place in ways[-1]} == {"active", "inactive"}


def test_whole_openings_that_no_scale_fits_make_way_for_fewer_at_a_scale_asked_for_too():
    """Three widths of a leaf of 12 ft: beside one another on letter paper their swings would be cut off."""
    wide = case_a(size={"width": 144, "height": 84}, compare=[4, 4.5, 5])
    hungs, half = drawn_leaves(wide, Display()), scale_named("1/2")
    with pytest.raises(ValueError, match="so many whole openings"):
        layout_at(hungs, ROOM, half, LETTER, False)
    assert len(layout_at(hungs, ROOM, half, LETTER, False, crowded=True).cells) == 3
    page = plan_page(wide, JobFacts(), LETTER, half, Display())
    assert page.details
    for detail in page.details:
        for item in detail.primitives:
            if isinstance(item, Dimension):
                ends = [detail.view.to_sheet(point) for point in (item.a, item.b)]
                assert all(detail.view.window.has(end) for end in ends), item.text
