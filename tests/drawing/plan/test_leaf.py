import math

import pytest
from shapely.geometry import Point
from shapely.geometry import Polygon as Area

from configurator.drawing.base.primitives import Arc, Polygon, Polyline, rectangle, turned
from configurator.drawing.base.style import layers
from configurator.drawing.plan.drawn_leaf import drawn_leaves
from configurator.drawing.plan.leaf import (
    TOUCHING,
    TOUCHING_SMALL,
    door_leaf_outline,
    frame_leaf_outline,
    open_leaf,
    touching_marks,
)
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.drawing.plan.standing_things import merged, standing_things
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.geometry.shapes import Shape
from configurator.model.paths import vocabulary
from configurator.study import study
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study
from tests.openings import plain_opening

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
KNOB = {
    "kind": "other", "projection": 2.5, "from_latch_edge": 2.75, "width": 2, "height": 38, "vertical": 2,
    "outline": "round",
}  # fmt: skip


def hung_with(**changes):
    return plan_sheet(case_a(**changes), Display(), 864, 540).panels[0].hung


@pytest.mark.parametrize("construction", vocabulary()["door.construction"])
def test_every_construction_is_drawn_within_the_leaf(construction):
    hung = hung_with(door={"construction": construction, "thickness": 1.75})
    whole = Area(leaf_corners(hung.h)).buffer(1e-9)
    parts = [part for part in open_leaf(hung, 0.0) if isinstance(part, Polygon)]
    assert len(parts) >= 2
    assert all(whole.covers(Area(part.points)) for part in parts)


def test_skins_are_as_thick_as_their_gage():
    hung = hung_with(door={"construction": "hollow metal, 14 gage", "thickness": 1.75})
    core = [part for part in open_leaf(hung, 0.0) if isinstance(part, Polygon)][1]
    assert max(y for _, y in core.points) == pytest.approx(-hung.h.i - 0.0747)


def test_no_skin_is_thinner_than_can_be_seen():
    core = [part for part in open_leaf(hung_with(), 0.0, 0.1) if isinstance(part, Polygon)][1]
    assert max(y for _, y in core.points) == pytest.approx(-0.125 - 0.1)


def test_turning_is_exact_at_quarter_turns_and_keeps_lengths():
    assert turned(((1, 0),), (0, 0), math.pi / 2) == ((0, 1),)
    assert turned(((1, 0),), (0, 0), math.pi) == ((-1, 0),)
    ((x, y),) = turned(((3, 4),), (1, 1), 0.4)
    assert math.hypot(x - 1, y - 1) == pytest.approx(math.hypot(2, 3))


def test_the_hinge_leaves_are_half_the_open_width_and_flush():
    hung = hung_with()
    h, pin = hung.h, hung.pin
    for outline in (frame_leaf_outline(hung), door_leaf_outline(hung)):
        xs, ys = zip(*outline, strict=True)
        assert max(ys) == pin.y_p
        assert max(ys) - min(ys) == pytest.approx(h.W / 2)
        assert max(xs) - min(xs) == pytest.approx(h.t)
    assert max(x for x, _ in frame_leaf_outline(hung)) == 0
    assert min(x for x, _ in door_leaf_outline(hung)) == h.g_h
    # The door leaf ends at the backset, 1/4 off the stop-side face.
    assert min(y for _, y in door_leaf_outline(hung)) == pytest.approx(-h.i - h.T + 0.25)


@pytest.mark.parametrize("mounting", ["full mortise", "half mortise", "half surface", "full surface"])
def test_the_leaves_of_every_straight_mounting_are_half_the_open_width(mounting):
    hung = hung_with(hinge={"mounting": mounting})
    assert Area(frame_leaf_outline(hung)).area == pytest.approx(hung.h.W / 2 * hung.h.t)
    assert Area(door_leaf_outline(hung)).area == pytest.approx(hung.h.W / 2 * hung.h.t)


def test_the_bent_leaves_of_a_swing_clear_hinge_reach_their_barrel():
    hung = hung_with(hinge={"mounting": "swing clear"})
    barrel = Point(hung.pin.at).buffer(hung.h.d_b / 2 + 1e-3)
    for outline in (frame_leaf_outline(hung), door_leaf_outline(hung)):
        assert Area(outline).is_valid
        assert Area(outline).intersects(barrel)
    assert max(x for x, _ in frame_leaf_outline(hung)) == 0
    assert not Area(frame_leaf_outline(hung)).intersects(Area(door_leaf_outline(hung)))


def test_a_casing_over_the_frames_face_is_one_outline_of_the_same_area():
    hung = plan_sheet(demo("205A"), Display(), 864, 540).panels[0].hung
    thing = hung.standing[0]
    assert len(thing.shapes) == 2
    (one,) = merged(thing.shapes)
    assert Area(one.points).area == pytest.approx(sum(Area(shape.points).area for shape in thing.shapes))


def test_pieces_that_do_not_meet_stay_apart():
    apart = (Shape(rectangle(0, 1, 0, 1)), Shape(rectangle(2, 3, 0, 1)))
    assert merged(apart) == apart
    assert merged(apart[:1]) == apart[:1]


def test_a_thing_the_leaf_passes_under_is_thin_and_broken():
    soffit = {"kind": "other", "projection": 6, "bottom": 90, "top": 96}
    (part,) = standing_things(hung_with(obstructions=[soffit]))
    assert (part.layer, part.fill) == ("A-DETL-MBND", None)
    low = {"kind": "other", "projection": 6, "bottom": 80, "top": 96}
    (part,) = standing_things(hung_with(obstructions=[low]))
    assert (part.layer, part.fill) == ("A-DETL-MCUT", "solid")


def test_a_door_nobody_described_is_not_drawn_as_wood():
    from configurator.drawing.plan.drawn_leaf import drawn_leaves
    from configurator.study import study
    from tests.openings import plain_opening

    answer = study(plain_opening())
    pieces = open_leaf(next(iter(drawn_leaves(answer, Display()))), 0.0)
    assert {one.fill for one in pieces if isinstance(one, Polygon)} == {"core"}


def hungs(study):
    return drawn_leaves(study, Display())


def test_leaf_and_rail_are_marked_whole():
    """Case B: 4 in is stopped by the rail, whose corner stands 2-1/2 from the rabbet face."""
    narrow, wide = hungs(case_a(obstructions=[RAIL]))
    leaf, rail = touching_marks(narrow)
    assert leaf.closed
    assert len(leaf.points) == 4
    assert (-2.5, 1.25) in rail.points
    assert touching_marks(wide) == []  # it reaches 180


def test_of_a_wall_only_the_edge_at_the_contact_is_marked():
    hung = hungs(case_a(hardware=[KNOB | {"outline": None}], compare=[4]))[0]
    box, wall = touching_marks(hung)
    assert box.closed
    assert len(wall.points) == 2
    assert {y for _, y in wall.points} == {-0.5}


def test_a_round_part_is_marked_by_a_circle():
    hung = hungs(case_a(hardware=[KNOB], compare=[4]))[0]
    (knob, _) = touching_marks(hung)
    assert isinstance(knob, Arc)
    assert knob.radius == 1.0
    assert knob.end - knob.start == 2 * math.pi


@pytest.mark.parametrize("seed", range(12))
def test_both_marks_run_through_the_contact(seed):
    for hung in hungs(random_study(seed)):
        marks = touching_marks(hung)
        assert bool(marks) == (hung.contact is not None)
        on_it = 0
        for mark in marks:
            if isinstance(mark, Arc):
                assert math.dist(mark.centre, hung.contact) == pytest.approx(mark.radius, abs=1e-6)
                on_it += 1
            elif math.dist(hung.contact, nearest_on_outline(hung.contact, mark.points)) < 1e-6:
                on_it += 1
        assert on_it == len(marks)


def test_they_are_drawn_in_both_pictures_and_only_where_the_leaf_is_stopped():
    sheet = plan_sheet(demo("112A"), Display(), 864.0, 540.0)

    def marked(angle):
        groups = (*moving_groups(sheet, angle), *moving_note_groups(sheet, angle))
        found = [one.layer for group in groups for one in group.primitives if isinstance(one, Polyline)]
        return found.count(TOUCHING), found.count(TOUCHING_SMALL)

    assert marked(171) == (0, 0)
    assert marked(172) == (2, 2)


def test_the_marks_are_told_by_more_than_their_colour():
    assert layers()[TOUCHING].dash
    assert layers()[TOUCHING_SMALL].dash
    assert layers()[TOUCHING].width > layers()["A-DOOR"].width


def test_a_leaf_held_at_an_angle_is_drawn_no_farther_and_not_in_red():
    column = {"kind": "column", "start": 20, "diameter": 12, "offset": 6}
    answer = study(plain_opening(obstructions=[column], use={"stop_angle": 105}))
    hung = next(iter(drawn_leaves(answer, Display())))
    assert math.degrees(hung.reach) == pytest.approx(105)
    assert (hung.held, hung.contact, hung.touching) == (True, None, None)
    assert hung.stopped_by == "held by its door stop"
