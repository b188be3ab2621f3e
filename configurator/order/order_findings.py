"""Findings of an order, each with the marks it is about: what stands against it, and what to heed."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.model import Opening
from configurator.order.lines import OrderLine
from configurator.order.reconcile import Reconciliation
from configurator.order.studied import NotOrdered
from configurator.order.tally import Tally
from configurator.rules.finding import SEVERITIES, Finding, finding
from configurator.tables import practice

MOST_NAMED = 6
ABOUT_THE_ORDER = frozenset(
    {
        "changed since the order",
        "electric hinge idle",
        "electric hinge leaf",
        "electric hinge place",
        "finish differs from the lock",
        "hinge size swapped",
        "hinges by leaf",
        "pairs for hinges",
        "preparation differs",
        "screws do not hold",
        "template check",
        "too few hinges",
        "type disagrees",
        "type not checked",
    }
)
"""Codes of an opening's warnings and notes that are repeated beside the order; errors always are."""
_NAME_THEIR_MARKS = frozenset({"one width would do", "widths differ", "lines differ"})


@dataclass(frozen=True, slots=True)
class OrderFinding:
    """A finding and the marks it is about; `accepted` are those ordered in spite of it."""

    finding: Finding
    marks: tuple[str, ...]
    accepted: tuple[str, ...] = ()

    def as_data(self) -> dict[str, Any]:
        """Return the finding as the results contract names it, with its marks."""
        return {**self.finding.as_data(), "marks": list(self.marks), "accepted": list(self.accepted)}

    @property
    def words(self) -> str:
        """The sentence, after the marks it is about where the sentence itself does not name them."""
        alone = self.finding.code in _NAME_THEIR_MARKS or not self.marks
        return self.finding.message if alone else f"{name_marks(self.marks)}: {self.finding.message}"


def name_marks(marks: Sequence[str]) -> str:
    """Name a few marks, and say how many more there are."""
    more = len(marks) - MOST_NAMED
    return ", ".join(marks[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def by_severity(findings: Iterable[OrderFinding]) -> tuple[OrderFinding, ...]:
    """Return the findings, errors first."""
    return tuple(sorted(findings, key=lambda one: SEVERITIES.index(one.finding.severity)))


def order_findings(
    tallies: Sequence[Tally], lines: Sequence[OrderLine], left_out: Sequence[NotOrdered], sums: Reconciliation
) -> tuple[OrderFinding, ...]:
    """Return the findings of an order, in the order in which they are found."""
    return (
        *sum_findings(sums),
        *left_out_findings(left_out),
        *opening_findings(tallies),
        *sold_by_height(lines),
    )


def sum_findings(sums: Reconciliation) -> tuple[OrderFinding, ...]:
    """Return an error where the lines do not add up to what the openings take."""
    if sums.agrees:
        return ()
    message = f"{sums.words()} Do not order before this is settled."
    return (OrderFinding(finding("lines differ", "error", message, practice("order_sums")), sums.differing),)


def left_out_findings(left_out: Iterable[NotOrdered]) -> tuple[OrderFinding, ...]:
    """Return an error for each opening that could not be studied: its hinges are in no line."""
    return tuple(OrderFinding(_not_studied(one), (one.mark,)) for one in left_out if one.why == "not studied")


def opening_findings(tallies: Iterable[Tally]) -> tuple[OrderFinding, ...]:
    """Return what stands against the openings of an order, each sentence once with all its marks."""
    found: dict[tuple[str, str], tuple[Finding, list[Opening]]] = {}
    for one in tallies:
        for each in one.findings:
            if each.severity == "error" or each.code in ABOUT_THE_ORDER:
                found.setdefault((each.code, each.message), (each, []))[1].append(one.opening)
    return tuple(_of_openings(each, openings) for each, openings in found.values())


def _of_openings(one: Finding, openings: Sequence[Opening]) -> OrderFinding:
    accepted = [each.mark for each in openings if one.severity == "error" and one.code in each.order_despite]
    return OrderFinding(one, tuple(each.mark for each in openings), tuple(accepted))


def sold_by_height(lines: Iterable[OrderLine]) -> tuple[OrderFinding, ...]:
    """Return a note on lines whose hinges are sold by height, so that nobody orders them by width."""
    of_height = [line for line in lines if line.hinge.sold_by == "height"]
    if not of_height:
        return ()
    numbers = ", ".join(str(line.number) for line in of_height)
    message = (
        f"Surface and swing clear hinges are sold by height, here on {_lines(len(of_height))} {numbers}. "
        "Give the hand where they are handed, ask for through-bolts on surface leaves, check the template."
    )
    marks = tuple(dict.fromkeys(mark for line in of_height for mark in line.by_mark))
    return (OrderFinding(finding("sold by height", "note", message, practice("sold_by_height")), marks),)


def _lines(count: int) -> str:
    return "line" if count == 1 else "lines"


def _not_studied(one: NotOrdered) -> Finding:
    message = (
        "This opening could not be worked out, and nothing is ordered for it. Give or change what stands in "
        f"its way: {one.words}"
    )
    return finding("not studied", "error", message, practice("not_studied"))
