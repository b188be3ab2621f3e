import math

import pytest

from configurator.drawing.base.primitives import Arc, Polyline
from configurator.drawing.base.style import layers
from configurator.drawing.plan.drawn_leaf import drawn_leaves
from configurator.drawing.plan.leaf import TOUCHING, TOUCHING_SMALL, touching_marks
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study

RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
KNOB = {
    "kind": "other", "projection": 2.5, "from_latch_edge": 2.75, "width": 2, "height": 38, "vertical": 2,
    "outline": "round",
}  # fmt: skip


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
