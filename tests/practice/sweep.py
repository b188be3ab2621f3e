"""What holds for every problem that can be posed; the tests ask it of a few seeds, the bench of thousands."""

import math
import re

from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.primitives import Text
from configurator.drawing.base.view import Box
from configurator.drawing.pictures.practice_pictures import problem_picture
from configurator.practice.answers import AngleAnswer, CountAnswer, LengthAnswer, UnreadableError
from configurator.practice.leaves import usual_widths
from configurator.practice.problem import ASKED, as_typed
from configurator.practice.written import HANDS, ChoiceAnswer, CodeAnswer, HingeSizeAnswer, OpeningSizeAnswer
from configurator.tables import FinishRow, table
from configurator.units import format_size, parse_length

MOST_OF_ONE_ANSWER = 0.6
UNREAD = re.compile(r"\b(?:nan|inf|None)\b|(?<![\d'])-\d|[{}]|  ")
HINGE = re.compile(r"(?<![\d'-])([3-6](?:-1/2)?) x ([3-8](?:-1/2)?)(?![\d/'-])")
"""A hinge size; a door's has feet and dashes, or figures alone."""
ROWS = table(FinishRow)
CODES = {
    "hand": set(HANDS),
    "BHMA number": {row.bhma for row in ROWS if re.fullmatch(r"\d{3}", row.bhma)},
    "US code": {row.us for row in ROWS if row.us},
}


def beside(answer):
    """What may be typed for an answer within its precision: the steps, sizes or codes about the right one."""
    match answer:
        case LengthAnswer(limit="stock"):
            return [format_size(answer.value + n / 2) for n in range(-3, 4)]
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
        case OpeningSizeAnswer():
            w, h = answer.width, answer.height
            sizes = [(w, h), (h, w), (w + 2, h), (w, h + 2)]
            return [f"{a // 12:.0f}-{a % 12:.0f} x {b // 12:.0f}-{b % 12:.0f}" for a, b in sizes]
        case ChoiceAnswer():
            return list(answer.letters)
        case CodeAnswer():
            return list({answer.right, *CODES[answer.kind]})
    raise AssertionError(answer)


def unsafe(answer):
    """What lies on the wrong side of a limit, ever so little; nothing for an answer that is no limit."""
    match answer:
        case LengthAnswer(limit="least" | "stock"):
            return [f"{answer.value - 0.0005:.6f}"]
        case AngleAnswer(setting=True):
            return [f"{answer.value + 0.2:.1f}", f"{answer.value + 0.4:.1f}", f"{answer.value + 1:.0f}"]
    return []


def check(posed):
    """Check one problem: one right answer, slips named, limits kept, sizes made, nothing left unsaid."""
    problem, where = posed.problem, (posed.template.key, posed.seed)
    answer, typed = problem.answer, beside(problem.answer)
    right = [text for text in typed if answer.is_right(text)]
    assert len(right) == 1, (where, right)
    assert len(set(typed)) == len(typed), where
    assert answer.is_right(as_typed(answer)), where
    for text in unsafe(answer):
        assert not answer.is_right(text), (where, text)
    for text in (problem.question, problem.convention, problem.hint, answer.hint, *problem.solution):
        assert not UNREAD.search(text), (where, text)
    assert problem.solution, where
    assert problem.hint, where
    assert told(answer) not in re.split("[:,]? ", answer.hint), where
    assert said(answer) in " ".join(problem.solution), (where, problem.solution)
    check_slips(problem, where)
    for height, width in HINGE.findall(problem.question):
        assert parse_length(width) in usual_widths(parse_length(height)), (where, height, width)


SIZES = ((459.0, 500.0), (560.0, 400.0), (225.0, 150.0), (300.0, 560.0))
"""Points: the window, the window wide, on paper, and the window narrow."""


def check_picture(posed, size, told):
    """Check that every lettering of a picture is there, inside it, and over no other."""
    problem, where = posed.problem, (posed.template.key, posed.seed, size, told)
    if problem.picture is None:
        return
    groups = problem_picture(problem, *size, told)
    texts = [(item, group.view) for group in groups for item in group.primitives if isinstance(item, Text)]
    texts = [(item, view) for item, view in texts if item.text and view.scale == 1.0]
    found = [item.text for item, _ in texts]
    for _, words in problem.picture.marks:
        assert (words.replace(ASKED, problem.answer.shown) if told else words) in found, (where, words)
    whole = Box(0.0, 0.0, *size).shrunk(-1.0)
    boxes = [text_box(view.to_sheet(one.at), one.text, one.size, one.anchor, one.bold) for one, view in texts]
    for place, box in enumerate(boxes):
        assert whole.holds(box), (where, found[place])
        for other in range(place + 1, len(boxes)):
            assert not box.overlaps(boxes[other]), (where, found[place], found[other])


def check_slips(problem, where):
    """Check that each slip of a problem is wrong, and is told by its own sentence when it is typed."""
    for slip in problem.slips:
        marked = problem.mark(as_typed(problem.answer.like(slip.value)))
        assert not marked.right, (where, slip)
        assert marked.why == slip.why, (where, slip, marked.why)
        assert not UNREAD.search(slip.why), (where, slip)
        assert not slip.why[0].islower(), (where, slip)
        assert slip.why.endswith((".", "?")), (where, slip)


def named_slips(problem):
    """The sentences that name a problem's usual slips when they are made: its own, and its answer's."""
    typed = [as_typed(problem.answer.like(slip.value)) for slip in problem.slips]
    typed += [text for text in beside(problem.answer) if not problem.answer.is_right(text)]
    if isinstance(problem.answer, LengthAnswer):
        typed.append(f"{problem.answer.value * 25.4:.2f}")
    return {why for text in typed if (why := _why(problem, text))}


def _why(problem, text):
    try:
        return problem.mark(text).why
    except UnreadableError:
        return ""


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
