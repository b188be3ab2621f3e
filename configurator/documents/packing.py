"""Labels for packing an order: one for every opening, or one for every product that goes to a floor."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from configurator.documents.document import headed_facts, listed
from configurator.documents.line_words import detail_words, metal_words
from configurator.model import Opening
from configurator.order.prices import Priced
from configurator.order.take_off import TakeOff
from configurator.order.tally import Tally
from configurator.rules.hinge.electric import carries
from configurator.rules.hinge_items import HingeItem, LeafItem, sold_words

NO_FLOOR = "no level given"
MOST_MARKS = 40
"""Marks on a label; the others are on the order."""


@dataclass(frozen=True, slots=True)
class Label:
    """One label: where it goes, what is in the box, line by line, and whose job it is."""

    title: str
    place: str
    lines: tuple[str, ...]
    foot: str


def opening_labels(
    tallies: Iterable[Tally], order: TakeOff, priced: Priced | None = None
) -> tuple[Label, ...]:
    """Return a label for every single opening that the order serves, as the job has them; then the spare."""
    goods, job = _Goods(order, priced), headed_facts(order.facts)
    return tuple(
        Label(one.mark, _place(one.opening), goods.of_opening(one.ordered), _foot(job, number, one.opening))
        for one in tallies
        if one.ordered
        for number in range(1, one.opening.quantity + 1)
    ) + _spare_labels(goods, order)


def floor_labels(tallies: Sequence[Tally], order: TakeOff, priced: Priced | None = None) -> tuple[Label, ...]:
    """Return a label for every product that goes to a floor, with its marks; floors as the job has them."""
    goods, job = _Goods(order, priced), headed_facts(order.facts)
    floors: dict[str, dict[HingeItem, dict[str, int]]] = {}
    for one in tallies:
        for item in one.ordered:
            marks = floors.setdefault(floor_of(one.opening), {}).setdefault(item.hinge.product, {})
            marks[one.mark] = marks.get(one.mark, 0) + item.count * one.opening.quantity
    return tuple(
        Label(floor, f"line {goods.line[product]}", (*goods.words(product, marks),), job)
        for floor, products in floors.items()
        for product, marks in sorted(products.items(), key=lambda each: goods.line[each[0]])
    ) + _spare_labels(goods, order)


def _spare_labels(goods: "_Goods", order: TakeOff) -> tuple[Label, ...]:
    """Return a label for the spare hinges of every line: labels and order come to the same hinges."""
    job = headed_facts(order.facts)
    return tuple(
        Label("Spare", f"line {line.number}", tuple(goods.words(line.hinge, {"spare": line.spare})), job)
        for line in order.lines
        if line.spare
    )


def floor_of(opening: Opening) -> str:
    """Return the floor an opening is on, as it is packed by."""
    return opening.level or NO_FLOOR


def _place(opening: Opening) -> str:
    return ", ".join(filter(None, (opening.level, opening.location)))


def _foot(job: str, number: int, opening: Opening) -> str:
    return job if opening.quantity == 1 else f"{job}; {number} of {opening.quantity}"


class _Goods:
    """The products of an order by line and part number, worded for a label."""

    def __init__(self, order: TakeOff, priced: Priced | None) -> None:
        self.line: Mapping[HingeItem, int] = {line.hinge: line.number for line in order.lines}
        prices = priced.by_line if priced is not None else {}
        self._part = {number: price.part_number for number, price in prices.items()}

    def of_opening(self, items: Iterable[LeafItem]) -> tuple[str, ...]:
        """Return the hinges of one opening, like ones together, with their screws."""
        counts: dict[HingeItem, int] = {}
        for item in items:
            counts[item.hinge] = counts.get(item.hinge, 0) + item.count
        return tuple(line for hinge, count in counts.items() for line in self._of_hinge(hinge, count))

    def _of_hinge(self, hinge: HingeItem, count: int) -> Iterator[str]:
        yield self._named(hinge.product, count)
        yield _words(hinge)
        screws = ", ".join(f"{-(-each * count // 1)} {kind}" for kind, each in hinge.screws)
        label = "for a labelled fire door" if hinge.fire else ""
        yield "; ".join(filter(None, (f"screws: {screws}" if screws else "", label)))

    def words(self, product: HingeItem, marks: Mapping[str, int]) -> Iterator[str]:
        """Yield how many of a product go somewhere, what it is, and to which marks."""
        yield self._named(product, sum(marks.values()))
        yield _words(product)
        yield listed([f"{mark} x {count}" for mark, count in marks.items()], MOST_MARKS)

    def _named(self, product: HingeItem, count: int) -> str:
        number = self.line[product]
        part = self._part.get(number) or ""
        wired = f"electric, {carries(product.wires)}, " if product.electric else ""
        return f"{count} x {wired}{product.size}{f', {part}' if part else ''}, line {number}"


def _words(hinge: HingeItem) -> str:
    hand = f"hand {hinge.hand}" if hinge.hand else ""
    facts = (hinge.type or "", metal_words(hinge), detail_words(hinge), hand, *sold_words(hinge))
    return ", ".join(filter(None, facts))
