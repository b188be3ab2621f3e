from configurator.drawing.pages.notes import DEFER, assumed_note, study_notes
from configurator.units import Display
from tests.drawing.cases import case_a, demo


def note(study, heading, display=None):
    return next(one for one in study_notes(study, display or Display()) if one.heading == heading)


def test_every_finding_is_said_once_under_its_severity():
    study = demo("126C")
    said = {one.heading: one.paragraphs for one in study_notes(study, Display())}
    for finding in study.all_findings():
        heading = {"error": "Errors", "warning": "Cautions", "note": "Notes"}[finding.severity]
        assert sum(words.startswith(finding.message) for words in said[heading]) == 1
    assert all("[" in words for words in said["Errors"])


def test_errors_and_cautions_warn_and_stand_first():
    found = study_notes(demo("112A"), Display())
    assert [one.heading for one in found[:2]] == ["Errors", "Cautions"]
    assert [one.warns for one in found] == [True, True, False, False, False, False]


def test_the_hinge_is_said_as_it_is_ordered():
    assert (
        note(demo("112A"), "Hinges")
        .paragraphs[0]
        .startswith("112A: 3 each (1-1/2 pair) hinges, 4-1/2 x 4-1/2")
    )


def test_what_was_assumed_is_named_with_its_value_and_how_well_it_is_known():
    (words,) = assumed_note(case_a(), Display()).paragraphs
    assert "frame face width 2 in (" in words
    assert "frame metal thickness 0.053 in (from memory)" in words
    assert "taken as no: " in words
    (metric,) = assumed_note(case_a(), Display(metric=True)).paragraphs
    assert "frame face width 50.8 mm (" in metric


def test_an_angle_and_a_bevel_are_no_lengths():
    (words,) = assumed_note(case_a(door={}), Display()).paragraphs
    assert "wanted angle 180° (" in words
    assert "latch bevel 1/8 in 2 (" in words


def test_what_was_given_is_not_assumed():
    assert "hinge gap" not in assumed_note(case_a(door={"hinge_gap": 0.125}), Display()).paragraphs[0]


def test_every_sheet_defers_to_codes_and_the_field():
    assert note(case_a(), "Before use").paragraphs == (DEFER,)
