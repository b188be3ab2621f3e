"""Order lines: a line for each product, counted, with the marks it serves, and the spare ones."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Any

from configurator.order.tally import Tally
from configurator.rules.finding import Finding
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge_items import HingeItem, sort_key
from configurator.rules.wording import counted

UNIT = "each"
MOST_PERCENT = 100
MOST_EACH = 10_000
_WRITTEN = re.compile(r"([0-9]{1,6}(?:\.[0-9]{1,6})?)\s*(%?)")


@dataclass(frozen=True, slots=True)
class Spare:
    """An allowance for each line: per cent of its hinges, or a number; rounded up to whole hinges.

    Raises ValueError where it is less than nothing, or more than 100 per cent or 10,000 hinges a line.
    """

    percent: Fraction = Fraction(0)
    each: int = 0

    def __post_init__(self) -> None:
        if not 0 <= self.percent <= MOST_PERCENT or not 0 <= self.each <= MOST_EACH:
            raise ValueError(f"a spare allowance is up to {MOST_PERCENT}% or {MOST_EACH:,} hinges a line")

    def of(self, hinges: int) -> int:
        """Return the hinges to add to a line of that many."""
        return ceil(hinges * self.percent / 100) + self.each if hinges else 0

    @property
    def _percent(self) -> str:
        plain = Decimal(self.percent.numerator) / Decimal(self.percent.denominator)
        return f"{plain.normalize():f}%"

    def written(self) -> str:
        """Return the rule as `parse_spare` reads it; empty where there is none, or a rule of both kinds."""
        if self.percent and not self.each:
            return self._percent
        return str(self.each) if self.each and not self.percent else ""

    def words(self) -> str:
        """Say the rule, as `5% of each line, rounded up`; empty where there is none."""
        rules = []
        if self.percent:
            rules.append(f"{self._percent} of each line, rounded up")
        if self.each:
            rules.append(f"{counted(self.each, 'hinge', 'hinges')} a line")
        return " and ".join(rules)


NO_SPARE = Spare()


def parse_spare(text: str) -> Spare:
    """Read an allowance as a person writes it: `5%`, `2.5 %`, or `2` hinges a line. Raises ValueError."""
    written = _WRITTEN.fullmatch(text.strip())
    if written is None or (not written[2] and "." in written[1]):
        raise ValueError(f"a spare allowance is written as 5% or as 2 hinges a line; {text[:40]!r} was given")
    if written[2]:
        return Spare(percent=Fraction(written[1]))
    return Spare(each=int(written[1]))


Marks = Mapping[str, int]
"""Hinges by mark, all openings of the mark together."""


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One product of an order: `needed` hinges for the openings and `spare` over them, all counted each.

    `hinge` is the product; `parts` are its hinges as the openings take them, which may differ in the label
    of the door and in the screws, with how many each mark takes. `despite` has, of each mark, the errors
    that the user said to order it in spite of; `served` are the marks in the order of the job.
    """

    number: int
    hinge: HingeItem
    parts: Mapping[HingeItem, Marks]
    spare: int
    despite: Mapping[str, tuple[Finding, ...]] = field(default_factory=dict)
    served: tuple[str, ...] = ()

    @property
    def by_mark(self) -> dict[str, int]:
        """How many of the needed hinges each mark takes, in the order of the job."""
        found = _added(self.parts.values())
        return {mark: found[mark] for mark in dict.fromkeys((*self.served, *found)) if mark in found}

    @property
    def needed(self) -> int:
        """Hinges that the openings take."""
        return sum(sum(marks.values()) for marks in self.parts.values())

    @property
    def quantity(self) -> int:
        """Hinges to order."""
        return self.needed + self.spare

    @property
    def quantity_words(self) -> str:
        """The quantity in both ways of counting, as `120 hinges = 60 pair`."""
        return f"{counted(self.quantity, 'hinge', 'hinges')} = {pairs(self.quantity)}"

    @property
    def fire_marks(self) -> dict[str, int]:
        """Of the marks with labelled fire doors, how many hinges each takes."""
        return _added(marks for hinge, marks in self.parts.items() if hinge.fire)

    @property
    def screw_kinds(self) -> dict[str, int]:
        """How many of the needed hinges come with screws of which kinds, as {"machine and wood": 6}."""
        found: Counter[str] = Counter()
        for hinge, marks in self.parts.items():
            found[hinge.screw_kinds] += sum(marks.values())
        return dict(found)

    @property
    def screws(self) -> dict[str, int]:
        """Screws of each kind for the whole line; a part of a screw goes up.

        Spare hinges may go anywhere the line goes, so each has the most screws of a kind that any of it has.
        """
        found = {"machine": 0, "wood": 0}
        most = dict.fromkeys(found, Fraction(0))
        for hinge, marks in self.parts.items():
            for kind, each in hinge.screws:
                found[kind] += ceil(each * sum(marks.values()))
                most[kind] = max(most[kind], each)
        return {kind: count + ceil(most[kind] * self.spare) for kind, count in found.items()}

    def as_data(self) -> dict[str, Any]:
        """Return the line as the results contract names it; what was added to it comes at the end."""
        return {
            "quantity": self.quantity,
            "unit": UNIT,
            **self.hinge.as_data(),
            "fire": bool(self.fire_marks),
            "screws": self.screws,
            "marks": list(self.by_mark),
            "line": self.number,
            "pairs": pairs(self.quantity),
            "needed": self.needed,
            "spare": self.spare,
            "by_mark": self.by_mark,
            "fire_marks": self.fire_marks,
            "screw_kinds": self.screw_kinds,
            "sold_by": self.hinge.sold_by,
            "through_bolts": self.hinge.through_bolts,
            "clears_at": self.hinge.clears_at,
            "ordered_despite": {mark: [one.code for one in found] for mark, found in self.despite.items()},
        }


def order_lines(tallies: Iterable[Tally], spare: Spare = NO_SPARE) -> tuple[OrderLine, ...]:
    """Return the lines of many openings, in the order of their size and then of what distinguishes them."""
    products: dict[HingeItem, dict[HingeItem, dict[str, int]]] = {}
    accepted: dict[str, tuple[Finding, ...]] = {}
    served: dict[HingeItem, dict[str, None]] = {}
    for one in tallies:
        for item in one.ordered:
            marks = products.setdefault(item.hinge.product, {}).setdefault(item.hinge, {})
            marks[one.mark] = marks.get(one.mark, 0) + item.count * one.opening.quantity
            served.setdefault(item.hinge.product, {})[one.mark] = None
            if found := one.accepted:
                accepted[one.mark] = found
    return tuple(
        _line(OrderLine(number, product, products[product], 0, {}, tuple(served[product])), spare, accepted)
        for number, product in enumerate(sorted(products, key=sort_key), 1)
    )


def _line(line: OrderLine, spare: Spare, accepted: Mapping[str, tuple[Finding, ...]]) -> OrderLine:
    """Return the line with its spare hinges, and with what was accepted of its marks."""
    despite = {mark: accepted[mark] for mark in line.by_mark if mark in accepted}
    return replace(line, spare=spare.of(line.needed), despite=despite)


def _added(parts: Iterable[Marks]) -> dict[str, int]:
    found: Counter[str] = Counter()
    for marks in parts:
        found.update(marks)
    return dict(found)
