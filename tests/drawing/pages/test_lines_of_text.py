from hypothesis import given
from hypothesis import strategies as some

from configurator.drawing.base.lettering import text_width
from configurator.drawing.pages.notes import broken, cut_to
from tests.sweeps import examples

WIDTH = 60.0


def test_words_stay_whole_and_in_order():
    assert broken("the leaf meets the chair rail", 7.0, 60.0) == ("the leaf meets", "the chair rail")


def test_nothing_gives_no_line():
    assert broken("  ", 7.0, 60.0) == ()


def test_a_word_too_long_for_a_line_is_broken_itself():
    lines = broken("Departureshalltogalleryandback", 7.0, 40.0)
    assert len(lines) > 1
    assert "".join(lines) == "Departureshalltogalleryandback"


@examples(60)
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
