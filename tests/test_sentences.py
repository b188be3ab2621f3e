"""Sentences whose numbers are written when they are shown."""

import pytest

from configurator.sentences import (
    angle,
    as_sentence,
    capitalized,
    exact,
    length,
    with_millimetres,
    written,
)
from configurator.units import Display
from tests.drawing.cases import demo

METRIC = Display(metric=True)
SENTENCE = f"Clear width {length(33.265625, 'down')} at {angle(90.0)}, a leaf {exact(0.134)} thick."


@pytest.mark.parametrize(
    ("display", "read"),
    [
        (Display(16), "Clear width 33-1/4 in at 90°, a leaf 0.134 in thick."),
        (Display(32), "Clear width 33-1/4 in at 90°, a leaf 0.134 in thick."),
        (Display(64), "Clear width 33-17/64 in at 90°, a leaf 0.134 in thick."),
        (METRIC, "Clear width 844.9 mm at 90°, a leaf 3.4 mm thick."),
        (None, "Clear width 33-1/4 in at 90°, a leaf 0.134 in thick."),
    ],
)
def test_a_sentence_says_what_the_display_shows(display, read):
    assert written(SENTENCE, display) == read


def test_a_sentence_without_numbers_stays_as_it_is():
    assert written("Take a wider hinge.", METRIC) == "Take a wider hinge."


@pytest.mark.parametrize(
    ("said", "both"),
    [
        ("The wall is 5-7/8 in thick.", "The wall is 5-7/8 in (149.2 mm) thick."),
        ("3/32 in is left.", "3/32 in (2.4 mm) is left."),
        ("short of 32 in by 0.5 in", "short of 32 in (812.8 mm) by 0.5 in (12.7 mm)"),
        (
            "a tip 32 in along (34-1/16 in from the pin)",
            "a tip 32 in (812.8 mm) along (34-1/16 in = 865.2 mm from the pin)",
        ),
        ("a 4-1/2 x 5 hinge, 3 in-swinging leaves", "a 4-1/2 x 5 hinge, 3 in (76.2 mm)-swinging leaves"),
        ("Table 7-2-1/4 in print; A8112 in steel", "Table 7-2-1/4 in print; A8112 in steel"),
    ],
)
def test_inches_that_are_words_have_their_millimetres_beside_them(said, both):
    assert with_millimetres(said) == written(said, METRIC) == both
    assert written(said, Display()) == said


def test_what_is_found_is_said_in_millimetres_on_a_metric_sheet():
    said = {one.code: one.said(METRIC) for one in demo("112A").findings}
    assert "stands off 44.5 mm: from the wall" in said["measured from where"]


@pytest.mark.parametrize(
    ("words", "begun", "whole"),
    [
        ("the leaf", "The leaf", "The leaf."),
        ("US26D stays.", "US26D stays.", "US26D stays."),
        ("", "", "."),
        ("4 in", "4 in", "4 in."),
    ],
)
def test_a_capital_at_the_head_and_a_stop_at_the_end(words, begun, whole):
    assert (capitalized(words), as_sentence(words)) == (begun, whole)
