"""What there is to say of an order: findings, each with the marks it is about."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from configurator.order.not_ordered import NotOrdered
from configurator.order.reconcile import Reconciliation
from configurator.order.tally import Tally
from configurator.rules.finding import SEVERITIES, Finding, finding
from configurator.rules.hinge_items import HANDED
from configurator.rules.wording import counted
from configurator.tables import practice

MOST_NAMED = 6
ABOUT_THE_ORDER = frozenset(
    {
        "changed since the order",
        "electric hinge leaf",
        "electric hinge place",
        "finish differs from the lock",
        "hinge size swapped",
        "hinges by leaf",
        "lines nearly alike",
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


@dataclass(frozen=True, slots=True)
class Said:
    """A finding and the marks it is about."""

    finding: Finding
    marks: tuple[str, ...]

    def as_data(self) -> dict[str, Any]:
        """Return the finding as the results contract names it, with its marks."""
        return {**self.finding.as_data(), "marks": list(self.marks)}

    @property
    def words(self) -> str:
        """The sentence, after the marks it is about where the sentence itself does not name them."""
        alone = self.finding.code in _NAME_THEIR_MARKS or not self.marks
        return self.finding.message if alone else f"{named(self.marks)}: {self.finding.message}"


_NAME_THEIR_MARKS = frozenset({"lines nearly alike", "one width would do", "widths differ", "lines differ"})


def named(marks: Sequence[str]) -> str:
    """Name a few marks, and say how many more there are."""
    more = len(marks) - MOST_NAMED
    return ", ".join(marks[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def of_openings(tallies: Iterable[Tally]) -> tuple[Said, ...]:
    """Return what stands against the openings of an order, each sentence once with all its marks."""
    found: dict[tuple[str, str], tuple[Finding, list[str]]] = {}
    for one in tallies:
        for said in one.findings:
            if said.severity == "error" or said.code in ABOUT_THE_ORDER:
                found.setdefault((said.code, said.message), (said, []))[1].append(one.mark)
    return tuple(Said(said, tuple(marks)) for said, marks in found.values())


def of_left_out(left_out: Iterable[NotOrdered]) -> tuple[Said, ...]:
    """Return an error for each opening that could not be studied: its hinges are in no line."""
    return tuple(Said(_not_studied(one), (one.mark,)) for one in left_out if one.why == "not studied")


def of_hands(tallies: Iterable[Tally]) -> tuple[Said, ...]:
    """Return a warning where handed hinges are ordered for openings whose hand nobody gave."""
    without = tuple(
        one.mark
        for one in tallies
        if one.opening.hand is None and any(item.hinge.mounting in HANDED for item in one.items)
    )
    if not without:
        return ()
    message = (
        f"{counted(len(without), 'opening takes', 'openings take')} handed hinges and no hand is given. "
        "Give the hand before ordering."
    )
    return (Said(finding("hand of the hinge", "error", message, practice("handed_hinge")), without),)


def of_sums(sums: Reconciliation) -> tuple[Said, ...]:
    """Return an error where the lines do not add up to what the openings take."""
    if sums.agrees:
        return ()
    message = f"{sums.words()} Do not order before this is settled."
    return (Said(finding("lines differ", "error", message, practice("order_sums")), sums.differing),)


def in_order(said: Iterable[Said]) -> tuple[Said, ...]:
    """Return what is said, errors first."""
    return tuple(sorted(said, key=lambda one: SEVERITIES.index(one.finding.severity)))


def _not_studied(one: NotOrdered) -> Finding:
    message = (
        "This opening could not be worked out, and nothing is ordered for it. Give or change what stands in "
        f"its way: {one.words}"
    )
    return finding("not studied", "error", message, practice("not_studied"))
