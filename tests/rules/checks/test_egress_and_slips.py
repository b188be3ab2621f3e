"""Corridors, slips on plain numbers, and new hinges in old mortises."""

from dataclasses import replace

import pytest

from configurator.rules.checks.egress import Corridor, Projecting, corridor_findings, projection_findings
from configurator.rules.checks.slips import (
    one_leaf_or_two,
    pairs_for_hinges,
    reference_face,
    swapped_door,
    swapped_hinge,
    too_few_hinges,
    two_leaf_count,
)
from configurator.rules.hinge.replacement import Cut, replacement_findings
from configurator.rules.hinge.uniform import Chosen, uniform_findings
from configurator.units import Display

STEP = 1 / 64


def corridor(**changes):
    usual = {"width": 60, "required": 44, "greatest": 38, "at_rest": 23, "flat": 3.625}
    return corridor_findings(Corridor(**{**usual, **changes}))


@pytest.mark.parametrize(
    ("changes", "codes"),
    [
        ({"greatest": 38 - STEP}, ["corridor kept"]),
        ({"greatest": 38}, ["corridor kept"]),  # 22 remain: just half of 44
        ({"greatest": 38 + STEP}, ["corridor in swing"]),
        ({"at_rest": 23 + STEP}, ["corridor at rest"]),  # 37 must remain: 44 less 7
        ({"greatest": 40, "at_rest": 40}, ["corridor in swing", "corridor at rest"]),
    ],
)
def test_corridor_boundaries(changes, codes):
    """IBC 2012 1005.7.1 as quoted in a secondary text; New York City has the same words."""
    assert [said.code for said in corridor(**changes)] == codes


def test_corridor_says_what_opening_flat_leaves():
    (said,) = corridor(at_rest=36.9375)
    assert "leaves 23-1/16 in at rest and 37 in must remain" in said.message
    assert "that leaves 56-3/8 in" in said.message
    (said,) = corridor(at_rest=36.9375, flat=None)
    assert "flat" not in said.message
    (said,) = corridor(at_rest=36.9375, flat=36.9375)
    assert "flat" not in said.message


def test_a_remainder_just_short_never_reads_as_enough():
    (said,) = corridor(at_rest=23.001)
    assert "leaves 36-31/32 in at rest and 37 in must remain" in said.message
    assert "leaves 36-63/64 in at rest and 37 in must remain" in said.said(Display(64))


def test_swapped_hinge():
    assert swapped_hinge(4.5, 4.5, 4) is None
    assert swapped_hinge(4.5, 4, 4) is None
    assert swapped_hinge(4.5, 4, 4.5).fix[0].value == 4.5


def test_swapped_door():
    assert swapped_door(36, 84, "single") is None
    assert swapped_door(84, 84, "single") is None
    assert swapped_door(96, 84, "pair") is None
    assert swapped_door(84, 36, "single") is not None
    assert swapped_door(84, 48, "single") is not None
    assert swapped_door(96, 84, "single") is None  # 84 wide would be no leaf either


@pytest.mark.parametrize(
    ("width", "height", "leaves", "asked"),
    [
        (48, 84, "single", False),
        (48 + STEP, 84, "single", True),
        (72, 84, "single", True),
        (96, 84, "single", True),
        (72, 84, "pair", False),
        (72, 84, "dutch", False),
        (84, 36, "single", False),  # typed height first: another slip
    ],
)
def test_a_leaf_wider_than_leaves_get_is_asked_about(width, height, leaves, asked):
    said = one_leaf_or_two(width, height, leaves)
    assert (said is not None) is asked
    assert said is None or [(one.path, one.value) for one in said.fix] == [("leaves", "pair")]


def ask(proud, least, width=4.5, height=4.5):
    path = "obstructions.0.projection"
    return reference_face(path, "chair rail", 1.75, proud, (height, width), least)


def test_reference_face_is_asked_only_where_it_matters():
    assert ask(0, 4.875) is None
    assert ask(-1, 4.875) is None
    assert ask(0.5, 4.5) is None
    assert "4-1/2 x 5 is needed" in ask(0.5, 4.5 + STEP).message
    assert "wider than any in stock" in ask(0.5, 9).message


def test_counts():
    assert too_few_hinges("single", 3, 3, 1, 80) is None
    assert too_few_hinges("single", 3, 4, 1, 80) is None
    single = too_few_hinges("single", 3, 2, 1, 80)
    assert "takes 3 hinges, not 2. Take 3 (1-1/2 pair)." in single.message
    assert single.fix
    upper = too_few_hinges("upper", 3, 2, 1, 80)
    assert upper.message.startswith("The upper leaf")
    assert upper.fix == ()
    assert two_leaf_count("dutch", 4, 4, 1) is None
    assert "80 for 20, not 60" in two_leaf_count("dutch", 4, 3, 20).message
    assert two_leaf_count("pair", 6, 3, 1).message.startswith("A pair takes 6 hinges, each leaf")


def test_slip_6_pairs_for_hinges():
    """40 x 3 = 120 hinges = 60 pair; 120 pair are six a door."""
    said = pairs_for_hinges(40, 3, 6)
    assert said.message.startswith("40 doors x 3 hinges = 120 hinges = 60 pair; 6 on each would be 240")
    assert "= 120 pair" in said.message
    assert said.fix[0].value == 3


@pytest.mark.parametrize(
    ("doors", "count", "slip"),
    [
        (40, 3, False),
        (40, 4, False),  # one more than it takes may well be meant
        (40, 5, False),
        (40, 6, True),
        (40, 7, False),
        (1, 3, False),
        (1, 6, True),
        (4, 11, False),
        (4, 12, True),  # the hinges of all four doors
        (4, 13, False),
    ],
)
def test_hinges_typed_as_pairs_or_for_all_doors(doors, count, slip):
    assert bool(pairs_for_hinges(doors, 3, count)) == slip


OLD = Cut(4.5, 4.5, 0.134, "square", True, "full mortise", 3)


@pytest.mark.parametrize(
    ("changes", "codes"),
    [
        ({}, ["replacement fits"]),
        ({"width": 5}, ["replacement fits"]),
        ({"width": 4}, ["leaf narrower"]),
        ({"height": 4}, ["mortise left open", "check the holes"]),
        ({"height": 5}, ["mortise too short", "check the holes"]),
        ({"leaf_thickness": 0.18}, ["leaf gage differs"]),
        ({"leaf_thickness": 0.123}, ["leaf gage differs"]),
        ({"corner": "1/4 radius"}, ["corner differs"]),
        ({"count": 2}, ["hinge count differs"]),
        ({"count": 4}, ["hinge count differs"]),
        ({"mounting": "half surface", "height": 5}, ["mounting differs"]),
        ({"to_template": False}, ["check the holes"]),
    ],
)
def test_replacement(changes, codes):
    said = replacement_findings(OLD, replace(OLD, **changes), fire_rated=False)
    assert [one.code for one in said] == codes


def test_replacement_squares_a_round_mortise():
    (said,) = replacement_findings(replace(OLD, corner="5/8 radius"), OLD, fire_rated=False)
    assert "square the mortise's corners" in said.message


def test_replacement_on_a_fire_door_is_no_business_of_ours():
    (said,) = replacement_findings(OLD, replace(OLD, height=5), fire_rated=True)
    assert said.severity == "error"
    assert "Stop here" in said.message


@pytest.mark.parametrize(
    ("projection", "bottom", "clear", "found"),
    [
        (4, 38, 32, False),
        (4 + STEP, 38, 32, True),
        (4 + STEP, 38, 33, False),  # it is the required width that counts, not the width there is
        (5 + STEP, 38, 33, True),
        (4, 34, 32, False),
        (STEP, 34 - STEP, 32, True),
        (1, 20, 33, False),
        (1 + STEP, 20, 33, True),
        (9, 80, 32, False),
        (9, 80 - STEP, 32, True),
        (9, 38, None, False),
    ],
)
def test_hardware_into_the_clear_width(projection, bottom, clear, found):
    """2010 ADA Standards 404.2.3."""
    said = projection_findings(Projecting("pull", projection, bottom, bottom + 3), clear, 32)
    assert bool(said) == found
    assert all(one.severity == "error" for one in said)


def chosen(mark, width, most=8.0, height=4.5, hinges=3):
    return Chosen(mark, height, width, hinges, lambda other: other <= most)


def test_one_width_for_the_job_and_what_it_costs():
    (said,) = uniform_findings([chosen("1", 4), chosen("2", 4.5), chosen("3", 4), chosen("4", 4.5, height=5)])
    assert "come in widths 4, 4-1/2 in this job. One width, 4-1/2 x 4-1/2, would do for all" in said.message
    assert "costs 6 of 9 hinges that are wider than they need be, at 1, 3." in said.message
    assert uniform_findings([chosen("1", 4), chosen("2", 4)]) == ()


def test_one_width_that_not_every_opening_takes():
    (said,) = uniform_findings([chosen("1", 4, most=4), chosen("2", 6)])
    assert "6 does not for 1. Keep them apart." in said.message


def test_many_marks_are_not_all_named():
    many = [chosen(str(number), 4) for number in range(9)]
    (said,) = uniform_findings([*many, chosen("wide", 5)])
    assert "at 0, 1, 2, 3, 4, 5 and 3 more" in said.message


def test_where_no_width_does_everything_that_width_is_named_and_its_hinges_are_counted():
    """Widths 4, 4-1/2 and a 7 that is kept: 3 of the 9 hinges would be wider than they need be."""
    kept = Chosen("9", 4.5, 7, 3, lambda _: False, complete=False)
    (said,) = uniform_findings([chosen("1", 4), chosen("2", 4.5), kept])
    assert (
        "come in widths 4, 4-1/2, 7 in this job. No width does everything for 9, taken at 7." in said.message
    )
    assert "would do for all the others" in said.message
    assert "costs 3 of 9 hinges" in said.message


def test_a_width_that_is_kept_alone_makes_them_differ():
    kept = Chosen("9", 4.5, 7, 3, lambda _: False, complete=False)
    (said,) = uniform_findings([chosen("1", 4), kept])
    assert said.code == "widths differ"
    assert said.message.endswith("taken at 7. Keep them apart, or mend it first.")
