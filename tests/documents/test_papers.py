"""Every paper of an order by its kind, and what is missing where one cannot be made."""

from decimal import Decimal
from pathlib import Path

import pytest

from configurator.cli import order as order_command
from configurator.documents.papers import _PAPERS as PAPERS
from configurator.documents.papers import LABELS, Counted, NoPaperError, labels_of, paper_of
from configurator.documents.quote import quoted
from configurator.order.book import tally_job
from configurator.order.lines import parse_spare
from configurator.order.price_list import parse_prices
from configurator.order.prices import price_order
from configurator.order.take_off import take_off
from configurator.ui.order.writing import KINDS
from tests.order.cases import data, job_of

README = Path(__file__).resolve().parents[2] / "README.md"
PRICES = (
    b"part number,width,price,unit,currency,source\n"
    b"KP-4,4,3.00,each,coins,list of May\nKP-5,5,9.00,pair,coins,\n"
)


def counted(*openings, prices=PRICES, order=None, **facts):
    job = job_of(*openings, **facts)
    job = job.model_validate({**job.model_dump(exclude_unset=True), "order": order or {}})
    tallies = tally_job(job)
    made = take_off(tallies, job.job)
    priced = None if prices is None else price_order(made.lines, parse_prices(prices))
    return Counted(job, tallies, made, priced)


TABLES = {
    "order": ("Hinge order", "Lines"),
    "supplier": ("Hinge order", "Lines"),
    "quote": ("Quote", "Quote"),
    "cost": ("Quote", "Quote"),
    "receiving": ("Receiving list", "Receiving"),
    "doors": ("Door schedule", "Schedule"),
    "hardware": ("Hardware schedule", "Hardware by opening"),
    "submittal": ("Submittal", "Submittal"),
}
"""Every paper to its title and its first table."""
OF_NO_COUNT = {"changes": "of two revisions", "field": "to fill in on site"}
NOT_BY_AS = {"doors": "`schedule`", "hardware": "`schedule`", "submittal": "`order --submittal`"}
"""Papers that the command line writes otherwise than by `order --as`."""


def test_every_paper_is_tried_here_and_offered_by_window_command_line_and_readme():
    papers = {*PAPERS, *LABELS}
    assert set(PAPERS) == set(TABLES), "give it its title and first table in TABLES here"
    assert {kind for kind, _ in KINDS} == papers | set(OF_NO_COUNT), "KINDS of ui/order/writing.py"
    assert set(order_command.KINDS) == papers - set(NOT_BY_AS), "KINDS of cli/order.py, or NOT_BY_AS here"
    assert order_command.LABELS == LABELS
    readme = README.read_text("utf-8")
    assert [kind for kind in order_command.KINDS if kind != "order" and f"`{kind}`" not in readme] == []


@pytest.mark.parametrize(("kind", "title", "first"), [(kind, *told) for kind, told in TABLES.items()])
def test_every_paper_has_the_table_a_csv_takes_first(kind, title, first):
    document = paper_of(kind, counted(data("1"), name="Terminal", order={"margin": 25}))
    assert (document.title, document.data[0].title) == (title, first)
    assert document.heading == (("Job", "Terminal"),)


@pytest.mark.parametrize("kind", ["supplier", "quote"])
def test_what_goes_out_has_nothing_of_the_office(kind):
    document = paper_of(kind, counted(data("1"), data("2", hinge={"count": 2}), order={"margin": 25}))
    assert (document.office, document.office_notes) == ((), ())
    assert "cost" not in {column.key for table in document.workbook for column in table.columns}


def test_a_margin_is_the_part_of_the_price_that_is_not_cost():
    """3.00 each with 25 per cent is 4.00: 24.00 for six; 9.00 a pair is 12.00: 18.00 for three."""
    whole = counted(data("1", quantity=2), data("2", hinge={"width": 5}), order={"margin": 25})
    lines = quoted(whole.order, whole.priced, Decimal(25))
    assert [(str(one.cost.amount), str(one.price), str(one.amount)) for one in lines] == [
        ("18.00", "4.00", "24.00"), ("13.50", "12.00", "18.00"),
    ]  # fmt: skip
    document = paper_of("cost", whole)
    assert document.sheets[0].totals[0][-1] == Decimal("42.00")
    assert document.office[0].totals[0][-3:] == (Decimal("42.00"), Decimal("10.50"), None)


@pytest.mark.parametrize("margin", ["-1", "100"])
def test_a_margin_that_cannot_be_is_refused(margin):
    whole = counted(data("1"))
    with pytest.raises(ValueError, match="from 0 to less than 100"):
        quoted(whole.order, whole.priced, Decimal(margin))


def test_a_quote_says_what_it_leaves_out():
    whole = counted(
        data("1"), data("2", hinge={"width": 4.5}), data("3", hinge={"count": 2}), order={"margin": 0}
    )
    assert paper_of("quote", whole).notes == (
        "Without a price, and not in the sum: lines 2.",
        "Not in this quote: 3.",
    )


@pytest.mark.parametrize(
    ("prices", "order", "words"), [(None, {"margin": 25}, "a price list"), (PRICES, {}, "wants a margin")]
)
def test_a_quote_without_prices_or_margin_says_which(prices, order, words):
    with pytest.raises(NoPaperError, match=words):
        paper_of("quote", counted(data("1"), prices=prices, order=order))


def test_goods_are_received_by_product_with_room_to_write():
    (table, screws) = paper_of("receiving", counted(data("1", quantity=2), data("2"))).sheets
    (row,) = table.rows
    assert row[:3] == (1, "KP-4", "4-1/2 x 4")
    assert row[-5:] == (9, "", "", "", "1 x 6, 2 x 3")
    assert table.totals[0][-5] == 9
    assert screws.rows[0][3] == 72


def test_an_opening_has_a_label_for_each_that_is_alike():
    whole = counted(
        data("1", quantity=2, level="Level 2", location="Ticket hall"),
        data("2", use={"fire_rated": True}),
        data("3", hinge={"count": 2}),
        name="Terminal",
    )
    labels = labels_of("labels", whole)
    assert [(one.title, one.place, one.foot) for one in labels] == [
        ("1", "Level 2, Ticket hall", "Terminal; 1 of 2"),
        ("1", "Level 2, Ticket hall", "Terminal; 2 of 2"),
        ("2", "", "Terminal"),
    ]
    assert labels[0].lines[0] == "3 x 4-1/2 x 4, KP-4, line 1"
    assert labels[0].lines[2] == "screws: 24 machine"
    assert labels[2].lines[2] == "screws: 24 machine; for a labelled fire door"


def test_a_floor_has_a_label_for_each_product():
    whole = counted(
        data("1", quantity=2, level="Level 2"),
        data("2", level="Level 1"),
        data("3", level="Level 2", use={"fire_rated": True}),
        data("4", hinge={"width": 5}),
    )
    labels = labels_of("floor labels", whole)
    assert [(one.title, one.place, one.lines[0]) for one in labels] == [
        ("Level 2", "line 1", "9 x 4-1/2 x 4, KP-4, line 1"),
        ("Level 1", "line 1", "3 x 4-1/2 x 4, KP-4, line 1"),
        ("no level given", "line 2", "3 x 4-1/2 x 5, KP-5, line 2"),
    ]
    assert labels[0].lines[2] == "1 x 6, 3 x 3"


def test_no_such_paper_says_so():
    with pytest.raises(NoPaperError, match="no paper 'poster'"):
        paper_of("poster", counted(data("1")))


@pytest.mark.parametrize("kind", ["labels", "floor labels"])
def test_labels_and_order_come_to_the_same_hinges(kind):
    """Two openings of three hinges and 10% over them: six and one spare."""
    job = job_of(data("1", quantity=2, level="Level 2"))
    tallies = tally_job(job)
    whole = Counted(job, tallies, take_off(tallies, job.job, parse_spare("10%")))
    labels = labels_of(kind, whole)
    assert (labels[-1].title, labels[-1].lines[0]) == ("Spare", "1 x 4-1/2 x 4, line 1")
    assert sum(int(one.lines[0].split()[0]) for one in labels) == whole.order.hinges == 7
