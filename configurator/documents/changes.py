"""What changed since an order went out, as a document and as data: what to order, what to return, and why."""

from dataclasses import replace
from typing import Any

from configurator.documents.document import MOST_ON_PAPER, Column, Document, Table, heading_of, listed
from configurator.documents.line_words import detail_words, hinge_words, metal_words
from configurator.documents.order import paper_table
from configurator.model import JobFacts
from configurator.order.revisions import Changes, OpeningChange, Taken
from configurator.order.substitute import Substitution
from configurator.order.take_off import TakeOff
from configurator.rules.hinge_items import HingeItem
from configurator.rules.wording import size

_LINE_COLUMNS = (
    Column("order", "Order", "count", 6),
    Column("back", "Return", "count", 6),
    Column("was", "Was ordered", "count", 7),
    Column("now", "Wanted now", "count", 7),
    Column("size", "Size, height x width", "text", 14),
    Column("type", "A156.1 type", "text", 8),
    Column("hinge", "Hinge", "text", 34),
    Column("finish", "Metal, finish", "text", 14),
    Column("detail", "Pin, tip, corner", "text", 26),
)
_WAY_COLUMNS = (*_LINE_COLUMNS[:4], Column("description", "Description", "text", 60))
_OPENING_COLUMNS = (
    Column("mark", "Mark", "text", 10),
    Column("kind", "What happened", "text", 16),
    Column("was", "Hinges then", "text", 30),
    Column("now", "Hinges now", "text", 30),
    Column("differs", "Wherein they differ", "text", 24),
)


def changes_document(changes: Changes, facts: JobFacts | None = None) -> Document:
    """Return the changes laid out: lines to order and to return, and every opening that is not as it was."""
    lines = tuple(
        (
            line.order,
            line.back,
            line.was,
            line.now,
            line.hinge.size,
            line.hinge.type,
            hinge_words(line.hinge),
            metal_words(line.hinge),
            detail_words(line.hinge),
        )
        for line in changes.lines
    )
    openings = tuple(_opening_cells(one) for one in changes.openings)
    ways = tuple((one.order, one.back, one.was, one.now, one.what.words) for one in changes.ways or ())
    tables = tuple(
        table
        for table in (
            Table("Lines", _LINE_COLUMNS, lines),
            Table("Openings", _OPENING_COLUMNS, openings),
            Table("Hung another way", _WAY_COLUMNS, ways),
        )
        if table.rows or table.title != "Hung another way"
    )
    title = f"Changes since revision {changes.number}"
    same = listed(changes.same_hinges, MOST_ON_PAPER)
    notes = (changes.words(), *((f"Described anew, with the same hinges: {same}.",) if same else ()))
    return Document(title, heading_of(facts or JobFacts()), tables, tables, notes)


def substitution_document(found: Substitution, order: TakeOff) -> Document:
    """Return opening by opening where another hinge will do, and the order with it there."""
    columns = (
        Column("mark", "mark", "text", 8),
        Column("hinges", "hinges", "count", 5),
        Column("does", "will do", "flag", 5),
        Column("why", "why not, or what to heed", "text", 80),
    )
    rows = tuple((one.mark, one.hinges, one.does, one.why or None) for one in found.marks)
    has, wanted = size(*found.has), size(*found.wanted)
    table = Table(f"{has} for {wanted}", columns, rows)
    tables = (table, replace(paper_table(order), title="Order with it where it will do"))
    notes = (found.words(), order.reconciliation.words())
    return Document(f"Substitution: {has} for {wanted}", heading_of(order.facts), tables, tables, notes)


def changes_as_data(changes: Changes) -> dict[str, Any]:
    """Return the changes as results are written; a line says what it is as an order line does."""
    return {
        "since_revision": changes.number,
        "lines": [
            {
                "order": one.order,
                "return": one.back,
                "was": one.was,
                "now": one.now,
                **one.hinge.as_data(),
            }
            for one in changes.lines
        ],
        "openings": [
            {
                "mark": one.mark,
                "change": one.kind,
                "was": _taken_as_data(one.was),
                "now": _taken_as_data(one.now),
                "differs": list(one.differs),
            }
            for one in changes.openings
        ],
        "same_hinges": list(changes.same_hinges),
        "other_ways": None
        if changes.ways is None
        else [
            {
                "order": one.order,
                "return": one.back,
                "was": one.was,
                "now": one.now,
                "description": one.what.words,
            }
            for one in changes.ways
        ],
    }


def _opening_cells(one: OpeningChange) -> tuple[str | None, ...]:
    was, now = (_taken_words(taken) for taken in (one.was, one.now))
    return one.mark, one.kind, was, now, ", ".join(one.differs) or None


def _taken_words(taken: Taken) -> str | None:
    return ", ".join(f"{count} x {_short(hinge)}" for hinge, count in taken) or None


def _short(hinge: HingeItem) -> str:
    return f"{hinge.size} {hinge.finish_bhma or hinge.finish_us or ''}".strip()


def _taken_as_data(taken: Taken) -> list[dict[str, Any]]:
    return [{"quantity": count, **hinge.as_data()} for hinge, count in taken]
