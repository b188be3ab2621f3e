"""Finishes found by look, US code, BHMA number and metal, in both directions."""

import pytest

from configurator.tables import FinishRow, table
from configurator.wording.finish_rows import METALS, NOT_ALIKE, look_up, same_look_words


def numbers(text="", metal=None):
    return [line.row.bhma for line in look_up(text, metal)]


@pytest.mark.parametrize("text", ["US26D", "26d", " us 26 D "])
def test_a_us_code_finds_its_number_on_every_metal(text):
    assert numbers(text) == ["626", "626", "652", "702", "682"]


@pytest.mark.parametrize("text", ["652", "BHMA 652"])
def test_a_number_finds_its_look_and_metal(text):
    (line,) = look_up(text)
    assert (line.row.look, line.us, line.row.metal) == ("satin chrome", "US26D", "steel")


def test_a_number_half_typed_finds_those_that_begin_so():
    assert set(numbers("65")) == {"650", "651", "652"}


def test_words_of_a_look_and_a_metal():
    assert numbers("chrome satin", "steel") == ["652"]
    assert numbers("satin chrome steel") == ["652"]
    assert numbers("nothing of the kind") == []


def test_everything_is_there_without_a_text():
    assert len(look_up()) == len(table(FinishRow))
    assert sum(len(look_up("", metal)) for metal in METALS) == len(table(FinishRow))


def test_oxidised_looks_are_not_the_same_on_every_metal():
    assert {line.match for line in look_up("613")} == {NOT_ALIKE}
    assert NOT_ALIKE not in {line.match for line in look_up("US26D")}


def test_a_blackened_look_names_the_nearest_and_no_match():
    (line,) = look_up("609")
    assert "the nearest is 638 on steel, and none of them matches another by eye" in same_look_words(line.row)


def test_the_same_look_is_named_on_other_metals():
    (line,) = look_up("652")
    assert same_look_words(line.row) == (
        "652 is satin chrome (satin chromium plated over nickel) on steel; the same look is 626 on brass or "
        "bronze, 702 on aluminum, 682 on zinc. US26D is all of them: it says the look, not the metal."
    )
    (alone,) = look_up("630")
    assert same_look_words(alone.row).endswith("no other metal has a number for this look here.")


def test_what_taking_it_changes_and_why_one_cannot_be_taken():
    (steel,) = look_up("652")
    assert steel.changes == {"finish_bhma": "652", "finish_us": None, "base_metal": "steel"}
    assert steel.why_not == ""
    (zinc,) = look_up("682")
    assert zinc.why_not == "no hinge is made of zinc here"


def test_every_line_says_its_source_with_its_mark():
    read = look_up("626", "brass")[0]
    assert read.source == "The Construction Specifier, Specifying door hardware, p. 3 (read in the source)"
    assert all(line.source for line in look_up())
