"""Every problem that can be posed has exactly one right answer within the precision that it states."""

import inspect
import math
import re
from functools import cache
from importlib import import_module
from pathlib import Path

import pytest

from configurator.drawing.plan.sheet import bare_plan
from configurator.practice import topics
from configurator.practice.answers import (
    HANDS,
    AngleAnswer,
    ChoiceAnswer,
    CodeAnswer,
    CountAnswer,
    HingeSizeAnswer,
    LengthAnswer,
    UnreadableError,
)
from configurator.practice.course import BY_KEY, TEMPLATES, TOPICS, problem_of
from configurator.practice.problem import Problem, Template, pose
from configurator.study.run import study
from configurator.tables import FinishRow, table
from tests.sweeps import sized

SEEDS = sized(2_500, 10_000)
UNREAD = re.compile(r"\b(?:nan|inf|None)\b|(?<![\d'])-\d|[{}]|  ")


def test_there_are_at_least_forty_templates_over_eight_topics():
    assert len(TEMPLATES) >= 40
    assert len(TOPICS) >= 8
    assert len(BY_KEY) == len(TEMPLATES)
    assert {template.level for template in TEMPLATES} == {1, 2, 3, 4, 5}


def test_every_problem_that_is_written_is_posed():
    """A maker belongs to its topic's `TEMPLATES`, a topic to the course."""
    made = {template.make for template in TEMPLATES}
    names = {path.stem for path in Path(topics.__file__).parent.glob("*.py")} - {"__init__"}
    for name in names:
        module = import_module(f"{topics.__name__}.{name}")
        for maker in filter(inspect.isfunction, vars(module).values()):
            makes = maker.__annotations__.get("return") in (Problem, Problem | None)
            if makes and list(inspect.signature(maker).parameters) == ["random"]:
                assert maker in made, (name, maker.__name__)


def test_a_seed_gives_the_same_problem_and_another_seed_another():
    template = BY_KEY["clear width at 90"]
    assert pose(template, 5) == pose(template, 5)
    assert len({pose(template, seed).problem.question for seed in range(40)}) > 30


def test_every_template_draws_fresh_numbers():
    for template in TEMPLATES:
        posed = [pose(template, seed).problem for seed in range(12)]
        assert len({(one.question, one.answer.shown) for one in posed}) >= 3, template.key


def test_a_template_that_finds_no_numbers_says_so():
    stuck = Template("stuck", "sizes", 1, lambda _: None)
    with pytest.raises(RuntimeError, match=r"'stuck' finds no numbers for the seed 3"):
        pose(stuck, 3)


def test_numbers_that_leave_two_answers_are_drawn_again():
    unclear = Problem(question="?", answer=LengthAnswer(0.5 / 64), solution=())
    drawn = iter([unclear, unclear, Problem(question="!", answer=LengthAnswer(1.0), solution=())])
    assert pose(Template("twice", "sizes", 1, lambda _: next(drawn)), 1).problem.question == "!"


def beside(answer):
    """What may be typed for an answer within its precision: the steps, sizes or codes about the right one."""
    match answer:
        case LengthAnswer():
            at = math.floor(answer.value / answer.step + 0.5)
            return [f"{(at + n) * answer.step:.9f}" for n in range(-3, 4)]
        case AngleAnswer():
            at = math.floor(answer.value / answer.step + 0.5)
            return [f"{(at + n) * answer.step:.6f}" for n in range(-3, 4)]
        case CountAnswer(in_pairs=True):
            return [f"{answer.value / 2 + n / 2} pair" for n in range(-1, 3)]
        case CountAnswer(things="hinges"):
            return [str(answer.value + n) for n in range(-1, 3)] + [f"{answer.value} pair"]
        case CountAnswer():
            return [str(answer.value + n) for n in range(-1, 3)]
        case HingeSizeAnswer():
            h, w = answer.height, answer.width
            return [f"{h} x {w}", f"{w} x {h}", f"{h + 0.5} x {w}", f"{h} x {w + 0.5}"]
        case ChoiceAnswer():
            return list(answer.letters)
        case CodeAnswer():
            return list({answer.right, *CODES[answer.kind]})
    raise AssertionError(answer)


ROWS = table(FinishRow)
CODES = {
    "hand": HANDS,
    "BHMA number": {row.bhma for row in ROWS if re.fullmatch(r"\d{3}", row.bhma)},
    "US code": {row.us for row in ROWS if row.us},
    "opening size": {"2868", "3070", "3068", "21070", "4080"},
}


def check(posed):
    problem = posed.problem
    where = (posed.template.key, posed.seed)
    typed = beside(problem.answer)
    right = [text for text in typed if problem.answer.is_right(text)]
    assert len(right) == 1, (where, right)
    assert len(set(typed)) == len(typed), where
    for text in (problem.question, problem.convention, problem.answer.hint, *problem.solution):
        assert not UNREAD.search(text), (where, text)
    assert problem.solution, where
    assert told(problem.answer) not in re.split("[:,]? ", problem.answer.hint), where
    assert said(problem.answer) in " ".join(problem.solution), (where, problem.solution)


def told(answer):
    """The right answer as an example of what to type would tell it; a hand and an option are always told."""
    if isinstance(answer, ChoiceAnswer) or (isinstance(answer, CodeAnswer) and answer.kind == "hand"):
        return None
    return said(answer)


def said(answer):
    """How the right answer is found in its solution."""
    match answer:
        case ChoiceAnswer():
            return ""
        case LengthAnswer() | AngleAnswer():
            return answer.shown.removesuffix(" in").removesuffix("°")
        case CountAnswer(in_pairs=False):
            return str(answer.value)
        case CodeAnswer():
            return answer.right
    return answer.shown


@cache
def problems_of_all_seeds():
    return tuple(problem_of(seed) for seed in range(SEEDS))


def test_thousands_of_seeds_have_exactly_one_right_answer_each():
    for posed in problems_of_all_seeds():
        check(posed)


def test_what_is_shown_as_the_right_answer_is_right_when_typed():
    for posed in problems_of_all_seeds():
        answer = posed.problem.answer
        shown = answer.right if isinstance(answer, CodeAnswer) else answer.shown
        assert answer.is_right(shown), shown


def test_nothing_typed_is_never_marked():
    for template in TEMPLATES:
        with pytest.raises(UnreadableError):
            pose(template, 1).problem.answer.is_right(" ")


def test_every_picture_can_be_studied():
    for template in TEMPLATES:
        for seed in range(2):
            problem = pose(template, seed).problem
            if problem.opening is not None:
                assert study(problem.opening).candidates
                assert 0.0 <= problem.angle <= 180.0


def test_a_picture_shown_with_the_question_tells_no_number_and_no_angle():
    for template in TEMPLATES:
        problem = pose(template, 4).problem
        if problem.shown_first and problem.picture == "plan":
            assert problem.opening is not None
            groups = bare_plan(study(problem.opening), 600.0, 400.0)
            kinds = {type(item).__name__ for group in groups for item in group.primitives}
            assert kinds.isdisjoint({"Text", "Dimension"}), (template.key, kinds)


def test_the_study_of_the_picture_agrees_with_the_answer():
    for key, name in {
        "pin off the door face": "pin_off_door_face",
        "pin off the frame face": "pin_off_frame_face",
        "clear width at 90": "clear_width_at_90",
        "angle at a rail": "greatest_angle_bare",
        "angle of a lever on the wall": "greatest_angle",
        "angle at a return wall": "greatest_angle_bare",
        "clearance past the frame": "clear_past_frame_at_180",
        "barrel past the wall": "barrel_past_wall",
        "out into the corridor, flat": "encroachment_at_rest",
    }.items():
        for seed in range(3):
            problem = pose(BY_KEY[key], seed).problem
            assert problem.opening is not None
            (found,) = study(problem.opening).candidates
            assert getattr(found, name) == pytest.approx(problem.answer.value, abs=1e-9), key
