"""Order lines: hinges that are alike, counted, with the marks each line serves, and the spare ones."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Any

from configurator.order.tally import Tally
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge_items import HingeItem, sort_key
from configurator.rules.wording import counted

UNIT = "each"
MOST_PERCENT = 100
MOST_EACH = 10_000
_WRITTEN = re.compile(r"(\d{1,6}(?:\.\d{1,6})?)\s*(%?)")


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


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One line of an order: `needed` hinges for the openings and `spare` over them, all counted each.

    `by_mark` is how many of the needed ones each mark takes, all openings of that mark together.
    """

    number: int
    hinge: HingeItem
    needed: int
    spare: int
    by_mark: Mapping[str, int]

    @property
    def quantity(self) -> int:
        """Hinges to order."""
        return self.needed + self.spare

    @property
    def quantity_words(self) -> str:
        """The quantity in both ways of counting, as `120 hinges = 60 pair`."""
        return f"{counted(self.quantity, 'hinge', 'hinges')} = {pairs(self.quantity)}"

    @property
    def screws(self) -> dict[str, int]:
        """Screws of each kind for the whole line, spare hinges included; a part of a screw goes up."""
        found = {"machine": 0, "wood": 0}
        for kind, each in self.hinge.screws:
            found[kind] = ceil(each * self.quantity)
        return found

    def as_data(self) -> dict[str, Any]:
        """Return the line as the results contract names it; what was added to it comes at the end."""
        return {
            "quantity": self.quantity,
            "unit": UNIT,
            **self.hinge.as_data(),
            "screws": self.screws,
            "marks": list(self.by_mark),
            "line": self.number,
            "pairs": pairs(self.quantity),
            "needed": self.needed,
            "spare": self.spare,
            "by_mark": dict(self.by_mark),
        }


def order_lines(tallies: Iterable[Tally], spare: Spare = NO_SPARE) -> tuple[OrderLine, ...]:
    """Return the lines of many openings, in the order of their size and then of what distinguishes them."""
    grouped: dict[HingeItem, dict[str, int]] = {}
    for one in tallies:
        for item in one.items:
            by_mark = grouped.setdefault(item.hinge, {})
            by_mark[one.mark] = by_mark.get(one.mark, 0) + item.count * one.opening.quantity
    return tuple(
        _line(number, hinge, grouped[hinge], spare)
        for number, hinge in enumerate(sorted(grouped, key=sort_key), 1)
    )


def _line(number: int, hinge: HingeItem, by_mark: Mapping[str, int], spare: Spare) -> OrderLine:
    needed = sum(by_mark.values())
    return OrderLine(number, hinge, needed, spare.of(needed), by_mark)
