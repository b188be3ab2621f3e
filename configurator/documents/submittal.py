"""The submittal: a cover with the job's facts, the schedule by heading, the order lines, and the cautions."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from configurator.documents.document import (
    MOST_IN_CELL,
    MOST_ON_PAPER,
    Cell,
    Column,
    Document,
    Table,
    heading_of,
    listed,
)
from configurator.documents.hardware_schedule import Heading, hardware_headings, hardware_table
from configurator.documents.line_words import detail_words, hinge_words, marks_words, metal_words
from configurator.documents.order import order_document
from configurator.order.lines import OrderLine
from configurator.order.order_findings import OrderFinding, by_severity
from configurator.order.take_off import TakeOff
from configurator.order.tally import Tally
from configurator.rules.finding import Finding
from configurator.rules.hinge.sizes import pairs
from configurator.rules.wording import counted

NOT_KNOWN_HERE = (
    "Hinges are chosen by published and common practice, as each reason says. Not known here: the listings "
    "of doors, frames and hardware, what a manufacturer allows, and local codes. Where fire, ways out or "
    "access are concerned, the listing, the authority and a licensed professional decide; confirm before "
    "ordering."
)
ALSO_CAUTIONS = frozenset({"clear width kept", "ask about preparation", "measured from where"})
"""Codes of notes that whoever approves the openings should read too."""


def submittal_document(tallies: Sequence[Tally], order: TakeOff) -> Document:
    """Return the submittal laid out; its first table has all of it in rows of one kind.

    It has no prices: it goes to those who approve, not to those who buy.
    """
    headings = hardware_headings(tallies)
    cautions = cautions_of(tallies, order)
    cover = _cover(tallies, order)
    ordered = order_document(order)
    parts = (*ordered.sheets, *ordered.office)
    lines = tuple(table for table in parts if table.title in ("Order", "Marks", "Not ordered"))
    notes = (order.reconciliation.words(), *_not_measured(tallies), NOT_KNOWN_HERE)
    noted = tuple(("note", *(None,) * 6, note, None) for note in notes)
    whole = Table("Submittal", _WHOLE, (*_all_rows(cover, headings, order, cautions), *noted))
    sheets, book = (
        (hardware_table(headings, most), *lines, _cautions(cautions, most))
        for most in (MOST_ON_PAPER, MOST_IN_CELL)
    )
    heading = heading_of(order.facts)
    head = tuple((str(name), str(fact)) for name, fact in cover.rows[len(heading) :])
    return Document("Submittal", heading, (whole,), sheets, notes, (cover, *book), head=head, cover=True)


def _not_measured(tallies: Iterable[Tally]) -> tuple[str, ...]:
    marks = [one.mark for one in tallies if one.opening.status == "assumed"]
    if not marks:
        return ()
    many = f"{counted(len(marks), 'mark is', 'marks are')} assumed, not measured"
    named = listed(marks, MOST_ON_PAPER)
    return (f"{many}: {named}. Verify them in the field before anything is made.",)


def cautions_of(tallies: Iterable[Tally], order: TakeOff) -> tuple[OrderFinding, ...]:
    """Return what whoever approves the job must know: errors and warnings, each once with all its marks."""
    found: dict[tuple[str, str], tuple[Finding, list[str]]] = {}
    for one in tallies:
        for each in one.findings:
            if each.severity != "note" or each.code in ALSO_CAUTIONS:
                found.setdefault((each.code, each.message), (each, []))[1].append(one.mark)
    of_order = (
        one
        for one in order.findings
        if one.finding.severity != "note" and (one.finding.code, one.finding.message) not in found
    )
    return by_severity((*(OrderFinding(each, tuple(marks)) for each, marks in found.values()), *of_order))


def _cover(tallies: Sequence[Tally], order: TakeOff) -> Table:
    columns = Column("fact", "Fact", "text", 18), Column("value", "As it stands", "text", 90)
    facts = order.facts
    statuses, orders = Counter[str](), Counter[str]()
    for one in tallies:
        statuses[one.opening.status] += one.opening.quantity
        orders[one.opening.order_state] += one.opening.quantity
    openings = sum(statuses.values())
    by_status = ", ".join(f"{count} {status}" for status, count in statuses.items())
    if orders["not ordered"] != openings:
        by_status += "; " + ", ".join(f"{count} {state}" for state, count in orders.items())
    hinges = f"{counted(order.hinges, 'hinge', 'hinges')} = {pairs(order.hinges)}"
    more = (
        ("Drawings", facts.revision),
        ("Notes", facts.notes),
        (
            "Openings",
            f"{openings} under {counted(len(tallies), 'mark', 'marks')}: {by_status}"
            if by_status
            else "none",
        ),
        ("Hinges", hinges),
        ("Spare", order.spare.words()),
    )
    rows = (*heading_of(facts), *((name, value) for name, value in more if value))
    return Table("Job", columns, rows)


def _cautions(cautions: Iterable[OrderFinding], most: int) -> Table:
    columns = (
        Column("severity", "Severity", "text", 8),
        Column("message", "Caution", "text", 66),
        Column("marks", "Marks", "text", 22),
        Column("source", "Source", "text", 28),
    )
    rows = tuple(
        (one.finding.severity, one.finding.message, listed(one.marks, most), _source(one.finding))
        for one in cautions
    )
    return Table("Cautions", columns, rows)


def _source(one: Finding) -> str:
    return f"{one.source} ({one.mark_of_source})" if one.mark_of_source not in one.source else one.source


_WHOLE = (
    Column("part", "part", "text", 9),
    Column("number", "number", "count", 6),
    Column("quantity", "quantity", "count", 8),
    Column("item", "item", "text", 20),
    Column("size", "size", "text", 12),
    Column("type", "type", "text", 8),
    Column("finish", "finish", "text", 14),
    Column("words", "words", "text", 50),
    Column("marks", "marks", "text", 24),
)


def _all_rows(
    cover: Table, headings: Iterable[Heading], order: TakeOff, cautions: Iterable[OrderFinding]
) -> Iterator[tuple[Cell, ...]]:
    """Yield every part of the submittal as rows of one table, for a file that holds one only."""
    for fact, value in cover.rows:
        yield ("job", None, None, fact, None, None, None, value, None)
    for heading in headings:
        yield from _heading_rows(heading)
    for line in order.lines:
        yield _line_row(line)
    for left in order.not_ordered:
        yield ("left out", None, left.hinges, left.why, None, None, None, left.words, left.mark)
    for one in cautions:
        found, marks = one.finding, listed(one.marks, MOST_IN_CELL)
        yield ("caution", None, None, found.severity, None, None, None, found.message, marks)


def _heading_rows(one: Heading) -> Iterator[tuple[Cell, ...]]:
    marks = listed(one.marks, MOST_IN_CELL)
    yield ("heading", one.number, one.openings, "openings", None, None, None, one.words, marks)
    for item, count in one.items:
        cells = (item.item, item.size or None, item.type or None, item.finish or None, item.remark or None)
        yield ("hardware", one.number, count * one.openings, *cells, marks)


def _line_row(line: OrderLine) -> tuple[Cell, ...]:
    hinge = line.hinge
    words = f"{hinge_words(hinge)}; {detail_words(hinge)}; {hinge.screw_kinds} screws"
    cells = (hinge.item, hinge.size, hinge.type, metal_words(hinge), words)
    return ("order", line.number, line.quantity, *cells, marks_words(line, MOST_IN_CELL))
