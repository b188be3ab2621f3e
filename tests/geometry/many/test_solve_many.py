"""Many openings at once against one at a time."""

import math
from dataclasses import replace

import numpy as np
import pytest

from configurator.geometry.many.answers import answers_of
from configurator.geometry.many.solve_many import Many, latch_edges_of, solve_many
from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherLeaf
from configurator.geometry.solve import Solution

LEAF = Leaf(bottom=0.75, top=83.875, barrels=((5.0, 9.5), (40.0, 44.5), (73.0, 77.5)))
CASE_A = Hanging(
    O=36, T=1.75, g_h=0.125, g_l=0.125, beta=0.0625, R=1.9375, k=0.0625, s=0.625, F=2, D=5.875, p=0.5,
    b=0.25, t=0.134, W=4.5, d_b=0.58,
)  # fmt: skip
LEVER = Hardware(kind="lever", projection=2.5, from_latch_edge=2.75, width=4, height=38, vertical=3.5)
KNOB = replace(LEVER, kind="knob", width=2.0, round=True)
PANIC = replace(LEVER, kind="panic device", face="push", projection=4, from_latch_edge=18, width=26)
RAIL = Obstruction(kind="chair rail", projection=1.75, start=0.5, bottom=32, top=42)
COLUMN = Obstruction(kind="column", start=20, offset=3, diameter=8)
CASING = Obstruction(kind="casing", from_frame=True, projection=0.6875, start=-0.5, length=3.25)
RETURN = Obstruction(kind="return wall", fills=True, start=4)
LATCH_BOX = Obstruction(kind="other", side="latch", projection=6, start=-1, length=3)

SETTINGS = [
    pytest.param((LEVER,), (RAIL,), None, id="rail and lever"),
    pytest.param((KNOB,), (COLUMN,), None, id="round on round"),
    pytest.param((PANIC,), (CASING, RETURN), None, id="casing and return wall"),
    pytest.param((LEVER, KNOB), (LATCH_BOX,), None, id="something at the latch side"),
    pytest.param((LEVER,), (RAIL,), OtherLeaf(opening=72, w=35.8125, beta=0.0625), id="pair"),
]


def _varied(count, seed):
    random = np.random.default_rng(seed)
    return {
        "p": random.uniform(-1.5, 1.0, count),
        "W": random.uniform(3.75, 8.0, count),
        "g_l": random.uniform(0.02, 0.2, count),
        "g_h": random.uniform(0.05, 0.2, count),
        "O": random.uniform(24.0, 48.0, count),
        "k": random.uniform(0.03, 0.1, count),
    }


def _same(value, expected):
    if expected is None:
        return math.isnan(value)
    return value == pytest.approx(expected, abs=1e-12, rel=0)


@pytest.mark.parametrize(("hardware", "obstructions", "other"), SETTINGS)
def test_each_answer_is_the_one_the_single_path_gives(hardware, obstructions, other):
    columns = _varied(200, 7)
    if other is not None:
        columns["O"] = np.full(200, 36.0625)
    things = {0: {"start": np.random.default_rng(8).uniform(0.0, 12.0, 200)}}
    many = Many(
        hanging=CASE_A, leaf=LEAF, hardware=hardware, obstructions=obstructions, other=other,
        columns=columns, thing_columns=things,
    )  # fmt: skip
    found = solve_many(many)
    least, out = latch_edges_of(many), answers_of(many, found)
    for row in range(200):
        one = Solution(many.one(row))
        assert _same(found.greatest_angle_bare[row], one.greatest_angle_bare), row
        assert _same(found.greatest_angle[row], one.greatest_angle), row
        assert _same(found.clear_width_at_90[row], one.clear_width_at_90), row
        assert _same(least[row], one.latch_edge_least), row
        assert _same(out.out_greatest[row], one.encroachment_greatest), row
        assert _same(out.out_at_rest[row], one.encroachment_at_rest), row
        assert _same(out.out_with_hardware_greatest[row], one.encroachment_with_hardware_greatest), row
        assert _same(out.out_with_hardware_at_rest[row], one.encroachment_with_hardware_at_rest), row
        assert _same(found.o[row], one.pin.o)
        assert _same(found.y_p[row], one.pin.y_p)
        assert _same(found.barrel_freedom[row], one.barrel_freedom)
        assert _same(found.clear_past_frame_at_180[row], one.clear_past_frame_at_180)


def test_a_graze_is_settled_singly():
    # Negative proud: 2o - i = 0.875 with a 4 in hinge, so a wall 7/8 ahead is touched only at 180 degrees.
    walls = np.array([-0.875 + 1e-6, -0.875, -0.875 - 1e-6])
    found = solve_many(Many(hanging=replace(CASE_A, W=4), leaf=LEAF, columns={"p": walls}))
    assert list(found.greatest_angle_bare[:2]) == [math.pi, math.pi]
    assert found.greatest_angle_bare[2] < math.pi
    assert 1 <= found.looked_at <= 3


def test_a_barrel_in_the_casing_holds_the_leaf_shut():
    # The barrel, 0.29 in about a pin 0.3125 in off the frame face, comes over the jamb's face: a casing that
    # begins there has it inside, one that stays 1/4 in off does not.
    things = {0: {"start": np.array([-2.0, -1.9, 0.25])}}
    many = Many(hanging=CASE_A, leaf=LEAF, obstructions=(CASING,), thing_columns=things)
    found = solve_many(many)
    singly = [Solution(many.one(row)).bare for row in range(3)]
    assert [found.names[place] for place in found.touches_bare[:2]] == [("casing", 0, "barrel")] * 2
    assert list(found.greatest_angle_bare[:2]) == [0.0, 0.0]
    assert [one.between for one in singly[:2]] == [("casing", 0, "barrel")] * 2
    assert found.greatest_angle_bare[2] > 0.0


def test_a_corner_that_comes_to_a_corner_is_a_meeting():
    # The door is flush and the pin stands halfway between the corners of leaf and frame, behind their face.
    hanging = replace(CASE_A, R=CASE_A.T + CASE_A.k)
    many = Many(hanging=hanging, leaf=replace(LEAF, barrels=()), columns={"W": np.array([2.25, 2.5, 2.75])})
    found = solve_many(many)
    assert found.looked_at == 0
    for row, width in enumerate((2.25, 2.5, 2.75)):
        behind = (CASE_A.T - CASE_A.b) - width / 2  # of the pin
        assert found.greatest_angle_bare[row] == pytest.approx(2 * math.atan(0.0625 / behind), abs=1e-12)
        assert _same(found.greatest_angle_bare[row], Solution(many.one(row)).greatest_angle_bare)


def test_most_openings_need_no_second_look():
    many = Many(hanging=CASE_A, leaf=LEAF, hardware=(LEVER,), obstructions=(RAIL,), columns=_varied(9000, 9))
    assert solve_many(many).looked_at < 90


def test_a_stop_angle_holds_all_of_them():
    many = Many(hanging=CASE_A, leaf=LEAF, hardware=(LEVER,), columns={"W": np.linspace(4.0, 7.5, 15)})
    out = answers_of(many, solve_many(many), math.pi / 2)
    for row in range(15):
        one = Solution(many.one(row), math.pi / 2)
        assert _same(out.out_greatest[row], one.encroachment_greatest)
        assert _same(out.out_with_hardware_at_rest[row], one.encroachment_with_hardware_at_rest)


@pytest.mark.parametrize("mounting", ["half mortise", "half surface", "full surface", "swing clear"])
def test_every_mounting(mounting):
    hanging = replace(CASE_A, mounting=mounting)
    many = Many(hanging=hanging, leaf=LEAF, columns={"p": np.linspace(-1.0, 1.0, 9)})
    found = solve_many(many)
    for row in range(9):
        assert _same(found.greatest_angle_bare[row], Solution(many.one(row)).greatest_angle_bare)


def test_columns_of_different_lengths_are_refused():
    with pytest.raises(ValueError, match="one length"):
        solve_many(Many(hanging=CASE_A, leaf=LEAF, columns={"p": np.zeros(2), "W": np.full(3, 4.5)}))


def test_no_columns_are_refused():
    with pytest.raises(ValueError, match="none"):
        solve_many(Many(hanging=CASE_A, leaf=LEAF))


def test_an_open_other_leaf_is_still_what_the_latch_edge_is_measured_to():
    # The inactive leaf meets nothing, for the active one stands open; its edge would bind where that closes.
    other = OtherLeaf(opening=72, w=35.8125, closed=False)
    hanging = replace(CASE_A, O=36.0625, W=8, g_l=0.0, beta=0.0)
    many = Many(hanging=hanging, leaf=LEAF, other=other, columns={"p": np.array([0.5])})
    one = Solution(many.one(0))
    assert one.bare is None
    assert one.latch_edge_least == 0.0
    assert latch_edges_of(many)[0] == 0.0
