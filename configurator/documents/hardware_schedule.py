"""The hardware schedule: what hangs, secures, operates each opening, under a heading for openings alike.

Only the hinges are chosen here; everything else is what was described of the opening, for whoever chooses it.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache

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
from configurator.documents.line_words import detail_words, hinge_words
from configurator.documents.schedule import NOT_WORKED_OUT, schedule_table
from configurator.model import JobFacts, Opening
from configurator.order.other_ways import way_items
from configurator.order.tally import Tally
from configurator.rules.filling.usual import fill_use
from configurator.rules.hinge_items import HingeItem
from configurator.rules.wording import feet
from configurator.tables import HardwareGroupRow, table
from configurator.units import format_angle, format_size

NOT_CHOSEN = "not chosen here"


@dataclass(frozen=True, slots=True)
class HardwareItem:
    """One kind of thing in a hardware schedule; `place` is its group's, and what is not known is ""."""

    place: int
    group: str
    item: str
    size: str
    type: str
    finish: str
    remark: str


@dataclass(frozen=True, slots=True)
class Heading:
    """Openings alike in hand, size, make and hardware; `items` are what one of them takes, by group."""

    number: int
    words: str
    marks: tuple[str, ...]
    openings: int
    items: tuple[tuple[HardwareItem, int], ...]


@dataclass(frozen=True, slots=True)
class GroupLine:
    """One item over the whole job, with the marks that take it."""

    item: HardwareItem
    quantity: int
    marks: tuple[str, ...]


def hardware_headings(tallies: Iterable[Tally]) -> tuple[Heading, ...]:
    """Return a heading for each kind of opening, in the order in which the job has them."""
    alike: dict[tuple[str, tuple[tuple[HardwareItem, int], ...]], list[Opening]] = {}
    for one in tallies:
        alike.setdefault((_words(one.opening), _items(one)), []).append(one.opening)
    return tuple(
        Heading(number, words, tuple(o.mark for o in openings), sum(o.quantity for o in openings), items)
        for number, ((words, items), openings) in enumerate(alike.items(), 1)
    )


def hardware_groups(headings: Iterable[Heading]) -> tuple[GroupLine, ...]:
    """Return every item of the job with its quantity over all openings, group by group."""
    counts: Counter[HardwareItem] = Counter()
    marks: dict[HardwareItem, list[str]] = {}
    for heading in headings:
        for item, count in heading.items:
            counts[item] += count * heading.openings
            marks.setdefault(item, []).extend(heading.marks)
    order = sorted(marks, key=lambda item: item.place)
    return tuple(GroupLine(item, counts[item], tuple(marks[item])) for item in order)


def schedule_document(tallies: Iterable[Tally], facts: JobFacts | None = None) -> Document:
    """Return door schedule, and hardware schedule by opening and by group, as one document."""
    kept = tuple(tallies)
    headings = hardware_headings(kept)
    hardware, on_paper = (
        (hardware_table(headings, most), _by_group(headings, most)) for most in (MOST_IN_CELL, MOST_ON_PAPER)
    )
    notes = (
        "Hardware stands in the order hang, secure, operate, close, stop. Only the hinges are chosen here; "
        "the rest is what was described, for whoever chooses it.",
    )
    data, sheets = (schedule_table(kept), *hardware), (schedule_table(kept, on_paper=True), *on_paper)
    return Document("Door and hardware schedule", heading_of(facts or JobFacts()), data, sheets, notes)


def _words(opening: Opening) -> str:
    """Return the heading of an opening: leaves, hand, size, door and frame, label."""
    thickness = opening.door.thickness
    size = f"{feet(opening.size.width)} x {feet(opening.size.height)}"
    facts = (
        opening.leaves,
        opening.hand or "hand not known",
        size + (f" x {format_size(thickness)} in" if thickness else ""),
        f"{opening.door.construction or 'door not described'} in {opening.frame.kind}",
        _label(opening),
    )
    return ", ".join(word for word in facts if word)


def _label(opening: Opening) -> str:
    minutes = f", {opening.fire_minutes} minutes" if opening.fire_minutes else ""
    return f"labelled fire door{minutes}" if fill_use(opening).fire_rated else ""


def _items(one: Tally) -> tuple[tuple[HardwareItem, int], ...]:
    found: dict[HardwareItem, int] = {}
    for item, count in (*_hung(one), *_described(one.opening), *_only_asked(one.opening)):
        found[item] = found.get(item, 0) + count
    return tuple(sorted(found.items(), key=lambda pair: pair[0].place))


def _hung(one: Tally) -> Iterator[tuple[HardwareItem, int]]:
    for item in one.items:
        yield _hinge(item.hinge), item.count
    ways = tuple(way_items(one.opening)) if one.fault is None else ()
    for what, count in ways:
        kind = what.item if what.item in _groups() else "hinge"
        yield _item(kind, what.item, finish=what.finish_bhma or "", remark=what.words), count
    if one.fault is not None:
        yield _item("hinge", f"hinges {NOT_WORKED_OUT}", remark=one.fault), 0
    for left in one.left_out:
        if left.why == "hung otherwise" and not ways:
            hung = one.opening.hung_on
            yield _item("hinge", "pivots" if hung == "butt hinges" else hung, remark=left.words), 0
        elif left.why == "no hinge to be had":
            yield _item("hinge", "no hinge to be had", remark=left.words), 0


def _hinge(hinge: HingeItem) -> HardwareItem:
    finish = hinge.finish_bhma or hinge.finish_us or ""
    remark = f"{hinge_words(hinge)}; {detail_words(hinge)}; {hinge.screw_kinds} screws"
    return _item(
        "hinge", hinge.item, hinge.size, hinge.type or "", f"{hinge.base_metal} {finish}".strip(), remark
    )


def _described(opening: Opening) -> Iterator[tuple[HardwareItem, int]]:
    """Yield what hangs on the leaves and what stops the door, as it was described."""
    for one in opening.hardware:
        degree = "" if one.opens_to is None else f", opens to {format_angle(one.opens_to)}"
        yield _item(one.kind, one.kind, remark=f"{one.face} face{degree}, {NOT_CHOSEN}"), 1
    if (stop := opening.door_stop) is not None:
        off = f"stands off {format_size(stop.projection)} in, {NOT_CHOSEN}"
        yield _item(stop.kind, stop.kind, remark=off), 1


def _only_asked(opening: Opening) -> Iterator[tuple[HardwareItem, int]]:
    """Yield what the use asks for without describing it: a lock, a closer, something to stop the door."""
    groups = {_groups()[one.kind].name for one in opening.hardware}
    use = opening.use
    if use.locked and "secure" not in groups:
        finish = use.lock_finish_bhma or ""
        yield _item("lock", "lock", finish=finish, remark=f"asked for, {NOT_CHOSEN}"), 1
    if use.closer and "close" not in groups:
        yield _item("closer", "closer", remark=f"asked for, {NOT_CHOSEN}"), 1
    if use.stop_angle is not None and opening.door_stop is None:
        remark = f"holds at {format_angle(use.stop_angle)}, {NOT_CHOSEN}"
        yield _item("door stop", "door stop", remark=remark), 1


def _item(
    kind: str, words: str, size: str = "", number: str = "", finish: str = "", remark: str = ""
) -> HardwareItem:
    row = _groups()[kind]
    return HardwareItem(row.place, row.name, words, size, number, finish, remark)


@cache
def _groups() -> dict[str, HardwareGroupRow]:
    return {kind: row for row in table(HardwareGroupRow) for kind in row.kinds.split("; ")}


_ITEM = (
    Column("item", "item", "text", 18),
    Column("size", "size", "text", 16),
    Column("type", "type", "text", 8),
    Column("finish", "finish", "text", 12),
    Column("remark", "remark", "text", 52),
)


_SAME: tuple[Cell, ...] = (None,) * 4
"""On paper a heading stands once, over its items; in a spreadsheet every row has it, to be sorted."""


def hardware_table(headings: Iterable[Heading], most: int) -> Table:
    """Return the hardware schedule by opening; `most` marks are named in a cell."""
    columns = (
        Column("heading", "heading", "count", 8),
        Column("marks", "marks", "text", 18, under=True),
        Column("openings", "openings", "count", 9),
        Column("opening", "opening", "text", 30),
        Column("group", "group", "text", 12),
        Column("each", "each opening", "count", 8),
        Column("quantity", "quantity", "count", 9),
        *_ITEM,
    )
    rows: list[tuple[Cell, ...]] = []
    for one in headings:
        start = (one.number, listed(one.marks, most), one.openings, one.words)
        for index, (item, count) in enumerate(one.items):
            shown = start if index == 0 or most == MOST_IN_CELL else _SAME
            rows.append((*shown, item.group, count, count * one.openings, *_item_cells(item)))
        if not one.items:
            rows.append((*start, None, 0, 0, "nothing described", *(None,) * 4))
    return Table("Hardware by opening", columns, tuple(rows))


def _by_group(headings: Iterable[Heading], most: int) -> Table:
    columns = (
        Column("group", "group", "text", 14),
        Column("quantity", "quantity", "count", 9),
        *_ITEM,
        Column("marks", "marks", "text", 34),
    )
    rows = tuple(
        (line.item.group, line.quantity, *_item_cells(line.item), listed(line.marks, most))
        for line in hardware_groups(headings)
    )
    return Table("Hardware by group", columns, rows)


def _item_cells(item: HardwareItem) -> tuple[Cell, ...]:
    return item.item, item.size or None, item.type or None, item.finish or None, item.remark or None
