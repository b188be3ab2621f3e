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
