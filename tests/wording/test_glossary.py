"""Every field and every number on show has its word, and every word has its place, picture and source."""

from pathlib import Path

import pytest

from configurator.drawing.pictures.marks_front import IN_FRONT, ON_SAMPLE
from configurator.drawing.pictures.marks_plan import IN_PLAN
from configurator.model import paths
from configurator.project_file import load
from configurator.study import study
from configurator.tables import MARKS
from configurator.ui.form.form import SECTIONS
from configurator.units import Display
from configurator.wording.comparison import comparisons
from configurator.wording.glossary import glossary, search, word_at, words_in

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"
PARTS = {"door", "frame", "wall", "use", "sill"}
"""Records that only hold fields; what is asked of them is asked of each field."""


FIELDS = sorted({*paths.every_field(), *(path for own in SECTIONS.values() for path in own)} - PARTS)


@pytest.mark.parametrize("path", FIELDS)
def test_every_field_has_a_word_of_its_own(path):
    word = word_at(path)
    assert word is not None, f"put {path} at a word of resources/words/glossary.csv"
    assert path in word.where


def _keys() -> set[str]:
    tables = (table for one in load(DEMO).openings for table in comparisons(study(one), Display()))
    return {row.key for table in tables for row in table.rows}


def test_every_number_of_the_comparison_has_a_word():
    keys = _keys()
    assert len(keys) >= 13
    for key in keys:
        word = word_at(key)
        assert word is not None, f"put {key} at a word of resources/words/glossary.csv"
        assert key in word.where


def test_every_place_of_a_word_is_there():
    known = {*FIELDS, *_keys(), "size.width", "rests_at", "axis_from_heel"}
    for word in glossary():
        for place in word.where:
            assert place in known, (word.term, place)
    places = [place for word in glossary() for place in word.where]
    assert len(places) == len(set(places))


@pytest.mark.parametrize("word", glossary(), ids=lambda word: word.term)
def test_a_word_says_something_and_says_from_where(word):
    assert word.term
    assert word.plain
    assert word.term != word.plain
    assert 25 <= len(word.meaning) <= 420
    assert word.meaning.endswith(".")
    assert word.source
    assert word.mark in MARKS
    marks = IN_PLAN | IN_FRONT | ON_SAMPLE
    assert word.picture.partition(":")[2] in marks


def test_terms_stand_once():
    terms = [word.term.lower() for word in glossary()]
    assert len(terms) == len(set(terms))


def test_a_place_in_a_list_has_the_word_of_its_field():
    assert word_at("obstructions.3.projection").term == "projection"
    assert word_at("wall.layers.0.thickness").term == "wall layer"
    assert word_at("no.such.place") is None
    assert word_at("") is None


def test_search_finds_terms_first_and_meanings_too():
    assert next(word.term for word in search("frame stop")) == "frame stop"
    assert "throat" in [word.term for word in search("returns")]
    assert search("STOP") == search("stop")
    assert search("zebra") == ()


def test_words_of_a_sentence_are_the_longest_that_stand_in_it():
    found = [word.term for word in words_in("The lever meets the frame stop; two chair rails stay.")]
    assert found == ["frame stop", "chair rail", "lever"]
    assert words_in("Nothing here.") == ()
    assert "hand" not in [word.term for word in words_in("handle with care")]
