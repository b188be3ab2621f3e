"""What an import would do, in words: the same on the screen and on the command line."""

from typing import Any

from configurator.intake.comparing import Change, Compared, ReadOpening
from configurator.intake.fields import FIELDS
from configurator.intake.table import ScheduleTable
from configurator.units import Display

_LENGTHS = {field.path for field in FIELDS.values() if field.kind == "length"}
_ANGLES = {field.path for field in FIELDS.values() if field.kind == "angle"}
NOTHING = "nothing to take: the job already says what the schedule says"


def counted(count: int, one: str, many: str = "") -> str:
    """Write a count with the right word: `1 opening`, `3 openings`."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def value_words(path: str, value: Any, display: Display) -> str:
    """Write one value of an opening as it is read on the screen."""
    if value is None:
        return "not said"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if path in _LENGTHS:
        return display.exact(value)
    if path in _ANGLES:
        return display.angle(value, "near")
    text = " ".join(str(value).split())
    return f"{text[:59]}…" if len(text) > 60 else text


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
    said = f"{table.name}: {counted(good + bad, 'row')} under the header on line {table.line}; {good:,} good"
    return said + (f" ({', '.join(kinds)})" if kinds else "") + (f", {bad:,} with a fault" if bad else "")


def report(table: ScheduleTable, compared: Compared, told: tuple[str, ...], removed: bool) -> str:
    """Return the whole of it for a terminal, a line for each thing."""
    display = Display(64)
    lines = [summary(table, compared)]
    new, changed = compared.of_kind("new"), compared.of_kind("changed")
    if new:
        lines.append(f"new: {', '.join(row.opening.mark for row in new)}")
    lines += [f"changed: {row.opening.mark}: {opening_words(row, display)}" for row in changed]
    if compared.gone:
        what = "removed" if removed else "kept"
        lines.append(f"in the job but not in the schedule, {what}: {', '.join(compared.gone)}")
    lines += [f"assumed: {sentence}" for sentence in (*table.told, *told, *compared.told)]
    lines += [f"passed over: line {line}, {why}" for line, why in table.passed_over]
    lines += [f"not taken: {fault}" for fault in compared.faults()]
    return "\n".join(lines) + "\n"
