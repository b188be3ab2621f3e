"""What would be, in words and as a chart."""

import pytest

from configurator.drawing.base.primitives import Text
from configurator.drawing.charts.chart_sheet import chart_sheet
from configurator.drawing.charts.what_if_chart import what_if_chart
from configurator.model import Opening
from configurator.study import study
from configurator.study.what_if.curve import what_if
from configurator.study.what_if.parameters import parameters_of
from configurator.study.what_if.thresholds import OPENS, Threshold
from configurator.units import Display
from configurator.wording.what_if_words import (
    on_the_good_side,
    threshold_words,
    trial_words,
    what_if_headline,
)
from tests.openings import LEVER, RAIL, plain_data

APART = 8.0
"""What is kept free beside a label, points."""
INCHES, METRIC = Display(), Display(metric=True)


def asked(name, width=4.5, hold=0, **changes):
    """The study of the plain opening with a rail and a lever, and what a thing would do to it."""
    data = {"obstructions": [RAIL], "hardware": [LEVER], **changes}
    answer = study(Opening.model_validate(plain_data(**data)))
    candidate = next(one for one in answer.candidates if one.hinge_width == width)
    (parameter,) = (one for one in parameters_of(answer, candidate) if one.name == name)
    return answer, what_if(answer, candidate, parameter, parameter.holds[hold])


@pytest.mark.parametrize(
    ("name", "width", "said"),
    [
        (
            "chair rail projection",
            4.5,
            ": 1-3/4 in now. The leaf opens to 180° up to 1-7/8 in (1/8 in to spare).",
        ),
        (
            "chair rail projection",
            4,
            ": 1-3/4 in now. The leaf would open to 180° up to 1-3/8 in (3/8 in less).",
        ),
        ("hinge open width", 4, ": 4 in now. The leaf would open to 180° from 4-3/8 in on (3/8 in more)."),
        (
            "frame proud of wall",
            4.5,
            ": 1/2 in now. The leaf opens to 180° from 3/8 in on (1/8 in to spare).",
        ),
        (
            "chair rail start",
            4.5,
            ": 1/2 in now. The leaf opens to 180° whatever it is from -2 in to 6-1/2 in.",
        ),
        ("chair rail start", 4, ": 1/2 in now. Nothing from -2 in to 6-1/2 in opens the leaf to 180°."),
    ],
)
def test_the_sentence_on_top(name, width, said):
    _, found = asked(name, width)
    assert what_if_headline(found, INCHES) == f"{name[0].upper()}{name[1:]}{said}"


def test_plain_words_and_millimetres():
    _, found = asked("frame proud of wall")
    said = what_if_headline(found, METRIC, plain=True)
    assert said.startswith("Frame stands out from wall by: 12.7 mm now. ")
    assert "from 9.6 mm on" in said  # 3/8 in is 9.525: rounded up, on the side that works


def test_turns_are_rounded_to_the_side_on_which_they_hold():
    _, found = asked("chair rail projection")
    up, down = Threshold(1.01, OPENS, True, 180.0), Threshold(1.01, OPENS, False, 180.0)
    assert threshold_words(up, found, (), INCHES) == ("opens to 180° from 1-1/32 in", "180° from 1-1/32 in")
    assert threshold_words(down, found, (), INCHES) == ("opens to 180° up to 1 in", "180° up to 1 in")
    assert on_the_good_side(found, up, INCHES) == 1 + 1 / 32
    assert on_the_good_side(found, down, INCHES) == 1.0


def test_of_several_alike_the_one_that_is_met_is_numbered():
    second = {**RAIL, "bottom": 60, "top": 64, "projection": 1}
    answer, found = asked("chair rail 2 projection", obstructions=[RAIL, second])
    words = [threshold_words(one, found, answer.opening.obstructions, INCHES)[0] for one in found.thresholds]
    assert any("leaf on the chair rail 2" in one for one in words), words


def test_a_value_on_trial_says_what_it_does_and_the_hinge_taken_then():
    answer, found = asked("chair rail projection")
    said = trial_words(found, 1.75, answer, answer.candidates[1], INCHES)
    assert said.startswith("Chair rail projection 1-3/4 in: opens to 180° bare, ")
    assert "with hardware; clear width 32-13/16 in" in said
    assert said.endswith("hinge taken then: 4-1/2 x 4-1/2")


def test_the_chart_marks_the_present_value_and_names_where_it_turns():
    answer, found = asked("chair rail projection")
    chart = what_if_chart(found, answer.opening.obstructions, INCHES)
    assert [rule.label for rule in chart.rules] == ["now 1-3/4 in", "180° taken, not asked for"]
    assert chart.dots == ((1.75, 180.0),)
    assert [mark.wordings[0] for mark in chart.marks] == [
        threshold_words(one, found, answer.opening.obstructions, INCHES)[0] for one in found.thresholds
    ]
    assert [curve.label for curve in chart.curves] == [
        "leaf alone", "with its hardware", "clear width at 90 (right)"
    ]  # fmt: skip
    assert chart.said.startswith("Chair rail projection: 1-3/4 in now.")


def test_the_chart_in_millimetres_is_ticked_in_them_but_a_hinge_stays_in_inches():
    answer, found = asked("chair rail projection")
    chart = what_if_chart(found, answer.opening.obstructions, METRIC)
    assert chart.across.title == "chair rail projection, mm"
    assert "50" in [text for _, text in chart.across.ticks]
    answer, found = asked("hinge open width")
    assert what_if_chart(found, (), METRIC).across.title == "hinge open width, in"


def test_labels_stay_off_the_line_of_the_present_value():
    answer, found = asked("chair rail projection", width=4)
    sheet = chart_sheet(what_if_chart(found, answer.opening.obstructions, INCHES), 340.0, 130.0)
    now = sheet.place(1.75, 180.0)[0]
    texts = [one for group in sheet.groups for one in group.primitives if isinstance(one, Text)]
    assert any(text.text.startswith("now") for text in texts)
    inside = [box for box in sheet.lettered if box.bottom > sheet.plot.bottom and box.top < sheet.plot.top]
    assert not [box for box in inside if box.left + APART < now < box.right - APART]
