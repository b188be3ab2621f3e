"""What the tables of the order page show: rows of words, and what each row is about. No Qt widgets."""

from collections.abc import Iterable, Mapping, Sequence

from configurator.documents.line_words import (
    despite_words,
    detail_words,
    hinge_words,
    labelled_words,
    marks_words,
    metal_words,
    screw_words,
)
from configurator.model import Job, Revision
from configurator.order.lines import OrderLine
from configurator.order.order_findings import OrderFinding, name_marks
from configurator.order.prices import Priced
from configurator.order.revisions import Changes, CountChange, OpeningChange, Taken
from configurator.order.studied import NotOrdered
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge_items import HingeItem
from configurator.ui.kit.table_model import Head, Row

MOST_SHOWN = 12
"""Marks in one cell; all of them stand in the list beside."""

_COUNTS = (
    Head("Line", 9, number=True),
    Head("Each", 12, number=True),
    Head("Pairs", 18),
    Head("Spare", 12, number=True),
)
SPARE = 3
"""The place of the column of spare hinges, which is hidden where there are none."""
_GOODS = (
    Head("Size, h x w", 22),
    Head("Type", 13),
    Head("Metal, finish", 22),
    Head("Marks x hinges", 34),
    Head("Hinge", 48),
    Head("Pin, tip, corner", 34),
    Head("Screws", 16),
)
_MONEY = (
    Head("Part no.", 20), Head("Price", 13, number=True), Head("For", 9), Head("Amount", 18, number=True),
)  # fmt: skip
MARKS = (Head("Mark", 23), Head("Hinges", 15, number=True))
CAUTIONS = (Head("Severity", 18), Head("Marks", 44), Head("To heed before ordering", 190))
LEFT_OUT = (
    Head("Mark", 20), Head("Openings", 17, number=True), Head("Hinges", 14, number=True), Head("Leaf", 16),
    Head("Why", 34), Head("What is to be done", 140),
)  # fmt: skip
REVISIONS = (
    Head("No.", 9, number=True), Head("Date", 20), Head("Hinges", 14, number=True), Head("Note", 34),
)  # fmt: skip
LINE_CHANGES = (
    Head("Order", 13, number=True), Head("Return", 14, number=True), Head("Was", 11, number=True),
    Head("Now", 11, number=True), Head("Hinge", 60),
)  # fmt: skip
OPENING_CHANGES = (
    Head("Mark", 18), Head("What happened", 36), Head("Hinges then", 34), Head("Hinges now", 34),
    Head("They differ in", 34),
)  # fmt: skip


def line_heads(priced: Priced | None) -> tuple[Head, ...]:
    """Return the heads of the order's lines, with prices where there are any."""
    return (*_COUNTS, *(_MONEY if priced is not None else ()), *_GOODS)


def line_rows(lines: Iterable[OrderLine], priced: Priced | None) -> list[Row]:
    """Return a row for every order line, about its number."""
    return [_line_row(line, priced) for line in lines]


def _line_row(line: OrderLine, priced: Priced | None) -> Row:
    hinge = line.hinge
    words = (
        str(line.number),
        f"{line.quantity:,}",
        pairs(line.quantity),
        f"{line.spare:,}" if line.spare else "",
        *_money(line, priced),
        hinge.size,
        hinge.type or "none known",
        metal_words(hinge),
        marks_words(line, MOST_SHOWN),
        hinge_words(hinge),
        detail_words(hinge),
        screw_words(line.screws),
    )
    labelled = labelled_words(line, MOST_SHOWN)
    tip = (
        f"Line {line.number}: {line.quantity_words}",
        f"{hinge.size}, {hinge_words(hinge)}",
        detail_words(hinge),
        f"On labelled fire doors: {labelled}" if labelled else "",
        despite_words(line),
    )
    return Row(words, line.number, "\n".join(filter(None, tip)))


def _money(line: OrderLine, priced: Priced | None) -> tuple[str, ...]:
    if priced is None:
        return ()
    one = priced.by_line.get(line.number)
    if one is None:
        return ("", "no price", "", "")
    return (one.part_number, f"{one.price:,}", one.unit, f"{one.amount:,}")


def mark_rows(by_mark: Mapping[str, int] | Sequence[str]) -> list[Row]:
    """Return a row for every mark, with its hinges where these are known."""
    if isinstance(by_mark, Mapping):
        return [Row((mark, f"{count:,}"), mark) for mark, count in by_mark.items()]
    return [Row((mark, ""), mark) for mark in by_mark]


def caution_rows(findings: Iterable[OrderFinding]) -> list[Row]:
    """Return a row for every finding, about its marks."""
    return [
        Row(
            (one.finding.severity, name_marks(one.marks), _caution(one)),
            one,
            f"{one.finding.message}\n({one.finding.source}; {one.finding.mark_of_source})",
            one.finding.severity,
        )
        for one in findings
    ]


def _caution(one: OrderFinding) -> str:
    """Return the sentence, and which marks are ordered in spite of it."""
    accepted = f"Ordered all the same: {name_marks(one.accepted)}. " if one.accepted else ""
    return f"{accepted}{one.finding.message}"


def left_out_rows(left: Iterable[NotOrdered]) -> list[Row]:
    """Return a row for everything that is not ordered, about that."""
    return [
        Row(
            (
                one.mark,
                f"{one.quantity:,}",
                "?" if one.hinges is None else f"{one.hinges:,}",
                one.leaf,
                one.why,
                one.words,
            ),
            one,
            one.words,
            "error" if one.why == "held" else "",
        )
        for one in left
    ]


def revision_rows(job: Job) -> list[Row]:
    """Return a row for every revision, about its number, the last one first."""
    return [
        Row((str(one.number), one.date or "", f"{_hinges(one):,}", one.note or ""), one.number)
        for one in reversed(job.revisions)
    ]


def _hinges(revision: Revision) -> int:
    return sum(sum(line.marks.values()) + line.spare for line in revision.lines)


def line_change_rows(changes: Changes) -> list[Row]:
    """Return a row for every line that is not as it was ordered, those of what is no butt last."""
    hinges = [_change_row(one, _in_words(one.hinge)) for one in changes.lines]
    return hinges + [_change_row(one, one.what.words) for one in changes.ways or ()]


def _in_words(hinge: HingeItem) -> str:
    return f"{hinge.size}, {metal_words(hinge)}, {hinge_words(hinge)}, {detail_words(hinge)}"


def _change_row(one: CountChange, words: str) -> Row:
    order, back = (f"{many:,}" if many else "" for many in (one.order, one.back))
    return Row((order, back, f"{one.was:,}", f"{one.now:,}", words))


def opening_change_rows(changes: Changes) -> list[Row]:
    """Return a row for every opening that is not as it was ordered, about its mark."""
    same = [Row((mark, "described anew, same hinges", "", "", ""), mark) for mark in changes.same_hinges]
    return [*(_opening_row(one) for one in changes.openings), *same]


def _opening_row(one: OpeningChange) -> Row:
    return Row((one.mark, one.kind, _taken(one.was), _taken(one.now), ", ".join(one.differs)), one.mark)


def _taken(taken: Taken) -> str:
    return ", ".join(f"{count} x {hinge.size}" for hinge, count in taken) or "none"
