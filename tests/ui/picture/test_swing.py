import pytest
from PySide6.QtCore import QPoint, Qt

from configurator.study.events import moments
from configurator.ui.picture.swing import SwingControl


def press(qtbot, window, key, shift=False):
    modifier = Qt.KeyboardModifier.ShiftModifier if shift else Qt.KeyboardModifier.NoModifier
    qtbot.keyClick(window.work.form.field("mark").editor, key, modifier)


def angles(session):
    return [moment.angle for moment in moments(session.study)]


def test_one_key_goes_from_moment_to_moment_and_back(qtbot, window):
    session = window.session
    session.swing(0)
    seen = [session.angle]
    for _ in range(len(angles(session)) + 2):
        press(qtbot, window, Qt.Key.Key_F8)
        seen.append(session.angle)
    assert list(dict.fromkeys(seen)) == angles(session)
    assert seen[-1] == seen[-3]  # at the end it stays
    press(qtbot, window, Qt.Key.Key_F8, shift=True)
    assert session.angle == angles(session)[-2]


def test_from_between_two_moments_the_key_goes_to_the_nearer_one_ahead(qtbot, window):
    window.session.swing(45)
    press(qtbot, window, Qt.Key.Key_F8)
    assert window.session.angle == 90
    window.session.swing(100)
    press(qtbot, window, Qt.Key.Key_F8, shift=True)
    assert window.session.angle == 90


def test_the_buttons_step_too_and_end_where_the_swing_ends(qtbot, window):
    swing = window.work.swing
    window.session.swing(0)
    assert not swing.before.isEnabled()
    qtbot.mouseClick(swing.next, Qt.MouseButton.LeftButton)
    assert window.session.angle == angles(window.session)[1]
    qtbot.mouseClick(swing.before, Qt.MouseButton.LeftButton)
    assert window.session.angle == 0
    window.session.swing(180)
    assert not swing.next.isEnabled()


def test_what_happens_is_told_only_where_it_happens(window):
    swing, session = window.work.swing, window.session
    session.swing(angles(session)[-2])
    assert swing.happens.toolTip() == "171.7°: first contact: leaf on the chair rail (4 in hinge)"
    assert swing.happens.text().startswith("171.7°: first contact")
    session.swing(170)
    assert swing.happens.text() == swing.happens.toolTip() == ""


def test_plain_words_and_units_are_followed(window):
    swing, session = window.work.swing, window.session
    session.swing(angles(session)[1])
    assert "latch edge closest" in swing.happens.toolTip()
    session.use_plain_words(True)
    assert "lock edge closest to the frame" in swing.happens.toolTip()


def test_another_opening_has_its_own_moments(qtbot, window):
    swing = window.work.swing
    before = swing.strip.accessibleDescription()
    window.session.select("126C")
    assert swing.strip.accessibleDescription() != before
    assert "leaf on the latch jamb" in swing.strip.accessibleDescription()


def test_ticks_stand_under_the_handle_tell_their_words_and_can_be_clicked(qtbot, window):
    swing, session = window.work.swing, window.session
    session.swing(30)
    square = swing.strip._place(90)
    assert square == pytest.approx(swing.slider.width() / 2, abs=2)
    assert swing.strip.words_at(square) == "90°: square open, where the clear width counts"
    assert swing.strip.words_at(square + 30) == ""
    qtbot.mouseClick(swing.strip, Qt.MouseButton.LeftButton, pos=QPoint(square + 2, 3))
    assert session.angle == 90
    qtbot.mouseClick(swing.strip, Qt.MouseButton.LeftButton, pos=QPoint(square + 30, 3))
    assert session.angle == 90


def test_the_tick_at_the_angle_on_show_is_wider(qtbot, window):
    strip = window.work.swing.strip
    window.session.swing(30)
    before = strip.grab().toImage()
    window.session.swing(90)
    assert strip.grab().toImage() != before


def test_what_it_sweeps_is_shown_by_key_and_by_button(qtbot, window):
    swing, session = window.work.swing, window.session
    assert not session.swept
    press(qtbot, window, Qt.Key.Key_F7)
    assert session.swept
    assert swing.swept.isChecked()
    qtbot.mouseClick(swing.swept, Qt.MouseButton.LeftButton)
    assert not session.swept


def test_before_anything_is_worked_out_there_is_nothing_to_step_to(qtbot, session):
    control = SwingControl(session)
    qtbot.addWidget(control)
    control.show_state()
    session.swing(30)
    control.step(forward=True)
    assert session.angle == 30
    assert control.strip.accessibleDescription() == ""


def test_everything_in_the_row_has_a_name(window):
    swing = window.work.swing
    for widget in (
        swing.slider,
        swing.strip,
        swing.happens,
        swing.before,
        swing.next,
        swing.swept,
        swing.angle,
    ):
        assert widget.accessibleName()
