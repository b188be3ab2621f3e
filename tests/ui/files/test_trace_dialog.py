"""Lines of a drawing taken in the window: layers and corner picked, one step of the history."""

import ezdxf
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget

from configurator.ui.files.trace_dialog import TraceDialog


@pytest.fixture
def dialog(qtbot, session, tmp_path):
    for name, units in (("level.dxf", 4), ("bare.dxf", 0)):
        drawing = ezdxf.new("R2010", units=units)
        drawing.modelspace().add_line((10000, 20000), (10508, 20254), dxfattribs={"layer": "A-WALL"})
        drawing.modelspace().add_line((10000, 20000), (10000, 20254), dxfattribs={"layer": "A-FURN"})
        drawing.saveas(tmp_path / name)
    owner = QWidget()
    qtbot.addWidget(owner)
    made = TraceDialog(owner, session)
    made.ask()
    made.read(tmp_path / "level.dxf")
    yield made
    owner.close()


def uncheck(dialog, name):
    for row in range(dialog.layers.count()):
        item = dialog.layers.item(row)
        if item.data(Qt.ItemDataRole.UserRole) == name:
            item.setCheckState(Qt.CheckState.Unchecked)


def test_a_click_near_the_end_of_a_line_is_the_corner_and_lines_are_one_step(dialog, qtbot, session):
    before = session.opening
    uncheck(dialog, "A-FURN")
    at = dialog.view.place_of((10000.0, 20000.0)).toPoint()
    qtbot.mouseClick(dialog.view, Qt.MouseButton.LeftButton, pos=at + QPoint(5, -4))
    assert dialog.at.text() == "10000.0000, 20000.0000"
    assert dialog.take()
    assert session.opening.background.lines == ("0,0 20,10",)
    assert session.opening.background.layers == ("A-WALL",)
    session.undo()
    assert session.opening == before


def test_a_refusal_is_said_and_nothing_changes(dialog, session, tmp_path):
    before = session.opening
    for use, words in ((0, "within 15 ft"), (1, "Open at")):
        dialog.use.setCurrentIndex(use)
        assert not dialog.take()
        assert words.lower() in dialog.message.text().lower()
    dialog.use.setCurrentIndex(0)
    dialog.at.setText("here")
    assert not dialog.take()
    assert "two numbers" in dialog.message.text()
    dialog.read(tmp_path / "bare.dxf")
    assert dialog.message.text() == "The drawing does not say its unit: choose it."
    dialog.at.setText("10000, 20000")
    assert not dialog.take()
    dialog.read(tmp_path / "none.dxf")
    assert "cannot be read" in dialog.message.text()
    assert session.opening == before


def test_a_background_is_removed_again(dialog, session):
    assert not dialog.remove.isEnabled()
    dialog.at.setText("10000, 20000")
    assert dialog.take()
    dialog.ask()
    dialog.remove.click()
    assert session.opening.background is None
