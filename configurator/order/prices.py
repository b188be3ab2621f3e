"""An order with prices: each line by the most particular row of the user's list, in exact decimals."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from math import ceil
from typing import Any

from configurator.model.faults import Fault
from configurator.order.lines import OrderLine
from configurator.order.price_list import PriceList, PriceListError, PriceRow
from configurator.rules.wording import counted

CENT = Decimal("0.01")


@dataclass(frozen=True, slots=True)
class LinePrice:
    """What one order line costs: the row's price for its unit, and the amount, rounded to the hundredth.

    `row` is the line of the price list it comes from; `packs` are whole boxes, None where nobody said how
    many come in one.
    """

    line: int
    price: Decimal
    unit: str
    amount: Decimal
    row: int
    part_number: str = ""
    description: str = ""
    pack: int | None = None
    packs: int | None = None
    source: str = ""

    def as_data(self) -> dict[str, Any]:
        """Return the added keys of an order line; money is text, so that no cent is lost on the way."""
        return {
            "price": str(self.price),
            "price_unit": self.unit,
            "amount": str(self.amount),
            "part_number": self.part_number or None,
            "description": self.description or None,
            "pack": self.pack,
            "packs": self.packs,
            "price_source": self.source or None,
        }

    def worth(self, hinges: int, price: Decimal) -> Decimal:
        """Return what so many hinges come to at a price for the same unit, rounded to the hundredth."""
        units = Decimal(hinges) / 2 if self.unit == "pair" else Decimal(hinges)
        return (units * price).quantize(CENT, ROUND_HALF_UP)


NO_PRICE = dict.fromkeys(LinePrice(0, CENT, "each", CENT, 0).as_data())
"""The added keys of a line that has no price."""


@dataclass(frozen=True, slots=True)
class Priced:
    """Prices of an order by its line numbers; `unpriced` are the lines that no row fits.

    `passed_over` says which columns of the list were not read.
    """

    currency: str
    by_line: dict[int, LinePrice]
    unpriced: tuple[int, ...]
    passed_over: str = ""

    @property
    def has_part_numbers(self) -> bool:
        """Whether any line has a part number."""
        return any(one.part_number for one in self.by_line.values())

    @property
    def total(self) -> Decimal:
        """The sum of the amounts of all lines that have a price."""
        return sum((one.amount for one in self.by_line.values()), Decimal("0.00"))

    def words(self) -> str:
        """Say the total, and which lines are not in it."""
        currency = f" {self.currency}" if self.currency else ""
        total = f"Total{currency} {self.total:,}"
        if not self.unpriced:
            return f"{total}, every line priced."
        lines = ", ".join(map(str, self.unpriced))
        without = counted(len(self.unpriced), "line that has", "lines that have")
        return f"{total} without {without} no price: {lines}."

    def as_data(self) -> dict[str, Any]:
        """Return the totals as results are written."""
        return {
            "currency": self.currency or None,
            "amount": str(self.total),
            "lines_without_a_price": list(self.unpriced),
            "price_list": self.passed_over or None,
        }


def price_order(lines: Iterable[OrderLine], prices: PriceList) -> Priced:
    """Price every line by the row that asks most of it.

    Raises PriceListError, naming both rows, where two rows that ask equally much fit the same line.
    """
    by_line: dict[int, LinePrice] = {}
    unpriced: list[int] = []
    faults: list[Fault] = []
    for line in lines:
        fitting = _most_particular(line, prices)
        if len(fitting) > 1:
            faults.append(_tie(line, fitting))
        elif fitting:
            by_line[line.number] = _priced(line, fitting[0])
        else:
            unpriced.append(line.number)
    if faults:
        raise PriceListError(faults)
    return Priced(prices.currency, by_line, tuple(unpriced), prices.words())


def _most_particular(line: OrderLine, prices: PriceList) -> list[PriceRow]:
    fitting = [row for row in prices.rows if row.fits(line.hinge)]
    most = max((len(row.asks) for row in fitting), default=0)
    return [row for row in fitting if len(row.asks) == most]


def _priced(line: OrderLine, row: PriceRow) -> LinePrice:
    packs = None if row.pack is None else ceil(line.quantity / row.pack)
    named = (row.part_number, row.description, row.pack, packs, row.source)
    made = LinePrice(line.number, row.price, row.unit, Decimal(0), row.line, *named)
    return replace(made, amount=made.worth(line.quantity, row.price))


def _tie(line: OrderLine, rows: list[PriceRow]) -> Fault:
    places = " and ".join(str(row.line) for row in rows)
    return Fault(
        f"lines {places}",
        f"they fit the order's line {line.number} ({line.hinge.size}) equally well; give one of them a "
        "further column, or take one out",
    )
