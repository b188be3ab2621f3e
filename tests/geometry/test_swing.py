import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.geometry.pin import TOLERANCE, locate_pin
from configurator.geometry.shapes import (
    Leaf,
    Obstruction,
    OtherLeaf,
    Shape,
    barrel_shapes,
    hardware_shape,
    leaf_shape,
    rectangle,
    standing_shapes,
)
from configurator.geometry.solve import solve
from configurator.geometry.swing import first_contact
from tests.geometry.openings import BOX, LEAF, RAIL, case_a
from tests.sweeps import examples

RIGHT = math.pi / 2


def bar(length=10.0, thick=1.0):
    """A bar lying along +x from the pin at the origin, its upper face through the pin."""
    return Shape(rectangle(0, length, -thick, 0), kind="leaf")


def degrees(contact):
    return math.degrees(contact.angle)


# --- the worked cases, by hand


def test_leaf_on_rail_by_hand():
    # Pin (1/16, 3/8); the leaf's pull face lies 1/2 below it and turns; the rail's arris is at (-5/2, 5/4).
    # With n = (-sin t, cos t): 2.5625 sin t + 0.875 cos t = -0.5.
    rho, alpha = math.hypot(2.5625, 0.875), math.atan2(2.5625, 0.875)
    contact = solve(case_a(4), LEAF, obstructions=(RAIL,)).bare
    assert contact.angle == pytest.approx(alpha + math.acos(-0.5 / rho), abs=1e-12)
    assert degrees(contact) == pytest.approx(171.788, abs=5e-4)
    assert (contact.kind, contact.index, contact.part) == ("chair rail", 0, "leaf")
    assert contact.point == pytest.approx((-2.5, 1.25), abs=1e-12)
    assert not contact.at_rest


def test_the_wider_hinge_passes_the_rail():
    assert solve(case_a(4.5), LEAF, obstructions=(RAIL,)).greatest_angle_bare == math.pi


@pytest.mark.parametrize(
    ("W", "things", "angle", "kind"),
    [
        (4, (RAIL,), 171.788, "chair rail"),
        (4.5, (RAIL,), 175.624, "chair rail"),
        (4, (), 177.9269, "wall"),
        (4.5, (), 178.8477, "wall"),
    ],
)
def test_box_of_hardware(W, things, angle, kind):
    contact = solve(case_a(W), LEAF, (BOX,), things).with_hardware
    assert degrees(contact) == pytest.approx(angle, abs=5e-4)
    assert contact.kind == kind


def test_box_on_the_wall_by_hand():
    # Outer corners of the box stand 2-1/2 off the pull face; the one nearer the hinge, 31.0625 from the pin,
    # comes to the wall y = -1/2, which lies 7/8 below the pin.
    x, y = 36 - 0.125 - 2.75 - 2 - 0.0625, -0.5 + 2.5
    contact = solve(case_a(4), LEAF, (BOX,)).with_hardware
    rho, phi = math.hypot(x, y), math.atan2(y, x)
    assert contact.angle == pytest.approx(math.pi + math.asin(0.875 / rho) - phi, abs=1e-12)


def test_a_round_knob_on_the_wall_by_hand():
    # Centre 2-3/8 from the latch edge, 1-1/2 off the face, radius 1: it meets with its centre 1 off the wall.
    knob = replace(BOX, kind="knob", from_latch_edge=2.375, width=2, round=True)
    x, y = 36 - 0.125 - 2.375 - 0.0625, -0.5 + 1.5
    contact = solve(case_a(4), LEAF, (knob,)).with_hardware
    rho, phi = math.hypot(x, y), math.atan2(y, x)
    # rho sin(t + phi) = -(7/8 - 1): the centre is then still above the pin's level.
    assert contact.angle == pytest.approx(math.pi - phi - math.asin(0.125 / rho), abs=1e-12)
    assert contact.part == "knob"
    assert contact.point[1] == pytest.approx(-0.5, abs=1e-9)


def test_a_column_by_hand():
    # Full height, 6 in across, its centre at (-15, 3.5): the leaf's face meets it 3 in from its centre.
    column = Obstruction(kind="column", diameter=6, start=10, projection=7)
    contact = solve(case_a(4), LEAF, obstructions=(column,)).bare
    x, y = -15 - 0.0625, 3.5 - 0.375
    rho, beyond = math.hypot(x, y), math.acos((-0.5 - -3.0) / math.hypot(x, y))
    # Face's normal n = (-sin t, cos t); the centre comes to n . c = -1/2 + 3 as the face closes on it.
    expected = math.atan2(-x, y) - beyond
    if expected < 0 or not math.isclose(-x * math.sin(expected) + y * math.cos(expected), 2.5):
        expected = math.atan2(-x, y) + beyond
    assert contact.angle == pytest.approx(expected, abs=1e-12)
    assert math.dist(contact.point, (-15, 3.5)) == pytest.approx(3, abs=1e-9)
    assert rho > 3


@pytest.mark.parametrize(("p", "angle"), [(-1, 176.5568), (-1.5, 163.6774)])
def test_a_frame_behind_the_wall(p, angle):
    contact = solve(case_a(4, p=p), LEAF).bare
    assert degrees(contact) == pytest.approx(angle, abs=5e-5)
    assert (contact.kind, contact.point) == ("wall", pytest.approx((-2, -p), abs=1e-12))


def test_a_return_wall_by_hand():
    # One of the leaf's two latch corners comes to x = -6: 35.8125 out on the pull side, and the relieved one.
    contact = solve(
        case_a(4, beta=0.0625), LEAF, obstructions=(Obstruction(kind="return wall", fills=True, start=4),)
    ).bare
    reach = 6.0625
    corners = [(35.8125, -0.5), (35.8125 - 0.109375, -2.25)]
    by_hand = min(math.acos(-reach / math.hypot(x, y)) - math.atan2(y, x) for x, y in corners)
    assert contact.angle == pytest.approx(by_hand, abs=1e-12)
    assert degrees(contact) == pytest.approx(100.545, abs=5e-4)


# --- at the edges of contact


def test_grazing_is_clear():
    # p = -7/8: the wall lies exactly in the plane of the leaf open flat.
    assert solve(case_a(4, p=-0.875), LEAF).bare is None


def test_deeper_than_the_tolerance_is_not():
    for more, met in ((0.0, False), (TOLERANCE / 2, False), (3 * TOLERANCE, True), (1e-6, True)):
        standing = [Shape(rectangle(-20, -5, -3, more), kind="wall")]
        assert bool(first_contact([bar()], standing, (0.0, 0.0))) is met, more


def test_touching_at_rest_and_opening_away_is_clear():
    below = Shape(rectangle(5, 6, -3, -1), kind="stop")
    assert first_contact([bar()], [below], (0.0, 0.0)) is None


def test_touching_at_rest_and_closing_further_stops_at_once():
    above = Shape(rectangle(5, 6, 0, 3), kind="other")
    contact = first_contact([bar()], [above], (0.0, 0.0))
    assert (contact.angle, contact.at_rest) == (0.0, False)
    assert contact.point == pytest.approx((5.5, 0))


def test_overlap_at_rest_is_told_apart():
    above = Shape(rectangle(5, 6, -0.25, 3), kind="other")
    contact = first_contact([bar()], [above], (0.0, 0.0))
    assert (contact.angle, contact.at_rest) == (0.0, True)
    assert contact.point[0] == pytest.approx(5.5, abs=0.51)


def test_overlap_at_rest_within_the_tolerance_is_touching():
    below = Shape(rectangle(5, 6, -3, -1 + TOLERANCE / 2), kind="stop")
    assert first_contact([bar()], [below], (0.0, 0.0)) is None


def test_the_pin_on_an_obstruction():
    # A wall whose face passes through the pin, which is its corner.
    through = Shape(rectangle(-20, 0, -5, 0), kind="wall")
    lying = Shape(rectangle(1, 10, 0, 1), kind="leaf")
    contact = first_contact([lying], [through], (0.0, 0.0))
    # The near upper corner (1, 1) turns 135 degrees to come to that face, before the far one does.
    assert contact.angle == pytest.approx(0.75 * math.pi, abs=1e-12)


def test_a_corner_on_the_pin_never_moves():
    assert first_contact([bar()], [Shape(rectangle(-3, 0, 0, 3), kind="wall")], (0.0, 0.0)).angle == RIGHT


@pytest.mark.parametrize("given_gaps", [{"g_h": 0}, {"k": 0}, {"g_h": 0, "k": 0}, {"R": 1.8125}])
def test_zero_gaps_still_open(given_gaps):
    assert solve(case_a(4.5, beta=0.0625, **given_gaps), LEAF).bare is None


def test_a_zero_latch_gap_binds_at_once():
    contact = solve(case_a(4.5, g_l=0), LEAF).bare
    assert (contact.angle, contact.kind, contact.at_rest) == (0.0, "latch jamb", False)


def test_a_clip_of_corners_is_met():
    # A tapered bar's far corner turns at radius 10; a post's corner stands 1e-6 inside that circle, at 60.
    x, y = (10 - 1e-6) * math.cos(math.pi / 3), (10 - 1e-6) * math.sin(math.pi / 3)
    post = Shape(((x, y), (x + 1, y - 0.2), (x + 1, y + 1.2)), kind="other")
    tapered = Shape(((0, -1), (9, -1), (10, 0), (0, 0)), kind="leaf")
    contact = first_contact([tapered], [post], (0.0, 0.0))
    assert contact.angle == pytest.approx(math.pi / 3, abs=1e-3)
    clear = Shape(tuple((a + 2e-6, b + 2e-6) for a, b in post.points), kind="other")
    assert first_contact([tapered], [clear], (0.0, 0.0)) is None


def test_flat_contact_names_its_middle():
    contact = first_contact([bar()], [Shape(rectangle(-3, 0, 4, 7), kind="wall")], (0.0, 0.0))
    assert contact.angle == RIGHT
    assert contact.point == pytest.approx((0, 5.5), abs=1e-9)


def test_a_limit_ends_the_swing_before_the_contact():
    wall = Shape(rectangle(-3, 0, 4, 7), kind="wall")
    assert first_contact([bar()], [wall], (0.0, 0.0), limit=RIGHT) is None
    assert first_contact([bar()], [wall], (0.0, 0.0), limit=RIGHT + 1e-3).angle == RIGHT


# --- who is named


def test_of_two_standing_at_once_the_first_listed():
    one, two = Shape(rectangle(-3, 0, 4, 5), kind="base"), Shape(rectangle(-3, 0, 6, 7), kind="other")
    assert first_contact([bar()], [one, two], (0.0, 0.0)).kind == "base"
    assert first_contact([bar()], [two, one], (0.0, 0.0)).kind == "other"


@pytest.mark.parametrize(("nearer", "named"), [(1e-11, "base"), (3e-9, "base"), (1e-6, "other")])
def test_what_rounding_parts_is_still_at_once(nearer, named):
    first = Shape(rectangle(-3, 0, 4, 5), kind="base")
    second = Shape(rectangle(-3, nearer, 6, 7), kind="other")
    assert first_contact([bar()], [first, second], (0.0, 0.0)).kind == named


def test_of_two_moving_at_once_the_first_listed():
    wall = Shape(rectangle(-3, 0, 4, 7), kind="wall")
    pull = replace(bar(), kind="pull")
    assert first_contact([bar(), pull], [wall], (0.0, 0.0)).part == "leaf"
    assert first_contact([pull, bar()], [wall], (0.0, 0.0)).part == "pull"


def test_hardware_at_once_with_the_leaf_is_named_for_an_earlier_obstruction():
    # At 90 the leaf's pull face lies at x = 1-9/16 and that of a box on it at 9/16: a post for each.
    for_leaf = Obstruction(kind="other", start=-3.5625, length=1, offset=20, projection=5)
    for_box = Obstruction(kind="other", start=-2.5625, length=0.5, offset=34, projection=1)
    box = replace(BOX, projection=1)
    named = [
        (solved.with_hardware.angle, solved.with_hardware.index, solved.with_hardware.part)
        for posts in ((for_box, for_leaf), (for_leaf, for_box))
        for solved in (solve(case_a(6), LEAF, (box,), posts),)
    ]
    assert named == [(RIGHT, 0, "lever"), (RIGHT, 0, "leaf")]


def test_a_barrel_in_a_casing_cannot_be_hung():
    casing = Obstruction(kind="casing", from_frame=True, projection=0.75, start=-1.9)
    contact = solve(case_a(4), LEAF, obstructions=(casing,)).bare
    assert (contact.angle, contact.kind, contact.part, contact.at_rest) == (0.0, "casing", "barrel", True)


def test_a_barrel_too_near_the_frame_is_no_stop_but_not_free():
    solved = solve(case_a(3.5, mounting="half surface"), LEAF)
    assert solved.bare is None
    assert solved.barrel_free_by == pytest.approx(0.165 - 0.29, abs=1e-12)


# --- heights


@pytest.mark.parametrize(("bottom", "met"), [(41.0, True), (42.0 - 1e-6, True), (42.0, False), (43.0, False)])
def test_only_what_shares_a_height_can_touch(bottom, met):
    upper = Leaf(bottom=bottom, top=83.875)
    assert bool(solve(case_a(4), upper, obstructions=(RAIL,)).bare) is met


def test_a_rail_misses_a_barrel_at_another_height():
    low = Obstruction(kind="other", projection=1.5, start=-2.2, length=1, bottom=20, top=30)
    leaf_above = Leaf(bottom=35, top=83.875, barrels=((40.0, 44.5),))
    assert solve(case_a(4), leaf_above, obstructions=(low,)).bare is None


def test_a_lever_passes_over_a_rail():
    low = replace(RAIL, top=36)
    contact = solve(case_a(4.5), LEAF, (BOX,), (low,)).with_hardware
    assert contact.kind == "wall"
    assert degrees(contact) == pytest.approx(178.848, abs=5e-4)


# --- pairs


def test_a_square_leaf_binds_on_the_other_leaf():
    contact = solve(case_a(7), LEAF, other=OtherLeaf(opening=72, w=35.75)).bare
    assert contact.kind == "other leaf"
    # The stop-side corner comes to x = 36, 1/8 on; from the pin 35.8125 across and 3.75 down.
    rho, phi = math.hypot(35.8125, 3.75), math.atan2(-3.75, 35.8125)
    assert contact.angle == pytest.approx(-phi - math.acos(35.9375 / rho), abs=1e-12)


def test_an_open_other_leaf_is_out_of_the_way():
    assert solve(case_a(7), LEAF, other=OtherLeaf(opening=72, w=35.75, closed=False)).bare is None


# --- properties

lengths = st.integers(1, 40).map(lambda n: n / 8)
things = st.builds(
    Obstruction,
    kind=st.just("other"),
    from_frame=st.booleans(),
    projection=lengths,
    start=lengths,
    length=lengths,
    bottom=st.just(10.0),
    top=st.just(60.0),
)


def angle_with(h, about, hardware=()):
    return solve(h, LEAF, hardware, about).greatest_angle


@given(st.sampled_from([4, 4.5, 6]), things, st.floats(0, 3))
@examples(30)
def test_more_projection_never_opens_farther(W, thing, more):
    deeper = replace(thing, projection=thing.projection + more)
    assert angle_with(case_a(W), (deeper,)) <= angle_with(case_a(W), (thing,)) + 1e-9


@given(st.sampled_from([4, 4.5, 6]), things)
@examples(30)
def test_what_stands_at_other_heights_changes_nothing(W, thing):
    above = replace(thing, bottom=84.0, top=90.0)
    assert (
        solve(case_a(W), LEAF, (BOX,), (above,)).with_hardware == solve(case_a(W), LEAF, (BOX,)).with_hardware
    )


@given(st.sampled_from([4, 4.5, 6]), things, st.floats(0.25, 30))
@examples(30)
def test_scaling_every_length_keeps_the_angle_and_scales_the_point(W, thing, scale):
    h = case_a(W)
    pin = locate_pin(h)
    moving = [leaf_shape(h, LEAF), *barrel_shapes(h, pin, LEAF), hardware_shape(h, BOX)]
    standing = standing_shapes(h, LEAF, (thing,))
    small = first_contact(moving, standing, pin.at)
    large = first_contact(
        _scaled(moving, scale), _scaled(standing, scale), (pin.x_p * scale, pin.y_p * scale)
    )
    assert (small is None) == (large is None)
    if small is not None:
        assert large.angle == pytest.approx(small.angle, abs=1e-9)
        assert large.point == pytest.approx((small.point[0] * scale, small.point[1] * scale), abs=1e-6)


def _scaled(shapes, scale):
    return [
        replace(
            one,
            points=tuple((x * scale, y * scale) for x, y in one.points),
            radius=one.radius * scale,
            bottom=one.bottom * scale,
            top=one.top * scale,
        )
        for one in shapes
    ]


@given(st.floats(-50, 50), st.floats(-50, 50), things)
@examples(30)
def test_where_the_origin_lies_changes_nothing(x, y, thing):
    h = case_a(4)
    pin = locate_pin(h)
    moving = leaf_shape(h, LEAF), *barrel_shapes(h, pin, LEAF)
    standing = standing_shapes(h, LEAF, (thing,))
    here = first_contact(moving, standing, pin.at)
    there = first_contact(_moved(moving, x, y), _moved(standing, x, y), (pin.x_p + x, pin.y_p + y))
    assert (here is None) == (there is None)
    if here is not None:
        assert there.angle == pytest.approx(here.angle, abs=1e-9)


def _moved(shapes, x, y):
    return [replace(one, points=tuple((a + x, b + y) for a, b in one.points)) for one in shapes]
