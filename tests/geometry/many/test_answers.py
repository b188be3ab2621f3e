"""Every answer for many openings against the single path, over openings of every kind."""

import math
import random
from dataclasses import replace

import numpy as np
import pytest

from configurator.geometry.least_gaps import least_gaps
from configurator.geometry.many.answers import answers_of
from configurator.geometry.many.solve_many import Many, latch_edges_of, solve_many
from configurator.geometry.shapes import Leaf, Obstruction
from configurator.geometry.solve import Solution
from tests.geometry.openings import BOX, LEAF, RAIL, case_a
from tests.geometry.random_openings import random_problem
from tests.sweeps import sized

ROWS = 8


def _many(problem, chance):
    """One random opening with its numbers varied a little."""
    h = problem.hanging

    def about(value, by):
        return np.array([value + chance.uniform(-by, by) for _ in range(ROWS)])

    columns = {"p": about(h.p, 0.2), "W": about(h.W, 0.4), "g_l": about(h.g_l, 0.02), "T": about(h.T, 0.02)}
    columns |= {"b": about(h.b, 0.02), "d_b": about(h.d_b, 0.02), "F": about(h.F, 0.05)}
    things = {
        place: {"start": about(thing.start + 0.5, 0.4)} for place, thing in enumerate(problem.obstructions)
    }
    return Many(
        hanging=h,
        leaf=problem.leaf,
        hardware=problem.hardware,
        obstructions=problem.obstructions,
        other=problem.other,
        columns=columns,
        thing_columns=things,
    )


def _answers(many, stop):
    """Every answer of the batch, by a name of its own, one an opening."""
    solved = solve_many(many)
    rest = answers_of(many, solved, stop)
    return {
        "x_p": solved.x_p,
        "y_p": solved.y_p,
        "o": solved.o,
        "barrel past frame": solved.barrel_past_frame,
        "barrel past wall": solved.barrel_past_wall,
        "barrel freedom": solved.barrel_freedom,
        "barrel free by": rest.barrel_free_by,
        "clear at 180": solved.clear_past_frame_at_180,
        "angle bare": solved.greatest_angle_bare,
        "angle": solved.greatest_angle,
        "width at 90": rest.width_at_90,
        "width at greatest": rest.width_at_greatest,
        "hardware in width": rest.hardware_taken,
        "latch edge": latch_edges_of(many),
        "hinge edge": rest.hinge_edge,
        "out": rest.out_greatest,
        "out at rest": rest.out_at_rest,
        "out with hardware": rest.out_with_hardware_greatest,
        "out with hardware at rest": rest.out_with_hardware_at_rest,
        "gap to what stands about": rest.gap_about,
        "gap": rest.gap,
        "gap with hardware": rest.gap_with_hardware,
    }


def _single(one):
    """The same of one opening solved by itself."""
    gaps = least_gaps(one)
    return {
        "x_p": one.pin.x_p,
        "y_p": one.pin.y_p,
        "o": one.pin.o,
        "barrel past frame": one.barrel_past_frame,
        "barrel past wall": one.barrel_past_wall,
        "barrel freedom": one.barrel_freedom,
        "barrel free by": one.barrel_free_by,
        "clear at 180": one.clear_past_frame_at_180,
        "angle bare": one.greatest_angle_bare,
        "angle": one.greatest_angle,
        "width at 90": one.clear_width_at_90,
        "width at greatest": one.clear_width_at_greatest,
        "hardware in width": one.hardware_in_clear_width,
        "latch edge": one.latch_edge_least,
        "hinge edge": one.hinge_edge_least,
        "out": one.encroachment_greatest,
        "out at rest": one.encroachment_at_rest,
        "out with hardware": one.encroachment_with_hardware_greatest,
        "out with hardware at rest": one.encroachment_with_hardware_at_rest,
        "gap to what stands about": _distance(one.gap),
        "gap": _distance(gaps.bare),
        "gap with hardware": _distance(gaps.with_hardware),
    }


def _distance(gap):
    return None if gap is None else gap.distance


def _unlike(many, stop):
    """What the batch says otherwise than the single path."""
    found, solved = _answers(many, stop), solve_many(many)
    for row in range(many.count):
        one = Solution(many.one(row), stop)
        for name, expected in _single(one).items():
            value = found[name][row]
            same = math.isnan(value) if expected is None else abs(value - expected) <= 1e-12
            if not same:
                yield row, name, value, expected
        for name, place, contact in (
            ("touches bare", solved.touches_bare[row], one.bare),
            ("touches", solved.touches[row], one.with_hardware),
        ):
            value = None if place < 0 else solved.names[place]
            expected = None if contact is None else (contact.kind, contact.index, contact.part)
            if value != expected:
                yield row, name, value, expected


@pytest.mark.parametrize("seed", range(sized(2, 4)))
def test_every_answer_is_the_one_the_single_path_gives(seed):
    chance = random.Random(f"batch {seed}")
    for _ in range(25):
        problem = random_problem(chance)
        many = _many(problem, chance)
        stop = chance.choice([None, None, 0.5, math.pi / 2, 2.0])
        assert not list(_unlike(many, stop)), problem


@pytest.mark.parametrize("offset", [0.0, 0.375])
def test_a_thing_that_reaches_into_the_opening_fills_what_the_frame_leaves_of_its_place(offset):
    thing = Obstruction(
        kind="other", projection=2.0, start=-4.0, length=6.0, offset=offset, bottom=30, top=40
    )
    columns = {"p": np.array([0.5, 0.25, 0.0, -0.25]), "W": np.array([4.0, 4.5, 5.0, 6.0])}
    many = Many(hanging=case_a(), leaf=LEAF, hardware=(BOX,), obstructions=(thing,), columns=columns)
    assert not list(_unlike(many, None))


def test_what_touches_by_hand():
    many = Many(
        hanging=case_a(),
        leaf=LEAF,
        hardware=(BOX,),
        obstructions=(RAIL,),
        columns={"W": np.array([4.0, 4.5, 7])},
    )
    solved = solve_many(many)
    bare = [None if place < 0 else solved.names[place] for place in solved.touches_bare]
    assert bare == [("chair rail", 0, "leaf"), None, ("latch jamb", None, "leaf")]
    assert [solved.names[place] for place in solved.touches[:2]] == [
        ("chair rail", 0, "leaf"),
        ("chair rail", 0, "lever"),
    ]


def test_hardware_counts_in_the_width_only_within_its_band():
    many = Many(hanging=case_a(4.5), leaf=LEAF, hardware=(BOX,), columns={"p": np.array([0.5, 0.25])})
    solved = solve_many(many)
    # Open square the pull-side lever lies behind the leaf's own thickness, what is behind it stands out.
    assert list(answers_of(many, solved).hardware_taken) == [0, 0]
    for kind, height, by_hand in (
        ("lever", 38, 2.5),
        ("lever", 20, 0.0),
        ("lever", 80, 2.5),
        ("closer", 80, 0),
    ):
        behind = replace(BOX, kind=kind, face="push", height=height, from_latch_edge=6)
        fitted = replace(many, hardware=(behind,))
        assert list(answers_of(fitted, solve_many(fitted)).hardware_taken) == [by_hand, by_hand]


def test_nothing_about_the_door_has_no_gap_to_it():
    many = Many(hanging=case_a(4), leaf=Leaf(barrels=()), columns={"p": np.array([0.5])})
    gaps = answers_of(many, solve_many(many))
    assert math.isnan(gaps.gap_about[0])
    assert gaps.gap[0] == pytest.approx(1.375, abs=1e-12)


def test_empty_columns_are_refused():
    with pytest.raises(ValueError, match="nothing in them"):
        solve_many(Many(hanging=case_a(), leaf=LEAF, columns={"p": np.zeros(0)}))
