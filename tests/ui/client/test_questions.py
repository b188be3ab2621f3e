import re

import pytest
from PySide6.QtCore import Qt

from configurator.ui.client.controls import TICK
from configurator.ui.client.questions import NOTHING
from configurator.ui.client.starts import STARTS
from tests.ui.client.conftest import lettered


def press(page, group, name):
    getattr(page.questions, group).buttons[name].click()


def ticked(page, group):
    return [
        name
        for name, button in getattr(page.questions, group).buttons.items()
        if button.isChecked() and button.text() == TICK + name
    ]


def test_what_holds_is_ticked(page):
    assert ticked(page, "walls") == ["Plasterboard"]
    assert ticked(page, "things") == ["Chair rail"]
    assert [stepper.line.text() for stepper in page.questions.sizes] == ["36 in", "84 in"]
    assert [stepper.line.text() for stepper in page.questions.measures] == ["1-3/4 in", "1/2 in"]


def test_an_answer_is_one_step_that_can_be_undone(page, session):
    before = session.opening
    press(page, "things", NOTHING)
    assert session.opening.obstructions == ()
    assert ticked(page, "things") == [NOTHING]
    assert page.questions.measures == []
    session.undo()
    assert session.opening == before
    assert ticked(page, "things") == ["Chair rail"]


def test_pressing_what_is_on_takes_the_thing_away_and_leaves_a_wall(page, session):
    press(page, "walls", "Plasterboard")
    assert ticked(page, "walls") == ["Plasterboard"]
    press(page, "things", "Chair rail")
    assert session.opening.obstructions == ()
    assert session.history.undo_name is not None


def test_another_wall(page, session):
    press(page, "walls", "Block or brick")
    assert session.opening.frame.kind == "welded steel, butted"
    assert ticked(page, "walls") == ["Block or brick"]


def test_an_answer_that_cannot_be_is_said_and_leaves_nothing_waiting(page, session):
    before = session.opening
    page.questions._take({"frame.face": -1.0})
    assert session.opening == before
    assert page.questions.refusal.text().startswith("⚠ ")
    assert session.refusals == {}
    press(page, "things", NOTHING)
    assert not page.questions.refusal.isVisible()


@pytest.mark.parametrize("name", STARTS)
def test_every_start_is_answered_in_words(page, name):
    press(page, "starts", name)
    assert re.search("Opens |Stops |Held ", lettered(page))


def test_a_length_of_a_thing_is_changed_with_a_press(qtbot, page, session):
    qtbot.mouseClick(page.questions.measures[0].less, Qt.MouseButton.LeftButton)
    assert session.opening.obstructions[0].projection == 1.5
    assert "Opens all the way" in lettered(page)


def test_what_was_taken_as_usual_is_counted_and_folded_away(page, session):
    questions = page.questions
    count = len(session.study.filled.assumed)
    assert f"{count} things" in questions.fold.text()
    assert not questions.usual.isVisible()
    questions.fold.click()
    assert questions.usual.isVisible()
    assert "Not measured yet, taken as usual" in questions.usual.text()
    assert "before anything is made" in questions.usual.text()


def test_a_handle_is_chosen_where_the_rest_is_folded_away(page):
    press(page, "starts", "Office door")
    tried = page.shown
    assert "without a handle" not in page.marked.text()
    page.questions.fold.click()
    assert ticked(page, "handles") == ["Lever"]
    press(page, "handles", "None drawn")
    assert tried.opening.hardware == ()
    assert "drawn without a handle" in page.marked.text()
    assert "the lever" not in lettered(page)


def test_cautions_are_not_folded_away_and_are_in_a_clients_words(page, session):
    session.select("140A")
    assert page.questions.cautions.isVisible()
    assert "This is a fire door" in page.questions.cautions.text()
    assert "[" not in page.questions.cautions.text()


def test_the_questions_ask_how_far_out_and_where_it_begins_of_the_kind_chosen(page):
    press(page, "things", NOTHING)
    press(page, "things", "Baseboard")
    assert [one.name.text() for one in page.questions.measures] == [
        "Baseboard: how far does it stand out from the wall?",
        "Baseboard: how far from the frame does it begin?",
    ]
    press(page, "things", NOTHING)
    press(page, "things", "Column")
    assert [one.name.text() for one in page.questions.measures] == [
        "Column: how far from the frame does it begin?",
        "Column: how thick is it?",
    ]


def test_not_measured_is_an_answer_and_so_is_measured(page, session):
    press(page, "things", NOTHING)
    press(page, "things", "Chair rail")
    out = page.questions.measures[0]
    assert out.measured.isChecked()
    assert out.line.text() == "1-3/4 in"
    assert "obstructions.0.projection" in session.study.filled.assumed
    out.measured.click()
    assert not out.measured.isChecked()
    assert "obstructions.0.projection" not in session.study.filled.assumed
    assert session.opening.obstructions[0].projection == 1.75
    out.more.click()
    assert session.opening.obstructions[0].projection == 2
    out.measured.click()
    assert session.opening.obstructions[0].projection == 1.75
    assert "obstructions.0.projection" in session.study.filled.assumed


def test_tab_goes_through_the_questions_from_top_to_bottom(page, session):
    press(page, "starts", "Corner washroom")
    press(page, "things", "Something else")
    assert len(page.questions.measures) == 3
    order, widget = [], page.questions.starts.buttons["Office door"]
    for _ in range(60):
        order.append(widget)
        widget = widget.nextInFocusChain()
    places = [order.index(stepper.line) for stepper in page.questions.measures]
    assert places == sorted(places)
    assert order.index(page.questions.things.buttons["Something else"]) < places[0]
    assert places[-1] < order.index(page.questions.fold)
