"""The order laid out: every line, everything left out, and no mark lost however many there are."""

from configurator.documents.document import headed, listed
from configurator.documents.order import order_document, order_table
from configurator.order.lines import Spare
from configurator.order.price_list import parse_prices
from configurator.order.prices import price_order
from tests.order.cases import data, ordered


def column(table, key):
    place = [one.key for one in table.columns].index(key)
    return [row[place] for row in table.rows]


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
    table = order_table(ordered(data("1"), data("2", hung_on="pivots")))
    assert column(table, "quantity") == [3, 0]
    assert column(table, "item") == ["butt hinge", "not ordered"]
    assert column(table, "marks") == ["1 x 3", "2"]
    assert column(table, "remark")[1].startswith("hung otherwise: This door is hung on pivots")


def test_paper_says_it_in_words():
    order = ordered(data("1", hinge={"mounting": "swing clear"}), spare=Spare(each=1))
    paper = order_document(order).sheets[0]
    row, in_all = paper.rows
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
    assert [str(cell) for cell in column(document.sheets[0], "price")] == ["3.10", "None", "None"]
    assert column(document.sheets[0], "price_unit") == ["pair", None, None]
    assert column(document.sheets[0], "amount")[-1] is None, "no sum that lacks a line"
    assert document.notes[1] == "Total 4.65 without 1 line that has no price: 2."


def test_paper_has_the_sums_under_its_lines_and_the_workbook_has_not():
    """At 3.10 a pair three hinges are 4.65 and six are 9.30: 13.95 in all."""
    order = ordered(data("1"), data("2", hinge={"width": 5}, quantity=2))
    document = order_document(order, price_order(order.lines, parse_prices(b"price,unit\n3.10,pair\n")))
    assert column(document.sheets[0], "quantity") == [3, 6, 9]
    assert [str(cell) for cell in column(document.sheets[0], "amount")] == ["4.65", "9.30", "13.95"]
    assert column(document.book[0], "quantity") == [3, 6], "a sum among the lines would be added again"
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
    document = order_document(ordered(data("1"), data("2", hung_on="pivots")))
    assert [table.title for table in document.workbook] == [
        "Order",
        "Lines",
        "Marks",
        "Screws",
        "Not ordered",
        "Notes",
    ]
    assert document.workbook[-1].rows == (("The lines add up to 3 hinges; 1 opening takes 3: they agree.",),)
    assert document.workbook[1] == document.data[0]


def test_a_line_of_many_marks_has_each_of_them_in_a_row():
    order = ordered(*(data(f"M{n}") for n in range(70)))
    document = order_document(order)
    assert [table.title for table in document.sheets] == ["Order", "Marks", "Screws"]
    assert column(document.sheets[0], "marks")[0].endswith(" and 10 more")
    assert len(document.sheets[1].rows) == 70
    assert "more" not in column(document.data[0], "marks")[0]


def test_a_short_list_is_whole_and_a_long_one_says_how_many_more():
    assert listed(["a", "b"], 2) == "a, b"
    assert listed(["a", "b", "c"], 2) == "a, b and 1 more"
    assert listed([], 2) == ""
    long = listed(["x" * 998] * 40, 2000)
    assert len(long) < 32_767
    assert long.endswith(" and 8 more")
