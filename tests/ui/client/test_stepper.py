import pytest
from PySide6.QtCore import Qt

from configurator.ui.client.stepper import Stepper
from configurator.units import Display


@pytest.fixture
def stepper(qtbot, session):
    stepper = Stepper(session, "size.width", 2.0)
    qtbot.addWidget(stepper)
    session.changed.connect(lambda _: stepper.show_state())
    stepper.show_state()
    stepper.show()
    return stepper


def typed(qtbot, stepper, text):
    stepper.line.selectAll()
    qtbot.keyClicks(stepper.line, text)
    qtbot.keyClick(stepper.line, Qt.Key.Key_Return)


def test_a_press_goes_one_step_and_is_one_step_of_undo(qtbot, stepper, session):
    qtbot.mouseClick(stepper.more, Qt.MouseButton.LeftButton)
    assert session.opening.size.width == 38
    assert stepper.line.text() == "38 in"
    session.undo()
    assert stepper.line.text() == "36 in"
    qtbot.mouseClick(stepper.less, Qt.MouseButton.LeftButton)
    assert session.opening.size.width == 34


def test_a_length_is_typed_as_the_trade_writes_it(qtbot, stepper, session):
    typed(qtbot, stepper, "3'-6\"")
    assert session.opening.size.width == 42


def test_what_is_refused_stays_and_says_why_until_something_else_is_said(qtbot, stepper, session):
    typed(qtbot, stepper, "0")
    assert session.opening.size.width == 36
    assert stepper.line.text() == "0"
    assert stepper.note.isVisible()
    assert stepper.note.text().startswith("⚠ ")
    qtbot.mouseClick(stepper.more, Qt.MouseButton.LeftButton)
    assert session.opening.size.width == 38
    assert not stepper.note.isVisible()


def test_what_cannot_be_read_is_said_too(qtbot, stepper, session):
    typed(qtbot, stepper, "about three feet")
    assert session.opening.size.width == 36
    assert stepper.note.isVisible()


def test_escape_gives_up_what_was_typed_and_leaves_the_line(qtbot, stepper, session):
    stepper.line.setFocus()
    stepper.line.selectAll()
    qtbot.keyClicks(stepper.line, "50")
    qtbot.keyClick(stepper.line, Qt.Key.Key_Escape)
    assert stepper.line.text() == "36 in"
    assert session.opening.size.width == 36


def test_of_millimetres_a_step_is_fifty(qtbot, stepper, session):
    session.show_in(Display(metric=True))
    qtbot.mouseClick(stepper.more, Qt.MouseButton.LeftButton)
    assert session.opening.size.width == pytest.approx((914.4 + 50) / 25.4)
    assert stepper.line.text() == "964.4 mm"
