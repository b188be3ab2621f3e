import json
from functools import cache

import pytest

from configurator.study import study
from configurator.study.tolerance.analysis import tolerance_result
from configurator.study.tolerance.deviations import NAMES, OF_AN_AXIS
from configurator.study.tolerance.turning_points import EXACT
from configurator.units import CLOSED_IN, Display
from configurator.wording.tolerance_rows import name_of, tolerance_heads, tolerance_rows
from tests.openings import RAIL, plain_opening

LOW_RAIL = {**RAIL, "projection": 1.25}
"""Clears a 4 in hinge by 1/8 in."""


def result(width=4, rail=LOW_RAIL, **changes):
    changes = {"door": {"latch_bevel": 0.0625}, "obstructions": [rail], **changes}
    return _result(width, json.dumps(changes))


@cache
def _result(width, changes):
    return tolerance_result(study(plain_opening(**json.loads(changes))), "single", width, 10)


def row(found, name, display=None):
    return next(one for one in tolerance_rows(found, display or Display()) if one.name == name)


def test_there_is_a_row_for_everything_that_may_be_off():
    assert [one.name for one in tolerance_rows(result(), Display())] == list(NAMES)
    on_pivots = study(plain_opening(compare=[{"hung_on": "offset pivot"}]))
    (pivot,) = on_pivots.candidates
    found = tolerance_result(on_pivots, "single", pivot.on, 10)
    assert [one.name for one in tolerance_rows(found, Display())] == list(OF_AN_AXIS)


def test_what_is_left_is_said_with_its_sign():
    setting = row(result(), "frame_setting")
    assert (setting.minus, setting.plus) == ("180°", "180°")
    assert (setting.down_to, setting.up_to) == ("−1/8 in", "any")
    assert setting.stops == (False, False)


@pytest.mark.parametrize(
    ("rail", "display", "words"),
    [
        (1.25, Display(), "−1/8 in"),
        (1.26, Display(), "−3/32 in"),
        (1.24, Display(), "−1/8 in"),
        (1.26, Display(metric=True), "−2.9 mm"),
        (1.37, Display(), "less than 1/32 in"),
    ],
)
def test_what_is_left_is_never_rounded_up(rail, display, words):
    assert row(result(rail={**RAIL, "projection": rail}), "frame_setting", display).down_to == words


@cache
def _coarse_and_fine(projection):
    one = study(plain_opening(obstructions=[{**RAIL, "projection": projection}], compare=[4]))
    return [tolerance_result(one, "single", 4, 10, fineness=each) for each in (CLOSED_IN, EXACT)]


@pytest.mark.parametrize("projection", [1.25, 1.26, 1.75, 2.0])
@pytest.mark.parametrize("display", [Display(16), Display(32), Display(64), Display(metric=True)])
def test_what_is_found_less_finely_reads_the_same(projection, display):
    """The window looks to a millionth of an inch, the command line as finely as it can be found."""
    coarse, fine = _coarse_and_fine(projection)
    assert tolerance_rows(coarse, display) == tolerance_rows(fine, display)


def test_what_stops_it_by_itself_is_marked():
    found = result(tolerances={"frame_setting": 3 / 16})
    setting = row(found, "frame_setting")
    assert setting.stops == (True, False)
    assert setting.minus.startswith("17")
    assert "A frame set 3/16 in back: swing fails" in setting.tip


def test_what_does_not_work_has_a_place_where_it_would():
    found = result(rail=RAIL)
    assert tolerance_heads(found)[-2:] == ("Would work at", "or at")
    assert tolerance_heads(result())[-2:] == tolerance_heads(None)[-2:] == ("Works down to", "Works up to")
    setting = row(found, "frame_setting")
    assert (setting.down_to, setting.up_to) == ("none", "+3/8 in")
    assert setting.stops == (False, False)
    short = row(result(rail={**RAIL, "projection": 1.74}), "frame_setting")
    assert short.up_to == "+3/8 in", "what it needs is never rounded down: 0.365"


@pytest.mark.parametrize(
    ("changes", "name", "words"),
    [
        ({"door": {"latch_bevel": 0}, "tolerances": {"gaps": "1/8"}}, "latch_gap", "lock edge binds"),
        (
            {"hinge": {"barrel": 0.74}, "tolerances": {"hinge_width": "1/32"}},
            "hinge_width",
            "barrel overlaps",
        ),
    ],
)
def test_what_keeps_it_from_working_is_named_at_the_least(changes, name, words):
    assert row(result(**changes), name).minus == words


def test_a_clear_width_that_fails_is_shown_short_of_what_is_asked():
    found = result(6, use={"accessible": True}, tolerances={"hinge_width": 0.126})
    assert row(found, "hinge_width").plus == "31-31/32 in clear"


def test_one_row_matters_most_and_says_so():
    found = result(tolerances={"wall_thickness": 0.25})
    (most,) = [one for one in tolerance_rows(found, Display()) if one.most]
    assert most.name == "wall_thickness"
    assert most.tip.startswith("This one matters most.")


def test_names_in_both_kinds_of_words():
    assert name_of("latch_gap", plain=False) == "Latch-side gap"
    assert name_of("latch_gap", plain=True) == "Gap on the lock side"
