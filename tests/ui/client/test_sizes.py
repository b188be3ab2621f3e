"""The client's view at every usual size of a screen, in the window and with the whole screen."""

import itertools

import pytest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QLineEdit

from configurator.ui.client.put_away import PutAway
from tests.drawing.client.test_client_picture import faults

SIZES = ((1280, 720), (1366, 768), (1920, 1080), (2560, 1440), (3840, 2160))


@pytest.fixture
def sized(qapp, window, in_window, monkeypatch):
    """Sets the window's size, with the page in it or on the whole of the screen; returns the page."""

    def to(size, whole):
        monkeypatch.setattr(PutAway, "whole_screen", property(lambda _: whole))
        window.resize(*size)
        in_window.show_size()
        for _ in range(3):
            qapp.processEvents()
        assert (window.width(), window.height()) == size
        return in_window

    return to


def cropped(page):
    """Return the words of widgets on show that do not find room in them, or stand outside of the page."""
    found = []
    folded = page._folded
    for one in (
        *page.findChildren(QAbstractButton),
        *page.findChildren(QLabel),
        *page.findChildren(QLineEdit),
    ):
        if not one.isVisible() or not one.text() or isinstance(one.parent(), QLineEdit):
            continue
        wide = max(one.fontMetrics().horizontalAdvance(line) for line in one.text().splitlines())
        if wide > one.width() and not (isinstance(one, QLabel) and one.wordWrap()):
            found.append(one.text())
        at = one.mapTo(page, one.rect().bottomRight())
        if not folded.isAncestorOf(one) and (at.x() > page.width() or at.y() > page.height()):
            found.append(one.text())
    return found


def test_nothing_is_cropped_and_nothing_lies_over_another(sized, session):
    for size, whole in itertools.product(SIZES, (False, True)):
        session.select("112A")
        page = sized(size, whole)
        assert cropped(page) == [], (size, whole)
        for mark in ("112A", "205A"):
            session.select(mark)
            sheet, canvas = page.canvas._sheet, page.canvas
            assert (sheet.width, sheet.height) == pytest.approx(
                (canvas.width() * 0.75, canvas.height() * 0.75)
            )
            for angle in (40.0, 180.0):
                assert faults(sheet, angle) == [], (size, whole, mark, angle)


def test_with_the_whole_screen_the_picture_takes_it_and_letters_grow_with_it(sized):
    letters = []
    for size in SIZES:
        page = sized(size, True)
        assert page.canvas.width() == size[0]
        assert page.canvas.height() >= 0.8 * size[1]
        assert page.canvas._sheet.windows[0].height / 0.75 >= 0.38 * size[1]
        letters.append(page.canvas._sheet.letters)
    assert letters == sorted(letters)
    assert letters[-1] > 1.5 * letters[0]


def test_what_the_line_to_be_typed_holds_is_shown_whole(sized):
    """Once, with the whole screen, "36 in" was shown as "6 in"."""
    page = sized((1366, 768), True)
    page.controls.buttons["questions"].click()
    QApplication.processEvents()
    assert page.window().width() == 1366
    assert page.canvas.width() > 0.55 * 1366
    for stepper in page.questions.sizes:
        assert stepper.line.text() == ("36 in" if stepper is page.questions.sizes[0] else "84 in")
        words = stepper.line.fontMetrics().horizontalAdvance(stepper.line.text())
        assert words + 8 <= stepper.line.width()
