"""Boundaries of what the plan says of one leaf on one hinge width."""

import pytest

from configurator.rules.plan_findings import PlanAnswer, plan_findings
from tests.rules.hung import codes, opening, specified

STEP = 1 / 64
USUAL = {
    "leaf": "single",
    "height": 4.5,
    "width": 4,
    "barrel": 0.58,
    "barrel_free_by": 0.1,
    "angle_bare": 180.0,
    "angle": 180.0,
    "wanted_angle": 180.0,
    "stopped_bare": None,
    "stopped": None,
    "touching_at_rest": False,
    "hardware_lands": None,
    "latch_least": 0.0625,
    "clear_width": 33.0,
    "accessible": True,
    "clear_margin": 0.0,
    "stop_angle": None,
    "backset_disagreement": 0.0,
    "gap_disagreement": 0.0,
}


def said(**changes):
    return [one.code for one in plan_findings(PlanAnswer(**{**USUAL, **changes}))]


@pytest.mark.parametrize(
    ("clear", "margin", "expected"),
    [
        (32 - STEP, 0, ["too narrow to pass"]),
        (32, 0, []),
        (32 + STEP, 0, []),
        (32 - STEP, 0.5, ["too narrow to pass"]),
        (32, 0.5, ["margin not kept"]),
        (32.5 - STEP, 0.5, ["margin not kept"]),
        (32.5, 0.5, []),
        (32.5 + STEP, 0.5, []),
    ],
)
def test_clear_width_and_the_users_margin(clear, margin, expected):
    """2010 ADA Standards 404.2.3 for the 32 in; the margin is the user's own."""
    assert said(clear_width=clear, clear_margin=margin) == expected
    assert said(clear_width=clear, clear_margin=margin, accessible=False) == []


def test_a_width_a_hair_short_of_the_margin_does_not_read_as_kept():
    (one,) = plan_findings(PlanAnswer(**{**USUAL, "clear_width": 32.4999, "clear_margin": 0.5}))
    assert "width is 32-31/64 in" in one.message


@pytest.mark.parametrize(
    ("gap", "words"),
    [
        (0.004, "less than 1/64 in"),
        (1 / 64, "only 1/64 in"),
        (1 / 32 - 1e-6, "only 1/64 in"),
        (1 / 32, None),
        (1 / 32 + STEP, None),
    ],
)
def test_a_lock_edge_that_hardly_passes(gap, words):
    """Half of the usual fitting tolerance of 1/16, derived."""
    found = plan_findings(PlanAnswer(**{**USUAL, "latch_least": gap}))
    assert [one.code for one in found] == ([] if words is None else ["tight at the lock side"])
    assert all(words in one.message for one in found)


def test_a_lock_edge_that_binds_is_not_also_tight():
    assert said(latch_least=0.0, angle_bare=4.0, stopped_bare=("leaf", "latch jamb")) == [
        "binds at the lock side"
    ]


def test_the_margin_decides_the_width_and_is_said_once():
    """4 leaves 33-1/16 and 4-1/2 leaves 32-13/16: a margin of 1 keeps the wide one out."""
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    free = specified(opening(obstructions=[rail]))
    held = specified(opening(obstructions=[rail], use={"clear_width_margin": 1}))
    assert (free.as_data()["width"], held.as_data()["width"]) == (4.5, 4)
    assert "margin not kept" not in codes(free)
    by_hand = specified(opening(use={"clear_width_margin": 1}, hinge={"width": 4.5}))
    assert [one.code for one in by_hand.findings].count("margin not kept") == 1
