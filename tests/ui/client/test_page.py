import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QAbstractButton, QLabel, QLineEdit, QStyle, QToolBar

from configurator.model import Job
from configurator.study.widths.width_pair import width_pair
from configurator.ui.client import canvas, sending
from configurator.ui.client.page import ClientPage
from configurator.ui.client.put_away import FULL_SCREEN_CAPITALS, TOUCH, pixels_a_millimetre
from configurator.ui.state import edits
from configurator.ui.state.session import Session
from configurator.ui.window.window import Window
from configurator.wording.verdict import advice, verdicts
from tests.export.measuring import read_pdf
from tests.ui.client.conftest import lettered
from tests.ui.conftest import move_pointer


@pytest.fixture(autouse=True)
def _quick(monkeypatch):
    monkeypatch.setattr(canvas, "MILLISECONDS_A_DEGREE", 1.0)


def test_it_letters_the_verdicts_and_the_advice(page, session):
    study = session.study
    pair = width_pair(study)
    said = lettered(page)
    for one in verdicts(study, pair, session.display):
        assert one.title in said
        assert one.because in said
    assert advice(study, pair, session.display).headline.split(". ")[1] in said


def test_the_verdict_changes_with_the_opening(page, session):
    before = lettered(page)
    session.edit("obstructions", [])
    assert lettered(page) != before
    assert "chair rail" not in lettered(page)


def test_a_screen_reader_is_told_the_verdicts(page):
    assert page.canvas.accessibleDescription() == (
        "Hinge 4 in wide: Stops short: 171°; Hinge 4-1/2 in wide: Opens all the way"
    )


def test_it_says_how_much_is_not_measured(page, session):
    assert f"{len(session.study.filled.assumed)} taken as usual" in page.marked.text()
    assert "to note" not in page.marked.text()
    session.select("140A")
    assert "⚠ 1 to note" in page.marked.text()


def test_space_plays_to_where_the_door_that_goes_farther_stops(qtbot, page, session):
    session.swing(0)
    with qtbot.waitSignal(page.player.turned_on, check_params_cb=lambda on: not on):
        qtbot.keyClick(page, Qt.Key.Key_Space)
        assert page.player.playing
        assert "Pause" in page.controls.buttons["play"].text()
    assert session.angle == max(one.rests_at for one in session.study.candidates)
    assert "Play" in page.controls.buttons["play"].text()


def test_a_door_that_is_held_square_plays_to_square(qtbot, page, session):
    session.select("160A")
    assert page.player.end == 90
    assert page.controls.slider.maximum() == 900


def test_an_edit_stops_the_playing(qtbot, page, session):
    session.swing(0)
    page.player.play()
    session.edit("size.width", 38)
    assert not page.player.playing


def test_the_slider_turns_the_door(page, session):
    page.controls.slider.setValue(450)
    assert session.angle == 45


def test_a_tap_on_the_slider_brings_the_door_there(qtbot, page, session):
    slider = page.controls.slider
    qtbot.mouseClick(slider, Qt.MouseButton.LeftButton, pos=slider.rect().center())
    assert session.angle == pytest.approx(page.player.end / 2, abs=2)


def test_the_handle_is_as_large_as_a_finger(page):
    slider, touch = page.controls.slider, TOUCH * pixels_a_millimetre(page.screen())
    for metric in (QStyle.PixelMetric.PM_SliderLength, QStyle.PixelMetric.PM_SliderThickness):
        assert slider.style().pixelMetric(metric, None, slider) >= touch - 1
        assert page.style().pixelMetric(metric, None, slider) < touch


def test_a_hand_on_the_door_turns_it(qtbot, page, session):
    """From square, a quarter turn about the pin closes the door; it goes no farther than it can."""
    session.swing(90)
    canvas = page.canvas
    room = canvas._sheet.panels[0].room
    share = 96 / 72
    x, y = room.view.to_sheet(room.first.pin.at)
    pin = QPoint(round(x * share), round((canvas._sheet.height - y) * share))
    away = -60 if room.first.mirrored else 60
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=pin + QPoint(0, -60))
    move_pointer(canvas, pin + QPoint(round(away * 0.7), round(-60 * 0.7)), Qt.MouseButton.LeftButton)
    assert session.angle == pytest.approx(45, abs=2)
    move_pointer(canvas, pin + QPoint(away, 30), Qt.MouseButton.LeftButton)
    assert session.angle == 0
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=pin)
    move_pointer(canvas, pin + QPoint(0, -60))
    assert session.angle == 0


def test_without_openings_it_says_what_to_do(page, session):
    session.take_openings((), "remove all", "")
    assert "Try a door" in page.words.text()
    assert page.words.isVisible()
    page.questions.starts.buttons["Office door"].click()
    assert page.canvas.isVisible()
    assert "Opens all the way" in lettered(page)


def test_an_opening_that_cannot_be_studied_says_why(qtbot, session):
    def refuse(opening, facts):
        raise ValueError("nothing of this can be worked out")

    page = ClientPage(Session(session.job, studier=refuse))
    qtbot.addWidget(page)
    page.show_state("open")
    page.show()
    assert page.words.text() == "Nothing of this can be worked out"
    assert page.words.isVisible()


def test_everything_pressed_is_large_enough_for_a_finger(page):
    touch = TOUCH * pixels_a_millimetre(page.screen())
    for button in page.findChildren(QAbstractButton):
        if button.isVisible() and not isinstance(button.parent(), QLineEdit):
            assert button.height() >= touch - 1, button.text()
            assert button.width() >= touch - 1, button.text()
    assert page.controls.slider.height() >= touch - 1


def test_nothing_pressed_has_its_words_cut(page):
    for button in page.findChildren(QAbstractButton):
        if button.isVisible() and button.text():
            room = button.width() - QFontMetricsF(button.font()).horizontalAdvance(button.text())
            assert room >= 0, button.text()


def test_every_widget_that_takes_the_keyboard_has_a_name(page):
    page.questions.things.buttons["Something else"].click()
    takes = [
        one
        for one in page.findChildren(QAbstractButton) + page.findChildren(QLineEdit)
        if one.focusPolicy() != Qt.FocusPolicy.NoFocus
    ]
    assert len(takes) > 30
    assert [one for one in takes if not one.accessibleName()] == []


def test_what_is_undone_is_the_last_answer(page, session):
    assert not page.questions.undo.isEnabled()
    page.questions.things.buttons["Column"].click()
    page.questions.undo.click()
    assert [one.kind for one in session.opening.obstructions] == ["chair rail"]
    assert not page.questions.undo.isEnabled()


# --- In its window ---


def test_everything_technical_is_put_away_and_comes_back(window, in_window):
    assert not window.commands.isVisible()
    assert not window.columns.isVisible()
    in_window.controls.buttons["back"].click()
    assert window.commands.isVisible()
    assert window.columns.isVisible()


def test_its_own_key_brings_the_work_back(qtbot, window, in_window):
    qtbot.keyClick(in_window, Qt.Key.Key_F5)
    assert not in_window.isVisible()
    assert window.columns.isVisible()


def test_a_window_closed_at_full_screen_does_not_begin_so_again(window, in_window, session, preferences):
    in_window.toggle_whole_screen()
    session.history.mark_saved()
    window.close()
    again = Window(session, preferences)
    assert not again.isFullScreen()
    again.deleteLater()


def test_keys_of_commands_still_work(qtbot, window, in_window, session):
    session.edit("size.width", 40)
    in_window.controls.buttons["play"].setFocus()
    qtbot.keyClick(in_window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert session.opening.size.width == 36


def test_full_screen_is_seven_millimetres_and_escape_goes_back_step_by_step(qtbot, window, in_window):
    qtbot.keyClick(in_window, Qt.Key.Key_F11)
    assert window.isFullScreen()
    assert not in_window.questions.isVisible()
    play = in_window.controls.buttons["play"]
    high = QFontMetricsF(play.font()).capHeight() / pixels_a_millimetre(window.screen())
    assert high >= FULL_SCREEN_CAPITALS
    assert in_window.canvas._letters / 72 * 96 == pytest.approx(in_window.font().pixelSize())
    assert not in_window.heading.isVisible()
    assert in_window.marked.text() in lettered(in_window)
    qtbot.keyClick(in_window, Qt.Key.Key_Escape)
    assert not window.isFullScreen()
    assert in_window.isVisible()
    assert in_window.questions.isVisible()
    qtbot.keyClick(in_window, Qt.Key.Key_Escape)
    assert not in_window.isVisible()
    assert window.commands.isVisible()


def test_at_full_screen_only_what_is_used_in_front_of_a_client_is_offered(window, in_window):
    in_window.toggle_whole_screen()
    buttons = in_window.controls.buttons
    assert [name for name, one in buttons.items() if one.isVisible()] == [
        "play",
        "questions",
        "whole",
    ]
    buttons["whole"].click()
    assert not window.isFullScreen()
    assert all(one.isVisible() for one in buttons.values())


def test_the_questions_come_to_the_whole_screen_when_asked(qtbot, window, in_window):
    in_window.toggle_whole_screen()
    in_window.controls.buttons["questions"].click()
    assert in_window.questions.isVisible()
    in_window.toggle_whole_screen()


def test_leaving_by_another_command_gives_the_screen_back(window, in_window):
    in_window.toggle_whole_screen()
    window.commands.actions_by_name["schedule"].trigger()
    assert not window.isFullScreen()
    assert window.commands.isVisible()
    assert len(window.findChildren(QToolBar)) == 1


def test_all_of_it_is_readable_in_the_dark(qapp, window, in_window):
    window.commands.actions_by_name["dark"].trigger()
    qapp.processEvents()
    assert in_window.canvas._dark
    for label in in_window.findChildren(QLabel):
        if label.isVisible() and label.text():
            ink = label.palette().windowText().color().lightness()
            assert ink > 120, label.text()


# --- On paper ---


def test_one_page_is_written_with_the_same_sentences(tmp_path, page, session):
    path = tmp_path / "112A client.pdf"
    assert sending.write(session, path) == "Written to 112A client.pdf."
    (found,) = read_pdf(path.read_bytes())
    words = " ".join(one.text for one in found.texts)
    assert "The door meets the" in words
    assert "hinge stands out 21/32 in" in words


def test_a_file_that_cannot_be_written_is_said(tmp_path, page, session):
    said = sending.write(session, tmp_path / "nowhere" / "a.pdf")
    assert "could not be written" in said


def test_a_moving_picture_is_written_to_send(tmp_path, page, session):
    path = tmp_path / "112A.gif"
    assert sending.write(session, path) == "Written to 112A.gif."
    with Image.open(path) as moving:
        assert moving.n_frames > 20
        assert moving.info["loop"] == 0


def test_with_a_price_list_the_picture_says_what_the_choice_costs(tmp_path, page, session):
    prices = tmp_path / "prices.csv"
    prices.write_text("height,width,price,currency\n4-1/2,4,5.25,USD\n4-1/2,4-1/2,6.75,USD\n")
    session.path = tmp_path / "job.json"
    session.take_job(
        edits.validated(Job, {**dict(session.job), "order": {"price_list": "prices.csv"}}), "prices"
    )
    assert "The wider hinge costs 4.50 USD more for this door" in lettered(page)
    prices.unlink()
    page.show_state("edit")
    assert "The price list prices.csv cannot be read" in lettered(page)


def test_nothing_to_print_is_said(page, session):
    session.take_openings((), "remove all", "")
    said = []
    page.said.connect(said.append)
    page.controls.buttons["print"].click()
    assert said == ["There is no door to print yet."]


def test_the_page_goes_to_the_printer_that_was_chosen(tmp_path, page, session, monkeypatch):
    from PySide6.QtPrintSupport import QPrinter

    from configurator.ui.sheets import printing

    path = tmp_path / "printed.pdf"

    def choose(printer, count, owner):
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(path))
        return count == 1

    monkeypatch.setattr(printing, "ask_printer", choose)
    assert sending.print_page(session, page) == "Printed."
    assert path.stat().st_size > 10_000
    monkeypatch.setattr(printing, "ask_printer", lambda *_: False)
    assert sending.print_page(session, page) == ""
