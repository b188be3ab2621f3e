"""Findings of an order, each with the marks it is about: what stands against it, and lines nearly alike."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Any

from configurator.order.lines import OrderLine
from configurator.order.reconcile import Reconciliation
from configurator.order.studied import NotOrdered
from configurator.order.tally import Tally
from configurator.rules.finding import SEVERITIES, Finding, finding
from configurator.rules.hinge_items import HANDED, HingeItem
from configurator.rules.wording import counted
from configurator.tables import practice
from configurator.units import format_size

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
_NAME_THEIR_MARKS = frozenset({"lines nearly alike", "one width would do", "widths differ", "lines differ"})
DIFFERENCES: Mapping[str, tuple[str, ...]] = {
    "mounting": ("mounting",),
    "weight": ("weight", "leaf_thickness", "type"),
    "bearing": ("bearing", "type"),
    "leaf thickness": ("leaf_thickness",),
    "type": ("type",),
    "knuckles": ("knuckles",),
    "alloy": ("alloy",),
    "finish": ("finish_bhma", "finish_us"),
    "pin": ("pin",),
    "security stud": ("security_stud",),
    "tip": ("tip",),
    "corner": ("corner",),
    "screws": ("screws",),
}
"""What a slip may be in, and the fields that follow from it; widths are for the uniform findings."""
_ALL = tuple(each.name for each in fields(HingeItem))


@dataclass(frozen=True, slots=True)
class OrderFinding:
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
        *hand_findings(tallies),
        *likeness_findings(lines),
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
    found: dict[tuple[str, str], tuple[Finding, list[str]]] = {}
    for one in tallies:
        for each in one.findings:
            if each.severity == "error" or each.code in ABOUT_THE_ORDER:
                found.setdefault((each.code, each.message), (each, []))[1].append(one.mark)
    return tuple(OrderFinding(each, tuple(marks)) for each, marks in found.values())


def hand_findings(tallies: Iterable[Tally]) -> tuple[OrderFinding, ...]:
    """Return an error where handed hinges are ordered for openings whose hand nobody gave."""
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
    return (OrderFinding(finding("hand of the hinge", "error", message, practice("handed_hinge")), without),)


def likeness_findings(lines: Sequence[OrderLine]) -> tuple[OrderFinding, ...]:
    """Return a note for every group of lines that differ in one thing only, naming what each has.

    A slip in one opening often makes a line of its own.
    """
    return tuple(one for name, keys in DIFFERENCES.items() for one in _differing_in(name, keys, lines))


def _not_studied(one: NotOrdered) -> Finding:
    message = (
        "This opening could not be worked out, and nothing is ordered for it. Give or change what stands in "
        f"its way: {one.words}"
    )
    return finding("not studied", "error", message, practice("not_studied"))


def _differing_in(name: str, keys: tuple[str, ...], lines: Sequence[OrderLine]) -> Iterator[OrderFinding]:
    others = tuple(key for key in _ALL if key not in keys)
    groups: dict[tuple[Any, ...], list[OrderLine]] = {}
    for line in lines:
        groups.setdefault(tuple(getattr(line.hinge, key) for key in others), []).append(line)
    for group in groups.values():
        if len({getattr(line.hinge, keys[0]) for line in group}) == len(group) > 1:
            yield _nearly_alike(name, keys[0], group)


def _nearly_alike(name: str, key: str, group: Sequence[OrderLine]) -> OrderFinding:
    numbers = " and ".join(str(line.number) for line in group)
    each = "; ".join(f"{_value(line, key)} for {name_marks(list(line.by_mark))}" for line in group)
    verb = "differ only in" if len(group) == 2 else "differ among them only in"
    message = f"Lines {numbers} {verb} {name}: {each}. Check that this is wanted, or make them one line."
    note = finding("lines nearly alike", "note", message, practice("lines_alike"), lines=len(group))
    return OrderFinding(note, tuple(mark for line in group for mark in line.by_mark))


def _value(line: OrderLine, key: str) -> str:
    if key == "screws":
        return line.hinge.screw_kinds
    value = getattr(line.hinge, key)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "none known" if value is None else format_size(value) if isinstance(value, float) else str(value)
