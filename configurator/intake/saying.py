"""What an import would do, in words: the same on the screen and on the command line."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from configurator.intake.columns import Reading, columns_told, not_read
from configurator.intake.comparing import Change, Compared, ReadOpening
from configurator.intake.fields import FIELDS, OPENING_SIZES
from configurator.intake.notes import marks_named
from configurator.intake.refused import CellFault, rows_named
from configurator.intake.rows import RowRead
from configurator.intake.sheet import SheetRow
from configurator.intake.table import ScheduleTable
from configurator.model import Obstruction, WallLayer
from configurator.units import Display

_LENGTHS = {field.path for field in FIELDS.values() if field.kind == "length"}
_ANGLES = {field.path for field in FIELDS.values() if field.kind == "angle"}


def nothing_words(source: str) -> str:
    """Say that a schedule or a model, named by what it is, changes nothing."""
    return f"nothing to take: the job already says what the {source} says"


def counted(count: int, one: str, many: str = "") -> str:
    """Write a count with the right word: `1 opening`, `3 openings`."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def value_words(path: str, value: Any, display: Display) -> str:
    """Write one value of an opening as it is read on the screen."""
    if value is None:
        return "not said"
    if isinstance(value, Mapping):
        value = "; ".join(f"{heading}: {text}" for heading, text in value.items())
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return things_words(value, display)
    if path in _LENGTHS:
        return display.exact(value)
    if path in _ANGLES:
        return display.angle(value, "near")
    text = " ".join(str(value).split())
    return f"{text[:59]}…" if len(text) > 60 else text


def things_words(things: Sequence[WallLayer | Obstruction], display: Display) -> str:
    """Write the layers of a wall, or what stands along it, in a line."""
    if not things:
        return "nothing"
    return "; ".join(
        f"{one.name} {display.exact(one.thickness)}" if isinstance(one, WallLayer) else _thing(one, display)
        for one in things
    )


def _thing(thing: Obstruction, display: Display) -> str:
    deep = thing.diameter if thing.projection is None else thing.projection
    off = f" {display.exact(deep)} deep" if deep is not None else ""
    held = f" held {display.exact(thing.offset)} off the wall" if thing.offset else ""
    away = f" {display.exact(thing.start)} from the frame" if thing.start is not None else ""
    high = ""
    if thing.bottom is not None or thing.top is not None:
        top = "up" if thing.top is None else f"to {display.exact(thing.top)}"
        high = f", from {display.exact(thing.bottom or 0.0)} {top}"
    return f"{thing.side} side: {thing.kind}{off}{held}{away}{high}"


def change_words(change: Change, display: Display) -> str:
    """Write one change: `opening width 36 in → 42 in`."""
    old, new = (value_words(change.path, value, display) for value in (change.old, change.new))
    return f"{change.title} {old} → {new}"


def opening_words(row: ReadOpening, display: Display) -> str:
    """Say what taking a row does to its opening."""
    if row.kind == "same":
        return "as it is in the job"
    if row.before is None:
        size = row.opening.size
        return f"new, {display.opening(size.width, size.height)}"
    settled = f" (it is marked {row.before.settled})" if row.before.settled else ""
    return "; ".join(change_words(change, display) for change in row.changes) + settled


def summary(table: ScheduleTable, compared: Compared) -> str:
    """Say in a sentence what was found."""
    good, bad = len(compared.good), len(compared.bad)
    kinds = [
        f"{len(rows):,} {words}"
        for kind, words in (("new", "new"), ("changed", "changed"), ("same", "as in the job"))
        if (rows := compared.of_kind(kind))
    ]
    count = good + bad + len(compared.left_out)
    under = f"{counted(count, 'row')} under the header on line {table.line}"
    said = f"{table.name}: {under if table.source == 'schedule' else counted(count, 'door')}; {good:,} good"
    said += f" ({', '.join(kinds)})" if kinds else ""
    said += f", {bad:,} with a fault" if bad else ""
    return said + (f", {len(compared.left_out):,} left out" if compared.left_out else "")


def fault_words(alike: Sequence[CellFault]) -> str:
    """Say in one line what is wrong with one cell, or with all that are alike."""
    first = alike[0]
    if len(alike) == 1:
        return str(first)
    reasons = {fault.reason for fault in alike}
    reason = first.reason if len(reasons) == 1 else f"{first.reason}, and the like"
    where = f"{' '.join(first.heading.split())}: " if first.heading else ""
    return f"{len(alike):,} rows, {where}{reason} ({rows_named([fault.row for fault in alike])})"


def display_of(reading: Reading) -> Display:
    """Return how lengths are written: in millimetres where the schedule has its openings in them."""
    metric = any(each.unit == "mm" and each.field in OPENING_SIZES for each in reading.columns)
    return Display(64, metric=metric)


def not_read_words(table: ScheduleTable, reading: Reading) -> tuple[str, ...]:
    """Name every column that is not read, with how many of its cells say something."""
    return tuple(
        f"{' '.join(heading.split())} ({counted(cells, 'cell')})"
        for heading, cells in not_read(table, reading)
    )


def notes_told(table: ScheduleTable, compared: Compared) -> list[tuple[int, str]]:
    """Return what stands above and under the table, whole: its line, and the marks it names."""
    marks = [row.opening.mark for row in compared.good] + [row.mark for row in compared.bad]
    told = [(row.line, f"above the table: {_text(row)}") for row in table.above]
    for note in table.notes:
        named = marks_named(note, marks)
        about = f"; it names {', '.join(named)}, and is kept as a question of each" if named else ""
        told.append((note.line, f"under the table: {_text(note.row)}{about}"))
    return told


def report(table: ScheduleTable, reading: Reading, compared: Compared, removed: bool) -> str:
    """Return the whole of it for a terminal, a line for each thing."""
    display = display_of(reading)
    lines = [summary(table, compared)]
    new, changed = compared.of_kind("new"), compared.of_kind("changed")
    if new:
        lines.append(f"new: {', '.join(row.opening.mark for row in new)}")
    lines += [f"changed: {row.opening.mark}: {opening_words(row, display)}" for row in changed]
    if compared.gone:
        what = "removed" if removed else "kept"
        lines.append(f"in the job but not in the {table.source}, {what}: {', '.join(compared.gone)}")
    if table.job_name:
        lines.append(f"above the table, perhaps the job's name: {table.job_name}")
    lines += [f"assumed: {sentence}" for sentence in all_told(table, reading, compared)]
    lines += [f"not read: {words}" for words in not_read_words(table, reading)]
    line = "" if reading.names_doors else "line {}, "
    lines += [f"left out: {line.format(out.line)}{out.mark}: {out.left_out}" for out in compared.left_out]
    lines += [f"passed over: line {over.row.line}, {over.why}" for over in table.passed_over]
    lines += [f"note: line {line}, {words}" for line, words in notes_told(table, compared)]
    lines += [f"not taken: {fault_words(alike)}" for alike in compared.like_faults()]
    return "\n".join(lines) + "\n"


def all_told(table: ScheduleTable, reading: Reading, compared: Compared) -> tuple[str, ...]:
    """Return everything that was assumed, in sentences."""
    return (*table.told, *columns_told(table, reading), *compared.told)


def fates(table: ScheduleTable, rows: Iterable[RowRead]) -> Iterator[tuple[int, int, str, str]]:
    """Yield every cell of a schedule that is not blank: its line, place and text, and what became of it."""
    read = {row.line: row.fates for row in rows}
    for row in table.rows:
        own = read[row.line]
        cells = ((place, cell) for place, cell in enumerate(row.cells) if cell.strip())
        yield from ((row.line, place, cell, own.get(place, "read")) for place, cell in cells)
    others = (
        *((row, "above the table") for row in table.above),
        *((row, "heading") for row in table.header),
        *((over.row, "passed over") for over in table.passed_over),
        *((note.row, "note") for note in table.notes),
    )
    for row, fate in others:
        yield from ((row.line, place, cell, fate) for place, cell in enumerate(row.cells) if cell.strip())


def _text(row: SheetRow) -> str:
    return " ".join(" ".join(cell.split()) for cell in row.cells if cell.strip())
