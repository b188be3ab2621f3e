"""What is said in a DXF against what is measured in it, on openings at random."""

import io
import re
from functools import cache

import ezdxf
import pytest
from ezdxf.document import Drawing
from ezdxf.entities import Viewport

from configurator.drawing.base.primitives import Dimension
from configurator.drawing.base.style import layers
from configurator.drawing.base.view import Box
from configurator.drawing.pages.page import Page
from configurator.export.dxf.entities import NAMES
from configurator.export.pages import pages_as_bytes
from configurator.units import format_size
from tests.export.measuring import MM_PER_POINT, Lettered, Sheet, says_its_length, scale_bar
from tests.export.random_sheets import KINDS, display_of, page_of, random_study, scales_of, seeds_of

LAYER = re.compile(r"A-[A-Z]{4}(-[A-Z]{4}){0,2}")
STUDIED = {
    "pin axis off door face": "pin_off_door_face",
    "pin axis off frame face": "pin_off_frame_face",
    "barrel past frame face": "barrel_past_frame",
    "barrel past wall face": "barrel_past_wall",
    "clear width at 90": "clear_width_at_90",
}
SERIES = {18, 25, 35, 50, 70}


@cache
def drawings(kind: str) -> list[tuple[int, Page, Drawing]]:
    found = []
    for seed in seeds_of(kind):
        page = page_of(kind, seed)
        text = pages_as_bytes([page], ".dxf").decode("utf-8")
        found.append((seed, page, ezdxf.read(io.StringIO(text))))
    return found


pytestmark = pytest.mark.parametrize("kind", KINDS)


def test_every_drawing_passes_the_audit_with_no_error_and_no_fix(kind):
    for seed, _, drawing in drawings(kind):
        found = drawing.audit()
        assert (found.errors, found.fixes) == ([], []), seed


def test_every_dimension_is_a_dimension_as_long_as_it_says(kind):
    for seed, page, drawing in drawings(kind):
        drawn = [item for one in page.details for item in one.primitives if isinstance(item, Dimension)]
        dimensions = drawing.modelspace().query("DIMENSION")
        assert len(dimensions) == len(drawn)
        for one in dimensions:
            (drawn,) = one.get_geometry_block().query("TEXT")
            real = abs(one.get_measurement()) / unit_of(drawing)
            for text in (drawn.dxf.text, written_anew(one)):
                assert says_its_length(text, real, display_of(seed), 1e-6), (seed, text)


def unit_of(drawing: Drawing) -> float:
    return 25.4 if drawing.header["$INSUNITS"] == 4 else 1.0


def written_anew(one) -> str:
    """Return what a drawing program letters where it draws a dimension again by its style."""
    style, length = one.get_dim_style().dxf, abs(one.get_measurement())
    number = f"{length:.{style.dimdec}f}"
    if style.dimlunit == 5:
        number = format_size(round(length * 2**style.dimdec) / 2**style.dimdec, 6)
    return one.dxf.text.replace("<>", number)


def test_dimensions_measure_what_the_study_found(kind):
    """The drawing against the numbers it was made from, by the name that each dimension carries."""
    for seed, _, drawing in drawings(kind):
        for one in drawing.modelspace().query("DIMENSION"):
            name = one.get_xdata(NAMES)[0].value
            found = [
                getattr(each, STUDIED[name]) for each in random_study(seed).candidates if name in STUDIED
            ]
            real = abs(one.get_measurement()) / unit_of(drawing)
            near = [value for value in found if value == pytest.approx(real, abs=1e-6)]
            assert near or name not in STUDIED, (seed, name)


def test_layers_follow_the_pattern_and_line_weights_the_series(kind):
    for _, _, drawing in drawings(kind):
        ours = [
            layer
            for layer in drawing.layers
            if layer.dxf.name not in ("0", "Defpoints", "A-DETL-GRND", "A-DETL-MASK")
        ]
        assert [layer.dxf.name for layer in ours if not LAYER.fullmatch(layer.dxf.name)] == []
        assert {layer.dxf.lineweight for layer in ours} <= SERIES
        assert {layer.dxf.name for layer in ours} <= set(layers())


def test_every_entity_takes_line_weight_and_line_type_from_a_layer_that_is_there(kind):
    for seed, _, drawing in drawings(kind):
        names = {layer.dxf.name for layer in drawing.layers}
        for layout in drawing.layouts:
            for one in layout:
                assert one.dxf.layer in names, (seed, str(one))
                assert not one.dxf.hasattr("lineweight") or one.dxf.lineweight == -1, (seed, str(one))


def test_a_layout_shows_each_detail_at_its_scale_on_its_paper(kind):
    for seed, page, drawing in drawings(kind):
        layout = drawing.paperspace()
        size = (layout.dxf.paper_width, layout.dxf.paper_height)
        assert size == pytest.approx((page.paper.width, page.paper.height), abs=0.1)
        ratios = [one.dxf.height / one.dxf.view_height for one in viewports(drawing)]
        assert ratios == pytest.approx([detail.scale.ratio for detail in page.details]), seed


def test_a_viewport_shows_its_detail_and_no_other(kind):
    for seed, _, drawing in drawings(kind):
        shown = [model_box(one) for one in viewports(drawing)]
        for number, (left, bottom, right, top) in enumerate(shown):
            for other in shown[:number]:
                apart = other[0] >= right or other[2] <= left or other[1] >= top or other[3] <= bottom
                assert apart, seed


def viewports(drawing: Drawing) -> list[Viewport]:
    return [one for one in drawing.paperspace().viewports() if one.dxf.id > 1]


def model_box(one: Viewport) -> tuple[float, float, float, float]:
    high, wide = one.dxf.view_height, one.dxf.view_height * one.dxf.width / one.dxf.height
    x, y, *_ = one.dxf.view_center_point
    return (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)


def test_every_scale_bar_is_as_long_as_it_says(kind):
    for seed, page, drawing in drawings(kind):
        for scale in scales_of(page):
            long, said = scale_bar(on_paper(drawing), scale.name)
            assert long * MM_PER_POINT == pytest.approx(said * scale.ratio * 25.4, abs=0.1), (seed, scale)


def on_paper(drawing: Drawing) -> Sheet:
    """Return the texts of a layout, each as the point it is set from, and the parts of its scale bars."""
    layout = drawing.paperspace()
    sheet = Sheet(layout.dxf.paper_width, layout.dxf.paper_height)
    point = 72 / unit_of(drawing)
    for one in layout.query("TEXT"):
        x, y = point * one.get_placement()[1].x, point * one.get_placement()[1].y
        sheet.texts.append(Lettered(one.dxf.text, Box(x, y, x, y)))
    for one in layout.query('LWPOLYLINE[layer=="A-ANNO-SBAR"]'):
        xs, ys = zip(*((point * x, point * y) for x, y, *_ in one.get_points()), strict=True)
        sheet.rectangles.append(Box(min(xs), min(ys), max(xs), max(ys)))
    return sheet
