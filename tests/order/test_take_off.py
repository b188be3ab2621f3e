"""A job counted into lines: exactly, with nothing silently missing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.order.book import tally_job
from configurator.order.lines import Spare, parse_spare
from configurator.order.take_off import take_off
from configurator.project_file import load
from configurator.resource_files import resource_path
from tests.openings import ON_PIVOTS
from tests.order.cases import data, ordered
from tests.sweeps import examples

CONTRACT = """
    quantity unit item height width size type mounting weight bearing leaf_thickness knuckles base_metal
    finish_bhma finish_us pin security_stud tip corner hand fire screws marks
"""
WITHOUT_A_LEAF = {"size": {"width": 36, "height": 5}, "door": {"undercut": 12}}
"""An opening as low as its door is undercut: the plan refuses it."""


def codes(order):
    return [said.finding.code for said in order.findings]


def test_forty_doors_are_120_hinges_and_60_pair():
    order = ordered(data("1", quantity=40))
    (line,) = order.lines
    assert (line.quantity, line.quantity_words) == (120, "120 hinges = 60 pair")
    assert line.by_mark == {"1": 120}
    assert line.screws == {"machine": 960, "wood": 0}
    assert order.reconciliation.words() == "The lines add up to 120 hinges; 40 openings take 120: they agree."


def test_an_odd_number_is_said_in_half_pairs():
    (line,) = ordered(data("1", hinge={"count": 7})).lines
    assert line.quantity_words == "7 hinges = 3-1/2 pair"


def test_a_line_has_every_key_of_the_contract():
    (line,) = ordered(data("1")).as_data()["lines"]
    assert set(CONTRACT.split()) <= set(line)
    assert (line["unit"], line["item"], line["size"], line["marks"]) == (
        "each",
        "butt hinge",
        "4-1/2 x 4",
        ["1"],
    )
    assert (line["hand"], line["fire"]) == (None, False)


def test_openings_alike_share_a_line_and_each_mark_keeps_its_count():
    (line,) = ordered(data("1", quantity=2), data("2", hand="RH")).lines
    assert line.quantity == 9
    assert line.by_mark == {"1": 6, "2": 3}


@pytest.mark.parametrize(
    "hinge",
    [
        {"width": 5}, {"height": 5}, {"type": "A5112"}, {"mounting": "half mortise"}, {"weight": "heavy"},
        {"bearing": "plain"}, {"leaf_thickness": 0.18}, {"knuckles": 3}, {"base_metal": "stainless"},
        {"finish_bhma": "600"}, {"finish_us": "USP"}, {"pin": "non-removable"}, {"security_stud": True},
        {"tip": "hospital"}, {"corner": "1/4 radius"}, {"electric": 2},
    ],
    ids=lambda hinge: next(iter(hinge)),
)  # fmt: skip
def test_whatever_distinguishes_hinges_makes_another_line(hinge):
    order = ordered(data("1"), data("2", hinge=hinge))
    assert len(order.lines) == 2
    assert sum(line.quantity for line in order.lines) == 6
    assert order.reconciliation.agrees


@pytest.mark.parametrize("alloy", ["304", "316"])
def test_the_alloy_distinguishes_too(alloy):
    stainless = {"base_metal": "stainless", "alloy": "304"}
    order = ordered(data("1", hinge=stainless), data("2", hinge={**stainless, "alloy": alloy}))
    assert len(order.lines) == (1 if alloy == "304" else 2)


def test_hinges_alike_in_all_but_label_and_screws_are_one_product():
    """Both are one box at the supplier: one line, and the labelled marks and the screws are counted on it."""
    screws = {"hinge": {"screws": {"machine": 12, "wood": 12}}}
    order = ordered(data("1"), data("2", use={"fire_rated": True}, **screws), spare=Spare(each=1))
    (line,) = order.as_data()["lines"]
    assert (line["quantity"], line["needed"], line["spare"]) == (7, 6, 1)
    assert (line["fire"], line["fire_marks"]) == (True, {"2": 3})
    assert line["screw_kinds"] == {"machine": 3, "machine and wood": 3}
    assert line["screws"] == {"machine": 24 + 12 + 8, "wood": 12 + 4}, "the spare one goes with either"


def test_the_spare_of_a_product_is_counted_once():
    order = ordered(
        data("1", quantity=5), data("2", quantity=5, use={"fire_rated": True}), spare=parse_spare("5%")
    )
    assert [(line.needed, line.spare) for line in order.lines] == [(30, 2)]


def test_one_of_the_set_carries_wires_and_the_rest_are_plain():
    plain, wired = ordered(data("1", quantity=4, hinge={"electric": 2})).lines
    assert (plain.hinge.item, plain.quantity) == ("butt hinge", 8)
    assert (wired.hinge.item, wired.quantity) == ("electric butt hinge", 4)
    assert wired.screws == {"machine": 32, "wood": 0}


def test_a_wired_hinge_that_is_not_there_is_no_line_but_an_error():
    order = ordered(data("1", hinge={"electric": 4}))
    assert order.lines == ()
    assert "electric hinge place" in codes(order)
    (left,) = order.not_ordered
    assert (left.why, left.hinges, left.codes) == ("held", 3, ("electric hinge place",))


WRONG = {"hinge": {"count": 2}}
"""Two hinges on a door 84 in high are an error."""


def test_an_opening_with_an_error_is_held_until_the_user_says_so():
    order = ordered(data("1"), data("2", quantity=2, **WRONG))
    assert [line.by_mark for line in order.lines] == [{"1": 3}]
    (left,) = order.as_data()["not_ordered"]
    assert (left["mark"], left["why"], left["hinges"], left["codes"]) == ("2", "held", 4, ["too few hinges"])
    assert left["message"].endswith("Mend this, or say: order it all the same.")
    assert order.reconciliation.words() == (
        "The lines add up to 3 hinges; 3 openings take 7, less 4 not ordered: they agree."
    )


def test_an_accepted_error_is_ordered_and_the_word_goes_with_the_line_and_the_finding():
    order = ordered(data("1"), data("2", order_despite=["too few hinges"], **WRONG))
    (line,) = order.as_data()["lines"]
    assert (line["by_mark"], line["ordered_despite"]) == ({"1": 3, "2": 2}, {"2": ["too few hinges"]})
    assert order.not_ordered == ()
    (said,) = [one for one in order.as_data()["findings"] if one["code"] == "too few hinges"]
    assert (said["marks"], said["accepted"]) == (["2"], ["2"])


def test_another_error_holds_an_opening_again():
    (left,) = ordered(data("2", order_despite=["hand of the hinge"], **WRONG)).not_ordered
    assert left.codes == ("too few hinges",)


def test_a_pair_takes_both_leaves_and_says_on_which_the_wires_are_counted():
    pair = data("1", leaves="pair", size={"width": 72, "height": 84}, hinge={"electric": 2})
    order = ordered(pair)
    assert [line.quantity for line in order.lines] == [5, 1]
    assert "electric hinge leaf" in codes(order)


def test_a_handed_hinge_carries_the_hand_of_its_leaf():
    pair = data("1", leaves="pair", size={"width": 72, "height": 84}, hinge={"mounting": "swing clear"})
    order = ordered(pair, data("2", hand="RH", hinge={"mounting": "swing clear"}))
    assert [(line.hinge.hand, line.by_mark) for line in order.lines] == [
        ("LH", {"1": 3}),
        ("RH", {"1": 3, "2": 3}),
    ]


def test_a_handed_hinge_without_a_hand_is_an_error():
    assert "hand of the hinge" in codes(ordered(data("1", hand=None, hinge={"mounting": "swing clear"})))
    assert "hand of the hinge" not in codes(ordered(data("1", hand=None)))


def test_screws_by_hand_for_both_leaves_are_shared_among_all_their_hinges():
    pair = data("1", leaves="pair", size={"width": 72, "height": 84}, hinge={"screws": {"machine": 50}})
    (line,) = ordered(pair).lines
    assert line.screws == {"machine": 50, "wood": 0}


def test_screws_are_summed_by_kind_and_size_and_packed():
    order = ordered(data("1", quantity=40), data("2", hinge={"height": 3.5, "width": 4}), screw_pack=100)
    small, large = order.screws
    assert (small.size, small.count, small.packs) == ("#10-24 x 1/2 flat head", 18, 1)
    assert (large.size, large.count, large.packs) == ("#12-24 x 1/2 flat head", 960, 10)
    assert ordered(data("1")).screws[0].packs is None
    with pytest.raises(ValueError, match="at least 1 screw"):
        ordered(data("1"), screw_pack=0)


def test_a_pack_may_hold_one_screw_and_a_full_pack_needs_no_other():
    assert [ordered(data("1"), screw_pack=pack).screws[0].packs for pack in (1, 24, 25, 23)] == [24, 1, 1, 2]


def test_spare_goes_up_line_by_line_and_is_said():
    order = ordered(data("1", quantity=7), data("2", hinge={"width": 5}), spare=Spare(percent=5))
    assert [(line.needed, line.spare) for line in order.lines] == [(21, 2), (3, 1)]
    assert order.reconciliation.agrees
    assert order.totals()["spare"] == 3
    assert order.totals()["spare_rule"] == "5% of each line, rounded up"


def test_what_is_hung_otherwise_is_listed_with_why():
    order = ordered(data("1"), data("2", quantity=3, **ON_PIVOTS))
    (left,) = order.not_ordered
    assert (left.mark, left.quantity, left.why, left.hinges) == ("2", 3, "hung otherwise", 0)
    assert "hung on pivots" in left.words
    assert order.reconciliation.not_counted == 3


def test_what_cannot_be_studied_is_listed_with_its_fault_and_is_an_error():
    order = ordered(data("1"), data("2", **WITHOUT_A_LEAF))
    (left,) = order.not_ordered
    assert (left.mark, left.why, left.hinges) == ("2", "not studied", None)
    assert left.words == "A leaf from 12 to 4-7/8 in above the floor has no height."
    assert "not studied" in codes(order)
    assert order.has_errors


def test_a_leaf_without_any_width_is_left_out_and_the_sums_say_so():
    order = ordered(data("1"), data("2", hinge={"height": 11}))
    (left,) = order.not_ordered
    assert (left.mark, left.why, left.hinges) == ("2", "no hinge to be had", 3)
    assert order.reconciliation.words() == (
        "The lines add up to 3 hinges; 2 openings take 6, less 3 not ordered: they agree."
    )


def test_a_slip_in_one_opening_is_said_beside_the_order_with_its_marks():
    swapped = {"hinge": {"height": 4, "width": 4.5}}
    order = ordered(data("1", **swapped), data("2", **swapped), data("3"))
    (said,) = [one for one in order.findings if one.finding.code == "hinge size swapped"]
    assert said.marks == ("1", "2")
    assert said.words.startswith("1, 2: ")


def test_errors_come_first():
    order = ordered(data("1", hinge={"corner": "1/4 radius"}), data("2", hinge={"count": 2}))
    severities = [said.finding.severity for said in order.findings]
    assert severities == sorted(severities, key=("error", "warning", "note").index)
    assert severities[0] == "error"


def test_an_empty_job_has_an_empty_order_that_agrees():
    order = ordered()
    assert (order.lines, order.findings, order.hinges) == ((), (), 0)
    assert order.reconciliation.agrees


def test_the_demo_job_adds_up():
    job = load(resource_path("demo_openings", "kestrel_point.json"))
    order = take_off(tally_job(job), job.job)
    assert order.reconciliation.agrees
    wood = next(line for line in order.lines if "205A" in line.by_mark)
    assert (wood.quantity, wood.hinge.size, wood.screws["wood"]) == (6, "3-1/2 x 3-1/2", 36)


HINGES = st.sampled_from(
    [None, {"width": 5}, {"tip": "hospital"}, {"electric": 2}, {"count": 5}, {"mounting": "swing clear"}]
)
OPENINGS = st.lists(
    st.tuples(
        st.integers(1, 500),
        st.sampled_from(["single", "pair", "dutch"]),
        st.sampled_from(["butt hinges", "pivots"]),
        HINGES,
    ),
    max_size=6,
)


@examples(25)
@given(OPENINGS, st.integers(0, 100), st.integers(0, 9))
def test_the_lines_always_add_up_to_the_openings(openings, percent, each):
    given_data = [
        data(str(n), quantity=quantity, leaves=leaves, hung_on=hung_on, hinge=hinge)
        | ({"size": {"width": 72, "height": 84}} if leaves == "pair" else {})
        for n, (quantity, leaves, hung_on, hinge) in enumerate(openings)
    ]
    order = ordered(*given_data, spare=Spare(percent=percent, each=each))
    assert order.reconciliation.agrees
    assert order.reconciliation.by_lines == sum(line.needed for line in order.lines)
    marks = {mark for line in order.lines for mark in line.by_mark} | {one.mark for one in order.not_ordered}
    assert marks == {one["mark"] for one in given_data}
    assert all(line.quantity == line.needed + line.spare for line in order.lines)


def test_the_marks_of_a_line_stand_in_the_order_of_the_job():
    label = {"use": {"fire_rated": True, "wanted_angle": 90}}
    (line,) = ordered(data("3"), data("1", **label), data("2")).lines
    assert list(line.by_mark) == ["3", "1", "2"]
