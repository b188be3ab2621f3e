"""Finishes in both directions, metals by place, and what does not go together."""

import pytest

from configurator.rules.filling.materials import Place
from configurator.rules.hinge.finish import (
    choose_finish,
    finishes,
    hinge_metal,
    metal_findings,
    metal_of_number,
    metals_of,
    same_look,
    stainless_alloy,
    us_code,
)


@pytest.mark.parametrize("text", ["US26D", "us26d", "26D", " us 26 d "])
def test_us_codes_in_any_spelling(text):
    assert us_code(text) == "US26D"


@pytest.mark.parametrize(
    ("us", "metal", "bhma"),
    [
        ("US26D", "brass", "626"),  # The Construction Specifier, Specifying door hardware, p. 3
        ("US26D", "steel", "652"),
        ("US26D", "zinc", "682"),
        ("US3", "brass", "605"),  # BHMA Hardware Highlight for ANSI/BHMA A156.18-2020
        ("US3", "steel", "632"),
        ("US3", "aluminum", "666"),
        ("US4", "steel", "633"),
        ("US10B", "bronze", "613"),
        ("US32D", "stainless", "630"),
        ("US32", "stainless", "629"),
    ],
)
def test_one_us_code_and_one_metal_is_one_number(us, metal, bhma):
    (row,) = finishes(us=us, metal=metal)
    assert row.bhma == bhma
    assert metal in metals_of(bhma)


def test_lookup_by_look_and_by_number():
    assert {row.bhma for row in finishes(look="satin chrome", metal="steel")} == {"652"}
    assert metals_of("626") == ("brass", "bronze")
    assert metals_of("BHMA 652") == ("steel",)
    assert metals_of("999") == ()
    (brass, _bronze) = finishes(bhma="626")
    assert same_look(brass, "steel").bhma == "652"
    assert same_look(finishes(bhma="630")[0], "steel") is None


@pytest.mark.parametrize(
    ("metal", "us", "bhma", "number", "code"),
    [
        ("steel", None, None, "652", "US26D"),
        ("brass", None, None, "626", "US26D"),
        ("stainless", None, None, "630", "US32D"),
        ("steel", "us4", None, "633", "US4"),
        ("bronze", None, "613", "613", "US10B"),
        ("steel", "26D", "652", "652", "US26D"),
    ],
)
def test_chosen_finish(metal, us, bhma, number, code):
    finish = choose_finish(metal, us, bhma)
    assert (finish.bhma.value, finish.us.value) == (number, code)


@pytest.mark.parametrize(
    ("metal", "us", "bhma", "code", "words"),
    [
        ("steel", "US99", None, "finish unknown", "“US99” (hinge.finish_us) is in no list"),
        ("steel", None, "12", "finish unknown", "“12” (hinge.finish_bhma) is in no list"),
        ("stainless", "US26D", None, "finish not on metal", "626 on brass, 626 on bronze, 652 on steel"),
        ("steel", "US28", None, "finish not on metal", "no number on any hinge metal"),
        (
            "steel",
            None,
            "626",
            "finish metal",
            "626 is satin chrome on brass or bronze, and the hinge is steel",
        ),
        ("steel", None, "630", "finish metal", "no number has this look on steel"),
        ("steel", "US4", "652", "finish disagree", "US4 and 652 do not go together: 652 is US26D"),
        ("bronze", None, "613", "finish unstable", "never matches from one metal, item or maker"),
    ],
)
def test_what_does_not_go_together_is_said(metal, us, bhma, code, words):
    (said,) = [one for one in choose_finish(metal, us, bhma).findings if one.code != "brass or bronze"]
    assert said.code == code
    assert words in said.message


@pytest.mark.parametrize(
    ("us", "alike"),
    [("US5", 0), ("US7", 0), ("US11", 0), ("US15A", 0), ("US17A", 0), ("US10B", 0), ("US26D", 1), ("US3", 1)],
)
def test_no_blackened_or_relieved_look_matches_across_metals(us, alike):
    """609, 610, 616, 620, 621, 636, 638, 643, 647, 648: none matches across metals by eye."""
    assert {row.alike for row in finishes(us=us)} == {bool(alike)}


@pytest.mark.parametrize(
    ("bhma", "asks"), [("606", 0), ("611", 1), ("612", 1), ("613", 1), ("614", 1), ("617", 1), ("618", 0)]
)
def test_a_bronze_number_is_to_be_checked_for_brass(bhma, asks):
    for metal in ("bronze", "brass") if asks else (finishes(bhma=bhma)[0].metal,):
        codes = [one.code for one in choose_finish(metal, None, bhma).findings]
        assert codes.count("brass or bronze") == asks
        assert "finish metal" not in codes


def test_a_dark_look_outdoors_may_be_of_solid_bronze():
    outdoors = place(exterior=True)
    (said,) = choose_finish("stainless", "US10B", None, place=outdoors).findings
    assert "take bronze, 613" in said.message
    assert [(fix.path, fix.value) for fix in said.fix] == [
        ("hinge.base_metal", "bronze"),
        ("hinge.finish_bhma", "613"),
    ]
    labelled = place(exterior=True, fire_rated=True)
    for where in (labelled, place()):
        (said,) = choose_finish("stainless", "US10B", None, place=where).findings
        assert not said.fix
    (rusts,) = metal_findings(outdoors, "steel", "640")
    assert "Take solid bronze, 613, or stainless." in rusts.message
    assert (rusts.fix[1].value, rusts.other_fixes[0][1].value) == ("613", "630")
    assert metal_findings(outdoors, "steel", "652")[0].other_fixes == ()


def place(exterior=False, coastal=False, humid=False, fire_rated=False):
    return Place(exterior, coastal, humid, fire_rated)


@pytest.mark.parametrize(
    ("where", "metal", "alloy", "mark"),
    [
        (place(), "steel", None, "common practice"),
        (place(fire_rated=True), "steel", None, "common practice"),
        (place(humid=True), "stainless", "304", "from memory"),
        (place(exterior=True), "stainless", "304", "common practice"),
        (place(exterior=True, coastal=True), "stainless", "316", "read"),  # MIL-HDBK-1011/1, 5.3
    ],
)
def test_metal_by_place(where, metal, alloy, mark):
    chosen = hinge_metal(where)
    assert (chosen.value, chosen.mark) == (metal, mark)
    assert stainless_alloy(where, metal).value == alloy


def test_a_number_says_what_the_hinge_is_made_of():
    steel = hinge_metal(place())
    assert metal_of_number(None, steel) is steel
    assert metal_of_number("652", steel) is steel
    assert metal_of_number("999", steel) is steel
    other = metal_of_number("626", steel)
    assert other.value == "brass"
    assert other.alternatives[0].value == "steel"


@pytest.mark.parametrize(
    ("where", "metal", "bhma", "words"),
    [
        (place(exterior=True), "steel", "652", "A steel hinge outdoors rusts"),
        (place(coastal=True), "steel", "600", "A steel hinge near salt water rusts"),
        (place(fire_rated=True), "brass", "626", "652 has the same look on steel"),
        (place(fire_rated=True), "bronze", "616", "616 is bronze"),
        (place(fire_rated=True), "brass", None, "The hinge is brass; a labelled door takes steel"),
    ],
)
def test_metal_findings(where, metal, bhma, words):
    (said,) = metal_findings(where, metal, bhma)
    assert words in said.message
    assert said.fix


@pytest.mark.parametrize(
    ("where", "metal"),
    [(place(), "brass"), (place(exterior=True), "stainless"), (place(fire_rated=True), "stainless")],
)
def test_metals_that_suit_need_no_word(where, metal):
    assert metal_findings(where, metal, None) == ()


def test_no_mend_of_the_finish_where_no_steel_looks_so():
    (said,) = metal_findings(place(fire_rated=True), "aluminum", "628")
    assert said.message.endswith("Choose a finish on steel.")
    assert len(said.fix) == 1
