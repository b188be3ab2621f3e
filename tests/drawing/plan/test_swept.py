import math
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point as Dot
from shapely.geometry import Polygon as Area

from configurator.drawing.base.on_sheet import around
from configurator.drawing.base.primitives import Arc, Polyline, Region
from configurator.drawing.base.view import Box, View
from configurator.drawing.plan.drawn_leaf import drawn_leaves
from configurator.drawing.plan.sheet import plan_sheet
from configurator.drawing.plan.swept import swept_outline, swept_regions
from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.shapes import Shape, rectangle
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study
from tests.sweeps import examples

THOUSANDTHS = View(1000.0, (0.0, 0.0), False, Box(-1e9, -1e9, 1e9, 1e9))


def area_of(bounds):
    region = Region("A-DOOR-SWPT", bounds)
    outline = [(round(x, 3), round(y, 3)) for x, y in around(region, THOUSANDTHS)]
    area = Area([point for before, point in pairwise([outline[-1], *outline]) if before != point])
    assert area.is_valid  # it runs around once and never crosses itself
    return area


def is_swept(shape, pin, theta, points):
    """Whether each point, turned back by any of many angles up to theta, lies in the closed part."""
    back = -np.linspace(0.0, theta, 4001)[:, None]
    x, y = points[:, 0] - pin[0], points[:, 1] - pin[1]
    x, y = (
        pin[0] + x * np.cos(back) - y * np.sin(back),
        pin[1] + x * np.sin(back) + y * np.cos(back),
    )
    if shape.radius:
        inside = np.hypot(x - shape.points[0][0], y - shape.points[0][1]) <= shape.radius
    else:
        corners = [*shape.points, shape.points[0]]
        inside = np.all(
            [(c - a) * (y - b) - (d - b) * (x - a) >= 0 for (a, b), (c, d) in pairwise(corners)], axis=0
        )
    return inside.any(axis=0)


def assert_same(shape, pin, theta):
    """Random places about the outline, but for those too near to it to tell, are in it just when swept."""
    said = area_of(swept_outline(shape, pin, theta, "A-DOOR-SWPT"))
    left, low, right, high = (edge / 1000 for edge in said.bounds)
    dice = np.random.default_rng(5)
    points = dice.uniform((left - 1, low - 1), (right + 1, high + 1), (600, 2))
    near = dice.normal(0.0, 0.3, (300, 2)) + dice.permutation(np.repeat(shape.points, 300, axis=0))[:300]
    points = np.concatenate([points, near])
    dots = shapely.points(1000 * points)
    told = shapely.distance(dots, said.boundary) > 40.0
    inside = shapely.contains(said, dots)
    assert told.sum() > 300
    assert (is_swept(shape, pin, theta, points) == inside)[told].all()


def test_a_square_swept_a_quarter_turn_by_hand():
    """A unit square from (2, 0) to (3, 1) about the origin: nearest (2, 0), farthest (3, 1) at sqrt 10."""
    square = Shape(rectangle(2.0, 3.0, 0.0, 1.0))
    trailing, outer, leading, inner = swept_outline(square, (0.0, 0.0), math.pi / 2, "A-DOOR-SWPT")
    assert trailing.points == ((2.0, 0.0), (3.0, 0.0), (3.0, 1.0))
    assert (outer.radius, inner.radius) == (pytest.approx(math.sqrt(10)), 2.0)
    assert (outer.start, outer.end) == pytest.approx((math.atan2(1, 3), math.atan2(1, 3) + math.pi / 2))
    assert (inner.start, inner.end) == pytest.approx((0.0, math.pi / 2))
    assert np.allclose(leading.points, [(0.0, 2.0), (-1.0, 2.0), (-1.0, 3.0)])


def test_a_side_that_falls_back_is_bridged_by_an_arc():
    """A square whose far side is nearest to the origin in its middle: its corner sweeps over the hollow."""
    square = Shape(rectangle(2.0, 3.0, -1.0, 2.0))
    bounds = swept_outline(square, (0.0, 0.0), 1.0, "A-DOOR-SWPT")
    _, bridge, *_ = bounds
    assert bridge.radius == pytest.approx(math.hypot(3, 1))
    assert (bridge.start, bridge.end) == pytest.approx((-math.atan2(1, 3), math.atan2(1, 3)))
    assert_same(square, (0.0, 0.0), 1.0)


@pytest.mark.parametrize(
    ("left", "width", "theta"), [(-3.0, 6.0, 1.625), (-2.0, 4.0, 1.75), (-2.0, 7.0, 0.4)]
)
def test_a_hollow_wider_than_the_turn_keeps_a_notch(left, width, theta):
    """A box across the pin, its far side flat: both its corners sweep, and meet no more than half way."""
    assert_same(Shape(rectangle(left, left + width, 0.5, 1.5)), (0.0, 0.0), theta)


def test_a_round_part_is_closed_by_half_of_itself():
    knob = Shape(((5.0, 0.0),), 1.0)
    outer, end, inner, start = swept_outline(knob, (0.0, 0.0), 1.0, "A-DOOR-SWPT")
    assert (outer.radius, inner.radius, start.radius, end.radius) == (6.0, 4.0, 1.0, 1.0)
    assert end.centre == pytest.approx((5 * math.cos(1), 5 * math.sin(1)))
    assert_same(knob, (0.0, 0.0), 1.0)


@pytest.mark.parametrize(
    ("shape", "theta"),
    [
        (Shape(rectangle(-1.0, 1.0, -1.0, 1.0)), 1.0),  # the pin within
        (Shape(((0.5, 0.0),), 1.0), 1.0),
        (Shape(rectangle(0.0, 1.0, -1.0, 1.0)), 1.0),  # the pin on its edge
        (Shape(rectangle(2.0, 3.0, 0.0, 1.0)), 0.0),  # nothing turns
    ],
)
def test_where_there_is_no_outline_none_is_drawn(shape, theta):
    assert swept_outline(shape, (0.0, 0.0), theta, "A-DOOR-SWPT") == ()


@examples(20)
@given(
    left=st.floats(-3, 20),
    width=st.floats(0.5, 12),
    low=st.floats(-4, 4),
    height=st.floats(0.5, 5),
    theta=st.floats(0.02, math.pi),
)
def test_any_box_sweeps_what_all_its_places_cover(left, width, low, height, theta):
    box = Shape(rectangle(left, left + width, low, low + height))
    if area_of_box_holds_pin(box):
        return
    assert_same(box, (0.0, 0.0), theta)


def area_of_box_holds_pin(box):
    return Area(box.points).buffer(0.05).contains(Dot(0.0, 0.0))


@pytest.mark.parametrize("mark", ["112A", "171A", "151A", "122A"])
def test_the_leaf_and_its_hardware_sweep_what_all_their_places_cover(mark):
    for hung in drawn_leaves(demo(mark), Display())[:1]:
        regions = swept_regions(hung)
        assert [one.layer for one in regions] == ["A-DOOR-SWPT-HDWR"] * len(hung.hardware) + ["A-DOOR-SWPT"]
        for shape in (*hung.hardware, Shape(leaf_corners(hung.h))):
            assert_same(shape, hung.pin.at, hung.reach)


def test_nothing_on_the_sheet_is_cut_into_chords():
    for seed in range(4):
        for hung in drawn_leaves(random_study(seed), Display()):
            for region in swept_regions(hung):
                assert all(len(one.points) <= 5 for one in region.bounds if isinstance(one, Polyline))
                assert any(isinstance(one, Arc) for one in region.bounds)


@pytest.mark.parametrize("hand", ["LH", "RH"])
def test_the_sheet_shows_it_when_asked_in_both_pictures_and_never_else(hand):
    study = case_a(hand=hand)
    shown = plan_sheet(study, Display(), 864.0, 540.0, swept=True)
    plain = plan_sheet(study, Display(), 864.0, 540.0)
    found = [one for group in shown.still for one in group.primitives if isinstance(one, Region)]
    assert len(found) == 4  # two panels and their insets
    assert not [one for group in plain.still for one in group.primitives if isinstance(one, Region)]
    assert shown.notes == plain.notes
