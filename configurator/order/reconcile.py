"""The proof that an order is whole: its lines add up to what the openings take, counted another way."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.order.lines import OrderLine
from configurator.order.studied import NotOrdered
from configurator.order.tally import Tally
from configurator.rules.wording import counted


@dataclass(frozen=True, slots=True)
class Reconciliation:
    """Hinges by lines and by openings, spare ones apart; `differing` names every mark that does not agree.

    `by_openings` is openings x hinges of one opening, all leaves, over all marks; `left_out` of these are
    not ordered. `openings` are the openings served, `not_counted` those that have no number of hinges at all.
    """

    by_lines: int
    by_openings: int
    left_out: int
    spare: int
    openings: int
    not_counted: int
    differing: tuple[str, ...]

    @property
    def agrees(self) -> bool:
        """Whether the sum over the lines is the sum over the openings, mark by mark."""
        return not self.differing and self.by_lines == self.by_openings - self.left_out

    def words(self) -> str:
        """Say both sums, as a person checks them."""
        less = f", less {self.left_out} not ordered" if self.left_out else ""
        over = f"; and {self.spare} spare" if self.spare else ""
        verdict = (
            "they agree" if self.agrees else f"THEY DIFFER at {', '.join(self.differing) or 'no one mark'}"
        )
        openings = counted(self.openings, "opening takes", "openings take")
        return (
            f"The lines add up to {counted(self.by_lines, 'hinge', 'hinges')}; {openings} "
            f"{self.by_openings}{less}: {verdict}{over}."
        )

    def as_data(self) -> dict[str, Any]:
        """Return it as results are written."""
        return {
            "by_lines": self.by_lines,
            "by_openings": self.by_openings,
            "left_out": self.left_out,
            "spare": self.spare,
            "openings": self.openings,
            "openings_not_counted": self.not_counted,
            "agrees": self.agrees,
            "differing": list(self.differing),
            "message": self.words(),
        }


def reconcile(
    lines: Sequence[OrderLine], tallies: Iterable[Tally], left_out: Sequence[NotOrdered]
) -> Reconciliation:
    """Count hinges by lines and by openings, and say where the two differ.

    The openings' side takes each opening's own number of hinges and its quantity; it knows no lines.
    """
    hung = [one for one in tallies if one.hinges]
    served = {one.mark: one.hinges * one.opening.quantity for one in hung}
    missing = Counter({one.mark: 0 for one in left_out})
    for one in left_out:
        missing[one.mark] += one.hinges or 0
    found: Counter[str] = Counter()
    for line in lines:
        found.update(line.by_mark)
    marks = dict.fromkeys([*served, *found])
    return Reconciliation(
        by_lines=sum(line.needed for line in lines),
        by_openings=sum(served.values()),
        left_out=sum(missing.values()),
        spare=sum(line.spare for line in lines),
        openings=sum(one.opening.quantity for one in hung),
        not_counted=sum(one.quantity for one in left_out if not one.hinges),
        differing=tuple(mark for mark in marks if found[mark] != served.get(mark, 0) - missing[mark]),
    )
