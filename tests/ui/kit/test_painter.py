import numpy as np
import pytest
from PySide6.QtGui import QFontMetricsF, QImage

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Arc, Polygon, Polyline, Text, rectangle
from configurator.drawing.base.view import Box, View
from configurator.drawing.pages.page import Detail, Page, Paper, Scale
from configurator.ui.kit.painter import letters
from configurator.ui.sheets.preview import picture_of

PAPER = Paper("small", 100 * 25.4 / 72, 50 * 25.4 / 72)


def pixels(*items, mirrored=False):
    """Return a page of 100 by 50 points as rows of grey, 4 pixels a point; details at 10 points an inch."""
    origin = (90.0, 10.0) if mirrored else (10.0, 10.0)
    view = View(10.0, origin, mirrored, Box(0.0, 0.0, 100.0, 50.0))
    page = Page("x", PAPER, (Detail("x", Scale("x", 10 / 72), view, items),), ())
    image = picture_of(page, 4.0).toImage().convertToFormat(QImage.Format.Format_Grayscale8)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.bytesPerLine())
    return rows[:, : image.width()].copy()  # the image's own memory goes with it


def inked(grey):
    """Return what is inked, points from the lower left corner: left, bottom, right, top."""
    ys, xs = np.nonzero(grey < 128)
    return xs.min() / 4, 50 - (ys.max() + 1) / 4, (xs.max() + 1) / 4, 50 - ys.min() / 4


def test_a_filled_square_lies_where_it_should(qapp):
    square = Polygon("A-WALL", rectangle(1.0, 3.0, 0.0, 2.0), "steel", outlined=False)
    assert inked(pixels(square)) == pytest.approx((20.0, 10.0, 40.0, 30.0), abs=0.3)
    assert inked(pixels(square, mirrored=True)) == pytest.approx((60.0, 10.0, 80.0, 30.0), abs=0.3)


def test_a_line_is_as_wide_as_its_layers_pen(qapp):
    """A wall's line is 0.5 mm: 1.42 points."""
    left, bottom, right, top = inked(pixels(Polyline("A-WALL", ((0.0, 1.0), (5.0, 1.0)))))
    assert (left, right) == pytest.approx((10.0, 60.0), abs=0.3)
    assert top - bottom == pytest.approx(0.5 * 72 / 25.4, abs=0.3)


def test_an_arc_runs_counter_clockwise_and_is_mirrored_with_its_view(qapp):
    quarter = Arc("A-WALL", (2.0, 0.0), 2.0, 0.0, np.pi / 2)
    assert inked(pixels(quarter)) == pytest.approx((30.0, 10.0, 50.0, 30.0), abs=0.8)
    assert inked(pixels(quarter, mirrored=True)) == pytest.approx((50.0, 10.0, 70.0, 30.0), abs=0.8)


def test_dashes_leave_gaps(qapp):
    whole, dashed = (
        (pixels(Polyline(layer, ((0.0, 1.0), (8.0, 1.0)))) < 128).sum()
        for layer in ("A-DOOR-FRAM", "A-DOOR-NARW")
    )
    assert 0 < dashed < whole


def test_lettering_starts_and_ends_where_the_sheet_counts_on_it(qapp):
    left, bottom, right, _ = inked(pixels(Text("A-ANNO-TEXT", (0.0, 0.0), "HHHHHH", 10.0)))
    assert left == pytest.approx(10.0, abs=1.2)
    assert right == pytest.approx(10.0 + text_width("HHHHHH", 10.0), abs=1.2)
    assert bottom == pytest.approx(10.0, abs=0.4)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("text", ["4-1/2 x 4-1/2 hinge", "pin off frame", "AVAWAT 171.8°", "21/32 in"])
def test_letters_are_as_wide_as_the_drawing_counts_them(qapp, text, bold):
    """No kerning and no ligature may change what the placing of texts relies on."""
    wide = QFontMetricsF(letters(bold)).horizontalAdvance(text)
    assert wide == pytest.approx(text_width(text, 100.0, bold), rel=0.01)
