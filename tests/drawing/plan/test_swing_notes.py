import math

import pytest

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Dimension, Polyline, Symbol, Text, turned
from configurator.drawing.plan.sheet import moving_note_groups, plan_sheet
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.study.events import moments
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study
from tests.drawing.plan.test_sheet import SIZE, items, text_boxes

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
BOX = {"kind": "other", "projection": 2.5, "from_latch_edge": 2.75, "width": 4, "height": 38, "vertical": 2}


def clearances(sheet, angle):
    found = items(moving_note_groups(sheet, angle), Dimension)
    return [one for one, _ in found if one.name.startswith("clearance")]


def test_at_the_least_gap_of_the_swing_it_is_the_one_dimensioned():
    """Case B with the box: 4-1/2 in is stopped at 175.624, the leaf not yet at its 1/8 off the rail."""
    study = case_a(obstructions=[RAIL], hardware=[BOX], compare=[4.5])
    sheet = plan_sheet(study, Display(), *SIZE)
    least = sheet.panels[0].hung.least
    (told,) = clearances(sheet, math.degrees(least.angle))
    assert told.value == least.distance
    assert (told.a, told.b) == (least.point_standing, least.point_moving)
    assert told.b == told.line_b  # the arrow touches what is measured


def test_a_wall_that_stands_proud_of_the_frame_counts():
    """A frame set back in a thick wall: the lever stops a leaf on 4 in 1/16 short of the wall's corner."""
    study = demo("122A")
    sheet = plan_sheet(study, Display(), *SIZE)
    told = clearances(sheet, 180)
    assert [one.text for one in told] == ["1/32 in to the wall", "1/2 in to the wall"]
    corner = (-study.candidates[0].solution.hanging.F, -study.candidates[0].solution.hanging.p)
    assert told[0].a == pytest.approx(corner)


def test_what_is_swept_has_its_least_gap_told_before_the_leaf_is_there():
    """Case B: 1/8 between the rail and what the leaf sweeps, also with the leaf at 150 and at 165."""
    sheet = plan_sheet(case_a(obstructions=[RAIL], compare=[4.5]), Display(), *SIZE, swept=True)
    for angle in (150, 165):
        (told,) = clearances(sheet, angle)
        assert told.value == pytest.approx(0.125, abs=1e-12)
        assert told.text.startswith("1/8 in to the chair rail at 180°")
        assert math.dist(told.line_a, told.line_b) == pytest.approx(0.125)
    plain = plan_sheet(case_a(obstructions=[RAIL], compare=[4.5]), Display(), *SIZE)
    assert [0.2 < one.value < 0.6 for one in clearances(plain, 178)] == [True]


@pytest.mark.parametrize("seed", range(10))
def test_every_clearance_touches_the_leaf_or_what_it_sweeps(seed):
    for swept in (False, True):
        sheet = plan_sheet(random_study(seed), Display(), *SIZE, swept=swept)
        for panel in sheet.panels:
            angle = math.degrees(panel.hung.reach) - 3
            groups = [group for group in moving_note_groups(sheet, angle) if group.view is panel.main.view]
            for told, _ in items(groups, Dimension):
                if not told.name.startswith("clearance"):
                    continue
                at = panel.hung.least.angle if " at " in told.text else math.radians(angle)
                leaf = turned(leaf_corners(panel.hung.h), panel.hung.pin.at, at)
                assert math.dist(told.b, nearest_on_outline(told.b, leaf)) < 1e-6
                assert math.dist(told.a, told.b) == pytest.approx(told.value, abs=1e-9)


@pytest.mark.parametrize("seed", range(12))
def test_no_two_texts_overlap_with_what_is_swept_on_show(seed):
    sheet = plan_sheet(random_study(seed), Display(), *SIZE, swept=True)
    for angle in (20, 90, 150, 180):
        boxes = text_boxes((*sheet.still, *sheet.notes, *moving_note_groups(sheet, angle)))
        for number, (text, box) in enumerate(boxes):
            assert not [other for other, taken in boxes[number + 1 :] if box.overlaps(taken)], text


def test_the_leaf_alone_is_drawn_on_where_it_would_be_stopped_and_only_there():
    study = demo("151A")
    sheet = plan_sheet(study, Display(), *SIZE)
    bare = moments(study)[-1].angle

    def ghosts(angle):
        groups = moving_note_groups(sheet, angle)
        outlines = [one for one, _ in items(groups, Polyline) if one.layer == "A-DOOR-CLSD"]
        rings = [one.at for one, _ in items(groups, Symbol) if one.name == "contact of the leaf alone"]
        return outlines, rings

    (outline,), (ring,) = ghosts(bare)
    assert ring == study.candidates[1].stopped_by_bare.point
    assert math.dist(ring, nearest_on_outline(ring, outline.points)) < 1e-6
    assert ghosts(bare - 1) == ghosts(180) == ([], [])


@pytest.mark.parametrize("size", [(525.0, 150.0), (525.0, 180.0), (622.0, 200.0)])
def test_in_a_short_picture_the_room_left_is_told_at_least_as_a_number(size):
    assert clearances(plan_sheet(demo("112A"), Display(), *size), 180)


def test_what_is_left_farther_on_is_left_to_the_same_thing():
    """A pair's inactive leaf on 4 in rests on its bumper near the wall. Without it the nearest thing at 180
    would be the return wall beyond the other leaf, more than 6 ft away, which is no figure of that wall."""
    pair = case_a(
        leaves="pair",
        size={"width": 72, "height": 84},
        door={"construction": "hollow metal, 18 gage", "thickness": 1.375},
        frame={"kind": "aluminum storefront"},
        wall={},
        obstructions=[{"kind": "return wall", "start": 6}],
        door_stop={"kind": "wall bumper", "projection": 3},
    )
    told = clearances(plan_sheet(pair, Display(metric=True), 1400, 900), 180)
    assert any("to the wall" in one.text for one in told)
    assert [one.text for one in told if " mm at " in one.text] == []


def test_what_is_only_known_as_other_is_called_an_obstruction():
    thing = {"kind": "other", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
    sheet = plan_sheet(case_a(obstructions=[thing]), Display(), *SIZE)
    narrow, wide = (one.hung for one in sheet.panels)
    assert narrow.stopped_by == "leaf on the obstruction"
    assert [one.text for one in clearances(sheet, 180)] == ["1/8 in to the obstruction"]
    assert wide.standing[0].label == "obstruction, 32 to 42 in above floor"


def test_a_column_is_named_inside_it_and_no_leader_of_its_name_runs_through_a_dimension():
    """A column of 8 in 6 off the wall stands over the stack of dimensions; its name has room within."""
    column = {"kind": "column", "start": 0.5, "diameter": 8, "offset": 6}
    sheet = plan_sheet(case_a(obstructions=[column], compare=[4]), Display(), 500, 700)
    panel = sheet.panels[0]
    view, shape = panel.main.view, panel.hung.standing[0].shapes[0]
    (name,) = [one for one in panel.main.notes if isinstance(one, Text) and one.text == "column"]
    middle, radius = view.to_sheet(shape.points[0]), shape.radius * view.scale
    box = text_box(view.to_sheet(name.at), name.text, name.size)
    corners = [(x, y) for x in (box.left, box.right) for y in (box.bottom, box.top)]
    assert all(math.dist(corner, middle) < radius for corner in corners)
    assert not [one for one in panel.main.notes if isinstance(one, Polyline) and one.layer == "A-ANNO-LEAD"]
