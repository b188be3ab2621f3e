import math

import pytest
import shapely

from configurator.drawing.base.primitives import Arc, Polygon, Symbol
from configurator.drawing.client.before_after_page import ONE_WIDTH, before_after_page
from configurator.drawing.pages.page import paper_named, scale_named
from configurator.model import JobFacts
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study
from tests.drawing.pages.on_page import assert_true_to_scale, named, outside, overlapping, texts

LETTER = paper_named("Letter")
JOB = JobFacts(name="Kestrel Point Ferry Terminal", date="2026-03-02")


def page_of(study, paper=LETTER, scale=None, display=None):
    return before_after_page(study, JOB, paper, scale, display or Display())


def said(page) -> str:
    return "\n".join(text for text, _ in texts(page))


def hatched(page, kind):
    return [one for one in page.details[0].primitives if isinstance(one, Polygon) and one.fill == kind]


def test_both_pin_axes_and_barrels_are_dimensioned_from_the_frame_face():
    """W/2 - (T - b) less the inset: 1/2 and 3/4 less 1/8; half of a barrel 0.58 in diameter beyond them."""
    page = page_of(demo("112A"))
    assert named(page, "pin axis off frame face") == pytest.approx([0.375, 0.625])
    assert named(page, "barrel past frame face") == pytest.approx([0.665, 0.915])


def test_the_room_behind_the_door_is_dimensioned_where_it_opens_flat():
    page = page_of(case_a())
    assert named(page, "clear past frame face at 180") == pytest.approx([0.875, 1.375])
    assert not named(page_of(demo("112A")), "clear past frame face at 180")


def test_the_difference_of_two_flat_leaves_is_two_strips_as_thick_as_they_are_apart():
    """The leaves lie 1/2 in apart and reach 1/8 in farther or less far past the pin: no other difference."""
    page = page_of(case_a(door={"thickness": 1.75, "latch_bevel": 0, "construction": "wood, solid core"}))
    for kind, low in (("narrower", 0.875), ("wider", 2.625)):
        strip = max(hatched(page, kind), key=lambda one: shapely.Polygon(one.points).area)
        ys = [y for _, y in strip.points]
        assert (min(ys), max(ys)) == pytest.approx((low, low + 0.5))


def test_the_contact_of_the_narrower_hinge_is_ringed_and_said():
    page = page_of(demo("112A"))
    rings = [one for one in page.details[0].primitives if isinstance(one, Symbol) and one.kind == "contact"]
    assert [one.name for one in rings] == ["contact on the narrower hinge"]
    assert "stops at 171.7°: leaf on the chair rail" in said(page)


def test_what_stops_the_door_is_drawn_and_ringed_where_the_large_picture_does_not_reach():
    """The lever meets the wall far from the hinge: only the small picture shows it."""
    small = page_of(demo("112A")).details[1]
    rings = {one.name: one.at for one in small.primitives if isinstance(one, Symbol)}
    assert set(rings) == {"contact on the narrower hinge", "contact on the wider hinge"}
    assert rings["contact on the wider hinge"][0] < -20
    lever = [one for one in small.primitives if getattr(one, "layer", "") == "A-DOOR-HDWR"]
    assert len(lever) == 1


def test_both_barrels_are_drawn_where_their_pins_are():
    centres = {
        one.name: one.centre[1] for one in page_of(demo("112A")).details[0].primitives if isinstance(one, Arc)
    }
    assert centres["barrel of the wider hinge"] - centres["barrel of the narrower hinge"] == pytest.approx(
        0.25
    )


def test_what_changes_is_said_in_words():
    words = said(page_of(demo("112A")))
    assert "What the wider hinge changes, 4 to 4-1/2" in words
    assert "greatest angle, bare: 8.2° farther" in words
    assert "barrel past frame face: 1/4 in farther out" in words


def test_cautions_and_what_is_assumed_stand_on_it():
    words = said(page_of(demo("112A")))
    assert {"Cautions", "Assumed, not given", "Before use"} <= set(words.split("\n"))


def test_a_single_width_is_drawn_alone_and_said_to_be():
    page = page_of(case_a(compare=[4]))
    assert ONE_WIDTH in said(page).replace("\n", " ")
    assert not hatched(page, "narrower") + hatched(page, "wider")


def test_dimensions_keep_to_the_free_side_of_a_leaf_that_stands_square():
    """Over the wall where nothing stands there; a return wall sends them into the opening."""
    square = {"use": {"wanted_angle": 90}}
    for study, over_wall in ((case_a(**square), True), (demo("171A"), False)):
        detail = page_of(study).details[0]
        line = next(one.line_a[0] for one in detail.primitives if hasattr(one, "line_a"))
        assert (line < 0) == over_wall


def test_a_scale_that_is_asked_for_is_taken_or_refused_by_name():
    assert page_of(demo("112A"), scale=scale_named("1-1/2")).details[0].scale.name == "1-1/2 in = 1'-0\""
    with pytest.raises(ValueError, match=r"does not fit on Letter paper; .* does"):
        page_of(demo("112A"), scale=scale_named("full"))


@pytest.mark.parametrize("seed", range(24))
def test_texts_keep_apart_and_everything_is_to_scale(seed):
    paper = paper_named(("Letter", "A4", "Tabloid")[seed % 3])
    display = Display(metric=True) if seed % 4 == 3 else Display()
    page = page_of(random_study(seed), paper, display=display)
    assert overlapping(page) == []
    assert outside(page) == []
    assert_true_to_scale(page)
    for detail in page.details:
        assert detail.view.scale == pytest.approx(detail.scale.points)
        assert math.isfinite(detail.view.origin[0])
