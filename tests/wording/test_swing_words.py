"""What is said of a leaf over its swing."""

from dataclasses import replace

import pytest

from configurator.study import study
from configurator.study.over_the_swing import over_the_swing
from configurator.units import Display
from configurator.wording.swing_words import (
    bevel_words,
    edges_said,
    needed_words,
    out_at,
    swing_reading,
    swing_rows,
)
from tests.openings import LEVER, plain_opening

INCHES, FINE, METRIC = Display(32), Display(64), Display(metric=True)


def swings(gap=1 / 16, **changes):
    return over_the_swing(study(plain_opening(**changes)), gap)


def rows(display=INCHES, **changes):
    return {row.name: row.values for row in swing_rows(swings(**changes), display)}


@pytest.mark.parametrize(
    ("bevel", "words"),
    [(1 / 16, "1/8 in 2"), (1 / 32, "1/16 in 2"), (5 / 128, "5/64 in 2"), (0.0201, "0.04 in 2")],
)
def test_a_bevel_as_the_trade_says_it(bevel, words):
    assert bevel_words(bevel, INCHES) == words


@pytest.mark.parametrize(
    ("bevel", "words"),
    [(1 / 16, "1/8 in 2"), (1 / 32, "1/16 in 2"), (0.0201, "3/64 in 2"), (0.03126, "5/64 in 2")],
)
def test_the_bevel_needed_is_rounded_up(bevel, words):
    needed = replace(swings(compare=[4])[0].latch, bevel=1.0, bevel_needed=bevel)
    assert needed_words(needed, FINE) == f"{words}: it has it"


def test_a_bevel_in_millimetres():
    assert bevel_words(1 / 16, METRIC) == "3.2 mm in 50.8 mm"


def test_a_least_gap_below_the_wanted_one_is_not_shown_as_it():
    # 0.0563 is nearer to 1/16 than to 3/64, and less than the 1/16 wanted; it passes at 2.955 degrees.
    assert rows(compare=[4])["Lock edge, square"] == ("1/32 in at 2.9°",)
    assert rows(FINE, compare=[4])["Lock edge, square"] == ("3/64 in at 2.9°",)
    assert rows(FINE, compare=[4], gap=1 / 32)["Lock edge, square"] == ("3/64 in at 2.9°",)


def test_square_and_beveled_are_both_told():
    found = rows(compare=[4, 7], door={"latch_bevel": 1 / 16})
    assert found["Lock edge, 1/8 in 2"] == ("3/32 in at 0.2°", "1/16 in at 3.0°")
    assert found["Lock edge, if it were square"][1] == "touches at 2.3°"
    assert found["Bevel that leaves 1/16 in there"][0].endswith("it has it")


def test_the_bevel_needed():
    (beveled,) = swings(compare=[4])
    assert needed_words(beveled.latch, FINE) == "1/64 in 2: it has less"
    assert needed_words(beveled.latch, INCHES) == "1/32 in 2: it has less"
    (square,) = swings(gap=1 / 32, compare=[4])
    assert needed_words(square.latch, INCHES) == "none: square does"
    (never,) = swings(gap=0.13, compare=[4])
    assert needed_words(never.latch, INCHES) == "none does: widen the gap"


def test_how_far_it_stands_out():
    assert rows(compare=[4.5], use={"stop_angle": 90})["Stands out at rest"] == ("36-15/16 in at 90°",)
    with_lever = rows(compare=[4], hardware=[LEVER])
    assert with_lever["Stands out at rest, leaf alone"] == ("3-1/8 in at 180°",)
    assert with_lever["Stands out at rest, with hardware"] != with_lever["Stands out at rest, leaf alone"]


def test_the_curve_is_read_between_its_points_and_not_past_rest():
    (one,) = swings(compare=[4.5], use={"stop_angle": 90})
    assert out_at(one.bare, 90) == pytest.approx(36.9375, abs=1e-9)
    assert one.bare.curve[0][1] < out_at(one.bare, 0.25) < one.bare.curve[1][1]
    assert out_at(one.bare, 90.1) is None
    assert swing_reading(one, 120, INCHES) == "open 120°; the leaf stops at 90°; with hardware stops at 90°"
    assert swing_reading(one, 90, INCHES) == "open 90°; the leaf stands out 36-15/16 in"


def test_all_of_it_as_sentences():
    said = edges_said(swings(compare=[4, 7]), INCHES)
    assert said.startswith("4 in: lock edge, square 1/32 in at 2.9°; ")
    assert " 7 in: lock edge, square touches at 2.3°; " in said


def test_an_inactive_leaf_has_no_lock_edge_to_tell_of():
    pair = swings(leaves="pair", size={"width": 72, "height": 84}, compare=[4])
    names = {one.leaf: [row.name for row in swing_rows([one], INCHES)] for one in pair}
    assert names["active"][0] == "Lock edge, square"
    assert names["inactive"][0] == "Hinge edge"
