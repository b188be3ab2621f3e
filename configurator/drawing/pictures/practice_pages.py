"""A set of problems on paper: questions with their pictures and a line to write on, then what is right."""

from collections.abc import Iterable, Sequence

from configurator.drawing.base.lettering import wrapped
from configurator.drawing.base.primitives import Polyline, Primitive, Text
from configurator.drawing.base.view import Group
from configurator.drawing.pages.page import POINTS_PER_INCH, Detail, Page, Paper, Scale, usual_paper
from configurator.drawing.pictures.practice_pictures import moved, problem_picture
from configurator.practice.problem import Posed, Problem
from configurator.practice.sets import SetAsked, problem_set
from configurator.practice.written import LETTERS, ChoiceAnswer
from configurator.units import Display

_MARGIN = 45.0
_TYPE, _SMALL, _TITLE = 10.0, 8.5, 14.0
_LINE = 1.35
"""From one line of text to the next, of the type size."""
_PICTURE = (225.0, 150.0)
_GUTTER = 14.0
_HEAD = 34.0
Numbered = Sequence[tuple[int, Posed]]
Line = tuple[str, float, bool]
"""Words, type size in points, and whether they are bold."""


def set_pages(asked: SetAsked, questions_only: bool = False, metric: bool = False) -> tuple[Page, ...]:
    """Return a set on paper, Letter or A4: its questions, then answers and solutions unless left out."""
    paper, problems = usual_paper(Display(metric=metric)).turned(), problem_set(asked)
    answers = () if questions_only else answer_pages(asked.title, problems, paper)
    return (*question_pages(asked.title, problems, paper), *answers)


def question_pages(title: str, problems: Numbered, paper: Paper) -> tuple[Page, ...]:
    """Return the pages of questions, each with its picture, its options and a line for the answer."""
    width, height = paper.points
    pages: list[Page] = []
    details: list[Detail] = []
    furniture, top = _heading(title, "Name", width, height), height - _MARGIN - _HEAD
    for place, (number, posed) in enumerate(problems, 1):
        lines = _question_lines(place, posed.problem, _room(posed.problem, width))
        high = max(_PICTURE[1] + 16.0, _height(lines) + 34.0)
        if top - high < _MARGIN:
            pages.append(Page(f"{title}, questions", paper, tuple(details), tuple(furniture)))
            details, furniture = [], _heading(title, "Name", width, height)
            top = height - _MARGIN - _HEAD
        furniture += _set(lines, top)
        furniture += _answer_rule(number, top - high + 16.0, _MARGIN + _room(posed.problem, width))
        details += _picture(posed.problem, width, top - 6.0)
        top -= high
    return (*pages, Page(f"{title}, questions", paper, tuple(details), tuple(furniture)))


def answer_pages(title: str, problems: Numbered, paper: Paper) -> tuple[Page, ...]:
    """Return the pages of answers, each with its worked solution and the usual slips."""
    width, height = paper.points
    pages: list[Page] = []
    furniture, at = _heading(f"{title}: answers and solutions", "", width, height), height - _MARGIN - _HEAD
    for place, (number, posed) in enumerate(problems, 1):
        lines = tuple(_answer_lines(place, number, posed.problem, width - 2 * _MARGIN))
        if at - _height(lines) < _MARGIN:
            pages.append(Page(f"{title}, answers", paper, (), tuple(furniture)))
            furniture = _heading(f"{title}: answers and solutions", "", width, height)
            at = height - _MARGIN - _HEAD
        furniture += _set(lines, at)
        at -= _height(lines) + 8.0
    return (*pages, Page(f"{title}, answers", paper, (), tuple(furniture)))


def _heading(title: str, name: str, width: float, height: float) -> list[Primitive]:
    base = height - _MARGIN - _TITLE
    parts: list[Primitive] = [Text("A-ANNO-TTLB", (_MARGIN, base), title, _TITLE, bold=True)]
    if name:
        parts.append(Text("A-ANNO-TEXT", (width - _MARGIN - 190.0, base), name, _TYPE))
        parts.append(_rule(width - _MARGIN - 155.0, width - _MARGIN, base - 2.0))
    return [*parts, _rule(_MARGIN, width - _MARGIN, base - 8.0)]


def _rule(left: float, right: float, y: float) -> Polyline:
    return Polyline("A-ANNO-LEAD", ((left, y), (right, y)))


def _room(problem: Problem, width: float) -> float:
    """Return how wide a question may be beside its picture."""
    return width - 2 * _MARGIN - (_PICTURE[0] + _GUTTER if problem.picture else 0.0)


def _question_lines(place: int, problem: Problem, room: float) -> list[Line]:
    lines: list[Line] = [(f"{place}.", _TYPE + 1.0, True)]
    lines += [(line, _TYPE, False) for line in wrapped(problem.question, _TYPE, room)]
    if isinstance(problem.answer, ChoiceAnswer):
        for letter, option in zip(LETTERS, problem.answer.options, strict=False):
            lines += [(line, _SMALL, False) for line in wrapped(f"{letter}  {option}", _SMALL, room)]
    small = _SMALL - 1.0
    return [*lines, *((line, small, False) for line in wrapped(problem.convention, small, room) if line)]


def _height(lines: Iterable[Line]) -> float:
    return sum(size * _LINE for _, size, _ in lines)


def _set(lines: Iterable[Line], top: float) -> list[Primitive]:
    """Return lines of text one under the other, the first under `top`."""
    parts: list[Primitive] = []
    at = top
    for words, size, bold in lines:
        at -= size * _LINE
        parts.append(Text("A-ANNO-TEXT", (_MARGIN, at), words, size, bold=bold))
    return parts


def _answer_rule(number: int, base: float, right: float) -> tuple[Primitive, ...]:
    note = Text("A-ANNO-NOTE", (_MARGIN, base), f"Answer ({number})", _SMALL - 1.0)
    return note, _rule(_MARGIN + 90.0, right, base - 1.0)


def _picture(problem: Problem, width: float, top: float) -> Iterable[Detail]:
    if problem.picture is None:
        return
    drawn = problem_picture(problem, *_PICTURE)
    for group in moved(drawn, width - _MARGIN - _PICTURE[0], top - _PICTURE[1]):
        yield _detail(group)


def _detail(group: Group) -> Detail:
    return Detail(
        "picture", Scale("fitted", group.view.scale / POINTS_PER_INCH), group.view, group.primitives
    )


def _answer_lines(place: int, number: int, problem: Problem, width: float) -> Iterable[Line]:
    yield f"{place}.  {problem.answer.shown}", _TYPE, True
    for words in (problem.question.replace("\n", " "), *problem.solution):
        for line in wrapped(words, _SMALL, width):
            yield line, _SMALL, False
    for slip in problem.slips[:2]:
        told = problem.answer.like(slip.value).shown
        for line in wrapped(f"Who says {told}: {slip.why}", _SMALL - 1.0, width):
            yield line, _SMALL - 1.0, False
    yield f"Problem number {number}", _SMALL - 1.0, False
