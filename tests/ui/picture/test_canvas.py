"""The picture shown larger, moved, and measured in, with the wheel and the mouse as a user has them."""

import math
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QGuiApplication, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication

from configurator.drawing.base.view import AS_FRAMED, Framing
from configurator.export.figure import POINTS_PER_INCH
from configurator.ui.kit.canvas import DPI
from configurator.ui.picture.canvas import HOW_TO_MEASURE, MOST, PictureCanvas
from configurator.units import Display
from tests.drawing.cases import demo
from tests.ui.conftest import move_pointer

ROOT = Path(__file__).resolve().parents[3]


@pytest.fixture
def canvas(qtbot):
    widget = PictureCanvas()
    qtbot.addWidget(widget)
    widget.resize(860, 480)
    widget.show_study(demo("112A"), 180, Display(), False)
    widget.show()
    return widget


def views(canvas):
    canvas.settle()
    return [panel.main.view for panel in canvas._sheet.panels]


def on_widget(canvas, panel, point):
    """Where a point of a panel's plan is on the widget, pixels."""
    x, y = views(canvas)[panel].to_sheet(point)
    share = DPI / POINTS_PER_INCH
    return QPointF(x * share, (canvas._sheet.height - y) * share)


def pin(canvas, panel=0):
    return canvas._sheet.panels[panel].hung.pin.at


def turn_wheel(canvas, at, notches):
    none, button = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.NoButton
    begun, delta = Qt.ScrollPhase.NoScrollPhase, QPoint(0, 120 * notches)
    turned = QWheelEvent(at, QPointF(canvas.mapToGlobal(at)), QPoint(), delta, button, none, begun, False)
    QApplication.sendEvent(canvas, turned)


def press(canvas, kind, at, button=Qt.MouseButton.LeftButton):
    place, none = QPointF(at), Qt.KeyboardModifier.NoModifier
    event = QMouseEvent(kind, place, canvas.mapToGlobal(place), button, button, none)
    QApplication.sendEvent(canvas, event)


def click(canvas, at):
    press(canvas, QEvent.Type.MouseButtonPress, at)
    press(canvas, QEvent.Type.MouseButtonRelease, at)


def test_the_wheel_shows_all_panels_larger_and_what_is_under_the_pointer_stays(canvas):
    before = views(canvas)[0].scale
    at = on_widget(canvas, 0, (1.0, 0.5))
    turn_wheel(canvas, at, 2)
    assert [view.scale for view in views(canvas)] == pytest.approx([before * 1.25**2] * 2)
    found = on_widget(canvas, 0, (1.0, 0.5))
    assert (found.x(), found.y()) == pytest.approx((at.x(), at.y()))
    turn_wheel(canvas, at, -2)
    assert views(canvas)[0].scale == pytest.approx(before)


def test_steps_are_about_the_hinge_and_end_somewhere(canvas):
    at = on_widget(canvas, 0, pin(canvas))
    for _ in range(30):
        canvas.step(1)
    assert canvas.framing.zoom == pytest.approx(MOST)
    found = on_widget(canvas, 0, pin(canvas))
    assert (found.x(), found.y()) == pytest.approx((at.x(), at.y()))
    canvas.fit()
    assert canvas.framing == AS_FRAMED


def test_dragging_moves_every_panel_alike(canvas):
    before = [on_widget(canvas, panel, pin(canvas, panel)) for panel in (0, 1)]
    press(canvas, QEvent.Type.MouseButtonPress, QPointF(200, 200))
    move_pointer(canvas, QPointF(201, 201), Qt.MouseButton.LeftButton)
    assert canvas.framing == AS_FRAMED  # a hand that shakes moves nothing
    move_pointer(canvas, QPointF(230, 180), Qt.MouseButton.LeftButton)
    press(canvas, QEvent.Type.MouseButtonRelease, QPointF(230, 180))
    for was, panel in zip(before, (0, 1), strict=True):
        found = on_widget(canvas, panel, pin(canvas, panel))
        assert (found.x() - was.x(), found.y() - was.y()) == pytest.approx((30, -20))
    move_pointer(canvas, QPointF(400, 300))
    assert canvas.framing.moved == pytest.approx((22.5, 15))  # let go, the pointer moves it no more


def test_the_small_picture_makes_room_when_the_large_one_is_framed_otherwise(canvas):
    assert all(panel.inset is not None for panel in canvas._sheet.panels)
    canvas.step(1)
    assert all(panel.inset is None for panel in canvas._sheet.panels)
    canvas.forget_framing()
    canvas.show_study(demo("205A"), 180, Display(), False)
    assert canvas._sheet.panels[0].inset is not None


def test_true_size_is_an_inch_for_an_inch(canvas):
    canvas.show_true_size()
    pixels = views(canvas)[0].scale * DPI / POINTS_PER_INCH
    told = canvas.screen().physicalDotsPerInch()
    assert pixels == pytest.approx(told if 48 <= told <= 480 else DPI)


@pytest.mark.parametrize("mark", ["112A", "205A", "126C", "151A", "201A"])
@pytest.mark.parametrize("zoom", [0.25, 3.0, 12.0])
@pytest.mark.parametrize("moved", [(0, 0), (500, -300), (-900, 900)])
def test_however_it_is_framed_it_is_drawn_and_swung(canvas, mark, zoom, moved):
    canvas.show_study(demo(mark), 180, Display(), False)
    canvas.frame(Framing(zoom, moved))
    canvas.set_angle(60)
    texts = [
        item
        for group in (*canvas._sheet.notes, *canvas.turning_groups())
        for item in group.primitives
        if hasattr(item, "text_at")
    ]
    for view in views(canvas):
        assert math.isfinite(view.scale)
    for item in texts:
        assert any(view.window.has(view.to_sheet(item.text_at)) for view in views(canvas))


def test_a_distance_is_measured_between_two_corners(canvas):
    told = []
    canvas.measured.connect(told.append)
    canvas.measure(True)
    assert told == [HOW_TO_MEASURE]
    one, other = on_widget(canvas, 0, (0.0, 0.0)), on_widget(canvas, 0, pin(canvas))
    click(canvas, other)
    move_pointer(canvas, QPointF(one.x(), one.y()))
    click(canvas, QPointF(one.x() + 1, one.y() + 1))
    x, y = pin(canvas)
    words = told[-1]
    assert words.startswith(Display().length(math.hypot(x, y)))
    assert words.endswith(", centre to corner")
    assert canvas._pointed.mark.lines == (((x, y), (0.0, 0.0)),)
    canvas.measure(False)
    assert canvas._pointed is None
    assert told[-1] == ""


def test_escape_ends_measuring_and_a_click_beside_the_panels_takes_nothing(qtbot, canvas):
    told = []
    canvas.measured.connect(told.append)
    canvas.measure(True)
    click(canvas, QPointF(2, 2))
    assert told == [HOW_TO_MEASURE]
    qtbot.keyClick(canvas, Qt.Key.Key_Escape)
    assert told[-1] == ""
    assert not canvas.measuring


def test_the_commands_reach_the_picture(qtbot, window):
    canvas = window.work.picture.canvas
    before = canvas.framing.zoom
    for keys in (Qt.Key.Key_Plus, Qt.Key.Key_Plus, Qt.Key.Key_Minus):
        qtbot.keyClick(window, keys, Qt.KeyboardModifier.ControlModifier)
    assert canvas.framing.zoom == pytest.approx(before * 1.25)
    qtbot.keyClick(window, Qt.Key.Key_0, Qt.KeyboardModifier.ControlModifier)
    assert canvas.framing == AS_FRAMED
    canvas.step(1)
    window.session.select("205A")
    assert canvas.framing == AS_FRAMED
    measure = window.commands.actions_by_name["measure"]
    measure.trigger()
    assert canvas.measuring
    assert window.line.text() == HOW_TO_MEASURE
    qtbot.keyClick(canvas, Qt.Key.Key_Escape)
    assert not measure.isChecked()
    assert window.line.text() == ""


def test_the_picture_is_copied_as_an_image_and_as_a_drawing(window):
    window.commands.actions_by_name["copy_png"].trigger()
    image = QGuiApplication.clipboard().image()
    assert image.width() > image.height() > 300
    window.commands.actions_by_name["copy_svg"].trigger()
    data = QGuiApplication.clipboard().mimeData()
    assert bytes(data.data("image/svg+xml")).startswith(b"<?xml")
    assert "chair rail" in data.text()


COPY_AND_END = """
import sys
from types import SimpleNamespace
from PySide6.QtCore import QTimer
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtWidgets import QApplication
from configurator.ui.picture.picture import Picture
from configurator.ui.state.session import Session

application = QApplication([])
picture = Picture(Session(studier=lambda *_: None))
def save(path, _):
    if path.suffix == ".png":
        QImage(30, 30, QImage.Format.Format_RGB32).save(str(path))
    else:
        path.write_text("<svg/>")
picture.canvas = SimpleNamespace(save_picture=save)
picture.copy(sys.argv[1])
print(*QGuiApplication.clipboard().mimeData().formats())
if sys.argv[2] == "quit":
    QTimer.singleShot(0, application.quit)
    application.exec()
"""


@pytest.mark.parametrize(
    ("ending", "how", "formats"),
    [(".png", "quit", "application/x-qt-image"), (".svg", "just ends", "image/svg+xml text/plain")],
)
def test_with_a_picture_on_the_clipboard_the_program_ends_without_a_fault(ending, how, formats):
    """Qt would free what was copied after Python has ended: a fault, of a process of its own here."""
    done = subprocess.run(
        [sys.executable, "-c", COPY_AND_END, ending, how],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stdout.strip(), done.stderr) == (0, formats, "")


def test_without_a_picture_the_commands_say_so(bare_window):
    bare_window.commands.actions_by_name["zoom_in"].trigger()
    assert bare_window.line.text() == "There is no picture yet."


def middle_of_leaf(canvas, panel=0):
    """A place of the widget on the leaf, near its pin."""
    one = canvas._sheet.panels[panel]
    shown = one.hung.shown_at(math.radians(canvas._angle))
    (x, y), long = pin(canvas, panel), 3.0
    h = one.hung.h
    turned_x = x - 0.2 + long * math.cos(shown) + (one.hung.pin.o + h.T / 2) * math.sin(shown)
    return on_widget(canvas, panel, (turned_x, y + long * math.sin(shown) - h.T / 2 * math.cos(shown)))


def test_dragging_the_leaf_turns_it_and_the_ground_or_the_space_bar_moves_the_picture(qtbot, canvas):
    turned = []
    canvas.turned.connect(turned.append)
    canvas.set_angle(90)
    at = middle_of_leaf(canvas)
    move_pointer(canvas, at)
    assert canvas.cursor().shape() == Qt.CursorShape.OpenHandCursor
    press(canvas, QEvent.Type.MouseButtonPress, at)
    move_pointer(canvas, at, Qt.MouseButton.LeftButton)
    assert turned[-1] == pytest.approx(90)
    x, y = pin(canvas)
    from_pin = views(canvas)[0].to_plan(canvas._on_sheet(at))
    farther = math.atan2(from_pin[1] - y, from_pin[0] - x) + math.radians(30)
    move_pointer(
        canvas,
        on_widget(canvas, 0, (x + 3 * math.cos(farther), y + 3 * math.sin(farther))),
        Qt.MouseButton.LeftButton,
    )
    assert turned[-1] == pytest.approx(120)
    press(canvas, QEvent.Type.MouseButtonRelease, at)
    assert canvas.framing == AS_FRAMED
    qtbot.keyPress(canvas, Qt.Key.Key_Space)
    press(canvas, QEvent.Type.MouseButtonPress, at)
    move_pointer(canvas, at + QPointF(20, 10), Qt.MouseButton.LeftButton)
    press(canvas, QEvent.Type.MouseButtonRelease, at)
    qtbot.keyRelease(canvas, Qt.Key.Key_Space)
    assert canvas.framing.moved == pytest.approx((15, -7.5))
    assert len(turned) == 2


def test_the_menu_is_about_what_is_under_the_pointer(qtbot, read_window):
    picture, asked = read_window.work.picture, []
    dimension = next(
        one
        for group in picture.canvas.turning_groups()
        for one in group.primitives
        if getattr(one, "name", "") == "pin axis off frame face"
    )
    at = on_widget(picture.canvas, 0, dimension.text_at)
    titles = [action.text() for action in picture.menu_at(at).actions() if action.text()]
    assert titles == [
        f"Copy {dimension.text.partition(' pin')[0]}", "Show the work", "What is this?",
        "Copy picture", "Copy picture as SVG", "Export picture…", "Fit", "True size", "Measure", "Sweep",
        "Dimensions of the frame", "Dimensions of the wall", "Dimensions along the wall",
    ]  # fmt: skip
    picture.menu_at(at).actions()[0].trigger()
    assert QGuiApplication.clipboard().text() == "3/8 in"
    read_window.session.asked.disconnect(read_window.beside.show_word)
    read_window.session.asked.connect(asked.append)
    picture.menu_at(at).actions()[2].trigger()
    read_window.session.asked.connect(read_window.beside.show_word)
    assert asked == ["pin axis off frame face"]
    beside = [action.text() for action in picture.menu_at(QPointF(2, 2)).actions() if action.text()]
    assert beside == titles[3:]


def test_dimensions_of_a_kind_are_shown_and_remembered(window):
    def named():
        notes = window.work.picture.canvas._sheet.panels[0].main.notes
        return {getattr(one, "name", "") for one in notes}

    frame = window.commands.actions_by_name["parts frame"]
    assert "frame face" not in named()
    frame.trigger()
    assert "frame face" in named()
    assert frame.isChecked()
    assert window.preferences.shown_parts == {"frame"}
    frame.trigger()
    assert "frame face" not in named()
    assert window.preferences.shown_parts == frozenset()
