import pytest
from hypothesis import given
from hypothesis import strategies as some

from configurator.drawing.base.lettering import text_box, text_width
from configurator.drawing.base.view import Box
from configurator.drawing.pages.notes import (
    DEFER,
    SIZES,
    Note,
    assumed_note,
    broken,
    cut_to,
    notes_column,
    study_notes,
    value_words,
)
from configurator.units import Display
from tests.drawing.cases import case_a, demo
from tests.sweeps import examples

BOX = Box(500.0, 100.0, 700.0, 400.0)
SENTENCE = "The leaf meets the chair rail short of the angle wanted; take a wider hinge."

WIDTH = 60.0


def lettered(notes, box=BOX):
    return [
        (text, text_box(text.at, text.text, text.size, bold=text.bold)) for text in notes_column(notes, box)
    ]


def test_few_notes_are_lettered_large_and_in_order():
    found = lettered([Note("Cautions", (SENTENCE,), warns=True), Note("Hinges", ("3 each",))])
    assert {text.size for text, _ in found} == {SIZES[0]}
    assert (found[0][0].text, found[0][0].layer) == ("Cautions", "A-ANNO-REDL")
    assert found[-1][0].text == "3 each"


def test_a_note_without_a_paragraph_has_no_heading():
    assert lettered([Note("Errors", ()), Note("Hinges", ("3 each",))])[0][0].text == "Hinges"


def test_more_notes_are_lettered_smaller_and_never_leave_the_column():
    for count in (1, 5, 10, 14, 30):
        found = lettered([Note("Notes", (SENTENCE,) * count)])
        assert all(BOX.holds(box) for _, box in found)
        assert not any(a.overlaps(b) for n, (_, a) in enumerate(found) for _, b in found[n + 1 :])
    assert {text.size for text, _ in found} == {SIZES[-1]}


def test_what_finds_no_room_is_counted_from_the_end():
    notes = [Note("Cautions", ("Mind the step.",), warns=True), Note("Notes", (SENTENCE,) * 40)]
    found = [text.text for text, _ in lettered(notes)]
    assert "Mind the step." in found
    shown = sum(line.startswith("The leaf meets") for line in found)
    assert 0 < shown < 40
    assert f"{40 - shown} more notes have no room, or not in full," in " ".join(found)


def test_a_single_note_left_out_is_one():
    notes = [Note("Notes", (SENTENCE, SENTENCE + " " + SENTENCE * 12))]
    assert "1 more note has" in " ".join(text.text for text, _ in lettered(notes, Box(0, 0, 200, 60)))


def test_what_has_room_of_a_long_list_is_set_up_to_a_whole_item():
    items = [f"item number {number} of the frame {number}/16 in (common practice)" for number in range(30)]
    notes = [
        Note("Cautions", ("Mind the step.",), warns=True),
        Note("Assumed", ("; ".join(items) + ".",), lists=True),
    ]
    words = " ".join(text.text for text, _ in lettered(notes, Box(0.0, 0.0, 200.0, 150.0)))
    shown = [item for item in items if item in words]
    assert 5 < len(shown) < 30
    assert shown == items[: len(shown)]
    assert f"{shown[-1]}; … Not shown here 1 more note has" in words


def test_a_sentence_is_never_broken_off():
    """Two sentences, and no room but for the first and a half."""
    notes = [Note("Notes", (SENTENCE, "Short one. " + SENTENCE * 20))]
    found = lettered(notes, Box(0.0, 0.0, 200.0, 80.0))
    words = " ".join(text.text for text, _ in found)
    assert "Short one. … Not shown here" in words
    assert all(Box(0.0, 0.0, 200.0, 80.0).holds(box) for _, box in found)


def test_what_stays_is_never_left_out_whatever_there_is_before_it():
    defer = Note("Before use", ("Codes go before this sheet.",), stays=True)
    for count in (3, 30, 60):
        found = lettered(
            [Note("Cautions", (SENTENCE,) * count, warns=True), defer, Note("Notes", ("Mind.",))]
        )
        words = [text.text for text, _ in found]
        assert "Before use" in words
        assert "Codes go before this sheet." in words
        assert all(BOX.holds(box) for _, box in found)
        assert ("Not shown here" in words) == (count > 3)


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
    assert [one.warns for one in found] == [True, True, False, False, False, False, True]


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


def test_words_stay_whole_and_in_order():
    assert broken("the leaf meets the chair rail", 7.0, 60.0) == ("the leaf meets", "the chair rail")


def test_nothing_gives_no_line():
    assert broken("  ", 7.0, 60.0) == ()


def test_a_word_too_long_for_a_line_is_broken_itself():
    lines = broken("Departureshalltogalleryandback", 7.0, 40.0)
    assert len(lines) > 1
    assert "".join(lines) == "Departureshalltogalleryandback"


@examples(30)
@given(some.text(some.characters(codec="latin-1", categories=["L", "N", "P", "Zs"]), max_size=120))
def test_no_line_is_wider_than_the_room_and_no_letter_is_lost(text):
    lines = broken(text, 7.0, WIDTH)
    assert all(text_width(line, 7.0) <= WIDTH + 1e-9 for line in lines)
    assert "".join(lines).replace(" ", "") == "".join(text.split())


def test_what_fits_is_not_cut():
    text = "Kestrel Point"
    wide = text_width(text, 8.0)
    assert cut_to(text, 8.0, wide) == text
    assert cut_to(text, 8.0, wide - 0.1).endswith("…")
    assert text_width(cut_to(text, 8.0, wide - 0.1), 8.0) <= wide - 0.1


def test_a_caution_said_again_of_another_width_takes_no_room_from_what_is_said_once():
    rail = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
    study = case_a(compare=[3.5, 4], use={"wanted_angle": 180}, obstructions=[rail])  # both stop short
    found = study_notes(study, Display())
    cautions, again = note(study, "Cautions"), found[-1]
    codes = [one.code for one in study.all_findings() if one.severity == "warning"]
    assert len(cautions.paragraphs) == len(set(codes))
    assert len(again.paragraphs) == len(codes) - len(set(codes)) > 0
    assert again.heading == "Cautions of the same kind"


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("hardware.0.weight", 5.0, "5 lb"),
        ("door.weight", 179.0, "179 lb"),
        ("hardware.0.opens_to", 110.0, "110°"),
        ("use.wanted_angle", 180.0, "180°"),
        ("door.undercut", 0.75, "3/4 in"),
        ("hinge.count", 3, "3"),
    ],
)
def test_what_was_assumed_is_told_in_the_unit_of_its_field(path, value, words):
    assert value_words(path, value, Display()) == words
