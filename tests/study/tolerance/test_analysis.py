"""Worked by hand for a door opened flat: it clears by 2 o - i + p less what stands on the wall."""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.project_file import load
from configurator.rules.hinge.leaf_hinge import leaf_hinges
from configurator.rules.hinge.width import does_all
from configurator.rules.specification import must_of
from configurator.study import study
from configurator.study.tolerance.analysis import FEW_DRAWS, tolerance_data, tolerance_result, wall_share
from configurator.study.tolerance.turning_points import EXACT as EXACTLY
from tests.openings import RAIL, flat_opening
from tests.sweeps import examples, sized

EXACT = {
    "frame_setting": 0,
    "wall_thickness": 0,
    "gaps": 0,
    "door_thickness": 0,
    "hinge_backset": 0,
    "hinge_width": 0,
}
DEMOS = Path(__file__).resolve().parents[3] / "demo_openings"
ROUGHLY = 1.0
"""Inches: how finely turning points are found where a test reads none; they take most of the time."""
FLAT_4 = 0.875 + 0.5
"""Inches: 2 o - i + p with a 4 in hinge on the plain opening."""


def result(width=4, draws=200, rail=None, fineness=EXACTLY, **changes):
    if rail is not None:
        changes["obstructions"] = [{**RAIL, "projection": rail}]
    return tolerance_result(study(flat_opening(**changes)), "single", width, draws, fineness=fineness)


def turns(found, name):
    return tuple(end.turns_at for _, end in found.effect(name).ends)


# --- Worked by hand ---


def test_what_each_thing_may_be_off_over_a_rail_that_clears_by_an_eighth():
    found = result(rail=FLAT_4 - 1 / 8)
    assert found.works
    assert found.margins["swing"] == pytest.approx(1 / 8, abs=2e-9)
    assert turns(found, "frame_setting") == (pytest.approx(1 / 8, abs=2e-9), None)
    assert turns(found, "wall_thickness") == (None, pytest.approx(1 / 8, abs=2e-9))
    assert found.effect("hinge_width").minus.turns_at == pytest.approx(1 / 8, abs=2e-9)
    assert found.effect("door_thickness").plus.turns_at == pytest.approx(1 / 8, abs=2e-9)
    # The pin moves by the whole backset, the open door by twice as much.
    assert found.effect("hinge_backset").minus.turns_at == pytest.approx(1 / 16, abs=2e-9)
    assert {found.effect(name).minus.fails_by for name in ("frame_setting", "hinge_width")} == {"swing"}


def test_a_frame_centred_in_its_wall_gives_half_of_a_thicker_wall_to_the_pull_side():
    centred = flat_opening(
        wall={"frame_proud": None, "thickness": 4.875}, obstructions=[{**RAIL, "projection": 1.25}]
    )
    answer = study(centred)
    assert answer.filled.frame_proud == 0.5
    assert wall_share(answer.filled) == 0.5
    assert wall_share(study(flat_opening()).filled) == 1.0
    found = tolerance_result(answer, "single", 4, 100)
    assert found.effect("wall_thickness").plus.turns_at == pytest.approx(1 / 4, abs=2e-9)


@pytest.mark.parametrize(("wall", "holds"), [(1 / 16 - 1e-6, True), (1 / 16, True), (1 / 16 + 1e-6, False)])
def test_frame_and_wall_together_eat_the_eighth_exactly(wall, holds):
    found = result(
        rail=1.25, fineness=ROUGHLY, tolerances={**EXACT, "frame_setting": 1 / 16, "wall_thickness": wall}
    )
    assert found.works
    assert found.works_worst_case is holds


def test_the_worst_angle_is_that_of_an_opening_built_so():
    found = result(
        rail=1.25, fineness=ROUGHLY, tolerances={**EXACT, "frame_setting": 1 / 16, "wall_thickness": 1 / 8}
    )
    built = study(
        flat_opening(wall={"frame_proud": 0.5 - 3 / 16}, obstructions=[{**RAIL, "projection": 1.25}])
    )
    assert found.worst.greatest_angle == pytest.approx(built.candidates[0].greatest_angle_bare, abs=1e-9)
    assert found.worst.fails == ("swing",)


def test_two_tolerances_leave_seven_draws_in_eight():
    """Frame and wall each within 1/8: their sum is a triangle over 1/4, an eighth of it below -1/8."""
    found = result(
        draws=40_000,
        rail=1.25,
        fineness=ROUGHLY,
        tolerances={**EXACT, "frame_setting": 1 / 8, "wall_thickness": 1 / 8},
    )
    assert found.chance == pytest.approx(7 / 8, abs=0.006)


def test_what_grazes_has_half_a_chance():
    found = result(draws=40_000, rail=FLAT_4, fineness=ROUGHLY, tolerances={**EXACT, "frame_setting": 1 / 16})
    assert found.works
    assert found.chance == pytest.approx(0.5, abs=0.01)


def test_what_is_short_by_more_than_everything_never_works():
    found = result(rail=1.75, tolerances={**EXACT, "frame_setting": 1 / 16})
    assert not found.works
    assert found.worked == 0
    assert found.margin == pytest.approx(-3 / 8, abs=2e-9)
    assert turns(found, "frame_setting") == (None, pytest.approx(3 / 8, abs=2e-9))


def test_clear_width_goes_by_hinge_backset_and_gap_but_not_by_thickness():
    """O - s - (g_h/2 + W/2 + b): a sixteenth over 32 in with a 6 in hinge."""
    found = result(6, door={"latch_bevel": 0.0625}, use={"accessible": True})
    assert found.margins["clear width"] == pytest.approx(1 / 16)
    assert found.effect("hinge_width").plus.turns_at == pytest.approx(1 / 8, abs=4e-9)
    assert found.effect("hinge_gap").plus.turns_at == pytest.approx(1 / 8, abs=4e-9)
    assert found.effect("hinge_backset").plus.turns_at == pytest.approx(1 / 16, abs=4e-9)
    assert found.effect("hinge_backset").plus.fails_by == "clear width"
    assert found.effect("door_thickness").plus.at.clear_width_at_90 == pytest.approx(32.0625)


def test_without_an_accessible_route_no_clear_width_is_asked():
    assert result(8, door={"latch_bevel": 0.125}).required_clear_width is None


def test_a_barrel_is_free_by_what_stands_past_the_frame():
    """Half of 4 in less 1-5/8 of the frame side is 3/8 off the frame face; the barrel's half is 0.29."""
    found = result(hinge={"barrel": 0.58}, door={"latch_bevel": 0.0625})
    assert found.margins["barrel"] == pytest.approx(0.085)
    assert found.effect("hinge_backset").minus.turns_at == pytest.approx(0.085, abs=2e-9)
    assert found.effect("hinge_width").minus.turns_at == pytest.approx(0.17, abs=4e-9)
    assert found.effect("hinge_width").minus.fails_by == "barrel"


def test_a_lock_edge_that_hardly_passes_is_what_gives_way():
    found = result(6)
    assert found.margins["lock edge"] == pytest.approx(0.004128, abs=1e-6)
    assert (found.margin_of, found.matters_most) == ("lock edge", "latch_gap")
    assert found.effect("latch_gap").minus.fails_by == "lock edge"
    assert result(7).as_drawn.fails[0] == "lock edge"


def test_what_matters_most_matters_at_the_limit_that_fails():
    """7 in leaves 31-9/16 clear of the 32 asked: that the swing turns on the rail is beside the point.

    A door thicker by so much takes as much of the clear width; a hinge wider by so much only half of it.
    """
    asks = {"accessible": True, "wanted_angle": 90}
    door = {"latch_bevel": 0.125}
    found = result(7, rail=3.5, door=door, use=asks, tolerances={"hinge_width": 0.03, "door_thickness": 0.03})
    assert found.as_drawn.fails == ("clear width",)
    at = {effect.name: effect for effect in found.effects}

    def moves(name):
        ends = at[name].minus.at, at[name].plus.at
        return abs(ends[0].clear_width_at_90 - ends[1].clear_width_at_90)

    assert moves(found.matters_most) == max(moves(name) for name in at)
    assert found.margin_of == "clear width"


@pytest.mark.parametrize("width", [4, 4.5, 5, 6])
def test_what_matters_most_can_reach_a_limit_that_fails_at_the_worst(width):
    found = result(width, rail=2 * (width / 2 - 1.5) + 0.375 - 1 / 16)
    assert found.works
    assert found.worst.fails
    ends = [end for _, end in found.effect(found.matters_most).ends if end.fails_by in found.worst.fails]
    assert ends
    assert found.margin_of in found.worst.fails


def test_a_half_mortised_hinge_ends_where_its_leaf_would_run_out():
    """b = T + o - W/2 with o = 0.29 + 1/8: 0.165 left with a 4 in hinge."""
    found = result(hinge={"mounting": "half mortise", "barrel": 0.58}, door={"latch_bevel": 0.0625})
    assert found.effect("hinge_width").plus.turns_at == pytest.approx(0.33, abs=4e-9)
    assert found.effect("hinge_width").plus.fails_by == "mounting"


# --- The same as studying an opening that is built so ---

BUILT_OFF = {
    "frame_setting": lambda by: {"wall": {"frame_proud": 0.5 + by}},
    "wall_thickness": lambda by: {"wall": {"frame_proud": 0.5 - by}},
    "latch_gap": lambda by: {"door": {"latch_gap": 0.125 + by}},
    "hinge_gap": lambda by: {"door": {"hinge_gap": 0.125 + by}},
    "hinge_backset": lambda by: {"door": {"hinge_backset": 0.25 + by}},
    "door_thickness": lambda by: {"door": {"thickness": 1.75 + by}, "frame": {"rabbet": 1.9375}},
    "hinge_width": lambda by: {"compare": [4.5 + by]},
}


@pytest.mark.parametrize("name", BUILT_OFF)
@pytest.mark.parametrize("by", [-1 / 16, 1 / 16])
def test_one_thing_off_is_as_if_it_were_drawn_so(name, by):
    rail = {"obstructions": [{**RAIL, "projection": 1.9}], "hinge": {"barrel": 0.58}}
    tolerances = dict.fromkeys(EXACT, 1 / 16)
    found = result(4.5, rail=1.9, fineness=ROUGHLY, tolerances=tolerances, hinge={"barrel": 0.58})
    (drawn, *_) = study(flat_opening(**{**rail, "compare": [4.5], **BUILT_OFF[name](by)})).candidates
    effect = found.effect(name)
    at = (effect.minus if by < 0 else effect.plus).at
    assert at.greatest_angle == pytest.approx(drawn.greatest_angle_bare, abs=1e-9)
    assert at.clear_width_at_90 == pytest.approx(drawn.clear_width_at_90, abs=1e-9)
    assert at.barrel_freedom == pytest.approx(drawn.solution.barrel_freedom, abs=1e-9)


@pytest.mark.parametrize("short", [-1e-6, 1e-6])
def test_the_turning_point_is_where_the_study_turns(short):
    rail = {**RAIL, "projection": 1.6, "start": 3}
    by = tolerance_result(study(flat_opening(obstructions=[rail])), "single", 4.5, 1).effect("frame_setting")
    assert by.minus.turns_at is not None
    proud = 0.5 - by.minus.turns_at + short
    built = study(flat_opening(wall={"frame_proud": proud}, obstructions=[rail])).candidates[1]
    assert (built.greatest_angle_bare == 180) is (short > 0)


def demo_leaves():
    more = (
        flat_opening(mark="pair", leaves="pair", size={"width": 72, "height": 84}),
        flat_opening(mark="dutch", leaves="dutch"),
    )
    jobs = [load(path) for path in sorted(DEMOS.glob("*.json"))]
    for facts, opening in [
        *((job.job, one) for job in jobs for one in job.openings),
        *((None, one) for one in more),
    ]:
        answer = study(opening, facts)
        for candidate in answer.candidates:
            name = f"{opening.mark} {candidate.leaf} {candidate.hinge_width:g}"
            yield pytest.param(answer, candidate, id=name)


@pytest.mark.parametrize(("answer", "candidate"), tuple(demo_leaves())[:: sized(5, 1)])
def test_as_drawn_it_agrees_with_the_study_and_no_draw_is_worse_than_the_worst_case(answer, candidate):
    found = tolerance_result(answer, candidate.leaf, candidate.hinge_width, 500, fineness=ROUGHLY)
    (must,) = [
        must_of(answer.filled, hinge)
        for hinge in leaf_hinges(answer.filled)
        if hinge.leaf.name == candidate.leaf
    ]
    # A door stop asks no more of the leaf than it lets it do.
    assert found.works is does_all(candidate, replace(must, wanted=found.wanted_angle))
    assert found.as_drawn.greatest_angle == pytest.approx(candidate.greatest_angle_bare, abs=1e-9)
    corners = tolerance_result(answer, candidate.leaf, candidate.hinge_width, 1, fineness=ROUGHLY)
    assert found.worst.greatest_angle == pytest.approx(corners.worst.greatest_angle, abs=1e-9)
    assert found.works_worst_case is corners.works_worst_case


# --- Properties ---


@examples(10)
@given(st.sampled_from([4, 4.5, 5]), st.floats(0.05, 0.9), st.floats(0, 1))
def test_what_is_to_spare_is_what_stands_between(width, spare, proud):
    """2 o - i + p - projection, with o = W/2 - 1-1/2, whatever the width and the frame's place."""
    rail = 2 * (width / 2 - 1.5) - 0.125 + proud - spare
    if rail < 0.05:
        return
    found = result(width, 1, rail=rail, door={"latch_bevel": 0.0625}, wall={"frame_proud": proud})
    assert found.margins["swing"] == pytest.approx(spare, abs=3e-9)


@examples(10)
@given(st.floats(1.0, 1.6), st.floats(0, 0.25), st.floats(0, 0.25))
def test_a_wider_tolerance_is_never_surer(rail, narrow, more):
    tolerances = {**EXACT, "frame_setting": narrow}
    less = result(4, 50, rail, ROUGHLY, tolerances=tolerances)
    wide = result(4, 50, rail, ROUGHLY, tolerances={**tolerances, "frame_setting": narrow + more})
    assert wide.worst.greatest_angle <= less.worst.greatest_angle + 1e-9
    if less.works:
        assert wide.worked <= less.worked


@examples(12)
@given(st.floats(0.9, 1.9), st.floats(0, 0.2))
def test_worst_case_and_chance_never_contradict_each_other(rail, by):
    found = result(4, 100, rail, ROUGHLY, tolerances={**EXACT, "wall_thickness": by})
    if found.works_worst_case:
        assert found.works
        assert found.chance == 1
    if found.chance < 1:
        assert not found.works_worst_case
    assert found.worst.greatest_angle <= found.as_drawn.greatest_angle


# --- Odds and ends ---


def test_the_same_seed_gives_the_same_draws():
    answer = study(flat_opening(obstructions=[RAIL]))
    first, again = (tolerance_result(answer, "single", 4.5, 3000, 7, ROUGHLY).worked for _ in range(2))
    assert first == again
    assert tolerance_result(answer, "single", 4.5, 3000, 8, ROUGHLY).worked != first


def test_nothing_off_is_nothing_that_matters():
    found = result(rail=1.25, tolerances=EXACT)
    assert found.works_worst_case
    assert found.matters_most is None
    assert found.chance == 1
    assert found.margin == pytest.approx(1 / 8, abs=2e-9)


def test_a_door_stop_short_of_the_wanted_angle_is_all_that_is_asked():
    found = result(rail=1.75, use={"stop_angle": 120})
    assert found.wanted_angle == 120
    assert found.works


def test_a_bumper_on_the_wall_is_all_that_is_asked_for_too():
    bumper = {"kind": "wall bumper", "projection": 8, "from_frame": 28, "height": 38}
    found = result(rail=1.75, door_stop=bumper)
    rests = study(flat_opening(door_stop=bumper, obstructions=[RAIL])).candidates[0].rests_at
    assert found.wanted_angle == pytest.approx(rests)
    assert 90 < found.wanted_angle < 171
    assert found.works


def test_a_stop_short_of_square_leaves_no_clear_width():
    assert result(use={"stop_angle": 80}).as_drawn.clear_width_at_90 is None


@pytest.mark.parametrize(
    ("leaf", "draws", "words"), [("upper", 1, "no upper leaf in 1"), ("single", 0, "least one draw")]
)
def test_what_cannot_be_asked_is_refused(leaf, draws, words):
    with pytest.raises(ValueError, match=words):
        tolerance_result(study(flat_opening()), leaf, 4, draws)


def test_tolerances_that_leave_no_door_are_refused():
    thin = flat_opening(door={"thickness": 0.5}, tolerances={"door_thickness": 0.5})
    with pytest.raises(ValueError, match="leaves nothing of a door"):
        tolerance_result(study(thin), "single", 4, 1)


def test_the_results_name_everything():
    data = tolerance_data(result(4.5, rail=1.8))
    for key in ("works", "works_worst_case", "margin", "matters_most", "chance", "draws", "seed"):
        assert key in data
    assert set(data["tolerances"]) == set(EXACT)
    assert len(data["effects"]) == 7
    assert data["finding"]["code"] == "how sure"
    assert data["sentence"].startswith("Works as drawn with 1/16 in to spare, but with ")


def test_an_astragal_that_laps_the_leaf_leaves_few_draws_and_says_how_many():
    astragal = {
        "kind": "astragal",
        "leaf": "inactive",
        "face": "push",
        "projection": 0.5,
        "from_latch_edge": 0,
        "width": 2,
        "height": 42,
        "vertical": 80,
    }
    pair = flat_opening(leaves="pair", size={"width": 72, "height": 84}, hardware=[astragal])
    lapped = tolerance_result(study(pair), "active", 4, 5000, fineness=ROUGHLY)
    assert lapped.works
    assert lapped.draws == FEW_DRAWS
    assert tolerance_result(study(pair), "inactive", 4, 5000, fineness=ROUGHLY).draws == 5000


def test_an_inactive_leaf_has_nothing_to_pass_at_its_lock_edge():
    """It opens behind the open active leaf; a tight gap between the two binds only the active one."""
    pair = flat_opening(leaves="pair", size={"width": 72, "height": 84}, door={"meeting_gap": 1 / 64})
    leaves = {
        name: tolerance_result(study(pair), name, 4, 500, fineness=ROUGHLY) for name in ("active", "inactive")
    }
    assert leaves["active"].margins["lock edge"] is not None
    assert "lock edge" in leaves["active"].worst.fails
    assert leaves["inactive"].margins["lock edge"] is None
    assert "lock edge" not in leaves["inactive"].worst.fails
    assert "lock edge" not in tolerance_data(leaves["inactive"])["sentence"]
