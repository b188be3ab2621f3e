import math

import pytest

from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.on_sheet import RING
from configurator.drawing.base.primitives import Arc, Dimension, Polygon, Polyline, Symbol, Text
from configurator.drawing.plan.inset import latch_side
from configurator.drawing.plan.panel import moving_inset
from configurator.drawing.plan.sheet import moving_groups, plan_sheet
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.study import study
from configurator.units import Display
from tests.drawing.cases import case_a, demo
from tests.drawing.plan.test_sheet import SIZE, items, text_boxes
from tests.openings import LEVER, plain_opening

WIDE, SHORT = (864.0, 540.0), (622.0, 292.0)


def panels(mark, size=WIDE):
    return plan_sheet(demo(mark), Display(), *size).panels


def moved(panel, kind, angle=math.pi):
    return [one for one in moving_inset(panel, angle) if isinstance(one, kind)]


@pytest.mark.parametrize("size", [WIDE, SHORT])
@pytest.mark.parametrize("mark", ["171A", "112A", "126C", "205A"])
def test_every_word_of_the_small_picture_lies_in_it(mark, size):
    for panel in panels(mark, size):
        view = panel.inset.view
        parts = [*panel.inset.still, *moving_inset(panel, math.pi)]
        boxes = [
            text_box(view.to_sheet(t.at), t.text, t.size, t.anchor) for t in parts if isinstance(t, Text)
        ]
        boxes += [
            text_box(view.to_sheet(d.text_at), d.text, d.size, "middle")
            for d in parts
            if isinstance(d, Dimension)
        ]
        assert boxes
        assert all(view.window.holds(box) for box in boxes)


def test_the_hand_stands_on_paper_not_on_the_return_wall():
    for panel in panels("171A"):
        *_, strip, hand = panel.inset.still
        assert isinstance(strip, Polygon)
        assert strip.fill == "paper"
        assert hand.text == "RH, outside below"
        low = min(panel.inset.view.to_sheet(point)[1] for point in strip.points)
        assert low <= panel.inset.view.to_sheet(hand.at)[1]


@pytest.mark.parametrize("mark", ["160A", "118A"])
def test_the_strip_cuts_nothing_off_the_swing(mark):
    for panel in panels(mark, SHORT):
        view = panel.inset.view
        (arc,) = [one for one in panel.inset.still if isinstance(one, Arc) and one.fill is None]
        strip = panel.inset.still[-2]
        top = view.to_sheet((arc.centre[0], arc.centre[1] + arc.radius))[1]
        assert min(view.to_sheet(point)[1] for point in strip.points) >= top + 1.0


def test_three_panels_in_a_narrow_window_keep_their_small_pictures_and_mark_the_contact():
    for panel in panels("171A", SHORT):
        (ring,) = moved(panel, Symbol)
        assert ring.at == panel.hung.contact
        assert panel.inset.view.window.has(panel.inset.view.to_sheet(ring.at))


def test_a_leaf_stopped_on_the_latch_side_has_that_side_enlarged():
    for panel in panels("126C"):
        assert panel.told.latch_side
        assert panel.inset.view.scale > 5 * panel.hung.h.T
        (ring,) = moved(panel, Symbol)
        assert ring.kind == "contact"
        assert [one.text for one in moved(panel, Text)] == ["lock edge on the latch jamb"]
        assert not moved(panel, Text, angle=0.0)


def test_a_narrow_small_picture_says_it_shorter():
    for panel in panels("126C", SHORT):
        assert panel.told.contact == "lock edge on jamb"


def test_a_contact_the_large_picture_shows_is_not_told_twice():
    first, second = panels("112A")
    assert first.told.contact == ""
    assert [one.kind for one in moved(first, Symbol)] == ["graze"]
    assert second.told.contact == "lever on the wall"
    assert text_width(second.told.contact, 6.5) < second.inset.view.window.width


def test_a_door_that_opens_freely_tells_no_contact():
    for panel in plan_sheet(case_a(), Display(), *WIDE).panels:
        assert moved(panel, Symbol) == moved(panel, Text) == []


@pytest.mark.parametrize("active_width", [36, 30])
def test_both_leaves_square_open_are_measured_from_face_to_face(active_width):
    given = plain_opening(
        leaves="pair", size={"width": 60, "height": 84}, active_width=active_width, compare=[4]
    )
    panels = plan_sheet(study(given), Display(64), 1200, 600).panels
    (one,) = [panel.inset for panel in panels if panel.hung.open_other is not None]
    (measured,) = [part for part in one.still if isinstance(part, Dimension)]
    # Each leaf takes 1/16 + 1/2 + 1-3/4 from the opening.
    assert (measured.a[0], measured.b[0]) == pytest.approx((2.3125, 60 - 2.3125), abs=1e-9)
    assert measured.value == pytest.approx(measured.b[0] - measured.a[0], abs=1e-9)
    assert "face of the other leaf" in measured.explained
    other = [part for part in one.still if isinstance(part, Polyline) and part.closed][-1]
    xs, ys = zip(*other.points, strict=True)
    assert (min(xs), max(ys) - min(ys)) == pytest.approx((60 - 2.3125, active_width), abs=1e-9)
    assert one.view.window.has(one.view.to_sheet((max(xs), max(ys))))


def test_a_ring_as_high_as_the_swing_keeps_off_the_words_of_its_contact():
    """A lever meets a return wall with the door nearly square: at the very top of the small picture."""
    lever = LEVER | {"from_latch_edge": 2}
    wall = {"kind": "return wall", "start": 2}
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}, "hardware": [lever]}
    sheet = plan_sheet(study(plain_opening(**pair, obstructions=[wall], compare=[4])), Display(), *WIDE)
    panel = sheet.panels[0]
    (words,) = moved(panel, Text)
    (ring,) = moved(panel, Symbol)
    view = panel.inset.view
    assert words.text == "lever on the return wall"
    assert (
        text_box(view.to_sheet(words.at), words.text, words.size).bottom >= view.to_sheet(ring.at)[1] + RING
    )


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
