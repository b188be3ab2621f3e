"""What must hold of every opening, whatever its numbers."""

import math
import random
from dataclasses import replace

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from configurator.geometry.inverse.widths import angle_bare, greatest_hinge_width, least_hinge_width, reaches
from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.pin import MOUNTINGS, locate_pin
from configurator.geometry.solve import solve
from tests.geometry import judge
from tests.geometry.openings import LEAF, case_a
from tests.geometry.random_openings import Problem, random_problem
from tests.sweeps import examples


@st.composite
def openings(draw):
    """An opening of any arrangement, mounting and surroundings."""
    return random_problem(random.Random(draw(st.integers(0, 10**9))))


def solved(problem, **changes):
    given_ = {"hanging": problem.hanging, "leaf": problem.leaf, "hardware": problem.hardware}
    given_ |= {"obstructions": problem.obstructions, "other": problem.other}
    return solve(**(given_ | changes))


@given(openings())
@examples(30)
def test_the_mirrored_opening_swung_the_other_way_gives_the_same(problem):
    """Mirrored left to right and turned clockwise by the judge, against the exact answer."""
    pin = locate_pin(problem.hanging).at
    bare, fitted = judge.moving_parts(problem)
    moving, standing = bare + fitted, judge.standing_parts(problem)
    for part in (*moving, *standing):
        part.core, part.sense = shapely.transform(part.core, lambda xy: xy * [-1, 1]), -1
    mirrored = (-pin[0], pin[1])
    angle, together = judge.judged(moving, standing, mirrored)
    contact = solved(problem).with_hardware
    assert not judge.disagreement(contact, angle, together, moving, standing, mirrored)


@given(openings(), st.floats(0, 4))
@examples(30)
def test_a_wider_hinge_never_lowers_the_pin(problem, more):
    for mounting in MOUNTINGS:
        h = replace(problem.hanging, mounting=mounting)
        one, other = locate_pin(h), locate_pin(replace(h, W=h.W + more))
        assert other.y_p >= one.y_p
        assert other.o >= one.o


@given(openings(), st.floats(0, 3))
@examples(40)
def test_trim_that_stands_out_more_never_lets_it_open_farther(problem, more):
    # Of straight things: a round one that stands out more has moved.
    straight = [one for one in problem.obstructions if one.projection is not None and one.diameter is None]
    assume(straight)
    deeper = tuple(
        replace(one, projection=one.projection + more) if one in straight else one
        for one in problem.obstructions
    )
    assert solved(problem, obstructions=deeper).greatest_angle <= solved(problem).greatest_angle + 1e-9


@given(openings(), st.floats(0, 3))
@examples(40)
def test_hardware_that_stands_out_more_never_opens_farther(problem, more):
    assume(problem.hardware)
    deeper = tuple(
        one if one.round else replace(one, projection=one.projection + more) for one in problem.hardware
    )
    before, after = solved(problem), solved(problem, hardware=deeper)
    assert after.greatest_angle <= before.greatest_angle + 1e-9
    assert after.bare == before.bare


@given(openings())
@examples(40)
def test_what_shares_no_height_changes_nothing(problem):
    above = tuple(
        replace(one, bottom=200.0, top=210.0) for one in problem.obstructions if one.kind != "return wall"
    )
    plain, found = solved(problem, obstructions=()), solved(problem, obstructions=above)
    assert (found.bare, found.with_hardware) == (plain.bare, plain.with_hardware)
    assert found.latch_edge_least == plain.latch_edge_least
    assert found.clear_width_at_90 == plain.clear_width_at_90
    assert found.barrel_free_by == plain.barrel_free_by
    assert least_gaps(found) == least_gaps(plain)


@given(openings(), st.floats(0.3, math.pi))
@examples(30)
def test_the_inverse_undoes_the_forward(problem, wanted):
    h = replace(problem.hanging, mounting="full mortise")
    rest = (problem.obstructions, problem.other)
    least = least_hinge_width(h, problem.leaf, wanted, *rest)
    assume(least is not None)
    assert reaches(replace(h, W=least), problem.leaf, wanted, *rest)
    if least > 1.0:
        assert angle_bare(replace(h, W=least - 1e-6), problem.leaf, *rest) < wanted
    most = greatest_hinge_width(h, problem.leaf, wanted, *rest)
    assert reaches(replace(h, W=most), problem.leaf, wanted, *rest)
    if most < 24.0:
        assert angle_bare(replace(h, W=most + 1e-6), problem.leaf, *rest) < wanted


LENGTHS = ("O", "T", "g_h", "g_l", "R", "k", "s", "F", "D", "p", "b", "t", "W", "d_b")
ANSWERS = (
    "barrel_past_frame", "barrel_past_wall", "barrel_freedom", "barrel_free_by", "clear_past_frame_at_180",
    "clear_width_at_90", "clear_width_at_greatest", "latch_edge_least", "hinge_edge_least",
    "encroachment_greatest", "encroachment_at_rest", "encroachment_with_hardware_greatest",
    "encroachment_with_hardware_at_rest",
)  # fmt: skip


def _times(record, names, scale):
    """A record with those of its lengths that are given so many times as long."""
    given_ = {name: getattr(record, name) for name in names}
    return replace(record, **{name: value * scale for name, value in given_.items() if value is not None})


def _scaled(problem, scale):
    fitted = ("projection", "from_latch_edge", "width", "height", "vertical")
    about = ("projection", "start", "length", "offset", "bottom", "top", "diameter")
    leaf, other = problem.leaf, problem.other
    half = leaf.half and replace(
        _times(leaf.half, ("bottom", "top"), scale),
        hardware=tuple(_times(one, fitted, scale) for one in leaf.half.hardware),
    )
    barrels = tuple((low * scale, high * scale) for low, high in leaf.barrels)
    beside = other and replace(
        _times(other, ("opening", "w"), scale),
        hardware=tuple(_times(one, fitted, scale) for one in other.hardware),
    )
    return Problem(
        _times(problem.hanging, LENGTHS, scale),
        replace(_times(leaf, ("bottom", "top"), scale), barrels=barrels, half=half),
        tuple(_times(one, fitted, scale) for one in problem.hardware),
        tuple(_times(one, about, scale) for one in problem.obstructions),
        beside,
    )


@given(openings(), st.sampled_from([0.5, 2.0, 4.0]))
@examples(40)
def test_scaling_every_length_scales_every_length_and_no_angle(problem, scale):
    # By powers of two, so that nothing is rounded anew; the tolerance itself is not scaled.
    small, large = solved(problem), solved(_scaled(problem, scale))
    assert large.greatest_angle == pytest.approx(small.greatest_angle, abs=1e-7)
    assert large.greatest_angle_bare == pytest.approx(small.greatest_angle_bare, abs=1e-7)
    for name in ANSWERS:
        one, other = getattr(small, name), getattr(large, name)
        assert (one is None) == (other is None), name
        if one is not None:
            assert other == pytest.approx(one * scale, abs=2e-5), name
    for contact, grown in ((small.bare, large.bare), (small.with_hardware, large.with_hardware)):
        assert (contact and contact.kind) == (grown and grown.kind)


@given(st.floats(0.01, 20))
@examples(30)
def test_heights_have_no_say_in_plan(lift):
    # The whole door and all about it moved up: nothing else changes.
    raised = replace(LEAF, bottom=LEAF.bottom + lift, top=LEAF.top + lift, barrels=())
    assert solve(case_a(7), raised).bare == solve(case_a(7), replace(LEAF, barrels=())).bare
