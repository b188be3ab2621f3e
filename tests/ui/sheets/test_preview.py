from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent

from configurator.drawing.pages.page import paper_named
from configurator.ui.sheets.preview import LEAST, MOST, SheetPreview


@pytest.fixture
def preview(qtbot, sheet):
    found = SheetPreview()
    qtbot.addWidget(found)
    found.resize(900, 700)
    found.show()
    found.show_page(sheet)
    return found


def grabbed(preview):
    return preview.grab().toImage()


def test_the_whole_page_is_in_sight_however_large_the_room(preview, qtbot):
    """Letter lies 11 in wide: 1056 pixels at 96 an inch."""
    assert preview.zoom == pytest.approx((900 - 32) / 1056, abs=0.01)
    preview.resize(500, 400)
    assert preview.zoom == pytest.approx(min((500 - 32) / 1056, (400 - 32) / 816), abs=0.01)
    qtbot.waitUntil(lambda: preview.area.horizontalScrollBar().maximum() == 0)


def test_it_is_zoomed_in_steps_within_its_limits_and_back(preview):
    whole = preview.zoom
    preview.step(larger=True)
    assert preview.zoom == pytest.approx(whole * 1.25)
    for _ in range(30):
        preview.step(larger=True)
    assert preview.zoom == MOST
    for _ in range(40):
        preview.step(larger=False)
    assert preview.zoom == LEAST
    preview.show_whole()
    assert preview.zoom == whole


def test_a_large_paper_is_not_zoomed_beyond_what_memory_should_hold(preview, sheet):
    preview.show_page(replace(sheet, paper=paper_named("Arch C")))
    for _ in range(30):
        preview.step(larger=True)
    wide, high = (side * preview.zoom * 96 / 72 for side in paper_named("Arch C").points)
    assert wide * high <= 40_000_000 * 1.01


def test_zooming_keeps_the_middle_in_the_middle(preview):
    for _ in range(4):
        preview.step(larger=True)
    bar = preview.area.horizontalScrollBar()
    middle = (bar.value() + bar.pageStep() / 2) / (bar.maximum() + bar.pageStep())
    assert middle == pytest.approx(0.5, abs=0.05)


def test_the_wheel_zooms_with_the_control_key_only(preview, qtbot):
    def turn(keys):
        at = QPointF(200, 200)
        wheel = QWheelEvent(
            at, preview.mapToGlobal(at), QPoint(0, 0), QPoint(0, 120), Qt.MouseButton.NoButton, keys,
            Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        preview.area.wheelEvent(wheel)

    before = preview.zoom
    turn(Qt.KeyboardModifier.NoModifier)
    assert preview.zoom == before
    turn(Qt.KeyboardModifier.ControlModifier)
    assert preview.zoom == pytest.approx(before * 1.25)


def test_another_page_of_the_same_size_is_drawn_anew(preview, sheet):
    before = grabbed(preview)
    preview.show_page(replace(sheet, details=()))
    assert grabbed(preview) != before
    preview.show_page(sheet)
    assert grabbed(preview) == before


def test_without_a_page_there_are_words(preview):
    preview.show_words("There is no opening.")
    assert preview.page is None
    assert preview.words.isVisible()
    assert preview.words.text() == "There is no opening."
