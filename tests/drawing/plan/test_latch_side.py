import math

import pytest

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Dimension, Polygon, Text
from configurator.drawing.plan.inset import latch_side
from configurator.drawing.plan.sheet import moving_groups, plan_sheet
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.units import Display
from tests.drawing.cases import case_a, demo
from tests.drawing.plan.test_sheet import SIZE, items, text_boxes


def closest(study, place=0, size=SIZE):
    sheet = plan_sheet(study, Display(64), *size)
    hung = sheet.panels[place].hung
    groups = moving_groups(sheet, math.degrees(hung.latch.angle))
    found = [(one, view) for one, view in items(groups, Dimension) if one.name == "latch edge least"]
    return sheet, hung, found


def test_the_least_gap_of_the_latch_edge_by_hand():
    """Case A, 4 in, square: the stop-side corner passes the strike's arris by 0.056345."""
    sheet, _, [(told, view)] = closest(case_a())
    assert told.value == pytest.approx(0.056345, abs=1e-6)
    assert told.text == "3/64 in, the least at the latch edge"
    assert told.a == pytest.approx((36.0, 0.0))
    assert math.dist(told.line_a, told.line_b) == pytest.approx(told.value)
    assert view.window == sheet.panels[0].inset.view.window
    assert view.window.has(view.to_sheet(told.a))


def test_the_arrows_touch_the_leaf_as_it_is_drawn_there():
    sheet, hung, [(told, _)] = closest(demo("112A"))
    groups = moving_groups(sheet, math.degrees(hung.latch.angle))
    leaves = [one for one, _ in items(groups, Polygon) if one.fill == "door" and len(one.points) == 4]
    assert min(math.dist(told.b, nearest_on_outline(told.b, leaf.points)) for leaf in leaves) < 1e-9


def test_it_takes_the_small_picture_s_place_at_that_angle_alone():
    sheet = plan_sheet(case_a(), Display(), *SIZE)
    panel = sheet.panels[0]
    window, angle = panel.inset.view.window, panel.hung.latch.angle
    assert latch_side(panel.hung, angle, window, Display()) is not None
    for other in (0.0, angle - 1e-6, angle + 1e-6, math.pi):
        assert latch_side(panel.hung, other, window, Display()) is None


def test_a_leaf_that_binds_has_no_closest_passage():
    for panel in plan_sheet(demo("126C"), Display(), *SIZE).panels:
        assert panel.hung.latch is None


@pytest.mark.parametrize("hand", ["LH", "RH"])
@pytest.mark.parametrize("size", [SIZE, (525.0, 315.0)])
def test_its_words_fit_and_never_overlap(hand, size):
    _, _, [(told, view)] = closest(case_a(hand=hand), size=size)
    assert text_width(told.text, told.size) <= view.window.width
    sheet, hung, _ = closest(case_a(hand=hand), size=size)
    groups = moving_groups(sheet, math.degrees(hung.latch.angle))
    boxes = text_boxes([group for group in groups if group.view == view])
    assert len([text for text, _ in boxes if text]) >= 2
    for number, (text, box) in enumerate(boxes):
        assert view.window.holds(box), text
        assert not any(box.overlaps(other) for _, other in boxes[number + 1 :])


def test_the_small_picture_says_that_it_shows_the_latch_side():
    sheet, hung, _ = closest(case_a())
    texts = [one.text for one, _ in items(moving_groups(sheet, math.degrees(hung.latch.angle)), Text)]
    assert "latch side, enlarged" in texts
