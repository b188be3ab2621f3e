"""The chart's own widget: redrawn by size, its line moved by itself, both themes, any pixel ratio."""

import pytest
from PySide6.QtCore import QPointF, Qt

from configurator.drawing.base.style import inks
from configurator.drawing.charts.chart import Axis, Chart, Curve
from configurator.ui.kit.chart_canvas import ChartCanvas
from tests.ui.conftest import move_pointer

CHART = Chart(
    Axis("across", 0, 10, ((0, "0"), (10, "10"))),
    Axis("up", 0, 100, ((0, "0"), (100, "100"))),
    (Curve("A-CHRT-BARE", ((0.0, 10.0), (10.0, 90.0)), "the curve"),),
    said="what it shows",
)


@pytest.fixture
def canvas(qtbot):
    canvas = ChartCanvas("a chart")
    qtbot.addWidget(canvas)
    canvas.resize(400, 220)
    canvas.show()
    canvas.show_chart(CHART, lambda x: f"at {x:.1f}", dark=False, choices=(2.0, 6.0))
    return canvas


def pixels(canvas):
    return canvas.grab().toImage()


def place(canvas, x):
    return QPointF(canvas.sheet.place(x, 0)[0] * 96 / 72, canvas.height() / 2)


def test_it_shows_the_paper_of_the_theme(canvas):
    for dark in (False, True):
        canvas.show_chart(CHART, str, dark)
        assert pixels(canvas).pixelColor(1, 1).name() == inks()["paper"].on(dark)


def test_the_line_comes_and_goes_and_leaves_the_rest_as_it_was(canvas):
    before = pixels(canvas)
    canvas.stand_line(4.0)
    with_line = pixels(canvas)
    assert with_line != before
    canvas.stand_line(None)
    assert pixels(canvas) == before


def test_the_line_is_where_a_whole_redraw_puts_it(canvas):
    canvas.stand_line(4.0)
    moved = pixels(canvas)
    canvas.show_chart(CHART, str, dark=False)
    assert pixels(canvas) == moved


def test_a_marked_value_is_taken_near_it_and_not_farther(qtbot, canvas):
    at = place(canvas, 6.0)
    assert canvas.choice_at(at + QPointF(7, 0)) == 6.0
    assert canvas.choice_at(at + QPointF(9, 0)) is None
    with qtbot.waitSignal(canvas.chosen) as caught:
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert caught.args == [6.0]


def test_over_a_marked_value_the_pointer_is_a_hand(qtbot, canvas):
    move_pointer(canvas, place(canvas, 6.0))
    assert canvas.cursor().shape() == Qt.CursorShape.PointingHandCursor
    move_pointer(canvas, place(canvas, 4.0))
    assert canvas.cursor().shape() == Qt.CursorShape.ArrowCursor


def test_it_reads_inside_the_plot_only(canvas):
    assert canvas.read_at(place(canvas, 4.0)) == "at 4.0"
    assert canvas.read_at(QPointF(2, canvas.height() / 2)) == ""
    assert canvas.read_at(QPointF(place(canvas, 4.0).x(), 1)) == ""


def test_without_a_chart_nothing_is_read_or_taken(qtbot):
    canvas = ChartCanvas("nothing yet")
    qtbot.addWidget(canvas)
    canvas.show()
    assert canvas.read_at(QPointF(50, 50)) == ""
    assert canvas.choice_at(QPointF(50, 50)) is None
    canvas.stand_line(3.0)


def test_it_is_laid_out_again_for_another_size(canvas):
    canvas.resize(700, 400)
    assert canvas.sheet.width == pytest.approx(700 * 72 / 96)
    assert canvas.accessibleDescription() == "what it shows"
