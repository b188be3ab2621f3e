import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from configurator.drawing.base.hatch import hatch
from configurator.drawing.base.style import Material, Shade, materials
from tests.sweeps import examples

SQUARE = ((0, 0), (40, 0), (40, 40), (0, 40))
NOTCHED = ((0, 0), (60, 0), (60, 40), (40, 40), (40, 10), (20, 10), (20, 40), (0, 40))
PATTERNS = ["lines", "dots", "grain"]


def material(pattern, spacing=4.0, angle=45.0):
    return Material("test", Shade("#fff", "#000"), pattern, spacing, angle)


def test_level_lines_are_spaced_and_run_across():
    segments = hatch(SQUARE, material("lines", 10.0, 0.0))
    assert segments[:, 0, 1].tolist() == [10, 20, 30]
    assert np.allclose(segments[:, 0, 0], 0)
    assert np.allclose(segments[:, 1, 0], 40)


def test_slanted_lines_have_their_angle_and_spacing():
    segments = hatch(SQUARE, material("lines", 4.0, 45.0))
    way = segments[:, 1] - segments[:, 0]
    assert np.allclose(way[:, 0], way[:, 1])
    offsets = sorted((segments[:, 0, 1] - segments[:, 0, 0]) / math.sqrt(2))
    assert np.allclose(np.diff(offsets), 4.0)


def test_nothing_for_no_pattern_or_no_area():
    assert len(hatch(SQUARE, material("none"))) == 0
    assert len(hatch(((0, 0), (1, 1)), material("lines"))) == 0


def test_a_small_outline_between_rows_has_no_lines():
    assert len(hatch(((0, 1), (1, 1), (1, 2), (0, 2)), material("lines", 10.0, 0.0))) == 0


@pytest.mark.parametrize("pattern", PATTERNS)
@pytest.mark.parametrize("outline", [SQUARE, NOTCHED])
def test_every_line_lies_inside(pattern, outline):
    area = Polygon(outline).buffer(1e-6)
    segments = hatch(outline, material(pattern))
    assert len(segments) > 5
    assert all(area.covers(LineString(segment)) for segment in segments)


@examples(20)
@given(st.sampled_from(PATTERNS), st.floats(0, 2 * math.pi), st.floats(3, 60), st.floats(3, 60))
def test_every_line_lies_inside_a_turned_rectangle(pattern, turn, width, height):
    c, s = math.cos(turn), math.sin(turn)
    outline = [(c * x - s * y, s * x + c * y) for x, y in ((0, 0), (width, 0), (width, height), (0, height))]
    area = Polygon(outline).buffer(1e-6)
    assert all(area.covers(LineString(segment)) for segment in hatch(outline, material(pattern), turn))


def test_grain_turns_with_its_part():
    turn = 0.7
    c, s = math.cos(turn), math.sin(turn)
    rotation = np.array([[c, s], [-s, c]])
    still = hatch(SQUARE, material("grain", 3.0, 0.0))
    moved = hatch([tuple(point) for point in np.array(SQUARE) @ rotation], material("grain", 3.0, 0.0), turn)
    assert np.allclose(moved, still @ rotation)


def test_a_huge_outline_does_not_drown_the_sheet_in_lines():
    outline = ((0, 0), (1e6, 0), (1e6, 1e6), (0, 1e6))
    assert len(hatch(outline, material("lines"))) <= 1600


def test_the_styles_own_patterns_all_draw():
    big = ((0, 0), (300, 0), (300, 300), (0, 300))
    for one in materials().values():
        assert (len(hatch(big, one)) > 0) == (one.pattern != "none"), one.name
