"""A door stop in the picture: where it stands, that the leaf is drawn resting on it, and its dimension."""

import math

import pytest

from configurator.drawing.base.primitives import Arc, Dimension, Text, turned
from configurator.drawing.plan.sheet import moving_note_groups, plan_sheet
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.meeting_point import nearest_on_outline
from configurator.study import study
from configurator.units import Display
from tests.openings import LEVER, plain_opening

NEAR = {"kind": "floor stop", "projection": 6, "from_frame": 6}
BUMPER = {"kind": "wall bumper", "projection": 1}


def sheet(**changes):
    return plan_sheet(study(plain_opening(compare=[4], **changes)), Display(64), 900, 600)


def drawn(one, kind):
    return [part for group in (*one.still, *one.notes) for part in group.primitives if isinstance(part, kind)]


def subtitle(one, angle):
    groups = moving_note_groups(one, angle)
    return [part.text for part in groups[-1].primitives if isinstance(part, Text)]


def test_a_floor_stop_touches_the_leaf_that_rests_on_it():
    one = sheet(door_stop=NEAR)
    hung = one.panels[0].hung
    post = next(arc for arc in drawn(one, Arc) if arc.name == "floor stop")
    leaf = turned(leaf_corners(hung.h), hung.pin.at, hung.reach)
    near = nearest_on_outline(post.centre, leaf)
    assert math.dist(post.centre, near) == pytest.approx(post.radius, abs=1e-9)
    assert near == pytest.approx((-2 - 6, 6 - 0.5), abs=1e-9)


def test_the_dimension_runs_from_the_frames_outer_edge():
    found = [
        one for one in drawn(sheet(door_stop=NEAR), Dimension) if one.name == "floor stop from the frame"
    ]
    assert len(found) == 2  # the large picture and the small one
    for one in found:
        assert (one.a[0], one.b[0], one.value, one.text) == (-2, -8, 6, "6 in")


def test_far_out_only_the_small_picture_has_it():
    found = [
        one
        for one in drawn(sheet(door_stop={**BUMPER, "from_frame": 30}, hardware=[LEVER]), Dimension)
        if one.name == "wall bumper from the frame"
    ]
    assert [one.text for one in found] == ["30 in"]


def test_the_leaf_is_drawn_no_farther_than_its_stop():
    one = sheet(door_stop=NEAR)
    hung = one.panels[0].hung
    assert math.degrees(hung.reach) == pytest.approx(
        study(plain_opening(compare=[4], door_stop=NEAR)).candidates[0].rests_at
    )
    assert subtitle(one, 180) == ["rests at 150.5°: leaf on the floor stop"]


def test_one_that_is_never_met_is_drawn_and_ends_no_swing():
    one = sheet(door_stop={**NEAR, "from_frame": 40})
    assert [arc.name for arc in drawn(one, Arc)].count("floor stop") >= 2
    assert one.panels[0].hung.reach == math.pi


def test_without_a_stop_there_is_none():
    assert not [arc for arc in drawn(sheet(), Arc) if "stop" in arc.name]
