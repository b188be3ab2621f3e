import pytest

from configurator.drawing.base.primitives import Text
from configurator.drawing.pictures.practice_pages import set_pages
from configurator.practice.course import of_level, problem_of
from configurator.practice.sets import SetAsked, problem_set


def test_a_set_is_called_by_its_number_anywhere():
    asked = SetAsked(12)
    assert problem_set(asked) == problem_set(SetAsked(12))
    assert problem_set(asked) != problem_set(SetAsked(13))
    assert len(problem_set(asked)) == 10
    for number, posed in problem_set(asked):
        assert problem_of(number) == posed
    levels = [posed.template.level for _, posed in problem_set(asked)]
    assert levels == sorted(levels)


def test_no_kind_comes_twice_before_every_kind_has_come():
    kinds = len(of_level(1))
    keys = [posed.template.key for _, posed in problem_set(SetAsked(3, level=1, count=kinds))]
    assert len(set(keys)) == kinds
    more = problem_set(SetAsked(3, level=1, count=kinds + 4))
    assert {posed.template.level for _, posed in more} == {1}
    assert len({number for number, _ in more}) == kinds + 4


def test_a_set_of_one_topic_has_no_other():
    assert {posed.template.topic for _, posed in problem_set(SetAsked(5, topic="hands"))} == {"hands"}
    assert SetAsked(5, 2, "hands").title == "Set 5, level 2, hands"


@pytest.mark.parametrize(
    ("asked", "wrong"),
    [
        ({"number": 0}, "set is a number"),
        ({"number": 1, "level": 9}, "level is a number"),
        ({"number": 1, "topic": "cheese"}, "topic is one of"),
        ({"number": 1, "count": 99}, "count is a number"),
        ({"number": 1, "level": 5, "topic": "hands"}, "topic hands has no problems of level 5"),
    ],
)
def test_what_there_is_not_is_said(asked, wrong):
    with pytest.raises(ValueError, match=wrong):
        SetAsked(**asked)


def texts(pages):
    return [item for page in pages for item in page.furniture if isinstance(item, Text)]


def test_the_pages_have_every_question_then_every_answer_inside_their_margins():
    asked = SetAsked(12)
    pages = set_pages(asked)
    assert {page.title for page in pages} == {"Set 12, questions", "Set 12, answers"}
    questions = [page for page in pages if page.title.endswith("questions")]
    on_questions = " ".join(item.text for item in texts(questions))
    on_answers = " ".join(item.text for item in texts(page for page in pages if page not in questions))
    for place, (number, posed) in enumerate(problem_set(asked), 1):
        assert f"Answer ({number})" in on_questions
        assert f"{place}.  {posed.problem.answer.shown}" in on_answers
        assert f"Problem number {number}" in on_answers
    for page in pages:
        width, height = page.paper.points
        assert width < height
        for item in texts([page]):
            assert 40 <= item.at[0] <= width - 40
            assert 40 <= item.at[1] <= height - 40
    assert set_pages(asked, questions_only=True) == tuple(questions)
    with_picture = sum(posed.problem.picture is not None for _, posed in problem_set(asked))
    grounds = [one for page in questions for one in page.details if one.view.scale == 1.0]
    assert len(grounds) >= with_picture


def test_lines_of_a_question_do_not_run_into_the_line_for_its_answer():
    for number in range(1, 12):
        for page in set_pages(SetAsked(number), questions_only=True):
            bases = [item.at[1] for item in texts([page]) if item.text.startswith("Answer (")]
            others = [item.at[1] for item in texts([page]) if not item.text.startswith("Answer (")]
            for base in bases:
                assert not [y for y in others if base - 3 < y < base + 7], (number, page.title)
