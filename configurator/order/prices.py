"""An order with prices: each line by the most particular row of the user's list, in exact decimals."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from decimal import ROUND_HALF_UP, Decimal
from math import ceil
from typing import Any

from configurator.model.faults import Fault
from configurator.order.lines import OrderLine
from configurator.order.other_ways import ITEMS, WayItem, WayLine
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


def way_worth(line: WayLine, unit: str, price: Decimal) -> Decimal:
    """Return what a line of what is no butt comes to at a price, by the foot of its length or each."""
    feet = Decimal(str(line.what.length or 0.0)) / 12 if unit == "foot" else Decimal(1)
    return (line.quantity * feet * price).quantize(CENT, ROUND_HALF_UP)


NO_PRICE = dict.fromkeys(LinePrice(0, CENT, "each", CENT, 0).as_data())
"""The added keys of a line that has no price."""


@dataclass(frozen=True, slots=True)
class Priced:
    """Prices of an order by its line numbers; `unpriced` are the lines that no row fits.

    `by_way` are those of what is no butt by its place in the order, from 1; `ways_unpriced` names the rest.
    `passed_over` says which columns of the list were not read.
    """

    currency: str
    by_line: dict[int, LinePrice]
    unpriced: tuple[int, ...]
    passed_over: str = ""
    by_way: Mapping[int, LinePrice] = field(default_factory=dict)
    ways_unpriced: tuple[str, ...] = ()

    @property
    def has_part_numbers(self) -> bool:
        """Whether any line has a part number."""
        return any(one.part_number for one in self.by_line.values())

    @property
    def total(self) -> Decimal:
        """The sum of the amounts of all lines of hinges that have a price."""
        return sum((one.amount for one in self.by_line.values()), Decimal("0.00"))

    @property
    def ways_total(self) -> Decimal:
        """The sum of the amounts of what is no butt, as far as it has a price."""
        return sum((one.amount for one in self.by_way.values()), Decimal("0.00"))

    def words(self) -> str:
        """Say the total, and which lines are not in it; then that of what is no butt."""
        return self._of_hinges() + self._of_ways()

    def _of_ways(self) -> str:
        if not self.by_way and not self.ways_unpriced:
            return ""
        currency = f" {self.currency}" if self.currency else ""
        missing = f", without {', '.join(self.ways_unpriced)}" if self.ways_unpriced else ""
        return f" Of what is no butt, besides:{currency} {self.ways_total:,}{missing}."

    def _of_hinges(self) -> str:
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
            "other_ways_amount": str(self.ways_total),
            "other_ways_without_a_price": list(self.ways_unpriced),
            "price_list": self.passed_over or None,
        }


def price_order(lines: Iterable[OrderLine], prices: PriceList, ways: Iterable[WayLine] = ()) -> Priced:
    """Price every line by the row that asks most of it; `ways` are those of what is no butt.

    Raises PriceListError, naming both rows, where two rows that ask equally much fit the same line.
    """
    by_line: dict[int, LinePrice] = {}
    by_way: dict[int, LinePrice] = {}
    unpriced: list[int] = []
    without: list[str] = []
    faults: list[Fault] = []
    for line in lines:
        fitting = _most_particular(row for row in prices.rows if row.fits(line.hinge))
        if len(fitting) > 1:
            faults.append(_tie(f"line {line.number} ({line.hinge.size})", fitting))
        elif fitting:
            by_line[line.number] = _priced(line, fitting[0])
        else:
            unpriced.append(line.number)
    for place, way in enumerate(ways, start=1):
        fitting = _most_particular(row for row in prices.rows if fits_way(row, way.what))
        if len(fitting) > 1:
            faults.append(_tie(f"line of the {way.what.item}", fitting))
        elif fitting:
            by_way[place] = _priced_way(place, way, fitting[0])
        else:
            without.append(way.what.item)
    if faults:
        raise PriceListError(faults)
    missing = tuple(dict.fromkeys(without))
    return Priced(prices.currency, by_line, tuple(unpriced), prices.words(), by_way, missing)


def fits_way(row: PriceRow, what: WayItem) -> bool:
    """Say whether a thing that is no butt is all that a row asks: it names the item, and little else."""
    item, unit = str(row.asks.get("item", "")), row.unit
    sold_so = {"foot": what.length is not None, "set": what.unit == "set", "each": True, "pair": False}[unit]
    return (
        item in ITEMS
        and what.item.startswith(item)
        and sold_so
        and all(_says(what, column, value) for column, value in row.asks.items() if column != "item")
    )


def _says(what: WayItem, column: str, value: object) -> bool:
    known = {"finish_bhma": what.finish_bhma, "hand": what.hand}.get(column)
    return known is not None and str(value).casefold() == known.casefold()


def _most_particular(rows: Iterable[PriceRow]) -> list[PriceRow]:
    fitting = list(rows)
    most = max((len(row.asks) for row in fitting), default=0)
    return [row for row in fitting if len(row.asks) == most]


def _priced_way(place: int, way: WayLine, row: PriceRow) -> LinePrice:
    amount = way_worth(way, row.unit, row.price)
    packs = None if row.pack is None else ceil(way.quantity / row.pack)
    named = (row.part_number, row.description, row.pack, packs, row.source)
    return LinePrice(place, row.price, row.unit, amount, row.line, *named)


def _priced(line: OrderLine, row: PriceRow) -> LinePrice:
    packs = None if row.pack is None else ceil(line.quantity / row.pack)
    named = (row.part_number, row.description, row.pack, packs, row.source)
    made = LinePrice(line.number, row.price, row.unit, Decimal(0), row.line, *named)
    return replace(made, amount=made.worth(line.quantity, row.price))


def _tie(line: str, rows: list[PriceRow]) -> Fault:
    places = " and ".join(str(row.line) for row in rows)
    return Fault(
        f"lines {places}",
        f"they fit the order's {line} equally well; give one of them a further column, or take one out",
    )
