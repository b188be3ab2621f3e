"""The order as a document: lines, screws, what is not ordered and why, the cautions, and the sums."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

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
    detail_words,
    hinge_words,
    marks_words,
    metal_words,
    screw_words,
)
from configurator.order.lines import UNIT, OrderLine
from configurator.order.prices import Priced
from configurator.order.studied import NotOrdered
from configurator.order.take_off import TakeOff
from configurator.rules.hinge.sizes import pairs
from configurator.rules.hinge_items import CONTRACT_KEYS

NOT_ORDERED = "not ordered"
_TITLES = {
    "type": "ANSI/BHMA A156.1 type",
    "finish_bhma": "BHMA finish",
    "finish_us": "US finish",
    "leaf_thickness": "leaf thickness",
}
_KINDS = {"height": "inches", "width": "inches", "leaf_thickness": "inches", "knuckles": "count"}
_FLAGS = ("security_stud", "fire")


def order_document(order: TakeOff, priced: Priced | None = None, standing: str = "") -> Document:
    """Return the order laid out; with prices where there are any.

    `standing` says which revision it is: whoever gets two of them must know which one holds.
    """
    more = tuple(table for table in (_screws(order), _left_out(order), _findings(order)) if table.rows)
    notes = (order.reconciliation.words(), *((priced.words(),) if priced is not None else ()))
    marks, lines, paper = _marks(order), order_table(order, priced), _paper(order, priced)
    summed = replace(paper, rows=(*paper.rows, *_in_all(order, priced, paper.columns)))
    long = any(len(line.by_mark) > MOST_ON_PAPER for line in order.lines)
    return Document(
        "Hinge order",
        _heading(order, standing),
        data=(lines, marks, *more),
        sheets=(summed, *((marks,) if long else ()), *more),
        notes=notes,
        book=(paper, lines, marks, *more),
    )


def _heading(order: TakeOff, standing: str) -> tuple[tuple[str, str], ...]:
    """Return whose job it is and which revision; a revision alone would pass for the job's name."""
    known = heading_of(order.facts)
    return (*(known or (("Job", NO_NAME),)), ("Revision", standing)) if standing else known


def order_table(order: TakeOff, priced: Priced | None = None) -> Table:
    """Return the lines with a column for every key of the results; what is not ordered follows, quantity 0.

    So a file of one table has everything: nothing of the job is silently missing from it.
    """
    columns = (*_COLUMNS, *(_MONEY if priced is not None else ()))
    lines = [_line_cells(line) + _money(line, priced) for line in order.lines]
    left_out = [_left_out_cells(one, columns) for one in order.not_ordered]
    return Table("Lines", columns, (*lines, *left_out))


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
    *(_column(key) for key in CONTRACT_KEYS),
    Column("machine_screws", "machine screws", "count", 9),
    Column("wood_screws", "wood screws", "count", 9),
    Column("marks", "marks", "text", 30),
    Column("needed", "needed", "count", 8),
    Column("spare", "spare", "count", 6),
    Column("remark", "remark", "text", 30),
)
_MONEY = (
    Column("price", "Price", "money", 9),
    Column("price_unit", "Price is for", "text", 8),
    Column("amount", "Amount", "money", 11),
)


def _line_cells(line: OrderLine) -> tuple[Cell, ...]:
    screws = line.screws
    start = (line.number, line.quantity, UNIT, pairs(line.quantity))
    what = line.hinge.as_data().values()
    end = (screws["machine"], screws["wood"], marks_words(line, MOST_IN_CELL), line.needed, line.spare, None)
    return (*start, *what, *end)


def _money(line: OrderLine, priced: Priced | None) -> tuple[Cell, ...]:
    if priced is None:
        return ()
    one = priced.by_line.get(line.number)
    return (None, None, None) if one is None else (one.price, one.unit, one.amount)


_PAPER = (
    Column("line", "Line", "count", 4),
    Column("quantity", "Quantity, each", "count", 6),
    Column("pairs", "Pairs", "text", 10),
    Column("spare", "Spare among them", "count", 6),
    Column("size", "Size, height x width", "text", 13),
    Column("type", "A156.1 type", "text", 7),
    Column("hinge", "Hinge", "text", 26),
    Column("finish", "Metal, finish", "text", 13),
    Column("pin_tip_corner", "Pin and ends", "text", 20),
    Column("screws", "Screws", "text", 11),
    Column("marks", "Marks x hinges", "text", 24),
)


def _paper(order: TakeOff, priced: Priced | None) -> Table:
    """Return the lines in as many columns as a page is wide; no column for spare where there is none."""
    money = _MONEY if priced is not None else ()
    rows = [(*_paper_cells(line), *_money(line, priced)) for line in order.lines]
    columns = (*_PAPER, *money)
    if order.reconciliation.spare:
        return Table("Order", columns, tuple(rows))
    at = [column.key for column in columns].index("spare")
    shorter = tuple((*row[:at], *row[at + 1 :]) for row in rows)
    return Table("Order", (*columns[:at], *columns[at + 1 :]), shorter)


def _in_all(order: TakeOff, priced: Priced | None, columns: Sequence[Column]) -> Iterator[tuple[Cell, ...]]:
    """Yield the sums under the lines of an order on paper; no amount while a line has no price."""
    if not order.lines:
        return
    sums: dict[str, Cell] = {
        "quantity": order.hinges,
        "pairs": pairs(order.hinges),
        "spare": order.reconciliation.spare,
        "size": "in all",
        "amount": priced.total if priced is not None and not priced.unpriced else None,
    }
    yield tuple(sums.get(column.key) for column in columns)


def _paper_cells(line: OrderLine) -> tuple[Cell, ...]:
    hinge = line.hinge
    return (
        line.number,
        line.quantity,
        pairs(line.quantity),
        line.spare,
        hinge.size,
        hinge.type or "none known",
        hinge_words(hinge),
        metal_words(hinge),
        detail_words(hinge),
        screw_words(line.screws),
        marks_words(line, MOST_ON_PAPER),
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
    return Table("Screws", columns, rows)


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
    )
    rows = tuple(
        (one.finding.severity, one.finding.code, one.finding.message, listed(one.marks, MOST_ON_PAPER))
        for one in order.findings
    )
    return Table("Findings", columns, rows)
