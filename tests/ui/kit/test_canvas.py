import numpy as np
import pytest
from PySide6.QtCore import QPointF

from configurator.export.pages import write_plan
from configurator.model import JobFacts
from configurator.ui.kit.canvas import DPI, PlanCanvas
from configurator.units import Display
from tests.drawing.cases import demo
from tests.ui.conftest import move_pointer


@pytest.fixture
def canvas(qtbot):
    widget = PlanCanvas()
    qtbot.addWidget(widget)
    widget.resize(800, 500)
    widget.show()
    return widget


def pixels(canvas):
    return np.asarray(canvas.buffer_rgba()).copy()


def test_an_empty_canvas_stays_empty_whatever_is_asked(canvas, tmp_path):
    before = pixels(canvas)
    canvas.set_angle(45)
    canvas.set_dark(True)
    assert np.array_equal(pixels(canvas), before)
    assert canvas.name_under(QPointF(10, 10)) == ""
    with pytest.raises(ValueError, match="no picture"):
        canvas.save_picture(tmp_path / "plan.png", JobFacts())


def test_swinging_in_part_gives_the_same_pixels_as_drawing_the_whole(canvas):
    canvas.show_study(demo("112A"), 30, Display(), False)
    for angle in (60, 120, 171, 180, 90):
        canvas.set_angle(angle)
    in_part = pixels(canvas)
    canvas.show_study(demo("112A"), 90, Display(), False)
    assert np.array_equal(pixels(canvas), in_part)


def test_nothing_stale_is_left_of_another_study(canvas):
    canvas.show_study(demo("205A"), 120, Display(), False)
    fresh = pixels(canvas)
    canvas.show_study(demo("171A"), 90, Display(), True)
    canvas.set_angle(30)
    canvas.show_study(demo("205A"), 120, Display(), False)
    assert np.array_equal(pixels(canvas), fresh)


def test_the_angle_theme_and_units_are_shown(canvas):
    canvas.show_study(demo("112A"), 90, Display(), False)
    seen = [pixels(canvas)]
    canvas.set_angle(91)
    seen.append(pixels(canvas))
    canvas.set_dark(True)
    seen.append(pixels(canvas))
    canvas.show_study(demo("112A"), 91, Display(metric=True), True)
    seen.append(pixels(canvas))
    for number, one in enumerate(seen):
        assert not any(np.array_equal(one, other) for other in seen[number + 1 :])


def test_an_angle_asked_for_before_the_study_is_kept(canvas):
    canvas.set_angle(45)
    canvas.show_study(demo("112A"), 45, Display(), False)
    before = pixels(canvas)
    canvas.set_angle(45)
    assert np.array_equal(pixels(canvas), before)


def test_resizing_lays_the_sheet_out_again(canvas, qtbot):
    canvas.show_study(demo("112A"), 90, Display(), False)
    canvas.resize(1000, 420)
    qtbot.waitUntil(lambda: pixels(canvas).shape[:2] == (420, 1000))
    assert canvas._sheet.width == pytest.approx(1000 / DPI * 72)
    resized = pixels(canvas)
    canvas.show_study(demo("112A"), 90, Display(), False)
    assert np.array_equal(pixels(canvas), resized)


def test_the_name_under_the_pointer(canvas, qtbot):
    canvas.show_study(demo("112A"), 90, Display(), False)
    panel = canvas._sheet.panels[0]
    x, y = panel.main.view.to_sheet(panel.hung.pin.at)
    at = QPointF(x * DPI / 72, (canvas._sheet.height - y) * DPI / 72)
    assert canvas.name_under(at) == "pin axis"
    with qtbot.waitSignal(canvas.hovered, check_params_cb=lambda name: name == "pin axis"):
        move_pointer(canvas, at)


def test_a_picture_is_saved_as_it_is_shown(canvas, tmp_path):
    canvas.show_study(demo("112A"), 90, Display(), True)
    canvas.save_picture(tmp_path / "dark.svg", JobFacts())
    assert "#1f272e" in (tmp_path / "dark.svg").read_text()


def test_plain_words_are_lettered_and_saved(canvas, qtbot, tmp_path):
    canvas.resize(1200, 700)  # room for words in full
    qtbot.waitUntil(lambda: pixels(canvas).shape[:2] == (700, 1200))
    canvas.show_study(demo("112A"), 90, Display(), False)
    trade = pixels(canvas)
    canvas.save_picture(tmp_path / "trade.svg", JobFacts())
    canvas.show_study(demo("112A"), 90, Display(), False, plain=True)
    assert not np.array_equal(pixels(canvas), trade)
    canvas.save_picture(tmp_path / "plain.svg", JobFacts())
    assert (tmp_path / "plain.svg").read_bytes() != (tmp_path / "trade.svg").read_bytes()


def test_what_is_swept_is_shown_saved_and_lies_still_while_it_swings(canvas, tmp_path):
    canvas.show_study(demo("112A"), 60, Display(), False)
    plain = pixels(canvas)
    canvas.show_study(demo("112A"), 100, Display(), False, swept=True)
    canvas.set_angle(60)
    in_part = pixels(canvas)
    assert not np.array_equal(in_part, plain)
    canvas.show_study(demo("112A"), 60, Display(), False, swept=True)
    assert np.array_equal(pixels(canvas), in_part)
    canvas.save_picture(tmp_path / "swept.svg", JobFacts())
    write_plan(demo("112A"), tmp_path / "drawn.svg", 60, Display(), swept=True)
    write_plan(demo("112A"), tmp_path / "plain.svg", 60, Display())
    assert (tmp_path / "swept.svg").read_bytes() == (tmp_path / "drawn.svg").read_bytes()
    assert (tmp_path / "swept.svg").read_bytes() != (tmp_path / "plain.svg").read_bytes()


def test_the_window_s_shape_does_not_show_in_the_saved_picture(canvas, qtbot, tmp_path):
    facts = JobFacts(name="Ferry terminal")
    canvas.show_study(demo("112A"), 90, Display(), False)
    canvas.save_picture(tmp_path / "one.svg", facts)
    canvas.resize(1000, 300)
    qtbot.waitUntil(lambda: pixels(canvas).shape[:2] == (300, 1000))
    canvas.save_picture(tmp_path / "other.svg", facts)
    write_plan(demo("112A"), tmp_path / "drawn.svg", 90, Display(), job=facts)
    assert (tmp_path / "one.svg").read_bytes() == (tmp_path / "other.svg").read_bytes()
    assert (tmp_path / "one.svg").read_bytes() == (tmp_path / "drawn.svg").read_bytes()


def test_it_can_be_read_aloud(canvas):
    assert "Plan of the opening" in canvas.accessibleName()
    canvas.show_study(demo("112A"), 90, Display(), False)
    assert "4-1/2 x 4 hinge" in canvas.accessibleDescription()


@pytest.mark.parametrize("mark", ["171A", "126C", "151A", "164A", "201A", "122A"])
def test_every_sort_of_opening_can_be_shown_at_the_least_size(canvas, mark):
    canvas.resize(canvas.minimumSize())
    for angle in (0, 90, 180):
        canvas.show_study(demo(mark), angle, Display(), False)
    assert len(canvas._sheet.panels) == len(demo(mark).candidates)
