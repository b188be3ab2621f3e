from dataclasses import replace

import pytest

from configurator.model import Opening
from configurator.study import study
from configurator.study.widths.width_pair import width_pair
from tests.drawing.cases import demo


def opening(compare, **more):
    return Opening.model_validate({"mark": "1", "hand": "RH", "size": {"width": 36, "height": 84}, **more,
                                   "compare": compare})  # fmt: skip


def widths(found):
    return [one.hinge_width for one in found.both]


def test_the_recommended_width_is_set_beside_the_next_narrower_one():
    found = width_pair(demo("112A"))
    assert widths(found) == [4.0, 4.5]
    assert found.recommended == 4.5


def test_the_least_width_recommended_is_set_beside_the_next_wider_one():
    found = width_pair(demo("171A"))
    assert found.recommended == 4.0
    assert widths(found) == [4.0, 4.5]


@pytest.mark.parametrize(
    ("compare", "shown"),
    [([4, 4.5, 5, 6], [4, 4.5]), ([6, 5, 4.5], [4.5, 6]), ([3.5, 4, 4.5], [3.5, 4]), ([5], [5])],
)
def test_of_several_widths_two_are_shown(compare, shown):
    """A plain 3-0 door takes a hinge 4 wide; where that is not compared, the ends are set side by side."""
    found = width_pair(study(opening(compare)))
    assert found.recommended == 4.0
    assert widths(found) == shown


def test_of_a_dutch_door_the_leaf_is_shown_that_the_hinge_changes():
    rail = {"kind": "chair rail", "projection": 2.25, "start": 0.5, "bottom": 60, "top": 64}
    found = width_pair(study(opening([4, 4.5, 6], leaves="dutch", obstructions=[rail])))
    assert found.leaf == "upper"
    assert found.narrower.rests_at < found.wider.rests_at


def test_a_study_of_them_has_nothing_else():
    found = width_pair(study(opening([4, 4.5, 5, 6], leaves="pair")))
    assert found.of(study(opening([4, 4.5, 5, 6], leaves="pair"))).candidates == found.both


def test_without_a_width_there_is_nothing_to_show():
    with pytest.raises(ValueError, match="no hinge width"):
        width_pair(replace(demo("112A"), candidates=()))
