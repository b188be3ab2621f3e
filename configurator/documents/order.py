"""The order as a document: its head, the lines with their sums, the screws; apart what is for the office."""

from collections.abc import Iterator, Sequence

from configurator.documents.document import (
    MOST_IN_CELL,
    MOST_ON_PAPER,
    NO_NAME,
    Cell,
    Column,
    Document,
    Table,
    heading_of,
    listed,
)
from configurator.documents.line_words import (
    despite_words,
    detail_words,
    hinge_words,
    labelled_words,
    marks_words,
    metal_words,
    screw_kind_words,
    screw_words,
)
from configurator.model import OrderFacts
from configurator.order.lines import UNIT, OrderLine
from configurator.order.prices import LinePrice, Priced
from configurator.order.studied import NotOrdered
from configurator.order.take_off import TakeOff
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge_items import CONTRACT_KEYS

NOT_ORDERED = "not ordered"
MOST_UNDER = 400
"""Marks that run under a line; more would fill a page with one line, and have a table of their own."""
_TITLES = {
    "type": "ANSI/BHMA A156.1 type",
    "finish_bhma": "BHMA finish",
    "finish_us": "US finish",
    "leaf_thickness": "leaf thickness",
    "fire": "some on labelled fire doors",
    "size": "size, height x width",
}
_KINDS = {"leaf_thickness": "inches", "knuckles": "count"}
_FLAGS = ("security_stud", "fire")
_KEYS = tuple(key for key in CONTRACT_KEYS if key not in ("height", "width"))
"""What a line is, without the two sizes by themselves: the size is written in one way."""


def order_document(
    order: TakeOff, priced: Priced | None = None, standing: str = "", head: OrderFacts | None = None
) -> Document:
    """Return the order laid out; with prices where there are any.

    `standing` says which revision it is: whoever gets two of them must know which one holds. `head` is what
    the user says over the order.
    """
    facts = head or OrderFacts()
    lines, paper, marks = order_table(order, priced), paper_table(order, priced), _marks(order)
    screws = tuple(table for table in (_other_ways(order, priced), _screws(order)) if table.rows)
    office = tuple(table for table in (_left_out(order), _findings(order)) if table.rows)
    long = any(len(line.by_mark) > MOST_UNDER for line in order.lines)
    return Document(
        "Hinge order",
        _heading(order, standing),
        data=(lines, marks, *screws),
        sheets=(paper, *((marks,) if long else ()), *screws),
        notes=tuple(_notes(priced, facts)),
        book=(paper, lines, marks, *screws),
        head=(*order_head(facts), ("Hinge widths", order.width_policy)),
        office=office,
        office_notes=tuple(_office_notes(order, priced, facts)),
    )


def order_head(facts: OrderFacts) -> tuple[tuple[str, str], ...]:
    """Return what the user says over an order, by name; nothing that was left out."""
    said = (
        ("Supplier", facts.supplier),
        ("Ship to", facts.ship_to),
        ("Order number", facts.number),
        ("Order date", facts.date),
        ("Required", facts.required),
        ("Order revision", facts.revision),
        ("Ordered by", facts.prepared_by),
    )
    return tuple((name, value) for name, value in said if value)


def _heading(order: TakeOff, standing: str) -> tuple[tuple[str, str], ...]:
    """Return whose job it is and which revision; a revision alone would pass for the job's name."""
    known = heading_of(order.facts)
    return (*(known or (("Job", NO_NAME),)), ("Revision", standing)) if standing else known


def _notes(priced: Priced | None, facts: OrderFacts) -> Iterator[str]:
    if facts.notes:
        yield facts.notes
    if priced is not None:
        yield priced.words()


def _office_notes(order: TakeOff, priced: Priced | None, facts: OrderFacts) -> Iterator[str]:
    yield order.reconciliation.words()
    if facts.internal_notes:
        yield facts.internal_notes
    if priced is not None and priced.passed_over:
        yield priced.passed_over


# --- Every fact of a line, for other programs ---


def order_table(order: TakeOff, priced: Priced | None = None) -> Table:
    """Return the lines with a column for every fact; what is not ordered follows, quantity 0.

    So a file of one table has everything: nothing of the job is silently missing from it.
    """
    columns = (*_COLUMNS, *(_money_columns(priced) if priced is not None else ()))
    lines = [_line_cells(line) + _money(line, priced) for line in order.lines]
    left_out = [_left_out_cells(one, columns) for one in order.not_ordered]
    return Table("Lines", columns, (*lines, *left_out), tuple(_in_all(order, priced, columns)))


def _left_out_cells(one: NotOrdered, columns: Sequence[Column]) -> tuple[Cell, ...]:
    given: dict[str, Cell] = {
        "quantity": 0,
        "item": NOT_ORDERED,
        "marks": one.mark,
        "remark": f"{one.why}: {one.words}",
    }
    return tuple(given.get(column.key) for column in columns)


def _column(key: str) -> Column:
    kind = "flag" if key in _FLAGS else _KINDS.get(key, "text")
    return Column(key, _TITLES.get(key, key.replace("_", " ")), kind, 14 if kind == "text" else 8)  # type: ignore[arg-type]


_COLUMNS = (
    Column("line", "line", "count", 5),
    Column("quantity", "quantity", "count", 8),
    Column("unit", "unit", "text", 6),
    Column("pairs", "pairs", "text", 11),
    *(_column(key) for key in _KEYS),
    Column("labelled", "hinges on labelled fire doors", "count", 9),
    Column("machine_screws", "machine screws", "count", 9),
    Column("wood_screws", "wood screws", "count", 9),
    Column("marks", "marks x hinges", "text", 30),
    Column("needed", "needed", "count", 8),
    Column("spare", "spare", "count", 6),
    Column("remark", "remark", "text", 30),
)


def _line_cells(line: OrderLine) -> tuple[Cell, ...]:
    screws, what = line.screws, line.as_data()
    start = (line.number, line.quantity, UNIT, pairs(line.quantity))
    counts = (sum(line.fire_marks.values()), screws["machine"], screws["wood"])
    end = (marks_words(line, MOST_IN_CELL), line.needed, line.spare, despite_words(line) or None)
    return (*start, *(what[key] for key in _KEYS), *counts, *end)


def _money_columns(priced: Priced) -> tuple[Column, ...]:
    currency = f", {priced.currency}" if priced.currency else ""
    return (
        Column("part_number", "part number", "text", 12),
        Column("description", "description", "text", 20),
        Column("packs", "packs", "count", 6),
        Column("price", f"price{currency}", "money", 9),
        Column("price_unit", "price is for", "text", 8),
        Column("amount", f"amount{currency}", "money", 11),
        Column("source", "source of price", "text", 12),
    )


def _money(line: OrderLine, priced: Priced | None) -> tuple[Cell, ...]:
    if priced is None:
        return ()
    one = priced.by_line.get(line.number)
    return (None,) * 7 if one is None else _price_cells(one)


def _price_cells(one: LinePrice) -> tuple[Cell, ...]:
    named = (one.part_number or None, one.description or None, one.packs)
    return (*named, one.price, one.unit, one.amount, one.source or None)


def _in_all(order: TakeOff, priced: Priced | None, columns: Sequence[Column]) -> Iterator[tuple[Cell, ...]]:
    """Yield the sums over the lines; no amount while a line has no price."""
    if not order.lines:
        return
    sums: dict[str, Cell] = {
        "quantity": order.hinges,
        "pairs": pairs(order.hinges),
        "needed": order.reconciliation.by_lines,
        "spare": order.reconciliation.spare,
        "size": "in all",
        "amount": priced.total if priced is not None and not priced.unpriced else None,
    }
    yield tuple(sums.get(column.key) for column in columns)


# --- On paper ---

_PAPER = (
    Column("line", "line", "count", 3),
    Column("part_number", "part number", "text", 11),
    Column("quantity", "quantity, each", "count", 4),
    Column("pairs", "pairs", "text", 9),
    Column("packs", "packs", "count", 2),
    Column("spare", "spare among them", "count", 2),
    Column("size", "size, height x width", "text", 11),
    Column("type", "A156.1 type", "text", 5),
    Column("hinge", "hinge", "text", 44),
    Column("finish", "metal, finish", "text", 16),
    Column("pin_tip_corner", "pin and ends", "text", 32),
    Column("screws", "screws", "text", 12),
    Column("price", "price", "money", 5),
    Column("price_unit", "price is for", "text", 3),
    Column("amount", "amount", "money", 8),
    Column("description", "description", "text", 24, under=True),
    Column("marks", "marks x hinges", "text", 40, under=True),
    Column("labelled", "on labelled fire doors", "text", 30, under=True),
    Column("screw_kinds", "hinges by their screws", "text", 24, under=True),
    Column("despite", "in spite of an error", "text", 40, under=True),
)
_ONLY_WHERE_THERE_IS_ONE = {
    *("part_number", "packs", "spare", "price", "price_unit", "amount"),
    *("description", "labelled", "screw_kinds", "despite"),
}


def paper_table(order: TakeOff, priced: Priced | None = None) -> Table:
    """Return the lines as a page shows them; no column that has nothing in it."""
    columns = _with_currency(priced)
    rows = [_paper_cells(line, priced.by_line.get(line.number) if priced else None) for line in order.lines]
    table = Table("Order", columns, tuple(rows), tuple(_in_all(order, priced, columns)))
    return table.without_empty(_ONLY_WHERE_THERE_IS_ONE)


def _with_currency(priced: Priced | None) -> tuple[Column, ...]:
    """Return the columns of paper, the currency over the amounts."""
    titles = {column.key: column for column in _money_columns(priced)} if priced is not None else {}
    money = ("price", "amount")
    return tuple(titles[one.key] if one.key in money and titles else one for one in _PAPER)


def _paper_cells(line: OrderLine, price: LinePrice | None) -> tuple[Cell, ...]:
    hinge = line.hinge
    return (
        line.number,
        price.part_number if price else None,
        line.quantity,
        pairs(line.quantity),
        price.packs if price else None,
        line.spare,
        hinge.size,
        hinge.type or "none known",
        hinge_words(hinge),
        metal_words(hinge),
        detail_words(hinge),
        screw_words(line.screws),
        *((price.price, price.unit, price.amount) if price else (None, None, None)),
        price.description if price else None,
        marks_words(line, MOST_UNDER),
        labelled_words(line, MOST_UNDER),
        screw_kind_words(line),
        despite_words(line),
    )


def _screws(order: TakeOff) -> Table:
    columns = (
        Column("kind", "Kind of screw", "text", 12),
        Column("size", "Usual size", "text", 34),
        Column("metal", "Metal", "text", 10),
        Column("count", "Screws", "count", 8),
        Column("packs", "Packs", "count", 8),
    )
    rows = tuple((one.kind, one.size, one.metal, one.count, one.packs) for one in order.screws)
    return Table("Screws", columns, rows).without_empty({"packs"})


def _marks(order: TakeOff) -> Table:
    """Return every mark of every line in a row of its own: however many there are, none is cut off."""
    columns = (
        Column("line", "Line", "count", 5),
        Column("size", "Size, height x width", "text", 14),
        Column("mark", "Mark", "text", 14),
        Column("hinges", "Hinges", "count", 8),
    )
    rows = tuple(
        (line.number, line.hinge.size, mark, count)
        for line in order.lines
        for mark, count in line.by_mark.items()
    )
    return Table("Marks", columns, rows)


def _other_ways(order: TakeOff, priced: Priced | None) -> Table:
    """Return what hangs on no butts, in trade words; no rows where everything hangs on butts."""
    money = () if priced is None else _money_columns(priced)
    columns = (
        Column("quantity", "Quantity", "text", 10),
        Column("description", "Description", "text", 60),
        Column("let_in", "Preparation", "text", 24),
        Column("marks", "Marks", "text", 18),
        *(one for one in money if one.key in _MONEY_OF_WAYS),
    )
    rows = tuple(
        (
            *(one.quantity_words, one.what.words, one.what.let_in, listed(tuple(one.by_mark), MOST_ON_PAPER)),
            *_way_money(place, priced),
        )
        for place, one in enumerate(order.other_ways, start=1)
    )
    # No sum while one of them has no price.
    summed = priced is not None and not priced.ways_unpriced
    in_all = ((None, "in all", None, None, None, None, priced.ways_total),) if priced and summed else ()
    return Table("Hung another way", columns, rows, in_all)


_MONEY_OF_WAYS = ("price", "price_unit", "amount")


def _way_money(place: int, priced: Priced | None) -> tuple[Cell, ...]:
    if priced is None:
        return ()
    one = priced.by_way.get(place)
    return (None, None, None) if one is None else (one.price, one.unit, one.amount)


# --- For the office ---


def _left_out(order: TakeOff) -> Table:
    columns = (
        Column("mark", "Mark", "text", 10),
        Column("quantity", "Openings", "count", 8),
        Column("leaf", "Leaf", "text", 8),
        Column("why", "Why", "text", 16),
        Column("message", "What is to be done", "text", 60),
    )
    rows = tuple((one.mark, one.quantity, one.leaf or None, one.why, one.words) for one in order.not_ordered)
    return Table("Not ordered", columns, rows)


def _findings(order: TakeOff) -> Table:
    columns = (
        Column("severity", "Severity", "text", 8),
        Column("code", "Finding", "text", 18),
        Column("message", "To heed before ordering", "text", 60),
        Column("marks", "Marks", "text", 18),
        Column("accepted", "Ordered all the same", "text", 12),
    )
    rows = tuple(
        (
            *(one.finding.severity, one.finding.code, one.finding.message),
            *(listed(one.marks, MOST_ON_PAPER), listed(one.accepted, MOST_ON_PAPER)),
        )
        for one in order.findings
    )
    return Table("Findings", columns, rows).without_empty({"accepted"})
