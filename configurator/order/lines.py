"""Order lines: hinges that are alike, counted, with the marks each line serves."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil
from typing import Any

from configurator.order.spare import NO_SPARE, Spare
from configurator.order.tally import Tally
from configurator.rules.count import pairs
from configurator.rules.hinge_items import HingeItem, sort_key
from configurator.rules.wording import counted

UNIT = "each"


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
