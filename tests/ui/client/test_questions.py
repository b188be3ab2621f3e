import pytest
from PySide6.QtCore import Qt

from configurator.ui.client.controls import TICK
from configurator.ui.client.questions import NOTHING
from configurator.ui.client.starts import STARTS


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
    assert [stepper.line.text() for stepper in page.questions.measures] == ["1-3/4 in"]


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


def test_a_start_stands_beside_the_door_that_was_worked_on(page, session):
    count, before = len(session.job.openings), session.opening
    press(page, "starts", "Closet at home")
    assert len(session.job.openings) == count + 1
    assert session.opening.frame.kind == "wood with casing"
    assert before in session.job.openings
    assert ticked(page, "starts") == []


def test_trying_several_starts_leaves_one_door_and_one_step(page, session):
    count, before = len(session.job.openings), session.job
    for name in STARTS:
        press(page, "starts", name)
    assert len(session.job.openings) == count + 1
    session.undo()
    assert session.job == before


def test_two_doors_begun_are_two_steps(page, session):
    worked, count = session.mark, len(session.job.openings)
    press(page, "starts", "Office door")
    session.select(worked)
    press(page, "starts", "Pair of doors")
    assert len(session.job.openings) == count + 2
    session.undo()
    assert len(session.job.openings) == count + 1


@pytest.mark.parametrize("name", STARTS)
def test_every_start_is_answered_in_words(page, name):
    press(page, "starts", name)
    assert page.sentences.text().count("\n") >= 2


def test_a_length_of_a_thing_is_changed_with_a_press(qtbot, page, session):
    qtbot.mouseClick(page.questions.measures[0].less, Qt.MouseButton.LeftButton)
    assert session.opening.obstructions[0].projection == 1.5
    assert "all the way" in page.sentences.text() or "opens to" in page.sentences.text()


def test_what_was_taken_as_usual_is_counted_and_folded_away(page, session):
    questions = page.questions
    count = len(session.study.filled.assumed)
    assert f"{count} things" in questions.fold.text()
    assert not questions.usual.isVisible()
    questions.fold.click()
    assert questions.usual.isVisible()
    assert "Not measured yet, taken as usual" in questions.usual.text()
    assert "licensed professional" in questions.usual.text()


def test_a_handle_is_chosen_where_the_rest_is_folded_away(page, session):
    press(page, "starts", "Office door")
    assert "without a handle" not in page.marked.text()
    page.questions.fold.click()
    assert ticked(page, "handles") == ["Lever"]
    press(page, "handles", "None drawn")
    assert session.opening.hardware == ()
    assert "drawn without a handle" in page.marked.text()
    assert "the lever" not in page.sentences.text()


def test_cautions_are_not_folded_away(page, session):
    said = [one.message for one in session.study.all_findings() if one.severity in ("error", "warning")]
    assert said
    assert page.questions.cautions.isVisible()
    assert all(message in page.questions.cautions.text() for message in said)


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
