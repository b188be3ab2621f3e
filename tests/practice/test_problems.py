"""Every problem that can be posed has exactly one right answer within the precision that it states."""

import inspect
from collections import Counter, defaultdict
from functools import cache
from importlib import import_module
from pathlib import Path

import pytest

from configurator.drawing.pictures.practice_pictures import problem_picture
from configurator.practice import topics
from configurator.practice.answers import LengthAnswer, UnreadableError
from configurator.practice.course import BY_KEY, TEMPLATES, TOPICS, problem_of
from configurator.practice.problem import ASKED, Problem, Slip, Template, as_typed, balanced, pose
from configurator.practice.written import ChoiceAnswer, yes_or_no
from configurator.study.run import study
from tests.practice.sweep import SIZES, check, check_picture, named_slips
from tests.sweeps import sized

SEEDS = sized(750, 10_000)


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
                where = f"practice/topics/{name}.py: put {maker.__name__} into TEMPLATES"
                assert maker in made, f"{where}, and the topic into practice/course.py"


def test_a_seed_gives_the_same_problem_and_another_seed_another():
    template = BY_KEY["clear width at 90"]
    assert pose(template, 5) == pose(template, 5)
    assert len({pose(template, seed).problem.question for seed in range(40)}) > 30


def test_a_template_that_finds_no_numbers_says_so():
    stuck = Template("stuck", "sizes", 1, lambda _: None)
    with pytest.raises(RuntimeError, match=r"'stuck' finds no numbers for the seed 3"):
        pose(stuck, 3)


def test_numbers_that_leave_two_answers_are_drawn_again():
    unclear = Problem(question="?", answer=LengthAnswer(0.5 / 64), solution=(), hint="")
    drawn = iter([unclear, unclear, Problem(question="!", answer=LengthAnswer(1.0), solution=(), hint="")])
    assert pose(Template("twice", "sizes", 1, lambda _: next(drawn)), 1).problem.question == "!"


def test_a_slip_that_leads_to_the_right_answer_is_left_out_and_so_is_one_said_twice():
    slips = (Slip(4.0, "Right after all."), Slip(5.0, "One off."), Slip(5.0, "Said again."))
    problem = Problem(question="?", answer=LengthAnswer(4.0), solution=("4",), hint="!", slips=slips)
    posed = pose(Template("slips", "sizes", 1, lambda _: problem), 1)
    assert posed.problem.slips == (Slip(5.0, "One off."),)
    assert posed.problem.mark("5").why == "One off."
    assert posed.problem.mark("4").right


def test_a_balanced_maker_has_each_answer_right_equally_often():
    @balanced("yes", "no")
    def mostly_yes(random):
        yes = random.random() < 0.9
        return Problem(question="?", answer=yes_or_no(yes), solution=("!",), hint="!")

    template = Template("balanced", "sizes", 1, mostly_yes)
    right = Counter(pose(template, seed).problem.answer.right for seed in range(200))
    assert 70 < right["yes"] < 130


@cache
def problems_of_all_seeds():
    return tuple(problem_of(seed) for seed in range(SEEDS))


def test_every_template_draws_fresh_numbers():
    drawn = defaultdict(set)
    for posed in problems_of_all_seeds():
        drawn[posed.template.key].add((posed.problem.question, posed.problem.answer.shown))
    assert min(map(len, drawn.values())) >= 3


def test_hundreds_of_seeds_have_exactly_one_right_answer_each_and_every_slip_named():
    for posed in problems_of_all_seeds():
        check(posed)


BY_THE_ANSWER = {
    "opening size in figures",
    "hand seen from outside",
    "hand from a plan",
    "hand seen from inside",
    "hand from the rooms",
    "hand from push and pull",
}
"""Problems whose kind of answer names every slip there is."""


def test_every_template_names_a_slip():
    unnamed = {template.key for template in TEMPLATES}
    for posed in problems_of_all_seeds():
        if posed.template.key in unnamed and named_slips(posed.problem):
            unnamed.discard(posed.template.key)
    assert not unnamed, "give these a slip"
    slipped = {posed.template.key for posed in problems_of_all_seeds() if posed.problem.slips}
    bare = {template.key for template in TEMPLATES} - slipped
    assert sorted(bare - BY_THE_ANSWER) == [], "give these a slip of their own, or list them in BY_THE_ANSWER"
    assert bare == BY_THE_ANSWER


def test_no_option_is_right_for_all_problems_of_a_kind():
    """A small part of what the bench asks: no option is right for more than 60 % of a thousand."""
    right = defaultdict(Counter)
    for posed in problems_of_all_seeds():
        if isinstance(posed.problem.answer, ChoiceAnswer):
            right[posed.template.key][as_typed(posed.problem.answer)] += 1
    assert len(right) > 20
    assert {key for key, counts in right.items() if len(counts) == 1} == set()


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


@cache
def lettering(template, seed, told):
    """The texts of the picture beside a question."""
    groups = problem_picture(pose(template, seed).problem, 420.0, 320.0, told)
    return [item.text for group in groups for item in group.primitives if hasattr(item, "text") and item.text]


WITHOUT_PICTURE = {template.key for template in TEMPLATES if template.key.startswith("slip: ")}


def test_every_problem_but_an_order_line_has_a_picture():
    bare = {one.key for one in TEMPLATES if pose(one, 4).problem.picture is None}
    assert sorted(bare - WITHOUT_PICTURE) == [], "give these a picture, or list them in WITHOUT_PICTURE"
    assert bare == WITHOUT_PICTURE


def test_the_picture_marks_what_is_asked_and_tells_it_once_it_is_answered():
    marked = 0
    for template in TEMPLATES:
        picture = pose(template, 4).problem.picture
        if picture is None or not any(ASKED in words for _, words in picture.marks):
            continue
        marked += 1
        before, after = lettering(template, 4, False), lettering(template, 4, True)
        assert sum(ASKED in text for text in before) == 1, (template.key, before)
        assert not any(ASKED in text for text in after), (template.key, after)
        shown = pose(template, 4).problem.answer.shown
        assert any(shown in text for text in after), (template.key, after)
    assert marked > 30


@pytest.mark.parametrize("size", [SIZES[0], SIZES[2]])
def test_every_lettering_of_a_picture_has_its_room(size):
    for template in TEMPLATES:
        check_picture(pose(template, 2), size, told=False)


def test_a_picture_beside_a_question_does_not_tell_its_answer():
    for template in TEMPLATES:
        problem = pose(template, 4).problem
        if isinstance(problem.answer, LengthAnswer) and problem.picture is not None:
            given = [words for _, words in problem.picture.marks]
            assert problem.answer.shown.removesuffix(" in") not in given, template.key


@pytest.mark.parametrize("key", ["hand from a plan", "hand seen from inside", "side the barrel shows on"])
def test_a_picture_of_a_hand_does_not_name_it(key):
    for seed in range(4):
        hand = pose(BY_KEY[key], seed).problem.picture.openings[0].hand
        assert hand not in " ".join(lettering(BY_KEY[key], seed, False)).split()


def test_the_study_of_the_picture_agrees_with_the_answer():
    for key, name in {
        "pin off the door face": "pin_off_door_face",
        "pin off the frame face": "pin_off_frame_face",
        "clear width at 90": "clear_width_at_90",
        "clearance past the frame": "clear_past_frame_at_180",
        "barrel past the wall": "barrel_past_wall",
        "out into the corridor, flat": "encroachment_at_rest",
    }.items():
        for seed in range(3):
            problem = pose(BY_KEY[key], seed).problem
            assert problem.opening is not None
            (found,) = study(problem.opening).candidates
            assert getattr(found, name) == pytest.approx(problem.answer.value, abs=1e-9), key


def test_the_rules_of_thumb_of_an_angle_agree_with_the_study():
    for seed in range(6):
        problem = pose(BY_KEY["angle at a return wall"], seed).problem
        (found,) = study(problem.opening).candidates
        assert float(problem.answer.right.removesuffix("°")) == pytest.approx(
            found.greatest_angle_bare, abs=2.5
        )


@pytest.mark.parametrize(
    ("key", "name"),
    [("angle at a rail", "greatest_angle_bare"), ("angle of a lever on the wall", "greatest_angle")],
)
def test_which_of_two_doors_opens_farther_is_what_the_study_says(key, name):
    for seed in range(8):
        problem = pose(BY_KEY[key], seed).problem
        angles = [getattr(study(one).candidates[0], name) for one in problem.picture.openings]
        right = {True: "door A", False: "door B"}[angles[0] > angles[1]]
        assert problem.answer.right == ("both alike" if angles[0] == angles[1] else right)
