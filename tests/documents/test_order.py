"""The order laid out: every line, everything left out, and no mark lost however many there are."""

import pytest

from configurator.documents.document import headed, listed
from configurator.documents.order import order_document, order_table
from configurator.model import OrderFacts
from configurator.order.lines import Spare
from configurator.order.price_list import parse_prices
from configurator.order.prices import price_order
from tests.openings import ON_PIVOTS
from tests.order.cases import data, ordered


def column(table, key, rows=None):
    place = [one.key for one in table.columns].index(key)
    return [row[place] for row in (table.rows if rows is None else rows)]


def totals(table, key):
    return column(table, key, table.totals)


def test_the_data_has_a_column_for_every_fact_of_a_line():
    order = ordered(data("1", quantity=40), spare=Spare(each=2))
    table = order_table(order)
    assert column(table, "quantity") == [122]
    assert column(table, "needed") == [120]
    assert column(table, "marks") == ["1 x 120"]
    assert column(table, "machine_screws") == [976]
    assert column(table, "fire") == [False]
    assert column(table, "leaf_thickness") == [0.134]


def test_what_is_not_ordered_stands_in_the_same_table_with_why():
    table = order_table(ordered(data("1"), data("2", **ON_PIVOTS)))
    assert column(table, "quantity") == [3, 0]
    assert column(table, "item") == ["butt hinge", "not ordered"]
    assert column(table, "marks") == ["1 x 3", "2"]
    assert column(table, "remark")[1].startswith("hung otherwise: This door is hung on pivots")


def test_paper_says_it_in_words():
    order = ordered(data("1", hinge={"mounting": "swing clear"}), spare=Spare(each=1))
    paper = order_document(order).sheets[0]
    (row,), (in_all,) = paper.rows, paper.totals
    assert in_all[:5] == (None, 4, "2 pair", 1, "in all")
    assert row[:6] == (1, 4, "2 pair", 1, "4-1/2 x 4", "none known")
    assert row[6] == (
        "swing clear, standard weight, antifriction bearing, leaf 0.134, 5 knuckles, hand LH, "
        "sold by height, 4-1/2 high, opening clear at 90 to 95 degrees"
    )
    assert row[7:] == (
        "steel, 652 (US26D)",
        "removable pin, flat button tip, square corner",
        "32 machine",
        "1 x 3",
    )


def test_prices_stand_beside_the_lines_they_are_for():
    order = ordered(data("1"), data("2", hinge={"width": 5}))
    priced = price_order(order.lines, parse_prices(b"width,price,unit\n4,3.10,pair\n"))
    document = order_document(order, priced)
    assert [str(cell) for cell in column(document.data[0], "amount")] == ["4.65", "None"]
    assert [str(cell) for cell in column(document.sheets[0], "price")] == ["3.10", "None"]
    assert column(document.sheets[0], "price_unit") == ["pair", None]
    assert totals(document.sheets[0], "amount") == [None], "no sum that lacks a line"
    assert document.notes[0] == "Total 4.65 without 1 line that has no price: 2."


def test_the_sums_stand_at_the_end_on_paper_and_in_the_data():
    """At 3.10 a pair three hinges are 4.65 and six are 9.30: 13.95 in all."""
    order = ordered(data("1"), data("2", hinge={"width": 5}, quantity=2))
    document = order_document(order, price_order(order.lines, parse_prices(b"price,unit\n3.10,pair\n")))
    for table in (document.sheets[0], document.data[0]):
        assert column(table, "quantity") == [3, 6], "a sum among the lines would be added again"
        assert totals(table, "quantity") == [9]
        assert [str(cell) for cell in column(table, "amount")] == ["4.65", "9.30"]
        assert [str(cell) for cell in totals(table, "amount")] == ["13.95"]
    assert order_document(ordered()).sheets[0].rows == ()


def test_the_heading_says_which_revision_it_is():
    document = order_document(ordered(data("1")), None, "as kept in revision 1")
    assert headed(document) == "no job name given, as kept in revision 1"
    assert headed(order_document(ordered(data("1")))) == "no job name given"


def test_a_column_for_spare_is_there_only_where_some_is():
    paper = order_document(ordered(data("1"))).sheets[0]
    assert "spare" not in [one.key for one in paper.columns]
    assert all(len(row) == len(paper.columns) for row in paper.rows)


def test_a_workbook_begins_with_what_is_read_and_has_every_fact_behind_it():
    document = order_document(ordered(data("1"), data("2", **ON_PIVOTS)))
    assert [table.title for table in document.workbook] == [
        "Order",
        "Lines",
        "Marks",
        "Hung another way",
        "Screws",
        "Not ordered",
        "For the office",
    ]
    assert document.workbook[-1].rows == (("The lines add up to 3 hinges; 1 opening takes 3: they agree.",),)
    assert document.workbook[1] == document.data[0]


def test_a_line_of_many_marks_has_each_of_them_in_a_row():
    order = ordered(*(data(f"M{n}") for n in range(410)))
    document = order_document(order)
    assert [table.title for table in document.sheets] == ["Order", "Marks", "Screws"]
    assert column(document.sheets[0], "marks")[0].endswith(" and 10 more")
    assert len(document.sheets[1].rows) == 410
    assert "more" not in column(document.data[0], "marks")[0]


def test_a_short_list_is_whole_and_a_long_one_says_how_many_more():
    assert listed(["a", "b"], 2) == "a, b"
    assert listed(["a", "b", "c"], 2) == "a, b and 1 more"
    assert listed([], 2) == ""
    long = listed(["x" * 998] * 40, 2000)
    assert len(long) < 32_767
    assert long.endswith(" and 8 more")


def test_the_head_is_the_users_own_words_and_nothing_that_was_left_out():
    head = OrderFacts(
        supplier="Northgate Hardware", ship_to="Dock 3", number="PO-114", required="2026-12-15",
        notes="Deliver by floor.", internal_notes="Ask for a discount.",
    )  # fmt: skip
    document = order_document(ordered(data("1")), head=head)
    assert document.head == (
        ("Supplier", "Northgate Hardware"), ("Ship to", "Dock 3"), ("Order number", "PO-114"),
        ("Required", "2026-12-15"), ("Hinge widths", "narrowest that works"),
    )  # fmt: skip
    assert document.notes == ("Deliver by floor.",)
    assert document.office_notes[-1] == "Ask for a discount."


def test_what_is_for_the_office_does_not_go_to_the_supplier():
    document = order_document(ordered(data("1"), data("2", hinge={"count": 2})))
    assert [table.title for table in document.sheets] == ["Order", "Screws"]
    assert [table.title for table in document.office] == ["Not ordered", "Findings"]
    assert document.office_notes[0].startswith("The lines add up to 3 hinges")


def test_labelled_doors_screws_and_accepted_errors_run_under_their_line():
    screws = {"screws": {"machine": 12, "wood": 12}}
    order = ordered(
        data("1"),
        data("2", use={"fire_rated": True}, hinge=screws),
        data("3", hinge={"count": 2}, order_despite=["too few hinges"]),
    )
    (paper, *_) = order_document(order).sheets
    assert column(paper, "labelled") == ["3 hinges: 2 x 3"]
    assert column(paper, "screw_kinds") == ["5 with machine, 3 with machine and wood"]
    assert column(paper, "despite")[0].startswith("3, ordered all the same: ")
    assert [one.key for one in paper.columns if one.under] == ["marks", "labelled", "screw_kinds", "despite"]


def test_part_numbers_packs_and_the_currency_stand_with_the_lines():
    order = ordered(data("1", quantity=40))
    prices = parse_prices(b"part number,pack,price,currency\nKP-1,50,3.10,coins\n")
    (paper, *_) = order_document(order, price_order(order.lines, prices)).sheets
    assert (column(paper, "part_number"), column(paper, "packs")) == (["KP-1"], [3])
    assert "Amount, coins" in [one.heading for one in paper.columns]


@pytest.mark.parametrize(
    ("facts", "words"), [({}, "narrowest that works"), ({"width_policy": "square hinges"}, "square hinges")]
)
def test_the_order_says_by_which_policy_its_widths_were_taken(facts, words):
    order = ordered(data("1"), facts=facts)
    assert order.as_data()["width_policy"] == words
    assert ("Hinge widths", words) in order_document(order).head
