"""The take-off: a whole job's hinges as lines that can be ordered, and the proof that none is missing."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from configurator.model import JobFacts
from configurator.order.likeness import near_alike
from configurator.order.lines import OrderLine, order_lines
from configurator.order.not_ordered import NotOrdered
from configurator.order.reconcile import Reconciliation, reconcile
from configurator.order.saying import (
    Said,
    in_order,
    of_hands,
    of_left_out,
    of_openings,
    of_sums,
)
from configurator.order.screws import ScrewTotal, screw_totals
from configurator.order.spare import NO_SPARE, Spare
from configurator.order.tally import Tally
from configurator.rules.count import pairs


@dataclass(frozen=True, slots=True)
class TakeOff:
    """Everything an order is made from: lines, what is left out and why, the sums, and what to heed."""

    facts: JobFacts
    lines: tuple[OrderLine, ...]
    not_ordered: tuple[NotOrdered, ...]
    reconciliation: Reconciliation
    screws: tuple[ScrewTotal, ...]
    spare: Spare
    findings: tuple[Said, ...]

    @property
    def hinges(self) -> int:
        """Hinges of all lines, spare ones included."""
        return sum(line.quantity for line in self.lines)

    @property
    def has_errors(self) -> bool:
        """Whether anything that is said is an error."""
        return any(said.finding.severity == "error" for said in self.findings)

    def totals(self) -> dict[str, Any]:
        """Return the sums over all lines."""
        return {
            "hinges": self.hinges,
            "pairs": pairs(self.hinges),
            "spare": self.reconciliation.spare,
            "spare_rule": self.spare.words() or None,
            "screws": [total.as_data() for total in self.screws],
        }

    def as_data(self) -> dict[str, Any]:
        """Return the order as the results contract names it, and what was added to it."""
        return {
            "lines": [line.as_data() for line in self.lines],
            "findings": [said.as_data() for said in self.findings],
            "reconciliation": self.reconciliation.as_data(),
            "not_ordered": [one.as_data() for one in self.not_ordered],
            "totals": self.totals(),
        }


def take_off(
    tallies: Sequence[Tally],
    facts: JobFacts | None = None,
    spare: Spare | None = None,
    screw_pack: int | None = None,
    also: Sequence[Said] = (),
) -> TakeOff:
    """Group the hinges of a job's openings into order lines.

    `also` are further findings to go with it, as of `uniform`, which takes longer than all the rest.
    Raises ValueError for a pack of less than one screw.
    """
    over = spare or NO_SPARE
    lines = order_lines(tallies, over)
    left_out = tuple(one for each in tallies for one in each.left_out)
    sums = reconcile(lines, tallies, left_out)
    said = (*of_sums(sums), *of_left_out(left_out), *_said(tallies, lines), *also)
    screws = screw_totals(lines, screw_pack)
    return TakeOff(facts or JobFacts(), lines, left_out, sums, screws, over, in_order(said))


def _said(tallies: Sequence[Tally], lines: Sequence[OrderLine]) -> tuple[Said, ...]:
    return (*of_openings(tallies), *of_hands(tallies), *near_alike(lines))
