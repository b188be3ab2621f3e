import math

import numpy as np
import pytest

from configurator.drawing.base.hatch import hatch
from configurator.drawing.base.style import materials
from configurator.export.dxf.tables import pattern_lines

SQUARE = ((0.0, 0.0), (60.0, 0.0), (60.0, 60.0), (0.0, 60.0))


def test_lines_step_square_to_themselves():
    ((angle, base, step, dashes),) = pattern_lines(materials()["masonry"], 0.0, (0.0, 0.0), 0.5)
    assert (angle, base, dashes) == (pytest.approx(45.0), (0.0, 0.0), [])
    # 5.5 points apart, half a unit a point, up and to the left.
    assert step == pytest.approx((-2.75 / math.sqrt(2), 2.75 / math.sqrt(2)))


def test_a_pattern_turns_with_its_part():
    ((angle, base, step, _),) = pattern_lines(materials()["wood"], math.pi / 2, (3.0, 4.0), 1.0)
    assert (angle, base) == (pytest.approx(90.0), (3.0, 4.0))
    assert step[0] == pytest.approx(-materials()["wood"].spacing)


@pytest.mark.parametrize("name", [name for name, one in materials().items() if one.pattern != "none"])
def test_rows_are_as_far_apart_as_on_paper(name):
    material = materials()[name]
    ((angle, _, step, _),) = pattern_lines(material, 0.0, (0.0, 0.0), 1.0)
    turn = math.radians(angle)
    apart = -step[0] * math.sin(turn) + step[1] * math.cos(turn)
    starts = hatch(SQUARE, material)[:, 0]
    rows = np.unique(np.round(-starts[:, 0] * math.sin(turn) + starts[:, 1] * math.cos(turn), 6))
    assert np.diff(rows).min() == pytest.approx(apart, abs=1e-5)


@pytest.mark.parametrize("name", ["gypsum", "wood"])
def test_a_dash_and_its_gap_are_one_period(name):
    ((_, _, _, dashes),) = pattern_lines(materials()[name], 0.0, (0.0, 0.0), 1.0)
    period = materials()[name].spacing * (1 if name == "gypsum" else 9)
    assert dashes[0] - dashes[1] == pytest.approx(period)
    assert dashes[0] > 0 > dashes[1]
