"""A quote of an order: the price, and for the office the cost and the margin; the list goods come in by."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from configurator.documents.document import MOST_ON_PAPER, Column, Document, Table, heading_of
from configurator.documents.line_words import detail_words, hinge_words, marks_words, metal_words
from configurator.documents.order import order_head
from configurator.model import OrderFacts
from configurator.order.lines import OrderLine
from configurator.order.prices import CENT, LinePrice, Priced, way_worth
from configurator.order.take_off import TakeOff
from configurator.rules.hinge.sizes import pairs

HUNDRED = Decimal(100)


@dataclass(frozen=True, slots=True)
class Quoted:
    """One line of a quote: what it costs, and the price for the same unit with the margin in it."""

    line: OrderLine
    cost: LinePrice
    price: Decimal

    @property
    def amount(self) -> Decimal:
        """What the customer pays for the line."""
        return self.cost.worth(self.line.quantity, self.price)

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written; money is text."""
        return {
            "line": self.line.number,
            "quantity": self.line.quantity,
            "cost": str(self.cost.amount),
            "price": str(self.price),
            "price_unit": self.cost.unit,
            "amount": str(self.amount),
            "margin": str(self.amount - self.cost.amount),
        }


def at_margin(cost: Decimal, margin: Decimal) -> Decimal:
    """Return the price that leaves a margin in per cent of itself over a cost, rounded to the hundredth."""
    return (cost * HUNDRED / (HUNDRED - margin)).quantize(CENT, ROUND_HALF_UP)


def quoted(order: TakeOff, priced: Priced, margin: Decimal) -> tuple[Quoted, ...]:
    """Return the lines that have a cost, each with its price.

    `margin` is the part of a price that is not cost, per cent: 25 makes 4.00 of a cost of 3.00. A price is
    rounded to the hundredth. Raises ValueError for less than 0 or for 100 and more.
    """
    if not 0 <= margin < HUNDRED:
        raise ValueError(f"a margin is from 0 to less than 100 per cent; {margin} was given")
    return tuple(
        Quoted(line, cost, at_margin(cost.price, margin))
        for line in order.lines
        if (cost := priced.by_line.get(line.number)) is not None
    )


def quote_document(
    order: TakeOff, priced: Priced, margin: Decimal, head: OrderFacts | None = None
) -> Document:
    """Return the quote laid out; cost and margin are for the office. Raises ValueError as `quoted` does."""
    lines = quoted(order, priced, margin)
    ways = _ways_for_customer(order, priced, margin)
    of_ways = (ways,) if ways.rows else ()
    sheet, office = _for_customer(lines, priced.currency), _for_office(lines, priced.currency, margin)
    facts = head or OrderFacts()
    shown = {"Ship to", "Order date", "Required"}
    return Document(
        "Quote",
        heading_of(order.facts),
        data=(sheet, *of_ways),
        sheets=(sheet, *of_ways),
        notes=tuple(_notes(order, priced)),
        head=tuple(one for one in order_head(facts) if one[0] in shown),
        office=(office,),
    )


def _notes(order: TakeOff, priced: Priced) -> Iterator[str]:
    if priced.unpriced:
        yield f"Without a price, and not in the sum: lines {', '.join(map(str, priced.unpriced))}."
    if priced.ways_unpriced:
        yield f"Without a price, and not in the sum: {', '.join(priced.ways_unpriced)}."
    if order.not_ordered:
        marks = ", ".join(dict.fromkeys(one.mark for one in order.not_ordered))
        yield f"Not in this quote: {marks}."


def _money(title: str, currency: str) -> str:
    return f"{title}, {currency}" if currency else title


def _for_customer(lines: tuple[Quoted, ...], currency: str) -> Table:
    columns = (
        Column("line", "line", "count", 3),
        Column("part_number", "part number", "text", 10),
        Column("quantity", "quantity, each", "count", 5),
        Column("pairs", "pairs", "text", 9),
        Column("size", "size, height x width", "text", 11),
        Column("words", "hinge", "text", 60),
        Column("price", _money("price", currency), "money", 7),
        Column("price_unit", "price is for", "text", 4),
        Column("amount", _money("amount", currency), "money", 9),
    )
    rows = tuple(
        (
            *(one.line.number, one.cost.part_number, one.line.quantity, pairs(one.line.quantity)),
            *(one.line.hinge.size, _words(one.line), one.price, one.cost.unit, one.amount),
        )
        for one in lines
    )
    total = sum((one.amount for one in lines), Decimal("0.00"))
    hinges = sum(one.line.quantity for one in lines)
    in_all = (None, None, hinges, pairs(hinges), "in all", None, None, None, total)
    return Table("Quote", columns, rows, (in_all,)).without_empty({"part_number"})


def _ways_for_customer(order: TakeOff, priced: Priced, margin: Decimal) -> Table:
    """Return what is no butt with its price at the margin; no rows where none of it has a cost."""
    currency = priced.currency
    columns = (
        Column("quantity", "quantity", "text", 8),
        Column("description", "hung another way", "text", 60),
        Column("price", _money("price", currency), "money", 8),
        Column("price_unit", "price is for", "text", 6),
        Column("amount", _money("amount", currency), "money", 9),
    )
    rows = []
    for place, way in enumerate(order.other_ways, start=1):
        if (cost := priced.by_way.get(place)) is not None:
            price = at_margin(cost.price, margin)
            worth = way_worth(way, cost.unit, price)
            rows.append((way.quantity_words, way.what.words, price, cost.unit, worth))
    total = sum((row[-1] for row in rows), Decimal("0.00"))
    return Table("Hung another way", columns, tuple(rows), ((None, "in all", None, None, total),))


def _words(line: OrderLine) -> str:
    return f"{hinge_words(line.hinge)}; {metal_words(line.hinge)}; {detail_words(line.hinge)}"


def _for_office(lines: tuple[Quoted, ...], currency: str, margin: Decimal) -> Table:
    columns = (
        Column("line", "line", "count", 4),
        Column("quantity", "quantity, each", "count", 6),
        Column("unit", "for", "text", 5),
        Column("unit_cost", _money("cost", currency), "money", 8),
        Column("cost", _money("cost of the line", currency), "money", 9),
        Column("percent", "margin, per cent", "money", 7),
        Column("price", _money("price", currency), "money", 8),
        Column("amount", _money("amount", currency), "money", 9),
        Column("margin", _money("margin", currency), "money", 9),
        Column("source", "source of price", "text", 16),
    )
    rows = tuple(
        (
            *(one.line.number, one.line.quantity, one.cost.unit, one.cost.price, one.cost.amount, margin),
            *(one.price, one.amount, one.amount - one.cost.amount, one.cost.source or None),
        )
        for one in lines
    )
    cost = sum((one.cost.amount for one in lines), Decimal("0.00"))
    amount = sum((one.amount for one in lines), Decimal("0.00"))
    in_all = (None, None, "in all", None, cost, None, None, amount, amount - cost, None)
    return Table("Cost and margin", columns, rows, (in_all,))


# --- What comes in ---


def receiving_document(
    order: TakeOff, priced: Priced | None = None, head: OrderFacts | None = None
) -> Document:
    """Return the list goods are checked by as they come in: a line for each product, to be filled in."""
    columns = (
        Column("line", "line", "count", 3),
        Column("part_number", "part number", "text", 10),
        Column("size", "size, height x width", "text", 10),
        Column("words", "hinge", "text", 50),
        Column("packs", "packs", "count", 4),
        Column("ordered", "ordered, each", "count", 6),
        Column("received", "received", "text", 8),
        Column("still", "still to come", "text", 8),
        Column("checked", "date, by whom", "text", 12),
        Column("marks", "marks x hinges", "text", 40, under=True),
    )
    prices = priced.by_line if priced is not None else {}
    rows = tuple(_received(line, prices.get(line.number)) for line in order.lines)
    in_all = (None, None, "in all", None, None, order.hinges, None, None, None, None)
    table = Table("Receiving", columns, rows, (in_all,)).without_empty({"part_number", "packs"})
    screws = tuple((one.kind, one.size, one.metal, one.count, None) for one in order.screws)
    of_screws = Table("Screws", _SCREWS, screws)
    heading, tables = heading_of(order.facts), (table, *((of_screws,) if screws else ()))
    return Document("Receiving list", heading, tables, tables, (), head=order_head(head or OrderFacts()))


_SCREWS = (
    Column("kind", "kind of screw", "text", 12),
    Column("size", "usual size", "text", 30),
    Column("metal", "metal", "text", 10),
    Column("ordered", "ordered", "count", 8),
    Column("received", "received", "text", 12),
)


def _received(line: OrderLine, price: LinePrice | None) -> tuple[Any, ...]:
    part, packs = (price.part_number, price.packs) if price is not None else ("", None)
    blank = ("", "", "")
    marks = marks_words(line, MOST_ON_PAPER)
    return (line.number, part, line.hinge.size, _words(line), packs, line.quantity, *blank, marks)
