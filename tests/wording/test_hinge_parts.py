"""Each part of the hinge in words, why, from where, and who asked for it."""

import pytest

from configurator.model import Hinge, JobFacts
from configurator.rules.specification import PARTS as KEYS
from configurator.study import study
from configurator.units import Display
from configurator.wording.hinge_parts import (
    BOTH_LEAVES,
    COUNT_OF_BOTH,
    ELECTRIC_OF_BOTH,
    PARTS,
    SCREWS_OF_BOTH,
    cited,
    given_by_hand,
    hinge_parts,
)
from tests.rules.hung import opening


def leaves(display=None, standard=None, **changes):
    given = study(opening(**changes), JobFacts(standard_hinge=standard))
    return hinge_parts(given, display or Display())


def rows(**changes):
    (leaf,) = leaves(**changes)
    return {key: row for row in leaf.rows for key in row.part.keys}


def values(**changes):
    return {key: row.value for key, row in rows(**changes).items()}


def test_every_part_of_the_results_has_its_row_and_its_own_words():
    assert {key for part in PARTS for key in part.keys} == {*KEYS, "electric", "transfer", "wires"}
    assert len({part.trade for part in PARTS}) == len(PARTS) == len({part.plain for part in PARTS})


def test_the_usual_door_in_words():
    # 36 in wide and 1-3/4 thick takes 4-1/2 high, three to 90 in; a closer takes bearings; 8 screws a hinge.
    found = values()
    assert found["height"] == found["width"] == "4-1/2 x 4"
    assert found["count"] == "3 hinges = 1-1/2 pair"
    assert found["weight"] == "standard weight"
    assert found["bearing"] == "antifriction bearing (ball)"
    assert found["leaf_thickness"] == "0.134 in"
    assert found["type"] == (
        "A8112: steel, full mortise, antifriction bearing, standard weight, ANSI/BHMA A156.1 grade 2"
    )
    assert found["knuckles"] == "5 knuckles"
    assert found["finish_bhma"] == "652 (US26D), satin chrome: satin chromium plated over nickel, on steel"
    assert found["pin"] == "removable pin"
    assert found["security_stud"] == "no security stud"
    assert found["tip"] == "flat button tips"
    assert found["corner"] == "square corners"
    assert found["screws"] == "24 machine screws #12-24 x 1/2 flat head"
    assert found["electric"] == "none carries wires"
    assert "alloy" not in found


def test_a_row_of_two_parts_has_both_reasons_with_their_sources():
    height, width = rows()["height"].reasons
    assert height.words.startswith("A door 1-3/4 in thick and 35-3/4 in wide")
    assert height.source == "common practice, no source"
    assert width.source.startswith("derived from the plan geometry")
    assert "clear width 33-1/16 in" in width.words
    assert [other.value for other in width.others] == ["4-1/2 in"]


@pytest.mark.parametrize(
    ("source", "mark", "said"),
    [
        ("A handbook, p. 3", "read", "A handbook, p. 3 (read in the source)"),
        ("common practice, no source", "common practice", "common practice, no source"),
        ("from memory: unchecked", "from memory", "from memory: unchecked"),
        ("a note quoting a table", "common practice", "a note quoting a table (common practice)"),
        ("", "derived", "derived here"),
    ],
)
def test_a_source_says_its_mark_once(source, mark, said):
    assert cited(source, mark) == said


def test_a_us_code_says_the_look_and_a_number_the_metal_too():
    assert "only what it looks like" in rows()["finish_bhma"].remark
    unstable = rows(hinge={"finish_us": "US10B"})["finish_bhma"]
    assert unstable.value.startswith("640 (US10B), oil-rubbed bronze")
    assert "does not match" in unstable.remark
    assert "does not match" not in rows()["finish_bhma"].remark


def test_a_code_that_is_in_no_list_is_said_to_be_so():
    assert values(hinge={"finish_us": "US99"})["finish_bhma"] == "US99: no finish known here by that code"
    assert values(hinge={"type": "Z1"})["type"].startswith("Z1: no type number known here")


def test_a_type_number_of_two_metals_is_spelled_for_the_hinge_s_own():
    assert values(hinge={"base_metal": "bronze"})["type"].startswith("A2112: bronze, full mortise")
    assert values(hinge={"base_metal": "brass"})["type"].startswith("A2112: brass, full mortise")


def test_a_mounting_without_a_type_number_is_ordered_in_words():
    assert values(hinge={"mounting": "swing clear"})["type"] == "no type number known here: ordered in words"


def test_stainless_names_its_alloy():
    found = values(use={"exposure": "exterior", "coastal": True})
    assert found["base_metal"] == "stainless steel"
    assert found["alloy"] == "316"


def test_wood_and_steel_take_half_of_each_screw():
    found = values(door={"construction": "wood, solid core"})
    assert found["screws"] == "12 machine screws #12-24 x 1/2 flat head and 12 wood screws #12 x 1-1/4"


def test_a_part_by_hand_is_marked_and_keeps_what_the_program_would_take():
    found = rows(hinge={"bearing": "plain", "electric": 2, "barrel": 0.6})
    assert found["bearing"].asked_by == found["electric"].asked_by == "by hand"
    assert found["weight"].asked_by == ""
    assert found["electric"].value == "hinge 2 from the top carries wires"
    (because,) = found["bearing"].reasons
    assert because.words == "Chosen by hand"
    assert because.source == "the user's own choice"
    assert because.others[0].value == "antifriction bearing (ball)"
    assert because.others[0].effect.startswith("what the program would take")


def test_what_is_by_hand_is_named_in_the_order_of_the_rows():
    assert given_by_hand(opening(hinge={"electric": 2, "height": 5, "barrel": 0.6})) == ("height", "electric")
    assert given_by_hand(opening()) == ()


def test_the_job_s_standard_is_marked_and_by_hand_outranks_it():
    standard = Hinge(width=4.5, weight="heavy", finish_us="US32D")
    found = rows(standard=standard, hinge={"weight": "standard"})
    assert found["width"].value == "4-1/2 x 4-1/2"
    assert found["width"].asked_by == found["finish_bhma"].asked_by == "the job's standard"
    assert found["weight"].asked_by == "by hand"
    assert found["bearing"].asked_by == ""


def test_a_standard_that_does_not_do_is_not_marked_as_taken():
    # 3 high is too low for this door, so the standard's height does not hold here.
    assert rows(standard=Hinge(height=3))["height"].asked_by == ""


def test_each_leaf_of_two_has_its_rows_and_says_that_by_hand_holds_for_both():
    upper, lower = leaves(leaves="dutch")
    assert [upper.leaf, lower.leaf] == ["upper", "lower"]
    count = next(row for row in lower.rows if row.part.keys == ("count",))
    assert count.value == "2 hinges = 1 pair"
    assert count.remark == COUNT_OF_BOTH
    assert next(row for row in lower.rows if row.part.keys == ("pin",)).remark == BOTH_LEAVES


def test_screws_and_wires_of_two_leaves_are_those_of_the_order():
    pair = {"leaves": "pair", "size": {"width": 72, "height": 84}}
    active, inactive = (
        {row.part.keys[0]: row for row in leaf.rows}
        for leaf in leaves(**pair, hinge={"screws": {"machine": 10, "wood": 0}, "electric": 2})
    )
    assert active["screws"].value == inactive["screws"].value == "5 machine screws #12-24 x 1/2 flat head"
    assert active["screws"].asked_by == inactive["screws"].asked_by == "by hand"
    assert active["screws"].remark == SCREWS_OF_BOTH
    assert active["electric"].value == "hinge 2 from the top carries wires"
    assert inactive["electric"].value == "none carries wires"
    assert inactive["electric"].reasons[0].words == "Hinge 2 of the active leaf carries wires"
    assert inactive["electric"].remark == ELECTRIC_OF_BOTH


def test_a_place_for_wires_that_no_leaf_has_carries_none():
    row = rows(hinge={"electric": 4})["electric"]
    assert row.value == "none carries wires"
    assert row.reasons[0].words == "Chosen by hand, but no leaf has a hinge 4"


def test_metric_changes_lengths_and_leaves_a_size_its_name():
    found = values(display=Display(metric=True))
    assert found["leaf_thickness"] == "3.4 mm"
    assert found["width"] == "4-1/2 x 4"


def test_nothing_is_shown_where_no_hinge_is_chosen():
    assert leaves(hung_on="pivots") == ()


def test_a_door_for_which_no_width_is_to_be_had_says_so():
    (leaf,) = leaves(hinge={"height": 11})
    assert leaf.rows[0].value.startswith("11 high; no width")
