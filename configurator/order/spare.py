"""Hinges ordered over what the openings take, in case some are lost or spoiled."""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil

from configurator.rules.wording import counted

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
        said = []
        if self.percent:
            said.append(f"{self._percent} of each line, rounded up")
        if self.each:
            said.append(f"{counted(self.each, 'hinge', 'hinges')} a line")
        return " and ".join(said)


NO_SPARE = Spare()


def parse_spare(text: str) -> Spare:
    """Read an allowance as a person writes it: `5%`, `2.5 %`, or `2` hinges a line. Raises ValueError."""
    written = _WRITTEN.fullmatch(text.strip())
    if written is None or (not written[2] and "." in written[1]):
        raise ValueError(f"a spare allowance is written as 5% or as 2 hinges a line; {text[:40]!r} was given")
    if written[2]:
        return Spare(percent=Fraction(written[1]))
    return Spare(each=int(written[1]))
