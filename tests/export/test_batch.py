import numpy as np
import pytest
from matplotlib.path import Path

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Symbol, Text
from configurator.drawing.base.view import Box, Group, View, paper
from configurator.drawing.plan.sheet import moving_groups, plan_sheet
from configurator.export.batch import CLEAR, batch_of, line_pen, text_outline
from configurator.units import Display
from tests.drawing.cases import case_a, demo, random_study

SHEET = paper(100, 100)


def batch(*primitives, view=SHEET, dark=False):
    return batch_of([Group(view, primitives)], dark)


def test_lines_of_one_pen_are_one_path_and_level_ones_apart():
    lines = [Polyline("A-WALL", ((0, y), (50, y))) for y in (1, 2, 3)]
    slanted = Polyline("A-WALL", ((0, 0), (5, 7)))
    made = batch(*lines, slanted)
    assert [len(path.vertices) for path in made.paths] == [2, 6]
    assert made.pens == [line_pen("A-WALL", False)] * 2


def test_a_filled_part_is_ground_then_hatch_then_outline():
    square = Polygon("A-DETL-MCUT", ((10, 10), (60, 10), (60, 60), (10, 60)), "masonry")
    ground, hatch, outline = batch(square).pens
    assert ground.face != CLEAR
    assert ground.width == 0
    assert hatch == line_pen("A-DETL-PATT", False)
    assert outline == line_pen("A-DETL-MCUT", False)


def test_what_runs_out_of_the_window_is_cut_without_a_line_at_the_cut():
    wide = Polygon("A-DETL-MCUT", ((-500, 40), (500, 40), (500, 60), (-500, 60)), "solid")
    ground, outline = batch(wide).paths
    assert ground.get_extents().bounds == pytest.approx((0, 40, 100, 20))
    assert {y for _, y in outline.vertices} == {40, 60}
    assert all(a[1] == b[1] for a, b in outline.vertices.reshape(-1, 2, 2))


def test_an_arc_stays_a_curve():
    (path,) = batch(Arc("A-DOOR-SWNG", (50, 50), 10, 0, 3)).paths
    assert Path.CURVE4 in path.codes


def test_an_arc_out_of_the_window_is_cut_to_it():
    made = batch(Arc("A-DOOR-SWNG", (90, 50), 30, 0, 6.283, "solid"))
    assert all(path.get_extents().x1 <= 100 + 1e-9 for path in made.paths)
    assert len(made.paths) == 2


def test_a_mirrored_arc_is_the_mirror_image():
    view = View(1.0, (50.0, 0.0), True, Box(0, 0, 100, 100))
    arc = Arc("A-DOOR-SWNG", (0, 50), 10, 0.0, 1.0)
    plain, mirrored = batch(Arc("A-DOOR-SWNG", (50, 50), 10, 0.0, 1.0)), batch(arc, view=view)
    one, other = plain.paths[0].get_extents(), mirrored.paths[0].get_extents()
    assert (other.x0 + one.x1, other.y0) == pytest.approx((100, one.y0), abs=0.02)


def test_a_symbol_outside_the_window_is_left_out():
    assert batch(Symbol("A-ANNO-REDL", (50, 50), "contact")).paths
    assert not batch(Symbol("A-ANNO-REDL", (150, 50), "contact")).paths


def test_a_text_is_one_path_as_wide_as_its_room():
    (path,) = batch(Text("A-ANNO-TEXT", (10, 10), "chair rail", 8)).paths
    extents = path.get_extents()
    assert 10 <= extents.x0 < 12
    assert extents.x1 <= 10 + text_width("chair rail", 8)
    assert extents.width > 0.9 * text_width("chair rail", 8)


def test_letters_are_traced_and_spaces_leave_room():
    vertices, codes = text_outline("l l")
    half = len(codes) // 2
    assert np.allclose(vertices[half:] - vertices[:half], (text_width("l ", 1), 0))
    assert len(text_outline("")[0]) == 0


def test_the_dark_sheet_has_the_same_paths_in_other_inks():
    sheet = plan_sheet(demo("112A"), Display(), 864, 540)
    light, dark = (batch_of(sheet.still, dark) for dark in (False, True))
    assert all(np.array_equal(a.vertices, b.vertices) for a, b in zip(light.paths, dark.paths, strict=True))
    assert light.pens != dark.pens


@pytest.mark.parametrize("seed", range(8))
def test_nothing_is_drawn_outside_the_sheet(seed):
    sheet = plan_sheet(random_study(seed), Display(), 525, 315)
    for path in batch_of((*sheet.still, *moving_groups(sheet, 135), *sheet.notes), False).paths:
        extents = path.get_extents()
        assert extents.x0 >= -1e-6
        assert extents.y0 >= -1e-6
        assert extents.x1 <= 525 + 1e-6
        assert extents.y1 <= 315 + 1e-6


@pytest.mark.parametrize(
    "changes",
    [
        {"frame": {"jamb_depth": 60, "face": 24, "stop_height": 6}},
        {"frame": {"jamb_depth": 2, "face": 0.05, "stop_height": 0, "return_depth": 0}},
        {"wall": {"thickness": 120, "frame_proud": -60}},
        {"wall": {"thickness": 0.5, "frame_proud": 24}},
        {"size": {"width": 300, "height": 300}},
        {"size": {"width": 6, "height": 60}},
        {"obstructions": [{"kind": "column", "start": 0, "diameter": 240}]},
        {"obstructions": [{"kind": "chair rail", "start": -24, "projection": 600}]},
        {"hand": None, "compare": [1, 24]},
    ],
)
@pytest.mark.parametrize("size", [(900.0, 525.0), (270.0, 195.0)])
def test_the_most_outlandish_openings_are_still_drawn(changes, size):
    sheet = plan_sheet(case_a(**changes), Display(), *size)
    for angle in (0, 90, 180):
        assert batch_of((*sheet.still, *moving_groups(sheet, angle), *sheet.notes), False).paths


def test_twelve_widths_fit_a_small_window():
    widths = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 10]
    sheet = plan_sheet(case_a(compare=widths), Display(), 270, 195)
    assert len(sheet.panels) == 12
    assert batch_of((*sheet.still, *moving_groups(sheet, 90), *sheet.notes), False).paths
