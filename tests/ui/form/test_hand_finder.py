"""Pick what is seen from outside, and the hand is set."""

import pytest
from PySide6.QtCore import Qt

from configurator.drawing.pictures.hand_pictures import NAMES
from configurator.ui.form.hand_finder import HandFinder


@pytest.fixture
def finder(qtbot, session):
    found = HandFinder(session)
    qtbot.addWidget(found)
    found.show()
    return found


def test_it_begins_with_the_hand_that_holds(finder):
    assert [hand for hand, card in finder.cards.items() if card.isChecked()] == ["RH"]
    assert finder.cards["RH"].text().startswith("✔ RH")
    assert not finder.isModal()


@pytest.mark.parametrize("hand", NAMES)
def test_picking_sets_the_hand_as_one_step(qtbot, finder, session, hand):
    qtbot.mouseClick(finder.cards[hand], Qt.MouseButton.LeftButton)
    assert session.opening.hand == hand
    assert finder.cards[hand].isChecked()
    assert hand in finder.inside.text()
    if hand != "RH":
        session.undo()
        assert session.opening.hand == "RH"
        assert finder.cards["RH"].isChecked()


def test_the_pictures_are_reached_and_picked_with_the_keyboard(qtbot, finder, session):
    finder.cards["LHR"].setFocus()
    qtbot.keyClick(finder.cards["LHR"], Qt.Key.Key_Space)
    assert session.opening.hand == "LHR"


def test_from_inside_is_said(finder, session):
    session.edit("hand", "LH")
    assert "as an RHR does from outside" in finder.inside.text()
    assert "from inside it looks like RHR" in finder.cards["LH"].text()


def test_an_opening_without_a_hand_is_asked_for_one(finder, session):
    session.edit("hand", None)
    assert not any(card.isChecked() for card in finder.cards.values())
    assert finder.inside.text() == "No hand is given yet. Pick what you see."


def test_of_a_pair_it_says_whose_hand_it_is(finder, session):
    session.edit_many({"leaves": "pair", "size": {"width": 72, "height": 84}})
    assert "active leaf" in finder.ask.text()


def test_the_button_beside_the_field_opens_it(qtbot, window, session):
    field = window.work.form.field("hand")
    qtbot.mouseClick(field.by_picture, Qt.MouseButton.LeftButton)
    assert field.finder.isVisible()
    before = window.work.picture.canvas.grab().toImage()
    qtbot.mouseClick(field.finder.cards["LH"], Qt.MouseButton.LeftButton)
    assert field.editor.currentText() == "LH"
    assert window.work.picture.canvas.grab().toImage() != before
    field.finder.close()


def test_dark_pictures_are_drawn_anew(finder, session):
    def ground():
        size = finder.cards["LH"].iconSize()
        return finder.cards["LH"].icon().pixmap(size).toImage().pixelColor(3, 3).lightness()

    light = ground()
    session.use_dark(True)
    assert light > 200 > 100 > ground()
