from configurator.drawing.base.lettering import text_box
from configurator.drawing.base.view import Box
from configurator.drawing.pages.notes import SIZES, Note, notes_column

BOX = Box(500.0, 100.0, 700.0, 400.0)
SENTENCE = "The leaf meets the chair rail short of the angle wanted; take a wider hinge."


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
