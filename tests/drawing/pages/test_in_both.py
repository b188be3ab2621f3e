"""Sentences with millimetres beside their inches."""

import pytest

from configurator.drawing.pages.in_both import in_both
from configurator.drawing.pages.study_notes import study_notes
from configurator.units import Display
from tests.drawing.cases import demo

METRIC = Display(metric=True)


@pytest.mark.parametrize(
    ("said", "both"),
    [
        ("The wall is 5-7/8 in thick.", "The wall is 5-7/8 in (149 mm) thick."),
        ("3/32 in is left.", "3/32 in (2.4 mm) is left."),
        ("short of 32 in by 0.5 in", "short of 32 in (813 mm) by 0.5 in (13 mm)"),
        (
            "a tip 32 in along (34-1/16 in from the pin)",
            "a tip 32 in (813 mm) along (34-1/16 in = 865 mm from the pin)",
        ),
        ("a 4-1/2 x 5 hinge, 3 in-swinging leaves", "a 4-1/2 x 5 hinge, 3 in (76 mm)-swinging leaves"),
        ("Table 7-2-1/4 in print; A8112 in steel", "Table 7-2-1/4 in print; A8112 in steel"),
    ],
)
def test_every_length_has_its_millimetres(said, both):
    assert in_both(said, METRIC) == both
    assert in_both(said, Display()) == said


def test_what_is_found_is_said_in_both_on_a_metric_sheet():
    said = " ".join(paragraph for note in study_notes(demo("112A"), METRIC) for paragraph in note.paragraphs)
    assert "1-3/4 in (44 mm): from the wall" in said
