"""The widths as data: every number in full, and a value only where there is one."""

import json

import pytest

from configurator.study import study
from configurator.study.widths.leaf_widths import widths_of
from tests.openings import RAIL, flat_opening, plain_opening


def data(**changes):
    (leaf,) = widths_of(study(flat_opening(**changes)))
    found = leaf.as_data()
    json.dumps(found, allow_nan=False)
    return found


def test_the_answers_in_full():
    found = data(obstructions=[RAIL])
    assert found["least"] == pytest.approx(4.375, abs=1e-8)
    assert (found["wanted_angle"], found["next_in_stock"]) == (180, 4.5)
    assert {"hinge_width": pytest.approx(3.8925), "what": "barrel free", "value": 0} in found["break_points"]
    narrow = found["widths"][0]
    assert narrow["greatest_angle_bare"] == pytest.approx(171.788, abs=5e-4)
    assert (narrow["fits"], narrow["binds"], narrow["barrel_free"]) == (False, False, True)
    (rail,) = narrow["greatest_projections"]
    assert rail == {
        "index": 0,
        "kind": "chair rail",
        "passes": "up to",
        "projection": pytest.approx(1.375, abs=1e-8),
    }


def test_no_value_where_there_is_none():
    found = data(obstructions=[RAIL, {"kind": "other", "projection": 2, "start": 60}], compare=[4, 7])
    (binding,) = (one for one in found["widths"] if one["hinge_width"] == 7)
    assert binding["binds"]
    assert binding["clear_width_at_90"] is None
    assert [one["passes"] for one in binding["greatest_projections"]] == ["stopped elsewhere"] * 2
    assert [one["projection"] for one in binding["greatest_projections"]] == [None, None]
    assert found["widths"][1]["greatest_projections"][1]["passes"] == "any"
    assert found["widths"][1]["greatest_projections"][1]["projection"] is None


def test_no_least_where_no_width_does_it():
    found = data(obstructions=[{"kind": "return wall", "start": 4}])
    assert (found["least"], found["least_for_angle"], found["next_in_stock"]) == (None, None, None)


def test_an_angle_that_nobody_asked_for_is_no_requirement():
    (leaf,) = widths_of(study(plain_opening(obstructions=[{"kind": "return wall", "start": 4}])))
    assert (leaf.must.wanted, leaf.must.asked, leaf.next_in_stock.width) == (90, False, 4)
    assert leaf.as_data()["wanted_angle"] == 90
