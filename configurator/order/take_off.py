"""The take-off: a whole job's hinges as lines that can be ordered, and the proof that none is missing."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from math import ceil
from typing import Any

from configurator.model import JobFacts
from configurator.model.paths import when_left_out
from configurator.order.lines import NO_SPARE, OrderLine, Spare, order_lines
from configurator.order.order_findings import OrderFinding, by_severity, name_marks, order_findings
from configurator.order.other_ways import WayLine, way_lines
from configurator.order.reconcile import Reconciliation, reconcile
from configurator.order.studied import NotOrdered
from configurator.order.tally import Tally
from configurator.rules.hinge.fastening import screw_row
from configurator.rules.hinge.sizes import pairs


@dataclass(frozen=True, slots=True)
class ScrewTotal:
    """Screws of one kind, size and metal; `packs` is None where no pack size is known."""

    kind: str
    size: str
    metal: str
    count: int
    packs: int | None

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return asdict(self)


@dataclass(frozen=True, slots=True)
class TakeOff:
    """Everything an order is made from: lines, what is left out and why, the sums, and the cautions."""

    facts: JobFacts
    lines: tuple[OrderLine, ...]
    not_ordered: tuple[NotOrdered, ...]
    reconciliation: Reconciliation
    screws: tuple[ScrewTotal, ...]
    spare: Spare
    findings: tuple[OrderFinding, ...]
    other_ways: tuple[WayLine, ...] = ()
    """What hangs on no butts, on lines of its own."""

    @property
    def hinges(self) -> int:
        """Hinges of all lines, spare ones included."""
        return sum(line.quantity for line in self.lines)

    @property
    def width_policy(self) -> str:
        """Which hinge widths the job takes, also where nobody said."""
        return self.facts.width_policy or when_left_out("job.width_policy")

    @property
    def has_errors(self) -> bool:
        """Whether any finding is an error."""
        return any(one.finding.severity == "error" for one in self.findings)

    def errors(self) -> str:
        """Say what errors stand against the order, and what became of their openings; empty for none."""
        if not self.has_errors:
            return ""
        held = sorted({one.mark for one in self.not_ordered if one.why == "held"})
        accepted = sorted({mark for line in self.lines for mark in line.despite})
        words = (
            f"Held by an error, and not in this order: {name_marks(held)}." if held else "",
            f"Ordered in spite of an error: {name_marks(accepted)}." if accepted else "",
        )
        return " ".join(filter(None, words)) or "Errors stand against this order."

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
            "other_ways": [line.as_data() for line in self.other_ways],
            "findings": [one.as_data() for one in self.findings],
            "reconciliation": self.reconciliation.as_data(),
            "not_ordered": [one.as_data() for one in self.not_ordered],
            "totals": self.totals(),
            "width_policy": self.width_policy,
        }


def take_off(
    tallies: Sequence[Tally],
    facts: JobFacts | None = None,
    spare: Spare | None = None,
    screw_pack: int | None = None,
    also: Sequence[OrderFinding] = (),
) -> TakeOff:
    """Group the hinges of a job's openings into order lines.

    `also` are further findings to go with it, as of `uniform`, which takes longer than all the rest.
    Raises ValueError for a pack of less than one screw.
    """
    over = spare or NO_SPARE
    lines = order_lines(tallies, over)
    left_out = tuple(one for each in tallies for one in each.not_ordered)
    sums = reconcile(lines, tallies, left_out)
    findings = (*order_findings(tallies, lines, left_out, sums), *also)
    screws = screw_totals(lines, screw_pack)
    return TakeOff(
        facts or JobFacts(),
        lines,
        left_out,
        sums,
        screws,
        over,
        by_severity(findings),
        way_lines(tallies),
    )


def screw_totals(lines: Iterable[OrderLine], pack: int | None = None) -> tuple[ScrewTotal, ...]:
    """Return the screws of all lines by kind, usual size and metal; `pack` is how many come in one pack.

    Raises ValueError for a pack of less than one screw.
    """
    if pack is not None and pack < 1:
        raise ValueError(f"a pack holds at least 1 screw; {pack} was given")
    found: dict[tuple[str, str, str], int] = {}
    for line in lines:
        for kind, count in line.screws.items():
            if count:
                key = (kind, _size(kind, line.hinge.height), line.hinge.base_metal)
                found[key] = found.get(key, 0) + count
    return tuple(
        ScrewTotal(*key, count, None if pack is None else ceil(count / pack))
        for key, count in sorted(found.items())
    )


def _size(kind: str, height: float) -> str:
    row = screw_row(height)
    return row.machine if kind == "machine" else row.wood
