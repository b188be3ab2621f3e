import itertools
from datetime import date, timedelta

import pytest

from configurator.practice.course import BY_KEY, course, number_of, of_level, problem_of
from configurator.practice.exercise import TODAY, Exercise
from configurator.practice.progress import Progress, Tally

PIN = BY_KEY["pin off the door face"]
DAY = date(2026, 11, 25)
NEXT = (DAY + timedelta(days=1)).isoformat()
MISSED = Tally(0, 1, 0, 0, DAY.isoformat())


@pytest.fixture
def kept():
    return []


@pytest.fixture
def exercise(kept):
    return Exercise(Progress("Wren"), kept.append, itertools.count(1).__next__, lambda: DAY)


def right_of(exercise):
    answer = exercise.posed.problem.answer
    return getattr(answer, "right", answer.shown)


def wrong_of(exercise):
    exercise.call(number_of(PIN, 4))
    return "99"


def test_it_begins_with_the_first_of_the_course(exercise):
    assert exercise.posed.template is course()[0]
    assert exercise.state == "asked"
    assert not exercise.ended


def test_a_right_answer_counts_and_brings_the_next_of_the_course(exercise, kept):
    exercise.answer(right_of(exercise))
    assert (exercise.state, exercise.ended) == ("right", True)
    assert kept[-1].of(course()[0]) == Tally(1, 0, 1, 1, NEXT)
    exercise.go_on()
    assert exercise.posed.template is course()[1]
    assert exercise.said == ""


def test_only_the_first_answer_counts(exercise, kept):
    exercise.answer(wrong_of(exercise))
    assert exercise.state == "wrong"
    assert kept[-1].of(PIN) == MISSED
    exercise.answer(right_of(exercise))
    assert exercise.state == "right"
    assert len(kept) == 1


def test_what_cannot_be_read_is_not_counted(exercise, kept):
    wrong_of(exercise)
    exercise.answer("wide")
    assert exercise.state == "unread"
    assert "not a length" in exercise.said
    assert kept == []


def test_a_solution_shown_before_an_answer_counts_as_wrong(exercise, kept):
    wrong_of(exercise)
    exercise.show_solution()
    assert exercise.ended
    assert exercise.said == f"The answer is {exercise.posed.problem.answer.shown}."
    assert kept[-1].of(PIN) == MISSED
    exercise.answer(right_of(exercise))
    exercise.show_solution()
    assert exercise.state == "shown"
    assert len(kept) == 1


def test_a_problem_called_again_by_its_number_is_the_same_and_counts_no_more(exercise, kept):
    exercise.answer(right_of(exercise))
    number, question = exercise.number, exercise.posed.problem.question
    exercise.go_on()
    exercise.call(number)
    assert exercise.posed.problem.question == question
    exercise.answer(right_of(exercise))
    assert exercise.state == "right"
    assert len(kept) == 1


def test_a_topic_keeps_to_itself(exercise):
    exercise.practise("hands")
    for _ in range(5):
        assert exercise.posed.template.topic == "hands"
        exercise.answer(right_of(exercise))
        exercise.go_on()


def test_going_on_without_an_answer_brings_another_template(exercise):
    before = exercise.posed.template
    exercise.go_on()
    assert exercise.posed.template is not before


def test_leaving_problems_out_leads_through_all_of_them(exercise):
    met = [exercise.posed.template]
    for _ in range(len(course()) - 1):
        exercise.go_on()
        met.append(exercise.posed.template)
    assert met == list(course())


def test_another_person_begins_where_they_were(exercise, kept):
    exercise.change_person(Progress("Ash").with_answer(course()[0], True, DAY))
    assert exercise.posed.template is course()[1]
    exercise.answer(right_of(exercise))
    assert kept[-1].person == "Ash"


def test_a_number_says_template_and_numbers():
    for template in course():
        assert problem_of(number_of(template, 12345)).template is template


def test_a_wrong_answer_names_its_slip(exercise):
    exercise.call(number_of(PIN, 4))
    slip = exercise.posed.problem.slips[0]
    exercise.answer(exercise.posed.problem.answer.like(slip.value).shown)
    assert exercise.said == f"Not right. {slip.why}"


def test_an_answer_nobody_gives_is_told_where_help_is(exercise):
    exercise.call(number_of(PIN, 4))
    exercise.answer("99")
    assert exercise.said == "Not right. Try again, or take a hint."


def test_help_goes_from_a_hint_to_a_step_to_the_whole(exercise, kept):
    exercise.call(number_of(BY_KEY["barrel past the wall"], 4))
    assert exercise.next_help == "hint"
    exercise.help_on()
    assert (exercise.help, exercise.next_help, kept) == ("hint", "step", [])
    exercise.help_on()
    assert (exercise.help, exercise.next_help) == ("step", "")
    assert kept[-1].of(exercise.posed.template) == MISSED
    exercise.show_solution()
    assert exercise.ended
    assert len(kept) == 1


def test_after_a_hint_a_right_answer_counts_and_is_no_step_toward_known(exercise, kept):
    exercise.help_on()
    exercise.answer(right_of(exercise))
    assert kept[-1].of(course()[0]) == Tally(1, 0, 0, 1, NEXT)


def test_another_person_or_topic_never_begins_in_the_middle(exercise):
    exercise.call(number_of(BY_KEY["place of a bumper"], 4))
    exercise.change_person(Progress("Ash"))
    assert exercise.posed.template is course()[0]
    exercise.call(number_of(BY_KEY["place of a bumper"], 4))
    exercise.practise("door stops")
    assert exercise.posed.template is BY_KEY["what a door wants"]
    exercise.call(number_of(BY_KEY["place of a bumper"], 4))
    exercise.go_on()
    exercise.practise("")
    assert exercise.posed.template is course()[0]


def test_what_was_missed_comes_back_after_a_few_others(exercise):
    missed = exercise.posed.template
    exercise.answer("99999")
    met = []
    for _ in range(8):
        exercise.go_on()
        met.append(exercise.posed.template)
        exercise.answer(right_of(exercise))
    assert missed not in met[:4]
    assert met.count(missed) == 1


def test_who_misses_everything_still_comes_to_all_of_a_level(exercise):
    met = set()
    for _ in range(30):
        met.add(exercise.posed.template)
        exercise.show_solution()
        exercise.go_on()
    assert met >= set(of_level(1))


def test_a_level_that_went_right_leads_to_its_small_job(exercise):
    said = []
    for _ in of_level(1):
        exercise.answer(right_of(exercise))
        said.append("its small job is waiting" in exercise.said)
        exercise.go_on()
    assert said == [False] * (len(said) - 1) + [True]
    assert exercise.posed.template.level == 2


def test_the_end_of_the_days_set_is_said_with_its_last_problem(exercise):
    exercise.practise(TODAY)
    for place in range(10):
        exercise.answer(right_of(exercise)) if place else exercise.show_solution()
        said = exercise.said
        assert ("Today's" in said) == (place == 9)
        exercise.go_on()
    assert said.endswith("Today's 10 are done, 9 of them right at first try.")


def test_the_set_of_the_day_has_ten_and_ends(exercise, kept):
    exercise.practise(TODAY)
    met = []
    for _ in range(10):
        met.append(exercise.posed.template)
        exercise.answer(right_of(exercise))
        exercise.go_on()
    assert [one.key for one in met] == list(kept[-1].day.keys)
    assert kept[-1].day.is_finished
    assert exercise.posed.template not in met
    topics = [one.topic for one in met]
    assert all(a != b for a, b in itertools.pairwise(topics[:6]))
