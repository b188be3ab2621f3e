from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QShortcut, QTextDocumentFragment
from PySide6.QtWidgets import QApplication

from configurator.drawing.plan.sheet import moving_note_groups
from configurator.practice.course import BY_KEY, TOPICS, course, number_of, of_topic
from configurator.practice.exercise import TODAY
from configurator.practice.progress import Progress, load_progress, save_progress
from configurator.practice.written import ChoiceAnswer
from configurator.study.run import study
from configurator.ui.practice.page import PracticePage
from configurator.units import format_angle

PIN = BY_KEY["pin off the door face"]
RAIL = BY_KEY["angle at a rail"]
FIRST = course()[0]


def right_of(page):
    answer = page.exercise.posed.problem.answer
    return getattr(answer, "right", answer.shown)


def shown_question(page):
    """The question as it is read, without its links."""
    return QTextDocumentFragment.fromHtml(page.question.question.text()).toPlainText()


def type_in(qtbot, page, text):
    page.question.typed.selectAll()
    qtbot.keyClicks(page.question.typed, text)
    qtbot.keyClick(page.question.typed, Qt.Key.Key_Return)


def test_it_stands_in_place_of_the_work_and_takes_the_keyboard(window, in_window):
    page = in_window
    assert page.isVisible()
    assert not window.work.isVisible()
    assert QApplication.focusWidget() is page.question.typed
    assert shown_question(page) == page.exercise.posed.problem.question
    assert page.question.heading.text() == "Sizes, level 1 of 5"
    assert page.picture.canvas is None


def test_a_problem_is_answered_and_the_next_one_posed_from_the_keyboard_alone(page, qtbot):
    page.call(number_of(PIN, 3))
    type_in(qtbot, page, right_of(page))
    assert page.question.verdict.text() == f"✔ Right: {page.exercise.posed.problem.answer.shown}."
    assert page.question.solution.text() == "\n".join(page.exercise.posed.problem.solution)
    assert page.picture.plain.accessibleName() == "Picture of the problem, with the answer"
    qtbot.keyClick(page.question.typed, Qt.Key.Key_Return)
    assert page.exercise.number != number_of(PIN, 3)
    assert page.question.typed.text() == ""
    assert page.picture.plain.accessibleName().endswith("what is asked marked with ?")
    assert QApplication.focusWidget() is page.question.typed


def test_a_wrong_answer_is_told_and_may_be_tried_again(page, qtbot):
    page.call(number_of(PIN, 3))
    type_in(qtbot, page, "99")
    assert page.question.verdict.text().startswith("✖ Not right.")
    assert not page.question.solution.isVisible()
    type_in(qtbot, page, right_of(page))
    assert page.question.verdict.text().startswith("✔")
    tally = load_progress("trainee").of(PIN)
    assert (tally.right, tally.wrong, tally.in_a_row) == (0, 1, 0)


def test_what_cannot_be_read_is_told_and_not_marked(page, qtbot):
    page.call(number_of(PIN, 3))
    type_in(qtbot, page, "wide")
    assert page.question.verdict.text().startswith("▲ “wide” is not a length.")
    assert load_progress("trainee").tallies == {}


def test_an_option_is_picked_by_its_button(page, qtbot):
    page.call(number_of(BY_KEY["what a hand says"], 8))
    answer = page.exercise.posed.problem.answer
    shown = [button.text() for button in page.question.options if button.isVisible()]
    assert shown == [f"{'ABCDEF'[n]}   {option}" for n, option in enumerate(answer.options)]
    page.question.options[answer.options.index(answer.right)].click()
    assert page.exercise.state == "right"
    assert not any(button.isEnabled() for button in page.question.options if button.isVisible())


def test_there_is_a_button_for_every_option_of_any_problem(page):
    for template in course():
        page.call(number_of(template, 1))
        answer = page.exercise.posed.problem.answer
        many = len(answer.options) if isinstance(answer, ChoiceAnswer) else 0
        assert sum(button.isVisible() for button in page.question.options) == many


def test_the_solution_is_shown_with_its_picture_and_the_door_as_far_as_it_goes(page, session):
    page.call(number_of(RAIL, 5))
    page.question.show_it.click()
    assert page.question.verdict.text().startswith("● The answer is ")
    assert page.picture.canvas.isVisible()
    greatest = study(page.exercise.posed.problem.opening).candidates[0].greatest_angle
    assert f"stops at {format_angle(greatest)}" in " ".join(texts(page.picture.canvas))
    assert not page.question.check.isEnabled()
    assert page.question.next.isEnabled()


def texts(canvas):
    for group in moving_note_groups(canvas._sheet, 180.0):
        yield from (item.text for item in group.primitives if hasattr(item, "text"))


def test_a_problem_without_a_picture_has_the_whole_room(page):
    page.call(number_of(RAIL, 5))
    page.show_solution()
    page.call(number_of(BY_KEY["slip: bearing"], 5))
    assert not page.picture.isVisible()
    page.show_solution()
    assert page.picture.canvas.isVisible()


def test_a_problem_is_called_by_its_number(page, qtbot):
    page.question.number.selectAll()
    qtbot.keyClicks(page.question.number, str(number_of(RAIL, 7)))
    qtbot.keyClick(page.question.number, Qt.Key.Key_Return)
    assert page.exercise.posed.template is RAIL
    assert page.question.heading.text() == "Greatest angle, level 5 of 5"


def test_a_topic_is_chosen_and_its_progress_told(page, qtbot):
    row = 2 + TOPICS.index("hands")
    page.who.topics.selectRow(row)
    page.who.topics.setCurrentCell(row, 0)
    assert page.exercise.posed.template.topic == "hands"
    type_in(qtbot, page, right_of(page))
    assert page.who.topics.text(row, 1) == f"0 of {len(of_topic('hands'))}", "one right answer may be luck"
    assert page.who.topics.text(0, 1).endswith(" of 10")
    assert page.who.topics.text(1, 1) == f"0 of {len(course())}"
    assert page.who.summary.text() == "1 answered, 1 of them right at first try."
    page.go_on()
    assert page.exercise.posed.template.topic == "hands"
    assert page.who.topics.currentRow() == row


def test_each_person_goes_on_where_they_were(page, qtbot):
    save_progress(Progress("Wren").with_answer(FIRST, True, date.today()))
    line = page.who.person.lineEdit()
    line.selectAll()
    qtbot.keyClicks(line, "Wren")
    qtbot.keyClick(line, Qt.Key.Key_Return)
    assert page.exercise.progress.person == "Wren"
    assert page.exercise.posed.template is course()[1]
    type_in(qtbot, page, right_of(page))
    assert load_progress("Wren").of(course()[1]).right == 1
    assert load_progress("trainee").tallies == {}


def test_progress_is_cleared_only_when_asked_twice(page):
    page.answer(right_of(page))
    page.who.clear.click()
    assert page.who.sure.text() == "Clear all of trainee"
    assert load_progress("trainee").tallies
    page.who.keep.click()
    assert page.who.clear.isVisible()
    assert load_progress("trainee").tallies
    page.who.clear.click()
    page.who.sure.click()
    assert load_progress("trainee").tallies == {}
    assert page.who.topics.text(1, 1) == f"0 of {len(course())}"
    assert not page.who.clear.isEnabled()


def test_progress_that_cannot_be_kept_is_said(bare_window, page, monkeypatch):
    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("configurator.ui.practice.page.save_progress", refuse)
    page.answer(right_of(page))
    assert "could not be kept: Permission denied" in bare_window.line.text()
    assert page.exercise.state == "right"


def test_nothing_of_the_job_is_touched(session, page):
    before = session.job
    page.call(number_of(RAIL, 5))
    page.show_solution()
    assert session.job is before
    assert not session.history.unsaved


def test_it_follows_the_theme(session, page):
    page.call(number_of(RAIL, 5))
    page.show_solution()
    session.use_dark(True)
    assert page.picture.canvas._dark
    session.use_dark(False)
    assert not page.picture.canvas._dark


@pytest.mark.parametrize(
    ("width", "side"),
    [(960, Qt.Orientation.Vertical), (1280, Qt.Orientation.Horizontal), (1920, Qt.Orientation.Horizontal)],
)
def test_the_picture_stands_where_there_is_room(bare_window, page, width, side):
    bare_window.resize(width, 900)
    page.call(number_of(RAIL, 5))
    page.show_solution()
    QApplication.processEvents()
    assert page.split.orientation() == side
    assert page.picture.canvas.height() >= 280
    if side == Qt.Orientation.Horizontal:
        assert page.picture.width() > page.question.width()
        assert page.picture.x() < page.question.parentWidget().x() or page.picture.x() == 0
    assert page.question.typed.visibleRegion().boundingRect().width() == page.question.typed.width()


def test_everything_can_be_reached_by_tab_and_has_a_name(page, qtbot):
    page.call(number_of(BY_KEY["what a hand says"], 8))
    page.answer("A")
    start, seen = page.question.typed, []
    start.setFocus()
    for _ in range(60):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        if QApplication.focusWidget() is start:
            break
        seen.append(QApplication.focusWidget())
    for widget in (page.who.person, page.who.topics, page.who.clear, page.question.check, page.question.next):
        assert widget in seen, widget
    assert page.question.number in seen
    assert all(button in seen for button in page.question.options if button.isVisible())
    for widget in (page.who.person, page.who.topics, page.question.typed, page.question.number):
        assert widget.accessibleName()


def test_who_practised_last_is_there_again_at_the_next_start(session, qtbot):
    save_progress(Progress("Wren").with_answer(FIRST, True, date.today()))
    page = PracticePage(session, draw=lambda: 4)
    qtbot.addWidget(page)
    assert page.who.person.currentText() == "Wren"
    assert page.exercise.number == number_of(course()[1], 4)


def test_the_picture_stands_beside_its_question_and_turns_to_the_whole_plan_with_the_solution(page):
    page.call(number_of(RAIL, 5))
    assert page.picture.plain.isVisible()
    page.show_solution()
    assert not page.picture.plain.isVisible()
    assert page.picture.canvas.isVisible()


@pytest.mark.parametrize("key", ["hand from a plan", "hand seen from inside"])
def test_the_plan_of_a_hand_does_not_tell_the_hand_before_it_is_answered(page, key):
    page.call(number_of(BY_KEY[key], 5))
    hand = page.exercise.posed.problem.answer.right
    assert page.picture.plain.isVisible()
    assert hand not in page.picture.plain.accessibleName().split()
    page.answer(hand)
    assert page.picture.plain.isVisible()
    assert hand in page.question.verdict.text()


def test_help_is_given_a_step_at_a_time(page):
    page.call(number_of(BY_KEY["barrel past the wall"], 4))
    problem = page.exercise.posed.problem
    assert not page.question.helped.isVisible()
    page.question.help.click()
    assert page.question.helped.text() == f"Hint: {problem.hint}"
    assert page.question.help.text() == "&First step"
    page.question.help.click()
    assert page.question.helped.text().endswith(f"First step: {problem.solution[0]}")
    assert not page.question.help.isEnabled()
    assert not page.question.solution.isVisible()
    page.question.show_it.click()
    assert page.question.solution.text() == "\n".join(problem.solution)


def test_a_usual_slip_is_named(page, qtbot):
    page.call(number_of(PIN, 3))
    slip = page.exercise.posed.problem.slips[0]
    type_in(qtbot, page, page.exercise.posed.problem.answer.like(slip.value).shown)
    assert page.question.verdict.text() == f"✖ Not right. {slip.why}"


def test_the_words_of_a_question_lead_to_their_meaning(window, in_window, qtbot):
    page = in_window
    page.call(number_of(BY_KEY["pin off the frame face"], 3))
    assert '<a href="rabbet">' in page.question.question.text()
    page.question.question.linkActivated.emit("rabbet")
    assert window.beside.words.term.text() == "Rabbet"
    qtbot.keyClick(page.question.typed, Qt.Key.Key_F1)
    terms = [word.term for word in window.beside.words.words]
    assert {"rabbet", "pin", "frame face"} <= set(terms)
    window.beside.words.close()


def test_the_topic_of_the_problem_on_show_stands_out_on_the_way_through_them(page):
    page.call(number_of(PIN, 3))
    bold = [row for row in range(page.who.topics.rowCount()) if page.who.model.is_bold(row, 0)]
    assert bold == [2 + TOPICS.index("pin and barrel")]


def test_the_set_of_the_day_is_a_row_of_its_own(page):
    page.who.topics.setCurrentCell(0, 0)
    assert page.exercise.topic == TODAY
    assert page.who.topics.text(0, 1) == "0 of 10"
    page.answer(right_of(page))
    assert page.who.topics.text(0, 1) == "1 of 10"


def test_its_key_turns_to_it_and_back_and_is_nobody_elses(window, in_window, qtbot):
    page = in_window
    # Alt+Left leads back from a page and turns the door at work: of the two one at a time is on.
    keys = [one.shortcut().toString() for one in window.findChildren(QAction) if one.isEnabled()]
    keys += [one.key().toString() for one in window.findChildren(QShortcut) if one.isEnabled()]
    given = [key for key in keys if key]
    assert given.count("F4") == 1
    assert len(given) == len(set(given)), sorted(given)
    qtbot.keyClick(page.question.typed, Qt.Key.Key_F4)
    assert window.work.isVisible()
    assert not page.isVisible()
