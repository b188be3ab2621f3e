"""What a client is told of a door, worked by hand: the verdict on each hinge, the advice, what it costs."""

import ast
import csv
import re
from math import degrees
from pathlib import Path

import pytest

from configurator import rules
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import study
from configurator.study.widths.width_pair import cut_for, width_pair
from configurator.units import Display
from configurator.wording.client_words import (
    NOT_CHOSEN,
    NOTHING_RECOMMENDED,
    caution_of,
    client_cautions,
    part_named,
    recommendation,
    thing_named,
)
from configurator.wording.verdict import HAND, advice, client_sayings, verdicts
from tests.drawing.cases import case_a, demo

INCHES, METRIC = Display(), Display(metric=True)
PAIR = {"leaves": "pair", "size": {"width": 72, "height": 84}}
RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}


def told(found, display=INCHES):
    return [(one.title, one.because) for one in verdicts(found, width_pair(found), display)]


def advised(found, display=INCHES):
    return advice(found, width_pair(found), display)


def lost_property():
    """A Dutch door whose upper half a chair rail stops and whose lower half passes under it."""
    job = load(resource_path("demo_openings", "pairs_and_dutch.json"))
    return study(next(one for one in job.openings if one.mark == "305A"), job.job)


def test_of_a_door_that_the_rail_stops():
    """Case B: 171.8 degrees on the 4 in hinge, 180 on the 4-1/2 in; the lever then touches at 178.8."""
    assert told(demo("112A")) == [
        ("Stops short: 171°", "The door meets the chair rail."),
        ("Opens all the way", "It passes the chair rail with 5/32 in to spare."),
    ]
    said = advised(demo("112A"))
    assert said.headline == (
        "With the 4 in hinge the door meets the chair rail before it is fully open. "
        "Choose the 4-1/2 in hinge."
    )
    assert said.taken == 1
    assert said.lines == (
        "The wider hinge stands out 1/4 in more and takes 1/4 in of the way through: 32-13/16 in is left.",
    )


def test_a_short_rail_may_be_cut_to_keep_the_narrower_hinge():
    """On 4 in, open flat, the door's face stands 1-3/8 in off the wall: no rail 1-3/4 in out fits behind.

    The door reaches far past a foot from its frame; only a rail 2 in long may be cut off altogether.
    """
    short = case_a(obstructions=[{**RAIL, "length": 2}], compare=[4, 4.5])
    assert cut_for(short, short.candidates[0]) == (0, 2.0)
    assert "or take the chair rail away and keep the 4 in hinge." in advised(short).headline
    long = case_a(obstructions=[RAIL], compare=[4, 4.5])
    assert cut_for(long, long.candidates[0]) is None
    assert "shorten" not in advised(long).headline


@pytest.mark.parametrize(("wanted", "by"), [(160, "1/2 in"), (165, "1-5/8 in")])
def test_a_rail_may_be_cut_to_keep_the_narrower_hinge(wanted, by):
    """A rail 2-1/2 in out stops the door at 157.1 degrees on 4 in, at 166.7 on 4-1/2 in."""
    out = case_a(obstructions=[{**RAIL, "projection": 2.5}], compare=[4, 4.5], use={"wanted_angle": wanted})
    assert f"or shorten the chair rail by {by} and keep the 4 in hinge." in advised(out).headline


def test_a_hinge_that_does_it_is_named_though_it_is_not_pictured():
    out = case_a(obstructions=[{**RAIL, "projection": 2.5}], compare=[4, 4.5], use={"wanted_angle": 170})
    assert advised(out).headline == (
        "Neither hinge does what is wanted. Take the 5 in hinge, which is not pictured here."
    )


def test_trim_about_the_frame_is_not_offered_to_be_cut():
    assert "or " not in advised(demo("205A")).headline.partition("Choose")[2]


def test_of_a_door_with_nothing_in_its_way_nothing_is_worth_paying_for():
    assert told(case_a()) == [("Opens all the way", "Nothing stands in its way.")] * 2
    said = advised(case_a())
    assert said.headline == (
        "Either hinge will do: take the 4 in hinge. The wider one brings nothing worth paying for."
    )
    assert said.taken == 0


@pytest.mark.parametrize(("short", "flat"), [(0.01, True), (-0.01, False)])
def test_a_hands_width_from_flat_is_open_all_the_way(short, flat):
    """Held at an angle whose free edge stands a hair under, or over, a hand's width from where flat is."""
    one = case_a(compare=[4])
    angle = 180 - degrees((HAND - short) / one.candidates[0].h.w)
    ((title, _),) = told(case_a(compare=[4], use={"stop_angle": angle}))
    assert (title == "Opens all the way") == flat


def test_of_a_door_that_its_door_stop_holds_square():
    assert told(demo("160A")) == [("Held open at 90°", "Its door stop keeps it there.")] * 2
    assert "None is recommended as things are" in advised(demo("160A")).headline


def test_a_door_that_opens_as_far_as_asked_and_no_farther():
    corner = case_a(obstructions=[{"kind": "return wall", "start": 6}], use={"wanted_angle": 90})
    assert {title for title, _ in told(corner)} == {"Opens far enough"}
    assert told(corner)[0][1] == "Only then the door meets the side wall."


@pytest.mark.parametrize(("spare", "said"), [(1 / 64, "nothing"), (1 / 32, "1/32 in"), (0.5, "1/2 in")])
def test_what_is_left_to_spare_is_told(spare, said):
    """Open flat on a 4 in hinge the door's face stands 1-3/8 in off the wall."""
    thing = {"kind": "other", "start": 0.5, "length": 6, "projection": 1.375 - spare}
    bare = case_a(obstructions=[thing], compare=[4, 4.5])
    assert told(bare)[0] == (
        "Opens all the way",
        f"It passes the thing beside the door with {said} to spare.",
    )


def test_of_one_width():
    only = case_a(compare=[4])
    assert told(only) == [("Opens all the way", "Nothing stands in its way.")]
    assert advised(only).headline == "The 4 in hinge does what is wanted of this door."
    assert advised(only).lines == ("The way through is 33-1/16 in wide.",)


def test_of_a_door_that_jams_and_what_would_mend_it():
    """The narrow valve cupboard binds on every width: its edge is square."""
    titles = {title for title, _ in told(demo("126C"))}
    assert titles == {"Jams"}
    said = advised(demo("126C"))
    assert said.taken is None
    assert said.headline.startswith("Neither hinge does what is wanted. What would do it: bevel the edge of")


def test_a_way_through_that_is_too_narrow_is_said_with_both_lengths():
    narrow = case_a(size="2870", use={"accessible": True}, compare=[4, 4.5])
    assert told(narrow)[0] == ("Too narrow to walk through", "29-1/16 in is left, and 32 in is asked for.")


def test_hardware_that_ends_the_swing_is_no_hinges_fault():
    shelf = {"kind": "shelf", "face": "pull", "projection": 14, "from_latch_edge": 18, "width": 30,
             "height": 40, "vertical": 1}  # fmt: skip
    said = advised(case_a(hardware=[shelf], use={"wanted_angle": 180}))
    assert "No usual hinge changes that: fit a door stop, so that the shelf does not hit the wall." in (
        said.headline
    )


def test_of_two_leaves_the_one_that_does_worst_is_told_first():
    assert told(lost_property())[0] == (
        "Stops short: 171°",
        "Upper half: the door meets the chair rail. Lower half: opens all the way.",
    )


def test_lengths_follow_the_display_and_hinges_stay_in_inches():
    said = advised(demo("112A"), METRIC)
    assert "6.4 mm more" in said.lines[0]
    assert "4-1/2 in hinge" in said.headline


def test_a_clear_width_is_not_rounded_over_its_limit():
    """A 34-15/16 in opening is clear 33-1/16 less 1-1/16 in, and a hair less is not said to be 32 in."""
    for width, whole in ((34.9375, True), (34.9275, False)):
        (words,) = advised(case_a(size={"width": width, "height": 84}, compare=[4])).lines
        assert ("is 32 in wide" in words) == whole


def test_everything_is_said_in_one_place():
    said = client_sayings(demo("112A"), width_pair(demo("112A")), INCHES)
    assert said[0] == "Hinge 4 in wide: Stops short: 171°. The door meets the chair rail."
    assert len(said) == 4


@pytest.mark.parametrize("mark", ["112A", "205A", "126C", "160A", ""])
def test_no_word_of_the_trade_is_said(mark):
    found = demo(mark) if mark else lost_property()
    words = " ".join((*client_sayings(found, width_pair(found), INCHES), *client_cautions(found))).lower()
    trade = r"\b(barrel|pin|rabbet|backset|leaf|leaves|encroach\w*|proud|tips?|A156)\b|\["
    assert re.search(trade, words) is None


def test_a_hinge_with_an_error_is_not_counted_out():
    assert recommendation(demo("126C"), INCHES) == (NOTHING_RECOMMENDED,)
    assert recommendation(case_a(hung_on="pivots"), INCHES) == (NOT_CHOSEN,)
    assert recommendation(demo("112A"), INCHES)[0].startswith("3 hinges, 4-1/2 x 4-1/2 in (height x width")
    found = recommendation(case_a(**PAIR), INCHES)
    assert found[0].startswith("For the active leaf: 3 hinges, 4-1/2 x 4 in")
    assert found[1].startswith("For the inactive leaf: 3 hinges")


def test_what_is_for_the_workshop_is_counted_and_what_the_verdict_tells_is_not_told_twice():
    fire = client_cautions(demo("140A"))
    assert fire[0].startswith("This is a fire door")
    assert client_cautions(demo("112A")) == ()
    gaps = case_a(hinge={"leaf_gap": 0.0625})
    assert client_cautions(gaps)[-1] == "1 more point is for whoever makes the door: see the plan."
    assert caution_of(next(one for one in gaps.all_findings() if one.code == "gaps disagree")) == ""


def test_parts_and_things_have_a_clients_names():
    names = [part_named(name) for name in ("leaf", "barrel", "lever")]
    assert names == ["the door", "the hinge", "the lever"]
    assert [thing_named(kind) for kind in ("latch jamb", "chair rail", "return wall")] == [
        "frame on the lock side",
        "chair rail",
        "side wall",
    ]


def test_every_caution_has_its_teller():
    """An error or a caution of a rule has a client's words, or the verdict or the workshop tells it."""
    known = {row["code"]: row for row in _caution_rows()}
    untold = sorted(set(_codes_of_rules()) - set(known))
    assert untold == [], "give these a row in resources/words/client_cautions.csv"
    for code, row in known.items():
        assert row["teller"] in ("client", "verdict", "workshop"), code
        assert bool(row["words"]) == (row["teller"] == "client"), code
        assert not row["words"] or row["words"].endswith((".", "?")), code


def _caution_rows():
    with resource_path("words", "client_cautions.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _codes_of_rules():
    """Every code that a rule writes out as an error or a caution."""
    for module in Path(rules.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(module.read_text("utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == "finding":
                code, severity = node.args[0], node.args[1]
                if isinstance(code, ast.Constant) and ast.unparse(severity) != "'note'":
                    yield code.value


def test_of_a_pair_the_door_that_meets_is_named_and_both_take_the_hinge():
    """A chair rail along the first door's side only: the second hangs on the narrower hinge."""
    said = "With the 4 in hinge the first door meets the chair rail before it is fully open. "
    headline = advised(case_a(**PAIR, obstructions=[RAIL], compare=[4, 4.5])).headline
    assert headline == f"{said}Choose the 4-1/2 in hinge for the first door."
    alike = [RAIL, {**RAIL, "side": "latch"}]
    both = advised(case_a(**PAIR, obstructions=alike, compare=[4, 4.5])).headline
    assert both == f"{said}Choose the 4-1/2 in hinge for both doors."


def test_of_two_hinges_that_do_not_do_it_the_reason_for_one_is_said():
    """A thing 6 in out ends the swing on either; the narrower leaves 1/2 in more to walk through."""
    thing = {"kind": "other", "projection": 6, "start": 3, "length": 12}
    asked = {"wanted_angle": 170}
    headline = advised(case_a(obstructions=[thing], compare=[4, 5], use=asked)).headline
    assert headline.startswith("Neither hinge does what is wanted.")
    assert headline.endswith(
        "As things are we would take the 4 in hinge, which leaves more room to walk through."
    )
