from dataclasses import replace

import pytest

from configurator.sentences import written
from configurator.study import study
from configurator.study.tolerance.analysis import tolerance_result
from configurator.study.tolerance.findings import (
    chance_words,
    off_words,
    tolerance_finding,
    tolerance_sentence,
    what_to_do,
)
from configurator.study.tolerance.result import BARREL, CLEAR_WIDTH, LOCK_EDGE, MOUNTING, SWING, Reach
from tests.openings import RAIL, plain_opening

EXACT = dict.fromkeys(
    ("frame_setting", "wall_thickness", "gaps", "door_thickness", "hinge_backset", "hinge_width"), 0
)
LOW_RAIL = {**RAIL, "projection": 1.25}
"""Clears a 4 in hinge by 1/8 in."""


def found(width=4, rail=LOW_RAIL, **changes):
    things = {} if rail is None else {"obstructions": [rail]}
    return tolerance_result(study(plain_opening(**things, **changes)), "single", width, 1000)


@pytest.mark.parametrize(
    ("worked", "draws", "words"),
    [
        (1000, 1000, "always"),
        (999, 1000, "more than 99 %"),
        (995, 1000, "more than 99 %"),
        (994, 1000, "99 %"),
        (970, 1000, "97 %"),
        (551, 1000, "55 %"),
        (550, 1000, "about half"),
        (500, 1000, "about half"),
        (450, 1000, "about half"),
        (449, 1000, "45 %"),
        (5, 1000, "1 %"),
        (4, 1000, "less than 1 %"),
        (1, 1000, "less than 1 %"),
        (0, 1000, "never"),
        (99_999, 100_000, "more than 99 %"),
    ],
)
def test_a_chance_is_said_no_finer_than_it_is_known(worked, draws, words):
    assert chance_words(worked, draws) == words


def test_what_is_off_is_said_plainly():
    assert written(off_words("wall_thickness", True, 1 / 16)) == "a wall 1/16 in thicker"
    assert written(off_words("frame_setting", False, 1 / 16)) == "a frame set 1/16 in back"


def test_what_works_in_every_case_says_what_is_to_spare_and_what_more_it_bears():
    said = tolerance_sentence(found(tolerances={**EXACT, "wall_thickness": 1 / 16}))
    assert said == (
        "Works with 1/8 in to spare, also with everything off at once at its worst; "
        "a wall 1/8 in thicker still works."
    )
    assert tolerance_finding(found(tolerances=EXACT)) is None
    assert what_to_do(found(tolerances=EXACT)) == ""


def test_what_one_tolerance_stops_names_it_with_its_angle():
    result = found(tolerances={**EXACT, "frame_setting": 3 / 16})
    built = study(plain_opening(wall={"frame_proud": 0.5 - 3 / 16}, obstructions=[LOW_RAIL])).candidates[0]
    angle = f"{built.greatest_angle_bare:.1f}°"
    assert tolerance_sentence(result).startswith(
        "Works as drawn with 1/8 in to spare, but with a frame set 3/16 in back it stops at "
        f"{angle}, short of 180°. It works in 8"
    )
    said = tolerance_finding(result)
    assert said is not None
    assert said.code == "how sure"
    assert said.severity == "warning"
    assert said.numbers["chance"] == result.chance
    assert said.message.endswith("Take a wider hinge, or measure what is built before ordering.")
    assert len(said.message) < 420
    assert what_to_do(result) in said.message
    assert said.mark_of_source == "derived"


def test_what_only_all_together_stop_says_so():
    result = found(tolerances={**EXACT, "frame_setting": 1 / 8, "hinge_width": 1 / 32})
    assert "but with everything off at once at its worst it stops at" in tolerance_sentence(result)
    said = tolerance_finding(result)
    assert said is not None
    assert said.severity == "note"


def test_what_does_not_work_says_how_short_it_is():
    said = tolerance_sentence(found(rail=RAIL))
    assert said.startswith("Does not work as drawn: it stops at 171.7°, short of 180°; ")
    assert "a frame set 3/8 in farther out would do." in said


def test_a_lock_edge_that_binds_is_the_cause_that_is_named():
    assert "the lock edge binds" in tolerance_sentence(found(7, None))


def test_too_little_to_walk_through_is_never_rounded_to_enough():
    result = found(
        6, None, use={"accessible": True}, door={"latch_bevel": 0.125}, tolerances={"hinge_width": 0.0625}
    )
    said = tolerance_finding(result)
    assert said is not None
    assert "leaves 31-" in said.message
    assert "narrower hinge" in said.message


def test_the_sources_of_the_tolerances_are_named():
    said = tolerance_finding(found(width=4))
    assert said is not None
    assert "3.02.B" in said.source
    assert "(from memory)" in said.source


@pytest.mark.parametrize(
    ("moves", "advice"), [(True, "Take a wider hinge"), (False, "Take another mounting")]
)
def test_a_wider_hinge_is_advised_only_where_width_moves_the_pin(moves, advice):
    result = replace(found(tolerances={**EXACT, "frame_setting": 3 / 16}), width_moves_pin=moves)
    assert what_to_do(result) == f"{advice}, or measure what is built before ordering."


def failing(check, clear=31.99):
    return Reach(120.0, clear, -0.1, -0.3, (check,))


@pytest.mark.parametrize(
    ("check", "clear", "words"),
    [
        (MOUNTING, 32.0, "the hinge leaf runs out past the far side"),
        (BARREL, 32.0, "the barrel overlaps the door or the frame by 5/16 in"),
        (LOCK_EDGE, 32.0, "the lock edge binds"),
        (SWING, 32.0, "it stops at 120°, short of 180°"),
        (CLEAR_WIDTH, None, "it does not come square open"),
        (CLEAR_WIDTH, 31.99, "it leaves 31-31/32 in to walk through"),
    ],
)
def test_each_check_that_fails_as_drawn_is_said_in_its_own_words(check, clear, words):
    result = replace(found(tolerances=EXACT), as_drawn=failing(check, clear), effects=(), worked=0)
    assert tolerance_sentence(result) == (
        f"Does not work as drawn: {words}."  # nothing that is off would mend it: so no more is said
    )
    assert tolerance_finding(result) is None
    assert what_to_do(result) == ""


@pytest.mark.parametrize(
    ("check", "advice"),
    [
        (CLEAR_WIDTH, "Take a narrower hinge or a wider opening, or hold what is built closer."),
        (LOCK_EDGE, "Bevel the lock edge more, or widen its gap."),
        (SWING, "Take a wider hinge, or measure what is built before ordering."),
        (BARREL, "Take a wider hinge, or measure what is built before ordering."),
        (MOUNTING, "Measure what is built before ordering."),
    ],
)
def test_what_to_do_goes_by_what_fails_at_the_worst(check, advice):
    result = replace(found(tolerances=EXACT), worst=failing(check), effects=(), worked=950, draws=1000)
    assert what_to_do(result) == advice
    said = tolerance_finding(result)
    assert said is not None
    assert said.severity == "note"  # 95 in 100 is likely enough
    assert said.message.endswith(advice)
    assert "with everything off at once at its worst" in said.message
    numbers = {"chance": 0.95, "draws": 1000, "worst_angle": 120.0, "margin": 0.125}
    assert dict(said.numbers) == pytest.approx(numbers, abs=1e-8)
    seldom = tolerance_finding(replace(result, worked=0))
    assert seldom is not None
    assert seldom.severity == "warning"


def test_what_there_is_to_spare_is_said_of_the_swing_and_of_what_gives_way_first():
    result = found(tolerances=EXACT)
    both = replace(result, margins={**result.margins, SWING: 0.125, LOCK_EDGE: 0.0625}, margin_of=LOCK_EDGE)
    assert tolerance_sentence(both).startswith("Works with 1/8 in to spare")
    assert "and 1/16 in" in tolerance_sentence(both)
    none = replace(result, margins=dict.fromkeys(result.margins), margin_of=SWING)
    assert tolerance_sentence(none).startswith("Works, also with everything off at once at its worst")
