import math

import pytest
import shapely

from configurator.geometry.leaf_corners import leaf_corners
from configurator.geometry.pin import locate_pin
from configurator.geometry.shapes import (
    FAR,
    Hardware,
    Obstruction,
    OtherLeaf,
    barrel_shapes,
    hardware_shape,
    hinge_jamb,
    latch_jamb,
    obstruction_shapes,
    rectangle,
    standing_shapes,
    stops,
    walls,
)
from tests.geometry.openings import BEVEL, BOX, LEAF, case_a

CASING = {"kind": "casing", "from_frame": True}
RETURN = {"kind": "return wall", "fills": True}


def box_of(shape):
    xs, ys = [x for x, _ in shape.points], [y for _, y in shape.points]
    return min(xs), min(ys), max(xs), max(ys)


def test_leaf_with_its_bevel():
    # i = 1/8: pull face at -1/8, stop face 1-3/4 behind; relieved 7/64 on the stop side.
    assert set(leaf_corners(case_a(beta=BEVEL))) == {
        (0.125, -0.125),
        (35.875, -0.125),
        (35.875 - 0.109375, -1.875),
        (0.125, -1.875),
    }


def test_frame_wall_and_stops():
    h = case_a()
    assert box_of(*hinge_jamb(h)) == (-2, -5.875, 0, 0)
    assert box_of(*latch_jamb(h, 36)) == (36, -5.875, 38, 0)
    assert [box_of(one) for one in walls(h, 36)] == [(-FAR, -FAR, -2, -0.5), (38, -FAR, 36 + FAR, -0.5)]
    assert [box_of(one) for one in stops(h, 36)] == [
        (0, -5.875, 0.625, -1.9375),
        (35.375, -5.875, 36, -1.9375),
    ]


def test_no_stop_where_it_has_no_height():
    assert stops(case_a(s=0), 36) == ()


def test_hardware_boxes_on_both_faces():
    assert box_of(hardware_shape(case_a(), BOX)) == pytest.approx((31.125, -0.125, 35.125, 2.375))
    push = Hardware(
        kind="pull", projection=2.5, from_latch_edge=2.75, width=4, height=38, vertical=3, face="push"
    )
    shape = hardware_shape(case_a(), push)
    assert box_of(shape) == pytest.approx((31.125, -4.375, 35.125, -1.875))
    assert (shape.bottom, shape.top) == (36.5, 39.5)


def test_a_rail_on_the_wall():
    rail = Obstruction(kind="chair rail", projection=1.75, start=0.5, bottom=32, top=36)
    (shape,) = obstruction_shapes(case_a(), rail, 3)
    assert box_of(shape) == (-FAR, -0.5, -2.5, 1.25)
    assert (shape.bottom, shape.top, shape.index) == (32, 36, 3)


def test_a_free_thing_off_the_wall():
    thing = Obstruction(kind="other", projection=2, start=1, length=5, offset=4)
    (shape,) = obstruction_shapes(case_a(), thing)
    assert box_of(shape) == (-8, 3.5, -3, 5.5)


def test_a_casing_counts_from_the_frame_face_and_fills_back_to_the_wall():
    casing = Obstruction(kind="casing", from_frame=True, projection=0.6875, start=0.0, length=3.25)
    (shape,) = obstruction_shapes(case_a(), casing)
    assert box_of(shape) == (-5.25, -0.5, -2, 0.6875)


def test_a_casing_at_a_reveal_lies_over_the_frame_face():
    casing = Obstruction(kind="casing", from_frame=True, projection=0.6875, start=-0.5, length=3.25)
    pieces = obstruction_shapes(case_a(F=0.75), casing)
    filled = shapely.union_all([shapely.Polygon(one.points) for one in pieces])
    expected = shapely.union_all(
        [shapely.box(-3.5, -0.5, -0.75, 0.6875), shapely.box(-3.5, 0, -0.25, 0.6875)]
    )
    assert filled.equals(expected)


def test_a_column_lies_beyond_its_start():
    column = Obstruction(kind="column", diameter=6, start=10, projection=7)
    (shape,) = obstruction_shapes(case_a(), column)
    assert (shape.points, shape.radius) == (((-15.0, 3.5),), 3.0)


def test_a_return_wall_fills_all_beyond_its_face():
    (shape,) = obstruction_shapes(case_a(), Obstruction(kind="return wall", fills=True, start=4))
    assert box_of(shape)[2:] == (-6, FAR)
    (short,) = obstruction_shapes(
        case_a(), Obstruction(kind="return wall", fills=True, start=4, projection=20)
    )
    assert box_of(short)[3] == 19.5


def test_a_round_thing_counted_from_the_frame_face():
    pipe = Obstruction(kind="pipe", from_frame=True, diameter=2, start=1, projection=3)
    (shape,) = obstruction_shapes(case_a(), pipe)
    assert (shape.points, shape.radius, shape.on_frame) == (((-4.0, 2.0),), 1.0, True)


def test_the_latch_side_is_the_mirror():
    for as_is in ({"kind": "chair rail"}, CASING, RETURN):
        thing = Obstruction(**as_is, projection=2, start=1)
        other = Obstruction(**as_is, projection=2, start=1, side="latch")
        (here,), (there,) = (obstruction_shapes(case_a(), one) for one in (thing, other))
        assert set(there.points) == {(36 - x, y) for x, y in here.points}


@pytest.mark.parametrize("side", ["hinge", "latch"])
def test_every_outline_runs_counter_clockwise(side):
    about = [
        Obstruction(**as_is, side=side, projection=2, start=start, length=9)
        for as_is in (CASING, {"kind": "base"})
        for start in (-0.5, 1)
    ]
    about.append(Obstruction(kind="return wall", fills=True, side=side))
    for shape in standing_shapes(case_a(), LEAF, about, OtherLeaf(opening=72, w=35.75, beta=BEVEL)):
        turn = math.fsum(
            a * d - b * c
            for (a, b), (c, d) in zip(shape.points, shape.points[1:] + shape.points[:1], strict=True)
        )
        assert turn > 0, shape


def test_the_other_leaf_is_relieved_on_its_stop_side_too():
    other = OtherLeaf(opening=72, w=35.75, beta=BEVEL)
    shape = standing_shapes(case_a(), LEAF, (), other)[-1]
    assert set(shape.points) == {
        (36, -0.125),
        (71.75, -0.125),
        (71.75, -1.875),
        (36 + 0.109375, -1.875),
    }
    assert (shape.bottom, shape.top) == (LEAF.bottom, LEAF.top)


def test_the_order_that_settles_ties():
    rail = Obstruction(kind="base", projection=1)
    kinds = [one.kind for one in standing_shapes(case_a(), LEAF, (rail,), OtherLeaf(opening=72, w=35.75))]
    assert kinds == ["base", "frame", "wall", "wall", "latch jamb", "stop", "stop", "other leaf"]


def test_barrels_turn_at_the_pin():
    h = case_a()
    pin = locate_pin(h)
    assert [(one.points[0], one.radius, one.bottom) for one in barrel_shapes(h, pin, LEAF)] == [
        (pin.at, 0.29, low) for low, _ in LEAF.barrels
    ]


def test_a_thing_before_the_opening_is_not_cut_off_at_the_frames_face():
    # From 1/2 behind the frame's face to 1/2 ahead of it: over the frame only the part ahead of it is there.
    thing = Obstruction(kind="other", start=-5, length=6, projection=1)
    found = [one.points for one in obstruction_shapes(case_a(), thing)]
    assert found == [
        rectangle(-3, -2, -0.5, 0.5),
        rectangle(-2, 0, 0, 0.5),
        rectangle(0, 3, -0.5, 0.5),
    ]


def test_a_casing_before_the_opening_counts_from_the_frames_face():
    casing = Obstruction(kind="casing", from_frame=True, start=-2.5, length=1, projection=1)
    assert [one.points for one in obstruction_shapes(case_a(), casing)] == [rectangle(-0.5, 0.5, 0, 1)]
