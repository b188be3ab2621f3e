"""Dimensions of frame, wall and what stands along it, where somebody asks for them."""

import pytest

from configurator.drawing.base.primitives import Dimension
from configurator.drawing.plan.part_dimensions import KINDS, parts_of
from configurator.drawing.plan.sheet import plan_sheet
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study
from tests.drawing.plan.picture_bars import ANGLES, faults

SIZE = (1095.0, 510.0)


def lettered(study, kinds, size=SIZE):
    panels = plan_sheet(study, Display(), *size, kinds=kinds).panels
    return [{one.name: one for one in panel.main.notes if isinstance(one, Dimension)} for panel in panels]


def test_what_there_is_to_measure_by_hand():
    """Face 2, rabbet 1-15/16, wall 4-7/8 and the frame 1/2 proud of it on either side."""
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 42}
    hung = plan_sheet(case_a(obstructions=[rail]), Display(), *SIZE).panels[0].hung
    found = {part.name: part.value for part in parts_of(hung, KINDS)}
    assert found["frame face"] == 2
    assert found["rabbet"] == 1.9375
    assert found["stop height"] == 0.625
    assert found["jamb depth"] == 5.875
    assert found["throat"] == pytest.approx(found["jamb depth"] - 2 * hung.filled.return_depth)
    assert found["chair rail from the frame"] == 0.5
    assert found["chair rail stands out"] == 1.75
    assert parts_of(hung, ()) == ()


@pytest.mark.parametrize("kind", KINDS)
def test_they_are_shown_by_kind_named_alike_and_as_long_as_they_say(kind):
    study = demo("112A")
    assert not any(lettered(study, ()))
    one, other = lettered(study, (kind,))
    assert one
    for name, dimension in one.items():
        assert abs(dimension.a[0] - dimension.b[0]) + abs(dimension.a[1] - dimension.b[1]) == dimension.value
        if name in other:
            assert other[name].text.endswith(name) == dimension.text.endswith(name)


@pytest.mark.parametrize("seed", [3, 19, 43])
def test_they_lie_over_nothing(seed):
    sheet = plan_sheet(random_study(seed), Display(), 681.0, 307.0, kinds=KINDS)
    assert [list(faults(sheet, angle)) for angle in ANGLES[1::8]] == [[]] * 5
